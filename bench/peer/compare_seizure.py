#!/usr/bin/env python3
"""How much faster than SciPy does towershaft follow a seizure, to the same accuracy?

    compare_seizure.py [--program build/release/towershaft-train-runs]

The hydraulic pump of the large example seizes at take-off: with its neck at both ends of its band and
without it.  The same train, to the last bit, goes through towershaft and through solve_ivp of SciPy
with DOP853.  The peer is good Python: between two events the right hand side is one product of a
matrix with the state, all events are one function (the least of what may vanish), and the run begins
anew where it does.  Errors are of the times of all events and of the speeds at the end, over the
largest speed, against towershaft to 1e-13.  SciPy takes the loosest of its tolerances with which it
is as accurate as towershaft is to 1e-10, or the tightest that it has.

Both errors are printed.  Times are processor seconds of one core; energies, peaks and samples, which
towershaft keeps beside, are not asked of the peer.

Exit 0: both see the same events and the ratio is at least GOAL; 1: not so; 2: nothing was measured.
"""

import argparse
import json
import pathlib
import subprocess
import sys
import time

try:
    import numpy as np
    from scipy.integrate import solve_ivp
except ModuleNotFoundError:
    print("compare_seizure: SciPy is missing (Debian: python3-scipy)", file=sys.stderr)
    sys.exit(2)

ROOT = pathlib.Path(__file__).resolve().parent.parent.parent
GOAL = 50.0
EVENTS_MOST = 2000
INSTANT = 1e-8  # s
DEAD = 1e-14  # m or rad that flanks may sink in before it is an event: rounding makes none
STEP_MOST = 1.0  # of the phase of the fastest mode: longer steps leap over touches that part again
TOLERANCES = (1e-9, 1e-11, 1e-13)
TRAILING, APART, LEADING, BROKEN = -1, 0, 1, 2
MESH = 1
EVENT = {LEADING: 0, TRAILING: 1, APART: 2, BROKEN: 3}


class Train:
    """Meshes and shafts; a rotor that stops at once."""

    def __init__(self, told):
        bodies, bonds = told["bodies"], told["bonds"]
        self.n, self.m = len(bodies), len(bonds)
        self.J, self.torque, self.slope, self.q, self.v, self.speed = (
            np.array([body[key] for body in bodies], dtype=float)
            for key in ("J", "torque", "slope", "q", "v", "speed"))
        self.k, self.c, self.gap = (np.array([bond[key] for bond in bonds], dtype=float)
                                    for key in ("k", "c", "gap"))
        self.g_b = np.array([bond["g_b"] for bond in bonds], dtype=float)
        self.breaks = np.array([np.inf if bond["breaks"] is None else bond["breaks"]
                                for bond in bonds])
        self.mesh = np.array([bond["kind"] == MESH for bond in bonds])
        self.stretch = np.zeros((self.m, self.n))
        for i, bond in enumerate(bonds):
            self.stretch[i, bond["a"]] += bond["g_a"]
            self.stretch[i, bond["b"]] -= bond["g_b"]
        self.stops, self.until = told["stops"], told["until"]
        stiffness = (self.stretch.T * self.k) @ self.stretch / self.J[:, None]
        self.fastest = np.sqrt(np.linalg.eigvals(stiffness).real.max())

    def begin(self):
        s = self.stretch @ self.q
        state = np.where(s >= 0, LEADING, np.where(s <= -self.gap, TRAILING, APART))
        state[~self.mesh] = LEADING
        v = self.v.copy()
        v[self.stops] = -self.speed[self.stops]
        return np.concatenate([self.q, v]), state

    def motion(self, state):
        """y' = A y + b while nothing happens."""
        touches = (state == LEADING) | (state == TRAILING)
        press = np.where(state == TRAILING, self.gap, 0.0)
        k, c = self.k * touches, self.c * touches
        A = np.zeros((2 * self.n, 2 * self.n))
        A[:self.n, self.n:] = np.eye(self.n)
        A[self.n:, :self.n] = -(self.stretch.T * k) @ self.stretch / self.J[:, None]
        A[self.n:, self.n:] = -(self.stretch.T * c) @ self.stretch / self.J[:, None]
        A[self.n:, self.n:] += np.diag(self.slope / self.J)
        b = np.zeros(2 * self.n)
        b[self.n:] = (self.torque - self.stretch.T @ (k * press)) / self.J
        A[self.n + self.stops] = 0.0
        b[self.n + self.stops] = 0.0
        return A, b

    def margins(self, state):
        """Rows of what may fall through 0: sign s + shift, and what happens where it does."""
        rows, shifts, what = [], [], []

        def add(i, sign, shift, then):
            rows.append(sign * self.stretch[i])
            shifts.append(shift)
            what.append((i, then))

        for i in range(self.m):
            press = self.gap[i] if state[i] == TRAILING else 0.0
            if self.mesh[i] and state[i] == LEADING:
                add(i, 1, 0.0, APART if self.gap[i] > 0 else TRAILING)
            elif self.mesh[i] and state[i] == TRAILING:
                add(i, -1, -self.gap[i], APART if self.gap[i] > 0 else LEADING)
            elif state[i] == APART:
                add(i, -1, 0.0, LEADING)
                add(i, 1, self.gap[i], TRAILING)
            if state[i] in (LEADING, TRAILING) and np.isfinite(self.breaks[i]):
                strain = self.breaks[i] / (self.g_b[i] * self.k[i])
                add(i, -1, strain - press, BROKEN)
                add(i, 1, strain + press, BROKEN)
        return np.array(rows), np.array(shifts), what


def follow(train, tolerance):
    """Events as (what, bond, t), speeds at the end, seconds."""
    begun = time.process_time()
    y, state = train.begin()
    t, events = 0.0, []
    floor = np.concatenate([np.full(train.n, 1e-14), np.full(train.n, 1e-10)]) * tolerance / 1e-10
    while t < train.until and len(events) < EVENTS_MOST:
        A, b = train.motion(state)
        rows, shifts, what = train.margins(state)
        n = train.n
        shifts = shifts + DEAD
        shifts = shifts - np.minimum(rows @ y[:n] + shifts, 0.0)  # what has met counts from there

        def least(_, y, rows=rows, shifts=shifts, n=n):
            return (rows @ y[:n] + shifts).min()

        least.terminal, least.direction = True, -1
        got = solve_ivp(lambda _, y, A=A, b=b: A @ y + b, (t, train.until), y, method="DOP853",
                        max_step=STEP_MOST / train.fastest, rtol=max(tolerance, 3e-14), atol=floor,
                        events=least)
        t, y = got.t[-1], got.y[:, -1]
        if got.status != 1:
            break
        bond, then = what[int(np.argmin(rows @ y[:n] + shifts))]
        events.append((EVENT[then], bond, t))
        state[bond] = then
    return events, y[train.n:], time.process_time() - begun


def settled(events):
    """Without a flank that parts and meets again in the same instant, which only rounding makes."""
    kept = []
    for event in events:
        if kept and kept[-1][1] == event[1] and event[2] - kept[-1][2] < INSTANT:
            kept.pop()
        else:
            kept.append(event)
    return kept


def error(events, v, truth, scale):
    """Of times in s, and of speeds; None: other events."""
    wanted = settled([(event["what"], event["bond"], event["t"]) for event in truth["events"]])
    events = settled(events)
    if truth["happened"] > len(truth["events"]):
        events = events[:len(wanted)]  # towershaft keeps the first of them, and all that breaks
    if [event[:2] for event in events] != [event[:2] for event in wanted]:
        return None
    return (max([abs(event[2] - right[2]) for event, right in zip(events, wanted)] + [0.0]),
            np.abs(np.array(v) - truth["v"]).max() / scale)


def tell_difference(train, events, truth):
    """How far both see the same, and what comes then."""
    wanted = settled([(event["what"], event["bond"], event["t"]) for event in truth["events"]])
    seen = settled(events)
    same = 0
    while same < min(len(seen), len(wanted)) and seen[same][:2] == wanted[same][:2]:
        same += 1
    off = max(abs(a[2] - b[2]) for a, b in zip(seen[:same], wanted[:same]))
    print(f"  SciPy      sees other events: of {len(wanted)} the first {same} agree within "
          f"{off:.1e} s; then")
    for name, one in (("towershaft", wanted), ("SciPy", seen)):
        print("    %-10s %s" % (name, "; ".join("what %d, bond %d, %.9f ms" % (a, b, 1e3 * t)
                                                for a, b, t in one[same:same + 3])))


def compare(told):
    """The ratio, or None."""
    train, truth = Train(told), told["runs"][-1]
    ours = next(run for run in told["runs"] if run["tolerance"] == 1e-10)
    scale = train.speed.max()
    here = error([(event["what"], event["bond"], event["t"]) for event in ours["events"]],
                 ours["v"], truth, scale)
    print(f"{told['run']}: {ours['happened']} events, energies off by {ours['balance']:.1e}")
    print(f"  towershaft {1e3 * ours['seconds']:9.2f} ms   events within {here[0]:.1e} s, "
          f"speeds within {here[1]:.1e}")
    best = None
    for tolerance in TOLERANCES:
        events, v, seconds = follow(train, tolerance)
        there = error(events, v, truth, scale)
        if there is None:
            continue
        best = (tolerance, seconds, there)
        if there[0] <= here[0] and there[1] <= here[1]:
            break
    if best is None:
        tell_difference(train, events, truth)
        return None
    tolerance, seconds, there = best
    print(f"  SciPy      {1e3 * seconds:9.2f} ms   events within {there[0]:.1e} s, "
          f"speeds within {there[1]:.1e}   (DOP853, {tolerance:.0e})")
    print(f"  {seconds / ours['seconds']:.0f} times as fast")
    return seconds / ours["seconds"]


def main():
    words = argparse.ArgumentParser(description=__doc__.split("\n")[0])
    words.add_argument("--program", default=ROOT / "build/release/towershaft-train-runs")
    given = words.parse_args()
    try:
        out = subprocess.run([given.program, ROOT / "examples/large.yaml", "hydraulic pump 1",
                              "take-off"], check=True, capture_output=True, text=True).stdout
    except (OSError, subprocess.CalledProcessError) as failed:
        print(f"compare_seizure: {failed}", file=sys.stderr)
        return 2
    ratios = [compare(told) for told in json.loads(out)]
    return 0 if all(ratio is not None and ratio >= GOAL for ratio in ratios) else 1


if __name__ == "__main__":
    sys.exit(main())
