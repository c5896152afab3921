/* check/rule/box_clash.c: might bodies of two boxes meet? */
#include "check/crowding.h"

static void run(ts_check *check)
{
    ts_judge_bodies(check, false);
    ts_skip(check, "no two boxes carry bodies on the same face");
}

const ts_rule ts_rule_box_clash = {
    .id       = "D2-box-clash",
    .title    = "Bodies of two boxes",
    .question = "Do the bodies of two boxes stand clear of each other, seen along the engine?",
    .why   = "Two boxes are drawn by two people. The file does not say where along the engine each "
             "stands, so bodies that cross in this view are a question, not a clash.",
    .level = TS_WARN,
    .source = "derived: circles about the pad axes; the gap: common practice, no source",
    .hint   = "see that the boxes stand apart along the engine",
    .run    = run,
};
