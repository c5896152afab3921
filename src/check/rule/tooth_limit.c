/* check/rule/tooth_limit.c: has every gear without profile shift enough teeth? */
#include "check/visit.h"

#include "element/mating_limit.h"
#include "motion/value_note.h"

#define DEGREE 0.017453292519943295

static const ts_formula reserve_formula = {
    .symbol  = "reserve_z",
    .meaning = "reserve of the number of teeth",
    .unit    = "1",
    .text    = "z/z_least - 1",
    .source  = "reserve = capacity / demand - 1",
};

/* Angles of a file are the nearest doubles to what it says. */
static bool is_angle(double alpha, double degrees)
{
    return fabs(alpha - degrees * DEGREE) < 1e-9;
}

static const ts_formula k_formula = {
    .symbol  = "k",
    .meaning = "addendum of the mate that the involute must take, in modules",
    .unit    = "1",
    .text    = "h_aPs - x",
    .source  = "derived: a profile shift moves the rack by x modules",
};

/* The round numbers hold for what the trade means by a gear: full depth, no profile shift. */
static bool is_plain(const ts_gear *gear)
{
    return !(gear->beta.value > 0.0) && !(gear->x.value < 0.0) &&
           fabs(gear->system->addendum.value - 1.0) < 1e-9;
}

static const ts_formula alpha_t_formula = {
    .symbol  = "alpha_t",
    .meaning = "transverse pressure angle",
    .unit    = "rad",
    .text    = "atan(tan(alpha_n)/cos(beta))",
    .source  = "ISO 21771:2007, transverse pressure angle",
};

/* What the file says of the gear, and its transverse pressure angle. */
static double note_angles(const ts_check *check, const ts_gear *gear)
{
    ts_workings *workings = check->workings;
    TS_NOTE_MEASURE(workings, check->drive, "alpha_n", gear->alpha_n, "rad", "pressure angle");
    TS_NOTE_MEASURE(workings, check->drive, "beta", gear->beta, "rad", "helix angle");
    TS_NOTE_MEASURE(workings, check->drive, "h_aPs", gear->system->addendum, "1", "addendum");
    TS_NOTE_MEASURE(workings, check->drive, "x", gear->x, "1", "shift");
    const double alpha_n = gear->alpha_n.value, beta = gear->beta.value;
    return TS_STEP(workings, alpha_t_formula, atan(tan(alpha_n) / cos(beta)), alpha_n, beta);
}

/* The round numbers of the trade for plain spur gears; elsewhere what they round: the closed form
 * for a gear that runs with a rack. */
static double least_teeth(ts_check *check, const ts_gear *gear)
{
    const double alpha_n = gear->alpha_n.value, beta = gear->beta.value;
    const char  *trade = "the round number of the trade for this pressure angle, for full-depth "
                         "spur teeth without profile shift; common practice, no source";
    if (is_plain(gear) && is_angle(alpha_n, 20.0)) {
        ts_workings_assumed(check->workings, "z_least", 17.0, "1", trade);
        return 17.0;
    }
    if (is_plain(gear) && is_angle(alpha_n, 25.0)) {
        ts_workings_assumed(check->workings, "z_least", 12.0, "1", trade);
        return 12.0;
    }
    const double alpha_t = note_angles(check, gear);
    const double h_aPs = gear->system->addendum.value, x = gear->x.value;
    const double k     = TS_STEP(check->workings, k_formula, h_aPs - x, h_aPs, x);
    const double exact = ts_teeth_least_with_rack(k, alpha_t, beta, check->workings);
    const double whole = ceil(exact);
    ts_workings_assumed(check->workings, "z_least", whole, "1",
                        "the next whole number above the least number that runs with a rack");
    return whole;
}

/* The shift with which its teeth run with a rack; the round numbers end above 0. */
static double least_shift(const ts_gear *gear)
{
    const double beta    = gear->beta.value;
    const double alpha_t = atan(tan(gear->alpha_n.value) / cos(beta)), s = sin(alpha_t);
    const double x =
        gear->system->addendum.value - (double)gear->teeth.value * (s * s) / (2.0 * cos(beta));

    return x < 0.0 ? x : fmax(x, 0.01);
}

static bool is_asked(const ts_gear *gear)
{
    return gear->system != NULL && ts_measure_known(gear->alpha_n) &&
           ts_measure_known(gear->beta) && ts_measure_known(gear->system->addendum) &&
           ts_measure_known(gear->x) && !(gear->x.value > 0.0);
}

static void run(ts_check *check)
{
    for (uint32_t i = 0; i < check->train->gear_count; i++) {
        const ts_gear *gear = &check->train->gears[i];
        if (!is_asked(gear))
            continue;
        ts_workings_about(check->workings, gear->node, TS_EVERY_CONDITION);
        ts_question question  = ts_question_about(check, gear->node, TS_EVERY_CONDITION);
        question.value        = (double)gear->teeth.value;
        question.limit        = least_teeth(check, gear);
        question.bound        = TS_AT_LEAST;
        question.kind         = TS_KIND_NUMBER;
        question.symbol       = "z";
        question.limit_symbol = "z_least";
        question.reserve      = &reserve_formula;
        ts_workings_given(check->workings, "z", question.value, "1", gear->teeth.node);
        ts_finding *finding = ts_judge(check, &question);
        if (finding == NULL)
            continue;
        ts_says(check, finding,
                "%s has %d teeth without positive profile shift; %d are the least at %s",
                ts_gear_name(check, i), (int)gear->teeth.value, (int)question.limit,
                ts_shown(check, gear->alpha_n.value, TS_KIND_ANGLE));
        ts_remedy(check, finding, "use at least %d teeth, or a profile shift of at least %s",
                  (int)question.limit,
                  ts_shown_outward(check, least_shift(gear), TS_KIND_NUMBER, +1));
    }
    ts_skip(check, "every cylindrical gear has a positive profile shift, or an unknown one");
}

const ts_rule ts_rule_tooth_limit = {
    .id    = "C2-tooth-limit",
    .title = "Least number of teeth",
    .question =
        "Has every cylindrical gear without positive profile shift at least 17 teeth at 20 deg, "
        "or 12 at 25 deg, or what its addendum and shift ask for?",
    .why    = "Fewer teeth are undercut by the cutter, and their mates reach into the fillet.",
    .level  = TS_REFUSE,
    .source = "common practice, no source",
    .hint   = "use more teeth, or a positive profile shift",
    .run    = run,
};
