/* pump/breather.c: what does the breather of a drive throw out in every condition? */
#include "pump/drive_pumps_parts.h"
#include "pump/separator.h"

#include "motion/value_note.h"

#include <math.h>

static const ts_formula P_formula = {
    .symbol  = "P_e",
    .meaning = "power that the rotor takes",
    .unit    = "W",
    .text    = "T_e*n",
    .source  = "derived: power is torque times speed",
};

static const char *lacking(const ts_oil_units *units, const ts_breather *breather)
{
    const ts_separator *told  = breather->told;
    const ts_train     *train = units->motion->train;

    if (breather->pad == TS_NOWHERE)
        return "the pad of the breather";
    if (!ts_measure_known(told->air))
        return "the air that leaves through the breather";
    if (!ts_measure_known(told->chamber))
        return "the pressure before the breather";
    for (size_t c = 0; c < units->drive->condition_count; c++) {
        if (told->air_at[c].standing == TS_UNKNOWN)
            return "the air that leaves through the breather";
        if (isnan(units->motion->speed[c * train->shaft_count + train->pads[breather->pad].shaft]))
            return "the speed of the breather";
    }
    return ts_measure_known(told->radius) && ts_measure_known(told->bore) &&
                   ts_measure_known(told->length)
               ? NULL
               : "the size of the rotor";
}

static void note_rotor(const ts_units_desk *desk, const ts_separator *told)
{
    ts_workings_about(desk->workings, told->node, TS_EVERY_CONDITION);
    TS_NOTE_MEASURE(desk->workings, desk->units->drive, "r", told->radius, "m", "radius");
    TS_NOTE_MEASURE(desk->workings, desk->units->drive, "d", told->bore, "m", "bore");
    TS_NOTE_MEASURE(desk->workings, desk->units->drive, "L", told->length, "m", "length");
    TS_NOTE_MEASURE(desk->workings, desk->units->drive, "p", told->chamber, "Pa", "chamber");
}

static void solve_case(const ts_units_desk *desk, const ts_breather *breather,
                       const ts_film_law *law, uint32_t c)
{
    const ts_separator      *told  = breather->told;
    ts_workings             *to    = desk->workings;
    const bool               apart = told->air_at[c].standing != TS_ABSENT;
    const ts_measure         air   = apart ? told->air_at[c] : told->air;
    const ts_separator_rotor rotor = {told->radius.value, told->bore.value, told->length.value};
    ts_breather_case        *out   = &breather->cases[c];

    ts_workings_about(to, told->node, (int32_t)c);
    TS_NOTE_MEASURE(to, desk->units->drive, "Q", air, "m3/s",
                    apart ? desk->units->drive->conditions[c].name : "air");
    const double n       = ts_units_speed(desk, breather->pad, c);
    const double theta   = ts_units_return(desk, c);
    *out                 = (ts_breather_case){.Q = air.value, .n = n, .theta = theta};
    const ts_swirl swirl = {.Q       = air.value,
                            .n       = n,
                            .rho_oil = ts_film_density(law, theta, to),
                            .rho_air = ts_air_density(told->chamber.value, theta, to),
                            .mu      = ts_air_viscosity(theta, to)};
    out->dp              = ts_separator_drop(&rotor, &swirl, to);
    out->d_cut           = (double)INFINITY;
    if (!(n > 0.0))
        return;
    out->d_cut       = ts_separator_cut(&rotor, &swirl, to);
    out->Re          = ts_separator_reynolds(&rotor, &swirl, out->d_cut, to);
    const double T_e = ts_separator_torque(&rotor, &swirl, to);
    out->T           = T_e;
    out->P           = TS_STEP(to, P_formula, T_e * n, T_e, n);
}

void ts_breather_solve(const ts_units_desk *desk, ts_breather *breather)
{
    ts_film_law law;

    breather->missing = lacking(desk->units, breather);
    if (breather->missing == NULL)
        breather->missing = ts_units_oil(desk, breather->told->node, &law);
    if (breather->missing != NULL)
        return;
    note_rotor(desk, breather->told);
    for (uint32_t c = 0; c < desk->units->drive->condition_count; c++)
        solve_case(desk, breather, &law, c);
}
