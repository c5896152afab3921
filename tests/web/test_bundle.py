"""Is the page in the program the page in web/src, and is it as small as promised?"""
# ctest: release-only
# ctest: timeout=900
import gzip
import json
import re
import unittest

import webroom

BUILT = webroom.WEB / "built"
FIRST_MOST = 250_000  # bytes, gzip, of what the page needs to begin


def objects(schema):
    """The key sets of all objects that a schema describes."""
    if isinstance(schema, dict):
        if schema.get("type") == "object":
            yield set(schema["properties"])
        for value in schema.values():
            yield from objects(value)
    elif isinstance(schema, list):
        for value in schema:
            yield from objects(value)


class Bundle(unittest.TestCase):
    def test_the_committed_page_is_what_the_sources_make(self):
        """And the types hold.  To take a change: npm run build in web/."""
        place = webroom.prepare()
        webroom.run("npx", "tsc", "--noEmit")
        webroom.run("npx", "vite", "build", "--logLevel", "warn")
        made = {path.name: path.read_bytes() for path in (place / "built").iterdir()}
        kept = {path.name: path.read_bytes() for path in BUILT.iterdir()}
        self.assertEqual(sorted(made), sorted(kept))
        for name, data in made.items():
            self.assertTrue(data == kept[name], f"web/built/{name} is stale: run npm run build in web/")

    def test_what_the_page_loads_first_is_small(self):
        page = (BUILT / "index.html").read_text()
        names = re.findall(r'<script[^>]* src="/([^"]+)"', page)
        self.assertTrue(names)
        wanted, seen = list(names), set()
        while wanted:  # and what those load without being asked
            name = wanted.pop()
            if name in seen:
                continue
            seen.add(name)
            text = (BUILT / name).read_text()
            wanted += re.findall(r'(?:from|import)"\./([^"]+)"', text)
        size = sum(len(gzip.compress((BUILT / name).read_bytes(), 9)) for name in seen)
        print(f"the page begins with {size} bytes of gzip in {len(seen)} scripts")
        self.assertLess(size, FIRST_MOST)

    def test_the_page_has_no_script_or_style_of_its_own(self):
        page = (BUILT / "index.html").read_text()
        self.assertNotRegex(page, r"<script(?![^>]* src=)|<style| style=| on\w+=")

    def test_the_lock_file_names_no_host_and_every_sum(self):
        text = (webroom.WEB / "package-lock.json").read_text()
        self.assertNotIn("://", text)
        self.assertNotIn('"resolved"', text)
        for name, package in json.loads(text)["packages"].items():
            if name:
                self.assertRegex(package.get("integrity", ""), r"^sha512-", name)

    def test_the_types_of_the_page_are_those_of_the_schemas(self):
        """Every object of a schema has an interface with the same keys in web/src/wire/view.ts."""
        text = (webroom.WEB / "src/wire/view.ts").read_text()
        bodies = re.findall(r"(?:interface \w+ |: |\| |= )\{([^{}]*)\}", text.replace("{ speed: string; power: string; torque: string; length: string }", "Units"))
        bodies.append("speed: string; power: string; torque: string; length: string")
        known = {frozenset(re.findall(r"(\w+)\??:", body)) for body in bodies}
        self.assertGreater(len(known), 12, "the reader of the types has gone blind")
        for name in ("view.schema.json", "places.schema.json"):
            schema = json.loads((webroom.ROOT / "docs/schema" / name).read_text())
            for keys in objects(schema):
                if keys != {"state"}:  # a cell of a rule that does not apply has no more
                    self.assertIn(frozenset(keys), known, name)

    def test_the_page_asks_nobody_else(self):
        for path in BUILT.iterdir():
            text = path.read_text()
            hosts = set(re.findall(r"(?:https?|wss?)://([\w.-]+)", text))
            self.assertLessEqual(hosts, {"www.w3.org"}, path.name)  # names of XML, never fetched


if __name__ == "__main__":
    unittest.main()
