#!/usr/bin/env python3
"""Writes src/base/combining_mark.c: the code points that take no column of their own.

Usage: python3 tools/combining_mark.py > src/base/combining_mark.c

Marks (general categories Mn and Me) and U+200B..U+200F, from the Unicode data of this Python;
ranges run on over code points that are not assigned.
"""
import unicodedata


def takes_no_column(code):
    return unicodedata.category(chr(code)) in ("Mn", "Me") or 0x200B <= code <= 0x200F


def ranges():
    found, open_from, last = [], None, None
    for code in range(0x110000):
        if takes_no_column(code):
            open_from = code if open_from is None else open_from
            last = code
        elif open_from is not None and unicodedata.category(chr(code)) != "Cn":
            found.append((open_from, last))
            open_from = None
    if open_from is not None:
        found.append((open_from, last))
    return found


def main():
    print("/* base/combining_mark.c: which code points stand on the letter before them?")
    print(" *")
    print(" * Written by tools/combining_mark.py from the Unicode Character Database,")
    print(f" * version {unicodedata.unidata_version}: categories Mn and Me, and U+200B..U+200F. */")
    print('#include "base/combining_mark.h"\n')
    print("#include <stddef.h>\n")
    print("/* clang-format off */")
    print("static const struct {\n    uint32_t first, last;\n} ranges[] = {")
    for first, last in ranges():
        print(f"    {{0x{first:04X}, 0x{last:04X}}},")
    print("};")
    print("/* clang-format on */\n")
    print("bool ts_combining_mark(uint32_t code_point)")
    print("{")
    print("    size_t low = 0, high = sizeof ranges / sizeof ranges[0];")
    print("    while (low < high) {")
    print("        const size_t middle = low + (high - low) / 2;")
    print("        if (code_point > ranges[middle].last)")
    print("            low = middle + 1;")
    print("        else")
    print("            high = middle;")
    print("    }")
    print("    return low < sizeof ranges / sizeof ranges[0] && code_point >= ranges[low].first;")
    print("}")


if __name__ == "__main__":
    main()
