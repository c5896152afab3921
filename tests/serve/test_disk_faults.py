# ctest: release-only    (the sanitizers' own calls would be counted)
# ctest: timeout=7200
"""What becomes of an act when the disk is full or broken, and of the journal that tells of it?

Each call on the journal and on the new file fails once in turn, or from there on.  An act that is
answered as done is in the file; any other left the file, the page and the journal as they were, and
says so.  A later act is taken, and the next sitting finds text and history whole.  `make test` tries
a few calls, TS_SOAK each.
"""
import os
import pathlib
import tempfile
import time
import unittest

from serving import BIZJET, Server

SOAK = "TS_SOAK" in os.environ
TOOTH = "drive/hp/box/clockwise/2/teeth"
CALLS = ("openat2", "write", "pwrite64", "fsync", "fdatasync", "fchmod", "ftruncate", "close",
         "renameat2", "renameat", "unlinkat")
ERRORS = {"write": ("ENOSPC", "EIO"), "pwrite64": ("ENOSPC", "EIO"), "fdatasync": ("EIO",),
          "fsync": ("EIO",), "fchmod": ("EIO",), "close": ("EIO",), "openat2": ("ENOSPC",),
          "renameat2": ("EIO", "ENOSPC", "EINVAL"), "unlinkat": ("EIO",)}
FEW = [("write:error=ENOSPC:when=1",), ("pwrite64:error=ENOSPC:when=2",),
       ("write:error=ENOSPC:when=1+", "pwrite64:error=ENOSPC:when=3+")]


class TestDiskFaults(unittest.TestCase):
    def setUp(self):
        self.keeper = tempfile.TemporaryDirectory()
        self.round = 0

    def tearDown(self):
        self.keeper.cleanup()

    def begin(self, *injected):
        """A drive in a folder of its own, and a server whose calls on the two files fail so."""
        self.round += 1
        folder = pathlib.Path(self.keeper.name) / f"at{self.round:04}"
        folder.mkdir()
        file, self.log = folder / "drive.yaml", folder.with_suffix(".log")
        file.write_bytes(BIZJET.read_bytes())
        below = ["strace", "-D", "-f", "-s", "16", "-o", str(self.log), "-e", "trace=" + ",".join(CALLS)]
        for name in (".drive.yaml.towershaft-journal", ".drive.yaml.towershaft-new"):
            below += ["-P", name, "-P", str(folder / name)]
        for fault in injected:
            below += ["-e", "inject=" + fault]
        return file, Server(file, below=below)

    def calls_of_an_act(self):
        """Each call between the opening of the journal and its close, with its number."""
        _, server = self.begin()
        self.assertEqual(server.act((TOOTH, "37")).status, 200)
        server.stop()
        deadline = time.monotonic() + 10
        while "exited with" not in (told := self.log.read_text()) and time.monotonic() < deadline:
            time.sleep(0.02)
        names = [line.split()[1].split("(")[0] for line in told.splitlines() if "(" in line]
        acted = [(name, names[:at + 1].count(name)) for at, name in enumerate(names)]
        begun = acted.index(("unlinkat", 1))  # of what an earlier end may have left
        return acted[begun:-1]

    def test_an_act_is_whole_or_told(self):
        faults = list(FEW)
        if SOAK:
            for name, number in self.calls_of_an_act():
                for error in ERRORS.get(name, ()):
                    faults += [(f"{name}:error={error}:when={number}",),
                               (f"{name}:error={error}:when={number}+",)]
                    if name != "pwrite64":  # and the journal cannot take the act back either
                        faults.append((f"{name}:error={error}:when={number}+",
                                       "pwrite64:error=ENOSPC:when=3+"))
        told = sum(self.one(fault) for fault in faults)
        self.assertGreater(told, 0)

    def one(self, fault):
        """Was the act refused?"""
        file, server = self.begin(*fault)
        try:
            before = file.read_bytes()
            answer = server.act((TOOTH, "37"))
            done = answer.status == 200
            now = file.read_bytes()
            self.assertIn("(INJECTED)", self.log.read_text(), fault)
            self.assertEqual(now != before, done, (fault, answer.status, answer.body[:200]))
            self.assertEqual(server.state()["text"].encode(), now, fault)
            if not done:
                self.assertIn(answer.status, (500, 507), fault)
                self.assertIn(b"saved", answer.body, fault)
            if "+" not in "".join(fault):
                self.assertEqual(server.act((TOOTH, "38")).status, 200, fault)
                self.assertEqual(server.state()["text"].encode(), file.read_bytes(), fault)
                now = file.read_bytes()
        finally:
            server.stop()
        left = {path.name for path in file.parent.iterdir()}
        self.assertLessEqual(left, {"drive.yaml", ".drive.yaml.towershaft-journal",
                                    ".drive.yaml.towershaft-new"}, fault)
        again = Server(file)
        try:
            self.assertEqual(file.read_bytes(), now, fault)
            self.assertEqual(again.state()["text"].encode(), now, fault)
            self.assertEqual(again.act((TOOTH, "39")).status, 200, fault)
            self.assertEqual(again.step("undo").status, 200, fault)
            self.assertEqual(file.read_bytes(), now, fault)
        finally:
            again.stop()
        return not done

    def test_a_journal_that_cannot_be_begun_is_told_before_anything_is_shown(self):
        for fault in ("openat2:error=EACCES:when=1", "pwrite64:error=ENOSPC:when=1",
                      "fdatasync:error=EIO:when=1")[:3 if SOAK else 1]:
            with self.assertRaisesRegex(AssertionError, "drive.yaml: .*(journal|Permission denied)"):
                self.begin(fault)


if __name__ == "__main__":
    unittest.main()
