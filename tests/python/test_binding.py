# ctest: release-only
"""Does Python get the same numbers, the same findings and the same errors as the command?"""

import concurrent.futures
import json
import os
import pathlib
import re
import subprocess
import sys
import unittest

ROOT = pathlib.Path(__file__).resolve().parents[2]
BUILD = pathlib.Path(os.environ.get("TS_BUILD", ROOT / "build" / "release"))
COMMAND = os.environ.get("TOWERSHAFT", str(BUILD / "towershaft"))
os.environ["TOWERSHAFT_LIBRARY"] = str(BUILD / "libtowershaft.so.0")
sys.path.insert(0, str(ROOT / "python"))
sys.dont_write_bytecode = True

import towershaft  # noqa: E402

BIZJET = ROOT / "examples" / "bizjet.yaml"


def run(*words):
    return subprocess.run([COMMAND, *map(str, words)], capture_output=True, text=True, check=False)


def plain(text):
    text = re.sub(r"/\*.*?\*/", " ", text, flags=re.DOTALL)
    text = text.replace("TS_API ", "")
    return re.sub(r"\s+", "", re.sub(r"\s*=\s*\d+", "", text)).replace(",}", "}")


class Binding(unittest.TestCase):
    def test_every_declaration_stands_in_a_public_header(self):
        headers = plain("".join((ROOT / "include" / "towershaft" / name).read_text()
                                for name in ("status.h", "study.h")))
        for one in re.split(r"(?<=;)\n(?=typedef|const|ts_|void|size_t|double)",
                            towershaft._DECLARED.strip()):
            self.assertIn(plain(one), headers)

    def test_findings_and_verdict_are_those_of_the_command(self):
        told = json.loads(run("check", BIZJET, "--json").stdout)
        with towershaft.Study.open(BIZJET) as study:
            self.assertEqual(study.verdict is towershaft.Verdict.HOLDS, told["verdict"] == "holds")
            mine = list(study.findings())
            self.assertEqual([one.fingerprint for one in mine],
                             [one["fingerprint"] for one in told["findings"]])
            self.assertEqual([one.says for one in mine], [one["says"] for one in told["findings"]])
            self.assertGreater(len(mine), 5)

    def test_a_number_is_that_of_the_answer(self):
        address = "drive/hp/box/clockwise/2:n@take-off"
        with towershaft.Study.open(BIZJET) as study:
            ratio = next(one["ratio"] for one in study.answer()["shafts"]
                         if one["address"] == "drive/hp/box/input")
            self.assertAlmostEqual(study.number("drive/hp/box/input:ratio"),
                                   ratio["over"] / ratio["under"], delta=1e-12)
            rad = study.number(address)
            shown = re.search(r"= ([0-9.]+) rad/s", study.why(address))
            self.assertAlmostEqual(rad / float(shown.group(1)), 1.0, delta=1e-5)
            with self.assertRaises(KeyError):
                study.number("drive/hp/box/clockwise/2:nothing")
            self.assertIn("drive/hp/box/clockwise/2:n", " ".join(
                study.addresses("drive/hp/box/clockwise/2:n")))

    def test_what_is_not_understood_says_what_the_command_says(self):
        text = BIZJET.read_text().replace("turns: ccw", "turns: cwc", 1)
        with self.assertRaises(towershaft.NotUnderstood) as raised:
            towershaft.Study(text, "bad.yaml")
        message = raised.exception.messages[0]
        self.assertIn(f"bad.yaml:{message.line}:{message.column}:", str(raised.exception))
        self.assertIn("cwc", message.says)
        self.assertTrue(message.nearest or message.expected)

    def test_a_second_wrong_question_is_told_without_the_first(self):
        with towershaft.Study(BIZJET.read_text()) as study:
            for wrong in ("drive/none", "drive/hp:none"):
                with self.assertRaises(towershaft.NotUnderstood) as raised:
                    study.why(wrong)
                self.assertEqual(len(raised.exception.messages), 1, wrong)
            self.assertIn("number called none", str(raised.exception))

    def test_one_value_changes_and_every_other_byte_stays(self):
        before = BIZJET.read_text()
        after = towershaft.Study.changed(before, "drive/hp/box/input/face", "17.5 mm")
        lines = [(a, b) for a, b in zip(before.splitlines(), after.splitlines()) if a != b]
        self.assertEqual(len(lines), 1)
        self.assertIn("17.5 mm", lines[0][1])
        with towershaft.Study(before) as old, towershaft.Study(after) as new:
            self.assertEqual(len(old.compare(new)["changes"]) > 0, True)
        with self.assertRaises(towershaft.NotUnderstood):
            towershaft.Study.changed(before, "drive/hp/box/input/fcae", "17.5 mm")

    def test_a_closed_study_says_so(self):
        study = towershaft.Study.open(BIZJET)
        study.close()
        study.close()
        with self.assertRaises(ValueError):
            study.verdict  # noqa: B018

    def test_many_threads_get_the_same_answer(self):
        def solve(_):
            with towershaft.Study.open(BIZJET) as study:
                return json.dumps(study.answer(), sort_keys=True)
        with concurrent.futures.ThreadPoolExecutor(8) as pool:
            self.assertEqual(len(set(pool.map(solve, range(16)))), 1)

    def test_caution_and_version_are_those_of_the_command(self):
        self.assertIn("Preliminary design aid", towershaft.caution())
        self.assertIn(towershaft.version(), run("--version").stdout + run("doctor").stdout)


if __name__ == "__main__":
    unittest.main()
