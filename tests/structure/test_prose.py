"""Does every tracked file keep the habits of the house: words, letters, length, links?"""
# ctest: release-only

import pathlib
import re
import subprocess
import unittest

ROOT = pathlib.Path(__file__).resolve().parents[2]

# Spelled in pieces, for this file is tracked too.
UNFINISHED = re.compile(r"\b(" + "|".join((
    "TO" + "DO", "FIX" + "ME", "XX" + "X", "HA" + "CK", "(?i:for " + "now)",
    "(?i:not (yet )?" + "implemented)")) + r")\b")
STRANGE = re.compile(r"\b(" + "|".join((
    "less" + "ons?", "trans" + "cripts?", "seed " + "documents?")) + r")\b", re.IGNORECASE)
MACHINE = re.compile(
    r"(?<![\w.:/])/(work|farm|" + "tmp|ro" + "ot|home" + r")/"
    r"|\b(registry\.npmjs|pypi|files\.pythonhosted|proxy\.golang|deb\.debian|crates)\.(org|io)\b")
# Texts of others, kept as they came.
OTHERS = {"LICENSE", "space.js"}  # the latter is mostly a library; what is ours in it is read in web/src
PICTURES = {".svg", ".png", ".pdf"}
CODE = {".c", ".h"}
SCRIPTS = {".py", ".sh", ".cmake", ".json", ".tsv", ".yaml"}


def tracked():
    """Every tracked file that is still there, as paths from the root."""
    # The clone may belong to another account than the one that tests it.
    listing = subprocess.run(["git", "-c", "safe.directory=*", "ls-files", "-z"], cwd=ROOT,
                             check=True, capture_output=True).stdout.decode()
    return [pathlib.Path(name) for name in listing.split("\0")
            if name and (ROOT / name).is_file()]


def is_corpus(path):
    """Inputs for the fuzzers and planted faults are malformed on purpose."""
    return path.parts[:3] == ("tests", "fuzz", "corpus")


def texts():
    for path in tracked():
        if path.suffix not in PICTURES and path.name not in OTHERS and not is_corpus(path):
            yield path, (ROOT / path).read_bytes().decode("utf-8", "replace")


def places(pattern):
    for path, text in texts():
        for number, line in enumerate(text.splitlines(), 1):
            match = pattern.search(line)
            if match:
                yield f"{path}:{number}: {match.group(0)!r}"


class Habits(unittest.TestCase):
    def assert_nothing(self, wrong):
        wrong = list(wrong)
        self.assertEqual(wrong, [], "\n" + "\n".join(wrong))

    def test_the_search_sees(self):
        self.assertGreater(len(tracked()), 50)
        for pattern, sample in ((UNFINISHED, "/* TO" + "DO: x */"), (UNFINISHED, "For " + "now,"),
                                (STRANGE, "a less" + "on"), (MACHINE, "in /tm" + "p/x"),
                                (MACHINE, '"/ro' + 'ot/a"')):
            self.assertTrue(pattern.search(sample), sample)
        for sample in ("mktemp x." + "X" * 6, "tools/tmp/x", "homework/ro" + "ot/2"):
            self.assertFalse(UNFINISHED.search(sample) or MACHINE.search(sample), sample)

    def test_nothing_is_left_unfinished(self):
        # Libraries of others are in the built page, words and all.
        self.assert_nothing(place for place in places(UNFINISHED)
                            if not place.startswith("web/built/"))

    def test_no_word_from_outside(self):
        self.assert_nothing(places(STRANGE))

    def test_no_path_of_one_machine(self):
        self.assert_nothing(places(MACHINE))

    def test_sources_are_ascii(self):
        wrong = []
        for path, text in texts():
            made = path.suffix in CODE | {".py", ".sh", ".cmake"}
            for number, line in enumerate(text.splitlines(), 1):
                if made and not line.isascii():
                    letter = next(char for char in line if not char.isascii())
                    wrong.append(f"{path}:{number}: {letter!r}")
        self.assert_nothing(wrong)

    def test_lines_end_plainly(self):
        wrong = []
        for path, text in texts():
            if path.suffix not in CODE | SCRIPTS | {".md"}:
                continue
            if path.parts[:1] == ("tests",) and path.suffix in {".yaml", ".json"}:
                continue  # inputs of tests may be odd on purpose
            if "\r" in text:
                wrong.append(f"{path}: a carriage return")
            if text and not text.endswith("\n"):
                wrong.append(f"{path}: the last line is not ended")
        self.assert_nothing(wrong)

    def test_every_source_opens_with_a_sentence(self):
        self.assert_nothing(
            f"{path}: opens with {text.splitlines()[:1]}" for path, text in texts()
            if path.suffix in CODE and not re.match(r"/\* \S.*\S", text))

    def test_no_source_is_long(self):
        self.assert_nothing(
            f"{path}: {text.count(chr(10))} lines" for path, text in texts()
            if path.parts[0] in ("src", "include") and path.suffix in CODE
            and text.count("\n") > 700)

    def test_no_sentence_names_a_symbol_of_the_library(self):
        # A string with a blank in it is read by people; names of code get there by search and replace.
        sentence = re.compile(r'"((?:[^"\\\n]|\\.)*)"')
        symbol = re.compile(r"\bts_[a-z]\w*")
        self.assertTrue(symbol.search(sentence.search('f("a shaft is ts_laid twice");').group(1)))
        wrong = []
        for path, text in texts():
            if path.parts[0] != "src" or path.suffix not in CODE:
                continue
            for number, line in enumerate(text.splitlines(), 1):
                wrong += [f"{path}:{number}: {said!r}" for said in sentence.findall(line)
                          if " " in said and symbol.search(said)]
        self.assert_nothing(wrong)

    def test_scripts_can_be_run(self):
        self.assert_nothing(
            f"{path} is not executable" for path in tracked()
            if path.parts[0] in ("tools", ".ci") and path.suffix in {".sh", ""}
            and not (ROOT / path).stat().st_mode & 0o100)


def without_code(text):
    text = re.sub(r"^(```|~~~).*?^\1", "", text, flags=re.DOTALL | re.MULTILINE)
    return re.sub(r"`[^`\n]*`", "", text)


def anchors(text):
    """The anchors that a forge makes of the headings."""
    found = set()
    for heading in re.findall(r"^#+ +(.*?) *#*$", without_fences(text), re.MULTILINE):
        heading = re.sub(r"\[([^\]]*)\]\([^)]*\)", r"\1", heading)
        slug = re.sub(r"[^\w\- ]", "", heading.lower()).replace(" ", "-")
        found.add(slug)
    return found


def without_fences(text):
    return re.sub(r"^(```|~~~).*?^\1", "", text, flags=re.DOTALL | re.MULTILINE)


class Links(unittest.TestCase):
    def test_every_link_leads_somewhere(self):
        known = set(tracked())
        wrong = []
        for path, text in texts():
            if path.suffix != ".md":
                continue
            body = without_code(text)
            targets = re.findall(r"\]\(([^)\s]+)(?: \"[^\"]*\")?\)", body)
            targets += re.findall(r"^\[[^\]]+\]: +(\S+)", body, re.MULTILINE)
            targets += re.findall(r"<img[^>]*\bsrc=\"([^\"]+)\"", body)
            wrong += [f"{path}: {target}" for target in targets
                      if not self.leads_somewhere(path, target, text, known)]
        self.assertEqual(wrong, [], "\n" + "\n".join(wrong))

    @staticmethod
    def leads_somewhere(path, target, text, known):
        if re.match(r"(https?|mailto):", target):
            return True
        name, _, anchor = target.partition("#")
        if name:
            place = (ROOT / path.parent / name).resolve()
            if not place.is_relative_to(ROOT):
                return False
            place = place.relative_to(ROOT)
            if place not in known and not any(place in other.parents for other in known):
                return False
            if not anchor or place.suffix != ".md":
                return True
            text = (ROOT / place).read_text(encoding="utf-8")
        return anchor in anchors(text)


if __name__ == "__main__":
    unittest.main()
