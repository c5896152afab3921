#!/usr/bin/env python3
"""Can a contact stress, and every other safety of teeth, be redone by hand from its page?

Twice, with no number from the program but what the page prints: line by line, each with the numbers
that stand in it, to the digits printed; and from the leaves (the file, assumptions, tables) up, with
the formulas alone.  What was found by trial must satisfy the equation that the page prints for it.
"""
# ctest: release-only
import math
import os
import re
import sys
import unittest

sys.path.insert(0, os.path.dirname(__file__))
from command_line import EXAMPLES, ROOT, InFolder, answer, run  # noqa: E402

SAFETIES = (
    ("trainer", "drive/hp/box/clockwise/1/teeth:S_H1@climb"),
    ("bizjet", "drive/hp/box/clockwise/1/teeth:S_H2@take-off"),
    ("bizjet", "drive/hp/box/bevels:S_H1@climb"),
    ("large", "drive/hp/box/clockwise/1/teeth:S_F1@crank"),
    ("medium", "drive/hp/take-off/bevels:S_F1@crank"),
    ("trainer", "drive/hp/box/clockwise/1/face:S_H1@climb"),  # AGMA 2101
)
LEAVES = {"given", "assumed", "row"}


WORDS = {
    "arcsin": math.asin, "arccos": math.acos, "arctan": math.atan, "asin": math.asin,
    "acos": math.acos, "atan": math.atan, "sin": math.sin, "cos": math.cos, "tan": math.tan,
    "sqrt": math.sqrt, "cbrt": lambda x: math.copysign(abs(x) ** (1 / 3), x), "exp": math.exp,
    "ln": math.log, "log": math.log, "log10": math.log10, "abs": abs, "min": min, "max": max,
    "hypot": math.hypot, "atan2": math.atan2, "ceil": math.ceil, "floor": math.floor,
    "cosh": math.cosh, "acosh": math.acosh, "sinh": math.sinh,
    "inv": lambda a: math.tan(a) - a, "pi": math.pi,
}


def plain(text, values):
    return eval(text, {"__builtins__": {}}, {**WORDS, **values})  # noqa: S307


def evaluate(text, values):
    """A formula text with the list of values of each symbol; sum() runs along those of several."""
    text = text.replace("^", "**")
    while (at := text.find("sum(")) >= 0:
        depth, end = 1, at + 4
        while depth:
            depth += {"(": 1, ")": -1}.get(text[end], 0)
            end += 1
        inner = text[at + 4:end - 1]
        used = {name: all_of for name, all_of in values.items()
                if re.search(rf"(?<![A-Za-z0-9_]){re.escape(name)}(?![A-Za-z0-9_])", inner)}
        terms = max(len(all_of) for all_of in used.values())
        total = math.fsum(plain(inner, {name: all_of[i if len(all_of) > 1 else 0]
                                        for name, all_of in used.items()}) for i in range(terms))
        text = f"{text[:at]}({total!r}){text[end:]}"
    return plain(text, {name: all_of[0] for name, all_of in values.items()})


class Redo(InFolder):
    def test_leaves_and_formulas_alone_give_the_safety(self):
        for name, address in SAFETIES:
            working = answer("why", ROOT / f"examples/{name}.yaml", address)["working"]
            notes = {note["id"]: note for note in working["notes"]}
            own = {}

            def redo(number, where=f"{name} {address}"):
                if number in own:
                    return own[number]
                note = notes[number]
                if note["kind"] in LEAVES:
                    self.assertTrue(note.get("source") or note.get("stands_at"), note)
                    own[number] = note["value"]
                elif note["kind"] == "searched":
                    own[number] = note["value"]
                    self.assertLess(abs(note["residual"]), 1e-9, note)
                    self.assertTrue(note["text"] and note["source"], note)
                else:
                    values = {}
                    for one in note["inputs"]:
                        values.setdefault(one["symbol"], []).append(redo(one["origin"]))
                    self.assertTrue(note["source"] and note["meaning"], note)
                    own[number] = evaluate(note["text"], values)
                    self.assertTrue(
                        math.isclose(own[number], note["value"], rel_tol=1e-9, abs_tol=1e-15),
                        f"{where}: {note['symbol']} = {note['text']}: {own[number]!r}, and the "
                        f"page has {note['value']!r}")
                return own[number]

            redo(working["root"])
            kinds = {notes[number]["kind"] for number in own}
            self.assertIn("given", kinds)
            self.assertGreater(len(own), 40, f"{name} {address} has hardly a working")

    def test_every_line_of_the_page_follows_from_the_numbers_in_it(self):
        for name, address in SAFETIES:
            code, page, _ = run("why", ROOT / f"examples/{name}.yaml", address)
            self.assertEqual(code, 0)
            page = page.replace("\u00b7", "*").replace("\u2212", "-").replace("\u221a", "sqrt")
            lines = [re.sub(r"^[\u2502\u251c\u2514\u2500 ]*", "", line) for line in page.splitlines()]
            checked = 0
            value = None
            for line in lines:
                first = re.match(r"[^\s=]+ = (-?[0-9][0-9.e+-]*)( |$)", line)
                second = re.match(r"= ([-0-9.(][^=]*)$", line)
                if first:
                    value = float(first.group(1))
                elif second and value is not None and re.search(r"[0-9]", line):
                    try:
                        redone = evaluate(second.group(1), {})
                    except (SyntaxError, NameError, TypeError):
                        continue  # a piece of a line that goes on below
                    if not isinstance(redone, (int, float)):
                        continue
                    checked += 1
                    # six digits in, some of them lost where nearly equal numbers are subtracted
                    self.assertTrue(math.isclose(redone, value, rel_tol=2e-3, abs_tol=1e-4),
                                    f"{name} {address}: {line} is {redone}, printed {value}")
            self.assertGreater(checked, 15, f"{name} {address}: few lines could be redone")


if __name__ == "__main__":
    unittest.main()
