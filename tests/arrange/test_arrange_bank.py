#!/usr/bin/env python3
"""Does the runner of arrangement problems agree with proven answers, and see when one is wrong?"""
# ctest: timeout=300 release-only cost=20    (the search runs under the sanitizers in its other tests)
import copy
import json
import os
import subprocess
import tempfile
import unittest

SOURCE = os.environ.get("TS_SOURCE", ".")
RUNNER = os.path.join(os.environ.get("TS_BUILD", "build/release"), "towershaft-bank-arrange")
SMALL = os.path.join(SOURCE, "tests/reference/arrange_small.json")


def run(*paths):
    done = subprocess.run([RUNNER, *paths], capture_output=True, text=True, check=False)
    return done.returncode, done.stdout, done.stderr


def run_text(text):
    with tempfile.TemporaryDirectory() as room:
        path = os.path.join(room, "problems.json")
        with open(path, "wb") as out:
            out.write(text)
        return run(path)


def run_problems(problems):
    return run_text(json.dumps({"problems": problems}).encode())


def problems():
    with open(SMALL, encoding="utf-8") as source:
        return json.load(source)["problems"]


def quick():
    """A feasible problem that is soon solved."""
    return min((p for p in problems() if p["answer"]["feasible"]), key=lambda p: p["answer"]["count"])


class Published(unittest.TestCase):
    def test_every_published_problem_agrees_in_mass_and_count(self):
        code, out, err = run(SMALL)
        self.assertEqual(code, 0, out + err)
        self.assertEqual(out.splitlines()[-1], "45 agree, 0 differ, 0 without an answer")


class Tampered(unittest.TestCase):
    def differs(self, change):
        problem = copy.deepcopy(quick())
        change(problem["answer"])
        code, out, _ = run_problems([problem])
        self.assertEqual((code, out.splitlines()[-1]), (1, "0 agree, 1 differ, 0 without an answer"))

    def test_another_mass_differs(self):
        self.differs(lambda a: a.update(mass=a["mass"] * (1 + 3e-9)))
        self.differs(lambda a: a.update(mass=a["mass"] * (1 - 3e-9)))

    def test_another_count_differs(self):
        self.differs(lambda a: a.update(count=a["count"] + 1))

    def test_infeasible_instead_of_feasible_differs(self):
        self.differs(lambda a: a.update(feasible=False))

    def test_feasible_instead_of_infeasible_differs(self):
        problem = copy.deepcopy(next(p for p in problems() if not p["answer"]["feasible"]))
        problem["answer"] = {"feasible": True, "mass": 20.0}
        self.assertEqual(run_problems([problem])[0], 1)

    def test_another_demand_gives_another_answer(self):
        problem = copy.deepcopy(quick())
        for box in problem["instance"]["boxes"]:
            box["wrap_max"] = 0.5
            box["side_max"] = 0.5
        code, out, _ = run_problems([problem])
        self.assertEqual(code, 1)
        self.assertIn("infeasible", out)

    def test_a_problem_without_an_answer_is_solved_and_not_counted(self):
        problem = copy.deepcopy(quick())
        mass = problem.pop("answer")["mass"]
        code, out, _ = run_problems([problem])
        self.assertEqual(code, 0)
        self.assertIn("%.9f kg" % mass, out)
        self.assertIn("1 without an answer", out)


class Malformed(unittest.TestCase):
    def test_broken_json_names_the_line(self):
        code, _, err = run_text(b'{"problems": [\n {"instance": }]}')
        self.assertEqual(code, 2)
        self.assertRegex(err, r"problems\.json:2:\d+: ")

    def test_files_that_are_no_lists_of_problems_are_refused(self):
        for text in (b"", b"[]", b"{}", b'{"problems": 1}', b'{"problems": [1]}', b"\xff",
                     b'{"problems": [{"instance": 1}]}', b'{"problems": [], "problems": []}'):
            self.assertEqual(run_text(text)[0], 2, text)
        self.assertEqual(run("no/such/file.json")[0], 2)
        self.assertEqual(run()[0], 2)

    def test_every_missing_field_is_named(self):
        def paths(value, path=()):
            if isinstance(value, dict):
                for key in value:
                    yield path + (key,)
                    yield from paths(value[key], path + (key,))
            elif isinstance(value, list) and value:
                yield from paths(value[0], path + (0,))

        whole = quick()
        for path in paths(whole["instance"]):
            if path[-1] == "name" and len(path) == 1:
                continue
            broken = copy.deepcopy(whole)
            inner = broken["instance"]
            for step in path[:-1]:
                inner = inner[step]
            del inner[path[-1]]
            code, _, err = run_problems([broken])
            self.assertEqual(code, 2, path)
            self.assertIn('"%s" is missing' % path[-1], err)

    def test_values_that_cannot_be_are_refused_by_name(self):
        whole = quick()
        box = {"input_sense": 0, "R_box": 0, "z_in": [0], "modules": [-1], "n_in": [1],
               "input_faces": ["top"], "wrap_max": "wide", "input_body": []}
        own = {"sense": "up", "side": "middle", "speed": [[1]], "power": [1], "body_radius": -1,
               "faces": "front", "boxes": [3]}
        top = {"clearance": "loose", "hunting": 1, "max_idlers_in_row": 3, "z_max": 1.5,
               "idler_teeth": [2000], "conditions": [], "accessories": []}
        for values, place in ((box, "boxes"), (own, "accessories"), (top, None)):
            for key, value in values.items():
                broken = copy.deepcopy(whole)
                inner = broken["instance"][place][0] if place else broken["instance"]
                inner[key] = value
                code, _, err = run_problems([broken])
                self.assertEqual(code, 2, key)
                self.assertIn('"%s": expected' % key, err)


if __name__ == "__main__":
    unittest.main()
