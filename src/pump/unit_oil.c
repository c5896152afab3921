/* pump/unit_oil.c: what oil is in pumps and breathers, and how fast do they turn? */
#include "pump/drive_pumps_parts.h"

#include "motion/value_note.h"

static const ts_formula theta_formula = {
    .symbol  = "theta",
    .meaning = "temperature of the oil that comes back",
    .unit    = "K",
    .text    = "theta_in + dtheta",
    .source  = "derived: the feed, warmed by the `rise` that is allowed",
};

const char *ts_units_oil(const ts_units_desk *desk, ts_node about, ts_film_law *law)
{
    const ts_drive *drive = desk->units->drive;
    const ts_oil   *oil   = &drive->oil;

    if (!ts_measure_known(oil->nu_40) || !ts_measure_known(oil->nu_100) ||
        !(oil->nu_40.value > oil->nu_100.value))
        return "the viscosity of the oil";
    if (!ts_measure_known(oil->rho_15))
        return "the density of the oil";
    if (!ts_measure_known(oil->rise))
        return "the rise that is allowed to the oil";
    for (size_t c = 0; c < drive->condition_count; c++)
        if (!ts_measure_known(ts_oil_feed(oil, c)))
            return "the temperature of the oil that is fed";
    ts_workings_about(desk->workings, about, TS_EVERY_CONDITION);
    TS_NOTE_MEASURE(desk->workings, drive, "nu_40", oil->nu_40, "m2/s",
                    ts_oil_key(drive, "oil/viscosity at 40"));
    TS_NOTE_MEASURE(desk->workings, drive, "nu_100", oil->nu_100, "m2/s",
                    ts_oil_key(drive, "oil/viscosity at 100"));
    TS_NOTE_MEASURE(desk->workings, drive, "rho_15", oil->rho_15, "kg/m3",
                    ts_oil_key(drive, "oil/density"));
    *law = (ts_film_law){
        {.nu_40 = oil->nu_40.value, .nu_100 = oil->nu_100.value, .rho_15 = oil->rho_15.value},
        ts_viscosity_law_of_oil(oil->nu_40.value, oil->nu_100.value, desk->workings)};
    return NULL;
}

void ts_units_lend_oil(const ts_units_desk *desk, ts_node about, ts_node lender,
                       const ts_film_law *law)
{
    const ts_subject from = {lender, TS_EVERY_CONDITION};

    ts_workings_about(desk->workings, about, TS_EVERY_CONDITION);
    ts_workings_borrow(desk->workings, "A_nu", law->viscosity.A, from, "A_nu");
    ts_workings_borrow(desk->workings, "B_nu", law->viscosity.B, from, "B_nu");
    ts_workings_borrow(desk->workings, "rho_15", law->oil.rho_15, from, "rho_15");
}

static void note_feed(const ts_units_desk *desk, uint32_t condition, const char *symbol)
{
    const ts_drive  *drive = desk->units->drive;
    const ts_measure feed  = ts_oil_feed(&drive->oil, condition);
    const bool       apart = feed.node != drive->oil.feed.node;

    TS_NOTE_MEASURE(desk->workings, drive, symbol, feed, "K",
                    apart ? drive->conditions[condition].name : ts_oil_key(drive, "oil/feed"));
}

double ts_units_feed(const ts_units_desk *desk, uint32_t condition)
{
    note_feed(desk, condition, "theta");
    return ts_oil_feed(&desk->units->drive->oil, condition).value;
}

double ts_units_return(const ts_units_desk *desk, uint32_t condition)
{
    const ts_oil *oil      = &desk->units->drive->oil;
    const double  theta_in = ts_oil_feed(oil, condition).value, dtheta = oil->rise.value;

    note_feed(desk, condition, "theta_in");
    TS_NOTE_MEASURE(desk->workings, desk->units->drive, "dtheta", oil->rise, TS_UNIT_DIFFERENCE,
                    ts_oil_key(desk->units->drive, "oil/rise"));
    return TS_STEP(desk->workings, theta_formula, theta_in + dtheta, theta_in, dtheta);
}

double ts_units_speed(const ts_units_desk *desk, uint32_t pad, uint32_t condition)
{
    const ts_motion *motion = desk->units->motion;
    const uint32_t   shaft  = motion->train->pads[pad].shaft;
    const double     n      = motion->speed[(size_t)condition * motion->train->shaft_count + shaft];

    ts_workings_borrow(desk->workings, "n", n,
                       (ts_subject){motion->train->shafts[shaft].node, (int32_t)condition}, "n");
    return n;
}
