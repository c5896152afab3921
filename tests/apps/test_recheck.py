#!/usr/bin/env python3
# ctest: release-only    (whole commands take minutes under the sanitizers)
"""Can every number of a report be redone outside of the program, and is a wrong one found?"""
import json
import os
import pathlib
import re
import subprocess
import sys
import unittest

sys.path.insert(0, os.path.dirname(__file__))
from command_line import EXAMPLES, ROOT, TRAPS, InFolder, answer, run  # noqa: E402

TRAINER = ROOT / "examples/trainer.yaml"
# Steps, inputs and shown numbers are at least so many for the smallest example.
LEAST = {"steps redone": 10000, "inputs traced": 30000, "shown": 3000, "judged numbers": 400}


def redo(script, *words):
    """Exit code and words of the script, run away from the sources and from the program."""
    done = subprocess.run([sys.executable, "-I", str(script), *map(str, words)], cwd="/",
                          capture_output=True, text=True, check=False, env={"PATH": "/nowhere"})
    return done.returncode, done.stdout + done.stderr


class Recheck(InFolder):
    def write(self, drive):
        path = self.folder / "r.html"
        code, _, err = run("report", drive, "-o", path, "--recheck")
        self.assertEqual(code, 0, err)
        return self.folder / "r.recheck.py", self.folder / "r.recheck.json"

    def test_every_number_of_every_example_comes_out_again(self):
        for drive in EXAMPLES:
            script, data = self.write(drive)
            code, says = redo(script, data, drive)
            self.assertEqual(code, 0, says)
            self.assertIn("All agree.", says)
            for what, least in LEAST.items():
                count = re.search(rf"(\d+) {what}", says)
                self.assertGreater(int(count.group(1)), least, says)
            self.assertIn("(0 and 0 without a step of their own)", says)

    def test_drives_that_do_not_hold_come_out_again_too(self):
        for drive in TRAPS[::6]:
            script, data = self.write(drive)
            code, says = redo(script)  # the data beside it are found by its name
            self.assertEqual(code, 0, f"{drive}: {says}")

    def test_what_is_shown_is_what_check_answers(self):
        _, data = self.write(TRAINER)
        shown = {row[0]: row[1] for row in json.loads(data.read_text())["shown"]}
        found = []

        def collect(thing):
            if isinstance(thing, dict):
                if {"value", "unit", "address"} <= thing.keys() and thing["unit"] in ("N", "1"):
                    found.append(thing)
                for one in thing.values():
                    collect(one)
            elif isinstance(thing, list):
                for one in thing:
                    collect(one)

        collect({k: v for k, v in answer("check", TRAINER).items() if k != "findings"})
        self.assertGreater(len(found), 500)
        for one in found:
            if one["value"] is not None:
                self.assertEqual(shown[one["address"]], one["value"], one["address"])

    def test_a_wrong_number_is_found_wherever_it_stands(self):
        script, data = self.write(TRAINER)
        whole = json.loads(data.read_text())
        step = next(i for i, n in enumerate(whole["notes"]) if n[0] == "step" and n[4] != 0
                    and isinstance(n[4], float) and n[3] == "F_t")
        search = next(i for i, n in enumerate(whole["notes"]) if n[0] == "searched")
        given = next(i for i, n in enumerate(whole["notes"]) if n[0] == "given"
                     and re.fullmatch(r"[0-9.]+ mm", n[6] or ""))

        def spoil_step(d):
            d["notes"][step][4] *= 1.0 + 1e-9

        def spoil_input(d):
            d["notes"][step][6][0][1] *= 1.0 + 1e-9

        def spoil_formula(d):
            d["formulas"][d["notes"][step][5]]["text"] += "*1.000001"

        def spoil_search(d):
            for row in d["notes"][search][6]:
                if row[0] == d["notes"][search][3]:
                    row[1] *= 1.0 + 1e-6

        def spoil_given(d):
            d["notes"][given][6] = "12345.678 mm"

        def spoil_shown(d):
            d["shown"][100][1] = d["shown"][100][1] * 1.001 + 1.0

        def spoil_judged(d):
            row = next(r for r in d["judged"] if isinstance(r[2], float))
            row[2] *= 1.001

        for spoil in (spoil_step, spoil_input, spoil_formula, spoil_search, spoil_given,
                      spoil_shown, spoil_judged):
            copy = json.loads(json.dumps(whole))
            spoil(copy)
            wrong = self.folder / "wrong.json"
            wrong.write_text(json.dumps(copy))
            code, says = redo(script, wrong)
            self.assertEqual(code, 1, f"{spoil.__name__}: {says}")
            self.assertIn("differs: ", says)

    def test_another_file_than_the_one_reported_is_found(self):
        script, data = self.write(TRAINER)
        code, says = redo(script, data, ROOT / "examples/bizjet.yaml")
        self.assertEqual(code, 1)
        self.assertIn("SHA-256", says)

    def test_what_cannot_be_read_is_said(self):
        script, data = self.write(TRAINER)
        for text in ("", "{}", "[1]", '{"notes": [], "formulas": [{"text": "import os"}]}'):
            data.write_text(text)
            code, says = redo(script)
            self.assertEqual(code, 2, says)
            self.assertNotIn("Traceback", says)

    def test_a_text_in_the_place_of_a_formula_is_never_run(self):
        script, data = self.write(TRAINER)
        whole = json.loads(data.read_text())
        mark = pathlib.Path(self.folder / "mark")
        for text in (f"__import__('os').mkdir('{mark}')", f"open('{mark}', 'w')", "().__class__",
                     "(lambda: 1)()", "a[0]"):
            whole["formulas"][0]["text"] = text
            data.write_text(json.dumps(whole))
            code, says = redo(script)
            self.assertEqual(code, 1, says)
            self.assertIn("cannot be worked out", says)
            self.assertFalse(mark.exists())

    def test_the_same_file_gives_the_same_bytes(self):
        script, data = self.write(TRAINER)
        first = script.read_bytes(), data.read_bytes()
        self.write(TRAINER)
        self.assertEqual(first, (script.read_bytes(), data.read_bytes()))


if __name__ == "__main__":
    unittest.main()
