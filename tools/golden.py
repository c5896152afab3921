#!/usr/bin/env python3
"""Are the committed answers the ones that the program gives today?

    golden.py             shows each difference, asks whether the new answer is right
    golden.py --accept    shows each difference and takes the new answers
    golden.py --test      shows each difference and exits 1 if there is any

tests/golden/answers.tsv has one row an answer: the file, the exit code, and the words after
`towershaft`.  A file may stand anywhere in the tree, so that pages and schemas which the program
prints are kept fresh by the same list.  Words are split at blanks; they run in the source root.
"""

import difflib
import os
import pathlib
import subprocess
import sys

ROOT = pathlib.Path(__file__).resolve().parent.parent
LIST = ROOT / "tests" / "golden" / "answers.tsv"
SHOWN = 60  # lines of one difference


def answers():
    """Yields path, exit code, words for each row; a '#' opens a comment."""
    if not LIST.is_file():
        return
    for number, line in enumerate(LIST.read_text(encoding="utf-8").splitlines(), 1):
        if not line or line.startswith("#"):
            continue
        cells = line.split("\t")
        if len(cells) != 3 or not cells[1].isdigit():
            sys.exit(f"{LIST.name}:{number}: three cells are due: file, exit code, words")
        yield pathlib.Path(cells[0]), int(cells[1]), cells[2].split(" ")


def ask(command, words):
    """What the program says on stdout, and its exit code; under one locale and without colour."""
    environment = {**os.environ, "LC_ALL": "C.UTF-8", "TERM": "dumb"}
    done = subprocess.run([command, *words], cwd=ROOT, env=environment, capture_output=True,
                          timeout=60, check=False)
    return done.stdout, done.returncode, done.stderr.decode("utf-8", "replace")


def show_difference(path, before, after):
    try:
        lines = list(difflib.unified_diff(before.decode().splitlines(), after.decode().splitlines(),
                                          f"{path} (committed)", f"{path} (today)", lineterm=""))
    except UnicodeDecodeError:
        print(f"{path}: {len(before)} bytes committed, {len(after)} bytes today, not text")
        return
    print("\n".join(lines[:SHOWN]))
    if len(lines) > SHOWN:
        print(f"... and {len(lines) - SHOWN} lines more")
    if not lines:
        print(f"{path}: line ends differ")


def wants_it(mode):
    if mode == "--accept":
        return True
    if mode == "--test" or not sys.stdin.isatty():
        return False
    return input("take the new answer? [y/N] ").strip().lower() == "y"


def compare(command, mode):
    """Returns how many answers were read, how many differ, how many of these stay different."""
    read = differ = left = 0
    for path, expected, words in answers():
        read += 1
        after, code, complaint = ask(command, words)
        if code != expected:
            print(f"{path}: exit {code} instead of {expected}: towershaft {' '.join(words)}")
            print(complaint, end="")
            differ += 1
            left += 1
            continue
        place = ROOT / path
        before = place.read_bytes() if place.is_file() else b""
        if before == after:
            continue
        differ += 1
        show_difference(path, before, after)
        if wants_it(mode):
            place.parent.mkdir(parents=True, exist_ok=True)
            place.write_bytes(after)
        else:
            left += 1
    return read, differ, left


def main():
    mode = sys.argv[1] if len(sys.argv) == 2 else ""
    if len(sys.argv) > 2 or mode not in ("", "--accept", "--test"):
        sys.exit("usage: golden.py [--accept | --test]")
    command = os.environ.get("TOWERSHAFT", str(ROOT / "build" / "release" / "towershaft"))
    read, differ, left = compare(command, mode)
    print(f"{read} answers, {differ} differ, {differ - left} taken")
    if left and mode == "":
        print("make golden ACCEPT=1 takes them")
    if read == 0:
        sys.exit("no answer is listed in tests/golden/answers.tsv")
    sys.exit(1 if left else 0)


if __name__ == "__main__":
    main()
