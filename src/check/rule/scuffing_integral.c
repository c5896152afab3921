/* check/rule/scuffing_integral.c: do the flanks stay cool enough on the whole? */
#include "check/scuffing_safety.h"

static void run(ts_check *check)
{
    ts_judge_scuffing(check, TS_BY_INTEGRAL);
}

const ts_rule ts_rule_scuffing_integral = {
    .id       = "E4-scuffing-integral",
    .title    = "Scuffing, integral temperature",
    .question = "Do the flanks of every mesh stay cool enough not to scuff, on the mean of their "
                "contact?",
    .why    = "A second look at the same risk, which does not hang on one point of the flank; and "
              "the only one for bevels.",
    .level  = TS_REFUSE,
    .source = "ISO/TS 6336-21:2017 (from memory); the least safety: common practice, no source",
    .hint   = "take an oil of a higher scuffing temperature, smoother flanks, or cooler oil",
    .run    = run,
};
