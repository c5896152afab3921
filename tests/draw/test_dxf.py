# ctest: release-only    (whole commands take minutes under the sanitizers)
"""Do the DXF files of `draw` say, to readers that are not ours, what the drive says, to 1e-6 mm?

A reader of this file's own takes the groups apart; the extents that it finds must be those of the
header, and gears must stand where `check --json` has them.  A second reader, of another house,
audits the same files (python3-ezdxf of Debian).
"""
import json
import math
import pathlib
import sys
import unittest

sys.path.insert(0, str(pathlib.Path(__file__).resolve().parents[1] / "apps"))
from command_line import EXAMPLES, ROOT, InFolder, answer, quoted, run  # noqa: E402

try:
    import ezdxf
    from ezdxf import bbox
except ImportError:
    ezdxf = None

PLANS = ("behind", "front", "pads", "unrolled", "float")
NEAR = 1e-6  # mm
HOSTILE = ("  0 EOF", "%%c%%u", "\\U+0041^J", "\u202edrowkcab \u00e4\u03b1", "a" * 400)


def groups(text):
    lines = text.split("\n")
    assert lines[-1] == "" and len(lines) % 2 == 1, "a group is two lines"
    return [(int(lines[i]), lines[i + 1]) for i in range(0, len(lines) - 1, 2)]


def corners(fields):
    """Of a polyline, in the order in which they stand."""
    return list(zip([float(v) for c, v in fields if c == 10],
                    [float(v) for c, v in fields if c == 20]))


def area(points):
    return 0.5 * abs(sum(points[i - 1][0] * points[i][1] - points[i][0] * points[i - 1][1]
                         for i in range(len(points))))


class Reader:
    """Header variables, layers and shapes of one file."""

    def __init__(self, text):
        self.header, self.layers, self.shapes, self.kinds = {}, {}, [], []
        section, one, name = None, None, None
        for code, value in groups(text):
            if code == 0:
                if one is not None and section == "ENTITIES" and one[0] != "SECTION":
                    self.shapes.append(one)
                if one is not None and one[0] == "LAYER" and section == "TABLES":
                    self.layers[dict(one[1])[2]] = dict(one[1])
                one = (value, [])
                section = None if value == "ENDSEC" else section
                self.kinds.append(value)
            elif code == 2 and one and one[0] == "SECTION":
                section = value
            elif section == "HEADER":
                if code == 9:
                    name = value
                    self.header[name] = {}
                else:
                    self.header[name][code] = value
            elif one is not None:
                one[1].append((code, value))

    def extents(self):
        """Of all shapes but words."""
        points = []
        for kind, fields in self.shapes:
            first = {}
            for code, value in fields:
                first.setdefault(code, value)
            number = {code: float(v) for code, v in first.items()
                      if 10 <= code <= 59}
            if kind == "LINE":
                points += [(number[10], number[20]), (number[11], number[21])]
            elif kind == "CIRCLE":
                x, y, r = number[10], number[20], number[40]
                points += [(x - r, y - r), (x + r, y + r)]
            elif kind == "ARC":
                x, y, r = number[10], number[20], number[40]
                start, end = number[50] % 360, number[51] % 360
                end += 360 if end <= start else 0
                angles = [start, end] + [a for a in range(0, 720, 90) if start < a < end]
                points += [(x + r * math.cos(math.radians(a)), y + r * math.sin(math.radians(a)))
                           for a in angles]
            elif kind == "LWPOLYLINE":
                xs = [float(v) for c, v in fields if c == 10]
                ys = [float(v) for c, v in fields if c == 20]
                assert len(xs) == len(ys) == int(first[90])
                points += list(zip(xs, ys))
            else:
                assert kind == "TEXT", kind
        return (min(p[0] for p in points), min(p[1] for p in points),
                max(p[0] for p in points), max(p[1] for p in points))

    def on(self, layer, kind):
        return [dict(fields) for k, fields in self.shapes if k == kind and (8, layer) in fields]


class Dxf(InFolder):
    def draw(self, drive, figure, *words):
        path = self.folder / f"{figure}.dxf"
        code, _, err = run("draw", drive, "--figure", figure, "-o", path, *words)
        self.assertEqual(code, 0, err)
        return path

    def read(self, drive, figure, *words):
        return Reader(self.draw(drive, figure, *words).read_text("ascii"))

    def test_extents_of_the_header_are_those_of_the_shapes(self):
        for drive in EXAMPLES:
            for figure in PLANS:
                for words in ((), ("--units", "us")):
                    file = self.read(drive, figure, *words)
                    low, high = file.header["$EXTMIN"], file.header["$EXTMAX"]
                    said = (float(low[10]), float(low[20]), float(high[10]), float(high[20]))
                    for a, b in zip(file.extents(), said):
                        self.assertLess(abs(a - b), NEAR, (drive.name, figure))

    def test_pads_stand_where_who_faces_them_sees_them(self):
        for drive in EXAMPLES:
            wanted = answer("check", drive)
            file = self.read(drive, "pads")
            places = {s["address"]: (s["x"]["value"], s["y"]["value"])
                      for s in wanted["shafts"] if s.get("x", {}).get("value") is not None}
            rear = [(float(c[10]), float(c[20])) for c in file.on("BODY-REAR", "CIRCLE")]
            front = [(float(c[10]), float(c[20])) for c in file.on("BODY-FRONT", "CIRCLE")]
            self.assertGreater(len(rear) + len(front), 4)
            for x, y in rear:
                self.assertTrue(any(math.dist((x, y), at) < NEAR for at in places.values()))
            # The second engine axis stands to the right; what is seen from the front is mirrored.
            for x, y in front:
                asides = [x + at[0] for at in places.values() if abs(at[1] - y) < NEAR]
                self.assertTrue(asides)
            shared = [{round(x + at[0], 3) for at in places.values() if abs(at[1] - y) < NEAR}
                      for x, y in front]
            self.assertEqual(len(set.intersection(*shared)), 1, (drive.name, shared))

    def test_gears_stand_where_the_answer_has_them(self):
        for drive in EXAMPLES:
            wanted = answer("check", drive)
            circles = self.read(drive, "behind").on("GEAR-PITCH", "CIRCLE")
            places = {(round(float(c[10]), 6), round(float(c[20]), 6)) for c in circles}
            boxes = [s for s in wanted["shafts"] if s.get("x", {}).get("value") is not None
                     and "/box" in s["address"]]
            self.assertGreater(len(boxes), 5)
            for shaft in boxes:
                at = shaft["x"]["value"], shaft["y"]["value"]
                self.assertLess(min(math.dist(at, p) for p in places), 2 * NEAR,
                                shaft["address"])

    def test_the_front_view_is_the_mirror_of_the_other(self):
        for drive in EXAMPLES:
            behind, front = self.read(drive, "behind"), self.read(drive, "front")
            for layer in ("GEAR-TIP", "BODY-FRONT", "KEEP-OUT"):
                one = sorted((-float(c[10]), float(c[20]), float(c[40]))
                             for c in behind.on(layer, "CIRCLE"))
                other = sorted((float(c[10]), float(c[20]), float(c[40]))
                               for c in front.on(layer, "CIRCLE"))
                self.assertEqual(len(one), len(other))
                for a, b in zip(one, other):
                    self.assertLess(math.dist(a, b), NEAR)

    def test_the_mark_is_100_mm_long_in_both_units(self):
        for words, units, inch in (((), "4", 1.0), (("--units", "us"), "1", 25.4)):
            file = self.read(EXAMPLES[0], "behind", *words)
            self.assertEqual(file.header["$INSUNITS"][70], units)
            lengths = [math.dist((float(c[10]), float(c[20])), (float(c[11]), float(c[21]))) * inch
                       for c in file.on("REFERENCE-100MM", "LINE")]
            self.assertLess(abs(max(lengths) - 100.0), NEAR)

    def test_sections_are_those_of_the_bodies(self):
        """Bevels, radial shafts and box inputs: each polygon is a half of a section of the .json,
        moved and turned, so its area stays; and the radial shaft is as long and thick as told."""
        for drive in EXAMPLES:
            bodies = self.folder / "bodies.json"
            self.assertEqual(run("draw", drive, "-o", bodies)[0], 0)
            parts = json.loads(bodies.read_text(encoding="utf-8"))["parts"]
            file = self.read(drive, "float")
            for layer, kind in (("BEVEL-GEAR", "bevel"), ("RADIAL-SHAFT", "radial shaft")):
                drawn = sorted(area(corners(f)) for k, f in file.shapes
                               if k == "LWPOLYLINE" and (8, layer) in f)
                told = sorted(1e6 * area(p["section"]) for p in parts if p["kind"] == kind
                              for _ in range(2))
                self.assertEqual(len(drawn), len(told), (drive.name, layer))
                for a, b in zip(drawn, told):
                    self.assertLess(abs(a - b), 1e-6 * b)
            lengths = sorted(math.dist((float(c[10]), float(c[20])), (float(c[11]), float(c[21])))
                             for c in file.on("DIMENSIONS", "LINE"))
            told = sorted(1e3 * max(z for z, _ in p["section"]) for p in parts
                          if p["kind"] == "radial shaft")
            for a, b in zip(lengths[-len(told):], told, strict=True):
                self.assertLess(abs(a - b), NEAR)

    def test_every_shape_is_on_a_layer_that_is_described(self):
        file = self.read(EXAMPLES[0], "behind")
        for _, fields in file.shapes:
            self.assertIn(dict(fields)[8], file.layers)
        self.assertGreater(len({dict(f)[8] for _, f in file.shapes}), 10)

    def test_another_reader_finds_nothing_to_mend(self):
        if ezdxf is None:
            self.skipTest("python3-ezdxf is not installed")
        for drive in EXAMPLES:
            for figure in PLANS:
                path = self.draw(drive, figure)
                file = ezdxf.readfile(path)
                audit = file.audit()
                self.assertEqual([e.message for e in audit.errors + audit.fixes], [])
                shapes = [e for e in file.modelspace() if e.dxftype() not in ("TEXT", "ARC")]
                box = bbox.extents(shapes, fast=True)
                # Of arcs its fast way takes the control points, the other one chords.
                for arc in file.modelspace().query("ARC"):
                    exact = arc.construction_tool().bounding_box
                    box.extend([(*exact.extmin, 0), (*exact.extmax, 0)])
                own = Reader(path.read_text("ascii")).extents()
                for a, b in zip(own, (box.extmin.x, box.extmin.y, box.extmax.x, box.extmax.y)):
                    self.assertLess(abs(a - b), NEAR)

    def test_hostile_names_stay_one_harmless_line(self):
        source = (ROOT / "examples/trainer.yaml").read_text()
        title = next(line for line in source.splitlines() if line.startswith("title:"))
        plain = self.read(ROOT / "examples/trainer.yaml", "behind")
        for name in HOSTILE:
            drive = self.folder / "hostile.yaml"
            drive.write_text(source.replace(title, f"title: {quoted(name)}"))
            path = self.draw(drive, "behind")
            file = Reader(path.read_text("ascii"))
            self.assertEqual(len(file.shapes), len(plain.shapes))
            self.assertEqual(file.kinds.count("EOF"), 1)
            texts = [dict(f)[1] for k, f in file.shapes if k == "TEXT"]
            for text in texts:
                self.assertNotIn("%", text)
                self.assertNotIn("^", text)
            if ezdxf is not None:
                self.assertEqual(ezdxf.readfile(path).audit().errors, [])

    def test_what_has_no_size_is_refused_and_a_folder_gets_the_plans(self):
        code, _, err = run("draw", EXAMPLES[0], "--figure", "margins", "-o", self.folder / "x.dxf")
        self.assertEqual(code, 2)
        self.assertIn("behind, front, pads, unrolled", err)
        self.assertFalse((self.folder / "x.dxf").exists())
        code, _, err = run("draw", EXAMPLES[0], "--format", "dxf", "-o", f"{self.folder}/all/")
        self.assertEqual(code, 0, err)
        self.assertEqual(sorted(p.name for p in (self.folder / "all").iterdir()),
                         sorted(f"{name}.dxf" for name in PLANS))

    def test_bytes_depend_on_nothing_but_the_drive(self):
        first = self.draw(EXAMPLES[0], "behind").read_bytes()
        moved = self.folder / "moved.dxf"
        run("draw", EXAMPLES[0], "-o", moved, env={"LC_ALL": "de_DE.UTF-8", "TZ": "Pacific/Apia"})
        self.assertEqual(first, moved.read_bytes())


if __name__ == "__main__":
    unittest.main()
