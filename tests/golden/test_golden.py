#!/usr/bin/env python3
"""Are the committed answers the ones of today, and is none of them left over?"""

import os
import pathlib
import subprocess
import sys
import unittest

ROOT = pathlib.Path(__file__).resolve().parents[2]
TOOL = ROOT / "tools" / "golden.py"
LIST = ROOT / "tests" / "golden" / "answers.tsv"


def listed():
    """The files of the list, each with its words."""
    rows = [line.split("\t") for line in LIST.read_text(encoding="ascii").splitlines()
            if line and not line.startswith("#")]
    return {path: words for path, _, words in rows}


class TheAnswers(unittest.TestCase):
    def test_today_s_answers_are_the_committed_ones(self):
        done = subprocess.run([sys.executable, str(TOOL), "--test"], cwd=ROOT, env=os.environ,
                              capture_output=True, encoding="utf-8", timeout=280, check=False)
        self.assertEqual(done.returncode, 0, "make golden shows this\n" + done.stdout + done.stderr)

    def test_every_page_that_is_kept_is_asked_for(self):
        kept = {str(path.relative_to(ROOT)) for folder in ("check", "compare")
                for path in (LIST.parent / folder).iterdir()}
        self.assertEqual(kept - set(listed()), set())

    def test_every_example_is_among_them(self):
        asked = " ".join(listed().values())
        for example in (ROOT / "examples").glob("*.yaml"):
            self.assertIn(f"check examples/{example.name}", asked)


if __name__ == "__main__":
    unittest.main()
