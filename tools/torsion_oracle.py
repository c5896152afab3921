#!/usr/bin/env python3
"""How do finite elements let a geared, branched train twist that tests/response/test_torsion.c knows?

    torsion_oracle.py         writes tests/reference/calculix/geared_train.inp and, with CalculiX
                              (`ccx`, Debian package calculix-ccx), runs it and writes frequencies
                              and CPU seconds into geared_train.tsv beside it

A sector of two rotors in 20-node bricks, of which only the circumferential displacement is left
and is the same on both of its sides: bored shafts, discs and gears as solids.  The teeth are one
spring from rim to rim.  Tests read the stored answer and need no CalculiX.
"""

import math
import pathlib
import resource
import shutil
import subprocess
import sys
import tempfile

ROOT = pathlib.Path(__file__).resolve().parent.parent
PLACE = ROOT / "tests" / "reference" / "calculix"
NAME = "geared_train"

# m: (length, outside radius, pieces along) from one end to the other; a gear says which it is.
BORE = 0.003
ROTORS = ([(0.020, 0.060, 3, None), (0.300, 0.009, 24, None), (0.020, 0.040, 3, "GEAR1")],
          [(0.020, 0.050, 3, None), (0.260, 0.008, 24, None), (0.020, 0.055, 3, "GEAR2"),
           (0.220, 0.007, 24, None), (0.015, 0.045, 3, None)])
ACROSS_SHAFT, ACROSS_DISC = 3, 5
E, NU, RHO = 206e9, 0.3, 7830.0
MESH = 2.0e8  # N/m
SECTORS = 36
MODES = 5  # one of them rigid


def halved(edges):
    """Edges of bricks with their middles."""
    out = []
    for a, b in zip(edges, edges[1:]):
        out += [a, (a + b) / 2]
    return out + [edges[-1]]


def places_along(rotor):
    """Edges of bricks along the axis, closer where the radius jumps, with the radius of each."""
    z, edges, outside = 0.0, [0.0], []
    for length, radius, pieces, _ in rotor:
        share = [0.5 - 0.5 * math.cos(math.pi * i / pieces) for i in range(1, pieces + 1)]
        edges += [z + length * s for s in share]
        outside += [radius] * pieces
        z += length
    return edges, outside


def mesh(rotor, first):
    """Nodes {(i, j, k): number} with their places, bricks, and the rim of its gear."""
    edges, outside = places_along(rotor)
    # Every radius at which something ends is an edge; between them as many as it takes.
    radii = sorted({BORE} | {r for _, r, _, _ in rotor})
    r = [BORE]
    for a, b in zip(radii, radii[1:]):
        pieces = ACROSS_SHAFT if a == BORE else max(1, round(ACROSS_DISC * (b - a) / 0.04))
        r += [a + (b - a) * i / pieces for i in range(1, pieces + 1)]
    r, z = halved(r), halved(edges)
    number, bricks = {}, []

    def node(at):
        return number.setdefault(at, first + len(number))

    for k, top in enumerate(outside):
        for i in range(0, len(r) - 1, 2):
            if r[i + 2] > top * (1 + 1e-9):
                break
            low = [(i, 0, 2 * k), (i + 2, 0, 2 * k), (i + 2, 2, 2 * k), (i, 2, 2 * k)]
            high = [(x, y, w + 2) for x, y, w in low]
            pairs = [(c[n], c[(n + 1) % 4]) for c in (low, high) for n in range(4)]
            pairs += list(zip(low, high))
            middles = [tuple((p + q) // 2 for p, q in zip(*pair)) for pair in pairs]
            bricks.append([node(at) for at in low + high + middles])
    places = {n: (r[i], math.pi / SECTORS * (j - 1), z[k]) for (i, j, k), n in number.items()}
    return number, places, bricks, rim_of(rotor, number, places)


def rim_of(rotor, number, places):
    z = 0.0
    for length, radius, _, gear in rotor:
        if gear is not None:
            return [n for n in number.values() if abs(places[n][0] / radius - 1) < 1e-9
                    and z - 1e-9 < places[n][2] < z + length + 1e-9]
        z += length
    return []


def tied(number, places, rim):
    """Every node turns as the first one on its circle; all of the rim as one of its middle nodes."""
    middle = next(n for (_, j, _), n in number.items() if j == 1 and n in rim)
    leads, out = {}, []
    for (i, j, k), n in sorted(number.items(), key=lambda one: one[1]):
        lead = middle if n in rim else leads.setdefault((i, k), n)
        if n != lead:
            out += ["*EQUATION", "2", "%d, 2, 1., %d, 2, -1." % (n, lead)]
    return middle, out


def deck():
    nodes, bricks, ties, middles, first = {}, [], [], [], 1
    for rotor in ROTORS:
        number, places, some, rim = mesh(rotor, first)
        middle, more = tied(number, places, set(rim))
        nodes.update(places)
        bricks += some
        ties += more
        middles.append(middle)
        first += len(number)
    out = ["** A sector of a geared train; written by tools/torsion_oracle.py", "*NODE, NSET=ALL"]
    out += ["%d, %.9g, %.9g, %.9g" % (n, r * math.cos(t), r * math.sin(t), z)
            for n, (r, t, z) in sorted(nodes.items())]
    out.append("*ELEMENT, TYPE=C3D20R, ELSET=BRICKS")
    for n, brick in enumerate(bricks, 1):
        out += [", ".join(map(str, [n] + brick[:10])) + ",", ", ".join(map(str, brick[10:]))]
    # A middle node lies where the circumference runs along y: no local frame for the spring.
    out += ["*ELEMENT, TYPE=SPRING2, ELSET=TEETH", "%d, %d, %d" % (len(bricks) + 1, *middles),
            "*SPRING, ELSET=TEETH", "2, 2", "%.9g" % (MESH / SECTORS),
            "*TRANSFORM, NSET=ALL, TYPE=C", "0., 0., 0., 0., 0., 1."]
    return out + ties + ["*BOUNDARY", "ALL, 1, 1", "ALL, 3, 3", "*MATERIAL, NAME=STEEL", "*ELASTIC",
                         "%g, %g" % (E, NU), "*DENSITY", "%g" % RHO,
                         "*SOLID SECTION, ELSET=BRICKS, MATERIAL=STEEL", "*STEP", "*FREQUENCY",
                         "%d" % MODES, "*END STEP"]


def frequencies(text):
    out = []
    for line in text.split("\n"):
        cells = line.split()
        if len(cells) == 5 and cells[0].isdigit() and len(out) < MODES:
            out.append(float(cells[3]))
    return out


def run():
    before = resource.getrusage(resource.RUSAGE_CHILDREN)
    with tempfile.TemporaryDirectory() as folder:
        shutil.copy(PLACE / (NAME + ".inp"), folder)
        subprocess.run(["ccx", NAME], cwd=folder, check=True, stdout=subprocess.DEVNULL)
        answer = (pathlib.Path(folder) / (NAME + ".dat")).read_text(encoding="ascii")
    after = resource.getrusage(resource.RUSAGE_CHILDREN)
    return frequencies(answer), after.ru_utime + after.ru_stime - before.ru_utime - before.ru_stime


def main():
    (PLACE / (NAME + ".inp")).write_text("\n".join(deck()) + "\n", encoding="ascii")
    if shutil.which("ccx") is None:
        sys.exit("torsion_oracle.py: no `ccx` here: the deck is written, the answer is not")
    found, seconds = run()
    rows = ["# Torsional modes, Hz; CalculiX 2.20, C3D20R (tools/torsion_oracle.py)",
            "# mode\tf\tCPU seconds for all"]
    rows += ["%d\t%.3f\t%.2f" % (n, f, seconds) for n, f in enumerate(found)]
    (PLACE / (NAME + ".tsv")).write_text("\n".join(rows) + "\n", encoding="ascii")


if __name__ == "__main__":
    main()
