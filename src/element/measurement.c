/* element/measurement.c: which sizes would an inspector find on this gear? */
#include "element/measurement.h"

#include "base/assert.h"
#include "element/involute.h"

#include <math.h>

static const double pi = 3.14159265358979323846;

#define ISO_21771 "ISO 21771:2007 (formula from memory)"

static const ts_formula W_k_formula = {
    .symbol  = "W_k",
    .meaning = "base tangent length over k teeth",
    .unit    = "m",
    .text    = "m_n*cos(alpha_n)*(pi*(k - 0.5) + z*inv(alpha_t)) + 2*x*m_n*sin(alpha_n)",
    .source  = ISO_21771,
};
static const ts_formula k_formula = {
    .symbol  = "k_W",
    .meaning = "number of teeth under the span, not whole",
    .unit    = "1",
    .text    = "z/pi*(tan(alpha_x)/cos(beta_b)^2 - inv(alpha_t) - 2*x/z*tan(alpha_n)) + 0.5",
    .source  = "derived: the base tangent that touches at d + 2*x*m_n",
};
static const ts_formula alpha_x_formula = {
    .symbol  = "alpha_x",
    .meaning = "transverse profile angle at d + 2*x*m_n",
    .unit    = "rad",
    .text    = "acos(d_b/(d + 2*x*m_n))",
    .source  = ISO_21771,
};
static const ts_formula inv_alpha_Kt_formula = {
    .symbol  = "inv_alpha_Kt",
    .meaning = "involute function at the centre of the pin",
    .unit    = "1",
    .text    = "inv(alpha_t) + D_M/(z*m_n*cos(alpha_n)) - (pi/2 - 2*x*tan(alpha_n))/z",
    .source  = ISO_21771,
};
static const ts_formula alpha_Kt_equation = {
    .symbol  = "alpha_Kt",
    .meaning = "transverse profile angle at the centre of the pin",
    .unit    = "rad",
    .text    = "inv(alpha_Kt) - inv_alpha_Kt",
    .source  = ISO_21771,
};
static const ts_formula d_K_formula = {
    .symbol  = "d_K",
    .meaning = "diameter of the circle through the centres of the pins",
    .unit    = "m",
    .text    = "d_b/cos(alpha_Kt)",
    .source  = ISO_21771,
};
#define OVER(name, what, expression)                                                               \
    static const ts_formula name##_formula = {.symbol  = "M_dR",                                   \
                                              .meaning = (what),                                   \
                                              .unit    = "m",                                      \
                                              .text    = (expression),                             \
                                              .source  = ISO_21771}
#define EVEN_TEXT "abs(d_K + D_M)"
#define ODD_TEXT  "abs(d_K*cos(pi/(2*z)) + D_M)"
OVER(M_even, "distance over two pins, even number of teeth", EVEN_TEXT);
OVER(M_odd, "distance over two pins, odd number of teeth", ODD_TEXT);
OVER(M_odd_balls, "distance over two balls in one plane, odd number of helical teeth", ODD_TEXT);
OVER(M_even_internal, "distance between two pins, even number of teeth", EVEN_TEXT);
OVER(M_odd_internal, "distance between two pins or balls in one plane, odd number of teeth",
     ODD_TEXT);

static const ts_formula s_n_formula = {
    .symbol  = "s_n",
    .meaning = "normal tooth thickness at the reference circle",
    .unit    = "m",
    .text    = "m_n*(pi/2 + 2*x*tan(alpha_n))",
    .source  = ISO_21771,
};
static const ts_formula z_v_formula = {
    .symbol  = "z_v",
    .meaning = "teeth of the virtual gear in the normal section",
    .unit    = "1",
    .text    = "z/cos(beta)^3",
    .source  = "gear trade practice, also ISO 21771:2007 as an approximation",
};
static const ts_formula theta_v_formula = {
    .symbol  = "theta_v",
    .meaning = "half the angle that the tooth fills on the virtual gear",
    .unit    = "rad",
    .text    = "s_n/(z_v*m_n)",
    .source  = ISO_21771,
};
static const ts_formula s_c_formula = {
    .symbol  = "s_c",
    .meaning = "chordal tooth thickness",
    .unit    = "m",
    .text    = "z_v*m_n*sin(theta_v)",
    .source  = ISO_21771,
};
static const ts_formula h_c_formula = {
    .symbol  = "h_c",
    .meaning = "height from the chord to the tip",
    .unit    = "m",
    .text    = "h_a + z_v*m_n/2*(1 - cos(theta_v))",
    .source  = ISO_21771,
};

double ts_span_width(const ts_cylindrical_frame *frame, const ts_cylindrical_gear *gear,
                     int k_teeth, ts_workings *workings)
{
    const double m_n = frame->m_n, alpha_n = frame->alpha_n, alpha_t = frame->alpha_t;
    const double k = k_teeth, z = gear->in.z, x = gear->in.x;
    TS_ASSERT(k_teeth >= 1);

    return TS_STEP(workings, W_k_formula,
                   m_n * cos(alpha_n) * (pi * (k - 0.5) + z * ts_inv(alpha_t)) +
                       2.0 * x * m_n * sin(alpha_n),
                   m_n, alpha_n, k, z, alpha_t, x);
}

/* The span lies in the plane tangent to the base cylinder, so its transverse length is the span
 * over cos(beta_b); it touches at the profile angle alpha_x when half of it is r_b*tan(alpha_x)/cos
 * of the base helix angle squared (derived: the span crosses the base helix at a right angle). */
double ts_span_teeth(const ts_cylindrical_frame *frame, const ts_cylindrical_gear *gear,
                     ts_workings *workings)
{
    const double m_n = frame->m_n, alpha_n = frame->alpha_n, alpha_t = frame->alpha_t;
    const double beta_b = frame->beta_b, z = gear->in.z, x = gear->in.x;
    const double d = gear->d, d_b = gear->d_b, cosine = d_b / (d + 2.0 * x * m_n);

    if (!(cosine > 0.0 && cosine <= 1.0))
        return NAN;
    const double alpha_x = TS_STEP(workings, alpha_x_formula, acos(cosine), d_b, d, x, m_n);
    const double lean    = cos(beta_b) * cos(beta_b);
    return TS_STEP(workings, k_formula,
                   z / pi * (tan(alpha_x) / lean - ts_inv(alpha_t) - 2.0 * x / z * tan(alpha_n)) +
                       0.5,
                   z, alpha_x, beta_b, alpha_t, x, alpha_n);
}

/* For an internal gear z and d_K are negative and the pins touch from within, which is the same
 * formula with the sign of D_M kept. */
double ts_over_pins(const ts_cylindrical_frame *frame, const ts_cylindrical_gear *gear, double D_M,
                    ts_workings *workings)
{
    const double m_n = frame->m_n, alpha_n = frame->alpha_n, alpha_t = frame->alpha_t;
    const double z = gear->in.z, x = gear->in.x, d_b = gear->d_b;

    const double inv_alpha_Kt = TS_STEP(workings, inv_alpha_Kt_formula,
                                        ts_inv(alpha_t) + D_M / (z * m_n * cos(alpha_n)) -
                                            (pi / 2.0 - 2.0 * x * tan(alpha_n)) / z,
                                        alpha_t, D_M, z, m_n, alpha_n, x);
    const double alpha_Kt     = ts_inv_inverse(inv_alpha_Kt);
    if (isnan(alpha_Kt))
        return NAN;
    if (workings != NULL) {
        const ts_input inputs[] = {{"alpha_Kt", alpha_Kt}, {"inv_alpha_Kt", inv_alpha_Kt}};
        ts_search_note(workings, &alpha_Kt_equation, alpha_Kt, ts_inv(alpha_Kt) - inv_alpha_Kt,
                       inputs, 2);
    }
    const double d_K  = TS_STEP(workings, d_K_formula, d_b / cos(alpha_Kt), d_b, alpha_Kt);
    const double even = fabs(d_K + D_M), odd = fabs(d_K * cos(pi / (2.0 * z)) + D_M);
    if (gear->in.z % 2 == 0)
        return z < 0.0 ? TS_STEP(workings, M_even_internal_formula, even, d_K, D_M)
                       : TS_STEP(workings, M_even_formula, even, d_K, D_M);
    if (z < 0.0)
        return TS_STEP(workings, M_odd_internal_formula, odd, d_K, z, D_M);
    /* Opposite spaces of helical teeth face each other in two planes, and long pins bridge them. */
    return frame->beta > 0.0 ? TS_STEP(workings, M_odd_balls_formula, odd, d_K, z, D_M)
                             : TS_STEP(workings, M_odd_formula, odd, d_K, z, D_M);
}

ts_tooth_chord ts_chordal_thickness(const ts_cylindrical_frame *frame,
                                    const ts_cylindrical_gear *gear, double h_a,
                                    ts_workings *workings)
{
    const double m_n = frame->m_n, alpha_n = frame->alpha_n, beta = frame->beta;
    const double z = gear->in.z, x = gear->in.x, cosine = cos(beta);

    const double s_n =
        TS_STEP(workings, s_n_formula, m_n * (pi / 2.0 + 2.0 * x * tan(alpha_n)), m_n, x, alpha_n);
    const double z_v     = TS_STEP(workings, z_v_formula, z / (cosine * cosine * cosine), z, beta);
    const double theta_v = TS_STEP(workings, theta_v_formula, s_n / (z_v * m_n), s_n, z_v, m_n);

    return (ts_tooth_chord){
        .s_n     = s_n,
        .z_v     = z_v,
        .theta_v = theta_v,
        .s_c     = TS_STEP(workings, s_c_formula, z_v * m_n * sin(theta_v), z_v, m_n, theta_v),
        .h_c     = TS_STEP(workings, h_c_formula, h_a + z_v * m_n / 2.0 * (1.0 - cos(theta_v)), h_a,
                           z_v, m_n, theta_v),
    };
}
