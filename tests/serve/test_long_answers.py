# ctest: release-only    (a seizure takes minutes under the sanitizers)
"""Are starts and seizures told as their commands tell them, and does nobody wait for them?"""
# ctest: timeout=300
import concurrent.futures
import json
import subprocess
import time
import unittest

import jsonschema

from serving import COMMAND, ROOT, WithServer

PUMP = "hydraulic%20pump%201"


def schema(name):
    return jsonschema.Draft202012Validator(json.loads((ROOT / "docs/schema" / name).read_text()))


def told(*words):
    return json.loads(subprocess.run([COMMAND, *words, "--json"], stdout=subprocess.PIPE, check=False).stdout)


def alike(test, one, other):
    """All but the path, which the server tells as it was given."""
    for answer in (one, other):
        answer.pop("input")
        for run in answer.get("runs", []):
            run.pop("trace", None)
    test.assertEqual(one, other)


class Answers(WithServer):
    def test_a_start_is_told_as_its_command_tells_it(self):
        got = self.server.get("/api/start").json()
        schema("start.schema.json").validate(got)
        view = self.server.get("/api/view").json()
        trace = got["trace"]
        for row in trace["shafts"]:
            self.assertEqual(view["shafts"][row["shaft"]]["name"], row["of"])
            self.assertEqual(len(row["T"]), len(trace["t"]))
        peaks = {one["of"]: one["T"] for one in got["shafts"]}
        for row in trace["shafts"]:  # no moment of the trace is above the peak that is told
            self.assertLessEqual(max(map(abs, row["T"])), abs(peaks[row["of"]]) * (1 + 1e-9))
        alike(self, got, told("start", self.file))

    def test_a_start_in_the_cold(self):
        got = self.server.get("/api/start?ambient=-40%20degC&oil=-40%20degC").json()
        self.assertAlmostEqual(got["ambient"], 233.15)
        alike(self, got, told("start", self.file, "--ambient=-40 degC", "--oil-temperature=-40 degC"))
        self.assertEqual(self.server.get("/api/start?ambient=warm").status, 422)

    def test_a_start_goes_on_to_a_faster_condition(self):
        alike(self, self.server.get("/api/start?to=take-off").json(), told("start", self.file, "--to=take-off"))
        self.assertEqual(self.server.get("/api/start?to=crank").status, 422)

    def test_what_grows_warm_is_told_as_its_command_tells_it(self):
        got = self.server.get("/api/warm").json()
        schema("warm.schema.json").validate(got)
        alike(self, got, told("warm", self.file))
        some = "through=ground%20idle%205%20min,%20take-off%20120%20s"
        alike(self, self.server.get(f"/api/warm?soak=-30%20degC&{some}").json(),
              told("warm", self.file, "--soak=-30 degC", "--through=ground idle 5 min, take-off 120 s"))
        self.assertEqual(self.server.get("/api/warm?soak=cold").status, 422)

    def test_modes_are_told_as_their_command_tells_them(self):
        got = self.server.get("/api/twist").json()
        schema("twist.schema.json").validate(got)
        alike(self, got, told("twist", self.file))

    def test_a_seizure_is_told_with_its_course(self):
        got = self.server.get(f"/api/seize?accessory={PUMP}&condition=take-off").json()
        schema("seize.schema.json").validate(got)
        view = self.server.get("/api/view").json()
        for run in got["runs"]:
            trace = run["trace"]
            self.assertEqual(trace["t"], sorted(trace["t"]))
            self.assertAlmostEqual(trace["t"][-1], run["until"], places=6)
            names = [spring["of"] for spring in trace["springs"]]
            self.assertEqual(names, [peak["of"] for peak in run["peaks"]])
            for spring, peak in zip(trace["springs"], run["peaks"], strict=True):
                most = max(abs(peak["before"]), abs(peak["after"]))
                self.assertLessEqual(max(map(abs, spring["T"])), most * (1 + 1e-6))
                self.assertAlmostEqual(spring["T"][0], peak["steady"], places=6)
            for body in trace["bodies"]:
                if body.get("accessory") == "hydraulic pump 1":  # it stands at once
                    continue
                speed = view["shafts"][body["shaft"]]["speed"][view["conditions"].index("take-off")]
                self.assertAlmostEqual(body["speed"][0] * 60 / (2 * 3.141592653589793) / speed, 1, places=5)
            stopped = next(body for body in trace["bodies"] if body.get("accessory") == "hydraulic pump 1")
            self.assertLess(abs(stopped["speed"][-1]), 1e-6)
        alike(self, got, told("seize", self.file, "hydraulic pump 1", "--condition", "take-off"))

    def test_what_cannot_be_asked_is_said(self):
        for query in ("accessory=nobody", "", f"accessory={PUMP}&ramp=2%20h", f"accessory={PUMP}&condition=moon"):
            with self.subTest(query):
                got = self.server.get(f"/api/seize?{query}" if query else "/api/seize")
                self.assertEqual(got.status, 422)
                self.assertTrue(got.json()["messages"])


class Meanwhile(WithServer):
    example = ROOT / "examples/large.yaml"

    def long_answers(self, pool, count):
        return [pool.submit(self.server.get, "/api/seize?accessory=hydraulic%20pump%201") for _ in range(count)]

    def test_a_fifth_long_answer_is_refused_and_a_short_one_is_not_held_up(self):
        with concurrent.futures.ThreadPoolExecutor(24) as pool:
            waiting = self.long_answers(pool, 24)
            time.sleep(0.01)
            begun = time.monotonic()
            self.assertEqual(self.server.get("/api/state").status, 200)
            took = time.monotonic() - begun
            codes = sorted(one.result().status for one in waiting)
        print(f"a request beside four long answers took {took * 1000:.0f} ms")
        self.assertLess(took, 0.5)
        self.assertEqual(codes[:4], [200] * 4)
        self.assertEqual(codes[-1], 503)
        self.assertEqual(set(codes), {200, 503})

    def test_zz_the_end_does_not_wait_for_a_long_answer(self):
        with concurrent.futures.ThreadPoolExecutor(4) as pool:
            waiting = self.long_answers(pool, 4)
            time.sleep(0.01)
            took, code = self.server.stop()
            codes = {one.result().status for one in waiting}
        self.assertLess(took, 2.0)
        self.assertEqual(code, 0)
        self.assertLessEqual(codes, {200, 503, None})  # None: it came when nobody listened any more


if __name__ == "__main__":
    unittest.main()
