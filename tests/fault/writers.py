"""Which commands write files?  Every kind of file once, with what was there before."""
import os
import pathlib

ROOT = pathlib.Path(os.environ.get("TS_SOURCE", pathlib.Path(__file__).resolve().parents[2]))
COMMAND = os.environ.get("TOWERSHAFT", str(ROOT / "build/release/towershaft"))
BIZJET = ROOT / "examples/bizjet.yaml"
TRAINER = ROOT / "examples/trainer.yaml"
DAY = "2026-06-30"
STEP_WRITER = pathlib.Path(COMMAND).parent / "towershaft-step"


class Writer:
    """One command that writes into a folder.  `words` holds OUT where the folder's path stands;
    `before` are the files that lie there already; `rc` is the exit code of success; `moving`: how many
    calls it makes depends on another process, so that a fault may miss."""

    def __init__(self, name, *words, before=(), rc=(0,), moving=False):
        self.name, self.template, self.before, self.rc = name, words, dict(before), rc
        self.moving = moving

    def lay(self, folder):
        for name, source in self.before.items():
            (folder / name).write_bytes(source.read_bytes())

    def words(self, folder):
        return [COMMAND, *(str(word).replace("OUT", str(folder)) for word in self.template)]


# Quick ones first: `make test` takes these, `make soak` all.
QUICK = [
    Writer("set, in place", "set", "OUT/drive.yaml", "revision", "next",
           before={"drive.yaml": BIZJET}),
    Writer("picture, svg", "draw", TRAINER, "-o", "OUT/front.svg", "--figure", "front"),
]
SLOW = [
    Writer("sheet, pdf", "sheet", BIZJET, "generator", "-o", "OUT/sheet.pdf"),
    Writer("set, another file", "set", BIZJET, "revision", "next", "-o", "OUT/other.yaml"),
    Writer("set, over another file", "set", BIZJET, "revision", "next", "-o", "OUT/other.yaml",
           before={"other.yaml": TRAINER}),
    Writer("new", "new", "OUT/fresh.yaml", "--like", "trainer"),
    Writer("picture, pdf", "draw", TRAINER, "-o", "OUT/p.pdf"),
    Writer("picture, png", "draw", TRAINER, "-o", "OUT/p.png", "--figure", "speeds"),
    Writer("picture, dxf", "draw", TRAINER, "-o", "OUT/p.dxf", "--figure", "pads"),
    Writer("bodies, glb", "draw", TRAINER, "-o", "OUT/b.glb"),
    Writer("bodies, json", "draw", TRAINER, "-o", "OUT/b.json"),
    Writer("sheet, html", "sheet", BIZJET, "generator", "-o", "OUT/sheet.html"),
    Writer("card, pdf", "effects", TRAINER, "hp tower shaft", "-o", "OUT/card.pdf", rc=(0, 1)),
    Writer("brief, html", "brief", TRAINER, "-o", "OUT/brief.html", "--today", DAY),
    Writer("brief, pdf", "brief", TRAINER, "-o", "OUT/brief.pdf", "--today", DAY),
    Writer("report, html", "report", TRAINER, "-o", "OUT/r.html", "--today", DAY),
    Writer("report, pdf", "report", TRAINER, "-o", "OUT/r.pdf", "--today", DAY),
    Writer("report, csv", "report", TRAINER, "-o", "OUT/r.csv", "--today", DAY),
    Writer("report, xlsx", "report", TRAINER, "-o", "OUT/r.xlsx", "--today", DAY),
    Writer("report, recheck", "report", TRAINER, "-o", "OUT/r.html", "--recheck", "--today", DAY),
    Writer("sheets of shims", "report", TRAINER, "--sheets", "shims", "-o", "OUT/s.json"),
    Writer("sheets of teeth", "report", TRAINER, "--sheets", "teeth", "-o", "OUT/t.pdf"),
    Writer("size", "size", BIZJET, "-o", "OUT/sized.yaml", "--today", DAY),
    Writer("size, in place", "size", "OUT/drive.yaml", "--write", "--today", DAY,
           before={"drive.yaml": BIZJET}),
    Writer("arrangement", "arrange", TRAINER, "-o", "OUT/arranged.yaml", "--picture",
           "OUT/arranged.svg"),
    Writer("pictures in a folder", "draw", TRAINER, "-o", "OUT/", "--format", "dxf"),
]
if STEP_WRITER.exists():
    SLOW.append(Writer("bodies, step", "draw", TRAINER, "-o", "OUT/b.step", moving=True))
