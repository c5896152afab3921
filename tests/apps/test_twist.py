#!/usr/bin/env python3
"""Does `twist` answer by its schema, the same twice, and say what it lacks?"""
import json
import os
import sys
import unittest

sys.path.insert(0, os.path.dirname(__file__))
from command_line import EXAMPLES, ROOT, InFolder, answer, run  # noqa: E402

import jsonschema  # noqa: E402

BIZJET = ROOT / "examples" / "bizjet.yaml"


class Answers(InFolder):
    def test_every_answer_follows_its_schema(self):
        path = ROOT / "docs/schema/twist.schema.json"
        validator = jsonschema.Draft202012Validator(json.loads(path.read_text(encoding="utf-8")))
        for example in EXAMPLES:
            validator.validate(answer("twist", example))

    def test_modes_ascend_and_shares_sum_to_one(self):
        for tree in answer("twist", BIZJET)["trees"]:
            frequencies = [mode["frequency"] for mode in tree["modes"]]
            self.assertEqual(frequencies, sorted(frequencies))
            self.assertEqual(frequencies[0], 0)
            self.assertGreater(frequencies[1], 10)
            for mode in tree["modes"][1:]:
                self.assertAlmostEqual(sum(mode["strain"]), 1, places=7)
                self.assertAlmostEqual(sum(mode["kinetic"]), 1, places=7)

    def test_the_same_twice(self):
        self.assertEqual(run("twist", BIZJET, "--json"), run("twist", BIZJET, "--json"))

    def test_a_spool_without_inertia_is_named(self):
        copy = self.copy_of(BIZJET)
        copy.write_text(copy.read_text().replace("inertia: 2.9 kg.m2", "inertia: unknown"))
        code, out, err = run("twist", copy)
        self.assertEqual((code, err), (2, ""))
        self.assertIn("not computed: the inertia of the spool of lp is not known", out)

    def test_the_page_fits(self):
        _, out, _ = run("twist", BIZJET)
        self.assertIn("Torsion of the hp drive, its starter engaged", out)
        self.assertEqual([line for line in out.splitlines() if len(line) > 140], [])


if __name__ == "__main__":
    unittest.main()
