# ctest: release-only
"""Can what is installed be used by somebody who has nothing else, and be taken away again?"""

import os
import pathlib
import re
import subprocess
import tempfile
import unittest

ROOT = pathlib.Path(__file__).resolve().parents[2]
BUILD = pathlib.Path(os.environ.get("TS_BUILD", ROOT / "build" / "release"))


def run(*words, **more):
    return subprocess.run([str(w) for w in words], check=True, capture_output=True, text=True,
                          **more).stdout


class Installed(unittest.TestCase):
    @classmethod
    def setUpClass(cls):
        cls.keep = tempfile.TemporaryDirectory()
        cls.prefix = pathlib.Path(cls.keep.name) / "prefix"
        run("cmake", "--install", BUILD, "--prefix", cls.prefix)
        manifest = (BUILD / "install_manifest.txt").read_text().split("\n")
        cls.files = [pathlib.Path(line) for line in manifest if line]
        cls.library = next(cls.prefix.rglob("libtowershaft.so")).parent
        cls.environment = dict(os.environ, PKG_CONFIG_PATH=str(cls.library / "pkgconfig"),
                               LD_LIBRARY_PATH=str(cls.library))

    @classmethod
    def tearDownClass(cls):
        cls.keep.cleanup()

    def test_every_file_lies_below_the_prefix_and_nothing_is_left_when_they_go(self):
        self.assertGreater(len(self.files), 20)
        for path in self.files:
            self.assertTrue(path.is_relative_to(self.prefix), path)
        there = {p for p in self.prefix.rglob("*") if not p.is_dir()}
        self.assertEqual(there, set(self.files))

    def test_headers_manual_and_licence_are_there(self):
        names = {p.name for p in self.files}
        self.assertLessEqual({p.name for p in (ROOT / "include" / "towershaft").glob("*.h")}, names)
        self.assertLessEqual({"towershaft", "towershaft.1", "towershaft.pc", "LICENSE"}, names)

    def test_the_example_in_c_builds_against_it_and_runs(self):
        program = pathlib.Path(self.keep.name) / "margins"
        flags = run("pkg-config", "--cflags", "--libs", "towershaft", env=self.environment).split()
        # pkg-config has the prefix that was configured; the files lie in that of this test.
        flags = [f"-I{self.prefix}/include", f"-L{self.library}"] + \
            [f for f in flags if f.startswith("-l")]
        run("cc", "-std=c17", "-Wall", "-Wextra", "-Werror", ROOT / "examples" / "c" / "margins.c",
            "-o", program, *flags)
        said = run(program, "bizjet.yaml", "drive/hp/box/input/face", "17 mm",
                   cwd=ROOT / "examples", env=self.environment)
        self.assertIn("Preliminary design aid", said)
        self.assertEqual(len(re.findall(r"^(bizjet\.yaml|with the change): holds$", said,
                                        re.MULTILINE)), 2, said)

    def test_its_name_is_that_of_its_version(self):
        told = run("objdump", "-p", self.library / "libtowershaft.so")
        self.assertIn("SONAME               libtowershaft.so.0\n", told)


if __name__ == "__main__":
    unittest.main()
