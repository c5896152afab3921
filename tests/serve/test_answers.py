# ctest: release-only    (whole commands take minutes under the sanitizers)
"""Are the answers of the server what their schemas and the other commands say?"""
# ctest: timeout=300
import json
import math
import pathlib
import re
import subprocess
import tempfile
import time
import unittest
import urllib.parse

import jsonschema

from serving import COMMAND, ROOT, Server, WithServer

EXAMPLES = sorted((ROOT / "examples").glob("*.yaml")) + sorted((ROOT / "examples/traps").glob("*.yaml"))


def schema(name):
    return jsonschema.Draft202012Validator(json.loads((ROOT / "docs/schema" / name).read_text()))


def quoted(text):
    return urllib.parse.quote(text, safe="")


class Deltas(WithServer):
    def patched(self, had, delta):
        """A view with what has changed since."""
        self.assertEqual(delta["seen"], had["sha256"])
        self.assertEqual(set(delta), {"seen", "whole", "parts"})
        made = json.loads(json.dumps(had)) | delta["whole"]
        for name, items in delta["parts"].items():
            for index, item in items.items():
                made[name][int(index)] = item
        return made

    def test_what_has_changed_since_makes_the_view_of_now(self):
        for units in ("metric", "us"):
            seen = [self.server.get(f"/api/view?units={units}").json()]
            for step in range(12):
                edits = [("drive/hp/box/clockwise/1/teeth", str(45 + step))] if step % 3 else [
                    ("title", f'"a \\" ] }} , {step}"'), ("accessories/generator/mass", f"{20 + step} kg")]
                self.assertEqual(self.server.act(*edits).status, 200)
                if step == 7:
                    self.assertEqual(self.server.act(("waived/1", None)).status in (200, 422), True)
                delta = self.server.get(f"/api/view?units={units}&seen={seen[-1]['sha256']}")
                whole = self.server.get(f"/api/view?units={units}")
                self.assertEqual(self.patched(seen[-1], delta.json()), whole.json())
                if step > 1:  # another page, two steps behind
                    late = self.server.get(f"/api/view?units={units}&seen={seen[-2]['sha256']}").json()
                    self.assertEqual(self.patched(seen[-2], late), whole.json())
                seen.append(whole.json())
            self.assertLess(len(delta.body), len(whole.body))
            again = self.server.get(f"/api/view?units={units}&seen={seen[-1]['sha256']}").json()
            self.assertEqual((again["whole"], again["parts"]), ({}, {}))

    def test_a_view_that_is_not_kept_is_told_whole(self):
        for seen in ("0" * 64, "", "x", "%22", "0" * 300):
            self.assertIn("shafts", self.server.get(f"/api/view?seen={seen}").json())


class EveryDrive(unittest.TestCase):
    def test_the_view_of_every_example_and_trap_follows_its_schema(self):
        valid = schema("view.schema.json")
        with tempfile.TemporaryDirectory() as keeper:
            for example in EXAMPLES:
                with self.subTest(example.name):
                    file = pathlib.Path(keeper) / example.name
                    file.write_bytes(example.read_bytes())
                    server = Server(file)
                    try:
                        view = server.get("/api/view").json()
                        valid.validate(view)
                        self.same_as_check(server, view)
                    finally:
                        server.stop()

    def same_as_check(self, server, view):
        """The view tells nothing that `check --json` tells otherwise."""
        check = server.get("/api/answer").json()
        self.assertEqual(view["says"], check["says"])
        self.assertEqual([one["fingerprint"] for one in view["findings"]],
                         [one["fingerprint"] for one in check["findings"]])
        names = [one["name"] for one in check["conditions"]]
        self.assertEqual(view["conditions"], names)
        for seen, told in zip(view["shafts"], check["shafts"], strict=True):
            self.assertEqual(seen["address"], told["address"])
            self.same_numbers(seen["speed"], [told["speed"][name]["value"] for name in names])
        for seen, told in zip(view["meshes"], check["meshes"], strict=True):
            self.same_numbers(seen["power"], [told["loads"][name]["P_1"]["value"] for name in names])

    def same_numbers(self, seen, told):
        """`check` takes the shortest number that means the same SI value, which may be one bit off."""
        for one, other in zip(seen, told, strict=True):
            if one != other:
                self.assertTrue(math.isclose(one, other, rel_tol=1e-15, abs_tol=0), (one, other))


class OneDrive(WithServer):
    def test_every_working_that_the_view_names_opens(self):
        view = self.server.get("/api/view").json()
        named = {one["working"] for one in view["findings"]}
        named |= {cell.get("working") for row in view["margins"] for cell in row["cells"]}
        named.discard(None)
        self.assertGreater(len(named), 50)
        for address in sorted(named):
            self.assertEqual(self.server.get(f"/api/why?at={quoted(address)}").status, 200, address)

    def test_teeth_of_meshing_gears_stand_in_each_others_spaces(self):
        """derived: on the line of centres the phases, counted in pitches, differ by half a pitch."""
        view = self.server.get("/api/view").json()
        checked = 0
        for mesh in view["meshes"]:
            a, b = view["shafts"][mesh["driver"]], view["shafts"][mesh["driven"]]
            mains = [next((g for g in view["gears"] if g["shaft"] == index and g["role"] == "main"), None)
                     for index in (mesh["driver"], mesh["driven"])]
            if mesh["kind"] != "cylindrical" or None in mains:
                continue
            far = math.hypot(b["x"] - a["x"], b["y"] - a["y"])
            if abs(far - mains[0]["r"] - mains[1]["r"]) > 2e-3:
                continue  # the step drives it
            line = math.atan2(b["y"] - a["y"], b["x"] - a["x"]) - math.pi / 2
            u = [(line + turn - gear["phase"]) * gear["teeth"] / (2 * math.pi)
                 for gear, turn in zip(mains, (0, math.pi))]
            self.assertAlmostEqual((u[0] + u[1]) % 1, 0.5, places=6, msg=mesh["address"])
            checked += 1
        self.assertGreater(checked, 3)

    def test_places_follow_their_schema_and_keep_their_word(self):
        places = self.server.get(f"/api/places?accessory={quoted('hydraulic pump 1')}").json()
        schema("places.schema.json").validate(places)
        self.assertEqual(places["tried"], 16)
        self.assertEqual(len({(one["address"]) for one in places["places"]}), 16)
        for one in places["places"][:6]:
            if one["here"]:
                continue
            answer = self.server.post("/api/act", {"base": self.server.state()["serial"], "edits": one["edits"]})
            self.assertEqual(answer.status, 200, one)
            view = self.server.get("/api/view").json()
            refused = [row for row in view["findings"] if row["level"] == "refuse" and row["state"] == "open"]
            self.assertEqual(len(refused), one["refuse"], one["address"])
            for why in one["why"]:
                self.assertIn(why, [row["says"] for row in view["findings"]])
            self.server.step("undo")

    def test_an_accessory_that_is_not_there_is_said(self):
        answer = self.server.get("/api/places?accessory=hydraulic%20pumps")
        self.assertEqual(answer.status, 422)
        self.assertIn("hydraulic pump", answer.json()["messages"][0]["nearest"])

    def test_a_shaft_moves_along_its_branch_and_comments_stay(self):
        before = self.file.read_bytes()
        body = {"base": self.server.state()["serial"],
                "edits": [{"at": "drive/hp/box/anticlockwise/3", "place": 1}]}
        self.assertEqual(self.server.post("/api/act", body).status, 200)
        lines = before.decode().splitlines()
        first = next(i for i, row in enumerate(lines) if "teeth: 46, face: 12 mm" in row)
        moved = self.file.read_text().splitlines()
        self.assertEqual(moved[first - 1], lines[first - 1])  # the comment above
        self.assertEqual([moved[first], moved[first + 1], moved[first + 2]],
                         [lines[first + 2], lines[first], lines[first + 1]])
        self.assertEqual(moved[:first] + moved[first + 3:], lines[:first] + lines[first + 3:])
        self.server.step("undo")
        self.assertEqual(self.file.read_bytes(), before)

    def test_a_place_that_the_list_has_not_is_refused(self):
        for at, place in (("drive/hp/box/anticlockwise/3", 4), ("drive/hp/box/input", 1), ("drive/hp/box/anticlockwise/9", 1)):
            answer = self.server.post("/api/act", {"base": self.server.state()["serial"], "edits": [{"at": at, "place": place}]})
            self.assertEqual(answer.status, 422, at)

    def test_a_waiver_is_written_and_removed_byte_by_byte(self):
        before = self.file.read_bytes()
        value = '{rule: "E1-standards-differ", at: "drive/hp/box/clockwise/1", why: "both were looked into: \\"a\\"", by: "A. Example"}'
        state = self.server.act(("waived/2", value)).json()
        view = self.server.get("/api/view").json()
        self.assertIn("waived/2", [one["waiver"] for one in view["findings"]])
        self.assertEqual(view["waivers"], 2)
        self.server.act(("waived/2", None))
        self.assertEqual(self.file.read_bytes(), before)
        self.assertIsNotNone(state["undo"])

    def test_pictures_and_comparison_are_those_of_the_command(self):
        done = subprocess.run([COMMAND, "draw", str(self.file), "-o", str(self.folder / "a.svg"), "--figure", "unrolled"], check=False, capture_output=True)
        self.assertEqual(done.returncode, 0)
        mine = self.server.get("/api/picture?figure=unrolled").body
        self.assertEqual(mine, (self.folder / "a.svg").read_bytes())
        for query in ("figure=nothing", "condition=never", "ground=pink", "at=nowhere&figure=teeth"):
            self.assertEqual(self.server.get(f"/api/picture?{query}").status, 422, query)
        self.server.act(("revision", "D"))
        changes = self.server.get("/api/compare").json()["changes"]
        self.assertEqual([one["subject"] for one in changes], ["revision"])
        self.server.step("undo")

    def test_customary_units_change_the_view_and_not_the_file(self):
        metric, us = (self.server.get(f"/api/view?units={one}").json() for one in ("metric", "us"))
        self.assertEqual((metric["units"]["power"], us["units"]["power"]), ("kW", "hp"))
        self.assertAlmostEqual(us["pads"][0]["power"][3] * 0.745699872, metric["pads"][0]["power"][3], places=6)

    def test_an_act_told_in_customary_units_leaves_the_answer_as_it_is(self):
        def act(units):
            return self.server.post("/api/act", {"base": self.server.state()["serial"], "units": units, "edits": [{"at": "drive/hp/box/clockwise/1/teeth", "to": "51"}]}).json()
        self.assertEqual(act("metric")["view"]["units"]["power"], "kW")
        answer = self.server.get("/api/answer").body
        self.server.step("undo")
        told = act("us")
        self.assertEqual(told["view"]["units"]["power"], "hp")
        broken = self.server.post("/api/text", {"base": told["serial"], "units": "us", "text": "engine: ["})
        self.assertTrue(broken.json()["wrong"])
        self.assertEqual(self.server.get("/api/answer").body, answer)  # of the last text that could be computed
        self.assertEqual(self.server.get("/api/view?units=us").json(), told["view"])
        self.server.step("undo")
        self.assertEqual(self.server.get("/api/answer").body, answer)
        self.server.step("undo")

    def test_a_change_tells_how_long_it_was_computed_and_how_long_written(self):
        said = self.server.act(("revision", "timed"))
        begun = time.monotonic()
        again = self.server.step("undo")
        most = 1e3 * (time.monotonic() - begun)
        for answer in (said, again):
            parts = re.search(r"\r\nServer-Timing: compute;dur=(\d+\.\d{3}), disk;dur=(\d+\.\d{3})\r\n", answer.head + "\r\n")
            self.assertTrue(parts, answer.head)
            self.assertGreater(float(parts.group(1)), 0.0)
            self.assertGreater(float(parts.group(2)), 0.0)
        self.assertLess(float(parts.group(1)) + float(parts.group(2)), most)
        self.assertNotIn("Server-Timing", self.server.get("/api/state").head)
        refused = self.server.post("/api/undo", {"base": 0})
        self.assertIn("disk;dur=0.000", refused.head)  # nothing was written

    def test_a_search_runs_beside_and_ends_when_told(self):
        base = self.server.state()["serial"]
        self.assertEqual(self.server.post("/api/arrange", {"base": base, "keep": ["drive/nowhere"], "seconds": 5}).status, 200)
        for _ in range(300):
            search = self.server.state()["search"]
            if search["state"] == "ended":
                break
            time.sleep(0.1)
        self.assertEqual(search["state"], "ended")
        self.assertTrue(search["answer"]["messages"])
        self.assertFalse(search["can_take"])
        self.assertEqual(self.server.post("/api/arrange/take", {"base": base}).status, 409)
        for seconds in (0, 601, "x"):
            self.assertIn(self.server.post("/api/arrange", {"base": base, "keep": [], "seconds": seconds}).status, (400,) if seconds != "x" else (200, 409))

    def test_the_sheet_of_a_pad_is_that_of_the_command(self):
        done = subprocess.run([COMMAND, "sheet", str(self.file), "generator", "-o", str(self.folder / "a.pdf")], check=False, capture_output=True)
        self.assertEqual(done.returncode, 0, done.stderr)
        got = self.server.get("/api/sheet?accessory=generator")
        self.assertEqual((got.status, got.body), (200, (self.folder / "a.pdf").read_bytes()))
        self.assertIn("Content-Type: application/pdf", got.head)
        self.assertEqual(self.server.get("/api/sheet?accessory=nobody").status, 422)

    def test_an_accessory_without_a_pad_is_told_and_can_be_placed(self):
        said = self.server.get("/api/view?units=metric").json()
        self.assertEqual(said["unplaced"], [])
        text = self.server.state()["text"].replace("rear: hydraulic pump 1", "rear: cover")
        self.server.post("/api/text", {"base": self.server.state()["serial"], "text": text})
        said = self.server.get("/api/view?units=metric").json()
        self.assertEqual(said["unplaced"], ["hydraulic pump 1"])
        best = self.server.get("/api/places?accessory=hydraulic%20pump%201").json()["places"][0]
        self.assertEqual((best["face"], best["verdict"]), ("rear", "holds"))
        self.server.post("/api/undo", {"base": self.server.state()["serial"]})


if __name__ == "__main__":
    unittest.main()
