/* check/rule/radial_travel.c: does the float scheme bear the movement of its spool across its axis?
 */
#include "check/visit.h"

static void judge(ts_check *check, const ts_drive_float *item)
{
    const ts_take_off     *take_off = &check->drive->drive[item->drive].take_off;
    const ts_float_option *option   = ts_float_chosen(item);
    if (item->missing != NULL || option == NULL) {
        ts_not_computable(check, take_off->node, TS_EVERY_CONDITION, "%s",
                          item->missing != NULL ? item->missing : "how the bevels float (`float`)");
        return;
    }
    ts_question question = ts_question_about(check, take_off->node, TS_EVERY_CONDITION);
    question.value       = item->r;
    question.limit       = option->r_stop;
    question.bound       = TS_AT_MOST;
    question.kind        = TS_KIND_LENGTH;
    ts_finding *finding  = ts_judge(check, &question);
    if (finding == NULL)
        return;
    const ts_spool *spool = &check->drive->spools[check->drive->drive[item->drive].spool];
    ts_says(check, finding, "the %s spool moves %s across its axis, and the %s bears %s",
            spool->name, ts_shown_apart(check, question.value, question.limit, TS_KIND_LENGTH),
            ts_float_scheme_name((ts_float_scheme)(option - item->options)),
            ts_shown_apart(check, question.limit, question.value, TS_KIND_LENGTH));
    ts_remedy(check, finding, "hold the spool closer at its take-off, or let something there tilt");
}

static void run(ts_check *check)
{
    for (uint32_t d = 0; check->floats != NULL && d < check->floats->count; d++)
        judge(check, &check->floats->items[d]);
    ts_skip(check, "no spool is tapped");
}

const ts_rule ts_rule_radial_travel = {
    .id       = "F1-radial-travel",
    .title    = "Radial travel",
    .question = "Does the float scheme of every take-off bear the movement of its spool across the "
                "engine axis?",
    .why      = "A rotor also sinks and bends; a bevel on it closes, a spline tilts, spurs lose "
                "their play.",
    .level    = TS_WARN,
    .source = "derived for bevels and spurs; 0.15 mm of a spline: order of magnitude of SAE AS966",
    .hint   = "hold the spool closer at its take-off",
    .run    = run,
};
