#!/usr/bin/env python3
"""How does the folder of rules become the rulebook?  One file and one page a rule, sorted by id.

    rules_to_c.py rulebook.inc

Reads src/check/rule/<name>.c and docs/check/<name>.md.  Writes the bytes of every page as page_<name>
and a macro RULEBOOK(RULE) that says RULE(name) for each, in the order of their ids.  A rule without
a page, a page without a rule, an id that does not fit its file, or a page whose head does not say
what the file says is an error.
"""

import pathlib
import re
import sys

RULES = pathlib.Path("src/check/rule")
PAGES = pathlib.Path("docs/check")


def fail(place, says):
    sys.exit(f"{place}: {says}")


def natural(rule_id):
    """A4 before A10, B1-a before B1-b."""
    letter, number, rest = re.fullmatch(r"([A-M])(\d+)-(.+)", rule_id).groups()
    return letter, int(number), rest


def field(path, text, name):
    """The string of `.name = "..."`, adjacent literals joined."""
    match = re.search(rf'\.{name}\s*=\s*((?:"(?:[^"\\]|\\.)*"\s*)+)', text)
    if not match:
        fail(path, f"no .{name} = \"...\" found")
    return "".join(re.findall(r'"((?:[^"\\]|\\.)*)"', match.group(1)))


def read_rule(path):
    name, text = path.stem, path.read_text(encoding="ascii")
    _, opening, text = text.partition(f"const ts_rule ts_rule_{name} = {{")
    if not opening:
        fail(path, f"defines no `const ts_rule ts_rule_{name} = {{`")
    rule_id = field(path, text, "id")
    if not re.fullmatch(r"[A-M]\d+-" + re.escape(name.replace("_", "-")), rule_id):
        fail(path, f"the id {rule_id} is not a capability and {name.replace('_', '-')}")
    return rule_id, name, text


def read_page(path, rule_id, text):
    page = path.read_text(encoding="ascii")
    level = re.search(r"\.level\s*=\s*TS_(REFUSE|WARN|NOTE)\b", text)
    if not level:
        fail(path, "the rule has no level")
    head = page.split("\n\n", 3)
    wanted = [f"# {rule_id}: {field(path, text, 'title')}", field(path, text, "question"),
              f"Level: {level.group(1).lower()}. Source: {field(path, text, 'source')}."]
    for have, want in zip(head, wanted):
        if " ".join(have.split()) != want:
            fail(path, f"begins with {have!r} where the rule says {want!r}")
    return page


def as_array(name, page):
    """A string literal of a page would be longer than compilers must take."""
    numbers = [str(byte) for byte in page.encode("ascii")] + ["0"]
    lines = [",".join(numbers[i:i + 32]) for i in range(0, len(numbers), 32)]
    return f"static const char page_{name}[] = {{\n" + ",\n".join(lines) + "};\n"


def main():
    if len(sys.argv) != 2:
        sys.exit("usage: rules_to_c.py rulebook.inc")
    rules = sorted((read_rule(path) for path in RULES.glob("*.c")), key=lambda r: natural(r[0]))
    names = {name for _, name, _ in rules}
    for page in sorted(PAGES.glob("*.md")):
        if page.stem not in names:
            fail(page, f"a page without a rule; there is no {RULES / page.stem}.c")
    book, pages = [], []
    for rule_id, name, text in rules:
        path = PAGES / f"{name}.md"
        if not path.is_file():
            fail(RULES / f"{name}.c", f"a rule without a page; write {path}")
        book.append(f" \\\n    RULE({name}) /* {rule_id} */")
        pages.append(as_array(name, read_page(path, rule_id, text)))
    head = "/* Made from src/check/rule and docs/check; change those, not this. */\n"
    text = head + "".join(pages) + "#define RULEBOOK(RULE)" + "".join(book) + "\n"
    pathlib.Path(sys.argv[1]).write_text(text, encoding="ascii")


if __name__ == "__main__":
    main()
