#!/usr/bin/env python3
"""Who includes whom?  Reads every #include in src/ and include/ and judges it by the order of steps.

    staircase.py            says what is wrong, and exits 1 if anything is
    staircase.py --write    and writes docs/staircase.md from what it found

Data walks up, includes look down: a folder knows the folders on lower steps and itself, never one
beside it or above it.
"""

import collections
import pathlib
import re
import sys

ROOT = pathlib.Path(__file__).resolve().parent.parent
PAGE = ROOT / "docs" / "staircase.md"

# From the ground up.  Folders of one step do not know each other.
STEPS = (
    (("base", "memory, text, numbers, diagnostics, workings, exact ratios"),),
    (("quantity", "kinds and units: text to SI and back"),),
    (("catalog", "tables of materials, oils, series: a key to its row and source"),),
    (("model", "what the drive is: read from a file, written back by byte ranges"),),
    (("element", "one part by itself: its geometry, mass, stiffness"),
     ("sample", "what varies by which law, which samples are drawn, what they tell")),
    (("motion", "ratios, speeds, senses, positions of axes"),),
    (("pump", "oil pump packs and breathers: sizes, delivery, attitudes, torque"),),
    (("power", "who carries what in each condition; tooth forces"),),
    (("mass", "what every part weighs, where, and how hard it is to spin; what the mounts bear"),),
    (("solid", "every part as a body in space: sections, teeth, casings"),),
    (("response", "start, seizure, torsion, whirl"),),
    (("rating", "stresses, safeties and lives by the standards"),),
    (("effect", "what stops when a part fails, and what may have stopped it"),
     ("oil", "losses of a drive, jets, scavenge, heat")),
    (("check", "one file per question; findings and waivers"),),
    (("rate", "stand-alone elements by standard symbols: sections, findings"),),
    (("search", "arrangements and sizes, with proof"),),
    (("report", "results as documents"), ("draw", "results as pictures")),
    (("study", "the conductor behind the public headers"),),
    (("apps", "the doors: public headers only"),),
)
LEVEL = {folder: level for level, step in enumerate(STEPS) for folder, _ in step}
OWNS = {folder: owns for step in STEPS for folder, owns in step}
PUBLIC = "towershaft"  # include/towershaft: includes itself only; everybody may include it

# A library that is not ours is known in one room.
FOREIGN = (("libfyaml", "model"), ("cairo", "draw"), ("pango", "draw"), ("fontconfig", "draw"),
           ("glib", "draw"), ("jansson", None), ("sqlite3", "apps"), ("mpi.h", "apps"), ("microhttpd", "apps"), ("lapack", "response"),
           ("cvode", "response"), ("nvector", "response"), ("sunnonlinsol", "response"))
# Clock, locale and signals are the doors' business.
DOORS_ONLY = {"time.h", "locale.h", "signal.h", "wchar.h", "wctype.h", "sys/time.h"}

INCLUDE = re.compile(r'^[ \t]*#[ \t]*include[ \t]*([<"])([^>"]+)[>"]', re.MULTILINE)

Include = collections.namedtuple("Include", "source target line")


def sources():
    """Every C file of the library, the apps and the public headers, relative to the root."""
    found = []
    for top in ("src", "include"):
        for ending in ("*.c", "*.h"):
            found += (ROOT / top).rglob(ending)
    return sorted(path.relative_to(ROOT) for path in found)


def folder_of(path):
    """src/rating/iso6336/x.c stands in rating; include/towershaft/x.h in towershaft."""
    return path.parts[1]


def resolve(source, name):
    """The file that an include names, or None."""
    places = [ROOT / "src" / name, ROOT / "include" / name, (ROOT / source).parent / name]
    for place in places:
        if place.is_file():
            return place.resolve().relative_to(ROOT)
    return None


def is_generated(name):
    """An .inc is made by the build, from a table of that name or by a room's own rule."""
    stem, _, ending = name.rpartition(".")
    if ending != "inc":
        return False
    if (ROOT / "data" / f"{stem}.tsv").is_file():
        return True
    return any(f"{stem}.inc" in rule.read_text() for rule in (ROOT / "cmake").glob("*.cmake"))


def judge_foreign(source, line, name):
    folder = folder_of(source)
    if folder == "apps":
        return
    if name in DOORS_ONLY:
        yield f"{source}:{line}: <{name}> is for apps only; the library knows no clock, no locale"
    for stem, room in FOREIGN:
        if name.startswith(stem) and folder != room:
            where = f"is known in src/{room} only" if room else "is for tests only"
            yield f"{source}:{line}: <{name}> {where}"


def is_front(source, target):
    """The command opens other doors by the one header that bears their name."""
    return source.parts[2] == "cli" and target.name == f"{target.parts[2]}.h"


def judge_arrow(include):
    source, target, line = include
    here, there = folder_of(source), folder_of(target)
    place = f"{source}:{line}: includes {target}"
    if here == PUBLIC:
        if there != PUBLIC:
            yield f"{place}; a public header includes public headers only"
        return
    if there == PUBLIC:
        return
    if here == "apps":
        if there != "apps":
            yield f"{place}; an app sees public headers only"
        elif source.parts[2] != target.parts[2] and not is_front(source, target):
            yield f"{place}; one app does not know another"
        return
    if here == there:
        mine, its = source.parts[2:-1], target.parts[2:-1]
        if mine and its and mine[0] != its[0]:
            yield f"{place}; src/{here}/{mine[0]} does not know src/{here}/{its[0]}"
        return
    if LEVEL[there] > LEVEL[here]:
        yield f"{place}; that climbs from {here} to {there}"
    elif LEVEL[there] == LEVEL[here]:
        yield f"{place}; {here} and {there} stand on one step and do not know each other"


def read_includes(paths):
    """Returns the includes that stay in the house, and what is wrong with the others."""
    includes, wrong = [], []
    for source in paths:
        text = (ROOT / source).read_text(encoding="utf-8", errors="replace")
        for match in INCLUDE.finditer(text):
            line = text.count("\n", 0, match.start()) + 1
            quote, name = match.groups()
            if quote == "<":
                wrong += judge_foreign(source, line, name)
                continue
            target = resolve(source, name)
            if target is not None:
                includes.append(Include(source, target, line))
            elif not is_generated(name):
                wrong.append(f'{source}:{line}: "{name}" names no file below src/ or include/')
    return includes, wrong


def cycles(edges):
    """Groups of nodes that reach each other; edges: node -> set of nodes (Tarjan, no recursion)."""
    index, low, on_stack, stack, groups = {}, {}, set(), [], []

    def enter(node, work):
        index[node] = low[node] = len(index)
        stack.append(node)
        on_stack.add(node)
        work.append((node, iter(sorted(edges.get(node, ())))))

    def leave(node):
        if low[node] != index[node]:
            return
        group = []
        while not group or group[-1] != node:
            group.append(stack.pop())
            on_stack.discard(group[-1])
        if len(group) > 1 or node in edges.get(node, ()):
            groups.append(sorted(group))

    for root in sorted(edges):
        work = []
        if root not in index:
            enter(root, work)
        while work:
            node, rest = work[-1]
            for other in rest:
                if other not in index:
                    enter(other, work)
                    break
                if other in on_stack:
                    low[node] = min(low[node], index[other])
            else:
                work.pop()
                if work:
                    low[work[-1][0]] = min(low[work[-1][0]], low[node])
                leave(node)
    return groups


def judge():
    """Returns the includes, and everything that is wrong as lines of text."""
    paths = sources()
    wrong = []
    for path in paths:
        folder = folder_of(path)
        if folder != PUBLIC and folder not in LEVEL:
            wrong.append(f"{path}: src/{folder} has no step; give it one in tools/staircase.py")
    if wrong:
        return [], wrong
    includes, wrong = read_includes(paths)
    for include in includes:
        wrong += judge_arrow(include)
    edges = collections.defaultdict(set)
    for include in includes:
        edges[str(include.source)].add(str(include.target))
    for group in cycles(edges):
        wrong.append("files that include each other: " + ", ".join(group))
    names = collections.defaultdict(list)
    for path in paths:
        if path.parts[0] == "src":
            names[path.name].append(str(path))
    for places in names.values():
        if len(places) > 1:
            wrong.append("one file name twice: " + ", ".join(places))
    return includes, wrong


def drawing(counts, folders):
    """Each step a little further to the right, with its arrows down."""
    lines = []
    for folder in reversed(folders):
        down = [f"{there} {counts[folder, there]}" for there in [PUBLIC] + folders
                if counts[folder, there] and there != folder]
        arrows = "  --> " + ", ".join(down) if down else ""
        lines.append("  " * LEVEL[folder] + folder + arrows)
    return "\n".join(line.rstrip() for line in lines)


def page(includes):
    counts = collections.Counter()
    for include in includes:
        counts[folder_of(include.source), folder_of(include.target)] += 1
    present = {folder_of(path) for path in sources()} - {PUBLIC}
    folders = sorted(present, key=lambda folder: (LEVEL[folder], folder))
    rows = [f"| {LEVEL[folder] + 1} | `src/{folder}` | {OWNS[folder]} |"
            for folder in reversed(folders)]
    return f"""# The staircase

Made by `python3 tools/staircase.py --write` from every `#include` in `src/`; a test fails when this
page is stale, when an arrow climbs, and when files include each other in a circle; another test holds
the calls between the compiled objects to the same order. Data walks up, includes look down: a folder
knows the folders on lower steps and itself.

| step | folder | owns |
|---:|---|---|
{chr(10).join(rows)}

The arrows that are really there, with the number of includes behind each; `{PUBLIC}` stands for
the public headers in `include/{PUBLIC}/`:

```text
{drawing(counts, folders)}
```
"""


def main():
    includes, wrong = judge()
    if sys.argv[1:] == ["--write"]:
        PAGE.write_text(page(includes), encoding="ascii")
    elif sys.argv[1:]:
        sys.exit("usage: staircase.py [--write]")
    for line in wrong:
        print(line)
    sys.exit(1 if wrong else 0)


if __name__ == "__main__":
    main()
