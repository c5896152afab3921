#!/usr/bin/env python3
"""Does the quiz of a drive hold against its check, and does the hand-out move as the drive does?"""
# ctest: release-only
import base64
import json
import math
import os
import re
import statistics
import subprocess
import sys
import unittest

sys.path.insert(0, os.path.dirname(__file__))
from command_line import EXAMPLES, ROOT, InFolder, answer, run  # noqa: E402

import jsonschema  # noqa: E402

BIZJET = ROOT / "examples" / "bizjet.yaml"
SENSES = {"cw": "clockwise", "ccw": "anticlockwise"}
HOSTILE = "\"<img src=x onerror=1>\""


def right(question):
    return [one["says"] for one in question["choices"] if one["right"]]


def moving(page):
    """The pictures of a page that move."""
    pictures = [base64.b64decode(one).decode("utf-8")
                for one in re.findall(r"data:image/svg\+xml;base64,([A-Za-z0-9+/=]+)", page)]
    return [one for one in pictures if "@keyframes turn" in one]


def turning(picture):
    """Of every gear: where its axis stands, seconds a turn, sense from behind, radius of its tips."""
    found = []
    for group in re.findall(r'<g transform="translate\(([-\d.]+) ([-\d.]+)\)"><g class="c?cw">'
                            r'<g class="turn" style="animation-duration:([\d.]+)s'
                            r'(;animation-direction:reverse)?"><path d="([^"]+)Z"', picture):
        points = re.findall(r"[ML]([-\d.]+) ([-\d.]+)", group[4])
        tip = max(math.hypot(float(x), float(y)) for x, y in points)
        found.append((float(group[0]), float(group[1]), float(group[2]), 1 if group[3] else -1, tip))
    return found


class Brief(InFolder):
    def page(self, *words, drive=BIZJET):
        out = self.folder / "brief.html"
        code, _, err = run("brief", drive, "-o", out, *words)
        self.assertEqual((code, err), (0, ""))
        return out.read_text(encoding="utf-8")

    def test_every_quiz_follows_its_schema_and_has_one_right_choice(self):
        path = ROOT / "docs/schema/brief.schema.json"
        validator = jsonschema.Draft202012Validator(json.loads(path.read_text(encoding="utf-8")))
        for example in EXAMPLES:
            for words in ([], ["--numbers"]):
                quiz = answer("brief", example, *words)
                validator.validate(quiz)
                self.assertGreaterEqual(len(quiz["questions"]), 6)
                for question in quiz["questions"]:
                    says = [one["says"] for one in question["choices"]]
                    self.assertEqual(len(set(says)), len(says))
                    self.assertEqual(len(right(question)), 1)
                    for one in question["choices"]:
                        self.assertNotEqual(one["right"], "slip" in one)

    def test_senses_and_ratios_are_those_of_the_check(self):
        seen = set()
        for example in EXAMPLES:
            checked = answer("check", example)
            shafts = {one["address"]: one for one in checked["shafts"]}
            pads = {one["name"]: one for one in checked["pads"]}
            for question in answer("brief", example, "--numbers")["questions"]:
                sense = re.search(r"The pad of (.+) is on the \w+ face", question["asks"])
                ratio = re.search(r"How often does the pad of (.+) turn while", question["asks"])
                if sense:
                    self.assertEqual(right(question), [SENSES[pads[sense[1]]["turns"]]])
                    seen.add("sense")
                if ratio:
                    exact = shafts[pads[ratio[1]]["shaft"]]["ratio"]
                    self.assertAlmostEqual(float(right(question)[0]) / exact["over"]
                                           * exact["under"], 1.0, delta=5e-3)
                    seen.add("ratio")
        self.assertEqual(seen, {"sense", "ratio"})

    def test_what_lets_go_is_what_effects_says(self):
        asked = 0
        for example in EXAMPLES:
            seized = {one["part"]: one for one in answer("effects", example)["failures"]
                      if one["mode"] == "seized"}
            for question in answer("brief", example)["questions"]:
                who = re.match(r"The (.+) seizes .* What stops", question["asks"])
                if who:
                    asked += 1
                    lost = [pad["accessory"] for pad in seized[who[1]]["pads"]
                            if pad["goes"] != "on"]
                    self.assertEqual(right(question), [", ".join(lost)])
        self.assertGreaterEqual(asked, len(EXAMPLES))

    def test_gears_that_touch_turn_against_each_other_as_their_pitch_circles_do(self):
        picture = moving(self.page())[0]
        gears = turning(picture)
        self.assertGreaterEqual(len(gears), 9)
        touching = 0
        for i, one in enumerate(gears):
            for two in gears[i + 1:]:
                apart = math.hypot(one[0] - two[0], one[1] - two[1])
                # r_1/r_2 of the pitch circles follows from the speeds alone
                r_1 = apart * one[2] / (one[2] + two[2])
                if apart > 0.0 and one[3] != two[3] and 0.9 < one[4] / r_1 < 1.1 \
                        and 0.9 < two[4] / (apart - r_1) < 1.1:
                    touching += 1
        self.assertGreaterEqual(touching, 6)   # all spur meshes of the example

    def test_power_runs_inwards_at_the_start_and_outwards_later(self):
        later, start = moving(self.page())
        self.assertNotIn('class="flow back"', later)
        self.assertEqual(start.count('class="flow back"'), 1)
        self.assertIn("prefers-reduced-motion", later)

    def test_words_alone_hold_no_ratio_and_the_key_is_left_out_unless_asked_for(self):
        plain, full = self.page(), self.page("--numbers", "--key")
        self.assertNotIn("per spool turn", plain)
        self.assertNotIn("Answers", plain)
        self.assertIn("per spool turn", full)
        self.assertIn("Answers, as the drive gives them", full)
        self.assertEqual(full, self.page("--numbers", "--key"))

    def test_names_of_the_file_stay_text(self):
        drive = self.copy_of(BIZJET)
        drive.write_text(drive.read_text(encoding="utf-8").replace(
            "  generator:", f"  {HOSTILE}:").replace("front: generator,", f"front: {HOSTILE},"),
            encoding="utf-8")
        page = self.page(drive=drive)
        for text in (page, *moving(page)):
            self.assertNotIn("<img src=x", text)
        self.assertIn("&lt;img src=x onerror=1&gt;", page)

    def test_it_is_written_on_paper_too(self):
        out = self.folder / "brief.pdf"
        self.assertEqual(run("brief", BIZJET, "-o", out, "--key")[0], 0)
        text = subprocess.run(["pdftotext", "-layout", out, "-"], check=True, capture_output=True,
                              text=True).stdout
        self.assertIn("Preliminary design aid", text)
        self.assertIn("What breaks first, and why", text)

    def test_where_to_write_must_be_said_and_known(self):
        code, _, err = run("brief", BIZJET)
        self.assertEqual(code, 2)
        self.assertIn("-o says where", err)
        code, _, err = run("brief", BIZJET, "-o", self.folder / "brief.doc")
        self.assertEqual(code, 2)
        self.assertIn("pdf, html", err)

    def words_of(self, pdf):
        """Each word of the first page with the height of its letters, pt."""
        page = subprocess.run(["pdftotext", "-bbox", "-f", "1", "-l", "1", str(pdf), "-"],
                              check=True, capture_output=True, text=True).stdout
        found = re.findall(r'yMin="([0-9.]+)" xMax="[0-9.]+" yMax="([0-9.]+)">([^<]+)<', page)
        return [(float(high) - float(low), word) for low, high, word in found]

    def test_large_print_is_larger_by_sixteen_ninths(self):
        plain, large = self.folder / "plain.pdf", self.folder / "large.pdf"
        self.assertEqual(run("brief", EXAMPLES[0], "-o", plain)[0], 0)
        self.assertEqual(run("brief", EXAMPLES[0], "--large", "-o", large)[0], 0)
        small, big = ([h for h, _ in self.words_of(pdf)] for pdf in (plain, large))
        self.assertAlmostEqual(min(big) / min(small), 16 / 9, delta=0.02)
        self.assertAlmostEqual(statistics.median(big) / statistics.median(small), 16 / 9,
                               delta=0.02)
        sizes = [subprocess.run(["pdfinfo", str(pdf)], check=True, capture_output=True,
                                text=True).stdout for pdf in (plain, large)]
        for told in sizes:
            self.assertIn("(A4)", told)
        page = self.folder / "large.html"
        self.assertEqual(run("brief", EXAMPLES[0], "--large", "-o", page)[0], 0)
        self.assertIn("html{font-size:150%}", page.read_text(encoding="utf-8"))

    def test_paper_without_numbers_has_none_in_its_pictures_either(self):
        """Its picture is the plain one: no ratio, no speed, no power, no hash of a title block."""
        for example in EXAMPLES:
            out = self.folder / "plain.pdf"
            self.assertEqual(run("brief", example, "-o", out)[0], 0)
            text = subprocess.run(["pdftotext", "-layout", str(out), "-"], check=True,
                                  capture_output=True, text=True).stdout
            self.assertNotRegex(text, r"[0-9] *(kW|rpm|N.m|mm)\b")
            numbers = self.folder / "numbers.pdf"
            self.assertEqual(run("brief", example, "--numbers", "-o", numbers)[0], 0)
            self.assertGreater(numbers.stat().st_size, out.stat().st_size, "richer pictures")


if __name__ == "__main__":
    unittest.main()
