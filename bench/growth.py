#!/usr/bin/env python3
"""How does the time of a study grow with its samples, its threads and its ranks?

    growth.py            after `make build`, on a machine that does nothing else for the last two

Processor time for samples, which others hardly lengthen; a clock on the wall for threads and ranks:
one rank against two (mpirun), with what a start costs alone taken away from both.  Exit 1 when ten
times the samples take more than 11 times as long.
"""
import os
import pathlib
import resource
import subprocess
import sys
import tempfile
import time

ROOT = pathlib.Path(__file__).resolve().parents[1]
COMMAND = ROOT / "build/release/towershaft"
STUDY = (ROOT / "examples/studies/bizjet-loads.yaml").read_text(encoding="utf-8")
RANKS = {**os.environ, "OMPI_ALLOW_RUN_AS_ROOT": "1", "OMPI_ALLOW_RUN_AS_ROOT_CONFIRM": "1"}


def take(folder, samples, *words, ranks=0):
    """Seconds of the wall and of the processor for a study that keeps its samples."""
    study = folder / f"{samples}.yaml"
    study.write_text(STUDY.replace("samples: 2000", f"samples: {samples}")
                     .replace("../bizjet.yaml", str(ROOT / "examples/bizjet.yaml")))
    out = folder / "out.sqlite"
    out.unlink(missing_ok=True)
    before = resource.getrusage(resource.RUSAGE_CHILDREN)
    begun = time.perf_counter()
    team = ["mpirun", "--oversubscribe", "-n", str(ranks)] if ranks else []
    subprocess.run([*team, str(COMMAND), "study", str(study), "-o", str(out), *words], check=True,
                   stdout=subprocess.DEVNULL, env=RANKS)
    wall = time.perf_counter() - begun
    after = resource.getrusage(resource.RUSAGE_CHILDREN)
    return wall, after.ru_utime + after.ru_stime - before.ru_utime - before.ru_stime


def main():
    with tempfile.TemporaryDirectory() as name:
        folder = pathlib.Path(name)
        start = take(folder, 1, "--threads", "1")[1]
        grown = {n: take(folder, n, "--threads", "1")[1] - start for n in (400, 4000)}
        for samples, seconds in grown.items():
            print(f"study of {samples:5d} samples, kept   {seconds:7.3f} s, {seconds / samples * 1e3:.3f} ms each")
        ratio = grown[4000] / grown[400]
        print(f"ten times the samples           {ratio:7.2f} times as long")
        for what, one, two in (("threads", {"words": ("--threads", "1")}, {"words": ("--threads", "2")}),
                               ("ranks", {"ranks": 1, "words": ("--threads", "1")}, {"ranks": 2})):
            times = []
            for how in (one, two):
                words, ranks = how.get("words", ()), how.get("ranks", 0)
                times.append(take(folder, 4000, *words, ranks=ranks)[0]
                             - take(folder, 8, *words, ranks=ranks)[0])
            print(f"efficiency from one to two {what:8s} {times[0] / times[1] / 2 * 100:5.1f} %")
    return 1 if ratio > 11.0 else 0


if __name__ == "__main__":
    sys.exit(main())
