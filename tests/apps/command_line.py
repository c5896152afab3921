"""How do the tests run the command?  Shared by the tests of this folder."""
import json
import os
import pathlib
import subprocess
import tempfile
import unittest

ROOT = pathlib.Path(os.environ.get("TS_SOURCE", pathlib.Path(__file__).resolve().parents[2]))
COMMAND = os.environ.get("TOWERSHAFT", str(ROOT / "build/release/towershaft"))
EXAMPLES = sorted((ROOT / "examples").glob("*.yaml"))
TRAPS = sorted((ROOT / "examples/traps").glob("*.yaml"))
TODAY = "2026-06-30"


def run(*words, stdin=None, cwd=ROOT, env=None):
    """Exit code, standard output, standard error of the command."""
    done = subprocess.run([COMMAND, *map(str, words)], input=stdin, capture_output=True, cwd=cwd,
                          env={**os.environ, **(env or {})}, timeout=200, check=False)
    return done.returncode, done.stdout.decode("utf-8"), done.stderr.decode("utf-8")


def answer(*words):
    """The JSON that the command answers."""
    _, out, _ = run(*words, "--json")
    return json.loads(out)


def quoted(name):
    """A text as YAML has it in double quotes, whatever it holds."""
    return '"' + name.replace("\\", "\\\\").replace('"', '\\"') + '"'


class InFolder(unittest.TestCase):
    """A test with a folder of its own."""

    def setUp(self):
        self.keeper = tempfile.TemporaryDirectory()
        self.folder = pathlib.Path(self.keeper.name)

    def tearDown(self):
        self.keeper.cleanup()

    def copy_of(self, path):
        copy = self.folder / path.name
        copy.write_bytes(path.read_bytes())
        return copy
