#!/usr/bin/env python3
"""Does `seize` answer by its schema, the same twice, with its energies balanced?"""
import json
import math
import os
import sys
import unittest

sys.path.insert(0, os.path.dirname(__file__))
from command_line import ROOT, InFolder, answer, run  # noqa: E402

import jsonschema  # noqa: E402

BIZJET = ROOT / "examples" / "bizjet.yaml"
PUMP = "hydraulic pump 1"


LARGE = ROOT / "examples" / "large.yaml"


def schema_of(told):
    path = ROOT / "docs/schema/seize.schema.json"
    jsonschema.Draft202012Validator(json.loads(path.read_text(encoding="utf-8"))).validate(told)


class Jolts(InFolder):
    def test_every_jolt_answers_by_its_schema_with_its_energies_balanced(self):
        for words in (("short", "generator 1"), ("step", "hydraulic pump 1"), ("slam",), ("chop",),
                      ("engage", "starter"), ("slam", "hydraulic pump 2")):
            told = answer("jolt", LARGE, *words)
            schema_of(told)
            self.assertEqual(told["jolt"]["what"], words[0])
            self.assertEqual([one["run"] for one in told["runs"]],
                             ["necks at their weakest", "without necks"])
            for one in told["runs"]:
                self.assertNotIn("because", one)
                self.assertLess(one["energy"]["balance"], 1e-6)

    def test_a_slam_and_a_chop_are_as_hard_as_the_file_says(self):
        slam, chop = (answer("jolt", LARGE, what)["jolt"] for what in ("slam", "chop"))
        self.assertAlmostEqual(slam["acceleration"], 3600 * math.pi / 30, 5)
        self.assertAlmostEqual(chop["acceleration"], -5000 * math.pi / 30, 5)
        self.assertAlmostEqual(slam["torque"] / 3600, -chop["torque"] / 5000, 6)
        copy = self.copy_of(LARGE)
        copy.write_text(copy.read_text(encoding="utf-8") + "\njolt: {slam: 1800 rpm/s}\n",
                        encoding="utf-8")
        self.assertAlmostEqual(answer("jolt", copy, "slam")["jolt"]["torque"], slam["torque"] / 2, 4)

    def test_a_slam_loads_every_spring_by_what_it_speeds_up(self):
        # derived: rigid, the mean of what a sudden torque adds is J alpha of what hangs behind, and
        # the crest is at most twice that where one mode is met (trn-step-torque-two-inertia)
        told = answer("jolt", LARGE, "slam")["runs"][1]
        for peak in told["peaks"]:
            self.assertGreater(peak["before"], peak["steady"])

    def test_a_step_takes_the_overload_of_the_file(self):
        told = answer("jolt", LARGE, "step", "hydraulic pump 1")
        pad = told["runs"][1]["peaks"][-1]
        self.assertEqual(pad["of"], "shaft to hydraulic pump 1, rotor")
        # a sudden torque swings about what it adds, at most to twice of it
        self.assertGreater(pad["before"] - pad["steady"], -told["jolt"]["torque"] * 1.0)
        self.assertLess(pad["before"] - pad["steady"], -told["jolt"]["torque"] * 2.0)

    def test_a_neck_that_breaks_under_a_jolt_does_not_hold(self):
        code, out, err = run("jolt", LARGE, "short", "generator 1", "--condition", "take-off")
        self.assertEqual((code, err), (1, ""))
        self.assertIn("does not hold: this load must be borne, and the neck to generator 1, rotor "
                      "breaks at 180 N.m", " ".join(out.split()))
        code, out, err = run("jolt", LARGE, "slam", "--condition", "take-off")
        self.assertEqual((code, err), (0, ""))
        self.assertNotIn("does not hold", out)
        code, out, err = run("seize", LARGE, "generator 1", "--condition", "take-off")
        self.assertEqual((code, err), (0, ""))  # a seizure is told, not judged

    def test_a_chop_that_takes_its_time_is_borne(self):
        share = {}
        for time in (None, "2 ms", "10 ms", "100 ms"):
            words = ("jolt", LARGE, "chop", "--condition", "take-off",
                     *(("--ramp", time) if time else ()))
            code, out, err = run(*words)
            self.assertEqual(code, 0 if time in ("10 ms", "100 ms") else 1, err)
            self.assertIn("that comes evenly in " + time if time else "that comes at once",
                          " ".join(out.split()))
            told = json.loads(run(*words, "--json")[1])
            schema_of(told)
            share[time] = max(abs(one["before"]) / one["bears"]
                              for one in told["runs"][1]["peaks"] if one["bears"])
        self.assertLess(share["100 ms"], share["10 ms"])
        self.assertLess(share["10 ms"], share[None])
        code, _, err = run("jolt", LARGE, "short", "generator 1", "--ramp", "3 ms")
        self.assertEqual(code, 2)
        self.assertIn("a ramp for a step, slam or chop", err)

    def test_what_is_no_jolt_and_what_needs_an_accessory_is_refused(self):
        for words, says in ((("bang",), "short, step, slam, chop, engage"),
                            (("short",), "the name of an accessory"),
                            (("short", "generator"), "generator 1")):
            code, _, err = run("jolt", LARGE, *words)
            self.assertEqual(code, 2)
            self.assertIn(says, err)
        code, out, _ = run("jolt", LARGE, "engage", "fuel pump")
        self.assertEqual(code, 2)
        self.assertIn("no overrunning clutch", out)


class Answers(InFolder):
    def test_the_neck_saves_the_box_and_without_it_teeth_break(self):
        told = answer("seize", BIZJET, PUMP, "--condition", "take-off")
        schema_of(told)
        strong, weak, bare = told["runs"]
        for one, neck in ((strong, 59), (weak, 48)):
            self.assertEqual(one["cut_off"], [PUMP])
            self.assertAlmostEqual(one["neck"], neck)
            broken = [event for event in one["events"] if event["what"] == "breaks"]
            self.assertEqual(len(broken), 1)
            self.assertAlmostEqual(abs(broken[0]["T"]), neck, places=6)
            for peak in one["peaks"]:
                if peak["bears"] is not None:
                    self.assertLess(abs(peak["before"]), peak["bears"])
                    self.assertLess(abs(peak["after"]), peak["bears"])
        self.assertTrue(any(event["what"] == "breaks" and event["of"].startswith("mesh")
                            for event in bare["events"]))
        for one in told["runs"]:
            self.assertLess(one["energy"]["balance"], 1e-6)

    def test_swapped_necks_cost_the_box_its_teeth(self):
        large = ROOT / "examples" / "large.yaml"
        words = ("seize", large, "generator 1", "--condition", "take-off", "--ramp", "20 ms")
        own, lent = (answer(*words)["runs"][0], answer(*words, "--neck-of", "starter")["runs"][0])
        self.assertEqual(own["cut_off"], ["generator 1"])
        teeth = [event for event in lent["events"]
                 if event["what"] == "breaks" and event["of"].startswith("mesh")]
        self.assertGreaterEqual(len(teeth), 1)
        self.assertGreater(len(lent["cut_off"]), 1)

    def test_seizures_at_low_speed_keep_their_energies_too(self):
        trainer = ROOT / "examples" / "trainer.yaml"
        for accessory in ("control alternator", "breather"):
            told = answer("seize", trainer, accessory, "--condition", "light-off")
            for one in told["runs"]:
                self.assertNotIn("because", one)
                self.assertLess(one["energy"]["balance"], 1e-6)

    def test_what_it_rests_on_is_told_and_may_be_changed(self):
        told = answer("seize", BIZJET, PUMP)
        self.assertEqual([one["key"] for one in told["assumptions"]],
                         ["seizure/mesh damping", "seizure/shaft damping", "seizure/play"])
        self.assertEqual(told["left_out"], ["starter"])
        for one in told["runs"]:
            self.assertGreaterEqual(one["happened"], len(one["events"]))
            for peak in one["peaks"]:
                self.assertEqual(peak["bears"] is None, "by" not in peak)

    def test_an_accessory_without_a_neck_lends_none(self):
        code, _, err = run("seize", BIZJET, PUMP, "--neck-of", "fuel pump")
        self.assertEqual(code, 2)
        self.assertIn("no neck to lend", err)

    def test_the_same_twice(self):
        words = ("seize", BIZJET, PUMP, "--ramp", "5 ms", "--json")
        self.assertEqual(run(*words), run(*words))

    def test_a_starter_that_its_clutch_let_go_is_told(self):
        code, out, err = run("seize", BIZJET, "starter", "--condition", "cruise")
        self.assertEqual((code, err), (2, ""))
        self.assertIn("it stands still behind its clutch", " ".join(out.split()))

    def test_a_run_that_cannot_reach_its_end_says_where_and_why(self):
        copy = self.copy_of(ROOT / "examples/trainer.yaml")
        copy.write_text(copy.read_text().replace("inertia: 0.0006 kg.m2", "inertia: 1e-15 kg.m2"))
        words = ("seize", copy, "hydraulic pump", "--condition", "take-off")
        code, out, err = run(*words)
        self.assertEqual((code, err), (2, ""))
        self.assertRegex(" ".join(out.split()), r"neck at its weakest: .*?; refused: the steps are "
                         r"too small, and too many, to reach the end, at \S+ ms of \S+ ms; fastest "
                         "of all swings oil pump pack, rotor: is its inertia right")
        self.assertIn("largest torques", out)  # what was reached is kept
        told = json.loads(run(*words, "--json")[1])
        schema_of(told)
        self.assertEqual({one["of"] for one in told["runs"]}, {"oil pump pack, rotor"})
        self.assertTrue(all(0 < one["t"] < one["until"] for one in told["runs"]))

    def test_a_ramp_without_a_unit_is_asked_for_one(self):
        code, _, err = run("seize", BIZJET, PUMP, "--ramp", "5")
        self.assertEqual(code, 2)
        self.assertIn("did you mean 5 ms?", err)
        code, _, err = run("start", BIZJET, "--ambient", "15")
        self.assertEqual(code, 2)
        self.assertIn("did you mean 15 degC?", err)
        code, _, err = run("seize", BIZJET, PUMP, "--ramp", "soon")
        self.assertEqual(code, 2)
        self.assertNotIn("did you mean", err)

    def test_an_unknown_accessory_is_refused_with_the_nearest(self):
        code, _, err = run("seize", BIZJET, "hydraulic pmp 1")
        self.assertEqual(code, 2)
        self.assertIn(PUMP, err)


if __name__ == "__main__":
    unittest.main()
