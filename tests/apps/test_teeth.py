#!/usr/bin/env python3
# ctest: release-only    (whole commands take minutes under the sanitizers)
"""Do the teeth of a file come out as it asks: by which edition, of which kind, worn by which mesh?"""
import os
import re
import sys
import unittest
from pathlib import Path

sys.path.insert(0, os.path.dirname(__file__))
from command_line import ROOT, InFolder, answer, run  # noqa: E402

EXAMPLES = ROOT / "examples"
LARGE = EXAMPLES / "large.yaml"
PAIR = """towershaft rate: 1
title: one pair
gear pair:
  one: {{z_1: 25, z_2: 62, m_n: 2 mm, beta: 30 deg, b_1: 22 mm, b_2: 20 mm, x_1: 0.2,
    material 1: case-carburised MQ, material 2: case-carburised MQ, accuracy 1: 5, accuracy 2: 5,
    R_z1: 2.5 um, R_z2: 2.5 um, R_zF1: 8 um, R_zF2: 8 um, nu_40: 27 cSt, n_1: 9000 rpm,
    K_A: 1.1, K_Hbeta: 1.15, T_1: 95 N.m, L_h: 4000 h{more}}}
"""
BEVELS = """towershaft rate: 1
title: one pair of bevels
bevel pair:
  one: {{z_1: 27, z_2: 41, m_et: 2.5 mm, b: 18 mm, {kind}}}
"""


def rated(path):
    """Value by address of all results of a rate file."""
    return {result["address"]: result["value"]
            for element in answer("rate", path, "--all")["elements"]
            for section in element["sections"] for result in section["results"]}


class Folder(InFolder):
    def text(self, text):
        path = Path(self.folder) / "file.yaml"
        path.write_text(text)
        return path


class Edition(Folder):
    def test_the_edition_of_a_rate_file_is_the_one_that_rates(self):
        # 2019 charges unrelieved helical teeth a fifth more load at the ends of contact, so that
        # S_H falls by the root of it (from memory, as in tests/rating/test_iso6336_property.c).
        name = "gear pair/one:sigma_H1@ISO 6336"
        now = rated(self.text(PAIR.format(more=", edition: 2019")))[name]
        old = rated(self.text(PAIR.format(more=", edition: 2006")))[name]
        silent = rated(self.text(PAIR.format(more="")))[name]
        self.assertEqual(now, silent)
        self.assertGreater(now / old, 1.05)

    def test_the_edition_of_a_drive_file_is_the_one_that_rates(self):
        copy = self.copy_of(EXAMPLES / "bizjet.yaml")
        run("set", copy, "drive/lp/box/gears/helix angle", "25 deg")
        told = {}
        for year in ("2019", "2006"):
            self.assertEqual(run("set", copy, "method/teeth", f"ISO 6336:{year}")[0], 0)
            meshes = [mesh for mesh in answer("check", copy)["meshes"]
                      if mesh["address"].startswith("drive/lp/box") and
                      mesh["kind"] == "cylindrical"]
            self.assertTrue(meshes)
            for mesh in meshes:
                self.assertEqual(mesh["strength"]["method"], f"ISO 6336:{year}")
            told[year] = [mesh["strength"]["S_F1"]["value"] for mesh in meshes]
        self.assertNotEqual(told["2019"], told["2006"])


class Kinds(Folder):
    def test_spiral_zerol_and_straight_bevels_of_every_taper_have_their_geometry(self):
        for kind in ("beta_m: 35 deg, r_c0: 57 mm", "beta_m: 0 deg, r_c0: 57 mm", "beta_m: 0 deg"):
            tapers = ["standard", "uniform"]
            tapers += ["slot width", "tilted root line"] if "35" in kind else []
            for taper in tapers:
                path = self.text(BEVELS.format(kind=f"{kind}, taper: {taper}"))
                code, out, err = run("rate", path)
                self.assertEqual(code, 0, (kind, taper, out, err))


class Shared(InFolder):
    def test_what_another_mesh_wears_more_is_marked_on_the_page_and_in_the_answer(self):
        page = run("check", LARGE)[1]
        table = page[page.index("Tooth strength"):]
        table = table[:table.index("* of a gear that its other mesh wears more")]
        stars = len(re.findall(r"\d\*", table))
        marked = {}
        for mesh in answer("check", LARGE)["meshes"]:
            for symbol, other in mesh.get("strength", {}).get("worn_elsewhere", {}).items():
                marked[mesh["address"], symbol] = other
        self.assertGreater(stars, 0)
        self.assertEqual(len(marked), stars)
        meshes = {mesh["address"] for mesh in answer("check", LARGE)["meshes"]}
        for (mesh, _), other in marked.items():
            self.assertIn(other, meshes)
            self.assertNotEqual(other, mesh)


if __name__ == "__main__":
    unittest.main()
