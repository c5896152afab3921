/* element/shift_split.c: which profile shifts make both gears slide equally? */
#include "element/shift_split.h"

#include <math.h>

static const ts_formula balance_equation = {
    .symbol  = "x_1",
    .meaning = "profile shift coefficient of gear 1",
    .unit    = "1",
    .text    = "zeta_A1 - zeta_E2",
    .source  = "common practice, no source: equal specific sliding where contact begins and ends",
};

/* Squared length of the base tangent up to a tip; negative inside the base circle. */
static double tangent_square(const ts_cylindrical_pair *pair, double z, double x, double k)
{
    const double d   = z * pair->m_t;
    const double d_b = d * cos(pair->alpha_t);
    const double d_a = d + 2.0 * pair->in.m_n * (pair->in.rack.h_aPs + x + k);

    return (d_a * d_a - d_b * d_b) / 4.0;
}

typedef struct balance {
    double zeta_A1, zeta_E2;
    double difference; /* zeta_A1 - zeta_E2, or an infinity that says which way to go */
} balance;

/* zeta_A1 rises with x_1 and zeta_E2 falls.  When the tip of gear 2 reaches past the base circle of
 * gear 1, x_1 is too small, and the other way round. */
static balance balance_at(const ts_cylindrical_pair *pair, double x_1)
{
    const double x_2      = pair->sum_x - x_1;
    const bool   cleared  = pair->in.tip == TS_TIP_CLEARANCE;
    const double k        = pair->y - pair->sum_x;
    const double rho_T    = pair->a_w * sin(pair->alpha_wt);
    const double square_1 = tangent_square(pair, pair->in.z_1, x_1, cleared ? k : pair->in.k_1);
    const double square_2 = tangent_square(pair, pair->in.z_2, x_2, cleared ? k : pair->in.k_2);
    const double rho_E1 = sqrt(fmax(square_1, 0.0)), rho_A1 = rho_T - sqrt(fmax(square_2, 0.0));

    if (rho_A1 <= 0.0)
        return (balance){NAN, NAN, -INFINITY};
    if (rho_T - rho_E1 <= 0.0)
        return (balance){NAN, NAN, INFINITY};
    const double zeta_A1 = 1.0 - (rho_T - rho_A1) / (pair->u * rho_A1);
    const double zeta_E2 = 1.0 - pair->u * rho_E1 / (rho_T - rho_E1);
    return (balance){zeta_A1, zeta_E2, zeta_A1 - zeta_E2};
}

double ts_shift_split_equal_sliding(const ts_cylindrical_pair *pair, ts_workings *workings)
{
    double low = pair->sum_x / 2.0 - 2.0, high = pair->sum_x / 2.0 + 2.0;

    if (pair->in.z_2 < 0 || pair->in.tip == TS_TIP_DIAMETERS)
        return NAN;
    if (!(balance_at(pair, low).difference < 0.0) || !(balance_at(pair, high).difference > 0.0))
        return NAN;
    for (int round = 0; round < 60; round++) {
        const double middle = 0.5 * (low + high);

        if (balance_at(pair, middle).difference < 0.0)
            low = middle;
        else
            high = middle;
    }
    const double  x_1   = 0.5 * (low + high);
    const balance found = balance_at(pair, x_1);

    if (!isfinite(found.difference) || fabs(found.difference) > 1e-6)
        return NAN;
    if (workings != NULL) {
        const ts_input inputs[] = {{"zeta_A1", found.zeta_A1}, {"zeta_E2", found.zeta_E2}};
        ts_search_note(workings, &balance_equation, x_1, found.difference, inputs, 2);
    }
    return x_1;
}
