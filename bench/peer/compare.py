#!/usr/bin/env python3
"""How much faster than Python and NumPy does towershaft rate a mesh, and do all three agree?

    compare.py [--program build/release/towershaft-rate-batch] [--meshes 100000]

The same drawn meshes go through towershaft, plain Python and NumPy, in turns, so that a machine
that slows down slows all of them; a ratio is the median of the turns.  Times are processor seconds
of one core a mesh: geometry, preparation and one load case to ISO 6336, the same with eight
conditions on both flanks, and these to ISO 6336 and to AGMA 2101 with I and J of AGMA 908.  Drawing,
reading and writing are not in them.  NumPy takes the batch in blocks of the size that suits it best
here.

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

import agma2101_numpy
import agma2101_plain
import drawn_meshes
import iso6336_numpy
import iso6336_plain

ROOT = pathlib.Path(__file__).resolve().parent.parent.parent
TURNS = 7
PLAIN_MESHES, PLAIN_CASE_MESHES, PLAIN_BOTH_MESHES, SINGLE_MESHES = 2000, 400, 250, 100
BLOCKS = (4000, 8000, 16000, 100000)
AGREEMENT = 1e-9

# towershaft's answers are in SI, those of the peers in the units of print.
NAMES = ("c_gamma_alpha", "N", "K_v", "K_Hbeta", "K_Fbeta", "K_Halpha", "K_Falpha", "sigma_H0",
         *(f"{name}{gear}" for gear in (1, 2) for name in (
             "Y_F", "Y_S", "Z_W", "sigma_H", "sigma_HG", "S_H", "sigma_F", "sigma_FG", "S_F")))
SECOND_NAMES = ("Z_I", "K_v", "K_H", "Y_J1", "Y_J2", "sigma_H",
                *(f"{name}{gear}" for gear in (1, 2) for name in (
                    "sigma_F", "Z_N", "Y_N", "S_H", "S_F")))
SECOND_TO_PRINT = np.array([1e-6 if name.startswith("sigma") else 1.0 for name in SECOND_NAMES])
TO_PRINT = np.array([1e-9 if name == "c_gamma_alpha" else 1e-6 if name.startswith("sigma") else 1.0
                     for name in NAMES])
SAFETY_NAMES = ("S_H1", "S_H2", "S_F1", "S_F2")
SAFETIES = [NAMES.index(name) for name in SAFETY_NAMES]
SECOND_SAFETIES = [SECOND_NAMES.index(name) for name in SAFETY_NAMES]

#               what it is set beside, what of ours, cases a mesh, goal, least
RATIOS = {
    "plain": ("plain Python, ISO", "one", 1, 300.0, 8.0),
    "plain cases": ("plain Python, ISO", "cases", len(drawn_meshes.CASES), 300.0, 10.0),
    "plain both": ("plain Python, ISO and AGMA", "both", len(drawn_meshes.CASES), 300.0, 10.0),
    "numpy": ("NumPy, the whole batch, ISO", "one", 1, 30.0, 0.25),
    "numpy cases": ("NumPy, the whole batch, ISO", "cases", len(drawn_meshes.CASES), 30.0, 0.45),
    "numpy both": ("NumPy, the batch, ISO and AGMA", "both", len(drawn_meshes.CASES), 30.0, 0.4),
    "numpy single": ("NumPy, mesh by mesh, ISO", "one", 1, None, 50.0),
}


def seconds_of(work):
    """Processor seconds of `work`, and its result."""
    begun = time.process_time()
    result = work()
    return time.process_time() - begun, result


# ---- the three -----------------------------------------------------------------------------------

def run_towershaft(program, meshes, answers=None):
    """Seconds a mesh, with one load case, with all of them, and with all to both standards."""
    try:
        done = subprocess.run([program, meshes, *([answers] if answers else [])], text=True,
                              stdout=subprocess.PIPE, check=False)
    except OSError as fault:
        print(f"compare: {program}: {fault.strerror}", file=sys.stderr)
        sys.exit(2)
    if done.returncode != 0:  # it has said why
        sys.exit(2)
    return dict(zip(("one", "cases", "both"), (float(word) for word in done.stdout.split())))


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


def rate_plain_both(drawn):
    """Safeties to both standards."""
    first, second = iso6336_plain, agma2101_plain
    out = []
    for mesh, beside, loads in drawn:
        pair = first.solve_pair(mesh.teeth)
        prepared, opinion = first.prepare(pair, mesh), second.prepare(pair, mesh, beside)
        out.append([(first.rate(prepared, load), second.rate(opinion, load)) for load in loads])
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


def rate_numpy_both(blocks):
    first, second = iso6336_numpy, agma2101_numpy
    out = []
    for mesh, load in blocks:
        pair = first.solve_pair(mesh.teeth)
        prepared, opinion = first.prepare(pair, mesh), second.prepare(pair, mesh)
        ratings = []
        for share in drawn_meshes.CASES.tolist():
            one = first.case(load, share)
            rating, other = first.rate(prepared, one), second.rate(opinion, one)
            ratings.append([rating[k] for k in SAFETIES] + [other[k] for k in SECOND_SAFETIES])
        out.append(ratings)
    return out


def rate_numpy_second(blocks):
    """Under the drawn load alone, to AGMA 2101: to be compared, not timed."""
    first, second = iso6336_numpy, agma2101_numpy
    return [second.rate(second.prepare(first.solve_pair(mesh.teeth), mesh), load)
            for mesh, load in blocks]


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


def second_answers(rating):
    gears = (value for g in rating.gear for value in (g.sigma_F, g.Z_N, g.Y_N, g.S_H, g.S_F))
    return (rating.Z_I, rating.K_v, rating.K_H, rating.Y_J1, rating.Y_J2, rating.sigma_H, *gears)


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


def take(numbers, *shape):
    """What stands next in the file of answers, and the rest of it."""
    count = int(np.prod(shape))
    return numbers[:count].reshape(shape), numbers[count:]


def check_iso(ours, safeties, plain_drawn, plain_cases, blocks):
    plain = np.array([plain_answers(rating) for rating in rate_plain(plain_drawn)])
    plain_safeties = np.array([[[plain_answers(rating)[k] for k in SAFETIES] for rating in ratings]
                               for ratings in rate_plain_cases(plain_cases)])
    batch = np.concatenate([np.array(rating).T for rating in rate_numpy(blocks)])
    batch_safeties = np.concatenate([np.array(ratings).transpose(2, 0, 1)
                                     for ratings in rate_numpy_cases(blocks)])
    return (
        agree("plain Python, ISO", NAMES, plain, ours[:len(plain)]),
        agree("plain Python, all cases", SAFETY_NAMES, plain_safeties,
              safeties[:len(plain_safeties)]),
        agree("NumPy, ISO", NAMES, batch, ours),
        agree("NumPy, all cases", SAFETY_NAMES, batch_safeties, safeties),
    )


def check_second(ours, safeties, plain_both, blocks):
    """`safeties`: those to ISO 6336, then those to AGMA 2101."""
    names = SAFETY_NAMES + tuple(f"AGMA {name}" for name in SAFETY_NAMES)
    second = agma2101_plain
    plain = np.array([second_answers(second.rate(
        second.prepare(iso6336_plain.solve_pair(mesh.teeth), mesh, beside), load))
        for mesh, beside, load in plain_both[0]])
    plain_safeties = np.array([
        [[plain_answers(first)[k] for k in SAFETIES]
         + [second_answers(other)[k] for k in SECOND_SAFETIES] for first, other in ratings]
        for ratings in rate_plain_both(plain_both[1])])
    batch = np.concatenate([np.array(np.broadcast_arrays(*rating)).T
                            for rating in rate_numpy_second(blocks)])
    batch_safeties = np.concatenate([np.array(ratings).transpose(2, 0, 1)
                                     for ratings in rate_numpy_both(blocks)])
    return (
        agree("plain Python, AGMA", SECOND_NAMES, plain, ours[:len(plain)]),
        agree("plain Python, both", names, plain_safeties, safeties[:len(plain_safeties)]),
        agree("NumPy, AGMA", SECOND_NAMES, batch, ours),
        agree("NumPy, both", names, batch_safeties, safeties),
    )


def check(answers, drawn):
    count, cases = len(drawn.rows), len(drawn_meshes.CASES)
    numbers = np.fromfile(answers)
    ours, numbers = take(numbers, count, len(NAMES))
    safeties, numbers = take(numbers, count, cases, len(SAFETIES))
    second, numbers = take(numbers, count, len(SECOND_NAMES))
    second_safeties, _ = take(numbers, count, cases, len(SAFETIES))
    held = (
        check_iso(ours * TO_PRINT, safeties, drawn.plain, drawn.plain_cases, drawn.blocks)
        + check_second(second * SECOND_TO_PRINT, np.concatenate((safeties, second_safeties), 2),
                       drawn.plain_both, drawn.blocks))
    return all(held)


# ---- how much faster? ----------------------------------------------------------------------------

class Drawn:
    """The same meshes for every party."""

    def __init__(self, count):
        self.rows = drawn_meshes.draw(count)
        self.plain = [drawn_meshes.plain_mesh(row) for row in self.rows[:PLAIN_MESHES]]
        self.plain_cases = [(mesh, drawn_meshes.plain_cases(load))
                            for mesh, load in self.plain[:PLAIN_CASE_MESHES]]
        beside = [drawn_meshes.plain_second(row) for row in self.rows[:PLAIN_MESHES]]
        self.plain_both = (
            [(mesh, own, load) for (mesh, load), own in zip(self.plain, beside)],
            [(mesh, own, loads) for (mesh, loads), own
             in zip(self.plain_cases[:PLAIN_BOTH_MESHES], beside)])
        self.blocks, self.size = best_blocks(self.rows)
        self.singles = in_blocks(self.rows[:SINGLE_MESHES], 1)


def turn(program, file, drawn):
    """Seconds a mesh of every party, one after the other."""
    count = len(drawn.rows)
    return {
        **run_towershaft(program, file),
        "plain": seconds_of(lambda: rate_plain(drawn.plain))[0] / len(drawn.plain),
        "plain cases": (seconds_of(lambda: rate_plain_cases(drawn.plain_cases))[0]
                        / len(drawn.plain_cases)),
        "plain both": (seconds_of(lambda: rate_plain_both(drawn.plain_both[1]))[0]
                       / len(drawn.plain_both[1])),
        "numpy": seconds_of(lambda: rate_numpy(drawn.blocks))[0] / count,
        "numpy cases": seconds_of(lambda: rate_numpy_cases(drawn.blocks))[0] / count,
        "numpy both": seconds_of(lambda: rate_numpy_both(drawn.blocks))[0] / count,
        "numpy single": seconds_of(lambda: rate_numpy(drawn.singles))[0] / len(drawn.singles),
    }


def report(turns):
    """Prints the ratios; false when one is below its least."""
    kept = True
    print(f"{'towershaft is faster than':34s}{'cases':>6s}{'ratio':>9s}{'of turns':>18s}"
          f"{'theirs':>12s}{'ours':>11s}   least   goal")
    for key, (peer, base, cases, goal, least) in RATIOS.items():
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

    drawn = Drawn(asked.meshes)
    with tempfile.TemporaryDirectory() as place:
        file, answers = f"{place}/meshes", f"{place}/answers"
        drawn_meshes.write(file, drawn.rows)
        run_towershaft(asked.program, file, answers)
        print(f"{len(drawn.rows)} drawn meshes; Python {sys.version.split()[0]},"
              f" NumPy {np.__version__} in blocks of {min(drawn.size, len(drawn.rows))}")
        agreed = check(answers, drawn)
        turns = [turn(asked.program, file, drawn) for _ in range(TURNS)]
    return 0 if report(turns) and agreed else 1


if __name__ == "__main__":
    sys.exit(main())
