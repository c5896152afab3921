#!/usr/bin/env python3
"""How does a printed table become C?  One row of data/*.tsv, one initialiser.

    table_to_c.py data/unit.tsv unit.inc

Lines that start with '#' are the head: what the table is, its source, its rights.  The last of
them names the columns, with tabs between.  Every other line is a row with as many cells; a cell
is a string, with the digits as printed.  The head becomes a comment and a row becomes

    {"lbf.in", "torque", "0.1129848290276167", "0", "derived from ..."},

A line "numbers: A B" of the head names columns that become doubles, the digits as printed; "-" stands
for a value that the table does not know and becomes NAN.
"""

import re
import sys

NUMBER = re.compile(r"-?[0-9]+(\.[0-9]+)?([eE][-+]?[0-9]+)?")


def fail(path, line, says):
    sys.exit(f"{path}:{line}: {says}")


def quoted(cell):
    """A C string literal; bytes outside ASCII become octal escapes, which end after three digits."""
    out = []
    for byte in cell.encode("utf-8"):
        char = chr(byte)
        if char in '"\\?':  # '?' because two of them may begin a trigraph
            out.append("\\" + char)
        elif 32 <= byte < 127:
            out.append(char)
        else:
            out.append(f"\\{byte:03o}")
    return '"' + "".join(out) + '"'


def read(path):
    """Returns the lines of the head and the rows as lists of cells."""
    with open(path, encoding="utf-8", newline="") as file:
        lines = file.read().split("\n")
    if lines and lines[-1] == "":
        lines.pop()
    head, rows = [], []
    for number, line in enumerate(lines, 1):
        if "\r" in line:
            fail(path, number, "a carriage return; lines end with a line feed alone")
        if line.startswith("#"):
            if rows:
                fail(path, number, "a head line below the first row")
            head.append(line[1:].strip(" "))
            continue
        if not head:
            fail(path, number, "a row before the head; the head names source and columns")
        cells = line.split("\t")
        columns = len(head[-1].split("\t"))
        if len(cells) != columns:
            fail(path, number, f"{len(cells)} cells where the head names {columns} columns")
        for cell in cells:
            if cell != cell.strip():
                fail(path, number, f"blanks around the cell {cell!r}")
        rows.append(cells)
    if not rows:
        fail(path, len(lines), "a table without a row")
    return head, rows


def columns_of_numbers(path, head):
    """Places of the columns that the head calls numbers."""
    columns = head[-1].split("\t")
    names = [name for line in head[:-1] if line.startswith("numbers: ") for name in line.split()[1:]]
    for name in names:
        if name not in columns:
            fail(path, 1, f"the head calls {name!r} a number, which is no column")
    return {columns.index(name) for name in names}


def number(path, cell):
    if cell == "-":
        return "NAN"
    if not NUMBER.fullmatch(cell):
        fail(path, 1, f"{cell!r} stands in a column of numbers")
    return cell


def main():
    if len(sys.argv) != 3:
        sys.exit("usage: table_to_c.py data/<name>.tsv <out.inc>")
    path, out = sys.argv[1:]
    head, rows = read(path)
    numbers = columns_of_numbers(path, head)
    with open(out, "w", encoding="ascii", newline="\n") as file:
        file.write(f"/* Made from {path}; change that, not this.\n *\n")
        for line in head:
            text = line.replace("\t", " | ").replace("*/", "* /")
            text = text.encode("ascii", "backslashreplace").decode("ascii")
            file.write(f" * {text}".rstrip() + "\n")
        file.write(" */\n")
        for cells in rows:
            written = (number(path, cell) if place in numbers else quoted(cell)
                       for place, cell in enumerate(cells))
            file.write("{" + ", ".join(written) + "},\n")


if __name__ == "__main__":
    main()
