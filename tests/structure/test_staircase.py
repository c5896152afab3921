"""Does any include climb, and is the drawn staircase the real one?"""
# ctest: release-only

import pathlib
import sys
import tempfile
import unittest

ROOT = pathlib.Path(__file__).resolve().parents[2]
sys.path.insert(0, str(ROOT / "tools"))
sys.dont_write_bytecode = True

import staircase  # noqa: E402


class TheTree(unittest.TestCase):
    def test_no_include_climbs_and_none_runs_in_a_circle(self):
        includes, wrong = staircase.judge()
        self.assertGreater(len(includes), 50, "the reader of includes has gone blind")
        self.assertEqual(wrong, [], "\n" + "\n".join(wrong))

    def test_the_drawn_staircase_is_fresh(self):
        includes, _ = staircase.judge()
        self.assertEqual(staircase.PAGE.read_text(), staircase.page(includes),
                         "run: python3 tools/staircase.py --write")


class ABadTree(unittest.TestCase):
    """The judge itself is tried on trees with one fault each."""

    def judge(self, files):
        with tempfile.TemporaryDirectory() as place:
            root = pathlib.Path(place)
            (root / "cmake").mkdir()
            for name, text in files.items():
                (root / name).parent.mkdir(parents=True, exist_ok=True)
                (root / name).write_text(text)
            kept, staircase.ROOT = staircase.ROOT, root.resolve()
            try:
                return staircase.judge()[1]
            finally:
                staircase.ROOT = kept

    def assert_one(self, wrong, word):
        self.assertEqual(len(wrong), 1, wrong)
        self.assertIn(word, wrong[0])

    def test_an_include_that_climbs_is_caught(self):
        self.assert_one(self.judge({"src/base/a.c": '/* a */\n#include "model/b.h"\n',
                                    "src/model/b.h": ""}), "src/base/a.c:2: includes")

    def test_neighbours_on_one_step_do_not_know_each_other(self):
        self.assert_one(self.judge({"src/draw/a.c": '#include "report/b.h"\n',
                                    "src/report/b.h": ""}), "stand on one step")

    def test_two_families_of_one_folder_do_not_know_each_other(self):
        self.assert_one(self.judge({"src/rating/one/a.c": '#include "rating/two/b.h"\n',
                                    "src/rating/two/b.h": ""}), "does not know src/rating/two")

    def test_headers_that_include_each_other_are_caught(self):
        self.assert_one(self.judge({"src/base/a.h": '#include "base/b.h"\n',
                                    "src/base/b.h": '#include "base/c.h"\n',
                                    "src/base/c.h": '#include "base/a.h"\n',
                                    "src/base/d.c": '#include "base/a.h"\n'}),
                        "each other: src/base/a.h, src/base/b.h, src/base/c.h")

    def test_an_app_that_looks_inside_is_caught(self):
        self.assert_one(self.judge({"src/apps/cli/a.c": '#include "base/b.h"\n',
                                    "src/base/b.h": ""}), "public headers only")

    def test_the_command_knows_another_app_by_its_one_header(self):
        files = {"src/apps/cli/a.c": '#include "apps/serve/serve.h"\n',
                 "src/apps/serve/serve.h": "", "src/apps/serve/inner.h": ""}
        self.assertEqual(self.judge(files), [])
        files["src/apps/cli/a.c"] = '#include "apps/serve/inner.h"\n'
        self.assert_one(self.judge(files), "one app does not know another")
        files["src/apps/cli/a.c"] = ""
        files["src/apps/serve/b.c"] = '#include "apps/cli/cli.h"\n'
        files["src/apps/cli/cli.h"] = ""
        self.assert_one(self.judge(files), "one app does not know another")

    def test_a_public_header_that_looks_inside_is_caught(self):
        self.assert_one(self.judge({"include/towershaft/a.h": '#include "base/b.h"\n',
                                    "src/base/b.h": ""}), "public headers only")

    def test_a_name_used_twice_is_caught(self):
        self.assert_one(self.judge({"src/base/a.c": "", "src/model/a.c": ""}), "twice")

    def test_an_include_of_nothing_is_caught(self):
        self.assert_one(self.judge({"src/base/a.c": '#include "base/gone.h"\n'}), "names no file")

    def test_a_generated_table_needs_its_table(self):
        self.assert_one(self.judge({"src/base/a.c": '#include "gone.inc"\n'}), "names no file")
        self.assertEqual(self.judge({"src/base/a.c": '#include "here.inc"\n',
                                     "data/here.tsv": ""}), [])

    def test_a_foreign_library_stays_in_its_room(self):
        self.assert_one(self.judge({"src/check/a.c": "#include <cairo/cairo.h>\n"}), "src/draw")
        self.assert_one(self.judge({"src/base/a.c": "#include <time.h>\n"}), "apps only")

    def test_a_folder_without_a_step_is_caught(self):
        self.assert_one(self.judge({"src/misplaced/a.c": ""}), "has no step")


if __name__ == "__main__":
    unittest.main()
