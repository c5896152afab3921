#!/usr/bin/env python3
"""Is the lightest arrangement of a drive found where much is free, and proven?

ctest: release-only cost=50    (a checked build proves the formulae of every mesh that is asked about)
"""
import json
import math
import os
import re
import signal
import subprocess
import sys
import unittest

sys.path.insert(0, os.path.dirname(__file__))
from arranging import TRAINER, Arranging, masses  # noqa: E402
from command_line import COMMAND, ROOT, answer, run  # noqa: E402
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

    def test_start_is_paid_for_on_its_way_to_the_input(self):
        # With the starter on the input no mesh of the box carries the start; elsewhere, those between do.
        best = self.at_its_best()
        weak = best.read_text() + "  hunting: no\n"
        strong = self.folder / "strong.yaml"
        self.assertIn("drives: {crank: 45 N.m, light-off: 36 N.m}", weak)
        best.write_text(weak)
        strong.write_text(weak.replace("drives: {crank: 45 N.m,", "drives: {crank: 90 N.m,"))
        asked = ("--answers", 1, "--why-not", "starter-generator on drive/hp/box/clockwise")
        one, two = answer("arrange", best, *asked), answer("arrange", strong, *asked)
        self.assertAlmostEqual(masses(one)[0], masses(two)[0], places=9)
        self.assertGreater(one["why_not"][0]["answer"]["regret"], 0.0)
        self.assertGreater(two["why_not"][0]["answer"]["regret"], one["why_not"][0]["answer"]["regret"] + 0.01)

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

    def test_loads_and_bands_that_are_off_change_the_lightest_where_it_is_said(self):
        thin = self.at_its_best()
        thin.write_text(thin.read_text() + "  least face: 2 mm\n  face step: 0.1 mm\n")
        words = ("--loads", "50 %", "--bands", "40 rpm", "--answers", 3)
        data = answer("arrange", thin, *words)
        follows(data, "arrange.schema.json")
        loads, bands = data["robust"]["loads"], data["robust"]["bands"]
        for one, searched in zip(loads["answers"], data["answers"]):
            # Widths by other code than the search; a grain of it is what a step of 0.1 mm weighs.
            self.assertAlmostEqual(one["as_demanded"], searched["mass"], places=9)
            self.assertLessEqual(one["less"], one["as_demanded"])
            self.assertLessEqual(one["as_demanded"], one["more"])
        for corner, key in (("least", "less"), ("most", "more")):
            self.assertTrue(loads[corner]["proven"])
            self.assertLessEqual(loads[corner]["mass"],
                                 min(one[key] for one in loads["answers"]) + 1e-9)
        light = [one["less"] for one in loads["answers"]]
        self.assertEqual(loads["first"], light.index(min(light)))
        # Just below and just above the factor that is told, the lightest is as it is told.  Between
        # two changes it is one, so that each is looked at from one side, and the first from both.
        now = loads["first"]
        self.assertGreater(len(loads["changes"]), 0)
        for i, change in enumerate(loads["changes"]):
            sides = (change["factor"] - 1e-6, now), (change["factor"] + 1e-6, change["to"])
            for at, best in sides if i == 0 else sides[1:]:
                share = f"{100 * abs(1 - at):.9f} %"
                again = answer("arrange", thin, "--loads", share, "--answers", 3)["robust"]["loads"]
                there = [one["less" if at < 1 else "more"] for one in again["answers"]]
                self.assertEqual(there.index(min(there)), best)
            now = change["to"]
        # Bands that lose a hair less than is told are kept, a hair more are left.
        for i, one in enumerate(bands["answers"]):
            self.assertGreater(one["keeps_until"], 0.0)
            self.assertIn(one["accessory"], str(data["answers"][i]["boxes"]))
        for words in (("--loads", "60 %"), ("--loads", "-5 %"), ("--bands", "50"), ("--bands", "x")):
            code, _, err = run("arrange", thin, *words)
            self.assertEqual((code, bool(err)), (2, True), words)

    def test_more_are_looked_for_until_one_holds_and_the_gap_is_told(self):
        # derived: a line where the last gear of the lightest stands; it says nothing of the search.
        copy = self.at_its_best()
        best = answer("arrange", copy, "--answers", 1)
        self.assertEqual((best["chosen"], len(best["answers"])), (0, 1))
        text = copy.read_text(encoding="utf-8")
        self.assertNotIn("keep out", text)
        barred = self.folder / "barred.yaml"
        barred.write_text(text.replace("  casing: 122 mm\n", """  casing: 122 mm
  keep out:
    - {name: oil line, clock: "CLOCK", radius: 210 mm, size: 8 mm, face: both}
""".replace("CLOCK", self.clock_of_the_last(copy))))
        told = answer("arrange", barred, "--answers", 1)
        self.assertEqual(told["answers"][0]["verdict"], "does not hold")
        self.assertIn("oil line", told["answers"][0]["first_refusal"])
        self.assertGreater(told["chosen"], 0)
        self.assertEqual(told["answers"][told["chosen"]]["verdict"], "holds")
        self.assertAlmostEqual(masses(told)[0], masses(best)[0], places=9)
        out = " ".join(run("arrange", barred, "--answers", 1)[1].split())
        self.assertRegex(out, r"so the one shown is at most [\d.]+ % above the lightest that holds")

    def clock_of_the_last(self, path):
        """Clock position of the shaft furthest anticlockwise, to the minute below."""
        last = [s for s in answer("check", path)["shafts"] if "anticlockwise" in s["address"]][-1]
        angle = math.degrees(math.atan2(last["x"]["value"], last["y"]["value"])) % 360.0
        return f"{int(angle // 30) or 12}:{int(angle % 30 * 2):02d}"

    def test_interrupt_gives_the_best_so_far_and_its_gap(self):
        copy = self.with_section(TRAINER, "  boxes: {hp: {input teeth: 35..46}}\n")
        added = ROOT / "examples/monday/second_pump.yaml"
        with subprocess.Popen([COMMAND, "arrange", copy, "--add", added, "--progress"],
                              stdout=subprocess.PIPE, stderr=subprocess.PIPE, text=True) as search:
            told = [""]
            while "best so far" not in told[-1]:
                told.append(search.stderr.readline())
                self.assertTrue(told[-1], "the search ended before it was interrupted")
            search.send_signal(signal.SIGINT)
            out = " ".join(search.communicate(timeout=120)[0].split())
        self.assertEqual(search.returncode, 1)
        self.assertRegex(told[-1], r"best so far [\d.]+ kg, none below [\d.]+ kg, gap [\d.]+ %, way")
        for words in ("What is known so far", "ended before its proof", "% above the best"):
            self.assertIn(words, out)

    def test_conflict_about_room_is_told_soon_and_alike_for_any_threads(self):
        # derived: nothing fits within 73.2 deg (the front of the example ends there), and what is
        # told to do must do.
        text = self.at_its_best().read_text(encoding="utf-8")
        self.assertIn("wrap: 95 deg", text)
        copy = self.folder / "short.yaml"
        copy.write_text(text.replace("wrap: 95 deg", "wrap: 66 deg"))
        one, two = (run("arrange", copy, "--json", "--threads", n) for n in (1, 2))
        self.assertEqual(one[0], 1)
        self.assertEqual(one[1], two[1])
        told = json.loads(one[1])
        wrap = [m for m in told["conflict"] if m["demand"] == "the wrap of the box of hp"][0]
        self.assertGreater(len(told["conflict_held"]), 0)
        self.assertAlmostEqual(wrap["from"], math.radians(66.0), places=9)
        enough = math.degrees(wrap["to"]) + 1e-6
        self.assertLess(enough, 76.0)
        copy.write_text(text.replace("wrap: 95 deg", f"wrap: {enough:.7f} deg"))
        told = answer("arrange", copy, "--answers", 1)
        self.assertEqual(told["certificate"]["end"], "proven")
        self.assertGreater(len(told["answers"]), 0)


if __name__ == "__main__":
    unittest.main()
