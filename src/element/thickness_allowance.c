/* element/thickness_allowance.c: which profile shift has a tooth that was made thinner? */
#include "element/thickness_allowance.h"

#include <math.h>

#define X_TEXT(J) "x_nominal" J " + E_sn" J "/(2*m_n*tan(alpha_n))"
#define X_SOURCE  "derived: s_n = m_n*(pi/2 + 2*x*tan(alpha_n)) of ISO 21771:2007, solved for x"
static const ts_formula x_formulas[3] = {
    {"x", "generated profile shift coefficient", "1", X_TEXT(""), X_SOURCE},
    {"x_1", "generated profile shift coefficient of gear 1", "1", X_TEXT("1"), X_SOURCE},
    {"x_2", "generated profile shift coefficient of gear 2", "1", X_TEXT("2"), X_SOURCE},
};
static const char *const names[3][2] = {
    {"x_nominal", "E_sn"}, {"x_nominal1", "E_sn1"}, {"x_nominal2", "E_sn2"}};

double ts_generated_shift(double x_nominal, double E_sn, const ts_cylindrical_frame *frame,
                          ts_gear_index index, ts_workings *workings)
{
    const double   m_n = frame->m_n, alpha_n = frame->alpha_n;
    const ts_input inputs[] = {
        {names[index][0], x_nominal}, {names[index][1], E_sn}, {"m_n", m_n}, {"alpha_n", alpha_n}};

    return ts_step_list(workings, &x_formulas[index], x_nominal + E_sn / (2.0 * m_n * tan(alpha_n)),
                        inputs, 4);
}

static const ts_formula a_w_formula = {
    .symbol  = "a_w",
    .meaning = "centre distance as made",
    .unit    = "m",
    .text    = "a_wnominal + A_a",
    .source  = "derived: nominal centre distance and its deviation",
};

double ts_deviated_centre(double a_wnominal, double A_a, ts_workings *workings)
{
    return TS_STEP(workings, a_w_formula, a_wnominal + A_a, a_wnominal, A_a);
}
