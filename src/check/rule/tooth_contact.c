/* check/rule/tooth_contact.c: do the flanks bear every condition without pitting? */
#include "check/tooth_safety.h"

static void run(ts_check *check)
{
    ts_judge_tooth_safety(check, TS_RATED_CONTACT);
}

const ts_rule ts_rule_tooth_contact = {
    .id       = "E1-tooth-contact",
    .title    = "Tooth contact",
    .question = "Do the flanks of every mesh bear every condition without pitting?",
    .why      = "Pits grow, shed debris into the oil and end as broken teeth; the start may load "
                "another flank, and harder, than the run.",
    .level    = TS_REFUSE,
    .source =
        "ISO 6336-2, method B, in the edition of `method`; bevels: ISO 10300-2, method B1; the "
        "least safety: common practice, no source",
    .hint = "widen the faces, or change module, material or accuracy",
    .run  = run,
};
