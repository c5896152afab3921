/* rating/agma2101/agma_size.c: how do rim and size change the stress of a tooth? */
#include "rating/agma2101/agma_size.h"

#include "rating/agma2101/agma_step.h"

#include <math.h>

#define ANNEX_B AGMA_2101 "5 and annex B" RECALLED
#define SHIGLEY "Shigley's Mechanical Engineering Design, chapter 14 (from memory)"

#define M_B_TEXT(I)   "t_R" I "/h_t" I
#define RIM_TEXT(I)   "1.6*ln(2.242/m_B" I ")"
#define BEAM_TEXT(I)  "1.192*(b*m_t*sqrt(Y_Lewis" I ")/0.0254^2)^0.0535"
#define LEWIS_TEXT(I) "s_F" I "^2/(6*h_F" I ")"

static const ts_formula m_B_formulas[2] =
    TS_OF_BOTH_GEARS("m_B", "rim thickness over tooth height", "1", M_B_TEXT, ANNEX_B);
static const ts_formula K_B_formulas[2] =
    TS_OF_BOTH_GEARS("K_B", "rim thickness factor", "1", RIM_TEXT, ANNEX_B);
static const ts_formula K_s_formulas[2] =
    TS_OF_BOTH_GEARS("K_s", "size factor of a rotating beam", "1", BEAM_TEXT, SHIGLEY);
static const ts_formula Y_Lewis_formulas[2] = TS_OF_BOTH_GEARS(
    "Y_Lewis", "Lewis's form factor", "1", LEWIS_TEXT,
    "derived: a beam of the tooth's section, bent by the tangential force; Lewis (1892)");

double ts_agma_rim_factor(double t_R, double h_t, int gear, ts_workings *workings)
{
    if (!(t_R > 0.0) || !(h_t > 0.0) || !isfinite(t_R))
        return NAN;
    const double m_B =
        TS_GEAR_STEP(workings, m_B_formulas, t_R / h_t, TS_OWN("t_R", t_R), TS_OWN("h_t", h_t));
    if (m_B >= 1.2) {
        ts_workings_row(workings, gear == 0 ? "K_B1" : "K_B2", 1.0, "1",
                        "1 from m_B = 1.2 on, " ANNEX_B);
        return 1.0;
    }
    return TS_GEAR_STEP(workings, K_B_formulas, 1.6 * log(2.242 / m_B), TS_OWN("m_B", m_B));
}

double ts_agma_size_factor_beam(double b, double m_t, double Y, int gear, ts_workings *workings)
{
    if (!(b > 0.0) || !(m_t > 0.0) || !(Y > 0.0))
        return NAN;
    return TS_GEAR_STEP(workings, K_s_formulas,
                        1.192 * pow(b * m_t * sqrt(Y) / (0.0254 * 0.0254), 0.0535), TS_ALL(b),
                        TS_ALL(m_t), TS_OWN("Y_Lewis", Y));
}

double ts_agma_lewis_form(const ts_agma_root *root, int gear, ts_workings *workings)
{
    const double s_F = root->s_F, h_F = root->h_F;

    if (!(h_F > 0.0))
        return NAN;
    return TS_GEAR_STEP(workings, Y_Lewis_formulas, s_F * s_F / (6.0 * h_F), TS_OWN("s_F", s_F),
                        TS_OWN("h_F", h_F));
}

static const ts_formula lewis_load_formula = {
    .symbol  = "F_t",
    .meaning = "tangential force that bends a tooth to sigma_F, after Lewis",
    .unit    = "N",
    .text    = "sigma_F*b*m*Y_Lewis/K_v",
    .source  = SHIGLEY,
};

double ts_agma_lewis_load(double sigma_F, double b, double m, double Y_Lewis, double K_v,
                          ts_workings *workings)
{
    const double F_t = sigma_F * b * m * Y_Lewis / K_v;

    if (!(F_t >= 0.0))
        return NAN;
    return TS_STEP(workings, lewis_load_formula, F_t, sigma_F, b, m, Y_Lewis, K_v);
}
