# ctest: release-only
"""Does the bill of materials name all that is linked and built in, with a licence that will do?"""

import json
import os
import pathlib
import re
import subprocess
import sys
import unittest

ROOT = pathlib.Path(__file__).resolve().parents[2]
BUILD = pathlib.Path(os.environ.get("TS_BUILD", ROOT / "build" / "release"))
sys.path.insert(0, str(ROOT / "tools"))
sys.dont_write_bytecode = True

import sbom  # noqa: E402

# Which row of docs/dependencies.md a shared object belongs to.
OBJECTS = {"libmicrohttpd": "libmicrohttpd", "libjansson": "jansson", "libfyaml": "libfyaml",
           "libpangocairo-1.0": "pango", "libpango-1.0": "pango", "libgobject-2.0": "pango",
           "libglib-2.0": "pango", "libcairo": "cairo", "libfontconfig": "fontconfig",
           "liblapacke": "LAPACKE", "libopenblas": "LAPACKE", "libsundials": "SUNDIALS",
           "libsqlite3": "SQLite", "libm": "glibc", "libc": "glibc", "libmpi": "Open MPI",
           "ld-linux-x86-64": "glibc"}


class Bill(unittest.TestCase):
    def setUp(self):
        self.bill = json.loads(sbom.TARGET.read_text())
        self.names = [one["name"] for one in self.bill["packages"]]

    def test_it_is_that_of_this_tree(self):
        self.assertEqual(self.bill, sbom.bill(), "renew it: python3 tools/sbom.py --write")

    def test_every_object_that_is_linked_is_named(self):
        for program in ("towershaft", "libtowershaft.so"):
            told = subprocess.run(["readelf", "-d", str(BUILD / program)], check=True,
                                  capture_output=True, text=True).stdout
            needed = re.findall(r"Shared library: \[(.*?)\.so", told)
            self.assertGreater(len(needed), 5)
            for name in needed:
                row = next((r for n, r in OBJECTS.items() if name.startswith(n)), None)
                self.assertIsNotNone(row, f"{name} is in no row of docs/dependencies.md")
                self.assertTrue(any(row in one for one in self.names), name)

    def test_nothing_that_is_linked_asks_for_our_source(self):
        for one in self.bill["packages"]:
            for licence in re.split(r" OR | AND ", one["licenseDeclared"]):
                self.assertFalse(licence.startswith(("GPL-", "AGPL-")), one["name"])

    def test_every_relation_has_both_its_ends(self):
        known = {one["SPDXID"] for one in self.bill["packages"]} | {"SPDXRef-DOCUMENT"}
        self.assertEqual(len(known), len(self.bill["packages"]) + 1)
        for one in self.bill["relationships"]:
            self.assertLessEqual({one["spdxElementId"], one["relatedSpdxElement"]}, known)


if __name__ == "__main__":
    unittest.main()
