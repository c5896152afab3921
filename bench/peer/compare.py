#!/usr/bin/env python3
"""How much faster than Python and NumPy does towershaft rate a mesh, and do all three agree?

    compare.py [--program build/release/towershaft-rate-batch] [--meshes 100000]

The same drawn meshes go through towershaft, plain Python and NumPy, in turns, so that a machine
that slows down slows all of them; a ratio is the median of the turns.  Times are processor seconds
of one core a mesh: geometry, preparation and one load case, then the same with eight conditions on
both flanks.  Drawing, reading and writing are not in them.  NumPy takes the batch in blocks of the
size that suits it best here.

The peers compute what the safeties need and no more; towershaft also judges every input, and gives
clearances, sliding, undercut, permissible stresses and remarks.

GOAL is what was hoped for.  LEAST is what a change may not fall below: somewhat under what one core
with AVX-512 gave.  There NumPy rates eight meshes in one instruction, and towershaft one mesh after
the other to the same bits on every machine.

Exit 0: the numbers agree and no ratio is below its least; 1: not so; 2: nothing could be measured.
"""

import argparse
import pathlib
import subprocess
import sys
import tempfile
import time

try:
    import numpy as np
except ModuleNotFoundError:
    print("compare: NumPy is missing (Debian: python3-numpy)", file=sys.stderr)
    sys.exit(2)

import drawn_meshes
import iso6336_numpy
import iso6336_plain

ROOT = pathlib.Path(__file__).resolve().parent.parent.parent
TURNS = 7
PLAIN_MESHES, PLAIN_CASE_MESHES, SINGLE_MESHES = 2000, 400, 100
BLOCKS = (4000, 8000, 16000, 100000)
AGREEMENT = 1e-9

# towershaft's answers are in SI, those of the peers in the units of print.
NAMES = ("c_gamma_alpha", "N", "K_v", "K_Hbeta", "K_Fbeta", "K_Halpha", "K_Falpha", "sigma_H0",
         *(f"{name}{gear}" for gear in (1, 2) for name in (
             "Y_F", "Y_S", "Z_W", "sigma_H", "sigma_HG", "S_H", "sigma_F", "sigma_FG", "S_F")))
TO_PRINT = np.array([1e-9 if name == "c_gamma_alpha" else 1e-6 if name.startswith("sigma") else 1.0
                     for name in NAMES])
SAFETY_NAMES = ("S_H1", "S_H2", "S_F1", "S_F2")
SAFETIES = [NAMES.index(name) for name in SAFETY_NAMES]

#            what it is set beside, load cases a mesh, goal, least
RATIOS = {
    "plain": ("plain Python", 1, 300.0, 8.0),
    "plain cases": ("plain Python", len(drawn_meshes.CASES), 300.0, 10.0),
    "numpy": ("NumPy, the whole batch", 1, 30.0, 0.25),
    "numpy cases": ("NumPy, the whole batch", len(drawn_meshes.CASES), 30.0, 0.45),
    "numpy single": ("NumPy, mesh by mesh", 1, None, 50.0),
}


def seconds_of(work):
    """Processor seconds of `work`, and its result."""
    begun = time.process_time()
    result = work()
    return time.process_time() - begun, result


# ---- the three -----------------------------------------------------------------------------------

def run_towershaft(program, meshes, answers=None):
    """Seconds a mesh, with one load case and with all of them."""
    try:
        done = subprocess.run([program, meshes, *([answers] if answers else [])], text=True,
                              stdout=subprocess.PIPE, check=False)
    except OSError as fault:
        print(f"compare: {program}: {fault.strerror}", file=sys.stderr)
        sys.exit(2)
    if done.returncode != 0:  # it has said why
        sys.exit(2)
    one, cases = (float(word) for word in done.stdout.split())
    return one, cases


def rate_plain(drawn):
    plain = iso6336_plain
    return [plain.rate(plain.prepare(plain.solve_pair(mesh.teeth), mesh), load)
            for mesh, load in drawn]


def rate_plain_cases(drawn):
    plain = iso6336_plain
    out = []
    for mesh, loads in drawn:
        prepared = plain.prepare(plain.solve_pair(mesh.teeth), mesh)
        out.append([plain.rate(prepared, load) for load in loads])
    return out


def rate_numpy(blocks):
    batch = iso6336_numpy
    return [batch.rate(batch.prepare(batch.solve_pair(mesh.teeth), mesh), load)
            for mesh, load in blocks]


def rate_numpy_cases(blocks):
    batch = iso6336_numpy
    out = []
    for mesh, load in blocks:
        prepared = batch.prepare(batch.solve_pair(mesh.teeth), mesh)
        ratings = []
        for share in drawn_meshes.CASES.tolist():
            rating = batch.rate(prepared, batch.case(load, share))
            ratings.append([rating[k] for k in SAFETIES])
        out.append(ratings)
    return out


def in_blocks(rows, size):
    return [iso6336_numpy.columns(np.asfortranarray(rows[i:i + size]))
            for i in range(0, len(rows), size)]


def best_blocks(rows):
    """The batch in the blocks that NumPy rates fastest, of two trials each, and their size."""
    timed = []
    for size in BLOCKS:
        blocks = in_blocks(rows, size)
        timed.append((min(seconds_of(lambda b=blocks: rate_numpy(b))[0] for _ in range(2)), size))
    size = min(timed)[1]
    return in_blocks(rows, size), size


# ---- do they agree? ------------------------------------------------------------------------------

def plain_answers(rating):
    gears = (value for g in rating.gear for value in (
        g.Y_F, g.Y_S, g.Z_W, g.sigma_H, g.sigma_HG, g.S_H, g.sigma_F, g.sigma_FG, g.S_F))
    return (rating.c_gamma_alpha, rating.N, rating.K_v, rating.K_Hbeta, rating.K_Fbeta,
            rating.K_Halpha, rating.K_Falpha, rating.sigma_H0, *gears)


def agree(peer, names, theirs, ours):
    """Says the worst difference over the last axis, in parts of the number; false when too much."""
    if theirs.shape != ours.shape or not (np.isfinite(theirs).all() and np.isfinite(ours).all()):
        print(f"{peer}: a number is missing or not finite")
        return False
    apart = np.abs(theirs - ours) / np.maximum(np.abs(theirs), np.abs(ours))
    worst = np.unravel_index(np.argmax(apart), apart.shape)
    held = bool(apart[worst] <= AGREEMENT)
    print(f"{peer:24s} {apart.size:8d} numbers, worst {apart[worst]:.1e} in {names[worst[-1]]}"
          f" {'within' if held else 'EXCEEDS'} {AGREEMENT:.0e}")
    return held


def check(answers, meshes, plain_drawn, plain_cases, blocks):
    count, cases = meshes, len(drawn_meshes.CASES)
    numbers = np.fromfile(answers)
    ours = numbers[:count * len(NAMES)].reshape(count, len(NAMES)) * TO_PRINT
    safeties = numbers[count * len(NAMES):].reshape(count, cases, len(SAFETIES))

    plain = np.array([plain_answers(rating) for rating in rate_plain(plain_drawn)])
    plain_safeties = np.array([[[plain_answers(rating)[k] for k in SAFETIES] for rating in ratings]
                               for ratings in rate_plain_cases(plain_cases)])
    batch = np.concatenate([np.array(rating).T for rating in rate_numpy(blocks)])
    batch_safeties = np.concatenate([np.array(ratings).transpose(2, 0, 1)
                                     for ratings in rate_numpy_cases(blocks)])
    verdicts = (
        agree("plain Python", NAMES, plain, ours[:len(plain)]),
        agree("plain Python, all cases", SAFETY_NAMES, plain_safeties,
              safeties[:len(plain_safeties)]),
        agree("NumPy", NAMES, batch, ours),
        agree("NumPy, all cases", SAFETY_NAMES, batch_safeties, safeties),
    )
    return all(verdicts)


# ---- how much faster? ----------------------------------------------------------------------------

def turn(program, file, rows, plain_drawn, plain_cases, blocks, singles):
    """Seconds a mesh of every party, one after the other."""
    one, cases = run_towershaft(program, file)
    return {
        "one": one,
        "cases": cases,
        "plain": seconds_of(lambda: rate_plain(plain_drawn))[0] / len(plain_drawn),
        "plain cases": seconds_of(lambda: rate_plain_cases(plain_cases))[0] / len(plain_cases),
        "numpy": seconds_of(lambda: rate_numpy(blocks))[0] / len(rows),
        "numpy cases": seconds_of(lambda: rate_numpy_cases(blocks))[0] / len(rows),
        "numpy single": seconds_of(lambda: rate_numpy(singles))[0] / len(singles),
    }


def report(turns):
    """Prints the ratios; false when one is below its least."""
    kept = True
    print(f"{'towershaft is faster than':34s}{'cases':>6s}{'ratio':>9s}{'of turns':>18s}"
          f"{'theirs':>12s}{'ours':>11s}   least   goal")
    for key, (peer, cases, goal, least) in RATIOS.items():
        base = "one" if cases == 1 else "cases"
        ratios = np.array([t[key] / t[base] for t in turns])
        theirs, ours = (np.median([t[k] for t in turns]) * 1e6 for k in (key, base))
        ratio = np.median(ratios)
        print(f"{peer:34s}{cases:6d}{ratio:9.3g}{ratios.min():9.3g} to{ratios.max():6.3g}"
              f"{theirs:9.4g} us{ours:8.4g} us  {'within' if ratio >= least else 'BELOW'}"
              f" {least:<5g}" + ("" if goal is None else
                                 f" {goal:g} {'reached' if ratio >= goal else 'missed'}"))
        kept = kept and bool(ratio >= least)
    return kept


def main():
    words = argparse.ArgumentParser(description=__doc__.splitlines()[0])
    words.add_argument("--program", default=ROOT / "build/release/towershaft-rate-batch")
    words.add_argument("--meshes", type=int, default=100000)
    asked = words.parse_args()
    if asked.meshes < PLAIN_MESHES:
        words.error(f"--meshes: at least {PLAIN_MESHES}")

    rows = drawn_meshes.draw(asked.meshes)
    plain_drawn = [drawn_meshes.plain_mesh(row) for row in rows[:PLAIN_MESHES]]
    plain_cases = [(mesh, drawn_meshes.plain_cases(load))
                   for mesh, load in plain_drawn[:PLAIN_CASE_MESHES]]
    blocks, size = best_blocks(rows)
    singles = in_blocks(rows[:SINGLE_MESHES], 1)
    with tempfile.TemporaryDirectory() as place:
        file, answers = f"{place}/meshes", f"{place}/answers"
        drawn_meshes.write(file, rows)
        run_towershaft(asked.program, file, answers)
        print(f"ISO 6336 of {len(rows)} drawn meshes; Python {sys.version.split()[0]},"
              f" NumPy {np.__version__} in blocks of {min(size, len(rows))}")
        agreed = check(answers, len(rows), plain_drawn, plain_cases, blocks)
        turns = [turn(asked.program, file, rows, plain_drawn, plain_cases, blocks, singles)
                 for _ in range(TURNS)]
    return 0 if report(turns) and agreed else 1


if __name__ == "__main__":
    sys.exit(main())
