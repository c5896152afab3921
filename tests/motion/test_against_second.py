#!/usr/bin/env python3
# ctest: release-only    (whole commands take minutes under the sanitizers)
"""Does the program say what a second, independent one says of the same drive?

tests/second/drive_second.py reads the same files and computes ratios, senses, places, speeds,
torques, powers and tooth forces by other routes.  Held to it: every example, every trap that is
understood, and drives drawn by lot in both sights.  The two sights of one drive must moreover give
the same machine to the last digit.
"""
# ctest: timeout=600
import json
import math
import os
import subprocess
import sys
import tempfile
from concurrent.futures import ThreadPoolExecutor
from pathlib import Path

sys.dont_write_bytecode = True
ROOT = Path(__file__).resolve().parents[2]
sys.path.insert(0, str(ROOT / "tests" / "second"))
import drive_second  # noqa: E402
import random_drive  # noqa: E402

COMMAND = os.environ.get("TOWERSHAFT", str(ROOT / "build/release/towershaft"))
DRAWN = 60
TOLERANCE = 1e-9  # relative to the largest number of its kind in the same record
FLOWS = {-1: "towards the spool", 0: "none", 1: "away from the spool"}

numbers = 0
faults = []


def say(where, what, mine, theirs):
    faults.append(f"{where}: {what}: the program says {mine}, the second one {theirs}")


def same(where, what, mine, theirs):
    global numbers
    numbers += 1
    if mine != theirs:
        say(where, what, mine, theirs)


def near(where, what, mine, theirs, size=0.0):
    """size: what the difference is referred to when it is larger than the number."""
    global numbers
    numbers += 1
    if (mine is None) != (theirs is None):
        say(where, what, mine, theirs)
    elif mine is not None and not abs(mine - theirs) <= TOLERANCE * max(abs(theirs), size):
        say(where, what, mine, theirs)


def si(quantity):
    """SI value of a quantity of the answer, or None."""
    if quantity["value"] is None:
        return None
    return quantity["value"] * drive_second.UNITS["" if quantity["unit"] == "1"
                                                  else quantity["unit"]]


def answer_of(path):
    run = subprocess.run([COMMAND, "check", str(path), "--json"], capture_output=True, text=True,
                         timeout=200, check=False)
    if run.returncode not in (0, 1):
        return None, run
    return json.loads(run.stdout), run


def compare_shafts(where, mine, drive):
    same(where, "number of shafts", len(mine["shafts"]), len(drive.shafts))
    theirs = {s.address: s for s in drive.shafts}
    for shaft in mine["shafts"]:
        here = f"{where} {shaft['address']}"
        other = theirs[shaft["address"]]
        same(here, "ratio", (shaft["ratio"]["over"], shaft["ratio"]["under"]),
             (other.ratio.numerator, other.ratio.denominator))
        same(here, "turns", shaft["turns"], "ccw" if other.sense > 0 else "cw")
        if shaft["kind"] == "box shaft":
            place = other.place or (None, None)
            near(here, "x", si(shaft["x"]), place[0], drive.arc)
            near(here, "y", si(shaft["y"]), place[1], drive.arc)
        for condition, speed in shaft["speed"].items():
            near(here, f"n@{condition}", si(speed), drive.speed(other, condition))


def compare_pads(where, mine, theirs, condition):
    same(where, "number of pads", len(mine["pads"]), len(theirs["pads"]))
    for pad in mine["pads"]:
        other = theirs["pads"][pad["address"]]
        here = f"{where} {pad['address']}@{condition}"
        same(here, "name", pad["name"], other["name"])
        same(here, "turns", pad["turns"], other["turns"])
        near(here, "n", si(pad["speed"][condition]), other["n"])
        if "torque" in pad:
            near(here, "T", si(pad["torque"][condition]), other["T"])
            near(here, "P", si(pad["power"][condition]), other["P"])


def compare_meshes(where, mine, theirs, drive, condition):
    meshes = {m.address: m for m in drive.meshes}
    most = max((abs(T) for m in theirs["meshes"].values() for T in m["T"]), default=0.0)
    for mesh in mine["meshes"]:
        load, other = mesh["loads"][condition], theirs["meshes"][mesh["address"]]
        here = f"{where} {mesh['address']}@{condition}"
        same(here, "teeth", mesh["teeth"], meshes[mesh["address"]].z)
        same(here, "gcd", mesh["gcd"], math.gcd(*mesh["teeth"]))
        if mesh["kind"] == "cylindrical":
            near(here, "a_w", si(mesh["a_w"]), meshes[mesh["address"]].a_w)
        near(here, "v", si(load["v"]), other["v"])
        for end in (0, 1):
            # Where drivers and takers nearly cancel, a torque is the difference of large ones.
            near(here, f"T_{end + 1}", si(load[f"T_{end + 1}"]), other["T"][end], 1e-3 * most)
        if max(abs(T) for T in other["T"]) < 1e-6 * most:
            continue  # the direction of nothing says nothing
        same(here, "flow", load["flow"], FLOWS[other["flow"]])
        same(here, "flanks", load["flanks"], other["flank"])
        speed = max(drive.speed(meshes[mesh["address"]].driver, condition), 1.0)
        near(here, "loss", si(load["P_loss"]), other["lost"], 1e-3 * most * speed)
        near(here, "F_t", si(load["F_t"]), other["F_t"])
        for end in (0, 1):
            for part in ("F_r", "F_a"):
                near(here, f"{part}{end + 1}", si(load[f"{part}{end + 1}"]), other[part][end],
                     other["F_t"])
        for axis in range(3):
            theirs_axis = other["force"][axis] if other["force"] else None
            near(here, "force " + "xyz"[axis], load["force"][axis], theirs_axis, other["F_t"])


def compare_spools(where, mine, theirs, condition):
    for spool in mine["spools"]:
        load, other = spool["loads"][condition], theirs["spools"][spool["name"]]
        here = f"{where} {spool['name']}@{condition}"
        size = sum(abs(p["P"]) for p in theirs["pads"].values())
        near(here, "P", si(load["P"]), other["P"] or 0.0, size)
        near(here, "P_pads + P_lost", si(load["P_pads"]) + si(load["P_lost"]), other["P"] or 0.0,
             size)
        if not load["imbalance"] <= 1e-12:
            say(here, "imbalance", load["imbalance"], "at most 1e-12")


def compare(path, name):
    """The answer of the program, or None when it does not understand the file."""
    mine, run = answer_of(path)
    if mine is None:
        return run
    drive = drive_second.Drive(path)
    compare_shafts(name, mine, drive)
    for condition in drive.conditions:
        theirs = drive.solve(condition)
        compare_pads(name, mine, theirs, condition)
        compare_meshes(name, mine, theirs, drive, condition)
        compare_spools(name, mine, theirs, condition)
    return mine


def examples():
    for path in sorted((ROOT / "examples").glob("*.yaml")):
        if not isinstance(compare(path, path.name), dict):
            faults.append(f"{path.name}: the program does not understand it")
    for path in sorted((ROOT / "examples" / "traps").glob("*.yaml")):
        compare(path, f"traps/{path.name}")


def other_way(text):
    """What one sight calls clockwise is anticlockwise in the other."""
    swapped = {"clockwise": "anticlockwise", "anticlockwise": "clockwise"}
    return "/".join(swapped.get(part, part) for part in text.split("/"))


def machine(answer, rename):
    """The numbers by address, without names and numbers of shafts, which follow the file."""
    def plain(value):
        if isinstance(value, dict) and "unit" in value and "value" in value:
            return value["value"]
        if isinstance(value, dict):
            return {k: plain(v) for k, v in value.items() if k not in ("name", "number")}
        if isinstance(value, list):
            return [plain(v) for v in value]
        return rename(value) if isinstance(value, str) else value

    return {kind: {rename(r["address"]): plain(r) for r in answer[kind]}
            for kind in ("shafts", "pads", "meshes", "spools")}


def difference(a, b, at=""):
    """Where two answers differ by more than rounding, or None: clock angles of the other sight are
    other doubles."""
    if isinstance(a, dict) and isinstance(b, dict) and a.keys() == b.keys():
        return next(filter(None, (difference(a[k], b[k], f"{at} {k}") for k in a)), None)
    if isinstance(a, list) and isinstance(b, list) and len(a) == len(b):
        return next(filter(None, (difference(x, y, at) for x, y in zip(a, b))), None)
    if isinstance(a, float) or isinstance(b, float):
        alike = a is not None and b is not None and math.isclose(a, b, rel_tol=1e-9, abs_tol=1e-7)
        return None if alike else f"{at}: {a} and {b}"
    return None if a == b else f"{at}: {a} and {b}"


def drawn(seed, folder):
    drive, answers = random_drive.RandomDrive(seed), []
    for from_front in (False, True):
        path = Path(folder) / f"{seed}-{'front' if from_front else 'behind'}.yaml"
        path.write_text(drive.text(from_front), encoding="utf-8")
        answer = compare(path, path.name)
        if not isinstance(answer, dict):
            faults.append(f"{path.name}: exit {answer.returncode}\n{answer.stderr[:600]}")
            return
        answers.append(answer)
    differs = difference(machine(answers[0], str), machine(answers[1], other_way))
    if differs:
        faults.append(f"seed {seed}: the two sights of one drive differ at{differs}")


def main():
    examples()
    with tempfile.TemporaryDirectory() as folder, ThreadPoolExecutor(2) as pool:
        list(pool.map(lambda seed: drawn(seed, folder), range(1, DRAWN + 1)))
    for fault in faults[:40]:
        print(fault)
    print(f"{numbers} numbers compared, {len(faults)} differ")
    if numbers < 20000:
        sys.exit("too few numbers were compared")
    sys.exit(1 if faults else 0)


if __name__ == "__main__":
    main()
