#!/usr/bin/env python3
"""What do three static analysers say about src/?

    analyse.py [--jobs N] [--only TOOL] [--anew] [PART ...]

gcc -fanalyzer, clang-tidy (.clang-tidy) and cppcheck read every source of the library and of the
command, with the flags of the release build; PART keeps those whose path holds it.  Exit code 1 when
one of them says something, 2 when one of them could not run.

What was clean is remembered in out/analysed.txt, by a hash of the bytes of the source, of each file that
it includes, of the tool's version and of the words that it was run with; a later run reads only the rest.
--anew forgets it first.

What is left out, and why:
"""
import argparse
import concurrent.futures
import functools
import hashlib
import json
import os
import pathlib
import re
import shlex
import subprocess
import sys
import tempfile
import threading
import time

ROOT = pathlib.Path(__file__).resolve().parents[1]
BUILD = ROOT / "build/release"
MEMORY = ROOT / "out/analysed.txt"

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
    """The words that compile each source, once."""
    told = {}
    for entry in json.loads((BUILD / "compile_commands.json").read_text(encoding="utf-8")):
        path = pathlib.Path(entry["file"])
        name = str(path.relative_to(ROOT)) if path.is_relative_to(ROOT) else ""
        if name.startswith("src/") and name.endswith(".c") and name not in told:
            if not parts or any(part in name for part in parts):
                words = shlex.split(entry["command"])
                words = words[1:] if words[0].endswith("ccache") else words
                told[name] = {"file": str(path), "directory": entry["directory"], "arguments": words}
    return dict(sorted(told.items()))


def without_output(words):
    at = words.index("-o")
    return [word for word in words[:at] + words[at + 2:] if word not in ("-c", "-Werror")]


class Memory:
    """What was clean: one hash a line, written as soon as it is known."""

    def __init__(self, anew):
        MEMORY.parent.mkdir(exist_ok=True)
        if anew:
            MEMORY.unlink(missing_ok=True)
        self.clean = set(MEMORY.read_text().split()) if MEMORY.exists() else set()
        self.asked, self.unchanged, self.lock = set(), 0, threading.Lock()

    def ask(self, run, tool, words, files):
        """What `run` says of `files`, nothing where the same was clean before."""
        mark = hashlib.sha256(repr((version(tool), words)).encode())
        for file in sorted(files):
            mark.update(f"{file} {hash_of(file)}".encode())
        key = mark.hexdigest()
        with self.lock:
            self.asked.add(key)
            if key in self.clean:
                self.unchanged += 1
                return ""
        said, code = run()
        if code < 0 or (code != 0 and not said):
            raise OSError(f"{tool} ended with {code} and said nothing of {sorted(files)[0]}")
        if not said:
            with self.lock, MEMORY.open("a") as file:
                file.write(key + "\n")
        return said

    def forget_the_rest(self):
        """Keep only what this run asked for."""
        kept = self.asked & set(MEMORY.read_text().split() if MEMORY.exists() else ())
        MEMORY.write_text("".join(f"{key}\n" for key in sorted(kept)))


@functools.lru_cache(None)
def version(tool):
    return subprocess.run([tool, "--version"], capture_output=True, text=True, check=True).stdout


@functools.lru_cache(None)
def hash_of(file):
    return hashlib.sha256(pathlib.Path(file).read_bytes()).hexdigest()


@functools.lru_cache(None)
def read_by(words, directory):
    """The source that `words` compile and every file that it includes."""
    done = subprocess.run([*words, "-M"], cwd=directory, capture_output=True, text=True, check=True)
    rule = done.stdout.replace("\\\n", " ").split(":", 1)[1]
    return [str(pathlib.Path(directory, file)) for file in rule.split()]


def files_of(entry):
    return read_by(tuple(without_output(entry["arguments"])), entry["directory"])


def gcc(entry, memory):
    words = without_output(entry["arguments"])
    words += ["-S", "-o", "/dev/null", "-fanalyzer", "-fdiagnostics-plain-output"]
    words += [f"-Wno-{name}" for name in GCC_OFF]

    def run():
        done = subprocess.run(words, cwd=entry["directory"], capture_output=True, text=True,
                              check=False)
        return done.stderr if "warning:" in done.stderr or done.returncode else "", done.returncode

    return memory.ask(run, words[0], words, files_of(entry))


def clang_tidy(entry, memory):
    """Each source once: the release build compiles it twice, the second time with its assertions."""
    def run():
        with tempfile.TemporaryDirectory() as place:
            pathlib.Path(place, "compile_commands.json").write_text(json.dumps([entry]), "utf-8")
            done = subprocess.run(["clang-tidy", "--quiet", "-p", place, entry["file"]], cwd=ROOT,
                                  capture_output=True, text=True, check=False)
        spoke = done.returncode or "warning:" in done.stdout or "error:" in done.stdout
        return done.stdout or done.stderr if spoke else "", done.returncode

    return memory.ask(run, "clang-tidy", entry["arguments"],
                      [*files_of(entry), str(ROOT / ".clang-tidy")])


def cppcheck(paths, sources, memory):
    """One folder at once: it looks across files, and over all of them without an end.  Generated tables
    are left out, missing includes told by none."""
    words = ["cppcheck", "--quiet", "--std=c11", "--enable=warning,performance,portability",
             "--inline-suppr", "-Isrc", "-Iinclude", "--file-list=-",
             "--template={file}:{line}: {severity}: {id}: {message}"]
    words += [f"--suppress={name}" for name in CPPCHECK_OFF]

    def run():
        done = subprocess.run(words, cwd=ROOT, input="\n".join(paths), capture_output=True,
                              text=True, check=False)
        return done.stderr + (done.stdout if done.returncode else ""), done.returncode

    files = {str(ROOT / path) for path in paths}
    for path in paths:
        files.update(files_of(sources[path]) if path in sources else ())
    return memory.ask(run, "cppcheck", words, files)


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
    parser.add_argument("--anew", action="store_true")
    parser.add_argument("parts", nargs="*", metavar="PART")
    given = parser.parse_args()
    if not (BUILD / "compile_commands.json").exists():
        sys.exit("analyse: build/release is not configured (tools/configure.sh release)")
    sources, said, memory = commands(given.parts), [unexplained()], Memory(given.anew)
    told = [entry for path, entry in sources.items() if path not in FILES_OFF]
    work = {"gcc": ("sources", told, lambda entry: gcc(entry, memory)),
            "clang-tidy": ("sources", told, lambda entry: clang_tidy(entry, memory)),
            "cppcheck": ("folders", folders(given.parts),
                         lambda paths: cppcheck(paths, sources, memory))}
    for name, (kind, things, run) in work.items():
        if given.only in (None, name):
            begun, memory.unchanged = time.monotonic(), 0
            try:
                with concurrent.futures.ThreadPoolExecutor(given.jobs) as pool:
                    found = [one for one in pool.map(run, things) if one]
            except (OSError, subprocess.CalledProcessError) as error:
                print(f"analyse: {name} could not run: {error}", file=sys.stderr)
                return 2
            said += found
            print(f"{name}: {len(things)} {kind}, {memory.unchanged} of them clean before and "
                  f"unchanged, {len(found)} with something to say, {time.monotonic() - begun:.0f} s",
                  flush=True)
    if not given.parts and given.only is None:
        memory.forget_the_rest()
    said = [one for one in said if one]
    print("\n".join(said), end="")
    return 1 if said else 0


if __name__ == "__main__":
    sys.exit(main())
