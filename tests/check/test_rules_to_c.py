"""Does the build refuse a rule without its page, and a page that says something else?"""
# ctest: release-only

import pathlib
import subprocess
import sys
import tempfile
import unittest

TOOL = pathlib.Path(__file__).resolve().parents[2] / "tools" / "rules_to_c.py"

RULE = '''/* check/rule/{name}.c: is it so? */
static const ts_formula part = {{
    .source = "another source",
}};
const ts_rule ts_rule_{name} = {{
    .id       = "{id}",
    .title    = "Probe",
    .question = "Is it so, "
                "or not?",
    .level    = TS_WARN,
    .source   = "derived: tried",
}};
'''
PAGE = """# {id}: Probe

Is it so,
or not?

Level: warn. Source: derived: tried.

Because it is "so".
"""


class Book(unittest.TestCase):
    def setUp(self):
        self.place = tempfile.TemporaryDirectory()
        self.root = pathlib.Path(self.place.name)
        (self.root / "src/check/rule").mkdir(parents=True)
        (self.root / "docs/check").mkdir(parents=True)

    def tearDown(self):
        self.place.cleanup()

    def rule(self, name, rule_id, text=RULE):
        (self.root / f"src/check/rule/{name}.c").write_text(text.format(name=name, id=rule_id))

    def page(self, name, rule_id, text=PAGE):
        (self.root / f"docs/check/{name}.md").write_text(text.format(id=rule_id))

    def run_tool(self):
        return subprocess.run([sys.executable, "-B", TOOL, "book.inc"], cwd=self.root,
                              capture_output=True, text=True, check=False)

    def assert_refused(self, word):
        done = self.run_tool()
        self.assertEqual(done.returncode, 1, done.stderr)
        self.assertIn(word, done.stderr)
        self.assertFalse((self.root / "book.inc").exists())

    def test_rules_stand_in_the_order_of_their_ids(self):
        for name, rule_id in (("last", "B1-last"), ("tenth", "A10-tenth"), ("second", "A2-second")):
            self.rule(name, rule_id)
            self.page(name, rule_id)
        done = self.run_tool()
        self.assertEqual(done.returncode, 0, done.stderr)
        book = (self.root / "book.inc").read_text()
        places = [book.index(f"RULE({name})") for name in ("second", "tenth", "last")]
        self.assertEqual(places, sorted(places))
        page = ",".join(str(byte) for byte in PAGE.format(id="B1-last").encode()[:20])
        self.assertIn(page, book)

    def test_a_rule_without_a_page_is_refused(self):
        self.rule("probe", "A1-probe")
        self.assert_refused("a rule without a page; write docs/check/probe.md")

    def test_a_page_without_a_rule_is_refused(self):
        self.rule("probe", "A1-probe")
        self.page("probe", "A1-probe")
        self.page("other", "A1-other")
        self.assert_refused("a page without a rule")

    def test_an_id_that_is_not_its_file_is_refused(self):
        self.rule("probe", "A1-prove")
        self.page("probe", "A1-prove")
        self.assert_refused("the id A1-prove is not a capability and probe")

    def test_a_file_without_a_rule_is_refused(self):
        (self.root / "src/check/rule/empty.c").write_text("/* nothing */\n")
        self.assert_refused("defines no `const ts_rule ts_rule_empty = {`")

    def test_a_page_with_another_question_is_refused(self):
        self.rule("probe", "A1-probe")
        self.page("probe", "A1-probe", PAGE.replace("or not?", "or else?"))
        self.assert_refused("where the rule says 'Is it so, or not?'")

    def test_a_page_with_another_level_is_refused(self):
        self.rule("probe", "A1-probe")
        self.page("probe", "A1-probe", PAGE.replace("Level: warn", "Level: note"))
        self.assert_refused("where the rule says 'Level: warn. Source: derived: tried.'")


if __name__ == "__main__":
    unittest.main()
