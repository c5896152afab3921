#!/usr/bin/env python3
"""Does `whirl` answer by its schema, and tell every wave that the teeth of a gear meet?"""
import json
import os
import re
import sys
import unittest

sys.path.insert(0, os.path.dirname(__file__))
from command_line import ROOT, InFolder, answer, run  # noqa: E402

import jsonschema  # noqa: E402

TRAINER = ROOT / "examples" / "trainer.yaml"
CLEARANCE = 0.1
ROW = re.compile(r"(.+?)  +(\S.*?)  +([12]) z N +(\d+) +f(?: ([+-]) (\d) N)? +(\d+) +(-?[\d.]+) %")


def waves_of(gear, turns):
    """n, sense and Hz of every wave, from the frequencies of the answer."""
    for n, f in enumerate(gear["frequencies"]):
        for sense in (1, -1) if n else (1,):
            yield n, sense, f + sense * n * turns


def meetings_of(answered):
    """What the teeth meet within the clearance, computed here: shaft, condition, k, n, sense."""
    out = []
    for gear in answered["gears"]:
        turns = {w["condition"]: w["excitation"] / w["k"] / gear["z"] for w in gear["nearest"]}
        for condition, N in turns.items():
            for k in (1, 2):
                for n, sense, f in waves_of(gear, N):
                    if abs(k * gear["z"] * N / f - 1) < CLEARANCE:
                        out.append((gear["shaft"], condition, k, n, sense))
    return out


def rows_of(page):
    out = []
    for line in page[page.index("Teeth that meet a wave"):].splitlines():
        found = ROW.fullmatch(line.strip())
        if found:
            shaft, condition, k, _, sign, n, _, _ = found.groups()
            out.append((shaft, condition, int(k), int(n or 0), -1 if sign == "-" else 1))
    return out


class Waves(InFolder):
    def test_page_and_json_tell_every_wave_within_the_clearance(self):
        data = answer("whirl", TRAINER)
        expected = meetings_of(data)
        self.assertGreater(len(expected), 40)
        told = [(g["shaft"], w["condition"], w["k"], w["n"], w["sense"])
                for g in data["gears"] for w in g["nearest"] if abs(w["gap"]) < CLEARANCE]
        self.assertEqual(sorted(told), sorted(expected))
        self.assertEqual(sorted(rows_of(run("whirl", TRAINER)[1])), sorted(expected))
        for gear in data["gears"]:  # both harmonics have their nearest, however far
            for condition in {w["condition"] for w in gear["nearest"]}:
                own = [w for w in gear["nearest"] if w["condition"] == condition]
                self.assertEqual({w["k"] for w in own}, {1, 2})

    def test_unknown_clearance_leaves_the_nearest(self):
        copy = self.copy_of(TRAINER)
        copy.write_text(re.sub(r"(?m)^limits:$", "limits:\n  web clearance: unknown",
                               copy.read_text()))
        code, page, err = run("whirl", copy)
        self.assertEqual((code, err), (0, ""))
        self.assertNotIn("?", page[page.index("Gears across"):])
        self.assertIn("`web clearance` is not known", page)
        data = answer("whirl", copy)
        path = ROOT / "docs/schema/whirl.schema.json"
        jsonschema.Draft202012Validator(json.loads(path.read_text(encoding="utf-8"))).validate(data)
        told = [(g["shaft"], w["condition"], w["k"], w["n"], w["sense"])
                for g in data["gears"] for w in g["nearest"]]
        self.assertGreater(len(told), 50)
        self.assertEqual(sorted(rows_of(page)), sorted(told))


if __name__ == "__main__":
    unittest.main()
