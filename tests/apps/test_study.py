#!/usr/bin/env python3
# ctest: release-only    (some thousand drives; the library's part runs under the sanitizers)
"""Does `study` compute every sample once, keep it through a kill, and tell what they say?"""
import json
import os
import pathlib
import pty
import random
import re
import select
import signal
import sqlite3
import subprocess
import sys
import time
import unittest
from contextlib import closing

sys.path.insert(0, os.path.dirname(__file__))
from command_line import COMMAND, ROOT, InFolder, answer, run  # noqa: E402

import jsonschema  # noqa: E402

STUDIES = sorted((ROOT / "examples/studies").glob("*.yaml"))
FACE = "drive/hp/box/clockwise/2/face"
VARY = """vary:
  - {at: accessories/generator/power/cruise, law: normal, deviation: 6 %}
  - {at: accessories/generator/mass, law: uniform, least: 22 kg, most: 27 kg}
  - {at: drive/hp/box/clockwise/2/teeth, law: whole, least: 33, most: 37}
"""
WATCH = """watch:
  - {margin: E1-tooth-bending}
  - {margin: B2-speed-band, at: drive/hp/box/clockwise/2}
  - {value: E7-bearing-life}
"""


class Study(InFolder):
    def write(self, *lines, vary=VARY, watch=WATCH, name="study.yaml"):
        self.copy_of(ROOT / "examples/bizjet.yaml")
        path = self.folder / name
        path.write_text("towershaft study: 1\ntitle: a test\ndrive: bizjet.yaml\n"
                        + "".join(line + "\n" for line in lines) + vary + watch)
        return path

    def refused(self, word, *lines, **parts):
        code, _, err = run("study", self.write(*lines, **parts))
        self.assertEqual(code, 2, err)
        self.assertIn(word, err)
        self.assertRegex(err, r"study\.yaml:\d+:\d+: ")

    # ---- the answer

    def test_answers_of_all_methods_follow_the_schema(self):
        path = ROOT / "docs/schema/study.schema.json"
        validator = jsonschema.Draft202012Validator(json.loads(path.read_text(encoding="utf-8")))
        for method in ("random", "one at a time", "sweep", "sobol"):
            told = answer("study", self.write(f"method: {method}", "samples: 6"))
            validator.validate(told)
            self.assertEqual(told["samples"], told["samples_due"])

    def test_examples_are_understood(self):
        self.assertGreaterEqual(len(STUDIES), 2)
        for study in STUDIES:
            code, out, err = run("study", study, "--sample", "0")
            self.assertEqual((code, err), (0, ""))
            self.assertIn("towershaft: 1", out)

    def test_threads_and_blocks_do_not_matter(self):
        study = self.write("samples: 60")
        pages = {run("study", study, "--json", "--threads", str(n)) for n in (1, 2, 5)}
        self.assertEqual(len(pages), 1)

    def test_a_sample_is_the_drive_file_that_check_judges(self):
        study, out = self.write("samples: 40"), self.folder / "o.sqlite"
        run("study", study, "-o", out)
        with sqlite3.connect(out) as base:
            rows = base.execute("SELECT id, in_1, in_3, out_2, state, findings FROM sample").fetchall()
            rules = dict(base.execute("SELECT id, rule || ' ' || address FROM finding").fetchall())
        self.assertEqual([row[0] for row in rows], list(range(40)))
        states = {"holds": 0, "does not hold": 1, "not computable": 2}
        for number, power, teeth, margin, state, findings in rows[::8]:
            drive = self.folder / "s.yaml"
            drive.write_text(run("study", study, "--sample", str(number))[1])
            code, text, _ = run("check", drive, "--json")
            told = json.loads(text)
            self.assertEqual(code, states[state])
            due = {f"{f['rule']} {f['address']}" for f in told["findings"]
                   if f["state"] == "open" and f["level"] != "note"}
            self.assertEqual({rules[int(n)] for n in findings.split()}, due)
            shaft = next(s for s in told["shafts"] if s["address"] == "drive/hp/box/clockwise/2")
            self.assertIn(f"teeth: {int(teeth)}, face: 14 mm, front: generator", drive.read_text())
            self.assertIsNotNone(shaft)
            self.assertTrue(30e3 < power < 45e3 and margin is not None)

    def test_one_at_a_time_agrees_with_set(self):
        study = self.write("method: one at a time", vary="vary:\n  - {at: " + FACE + ", law: uniform, "
                           "least: 10 mm, most: 14 mm, steps: 2}\n", watch="watch:\n  - {number: ':m_metal'}\n")
        told = answer("study", study)["watched"][0]
        mass = {}
        for face in ("10 mm", "14 mm"):
            copy = self.copy_of(ROOT / "examples/bizjet.yaml")
            self.assertEqual(run("set", copy, FACE, face)[0], 0)
            mass[face] = answer("check", copy)["mass"]["drive"]["value"]["value"]
        self.assertEqual(told["unit"], "kg")
        self.assertEqual(told["least"], mass["10 mm"])
        self.assertEqual(told["most"], mass["14 mm"])
        self.assertEqual(told["moved_by"][0]["value_at_least"], 0.01)

    def test_the_picture_shows_findings_and_numbers_of_every_method(self):
        for method in ("random", "one at a time", "sobol"):
            picture = self.folder / "s.svg"
            study = self.write(f"method: {method}", "samples: 8")
            self.assertEqual(run("study", study, "--picture", picture)[0], 0)
            self.assertGreater(len(picture.read_bytes()), 20000)
            subprocess.run(["xmllint", "--noout", str(picture)], check=True)
        code, _, err = run("study", study, "--picture", self.folder / "none")
        self.assertEqual(code, 2)
        self.assertIn("expected an ending", err)
        self.assertEqual(run("study", study, "--picture", self.folder / "x.dxf")[0], 2)

    def test_a_chance_is_the_share_of_the_samples_that_fail(self):
        told = answer("study", self.write("method: sweep", vary="vary:\n  - {at: drive/hp/box/clockwise/2/teeth, "
                                          "law: whole, least: 31, most: 40, steps: 10}\n"))
        band = told["watched"][1]
        self.assertEqual(told["samples"], 10)
        self.assertEqual(band["below_0"]["share"], 0.1 * sum(
            1 for n in range(10) if self.sample_margin(n) < 0))
        fired = next(f for f in told["findings"] if f["rule"] == "B2-speed-band")
        self.assertEqual(fired["samples"], round(10 * band["below_0"]["share"]))

    def sample_margin(self, number):
        drive = self.folder / "m.yaml"
        drive.write_text(run("study", self.folder / "study.yaml", "--sample", str(number))[1])
        open_ones = [f for f in answer("check", drive)["findings"] if f["rule"] == "B2-speed-band"]
        return -1 if open_ones else 1

    def test_a_sample_that_is_no_drive_is_counted_with_its_reason(self):
        study, out = self.write("samples: 20", vary="vary:\n  - {at: accessories/generator/mass, law: uniform, "
                                "least: -20 kg, most: 20 kg}\n"), self.folder / "o.sqlite"
        code, text, _ = run("study", study, "-o", out, "--json")
        told = json.loads(text)
        self.assertEqual(code, 2)
        self.assertGreater(told["not_understood"], 3)
        with sqlite3.connect(out) as base:
            says = base.execute("SELECT says FROM sample WHERE state = 'not understood'").fetchall()
        self.assertEqual(len(says), told["not_understood"])
        for (word,) in says:
            self.assertIn("expected", word)

    # ---- what is kept

    @staticmethod
    def kept(out):
        with closing(sqlite3.connect(out)) as base:
            if base.execute("PRAGMA integrity_check").fetchone() != ("ok",):
                raise AssertionError(f"{out} is damaged")
            tables = base.execute("SELECT count(*) FROM sqlite_master").fetchone()[0]
            return base.execute("SELECT count(*) FROM sample").fetchone()[0] if tables else 0

    def break_off(self, study, out, after, amid):
        """Kills it so long after its start, or `amid`: after it first told how many samples are kept.
        The number that it had told last."""
        ours, its = pty.openpty()
        told, begun = b"", time.monotonic()
        with subprocess.Popen([COMMAND, "study", study, "-o", out], cwd=ROOT,
                              stdout=subprocess.DEVNULL, stderr=its) as process:
            os.close(its)
            while (amid and b"samples" not in told) or time.monotonic() < begun + after:
                if select.select([ours], [], [], 0.002)[0]:
                    try:
                        told += os.read(ours, 65536)
                    except OSError:
                        break  # it is done, and the other end gone
                    if amid and told.count(b"samples") == 1:
                        begun = time.monotonic()
            process.send_signal(signal.SIGKILL)
        try:
            while more := os.read(ours, 65536):
                told += more
        except OSError:
            pass
        os.close(ours)
        return max([0, *map(int, re.findall(rb"(\d+) of 600 samples", told))])

    def test_a_kill_at_any_instant_loses_no_finished_sample_and_none_comes_twice(self):
        rounds = 2 * int(os.environ.get("TS_SOAK", "1"))
        study, whole = self.write("samples: 600"), self.folder / "whole.sqlite"
        due = run("study", study, "-o", whole, "--json")[1]
        rng, kills, busy, heard = random.Random(3), 0, 0, 0
        for _ in range(rounds):
            out, before = self.folder / "broken.sqlite", 0
            for kill in range(5):
                told = self.break_off(study, out, 0.01 + 0.3 * rng.random(), kill % 2 == 1)
                kills += 1
                if not out.exists():
                    continue
                count = self.kept(out)
                self.assertGreaterEqual(count, max(told, before))
                heard += told > before
                busy += before < count < 600
                before = count
            self.assertEqual(run("study", study, "-o", out, "--json")[1], due)
            with closing(sqlite3.connect(out)) as one, closing(sqlite3.connect(whole)) as other:
                rows = [base.execute("SELECT * FROM sample ORDER BY id").fetchall() for base in (one, other)]
            self.assertEqual(rows[0], rows[1])
            self.assertEqual(len(rows[0]), 600)
            out.unlink()
        self.assertGreater(min(busy, heard), 0)  # kills did come while samples were being kept and told
        if rounds > 2:
            print(f"{kills} kills, {busy} amid samples, {heard} after a count was told")

    def test_a_study_in_parts_of_time_ends_with_1_until_it_is_whole(self):
        study, out = self.write("samples: 3000"), self.folder / "o.sqlite"
        code, text, _ = run("study", study, "-o", out, "--within", "0.3 s", "--json")
        told = json.loads(text)
        self.assertEqual(code, 1)
        self.assertTrue(0 < told["samples"] < told["samples_due"])
        self.assertIn("NOT ALL SAMPLES", run("study", study, "-o", out, "--within", "0.1 s")[1])

    def ranks(self, count, *words, **how):
        env = {**os.environ, "OMPI_ALLOW_RUN_AS_ROOT": "1", "OMPI_ALLOW_RUN_AS_ROOT_CONFIRM": "1"}
        return subprocess.Popen(["mpirun", "--oversubscribe", "-n", str(count), COMMAND, "study", *map(str, words)],
                                cwd=ROOT, env=env, stdout=subprocess.PIPE, stderr=subprocess.PIPE, **how)

    def test_ranks_share_the_work_and_a_kill_of_all_loses_nothing(self):
        study, alone = self.write("samples: 400"), self.folder / "alone.sqlite"
        due = run("study", study, "-o", alone, "--json")[1]
        for count, after in ((2, None), (8, 1.5), (64, None)):
            out = self.folder / f"ranks{count}.sqlite"
            with self.ranks(count, study, "-o", out, "--json", start_new_session=True) as team:
                if after is not None:
                    time.sleep(after)
                    os.killpg(team.pid, signal.SIGKILL)
                told = team.communicate(timeout=150)[0].decode()
            told = told if after is None else run("study", study, "-o", out, "--json")[1]
            self.assertEqual(told, due, count)
            with sqlite3.connect(out) as one, sqlite3.connect(alone) as other:
                rows = [base.execute("SELECT * FROM sample ORDER BY id").fetchall() for base in (one, other)]
            self.assertEqual(rows[0], rows[1])

    def test_the_script_for_slurm_quotes_its_words(self):
        code, text, _ = run("study", self.write("samples: 4"), "-o", "it's.sqlite", "--slurm", "64")
        self.assertEqual(code, 0)
        self.assertIn("#SBATCH --ntasks=64", text)
        self.assertIn(f"srun '{pathlib.Path(COMMAND).resolve()}' study '", text)
        self.assertIn("-o 'it'\\''s.sqlite'", text)
        self.assertEqual(subprocess.run(["bash", "-n"], input=text.encode(), check=False).returncode, 0)
        self.assertEqual(run("study", self.write("samples: 4"), "--slurm", "64")[0], 2)

    def test_another_study_or_file_is_not_written_into(self):
        out = self.folder / "o.sqlite"
        run("study", self.write("samples: 8"), "-o", out)
        code, _, err = run("study", self.write("samples: 8", "seed: 2"), "-o", out)
        self.assertEqual(code, 2)
        self.assertIn("another study", err)
        with sqlite3.connect(out) as base:
            for key in ("study sha256", "drive sha256"):
                value, = base.execute("SELECT value FROM about WHERE key = ?", (key,)).fetchone()
                self.assertRegex(value, "^[0-9a-f]{64}$")
        study = self.write("samples: 8")
        self.assertEqual(run("study", study, "-o", out)[0], 0)
        self.assertEqual(run("set", self.folder / "bizjet.yaml", "accessories/generator/mass", "24 kg")[0], 0)
        code, _, err = run("study", study, "-o", out)
        self.assertEqual(code, 2)
        self.assertIn("another study, drive", err)
        other = self.folder / "notes.txt"
        other.write_text("not a base of anything\n" * 100)
        code, _, err = run("study", self.write("samples: 8"), "-o", other)
        self.assertIn(code, (2, 3))
        self.assertIn("notes.txt", err)
        self.assertEqual(other.read_text(), "not a base of anything\n" * 100)
        code, _, err = run("study", self.write("samples: 8"), "-o", self.folder / "no" / "o.sqlite")
        self.assertEqual(code, 3)
        self.assertIn("o.sqlite", err)

    # ---- what is not understood

    def test_bad_lines_are_named_with_what_is_near(self):
        self.refused("did you mean accessories/generator/mass?", vary=VARY.replace("r/mass", "r/mas"))
        self.refused("this is a part, not a value", vary=VARY.replace("generator/mass", "generator/power"))
        self.refused("not one number", vary=VARY.replace("generator/mass", "generator/serves"))
        self.refused("E1-tooth-bending?", watch=WATCH.replace("E1-tooth-bending", "E1-tooth-bendin"))
        self.refused("a mass", vary=VARY.replace("22 kg", "22 mm"))
        self.refused("least value is not below", vary=VARY.replace("22 kg", "29 kg"))
        self.refused("whole number stands there", vary=VARY.replace("whole", "uniform"))
        self.refused("this law has no mean", vary=VARY.replace("least: 22", "mean: 24 kg, least: 22"))
        self.refused("varies already", vary=VARY + VARY[6:])
        self.refused("the deviation is not above 0", vary=VARY.replace("6 %", "0 %"))
        self.refused("expected random, one at a time, sweep or sobol", "method: montecarlo")
        self.refused("there is no number called m_metl", watch="watch:\n  - {number: ':m_metl'}\n")
        self.refused("a rule", watch="watch:\n  - {number: ':m_metal', at: x}\n")

    def test_impossible_correlations_are_named(self):
        tie = "correlated:\n  - {of: accessories/generator/mass, with: %s, r: %s}\n"
        power = "accessories/generator/power/cruise"
        self.refused("an address of `vary`", watch=WATCH + tie % ("accessories/starter/mass", 0.5))
        self.refused("not positive definite", watch=WATCH + tie % (power, 0.9) + (
            "  - {of: accessories/generator/mass, with: drive/hp/box/clockwise/2/teeth, r: 0.9}\n"
            f"  - {{of: {power}, with: drive/hp/box/clockwise/2/teeth, r: -0.9}}\n"))
        for method in ("sobol", "sweep", "one at a time"):
            self.refused("only random samples", f"method: {method}", watch=WATCH + tie % (power, 0.5))
        self.refused("already", watch=WATCH + tie % (power, 0.5)
                     + f"  - {{of: {power}, with: accessories/generator/mass, r: -0.5}}\n")
        self.refused("with itself", watch=WATCH + tie % ("accessories/generator/mass", 0.5))

    def test_too_many_samples_and_other_files_are_refused(self):
        many = "vary:\n" + "".join(f"  - {{at: accessories/{a}/mass, law: uniform, least: 1 kg, most: 30 kg, "
                                   "steps: 1000}\n" for a in ("generator", "starter", "breather", "fuel pump"))
        self.refused("more than 1000000000 samples", "method: sweep", vary=many)
        code, _, err = run("study", ROOT / "examples/bizjet.yaml")
        self.assertEqual(code, 2)
        self.assertIn("this is a drive file", err)
        study = self.write("samples: 5")
        self.assertIn("from 0 to 4", run("study", study, "--sample", "5")[2])
        study.write_text(study.read_text().replace("bizjet.yaml", "bizjot.yaml"))
        code, _, err = run("study", study)
        self.assertEqual(code, 2)
        self.assertIn("bizjot.yaml", err)


if __name__ == "__main__":
    unittest.main()
