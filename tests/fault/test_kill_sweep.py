# ctest: release-only    (the sanitizers' own calls would be counted)
# ctest: timeout=7200
"""Is every file whole or absent, whenever the program is killed?

First the kill meets each call that concerns the file (strace counts them), then random moments.
What stood there stands there, whole, or the new file does; at most the temporary file lies beside
it, whose name says so, and the next run is not hindered by it.  `make test` tries a few commands
and moments, TS_SOAK every command and 500 moments.
"""
import os
import pathlib
import random
import re
import subprocess
import tempfile
import time
import unittest

from injecting import calls_on, names_in, strace
from writers import QUICK, SLOW, STEP_WRITER

SOAK = "TS_SOAK" in os.environ
MOMENTS = 500 if SOAK else 6


class TestKillSweep(unittest.TestCase):
    def setUp(self):
        self.keeper = tempfile.TemporaryDirectory()
        self.place, self.round = pathlib.Path(self.keeper.name), 0

    def tearDown(self):
        self.keeper.cleanup()

    def folder(self, writer):
        self.round += 1
        folder = self.place / f"out{self.round:05}"
        folder.mkdir()
        writer.lay(folder)
        return folder

    @staticmethod
    def read(folder):
        return {name: (folder / name).read_bytes() for name in names_in(folder)}

    def whole(self, writer):
        """What it writes unhindered, the calls that it takes, and the time."""
        folder, begun = self.folder(writer), time.monotonic()
        done = strace(self.place / "log", writer.words(folder))
        self.assertIn(done.code, writer.rc, done.said)
        return self.read(folder), calls_on(folder, done.log), time.monotonic() - begun

    def judge(self, writer, folder, whole, before, what):
        """Returns whether a temporary file was left."""
        left = self.read(folder)
        beside = {name for name in left if re.fullmatch(r".*\.[A-Za-z0-9]{6}", name)
                  and name[:-7] in whole}
        for name, data in left.items():
            if name not in beside:
                self.assertIn(data, (before.get(name), whole.get(name)), (what, name))
        for name in before:
            self.assertIn(name, left, what)
        self.assertLessEqual(len(beside), 1, what)
        self.assertLessEqual(set(left) - beside, set(whole) | set(before), what)
        return bool(beside)

    def test_a_kill_at_each_call(self):
        for writer in QUICK + SLOW if SOAK else QUICK[:1]:
            whole, calls, _ = self.whole(writer)
            for call in calls:
                if not SOAK and call.name not in ("write", "fsync", "rename"):
                    continue
                folder = self.folder(writer)
                before, words = self.read(folder), writer.words(folder)
                done = strace(self.place / "log", words,
                              f"{call.name}:signal=KILL:when={call.number}")
                what = (writer.name, call)
                # The kill may meet the process that helps alone: the command tells that, and with 3.
                self.assertIn(done.code, (-9, 0, 3) if writer.moving else (-9,), what)
                if done.code == 3:
                    self.assertIn(pathlib.Path(STEP_WRITER).name, done.said, what)
                left = self.judge(writer, folder, whole, before, what)
                if left and not before:  # and what was left hinders nobody
                    again = subprocess.run(words, capture_output=True, check=False)
                    self.assertIn(again.returncode, writer.rc, what)
                    self.assertLessEqual(whole.items(), self.read(folder).items(), what)

    def test_a_kill_at_any_moment(self):
        rng = random.Random(20261126)
        writers = QUICK + (SLOW if SOAK else [])
        known = [self.whole(writer) for writer in writers]
        killed = 0
        for moment in range(MOMENTS):
            writer, (whole, _, took) = writers[moment % len(writers)], known[moment % len(writers)]
            folder = self.folder(writer)
            before = self.read(folder)
            with subprocess.Popen(writer.words(folder), stdout=subprocess.DEVNULL,
                                  stderr=subprocess.DEVNULL) as process:
                time.sleep(took * 1.1 * rng.random())
                process.kill()
            killed += process.returncode == -9
            self.judge(writer, folder, whole, before, (writer.name, moment))
        self.assertGreater(killed, 0)
        print(f"kills: {killed} of {MOMENTS} met a running command")


if __name__ == "__main__":
    unittest.main()
