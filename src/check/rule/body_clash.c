/* check/rule/body_clash.c: do the bodies on one face of a box leave each other room? */
#include "check/crowding.h"

static void run(ts_check *check)
{
    ts_judge_bodies(check, true);
    ts_skip(check, "no face of a box carries two bodies");
}

const ts_rule ts_rule_body_clash = {
    .id       = "D2-body-clash",
    .title    = "Bodies on one face",
    .question = "Do the bodies on one face of a box stand far enough apart?",
    .why    = "Bodies that overlap are found at the mock-up, when tooth numbers are frozen; and a "
              "clamp needs room for fingers.",
    .level  = TS_REFUSE,
    .source = "derived: circles about the pad axes; the gap: common practice, no source",
    .hint   = "move one further along the arc, or to the other face",
    .run    = run,
};
