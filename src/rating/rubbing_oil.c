/* rating/rubbing_oil.c: which oil comes to the teeth of a drive, and how thick is it there? */
#include "rating/drive_rubbing_parts.h"

#include "catalog/oil.h"
#include "motion/value_note.h"

#include <math.h>
#include <string.h>

#define ISO_20(what) "ISO/TS 6336-20:2017, " what " (from memory)"

static const ts_formula S_FZG_formula = {
    .symbol  = "S_FZG",
    .meaning = "load stage of the test A/8.3/90 that leads to the scuffing temperature",
    .unit    = "1",
    .text    = "sqrt((theta_S - 353.15)/(2.25*X_L))",
    .source = "derived: the scuffing temperature of ISO/TS 6336-20 for case-hardened steel, solved "
              "for the stage",
};
static const ts_formula theta_formula = {
    .symbol  = "theta",
    .meaning = "temperature of the oil",
    .unit    = "K",
    .text    = "theta_oil",
    .source  = ISO_20("mean coefficient of friction"),
};
static const ts_formula eta_oil_formula = {
    .symbol  = "eta_oil",
    .meaning = "dynamic viscosity of the oil that comes to the teeth",
    .unit    = "Pa.s",
    .text    = "eta",
    .source  = ISO_20("mean coefficient of friction"),
};

static ts_lubricant kind_of(const ts_oil_row *row)
{
    int kind = 0;

    while (kind + 1 < (int)TS_LUBRICANT_COUNT &&
           strcmp(ts_lubricant_name((ts_lubricant)kind), row->kind) != 0)
        kind++;
    return (ts_lubricant)kind;
}

static double known(ts_measure measure)
{
    return ts_measure_known(measure) ? measure.value : (double)NAN;
}

static void note_oil(const ts_rubbing_desk *desk, const ts_oil *oil)
{
    ts_workings    *workings = desk->workings;
    const ts_drive *drive    = desk->drive;

    TS_NOTE_MEASURE(workings, drive, "nu_40", oil->nu_40, "m2/s",
                    ts_oil_key(drive, "oil/viscosity at 40"));
    TS_NOTE_MEASURE(workings, drive, "nu_100", oil->nu_100, "m2/s",
                    ts_oil_key(drive, "oil/viscosity at 100"));
    TS_NOTE_MEASURE(workings, drive, "rho_15", oil->rho_15, "kg/m3",
                    ts_oil_key(drive, "oil/density"));
    TS_NOTE_MEASURE(workings, drive, "theta_S", oil->theta_S, "K",
                    ts_oil_key(drive, "oil/scuffing temperature"));
    TS_NOTE_MEASURE(workings, drive, "S_FZG", oil->scuffing_stage, "1",
                    ts_oil_key(drive, "oil/scuffing stage"));
}

static double stage_of(const ts_rubbing_desk *desk, const ts_oil *oil, double X_L)
{
    const double theta_S = known(oil->theta_S);

    if (ts_measure_known(oil->scuffing_stage))
        return oil->scuffing_stage.value;
    if (!(theta_S > 353.15))
        return (double)NAN;
    return TS_STEP(desk->workings, S_FZG_formula, sqrt((theta_S - 353.15) / (2.25 * X_L)), theta_S,
                   X_L);
}

/* Returns what the file lacks. */
static const char *solve_law(const ts_rubbing_desk *desk, const ts_oil *oil, ts_rubbing_oil *out)
{
    const ts_film_oil points = {
        .nu_40 = known(oil->nu_40), .nu_100 = known(oil->nu_100), .rho_15 = known(oil->rho_15)};

    if (!ts_pick_known(oil->specification))
        return "the specification of the oil";
    out->kind = kind_of(ts_oil_at((size_t)oil->specification.value));
    out->X_L  = ts_lubricant_friction(out->kind);
    if (isnan(points.nu_40) || isnan(points.nu_100))
        return "the viscosity of the oil";
    if (isnan(points.rho_15))
        return "the density of the oil";
    note_oil(desk, oil);
    ts_workings_row(desk->workings, "X_L", out->X_L, "1", ts_lubricant_source(out->kind));
    if (!ts_film_law_of_kind(&points, out->kind, &out->law, desk->workings))
        return "an oil that is thinner at 100 than at 40 degrees Celsius";
    out->S_FZG = stage_of(desk, oil, out->X_L);
    return NULL;
}

static void solve_feed(const ts_rubbing_desk *desk, uint32_t condition, ts_rubbing_oil *out)
{
    const ts_measure feed  = ts_oil_feed(&desk->drive->oil, condition);
    const bool       apart = feed.node != desk->drive->oil.feed.node;

    out->theta_oil[condition] = out->eta_oil[condition] = (double)NAN;
    if (!ts_measure_known(feed))
        return;
    ts_workings_about(desk->workings, out->subject.object, (int32_t)condition);
    TS_NOTE_MEASURE(desk->workings, desk->drive, "theta_oil", feed, "K",
                    apart ? desk->drive->conditions[condition].name
                          : ts_oil_key(desk->drive, "oil/feed"));
    const double theta_oil = feed.value;
    const double theta     = TS_STEP(desk->workings, theta_formula, theta_oil, theta_oil);
    const double eta       = ts_film_viscosity(&out->law, theta, desk->workings);

    out->theta_oil[condition] = theta_oil;
    out->eta_oil[condition]   = TS_STEP(desk->workings, eta_oil_formula, eta, eta);
}

void ts_rubbing_solve_oil(const ts_rubbing_desk *desk)
{
    const ts_oil   *oil = &desk->drive->oil;
    ts_rubbing_oil *out = &desk->rubbing->oil;

    out->subject = (ts_subject){oil->node, TS_EVERY_CONDITION};
    out->X_L = out->S_FZG = (double)NAN;
    ts_workings_about(desk->workings, out->subject.object, TS_EVERY_CONDITION);
    out->missing = solve_law(desk, oil, out);
    for (uint32_t c = 0; c < desk->drive->condition_count && out->missing == NULL; c++)
        solve_feed(desk, c, out);
}
