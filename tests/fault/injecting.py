"""How does a test make one system call of the command fail, or be its last one?

strace counts the calls of each thread and puts an error, or a signal, in the place of the n-th.  A
first run without faults tells which n concern the files of a folder; so the fault meets the file
and neither the message about it nor a library's own files.
"""
import collections
import os
import pathlib
import re
import subprocess

CALLS = ("openat", "write", "pwrite64", "fchmod", "fsync", "fdatasync", "ftruncate", "close",
         "rename", "renameat", "unlink", "unlinkat")
LINE = re.compile(r"^(\d+) +(\w+)\((.*)$")

Call = collections.namedtuple("Call", "name number text")
Outcome = collections.namedtuple("Outcome", "code said told log")


def strace(log, words, inject=None, names=CALLS, paths=(), **how):
    """Runs the words below strace, which notes those calls (of those paths) in the file `log`."""
    order = ["strace", "-f", "-y", "-s", "16", "-o", str(log), "-e", "trace=" + ",".join(names)]
    if "signal=" not in (inject or ""):  # a stop of seccomp delivers none
        order.append("--seccomp-bpf")
    for path in paths:
        order += ["-P", str(path)]
    if inject is not None:
        order += ["-e", "inject=" + inject]
    done = subprocess.run([*order, *map(str, words)], capture_output=True, timeout=300,
                          check=False, **how)
    told = pathlib.Path(log).read_text(encoding="utf-8", errors="replace")
    return Outcome(done.returncode, done.stderr.decode("utf-8", "replace"), done.stdout, told)


def calls_on(folder, log):
    """The calls of the first thread that concern what lies in the folder, each with its number."""
    seen, found, main = collections.Counter(), [], None
    for line in log.splitlines():
        match = LINE.match(line)
        if match is None:
            continue
        thread, name, rest = match.groups()
        main = main or thread
        if thread != main:
            continue
        seen[name] += 1
        # A name that is relative to the working folder is told with that folder before it.
        if str(folder) in rest and "ENOENT" not in rest:
            found.append(Call(name, seen[name], rest))
    return found


def was_hit(folder, log):
    """Did the fault meet a file of the folder?"""
    begun = {}
    for line in log.splitlines():
        thread = line.split(" ", 1)[0]
        if "<unfinished" in line:
            begun[thread] = line
        if "(INJECTED)" in line:
            call = begun.get(thread, "") if "resumed>" in line else line
            if str(folder) in call:
                return True
    return False


def names_in(folder):
    return sorted(os.path.join(os.path.relpath(at, folder), name)
                  for at, _, names in os.walk(folder) for name in names)
