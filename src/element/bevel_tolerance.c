/* element/bevel_tolerance.c: how far may the pitch of bevel teeth be off? */
#include "element/bevel_tolerance.h"

#include "element/bevel_step.h"

#include <math.h>

#define ISO_17485 "ISO 17485:2006 (formula from memory)"

/* Diameters and modules of the standard are in mm and its tolerances in um, whose constants here
 * are m/m and m; the step from grade to grade is the square root of 2. */
#define PITCH_TEXT(I, M)      "(3e-6*d_m" I " + 3e-4*m_mn + 5e-6)*2^((B_" I " - 4)/2)"
#define CUMULATIVE_TEXT(I, M) "(2.5e-5*d_m" I " + 3e-4*m_mn + 1.9e-5)*2^((B_" I " - 4)/2)"

static const ts_formula f_pt_formulas[2] =
    TS_BEVEL_BOTH("f_pt", "single pitch tolerance", "m", PITCH_TEXT, ISO_17485);
static const ts_formula F_p_formulas[2] =
    TS_BEVEL_BOTH("F_p", "cumulative pitch tolerance", "m", CUMULATIVE_TEXT, ISO_17485);

static double of_grade(double grade_4, double B)
{
    return B >= 2.0 && B <= 11.0 ? grade_4 * exp2((B - 4.0) / 2.0) : (double)NAN;
}

static double noted(const ts_formula *formulas, double value, const double inputs[3], int gear,
                    ts_workings *workings)
{
    const double d_m = inputs[0], m_mn = inputs[1], B = inputs[2];

    if (isnan(value))
        return value;
    return TS_BEVEL_STEP(workings, formulas, value, TS_BEVEL_SELF("d_m", d_m), TS_BEVEL_PAIR(m_mn),
                         TS_BEVEL_SELF("B_", B));
}

double ts_bevel_pitch_tolerance(double d_T, double m_mn, double B, int gear, ts_workings *workings)
{
    const double inputs[3] = {d_T, m_mn, B};

    return noted(f_pt_formulas, of_grade(3e-6 * d_T + 3e-4 * m_mn + 5e-6, B), inputs, gear,
                 workings);
}

double ts_bevel_cumulative_tolerance(double d_T, double m_mn, double B, int gear,
                                     ts_workings *workings)
{
    const double inputs[3] = {d_T, m_mn, B};

    return noted(F_p_formulas, of_grade(2.5e-5 * d_T + 3e-4 * m_mn + 1.9e-5, B), inputs, gear,
                 workings);
}

bool ts_bevel_tolerance_within(double d_T, double m_mn, double z)
{
    return m_mn >= 1e-3 && m_mn <= 50e-3 && z >= 5.0 && z <= 400.0 && d_T >= 5e-3 && d_T <= 2.5;
}
