#!/usr/bin/env python3
"""How does a finite-element model bend the stepped shaft of tests/element/test_shaft_beam_oracle.c?

    beam_oracle.py            writes tests/reference/calculix/stepped_shaft.inp and, with CalculiX
                              (`ccx`, Debian package calculix-ccx), runs it and writes the answer
                              beside it as stepped_shaft.tsv

The shaft is a solid of revolution of 20-node bricks, so that nothing of a beam theory is in the
model.  Tests read the stored answer and need no CalculiX.
"""

import math
import pathlib
import re
import shutil
import subprocess
import sys
import tempfile

ROOT = pathlib.Path(__file__).resolve().parent.parent
PLACE = ROOT / "tests" / "reference" / "calculix"

# mm, N: sections from, to, outside, bore; bearings; forces in y and z
SECTIONS = [(0, 30, 30, 12), (30, 60, 40, 12), (60, 100, 50, 12), (100, 130, 40, 12),
            (130, 170, 30, 12)]
BEARINGS = [15.0, 145.0]
LOADS = [(80.0, 1000.0, -400.0), (170.0, 0.0, 300.0)]
E, NU = 206000.0, 0.3
AROUND, LAYERS_MM = 16, 5.0
RINGS = 2  # bricks through the wall of the thinnest section


def stations():
    """Planes across the shaft, every LAYERS_MM."""
    return [i * LAYERS_MM for i in range(int(SECTIONS[-1][1] / LAYERS_MM) + 1)]


def outside_of(x):
    for a, b, d, _ in SECTIONS:
        if a <= x <= b:
            return d
    raise ValueError(x)


def radii():
    """Circles of nodes: from the bore through every outside diameter, with middles."""
    edges = [6.0, 10.5, 15.0, 20.0, 25.0]
    out = []
    for a, b in zip(edges, edges[1:]):
        out += [a, (a + b) / 2]
    return out + [edges[-1]]


def mesh():
    x, r = stations(), radii()
    nodes, number = {}, {}

    def node(i, j, k):
        """i: half layers along, j: half rings outwards, k: half sectors around."""
        key = (i, j, k % (2 * AROUND))
        if key not in number:
            angle = math.pi * key[2] / AROUND
            number[key] = len(number) + 1
            nodes[number[key]] = (x[0] + i * LAYERS_MM / 2, r[j] * math.cos(angle),
                                  r[j] * math.sin(angle))
        return number[key]

    elements = []
    for i in range(len(x) - 1):
        most = outside_of((x[i] + x[i + 1]) / 2) / 2
        for j in range(0, len(r) - 2, 2):
            if r[j + 2] > most + 1e-9:
                continue
            for k in range(AROUND):
                a, b, c = 2 * i, j, 2 * k

                def n(di, dj, dk, a=a, b=b, c=c):
                    return node(a + di, b + dj, c + dk)
                elements.append([n(0, 0, 0), n(0, 2, 0), n(0, 2, 2), n(0, 0, 2),
                                 n(2, 0, 0), n(2, 2, 0), n(2, 2, 2), n(2, 0, 2),
                                 n(0, 1, 0), n(0, 2, 1), n(0, 1, 2), n(0, 0, 1),
                                 n(2, 1, 0), n(2, 2, 1), n(2, 1, 2), n(2, 0, 1),
                                 n(1, 0, 0), n(1, 2, 0), n(1, 2, 2), n(1, 0, 2)])
    return nodes, elements


def plane(nodes, x):
    return [n for n, p in nodes.items() if abs(p[0] - x) < 1e-6]


def deck():
    nodes, elements = mesh()
    out = ["** A stepped bored shaft as a solid; written by tools/beam_oracle.py", "*NODE, NSET=ALL"]
    out += [f"{n}, {p[0]:.6f}, {p[1]:.9f}, {p[2]:.9f}" for n, p in nodes.items()]
    out.append("*ELEMENT, TYPE=C3D20R, ELSET=SHAFT")
    for number, e in enumerate(elements, 1):
        out.append(f"{number}, " + ", ".join(map(str, e[:10])) + ",")
        out.append(", ".join(map(str, e[10:])))
    out += ["*MATERIAL, NAME=STEEL", "*ELASTIC", f"{E}, {NU}",
            "*SOLID SECTION, ELSET=SHAFT, MATERIAL=STEEL"]
    # A bearing holds the middle of its plane: the mean deflection of all its nodes is 0.
    fixed = 0
    for x in BEARINGS:
        ring = plane(nodes, x)
        for direction in (2, 3):
            out += ["*EQUATION", str(len(ring))]
            out += [f"{n}, {direction}, 1." for n in ring]
            fixed += 1
    first = plane(nodes, BEARINGS[0])
    out += ["*EQUATION", str(len(first))] + [f"{n}, 1, 1." for n in first]
    # against turning about its own axis
    low = [n for n in first if abs(nodes[n][2]) < 1e-6 and nodes[n][1] > 0]
    anchor = max(low, key=lambda n: nodes[n][1])
    opposite = min((n for n in first if abs(nodes[n][2]) < 1e-6), key=lambda n: nodes[n][1])
    out += ["*EQUATION", "2", f"{anchor}, 3, 1.", f"{opposite}, 3, -1."]
    out += ["*STEP", "*STATIC", "*CLOAD"]
    for x, F_y, F_z in LOADS:
        ring = plane(nodes, x)
        for n in ring:
            for direction, F in ((2, F_y), (3, F_z)):
                if F:
                    out.append(f"{n}, {direction}, {F / len(ring):.12g}")
    out += ["*NODE PRINT, NSET=ALL", "U", "*END STEP"]
    return nodes, "\n".join(out) + "\n"


def answer(nodes, text):
    with tempfile.TemporaryDirectory() as place:
        (pathlib.Path(place) / "s.inp").write_text(text)
        done = subprocess.run(["ccx", "s"], cwd=place, capture_output=True, text=True, check=False)
        if done.returncode != 0:
            sys.exit(done.stdout[-2000:])
        moved = {}
        for line in (pathlib.Path(place) / "s.dat").read_text().splitlines():
            cells = re.findall(r"[-+0-9.E]+", line)
            if len(cells) == 4 and cells[0].isdigit():
                moved[int(cells[0])] = tuple(map(float, cells[1:]))
    rows = ["# Mean deflection of each plane of the stepped shaft; CalculiX 2.20, C3D20R, "
            "stepped_shaft.inp", "# x mm\tv_y mm\tv_z mm"]
    for x in stations():
        ring = plane(nodes, x)
        mean = [sum(moved[n][d] for n in ring) / len(ring) for d in (1, 2)]
        rows.append(f"{x:g}\t{mean[0]:.8e}\t{mean[1]:.8e}")
    return "\n".join(rows) + "\n"


def main():
    PLACE.mkdir(parents=True, exist_ok=True)
    nodes, text = deck()
    (PLACE / "stepped_shaft.inp").write_text(text)
    if shutil.which("ccx") is None:
        print("beam_oracle: the deck is written; without `ccx` the stored answer stands")
        return
    (PLACE / "stepped_shaft.tsv").write_text(answer(nodes, text))


if __name__ == "__main__":
    main()
