"""A script of this folder, run in Debian's chromium."""
import os
import pathlib
import subprocess
import sys
import tempfile
import unittest

import webroom

COMMAND = os.environ.get("TOWERSHAFT", str(webroom.ROOT / "build/release/towershaft"))


class Browser(unittest.TestCase):
    def run_script(self, name):
        place = webroom.prepare()
        with tempfile.TemporaryDirectory() as folder:
            done = subprocess.run(["node", pathlib.Path(__file__).with_name(name), place, COMMAND,
                                   webroom.ROOT, folder], capture_output=True, text=True, timeout=850, check=False)
        sys.stdout.write(done.stdout)
        self.assertEqual(done.returncode, 0, done.stdout + done.stderr)
