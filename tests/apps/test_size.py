#!/usr/bin/env python3
# ctest: release-only    (whole commands take minutes under the sanitizers)
"""Does `size` choose widths that hold, and change those widths and nothing else?"""
import difflib
import json
import os
import re
import sys
import unittest

sys.path.insert(0, os.path.dirname(__file__))
from command_line import EXAMPLES, ROOT, InFolder, answer, run  # noqa: E402

import jsonschema  # noqa: E402

FACE = re.compile(r"face: [0-9.]+ (mm|in)")
BIZJET, LARGE = (ROOT / "examples" / f"{name}.yaml" for name in ("bizjet", "large"))


class Answers(InFolder):
    def test_every_answer_follows_its_schema(self):
        path = ROOT / "docs/schema/size.schema.json"
        validator = jsonschema.Draft202012Validator(json.loads(path.read_text(encoding="utf-8")))
        for example in EXAMPLES:
            validator.validate(answer("size", example))

    def test_the_page_fits_and_says_what_sets_a_width(self):
        code, out, err = run("size", LARGE)
        self.assertEqual((code, err), (0, ""))
        self.assertIn("crank, other flank: bending of the pinion", " ".join(out.split()))
        self.assertEqual([line for line in out.splitlines() if len(line) > 140], [])

    def test_nothing_is_written_unless_asked(self):
        copy = self.copy_of(BIZJET)
        before = copy.read_bytes()
        _, out, _ = run("size", copy)
        self.assertEqual(copy.read_bytes(), before)
        self.assertIn("Nothing was written", out)


class Written(InFolder):
    def lines_changed(self, before, after):
        return [line for line in difflib.ndiff(before.splitlines(), after.splitlines())
                if line[0] in "+-"]

    def test_only_widths_change(self):
        for example in EXAMPLES:
            copy = self.copy_of(example)
            before = copy.read_text()
            self.assertEqual(run("size", copy, "--write")[0], 0)
            after = copy.read_text()
            self.assertNotEqual(before, after)
            self.assertEqual(FACE.sub("face:", before), FACE.sub("face:", after), example.name)
            self.assertEqual(run("check", copy)[0], 0)

    def test_what_is_written_is_what_is_told(self):
        copy = self.copy_of(LARGE)
        told = {gear["address"]: gear["after"] for gear in answer("size", copy, "--write")["gears"]}
        again = {gear["address"]: gear["before"] for gear in answer("size", copy)["gears"]}
        self.assertEqual(told, again)

    def test_sizing_twice_changes_nothing_more(self):
        copy = self.copy_of(LARGE)
        run("size", copy, "--write")
        once = copy.read_bytes()
        run("size", copy, "--write")
        self.assertEqual(copy.read_bytes(), once)

    def test_bevels_keep_their_faces(self):
        copy = self.copy_of(BIZJET)
        before = [line for line in copy.read_text().splitlines() if "bevels:" in line]
        run("size", copy, "--write")
        self.assertEqual([line for line in copy.read_text().splitlines() if "bevels:" in line],
                         before)

    def test_the_text_can_go_to_another_file(self):
        copy, other = self.copy_of(BIZJET), self.folder / "sized.yaml"
        before = copy.read_bytes()
        self.assertEqual(run("size", copy, "-o", other)[0], 0)
        self.assertEqual(copy.read_bytes(), before)
        self.assertEqual(run("check", other)[0], 0)

    def test_a_width_keeps_the_unit_that_it_has(self):
        copy = self.copy_of(BIZJET)
        run("set", copy, "drive/hp/box/input/face", "0.7 in")
        run("size", copy, "--write", "--step", "0.05 in")
        self.assertRegex(copy.read_text(), r"input: \{teeth: \d+, face: 0\.\d+ in")


class Doubt(InFolder):
    def test_a_step_that_is_none_is_refused_with_a_hint(self):
        for step, word in (("0.5", "unit"), ("0.5 kg", "length"), ("-1 mm", "range"),
                           ("0 mm", "range"), ("nonsense", "")):
            code, out, err = run("size", BIZJET, "--step", step)
            self.assertEqual((code, out), (2, ""), step)
            self.assertIn(word, err)

    def test_a_drive_that_no_width_can_save_is_said_to_be_so(self):
        copy = self.copy_of(BIZJET)
        run("set", copy, "drive/lp/box/gears/material", "normalised ML")
        before = copy.read_bytes()
        code, out, _ = run("size", copy, "--write")
        said = " ".join(out.split())
        self.assertEqual(code, 1)
        self.assertRegex(said, r"lp box input > hydraulic pump 2: not even [0-9.]+ mm, the greatest")
        self.assertRegex(said, r"has S_[HF] [0-9.]+ where [0-9.]+ is wanted")
        self.assertIn("Nothing was written, since not every mesh holds.", said)
        self.assertEqual(copy.read_bytes(), before)
        weak = [m for m in answer("size", copy)["meshes"] if m["state"] == "too weak"]
        self.assertEqual([m["address"] for m in weak], ["drive/lp/box/clockwise/1"])
        self.assertLess(weak[0]["margin"], 0)

    def test_a_width_that_the_file_does_not_tell_is_written(self):
        copy = self.copy_of(BIZJET)
        run("set", copy, "drive/lp/box/input/face", "unknown")
        self.assertRegex(copy.read_text(), r"input: \{teeth: 35, face: unknown")
        self.assertEqual(run("size", copy, "--write")[0], 0)
        self.assertRegex(copy.read_text(), r"input: \{teeth: 35, face: [0-9.]+ mm")

    def test_what_is_not_sized_is_named_with_its_reason(self):
        copy = self.copy_of(BIZJET)
        run("set", copy, "oil/viscosity at 40", "unknown")
        code, out, _ = run("size", copy)
        self.assertEqual(code, 2)
        self.assertIn("is not sized: the viscosity of the oil is missing.", " ".join(out.split()))

    def test_a_file_that_is_no_drive_is_not_sized(self):
        self.assertEqual(run("size", ROOT / "examples/rate/gear_pairs.yaml")[0], 2)
        self.assertEqual(run("size", "-", "--write", stdin=b"towershaft: 1\n")[0], 2)


BEARINGS = ("--choose", "bearings")
NECKS = ("--choose", "necks")
DESIGNED = ("neck: {diameter: 7.6 mm, shank: 16 mm, notch radius: 2.5 mm, from tip: 44 mm}")


def schema(name):
    path = ROOT / "docs/schema" / name
    return jsonschema.Draft202012Validator(json.loads(path.read_text(encoding="utf-8")))


class Bearings(InFolder):
    def test_the_masses_of_shafts_and_drive_are_those_of_both_files(self):
        copy = self.copy_of(BIZJET)
        before = answer("check", copy)["mass"]
        told = answer("size", copy, *BEARINGS, "--write")
        after = answer("check", copy)["mass"]
        page = " ".join(run("size", copy, *BEARINGS)[1].split())
        self.assertIn("Bearings alone: ", page)
        for when, mass in (("before", before), ("after", after)):
            shafts = sum(part["m"]["value"]["value"] for part in mass["parts"]
                         if part["kind"] == "shafts")
            self.assertAlmostEqual(told["shafts_" + when], shafts, 9)
            self.assertAlmostEqual(told["drive_" + when], mass["drive"]["value"]["value"], 9)
        self.assertGreater(told["shafts_after"], told["shafts_before"])

    def test_every_answer_follows_its_schema_and_fits(self):
        for example in EXAMPLES:
            told = answer("size", example, *BEARINGS)
            schema("size-bearings.schema.json").validate(told)
            self.assertTrue(told["fits"])
            for one in told["bearings"]:
                self.assertGreaterEqual(one["margin"]["reserve"], 0)
                if "lighter" in one:
                    self.assertLess(one["lighter"]["reserve"] or -1, 0)

    def test_only_bearings_are_written_and_they_hold(self):
        bearings = re.compile(r",? *bearings: \{(?:[a-z ]+: \{[^}]*\}(?:, )?)+\}")
        for example in EXAMPLES:
            copy = self.copy_of(example)
            before = copy.read_text()
            self.assertEqual(run("size", copy, *BEARINGS, "--write")[0], 0)
            after = copy.read_text()
            squeezed = [line for line in bearings.sub("", after).splitlines() if line.strip()]
            self.assertEqual([line for line in before.splitlines() if line.strip()], squeezed)
            rules = [f["rule"] for f in answer("check", copy)["findings"] if f["state"] != "passed"]
            for rule in ("E7-bearing-life", "E7-bearing-static", "E7-roller-load"):
                self.assertNotIn(rule, rules, example.name)
            once = copy.read_bytes()
            run("size", copy, *BEARINGS, "--write")
            self.assertEqual(copy.read_bytes(), once)

    def test_what_is_told_of_a_seat_is_kept_or_changed_alone(self):
        copy = self.copy_of(BIZJET)
        run("set", copy, "drive/hp/box/clockwise/1/bearings/front",
            "{form: cylindrical roller, series: 03, bore: 60 mm, at: 12 mm}")
        run("set", copy, "drive/hp/box/clockwise/1/bearings/rear",
            "{form: deep groove, series: 02, bore: 35 mm, capacity: 40 kN}")
        self.assertEqual(run("size", copy, *BEARINGS, "--write")[0], 0)
        self.assertRegex(copy.read_text(), r"front: \{form: cylindrical roller, series: (19|10|02), "
                                           r"bore: \d+ mm, at: 12 mm\}")
        self.assertIn("rear: {form: deep groove, series: 02, bore: 35 mm, capacity: 40 kN}",
                      copy.read_text())
        kept = [b for b in answer("size", copy, *BEARINGS)["bearings"] if b["state"] == "kept"]
        self.assertEqual([b["why"] for b in kept], ["the file tells its numbers"])

    def test_where_none_holds_the_nearest_is_named_and_nothing_is_written(self):
        copy = self.copy_of(BIZJET)
        run("set", copy, "limits/bearing life", "1000")
        before = copy.read_bytes()
        code, out, _ = run("size", copy, *BEARINGS, "--write")
        said = " ".join(out.split())
        self.assertEqual(code, 1)
        self.assertRegex(said, r"NONE HOLDS; the nearest has life [0-9.e+]+, not 1000, at")
        self.assertIn("Nothing was written, since not every bearing holds.", said)
        self.assertEqual(copy.read_bytes(), before)

    def test_bearings_have_no_step(self):
        code, _, err = run("size", BIZJET, *BEARINGS, "--step", "1 mm")
        self.assertEqual(code, 2)
        self.assertIn("sizes of the table", err)


class Necks(InFolder):
    def designed(self, neck=DESIGNED):
        copy = self.copy_of(ROOT / "examples/trainer.yaml")
        text = re.sub(r"neck: \{diameter: 9 mm[^}]*\}", "neck: {breaks: 44..54 N.m}",
                      copy.read_text())
        text = re.sub(r"neck: \{breaks: 60..74 N.m\}", neck, text)
        copy.write_text(text)
        return copy

    def test_the_balance_is_written_and_nothing_else(self):
        copy = self.designed()
        before = copy.read_text()
        told = answer("size", copy, *NECKS, "--write")
        schema("size-necks.schema.json").validate(told)
        chosen = [n for n in told["necks"] if n["set_by"] == "balance"]
        self.assertEqual(len(chosen), 1)
        after = chosen[0]["after"]["diameter"]
        self.assertLess(abs(after - chosen[0]["balance"]), 0.05e-3)
        wanted = before.replace("diameter: 7.6 mm", f"diameter: {round(after * 1e3, 4):g} mm")
        self.assertEqual(copy.read_text(), wanted)
        again = answer("size", copy, *NECKS)
        self.assertEqual([n["after"]["diameter"] for n in again["necks"] if "after" in n], [after])

    def test_a_shaft_as_thin_as_the_balance_ends_the_search(self):
        told = answer("size", self.designed(DESIGNED.replace("16 mm", "10.5 mm")), *NECKS)
        thin = [n for n in told["necks"] if n["set_by"] == "shape"]
        self.assertEqual(len(thin), 1)
        self.assertLess(thin[0]["after"]["diameter"], 10.5e-3)
        self.assertGreater(thin[0]["balance"], 10.5e-3)

    def test_a_band_wider_than_its_room_is_said_to_be_so(self):
        copy = self.designed()
        run("set", copy, "limits/neck factor", "3")
        code, out, _ = run("size", copy, *NECKS, "--write")
        self.assertEqual(code, 1)
        self.assertIn("NO DIAMETER HOLDS", out)
        self.assertIn("since not every neck holds", out)

    def test_a_drive_without_a_designed_neck_says_how_to_get_one(self):
        code, out, _ = run("size", BIZJET, *NECKS)
        self.assertEqual(code, 0)
        self.assertIn("give one a `diameter`", " ".join(out.split()))


if __name__ == "__main__":
    unittest.main()
