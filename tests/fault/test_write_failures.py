# ctest: release-only    (the sanitizers' own calls would be counted)
# ctest: cost=4
# ctest: timeout=7200
"""Does a disk that is full, or broken, leave no half file and no lie?

Every call that concerns a file that is written fails once in turn, in every command that writes.
The exit code is then not 0, the message names the file, what lay there lies there still, whole, and
nothing is left beside it.  `make test` tries a few commands, TS_SOAK all (tests/fault/writers.py).
"""
import os
import pathlib
import resource
import signal
import subprocess
import tempfile
import unittest

from injecting import calls_on, names_in, strace, was_hit
from writers import QUICK, SLOW

SOAK = "TS_SOAK" in os.environ
ERRORS = {"write": ("ENOSPC", "EIO", "EDQUOT"), "fsync": ("EIO",), "close": ("EIO",),
          "rename": ("ENOSPC", "EROFS"), "openat": ("ENOSPC", "EMFILE"), "fchmod": ("EIO",)}
SAYS = {"ENOSPC": "No space left on device", "EIO": "Input/output error",
        "EDQUOT": "Disk quota exceeded", "EROFS": "Read-only file system",
        "EMFILE": "Too many open files"}


class Case:
    """A writer in a folder of its own, and what it leaves there when nothing fails."""

    def __init__(self, writer, keeper):
        self.writer, self.keeper, self.round = writer, pathlib.Path(keeper), 0
        folder = self.fresh()
        done = strace(self.keeper / "log", writer.words(folder))
        assert done.code in writer.rc, (writer.name, done.code, done.said)
        self.whole = self.read(folder)
        assert self.whole, writer.name
        self.calls = calls_on(folder, done.log)

    def fresh(self):
        self.round += 1
        # Folders of one length: the calls, and the answers that tell a path, stay alike.
        folder = self.keeper / f"out{self.round:05}"
        folder.mkdir()
        self.writer.lay(folder)
        self.before = self.read(folder)
        return folder

    @staticmethod
    def read(folder):
        return {name: (folder / name).read_bytes() for name in names_in(folder)}


class TestWriteFailures(unittest.TestCase):
    def cases(self):
        for writer in QUICK + (SLOW if SOAK else []):
            with tempfile.TemporaryDirectory() as keeper:
                yield Case(writer, keeper)

    def nothing_half(self, case, folder, what):
        """Every file is as it was, or as it is when nothing fails; none came beside them."""
        left = case.read(folder)
        self.assertLessEqual(set(left), set(case.whole) | set(case.before), what)
        for name, data in left.items():
            self.assertIn(data, (case.before.get(name), case.whole.get(name)), (what, name))
        for name in case.before:
            self.assertIn(name, left, what)

    def test_every_call_that_fails_is_told(self):
        for case in self.cases():
            opened = 0
            for call in case.calls:
                errors = ERRORS.get(call.name, ())
                opened += call.name == "rename"
                for error in errors if SOAK else errors[:1]:
                    self.one_failure(case, call, error, opened > 0)

    def one_failure(self, case, call, error, renamed):
        folder = case.fresh()
        done = strace(case.keeper / "log", case.writer.words(folder),
                      f"{call.name}:error={error}:when={call.number}")
        what = (case.writer.name, call, error, done.said)
        if case.writer.moving and not was_hit(folder, done.log):
            return
        self.assertTrue(was_hit(folder, done.log), what)
        self.nothing_half(case, folder, what)
        if call.name == "close" and done.code in case.writer.rc:
            # What was read, and a folder, is closed without a look: nothing can be lost there.
            self.assertEqual(case.read(folder), case.whole, what)
            return
        self.assertNotIn(done.code, (0, 1), what)
        self.assertIn(SAYS[error], done.said, what)
        self.assertTrue(any(name.removeprefix("./") in done.said
                            for name in {**case.whole, **case.before}), what)
        if not renamed:
            self.assertEqual(case.read(folder), case.before, what)
        if "nothing was changed" in done.said and len(case.whole) == 1:
            self.assertEqual(case.read(folder), case.before, what)

    def test_a_write_that_was_interrupted_goes_on(self):
        for case in self.cases():
            for call in case.calls:
                if call.name == "write":
                    folder = case.fresh()
                    done = strace(case.keeper / "log", case.writer.words(folder),
                                  f"write:error=EINTR:when={call.number}")
                    if case.writer.moving and not was_hit(folder, done.log):
                        continue
                    self.assertTrue(was_hit(folder, done.log), case.writer.name)
                    self.assertIn(done.code, case.writer.rc, done.said)
                    self.assertEqual(case.read(folder), case.whole)

    def test_a_short_write_and_then_none(self):
        """The kernel itself writes the first half of a file, and refuses the rest (EFBIG)."""
        for case in self.cases():
            most = max(map(len, case.whole.values())) // 2

            def limit(most=most):
                signal.signal(signal.SIGXFSZ, signal.SIG_IGN)
                resource.setrlimit(resource.RLIMIT_FSIZE, (most, most))

            folder = case.fresh()
            done = subprocess.run(case.writer.words(folder), capture_output=True, text=True,
                                  preexec_fn=limit, restore_signals=False, check=False)
            self.assertNotIn(done.returncode, (0, 1), done.stderr)
            self.assertIn("File too large", done.stderr)
            self.nothing_half(case, folder, done.stderr)


if __name__ == "__main__":
    unittest.main()
