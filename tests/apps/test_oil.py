#!/usr/bin/env python3
"""Does `oil` answer by its schema, the same twice, with a balance that closes, and say what it lacks?"""
import json
import os
import sys
import unittest

sys.path.insert(0, os.path.dirname(__file__))
from command_line import EXAMPLES, ROOT, InFolder, answer, run  # noqa: E402

import jsonschema  # noqa: E402

LARGE = ROOT / "examples" / "large.yaml"


class Answers(InFolder):
    def test_every_answer_follows_its_schema_and_balances(self):
        path = ROOT / "docs/schema/oil.schema.json"
        validator = jsonschema.Draft202012Validator(json.loads(path.read_text(encoding="utf-8")))
        for example in EXAMPLES:
            oil = answer("oil", example)
            validator.validate(oil)
            for drive in oil["drives"]:
                for condition in drive["conditions"]:
                    for method in ("first", "second"):
                        one = condition[method]
                        most = max(abs(one["power_from_spool"]), abs(one["power_at_pads"]), 1e-9)
                        rest = one["power_from_spool"] - one["power_at_pads"] - one["heat"]
                        self.assertLess(abs(rest), 1e-12 * most)

    def test_the_same_twice(self):
        self.assertEqual(run("oil", LARGE, "--json"), run("oil", LARGE, "--json"))

    def test_the_page_fits_and_names_its_condition(self):
        code, out, err = run("oil", LARGE, "--condition", "cruise")
        self.assertEqual((code, err), (0, ""))
        self.assertIn("Bearings at cruise", out)
        self.assertIn("Drag of the hp drive at its spool at crank", out)
        self.assertNotIn("OPEN", out)
        self.assertEqual([line for line in out.splitlines() if len(line) > 140], [])

    def test_an_unknown_condition_is_answered_with_the_nearest(self):
        code, out, err = run("oil", LARGE, "--condition", "cruse")
        self.assertEqual((code, out), (2, ""))
        self.assertIn("cruise", err)

    def test_what_is_missing_is_named(self):
        copy = self.copy_of(LARGE)
        copy.write_text(copy.read_text().replace("  feed: 85 degC", "  feed: unknown"))
        code, out, err = run("oil", copy)
        self.assertEqual((code, err), (2, ""))
        self.assertIn("Not computable: the temperature of the oil that is fed is not known.", out)

    def test_a_given_flow_is_shared_out(self):
        copy = self.copy_of(LARGE)
        copy.write_text(copy.read_text().replace("  feed: 85 degC",
                                                 "  feed: 85 degC\n  flow: 12 L/min"))
        oil = answer("oil", copy)
        given = sum(place["oil"]["is_given"] for place in oil["places"] if "oil" in place)
        self.assertAlmostEqual(given * 60000, 12, places=9)
        hottest = max(condition["first"]["rise"] for condition in oil["drives"][0]["conditions"])
        self.assertGreater(hottest, 35)

    def test_check_tells_the_worst_of_what_oil_tells(self):
        for example in EXAMPLES:
            oil, brief = answer("oil", example), answer("check", example)["oil"]
            self.assertEqual(len(brief["drives"]), len(oil["drives"]))
            for told, one in zip(oil["drives"], brief["drives"]):
                hottest = max(told["conditions"], key=lambda c: c["first"]["heat"])
                self.assertEqual(one["condition"], hottest["condition"])
                for i, method in enumerate(("first", "second")):
                    self.assertAlmostEqual(one["heat"][i] / hottest[method]["heat"], 1, places=8)
                leaves = max(c[m]["feed"] + c[m]["rise"] for c in told["conditions"]
                             for m in ("first", "second"))
                self.assertAlmostEqual(one["leaves"]["value"], leaves, places=5)
        self.assertIn("hp drive: loses", run("check", LARGE)[1])

    def test_kinds_of_losses_add_up_to_the_heat(self):
        _, out, _ = run("oil", LARGE, "--condition", "cruise")
        table = out.split("What the hp drive loses at cruise")[1].split("\n\n")[0].splitlines()[2:]
        second = sum(float(line.split()[-2]) for line in table if line.endswith("%"))
        state = next(c for d in answer("oil", LARGE)["drives"] if d["spool"] == "hp"
                     for c in d["conditions"] if c["condition"] == "cruise")["second"]
        share = 100 * state["heat"] / max(state["power_from_spool"], state["power_at_pads"])
        self.assertAlmostEqual(second, share, delta=0.04)
        self.assertIn("For the cooler", out)

    def test_defaults_say_where_they_stand(self):
        listed = answer("oil", LARGE)["assumptions"]
        self.assertIn("accessories/breather/separator", [one.get("at") for one in listed])
        _, out, _ = run("oil", LARGE, "--units", "us")
        self.assertIn("plate = 8 mm (0.315 in) at accessories/oil pump pack/pumps", out)

    def test_every_loss_has_a_working(self):
        oil = answer("oil", LARGE)
        for place in oil["places"][::7]:
            address = place["conditions"][3]["second"]["heat"]["address"]
            code, out, _ = run("why", LARGE, address)
            self.assertEqual(code, 0, address)
            self.assertIn("P_heat", out)


if __name__ == "__main__":
    unittest.main()
