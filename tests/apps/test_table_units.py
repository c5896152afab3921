#!/usr/bin/env python3
# ctest: release-only    (whole commands take minutes under the sanitizers)
"""Is every number of the bearing and float tables in the unit that its own head prints?"""
import os
import re
import sys
import unittest

sys.path.insert(0, os.path.dirname(__file__))
from command_line import ROOT, TODAY, run  # noqa: E402

DRIVES = [ROOT / "examples" / name for name in ("bizjet.yaml", "large.yaml")]
# exact: NIST SP 811, appendix B
SI = {"mm": 1e-3, "in": 0.0254, "N": 1.0, "lbf": 4.4482216152605, "kg": 1.0, "lb": 0.45359237}
METRIC, US = {"mm", "N", "kg"}, {"in", "lbf", "lb"}
ROUNDING = 0.011  # two numbers of three digits, each half a unit of its last digit off
NUMBER = re.compile(r"-?\d+(?:\.\d+)?")


def page(drive, units):
    code, out, err = run("check", drive, "--units", units, "--today", TODAY, env={"COLUMNS": "200"})
    assert code in (0, 1), err
    return out.splitlines()


def section(lines, start):
    """From the heading that starts so to the next empty line."""
    at = next(i for i, line in enumerate(lines) if line.startswith(start))
    return lines[at:lines.index("", at)]


def floats(drive, units):
    """(what the row tells, its unit, its numbers) of each row that has a unit in its head."""
    for line in section(page(drive, units), "Float of the take-offs"):
        words = re.split(r" {2,}", line.strip())
        if len(words) > 1:
            what, comma, unit = words[0].rpartition(", ")
            if comma and unit in SI:
                yield what, unit, [float(n) for cell in words[1:] for n in NUMBER.findall(cell)]
        elif ": axial travel " in line:
            for told in line.strip().split(": ", 1)[1].split(", "):
                what, unit = told.split()[0], told.split()[-1]
                yield line.split()[0] + " " + what, unit, [float(n) for n in NUMBER.findall(told)]


def bearings(drive, units):
    """(size and load, their units, their numbers) of each bearing."""
    lines = section(page(drive, units), "Shafts and bearings")
    head = next(line for line in lines if "d x D " in line and "F_r " in line)
    size, load = re.search(r"d x D (\w+)", head)[1], re.search(r"F_r (\w+)", head)[1]
    for line in lines:
        row = re.search(r"  ([\d.]+) x ([\d.]+)(?:, \d rows)? +([\d.?]+)  ", line)
        if row:
            yield "bearing", size, [float(row[1]), float(row[2])]
            yield "bearing", load, [float(row[3])]


class TableUnits(unittest.TestCase):
    def hold(self, rows, drive, least):
        metric, us = list(rows(drive, "metric")), list(rows(drive, "us"))
        self.assertGreater(sum(len(numbers) for _, _, numbers in metric), least)
        self.assertEqual([what for what, _, _ in metric], [what for what, _, _ in us])
        self.assertLessEqual({unit for _, unit, _ in metric}, METRIC)
        self.assertLessEqual({unit for _, unit, _ in us}, US)
        for (what, a, these), (_, b, those) in zip(metric, us):
            self.assertEqual(len(these), len(those), what)
            for x, y in zip(these, those):
                most = max(abs(x) * SI[a], abs(y) * SI[b])
                self.assertLessEqual(abs(x * SI[a] - y * SI[b]), ROUNDING * most,
                                     f"{drive.name}: {what}: {x} {a}, {y} {b}")

    def test_the_float_of_the_take_offs(self):
        for drive in DRIVES:
            self.hold(floats, drive, 40)

    def test_the_bearings_of_the_shafts(self):
        for drive in DRIVES:
            self.hold(bearings, drive, 40)


if __name__ == "__main__":
    unittest.main()
