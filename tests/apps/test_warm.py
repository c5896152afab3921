#!/usr/bin/env python3
"""Does `warm` answer by its schema, keep its heat, and tell when play is used up or temperatures
come that the file leaves out?"""
import json
import os
import sys
import unittest

sys.path.insert(0, os.path.dirname(__file__))
from command_line import ROOT, InFolder, answer, run  # noqa: E402

import jsonschema  # noqa: E402

EXAMPLES = [ROOT / "examples" / (name + ".yaml")
            for name in ("trainer", "bizjet", "medium", "large")]
BIZJET = EXAMPLES[1]
BOX = "gears: {module: 2 mm, pressure angle: 25 deg, material: carburised 9310,"


class Warm(InFolder):
    def told(self, temperatures, other=("", "")):
        text = BIZJET.read_text(encoding="utf-8")
        self.assertIn(BOX, text)
        text = text.replace(BOX, "gears: {temperatures: {%s}, %s" % (temperatures, BOX[8:]))
        to = self.folder / "drive.yaml"
        to.write_text(text.replace(*other) if other[0] else text, encoding="utf-8")
        return to

    def test_every_example_follows_the_schema_and_keeps_its_heat(self):
        path = ROOT / "docs/schema/warm.schema.json"
        schema = jsonschema.Draft202012Validator(json.loads(path.read_text(encoding="utf-8")))
        for drive in EXAMPLES:
            told = answer("warm", drive)
            schema.validate(told)
            for one in told["drives"]:
                energy = one["energy"]
                self.assertLess(energy["balance"], 1e-10)
                self.assertAlmostEqual(
                    (energy["oil"] + energy["air"] + energy["metal"]) / energy["heat"], 1.0, 7)
                for play in one["plays"]:
                    self.assertEqual(play["least"], min(play["low"]))
                    self.assertEqual(play["most"], max(play["high"]))
                    self.assertGreater(play["least"], 0.0)

    def test_a_course_is_what_was_asked_for(self):
        told = answer("warm", BIZJET, "--through", "ground idle 90 s, take-off 2 min", "--soak",
                      "-40 degC", "--ambient", "20 degC")
        self.assertEqual(told["legs"], [{"condition": "ground idle", "duration": 90},
                                        {"condition": "take-off", "duration": 120}])
        self.assertFalse(told["legs_assumed"] or told["soak_assumed"])
        one = told["drives"][0]
        self.assertEqual((one["t"][0], one["t"][-1]), (0, 210))
        self.assertAlmostEqual(one["casing"][0], 233.15, 9)
        self.assertNotEqual(one["energy"]["air"], 0)

    def test_air_round_the_casing_cools_it(self):
        still = answer("warm", BIZJET)["drives"][0]["casing"][-1]
        cooled = answer("warm", BIZJET, "--ambient", "-50 degC")["drives"][0]["casing"][-1]
        self.assertLess(cooled, still - 1.0)

    def test_temperatures_that_the_file_leaves_out_do_not_hold(self):
        tight = self.told("gears: 15..60 degC, casing above gears: -1..1 K, "
                          "expansion of gears: 11.5 ppm/K, expansion of casing: 11.5 ppm/K")
        code, out, _ = run("warm", tight)
        self.assertEqual(code, 1)
        self.assertIn("BEYOND the 15.0 to 60.0 degC", " ".join(out.split()))
        wide = self.told("gears: 15..200 degC, casing above gears: -99..99 K, "
                         "expansion of gears: 11.5 ppm/K, expansion of casing: 11.5 ppm/K")
        code, out, _ = run("warm", wide)
        self.assertEqual(code, 0)
        self.assertIn("within the 15.0 to 200.0 degC", " ".join(out.split()))

    def test_play_that_is_used_up_does_not_hold(self):
        gone = self.told("gears: -60..200 degC, casing above gears: -99..99 K, "
                         "expansion of gears: 40 ppm/K, expansion of casing: 1 ppm/K")
        code, out, _ = run("warm", gone)
        self.assertEqual(code, 1)
        self.assertIn("NONE LEFT", out)

    def test_what_is_no_course_is_said(self):
        for course, word in (("ground idel 5 min", "ground idle"), ("take-off", "such as"),
                             ("take-off -5 min", "such as"), ("", "such as"),
                             (", ".join(["take-off 1 min"] * 65), "up to 64")):
            code, _, said = run("warm", BIZJET, "--through", course)
            self.assertEqual(code, 2, course)
            self.assertIn(word, said)
        code, _, said = run("warm", BIZJET, "--soak", "cold")
        self.assertEqual(code, 2)
        self.assertIn("-40 degC", said)


if __name__ == "__main__":
    unittest.main()
