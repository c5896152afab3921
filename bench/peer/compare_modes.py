#!/usr/bin/env python3
"""Are the torsional modes those that SciPy finds, and how long does each take?

    compare_modes.py [TOWERSHAFT]     every tree of the four examples; python3-scipy, for this only

The matrices are built here, from the bodies and springs that `twist --json` prints to nine digits,
and solved by scipy.linalg.eigh.  Ends with 1 where a frequency differs by more than 1e-7.
"""

import json
import math
import pathlib
import subprocess
import sys
import time

import numpy
import scipy.linalg

ROOT = pathlib.Path(__file__).resolve().parent.parent.parent
MOST = 1e-7


def matrices(tree):
    """Angles in the sense in which each shaft runs: k of a spring is seen from the spool."""
    count = len(tree["bodies"])
    K, M = numpy.zeros((count, count)), numpy.zeros((count, count))
    for i, body in enumerate(tree["bodies"]):
        M[i, i] = body["J"]
    for spring in tree["springs"]:
        a, b = spring["from"], spring["to"]
        row = numpy.zeros(count)
        row[a] = 1.0 / tree["bodies"][a]["ratio"]
        row[b] = -1.0 / tree["bodies"][b]["ratio"]
        K += spring["k"] * numpy.outer(row, row)
    return K, M


def best(work, times=50):
    least = math.inf
    for _ in range(times):
        before = time.perf_counter()
        work()
        least = min(least, time.perf_counter() - before)
    return least


def main():
    command = sys.argv[1] if len(sys.argv) > 1 else str(ROOT / "build/release/towershaft")
    worst = 0.0
    for name in ("trainer", "bizjet", "medium", "large"):
        answer = subprocess.run([command, "twist", str(ROOT / "examples" / (name + ".yaml")), "--json"],
                                check=False, capture_output=True)
        for tree in json.loads(answer.stdout)["trees"]:
            K, M = matrices(tree)
            theirs = numpy.sqrt(numpy.abs(scipy.linalg.eigh(K, M, eigvals_only=True))) / 2 / math.pi
            ours = [mode["frequency"] for mode in tree["modes"]]
            elastic = [f for f in ours if f > 0.0]
            off = max(abs(f / g - 1.0) for f, g in zip(elastic, theirs[-len(elastic):]))
            seconds = best(lambda: scipy.linalg.eigh(K, M))
            print("%-8s %-3s %-8s %2d bodies, %2d modes: differ by %.1e; SciPy %.0f us" %
                  (name, tree["spool"], tree["state"], len(K), len(elastic), off, 1e6 * seconds))
            worst = max(worst, off)
    return 0 if worst <= MOST else 1


if __name__ == "__main__":
    sys.exit(main())
