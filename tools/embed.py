#!/usr/bin/env python3
"""Which files does the program carry inside itself?

    embed.py OUT.inc NAME=PATH ...

Writes rows {"NAME", "what its first comment line says", bytes, length} for a C array.  Byte arrays
and not strings: a string literal may hold 4095 characters and no more (C17, 5.2.4.1).
"""
import re
import sys


def says(path, text):
    """The first comment or heading of the file, for lists."""
    for line in text.splitlines():
        line = line.strip()
        found = re.match(r"^(?:#+|//+|/\*+)\s*(\S.*?)(?:\s*\*/)?$", line)
        if found and not line.startswith("# yaml-language-server"):
            return found.group(1)
        found = re.match(r'^"(?:title|description)":\s*"(.*)",?$', line)
        if found:
            return found.group(1)
    return path


def main():
    out, rows, blobs = sys.argv[1], [], []
    for index, pair in enumerate(sys.argv[2:]):
        name, path = pair.split("=", 1)
        with open(path, "rb") as file:
            data = file.read()
        values = ",".join(str(byte) for byte in data)
        blobs.append(f"static const unsigned char embedded_{index}[] = {{{values},0}};\n")
        # Of a file that is no text, or whose first comment is not ASCII, only its path is said.
        title = says(path, data.decode("utf-8")) if b"\0" not in data else path
        title = (title if title.isascii() and title.isprintable() else path).replace("\\", "\\\\").replace('"', '\\"')
        rows.append(f'    {{"{name}", "{title}", embedded_{index}, {len(data)}}},\n')
    with open(out, "w", encoding="ascii") as file:
        file.writelines(blobs)
        file.write("static const embedded_file embedded_files[] = {\n")
        file.writelines(rows)
        file.write("};\n")


if __name__ == "__main__":
    main()
