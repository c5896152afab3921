#!/usr/bin/env python3
# ctest: release-only    (whole commands take minutes under the sanitizers)
"""Does the command do what its help says, with the exit codes that it promises?"""
import errno
import hashlib
import json
import os
import stat
import subprocess
import sys
import unittest

sys.path.insert(0, os.path.dirname(__file__))
from command_line import COMMAND, EXAMPLES, ROOT, TODAY, InFolder, answer, run  # noqa: E402

BIZJET = ROOT / "examples/bizjet.yaml"


class Words(unittest.TestCase):
    def test_no_words_print_the_list_and_the_caution(self):
        code, out, _ = run()
        self.assertEqual(code, 0)
        self.assertIn("check", out)
        self.assertIn("14 CFR Part 33", " ".join(out.split()))

    def test_a_mistyped_command_names_the_nearest(self):
        code, _, err = run("chekc", BIZJET)
        self.assertEqual(code, 2)
        self.assertIn("did you mean check?", err)

    def test_a_mistyped_option_names_the_nearest(self):
        code, _, err = run("check", BIZJET, "--jsno")
        self.assertEqual(code, 2)
        self.assertIn("--json", err)

    def test_the_rules_of_one_capability_are_listed_and_a_mistyped_one_is_not_understood(self):
        code, out, _ = run("rules", "B4")
        self.assertEqual(code, 0)
        self.assertRegex(out, r"B4-start-path-length(.|\n)*B4-start-reaches-spool")
        self.assertNotIn("B2-", out)
        told = answer("rules", "B4")["rules"]
        self.assertEqual({rule["id"][:3] for rule in told}, {"B4-"})
        code, _, err = run("rules", "B44")
        self.assertEqual(code, 2)
        self.assertIn("towershaft rules lists", err)

    def test_every_command_has_a_page_of_help(self):
        _, out, _ = run()
        names = [line.split()[0] for line in out.splitlines() if line.startswith("  ")]
        self.assertGreater(len(names), 8)
        for name in names:
            code, page, _ = run("help", name)
            self.assertEqual(code, 0, name)
            self.assertIn("usage: towershaft " + name, page)

    def test_the_manual_page_is_the_committed_one(self):
        _, out, _ = run("help", "--man")
        committed = (ROOT / "packaging/towershaft.1").read_text(encoding="utf-8")
        self.assertEqual(out, committed, "renew it: towershaft help --man > packaging/towershaft.1")

    def test_completions_are_shell_scripts_that_parse(self):
        import subprocess
        for shell in ("bash",):
            code, script, _ = run("complete", shell)
            self.assertEqual(code, 0)
            done = subprocess.run([shell, "-n"], input=script.encode(), capture_output=True, check=False)
            self.assertEqual(done.returncode, 0, done.stderr.decode())
        for shell in ("zsh", "fish"):
            self.assertEqual(run("complete", shell)[0], 0)
        self.assertEqual(run("complete", "tcsh")[0], 2)

    def test_addresses_complete_step_by_step(self):
        code, out, _ = run("complete", "address", BIZJET, "drive/hp/")
        self.assertEqual(code, 0)
        self.assertIn("drive/hp/box/\n", out)
        _, out, _ = run("complete", "address", BIZJET, "drive/hp/box/input:")
        self.assertIn("drive/hp/box/input:n@take-off\n", out)


class Full(InFolder):
    """Where standard output cannot be written, the answer is lost and the exit code says so."""

    def lose(self, *words):
        with open("/dev/full", "wb") as full:
            done = subprocess.run([COMMAND, *map(str, words)], stdout=full, cwd=ROOT, check=False,
                                  stderr=subprocess.PIPE, timeout=200)
        err = done.stderr.decode("utf-8")
        self.assertEqual(done.returncode, 3, (words, err))
        self.assertEqual(err, f"towershaft: standard output: {os.strerror(errno.ENOSPC)}\n", words)

    def test_words_of_the_program_itself(self):
        for words in ((), ("--help",), ("--version",), ("help",), ("help", "check"),
                      ("help", "--man"), ("complete", "bash"), ("complete", "fish"), ("rules",)):
            self.lose(*words)

    def test_answers(self):
        self.lose("check", BIZJET)
        self.lose("why", BIZJET, "drive/hp/box/bevels:F_t@crank")
        self.lose("compare", BIZJET, EXAMPLES[1])
        for part in ("teeth", "necks", "bearings"):
            self.lose("size", BIZJET, "--choose", part)
            self.lose("size", BIZJET, "--choose", part, "--json")

    def test_acts(self):
        self.lose("new", self.folder / "a.yaml", "--like", "trainer")
        self.lose("new", self.folder / "b.yaml", "--like", "trainer", "--json")
        self.lose("set", self.folder / "a.yaml", "title", "other", "--json")
        self.lose("draw", BIZJET, "-o", f"{self.folder}/")
        self.lose("draw", BIZJET, "-o", f"{self.folder}/", "--json")
        self.lose("report", BIZJET, "-o", self.folder / "r.html", "--json")


class Check(InFolder):
    def test_an_example_holds_and_says_so_last(self):
        for path in EXAMPLES:
            code, out, err = run("check", path, "--today", TODAY)
            self.assertEqual((code, err), (0, ""), path.name + out[-600:])
            self.assertIn("The drive holds", out[out.rstrip().rfind("\n\n"):])

    def test_a_missing_file_is_not_understood(self):
        code, out, err = run("check", "no such file.yaml")
        self.assertEqual((code, out), (2, ""))
        self.assertIn("no such file.yaml", err)

    def test_a_bad_file_gives_position_and_expectation(self):
        bad = self.folder / "bad.yaml"
        bad.write_text(BIZJET.read_text().replace("towershaft: 1", "towershaft: 1\ntitel: x", 1))
        code, out, err = run("check", bad)
        self.assertEqual((code, out), (2, ""))
        self.assertRegex(err, r"bad\.yaml:\d+:\d+: ")
        self.assertIn("title", err)

    def test_a_bad_file_answers_json_too(self):
        bad = self.folder / "bad.yaml"
        bad.write_text("towershaft: 1\n")
        code, out, _ = run("check", bad, "--json")
        self.assertEqual(code, 2)
        self.assertTrue(json.loads(out)["messages"])

    def test_standard_input_is_read(self):
        code, out, _ = run("check", "-", stdin=BIZJET.read_bytes())
        self.assertEqual(code, 0, out[-400:])

    def test_us_units_change_the_page_and_not_the_json(self):
        _, metric, _ = run("check", BIZJET, "--today", TODAY)
        _, us, _ = run("check", BIZJET, "--units", "us", "--today", TODAY)
        self.assertIn("Power, kW", metric)
        self.assertIn("Power, hp", us)
        self.assertIn("F_t lbf", us)
        body = ROOT / "examples/traps/trainer_body_clash.yaml"
        self.assertRegex(run("check", body, "--units", "us")[1], r"\d in\b")
        self.assertRegex(run("check", body)[1], r"\d mm\b")
        _, a, _ = run("check", BIZJET, "--json", "--today", TODAY)
        _, b, _ = run("check", BIZJET, "--json", "--units", "us", "--today", TODAY)
        self.assertEqual(a, b)

    def test_a_german_locale_gives_the_same_bytes(self):
        plain = run("check", BIZJET, "--today", TODAY, env={"LC_ALL": "C"})
        german = run("check", BIZJET, "--today", TODAY, env={"LC_ALL": "de_DE.UTF-8"})
        self.assertEqual(plain, german)
        plain = run("check", BIZJET, "--json", "--today", TODAY, env={"LC_ALL": "C"})
        german = run("check", BIZJET, "--json", "--today", TODAY, env={"LC_ALL": "de_DE.UTF-8"})
        self.assertEqual(plain, german)

    def test_only_one_document_at_a_time(self):
        self.assertEqual(run("check", BIZJET, "--json", "--sarif")[0], 2)

    def test_no_colour_unless_asked(self):
        self.assertNotIn("\033", run("check", BIZJET)[1])
        self.assertIn("\033[", run("check", BIZJET, "--colour", "always")[1])

    def test_pages_fit_their_columns(self):
        _, out, _ = run("check", BIZJET)
        wide = [line for line in out.splitlines() if len(line) > 140]
        self.assertEqual(wide, [])


class Doubt(InFolder):
    """What is not known is never taken for good."""

    def changed(self, address, value):
        copy = self.copy_of(BIZJET)
        self.assertEqual(run("set", copy, address, value)[0], 0)
        return copy

    def test_a_loss_that_is_not_known_is_refused(self):
        copy = self.copy_of(BIZJET)
        code, _, err = run("set", copy, "drive/hp/box/gears/loss", "unknown")
        self.assertEqual(code, 2)
        self.assertIn("loss", err)

    def test_what_decides_and_is_not_known_gives_exit_code_two(self):
        code, out, _ = run("check", self.changed("accessories/generator/speed/always", "unknown"))
        self.assertEqual(code, 2)
        self.assertIn("The drive is not computable", out)

    def test_a_band_above_zero_on_a_spool_at_rest_fits_no_ratio(self):
        copy = self.changed("accessories/hydraulic pump 2/speed/crank", "1500.. rpm")
        code, out, _ = run("check", copy)
        self.assertEqual(code, 1)
        rules = {f["rule"] for f in answer("check", copy)["findings"] if f["level"] == "refuse"}
        self.assertLessEqual({"B2-speed-band", "B3-ratio-window"}, rules)
        self.assertIn("stands still at crank", " ".join(out.split()))


class Set(InFolder):
    ADDRESS = "drive/hp/box/input/teeth"

    def test_one_value_changes_and_every_other_byte_stays(self):
        copy = self.copy_of(BIZJET)
        before = copy.read_bytes()
        code, _, err = run("set", copy, "spools/hp/inertia", "0.75 kg.m2")
        self.assertEqual(code, 0, err)
        after = copy.read_bytes()
        self.assertIn(b"0.75 kg.m2", after)
        same_head = os.path.commonprefix([before, after])
        same_tail = os.path.commonprefix([before[::-1], after[::-1]])
        self.assertGreater(len(same_head) + len(same_tail), len(before) - 12)

    def test_a_wrong_value_changes_nothing(self):
        copy = self.copy_of(BIZJET)
        before = copy.read_bytes()
        code, _, err = run("set", copy, "spools/hp/inertia", "0,75 kg.m2")
        self.assertEqual(code, 2)
        self.assertIn("comma", err)
        self.assertEqual(copy.read_bytes(), before)

    def test_an_unknown_address_names_the_nearest(self):
        copy = self.copy_of(BIZJET)
        code, _, err = run("set", copy, "spools/hp/inertai", "0.75 kg.m2")
        self.assertEqual(code, 2)
        self.assertIn("inertia", err)

    def test_a_link_stays_a_link_and_the_mode_stays(self):
        copy = self.copy_of(BIZJET)
        copy.chmod(0o640)
        link = self.folder / "link.yaml"
        link.symlink_to(copy.name)
        self.assertEqual(run("set", link, "spools/hp/inertia", "0.75 kg.m2")[0], 0)
        self.assertTrue(link.is_symlink())
        self.assertIn(b"0.75 kg.m2", copy.read_bytes())
        self.assertEqual(stat.S_IMODE(copy.stat().st_mode), 0o640)

    def test_output_goes_elsewhere_when_asked(self):
        copy = self.copy_of(BIZJET)
        before = copy.read_bytes()
        other = self.folder / "other.yaml"
        self.assertEqual(run("set", copy, "spools/hp/inertia", "0.75 kg.m2", "-o", other)[0], 0)
        self.assertEqual(copy.read_bytes(), before)
        self.assertIn(b"0.75 kg.m2", other.read_bytes())

    def test_a_folder_that_takes_no_file_is_a_fault(self):
        code, _, err = run("set", BIZJET, "spools/hp/inertia", "0.75 kg.m2", "-o", "/proc/nothing")
        self.assertEqual(code, 3)
        self.assertIn("nothing was changed", err)


class New(InFolder):
    def test_a_starting_file_holds(self):
        for like in ("trainer", "bizjet", "medium", "large"):
            code, out, err = run("new", "my engine " + like, "--like", like, cwd=self.folder)
            self.assertEqual(code, 0, err)
            path = self.folder / f"my engine {like}.yaml"
            self.assertIn(path.name, out)
            code, out, _ = run("check", path, "--today", TODAY)
            self.assertEqual(code, 0, out[-400:])
            self.assertIn("my engine " + like, out.splitlines()[0])

    def test_nothing_is_overwritten(self):
        self.assertEqual(run("new", "a", "--like", "trainer", cwd=self.folder)[0], 0)
        before = (self.folder / "a.yaml").read_bytes()
        self.assertEqual(run("new", "a", "--like", "large", cwd=self.folder)[0], 2)
        self.assertEqual((self.folder / "a.yaml").read_bytes(), before)

    def test_an_unknown_engine_lists_the_known(self):
        code, _, err = run("new", "a", "--like", "rocket", cwd=self.folder)
        self.assertEqual(code, 2)
        self.assertIn("bizjet", err)


RATE_FILE = """towershaft rate: 1
title: A pair to ask about

gear pair:
  first mesh: {z_1: 25, z_2: 62, m_n: 2 mm, b_1: 22 mm, b_2: 20 mm, x_1: 0.2}

material:
  case: {row: carburised 9310}
"""


class WhyList(InFolder):
    def test_a_number_in_the_list_says_where_it_comes_from(self):
        path = self.folder / "pair.yaml"
        path.write_text(RATE_FILE)
        _, pair, _ = run("why", path, "gear pair/first mesh")
        self.assertIn(":alpha_wt   working transverse pressure angle, found by iteration\n", pair)
        self.assertIn(":z_1   given in the file\n", pair)
        self.assertIn(":alpha_n   assumed\n", pair)
        _, material, _ = run("why", path, "material/case")
        self.assertIn(":nu   read from a table\n", material)


class Why(unittest.TestCase):
    def test_every_number_of_the_answer_has_a_working(self):
        """Each address that --json prints can be asked for, and tells the same value."""
        data = answer("check", BIZJET)
        quantities = []

        def walk(value):
            if isinstance(value, dict):
                if "address" in value and "symbol" in value and "value" in value and "unit" in value \
                        and "rule" not in value:
                    quantities.append(value)
                for part in value.values():
                    walk(part)
            elif isinstance(value, list):
                for part in value:
                    walk(part)
        walk(data)
        self.assertGreater(len(quantities), 500)
        without = [q["address"] for q in quantities if q["value"] is not None and "source" not in q]
        self.assertEqual(without[:10], [])
        for quantity in quantities[:: max(1, len(quantities) // 40)]:
            if quantity["value"] is None:
                continue
            code, out, err = run("why", BIZJET, quantity["address"])
            self.assertEqual(code, 0, quantity["address"] + err)
            self.assertIn(quantity["symbol"], out)

    def test_a_part_lists_its_numbers(self):
        code, out, _ = run("why", BIZJET, "drive/hp/box/input")
        self.assertEqual(code, 0)
        self.assertIn("drive/hp/box/input:n@", out)

    def test_a_symbol_that_varies_asks_for_the_condition(self):
        code, _, err = run("why", BIZJET, "drive/hp/box/input:n")
        self.assertEqual(code, 2)
        self.assertIn("take-off", err)

    def test_an_unknown_part_names_the_nearest(self):
        code, _, err = run("why", BIZJET, "drive/hp/bxo")
        self.assertEqual(code, 2)
        self.assertIn("drive/hp/box", err)


class Columns(InFolder):
    """What stands below each other begins, or ends, in one column."""

    def test_the_files_of_draw(self):
        _, out, _ = run("draw", BIZJET, "-o", f"{self.folder}/")
        lines = out.splitlines()
        self.assertGreater(len(lines), 8)
        self.assertEqual(len({line.index(str(self.folder)) for line in lines}), 1, out)

    def test_the_modes_of_twist(self):
        for drive in EXAMPLES:
            _, out, _ = run("twist", drive)
            hertz = [line.index(" Hz: strain") for line in out.splitlines() if " Hz: strain" in line]
            self.assertGreater(len(hertz), 5)
            self.assertEqual(len(set(hertz)), 1, out)


class Titles(InFolder):
    """Does the top of each page say what it does not replace, and which file it is of?"""

    def test_the_caution_stands_above_the_answer(self):
        title = "Preliminary design aid. Not a substitute for the engine's type design"
        digest = hashlib.sha256(BIZJET.read_bytes()).hexdigest()[:12]
        for words in (("check",), ("necks",), ("why", "drive/hp/box/bevels:F_t@crank"), ("why",),
                      ("compare", ROOT / "examples/traps/bizjet_wrap.yaml"), ("twist",),
                      ("size",), ("size", "--choose", "bearings"), ("size", "--choose", "necks")):
            _, out, err = run(words[0], BIZJET, *words[1:])
            top = " ".join(out.splitlines()[:4])
            self.assertIn(title, top, (words, err))
            self.assertEqual(out.count("Preliminary design aid"), 1, words)
            if words[0] == "size":
                self.assertIn(", as sized   SHA-256 ", top)
            else:
                self.assertIn(digest, top, words)

    def test_the_digest_of_size_is_of_what_it_writes(self):
        path = self.folder / "sized.yaml"
        for part in ("teeth", "bearings", "necks"):
            _, out, err = run("size", BIZJET, "--choose", part, "-o", path)
            self.assertIn("Written: ", out, err)
            digest = hashlib.sha256(path.read_bytes()).hexdigest()[:12]
            self.assertIn(f", as sized   SHA-256 {digest}", out, part)


class Compare(InFolder):
    def test_a_file_compared_with_itself_has_no_changes(self):
        self.assertEqual(answer("compare", BIZJET, BIZJET)["changes"], [])

    def test_a_changed_tooth_number_changes_ratio_and_speed(self):
        copy = self.copy_of(BIZJET)
        shafts = [s for s in answer("check", copy)["shafts"] if s["address"].endswith("clockwise/1")]
        self.assertTrue(shafts)
        address = shafts[0]["address"] + "/teeth"
        _, out, _ = run("why", copy, address)
        teeth = int(out.split("=")[1].split()[0])
        self.assertEqual(run("set", copy, address, teeth + 2)[0], 0)
        kinds = {change["kind"] for change in answer("compare", BIZJET, copy)["changes"]}
        self.assertLessEqual({"ratio", "centre distance", "input"}, kinds)

    def test_a_pad_speed_is_told_where_a_finding_appeared(self):
        trap = ROOT / "examples/traps/trainer_generator_idle.yaml"
        changes = answer("compare", ROOT / "examples/trainer.yaml", trap)["changes"]
        appeared = {c["condition"] for c in changes if c["kind"] == "finding appeared"
                    and c["subject"] == "B2-speed-band"}
        speeds = [c for c in changes if c["kind"] == "pad speed"]
        self.assertEqual(appeared, {"ground idle"})
        where = {c["subject"]: c["condition"] for c in speeds}
        self.assertEqual(where.pop("starter-generator"), "ground idle")
        self.assertEqual(set(where.values()), {"red line"})  # no finding: where they are fastest

    def test_comments_are_no_change(self):
        copy = self.copy_of(BIZJET)
        copy.write_text(copy.read_text() + "\n# a last remark\n")
        self.assertEqual(answer("compare", BIZJET, copy)["changes"], [])


class Doctor(unittest.TestCase):
    def test_this_installation_is_well(self):
        code, out, _ = run("doctor")
        self.assertEqual(code, 0, out)
        results = out.split("\n\n")[1].splitlines()
        self.assertGreater(len(results), 20)
        for line in results:  # the second line of a result, its source, is indented
            self.assertRegex(line, "^(ok {6}|FAILED  | {8})")


if __name__ == "__main__":
    unittest.main()
