#!/usr/bin/env python3
"""Does the Tuesday of examples/tuesday run, and show what its review asks for?

ctest: release-only
"""
import os
import subprocess
import sys
import unittest

sys.path.insert(0, os.path.dirname(__file__))
from command_line import COMMAND, ROOT, InFolder, answer  # noqa: E402

PUMPS = {"trainer": "hydraulic pump", "bizjet": "hydraulic pump 1",
         "medium": "hydraulic pump 1", "large": "hydraulic pump 1"}


class Tuesday(InFolder):
    def test_tuesday_runs(self):
        done = subprocess.run([ROOT / "examples/tuesday/tuesday.sh", self.folder], cwd=ROOT,
                              env={**os.environ, "TOWERSHAFT": COMMAND}, capture_output=True,
                              timeout=280, check=False)
        self.assertEqual(done.returncode, 0, done.stderr)
        for words in (b"comes to idle and on to take-off", b"this load must be borne", b"the throttle is slammed open at take-off",
                      b"the neck to hydraulic pump, rotor breaks",
                      b"the neck of hydraulic pump 1 breaks", b"teeth break in mesh"):
            self.assertIn(words, done.stdout)
        for name in ("start.png", "selectivity.png"):
            self.assertGreater((self.folder / name).stat().st_size, 10000)

    def test_the_neck_alone_breaks_and_everything_else_goes_on(self):
        for engine, pump in PUMPS.items():
            told = answer("seize", ROOT / f"examples/{engine}.yaml", pump, "--condition", "take-off")
            for run in told["runs"][:2]:
                breaks = [event["of"] for event in run["events"] if event["what"] == "breaks"]
                self.assertEqual(breaks, [f"shaft to {pump}, rotor"])
                self.assertEqual(run["cut_off"], [pump])
                self.assertGreater(run["pad_angle"], 0.0)
                for peak in run["peaks"]:
                    if peak["bears"] is not None:
                        self.assertLess(max(abs(peak["before"]), abs(peak["after"])), peak["bears"])
            bare = told["runs"][2]
            self.assertTrue(any(event["what"] == "breaks" and event["of"].startswith("mesh")
                                for event in bare["events"]))

    def test_a_lent_neck_costs_the_gearbox_its_teeth(self):
        words = ("seize", ROOT / "examples/large.yaml", "generator 1", "--condition", "take-off",
                 "--ramp", "20 ms")
        own = answer(*words)["runs"][0]
        lent = answer(*words, "--neck-of", "starter")["runs"][0]
        self.assertEqual(own["cut_off"], ["generator 1"])
        self.assertTrue(any(event["what"] == "breaks" and event["of"].startswith("mesh")
                            for event in lent["events"]))


if __name__ == "__main__":
    unittest.main()
