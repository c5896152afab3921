"""Can a person do the work in a real browser?  Runs the scripts beside it in Debian's chromium."""
# ctest: release-only
# ctest: timeout=900 cost=120
import os
import pathlib
import subprocess
import sys
import tempfile
import unittest

import webroom

COMMAND = os.environ.get("TOWERSHAFT", str(webroom.ROOT / "build/release/towershaft"))


class Browser(unittest.TestCase):
    def run_script(self, name):
        place = webroom.prepare()
        with tempfile.TemporaryDirectory() as folder:
            done = subprocess.run(["node", pathlib.Path(__file__).with_name(name), place, COMMAND,
                                   webroom.ROOT, folder], capture_output=True, text=True, timeout=850, check=False)
        sys.stdout.write(done.stdout)
        self.assertEqual(done.returncode, 0, done.stdout + done.stderr)

    def test_the_work_can_be_done_by_mouse_and_by_keyboard(self):
        self.run_script("workbench.mjs")

    def test_a_newcomer_finds_the_way(self):
        self.run_script("newcomer.mjs")

    def test_a_monday_is_worked_through_by_mouse_and_by_keyboard_alone(self):
        self.run_script("monday.mjs")

    def test_every_view_is_printed_on_white(self):
        self.run_script("paper.mjs")

    def test_the_text_is_helped_along_and_two_hands_come_together(self):
        self.run_script("text.mjs")

    def test_a_start_and_a_seizure_are_played_as_they_were_computed(self):
        self.run_script("motion.mjs")

    def test_the_drive_is_set_beside_others(self):
        self.run_script("others.mjs")

    def test_the_drive_stands_in_space(self):
        self.run_script("space.mjs")


if __name__ == "__main__":
    unittest.main()
