#!/usr/bin/env python3
"""Does `effects` answer by its schema, leave no cell blank, and tell one part in full?"""
# ctest: release-only
import json
import os
import re
import subprocess
import sys
import unittest

sys.path.insert(0, os.path.dirname(__file__))
from command_line import EXAMPLES, ROOT, InFolder, answer, run  # noqa: E402

import jsonschema  # noqa: E402

BIZJET = ROOT / "examples" / "bizjet.yaml"


class Effects(InFolder):
    def test_every_answer_follows_its_schema(self):
        path = ROOT / "docs/schema/effects.schema.json"
        validator = jsonschema.Draft202012Validator(json.loads(path.read_text(encoding="utf-8")))
        for example in EXAMPLES:
            validator.validate(answer("effects", example))

    def test_no_cell_is_blank_and_every_stop_says_where_the_way_ends(self):
        for example in EXAMPLES:
            told = answer("effects", example)
            for failure in told["failures"]:
                self.assertTrue(failure["effect"] and failure["engine"] and failure["seen"])
                for pad in failure["pads"]:
                    self.assertEqual(pad["goes"] == "on", "interrupted_at" not in pad)

    def test_every_way_of_every_part_is_a_failure_or_says_why_not(self):
        for example in EXAMPLES:
            told = answer("effects", example)
            ways = {}
            for one in told["failures"]:
                ways.setdefault(one["kind"], {})
                self.assertNotIn(one["mode"], ways[one["kind"]].get(one["part"], []))
                ways[one["kind"]].setdefault(one["part"], []).append(one["mode"])
            for kind, modes in (("mesh", 2), ("shaft", 6), ("pad", 9)):
                parts = ways[kind]
                for part, there in parts.items():
                    lacking = [one for one in told["lacks"] if one["part"] == part]
                    self.assertFalse({one["mode"] for one in lacking} & set(there))
                    self.assertEqual(len(there) + len(lacking), modes, f"{example.name} {part}")
                    self.assertTrue(all(one["because"] for one in lacking))

    def test_chips_go_with_the_oil_to_the_plugs_of_its_sump(self):
        told = {(one["part"], one["mode"]): one for one in answer("effects", BIZJET)["failures"]}
        box = told["hp box input > idler 2", "teeth lost"]
        self.assertEqual((box["chip_plug"], box["metal"]),
                         ("there", "metal at the chip plug in the lines fore, aft of the sump gearbox"))
        take_off = told["hp spool > hp tower shaft", "teeth lost"]
        self.assertEqual(take_off["metal"], "metal at the chip plug in the line hp of the sump hp bearings")
        own = told["lp box input > hydraulic pump 2", "teeth lost"]
        self.assertEqual(own["metal"], "metal at the chip plug of the lp box")

    def test_gears_whose_chips_may_pass_no_plug_are_a_finding(self):
        text = BIZJET.read_text(encoding="ascii")
        blind = self.folder / "blind.yaml"
        for old, new, plug, words in (
                ("aft: {rearward: 135 mm, chip plug: yes}", "aft: {rearward: 135 mm}",
                 "in some lines", "not every scavenge line of gearbox"),
                ("      drains to: gearbox\n", "", "not told", "nothing tells of a chip plug"),
                ("      drains to: gearbox\n", "      chip plug: no\n", "none",
                 "no chip plug stands")):
            self.assertEqual(text.count(old), 1)
            blind.write_text(text.replace(old, new), encoding="ascii")
            told = [one for one in answer("effects", blind)["failures"]
                    if one["part"] == "hp box input > idler 2"]
            self.assertEqual({one["chip_plug"] for one in told}, {plug})
            found = [one for one in answer("check", blind, "--today", "2026-06-30")["findings"]
                     if one["rule"] == "H3-chips-seen"]
            self.assertEqual([one["address"] for one in found], ["drive/hp/box"])
            self.assertIn(words, found[0]["says"])

    def test_a_sump_that_is_not_there_is_told_with_the_nearest(self):
        wrong = self.folder / "wrong.yaml"
        text = BIZJET.read_text(encoding="ascii")
        wrong.write_text(text.replace("drains to: gearbox", "drains to: gaerbox"), encoding="ascii")
        code, _, err = run("check", wrong)
        self.assertEqual(code, 2)
        self.assertIn("no sump is called `gaerbox`", err)
        self.assertIn("did you mean gearbox?", err)

    def test_the_tree_is_drawn_for_a_part_and_its_failure_or_says_what_there_is(self):
        out = self.folder / "tree.svg"
        for at in ((), ("--at", "generator"), ("--at", "generator: leaks"),
                   ("--at", "drive/hp/tower shaft: jammed")):
            code, _, err = run("draw", BIZJET, "--figure", "stops", *at, "-o", out)
            self.assertEqual((code, err), (0, ""))
            self.assertGreater(out.stat().st_size, 10000)
        for at, near in (("generatr", "generator"), ("generator: leeks", "leaks")):
            code, _, err = run("draw", BIZJET, "--figure", "stops", "--at", at, "-o", out)
            self.assertEqual(code, 2)
            self.assertIn(f"did you mean {near}?", err)

    def test_causes_count_failures_that_are_there_and_no_pair_holds_a_single_cause(self):
        told = answer("effects", BIZJET)
        for effect in told["causes"]:
            singles = {one[0] for one in effect["sets"] if len(one) == 1}
            for both in (one for one in effect["sets"] if len(one) == 2):
                self.assertFalse(singles & set(both))
                self.assertLess(max(both), len(told["failures"]))

    def test_check_counts_the_single_causes_of_every_effect(self):
        for example in EXAMPLES:
            told, brief = answer("effects", example), answer("check", example)["effects"]
            self.assertEqual(brief["failures"], len(told["failures"]))
            self.assertEqual([one["sure"] + one["in_doubt"] for one in brief["causes"]],
                             [sum(1 for cause in one["sets"] if len(cause) == 1)
                              for one in told["causes"]])

    def test_a_starter_that_seizes_while_it_cranks_is_told_alike(self):
        _, card, _ = run("effects", ROOT / "examples/bizjet.yaml", "starter")
        self.assertIn("if it seizes while it cranks", " ".join(card.split()))
        _, page, _ = run("seize", ROOT / "examples/bizjet.yaml", "starter", "--condition", "crank")
        self.assertIn("springs back", " ".join(page.split()))

    def test_one_part_is_told_by_name_and_by_address(self):
        code, by_name, err = run("effects", BIZJET, "generator")
        self.assertEqual(run("effects", BIZJET, "generator", "-o", self.folder / "card.pdf")[0], 0)
        paper = subprocess.run(["pdftotext", self.folder / "card.pdf", "-"], check=True,
                               capture_output=True, text=True).stdout
        for line in re.findall(r"(?m)^generator: .*", by_name):
            self.assertIn(line, paper)
        self.assertIn("Preliminary design aid", paper)
        self.assertEqual((code, err), (0, ""))
        self.assertIn("the neck of generator breaks at no more than 74.00 N.m", by_name)
        self.assertEqual(run("effects", BIZJET, "accessories/generator"), (code, by_name, err))

    def test_a_condition_gives_the_speeds(self):
        _, out, _ = run("effects", BIZJET, "starter", "--condition", "ground idle")
        self.assertIn("as before, at ground idle", re.sub(r"\s+", " ", out))

    def test_a_piece_of_a_name_finds_it(self):
        code, out, err = run("effects", ROOT / "examples/bizjet.yaml", "pump")
        self.assertEqual((code, out), (2, ""))
        self.assertIn("did you mean fuel pump?", err)

    def test_what_is_not_there_is_told_with_the_nearest(self):
        code, out, err = run("effects", BIZJET, "generatr")
        self.assertEqual((code, out), (2, ""))
        self.assertIn("did you mean generator?", err)
        code, _, err = run("effects", BIZJET, "generator", "--condition", "cruse")
        self.assertEqual(code, 2)
        self.assertIn("did you mean cruise?", err)

    def test_the_page_fits(self):
        for example in EXAMPLES:
            _, out, _ = run("effects", example)
            self.assertEqual([line for line in out.splitlines() if len(line) > 140], [])
            self.assertIn("Preliminary design aid", out)

    def test_the_same_twice(self):
        self.assertEqual(run("effects", BIZJET, "--json"), run("effects", BIZJET, "--json"))


if __name__ == "__main__":
    unittest.main()
