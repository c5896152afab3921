/* check/rule/float_travel.c: does the float scheme bear the axial movement of its spool? */
#include "check/visit.h"

static const ts_formula closing_formula = {
    .symbol  = "j_closing",
    .meaning = "normal backlash that the bevels lose when the spool moves furthest into mesh",
    .unit    = "m",
    .text    = "2*s_in*sin(delta_1)*sin(alpha_n)",
    .source =
        "derived: moved by s along its axis a bevel opens its pitch cone by s*sin(delta), and "
        "two flanks by sin(alpha_n) of that each",
};
static const ts_formula backlash_reserve = {
    .symbol  = "reserve_j",
    .meaning = "reserve of the backlash of the take-off bevels",
    .unit    = "1",
    .text    = "j_bn/j_closing - 1",
    .source  = "reserve = capacity / demand - 1",
};
static const ts_formula slide_reserve = {
    .symbol  = "reserve_s",
    .meaning = "reserve of the slide of the splined stub",
    .unit    = "1",
    .text    = "s_most/s - 1",
    .source  = "reserve = capacity / demand - 1",
};
static const ts_formula stroke_formula = {
    .symbol  = "s",
    .meaning = "whole axial movement of the spool",
    .unit    = "m",
    .text    = "s_rearward - s_forward",
    .source  = "derived: difference of its two ends",
};

static void note_travel(const ts_check *check, ts_node about, const ts_span *travel)
{
    ts_workings_about(check->workings, about, TS_EVERY_CONDITION);
    ts_workings_given(check->workings, "s_forward", travel->low, "m", travel->node);
    ts_workings_given(check->workings, "s_rearward", travel->high, "m", travel->node);
}

/* ---- fixed bevel --------------------------------------------------------------------------- */

/* A gear on the rear side closes when the spool moves forward, one on the front side when it moves
 * rearward. */
static double travel_into_mesh(const ts_take_off *take_off, const ts_span *travel)
{
    const double into = take_off->bevels.side.value == TS_REAR ? -travel->low : travel->high;
    return into > 0.0 ? into : 0.0;
}

static uint32_t take_off_mesh(const ts_check *check, const ts_take_off *take_off)
{
    for (uint32_t i = 0; i < check->train->mesh_count; i++)
        if (check->train->meshes[i].bevels == &take_off->bevels)
            return i;
    return TS_NOWHERE;
}

static void judge_fixed(ts_check *check, const ts_take_off *take_off, const ts_span *travel)
{
    const uint32_t mesh = take_off_mesh(check, take_off);
    if (!ts_measure_known(take_off->backlash)) {
        ts_not_computable(check, take_off->node, TS_EVERY_CONDITION,
                          "the backlash of the take-off bevels");
        return;
    }
    if (mesh == TS_NOWHERE || !check->motion->meshes[mesh].solved) {
        ts_not_computable(check, take_off->node, TS_EVERY_CONDITION,
                          "the geometry of the take-off bevels");
        return;
    }
    const ts_node about   = take_off->node;
    const double  delta_1 = check->motion->meshes[mesh].bevel.delta_1;
    const double  alpha_n = check->motion->meshes[mesh].bevel.in.alpha_n;
    const double  s_in    = travel_into_mesh(take_off, travel);
    ts_borrow(check, about, (ts_input){"delta_1", delta_1}, check->train->meshes[mesh].node,
              "delta_1");
    ts_borrow(check, about, (ts_input){"alpha_n", alpha_n}, check->train->meshes[mesh].node,
              "alpha_n");
    ts_workings_given(check->workings, "s_in", s_in, "m", travel->node);
    ts_workings_given(check->workings, "j_bn", take_off->backlash.value, "m",
                      take_off->backlash.node);
    ts_question question  = ts_question_about(check, about, TS_EVERY_CONDITION);
    question.value        = TS_STEP(check->workings, closing_formula,
                                    2.0 * s_in * sin(delta_1) * sin(alpha_n), s_in, delta_1, alpha_n);
    question.limit        = take_off->backlash.value;
    question.bound        = TS_AT_MOST;
    question.kind         = TS_KIND_LENGTH;
    question.symbol       = "j_closing";
    question.limit_symbol = "j_bn";
    question.reserve      = &backlash_reserve;
    ts_finding *finding   = ts_judge(check, &question);
    if (finding == NULL)
        return;
    ts_says(check, finding,
            "%s of movement into mesh takes %s from a normal backlash of %s: the bevels bind",
            ts_shown(check, s_in, TS_KIND_LENGTH),
            ts_shown_apart(check, question.value, question.limit, TS_KIND_LENGTH),
            ts_shown_apart(check, question.limit, question.value, TS_KIND_LENGTH));
    ts_remedy(check, finding,
              "give the bevels more than %s of backlash, put the gear on the other side, or use a "
              "splined stub",
              ts_shown_outward(check, question.value, TS_KIND_LENGTH, +1));
}

/* ---- splined stub -------------------------------------------------------------------------- */

/* Each end of the travel against the same end of the slide; the worse one is judged. */
static void judge_stub(ts_check *check, const ts_take_off *take_off, const ts_span *travel)
{
    const ts_span *slide = &take_off->slide;
    if (slide->standing == TS_ABSENT || slide->standing == TS_UNKNOWN) {
        ts_not_computable(check, take_off->node, TS_EVERY_CONDITION,
                          "the slide of the splined stub");
        return;
    }
    const double forward = slide->low - travel->low, rearward = travel->high - slide->high;
    const bool   ahead  = forward > rearward;
    const double s      = ahead ? -travel->low : travel->high;
    const double s_most = ahead ? -slide->low : slide->high;
    ts_workings_about(check->workings, take_off->node, TS_EVERY_CONDITION);
    ts_workings_given(check->workings, "s", s, "m", travel->node);
    ts_workings_given(check->workings, "s_most", s_most, "m", slide->node);
    ts_question question  = ts_question_about(check, take_off->node, TS_EVERY_CONDITION);
    question.value        = s;
    question.limit        = s_most;
    question.bound        = TS_AT_MOST;
    question.kind         = TS_KIND_LENGTH;
    question.symbol       = "s";
    question.limit_symbol = "s_most";
    question.reserve      = &slide_reserve;
    ts_finding *finding   = ts_judge(check, &question);
    if (finding == NULL)
        return;
    const double other      = ahead ? travel->high : -travel->low;
    const double other_most = ahead ? slide->high : -slide->low;
    ts_says(check, finding, "the spool moves %s %s, and the splined stub slides %s that way%s",
            ts_shown_apart(check, s, s_most, TS_KIND_LENGTH), ahead ? "forward" : "rearward",
            ts_shown_apart(check, s_most, s, TS_KIND_LENGTH),
            other > other_most ? ts_phrase(check, "; it moves %s %s too, where the stub slides %s",
                                           ts_shown_apart(check, other, other_most, TS_KIND_LENGTH),
                                           ahead ? "rearward" : "forward",
                                           ts_shown_apart(check, other_most, other, TS_KIND_LENGTH))
                               : "");
    ts_remedy(check, finding, "let the spline slide at least %s",
              ts_shown_outward(check, s, TS_KIND_LENGTH, +1));
}

/* ---- wide spur ----------------------------------------------------------------------------- */

static void judge_spur(ts_check *check, const ts_take_off *take_off, const ts_span *travel)
{
    if (!ts_measure_known(take_off->overlap)) {
        ts_not_computable(check, take_off->node, TS_EVERY_CONDITION,
                          "the overlap of the wide spur");
        return;
    }
    const double s_rearward = travel->high, s_forward = travel->low;
    ts_workings_given(check->workings, "s_most", take_off->overlap.value, "m",
                      take_off->overlap.node);
    ts_question question = ts_question_about(check, take_off->node, TS_EVERY_CONDITION);
    question.value =
        TS_STEP(check->workings, stroke_formula, s_rearward - s_forward, s_rearward, s_forward);
    question.limit        = take_off->overlap.value;
    question.bound        = TS_AT_MOST;
    question.kind         = TS_KIND_LENGTH;
    question.symbol       = "s";
    question.limit_symbol = "s_most";
    question.reserve      = &slide_reserve;
    ts_finding *finding   = ts_judge(check, &question);
    if (finding == NULL)
        return;
    ts_says(check, finding, "the spool moves %s in all, and the wide spur has %s of face to spare",
            ts_shown_apart(check, question.value, question.limit, TS_KIND_LENGTH),
            ts_shown_apart(check, question.limit, question.value, TS_KIND_LENGTH));
    ts_remedy(check, finding, "make the spur %s wider",
              ts_shown_outward(check, question.value - question.limit, TS_KIND_LENGTH, +1));
}

static void judge_take_off(ts_check *check, const ts_spool_drive *drive)
{
    const ts_take_off *take_off = &drive->take_off;
    const ts_spool    *spool    = &check->drive->spools[drive->spool];
    const ts_span     *travel   = &spool->axial_travel;
    if (take_off->scheme.standing == TS_ABSENT || take_off->scheme.standing == TS_UNKNOWN) {
        ts_not_computable(check, take_off->node, TS_EVERY_CONDITION,
                          "how the bevels float (`float`)");
        return;
    }
    if (travel->standing == TS_ABSENT || travel->standing == TS_UNKNOWN) {
        ts_not_computable(check, take_off->node, TS_EVERY_CONDITION,
                          "the axial travel of the %s spool", spool->name);
        return;
    }
    note_travel(check, take_off->node, travel);
    if (take_off->scheme.value == TS_FLOAT_FIXED_BEVEL)
        judge_fixed(check, take_off, travel);
    else if (take_off->scheme.value == TS_FLOAT_SPLINED_STUB)
        judge_stub(check, take_off, travel);
    else
        judge_spur(check, take_off, travel);
}

static void run(ts_check *check)
{
    for (size_t i = 0; i < check->drive->drive_count; i++)
        judge_take_off(check, &check->drive->drive[i]);
    ts_skip(check, "no spool is tapped");
}

const ts_rule ts_rule_float_travel = {
    .id       = "F1-float-travel",
    .title    = "Float against travel",
    .question = "Does the float scheme of every take-off bear the axial movement of its spool?",
    .why      = "The rotor moves along the engine as it heats and thrusts; what does not float "
                "with it binds the bevels or runs off their teeth.",
    .level    = TS_REFUSE,
    .source   = "derived: see the formula of each scheme on this page",
    .hint     = "use a scheme that bears more movement",
    .run      = run,
};
