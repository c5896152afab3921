#!/usr/bin/env python3
"""What would a second, slow and plain program say of the same drive file?

Nothing here is shared with the C library: ratios are fractions, senses come from equal velocities
at the point of mesh, forces from the normal of the tooth surface and a torque that it has to give.
It reads well-formed files only and explains no mistakes.

    drive_second.py FILE           JSON: shafts, meshes, pads, spools, one entry a condition
    drive_second.py FILE --table   the same for people, with the speed bands

Axes: origin on the engine axis, x right and y up as seen from behind, z rearward.  SI throughout.
"""
import json
import math
import re
import sys
from fractions import Fraction

import yaml

UNITS = {
    "": 1.0, "%": 0.01, "m": 1.0, "mm": 1e-3, "um": 1e-6, "in": 0.0254, "ft": 0.3048,
    "rad": 1.0, "deg": math.pi / 180, "rpm": math.pi / 30, "rad/s": 1.0,
    "W": 1.0, "kW": 1e3, "MW": 1e6, "hp": 550 * 0.3048 * 0.45359237 * 9.80665,
    "N.m": 1.0, "kN.m": 1e3, "lbf.in": 0.45359237 * 9.80665 * 0.0254,
    "lbf.ft": 0.45359237 * 9.80665 * 0.3048, "s": 1.0, "min": 60.0, "h": 3600.0,
    "kg": 1.0, "lb": 0.45359237, "kg.m2": 1.0, "m/s": 1.0, "N": 1.0,
}
NUMBER = r"[-+]?(?:\d+\.?\d*|\.\d+)(?:[eE][-+]?\d+)?"
PAD_WORDS = ("cover", "hand turning", "open")
LOSS_CYLINDRICAL, LOSS_BEVEL = 0.005, 0.01


# ---- the file ----------------------------------------------------------------------------------

def plain(value):
    """The value of a long form {value: ..., source: ...}, or the value itself."""
    return value["value"] if isinstance(value, dict) and "value" in value else value


def quantity(value, default=None):
    """SI number of "34 N.m"; None for `unknown`; the default where the file is silent."""
    value = plain(value)
    if value is None:
        return default
    if value.strip() == "unknown":
        return None
    number, unit = re.fullmatch(rf"\s*({NUMBER})\s*(\S*)\s*", value).groups()
    return float(number) * UNITS[unit]


def band(value):
    """(low, high) of "6600..7300 rpm"; None for `unknown`."""
    value = plain(value).strip()
    if value == "unknown":
        return None
    low, high, unit = re.fullmatch(rf"({NUMBER})?\s*\.\.\s*({NUMBER})?\s*(\S+)", value).groups()
    return (float(low) * UNITS[unit] if low else -math.inf,
            float(high) * UNITS[unit] if high else math.inf)


def clock(value, from_front):
    """Radians clockwise from 12:00 as seen from behind."""
    value = plain(value)
    if value is None or value.strip() == "unknown":
        return None
    hours = re.fullmatch(r"\s*(\d+):(\d\d)\s*", value)
    if hours:
        angle = (int(hours[1]) % 12 + int(hours[2]) / 60) * math.pi / 6
    else:
        angle = quantity(value)
    return -angle if from_front else angle


def word(value, default=None):
    value = plain(value)
    return default if value is None else value.strip()


# ---- vectors -----------------------------------------------------------------------------------

def add(a, b):
    return [p + q for p, q in zip(a, b)]


def times(k, a):
    return [k * p for p in a]


def minus(a, b):
    return [p - q for p, q in zip(a, b)]


def dot(a, b):
    return sum(p * q for p, q in zip(a, b))


def cross(a, b):
    return [a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]]


def unit(a):
    return times(1 / math.sqrt(dot(a, a)), a)


Z = [0.0, 0.0, 1.0]


def outward(angle):
    """Unit vector in the direction of a clock angle."""
    return [math.sin(angle), math.cos(angle), 0.0]


# ---- the drive as a list of shafts -------------------------------------------------------------

class Shaft:
    def __init__(self, address, spool, axis, driver=None):
        self.address, self.spool, self.axis, self.driver = address, spool, axis, driver
        self.ratio, self.sense, self.place = Fraction(1), 0, None
        self.mesh, self.pads, self.children, self.way = None, {}, [], 0
        self.gears = []  # main gear first, then the steps
        self.name = address


class Mesh:
    def __init__(self, address, kind, driver, driven):
        self.address, self.kind, self.driver, self.driven = address, kind, driver, driven


class Drive:
    def __init__(self, path):
        with open(path, encoding="utf-8") as file:
            self.file = yaml.load(file, Loader=yaml.BaseLoader)
        self.from_front = word(self.file.get("sight"), "from behind") == "from front"
        self.conditions = list(self.file["conditions"])
        self.spools = list(self.file["spools"])
        self.accessories = self.file.get("accessories") or {}
        self.shafts, self.meshes, self.where = [], [], {}
        for spool in self.spools:
            self.add_spool(spool)

    # ---- building, which is also the kinematics: a shaft is finished when it is added

    def add_spool(self, spool):
        turns = word(self.file["spools"][spool]["turns"])
        shaft = Shaft(f"spools/{spool}", spool, Z)
        shaft.name = f"{spool} spool"
        # ccw seen from behind is positive about z
        shaft.sense = 1 if (turns == "ccw") != self.from_front else -1
        shaft.place = [0.0, 0.0]
        self.shafts.append(shaft)
        record = (self.file.get("drive") or {}).get(spool)
        if record:
            tower = self.add_tower(shaft, record, f"drive/{spool}")
            self.add_box(tower, record["box"], f"drive/{spool}/box")

    def add_tower(self, spool, record, address):
        tower, bevels = record["tower shaft"], record["take-off"]["bevels"]
        u = outward(clock(tower["clock"], self.from_front))
        side = 1 if word(bevels.get("side"), "rear") == "rear" else -1
        sigma = quantity(bevels.get("shaft angle"), math.pi / 2)
        axis = add(times(side * math.cos(sigma), Z), times(math.sin(sigma), u))
        shaft = Shaft(f"{address}/tower shaft", spool.spool, axis, spool)
        shaft.name = f"{spool.spool} tower shaft"
        shaft.place = times(quantity(tower["length"]), axis)[:2]
        # The gears lie along these directions from the point where the axes cross.
        self.add_bevel_mesh(f"{address}/take-off/bevels", bevels, spool, shaft,
                            times(side, Z), axis)
        return shaft

    def add_box(self, tower, box, address):
        self.box_gears, self.arc = box["gears"], quantity(box["arc"]["radius"])
        bevels = box["bevels"]
        angle = clock(box["arc"]["clock"], self.from_front)
        shaft = Shaft(f"{address}/input", tower.spool, Z, tower)
        shaft.name = f"{tower.spool} box input"
        shaft.place = times(self.arc, outward(angle))[:2]
        side = 1 if word(bevels.get("side"), "rear") == "rear" else -1
        sigma = quantity(bevels.get("shaft angle"), math.pi / 2)
        # The radial shaft's gear lies inside the box axis, towards the engine.
        u = unit([tower.axis[0], tower.axis[1], 0.0])
        inward = add(times(side * math.cos(sigma), Z), times(-math.sin(sigma), u))
        self.add_bevel_mesh(f"{address}/bevels", bevels, tower, shaft, inward, times(side, Z))
        hand = word(self.box_gears.get("hand"), "left")
        self.add_gears(shaft, box["input"], 1 if hand == "right" else -1)
        self.add_pads(shaft, box["input"])
        for name in ("clockwise", "anticlockwise"):
            way = 1 if (name == "clockwise") != self.from_front else -1
            self.add_chain(shaft, box.get(name) or [], f"{address}/{name}", way)
            if name == "clockwise":  # a branch of the input itself goes that way too
                self.add_chain(shaft, box["input"].get("branch") or [],
                               shaft.address + "/branch", way)

    def add_chain(self, driver, records, address, way):
        for number, record in enumerate(records, 1):
            shaft = self.add_box_shaft(driver, record, f"{address}/{number}", way)
            self.add_chain(shaft, record.get("branch") or [], shaft.address + "/branch", way)
            driver = shaft

    def add_box_shaft(self, driver, record, address, way):
        shaft = Shaft(address, driver.spool, Z, driver)
        shaft.way = way
        source = {"gear": 0, "step": 1, "step 2": 2, "step 3": 3}.get(word(record.get("from")))
        gear = driver.gears[len(driver.gears) - 1 if source is None else source]
        self.add_gears(shaft, record, -gear["hand"])
        self.add_pads(shaft, record)
        toward = clock(record.get("toward"), self.from_front)
        self.add_cylindrical_mesh(shaft, gear, shaft.gears[0], toward)
        return shaft

    def add_gears(self, shaft, record, hand):
        """hand: of the gear in the mesh that drives the shaft; all gears of a shaft have it."""
        steps = record.get("step") or []
        for gear in [record] + (steps if isinstance(steps, list) else [steps]):
            own = gear if plain(gear.get("module")) is not None else self.box_gears
            helix = quantity(self.box_gears.get("helix angle"), 0.0)
            shaft.gears.append({
                "z": int(plain(gear["teeth"])), "m": quantity(own["module"]),
                "alpha": quantity(self.box_gears.get("pressure angle"), math.radians(20)),
                "beta": helix, "hand": hand, "x": quantity(gear.get("shift"), 0.0),
                "face": quantity(gear.get("face")),
            })

    def add_pads(self, shaft, record):
        names = []
        for face in ("front", "rear"):
            use = word(record.get(face))
            if use is None:
                continue
            shaft.pads[face] = use
            if use not in PAD_WORDS:
                self.where[use] = shaft
                names.append(use)
        if names and shaft.name == shaft.address:
            shaft.name = " + ".join(names)
        shaft.name = word(record.get("name"), shaft.name)

    # ---- meshes: sense from equal velocities where the teeth touch

    def finish_mesh(self, mesh, point_1, point_2):
        """point_i: from a point on the axis of that gear to the point of mesh."""
        driver, driven = mesh.driver, mesh.driven
        v_1 = cross(driver.axis, point_1)  # of the driver at 1 rad/s about its own axis
        v_2 = cross(driven.axis, point_2)
        mesh.r = [math.sqrt(dot(v_1, v_1)), math.sqrt(dot(v_2, v_2))]
        turn = dot(v_1, v_2) / dot(v_2, v_2)  # of the driven: v_1 = turn * v_2
        step = Fraction(mesh.z[0], mesh.z[1])
        assert abs(abs(turn) - float(step)) < 1e-9 * float(step), "the pitch points differ"
        driven.ratio = driver.ratio * step
        driven.sense = driver.sense * (1 if turn > 0 else -1)
        driven.mesh = mesh
        mesh.points = [point_1, point_2]
        self.shafts.append(driven)
        self.meshes.append(mesh)
        driver.children.append(mesh)

    def add_bevel_mesh(self, address, bevels, driver, driven, along_1, along_2):
        mesh = Mesh(address, "bevel", driver, driven)
        mesh.z = [int(plain(z)) for z in bevels["teeth"]]
        mesh.alpha = quantity(bevels.get("pressure angle"), math.radians(20))
        mesh.beta = quantity(bevels.get("spiral"), math.radians(35))
        mesh.hand = 1 if word(bevels.get("hand"), "left") == "right" else -1
        mesh.loss = quantity(bevels.get("loss"), LOSS_BEVEL)
        sigma = math.acos(dot(along_1, along_2))
        delta = math.atan2(math.sin(sigma), mesh.z[1] / mesh.z[0] + math.cos(sigma))
        R = quantity(bevels["module"]) * mesh.z[0] / 2 / math.sin(delta)
        R -= quantity(bevels["face"]) / 2  # the middle of the face width
        # A line in the plane of both axes, delta away from the driver's and towards the other.
        sideways = unit(minus(along_2, times(dot(along_1, along_2), along_1)))
        line = add(times(math.cos(delta), along_1), times(math.sin(delta), sideways))
        mesh.along = [along_1, along_2]
        mesh.line = line
        # At the point of mesh a tooth of the driver runs along the cone's line, its outer half
        # turned by the spiral angle: for a right hand, clockwise as seen from the apex along the
        # axis of the gear, which is positive about the direction in which the gear lies.
        tangent = unit(cross(along_1, line))
        mesh.tooth = add(times(math.cos(mesh.beta), line),
                         times(mesh.hand * math.sin(mesh.beta), tangent))
        mesh.tangent = tangent
        # From the cone of the driver towards the cone of the driven.
        mesh.across = unit(cross(tangent, line))
        if dot(mesh.across, along_2) < 0:
            mesh.across = times(-1, mesh.across)
        mesh.a_w = 0.0
        self.finish_mesh(mesh, times(R, line), times(R, line))

    def add_cylindrical_mesh(self, driven, gear_1, gear_2, toward):
        driver = driven.driver
        mesh = Mesh(driven.address, "cylindrical", driver, driven)
        mesh.z = [gear_1["z"], gear_2["z"]]
        mesh.alpha, mesh.beta, mesh.hand = gear_1["alpha"], gear_1["beta"], gear_1["hand"]
        mesh.loss = quantity(self.box_gears.get("loss"), LOSS_CYLINDRICAL)
        mesh.a_w, mesh.alpha_wt = centre_distance(gear_1, gear_2)
        driven.place = self.next_place(driver, mesh.a_w, toward, driven.way)
        if driven.place is None or driver.place is None:
            direction, mesh.placed = [1.0, 0.0, 0.0], False
        else:
            direction = unit([driven.place[0] - driver.place[0],
                              driven.place[1] - driver.place[1], 0.0])
            mesh.placed = True
        r_1 = mesh.a_w * mesh.z[0] / (mesh.z[0] + mesh.z[1])
        mesh.across = direction
        mesh.tangent = cross(Z, direction)
        # Right hand: a screw that goes rearward turns ccw seen from behind.
        slope = math.tan(mesh.beta) * 2 * r_1 / (gear_1["z"] * gear_1["m"] / math.cos(mesh.beta))
        mesh.tooth = unit(add(Z, times(mesh.hand * slope, mesh.tangent)))
        # What the transverse working pressure angle is in the plane normal to the tooth.
        mesh.alpha_normal = math.atan(math.tan(mesh.alpha_wt) * math.cos(math.atan(slope)))
        self.finish_mesh(mesh, times(r_1, direction), times(r_1 - mesh.a_w, direction))

    def next_place(self, driver, a_w, toward, way):
        if driver.place is None:
            return None
        if toward is not None:
            return add(driver.place, times(a_w, outward(toward)[:2]))
        # Walk round the arc: distance to the driver is R^2 + d^2 - 2 R d cos(step) = a_w^2.
        d = math.hypot(*driver.place)
        if d == 0:
            return None
        cosine = (self.arc ** 2 + d ** 2 - a_w ** 2) / (2 * self.arc * d)
        if abs(cosine) > 1:
            return None
        here = math.atan2(driver.place[0], driver.place[1])
        return times(self.arc, outward(here + way * math.acos(cosine)))[:2]

    # ---- demands

    def spool_speed(self, spool, condition):
        return quantity(self.file["conditions"][condition].get(spool))

    def speed(self, shaft, condition):
        spool = self.spool_speed(shaft.spool, condition)
        return None if spool is None else float(shaft.ratio) * spool

    def demand(self, name, shaft, condition):
        """(torque absorbed, standing) at the pad of an accessory."""
        accessory, n = self.accessories[name], self.speed(shaft, condition)
        drives = quantity((accessory.get("drives") or {}).get(condition))
        if drives:
            return -drives, "driving"
        power = accessory.get("power") or {}
        clutch = word(accessory.get("clutch"),
                      "overrunning" if word(accessory.get("for")) == "start" else "none")
        if clutch == "overrunning" and condition not in power:
            return 0.0, "overrunning"
        if not power:
            return 0.0, "absent"
        if condition in power:
            P = quantity(power[condition])
        else:  # torque of the nearest named condition in spool speed
            here = self.spool_speed(shaft.spool, condition)
            named = [c for c in self.conditions
                     if c in power and quantity(power[c]) is not None
                     and self.spool_speed(shaft.spool, c)]
            if not named:
                return 0.0, "unknown"
            near = min(named, key=lambda c: abs(self.spool_speed(shaft.spool, c) - here))
            return quantity(power[near]) / self.speed(shaft, near), "kept"
        if P is None or (P > 0 and n == 0):
            return 0.0, "unknown"
        return (P / n if n > 0 else 0.0), "given"

    # ---- torque and force

    def solve(self, condition):
        T_shaft, pads, meshes, spools = {}, {}, {}, {}
        for shaft in reversed(self.shafts):
            n, T = self.speed(shaft, condition), 0.0
            for face, use in shaft.pads.items():
                torque, standing = (0.0, "none") if use in PAD_WORDS else self.demand(
                    use, shaft, condition)
                # What stands still at no speed takes nothing.
                if n == 0 and standing == "kept":
                    torque = 0.0
                pads[f"{shaft.address}/{face}"] = {
                    "name": use, "T": torque, "P": torque * n, "n": n, "standing": standing,
                    "turns": self.facing(shaft, face)}
                T += torque
            T += sum(meshes[m.address]["T"][0] for m in shaft.children)
            T_shaft[shaft] = T
            if shaft.mesh:
                meshes[shaft.mesh.address] = self.load(shaft.mesh, T, condition)
        for spool in self.spools:
            shaft = next(s for s in self.shafts if s.address == f"spools/{spool}")
            n, T = self.speed(shaft, condition), T_shaft[shaft]
            spools[spool] = {"T": T, "P": None if n is None else T * n, "n": n}
        return {"pads": pads, "meshes": meshes, "spools": spools,
                "speed": {s.address: self.speed(s, condition) for s in self.shafts}}

    @staticmethod
    def facing(shaft, face):
        """How somebody sees the shaft turn who faces the pad."""
        looking = Z if face == "front" else times(-1, Z)  # front pads are faced looking rearward
        # A turn that is positive about the direction of sight looks clockwise.
        return "cw" if dot(times(shaft.sense, shaft.axis), looking) > 0 else "ccw"

    def load(self, mesh, T_2, condition):
        step = mesh.z[0] / mesh.z[1]
        n = [self.speed(mesh.driver, condition), self.speed(mesh.driven, condition)]
        flow = (T_2 > 0) - (T_2 < 0)
        keep = 1 - mesh.loss
        T_1 = T_2 * step / keep if flow > 0 else T_2 * step * keep
        P = [T_1 * n[0], T_2 * n[1]]
        F_t = max(abs(T_1) / mesh.r[0], abs(T_2) / mesh.r[1])
        answer = {"T": [T_1, T_2], "P": P, "lost": abs(P[0] - P[1]), "flow": flow,
                  "F_t": F_t, "v": n[0] * mesh.r[0], "f_z": n[0] * mesh.z[0] / (2 * math.pi),
                  "flank": {1: ["leading", "trailing"], -1: ["trailing", "leading"],
                            0: ["none", "none"]}[flow]}
        answer.update(self.force(mesh, flow, F_t))
        return answer

    def force(self, mesh, flow, F_t):
        """The force that the driven gear feels, from the normal of the touching flanks."""
        if flow == 0:
            return {"force": [0.0, 0.0, 0.0], "F_r": [0.0, 0.0], "F_a": [0.0, 0.0]}
        alpha = mesh.alpha if mesh.kind == "bevel" else mesh.alpha_normal
        # Square to the tooth, in the plane that touches both pitch surfaces.
        along = unit(cross(mesh.tooth, mesh.across))
        # Outward flow turns the driven gear the way it turns; inward flow holds it back.
        arm = cross(mesh.points[1], along)
        wanted = flow * mesh.driven.sense
        if dot(arm, mesh.driven.axis) * wanted < 0:
            along = times(-1, along)
        normal = add(times(math.cos(alpha), along), times(math.sin(alpha), mesh.across))
        torque = abs(dot(cross(mesh.points[1], normal), mesh.driven.axis))
        force = times(F_t * mesh.r[1] / torque, normal)
        answer = {"force": force if mesh.kind == "bevel" or mesh.placed else None}
        F_r, F_a = [], []
        for gear, (felt, point) in enumerate(zip((times(-1, force), force), mesh.points)):
            axis = mesh.along[gear] if mesh.kind == "bevel" else Z
            out = unit(minus(point, times(dot(point, axis), axis)))
            F_r.append(-dot(felt, out))
            F_a.append(dot(felt, axis))
        answer.update({"F_r": F_r, "F_a": F_a})
        return answer

    # ---- answers

    def answer(self):
        shafts = [{"address": s.address, "name": s.name, "ratio": [s.ratio.numerator,
                   s.ratio.denominator], "sense": s.sense,
                   "place": list(s.place) if s.place is not None else None} for s in self.shafts]
        meshes = [{"address": m.address, "kind": m.kind, "z": m.z, "r": m.r, "a_w": m.a_w,
                   "gcd": math.gcd(*m.z)} for m in self.meshes]
        return {"shafts": shafts, "meshes": meshes,
                "conditions": {c: self.solve(c) for c in self.conditions}}


def centre_distance(gear_1, gear_2):
    """Working centre distance and transverse working pressure angle, without backlash."""
    beta, alpha = gear_1["beta"], gear_1["alpha"]
    alpha_t = math.atan(math.tan(alpha) / math.cos(beta))
    z = gear_1["z"] + gear_2["z"]
    a = gear_1["m"] * z / 2 / math.cos(beta)
    wanted = (math.tan(alpha_t) - alpha_t
              + 2 * math.tan(alpha) * (gear_1["x"] + gear_2["x"]) / z)
    low, high = 0.0, math.pi / 2 - 1e-9
    for _ in range(200):  # halve until nothing is left to halve
        middle = (low + high) / 2
        if math.tan(middle) - middle < wanted:
            low = middle
        else:
            high = middle
    alpha_wt = (low + high) / 2 if gear_1["x"] + gear_2["x"] else alpha_t
    return a * math.cos(alpha_t) / math.cos(alpha_wt), alpha_wt


# ---- for people --------------------------------------------------------------------------------

def rpm(value):
    return value * 30 / math.pi


def band_mark(accessory, condition, n):
    speed = accessory.get("speed") or {}
    text = speed.get(condition, speed.get("always"))
    limits = band(text) if text is not None else None
    if limits is None:
        return " "
    return "<" if n < limits[0] * (1 - 1e-12) else ">" if n > limits[1] * (1 + 1e-12) else "="


def print_table(drive):
    solved = {c: drive.solve(c) for c in drive.conditions}
    width = max(12, max(len(c) for c in drive.conditions) + 1)
    print("Pad speeds, rpm ('=' inside its band, '<' below, '>' above); turns: facing the pad")
    print(f"{'pad':44}{'turns':>6}{'wants':>7}" + "".join(f"{c:>{width}}" for c in drive.conditions))
    for address in sorted(solved[drive.conditions[0]]["pads"]):
        rows = [solved[c]["pads"][address] for c in drive.conditions]
        accessory = drive.accessories.get(rows[0]["name"], {})
        label = f"{address.split('drive/')[1]}: {rows[0]['name']}"
        cells = "".join(f"{rpm(r['n']):>{width - 1}.0f}{band_mark(accessory, c, r['n'])}"
                        for c, r in zip(drive.conditions, rows))
        print(f"{label:44}{rows[0]['turns']:>6}{word(accessory.get('turns'), '-'):>7}{cells}")
    print("\nPad torque, N.m (positive: absorbed)")
    for address in sorted(solved[drive.conditions[0]]["pads"]):
        rows = [solved[c]["pads"][address] for c in drive.conditions]
        print(f"{address.split('drive/')[1] + ': ' + rows[0]['name']:57}"
              + "".join(f"{r['T']:>{width}.2f}" for r in rows))
    print("\nTaken from the spools, kW (negative: driven)")
    for spool in drive.spools:
        print(f"{spool:57}" + "".join(
            f"{(solved[c]['spools'][spool]['P'] or 0) / 1e3:>{width}.3f}" for c in drive.conditions))
    print("\nShafts: ratio to the spool, sense from behind, clock from behind, radius mm, x mm, y mm")
    for shaft in drive.shafts:
        place = "not reachable"
        if shaft.place is not None:
            x, y = shaft.place
            angle = math.degrees(math.atan2(x, y)) % 360
            place = (f"{int(angle // 30) or 12:2d}:{angle % 30 * 2:04.1f}"
                     f"{math.hypot(x, y) * 1e3:9.2f}{x * 1e3:10.2f}{y * 1e3:10.2f}")
        turn = "ccw" if shaft.sense > 0 else "cw"
        print(f"{shaft.address:44}{str(shaft.ratio):>14} = {float(shaft.ratio):.5f} {turn:>4}  {place}"
              f"  {shaft.name}")
    print("\nMeshes: teeth, common factor, centre distance mm, greatest v m/s, greatest F_t N")
    for mesh in drive.meshes:
        loads = [solved[c]["meshes"][mesh.address] for c in drive.conditions]
        print(f"{mesh.address:44}{mesh.z[0]:>5}/{mesh.z[1]:<5}{math.gcd(*mesh.z):>3}"
              f"{mesh.a_w * 1e3:>10.3f}{max(m['v'] for m in loads):>9.1f}"
              f"{max(m['F_t'] for m in loads):>10.0f}")
    idle = sorted(set(drive.accessories) - set(drive.where))
    if idle:
        print("\nOn no pad: " + ", ".join(idle))


def main(arguments):
    if not arguments or arguments[0].startswith("-"):
        sys.exit(__doc__)
    drive = Drive(arguments[0])
    if "--table" in arguments[1:]:
        print_table(drive)
    else:
        json.dump(drive.answer(), sys.stdout, indent=1)
        print()


if __name__ == "__main__":
    main(sys.argv[1:])
