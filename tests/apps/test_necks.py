#!/usr/bin/env python3
"""Does `necks` tell bands, samples and chances, the same for any number of threads?"""
import json
import os
import re
import sys
import unittest

sys.path.insert(0, os.path.dirname(__file__))
from command_line import EXAMPLES, ROOT, InFolder, answer, run  # noqa: E402

import jsonschema  # noqa: E402

FEW = ("--samples", "20000")


class Necks(InFolder):
    def designed(self, neck="neck: {diameter: 7.6 mm}"):
        copy = self.copy_of(ROOT / "examples/trainer.yaml")
        copy.write_text(re.sub(r"neck: \{breaks: 60..74 N.m\}", neck, copy.read_text()))
        return copy

    def of(self, told, name="starter-generator"):
        return next(n for n in told["necks"] if n["of"] == name)

    def test_every_answer_follows_its_schema(self):
        path = ROOT / "docs/schema/necks.schema.json"
        validator = jsonschema.Draft202012Validator(json.loads(path.read_text(encoding="utf-8")))
        for example in [*EXAMPLES, self.designed()]:
            validator.validate(answer("necks", example, *FEW))

    def test_threads_do_not_matter(self):
        copy = self.designed()
        pages = {run("necks", copy, *FEW, "--threads", str(n)) for n in (1, 2, 3)}
        self.assertEqual(len(pages), 1)

    def test_all_lie_inside_and_the_balance_is_that_of_size(self):
        copy = self.designed()
        told = self.of(answer("necks", copy, *FEW))
        self.assertEqual((told["samples"]["count"], told["samples"]["outside"]), (20000, 0))
        self.assertGreaterEqual(told["samples"]["least"], told["breaks_least"])
        self.assertLessEqual(told["samples"]["most"], told["breaks_most"])
        sized = answer("size", copy, "--choose", "necks")
        balance = next(n["balance"] for n in sized["necks"] if n["of"] == "starter-generator")
        self.assertEqual(told["chances"]["balance"], balance)

    def test_the_bound_is_told_on_the_page_and_in_json(self):
        trainer = ROOT / "examples/trainer.yaml"
        chances = self.of(answer("necks", trainer, *FEW), "hydraulic pump")["chances"]
        self.assertGreater(chances["early_most"], chances["early"])
        page = " ".join(run("necks", trainer, *FEW)[1].split())
        self.assertIn(f"a chance of at most {chances['early_most']:.3g} where", page)

    def test_seizures_in_time_are_those_of_seize(self):
        trainer = ROOT / "examples/trainer.yaml"
        told = answer("necks", trainer, *FEW, "--seizures")
        for neck in told["necks"]:
            worst = neck["seized"]
            seized = answer("seize", trainer, neck["of"], "--condition", worst["condition"])
            strong = next(r for r in seized["runs"] if r["run"] == "neck at its strongest")
            sees = max((max(abs(p["before"]), abs(p["after"])) / p["bears"], p["of"])
                       for p in strong["peaks"] if p["bears"])
            self.assertAlmostEqual(worst["share"], sees[0], 6)
            self.assertEqual(worst["part"], sees[1])
        self.assertNotIn("seized", answer("necks", trainer, *FEW)["necks"][0])

    def test_a_stated_band_has_no_samples(self):
        told = self.of(answer("necks", ROOT / "examples/trainer.yaml", *FEW))
        self.assertFalse(told["designed"])
        self.assertNotIn("samples", told)

    def test_what_lacks_is_said(self):
        copy = self.designed("neck: {diameter: 7.6 mm, yielding: unknown}")
        code, out, _ = run("necks", copy, *FEW)
        self.assertEqual(code, 2)
        self.assertIn("for want of the yielding", " ".join(out.split()))

    def test_counts_that_are_none_are_refused(self):
        for words in (("--samples", "0"), ("--samples", "many"), ("--samples", "99999999999"),
                      ("--threads", "-1"), ("--threads", "65")):
            code, out, err = run("necks", self.designed(), *words)
            self.assertEqual((code, out), (2, ""), words)
            self.assertIn("whole number", err)


if __name__ == "__main__":
    unittest.main()
