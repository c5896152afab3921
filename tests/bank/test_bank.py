#!/usr/bin/env python3
# ctest: cost=140    (under the sanitizers; a few seconds as people run it)
"""Does the bank runner judge published cases, and does it see when one is wrong?

Runs build/.../towershaft-bank on the committed cases, on tampered ones, on cases with numbers that
it has never seen, and on files that are no banks.
"""
import copy
import json
import math
import os
import re
import subprocess
import sys
import tempfile
import unittest

SOURCE = os.environ.get("TS_SOURCE", ".")
RUNNER = os.path.join(os.environ.get("TS_BUILD", "build/release"), "towershaft-bank")
FILES = ["gears.json", "elements.json", "systems.json"]
LAST = re.compile(r"^(\d+) agree, (\d+) differ, (\d+) not covered$")


def run(*paths):
    done = subprocess.run([RUNNER, *paths], capture_output=True, text=True, check=False)
    return done.returncode, done.stdout, done.stderr


def run_cases(cases):
    with tempfile.TemporaryDirectory() as room:
        path = os.path.join(room, "cases.json")
        with open(path, "w", encoding="utf-8") as out:
            json.dump({"cases": cases}, out)
        return run(path)


def run_text(text):
    with tempfile.TemporaryDirectory() as room:
        path = os.path.join(room, "cases.json")
        with open(path, "wb") as out:
            out.write(text)
        return run(path)


def reference(name):
    with open(os.path.join(SOURCE, "tests/reference", name), encoding="utf-8") as source:
        return json.load(source)["cases"]


def verdicts(text):
    """Identity of each case -> its verdict."""
    found = {}
    for line in text.splitlines():
        match = re.match(r"^(agrees|differs|not covered)\s+(\S+)", line)
        if match:
            found[match.group(2)] = match.group(1)
    return found


def differences(text):
    """Identity of each case that differs -> the names of its values that do, as they stand."""
    found, names = {}, []
    for line in text.splitlines():
        if line.startswith("differs"):
            names = found.setdefault(line.split()[1], [])
        elif match := re.match(r"^\s+(\S+): .* computed, .* published, tolerance", line):
            names.append(match.group(1))
    return found


def counts(text):
    return tuple(int(n) for n in LAST.match(text.splitlines()[-1]).groups())


def own_case(binds, inputs, expected, **more):
    """A case made here: inputs and expected are name -> (value, unit[, tolerance])."""
    case = {
        "id": "own-" + binds, "binds": binds, "topic": "own", "title": "own", "method": "own",
        "source": "worked out in this test", "provenance": "derived", "agrees": True, "notes": "",
        "inputs": {k: {"value": v[0], "unit": v[1], "symbol": k} for k, v in inputs.items()},
        "expected": {k: {"value": v[0], "unit": v[1], "tol_rel": v[2] if len(v) > 2 else 1e-9}
                     for k, v in expected.items()},
    }
    case.update(more)
    return case


class Committed(unittest.TestCase):
    @classmethod
    def setUpClass(cls):
        paths = [os.path.join(SOURCE, "tests/reference", name) for name in FILES]
        cls.code, cls.out, cls.err = run(*paths)
        cls.found = verdicts(cls.out)

    def test_no_published_case_differs(self):
        self.assertEqual(self.code, 0, self.out + self.err)
        agree, differ, _ = counts(self.out)
        self.assertEqual(differ, 0)
        self.assertGreaterEqual(agree, 24)
        self.assertRegex(self.out, r"from memory, not counted below: \d+ agree, 0 differ")

    def test_all_geometry_is_covered(self):
        for case in reference("gears.json"):
            if case["topic"] == "1 geometry":
                self.assertEqual(self.found[case["id"]], "agrees")

    def test_every_case_has_one_line_with_its_source(self):
        for name in FILES:
            for case in reference(name):
                self.assertIn(case["id"], self.found)
                self.assertIn("[%s: %s" % (case["provenance"], case["source"][:20]), self.out)

    def test_every_case_that_is_not_covered_has_its_reason(self):
        with open(os.path.join(SOURCE, "tests/reference/README.md"), encoding="utf-8") as page:
            told = set(re.findall(r"`([a-z0-9-]+)`", page.read().split("## Not covered")[1]))
        left = {name for name, verdict in self.found.items() if verdict == "not covered"}
        self.assertEqual(left, told)

    def test_known_misprint_is_shown_and_does_not_fail(self):
        line = next(l for l in self.out.splitlines() if "comb-hunting-tooth-web-formula" in l)
        self.assertTrue(line.startswith("differs"))
        self.assertIn("known:", line)

    def test_idle_inputs_are_reported(self):
        block = self.out[self.out.index("jindal-27-2"):]
        self.assertIn("input m moves no expected value", block.split("\nagrees")[0])


class Tampered(unittest.TestCase):
    """Every expected value of every covered case, made wrong by ten times its tolerance."""

    def test_every_changed_value_is_seen(self):
        cases, number = [], 0
        for name in FILES:
            source = reference(name)
            found = verdicts(run(os.path.join(SOURCE, "tests/reference", name))[1])
            for case in source:
                if found[case["id"]] != "agrees":
                    continue
                wrong = copy.deepcopy(case)
                for field in wrong["expected"].values():
                    field["value"] = self.changed(field)
                number += len(wrong["expected"])
                cases.append(wrong)
        self.assertGreater(number, 200)
        code, out, _ = run_cases(cases)
        self.assertEqual(code, 1)
        seen = differences(out)
        for case in cases:
            self.assertEqual(seen.get(case["id"]), list(case["expected"]), case["id"])

    def test_one_changed_value_among_right_ones_is_named_alone(self):
        case = next(c for c in reference("gears.json") if c["id"] == "inv-table")
        case = copy.deepcopy(case)
        case["expected"]["inv_22.5"]["value"] = self.changed(case["expected"]["inv_22.5"])
        code, out, _ = run_cases([case])
        self.assertEqual((code, differences(out)), (1, {"inv-table": ["inv_22.5"]}))

    @staticmethod
    def changed(field):
        value, off = field["value"], 1.0 + 3.0 * max(field["tol_rel"], 1e-9)
        if "tol_abs" in field:
            return value * off + 3.0 * field["tol_abs"]
        if isinstance(value, list):
            first = value[0] + "0" if isinstance(value[0], str) else value[0] * off + 1e-6
            return [first] + value[1:]
        return value * off


class Unseen(unittest.TestCase):
    """Cases of the same names with other numbers, worked out here."""

    def test_span_of_other_numbers(self):
        m, z, x, k, alpha = 2.5, 31, -0.15, 4, math.radians(22.5)
        inv = math.tan(alpha) - alpha
        span = m * math.cos(alpha) * (math.pi * (k - 0.5) + z * inv) + 2 * x * m * math.sin(alpha)
        case = own_case("span_W", {"m_n": (m, "mm"), "z": (z, "-"), "x": (x, "-"),
                                   "alpha_n": (22.5, "deg"), "k": (k, "-")},
                        {"W": (span / 25.4, "in")})
        self.assertEqual(run_cases([case])[0], 0)

    def test_bevel_forces_with_the_other_flank(self):
        alpha, beta, delta, force = (math.radians(a) for a in (22.5, 30.0, 41.0, 0.0))
        force = 640.0
        axial = force / math.cos(beta) * (math.tan(alpha) * math.sin(delta)
                                          - math.sin(beta) * math.cos(delta))
        case = own_case("bevel_forces", {"alpha_n": (22.5, "deg"), "beta_m": (30, "deg"),
                                         "delta_1": (41, "deg"), "F_t": (0.64, "kN"),
                                         "sense": (-1, "-")}, {"F_a1": (axial, "N")})
        self.assertEqual(run_cases([case])[0], 0)

    def test_wide_helices_overlap_by_more_than_four_teeth(self):
        # derived: ISO 6336-1, C_v of an overlap above 2.5 (from memory): 0.57/(4.6 - 0.3) and so on
        gamma = 4.6
        c_v2, c_v3 = 0.57 / (gamma - 0.3), 0.096 / (gamma - 1.56)
        expected = 0.5 * (0.32 * 0.4 + c_v2 * 0.6 + c_v3 * 0.8) + 1.0
        case = own_case(
            "iso_kv_b",
            {"eps_gamma": (gamma, "-"), "B_p": (0.4, "-"), "B_f": (0.6, "-"), "B_k": (0.8, "-"),
             "N": (0.5, "-")},
            {"K_V": (expected, "-")})
        status, text, _ = run_cases([case])
        self.assertEqual((status, verdicts(text)[case["id"]]), (0, "agrees"), text)

    def test_data_of_other_kinds_are_handed_on(self):
        cases = []
        for i, (given, expected, value, answer) in enumerate([
                ("g/cm3", "kg/m3", 7.85, 7850.0), ("HRC", "HRC", 61.0, 61.0),
                ("wt percent", "%", 0.11, 0.11)]):
            case = own_case("echo", {"data": ({"one": value}, given)}, {"one": (answer, expected)})
            case["id"] = f"data-{i}"
            cases.append(case)
        status, text, _ = run_cases(cases)
        self.assertEqual(set(verdicts(text).values()), {"agrees"}, text)
        self.assertEqual(status, 0)

    def test_pair_spread_in_millimetres(self):
        centre = (20 + 31) / 2 * 2.0
        angle = math.degrees(math.acos(centre * math.cos(math.radians(20)) / (centre * 1.01)))
        case = own_case("us_spur_mesh", {"m": (2, "mm"), "z1": (20, "-"), "z2": (31, "-"),
                                         "alpha": (20, "deg"), "spread": (1.01, "-")},
                        {"C": (centre, "mm"), "phi_spread": (angle, "deg")})
        self.assertEqual(run_cases([case])[0], 0)

    def test_unknown_binding_is_not_covered(self):
        code, out, _ = run_cases([own_case("nobody-binds-this", {"a": (1, "-")}, {"b": (2, "-")})])
        self.assertEqual(code, 0)
        self.assertEqual(counts(out), (0, 0, 1))

    def test_value_that_nothing_computes_is_not_covered(self):
        case = own_case("hunting", {"z1": (21, "-"), "z2": (35, "-")},
                        {"gcd": (7, "-", 0), "colour": (3, "-")})
        code, out, _ = run_cases([case])
        self.assertEqual((code, counts(out)), (0, (0, 0, 1)))
        self.assertIn("nothing computes colour", out)

    def test_memory_is_not_counted_and_still_fails_when_it_differs(self):
        case = own_case("hunting", {"z1": (21, "-"), "z2": (35, "-")}, {"gcd": (7, "-", 0)},
                        provenance="memory")
        self.assertEqual(counts(run_cases([case])[1]), (0, 0, 0))
        case["expected"]["gcd"]["value"] = 6
        code, out, _ = run_cases([case])
        self.assertEqual((code, counts(out)), (1, (0, 0, 0)))
        self.assertIn("0 agree, 1 differ, 0 not covered", out)

    def test_computing_a_known_misprint_counts_as_a_difference(self):
        case = own_case("hunting", {"z1": (21, "-"), "z2": (35, "-")}, {"gcd": (7, "-", 0)},
                        agrees=False, notes="the source is wrong")
        self.assertEqual(run_cases([case])[0], 1)
        case["expected"]["gcd"]["value"] = 6
        code, out, _ = run_cases([case])
        self.assertEqual((code, counts(out)), (0, (0, 0, 0)))
        self.assertIn("1 differ as their own notes say", out)


class Malformed(unittest.TestCase):
    def test_broken_json_names_the_line(self):
        code, _, err = run_text(b'{"cases": [\n  {"id": "a",}\n]}')
        self.assertEqual(code, 2)
        self.assertRegex(err, r"cases\.json:2:\d+: ")

    def test_duplicate_keys_are_refused(self):
        code, _, err = run_text(b'{"cases": [],\n "cases": []}')
        self.assertEqual(code, 2)
        self.assertRegex(err, r"cases\.json:2:\d+: duplicate")

    def test_files_that_are_no_banks_are_refused(self):
        whole = own_case("hunting", {"z1": (1, "-")}, {"gcd": (1, "-")})
        for text in (b"", b"[]", b"{}", b'{"cases": 3}', b'{"cases": [1]}', b'{"cases": [{}]}',
                     b"\xff\xfe", b'{"cases": [1e999]}'):
            self.assertEqual(run_text(text)[0], 2, text)
        for key in ("id", "binds", "source", "provenance", "inputs", "expected"):
            broken = copy.deepcopy(whole)
            del broken[key]
            code, _, err = run_cases([broken])
            self.assertEqual(code, 2, key)
            self.assertIn(key, err)
        broken = copy.deepcopy(whole)
        del broken["expected"]["gcd"]["tol_rel"]
        self.assertEqual(run_cases([broken])[0], 2)
        for wrong in ("0.1", -0.1, None):
            broken = copy.deepcopy(whole)
            broken["expected"]["gcd"]["tol_abs"] = wrong
            self.assertEqual(run_cases([broken])[0], 2, wrong)

    def test_missing_file_and_no_file_are_refused(self):
        self.assertEqual(run("no/such/file.json")[0], 2)
        self.assertEqual(run()[0], 2)

    def test_strange_inputs_never_crash(self):
        strange = [0, -1, -1.5, 1e308, -1e308, 1e-308, 1e12, 2000000, 90, 89.9999, "word", "", [], [1, "a"], [[1], [2, 3]], {},
                   {"a": "b"}, None, True]
        for value in strange:
            cases = []
            for name in FILES:
                for case in reference(name):
                    for key in case["inputs"]:
                        odd = copy.deepcopy(case)
                        odd["inputs"][key]["value"] = value
                        cases.append(odd)
            code, _, err = run_cases(cases)
            self.assertIn(code, (0, 1), "%r: %s" % (value, err))

    def test_strange_units_are_not_covered(self):
        for unit in ("furlong", "kg", "", "1/"):
            case = own_case("backlash_from_centre",
                            {"m": (2.5, unit), "z1": (31, "-"), "z2": (47, "-"),
                             "alpha": (20, "deg"), "delta_a": (0.1, "mm")},
                            {"j_bn": (0.06, "mm")})
            code, out, _ = run_cases([case])
            self.assertEqual((code, counts(out)), (0, (0, 0, 1)), unit)


if __name__ == "__main__":
    sys.exit(unittest.main())
