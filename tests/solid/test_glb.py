# ctest: release-only    (whole commands take minutes under the sanitizers)
"""Is the .glb of `draw` what ISO/IEC 12113 asks, and does it show the drive?

A reader of this file's own takes container, accessors and triangles apart: bounds, indices and
normals; volumes by the divergence theorem and extents are held against the statement of mass and
the geometry that the program tells as numbers.
"""
import json
import math
import pathlib
import struct
import sys
import unittest

sys.path.insert(0, str(pathlib.Path(__file__).resolve().parents[1] / "apps"))
from command_line import EXAMPLES, ROOT, InFolder, quoted, run  # noqa: E402

import jsonschema  # noqa: E402

CHORD = 2e-5  # m, to which round surfaces are broken up
KINDS = {5126: ("f", 4), 5125: ("I", 4)}


class Glb:
    def __init__(self, data):
        magic, version, length = struct.unpack_from("<4sII", data)
        assert (magic, version, length) == (b"glTF", 2, len(data)), "the head of the file"
        at, chunks = 12, []
        while at < len(data):
            size, kind = struct.unpack_from("<I4s", data, at)
            assert size % 4 == 0, "chunks are whole words"
            chunks.append((kind, data[at + 8:at + 8 + size]))
            at += 8 + size
        assert at == len(data) and [kind for kind, _ in chunks] == [b"JSON", b"BIN\0"]
        self.json = json.loads(chunks[0][1])
        self.bytes = chunks[1][1]
        assert self.json["buffers"] == [{"byteLength": len(self.bytes)}]

    def read(self, index):
        one = self.json["accessors"][index]
        view = self.json["bufferViews"][one["bufferView"]]
        letter, size = KINDS[one["componentType"]]
        width = {"SCALAR": 1, "VEC3": 3}[one["type"]]
        assert view["byteLength"] == one["count"] * width * size and view["byteOffset"] % 4 == 0
        assert view["byteOffset"] + view["byteLength"] <= len(self.bytes)
        flat = struct.unpack_from(f"<{one['count'] * width}{letter}", self.bytes,
                                  view["byteOffset"])
        return flat if width == 1 else [flat[i:i + 3] for i in range(0, len(flat), 3)]


def cross(a, b):
    return (a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0])


def dot(a, b):
    return sum(x * y for x, y in zip(a, b))


def less(a, b):
    return tuple(x - y for x, y in zip(a, b))


def turned(q, v):
    """v by the quaternion q (x, y, z, w)."""
    t = tuple(2 * x for x in cross(q[:3], v))
    return tuple(a + q[3] * b + c for a, b, c in zip(v, t, cross(q[:3], t)))


class TestGlb(InFolder):
    def both(self, example):
        out, numbers = self.folder / "a.glb", self.folder / "a.json"
        for path in (out, numbers):
            self.assertEqual(run("draw", example, "-o", path)[0], 0)
        return Glb(out.read_bytes()), json.loads(numbers.read_text(encoding="utf-8"))

    def test_the_numbers_follow_their_schema(self):
        path = ROOT / "docs/schema/solids.schema.json"
        schema = json.loads(path.read_text(encoding="utf-8"))
        for example in EXAMPLES:
            with self.subTest(example=example.name):
                numbers = self.both(example)[1]
                jsonschema.validate(numbers, schema)
                self.assertEqual(numbers["missing"], [])

    def surface(self, glb, mesh):
        (one,) = glb.json["meshes"][mesh]["primitives"]
        places = glb.read(one["attributes"]["POSITION"])
        normals = glb.read(one["attributes"]["NORMAL"])
        return one, places, normals, glb.read(one["indices"])

    def judge_surface(self, glb, mesh):
        """Bounds, indices, normals; returns the volume that the triangles enclose."""
        one, places, normals, indices = self.surface(glb, mesh)
        self.assertEqual(len(places), len(normals))
        self.assertEqual(len(indices) % 3, 0)
        self.assertLess(max(indices), len(places))
        bounds = glb.json["accessors"][one["attributes"]["POSITION"]]
        self.assertEqual(bounds["min"], [min(p[k] for p in places) for k in range(3)])
        self.assertEqual(bounds["max"], [max(p[k] for p in places) for k in range(3)])
        for n in normals:
            self.assertAlmostEqual(dot(n, n), 1.0, delta=1e-5)
        six = 0.0
        for i in range(0, len(indices), 3):
            corners = [places[k] for k in indices[i:i + 3]]
            across = cross(less(corners[1], corners[0]), less(corners[2], corners[0]))
            six += dot(corners[0], cross(corners[1], corners[2]))
            size = math.sqrt(dot(across, across))
            if size < 1e-10:  # thinner than what a float can tell
                continue
            for k in indices[i:i + 3]:
                self.assertGreater(dot(across, normals[k]) / size, 0.7, "normals point outwards")
        return six / 6

    def test_surfaces_enclose_what_is_weighed(self):
        """Gears and shafts within 1 % (chords), casings and bodies by their numbers."""
        for example in EXAMPLES[:2]:
            glb, numbers = self.both(example)
            volumes = {}
            for node, part in zip(glb.json["nodes"], numbers["parts"], strict=True):
                with self.subTest(example=example.name, part=node["name"]):
                    mesh = node["mesh"]
                    if mesh not in volumes:
                        volumes[mesh] = self.judge_surface(glb, mesh)
                    wanted = part["volume"]
                    if part["kind"] == "gear":
                        wanted = part["mass"] / part["density"]
                    if part["kind"] == "casing":  # its outside alone is shown
                        wanted = self.solid_casing(part["casing"])
                    self.assertAlmostEqual(volumes[mesh] / wanted, 1.0, delta=0.01)

    def solid_casing(self, casing):
        twice = 0.0
        for loop in casing["outside"]:
            for piece in loop:
                (ax, ay), (bx, by) = piece["a"], piece["b"]
                turn, r = piece.get("turn", 0.0), piece.get("radius", 0.0)
                twice += ax * by - bx * ay + r * r * (turn - math.sin(turn))
        return 0.5 * abs(twice) * (casing["to"] - casing["from"])

    def test_parts_stand_where_the_numbers_say(self):
        for example in EXAMPLES:
            glb, numbers = self.both(example)
            self.assertEqual(glb.json["scenes"][glb.json["scene"]]["nodes"],
                             list(range(len(numbers["parts"]))))
            for node, part in zip(glb.json["nodes"], numbers["parts"], strict=True):
                with self.subTest(example=example.name, part=node["name"]):
                    self.assertEqual(node["name"], f"{part['name']}: {part['kind']}")
                    self.assertEqual(node["translation"], part["origin"])
                    for mine, theirs in ((part["axis"], (0, 0, 1)), (part["right"], (1, 0, 0))):
                        for a, b in zip(turned(node["rotation"], theirs), mine):
                            self.assertAlmostEqual(a, b, delta=1e-12)
                    self.judge_extent(glb, node["mesh"], part)

    def judge_extent(self, glb, mesh, part):
        places = self.surface(glb, mesh)[1]
        if "section" in part:
            zs = [z for z, _ in part["section"]]
            far = max(r for _, r in part["section"])
            self.assertAlmostEqual(max(math.hypot(*p[:2]) for p in places), far, delta=1e-7)
        else:
            zs = [part["casing"]["from"], part["casing"]["to"]]
            self.assertLess(len(places), 20000)
        self.assertAlmostEqual(min(p[2] for p in places), min(zs), delta=1e-7)
        self.assertAlmostEqual(max(p[2] for p in places), max(zs), delta=1e-7)

    def test_teeth_stand_in_spaces(self):
        """In the middle of the face no point of a gear lies in a tooth of its mate."""
        for example in EXAMPLES:
            numbers = self.both(example)[1]
            gears = [p for p in numbers["parts"] if p["kind"] == "gear"]
            met = 0
            for i, a in enumerate(gears):
                for b in gears[i + 1:]:
                    far = math.dist(a["origin"], b["origin"])
                    reach = a["teeth"]["tip"] + b["teeth"]["tip"]
                    deep = min(a["teeth"]["tip"] - a["teeth"]["root"],
                               b["teeth"]["tip"] - b["teeth"]["root"])
                    middles = [p["teeth"]["from"] + p["teeth"]["to"] for p in (a, b)]
                    if abs(middles[0] - middles[1]) > 1e-9 or not 0.5 * deep < reach - far < deep:
                        continue
                    met += 1
                    with self.subTest(example=example.name, pair=(a["name"], b["name"])):
                        self.assertLess(self.clash(a, b), 2 * CHORD)
            self.assertGreater(met, 4)

    def clash(self, a, b):
        """By how much the teeth of a reach into those of b along b's circles, m."""
        worst = 0.0
        flank = [(math.hypot(x, y), math.atan2(x, y)) for x, y in b["teeth"]["half"]]
        for k in range(a["teeth"]["count"]):
            turn = a["teeth"]["phase"] + 2 * math.pi * k / a["teeth"]["count"]
            for sign in (1, -1):
                for x, y in a["teeth"]["half"]:
                    px = sign * x * math.cos(turn) - y * math.sin(turn) + a["origin"][0]
                    py = sign * x * math.sin(turn) + y * math.cos(turn) + a["origin"][1]
                    dx, dy = px - b["origin"][0], py - b["origin"][1]
                    r = math.hypot(dx, dy)
                    if not b["teeth"]["root"] < r < b["teeth"]["tip"]:
                        continue
                    pitch = 2 * math.pi / b["teeth"]["count"]
                    angle = math.atan2(dy, dx) - math.pi / 2 - b["teeth"]["phase"]
                    angle = abs((angle + pitch / 2) % pitch - pitch / 2)
                    half = next((h0 + (h1 - h0) * (r - r0) / (r1 - r0)
                                 for (r0, h0), (r1, h1) in zip(flank, flank[1:])
                                 if r0 <= r <= r1 and r1 > r0), 0.0)
                    worst = max(worst, (half - angle) * r)
        return worst

    def test_equal_shapes_are_one_mesh(self):
        glb, numbers = self.both(EXAMPLES[0])
        self.assertLessEqual(len(glb.json["meshes"]), len(glb.json["nodes"]))
        shapes = [json.dumps([p.get("section"), p.get("casing"), p.get("teeth")])
                  for p in numbers["parts"]]
        self.assertEqual(len(glb.json["meshes"]), len(set(shapes)))

    def test_the_same_bytes_and_a_clean_refusal(self):
        a, b = self.folder / "a.glb", self.folder / "b.glb"
        for path in (a, b):
            self.assertEqual(run("draw", EXAMPLES[0], "-o", path)[0], 0)
        self.assertEqual(a.read_bytes(), b.read_bytes())
        for option in (("--figure", "teeth"), ("--units", "us"), ("--at", "drive/hp")):
            refused = run("draw", EXAMPLES[0], "-o", self.folder / "c.glb", *option)
            self.assertEqual(refused[0], 2)
            self.assertIn(option[0] + " is for pictures", refused[2])
            self.assertFalse((self.folder / "c.glb").exists())

    def test_hostile_names_stay_text(self):
        text = EXAMPLES[0].read_text(encoding="utf-8")
        lines = text.splitlines()
        at = next(i for i, line in enumerate(lines) if line.startswith("title:"))
        bad = '</script>"\\\u202e' + "a" * 300
        lines[at] = "title: " + quoted(bad)
        path = self.folder / "bad.yaml"
        path.write_text("\n".join(lines) + "\n", encoding="utf-8")
        self.assertEqual(run("draw", path, "-o", self.folder / "bad.json")[0], 0)
        written = (self.folder / "bad.json").read_text(encoding="utf-8")
        self.assertNotIn("</script>", written)
        self.assertEqual(json.loads(written)["title"], bad)


if __name__ == "__main__":
    unittest.main()
