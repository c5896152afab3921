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


if __name__ == "__main__":
    unittest.main()
