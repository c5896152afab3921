/* check/rule/mass_overhang.c: does a box hang evenly on its mounts? */
#include "check/visit.h"

static const ts_formula distance_formula = {
    .symbol  = "e_abs",
    .meaning = "distance of the centre of mass from the middle of the box's depth",
    .unit    = "m",
    .text    = "abs(e_m)",
    .source  = "derived: either way",
};
static const ts_formula reserve_formula = {
    .symbol  = "reserve_overhang",
    .meaning = "reserve of the overhang",
    .unit    = "1",
    .text    = "e_most/e_abs - 1",
    .source  = "reserve = capacity / demand - 1",
};

/* The accessory whose moment about the middle of the depth is largest on that side. */
static const ts_mass_part *heaviest_side(const ts_check *check, uint32_t d, double overhang,
                                         double station)
{
    const ts_mass_part *found = NULL;
    double              most  = 0.0;
    for (size_t i = 0; i < check->mass->part_count; i++) {
        const ts_mass_part *part = &check->mass->parts[i];
        if (part->kind != TS_MASS_ACCESSORY || part->drive != d || part->missing != NULL)
            continue;
        const double moment = part->m.value * (part->z - station) * (overhang < 0.0 ? -1.0 : 1.0);
        if (moment > most) {
            most  = moment;
            found = part;
        }
    }
    return found;
}

static void complain(ts_check *check, ts_finding *finding, uint32_t d, double e_most)
{
    const ts_box_mass  *box     = &check->mass->boxes[d];
    const double        station = check->drive->drive[d].tower_shaft.station.value;
    const ts_mass_part *part    = heaviest_side(check, d, box->overhang, station);
    const double        excess  = fabs(box->overhang) - e_most;
    ts_says(check, finding,
            "the centre of mass of the box with its accessories, %s, lies %s %s the middle of its "
            "depth; at most %s is wanted",
            ts_shown(check, box->installed.value, TS_KIND_MASS),
            ts_shown_apart(check, fabs(box->overhang), e_most, TS_KIND_LENGTH),
            box->overhang < 0.0 ? "before" : "behind", ts_shown(check, e_most, TS_KIND_LENGTH));
    if (part == NULL)
        return;
    /* On the other face the same part has the opposite moment. */
    const double gain = 2.0 * part->m.value * fabs(part->z - station) / box->installed.value;
    ts_remedy(check, finding, "bring it back by %s; %s on the other face would move it by %s",
              ts_shown(check, excess, TS_KIND_LENGTH), part->name,
              ts_shown(check, gain, TS_KIND_LENGTH));
}

static void judge_box(ts_check *check, uint32_t d, double e_most)
{
    const ts_node      node = check->drive->drive[d].box.node;
    const ts_box_mass *box  = &check->mass->boxes[d];
    const double       e_m  = box->overhang;
    for (size_t i = 0; i < check->mass->part_count; i++) {
        const ts_mass_part *part = &check->mass->parts[i];
        if (part->drive != d || part->missing == NULL)
            continue;
        ts_not_computable(check, node, TS_EVERY_CONDITION, "%s of %s", part->missing, part->name);
        return;
    }
    ts_workings_about(check->workings, node, TS_EVERY_CONDITION);
    ts_question question  = ts_question_about(check, node, TS_EVERY_CONDITION);
    question.value        = TS_STEP(check->workings, distance_formula, fabs(e_m), e_m);
    question.limit        = e_most;
    question.bound        = TS_AT_MOST;
    question.kind         = TS_KIND_LENGTH;
    question.symbol       = "e_abs";
    question.limit_symbol = "e_most";
    question.reserve      = &reserve_formula;
    ts_finding *finding   = ts_judge(check, &question);
    if (finding != NULL)
        complain(check, finding, d, e_most);
}

static void run(ts_check *check)
{
    const ts_measure *limit = &check->drive->limits.mass_overhang;
    if (limit->standing == TS_ABSENT || check->mass == NULL) {
        ts_skip(check, limit->standing == TS_ABSENT ? "the file sets no limit of the mass overhang"
                                                    : "nothing was weighed");
        return;
    }
    if (!ts_limit_known(check, limit, "mass overhang", "e_most", TS_KIND_LENGTH))
        return;
    for (size_t d = 0; d < check->drive->drive_count; d++)
        judge_box(check, (uint32_t)d, limit->value);
    ts_skip(check, "no spool is tapped");
}

const ts_rule ts_rule_mass_overhang = {
    .id       = "D6-mass-overhang",
    .title    = "Mass overhang",
    .question = "Does the centre of mass of every box with its accessories lie near the middle of "
                "its depth?",
    .why      = "Mounts and casing bear the moment of what hangs out on one face, in every jolt.",
    .level    = TS_WARN,
    .source   = "the file's own limit",
    .hint     = "put heavy accessories on the other face, or choose shorter ones",
    .run      = run,
};
