"""Does a table become C cell for cell, and is a malformed one refused with its line?"""
# ctest: release-only

import pathlib
import subprocess
import sys
import tempfile
import unittest

ROOT = pathlib.Path(__file__).resolve().parents[2]


class TableToC(unittest.TestCase):
    def setUp(self):
        self.place = tempfile.TemporaryDirectory()
        self.addCleanup(self.place.cleanup)

    def convert(self, text):
        table = pathlib.Path(self.place.name, "table.tsv")
        table.write_bytes(text.encode())
        out = pathlib.Path(self.place.name, "table.inc")
        done = subprocess.run([sys.executable, str(ROOT / "tools" / "table_to_c.py"), str(table),
                               str(out)], capture_output=True, text=True, check=False)
        return done, out

    def compiled(self, text):
        """What the rows say once a compiler has read them, a cell a line."""
        done, out = self.convert(text)
        self.assertEqual(done.returncode, 0, done.stderr)
        source = pathlib.Path(self.place.name, "rows.c")
        source.write_text('#include <stdio.h>\nstatic const char *const rows[][2] = {\n'
                          f'#include "{out.name}"\n' '};\nint main(void)\n{\n'
                          'for (size_t i = 0; i < sizeof rows / sizeof rows[0]; i++)\n'
                          'printf("%s\\n%s\\n", rows[i][0], rows[i][1]);\nreturn 0;\n}\n')
        program = source.with_suffix("")
        subprocess.run(["gcc", "-std=c17", "-Wall", "-Wextra", "-Wpedantic", "-Werror", "-o",
                        str(program), str(source)], check=True)
        return subprocess.run([str(program)], capture_output=True, check=True).stdout.decode()

    def assert_refused(self, text, line, word):
        done, _ = self.convert(text)
        self.assertNotEqual(done.returncode, 0)
        self.assertIn(f"table.tsv:{line}: ", done.stderr)
        self.assertIn(word, done.stderr)

    def test_cells_come_through_the_compiler_unchanged(self):
        said = self.compiled('# odd letters\n# a\tb\nx"y\\z\t??/\n\u00b5m\t1e-6\n\u00b57\t\n')
        self.assertEqual(said, 'x"y\\z\n??/\n\u00b5m\n1e-6\n\u00b57\n\n')

    def test_the_head_stays_beside_the_rows(self):
        _, out = self.convert("# source: a */ page\n# a\tb\nx\ty\n")
        text = out.read_text()
        self.assertIn(" * source: a * / page\n * a | b\n", text)
        self.assertTrue(text.endswith('{"x", "y"},\n'))

    def test_columns_of_numbers_become_doubles(self):
        _, out = self.convert("# numbers: b\n# a\tb\n1\t2.50\nx\t-\ny\t-3e-6\n")
        self.assertTrue(out.read_text().endswith('{"1", 2.50},\n{"x", NAN},\n{"y", -3e-6},\n'))
        self.assert_refused("# numbers: c\n# a\tb\n1\t2\n", 1, "no column")
        for word in ("2,5", "1e", "0x1", "nan", "", ".5"):
            self.assert_refused(f"# numbers: b\n# a\tb\n1\t{word}\n", 1, "column of numbers")

    def test_malformed_tables_are_refused(self):
        self.assert_refused("# a\tb\nx\n", 2, "1 cells where the head names 2")
        self.assert_refused("x\ty\n", 1, "before the head")
        self.assert_refused("# a\tb\nx\ty\n# late\n", 3, "below the first row")
        self.assert_refused("# a\tb\nx \ty\n", 2, "blanks")
        self.assert_refused("# a\tb\nx\ty\r\n", 2, "carriage return")
        self.assert_refused("# a\tb\n", 1, "without a row")


if __name__ == "__main__":
    unittest.main()
