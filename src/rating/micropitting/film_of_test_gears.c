/* rating/micropitting/film_of_test_gears.c: how thin is the film of the test gears when they turn
 * grey, and what do remarks say?
 */
#include "rating/micropitting/micropitting_parts.h"

#include <math.h>
#include <stddef.h>

static const double pi = 3.14159265358979323846;

/* Pinion torque, N.m, of the load stages 5 to 10 of FVA information sheet 54/7 (from memory; they
 * lead to the Hertz pressures of that sheet, 795 to 1547 N/mm2 at the pitch point). */
static const double stage_torque[] = {70.0, 98.9, 132.5, 171.6, 215.6, 265.1};
#define STAGE_FIRST 5
#define STAGE_LAST  10

/* Test gears C-GF: FZG type C, 14 mm wide, ground to Ra = 0.5 um, without relief (from memory). */
static bool solve_test_pair(ts_cylindrical_pair *pair)
{
    const ts_cylindrical_pair_input in = {
        .z_1     = 16,
        .z_2     = 24,
        .m_n     = 4.5e-3,
        .alpha_n = pi / 9.0,
        .b_1     = 14e-3,
        .b_2     = 14e-3,
        .x_1     = 0.1817,
        .x_2     = 0.1715,
        .a_w     = 91.5e-3,
        .tip     = TS_TIP_DIAMETERS,
        .d_a1    = 82.46e-3,
        .d_a2    = 118.36e-3,
        .rack    = ts_basic_rack_A,
    };

    ts_workings *const silent = NULL;
    return ts_cylindrical_pair_solve(&in, pair, silent) == TS_PAIR_FINE;
}

double ts_test_gear_film(const ts_film_oil *oil, double X_L, int SKS, double theta_test,
                         ts_workings *workings)
{
    const ts_film_gear gear = {
        .E = 206e9, .nu = 0.3, .B_M = 13795.0, .Ra = 0.5e-6, .C_a = 0.0, .W_W = 1.0};
    ts_micropitting_mesh     mesh = {.gear       = {gear, gear},
                                     .driver     = 1,
                                     .grade      = 5,
                                     .X_S        = 1.2,
                                     .X_L        = X_L,
                                     .oil        = *oil,
                                     .lambda_GFP = 1.0}; /* of no account, but known */
    ts_cylindrical_pair      pair;
    ts_micropitting_prepared prepared;
    ts_micropitting          rating;

    if (SKS < STAGE_FIRST || SKS > STAGE_LAST || !(theta_test > 273.15 && theta_test < 473.15) ||
        !solve_test_pair(&pair))
        return NAN;
    const ts_micropitting_load load = {
        .T_1       = stage_torque[SKS - STAGE_FIRST],
        .omega_1   = 2250.0 * pi / 30.0,
        .K_A       = 1.0,
        .K_gamma   = 1.0,
        .K_v       = 1.0,
        .K_Hbeta   = 1.0,
        .K_Halpha  = 1.0,
        .theta_oil = theta_test,
        .theta_M   = NAN,
    };
    ts_workings_row(workings, "T_1T", load.T_1, "N.m", "FVA information sheet 54/7 (from memory)");
    /* The test gears have symbols of their own: their chain is not mixed with that of the mesh. */
    ts_workings *const silent = NULL;
    if (!ts_micropitting_prepare_mesh(&pair, &mesh, &prepared, silent) ||
        !ts_micropitting_rate(&prepared, &load, &rating, silent))
        return NAN;
    return rating.lambda_GFmin;
}

#define ISO_22(what) "ISO/TS 6336-22:2018, " what " (from memory)"

typedef struct remark_text {
    ts_micropitting_remark remark;
    const char            *says, *clause;
} remark_text;

static const remark_text texts[TS_MICROPITTING_REMARKS] = {
    {TS_MICROPITTING_HIGH_RATIO,
     "the transverse contact ratio is 2 or more, for which the load sharing of spur gears has no "
     "formula; equal teeth are taken to share equally",
     ISO_22("load sharing factor")},
    {TS_MICROPITTING_THIN_OIL,
     "the oil is thinner than 2 mm2/s at the bulk temperature, where its law says too little",
     ISO_22("kinematic viscosity at a temperature")},
    {TS_MICROPITTING_NO_LIMIT,
     "neither a permissible film nor the failing stage of the oil is given: there is no safety",
     ISO_22("permissible specific lubricant film thickness")},
    {TS_MICROPITTING_NOTHING_RUBS, "without torque or without speed there is no film to judge",
     "derived: no force or no sliding"},
};

static const remark_text *text_of(ts_micropitting_remark remark)
{
    for (size_t i = 0; i < TS_MICROPITTING_REMARKS; i++)
        if (texts[i].remark == remark)
            return &texts[i];
    return NULL;
}

const char *ts_micropitting_remark_says(ts_micropitting_remark remark)
{
    const remark_text *text = text_of(remark);

    return text == NULL ? "" : text->says;
}

const char *ts_micropitting_remark_clause(ts_micropitting_remark remark)
{
    const remark_text *text = text_of(remark);

    return text == NULL ? "" : text->clause;
}
