# ctest: release-only    (the sanitizers' own calls would be counted)
# ctest: timeout=7200
"""Does a study lose or repeat a sample when its file cannot be written, or when it is killed there?

Each call on the file of the samples and on its journal fails once in turn, and then from there on;
then the program is killed at each of them.  The same command without a fault goes on from what is
kept, and its samples are those of a run that nothing disturbed, row for row.  `make test` tries
every so many calls, TS_SOAK each.
"""
import os
import pathlib
import sqlite3
import subprocess
import tempfile
import unittest

from injecting import LINE, strace
from writers import BIZJET, COMMAND, DAY

SOAK = "TS_SOAK" in os.environ
SAMPLES = 48
CHANGING = ("openat", "pwrite64", "write", "fdatasync", "fsync", "ftruncate", "unlink")
ERRORS = {"pwrite64": "ENOSPC", "write": "ENOSPC", "fdatasync": "EIO", "fsync": "EIO",
          "ftruncate": "EIO", "unlink": "EIO", "openat": "EACCES"}
STUDY = f"""towershaft study: 1
title: a disk that breaks
drive: bizjet.yaml
samples: {SAMPLES}
vary:
  - {{at: accessories/generator/mass, law: uniform, least: 22 kg, most: 27 kg}}
watch:
  - {{margin: E1-tooth-bending}}
"""


class TestStudyFaults(unittest.TestCase):
    def setUp(self):
        self.keeper = tempfile.TemporaryDirectory()
        self.place = pathlib.Path(self.keeper.name)
        (self.place / "bizjet.yaml").write_bytes(BIZJET.read_bytes())
        (self.place / "study.yaml").write_text(STUDY, encoding="utf-8")
        self.out, self.log = self.place / "o.sqlite", self.place / "log"
        self.words = [COMMAND, "study", self.place / "study.yaml", "-o", self.out, "--json",
                      "--today", DAY, "--threads", "1"]
        done = self.under()
        self.assertEqual(done.code, 0, done.said)
        self.due, self.rows = done.told, self.kept()
        self.assertEqual(len(self.rows), SAMPLES)
        self.calls = self.numbered(done.log)
        self.assertGreater(len(self.calls), 20)

    def tearDown(self):
        self.keeper.cleanup()

    def under(self, inject=None):
        beside = [self.out, f"{self.out}-journal"]
        return strace(self.log, self.words, inject, CHANGING, beside)

    def kept(self):
        with sqlite3.connect(self.out) as base:
            self.assertEqual(base.execute("PRAGMA integrity_check").fetchone(), ("ok",))
            tables = base.execute("SELECT count(*) FROM sqlite_master").fetchone()[0]
            return base.execute("SELECT * FROM sample ORDER BY id").fetchall() if tables else []

    @staticmethod
    def numbered(log):
        """Every call on the two files: its name, and the how-manieth of that name it is."""
        seen, found = {}, []
        for name in (match.group(2) for match in map(LINE.match, log.splitlines()) if match):
            seen[name] = seen.get(name, 0) + 1
            found.append((name, seen[name]))
        return found

    def clear(self):
        for path in (self.out, pathlib.Path(f"{self.out}-journal")):
            path.unlink(missing_ok=True)

    def goes_on(self, what):
        """Nothing that was kept is lost, and the rest comes to it."""
        if self.out.exists():
            self.assertLessEqual(set(self.kept()), set(self.rows), what)
        again = subprocess.run(self.words, capture_output=True, check=False)
        self.assertEqual(again.returncode, 0, (what, again.stderr))
        self.assertEqual(again.stdout, self.due, what)
        self.assertEqual(self.kept(), self.rows, what)

    def chosen(self, least):
        return self.calls if SOAK else self.calls[::max(1, len(self.calls) // least)]

    def test_a_call_that_fails_is_told_and_loses_nothing(self):
        told = 0
        for name, number in self.chosen(3):
            for more in ("", "+") if SOAK else ("+",):
                self.clear()
                what = f"{name}:error={ERRORS[name]}:when={number}{more}"
                done = self.under(what)
                if done.code == 0:  # SQLite may do without: of a folder's sync, for one
                    self.assertEqual(done.told, self.due, what)
                    self.assertEqual(self.kept(), self.rows, what)
                    continue
                told += 1
                self.assertEqual(done.code, 3, (what, done.said))
                self.assertIn("o.sqlite", done.said, what)
                self.goes_on(what)
        self.assertGreater(told, 0)

    def test_a_kill_at_a_call_loses_nothing(self):
        killed = 0
        for name, number in self.chosen(2):
            self.clear()
            what = f"{name}:signal=KILL:when={number}"
            done = self.under(what)
            # Samples are kept by the clock: a quicker run has fewer calls than the first had.
            self.assertIn(done.code, (-9, 0), (what, done.said))
            killed += done.code == -9
            self.goes_on(what)
        self.assertGreater(killed, 0)
        print(f"kills: {killed} of {len(self.chosen(2))} calls were reached")


if __name__ == "__main__":
    unittest.main()
