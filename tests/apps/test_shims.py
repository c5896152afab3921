# ctest: release-only    (whole commands take minutes under the sanitizers)
"""Does the sheet of shims say what geometry says by another way?

Crowns are held against the blanks that `draw` tells as numbers, what a step changes against the
pitch angles by tooth numbers, backlash against the file and against `why`.
"""
import json
import math
import unittest

import yaml
from command_line import EXAMPLES, ROOT, InFolder, run

import jsonschema  # noqa: E402


class TestShims(InFolder):
    def told(self, path):
        out = self.folder / "shims.json"
        code, _, said = run("report", path, "--sheets", "shims", "-o", out)
        self.assertEqual(code, 0, said)
        return json.loads(out.read_text(encoding="utf-8"))

    def test_schema(self):
        path = ROOT / "docs/schema/shims.schema.json"
        schema = json.loads(path.read_text(encoding="utf-8"))
        for example in EXAMPLES:
            jsonschema.validate(self.told(example), schema)

    def test_crowns_stand_where_the_blanks_have_them(self):
        for example in EXAMPLES:
            bodies = self.folder / "bodies.json"
            self.assertEqual(run("draw", example, "-o", bodies)[0], 0)
            parts = json.loads(bodies.read_text(encoding="utf-8"))["parts"]
            blanks = [p for p in parts if p["kind"] == "bevel"]
            shims = [g for pair in self.told(example)["bevels"] for g in pair["gears"]]
            crowns = sorted(max(p["section"], key=lambda at: at[1])[0] for p in blanks)
            for mine, theirs in zip(sorted(g["t_xo"] for g in shims), crowns, strict=True):
                self.assertAlmostEqual(mine, theirs, delta=1e-12)

    def bevels_of(self, drive):
        """Told in the order of the meshes: spool by spool, take-off before box."""
        takes = [one["take-off"] for one in drive["drive"].values()]
        boxes = [one["box"] for one in drive["drive"].values()]
        return takes, boxes

    def test_a_step_changes_what_the_cones_say(self):
        """Right angles: tan delta_1 = z_1/z_2; a move s along the axis parts the flanks of both
        sides by s sin(delta) sin(alpha_n) each (derived)."""
        for example in EXAMPLES:
            drive = yaml.safe_load(example.read_text(encoding="utf-8"))
            takes, boxes = self.bevels_of(drive)
            wanted = {}
            for one in (*[t["bevels"] for t in takes], *[b["bevels"] for b in boxes]):
                alpha = math.radians(float(str(one.get("pressure angle", "20 deg")).split()[0]))
                z_1, z_2 = one["teeth"]
                delta = math.atan2(z_1, z_2)
                wanted[z_1, z_2] = [2 * math.sin(d) * math.sin(alpha)
                                    for d in (delta, math.pi / 2 - delta)]
            found = [[g["k_j"] for g in pair["gears"]] for pair in self.told(example)["bevels"]]
            self.assertEqual(len(found), len(takes) + len(boxes))
            for pair in found:
                self.assertTrue(any(all(abs(a - b) < 1e-12 for a, b in zip(pair, one))
                                    for one in wanted.values()), pair)

    def test_shims_make_good_the_stack(self):
        for example in EXAMPLES:
            told = self.told(example)
            off = [told["assumed"][key] for key in ("seat", "bearing", "crown")]
            for pair in told["bevels"]:
                step = pair["step"]
                ks = sum(g["k_j"] for g in pair["gears"])
                self.assertAlmostEqual(pair["left by half a step"], 0.5 * ks * step, delta=1e-15)
                for gear in pair["gears"]:
                    self.assertAlmostEqual(gear["stack"], sum(off), delta=1e-15)
                    self.assertAlmostEqual(gear["likely"], math.hypot(*off), delta=1e-15)
                    for end, sign in (("thinnest", -1), ("thickest", 1)):
                        reach = sign * (gear[end] - told["assumed"]["nominal shim"])
                        self.assertGreaterEqual(reach, gear["stack"] - 1e-12)
                        self.assertLess(reach, gear["stack"] + step)
                        self.assertAlmostEqual(reach / step, round(reach / step), delta=1e-9)

    def changed(self, tolerance):
        path = self.copy_of(EXAMPLES[0])
        code, _, said = run("set", path, "drive/hp/take-off/backlash tolerance", tolerance)
        self.assertEqual(code, 0, said)
        return self.told(path)["bevels"][0]

    def test_the_step_follows_the_tolerance(self):
        for tolerance, step in (("0.06 mm", 100e-6), ("0.03 mm", 50e-6), ("0.013 mm", 25e-6),
                                ("0.001 mm", 25e-6)):
            pair = self.changed(tolerance)
            # The finest step there is does not meet the last of them.
            self.assertEqual(pair["step by tolerance"], tolerance != "0.001 mm")
            self.assertAlmostEqual(pair["step"], step, delta=1e-12, msg=tolerance)
            t = 1e-3 * float(tolerance.split()[0])
            self.assertAlmostEqual(pair["j_bn built"]["most"] - pair["j_bn built"]["least"], 2 * t,
                                   delta=1e-12)

    def test_backlash_is_that_of_the_working(self):
        told = self.told(EXAMPLES[0])
        for mesh in told["cylindrical"]:
            for symbol, end in (("j_bnmin", "least"), ("j_bnmax", "most")):
                code, out, said = run("why", EXAMPLES[0], f"{mesh['at']}:{symbol}", "--json")
                self.assertEqual(code, 0, said)
                working = json.loads(out)["working"]
                (root,) = [n for n in working["notes"] if n["id"] == working["root"]]
                self.assertEqual(mesh["j_bn built"][end], root["value"])

    def test_every_outlet_and_no_other(self):
        for ending in ("pdf", "html", "txt"):
            out = self.folder / ("a." + ending)
            self.assertEqual(run("report", EXAMPLES[0], "--sheets", "shims", "-o", out)[0], 0)
            if ending != "pdf":
                text = out.read_text(encoding="utf-8")
                self.assertIn("t_xo", text)
                self.assertIn("common practice, no source", text)
                self.assertIn("reliminary design aid", text)
        for words, ending in (((), "txt"), ((), "json"), (("--sheets", "teeth"), "json")):
            out = self.folder / ("b." + ending)
            code, _, said = run("report", EXAMPLES[0], *words, "-o", out)
            self.assertEqual(code, 2)
            self.assertIn("expected", said)
            self.assertFalse(out.exists())
        us = self.folder / "us.txt"
        self.assertEqual(run("report", EXAMPLES[0], "--sheets", "shims", "--units", "us", "-o",
                             us)[0], 0)
        self.assertIn("in; t_xo", us.read_text(encoding="utf-8"))


if __name__ == "__main__":
    unittest.main()
