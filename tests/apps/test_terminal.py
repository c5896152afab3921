#!/usr/bin/env python3
# ctest: release-only    (whole commands take minutes under the sanitizers)
"""Does what the command prints fit the terminal, however wide that is?"""
import fcntl
import os
import pty
import struct
import subprocess
import sys
import termios
import unicodedata
import unittest

sys.path.insert(0, os.path.dirname(__file__))
from command_line import COMMAND, EXAMPLES, ROOT, TODAY, TRAPS, InFolder, run  # noqa: E402

BIZJET = ROOT / "examples/bizjet.yaml"
WIDTHS = (80, 110, 160)


def on_terminal(columns, *words):
    """What the command prints, both streams, on a terminal of so many columns."""
    ours, its = pty.openpty()
    fcntl.ioctl(its, termios.TIOCSWINSZ, struct.pack("HHHH", 50, columns, 0, 0))
    command = subprocess.Popen([COMMAND, *map(str, words)], stdin=subprocess.DEVNULL, stdout=its,
                               stderr=its, cwd=ROOT, env={**os.environ, "NO_COLOR": "1"})
    os.close(its)
    pieces = []
    while True:
        try:
            piece = os.read(ours, 1 << 16)
        except OSError:  # the other end is closed
            break
        if not piece:
            break
        pieces.append(piece)
    os.close(ours)
    command.wait()
    return b"".join(pieces).decode("utf-8").replace("\r\n", "\n")


def columns_of(line):
    return sum(0 if unicodedata.combining(sign) else 1 for sign in line)


class Width(InFolder):
    def assert_fits(self, *words):
        for columns in WIDTHS:
            page = on_terminal(columns, *words)
            self.assertGreater(len(page), 20)
            for number, line in enumerate(page.splitlines(), 1):
                self.assertLessEqual(columns_of(line), columns,
                                     f"{words} at {columns}, line {number}: {line}")

    def test_the_page_of_a_drive_fits(self):
        for path in (*EXAMPLES, *TRAPS):
            self.assert_fits("check", path.relative_to(ROOT), "--today", TODAY)
        self.assert_fits("check", "examples/large.yaml", "--all", "--units", "us")

    def test_a_comparison_fits(self):
        self.assert_fits("compare", "examples/bizjet.yaml", "examples/large.yaml")
        self.assert_fits("compare", "examples/bizjet.yaml", "examples/traps/bizjet_wrap.yaml")

    def test_a_working_fits(self):
        for address in ("", "drive/hp/box/bevels", "drive/hp/box/clockwise/2",
                        "drive/hp/box/bevels:F_t@crank", "drive/hp/box/clockwise/1:alpha_wt"):
            self.assert_fits("why", "examples/bizjet.yaml", *([address] if address else []))

    def test_help_rules_and_doctor_fit(self):
        _, out, _ = run()
        names = [line.split()[0] for line in out.splitlines() if line.startswith("  ")]
        for name in names:
            self.assert_fits("help", name)
        self.assert_fits("help")
        self.assert_fits("doctor")
        self.assert_fits("rules")
        self.assert_fits("rules", "C2-hunting-tooth")

    def test_messages_fit_and_stay_one_line_in_a_pipe(self):
        bad = self.folder / "bad.yaml"
        bad.write_text(BIZJET.read_text().replace("accessories:", "acessories:", 1))
        page = on_terminal(80, "check", bad)
        self.assertGreater(len(page.splitlines()), 4)
        for line in page.splitlines():
            if str(bad) not in line:  # the path has no blank at which it could break
                self.assertLessEqual(columns_of(line), 80, line)
        _, _, err = run("check", bad)
        self.assertIn("did you mean accessories?", err.splitlines()[0])


class Room(unittest.TestCase):
    def test_names_stand_in_full_where_there_is_room(self):
        for path in EXAMPLES:
            page = on_terminal(200, "check", path.relative_to(ROOT), "--today", TODAY)
            self.assertNotIn("\u2026", page, path.name)

    def test_a_mesh_takes_one_line_where_it_fits_and_two_where_not(self):
        name = "hydraulic pump 1 > fuel pump + oil pump pack"
        wide = on_terminal(160, "check", "examples/bizjet.yaml")
        self.assertRegex(wide, name.replace("+", "[+]") + " +81/55 ")
        narrow = on_terminal(80, "check", "examples/bizjet.yaml")
        self.assertIn(name + "\n    81/55 ", narrow)

    def test_a_band_is_never_cut(self):
        for path in EXAMPLES:
            page = on_terminal(80, "check", path.relative_to(ROOT), "--today", TODAY)
            self.assertNotRegex(page, r"\.\.\d+\u2026", path.name)


if __name__ == "__main__":
    unittest.main()
