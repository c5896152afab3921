#!/usr/bin/env python3
"""Which keys does a table have?  The first cell of each row of data/*.tsv, one C string a line.

    keys_to_c.py data/gear_material.tsv gear_material_key.inc
"""

import sys

import table_to_c


def main():
    if len(sys.argv) != 3:
        sys.exit("usage: keys_to_c.py data/<name>.tsv <out.inc>")
    path, out = sys.argv[1:]
    _, rows = table_to_c.read(path)
    keys = [row[0] for row in rows]
    for number, key in enumerate(keys):
        if key in keys[:number]:
            sys.exit(f"{path}: the key {key!r} stands twice")
    with open(out, "w", encoding="ascii", newline="\n") as file:
        file.write(f"/* Made from {path}; change that, not this. */\n")
        for key in keys:
            file.write(table_to_c.quoted(key) + ",\n")


if __name__ == "__main__":
    main()
