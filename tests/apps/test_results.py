#!/usr/bin/env python3
# ctest: release-only    (whole commands take minutes under the sanitizers)
"""Does a spreadsheet get every number of the answer as a number, and no name as a formula?"""
import csv
import os
import sys
import unittest
import xml.etree.ElementTree
import zipfile

sys.path.insert(0, os.path.dirname(__file__))
from command_line import EXAMPLES, ROOT, InFolder, answer, quoted, run  # noqa: E402

BIZJET = ROOT / "examples/bizjet.yaml"
HOSTILE = ("=1+1", "+cmd", "-2+3", "@SUM(A1)", "|x", '"quoted, too"', " =HYPERLINK(1)", "%x")


def quantities(thing):
    """Every number of an answer with its address, findings left out."""
    if isinstance(thing, dict):
        if {"value", "unit", "symbol", "address"} <= thing.keys():
            yield thing
        for key, one in thing.items():
            if key != "findings":
                yield from quantities(one)
    elif isinstance(thing, list):
        for one in thing:
            yield from quantities(one)


class Results(InFolder):
    def rows(self, drive, *words):
        path = self.folder / "r.csv"
        code, _, err = run("report", drive, "-o", path, *words)
        self.assertEqual(code, 0, err)
        text = path.read_bytes().decode("utf-8")
        self.assertEqual(text.count("\r\n"), text.count("\n"))
        return list(csv.DictReader(text.splitlines()))

    def test_every_number_of_check_is_a_row_in_its_order(self):
        for drive in EXAMPLES:
            wanted = [(q["address"], q["value"], q["unit"])
                      for q in quantities(answer("check", drive))]
            found = []
            for row in self.rows(drive):
                if row["is"] != "result":
                    continue
                at = "@" + row["condition"] if row["condition"] else ""
                found.append((f"{row['address']}:{row['symbol']}{at}",
                              float(row["value"]) if row["value"] else None, row["unit"]))
            self.assertGreater(len(found), 3000)
            self.assertEqual(found, wanted)

    def test_the_workbook_holds_the_same_as_numbers(self):
        rows = self.rows(BIZJET)
        path = self.folder / "r.xlsx"
        code, _, err = run("report", BIZJET, "-o", path)
        self.assertEqual(code, 0, err)
        book = zipfile.ZipFile(path)
        self.assertIsNone(book.testzip())
        name = "{http://schemas.openxmlformats.org/spreadsheetml/2006/main}"
        heads = list(rows[0])
        found = []
        for number, width in ((1, 5), (2, 9)):
            sheet = xml.etree.ElementTree.fromstring(
                book.read(f"xl/worksheets/sheet{number}.xml"))
            lines = []
            for row in sheet.iter(name + "row"):
                cells = []
                for cell in row:
                    value = cell.find(name + "v")
                    cells.append(float(value.text) if value is not None
                                 else "".join(cell.itertext()))
                self.assertEqual(len(cells), width)
                lines.append(cells)
            self.assertEqual(lines[0], heads[:width])
            found += lines[1:]
        self.assertEqual(len(found), len(rows))
        for cells, row in zip(found, rows):
            for head, cell in zip(heads, cells):
                if head in ("value", "limit", "margin"):
                    self.assertEqual(cell, float(row[head]) if row[head] else "")
                else:
                    self.assertEqual(cell, row[head])
        about = book.read("xl/worksheets/sheet3.xml").decode()
        self.assertIn("Preliminary design aid", about)
        self.assertIn(answer("check", BIZJET)["input"]["sha256"], about)

    def test_every_judgement_is_a_row(self):
        counts = answer("check", BIZJET)["counts"]
        judged = [row for row in self.rows(BIZJET) if row["is"] != "result"]
        self.assertEqual(len(judged), counts["judgements"])
        self.assertEqual(sum(row["is"] == "passed" for row in judged), counts["passed"])
        for row in judged:
            for key in ("value", "limit", "margin"):
                if row[key]:
                    float(row[key])

    def test_customary_units_mean_the_same(self):
        metric, us = self.rows(BIZJET), self.rows(BIZJET, "--units", "us")
        self.assertEqual(len(metric), len(us))
        factor = {("kW", "hp"): 0.7456998715822702, ("mm", "in"): 25.4, ("rpm", "rpm"): 1.0,
                  ("N", "lbf"): 4.4482216152605}
        met = set()
        for one, other in zip(metric, us):
            pair = one["unit"], other["unit"]
            if pair in factor and one["value"] and float(one["value"]):
                met.add(pair)
                self.assertAlmostEqual(float(other["value"]) * factor[pair] / float(one["value"]),
                                       1.0, delta=1e-12)
        self.assertEqual(met, set(factor))

    def test_no_name_comes_alive(self):
        source = BIZJET.read_text()
        for name in HOSTILE:
            drive = self.folder / "hostile.yaml"
            drive.write_text(source.replace("breather", quoted(name)))
            code, _, err = run("check", drive)
            if code == 2:  # a name that no file may have is refused by name
                self.assertIn("hostile.yaml:", err)
                continue
            for row in self.rows(drive):
                for key, cell in row.items():
                    if key not in ("value", "limit", "margin"):
                        self.assertNotRegex(cell, r"^\s*[=+@|%-]", (name, key))

    def test_the_same_file_gives_the_same_bytes(self):
        self.rows(BIZJET)
        first = (self.folder / "r.csv").read_bytes()
        run("report", BIZJET, "-o", self.folder / "r.csv",
            env={"LC_ALL": "de_DE.UTF-8", "TZ": "Pacific/Apia"})
        self.assertEqual(first, (self.folder / "r.csv").read_bytes())
        run("report", BIZJET, "-o", self.folder / "a.xlsx")
        run("report", BIZJET, "-o", self.folder / "b.xlsx", env={"TZ": "Pacific/Apia"})
        self.assertEqual((self.folder / "a.xlsx").read_bytes(),
                         (self.folder / "b.xlsx").read_bytes())


if __name__ == "__main__":
    unittest.main()
