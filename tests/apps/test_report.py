#!/usr/bin/env python3
# ctest: release-only    (whole commands take minutes under the sanitizers)
"""Is the report whole, the same every time, and harmless whatever the file's names hold?"""
import html.parser
import os
import re
import subprocess
import sys
import unittest

sys.path.insert(0, os.path.dirname(__file__))
from command_line import EXAMPLES, ROOT, TODAY, InFolder, answer, quoted, run  # noqa: E402

TRAINER = ROOT / "examples/trainer.yaml"
BIZJET = ROOT / "examples/bizjet.yaml"
CHAPTERS = ("Summary", "Findings", "Assumptions", "Speeds, senses and powers", "Arrangement",
            "Teeth", "Shims and backlash", "Shafts, bearings and splines", "Float of the take-offs",
            "Necks and selectivity", "Oil and heat", "Start", "Torsion", "Whirl",
            "Mass and mounts",
            "What stops when a part fails", "Reserves", "Rules and their evidence",
            "Published cases that this build reproduces")
HOSTILE = ("<script>alert(1)</script>", "]]><img src=x onerror=alert(1)>", "'\"&lt; -- /* {{x}}",
           "\u202edrowkcab", "javascript:alert(1)", "=1+1", "a" * 400)


def text_of(pdf, *words):
    return subprocess.run(["pdftotext", "-layout", *words, str(pdf), "-"], check=True,
                          capture_output=True, text=True).stdout


def facts_of(pdf):
    out = subprocess.run(["pdfinfo", str(pdf)], check=True, capture_output=True, text=True).stdout
    return dict(re.split(r":\s+", line, maxsplit=1) for line in out.splitlines() if ": " in line)


class Page(html.parser.HTMLParser):
    """Which elements are open, which were met, and what stands in them."""
    VOID = {"meta", "img", "link", "br"}

    def __init__(self, source):
        super().__init__(convert_charrefs=True)
        self.stack, self.met, self.attributes, self.text = [], [], [], []
        self.feed(source)
        self.close()

    def handle_starttag(self, tag, attributes):
        self.met.append(tag)
        self.attributes += [(tag, *pair) for pair in attributes]
        if tag not in self.VOID:
            self.stack.append(tag)

    def handle_endtag(self, tag):
        assert self.stack.pop() == tag, f"</{tag}> closes nothing"

    def handle_data(self, data):
        if "style" not in self.stack:
            self.text.append(data)


class Report(InFolder):
    def write(self, drive, name, *words):
        path = self.folder / name
        code, _, err = run("report", drive, "-o", path, "--today", TODAY, *words)
        self.assertEqual(code, 0, err)
        return path

    def test_every_example_has_every_chapter_and_says_what_it_is_not(self):
        for drive in EXAMPLES:
            pdf = self.write(drive, "r.pdf")
            first, whole = text_of(pdf, "-l", "1"), text_of(pdf)
            self.assertIn("Preliminary design aid", first)
            self.assertIn(answer("check", drive)["input"]["sha256"][:40], first)
            for number, chapter in enumerate(CHAPTERS, 1):
                self.assertRegex(whole, rf"(?m)^\s*{number}\s+{chapter}")
            self.assertIn(f"page 1 of {facts_of(pdf)['Pages']}", whole)
            self.assertNotIn("cannot be drawn", whole)

    def test_every_finding_of_check_stands_in_the_report(self):
        page = Page(self.write(BIZJET, "r.html").read_text())
        text = "".join(page.text)
        findings = answer("check", BIZJET, "--today", TODAY)["findings"]
        self.assertGreater(len(findings), 3)
        for finding in findings:
            self.assertIn(finding["says"], text)

    def test_speeds_are_those_of_check(self):
        text = text_of(self.write(BIZJET, "r.pdf"))
        code, page, _ = run("check", BIZJET, "--today", TODAY)
        self.assertEqual(code, 0)
        generator = re.search(r"(?m)^ +\d+ generator +front +cw +([\d ]+)$", page)
        speeds = generator.group(1).split()
        self.assertGreater(len(speeds), 3)
        self.assertRegex(text, r"generator\s+front\s+cw\s+" + r"\s+".join(speeds[:3]))

    def test_the_same_file_gives_the_same_bytes(self):
        for name in ("r.pdf", "r.html"):
            self.assertEqual(self.write(TRAINER, name).read_bytes(),
                             self.write(TRAINER, "again-" + name).read_bytes())

    def test_a_reader_aloud_finds_headings_and_tables(self):
        pdf = self.write(TRAINER, "t.pdf")
        self.assertEqual(facts_of(pdf)["Tagged"], "yes")
        out = subprocess.run(["pdfinfo", "-struct-text", str(pdf)], check=True,
                             capture_output=True, text=True)
        self.assertEqual(out.stderr, "")
        self.assertEqual(len(re.findall(r"(?m)^\s*H1\b", out.stdout)), len(CHAPTERS))
        for kind in ("H2", "Table", "TR", "TH", "TD", "P", "Figure"):
            self.assertRegex(out.stdout, rf"(?m)^\s*{kind}\b")

    def test_every_bookmark_leads_to_its_heading(self):
        pdf = self.write(TRAINER, "b.pdf")
        out = subprocess.run(["pdfinfo", "-dests", str(pdf)], check=True, capture_output=True)
        self.assertEqual(out.returncode, 0)
        raw = pdf.read_bytes()
        for chapter in CHAPTERS:
            self.assertIn(chapter.encode(), raw)

    def test_drawings_lie_on_turned_pages(self):
        pdf = self.write(TRAINER, "p.pdf")
        out = subprocess.run(["pdfinfo", "-f", "1", "-l", "99", str(pdf)], check=True,
                             capture_output=True, text=True).stdout
        sizes = re.findall(r"Page +\d+ size: +([\d.]+) x ([\d.]+)", out)
        turned = [one for one in sizes if float(one[0]) > float(one[1])]
        self.assertGreater(len(turned), 5)
        self.assertGreater(len(sizes), 2 * len(turned))

    def test_publications_are_counted(self):
        text = text_of(self.write(TRAINER, "s.pdf"))
        counted = re.search(r"ISO 6336-2:2019 +(\d+) +(\d+)", text)
        self.assertGreater(int(counted.group(1)), 5)
        self.assertGreater(int(counted.group(2)), 100)

    def test_reserves_are_those_of_check(self):
        text = text_of(self.write(BIZJET, "v.pdf"))
        self.assertRegex(text, r"E1-tooth-contact +drive/hp/take-off/bevels|E1-tooth-contact")
        margins = [f["margin"] for f in answer("check", BIZJET, "--today", TODAY)["findings"]
                   if f["margin"] is not None and f["level"] == "warn"]
        for margin in margins:
            self.assertIn(f"{100 * margin:.1f} %", text)

    def test_paper_is_the_one_asked_for(self):
        self.assertIn("A4", facts_of(self.write(TRAINER, "a.pdf"))["Page size"])
        letter = self.write(TRAINER, "l.pdf", "--paper", "Letter")
        self.assertIn("letter", facts_of(letter)["Page size"])

    def test_workings_lead_to_the_lines_of_the_file(self):
        text = text_of(self.write(TRAINER, "g.pdf", "--workings", "governing"))
        self.assertIn(f"{len(CHAPTERS) + 1}  Workings", re.sub(r"[ \t]+", "  ", text))
        self.assertIn("trainer.yaml:", text)

    def test_all_workings_hold_every_formula(self):
        page = Page(self.write(TRAINER, "a.html", "--workings", "all").read_text())
        text = "".join(page.text)
        for formula in ("contact ratio", "ISO 6336-2:2019", "tangential force"):
            self.assertIn(formula, text)
        self.assertGreater(len(re.findall(r"\n +crank +light-off.* take-off", text)), 100)

    def test_all_workings_tell_what_why_tells(self):
        page = Page(self.write(TRAINER, "w.html", "--workings", "all").read_text())
        text = "".join(page.text)
        working = answer("why", TRAINER, "drive/hp/box/clockwise/1/teeth:S_H1@climb")["working"]
        part = text[text.index(" drive/hp/box/clockwise/1/teeth\n"):]
        found = 0
        for note in working["notes"]:
            if note["kind"] == "step" and ":" in note["address"] and \
                    note["address"].startswith("drive/hp/box/clockwise/1/teeth:"):
                found += 1
                shown = f"{note['value']:.6g}"
                self.assertTrue(re.search(rf"[ =]{re.escape(shown)}0*[ \n,]", part)
                                or "e" in shown, f"{note['address']} = {shown}")
        self.assertGreater(found, 30)

    def test_seizures_are_those_of_seize(self):
        text = "".join(Page(self.write(TRAINER, "z.html", "--seizures").read_text()).text)
        for name in ("fuel pump", "breather"):
            _, page, _ = run("seize", TRAINER, name)
            rows = re.findall(r"(?m)^ +((?:mesh|shaft to|tube to) .*\d)", page)
            self.assertGreater(len(rows), 3)
            for row in rows:
                self.assertIn("".join(row.split()), "".join(text.split()))

    def test_hostile_names_stay_text(self):
        source = TRAINER.read_text()
        for name in HOSTILE:
            drive = self.folder / "hostile.yaml"
            title = f"title: {quoted(name)}"
            drive.write_text(re.sub(r"(?m)^title:.*$", lambda _, text=title: text, source))
            page = Page(self.write(drive, "h.html").read_text())
            self.assertEqual(page.stack, [])
            self.assertFalse({"script", "iframe", "object", "link", "base"} & set(page.met))
            self.assertFalse([a for a in page.attributes if a[1].startswith("on")])
            self.assertIn(name.replace("\u202e", "\ufffd"), "".join(page.text))
            self.assertGreater(int(facts_of(self.write(drive, "h.pdf"))["Pages"]), 5)

    def test_hostile_names_of_accessories_stay_text(self):
        source = BIZJET.read_text()
        for name in HOSTILE:
            drive = self.folder / "hostile.yaml"
            drive.write_text(source.replace("breather", quoted(name)))
            code, _, err = run("check", drive)
            if code == 2:  # a name that no file may have is refused by name
                self.assertIn("hostile.yaml:", err)
                continue
            page = Page(self.write(drive, "h.html").read_text())
            self.assertEqual(page.stack, [])
            self.assertFalse({"script", "iframe", "object", "link", "base"} & set(page.met))
            self.assertFalse([a for a in page.attributes if a[1].startswith("on")])
            self.assertGreater(int(facts_of(self.write(drive, "h.pdf"))["Pages"]), 5)

    def test_the_page_asks_nothing_of_any_network(self):
        page = Page(self.write(TRAINER, "r.html").read_text())
        for tag, key, value in page.attributes:
            if key in ("src", "href"):
                self.assertRegex(value, r"^(data:image/svg\+xml;base64,|#s)", tag)
        policy = [v for t, k, v in page.attributes if t == "meta" and k == "content"]
        self.assertTrue(any("default-src 'none'" in v for v in policy))
        self.assertEqual(len([1 for t, k, v in page.attributes if t == "img" and k == "alt" and v]),
                         page.met.count("img"))

    def test_what_cannot_be_is_said_and_nothing_is_written(self):
        for words, says in ((("-o", self.folder / "r.txt"), "pdf, html"),
                            (("-o", self.folder / "r"), ".pdf, .html, .csv or .xlsx"),
                            ((), "-o says where"),
                            (("-o", self.folder / "r.pdf", "--paper", "A5"), "A4")):
            code, _, err = run("report", TRAINER, *words)
            self.assertEqual(code, 2, words)
            self.assertIn(says, err)
        self.assertEqual([p.name for p in self.folder.iterdir()], [])

    def test_a_full_disk_is_said_and_leaves_nothing(self):
        for ending in ("pdf", "html"):
            link = self.folder / f"full.{ending}"
            link.symlink_to("/dev/full")
            code, _, err = run("report", TRAINER, "-o", link)
            self.assertEqual(code, 3)
            self.assertIn("No space left", err)
            self.assertIn("not all of it was written", err)  # a device is not replaced
        self.assertEqual(sorted(p.name for p in self.folder.iterdir()),
                         ["full.html", "full.pdf"])

    def test_a_machine_without_fonts_is_said_and_nothing_is_written(self):
        conf = self.folder / "fonts.conf"
        conf.write_text('<?xml version="1.0"?><!DOCTYPE fontconfig SYSTEM "fonts.dtd">'
                        f"<fontconfig><dir>{self.folder}</dir></fontconfig>")
        for words in (("report", TRAINER, "-o", self.folder / "r.pdf"),
                      ("report", TRAINER, "-o", self.folder / "r.html"),
                      ("draw", TRAINER, "-o", self.folder / "r.svg")):
            code, _, err = run(*words, env={"FONTCONFIG_FILE": str(conf)})
            self.assertEqual(code, 2, err)
            self.assertIn("no font", err)
            self.assertIn("fonts-b612", err)
        self.assertEqual([p.name for p in self.folder.iterdir()], ["fonts.conf"])
        code, _, err = run("draw", TRAINER, "-o", self.folder / "r.dxf",
                           env={"FONTCONFIG_FILE": str(conf)})
        self.assertEqual(code, 0, err)

    def test_a_folder_that_may_not_be_written_is_said(self):
        code, _, err = run("report", TRAINER, "-o", "/proc/report.pdf")
        self.assertEqual(code, 3)
        self.assertIn("/proc/report.pdf", err)

    def test_a_folder_that_is_not_there_is_said(self):
        code, _, err = run("report", TRAINER, "-o", self.folder / "none/r.pdf")
        self.assertEqual(code, 3)
        self.assertIn("none/r.pdf", err)


if __name__ == "__main__":
    unittest.main()
