/* check/crowding.c: which body on the same face stands nearest to another? */
#include "check/crowding.h"

#include "check/envelope.h"
#include "check/visit.h"

static const ts_formula apart_formula = {
    .symbol  = "a_body",
    .meaning = "distance between the axes of two bodies on one face",
    .unit    = "m",
    .text    = "sqrt((X - X_2)^2 + (Y - Y_2)^2)",
    .source  = "derived: Pythagoras",
};
static const ts_formula needed_formula = {
    .symbol  = "a_body_least",
    .meaning = "distance of the axes at which the bodies have the gap that is wanted",
    .unit    = "m",
    .text    = "R + R_2 + gap",
    .source  = "derived: two circles side by side",
};
static const ts_formula reserve_formula = {
    .symbol  = "reserve_a_body",
    .meaning = "reserve of the distance between two bodies",
    .unit    = "1",
    .text    = "a_body/a_body_least - 1",
    .source  = "reserve = capacity / demand - 1",
};

/* Bodies on the face that come before the pad: how tight the tightest is, and how many overlap. */
typedef struct tightest {
    uint32_t pad; /* TS_NOWHERE: there is none */
    double   reserve;
    uint32_t others; /* that lack their gap, besides this one */
} tightest;

static bool is_rival(const ts_check *check, uint32_t pad, uint32_t other, bool same_box)
{
    const ts_train *train = check->train;
    const ts_pad   *mine = &train->pads[pad], *its = &train->pads[other];
    double          R = 0.0;
    return its->face == mine->face && ts_accessory_at(check, its) != NULL &&
           ts_body_radius(ts_accessory_at(check, its), &R) &&
           check->motion->shafts[its->shaft].placed &&
           (train->shafts[its->shaft].drive == train->shafts[mine->shaft].drive) == same_box;
}

static tightest find_tightest(const ts_check *check, uint32_t pad, double R, bool same_box)
{
    const double           gap   = check->drive->limits.body_gap.value;
    const ts_shaft_motion *mine  = &check->motion->shafts[check->train->pads[pad].shaft];
    tightest               found = {TS_NOWHERE, INFINITY, 0};
    for (uint32_t i = 0; i < pad; i++) {
        if (!is_rival(check, pad, i, same_box))
            continue;
        const ts_pad          *rival = &check->train->pads[i];
        const ts_shaft_motion *its   = &check->motion->shafts[rival->shaft];
        const double           R_2   = ts_accessory_at(check, rival)->body.radius.value;
        const double           a     = hypot(mine->x - its->x, mine->y - its->y);
        const double           left  = a / (R + R_2 + gap) - 1.0;
        found.others += left < 0.0;
        if (left < found.reserve) {
            found.reserve = left;
            found.pad     = i;
        }
    }
    found.others -= found.reserve < 0.0;
    return found;
}

/* By how much further apart along the arc two axes must stand, when both stand on it. */
static const char *along_the_arc(ts_check *check, uint32_t shaft, uint32_t other, double a,
                                 double needed)
{
    const ts_shaft_motion *mine = &check->motion->shafts[shaft];
    const ts_shaft_motion *its  = &check->motion->shafts[other];
    const double           R    = 0.5 * (mine->radius + its->radius);
    if (fabs(mine->radius - its->radius) > 1e-6 * R || needed >= 2.0 * R)
        return "";
    const double angle = 2.0 * (asin(needed / (2.0 * R)) - asin(a / (2.0 * R)));
    return ts_phrase(check, " (%s along the arc)", ts_shown(check, angle, TS_KIND_ANGLE));
}

static void say(ts_check *check, ts_finding *finding, uint32_t pad, const tightest *found)
{
    const ts_pad *mine = &check->train->pads[pad], *its = &check->train->pads[found->pad];
    const double  a = finding->value, needed = finding->limit;
    const double  gap   = check->drive->limits.body_gap.value;
    const double  apart = a - (needed - gap);
    const char   *more =
        found->others == 0 ? "" : ts_phrase(check, "; %d more bodies crowd it", (int)found->others);
    if (apart < 0.0)
        ts_says(check, finding, "the bodies of %s and %s overlap by %s on the %s face%s",
                mine->name, its->name, ts_shown(check, -apart, TS_KIND_LENGTH),
                ts_face_name(mine->face), more);
    else
        ts_says(check, finding,
                "the bodies of %s and %s stand %s apart on the %s face, where %s is wanted%s",
                mine->name, its->name, ts_shown_apart(check, apart, gap, TS_KIND_LENGTH),
                ts_face_name(mine->face), ts_shown(check, gap, TS_KIND_LENGTH), more);
    ts_remedy(check, finding, "move their axes %s further apart%s, or one of them to the %s face",
              ts_shown_outward(check, needed - a, TS_KIND_LENGTH, +1),
              along_the_arc(check, mine->shaft, its->shaft, a, needed),
              ts_face_name(mine->face == TS_FRONT ? TS_REAR : TS_FRONT));
}

static void note_radii(const ts_check *check, const ts_pad *pad, const ts_pad *other)
{
    const ts_measure R   = ts_accessory_at(check, pad)->body.radius;
    const ts_measure R_2 = ts_accessory_at(check, other)->body.radius;
    ts_workings_about(check->workings, pad->node, TS_EVERY_CONDITION);
    ts_workings_given(check->workings, "R", R.value, "m", R.node);
    ts_workings_given(check->workings, "R_2", R_2.value, "m", R_2.node);
}

static void judge_pad(ts_check *check, uint32_t pad, double gap, bool same_box)
{
    const ts_pad *record = &check->train->pads[pad];
    double        R      = 0.0;
    if (!ts_body_radius(ts_accessory_at(check, record), &R)) {
        if (same_box)
            ts_not_computable(check, record->node, TS_EVERY_CONDITION, "the body of %s",
                              record->name);
        return;
    }
    const tightest found = find_tightest(check, pad, R, same_box);
    if (found.pad == TS_NOWHERE)
        return;
    const ts_pad *its = &check->train->pads[found.pad];
    const double  R_2 = ts_accessory_at(check, its)->body.radius.value;
    note_radii(check, record, its);
    ts_question question = ts_question_about(check, record->node, TS_EVERY_CONDITION);
    question.limit       = TS_STEP(check->workings, needed_formula, R + R_2 + gap, R, R_2, gap);
    question.value  = ts_axes_apart(check, record->node, &apart_formula, record->shaft, its->shaft);
    question.bound  = TS_AT_LEAST;
    question.kind   = TS_KIND_LENGTH;
    question.symbol = "a_body";
    question.limit_symbol = "a_body_least";
    question.reserve      = &reserve_formula;
    ts_finding *finding   = ts_judge(check, &question);
    if (finding != NULL)
        say(check, finding, pad, &found);
}

void ts_judge_bodies(ts_check *check, bool same_box)
{
    const ts_measure *gap = &check->drive->limits.body_gap;
    if (!ts_limit_known(check, gap, "body gap", "gap", TS_KIND_LENGTH))
        return;
    for (uint32_t i = 0; i < check->train->pad_count; i++) {
        const ts_pad *pad = &check->train->pads[i];
        if (ts_accessory_at(check, pad) != NULL && check->motion->shafts[pad->shaft].placed)
            judge_pad(check, i, gap->value, same_box);
    }
}
