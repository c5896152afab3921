#!/usr/bin/env python3
"""How do the exact factors of data/unit.tsv become doubles?

    unit_to_c.py data/unit.tsv unit_table.inc

Every factor is evaluated as an exact ratio (pi to 100 digits) and written as the sum of two
doubles, the nearest one and the nearest to what is left.  Checks on the way: units of a kind stand
together, the SI unit comes first, and each kind has one unit shown in either system.
"""
import ast
import sys
from fractions import Fraction

sys.dont_write_bytecode = True  # the source tree is not written
from table_to_c import fail, quoted, read  # noqa: E402


def arctan_of_inverse(whole, digits):
    """arctan(1/whole) * 10^digits, cut."""
    unit = 10**digits
    term = unit // whole
    total, count, sign = term, 1, 1
    while term:
        term //= whole * whole
        count += 2
        sign = -sign
        total += sign * (term // count)
    return total


# Machin (1706): pi/4 = 4 arctan(1/5) - arctan(1/239).
PI = Fraction(4 * (4 * arctan_of_inverse(5, 110) - arctan_of_inverse(239, 110)), 10**110)


def evaluate(node, text):
    """The exact value of an expression of numbers, pi, + - * / ** and brackets."""
    if isinstance(node, ast.Expression):
        return evaluate(node.body, text)
    if isinstance(node, ast.Constant) and isinstance(node.value, (int, float)):
        return Fraction(ast.get_source_segment(text, node))
    if isinstance(node, ast.Name) and node.id == "pi":
        return PI
    if isinstance(node, ast.BinOp):
        left, right = evaluate(node.left, text), evaluate(node.right, text)
        if isinstance(node.op, ast.Add):
            return left + right
        if isinstance(node.op, ast.Sub):
            return left - right
        if isinstance(node.op, ast.Mult):
            return left * right
        if isinstance(node.op, ast.Div):
            return left / right
        if isinstance(node.op, ast.Pow) and right.denominator == 1:
            return left ** int(right)
    raise ValueError(text)


def two_doubles(path, number, text):
    source = text.replace("^", "**")
    try:
        exact = evaluate(ast.parse(source, mode="eval"), source)
    except (ValueError, SyntaxError, ZeroDivisionError):
        fail(path, number, f"no exact value: {text!r}")
    nearest = float(exact)  # a Fraction becomes the nearest double
    return exact, nearest, float(exact - Fraction(nearest))


def constant(kind):
    return "TS_KIND_" + kind.upper().replace(" ", "_")


# In the enum the noun comes first and its qualifier last.
ENUM = {"absolute pressure": "TS_KIND_PRESSURE_ABSOLUTE", "gauge pressure": "TS_KIND_PRESSURE_GAUGE"}


def main():
    if len(sys.argv) != 3:
        sys.exit("usage: unit_to_c.py data/unit.tsv <out.inc>")
    path, out = sys.argv[1:]
    head, rows = read(path)
    units, kinds, shown = [], {}, {}
    for number, (name, kind, factor, offset, where, source, _note) in enumerate(rows, len(head) + 1):
        exact, f, f_rest = two_doubles(path, number, factor)
        _, o, o_rest = two_doubles(path, number, offset)
        if kind not in kinds:
            if exact != 1 or o != 0:
                fail(path, number, f"the first unit of {kind!r} is not the SI unit")
            kinds[kind] = [len(units), 0]
        if sum(kinds[kind]) != len(units):
            fail(path, number, f"the units of {kind!r} do not stand together")
        if exact <= 0:
            fail(path, number, "a factor that is not positive")
        if any(u[0] == name for u in units[kinds[kind][0] :]):
            fail(path, number, f"{name!r} stands twice")
        for system in {"metric": ["metric"], "us": ["us"], "both": ["metric", "us"], "-": []}[where]:
            if (kind, system) in shown:
                fail(path, number, f"a second unit in which {kind!r} is shown")
            shown[kind, system] = len(units)
        kinds[kind][1] += 1
        units.append((name, kind, f, o, source, factor, f_rest, o_rest))
    with open(out, "w", encoding="ascii", newline="\n") as file:
        file.write(f"/* Made from {path}; change that, not this. */\n")
        file.write("static const ts_unit units[] = {\n")
        for name, kind, f, o, source, factor, f_rest, o_rest in units:
            file.write(
                f"    {{{quoted(name)}, {ENUM.get(kind, constant(kind))}, {f.hex()}, {o.hex()},\n"
                f"     {quoted(source)},\n"
                f"     {quoted(factor)}, {f_rest.hex()}, {o_rest.hex()}}},\n"
            )
        file.write("};\n\nstatic const kind_row kinds[TS_KIND_COUNT] = {\n")
        for kind, (first, count) in kinds.items():
            metric, us = shown[kind, "metric"], shown[kind, "us"]
            file.write(
                f"    [{ENUM.get(kind, constant(kind))}] = "
                f"{{{quoted(kind)}, {first}, {count}, {{{metric}, {us}}}}},\n"
            )
        file.write("};\n")


if __name__ == "__main__":
    main()
