#!/usr/bin/env python3
"""How do finite elements let a gear blank swing that tests/response/test_web_plate.c computes?

    blank_oracle.py           writes tests/reference/calculix/NAME.inp and, with CalculiX (`ccx`,
                              Debian package calculix-ccx), runs them and writes the frequencies
                              and the CPU seconds of all into gear_blanks.tsv beside them

One of 36 sectors of 20-node bricks with cyclic symmetry, clamped all over its bore: nothing of a
plate theory is in the model.  Tests read the stored answer and need no CalculiX.
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

# m: bore radius, inside of the rim, outside of the rim, thickness of web and of rim
BLANKS = {"light_blank": (0.018, 0.060, 0.070, 0.006, 0.020),
          "solid_blank": (0.018, 0.060, 0.070, 0.014, 0.014)}
E, NU, RHO = 206e9, 0.3, 7830.0
SECTORS, DIAMETERS = 36, 6
ALONG_WEB, ALONG_RIM, THROUGH_WEB, BESIDE_WEB = 8, 2, 2, 2


def split(edges):
    """Edges of bricks with their middles."""
    out = []
    for a, b in zip(edges, edges[1:]):
        out += [a, (a + b) / 2]
    return out + [edges[-1]]


def even(a, b, count):
    return [a + (b - a) * i / count for i in range(count)]


def mesh(b, a, R, h, w):
    beside = BESIDE_WEB if w > h else 0
    r = split(even(b, a, ALONG_WEB) + even(a, R, ALONG_RIM) + [R])
    z = split(even(-w / 2, -h / 2, beside) + even(-h / 2, h / 2, THROUGH_WEB) +
              [h / 2] + [h / 2 + (w - h) / 2 * i / beside for i in range(1, beside + 1)])
    number, bricks = {}, []

    def node(i, j, k):
        return number.setdefault((i, j, k), len(number) + 1)

    for i in range(0, len(r) - 1, 2):
        for k in range(0, len(z) - 1, 2):
            if i >= 2 * ALONG_WEB or beside <= k // 2 < beside + THROUGH_WEB:
                low = [(i, 0, k), (i + 2, 0, k), (i + 2, 2, k), (i, 2, k)]
                high = [(x, y, k + 2) for x, y, _ in low]
                pairs = [(c[n], c[(n + 1) % 4]) for c in (low, high) for n in range(4)]
                pairs += list(zip(low, high))
                middles = [tuple((p + q) // 2 for p, q in zip(*pair)) for pair in pairs]
                bricks.append([node(*at) for at in low + high + middles])
    places = {n: (r[i], math.pi / SECTORS * (j - 1), z[k]) for (i, j, k), n in number.items()}
    return number, places, bricks


def listed(name, numbers):
    rows = [", ".join(map(str, numbers[at:at + 12])) for at in range(0, len(numbers), 12)]
    return ["*NSET, NSET=" + name] + [row + "," for row in rows[:-1]] + rows[-1:]


def deck(sizes):
    number, places, bricks = mesh(*sizes)
    out = ["** A sector of a gear blank; written by tools/blank_oracle.py", "*NODE, NSET=ALL"]
    out += ["%d, %.9g, %.9g, %.9g" % (n, r * math.cos(t), r * math.sin(t), z)
            for n, (r, t, z) in sorted(places.items())]
    out.append("*ELEMENT, TYPE=C3D20R, ELSET=BRICKS")
    for n, brick in enumerate(bricks, 1):
        out += [", ".join(map(str, [n] + brick[:10])) + ",", ", ".join(map(str, brick[10:]))]
    # Nodes of the first side follow those of the other, the clamped ones among them.
    out += listed("BORE", [n for (i, j, _), n in number.items() if i == 0 and j != 0])
    out += listed("FIRST", [n for (_, j, _), n in number.items() if j == 0])
    out += listed("OTHER", [n for (_, j, _), n in number.items() if j == 2])
    return out + ["*SURFACE, NAME=S1, TYPE=NODE", "FIRST", "*SURFACE, NAME=S2, TYPE=NODE", "OTHER",
                  "*MATERIAL, NAME=STEEL", "*ELASTIC", "%g, %g" % (E, NU), "*DENSITY", "%g" % RHO,
                  "*SOLID SECTION, ELSET=BRICKS, MATERIAL=STEEL",
                  "*TIE, POSITION TOLERANCE=1e-4, CYCLIC SYMMETRY, NAME=ROUND", "S1, S2",
                  "*CYCLIC SYMMETRY MODEL, N=%d, NGRAPH=1, TIE=ROUND" % SECTORS,
                  "0., 0., 0., 0., 0., 1.", "*BOUNDARY", "BORE, 1, 3", "*STEP", "*FREQUENCY", "3",
                  "*SELECT CYCLIC SYMMETRY MODES, NMIN=0, NMAX=%d" % DIAMETERS, "*END STEP"]


def frequencies(text):
    """The slowest of each number of nodal diameters, Hz."""
    out = {}
    for line in text.split("\n"):
        cells = line.split()
        if len(cells) == 6 and cells[0].isdigit() and cells[1].isdigit():
            out.setdefault(int(cells[0]), float(cells[4]))
    return out


def run(name):
    before = resource.getrusage(resource.RUSAGE_CHILDREN)
    with tempfile.TemporaryDirectory() as folder:
        shutil.copy(PLACE / (name + ".inp"), folder)
        subprocess.run(["ccx", name], cwd=folder, check=True, stdout=subprocess.DEVNULL)
        answer = (pathlib.Path(folder) / (name + ".dat")).read_text(encoding="ascii")
    after = resource.getrusage(resource.RUSAGE_CHILDREN)
    return frequencies(answer), after.ru_utime + after.ru_stime - before.ru_utime - before.ru_stime


def main():
    rows = ["# Slowest mode of n nodal diameters, Hz; CalculiX 2.20, C3D20R (tools/blank_oracle.py)",
            "# blank\tn\tf\tCPU seconds for all of the blank"]
    for name, sizes in BLANKS.items():
        (PLACE / (name + ".inp")).write_text("\n".join(deck(sizes)) + "\n", encoding="ascii")
        if shutil.which("ccx") is None:
            sys.exit("blank_oracle.py: no `ccx` here: the decks are written, the answer is not")
        found, seconds = run(name)
        rows += ["%s\t%d\t%.2f\t%.2f" % (name, n, f, seconds) for n, f in sorted(found.items())]
    (PLACE / "gear_blanks.tsv").write_text("\n".join(rows) + "\n", encoding="ascii")


if __name__ == "__main__":
    main()
