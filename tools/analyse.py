#!/usr/bin/env python3
"""What do three static analysers say about src/?

    analyse.py [--jobs N] [--only TOOL] [PART ...]

gcc -fanalyzer, clang-tidy (.clang-tidy) and cppcheck read every source of the library and of the
command, with the flags of the release build; PART keeps those whose path holds it.  Exit code 1 when
one of them says something, 2 when one of them could not run.

What is left out, and why:
"""
import argparse
import concurrent.futures
import json
import os
import pathlib
import re
import shlex
import subprocess
import sys
import time

ROOT = pathlib.Path(__file__).resolve().parents[1]
BUILD = ROOT / "build/release"

# gcc 12, by warning.
GCC_OFF = {
    "analyzer-use-of-uninitialized-value":
        "gcc 12 loses what it knows of aggregates that are returned by value and of arrays that "
        "are filled by index; each of its eleven finds was read and is written to before. clang's "
        "analyser looks for the same, and valgrind does in `make soak`",
    "analyzer-malloc-leak":
        "every allocation of the library comes from an arena or a buffer behind a pointer to "
        "function, which gcc 12 does not follow; the leak sanitizer watches all tests",
}
# clang-tidy and gcc, by file.
FILES_OFF = {
    "src/apps/serve/asset.c": "five megabytes of numbers, the bytes of the page: clang-tidy takes "
                              "minutes over them, and there is nothing else in the file but a look-up",
}
# cppcheck, by its id and path.
CPPCHECK_OFF = {
    "ignoredReturnValue": "2.10 does not see that a function in the braces of a compound literal is "
                          "used",
    "invalidPointerCast": "a table of offsets of doubles reaches them through bytes; the offsets are "
                          "those of offsetof, and the undefined-behaviour sanitizer watches the reads",
    "internalAstError": "2.10 cannot read a macro with a conditional in its arguments "
                        "(stress_cycle.c); gcc and clang read the same file",
    "objectIndex": "2.10 takes a row inside of an array, &all[row * n], for the address of one number",
    "unknownMacro": "the list of rules is a macro of a generated table, which cppcheck is not given",
    "uninitvar": "2.10 does not see through a memset behind a pointer in a record, nor that an address "
                 "is only handed on; clang's analyser looks for the same, and valgrind does in `make soak`",
}


def reasons():
    lines = [f"gcc -Wno-{name}: {why}" for name, why in GCC_OFF.items()]
    lines += [f"{name}: {why}" for name, why in FILES_OFF.items()]
    lines += [f"cppcheck {name}: {why}" for name, why in CPPCHECK_OFF.items()]
    return "\n".join(lines) + "\nclang-tidy: in .clang-tidy"


def commands(parts):
    """The command that compiles each source, once."""
    told = {}
    for entry in json.loads((BUILD / "compile_commands.json").read_text(encoding="utf-8")):
        path = pathlib.Path(entry["file"])
        name = str(path.relative_to(ROOT)) if path.is_relative_to(ROOT) else ""
        if name.startswith("src/") and name.endswith(".c") and name not in told:
            if not parts or any(part in name for part in parts):
                told[name] = entry
    return dict(sorted(told.items()))


def gcc(entry):
    words = shlex.split(entry["command"])
    words = words[1:] if words[0].endswith("ccache") else words
    at = words.index("-o")
    del words[at:at + 2]
    words = [word for word in words if word not in ("-c", "-Werror")]
    words += ["-S", "-o", "/dev/null", "-fanalyzer", "-fdiagnostics-plain-output"]
    words += [f"-Wno-{name}" for name in GCC_OFF]
    done = subprocess.run(words, cwd=entry["directory"], capture_output=True, text=True,
                          check=False)
    return done.stderr if "warning:" in done.stderr or done.returncode else ""


def clang_tidy(entry):
    done = subprocess.run(["clang-tidy", "--quiet", "-p", str(BUILD), entry["file"]], cwd=ROOT,
                          capture_output=True, text=True, check=False)
    return done.stdout if "warning:" in done.stdout or "error:" in done.stdout else ""


def cppcheck(paths):
    """One folder at once: it looks across files, and over all of them without an end.  Generated tables
    are left out, missing includes told by none."""
    words = ["cppcheck", "--quiet", "--std=c11", "--enable=warning,performance,portability",
             "--inline-suppr", "-Isrc", "-Iinclude", "--file-list=-",
             "--template={file}:{line}: {severity}: {id}: {message}"]
    words += [f"--suppress={name}" for name in CPPCHECK_OFF]
    done = subprocess.run(words, cwd=ROOT, input="\n".join(paths), capture_output=True, text=True,
                          check=False)
    return done.stderr + (done.stdout if done.returncode else "")


def folders(parts):
    """The sources of each folder of src/, as paths from the top."""
    told = {}
    for path in sorted(ROOT.glob("src/**/*.c")):
        name = str(path.relative_to(ROOT))
        if not parts or any(part in name for part in parts):
            told.setdefault("/".join(path.relative_to(ROOT / "src").parts[:-1]), []).append(name)
    return list(told.values())


def unexplained():
    """Suppressions in the sources without a reason behind them."""
    found = []
    for path in sorted(ROOT.glob("src/**/*.[ch]")):
        for number, line in enumerate(path.read_text(encoding="utf-8").splitlines(), 1):
            mark = re.search(r"NOLINT\w*|cppcheck-suppress|diagnostic ignored", line)
            if mark and not re.search(r"NOLINT\w*\([\w.,-]+\): \w{2}", line):
                found.append(f"{path.relative_to(ROOT)}:{number}: suppressed without a reason\n")
    return "".join(found)


def main():
    parser = argparse.ArgumentParser(description=__doc__ + reasons(),
                                     formatter_class=argparse.RawDescriptionHelpFormatter)
    parser.add_argument("--jobs", type=int, default=os.cpu_count())
    parser.add_argument("--only", choices=("gcc", "clang-tidy", "cppcheck"))
    parser.add_argument("parts", nargs="*", metavar="PART")
    given = parser.parse_args()
    if not (BUILD / "compile_commands.json").exists():
        sys.exit("analyse: build/release is not configured (tools/configure.sh release)")
    sources, said = commands(given.parts), [unexplained()]
    with concurrent.futures.ThreadPoolExecutor(given.jobs) as pool:
        for name, run in (("gcc", gcc), ("clang-tidy", clang_tidy)):
            if given.only in (None, name):
                begun = time.monotonic()
                told = [entry for path, entry in sources.items() if path not in FILES_OFF]
                found = [one for one in pool.map(run, told) if one]
                said += found
                print(f"{name}: {len(told)} sources, {len(found)} with something to say, "
                      f"{time.monotonic() - begun:.0f} s")
    if given.only in (None, "cppcheck"):
        begun = time.monotonic()
        with concurrent.futures.ThreadPoolExecutor(given.jobs) as pool:
            found = [one for one in pool.map(cppcheck, folders(given.parts)) if one]
        said += found
        print(f"cppcheck: {len(found)} folders with something to say, {time.monotonic() - begun:.0f} s")
    said = [one for one in said if one]
    print("\n".join(said), end="")
    return 1 if said else 0


if __name__ == "__main__":
    sys.exit(main())
