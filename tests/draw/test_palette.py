"""Do the colours of data/look.json keep their contrasts and distances, and would it be seen if not?"""
# ctest: release-only

import contextlib
import io
import json
import pathlib
import sys
import tempfile
import unittest

ROOT = pathlib.Path(__file__).resolve().parents[2]
sys.path.insert(0, str(ROOT / "tools"))
sys.dont_write_bytecode = True

import check_palette  # noqa: E402
import look_to_c  # noqa: E402


def misses(look):
    """The lines that miss a demand."""
    with tempfile.NamedTemporaryFile("w", suffix=".json") as file:
        json.dump(look, file)
        file.flush()
        said = io.StringIO()
        kept, sys.argv = sys.argv, ["check_palette.py", file.name]
        try:
            with contextlib.redirect_stdout(said):
                status = check_palette.main()
        finally:
            sys.argv = kept
    lines = [line for line in said.getvalue().splitlines() if "MISS" in line]
    assert status == (1 if lines else 0)
    return lines


class Palette(unittest.TestCase):
    def setUp(self):
        self.look = json.loads((ROOT / "data" / "look.json").read_text())

    def test_every_contrast_and_distance_holds(self):
        self.assertEqual(misses(self.look), [])

    def test_pale_text_is_seen(self):
        self.look["colour"]["light"]["ink3"] = "#b0b0b0"
        self.assertTrue(any("ink3" in line for line in misses(self.look)))

    def test_two_states_that_look_alike_to_some_are_seen(self):
        self.look["colour"]["print"]["st-warn"] = self.look["colour"]["print"]["st-refuse"]
        self.assertTrue(any("status" in line for line in misses(self.look)))

    def test_red_and_green_ribbons_are_seen(self):
        # A pair that normal eyes tell apart and deuteranopes do not.
        self.look["colour"]["light"]["power"] = "#6b7a1f"
        self.look["colour"]["light"]["back"] = "#a0561c"
        self.assertTrue(any("power/back" in line for line in misses(self.look)))

    def test_formula_on_published_pairs(self):
        # Sharma, Wu & Dalal 2005, pairs 1 and 25 (from memory).
        for first, second, distance in (
                ((50, 2.6772, -79.7751), (50, 0, -82.7485), 2.0425),
                ((60.2574, -34.0099, 36.2677), (60.4626, -34.1751, 39.4387), 1.2644)):
            self.assertAlmostEqual(check_palette.de00(first, second), distance, places=4)


class Generator(unittest.TestCase):
    def setUp(self):
        self.look = json.loads((ROOT / "data" / "look.json").read_text())

    def test_numbers_become_macros_and_colours_rows(self):
        text = look_to_c.convert(self.look)
        self.assertIn("#define TS_LOOK_RIBBON_PX_PER_KW 0.45\n", text)
        self.assertIn("    TS_COLOUR_GEAR_CCW", text)
        self.assertEqual(text.count("{{"), 4)

    def test_a_ground_that_lacks_a_colour_is_refused(self):
        del self.look["colour"]["dark"]["hair"]
        with self.assertRaises(ValueError):
            look_to_c.convert(self.look)

    def test_a_colour_that_is_none_is_refused(self):
        self.look["colour"]["dark"]["hair"] = "grey"
        with self.assertRaises(ValueError):
            look_to_c.convert(self.look)


if __name__ == "__main__":
    unittest.main()
