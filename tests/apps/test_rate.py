#!/usr/bin/env python3
"""Does `rate` compute stand-alone elements, and say what they lack, cannot be and cannot mean?"""
import json
import os
import re
import sys
import unittest

sys.path.insert(0, os.path.dirname(__file__))
from command_line import EXAMPLES, ROOT, InFolder, answer, run  # noqa: E402

import jsonschema  # noqa: E402
import yaml  # noqa: E402

RATES = sorted((ROOT / "examples/rate").glob("*.yaml"))
PAIR = "z_1: 25, z_2: 62, m_n: 2 mm, b_1: 20 mm"


def schema(name):
    return json.loads((ROOT / "docs/schema" / name).read_text(encoding="utf-8"))


def rate_file(kind, keys):
    return f"towershaft rate: 1\ntitle: test\n{kind}:\n  one: {{{keys}}}\n".encode()


def rate(kind, keys, *words):
    """Exit code, standard output and standard error for one element."""
    return run("rate", "-", *words, stdin=rate_file(kind, keys))


class Answers(InFolder):
    def test_every_example_holds_and_says_so_last(self):
        self.assertGreaterEqual(len(RATES), 3)
        for path in RATES:
            code, out, err = run("rate", path)
            self.assertEqual((code, err), (0, ""), path.name + out[-600:])
            self.assertIn("hold", out[out.rstrip().rfind("\n\n"):])

    def test_every_answer_follows_its_schema(self):
        validator = jsonschema.Draft202012Validator(schema("rate.schema.json"))
        for path in RATES:
            validator.validate(answer("rate", path))
        for keys in (PAIR + ", a_w: 20 mm", PAIR + ", T_1: 10 N.m", PAIR):
            validator.validate(json.loads(rate("gear pair", keys, "--json")[1]))

    def test_every_example_follows_the_schema_of_the_file(self):
        validator = jsonschema.Draft202012Validator(schema("rate-file.schema.json"))
        for path in RATES:
            file = yaml.load(path.read_text(encoding="utf-8"), Loader=yaml.BaseLoader)
            validator.validate(file)
            for slip in ({"titel": "x"}, {"gear pair": {"a": {"z_1": "25"}}},
                         {"gear pair": {"a": {"z_1": "25", "z_2": "62", "m_n": "2",
                                              "b_1": "20 mm"}}}):
                self.assertFalse(validator.is_valid({**file, **slip}), slip)

    def test_every_result_has_unit_clause_and_a_working(self):
        """Each address of the JSON answer is one that `why` explains, with the same value."""
        data = answer("rate", RATES[-1])
        seen = 0
        for element in data["elements"]:
            for section in element["sections"]:
                for result in section["results"]:
                    self.assertTrue(result["unit"] and result["source"] and result["meaning"])
                    if not result["asked"] or seen > 60:
                        continue
                    working = answer("why", RATES[-1], result["address"])["working"]
                    self.assertEqual(working["address"], result["address"])
                    seen += 1
        self.assertGreater(seen, 20)

    def test_quantities_keep_the_number_of_the_file(self):
        _, out, _ = rate("gear pair", PAIR + ", x_1: 0.1", "--json")
        given = {g["symbol"]: g for g in json.loads(out)["elements"][0]["given"]}
        self.assertEqual((given["m_n"]["value"], given["m_n"]["unit"]), (2, "mm"))
        self.assertEqual(given["x_1"]["value"], 0.1)
        self.assertEqual(given["x_1"]["line"], 4)

    def test_defaults_are_shown_as_assumptions(self):
        _, out, _ = rate("gear pair", PAIR, "--json")
        element = json.loads(out)["elements"][0]
        assumed = {a["symbol"]: a for a in element["assumptions"]}
        self.assertEqual(assumed["alpha_n"]["value"], 20)
        self.assertIn("ISO 53", assumed["alpha_n"]["source"])
        self.assertIn("rack", {choice["key"] for choice in element["choices"]})
        _, out, _ = rate("gear pair", PAIR)
        self.assertRegex(out, r"assumed +alpha_n = 20 deg: ISO 53")
        # What is given is no assumption.
        _, out, _ = rate("gear pair", PAIR + ", alpha_n: 20 deg", "--json")
        element = json.loads(out)["elements"][0]
        self.assertNotIn("alpha_n", {a["symbol"] for a in element["assumptions"]})

    def test_all_shows_every_step(self):
        _, few, _ = rate("gear pair", PAIR)
        _, all_of_them, _ = rate("gear pair", PAIR, "--all")
        self.assertNotIn("inv_alpha_wt", few)
        self.assertIn("inv_alpha_wt", all_of_them)

    def test_us_units_change_the_page_and_not_the_json(self):
        self.assertRegex(rate("gear pair", PAIR, "--units", "us")[1], r"a_w +3\.4252 in")
        self.assertEqual(rate("gear pair", PAIR, "--json"),
                         rate("gear pair", PAIR, "--json", "--units", "us"))

    def test_a_german_locale_gives_the_same_bytes(self):
        for path in RATES:
            self.assertEqual(run("rate", path, env={"LC_ALL": "C"}),
                             run("rate", path, env={"LC_ALL": "de_DE.UTF-8"}))

    def test_output_goes_to_a_file(self):
        out = self.folder / "answer.json"
        code, said, _ = run("rate", RATES[0], "--json", "-o", out)
        self.assertEqual((code, said), (0, ""))
        self.assertEqual(json.loads(out.read_text())["verdict"], "holds")


class Verdicts(InFolder):
    def test_what_cannot_be_exits_with_1_and_names_the_limit(self):
        code, out, _ = rate("gear pair", PAIR + ", a_w: 80 mm")
        self.assertEqual(code, 1)
        self.assertIn("rate-no-geometry", out)
        self.assertIn("use a centre distance above 81.7533 mm", out)
        finding = json.loads(rate("gear pair", PAIR + ", a_w: 80 mm", "--json")[1])["findings"][0]
        self.assertEqual((finding["level"], finding["state"]), ("refuse", "open"))
        self.assertEqual(finding["value"], 0.08)

    def test_what_lacks_something_exits_with_2_and_names_it(self):
        code, out, _ = rate("gear pair", PAIR + ", T_1: 95 N.m")
        self.assertEqual(code, 2)
        self.assertRegex(out, r"n_1: Speed of gear 1, such as 9000 rpm")
        _, out, _ = rate("gear pair", PAIR + ", T_1: 95 N.m", "--json")
        data = json.loads(out)
        self.assertEqual(data["verdict"], "not computable")
        self.assertIn("n_1", {m["key"] for m in data["elements"][0]["missing"]})

    def test_a_result_may_be_asked_for_without_its_section(self):
        path = self.folder / "one.yaml"
        path.write_bytes(rate_file("gear pair", PAIR + ", E_sns1: -0.05 mm"))
        code, out, _ = run("why", path, "gear pair/one:s_c@gear 2")
        self.assertEqual(code, 0)
        code, _, err = run("why", path, "gear pair/one:s_c")
        self.assertEqual(code, 2)
        self.assertIn("gear 1, gear 2, gear 1 upper", err)
        code, out, _ = run("why", path, "gear pair/one:eps_alpha")
        self.assertEqual(code, 0)
        self.assertIn("z_1: 25", out)
        self.assertIn("gear pair/one\n", run("why", path)[1])
        self.assertIn("did you mean eps_alpha?", run("why", path, "gear pair/one:eps_alfa")[2])

    def test_addresses_complete(self):
        path = self.folder / "one.yaml"
        path.write_bytes(rate_file("gear pair", PAIR))
        _, out, _ = run("complete", "address", path, "gear pair/one:eps_")
        self.assertIn("gear pair/one:eps_alpha\n", out)

    def test_one_value_of_a_rate_file_is_set(self):
        path = self.folder / "one.yaml"
        path.write_bytes(rate_file("gear pair", PAIR))
        code, _, err = run("set", path, "gear pair/one/z_1", "27")
        self.assertEqual(code, 0, err)
        self.assertIn(b"z_1: 27", path.read_bytes())
        code, _, err = run("set", path, "gear pair/one/z_1", "many")
        self.assertEqual(code, 2)
        self.assertIn("whole number", err)


class Slips(unittest.TestCase):
    def refused(self, text, *words):
        """The file is refused with line and column, and the message has these words."""
        code, out, err = run("rate", "-", stdin=text if isinstance(text, bytes) else text.encode())
        self.assertEqual((code, out), (2, ""), err)
        self.assertRegex(err, r"-:\d+:\d+: ")
        for word in words:
            self.assertIn(word, err)

    def test_unknown_keys_name_the_nearest(self):
        self.refused(rate_file("gear pair", PAIR + ", x1: 0.2"), "`x1`", "x_1")
        self.refused(rate_file("gear pair", PAIR + ", alpha: 20 deg"), "`alpha`", "manual")
        self.refused(rate_file("gear pairs", PAIR), "`gear pairs`", "gear pair")
        self.refused(rate_file("tolerance", "m_n: 2 mm, z: 25, class: 5, k_W: 3"), "`k_W`",
                     "tooth measurement")

    def test_missing_keys_are_named(self):
        self.refused(rate_file("gear pair", "z_1: 25, m_n: 2 mm"), "`z_2`", "`b_1`")
        self.refused("towershaft rate: 1\ntitle: x\n", "no element", "gear pair")
        self.refused("towershaft rate: 1\ntitle: x\ngear pair: {}\n", "records by name")
        self.refused("title: x\n", "towershaft rate")
        self.refused("", "empty")

    def test_kinds_and_units_do_not_mix(self):
        self.refused(rate_file("gear pair", PAIR.replace("2 mm,", "2,")), "a length")
        self.refused(rate_file("gear pair", PAIR + ", T_1: 95 J"), "torque")
        self.refused(rate_file("gear pair", PAIR + ", n_1: 150 Hz"), "rotational speed")
        self.refused(rate_file("gear pair", PAIR + ', x_1: "0,2"'), "comma")
        self.refused(rate_file("gear pair", PAIR.replace("25", "25.5")), "whole number")
        self.refused(rate_file("gear pair", PAIR.replace("z_1: 25", "z_1: -25")), "whole number")

    def test_ranges_are_held(self):
        self.refused(rate_file("gear pair", PAIR + ", alpha_n: 60 deg"), "out of range")
        self.refused(rate_file("tolerance", "m_n: 2 mm, z: 25, class: 13"), "out of range")

    def test_contradictions_are_said(self):
        cases = (
            ("gear pair", PAIR + ", T_1: 9 N.m, F_t: 4 N", "more than once"),
            ("gear pair", PAIR + ", shift: rest to 2", "without a centre distance"),
            ("gear pair", PAIR + ", a_w: 88 mm, shift: as given", "leaves no shift"),
            ("gear pair", PAIR + ", d_a1: 54 mm", "only one tip diameter"),
            ("gear pair", PAIR + ", d_a1: 54 mm, d_a2: 128 mm, k_1: 0.1", "twice"),
            ("gear pair", PAIR.replace("62", "-25"), "more teeth than its pinion"),
            ("gear pair", PAIR.replace("62", "0"), "has teeth"),
            ("gear pair", PAIR + ", E_sns1: -0.05 mm, E_sni1: -0.03 mm", "above the upper"),
            ("gear pair", PAIR + ", L_h: 9 h, N_L1: 1e6", "life is given twice"),
            ("gear pair", PAIR + ", K_Hbeta: 1.1, F_betax: 9 um", "face load"),
            ("tolerance", "m_n: 2 mm, class: 5", "neither"),
            ("tolerance", "m_n: 2 mm, class: 5, z: 20, d: 40 mm", "twice"),
            ("bevel pair", "z_1: 20, z_2: 30, m_et: 2 mm, b: 9 mm, k_hap: 1", "in part"),
        )
        for kind, keys, says in cases:
            self.refused(rate_file(kind, keys), says)

    def test_materials_and_choices_name_the_nearest(self):
        self.refused(rate_file("material", "row: carburized 9310"), "carburised 9310")
        self.refused(rate_file("gear pair", PAIR + ", material 1: nitrided 32CrMoV31"),
                     "nitrided 32CrMoV13")
        self.refused(rate_file("gear pair", PAIR + ", rack: E"), "A, B, C or D")

    def test_a_drive_is_no_rate_file_and_the_other_way_about(self):
        code, _, err = run("rate", EXAMPLES[0])
        self.assertEqual(code, 2)
        self.assertIn("towershaft check", err)
        code, _, err = run("check", RATES[0])
        self.assertEqual(code, 2)
        self.assertIn("towershaft rate", err)
        for words in (("draw", RATES[0], "-o", "never.svg"), ("compare", RATES[0], EXAMPLES[0])):
            self.assertEqual(run(*words)[0], 2)

    def test_all_errors_of_a_file_are_told_in_one_run(self):
        code, _, err = run("rate", "-", stdin=rate_file(
            "gear pair", "z_1: many, z_2: 62, m_n: 2, b_1: 20 mm, beta: 80 deg, zz: 1"))
        self.assertEqual(code, 2)
        self.assertEqual(len(re.findall(r"^-:\d+:\d+: ", err, re.MULTILINE)), 4, err)


if __name__ == "__main__":
    unittest.main()
