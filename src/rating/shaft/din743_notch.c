/* rating/shaft/din743_notch.c: how much does a notch lift the stress, and how much of that does
 * fatigue feel? */
#include "rating/shaft/din743.h"

#include <math.h>

const char *ts_din_notch_name(ts_din_notch_kind kind)
{
    static const char *const names[TS_DIN_NOTCH_COUNT] = {
        [TS_DIN_SMOOTH]          = "smooth",
        [TS_DIN_SHOULDER]        = "shoulder",
        [TS_DIN_GROOVE]          = "groove",
        [TS_DIN_UNDERCUT]        = "undercut",
        [TS_DIN_KEYWAY]          = "keyway",
        [TS_DIN_TWO_KEYWAYS]     = "two keyways",
        [TS_DIN_PRESS_FIT]       = "press fit",
        [TS_DIN_INVOLUTE_SPLINE] = "involute spline",
        [TS_DIN_STRAIGHT_SPLINE] = "straight spline",
        [TS_DIN_SERRATION]       = "serration",
        [TS_DIN_GIVEN]           = "given",
    };

    return names[kind];
}

/* DIN 743-2:2012, 5.2: alpha = 1 + 1/sqrt(A r/t + 2 B (r/d)(1 + 2 r/d)^2 + C (r/t)^z d/D). */
typedef struct shape {
    double A, B, C, z;
} shape;

static const shape shoulder_shapes[TS_DIN_PARTS] = {
    [TS_DIN_ZD] = {0.62, 3.5, 0.0, 0.0},
    [TS_DIN_B]  = {0.62, 5.8, 0.2, 3.0},
    [TS_DIN_T]  = {3.4, 19.0, 1.0, 2.0},
};
static const shape groove_shapes[TS_DIN_PARTS] = {
    [TS_DIN_ZD] = {0.22, 1.37, 0.0, 0.0},
    [TS_DIN_B]  = {0.2, 2.75, 0.0, 0.0},
    [TS_DIN_T]  = {0.7, 10.3, 0.0, 0.0},
};

static double alpha_of(const shape *s, double D, double d, double r)
{
    const double t = (D - d) / 2.0, slender = 1.0 + 2.0 * r / d;

    return 1.0 + 1.0 / sqrt(s->A * r / t + 2.0 * s->B * r / d * slender * slender +
                            s->C * pow(r / t, s->z) * d / D);
}

double ts_din_alpha(ts_din_notch_kind kind, ts_din_part part, const ts_din_section *section)
{
    const double D = section->D, d = section->d, r = section->r;

    switch (kind) {
    case TS_DIN_SMOOTH:
        return 1.0;
    case TS_DIN_SHOULDER:
        return alpha_of(&shoulder_shapes[part], D, d, r);
    case TS_DIN_GROOVE:
        return alpha_of(&groove_shapes[part], D, d, r);
    case TS_DIN_UNDERCUT: {
        /* Between a shoulder (no depth below the journal) and a groove (no step above it). */
        const double foot = alpha_of(&shoulder_shapes[part], D, d, r);
        const double ring = alpha_of(&groove_shapes[part], D, d, r);

        return foot + (ring - foot) * sqrt((section->D_1 - d) / (D - d));
    }
    default:
        return NAN;
    }
}

/* DIN 743-2:2012, table 2: a slender notch lifts the gradient of tension and bending. */
double ts_din_gradient(ts_din_notch_kind kind, ts_din_part part, const ts_din_section *section)
{
    const double D = section->D, d = section->d, r = section->r, t = (D - d) / 2.0;
    const double phi    = d / D > 0.67 ? 1.0 / (4.0 * sqrt(t / r) + 2.0) : 0.0;
    const bool   groove = kind == TS_DIN_GROOVE;

    if (kind != TS_DIN_SHOULDER && kind != TS_DIN_GROOVE && kind != TS_DIN_UNDERCUT)
        return NAN;
    if (part == TS_DIN_T)
        return (groove ? 1.0 : 1.15) / r;
    return (groove ? 2.0 : 2.3) * (1.0 + phi) / r;
}

/* n of DIN 743-2:2012, 5.3. */
double ts_din_support(double gradient, double sigma_S, bool hard_surface)
{
    const double rise = hard_surface ? -0.7 : -(0.33 + sigma_S / 712e6);

    return 1.0 + sqrt(gradient / 1000.0) * pow(10.0, rise);
}
