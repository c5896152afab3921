"""What do the compiled objects really call, keep and show?

Includes can be honest while calls are not, so this reads the symbol tables of the library that
people run: calls go down the staircase, nothing that changes is global, nothing prints, exits or
asks the machine for time, place or environment, and every visible name is ours.
"""
# ctest: release-only

import collections
import os
import pathlib
import re
import subprocess
import sys
import unittest

ROOT = pathlib.Path(__file__).resolve().parents[2]
BUILD = pathlib.Path(os.environ.get("TS_BUILD", ROOT / "build" / "release"))
sys.path.insert(0, str(ROOT / "tools"))
sys.dont_write_bytecode = True

import staircase  # noqa: E402

# What a pure library leaves alone, and the one object that may not.
NEVER = {
    "prints": ("printf vprintf puts putchar perror stdout stderr __printf_chk __vprintf_chk", ()),
    "ends the program": ("exit _exit _Exit quick_exit abort raise", ("assert",)),
    "asks for the time": ("time clock clock_gettime gettimeofday localtime gmtime mktime", ()),
    "asks the environment": ("getenv secure_getenv environ getcwd", ()),
    "depends on the locale": (
        "setlocale localeconv uselocale strtod strtof strtold atof sscanf __isoc99_sscanf "
        "strcoll strcasecmp strncasecmp tolower toupper __ctype_b_loc __ctype_tolower_loc "
        "__ctype_toupper_loc", ()),
    "is not the same twice": ("rand srand random srandom drand48 getrandom", ()),
    "shares what all threads write": (  # lgamma: its sign, in a global of the library of mathematics
        "lgamma lgammaf lgammal gamma signgam strtok strerror strsignal asctime ctime tmpnam hcreate "
        "hsearch ecvt fcvt", ()),
    "takes memory past the allocator": (
        "malloc calloc realloc reallocarray strdup strndup aligned_alloc asprintf", ("arena",)),
}
MAY_PRINT = {"assert"}  # its message is the last thing that a broken program says


def run(*words):
    return subprocess.run(words, check=True, capture_output=True, text=True).stdout


class Symbols:
    """Per object: what it defines, what it needs, and what it keeps in writable memory."""

    def __init__(self, archive):
        folders = {path.name: staircase.folder_of(path) for path in staircase.sources()}
        self.folder, self.needs, self.writable = {}, {}, collections.defaultdict(list)
        self.home = {}
        current = None
        for line in run("objdump", "-t", str(archive)).splitlines():
            member = re.match(r"(\S+)\.c\.o:\s+file format", line)
            if member:
                current = member.group(1)
                self.folder[current] = folders.get(current + ".c")
                self.needs[current] = set()
                continue
            row = re.match(r"[0-9a-f]+ (.{7}) (\S+)\t([0-9a-f]+) +(?:\.hidden )?(\S+)$", line)
            if row:
                self.note(current, *row.groups())

    def note(self, current, flags, section, size, name):
        if section == "*UND*":
            self.needs[current].add(name)
            return
        if flags[0] in "gu!" or flags[1] == "w":
            self.home[name] = current
        changes = re.match(r"\.(data|bss|tdata|tbss)(\.|$)", section) or section == "*COM*"
        constant = section.startswith(".data.rel.ro")
        if changes and not constant and int(size, 16) > 0:
            self.writable[current].append(name)


class TheLibrary(unittest.TestCase):
    @classmethod
    def setUpClass(cls):
        cls.symbols = Symbols(BUILD / "libtowershaft_internal.a")

    def assert_nothing(self, wrong):
        self.assertEqual(wrong, [], "\n" + "\n".join(wrong))

    def test_every_object_was_read(self):
        sources = [path for path in staircase.sources()
                   if path.suffix == ".c" and staircase.folder_of(path) != "apps"]
        self.assertEqual(sorted(path.stem for path in sources), sorted(self.symbols.folder))
        self.assertIn("realloc", self.symbols.needs["arena"], "the reader of symbols is blind")

    def test_no_call_climbs(self):
        wrong = []
        for one, needs in sorted(self.symbols.needs.items()):
            here = self.symbols.folder[one]
            for name in sorted(needs & set(self.symbols.home)):
                there = self.symbols.folder[self.symbols.home[name]]
                if here == there:
                    continue
                if staircase.LEVEL[there] >= staircase.LEVEL[here]:
                    wrong.append(f"src/{here}/{one}.c calls {name} of src/{there}")
        self.assert_nothing(wrong)

    def test_no_two_objects_call_each_other(self):
        edges = {one: {self.symbols.home[name] for name in needs & set(self.symbols.home)} - {one}
                 for one, needs in self.symbols.needs.items()}
        self.assert_nothing(["objects that call each other: " + ", ".join(group)
                             for group in staircase.cycles(edges)])

    def test_nothing_that_changes_is_global(self):
        self.assert_nothing([f"{one}.c keeps {', '.join(names)} in writable memory"
                             for one, names in sorted(self.symbols.writable.items())])

    def test_the_library_is_pure(self):
        wrong = []
        for sin, (names, allowed) in NEVER.items():
            for one, needs in sorted(self.symbols.needs.items()):
                if one in allowed or (sin == "prints" and one in MAY_PRINT):
                    continue
                hits = sorted(needs & set(names.split()))
                if hits:
                    wrong.append(f"src/{self.symbols.folder[one]}/{one}.c {sin}: "
                                 + ", ".join(hits))
        self.assert_nothing(wrong)

    def test_every_visible_name_is_ours(self):
        self.assert_nothing([f"{one}.c shows {name}" for name, one in
                             sorted(self.symbols.home.items()) if not name.startswith("ts_")])

    def test_the_shared_library_shows_what_the_public_headers_promise(self):
        promised = set()
        for header in (ROOT / "include" / "towershaft").glob("*.h"):
            text = re.sub(r"/\*.*?\*/", " ", header.read_text(), flags=re.DOTALL)
            promised |= set(re.findall(r"TS_API\b[^;()]*?\b(ts_\w+)\s*\(", text))
        listing = run("nm", "-D", "--defined-only", str(BUILD / "libtowershaft.so"))
        rows = [line.split() for line in listing.splitlines()]
        shown = {row[2].partition("@")[0] for row in rows if row[1] != "A"}  # A: the version
        self.assertGreater(len(promised), 5, "the reader of headers is blind")
        self.assertEqual(promised, shown)
        self.assertEqual({row[2].partition("@@")[2] for row in rows if row[1] != "A"},
                         {"TOWERSHAFT_0.1"})


if __name__ == "__main__":
    unittest.main()
