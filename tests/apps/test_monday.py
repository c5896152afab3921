#!/usr/bin/env python3
"""Does the Monday of examples/monday run, and in less than a minute?

ctest: release-only alone    (it measures time)
"""
import os
import subprocess
import sys
import time
import unittest

sys.path.insert(0, os.path.dirname(__file__))
from command_line import COMMAND, ROOT, InFolder  # noqa: E402


class Monday(InFolder):
    def test_monday_runs_under_a_minute(self):
        begin = time.monotonic()
        done = subprocess.run([ROOT / "examples/monday/monday.sh", self.folder], cwd=ROOT,
                              env={**os.environ, "TOWERSHAFT": COMMAND}, capture_output=True,
                              timeout=280, check=False)
        self.assertEqual(done.returncode, 0, done.stderr)
        self.assertLess(time.monotonic() - begin, 60.0)
        for words in (b"hydraulic pump 2", b"The certificate holds", b"What less wrap costs",
                      b"power lost in all meshes", b"stated: hydraulic pump 2 back to back",
                      b"Interface of the pad of hydraulic pump 2", b"neck breaks at most at",
                      b"What keeping it costs: the lightest weighs", b"clashes  by all rules",
                      b"the start by starter-generator passes no mesh of the box, as it does now",
                      b"Against revision B"):
            self.assertIn(words, done.stdout)
        self.assertTrue((self.folder / "decided.pdf").stat().st_size > 10000)
        self.assertTrue((self.folder / "sheet.pdf").read_bytes().startswith(b"%PDF"))
        self.assertTrue((self.folder / "after.png").stat().st_size > 10000)


if __name__ == "__main__":
    unittest.main()
