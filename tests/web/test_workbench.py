"""Can a person do the work in a real browser?  Runs the script of every view and every hand."""
# ctest: release-only
# ctest: timeout=900 cost=120
import unittest

import browser


class Workbench(browser.Browser):
    def test_the_work_can_be_done_by_mouse_and_by_keyboard(self):
        self.run_script("workbench.mjs")

    def test_the_drive_is_set_beside_others(self):
        self.run_script("others.mjs")

    def test_the_drive_stands_in_space(self):
        self.run_script("space.mjs")


if __name__ == "__main__":
    unittest.main()
