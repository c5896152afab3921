#!/usr/bin/env python3
"""Would the tests see a wrong formula?

    mutants.py [--count N] [--seed S] [--within SECONDS] [--record FILE] [--show] [PART ...]

Changes one sign, factor or index in a source of src/element, builds that source alone, links it in
front of the library into each test that uses it, and runs these tests until one fails.  A change that
no test sees lives: a test is missing, or the change changes nothing (which is for a reader to say).
Those that a reader found to change no answer stand with the reason in
tools/mutants_equal.tsv (source, change, which of the same changes in the line, line, reason); they are
told and not counted, and a row that fits no source any more is an error.
Tests of src/element come first, then the published cases, then eight quick tests of other folders that
call the source.  N changes are drawn from all by the seed; PART keeps sources
whose path holds it.  The release build must be whole.  Exit code 1 when fewer than 90 % are seen.

What is never changed: text in quotes (formula texts are proved against the code by every checked
build), comments, preprocessor lines, and the words of a declaration of arrays.
"""
import argparse
import concurrent.futures
import json
import os
import pathlib
import random
import re
import shlex
import subprocess
import sys
import tempfile
import time

ROOT = pathlib.Path(__file__).resolve().parents[1]
BUILD = ROOT / "build/release"
EQUAL = ROOT / "tools/mutants_equal.tsv"
SLOWEST = 1.0  # seconds of processor time; a slower test of another folder is left out
FARTHEST = 8   # tests of other folders that are asked, the quickest first
LIMIT = 20     # seconds of processor time; a mutant that runs longer is seen

SIGN = re.compile(r"(?<=[\w)\]]) ([+-]) (?=[\w(])")
FACTOR = re.compile(r"(?<![\w.])(\d+\.\d+(?:e[+-]?\d+)?)(?![\w.])| ([*/]) (?=[\w(])")
INDEX = re.compile(r"(?<=\[)([012])(?=\])|(?<=[a-z])_?([12])(?=\b)")
OTHER = {"+": "-", "-": "+", "*": "/", "/": "*"}


def code_spans(text):
    """Where the code stands: (from, to) of every stretch outside comments, quotes and # lines."""
    hidden = re.compile(r'/\*.*?\*/|//[^\n]*|"(?:\\.|[^"\\\n])*"|\'(?:\\.|[^\'\\\n])*\'|^#[^\n]*',
                        re.S | re.M)
    at, spans = 0, []
    for match in hidden.finditer(text):
        spans.append((at, match.start()))
        at = match.end()
    return [*spans, (at, len(text))]


def changes_of(text):
    """Every change that can be made: (kind, from, to, new bytes)."""
    names = set(re.findall(r"\b[A-Za-z_]\w*\b", text))
    found = []
    for begin, end in code_spans(text):
        part = text[begin:end]
        for match in SIGN.finditer(part):
            found.append(("sign", begin + match.start(1), begin + match.end(1),
                          OTHER[match.group(1)]))
        for match in FACTOR.finditer(part):
            group = 1 if match.group(1) else 2
            word = match.group(group)
            if group == 2:
                new = OTHER[word]
            elif float(word) == 0.0:
                new = "0.1"
            else:
                new = f"({word} * 1.1)"
            found.append(("factor", begin + match.start(group), begin + match.end(group), new))
        for match in INDEX.finditer(part):
            group = 1 if match.group(1) else 2
            start, stop = begin + match.start(group), begin + match.end(group)
            if group == 1:
                found.append(("index", start, stop, str((int(match.group(1)) + 1) % 2)))
                continue
            word = re.search(r"\w+$", text[:start]).group() + match.group(2)
            twin = word[:-1] + ("2" if match.group(2) == "1" else "1")
            declared = re.search(r"\w[ *]+$", text[:start - len(word) + 1]) is not None
            if twin in names and not declared:
                found.append(("index", start, stop, "2" if match.group(2) == "1" else "1"))
    return found


class Build:
    """The commands of the release build, and what each test takes from the library."""

    def __init__(self):
        entries = json.loads((BUILD / "compile_commands.json").read_text(encoding="utf-8"))
        self.compile = {entry["file"]: entry["command"] for entry in entries
                        if "/ts_checked.dir/" in entry["command"]}
        self.cost, self.links = {}, {}
        self.tests = self.programs()
        self.bank = [str(BUILD / "towershaft-bank"), "tests/reference/gears.json",
                     "tests/reference/elements.json"]
        self.bank_says = self.run(self.bank).stdout

    @staticmethod
    def run(words, limit=LIMIT):
        return subprocess.run(["prlimit", f"--cpu={limit}", *words], cwd=ROOT,
                              capture_output=True, text=True, check=False, errors="replace",
                              env={**os.environ, "TS_SOURCE": str(ROOT), "TS_BUILD": str(BUILD),
                                   "TOWERSHAFT": str(BUILD / "towershaft")})

    def seconds(self, path):
        """Of processor time that a test takes when nothing is changed; found once."""
        if path not in self.cost:
            before = os.times()
            done = self.run([str(BUILD / path)], int(SLOWEST) + 1 if "/element/" not in path else LIMIT)
            after = os.times()
            used = after.children_user + after.children_system
            used -= before.children_user + before.children_system
            self.cost[path] = used if done.returncode == 0 else float("inf")
        return self.cost[path]

    def programs(self):
        """Path of every test in C, with the functions of the library that stand in it."""
        found = {}
        for path in sorted(BUILD.glob("tests/*/test_*")):
            if not os.access(path, os.X_OK) or path.suffix:
                continue
            found[str(path.relative_to(BUILD))] = self.symbols(path)
        return found

    @staticmethod
    def symbols(path):
        done = subprocess.run(["nm", "--defined-only", str(path)], capture_output=True, text=True,
                              check=False)
        return {line.split()[2] for line in done.stdout.splitlines()
                if len(line.split()) == 3 and line.split()[1] in "Tt"}

    def link(self, program):
        if program not in self.links:
            done = subprocess.run(["ninja", "-C", str(BUILD), "-t", "commands", "-s", program],
                                  capture_output=True, text=True, check=True)
            self.links[program] = done.stdout.strip().splitlines()[-1]
        return self.links[program]

    def tests_of(self, source):
        """Those that hold a visible function of the source, the nearest first."""
        command = self.compile[str(source)]
        object_file = BUILD / re.search(r" -o (\S+)", command).group(1)
        done = subprocess.run(["nm", "--defined-only", "--extern-only", str(object_file)],
                              capture_output=True, text=True, check=True)
        ours = {line.split()[2] for line in done.stdout.splitlines() if len(line.split()) == 3}
        found = [path for path, names in self.tests.items() if ours & names]

        def order(path):
            name = pathlib.Path(path).name
            return (name != f"test_{source.stem}", source.stem.split("_")[0] not in name,
                    self.seconds(path))
        near = sorted((path for path in found if path.startswith("tests/element/")), key=order)
        # Of the other folders those that are nearest by name, for all cannot be timed.
        words = set(source.stem.split("_"))
        far = sorted((path for path in found if path not in near and not path.startswith(
            ("tests/fault/", "tests/property/", "tests/apps/"))),
            key=lambda path: (-len(words & set(pathlib.Path(path).name.split("_"))),
                              "tests/rating/" not in path, path))[:FARTHEST]
        # One after the other, for most changes never come so far.
        return near, (path for path in far if self.seconds(path) <= SLOWEST)


class Mutant:
    def __init__(self, source, change, text):
        self.source, self.text = source, text
        self.kind, self.begin, self.end, self.new = change
        self.line = text.count("\n", 0, self.begin) + 1

    def __str__(self):
        line = self.text.splitlines()[self.line - 1].strip()
        return (f"{self.source.relative_to(ROOT)}:{self.line}: {self.kind} "
                f"{self.text[self.begin:self.end]} -> {self.new} in: {line}")

    def place(self):
        """What a row of mutants_equal.tsv names it by: no line number, for these move."""
        start = self.text.rfind("\n", 0, self.begin) + 1
        end = self.text.find("\n", self.begin)
        word = self.text[self.begin:self.end]
        nth = len(re.findall(r"(?<!\S)" + re.escape(word) + r"(?!\S)" if word in OTHER else re.escape(word),
                             self.text[start:self.begin])) + 1
        return (self.source.name, f"{word} -> {self.new}", str(nth), self.text[start:end].strip())

    def judge(self, build):
        """'seen by ...', 'lives', or 'cannot be built'."""
        with tempfile.TemporaryDirectory() as room:
            changed = pathlib.Path(room) / self.source.name
            changed.write_text(self.text[:self.begin] + self.new + self.text[self.end:],
                               encoding="utf-8")
            made = pathlib.Path(room) / "mutant.o"
            words = shlex.split(build.compile[str(self.source)])
            words = [word for word in words if not word.endswith("ccache") and word != "-Werror"]
            words[words.index("-o") + 1] = str(made)
            words[words.index(str(self.source))] = str(changed)
            words.append("-w")
            if subprocess.run(words, cwd=BUILD, capture_output=True, check=False).returncode:
                return "cannot be built"
            near, far = build.tests_of(self.source)
            for path in near:
                if self.fails(build, path, made, room):
                    return "seen by " + path[6:]
            if self.fails(build, "towershaft-bank", made, room):
                return "seen by the bank"
            for path in far:
                if self.fails(build, path, made, room):
                    return "seen by " + path[6:]
        return "lives"

    @staticmethod
    def fails(build, program, made, room):
        out = pathlib.Path(room) / "program"
        command = build.link(program).removeprefix(": && ").removesuffix(" && :")
        words = shlex.split(command)
        words[words.index("-o") + 1] = str(out)
        first = next(at for at, word in enumerate(words) if word.endswith(".o"))
        words.insert(first, str(made))
        linked = subprocess.run(words, cwd=BUILD, capture_output=True, text=True, check=False)
        if linked.returncode:
            raise RuntimeError(linked.stderr)
        if program == "towershaft-bank":
            return build.run([str(out), *build.bank[1:]]).stdout != build.bank_says
        return build.run([str(out)]).returncode != 0


def equal_ones(every):
    """{place: reason}, each of which must be one of all possible changes."""
    rows = [line.split("\t") for line in EQUAL.read_text(encoding="utf-8").splitlines()
            if line and not line.startswith("#")]
    told = {tuple(row[:4]): row[4] for row in rows}
    strange = set(told) - {mutant.place() for mutant in every}
    if strange:
        raise SystemExit("mutants_equal.tsv: these fit no source any more:\n"
                         + "\n".join("  " + " | ".join(row) for row in sorted(strange)))
    return told


def all_mutants():
    found = []
    for source in sorted((ROOT / "src/element").glob("*.c")):
        text = source.read_text(encoding="utf-8")
        found += [Mutant(source, change, text) for change in changes_of(text)]
    return found


def draw(given, every):
    found = [mutant for mutant in every
             if not given.parts or any(part in str(mutant.source) for part in given.parts)]
    random.Random(given.seed).shuffle(found)
    return found[:given.count], len(found), len({mutant.source for mutant in found})


def main():
    parser = argparse.ArgumentParser(description=__doc__,
                                     formatter_class=argparse.RawDescriptionHelpFormatter)
    parser.add_argument("--count", type=int, default=300)
    parser.add_argument("--seed", type=int, default=1)
    parser.add_argument("--within", type=float, default=float("inf"), metavar="SECONDS")
    parser.add_argument("--jobs", type=int, default=1)
    parser.add_argument("--record", type=pathlib.Path)
    parser.add_argument("--show", action="store_true", help="tell each mutant as it is judged")
    parser.add_argument("parts", nargs="*", metavar="PART")
    given = parser.parse_args()
    build, begun = Build(), time.monotonic()
    every = all_mutants()
    equal = equal_ones(every)
    chosen, possible, files = draw(given, every)
    count, lives, kinds = {"seen": 0, "lives": 0, "cannot": 0, "equal": 0}, [], {}

    def one(mutant):
        if time.monotonic() - begun > given.within:
            return mutant, None
        reason = equal.get(mutant.place())
        return mutant, "equal: " + reason if reason else mutant.judge(build)

    with concurrent.futures.ThreadPoolExecutor(given.jobs) as pool:
        for mutant, end in pool.map(one, chosen):
            if end is None:
                continue
            count[end.split()[0].rstrip(":")] += 1
            if end.split()[0] not in ("cannot", "equal:"):
                seen, tried = kinds.get(mutant.kind, (0, 0))
                kinds[mutant.kind] = (seen + (end != "lives"), tried + 1)
            if end == "lives":
                lives.append(str(mutant))
            if given.show:
                print(f"{end}: {mutant}", flush=True)
    tried = count["seen"] + count["lives"]
    share = count["seen"] / tried if tried else 0.0
    told = [f"{tried} of {possible} possible changes in {files} sources (seed {given.seed}): "
            f"{count['seen']} seen, {count['lives']} live, {count['cannot']} could not be built, "
            f"{count['equal']} change no answer; "
            f"{share:.1%} seen, in {time.monotonic() - begun:.0f} s"]
    told += [f"  {kind}: {seen} of {all_of}" for kind, (seen, all_of) in sorted(kinds.items())]
    told += ["lives: " + one for one in sorted(lives)]
    print("\n".join(told))
    if given.record:
        given.record.write_text("\n".join(told) + "\n", encoding="utf-8")
    return 0 if share >= 0.9 else 1


if __name__ == "__main__":
    sys.exit(main())
