#!/usr/bin/env python3
"""Does `effects` answer by its schema, leave no cell blank, and tell one part in full?"""
# ctest: release-only
import json
import os
import re
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

    def test_causes_count_failures_that_are_there_and_no_pair_holds_a_single_cause(self):
        told = answer("effects", BIZJET)
        for effect in told["causes"]:
            singles = {one[0] for one in effect["sets"] if len(one) == 1}
            for both in (one for one in effect["sets"] if len(one) == 2):
                self.assertFalse(singles & set(both))
                self.assertLess(max(both), len(told["failures"]))

    def test_one_part_is_told_by_name_and_by_address(self):
        code, by_name, err = run("effects", BIZJET, "generator")
        self.assertEqual((code, err), (0, ""))
        self.assertIn("the neck of generator breaks at no more than 74.00 N.m", by_name)
        self.assertEqual(run("effects", BIZJET, "accessories/generator"), (code, by_name, err))

    def test_a_condition_gives_the_speeds(self):
        _, out, _ = run("effects", BIZJET, "starter", "--condition", "ground idle")
        self.assertIn("as before, at ground idle", re.sub(r"\s+", " ", out))

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
