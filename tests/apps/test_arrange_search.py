#!/usr/bin/env python3
"""Is the lightest arrangement of a drive found where much is free, and proven?

ctest: release-only cost=30    (a checked build proves the formulae of every mesh that is asked about)
"""
import json
import math
import os
import re
import sys
import unittest

sys.path.insert(0, os.path.dirname(__file__))
from arranging import TRAINER, Arranging, masses  # noqa: E402
from command_line import ROOT, answer, run  # noqa: E402
from test_schemas import follows  # noqa: E402


class Search(Arranging):
    @classmethod
    def setUpClass(cls):
        """The trainer as it is, arranged once for all who compare with it."""
        cls.plain = run("arrange", TRAINER, "--json", "--threads", 1)

    def test_answer_is_the_same_for_any_number_of_threads(self):
        five = run("arrange", TRAINER, "--json", "--threads", 5)
        self.assertEqual(self.plain[0], 0)
        self.assertEqual(self.plain[1], five[1])

    def test_answers_come_lightest_first_and_the_search_is_proven(self):
        told = json.loads(self.plain[1])
        self.assertEqual(told["certificate"]["end"], "proven")
        self.assertEqual(masses(told), sorted(masses(told)))
        self.assertGreaterEqual(told["certificate"]["bound"], masses(told)[0] * (1 - 1e-9))
        self.assertTrue(all(p["end"] != "open" for p in told["certificate"]["pairs"]))

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

        # What is arranged already is found again.
        again = answer("arrange", copy, "--answers", 1)
        self.assertAlmostEqual(masses(json.loads(self.plain[1]))[0], masses(again)[0], places=9)

    def test_more_freedom_never_weighs_more(self):
        plain = json.loads(self.plain[1])
        copy = self.at_its_best()
        copy.write_text(copy.read_text() +
                        "  boxes: {hp: {modules: [1.5 mm, 1.75 mm], input teeth: [36, 37]}}\n")
        free = answer("arrange", copy, "--answers", 1)
        self.assertEqual(len(free["certificate"]["pairs"]), 4)
        self.assertLess(masses(free)[0], masses(plain)[0])

    def lowered(self, box, masses_of):
        """kg in the way of somebody: on the same face of the branch nearer to the input, or on it."""
        total = 0.0
        for side in ("clockwise", "anticlockwise"):
            row = [box["input"], *box[side]]
            for i, shaft in enumerate(row):
                for face in ("front", "rear"):
                    if i > 0 and shaft[face]:
                        total += sum(masses_of[s[face]] for s in row[:i] if s[face])
        return total

    def test_wrap_and_servicing_count_where_they_have_weights(self):
        copy = self.with_section(TRAINER, "  weights: {wrap: 0.1 kg/deg, servicing: 5 %}\n")
        masses_of = dict(re.findall(r"^  ([a-z-]+(?: [a-z0-9-]+)*):[^\n]*\n(?:    [^\n]*\n)*?    mass: ([0-9.]+) kg",
                                    TRAINER.read_text(encoding="utf-8"), re.M))
        masses_of = {name: float(mass) for name, mass in masses_of.items()}
        told = answer("arrange", copy, "--answers", 3)
        follows(told, "arrange.schema.json")
        self.assertEqual(told["certificate"]["end"], "proven")
        self.assertTrue(told["certificate"]["verified"])
        for one in told["answers"]:
            box = one["boxes"][0]
            self.assertAlmostEqual(one["lowered"], self.lowered(box, masses_of), places=9)
            self.assertAlmostEqual(one["wrap"], box["wrap"], places=9)
            self.assertAlmostEqual(one["wrap_counts"], 0.1 * math.degrees(box["wrap"]), places=9)
            self.assertAlmostEqual(one["lowered_counts"], 0.05 * one["lowered"], places=9)
            self.assertAlmostEqual(one["mass"], sum(one["parts"].values()), places=9)
            self.assertAlmostEqual(one["sum"], one["mass"] + one["wrap_counts"] + one["lowered_counts"],
                                   places=9)
        # Of mass alone nothing is lighter than the plain answer; of the sum, this one.
        plain = json.loads(self.plain[1])["answers"][0]
        first = told["answers"][0]
        self.assertGreaterEqual(first["mass"], plain["mass"] - 1e-9)
        box = plain["boxes"][0]
        self.assertLessEqual(first["sum"], plain["mass"] + 0.1 * math.degrees(box["wrap"]) +
                             0.05 * self.lowered(box, masses_of) + 1e-9)
        certificate = self.folder / "weighted.json"
        certificate.write_text(json.dumps(told))
        self.assertEqual(run("arrange", copy, "--verify", certificate)[0], 0)
        first["wrap_counts"] *= 0.9
        certificate.write_text(json.dumps(told))
        code, out, _ = run("arrange", copy, "--verify", certificate)
        self.assertEqual(code, 1)
        self.assertIn("wrap and servicing do not count so much", " ".join(out.split()))
        page = " ".join(run("arrange", copy, "--answers", 1)[1].split())
        self.assertRegex(page, r"Beside its mass [0-9.]+ deg of wrap count as [0-9.]+ kg, and "
                               r"[0-9.]+ kg to be lowered out of the way count as [0-9.]+ kg: "
                               r"together [0-9.]+ kg in sum")
        self.assertIn("The least in sum, ", page)

    def test_what_is_kept_keeps_its_face_side_and_teeth(self):
        copy = self.copy_of(TRAINER)
        told = answer("arrange", copy, "--keep", "drive/hp/box/anticlockwise/1")
        box = told["answers"][0]["boxes"][0]
        kept = [s for s in box["anticlockwise"] if s["front"] == "fuel pump"]
        self.assertEqual([s["teeth"] for s in kept], [56])
        self.assertGreaterEqual(masses(told)[0], masses(json.loads(self.plain[1]))[0] - 1e-9)

    def test_boxes_with_step_shafts_can_be_kept_on_every_example(self):
        told = answer("arrange", ROOT / "examples/bizjet.yaml", "--keep", "drive/hp/box")
        self.assertEqual(told["certificate"]["end"], "proven")
        box = told["answers"][told["chosen"]]["boxes"][0]
        self.assertEqual([s["step"]["teeth"] for s in box["anticlockwise"] if s["step"]], [28])
        for name in ("medium", "large"):  # not refused; however far it comes in that time
            code, out, _ = run("arrange", ROOT / f"examples/{name}.yaml", "--keep", "drive/hp/box",
                               "--within", "0.3 s")
            self.assertIn(code, (0, 1), name)
            self.assertNotIn("No arrangement meets every demand", out, name)

    def test_written_step_shaft_is_what_check_then_accepts(self):
        copy = self.copy_of(ROOT / "examples/bizjet.yaml")
        code, out, _ = run("arrange", copy, "--write")
        self.assertEqual(code, 0, out)
        self.assertIn("step: {teeth: 28", copy.read_text())
        self.assertEqual(run("check", copy)[0], 0)

    def test_nothing_is_written_when_nothing_is_found(self):
        copy = self.with_section(TRAINER, "  teeth: 19..20\n")
        before = copy.read_bytes()
        run("arrange", copy, "--write")
        self.assertEqual(before, copy.read_bytes())

    def test_added_accessory_stands_in_the_written_file(self):
        out = self.folder / "with.yaml"
        code, _, _ = run("arrange", TRAINER, "--add", ROOT / "examples/monday/second_pump.yaml",
                         "-o", out)
        self.assertEqual(code, 0)
        pads = [pad["name"] for pad in answer("check", out)["pads"]]
        self.assertIn("hydraulic pump 2", pads)
        self.assertEqual(run("check", out)[0], 0)


if __name__ == "__main__":
    unittest.main()
