#!/usr/bin/env python3
# ctest: release-only    (whole commands take minutes under the sanitizers)
"""Does every example hold, keep to its envelope, and does every trap fail for its one reason?

A trap is an example with one planted fault.  Its first line names the rule that must refuse it,
its second the example that it was made from.
"""

import difflib
import json
import os
import pathlib
import re
import subprocess
import unittest

ROOT = pathlib.Path(os.environ.get("TS_SOURCE", pathlib.Path(__file__).resolve().parents[2]))
COMMAND = os.environ.get("TOWERSHAFT", str(ROOT / "build" / "release" / "towershaft"))
EXAMPLES = ROOT / "examples"
TRAPS = sorted((EXAMPLES / "traps").glob("*.yaml"))
LINES_MOST = 8  # a trap adds and removes no more lines than this

# What the four invented engines were drawn from; all of it invented, no source.
# Spool speeds from idle to red line, rpm; pads on each spool; power at maximum continuous, kW;
# starter torque at its pad, N.m; radial shaft of the hp spool: krpm at red line, diameter in mm;
# axial growth, mm; arc: radius in mm and greatest wrap, deg.
ENVELOPES = {
    "trainer": {"hp": (16800, 31200), "lp": (4200, 15500), "pads": (6, 0), "power": 28,
                "start": 45, "shaft": (27, 22), "growth": 0.4, "arc": (210, 95)},
    "bizjet": {"hp": (13400, 24600), "lp": (4900, 12000), "pads": (7, 1), "power": 70,
               "start": 220, "shaft": (24, 26), "growth": 0.7, "arc": (330, 110)},
    "medium": {"hp": (8600, 15100), "lp": (1050, 5150), "pads": (9, 2), "power": 190,
               "start": 620, "shaft": (20, 34), "growth": 1.6, "arc": (820, 120)},
    "large": {"hp": (6300, 10900), "lp": (620, 2700), "pads": (10, 2), "power": 360,
              "start": 1300, "shaft": (17, 44), "growth": 3.0, "arc": (1480, 130)},
}


def check(path):
    """Exit code and answer of `check --json`; an exit code beyond 1 has no answer."""
    done = subprocess.run([COMMAND, "check", "--json", str(path)], cwd=ROOT, capture_output=True,
                          encoding="utf-8", timeout=200, check=False)
    if done.returncode > 1:
        raise AssertionError(f"{path.name}: exit {done.returncode}\n{done.stderr}")
    return done.returncode, json.loads(done.stdout)


def refusals(answer):
    """The rules that refuse and are not waived; what could not be computed counts as well."""
    return {f["rule"] for f in answer["findings"]
            if f["level"] == "refuse" and f["state"] != "waived"}


def head_of(trap):
    """The rule and the parent that a trap names, and the rest of its lines."""
    lines = trap.read_text(encoding="ascii").splitlines()
    fails = re.fullmatch(r"# fails: ([A-M][0-9]+-[a-z-]+)", lines[0])
    parent = re.match(r"# from: ([a-z]+)\.yaml, .", lines[1])
    if not fails or not parent:
        raise AssertionError(f"{trap.name} begins with {lines[:2]}")
    rest = 2
    while lines[rest].startswith("#       "):
        rest += 1
    return fails[1], parent[1], lines[rest:]


class Examples(unittest.TestCase):
    @classmethod
    def setUpClass(cls):
        cls.answers = {name: check(EXAMPLES / f"{name}.yaml") for name in ENVELOPES}

    def test_every_example_holds(self):
        for name, (code, answer) in self.answers.items():
            with self.subTest(name):
                self.assertEqual(code, 0)
                self.assertEqual(answer["verdict"], "holds")
                self.assertEqual(refusals(answer), set())
                self.assertEqual(answer["counts"]["not_computable"], 0)
                # Those of the large one are true, and told in its file.
                self.assertLessEqual(answer["counts"]["warn"], 2)

    def test_each_kind_of_remark_of_the_notation_is_shown_somewhere(self):
        texts = {name: (EXAMPLES / f"{name}.yaml").read_text(encoding="ascii")
                 for name in ENVELOPES}
        together = "\n".join(texts.values())
        for word in ("confidence:", "from front", "fixed bevel", "splined stub", "wide spur",
                     "step:", "hand turning", "rear: cover", "keep out:", "waived:"):
            self.assertIn(word, together)
        for name, text in texts.items():
            self.assertRegex(text, r"(?m)^assumptions:\n  - ", name)

    def test_each_example_keeps_to_its_envelope(self):
        for name, (_, answer) in self.answers.items():
            with self.subTest(name):
                self.keeps_to(answer, ENVELOPES[name], (EXAMPLES / f"{name}.yaml").read_text())

    def keeps_to(self, answer, envelope, text):
        spools = {shaft["spool"]: shaft for shaft in answer["shafts"] if shaft["kind"] == "spool"}
        for name in ("hp", "lp"):
            for end, condition in enumerate(("ground idle", "red line")):
                self.assertAlmostEqual(spools[name]["speed"][condition]["value"],
                                       envelope[name][end], places=6)
        on = [sum(pad["address"].startswith(f"drive/{name}/") for pad in answer["pads"])
              for name in ("hp", "lp")]
        self.assertEqual(tuple(on), envelope["pads"])
        power = sum(pad["power"]["climb"]["value"] for pad in answer["pads"] if "power" in pad)
        self.assertAlmostEqual(power / envelope["power"], 1.0, delta=0.01)
        start = min(pad["torque"]["crank"]["value"] for pad in answer["pads"] if "torque" in pad)
        self.assertAlmostEqual(-start, envelope["start"], places=6)
        self.keeps_shaft(answer, envelope, text)

    def keeps_shaft(self, answer, envelope, text):
        tower = next(shaft for shaft in answer["shafts"]
                     if shaft["address"] == "drive/hp/tower shaft")
        self.assertAlmostEqual(tower["speed"]["red line"]["value"] / (envelope["shaft"][0] * 1e3),
                               1.0, delta=0.005)
        self.assertIn(f"outside: {envelope['shaft'][1]} mm", text)
        self.assertRegex(text, rf"  hp:\s(?:.*\n)?(?:.*\n){{0,3}}?.*axial travel: -[0-9.]+\.\.{envelope['growth']} mm")
        self.assertIn(f"arc: {{radius: {envelope['arc'][0]} mm", text)
        self.assertIn(f"wrap: {envelope['arc'][1]} deg", text)


class Traps(unittest.TestCase):
    def test_there_are_enough_of_them_and_all_four_engines_have_some(self):
        self.assertGreaterEqual(len(TRAPS), 16)
        self.assertEqual({head_of(trap)[1] for trap in TRAPS}, set(ENVELOPES))
        self.assertGreaterEqual(len({head_of(trap)[0] for trap in TRAPS}), 16)

    def test_each_is_refused_by_the_rule_on_its_first_line_and_by_no_other(self):
        for trap in TRAPS:
            with self.subTest(trap.name):
                rule, _, _ = head_of(trap)
                code, answer = check(trap)
                self.assertEqual(code, 1)
                self.assertEqual(answer["verdict"], "does not hold")
                self.assertEqual(refusals(answer), {rule})
                self.assertEqual(answer["counts"]["not_computable"], 0)

    def test_each_differs_from_its_example_by_a_few_lines(self):
        for trap in TRAPS:
            with self.subTest(trap.name):
                _, parent, lines = head_of(trap)
                whole = (EXAMPLES / f"{parent}.yaml").read_text(encoding="ascii").splitlines()
                changed = [line for line in difflib.ndiff(whole, lines) if line[0] in "+-"]
                self.assertTrue(changed, "nothing is planted")
                self.assertLessEqual(len(changed), LINES_MOST, "\n" + "\n".join(changed))


if __name__ == "__main__":
    unittest.main()
