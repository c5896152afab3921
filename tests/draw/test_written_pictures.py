# ctest: release-only    (whole commands take minutes under the sanitizers)
"""Do the files that `draw` writes read as what they are, and hold no clock and no machine?"""

import os
import pathlib
import re
import struct
import subprocess
import tempfile
import unittest
import xml.etree.ElementTree

ROOT = pathlib.Path(__file__).resolve().parents[2]
COMMAND = os.environ.get("TOWERSHAFT", str(ROOT / "build" / "release" / "towershaft"))
FIGURES = ("behind", "front", "pads", "unrolled", "power", "speeds", "teeth", "root", "margins", "mass",
           "necks", "widths", "modes", "start", "heat")


def draw(drive, target, *words):
    subprocess.run([COMMAND, "draw", str(drive), "-o", str(target), *words], check=True,
                   capture_output=True, cwd=ROOT)
    return target.read_bytes()


class Written(unittest.TestCase):
    def setUp(self):
        self.keep = tempfile.TemporaryDirectory()
        self.place = pathlib.Path(self.keep.name)
        self.addCleanup(self.keep.cleanup)
        self.drive = ROOT / "examples" / "bizjet.yaml"

    def test_svg_is_well_formed_and_titled(self):
        for figure in FIGURES:
            tree = xml.etree.ElementTree.fromstring(
                draw(self.drive, self.place / "x.svg", "--figure", figure))
            self.assertEqual(tree.tag, "{http://www.w3.org/2000/svg}svg")
            title = tree.find("{http://www.w3.org/2000/svg}title")
            self.assertIn("Corncrake", title.text)
            self.assertEqual(tree.get("width"), "1440px")

    def test_svg_with_a_hostile_title_is_well_formed(self):
        text = self.drive.read_text()
        hostile = self.place / "hostile.yaml"
        hostile.write_text(re.sub(r"^title:.*$", 'title: "<svg> & ]]> \\"x\\" </title>"', text,
                                  count=1, flags=re.MULTILINE))
        tree = xml.etree.ElementTree.fromstring(draw(hostile, self.place / "x.svg"))
        self.assertEqual(tree.find("{http://www.w3.org/2000/svg}title").text,
                         '<svg> & ]]> "x" </title>')

    def test_pdf_is_a3_and_says_no_date(self):
        for figure in FIGURES:
            data = draw(self.drive, self.place / "x.pdf", "--figure", figure)
            self.assertTrue(data.startswith(b"%PDF-"))
            self.assertNotIn(b"CreationDate", data)
            # 420 mm at 72 points an inch.
            self.assertRegex(data, rb"MediaBox \[ ?0 0 1190\.55")

    def test_a_mesh_is_drawn_by_its_address(self):
        box = "drive/hp/box/anticlockwise/"
        one = draw(self.drive, self.place / "a.svg", "--figure", "teeth", "--at", box + "1")
        two = draw(self.drive, self.place / "b.svg", "--figure", "teeth", "--at", box + "2")
        part = draw(self.drive, self.place / "c.svg", "--figure", "teeth", "--at", box + "1/teeth")
        self.assertNotEqual(one, two)
        self.assertEqual(one, part)

    def test_what_is_no_mesh_is_refused_with_the_meshes_there_are(self):
        for address, word in (("drive/hp/take-off/bevels", b"is no cylindrical mesh; expected drive"),
                              ("accessories/fuel pump", b"is no cylindrical mesh; expected drive"),
                              ("", b"an empty address is no cylindrical mesh"),
                              ("drive/hp/boxx", b"did you mean drive/hp/box")):
            told = subprocess.run([COMMAND, "draw", str(self.drive), "-o",
                                   str(self.place / "x.svg"), "--figure", "root", "--at", address],
                                  capture_output=True, cwd=ROOT)
            self.assertEqual(told.returncode, 2)
            self.assertIn(word, told.stderr)
            self.assertFalse((self.place / "x.svg").exists())

    def test_a_condition_for_a_picture_of_all_of_them_is_refused_with_the_pictures_of_one(self):
        told = subprocess.run([COMMAND, "draw", str(self.drive), "-o", str(self.place / "x.svg"),
                               "--figure", "speeds", "--condition", "crank"],
                              capture_output=True, cwd=ROOT)
        self.assertEqual(told.returncode, 2)
        self.assertIn(b"speeds is of no single condition", told.stderr)
        one_of = told.stderr.split(b"one of the pictures ")[1].split()
        for figure in map(bytes.decode, one_of):
            self.assertNotEqual(*(draw(self.drive, self.place / "y.svg", "--figure", figure,
                                       "--condition", name) for name in ("crank", "cruise")))

    def test_png_has_two_pixels_a_unit(self):
        data = draw(self.drive, self.place / "x.png")
        self.assertEqual(data[:8], b"\x89PNG\r\n\x1a\n")
        self.assertEqual(struct.unpack(">I", data[16:20])[0], 2880)

    def test_bytes_depend_on_nothing_but_the_drive(self):
        first = draw(self.drive, self.place / "a.svg")
        self.assertEqual(first, draw(self.drive, self.place / "b.svg"))
        moved = dict(os.environ, LC_ALL="de_DE.UTF-8", TZ="Pacific/Apia", LANGUAGE="he")
        subprocess.run([COMMAND, "draw", str(self.drive), "-o", str(self.place / "c.svg")],
                       check=True, capture_output=True, cwd=ROOT, env=moved)
        self.assertEqual(first, (self.place / "c.svg").read_bytes())


if __name__ == "__main__":
    unittest.main()
