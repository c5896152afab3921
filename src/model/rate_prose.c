/* model/rate_prose.c: how does one write a rate file? */
#include "model/manual_prose.h"

#include <stddef.h>

static const char heading[] =
    "# The rate file\n"
    "\n"
    "<!-- Printed by the program from the tables that its reader runs from; not edited by hand. "
    "-->\n"
    "\n"
    "A rate file describes elements by themselves, outside of any drive, by the symbols of their\n"
    "standards: gear pairs, bevel pairs, single gears to be measured, tolerances, materials.\n"
    "`towershaft rate FILE` computes all of them; `towershaft why FILE ADDRESS` shows the working\n"
    "of any number.\n";

static const char smallest[] = "## A small file that reads\n"
                               "\n"
                               "```yaml\n"
                               "towershaft rate: 1\n"
                               "title: First mesh of a demonstrator\n"
                               "\n"
                               "gear pair:\n"
                               "  first mesh: {z_1: 25, z_2: 62, m_n: 2 mm, alpha_n: 25 deg, b_1: "
                               "22 mm, b_2: 20 mm, x_1: 0.2}\n"
                               "\n"
                               "tolerance:\n"
                               "  pinion: {z: 25, m_n: 2 mm, b: 22 mm, class: 5}\n"
                               "```\n";

static const char notation[] =
    "## The notation\n"
    "\n"
    "It is that of [the drive file](drive-file.md): the same YAML, quantities with their units, "
    "the\n"
    "same limits, messages and names. Any value may be `{value: ..., source: ..., date: ...,\n"
    "confidence: ...}`. Keys are symbols in ASCII: Greek letters in full, subscripts after one\n"
    "underscore, `s` for a star; numbers at the end belong to gear 1 or gear 2. Words stand for "
    "what\n"
    "has no symbol: `material 1`, `accuracy 2`.\n"
    "\n"
    "Signs of internal gears are those of ISO 21771: `z_2` is negative, and profile shift is "
    "positive\n"
    "where teeth grow thicker. Centre distances and tip diameters are written without a sign, and\n"
    "answered with it.\n";

static const char answers[] =
    "## What is answered\n"
    "\n"
    "Each element is answered in sections, one a standard, each number with symbol, value, unit,\n"
    "meaning and source. A section that stands for one gear, one allowance or one method of "
    "rating\n"
    "is named behind an @ in its addresses: `gear pair/first mesh:eps_alpha`,\n"
    "`gear pair/first mesh:W_k@gear 1`, `gear pair/first mesh:S_F1@ISO 6336`. Without `--all` the\n"
    "page shows what is asked most; the JSON answer (`docs/schema/rate.schema.json`) holds all.\n"
    "\n"
    "Load capacity is asked for by `T_1`, `F_t` or `P`. What a method then lacks is named, with "
    "what\n"
    "it is; the method is not computable, and neither is the whole. What a default fills in is "
    "listed\n"
    "as an assumption. What cannot exist is a finding with the limit and the nearest value that "
    "can;\n"
    "where a standard's range of validity is left, a remark names the clause. A number behind a\n"
    "finding, as in `rate-undercut-1`, is that of the gear.\n"
    "\n"
    "| finding | level | says |\n"
    "|---|---|---|\n"
    "| `rate-no-geometry` | refuse | the element cannot exist: no centre distance, no flank, no "
    "rack, no cone ... |\n"
    "| `rate-pointed-tip` | refuse | a tooth ends in a point below its tip |\n"
    "| `rate-thin-tip` | warn | a tooth is thinner than 0.2 modules at its tip |\n"
    "| `rate-undercut` | warn | the rack undercuts the teeth |\n"
    "| `rate-interference` | refuse | a tip digs into the fillet of its mate |\n"
    "| `rate-passing-tips` | refuse | tips of an internal pair run into each other beside the mesh "
    "|\n"
    "| `rate-contact-ratio` | refuse | a pair of teeth lets go before the next has taken over |\n"
    "| `rate-tip-clearance` | refuse | a tip touches the root of its mate |\n"
    "| `rate-clash` | refuse | teeth are thicker than the centre distance leaves room for |\n"
    "| `rate-pin` | warn | the pin does not touch the flanks |\n"
    "| `rate-hardening` | refuse | a steel is hardened in one way by its row, in another by "
    "`class` "
    "|\n"
    "| `rate-safety` and the like | refuse | a safety is below its least |\n"
    "| `rate-missing-input` | refuse, not computable | what a method lacks |\n"
    "| `rate-range-...` | warn or note | a standard's range of validity is left |\n"
    "| `rate-range-hardness` | refuse | a hard flank is softer than its grade asks for, so that "
    "its stress numbers are not known; a warning elsewhere outside of the range |\n"
    "\n"
    "The exit code is 0 when all of it holds, 1 when something does not, 2 when the file cannot "
    "be\n"
    "understood or something that it asks for cannot be computed.\n";

static const char editors[] =
    "## Editors\n"
    "\n"
    "`docs/schema/rate-file.schema.json` is the JSON Schema of this notation.\n";

const char *const ts_rate_prose[] = {heading, smallest, notation, answers, editors, NULL};
