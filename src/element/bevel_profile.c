/* element/bevel_profile.c: which heights and thicknesses do usual bevel teeth have? */
#include "element/bevel_profile.h"

#include "base/assert.h"

#include <math.h>

#define TYPES "ISO 23509:2016, clause 7, relations between data types I and II (from memory)"
#define USUAL "ISO 23509:2016, annex C (formula from memory)"

static const ts_formula k_hap_formula = {
    .symbol  = "k_hap",
    .meaning = "addendum factor of the basic crown gear",
    .unit    = "1",
    .text    = "k_d/2",
    .source  = TYPES,
};
static const ts_formula k_hfp_formula = {
    .symbol  = "k_hfp",
    .meaning = "dedendum factor of the basic crown gear",
    .unit    = "1",
    .text    = "k_d*(k_c + 1/2)",
    .source  = TYPES,
};
/* The wheel has the addendum c_ham*k_d*m_mn = (k_hap - x)*m_mn. */
static const ts_formula x_hm1_formulas[2] = {
    {"x_hm1", "profile shift of gear 1, gear 2 being the wheel", "1", "k_d*(1/2 - c_ham)", TYPES},
    {"x_hm1", "profile shift of gear 1, itself the wheel", "1", "k_d*(c_ham - 1/2)", TYPES},
};
static const ts_formula x_smn_formulas[2] = {
    {"x_smn", "thickness modification of gear 1, gear 2 being the wheel", "1", "k_t/2", TYPES},
    {"x_smn", "thickness modification of gear 1, itself the wheel", "1", "-k_t/2", TYPES},
};

ts_bevel_profile ts_bevel_profile_of(const ts_bevel_depth_factors *factors, int wheel,
                                     ts_workings *workings)
{
    const double c_ham = factors->c_ham, k_d = factors->k_d, k_c = factors->k_c, k_t = factors->k_t;
    TS_ASSERT(wheel == 1 || wheel == 2);

    const int    turned = wheel == 1 ? 1 : 0;
    const double sign   = turned ? -1.0 : 1.0;
    return (ts_bevel_profile){
        .k_hap = TS_STEP(workings, k_hap_formula, k_d / 2.0, k_d),
        .k_hfp = TS_STEP(workings, k_hfp_formula, k_d * (k_c + 0.5), k_d, k_c),
        .x_hm1 =
            TS_STEP(workings, x_hm1_formulas[turned], sign * (k_d * (0.5 - c_ham)), k_d, c_ham),
        .x_smn = TS_STEP(workings, x_smn_formulas[turned], sign * (k_t / 2.0), k_t),
    };
}

static const ts_formula c_ham_formulas[2] = {
    {"c_ham", "mean addendum of the wheel (gear 2) over the working depth", "1",
     "0.21 + 0.29*z_1*cos(delta_2)/(z_2*cos(delta_1))", USUAL},
    {"c_ham", "mean addendum of the wheel (gear 1) over the working depth", "1",
     "0.21 + 0.29*z_2*cos(delta_1)/(z_1*cos(delta_2))", USUAL},
};

static double addendum_share(const ts_bevel_pair *pair, int wheel, ts_workings *workings)
{
    const double z_1 = pair->in.z_1, z_2 = pair->in.z_2;
    const double delta_1 = pair->delta_1, delta_2 = pair->delta_2;

    if (wheel == 2)
        return TS_STEP(workings, c_ham_formulas[0],
                       0.21 + 0.29 * (z_1 * cos(delta_2)) / (z_2 * cos(delta_1)), z_1, delta_2, z_2,
                       delta_1);
    return TS_STEP(workings, c_ham_formulas[1],
                   0.21 + 0.29 * (z_2 * cos(delta_1)) / (z_1 * cos(delta_2)), z_2, delta_1, z_1,
                   delta_2);
}

static const ts_formula k_d_formula = {
    .symbol  = "k_d",
    .meaning = "working depth in mean normal modules",
    .unit    = "1",
    .text    = "2*k_hap",
    .source  = TYPES,
};

double ts_bevel_shift_usual(const ts_bevel_pair *pair, double k_hap, ts_workings *workings)
{
    const int    wheel  = pair->in.z_1 > pair->in.z_2 ? 1 : 2;
    const int    turned = wheel == 1 ? 1 : 0;
    const double sign   = turned ? -1.0 : 1.0;
    const double c_ham  = addendum_share(pair, wheel, workings);
    const double k_d    = TS_STEP(workings, k_d_formula, 2.0 * k_hap, k_hap);

    return TS_STEP(workings, x_hm1_formulas[turned], sign * (k_d * (0.5 - c_ham)), k_d, c_ham);
}

ts_bevel_profile ts_bevel_profile_usual(const ts_bevel_pair *pair, ts_workings *workings)
{
    const int wheel = pair->in.z_1 > pair->in.z_2 ? 1 : 2;

    const ts_bevel_depth_factors factors = {
        .c_ham = addendum_share(pair, wheel, workings),
        .k_d   = 2.0,
        .k_c   = 0.125,
        .k_t   = 0.0,
    };
    ts_workings_assumed(workings, "k_d", factors.k_d, "1",
                        "usual working depth of bevel teeth, " USUAL);
    ts_workings_assumed(workings, "k_c", factors.k_c, "1",
                        "usual clearance of bevel teeth, " USUAL);
    ts_workings_assumed(workings, "k_t", factors.k_t, "1",
                        "teeth of both gears equally thick but for their profile shift");
    return ts_bevel_profile_of(&factors, wheel, workings);
}
