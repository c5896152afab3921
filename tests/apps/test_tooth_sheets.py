#!/usr/bin/env python3
# ctest: release-only    (whole commands take minutes under the sanitizers)
"""Are the measures on the data sheets of the gears those that other formulas give?

Spans, pins and tolerances are computed here again from the numbers of the sheet itself: the base
tangent length of textbooks, the pin by the involute solved by halving, ISO 1328-1:2013 as printed.
"""
import html.parser
import math
import os
import re
import sys
import unittest

sys.path.insert(0, os.path.dirname(__file__))
from command_line import EXAMPLES, ROOT, InFolder, answer, run  # noqa: E402

BIZJET = ROOT / "examples/bizjet.yaml"


class Sheets(html.parser.HTMLParser):
    """Every chapter: its rows by symbol, its words."""

    def __init__(self, text):
        super().__init__(convert_charrefs=True)
        self.chapters, self.cell, self.row, self.tag = {}, None, [], None
        self.feed(text)

    def handle_starttag(self, tag, attributes):
        self.tag = tag
        if tag == "h2":
            self.now, self.title = {}, ""
        if tag == "tr":
            self.row = []
        if tag in ("td", "th"):
            self.cell = ""

    def handle_data(self, data):
        if self.cell is not None:
            self.cell += data
        elif self.tag == "h2":
            self.title += data
        elif self.tag == "caption" and "class" in data:
            self.now["class"] = re.search(r"class (\d+)", data).group(1)

    def handle_endtag(self, tag):
        if tag == "h2":
            self.chapters[re.sub(r"^\d+ ", "", self.title.strip())] = self.now
            self.tag = None
        if tag in ("td", "th"):
            self.row.append(self.cell)
            self.cell = None
        if tag == "tr" and len(self.row) == 3 and self.row[1]:
            self.now[self.row[1]] = self.row[2]
            self.now["words of " + self.row[1]] = self.row[0]


def number(text):
    return float(re.match(r"-?[0-9.]+", text).group(0))


def both(text):
    return [float(one) for one in re.findall(r"-?[0-9.]*[0-9]", text)[:2]]


def inv(a):
    return math.tan(a) - a


def over_pins(z, m_n, alpha, x, D_M):
    """Of a spur gear: the angle at the middle of the pin by halving."""
    d_b = z * m_n * math.cos(alpha)
    wanted = inv(alpha) + D_M / d_b + 2 * x * math.tan(alpha) / z - math.pi / (2 * z)
    low, high = 1e-9, 1.5
    for _ in range(200):
        middle = 0.5 * (low + high)
        low, high = (middle, high) if inv(middle) < wanted else (low, middle)
    d_K = d_b / math.cos(low)
    return D_M + d_K * (math.cos(math.pi / (2 * z)) if z % 2 else 1.0)


def rounded(um):
    """ISO 1328-1:2013, 5.2.3 (from memory): 1 um above 10, 0.5 down to 5, 0.1 below."""
    step = 1.0 if um > 10.0 else 0.5 if um >= 5.0 else 0.1
    return step * round(um / step)


class ToothSheets(InFolder):
    def sheets(self, drive, *words):
        path = self.folder / "t.html"
        code, _, err = run("report", drive, "--sheets", "teeth", "-o", path, *words)
        self.assertEqual(code, 0, err)
        return Sheets(path.read_text()).chapters

    def test_spans_and_pins_are_those_of_other_formulas(self):
        met = 0
        for drive in EXAMPLES:
            for name, sheet in self.sheets(drive).items():
                if "W_k" not in sheet:
                    continue
                met += 1
                z, m, x = int(sheet["z"]), number(sheet["m_n"]), number(sheet["x"])
                alpha = math.radians(number(sheet["alpha_n"]))
                self.assertEqual(number(sheet["beta"]), 0.0)
                k = int(re.search(r"over (\d+) teeth", sheet["words of W_k"]).group(1))
                D_M = number(sheet["D_M"])
                for which, E in enumerate(both(sheet["E_sni .. E_sns"])):
                    x_E = x + E / (2 * m * math.tan(alpha))
                    W = m * math.cos(alpha) * ((k - 0.5) * math.pi + z * inv(alpha))
                    W += 2 * x_E * m * math.sin(alpha)
                    self.assertLess(abs(W - both(sheet["W_k"])[which]), 6e-4, (drive, name))
                    M = over_pins(z, m, alpha, x_E, D_M)
                    self.assertLess(abs(M - both(sheet["M_dR"])[which]), 2e-3, (drive, name))
        self.assertGreater(met, 25)

    def test_the_pitch_tolerance_is_that_of_the_standard(self):
        for name, sheet in self.sheets(BIZJET).items():
            if "f_pT" not in sheet:
                continue
            d, m = number(sheet["d"]), number(sheet["m_n"])
            f = (0.001 * d + 0.4 * m + 5) * math.sqrt(2) ** (int(sheet["class"]) - 5)
            self.assertAlmostEqual(number(sheet["f_pT"]), rounded(f), places=6, msg=name)

    def test_every_gear_has_its_sheet(self):
        for drive in EXAMPLES:
            gears = len({(m["driver"], m["teeth"][0]) for m in answer("check", drive)["meshes"]})
            self.assertGreaterEqual(len(self.sheets(drive)), gears)

    def test_customary_sheets_mean_the_same(self):
        metric, us = self.sheets(BIZJET), self.sheets(BIZJET, "--units", "us")
        for name, sheet in metric.items():
            if "d_a" in sheet:
                self.assertLess(abs(number(us[name]["d_a"]) * 25.4 - number(sheet["d_a"])), 1e-3)

    def test_each_has_a_page_of_its_own(self):
        path = self.folder / "t.pdf"
        run("report", BIZJET, "--sheets", "teeth", "-o", path)
        count = re.search(rb"/Count (\d+)", path.read_bytes())
        self.assertGreaterEqual(int(count.group(1)), len(self.sheets(BIZJET)) + 1)

    def test_what_is_no_kind_of_sheet_is_said(self):
        code, _, err = run("report", BIZJET, "--sheets", "bolts", "-o", self.folder / "t.pdf")
        self.assertEqual(code, 2)
        self.assertIn("teeth", err)


if __name__ == "__main__":
    unittest.main()
