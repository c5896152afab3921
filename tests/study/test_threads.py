# ctest: threads-only    (the answers for any number of threads are held by tests/apps)
# ctest: timeout=3600
"""Do the commands that use threads run without a race?  Only under the thread sanitizer (`make tsan`).

A race ends the command with 66 and a report on standard error.
"""
import os
import pathlib
import subprocess
import sys
import tempfile
import threading
import unittest

ROOT = pathlib.Path(os.environ.get("TS_SOURCE", pathlib.Path(__file__).resolve().parents[2]))
COMMAND = os.environ.get("TOWERSHAFT", str(ROOT / "build/tsan/towershaft"))
sys.path.insert(0, str(ROOT / "tests/serve"))
from serving import Server  # noqa: E402

STUDY = """towershaft study: 1
title: many threads
drive: trainer.yaml
samples: 24
vary:
  - {at: accessories/fuel pump/mass, law: uniform, least: 4 kg, most: 5 kg}
watch:
  - {margin: E1-tooth-bending}
"""


class TestThreads(unittest.TestCase):
    def setUp(self):
        self.keeper = tempfile.TemporaryDirectory()
        self.folder = pathlib.Path(self.keeper.name)
        (self.folder / "trainer.yaml").write_bytes((ROOT / "examples/trainer.yaml").read_bytes())

    def tearDown(self):
        self.keeper.cleanup()

    def quiet(self, *words, codes=(0, 1)):
        done = subprocess.run([COMMAND, *map(str, words)], capture_output=True, text=True,
                              timeout=1200, check=False)
        self.assertNotIn("ThreadSanitizer", done.stderr)
        self.assertIn(done.returncode, codes, done.stderr)

    def test_study(self):
        (self.folder / "study.yaml").write_text(STUDY, encoding="utf-8")
        self.quiet("study", self.folder / "study.yaml", "--threads", "8", "-o",
                   self.folder / "o.sqlite", "--progress")

    def test_necks(self):
        self.quiet("necks", self.folder / "trainer.yaml", "--threads", "8", "--samples", "20000",
                   codes=(0, 1, 2))

    def test_arrange(self):
        self.quiet("arrange", self.folder / "trainer.yaml", "--threads", "8", "--within", "60 s",
                   "--answers", "2")

    def test_server_with_many_askers(self):
        server = Server(self.folder / "trainer.yaml")

        def ask():
            for _ in range(3):
                server.state()
                server.act(("revision", "next"))
                server.get("/api/start")
                server.get("/api/seize?accessory=fuel%20pump")

        askers = [threading.Thread(target=ask) for _ in range(8)]
        for one in askers:
            one.start()
        for one in askers:
            one.join()
        took, code = server.stop()  # which fails on a word of a sanitizer
        self.assertEqual(code, 0)
        self.assertLess(took, 20.0)


if __name__ == "__main__":
    unittest.main()
