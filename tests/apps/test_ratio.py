#!/usr/bin/env python3
"""Does `ratio` tell all tooth numbers, and why there are no others?"""
import json
import math
import os
import sys
import unittest
from fractions import Fraction

sys.path.insert(0, os.path.dirname(__file__))
from command_line import ROOT, answer, run  # noqa: E402

import jsonschema  # noqa: E402


def told(*words):
    data = answer("ratio", *words)
    schema = json.loads((ROOT / "docs/schema/ratio.schema.json").read_text(encoding="utf-8"))
    jsonschema.Draft202012Validator(schema).validate(data)
    return data


class Facts(unittest.TestCase):
    def test_every_answer_follows_its_schema(self):
        for words in (("56/24",), ("2.2..2.4", "--train", "idler", "--teeth", "17..40"),
                      ("3.3", "--train", "cluster", "--teeth", "17..40"),
                      ("2", "--teeth", "30..30"), ("56/24", "--sharing", "--answers", "64"),
                      ("56/24", "--centre", "91 mm", "--module", "2.25 mm")):
            told(*words)

    def test_all_pairs_are_those_of_plain_loops(self):
        want = {(a, b) for a in range(17, 98) for b in range(17, 98)
                if math.gcd(a, b) == 1 and abs(Fraction(b, a) / Fraction(7, 3) - 1) <= Fraction(1, 50)}
        data = told("56/24", "--tolerance", "2 %")
        self.assertEqual({tuple(one["teeth"]) for one in data["all"]}, want)
        self.assertEqual(len(data["all"]), data["hunting"])

    def test_impossible_ratio_is_told_as_number_theory(self):
        out = " ".join(run("ratio", "56/24")[1].split())
        for words in ("56/24 shares 8", "the nearest hunting pair is 55/24, 1.8 % off",
                      "no hunting pair has it exactly", "1 nearer: 7/3",
                      "Over an idler of 17 teeth 56/24 is exact"):
            self.assertIn(words, out)

    def test_nothing_within_the_tolerance_is_exit_code_one(self):
        code, out, _ = run("ratio", "3.14159", "--tolerance", "0.01 %")
        self.assertEqual(code, 1)
        self.assertIn("0 hunt", out)
        self.assertIn("22/7", out)

    def test_centre_distance_leaves_what_profile_shifts_reach(self):
        data = told("2.3", "--centre", "92 mm", "--module", "2.25 mm", "--tolerance", "3 %")
        self.assertGreater(data["centre_forbids"], 0)
        for one in data["all"]:
            self.assertTrue(-0.5 <= one["sum_x"] <= 1.5)

    def test_a_decimal_is_taken_as_written(self):
        self.assertEqual(told("2.35")["wanted"], {"over": 47, "under": 20})
        self.assertEqual(told("47:20", "--tolerance", "0")["all"][0]["teeth"], [20, 47])

    def test_faulty_wishes_are_refused(self):
        for words in (("x",), ("0",), ("1000",), ("2.4..2.3",), ("2/0",), ("1.2345678901",), ("-2",),
                      ("2", "--teeth", "97..17"), ("2", "--teeth", "17..500"), ("2", "--teeth", "x"),
                      ("2", "--tolerance", "60 %"), ("2", "--tolerance", "2 mm"),
                      ("2..3", "--tolerance", "1 %"), ("2", "--train", "belt"),
                      ("2", "--train", "cluster", "--teeth", "17..300"), ("2", "--centre", "90 mm"),
                      ("2", "--centre", "90", "--module", "2 mm"), ("2", "--answers", "0"),
                      ("2", "--centre", "90 mm", "--module", "2 mm", "--pressure-angle", "80 deg")):
            code, _, err = run("ratio", *words)
            self.assertEqual(code, 2, words)
            self.assertTrue(err, words)


if __name__ == "__main__":
    unittest.main()
