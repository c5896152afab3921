# ctest: release-only    (whole commands take minutes under the sanitizers)
"""Does the STEP file of `draw`, read back and measured, hold the bodies that the drive has?

towershaft-step-measure reads the file anew and measures every product.  Volumes are held to 1e-6 of
those told as numbers, and through them to the statement of mass; extents to 1e-4 mm.
"""
import json
import math
import os
import pathlib
import shutil
import subprocess
import sys
import unittest

sys.path.insert(0, str(pathlib.Path(__file__).resolve().parents[1] / "apps"))
from command_line import COMMAND, EXAMPLES, ROOT, InFolder, quoted, run  # noqa: E402

BUILD = pathlib.Path(os.environ.get("TS_BUILD", ROOT / "build/release"))
WRITER, READER = BUILD / "towershaft-step", BUILD / "towershaft-step-measure"
NEAR = 1e-4  # mm


def extents(part):
    """Of a section that turns about the axis of its part, mm."""
    low, high = [], []
    for k in range(3):
        across = math.sqrt(max(0.0, 1.0 - part["axis"][k] ** 2))
        ends = [part["origin"][k] + z * part["axis"][k] + sign * r * across
                for z, r in part["section"] for sign in (-1, 1)]
        low.append(1e3 * min(ends))
        high.append(1e3 * max(ends))
    return low, high


def casing_extents(part):
    """Of the arcs and lines of its outline, mm; arcs reach to their quadrants."""
    xs, ys = [], []
    for loop in part["casing"]["outside"]:
        for piece in loop:
            points = [piece["a"], piece["b"]]
            if "radius" in piece:
                a, b = sorted((piece["start"], piece["start"] + piece["turn"]))
                first, last = math.ceil(a / (math.pi / 2)), math.floor(b / (math.pi / 2))
                for quarter in range(first, last + 1):
                    angle = quarter * math.pi / 2
                    points.append([piece["centre"][0] + piece["radius"] * math.cos(angle),
                                   piece["centre"][1] + piece["radius"] * math.sin(angle)])
            xs += [p[0] for p in points]
            ys += [p[1] for p in points]
    zs = [part["origin"][2] + part["casing"][end] for end in ("from", "to")]
    return ([1e3 * min(v) for v in (xs, ys, zs)], [1e3 * max(v) for v in (xs, ys, zs)])


def left_out():
    """Was the build told to do without STEP?  Where it was not, a writer that is missing fails."""
    return "TS_STEP:BOOL=OFF" in (BUILD / "CMakeCache.txt").read_text(encoding="utf-8")


class TestStep(InFolder):
    def measured(self, example):
        out, numbers = self.folder / "a.step", self.folder / "a.json"
        for path in (out, numbers):
            code, _, said = run("draw", example, "-o", path)
            self.assertEqual(code, 0, said)
        done = subprocess.run([READER, out], capture_output=True, check=True, timeout=200)
        rows = []
        for line in done.stdout.decode("utf-8").splitlines():
            words = line.split(" ", 9)
            rows.append(([float(w) for w in words[:7]], words[7:9], words[9]))
        return rows, json.loads(numbers.read_text(encoding="utf-8"))["parts"]

    def test_every_body_reads_back_as_it_was_told(self):
        for example in EXAMPLES:
            rows, parts = self.measured(example)
            self.assertEqual(len(rows), len(parts))
            self.assertEqual(len({name for _, _, name in rows}), len(rows), "a name each")
            for (numbers, sound, name), part in zip(rows, parts, strict=True):
                with self.subTest(example=example.name, part=name):
                    self.assertTrue(name.startswith(f"{part['name']}: {part['kind']}"))
                    self.assertEqual(sound, ["1", "1"], "one solid, and a valid one")
                    self.assertAlmostEqual(numbers[0] * 1e-9 / part["volume"], 1.0, delta=1e-6)
                    low, high = (extents if "section" in part else casing_extents)(part)
                    for k in range(3):
                        self.assertAlmostEqual(numbers[1 + k], low[k], delta=NEAR)
                        self.assertAlmostEqual(numbers[4 + k], high[k], delta=NEAR)
                    self.judge_mass(part, numbers[0] * 1e-9)

    def judge_mass(self, part, volume):
        """What docs/method/solids.md promises beside the statement of mass."""
        if part["density"] is None:
            self.assertEqual(part["kind"], "body")
            return
        share = volume * part["density"] / part["mass"]
        low, high = {"shaft": (1 - 1e-6, 1 + 1e-6), "radial shaft": (1 - 1e-6, 1 + 1e-6),
                     "bevel": (1.2, 1.7), "casing": (0.998, 1.0005), "gear": (1.0, 1.6)}[part["kind"]]
        if part["kind"] == "gear":  # as turned: less the ring of the tips it is below the weighed
            teeth = part["teeth"]
            ring = math.pi * (teeth["to"] - teeth["from"]) * (teeth["tip"] ** 2 - teeth["root"] ** 2)
            self.assertLess((volume - ring) * part["density"], part["mass"])
        self.assertGreater(share, low)
        self.assertLess(share, high)

    def test_the_same_bytes(self):
        a, b = self.folder / "a.step", self.folder / "b.stp"
        for path in (a, b):
            self.assertEqual(run("draw", EXAMPLES[0], "-o", path)[0], 0)
        self.assertEqual(a.read_bytes(), b.read_bytes())

    def test_hostile_names_read_back(self):
        """Quotes, brackets, letters beyond ASCII: the file is ASCII, and every body is there."""
        text = EXAMPLES[-1].read_text(encoding="utf-8")
        bad = "x'); #2=(;\\X\\ <i> \u00e4\u202e"
        copy = self.folder / "bad.yaml"
        copy.write_text(text.replace("starter-generator", quoted(bad)), encoding="utf-8")
        rows, parts = self.measured(copy)
        self.assertEqual(len(rows), len(parts))
        named = [name for _, _, name in rows if name.startswith("x\u2019); #2=(;")]
        self.assertTrue(named)
        self.assertTrue(any("\u00e4\u202e" in name for name in named), named)
        (self.folder / "a.step").read_text(encoding="ascii")

    def test_what_is_no_scene_is_refused(self):
        for bad, says in (("", "line"), ("{}", "version"), ('{"version": "", "title": "", '
                          '"revision": "", "parts": [{}]}', "kind")):
            done = subprocess.run([WRITER], input=bad.encode(), capture_output=True, check=False,
                                  timeout=60)
            self.assertEqual((done.returncode, done.stdout), (2, b""), bad)
            self.assertIn(says, done.stderr.decode())


class TestAlone(InFolder):
    """The command without, or beside a bad, towershaft-step."""

    def setUp(self):
        super().setUp()
        self.alone = self.folder / "bin"
        self.alone.mkdir()
        shutil.copy(COMMAND, self.alone / "towershaft")

    def draw(self):
        done = subprocess.run([self.alone / "towershaft", "draw", EXAMPLES[0], "-o",
                               self.folder / "a.step"], capture_output=True, check=False,
                              timeout=120, env={**os.environ, "PATH": str(self.alone)})
        self.assertFalse((self.folder / "a.step").exists(), "no half file")
        return done.returncode, done.stderr.decode("utf-8")

    def test_it_says_what_is_missing(self):
        code, said = self.draw()
        self.assertEqual(code, 3)
        self.assertIn("libocct-data-exchange-dev", said)
        self.assertIn(".glb needs nothing", said)

    def test_a_writer_that_fails_leaves_no_file(self):
        writer = self.alone / "towershaft-step"
        for body, says in (("echo half; echo 'no \x1b[2J memory' >&2; exit 3", "no  [2J memory"),
                           ("exit 0", "could not make the file"),
                           ("kill -SEGV $$", "could not make the file")):
            writer.write_text("#!/bin/sh\n" + body + "\n", encoding="utf-8")
            writer.chmod(0o755)
            code, said = self.draw()
            self.assertEqual(code, 3, body)
            self.assertIn(says, said)
            self.assertNotIn("\x1b", said)


if left_out():
    del TestStep  # there is no writer; that the command says so is tested all the same


if __name__ == "__main__":
    unittest.main()
