"""Does docs/server.md tell of every route and only of tests that are there?"""
# ctest: release-only
import pathlib
import re
import unittest

from serving import ROOT, routes

PAGE = (ROOT / "docs/server.md").read_text()
HERE = pathlib.Path(__file__).parent


class Manual(unittest.TestCase):
    def test_every_route_is_told_of(self):
        for method, path, _, _ in routes():
            self.assertIn(f"`{method} {path}`", PAGE)

    def test_no_route_is_told_of_that_is_not_there(self):
        known = {f"{method} {path}" for method, path, _, _ in routes()}
        self.assertEqual(set(re.findall(r"`((?:GET|POST) /[^`]*)`", PAGE)), known)

    def test_every_threat_has_a_test_that_is_there(self):
        rows = [line for line in PAGE.partition("## Threats")[2].splitlines() if line.startswith("| ")][1:]
        self.assertGreater(len(rows), 10)
        tests = "".join(path.read_text() for path in HERE.glob("test_*.py"))
        for row in rows:
            named = re.findall(r"`(?:tests/serve/)?(test_\w+)(\.py)?`", row.split("|")[3])
            self.assertTrue(named, row)
            for name, ending in named:
                with self.subTest(name):
                    self.assertTrue((HERE / f"{name}.py").is_file() if ending else f"def {name}(" in tests)


if __name__ == "__main__":
    unittest.main()
