#!/usr/bin/env python3
"""Is the lightest arrangement found, proven, put into the file, and accepted by all rules?

ctest: timeout=900
"""
import math
import os
import sys
import unittest

sys.path.insert(0, os.path.dirname(__file__))
from command_line import COMMAND, ROOT, InFolder, answer, run  # noqa: E402
from test_schemas import follows  # noqa: E402

TRAINER = ROOT / "examples/trainer.yaml"
# The checked build proves the formulae of every mesh that a search asks about, which takes minutes a
# search; tests/search and tests/arrange run searches under the sanitizers.
not_in_checked_builds = unittest.skipIf("sanitize" in COMMAND, "each search would take minutes")


def masses(told):
    return [one["mass"] for one in told["answers"]]


class Arrange(InFolder):
    def with_section(self, path, text):
        copy = self.folder / path.name
        copy.write_text(path.read_text(encoding="utf-8") + "\narrange:\n" + text)
        return copy

    @not_in_checked_builds
    def test_answer_follows_its_schema(self):
        follows(answer("arrange", TRAINER), "arrange.schema.json")

    @not_in_checked_builds
    def test_answer_is_the_same_for_any_number_of_threads(self):
        one, _, two = (run("arrange", TRAINER, "--json", "--threads", n) for n in (1, 2, 5))
        self.assertEqual(one[0], 0)
        self.assertEqual(one[1], two[1])

    @not_in_checked_builds
    def test_answers_come_lightest_first_and_the_search_is_proven(self):
        told = answer("arrange", TRAINER)
        self.assertEqual(told["certificate"]["end"], "proven")
        self.assertEqual(masses(told), sorted(masses(told)))
        self.assertGreaterEqual(told["certificate"]["bound"], masses(told)[0] * (1 - 1e-9))
        self.assertTrue(all(p["end"] != "open" for p in told["certificate"]["pairs"]))

    @not_in_checked_builds
    def test_written_arrangement_is_what_check_then_accepts(self):
        copy = self.copy_of(TRAINER)
        code, out, _ = run("arrange", copy, "--write")
        self.assertEqual(code, 0, out)
        self.assertEqual(run("check", copy)[0], 0)
        before, after = TRAINER.read_text(), copy.read_text()
        self.assertNotEqual(before, after)
        # What does not stand in a box stays as it was, comments too.
        self.assertEqual(before[:before.index("    box:")], after[:after.index("    box:")])
        self.assertEqual(before[before.index("\nlimits:"):], after[after.index("\nlimits:"):])

    @not_in_checked_builds
    def test_arranging_what_is_arranged_finds_the_same_mass(self):
        copy = self.copy_of(TRAINER)
        first = answer("arrange", copy)
        run("arrange", copy, "--write")
        again = answer("arrange", copy)
        self.assertAlmostEqual(masses(first)[0], masses(again)[0], places=9)

    @not_in_checked_builds
    def test_more_freedom_never_weighs_more(self):
        plain = answer("arrange", TRAINER)
        free = answer("arrange", self.with_section(
            TRAINER, "  boxes: {hp: {modules: [1.5 mm, 1.75 mm], input teeth: 35..39}}\n"))
        self.assertLessEqual(masses(free)[0], masses(plain)[0] + 1e-9)

    @not_in_checked_builds
    def test_what_is_kept_keeps_its_face_side_and_teeth(self):
        copy = self.copy_of(TRAINER)
        told = answer("arrange", copy, "--keep", "drive/hp/box/anticlockwise/1")
        box = told["answers"][0]["boxes"][0]
        kept = [s for s in box["anticlockwise"] if s["front"] == "fuel pump"]
        self.assertEqual([s["teeth"] for s in kept], [56])
        self.assertGreaterEqual(masses(told)[0], masses(answer("arrange", copy))[0] - 1e-9)

    def test_demand_that_cannot_be_met_is_no_arrangement(self):
        code, out, _ = run("arrange", self.with_section(TRAINER, "  teeth: 19..20\n"))
        self.assertEqual(code, 1)
        self.assertIn("No arrangement meets every demand", out)

    def test_demand_that_conflicts_is_named_with_what_would_do(self):
        # derived: with 20 teeth at most every gear turns faster than the input, which has 37, so
        # that the input itself is the slowest place there is: 31200*32/37*27/61 rpm at red line.
        copy = self.with_section(TRAINER, "  teeth: 19..20\n")
        told = answer("arrange", copy)["conflict"]
        self.assertEqual([one["demand"] for one in told],
                         ["the speed band of hydraulic pump at red line"])
        self.assertAlmostEqual(told[0]["from"] * 60 / (2 * math.pi), 5000.0, places=6)
        self.assertAlmostEqual(told[0]["to"] * 60 / (2 * math.pi), 31200 * 32 / 37 * 27 / 61,
                               delta=0.5)
        self.assertIn("One demand alone", run("arrange", copy)[1])

    @not_in_checked_builds
    def test_nothing_is_written_when_nothing_is_found(self):
        copy = self.with_section(TRAINER, "  teeth: 19..20\n")
        before = copy.read_bytes()
        run("arrange", copy, "--write")
        self.assertEqual(before, copy.read_bytes())

    def test_end_of_time_gives_the_best_so_far_and_its_gap(self):
        code, out, _ = run("arrange", ROOT / "examples/large.yaml", "--within", "0.05 s")
        self.assertEqual(code, 1)
        self.assertIn("ended before its proof", out)

    def test_faulty_wishes_are_refused_before_any_search(self):
        for words in (("--within", "soon"), ("--within", "-3 s"), ("--answers", "0"),
                      ("--threads", "x"), ("--keep", "drive/hp/box/clockwise/9")):
            code, _, err = run("arrange", TRAINER, *words)
            self.assertEqual(code, 2, words)
            self.assertTrue(err, words)

    @not_in_checked_builds
    def test_added_accessory_stands_in_the_written_file(self):
        out = self.folder / "with.yaml"
        code, _, _ = run("arrange", TRAINER, "--add", ROOT / "examples/monday/second_pump.yaml",
                         "-o", out)
        self.assertEqual(code, 0)
        pads = [pad["name"] for pad in answer("check", out)["pads"]]
        self.assertIn("hydraulic pump 2", pads)
        self.assertEqual(run("check", out)[0], 0)

    def test_file_without_accessories_cannot_be_added(self):
        added = self.folder / "added.yaml"
        for text in ("title: x\n", "accessories: {}\n", "accessories: {a: {b: 1}}\n", ": :\n", ""):
            added.write_text(text)
            code, _, err = run("arrange", TRAINER, "--add", added)
            self.assertEqual(code, 2, text)
            self.assertIn("accessories", err)

    def test_unknown_body_is_named_before_the_search(self):
        copy = self.folder / "no_body.yaml"
        text = TRAINER.read_text()
        start = text.index("    body: {radius")
        copy.write_text(text[:start] + text[text.index("\n", start) + 1:])
        code, _, err = run("arrange", copy)
        self.assertEqual(code, 2)
        self.assertIn("has no known radius", err)
        self.assertRegex(err, r"no_body\.yaml:\d+:\d+:")


if __name__ == "__main__":
    unittest.main()
