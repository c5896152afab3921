#!/usr/bin/env python3
# Redoes every number of a report from its inputs, and says which do not come out.
"""Redo the numbers of a report: python3 NAME.recheck.py [NAME.recheck.json [DRIVE.yaml]]

Needs nothing but Python 3.  The data beside this script hold every step of the computation: its
formula as text, its inputs with their values, and for each input the step that it comes from.
This script shares no code with the program that wrote them.  It asks:

  step      does the formula give the value, from these inputs?
  input     is it exactly the value of the step, file entry, assumption or table row named?
  searched  what is left of the equation at the value found: is it what the note says?
  given     does the text in the file, with its unit, give the value?
  shown     is every number of the answer exactly that of its step?
  judged    is every value that was held to a limit exactly that of its step?

With the drive file as a second word, its SHA-256 must be the one that the report names.
Exit code 0: all agree; 1: something differs; 2: the data cannot be read.
A difference is more than 1e-12 of the value and more than 4 times what rounding to double may do
to the formula on these inputs (worked out beside the value, to first order).
"""
import ast
import hashlib
import json
import math
import operator
import os
import re
import sys

UNIT = 2.0 ** -53  # half the distance of doubles, relative
TOLD = 20  # differences told one by one


class Rounded:
    """A value, and how far rounding may have moved it."""

    __slots__ = ("value", "error")

    def __init__(self, value, error=0.0):
        self.value, self.error = value, error


def guarded(act):
    """What Python raises for is not a number: roots of negatives, arcs beyond 1."""
    try:
        return act()
    except ZeroDivisionError:
        return math.nan
    except (OverflowError, ValueError):
        return math.nan


def divide(a, b):
    if b == 0.0:
        if a == 0.0 or math.isnan(a):
            return math.nan
        return math.copysign(math.inf, a) * math.copysign(1.0, b)
    return a / b


def power(a, b):
    try:
        value = a ** b
    except ZeroDivisionError:
        return math.inf
    except OverflowError:
        return math.inf
    return value if isinstance(value, float) else math.nan


def rounded(value, carried):
    return Rounded(value, carried + UNIT * abs(value))


def add(a, b):
    return rounded(a.value + b.value, a.error + b.error)


def subtract(a, b):
    return rounded(a.value - b.value, a.error + b.error)


def multiply(a, b):
    return rounded(a.value * b.value, abs(a.value) * b.error + abs(b.value) * a.error)


def over(a, b):
    value = divide(a.value, b.value)
    return rounded(value, divide(a.error + abs(value) * b.error, abs(b.value)))


def raised(a, b):
    value, carried = power(a.value, b.value), 0.0
    if a.error > 0.0:
        carried += abs(b.value * power(a.value, b.value - 1.0)) * a.error
    if b.error > 0.0 and a.value > 0.0:
        carried += abs(value * math.log(a.value)) * b.error
    return Rounded(value, carried + 2.0 * UNIT * abs(value))


def smooth(function, slope):
    """A function of one number with its derivative."""
    def apply(a):
        value = guarded(lambda: function(a.value))
        steep = abs(guarded(lambda: slope(a.value))) if a.error > 0.0 else 0.0
        return Rounded(value, steep * a.error + 2.0 * UNIT * abs(value))
    return apply


def least(*all_of):
    return min(all_of, key=lambda one: one.value)


def most(*all_of):
    return max(all_of, key=lambda one: one.value)


def magnitude(a):
    return Rounded(abs(a.value), a.error)


def angle(y, x):
    value = math.atan2(y.value, x.value)
    square = x.value ** 2 + y.value ** 2
    carried = divide(abs(x.value) * y.error + abs(y.value) * x.error, square) if square else 0.0
    return Rounded(value, carried + 2.0 * UNIT * abs(value))


def involute(a):
    tangent = math.tan(a.value)
    carried = tangent ** 2 * a.error + 2.0 * UNIT * (abs(tangent) + abs(a.value))
    return Rounded(tangent - a.value, carried)


def side(x):
    return math.sqrt(1.0 - x * x)


FUNCTIONS = {
    "sqrt": smooth(math.sqrt, lambda x: 0.5 / math.sqrt(x)),
    "sin": smooth(math.sin, math.cos), "cos": smooth(math.cos, math.sin),
    "tan": smooth(math.tan, lambda x: 1.0 + math.tan(x) ** 2),
    "asin": smooth(math.asin, lambda x: 1.0 / side(x)),
    "acos": smooth(math.acos, lambda x: 1.0 / side(x)),
    "atan": smooth(math.atan, lambda x: 1.0 / (1.0 + x * x)),
    "exp": smooth(math.exp, math.exp), "ln": smooth(math.log, lambda x: 1.0 / x),
    "atan2": angle, "inv": involute, "abs": magnitude, "min": least, "max": most,
}
OPERATIONS = {ast.Add: add, ast.Sub: subtract, ast.Mult: multiply, ast.Div: over, ast.Pow: raised}


def names_in(tree):
    return {node.id for node in ast.walk(tree) if isinstance(node, ast.Name)}


def work_out(tree, values):
    """A formula's tree with all values of each symbol; sum() runs along those of several."""
    if isinstance(tree, ast.Constant):
        return Rounded(float(tree.value))
    if isinstance(tree, ast.Name):
        if tree.id == "pi":
            return Rounded(math.pi, UNIT * math.pi)
        if len(values[tree.id]) != 1:
            raise KeyError(f"{tree.id} has several values outside of sum()")
        return Rounded(values[tree.id][0])
    if isinstance(tree, ast.UnaryOp) and isinstance(tree.op, ast.USub):
        inner = work_out(tree.operand, values)
        return Rounded(-inner.value, inner.error)
    if isinstance(tree, ast.BinOp):
        return OPERATIONS[type(tree.op)](work_out(tree.left, values), work_out(tree.right, values))
    named = isinstance(tree, ast.Call) and isinstance(tree.func, ast.Name)
    called = tree.func.id if named else None
    if called == "sum" and len(tree.args) == 1:
        return total(tree.args[0], values)
    if called in FUNCTIONS:
        return FUNCTIONS[called](*(work_out(one, values) for one in tree.args))
    raise SyntaxError("no formula: " + ast.dump(tree))


def total(tree, values):
    used = {name: values[name] for name in names_in(tree) if name in values}
    terms = max((len(all_of) for all_of in used.values()), default=1)
    whole = Rounded(0.0)
    for i in range(terms):
        row = {name: [all_of[i if len(all_of) > 1 else 0]] for name, all_of in used.items()}
        whole = add(whole, work_out(tree, row))
    return whole


def number(value):
    return float(value)  # "inf", "-inf" and "nan" are texts, for JSON has none of them


def same(a, b):
    return a == b or (math.isnan(a) and math.isnan(b))


def agrees(result, value):
    if same(result.value, value):
        return True
    bound = 1e-12 * abs(value) + 4.0 * result.error
    return operator.le(abs(result.value - value), bound)


DIGITS = r"[-+]?[0-9]+(?:\.[0-9]+)?(?:[eE][-+]?[0-9]+)?"
QUANTITY = re.compile(rf"^\s*{DIGITS}\s*([^0-9\s.]\S*)?\s*$")
PIECE = re.compile(rf"({DIGITS})\s*((?!\.\.)[^0-9\s.+-][^\s]*)?")


def from_text(text, units):
    """Every SI value that a text of the file may mean: "16 mm", "-0.2..0.7 mm", "2 N.m for 5 s"."""
    tail = re.search(r"[^0-9\s.][^\s]*\s*$", text)
    found = []
    for digits, own in PIECE.findall(text):
        unit = own.strip() or (tail.group(0).strip() if tail else "1")
        for one in (unit, "1") if not own else (unit,):
            if one in units:
                factor, offset = units[one]
                found.append(float(digits) * factor + offset)
    return found


class Recheck:
    def __init__(self, data):
        self.data, self.notes = data, data["notes"]
        self.trees = [ast.parse(one["text"].replace("^", "**"), mode="eval").body
                      for one in data["formulas"]]
        self.count = dict.fromkeys(("step", "searched", "input", "given", "shown", "judged"), 0)
        self.apart = {"text": 0, "shown": 0, "judged": 0}
        self.wrong = []

    def name(self, index):
        kind, thing, condition, symbol = self.notes[index][:4]
        where = self.data["objects"][thing]
        at = "@" + self.data["conditions"][condition] if condition >= 0 else ""
        return f"note {index} ({kind}) {where}:{symbol}{at}"

    def differs(self, index, says):
        self.wrong.append(f"{self.name(index)}: {says}" if index is not None else says)

    def inputs(self, index, rows):
        values = {}
        for symbol, value, origin in rows:
            values.setdefault(symbol, []).append(number(value))
            if origin is None or origin == index:
                continue
            self.count["input"] += 1
            if not same(number(self.notes[origin][4]), number(value)):
                self.differs(index, f"takes {symbol} = {value}, and {self.name(origin)} has "
                                    f"{self.notes[origin][4]}")
        return values

    def formula(self, index, note):
        kind, value, formula = note[0], number(note[4]), note[5]
        values = self.inputs(index, note[6])
        try:
            result = work_out(self.trees[formula], values)
        except (KeyError, SyntaxError, TypeError) as fault:
            self.differs(index, f"its formula cannot be worked out: {fault}")
            return
        wanted = value if kind == "step" else number(note[7])
        self.count[kind] += 1
        if not agrees(result, wanted):
            text = self.data["formulas"][formula]["text"]
            self.differs(index, f"{text} is {result.value!r}, and the report has {wanted!r}")

    def given(self, index, note):
        value, text = number(note[4]), note[6]
        for one in from_text(text or "", self.data["units"]):
            for sign in (1.0, -1.0):  # a drive seen from the front has its clock the other way
                if math.isclose(sign * one, value, rel_tol=1e-14, abs_tol=1e-300):
                    self.count["given"] += 1
                    return
        if QUANTITY.match(text or "") and from_text(text, self.data["units"]):
            self.differs(index, f"line {note[5]} says {text!r}, and the report has {value!r}")
        else:
            self.apart["text"] += 1

    def told(self, kind, address, value, origin):
        if origin is None:
            self.apart[kind] += 1
            return
        self.count[kind] += 1
        if not same(number(self.notes[origin][4]), number(value)):
            self.differs(None, f"{address} is shown as {value}, and {self.name(origin)} has "
                               f"{self.notes[origin][4]}")

    def run(self):
        for index, note in enumerate(self.notes):
            if note[0] in ("step", "searched"):
                self.formula(index, note)
            elif note[0] == "given":
                self.given(index, note)
            elif note[0] == "borrowed" and note[5] is not None:
                self.count["input"] += 1
                if not same(number(self.notes[note[5]][4]), number(note[4])):
                    self.differs(index, f"{note[4]} is lent by {self.name(note[5])}, which has "
                                        f"{self.notes[note[5]][4]}")
        for address, value, origin in self.data["shown"]:
            self.told("shown", address, value, origin)
        for rule, address, value, _, _, origin in self.data["judged"]:
            self.told("judged", f"{rule} {address}", value, origin)


def main(words):
    beside = re.sub(r"\.py$", "", words[0]) + ".json"
    path = words[1] if len(words) > 1 else beside
    try:
        with open(path, encoding="utf-8") as file:
            data = json.load(file)
        check = Recheck(data)
    except (OSError, ValueError, KeyError, TypeError, SyntaxError) as fault:
        print(f"{os.path.basename(words[0])}: {path}: {fault}", file=sys.stderr)
        return 2
    if len(words) > 2:
        with open(words[2], "rb") as file:
            digest = hashlib.sha256(file.read()).hexdigest()
        if digest != data["input"]["sha256"]:
            check.differs(None, f"{words[2]} has the SHA-256 {digest}, and the report is about "
                                f"{data['input']['sha256']}")
    check.run()
    for says in check.wrong[:TOLD]:
        print("differs: " + says)
    if len(check.wrong) > TOLD:
        print(f"and {len(check.wrong) - TOLD} more")
    count, apart = check.count, check.apart
    print(f"{data['input']['path']}, towershaft {data['version']}: {count['step']} steps redone, "
          f"{count['searched']} equations put to the test, {count['input']} inputs traced, "
          f"{count['given']} numbers read again from the file ({apart['text']} whose text is no "
          f"plain quantity), {count['shown']} shown and {count['judged']} judged numbers compared "
          f"({apart['shown']} and {apart['judged']} without a step of their own).")
    print(f"{len(check.wrong)} differ." if check.wrong else "All agree.")
    return 1 if check.wrong else 0


if __name__ == "__main__":
    sys.exit(main(sys.argv))
