"""What is in the program, as a bill of materials: SPDX 2.3 in JSON, on standard output.

    python3 tools/sbom.py [--write]

From docs/dependencies.md (libraries and fonts, linked dynamically) and web/package-lock.json (what is
built into the page).  The same tree gives the same bytes: its date is that of the version, and its
name space a digest of what it says.
"""

import hashlib
import json
import pathlib
import re
import sys

ROOT = pathlib.Path(__file__).resolve().parents[1]
TARGET = ROOT / "packaging" / "towershaft.spdx.json"
# The first date of the version; SPDX wants one, and the clock is no part of a tree.
CREATED = "2026-11-26T00:00:00Z"
SPDX = {
    "MIT; BSD-2-Clause for its hash; Debian lists one list header of it as GPL-2":
        "MIT AND BSD-2-Clause",
    "LGPL-2.1 or MPL-1.1": "LGPL-2.1-only OR MPL-1.1",
    "LGPL-2+": "LGPL-2.0-or-later",
    "MIT-like": "HPND-sell-variant",
    "OFL-1.1, EPL-2.0 and EDL-1.0": "OFL-1.1 AND EPL-2.0 AND BSD-3-Clause",
    "LGPL-2.1+": "LGPL-2.1-or-later",
    "public domain": "blessing",
}


def libraries():
    """(name, version, licence, comment) of every row of the first table."""
    text = (ROOT / "docs" / "dependencies.md").read_text()
    table = text.split("## Inside the program", 1)[1].split("\n## ", 1)[0]
    rows = [[cell.strip() for cell in line.strip("|\n ").split("|")]
            for line in table.splitlines() if line.startswith("|")][2:]
    return [(name, version, SPDX.get(licence, licence), licence if licence in SPDX else "")
            for name, version, licence, _ in rows]


def page_packages():
    lock = json.loads((ROOT / "web" / "package-lock.json").read_text())
    return [(path.removeprefix("node_modules/"), one["version"], one["license"],
             one.get("integrity", "")) for path, one in sorted(lock["packages"].items())
            if path and not one.get("dev") and not one.get("optional")]


def version_of_the_tree():
    return re.search(r"^project\(towershaft VERSION ([0-9.]+)",
                     (ROOT / "CMakeLists.txt").read_text(), re.MULTILINE).group(1)


def package(index, name, version, licence, **more):
    return {"SPDXID": f"SPDXRef-{index}", "name": name, "versionInfo": version,
            "downloadLocation": "NOASSERTION", "filesAnalyzed": False,
            "licenseConcluded": licence, "licenseDeclared": licence,
            "copyrightText": "NOASSERTION", **more}


def bill():
    version = version_of_the_tree()
    packages = [package("towershaft", "towershaft", version, "Apache-2.0",
                        primaryPackagePurpose="APPLICATION")]
    relations = [("SPDXRef-DOCUMENT", "DESCRIBES", "SPDXRef-towershaft")]
    for i, (name, number, licence, comment) in enumerate(libraries()):
        more = {"licenseComments": comment} if comment else {}
        packages.append(package(f"library-{i}", name, number, licence, **more))
        kind = "OPTIONAL_DEPENDENCY_OF" if "optional" in name else "DYNAMIC_LINK"
        relations.append((f"SPDXRef-library-{i}", kind, "SPDXRef-towershaft") if "OF" in kind else
                         ("SPDXRef-towershaft", kind, f"SPDXRef-library-{i}"))
    for i, (name, number, licence, integrity) in enumerate(page_packages()):
        more = {"comment": f"npm integrity {integrity}"} if integrity else {}
        packages.append(package(f"page-{i}", name, number, licence, **more))
        relations.append(("SPDXRef-towershaft", "CONTAINS", f"SPDXRef-page-{i}"))
    said = json.dumps([packages, relations], sort_keys=True).encode()
    return {"spdxVersion": "SPDX-2.3", "dataLicense": "CC0-1.0", "SPDXID": "SPDXRef-DOCUMENT",
            "name": f"towershaft-{version}",
            "documentNamespace": f"urn:sha256:{hashlib.sha256(said).hexdigest()}",
            "creationInfo": {"created": CREATED, "creators": ["Tool: tools/sbom.py"]},
            "packages": packages,
            "relationships": [{"spdxElementId": a, "relationshipType": kind,
                               "relatedSpdxElement": b} for a, kind, b in relations]}


def main():
    text = json.dumps(bill(), indent=1, ensure_ascii=False) + "\n"
    if "--write" in sys.argv[1:]:
        TARGET.write_text(text)
    else:
        sys.stdout.write(text)


if __name__ == "__main__":
    main()
