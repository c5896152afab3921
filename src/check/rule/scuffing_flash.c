/* check/rule/scuffing_flash.c: do the flanks stay cool enough where they are hottest? */
#include "check/scuffing_safety.h"

static void run(ts_check *check)
{
    ts_judge_scuffing(check, TS_BY_FLASH);
}

const ts_rule ts_rule_scuffing_flash = {
    .id       = "E4-scuffing-flash",
    .title    = "Scuffing, flash temperature",
    .question = "Do the flanks of every cylindrical mesh stay cool enough not to scuff where they "
                "are hottest?",
    .why      = "Flanks that weld and tear for an instant are ruined within minutes, without the "
                "warning that pitting gives.",
    .level    = TS_REFUSE,
    .source   = "ISO/TS 6336-20:2017 (from memory); the least safety: common practice, no source",
    .hint     = "take an oil of a higher scuffing temperature, smoother flanks, or cooler oil",
    .run      = run,
};
