"""What do the tests of `arrange` share?  A drive with freedom, and one that stands at its best."""
import os
import sys

sys.path.insert(0, os.path.dirname(__file__))
from command_line import ROOT, InFolder  # noqa: E402

TRAINER = ROOT / "examples/trainer.yaml"

# The lightest arrangement of the trainer in one plane, as `arrange` writes it.
BEST = """      input: {teeth: 37, face: 8 mm, rear: starter-generator}
      clockwise:
        - {teeth: 19, face: 8 mm, front: breather}
      anticlockwise:
        - {teeth: 50, face: 8 mm, front: fuel pump}
        - {teeth: 41, face: 8 mm, rear: control alternator}
        - {teeth: 89, face: 8 mm, front: hydraulic pump, rear: oil pump pack}

"""


def masses(told):
    return [one["mass"] for one in told["answers"]]


class Arranging(InFolder):
    def with_section(self, path, text):
        copy = self.folder / path.name
        copy.write_text(path.read_text(encoding="utf-8") + "\narrange:\n" + text)
        return copy

    def at_its_best(self):
        """The trainer with that arrangement in its box, and no idlers to try."""
        text = TRAINER.read_text(encoding="utf-8")
        start, end = text.index("      input: {teeth: 37"), text.index("# What the checks hold")
        copy = self.folder / "best.yaml"
        copy.write_text(text[:start] + BEST + text[end:] + "\narrange:\n  idlers: 0\n")
        return copy

    def with_take_offs(self, **lists):
        """That drive with bevels or radial shafts to choose from: spool_bevels="[{...}]"."""
        copy = self.at_its_best()
        told = ", ".join(f"{key.replace('_', ' ')}: {value}" for key, value in lists.items())
        copy.write_text(copy.read_text() + f"  boxes: {{hp: {{{told}}}}}\n")
        return copy
