#!/usr/bin/env python3
# ctest: release-only    (whole commands take minutes under the sanitizers)
"""Does every answer follow its published schema?"""
import json
import os
import sys
import unittest
import xml.etree.ElementTree as tree

sys.path.insert(0, os.path.dirname(__file__))
from command_line import EXAMPLES, ROOT, TODAY, TRAPS, InFolder, answer, run  # noqa: E402

import jsonschema  # noqa: E402


def schema(name):
    return json.loads((ROOT / "docs/schema" / name).read_text(encoding="utf-8"))


def follows(data, name):
    jsonschema.Draft202012Validator(schema(name)).validate(data)


class Answers(InFolder):
    def test_check_of_every_example_and_trap_follows_its_schema(self):
        for path in EXAMPLES + TRAPS:
            follows(answer("check", path, "--today", TODAY), "check.schema.json")

    def test_messages_follow_their_schema(self):
        bad = self.folder / "bad.yaml"
        bad.write_text("towershaft: 1\ntitel: x\n")
        follows(answer("check", bad), "messages.schema.json")

    def test_compare_follows_its_schema(self):
        follows(answer("compare", EXAMPLES[0], EXAMPLES[1]), "compare.schema.json")

    def test_rules_and_one_rule_follow_their_schema(self):
        rules = answer("rules")
        follows(rules, "rules.schema.json")
        self.assertGreaterEqual(len(rules["rules"]), 25)
        follows(answer("rules", rules["rules"][0]["id"]), "rules.schema.json")

    def test_doctor_follows_its_schema(self):
        follows(answer("doctor"), "doctor.schema.json")

    def test_acts_follow_their_schema(self):
        os.chdir(self.folder)
        copy = self.copy_of(EXAMPLES[0])
        follows(answer("new", self.folder / "n", "--like", "trainer"), "act.schema.json")
        follows(answer("set", copy, "title", "another"), "act.schema.json")
        follows(answer("draw", copy, "-o", self.folder / "face.svg"), "act.schema.json")
        follows(answer("notation"), "act.schema.json")

    def test_why_follows_its_schema(self):
        data = answer("check", EXAMPLES[0], "--today", TODAY)
        address = next(iter(data["meshes"][-1]["loads"].values()))["F_t"]["address"]
        follows(answer("why", EXAMPLES[0], address), "why.schema.json")

    def test_schemas_refuse_what_they_should(self):
        data = answer("check", EXAMPLES[0], "--today", TODAY)
        for spoil in (lambda d: d.pop("verdict"), lambda d: d.update(verdict="fine"),
                      lambda d: d.update(extra=1), lambda d: d["shafts"][0].pop("ratio")):
            copy = json.loads(json.dumps(data))
            spoil(copy)
            with self.assertRaises(jsonschema.ValidationError):
                follows(copy, "check.schema.json")

    def test_sarif_has_a_result_for_every_finding(self):
        for path in EXAMPLES + TRAPS:
            _, out, _ = run("check", path, "--sarif", "--today", TODAY)
            sarif = json.loads(out)
            self.assertEqual(sarif["version"], "2.1.0")
            findings = answer("check", path, "--today", TODAY)["findings"]
            results = sarif["runs"][0]["results"]
            self.assertEqual([r["ruleId"] for r in results], [f["rule"] for f in findings])
            known = {rule["id"] for rule in sarif["runs"][0]["tool"]["driver"]["rules"]}
            self.assertLessEqual({r["ruleId"] for r in results}, known)

    def test_junit_fails_exactly_the_refused_rules(self):
        for path in EXAMPLES + TRAPS:
            _, out, _ = run("check", path, "--junit", "--today", TODAY)
            suite = tree.fromstring(out)
            failed = {c.get("name") for c in suite.iter("testcase") if c.find("failure") is not None}
            findings = answer("check", path, "--today", TODAY)["findings"]
            refused = {f["rule"] for f in findings
                       if f["level"] == "refuse" and f["state"] != "waived"}
            self.assertEqual(failed, refused, path.name)
            self.assertEqual(int(suite.get("failures")), len(failed))


if __name__ == "__main__":
    unittest.main()
