/* element/involute_spline.c: which diameters has an involute spline, and how is it measured? */
#include "element/involute_spline.h"

#include "element/involute.h"

#include <math.h>

#define B92      "ANSI B92.1-1970 (R1993)"
#define ISO_4156 "ISO 4156-1:2005 (from memory)"

static const double pi   = 3.14159265358979323846;
static const double inch = 0.0254;

static const ts_formula D_P_formula = {
    .symbol  = "D",
    .meaning = "pitch diameter",
    .unit    = "m",
    .text    = "N/P_d",
    .source  = B92,
};
static const ts_formula D_m_formula = {
    .symbol  = "D",
    .meaning = "pitch diameter",
    .unit    = "m",
    .text    = "m*z",
    .source  = ISO_4156,
};
static const ts_formula D_b_formula = {
    .symbol  = "D_b",
    .meaning = "base diameter",
    .unit    = "m",
    .text    = "D*cos(alpha_D)",
    .source  = B92 "; " ISO_4156,
};
static const ts_formula p_formula = {
    .symbol  = "p",
    .meaning = "circular pitch",
    .unit    = "m",
    .text    = "pi*D/N",
    .source  = B92 "; " ISO_4156,
};
static const ts_formula s_v_formula = {
    .symbol  = "s_v",
    .meaning = "basic space width and tooth thickness",
    .unit    = "m",
    .text    = "p/2",
    .source  = B92 "; " ISO_4156,
};
/* All other diameters are the pitch diameter with some share of D/N added. */
#define DIAMETER(symbol_, meaning_)                                                                \
    {                                                                                              \
        .symbol = (symbol_), .meaning = (meaning_), .unit = "m", .text = "(N + teeth)*D/N",        \
        .source = B92 "; " ISO_4156                                                                \
    }
static const ts_formula D_ri_formula = DIAMETER("D_ri", "major diameter, internal");
static const ts_formula D_o_formula  = DIAMETER("D_o", "major diameter, external");
static const ts_formula D_i_formula  = DIAMETER("D_i", "minor diameter, internal");
static const ts_formula D_re_formula = DIAMETER("D_re", "minor diameter, external");
static const ts_formula c_F_formula  = {
     .symbol  = "c_F",
     .meaning = "form clearance",
     .unit    = "m",
     .text    = "max(0.002*0.0254, min(0.010*0.0254, 0.001*D))",
     .source  = B92,
};
static const ts_formula D_Fi_formula = {
    .symbol  = "D_Fi",
    .meaning = "form diameter, internal",
    .unit    = "m",
    .text    = "(N + top)*D/N + 2*c_F",
    .source  = B92 "; " ISO_4156,
};
static const ts_formula D_Fe_formula = {
    .symbol  = "D_Fe",
    .meaning = "form diameter, external",
    .unit    = "m",
    .text    = "(N - low)*D/N - 2*c_F",
    .source  = B92,
};
static const ts_formula form_formula = {
    .symbol  = "D_Fe",
    .meaning = "form diameter, external",
    .unit    = "m",
    .text    = "2*sqrt((D_b/2)^2 + (D*sin(alpha_D)/2 - h_s*m/sin(alpha_D))^2)",
    .source  = ISO_4156,
};
static const ts_formula D_II_formula = {
    .symbol  = "D_i",
    .meaning = "minor diameter, internal",
    .unit    = "m",
    .text    = "D_Fe + 2*c_F",
    .source  = ISO_4156,
};
static const ts_formula inv_i_formula = {
    .symbol  = "inv_i",
    .meaning = "involute of the angle at the pin's centre",
    .unit    = "1",
    .text    = "s/D + inv(alpha_D) - d_i/D_b",
    .source  = B92,
};
static const ts_formula inv_e_formula = {
    .symbol  = "inv_e",
    .meaning = "involute of the angle at the pin's centre",
    .unit    = "1",
    .text    = "t/D + inv(alpha_D) + d_e/D_b - pi/N",
    .source  = B92,
};
static const ts_formula between_formula = {
    .symbol  = "M_i",
    .meaning = "measurement between pins",
    .unit    = "m",
    .text    = "across*D_b/cos(phi_i) - d_i",
    .source  = B92,
};
static const ts_formula over_formula = {
    .symbol  = "M_e",
    .meaning = "measurement over pins",
    .unit    = "m",
    .text    = "across*D_b/cos(phi_e) + d_e",
    .source  = B92,
};

static bool is_angle(double alpha, double degrees)
{
    return fabs(alpha * 180.0 / pi - degrees) < 1e-6;
}

static double diameter(const ts_formula *formula, double N, double teeth, double D,
                       ts_workings *workings)
{
    ts_workings_row(workings, "teeth", teeth, "1", "by root and pitch: ANSI B92.1, ISO 4156");
    return TS_STEP(workings, *formula, (N + teeth) * D / N, N, teeth, D);
}

static void turn(ts_spline *spline, ts_workings *workings)
{
    const double D = spline->D, N = spline->N, alpha_D = spline->alpha_D;

    spline->D_b    = TS_STEP(workings, D_b_formula, D * cos(alpha_D), D, alpha_D);
    const double p = spline->p = TS_STEP(workings, p_formula, pi * D / N, D, N);
    spline->s_v                = TS_STEP(workings, s_v_formula, p / 2.0, p);
}

/* Teeth of diameter that stand on the pitch circle, by angle and root.  30 degrees flat, 30, 37.5
 * and 45 degrees with a fillet. */
typedef struct depths {
    double degrees;
    bool   flat;
    double D_ri, D_o, D_i, D_re, form; /* inwards as positive as outwards */
} depths;

static const depths inches[] = {
    {30.0, true, 1.35, 1.0, 1.0, 1.35, 1.0},
    {30.0, false, 1.8, 1.0, 1.0, 1.8, 1.0}, /* D_re: 2.0 from 16/32 on */
    {37.5, false, 1.6, 1.0, 0.8, 1.3, 0.8},
    {45.0, false, 1.4, 1.0, 0.6, 1.0, 0.6},
};
/* D_i follows from the form diameter; `form` is h_s, the depth of the form below the pitch. */
static const depths modules[] = {
    {30.0, true, 1.5, 1.0, 0.0, 1.5, 0.6},
    {30.0, false, 1.8, 1.0, 0.0, 1.8, 0.6},
    {37.5, false, 1.4, 0.9, 0.0, 1.4, 0.55},
    {45.0, false, 1.2, 0.8, 0.0, 1.2, 0.5},
};

static const depths *depths_of(const depths all[4], double alpha_D, ts_spline_root root)
{
    for (int i = 0; i < 4; i++)
        if (is_angle(alpha_D, all[i].degrees) && all[i].flat == (root == TS_SPLINE_FLAT_ROOT))
            return &all[i];
    return NULL;
}

bool ts_spline_b921(double N, double P_d, double alpha_D, ts_spline_root root, ts_spline *spline,
                    ts_workings *workings)
{
    const depths *by = depths_of(inches, alpha_D, root);

    if (by == NULL || !(N >= 6.0 && N <= 200.0 && P_d * inch >= 2.0 && P_d * inch <= 130.0))
        return false;
    ts_spline made = {.N = N, .alpha_D = alpha_D};
    made.D         = TS_STEP(workings, D_P_formula, N / P_d, N, P_d);
    turn(&made, workings);
    /* The root of a fillet-root external spline of 30 degrees is lower from 16/32 on. */
    const bool   lower = by->degrees < 31.0 && !by->flat && P_d * inch > 12.0 + 1e-9;
    const double D     = made.D;

    made.D_ri = diameter(&D_ri_formula, N, by->D_ri, D, workings);
    made.D_o  = diameter(&D_o_formula, N, by->D_o, D, workings);
    made.D_i  = diameter(&D_i_formula, N, -by->D_i, D, workings);
    made.D_re = diameter(&D_re_formula, N, lower ? -2.0 : -by->D_re, D, workings);
    const double c_F =
        TS_STEP(workings, c_F_formula, fmax(0.002 * inch, fmin(0.010 * inch, 0.001 * D)), D);
    const double top = by->D_o, low = by->form;
    ts_workings_row(workings, "top", top, "1", "by angle: " B92);
    ts_workings_row(workings, "low", low, "1", "by angle: " B92);
    made.D_Fi = TS_STEP(workings, D_Fi_formula, (N + top) * D / N + 2.0 * c_F, N, top, D, c_F);
    made.D_Fe = TS_STEP(workings, D_Fe_formula, (N - low) * D / N - 2.0 * c_F, N, low, D, c_F);
    *spline   = made;
    return true;
}

bool ts_spline_iso4156(double z, double m, double alpha_D, ts_spline_root root, ts_spline *spline,
                       ts_workings *workings)
{
    const depths *by = depths_of(modules, alpha_D, root);
    const double  N  = z;

    if (by == NULL || !(z >= 6.0 && z <= 200.0 && m >= 0.25e-3 && m <= 10e-3))
        return false;
    ts_spline made = {.N = N, .alpha_D = alpha_D};
    made.D         = TS_STEP(workings, D_m_formula, m * z, m, z);
    turn(&made, workings);
    const double D = made.D, D_b = made.D_b, c_F = 0.1 * m, h_s = by->form, top = by->D_o;
    const double side = D * sin(alpha_D) / 2.0 - h_s * m / sin(alpha_D);

    made.D_ri = diameter(&D_ri_formula, N, by->D_ri, D, workings);
    made.D_o  = diameter(&D_o_formula, N, top, D, workings);
    made.D_re = diameter(&D_re_formula, N, -by->D_re, D, workings);
    ts_workings_row(workings, "c_F", c_F, "m", "0.1 m; " ISO_4156);
    ts_workings_row(workings, "top", top, "1", "by angle: " ISO_4156);
    ts_workings_row(workings, "h_s", h_s, "1", "by angle: " ISO_4156);
    made.D_Fi = TS_STEP(workings, D_Fi_formula, (N + top) * D / N + 2.0 * c_F, N, top, D, c_F);
    made.D_Fe = TS_STEP(workings, form_formula, 2.0 * sqrt(D_b * D_b / 4.0 + side * side), D_b, D,
                        alpha_D, h_s, m);
    const double D_Fe = made.D_Fe;
    made.D_i          = TS_STEP(workings, D_II_formula, D_Fe + 2.0 * c_F, D_Fe, c_F);
    *spline           = made;
    return true;
}

/* Odd teeth: the pins do not face each other. */
static double across_of(double N)
{
    return fmod(N, 2.0) > 0.5 ? cos(pi / (2.0 * N)) : 1.0;
}

double ts_spline_between_pins(const ts_spline *spline, double s, double d_i, ts_workings *workings)
{
    const double D = spline->D, D_b = spline->D_b, alpha_D = spline->alpha_D;
    const double value = s / D + (tan(alpha_D) - alpha_D) - d_i / D_b;

    if (!(s > 0.0 && d_i > 0.0 && value > 0.0 && value < 10.0))
        return NAN;
    const double inv_i = TS_STEP(workings, inv_i_formula, value, s, D, alpha_D, d_i, D_b);
    const double phi_i = ts_inv_inverse(inv_i), across = across_of(spline->N);

    ts_workings_row(workings, "phi_i", phi_i, "rad", "the angle with that involute");
    ts_workings_row(workings, "across", across, "1", "1, or cos(90 deg/N) where N is odd");
    return TS_STEP(workings, between_formula, across * D_b / cos(phi_i) - d_i, across, D_b, phi_i,
                   d_i);
}

double ts_spline_over_pins(const ts_spline *spline, double t, double d_e, ts_workings *workings)
{
    const double D = spline->D, D_b = spline->D_b, alpha_D = spline->alpha_D, N = spline->N;
    const double value = t / D + (tan(alpha_D) - alpha_D) + d_e / D_b - pi / N;

    if (!(t > 0.0 && d_e > 0.0 && value > 0.0 && value < 10.0))
        return NAN;
    const double inv_e = TS_STEP(workings, inv_e_formula, value, t, D, alpha_D, d_e, D_b, N);
    const double phi_e = ts_inv_inverse(inv_e), across = across_of(N);

    ts_workings_row(workings, "phi_e", phi_e, "rad", "the angle with that involute");
    ts_workings_row(workings, "across", across, "1", "1, or cos(90 deg/N) where N is odd");
    return TS_STEP(workings, over_formula, across * D_b / cos(phi_e) + d_e, across, D_b, phi_e,
                   d_e);
}
