"""Is a whole errand done in a real browser, by a newcomer, on a Monday, on paper, in text, in time?"""
# ctest: release-only
# ctest: alone    (a hand that waits for a slow page puts its words elsewhere)
# ctest: timeout=900 cost=110
import unittest

import browser


class Errands(browser.Browser):
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


if __name__ == "__main__":
    unittest.main()
