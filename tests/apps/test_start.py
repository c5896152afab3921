#!/usr/bin/env python3
"""Does `start` answer by its schema, the same twice, with its energies balanced, and tell hung
starts, no starts and missing data by name?"""
import json
import os
import re
import subprocess
import sys
import unittest

sys.path.insert(0, os.path.dirname(__file__))
from command_line import ROOT, InFolder, answer, run  # noqa: E402

import jsonschema  # noqa: E402

EXAMPLES = [ROOT / "examples" / (name + ".yaml")
            for name in ("trainer", "bizjet", "medium", "large")]
MEDIUM = ROOT / "examples" / "medium.yaml"
LARGE = EXAMPLES[3]
RPM = 3.141592653589793 / 30
TAKE_OFF = {drive.stem: float(re.search(r"take-off: +\{\w+: (\d+) rpm",
                                        drive.read_text(encoding="utf-8")).group(1))
            for drive in EXAMPLES}


def words_of(picture):
    return subprocess.run(["pdftotext", "-layout", picture, "-"], check=True, capture_output=True,
                          encoding="utf-8").stdout


def flat(text):
    return " ".join(text.split())


class Answers(InFolder):
    def changed(self, path, *changes):
        text = path.read_text(encoding="utf-8")
        for before, after in changes:
            self.assertIn(before, text)
            text = text.replace(before, after)
        to = self.folder / "drive.yaml"
        to.write_text(text, encoding="utf-8")
        return to

    def test_every_example_comes_to_idle_with_its_energies_balanced(self):
        path = ROOT / "docs/schema/start.schema.json"
        schema = jsonschema.Draft202012Validator(json.loads(path.read_text(encoding="utf-8")))
        for drive in EXAMPLES:
            told = answer("start", drive)
            schema.validate(told)
            self.assertEqual(told["outcome"], "idle", drive)
            self.assertLess(told["energy"]["balance"], 1e-6)
            put_in = told["energy"]["starters"] + told["energy"]["gases"]
            taken = sum(told["energy"][key] for key in ("pads", "oil", "meshes", "kinetic"))
            self.assertAlmostEqual(put_in / taken, 1.0, places=6)
            what = [event["what"] for event in told["events"]]
            self.assertLess(what.index("lights"), what.index("starter shut off"))
            self.assertEqual(what[-1], "idles")
            for neck in told["necks"]:
                self.assertLess(neck["T"], neck["breaks_from"])
            times = told["trace"]["t"]
            self.assertEqual(times, sorted(times))
            self.assertAlmostEqual(times[-1], told["t"], places=9)

    def test_every_example_goes_on_to_take_off(self):
        path = ROOT / "docs/schema/start.schema.json"
        schema = jsonschema.Draft202012Validator(json.loads(path.read_text(encoding="utf-8")))
        for drive in EXAMPLES:
            told, idle = answer("start", drive, "--to", "take-off"), answer("start", drive)
            schema.validate(told)
            self.assertEqual((told["outcome"], told["to"]), ("beyond idle", "take-off"), drive)
            self.assertLess(told["energy"]["balance"], 1e-6)
            at = {event["what"]: event for event in told["events"]}
            # The step that crosses idle looks at loads beyond it, which only one of both has.
            self.assertAlmostEqual(at["idles"]["t"] / idle["t"], 1.0, places=7)
            there = at["has the speed of the condition"]
            self.assertAlmostEqual(there["t"] - at["idles"]["t"], 5.0, places=6)
            speeds = {spool["of"]: spool["speed"] for spool in told["spools"]}
            self.assertAlmostEqual(speeds[there["of"]] / TAKE_OFF[drive.stem], RPM, places=6)
            times = told["trace"]["t"]
            self.assertEqual(times, sorted(times))
            self.assertAlmostEqual(times[-1], told["t"], places=9)
            code, out, err = run("start", drive, "--to", "take-off")
            self.assertEqual((code, err), (0, ""))
            self.assertIn("comes to idle and on to take-off", flat(out))
            self.assertNotIn("from idle in", run("start", drive)[1])

    def test_the_loads_of_take_off_are_there_when_it_is(self):
        told = answer("start", LARGE, "--to", "take-off")
        steady = answer("seize", LARGE, "hydraulic pump 1", "--condition", "take-off")["runs"][0]
        at = {peak["of"]: peak["steady"] for peak in steady["peaks"]}
        pads = {pad["of"]: pad["T"][-1] for pad in told["trace"]["pads"]}
        for name in ("generator 1", "generator 2", "fuel pump", "hydraulic pump 1"):
            self.assertAlmostEqual(pads[name] / at[f"shaft to {name}, rotor"], 1.0, places=3)

    def test_a_condition_that_is_none_or_no_faster_is_refused(self):
        code, _, err = run("start", LARGE, "--to", "take off")
        self.assertEqual(code, 2)
        self.assertIn("did you mean take-off" if "did you mean" in err else "take-off", err)
        code, _, err = run("start", LARGE, "--to", "ground idle")
        self.assertEqual(code, 2)
        self.assertIn("not faster there than at idle", err)

    def test_the_other_spool_follows_by_air_alone(self):
        told = answer("start", LARGE)
        self.assertIn("begins to follow", [event["what"] for event in told["events"]])
        alone = answer("start", self.changed(LARGE, ("air torque: 2600 N.m", "radial travel: 0..0 mm")))
        lp = [spool for spool in alone["spools"] if spool["of"] == "lp"]
        self.assertEqual(lp[0]["speed"], 0)
        self.assertNotIn("begins to follow", [event["what"] for event in alone["events"]])

    def test_cold_oil_and_hot_air_slow_it_down(self):
        plain = answer("start", LARGE)["t"]
        cold = answer("start", LARGE, "--oil-temperature", "-5 degC")
        self.assertEqual(cold["outcome"], "idle")
        self.assertGreater(cold["t"], plain)
        colder = answer("start", LARGE, "--oil-temperature", "-25 degC")
        self.assertEqual(colder["outcome"], "hung start")

    def test_oil_works_in_every_row_of_a_bearing(self):
        def taken(rows):
            told = "mid bearing: 740 mm, bearings: {mid: {form: angular contact, series: 10, " \
                   "bore: 45 mm, rows: %d}}}" % rows
            return answer("start", self.changed(LARGE, (
                "outside: 44 mm, bore: 32 mm, mid bearing: 740 mm}",
                "outside: 44 mm, bore: 32 mm, " + told)))["energy"]["oil"]
        self.assertGreater(taken(2), 1.001 * taken(1))

    def test_seals_air_and_teeth_load_the_start(self):
        told = answer("start", ROOT / "examples/bizjet.yaml", "--oil-temperature", "-40 degC")
        warm = answer("start", ROOT / "examples/bizjet.yaml", "--oil-temperature", "40 degC")
        for kind in ("bearings", "seals", "air", "teeth"):
            self.assertGreater(told["drag"][2][kind], warm["drag"][2][kind])
        self.assertEqual([one["speed"] > 0 for one in told["drag"]], [False, True, True])
        copy = self.changed(ROOT / "examples/bizjet.yaml", ("  feed: 90 degC", "  feed: unknown"))
        self.assertGreater(answer("start", copy)["t"], 10)

    def test_the_grid_holds_the_single_start(self):
        told = answer("start", LARGE, "--grid")
        self.assertEqual(len(told["grid"]), 49)
        one = answer("start", LARGE, "--ambient", "-40 degC", "--oil-temperature", "50 degC")
        corner = [cell for cell in told["grid"]
                  if abs(cell["ambient"] - 233.15) < 1e-6 and abs(cell["oil"] - 323.15) < 1e-6]
        self.assertEqual(len(corner), 1)
        self.assertAlmostEqual(corner[0]["t"], one["t"], places=6)
        self.assertEqual(corner[0]["outcome"], one["outcome"])

    def test_gases_that_do_not_carry_it_hang_the_start(self):
        path = self.changed(LARGE, ("torque: 350 N.m", "torque: 20 N.m"),
                            ("torque: 720 N.m", "torque: 30 N.m"))
        code, out, err = run("start", path)
        self.assertEqual((code, err), (1, ""))
        self.assertIn("hung start: the hp spool is left at", flat(out))

    def test_a_weak_starter_does_not_start_it(self):
        path = self.changed(LARGE, ("{speed: 0 rpm, torque: 1380 N.m}", "{speed: 0 rpm, torque: 20 N.m}"))
        code, out, _ = run("start", path)
        self.assertEqual(code, 1)
        self.assertIn("no start: the starter does not turn the hp spool", flat(out))
        path = self.changed(LARGE, ("{speed: 1374 rpm, torque: 1050 N.m}",
                                    "{speed: 1000 rpm, torque: 0 N.m}"),
                            ("{speed: 3000 rpm, torque: 560 N.m}",
                             "{speed: 3000 rpm, torque: 0 N.m}"))
        code, out, _ = run("start", path)
        self.assertEqual(code, 1)
        self.assertIn("it does not reach light-off", flat(out))

    def test_a_neck_that_may_break_is_told(self):
        path = self.changed(LARGE, ("neck: {breaks: 1800..2200 N.m}",
                                    "neck: {breaks: 1300..1500 N.m}"))
        code, out, _ = run("start", path)
        self.assertEqual(code, 1)
        self.assertIn("MAY BREAK", out)

    def test_the_spline_of_a_pad_bears_what_its_pad_takes_and_no_mesh(self):
        for name, of, by in ((MEDIUM, "hydraulic pump 2", "spline"),
                             (LARGE, "standby generator", "bearing")):
            told = answer("start", name)
            shafts, pads = ({one["of"]: one for one in told[key]} for key in ("shafts", "pads"))
            self.assertEqual(pads[of]["by"], by)
            if of in shafts:  # those of a spool that is not cranked are not told
                self.assertLess(pads[of]["bears"], shafts[of]["bears"])
            self.assertNotIn("spline", [one.get("by") for one in told["shafts"]])

    def test_what_is_missing_is_named(self):
        text = LARGE.read_text(encoding="utf-8")
        for key, says in (("unlit drag", "the unlit drag of hp"),
                          ("lit torque", "the lit torque of hp")):
            bare = re.sub(r"    %s: \[[^]]*\]\n" % key, "", text)
            path = self.folder / "drive.yaml"
            path.write_text(bare, encoding="utf-8")
            code, told, _ = run("start", path)
            self.assertEqual(code, 2)
            self.assertIn(says, flat(told))
            self.assertEqual(run("check", path)[0], run("check", LARGE)[0])

    def test_a_light_off_that_is_not_below_idle_is_told_and_never_crashes(self):
        trainer = EXAMPLES[0]
        late = self.changed(trainer, ("\noil:", "\nstart: {light-off: 20000 rpm}\noil:"))
        fast = (("hp: 3400 rpm,  lp: 0 rpm,     events", "hp: 18000 rpm, lp: 0 rpm,     events"),)
        says = "a light-off speed below the idle speed"
        for make in (lambda: late, lambda: self.changed(trainer, *fast)):
            path = make()
            self.assertEqual(run("start", path)[::2], (2, ""))
            self.assertIn("the file does not tell " + says, flat(run("start", path)[1]))
            self.assertEqual(answer("start", path)["missing"], says)
            picture = self.folder / "start.pdf"
            self.assertEqual(run("draw", path, "--figure", "start", "-o", picture)[0], 0)
            self.assertIn(says, flat(words_of(picture)))
            paper = self.folder / "drive.html"
            self.assertIn(run("report", path, "-o", paper)[0], (0, 1))
            self.assertIn(says, flat(paper.read_text(encoding="utf-8")))

    def test_curves_whose_speeds_fall_are_refused_in_their_place(self):
        path = self.changed(LARGE, ("{speed: 790 rpm,", "{speed: 2790 rpm,"))
        code, _, err = run("start", path)
        self.assertEqual(code, 2)
        self.assertIn("the speeds of its points do not rise", err)
        self.assertIn("drive.yaml:", err)

    def test_a_drag_that_drives_is_refused_in_its_place(self):
        path = self.changed(LARGE, ("unlit drag: [{speed: 0 rpm, torque: ",
                                    "unlit drag: [{speed: 0 rpm, torque: -"))
        code, _, err = run("start", path)
        self.assertEqual(code, 2)
        self.assertIn("a torque of its drag is below 0", err)
        self.assertIn("torques of 0 or more", err)
        self.assertIn("drive.yaml:", err)

    def test_a_temperature_that_is_none_is_refused(self):
        for words in (("--ambient", "20 K m"), ("--oil-temperature", "900 degC")):
            code, _, err = run("start", LARGE, *words)
            self.assertEqual(code, 2)
            self.assertIn("-20 degC", err)

    def test_us_units_change_the_page_and_the_picture_and_not_the_json(self):
        for words in (("start", LARGE, "--grid"), ("seize", LARGE, "generator 1")):
            metric, us = run(*words)[1], run(*words, "--units", "us")[1]
            self.assertIn(" N.m", metric)
            self.assertIn(" lbf.in", us)
            self.assertNotRegex(us, r"N\.m|\ddegC|\d degC\s+-?\d")
            self.assertEqual(run(*words, "--json"), run(*words, "--json", "--units", "us"))
        us = run("start", LARGE, "--grid", "--units", "us")[1]
        self.assertIn("in air of 59 degF", us)
        self.assertIn("-40 degF", us)
        starter = [one["T"] for one in answer("start", LARGE)["pads"] if one["of"] == "starter"][0]
        at_the_pads = us[us.index("at the pads"):]
        shown = float(re.search(r"\n  starter +(-\d+) ", at_the_pads).group(1))
        self.assertAlmostEqual(shown * 0.1129848290276167 / starter, 1.0, delta=5e-4)
        says = "torque on the cranked spool, "
        self.assertIn(says + "lbf.in", words_of(self.picture("--units", "us")))
        self.assertIn(says + "N.m", words_of(self.picture()))

    def picture(self, *words):
        to = self.folder / "start.pdf"
        self.assertEqual(run("draw", LARGE, "--figure", "start", "-o", to, *words)[0], 0)
        return to

    def test_the_same_twice(self):
        self.assertEqual(run("start", LARGE, "--grid"), run("start", LARGE, "--grid"))


if __name__ == "__main__":
    unittest.main()
