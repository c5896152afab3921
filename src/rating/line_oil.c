/* rating/line_oil.c: how thick and how clean is the oil in the bearings of a drive? */
#include "rating/drive_lines_parts.h"

#include "element/oil_viscosity.h"
#include "motion/value_note.h"

#include <math.h>

static const ts_formula theta_formula = {
    .symbol  = "theta",
    .meaning = "temperature of the oil in the bearings",
    .unit    = "K",
    .text    = "theta_oil + rise",
    .source  = "derived: the oil that is fed, warmed by the bearing",
};

static double known(ts_measure measure)
{
    return ts_measure_known(measure) ? measure.value : (double)NAN;
}

static void note_points(const ts_lines_case *c, const ts_oil *oil)
{
    TS_NOTE_MEASURE(c->workings, c->drive, "nu_40", oil->nu_40, "m2/s",
                    ts_oil_key(c->drive, "oil/viscosity at 40"));
    TS_NOTE_MEASURE(c->workings, c->drive, "nu_100", oil->nu_100, "m2/s",
                    ts_oil_key(c->drive, "oil/viscosity at 100"));
}

/* m2/s in one condition. */
static double viscosity_in(const ts_lines_case *c, uint32_t condition, const ts_viscosity_law *law)
{
    const ts_oil    *oil       = &c->drive->oil;
    const ts_measure feed      = ts_oil_feed(oil, condition);
    const bool       apart     = feed.node != oil->feed.node;
    const double     theta_oil = known(feed), rise = known(oil->bearing_rise);

    if (isnan(law->A + law->B + theta_oil + rise) || !ts_pick_known(oil->cleanness))
        return (double)NAN;
    if (c->workings != NULL) {
        ts_workings_about(c->workings, c->lines->oil_node, (int32_t)condition);
        TS_NOTE_MEASURE(c->workings, c->drive, "theta_oil", feed, "K",
                        apart ? c->drive->conditions[condition].name
                              : ts_oil_key(c->drive, "oil/feed"));
        TS_NOTE_MEASURE(c->workings, c->drive, "rise", oil->bearing_rise, "K",
                        ts_oil_key(c->drive, "oil/bearing rise"));
    }
    const double theta = TS_STEP(c->workings, theta_formula, theta_oil + rise, theta_oil, rise);
    return ts_viscosity_at(law, theta, c->workings);
}

/* As warm as in the condition before: as thick. */
static bool is_as_before(const ts_oil *oil, uint32_t condition)
{
    const double now = known(ts_oil_feed(oil, condition));

    return condition > 0 && !(fabs(now - known(ts_oil_feed(oil, condition - 1))) > 0.0) &&
           !isnan(now);
}

void ts_lines_solve_oil(const ts_lines_case *c)
{
    const ts_oil *oil = &c->drive->oil;

    c->lines->want = (ts_bearing_want){.S         = 0.9,
                                       .e_C       = (double)NAN,
                                       .cleanness = ts_pick_known(oil->cleanness)
                                                        ? (ts_cleanness)oil->cleanness.value
                                                        : TS_ON_LINE_15_12};
    if (c->workings != NULL) {
        ts_workings_about(c->workings, c->lines->oil_node, TS_EVERY_CONDITION);
        note_points(c, oil);
    }
    const double     nu_40 = known(oil->nu_40), nu_100 = known(oil->nu_100);
    ts_viscosity_law law = {(double)NAN, (double)NAN};
    if (!isnan(nu_40 + nu_100))
        law = ts_viscosity_law_of_oil(nu_40, nu_100, c->workings);
    for (uint32_t i = 0; i < c->drive->condition_count; i++)
        c->lines->nu[i] = c->workings == NULL && is_as_before(oil, i) ? c->lines->nu[i - 1]
                                                                      : viscosity_in(c, i, &law);
}
