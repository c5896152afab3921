#!/usr/bin/env python3
"""How does the look become C?  data/look.json -> generated/look.inc, read by src/draw/look.h.

    look_to_c.py data/look.json out/look.inc

Every number becomes a macro named after its path (ribbon.px-per-kW: TS_LOOK_RIBBON_PX_PER_KW), a
list of numbers the inside of an initializer, a word a string.  The colours become one list of
names and one row of red, green and blue a ground.  Keys that begin with $ are remarks.
"""

import json
import re
import sys

GROUNDS = ("light", "dark", "contrast", "print")


def macro(*path):
    return "TS_LOOK_" + "_".join(re.sub(r"[^A-Za-z0-9]", "_", key).upper() for key in path)


def leaves(value, path):
    """Every (path, leaf) in the order of the file."""
    if isinstance(value, dict):
        for key, inner in value.items():
            if not key.startswith("$"):
                yield from leaves(inner, path + (key,))
    else:
        yield path, value


def as_c(value):
    if isinstance(value, bool) or value is None:
        raise ValueError(f"{value!r} has no form in C")
    if isinstance(value, (int, float)):
        return repr(float(value))
    if isinstance(value, list):
        return ", ".join(as_c(item) for item in value)
    return json.dumps(value, ensure_ascii=True)


def as_rgb(colour):
    if not re.fullmatch(r"#[0-9a-f]{6}", colour):
        raise ValueError(f"{colour!r} is no colour")
    return "{" + ", ".join(f"{int(colour[i:i + 2], 16)} / 255.0" for i in (1, 3, 5)) + "}"


def convert(look):
    names = list(look["colour"][GROUNDS[0]])
    lines = ["/* Made by tools/look_to_c.py from data/look.json; do not edit. */"]
    for path, value in leaves({key: look[key] for key in look if key != "colour"}, ()):
        lines.append(f"#define {macro(*path)} {as_c(value)}")
    lines.append("#define TS_LOOK_COLOUR_NAMES \\")
    lines.append(", \\\n".join("    TS_COLOUR_" + macro(name)[8:] for name in names))
    lines.append("#define TS_LOOK_COLOUR_ROWS \\")
    rows = []
    for ground in GROUNDS:
        colours = look["colour"][ground]
        if list(colours) != names:
            raise ValueError(f"the colours of {ground} are not those of {GROUNDS[0]}")
        rows.append("    {" + ", ".join(as_rgb(colours[name]) for name in names) + "}")
    lines.append(", \\\n".join(rows))
    return "\n".join(lines) + "\n"


def main():
    if len(sys.argv) != 3:
        sys.exit(__doc__)
    with open(sys.argv[1], encoding="utf-8") as file:
        look = json.load(file)
    with open(sys.argv[2], "w", encoding="utf-8") as file:
        file.write(convert(look))


if __name__ == "__main__":
    main()
