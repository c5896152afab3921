/* rating/iso6336/dynamic_simple.c: what does the plainest dynamic factor say? */
#include "rating/iso6336/dynamic_simple.h"

#include "rating/iso6336/gear_step.h"

#include <math.h>

#define METHOD_C ISO_6336_1 "6.6, as in IACS UR M56" RECALLED

static const ts_formula p_formula = {
    .symbol  = "p_v",
    .meaning = "speed parameter",
    .unit    = "m/s",
    .text    = "v*z_1/100*sqrt(u^2/(1 + u^2))",
    .source  = METHOD_C,
};
static const ts_formula K_3_formula = {
    .symbol  = "K_3",
    .meaning = "speed factor",
    .unit    = "s/m",
    .text    = "2.071 - 0.357*p_v",
    .source  = METHOD_C,
};
static const ts_formula K_v_formula = {
    .symbol  = "K_v",
    .meaning = "internal dynamic factor, method C",
    .unit    = "1",
    .text    = "1 + (K_1/w_t + K_2)*p_v*K_3",
    .source  = METHOD_C,
};

ts_dynamic_simple ts_dynamic_factor_simple(const ts_dynamic_simple_input *in, ts_workings *workings)
{
    const double v = in->v, z_1 = in->z_1, u = in->u, w_t = in->w_t, K_1 = in->K_1, K_2 = in->K_2;
    ts_dynamic_simple out;

    out.p = TS_STEP(workings, p_formula, v * z_1 / 100.0 * sqrt(u * u / (1.0 + u * u)), v, z_1, u);
    const double p_v = out.p;

    out.K_3 = 2.0;
    if (p_v <= 0.2)
        ts_workings_row(workings, "K_3", out.K_3, "s/m", METHOD_C);
    else
        out.K_3 = TS_STEP(workings, K_3_formula, 2.071 - 0.357 * p_v, p_v);
    const double K_3 = out.K_3;

    out.K_v = TS_STEP(workings, K_v_formula, 1.0 + (K_1 / w_t + K_2) * p_v * K_3, K_1, w_t, K_2,
                      p_v, K_3);
    return out;
}
