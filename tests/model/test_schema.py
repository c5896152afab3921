"""Does the JSON Schema accept every drive file that the reader accepts, and refuse slips?"""
import copy
import glob
import json
import sys

import jsonschema
import yaml


def load(path):
    """Scalars stay the text that they are in the file."""
    with open(path, encoding="utf-8") as file:
        return yaml.load(file, Loader=yaml.BaseLoader)


def put(drive, path, value):
    """A copy of the drive with one value replaced, added or (None) removed."""
    changed = copy.deepcopy(drive)
    at = changed
    for word in path[:-1]:
        at = at[word]
    if value is None:
        del at[path[-1]]
    else:
        at[path[-1]] = value
    return changed


BOX = ["drive", "hp", "box"]
SLIPS = [
    (["titel"], "x"),
    (["title"], None),
    (["conditions", "crank", "hp"], "2600"),
    (["conditions", "crank", "hp"], "2600 N.m"),
    (["accessories", "fuel pump", "for"], "engines"),
    (["accessories", "fuel pump", "mass"], "9,4 kg"),
    (["accessories", "fuel pump", "mass"], {"value": "9.4 kg", "sauce": "x"}),
    (["accessories", "fuel pump", "torque", "overload"], "34 N.m"),
    (["accessories", "fuel pump", "speed", "take-off"], "6600 rpm"),
    (BOX + ["arc", "clock"], "13:00"),
    (BOX + ["input", "teeth"], "fifty"),
    (BOX + ["input", "toward"], "6:00"),
    (BOX + ["clockwise"], {"teeth": "4"}),
    (["waived", 0, "until"], "30.6.2027"),
]


def main():
    with open("docs/schema/drive.schema.json", encoding="utf-8") as file:
        schema = json.load(file)
    jsonschema.Draft202012Validator.check_schema(schema)
    validator = jsonschema.Draft202012Validator(schema)
    bad = 0
    sample = "tests/model/sample.yaml"
    for path in [sample] + sorted(glob.glob("examples/*.yaml") + glob.glob("examples/traps/*.yaml")):
        for error in validator.iter_errors(load(path)):
            print(f"{path}: {'/'.join(map(str, error.path))}: {error.message[:200]}")
            bad += 1
    # As YAML 1.2 loads it, whole numbers are numbers.
    drive = load(sample)
    if not validator.is_valid(put(drive, BOX + ["input", "teeth"], 52)):
        print("a whole number is refused as a tooth number")
        bad += 1
    for path, value in SLIPS:
        if validator.is_valid(put(drive, path, value)):
            print(f"not refused: {'/'.join(map(str, path))} = {value}")
            bad += 1
    return 1 if bad else 0


if __name__ == "__main__":
    sys.exit(main())
