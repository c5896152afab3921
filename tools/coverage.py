#!/usr/bin/env python3
"""Which lines and branches of src/ do the tests go through?

    coverage.py [--build build/coverage] [--part PART] [--missing PART]

Reads what a run of the tests under the preset `coverage` left behind (`make coverage` does all of it)
and prints a table by folder.  A branch is one way out of one condition, as gcov counts them without
optimisation.  Left out of the count, because no test that passes can go there: the failing way of
TS_ASSERT and static_assert.  Tables that are data (data/*.tsv made into C) are not in src/.
--part looks at the objects whose path holds PART alone, --missing prints the lines, and the branches, of the sources whose path holds PART that no test reached.
Exit code 1 when less than 95 % of the lines or 90 % of the branches were gone through.
"""
import argparse
import collections
import gzip
import json
import pathlib
import subprocess
import sys
import tempfile

ROOT = pathlib.Path(__file__).resolve().parents[1]
NEVER = ("TS_ASSERT(", "static_assert(", "_Static_assert(")


def counts(build, part):
    """{source: {line: (times, [times of each branch])}}, from every object whose path holds part."""
    told = collections.defaultdict(dict)
    notes = sorted(str(path) for path in build.rglob("*.gcno") if "/tests/" not in str(path) and part in str(path))
    with tempfile.TemporaryDirectory() as room:
        for at in range(0, len(notes), 100):
            subprocess.run(["gcov", "--json-format", "--branch-probabilities", "--hash-filenames",
                            "--preserve-paths", *notes[at:at + 100]], cwd=room, check=False,
                           capture_output=True)
        for path in pathlib.Path(room).glob("*.gcov.json.gz"):
            with gzip.open(path, "rt", encoding="utf-8") as text:
                for file in json.load(text)["files"]:
                    add(told, file, build)
    return told


def add(told, file, build):
    path = pathlib.Path(file["file"])
    path = path if path.is_absolute() else ROOT / path
    path = pathlib.Path(str(path).replace(str(build / "view/apps"), str(ROOT / "src/apps")))
    if not path.is_relative_to(ROOT / "src") or not path.exists():
        return
    lines = told[str(path.relative_to(ROOT))]
    for line in file["lines"]:
        number, ways = line["line_number"], [way["count"] for way in line["branches"]]
        times, before = lines.get(number, (0, []))
        # A function of a header stands in many objects: it is gone through when one of them is.
        if len(before) == len(ways):
            ways = [one + other for one, other in zip(before, ways)]
        elif len(before) > len(ways):
            ways = before
        lines[number] = (times + line["count"], ways)


def leave_out(told):
    """Branches of assertions go."""
    for name, lines in told.items():
        text = (ROOT / name).read_text(encoding="utf-8").splitlines()
        for number, (times, ways) in lines.items():
            if number > len(text):
                sys.exit(f"coverage: {name} is not what was built; build and test anew")
            if ways and text[number - 1].strip().startswith(NEVER):
                lines[number] = (times, [])


class Share:
    def __init__(self):
        self.lines = self.lines_run = self.ways = self.ways_run = 0

    def add(self, lines):
        for times, ways in lines.values():
            self.lines += 1
            self.lines_run += times > 0
            self.ways += len(ways)
            self.ways_run += sum(way > 0 for way in ways)

    def __str__(self):
        return (f"{self.lines:7} {self.lines_run / max(1, self.lines):7.1%} "
                f"{self.ways:8} {self.ways_run / max(1, self.ways):8.1%}")


def show_missing(told, part):
    for name in sorted(name for name in told if part in name):
        text = (ROOT / name).read_text(encoding="utf-8").splitlines()
        for number, (times, ways) in sorted(told[name].items()):
            if times == 0 or 0 in ways:
                mark = "not run" if times == 0 else f"{ways.count(0)} of {len(ways)} ways not gone"
                print(f"{name}:{number}: {mark}: {text[number - 1].strip()}")


def main():
    parser = argparse.ArgumentParser(description=__doc__,
                                     formatter_class=argparse.RawDescriptionHelpFormatter)
    parser.add_argument("--build", type=pathlib.Path, default=ROOT / "build/coverage")
    parser.add_argument("--part", default="")
    parser.add_argument("--missing", metavar="PART")
    given = parser.parse_args()
    told = counts(given.build.resolve(), given.part)
    leave_out(told)
    if given.missing is not None:
        show_missing(told, given.missing)
        return 0
    folders, whole = collections.defaultdict(Share), Share()
    for name, lines in told.items():
        parts = name.split("/")
        folders["/".join(parts[:3] if parts[1] == "apps" else parts[:2])].add(lines)
        whole.add(lines)
    print(f"{'folder':18} {'lines':>7} {'run':>7} {'branches':>8} {'gone':>8}")
    for folder, share in sorted(folders.items()):
        print(f"{folder:18} {share}")
    print(f"{'src':18} {whole}")
    least = sorted(told, key=lambda name: sum(times == 0 for times, _ in told[name].values()))
    for name in reversed(least[-12:]):
        print(f"most lines that no test runs: {name}: "
              f"{sum(times == 0 for times, _ in told[name].values())} of {len(told[name])}")
    enough = whole.lines_run >= 0.95 * whole.lines and whole.ways_run >= 0.9 * whole.ways
    return 0 if enough and whole.lines else 1


if __name__ == "__main__":
    sys.exit(main())
