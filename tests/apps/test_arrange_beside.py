#!/usr/bin/env python3
"""Is what a search of arrangements tells beside the lightest true: the cost of the start, loads and
bands that are off, what the rules refuse, an interrupt, a conflict about room?

ctest: release-only cost=30    (a checked build proves the formulae of every mesh that is asked about)
"""
import json
import math
import os
import signal
import subprocess
import sys
import unittest

sys.path.insert(0, os.path.dirname(__file__))
from arranging import TRAINER, Arranging, masses  # noqa: E402
from command_line import COMMAND, ROOT, answer, run  # noqa: E402
from test_schemas import follows  # noqa: E402


class Beside(Arranging):
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

    def test_every_answer_is_held_against_the_same_samples(self):
        pump, study = ROOT / "examples/monday/second_pump.yaml", ROOT / "examples/monday/loads.yaml"
        text = study.read_text().replace("../trainer.yaml", str(TRAINER)).replace("samples: 400", "samples: 40")
        few = self.folder / "few.yaml"
        few.write_text(text)
        written = self.folder / "arranged.yaml"
        words = ("--add", pump, "--keep", "drive/hp/box/input", "--answers", 3)
        data = answer("arrange", TRAINER, *words, "--study", few, "-o", written)
        follows(data, "arrange.schema.json")
        told = data["robust"]["samples"]
        by = {one["answer"]: one for one in told["answers"]}
        self.assertEqual((told["count"], told["due"], sorted(by)), (40, 40, [0, 1, 2]))
        beside = by[told["beside"]]
        self.assertEqual(told["beside"], data["chosen"])
        self.assertEqual((beside["alone"], beside["other_alone"]), (0, 0))
        for one in by.values():
            self.assertEqual(sum(one[key] for key in ("holds", "does_not_hold", "not_computable", "not_understood")), 40)
            self.assertEqual(one["holds"] - one["alone"], beside["holds"] - one["other_alone"])
            self.assertLessEqual(one["hits"], 40 - one["holds"])
        self.assertEqual(sum(one["lightest"] for one in by.values()) + told["none"], 40)
        holds = [one["holds"] for one in told["answers"]]
        self.assertEqual(holds, sorted(holds, reverse=True))
        self.assertGreater(holds[0], 0)
        self.assertLess(holds[-1], 40)
        # The file that was written, by a study of its own: the same samples, one after the other.
        again = self.folder / "again.yaml"
        again.write_text(text.replace(str(TRAINER), written.name))
        alone = answer("study", again)
        self.assertEqual(alone["hold"], beside["holds"])
        # The same for any number of threads.
        self.assertEqual(answer("arrange", TRAINER, *words, "--study", few, "--threads", 1)["robust"]["samples"], told)
        # What an answer does not have cannot vary in it.
        few.write_text(text + "  - {at: drive/hp/box/clockwise/9/face, law: normal, deviation: 1 %}\n")
        lacks = answer("arrange", TRAINER, *words, "--study", few)["robust"]["samples"]
        self.assertEqual(lacks["count"], 0)
        for one in lacks["answers"]:
            self.assertIn("line", one["refusal"])
        out = run("arrange", TRAINER, *words, "--study", few)[1]
        self.assertIn("takes no samples", out)

    def test_a_study_that_tells_no_chances_or_is_of_another_drive_is_refused(self):
        for study, says in ((ROOT / "examples/studies/trainer-shares.yaml", "tell no chances"),
                            (ROOT / "examples/studies/bizjet-loads.yaml", "of the drive"),
                            (TRAINER, "")):
            code, out, err = run("arrange", TRAINER, "--study", study)
            self.assertEqual((code, out), (2, ""), study)
            self.assertIn(says, err)

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
