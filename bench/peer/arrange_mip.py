#!/usr/bin/env python3
"""The published arrangement problems as mixed-integer programs, solved by Cbc: how much slower?

   arrange_mip.py [--most SECONDS] [--problems COUNT] [FILE.json]

Each problem of one box becomes one program for each of its ways to drive the box (module and input
teeth), by the rules of tests/reference/arrange.md and nothing of this program: binary tooth numbers
and places, loads as sums, products of a binary and a bounded number by the usual big-M rows.  Cbc
has SECONDS of the processor for a problem, all of its ways together.  Both must come to the same
mass; the last line says how many times quicker the search was on the largest problem that Cbc
finished.

Exit 0: every mass agrees; 1: one differs; 2: Cbc is not here or finished nothing.
"""
import argparse
import json
import math
import pathlib
import re
import resource
import shutil
import subprocess
import sys
import tempfile

ROOT = pathlib.Path(__file__).resolve().parents[2]
BANK = ROOT / "build/release/towershaft-bank-arrange"
FACES = ("front", "rear")
AGREE = 1e-5  # relative: Cbc meets its rows to 1e-6 of their size
REPEATS = 20


def spent():
    """Processor seconds of what was called so far; a busy machine does not count."""
    used = resource.getrusage(resource.RUSAGE_CHILDREN)
    return used.ru_utime + used.ru_stime


def folded(words):
    """Lines of a few words each, for readers of LP files cut long ones."""
    return "\n  ".join(" ".join(words[i:i + 8]) for i in range(0, len(words), 8))


class Program:
    """Rows and columns, written in the LP format."""

    def __init__(self):
        self.rows, self.binary, self.whole, self.bounds, self.cost = [], [], [], [], {}

    def row(self, terms, sense, right):
        said = folded([f"{c:+.12g} {v}" for v, c in terms.items() if c])
        if said:
            self.rows.append(f"{said} {sense} {right:.12g}")
        elif right != 0 and (sense == "=" or (sense == "<=") == (right < 0)):
            self.rows.append("+1 never >= 1")
            self.bounds = ["never <= 0"]

    def bit(self, name):
        self.binary.append(name)
        return name

    def pay(self, name, cost):
        self.cost[name] = self.cost.get(name, 0.0) + cost

    def text(self):
        lines = ["Minimize",
                 " cost: " + folded([f"{c:+.12g} {v}" for v, c in self.cost.items()])]
        lines += ["Subject To"] + [f" r{i}: {r}" for i, r in enumerate(self.rows)]
        lines += ["Bounds"] + [f" {b}" for b in self.bounds]
        lines += ["Generals"] + [" " + folded(self.whole)] if self.whole else []
        lines += ["Binaries"] + [" " + folded(self.binary)] + ["End", ""]
        return "\n".join(lines)


class Way:
    """One module and input gear of the one box of a problem."""

    def __init__(self, problem, box, m, z_in):
        self.i, self.box, self.m, self.z_in, self.p = problem, box, m, z_in, Program()
        self.n = len(problem["accessories"])
        self.conditions = range(len(problem["conditions"]))
        self.idlers = problem["idler_teeth"] if problem["max_idlers_in_row"] > 0 else []
        self.depth = self.n * (1 + problem["max_idlers_in_row"])
        self.windows = [self.window(a) for a in problem["accessories"]]
        self.teeth = sorted({z for w in self.windows for z in w} | set(self.idlers))

    def fits(self, a, z):
        for c in self.conditions:
            n, (low, high) = self.box["n_in"][c] * self.z_in / z, a["speed"][c]
            if n < low * (1 - 1e-12) or n > high * (1 + 1e-12):
                return False
        return True

    def window(self, a):
        return [z for z in range(self.i["z_min"], self.i["z_max"] + 1) if self.fits(a, z)]

    def arc(self, z_sum):
        sine = self.m * z_sum / (4 * self.box["R_box"])
        return 2 * math.asin(sine) if sine <= 1 else None

    def apart(self, a, b):
        gap, r = self.i["gap_mm"], self.box["R_box"]
        if self.i["clearance"] == "chord":
            sine = (a + b + gap) / (2 * r)
            return 2 * math.asin(sine) if sine <= 1 else 100.0
        sines = (a + gap / 2) / r, (b + gap / 2) / r
        return sum(math.asin(s) for s in sines) if max(sines) <= 1 else 100.0

    # ---- who stands where ----

    def may_stand(self, a, side, d, face):
        acc, sense = self.i["accessories"][a], self.box["input_sense"] * (-1) ** d
        seen = sense if face == "front" else -sense
        if face not in acc["faces"] or acc["sense"] not in ("either", "ccw" if seen > 0 else "cw"):
            return False
        if d == 0:
            return (face in self.box["input_faces"] and acc["side"] == "any"
                    and self.fits(acc, self.z_in))
        return acc["side"] in ("any", side) and bool(self.windows[a])

    def place(self):
        p, self.y = self.p, {}
        spots = [("in", 0)] + [(s, d) for s in ("left", "right") for d in range(1, self.depth + 1)]
        for a in range(self.n):
            for side, d in spots:
                for face in FACES:
                    if self.may_stand(a, side, d, face):
                        self.y[a, side, d, face] = p.bit(f"y_{a}_{side}_{d}_{face}")
            p.row({v: 1 for k, v in self.y.items() if k[0] == a}, "=", 1)
        for side, d in spots:
            for face in FACES:
                p.row({v: 1 for k, v in self.y.items() if k[1:] == (side, d, face)}, "<=", 1)

    def on(self, side, d):
        return {k: v for k, v in self.y.items() if k[1:3] == (side, d)}

    # ---- shafts ----

    def shafts(self):
        p, self.pad, self.idler = self.p, {}, {}
        row = self.i["max_idlers_in_row"]
        for s in ("left", "right"):
            for d in range(1, self.depth + 1):
                pads = {t: p.bit(f"p_{s}_{d}_{t}") for t in self.teeth
                        if any(t in w for w in self.windows)}
                idle = {t: p.bit(f"i_{s}_{d}_{t}") for t in self.idlers}
                self.pad[s, d], self.idler[s, d] = pads, idle
                p.row({**dict.fromkeys(pads.values(), 1), **dict.fromkeys(idle.values(), 1)},
                      "<=", 1)
                here = self.on(s, d)
                p.row({**dict.fromkeys(pads.values(), 1), **dict.fromkeys(here.values(), -1)},
                      "<=", 0)
                for (a, *_), v in here.items():
                    p.row({v: 1, **{x: -1 for t, x in pads.items() if t in self.windows[a]}},
                          "<=", 0)
            for d in range(1, self.depth + 1):
                beyond = self.all_of(s, d + 1)
                p.row({**{v: 1 for v in self.idler[s, d].values()},
                       **dict.fromkeys(beyond, -1)}, "<=", 0)
                if d < self.depth:
                    p.row({**dict.fromkeys(beyond, 1), **dict.fromkeys(self.all_of(s, d), -1)},
                          "<=", 0)
                if d + row <= self.depth:
                    p.row({v: 1 for k in range(d, d + row + 1)
                           for v in self.idler[s, k].values()}, "<=", row)

    def all_of(self, s, d):
        if not 1 <= d <= self.depth:
            return []
        return [*self.pad[s, d].values(), *self.idler[s, d].values()]

    def by_teeth(self, s, d):
        out = {}
        for kind in (self.pad[s, d], self.idler[s, d]):
            for t, v in kind.items():
                out.setdefault(t, []).append(v)
        return out

    # ---- arcs and bodies ----

    def arcs(self):
        p, self.theta = self.p, {}
        for s in ("left", "right"):
            self.theta[s, 0] = {}
            for d in range(1, self.depth + 1):
                inner = {self.z_in: []} if d == 1 else self.by_teeth(s, d - 1)
                outer, sums, name = self.by_teeth(s, d), {}, f"theta_{s}_{d}"
                for t, vs in outer.items():
                    for u, us in inner.items():
                        if self.i["hunting"] and math.gcd(t, u) != 1:
                            p.row({**dict.fromkeys(vs, 1), **dict.fromkeys(us, 1)}, "<=",
                                  1 if d > 1 else 0)
                        elif self.arc(t + u) is None:
                            p.row({**dict.fromkeys(vs, 1), **dict.fromkeys(us, 1)}, "<=",
                                  1 if d > 1 else 0)
                        else:
                            sums[t + u] = None
                sums = {z: p.bit(f"u_{s}_{d}_{z}") for z in sums}
                there = {v: 1 for vs in outer.values() for v in vs}
                p.row({**dict.fromkeys(sums.values(), 1), **{v: -1 for v in there}}, "=", 0)
                # With a shaft there, the sum of both tooth numbers is that of its bit.
                terms = {u: float(z) for z, u in sums.items()}
                for t, vs in outer.items():
                    terms.update(dict.fromkeys(vs, -float(t)))
                if d == 1:
                    terms.update({v: terms.get(v, 0.0) - self.z_in for v in there})
                    p.row(terms, "=", 0)
                else:
                    for u, us in inner.items():
                        terms.update(dict.fromkeys(us, -float(u)))
                    most = max(self.teeth)
                    p.row(terms, "<=", 0)
                    p.row({**terms, **{v: terms[v] - most for v in there}}, ">=", -float(most))
                before = self.theta[s, d - 1]
                p.row({name: 1, **{k: -c for k, c in before.items()},
                       **{u: -self.arc(z) for z, u in sums.items()}}, "=", 0)
                self.theta[s, d] = {name: 1}
            p.row(self.theta[s, self.depth], "<=", math.radians(self.box["side_max"]))
            p.pay(f"theta_{s}_{self.depth}", self.i["mass"]["casing"] * self.box["R_box"])
        both = {**self.theta["left", self.depth], **self.theta["right", self.depth]}
        p.row(both, "<=", math.radians(self.box["wrap_max"]))

    def radius(self, a):
        return self.i["accessories"][a]["body_radius"]

    def bodies(self):
        p, spots = self.p, list(self.y.items())
        for n, ((a, s, d, f), v) in enumerate(spots):
            fixed = self.box["input_body"][f]
            if fixed > 0 and d > 0:  # unless somebody stands in its place
                inside = [w for (b, q, e, g), w in spots if e == 0 and g == f]
                need = self.apart(self.radius(a), fixed)
                p.row({**self.theta[s, d], v: -need, **dict.fromkeys(inside, need)}, ">=", 0)
            for (b, q, e, g), w in spots[n + 1:]:
                if g != f or a == b or (s, d) == (q, e):
                    continue
                need = self.apart(self.radius(a), self.radius(b))
                far, near = (self.theta.get((s, d), {}), self.theta.get((q, e), {}))
                if s != q and d and e:
                    distance = {**far, **near}
                elif d > e:
                    distance = {**far, **{k: -c for k, c in near.items()}}
                else:
                    distance = {**near, **{k: -c for k, c in far.items()}}
                p.row({**distance, v: -need, w: -need}, ">=", -need)

    # ---- loads and widths ----

    def loads(self):
        """F of the mesh inboard of each place, and which flanks it loads."""
        p, self.force, self.ahead, self.back = self.p, {}, {}, {}
        accs = self.i["accessories"]
        self.most = 0.0
        v = [math.pi * self.m * self.z_in * n / 60000 for n in self.box["n_in"]]
        for c in self.conditions:
            self.most = max(self.most, sum(abs(a["power"][c]) for a in accs) * 1000 / v[c])
        for s in ("left", "right"):
            for d in range(1, self.depth + 1):
                name, up, down = f"F_{s}_{d}", p.bit(f"a_{s}_{d}"), p.bit(f"b_{s}_{d}")
                self.force[s, d], self.ahead[s, d], self.back[s, d] = name, up, down
                for c in self.conditions:
                    total = sum(abs(a["power"][c]) for a in accs) + 1e-3
                    power = {}
                    for (a, q, e, _), y in self.y.items():
                        if q == s and e >= d:
                            power[y] = accs[a]["power"][c]
                    for sign in (1, -1):
                        p.row({name: 1, **{y: -sign * 1000 / v[c] * k for y, k in power.items()}},
                              ">=", 0)
                        p.row({**{y: sign * k for y, k in power.items()},
                               (up if sign > 0 else down): -total}, "<=", 0)

    def gear(self, name, teeth, meshes, lead, trail):
        """A gear with its tooth number among `teeth` {z: [bits]}; returns its width."""
        p, r = self.p, self.i["rating"]
        wide, steps, turned = f"w_{name}", f"n_{name}", p.bit(f"r_{name}")
        p.whole.append(steps)
        p.row({wide: 1, steps: -r["width_step"]}, "=", 0)
        for one in lead:
            for other in trail:
                p.row({turned: 1, one: -1, other: -1}, ">=", -1)
        at_most, here = {}, {}
        for t, bits in teeth.items():
            for b in bits:
                at_most[b] = -r["width_over_d"] * self.m * t
                here[b] = -r["width_min"]
        fixed = len(teeth) == 1 and not next(iter(teeth.values()))
        t_in = next(iter(teeth)) if fixed else 0
        p.row({wide: 1, **at_most}, "<=", r["width_over_d"] * self.m * t_in)
        p.row({wide: 1, **here}, ">=", r["width_min"] if fixed else 0)
        for t, bits in teeth.items():
            form = r["Y0"] - r["Y1"] / t
            for k in (1.0, 1.0 / r["reversed"]):
                coefficient = r["K_bend"] * k / (self.m * form)
                for mesh in meshes:
                    slack = coefficient * self.most
                    terms = {f"B_{mesh}": 1, f"F_{mesh}": -coefficient}
                    terms.update(dict.fromkeys(bits, -slack))
                    right = 0.0 if fixed else -slack
                    if k > 1:
                        terms[turned] = terms.get(turned, 0.0) - slack
                        right -= slack
                    p.row(terms, ">=", right)
            weight = self.i["mass"]["gear"] * (self.m * t) ** 2
            if fixed:
                p.pay(wide, weight)
            else:
                widest = weight * r["width_over_d"] * self.m * t
                p.row({f"G_{name}": 1, wide: -weight, **dict.fromkeys(bits, -widest)}, ">=",
                      -widest)
        if not fixed:
            p.pay(f"G_{name}", 1.0)
        for mesh in meshes:
            p.row({wide: 1, f"B_{mesh}": -1}, ">=", 0)

    def contact(self, mesh, teeth_of):
        """Q >= F/z of both gears; B >= K_cont/m (Q + Q)."""
        p, terms = self.p, {f"B_{mesh}": 1}
        for end, teeth in teeth_of:
            q = f"Q_{mesh}_{end}"
            terms[q] = -self.i["rating"]["K_cont"] / self.m
            for t, bits in teeth.items():
                slack = self.most / t
                p.row({q: 1, f"F_{mesh}": -1 / t, **dict.fromkeys(bits, -slack)}, ">=",
                      -slack if bits else 0)
        p.row(terms, ">=", 0)

    def gears(self):
        first = [(s, 1) for s in ("left", "right")]
        self.gear("in", {self.z_in: []}, [f"{s}_1" for s, _ in first],
                  [self.ahead[k] for k in first], [self.back[k] for k in first])
        for s in ("left", "right"):
            for d in range(1, self.depth + 1):
                teeth = self.by_teeth(s, d)
                meshes, lead, trail = [f"{s}_{d}"], [self.back[s, d]], [self.ahead[s, d]]
                if d < self.depth:
                    meshes.append(f"{s}_{d + 1}")
                    lead.append(self.ahead[s, d + 1])
                    trail.append(self.back[s, d + 1])
                self.gear(f"{s}_{d}", teeth, meshes, lead, trail)
                inner = {self.z_in: []} if d == 1 else self.by_teeth(s, d - 1)
                self.contact(f"{s}_{d}", (("i", inner), ("o", teeth)))

    def masses(self):
        mass = self.i["mass"]
        for s in ("left", "right"):
            for d in range(1, self.depth + 1):
                for v in self.pad[s, d].values():
                    self.p.pay(v, mass["shaft"])
                for v in self.idler[s, d].values():
                    self.p.pay(v, mass["idler"])
        return self.box["box_kg"] + mass["shaft"] + mass["pad"] * self.n

    def write(self):
        self.place()
        self.shafts()
        self.arcs()
        self.bodies()
        self.loads()
        self.gears()
        return self.masses(), self.p.text()


def run_cbc(text, seconds, folder):
    """(finished, mass or None)"""
    path, answer = folder / "way.lp", folder / "way.txt"
    path.write_text(text)
    answer.unlink(missing_ok=True)
    subprocess.run(["cbc", path, "-seconds", f"{seconds:.1f}", "-ratioGap", "0", "-allowableGap",
                    "1e-7", "-solve", "-solu", answer], stdout=subprocess.DEVNULL, check=False)
    first = answer.read_text().splitlines()[0] if answer.exists() else ""
    if first.startswith("Optimal"):
        return True, float(re.search(r"objective value\s+(\S+)", first).group(1))
    return "infeasible" in first.lower() and "Stopped" not in first, None


def by_cbc(problem, seconds, folder):
    """(finished, mass or None, seconds taken)"""
    box, best, begin = problem["boxes"][0], None, spent()
    for m in box["modules"]:
        for z_in in box["z_in"]:
            left = seconds - (spent() - begin)
            base, text = Way(problem, box, m, z_in).write()
            done, mass = run_cbc(text, left, folder) if left > 0 else (False, None)
            if not done:
                return False, None, spent() - begin
            if mass is not None and (best is None or base + mass < best):
                best = base + mass
    return True, best, spent() - begin


def by_search(problem, folder):
    """(mass or None, seconds taken), the mean of some in one call."""
    path, times = folder / "one.json", {}
    for count in (1, 1 + REPEATS):
        path.write_text(json.dumps({"problems": [{"instance": problem}] * count}))
        begin = spent()
        out = subprocess.run([BANK, path], capture_output=True, text=True, check=False).stdout
        times[count] = spent() - begin
    found = re.search(r"computed ([0-9.]+) kg", out)
    return float(found.group(1)) if found else None, (times[1 + REPEATS] - times[1]) / REPEATS


def main():
    words = argparse.ArgumentParser(description=__doc__.splitlines()[0])
    words.add_argument("file", nargs="?", default=ROOT / "tests/reference/arrange_small.json")
    words.add_argument("--most", type=float, default=60.0, help="seconds for one problem")
    words.add_argument("--problems", type=int, default=6, help="how many, smallest first")
    given = words.parse_args()
    if shutil.which("cbc") is None:
        print("arrange-mip: cbc is not here (Debian: coinor-cbc)")
        return 2
    cases = [c for c in json.loads(pathlib.Path(given.file).read_text())["problems"]
             if len(c["instance"]["boxes"]) == 1 and c["answer"]["feasible"]]
    cases.sort(key=lambda c: (len(c["instance"]["accessories"]), c["answer"]["count"]))
    wrong, last = 0, None
    with tempfile.TemporaryDirectory() as name:
        for case in cases[:given.problems]:
            problem = case["instance"]
            done, mass, slow = by_cbc(problem, given.most, pathlib.Path(name))
            own, quick = by_search(problem, pathlib.Path(name))
            if not done:
                print(f"{problem['name']:28} Cbc not done in {slow:.0f} s; here {quick * 1e3:.2f} ms")
                continue
            same = (mass is None) == (own is None) and (
                mass is None or abs(mass - own) <= AGREE * own)
            wrong += not same
            last = (problem["name"], slow / quick)
            said = "no arrangement" if mass is None else f"{mass:.6f} kg"
            print(f"{problem['name']:28} {said} by Cbc in {slow:.1f} s, {own} kg here in "
                  f"{quick * 1e3:.2f} ms: {'equal' if same else 'DIFFERS'}, {slow / quick:.0f} times")
            sys.stdout.flush()
    if last is None:
        print("arrange-mip: Cbc finished nothing in that time")
        return 2
    print(f"arrange-mip: on {last[0]}, the largest that Cbc finished, {last[1]:.0f} times quicker "
          f"(wanted: 1000)")
    return 1 if wrong else 0


if __name__ == "__main__":
    sys.exit(main())
