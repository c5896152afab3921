/* check/rule/tooth_bending.c: do the roots bear every condition without breaking? */
#include "check/tooth_safety.h"

static void run(ts_check *check)
{
    ts_judge_tooth_safety(check, TS_RATED_BENDING);
}

const ts_rule ts_rule_tooth_bending = {
    .id       = "E1-tooth-bending",
    .title    = "Tooth bending",
    .question = "Do the roots of every mesh bear every condition without breaking?",
    .why      = "A broken tooth stops the drive without warning; teeth of idlers, and those that "
                "start the engine, are bent to both sides.",
    .level    = TS_REFUSE,
    .source =
        "ISO 6336-3, method B, in the edition of `method`; bevels: ISO 10300-3, method B1; the "
        "least safety: common practice, no source",
    .hint = "widen the faces, or change module, material or root radius",
    .run  = run,
};
