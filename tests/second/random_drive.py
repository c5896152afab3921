"""Drive files of any shape, the same for the same seed, for programs that should agree on them.

A drive is held as plain Python values as seen from behind and written down in either sight, so
that the two texts describe one and the same machine.
"""
import random

CONDITIONS = ("crank", "light-off", "ground idle", "cruise", "take-off", "red line")
RADIUS = {"hp": 330.0, "lp": 480.0}


def turned(word):
    return {"cw": "ccw", "ccw": "cw"}[word]


class Writer:
    """Writes what is seen in the sight of the file."""

    def __init__(self, from_front):
        self.from_front, self.lines = from_front, []

    def turns(self, word):
        return turned(word) if self.from_front else word

    def clock(self, minutes):
        """A clock time in minutes of a twelve-hour dial, seen from behind."""
        minutes = (-minutes if self.from_front else minutes) % 720
        return f'"{minutes // 60 or 12}:{minutes % 60:02d}"'

    def way(self, clockwise):
        return "clockwise" if clockwise != self.from_front else "anticlockwise"

    def line(self, depth, text):
        self.lines.append("  " * depth + text)


class RandomDrive:
    def __init__(self, seed):
        self.dice = random.Random(seed)
        self.conditions = CONDITIONS[: self.dice.randint(1, len(CONDITIONS))]
        self.spools = ["hp", "lp"][: self.dice.randint(1, 2)]
        self.turns = {s: self.dice.choice(("cw", "ccw")) for s in self.spools}
        self.speed = {c: {s: self.dice.choice((0, 0.5, 1, 1, 1)) * self.dice.randint(500, 25000)
                          for s in self.spools} for c in self.conditions}
        self.accessories = {}
        self.boxes = {s: self.box() for s in self.spools}

    # ---- what there is

    def bevels(self):
        pair = {
            "teeth": [self.dice.randint(25, 60), self.dice.randint(25, 60)],
            "module": f"{self.dice.choice((2, 2.4, 3))} mm",
            "spiral": f"{self.dice.choice((0, 20, 35))} deg",
            "face": f"{self.dice.randint(8, 18)} mm",
        }
        if self.dice.random() < 0.8:
            pair["hand"] = self.dice.choice(("left", "right"))
        if self.dice.random() < 0.8:
            pair["side"] = self.dice.choice(("front", "rear"))
        if self.dice.random() < 0.5:
            pair["loss"] = f"{self.dice.uniform(0, 3):.3f} %"
        if self.dice.random() < 0.3:
            pair["pressure angle"] = "22.5 deg"
        return pair

    def box(self):
        gears = {"module": "2 mm"}
        if self.dice.random() < 0.5:
            gears["pressure angle"] = "25 deg"
        if self.dice.random() < 0.5:
            gears["helix angle"] = f"{self.dice.randint(5, 25)} deg"
            gears["hand"] = self.dice.choice(("left", "right"))
        if self.dice.random() < 0.5:
            gears["loss"] = f"{self.dice.uniform(0, 2):.3f} %"
        minutes = self.dice.randrange(0, 720, 5)
        return {"clock": minutes, "take_off": self.bevels(), "bevels": self.bevels(),
                "gears": gears, "input": self.shaft(2),
                "chains": {True: self.chain(4, 0), False: self.chain(4, 0)}}

    def chain(self, most, depth):
        shafts, steps = [], None
        for _ in range(self.dice.randint(0, most)):
            shaft = self.shaft(0)
            if self.dice.random() < 0.2:
                shaft["toward"] = self.dice.randrange(0, 720, 10)
            if steps and self.dice.random() < 0.3:
                shaft["from"] = self.dice.choice(["gear", "step", "step 2"][: steps + 1])
            if depth == 0 and self.dice.random() < 0.25:
                shaft["branch"] = self.chain(2, 1)
            shafts.append(shaft)
            steps = len(shaft["steps"])
        return shafts

    def shaft(self, least_pads):
        shaft = {"teeth": self.dice.randint(17, 90), "face": f"{self.dice.randint(8, 25)} mm",
                 "pads": {}, "steps": []}
        if self.dice.random() < 0.3:
            shaft["shift"] = f"{self.dice.uniform(-0.2, 0.5):.3f}"
        for _ in range(self.dice.choice((0, 0, 0, 1, 2))):
            shaft["steps"].append(self.dice.randint(17, 90))
        for face in ("front", "rear"):
            if least_pads or self.dice.random() < 0.5:
                shaft["pads"][face] = self.pad()
        return shaft

    def pad(self):
        if self.dice.random() < 0.2:
            return self.dice.choice(("cover", "hand turning", "open"))
        name = f"unit {len(self.accessories) + 1}"
        self.accessories[name] = self.accessory()
        return name

    def accessory(self):
        some = [c for c in self.conditions if self.dice.random() < 0.6]
        accessory = {"for": self.dice.choice(("engine", "aircraft", "start")),
                     "turns": self.dice.choice(("cw", "ccw", "either"))}
        power = {c: self.dice.choice((f"{self.dice.uniform(0.1, 60):.3f} kW",
                                      f"{self.dice.uniform(1, 80):.3f} hp", "0 kW"))
                 for c in some}
        if power:
            accessory["power"] = power
        if accessory["for"] == "start" or self.dice.random() < 0.1:
            accessory["drives"] = {c: self.dice.choice((f"{self.dice.uniform(5, 400):.2f} N.m",
                                                        f"{self.dice.uniform(50, 3000):.1f} lbf.in"))
                                   for c in self.conditions[:2]}
        if self.dice.random() < 0.3:
            accessory["clutch"] = self.dice.choice(("none", "overrunning"))
        return accessory

    # ---- as text

    def text(self, from_front):
        out = Writer(from_front)
        out.line(0, "towershaft: 1")
        out.line(0, "title: drawn by lot")
        out.line(0, f"sight: {'from front' if from_front else 'from behind'}")
        out.line(0, "conditions:")
        for condition in self.conditions:
            speeds = ", ".join(f"{s}: {v} rpm" for s, v in self.speed[condition].items())
            out.line(1, f"{condition}: {{{speeds}, hours: 100 h}}")
        out.line(0, "spools:")
        for spool in self.spools:
            out.line(1, f"{spool}: {{turns: {out.turns(self.turns[spool])}}}")
        if self.accessories:
            out.line(0, "accessories:")
        for name, accessory in self.accessories.items():
            out.line(1, f"{name}:")
            for key, value in accessory.items():
                out.line(2, f"{key}: {flow(value)}")
        out.line(0, "drive:")
        for spool in self.spools:
            self.write_spool(out, spool)
        return "\n".join(out.lines) + "\n"

    def write_spool(self, out, spool):
        box, clock = self.boxes[spool], out.clock(self.boxes[spool]["clock"])
        out.line(1, f"{spool}:")
        out.line(2, f"take-off: {{bevels: {flow(box['take_off'])}}}")
        out.line(2, f"tower shaft: {{clock: {clock}, length: {RADIUS[spool]} mm, outside: 26 mm}}")
        out.line(2, "box:")
        out.line(3, f"arc: {{radius: {RADIUS[spool]} mm, clock: {clock}}}")
        out.line(3, f"bevels: {flow(box['bevels'])}")
        out.line(3, f"gears: {flow(box['gears'])}")
        out.line(3, f"input: {{{', '.join(self.shaft_fields(out, box['input']))}}}")
        for clockwise, chain in box["chains"].items():
            if chain:
                out.line(3, f"{out.way(clockwise)}:")
                self.write_chain(out, chain, 4)

    def write_chain(self, out, chain, depth):
        for shaft in chain:
            fields = self.shaft_fields(out, shaft)
            out.line(depth, "- " + fields[0])
            for field in fields[1:]:
                out.line(depth + 1, field)
            if shaft.get("branch"):
                out.line(depth + 1, "branch:")
                self.write_chain(out, shaft["branch"], depth + 2)

    @staticmethod
    def shaft_fields(out, shaft):
        fields = [f"teeth: {shaft['teeth']}", f"face: {shaft['face']}"]
        if "shift" in shaft:
            fields.append(f"shift: {shaft['shift']}")
        if "toward" in shaft:
            fields.append(f"toward: {out.clock(shaft['toward'])}")
        if "from" in shaft:
            fields.append(f"from: {shaft['from']}")
        if shaft["steps"]:
            steps = ", ".join(f"{{teeth: {z}, face: 10 mm}}" for z in shaft["steps"])
            fields.append(f"step: [{steps}]")
        fields += [f"{face}: {use}" for face, use in shaft["pads"].items()]
        return fields


def flow(value):
    """A value as YAML flow text; everything here is plain enough to need no quotes."""
    if isinstance(value, dict):
        return "{" + ", ".join(f"{k}: {flow(v)}" for k, v in value.items()) + "}"
    if isinstance(value, list):
        return "[" + ", ".join(flow(v) for v in value) + "]"
    return str(value)
