/* element/cylindrical_gear.c: which circles and tooth thicknesses does one gear have? */
#include "element/cylindrical_gear.h"

#include "base/assert.h"
#include "element/involute.h"

#include <math.h>

static const double pi = 3.14159265358979323846;

#define ISO_21771 "ISO 21771:2007 (formula from memory)"

/* ---- what a pair shares ---------------------------------------------------------------------- */

static const ts_formula m_t_formula = {
    .symbol  = "m_t",
    .meaning = "transverse module",
    .unit    = "m",
    .text    = "m_n/cos(beta)",
    .source  = ISO_21771,
};
static const ts_formula alpha_t_formula = {
    .symbol  = "alpha_t",
    .meaning = "transverse pressure angle",
    .unit    = "rad",
    .text    = "atan(tan(alpha_n)/cos(beta))",
    .source  = ISO_21771,
};
static const ts_formula beta_b_formula = {
    .symbol  = "beta_b",
    .meaning = "base helix angle",
    .unit    = "rad",
    .text    = "asin(sin(beta)*cos(alpha_n))",
    .source  = ISO_21771,
};
static const ts_formula p_bt_formula = {
    .symbol  = "p_bt",
    .meaning = "transverse base pitch",
    .unit    = "m",
    .text    = "pi*m_t*cos(alpha_t)",
    .source  = ISO_21771,
};

static const ts_formula p_t_formula = {
    .symbol  = "p_t",
    .meaning = "transverse pitch",
    .unit    = "m",
    .text    = "pi*m_t",
    .source  = ISO_21771,
};
static const ts_formula p_x_formula = {
    .symbol  = "p_x",
    .meaning = "axial pitch",
    .unit    = "m",
    .text    = "pi*m_n/sin(beta)",
    .source  = ISO_21771,
};

bool ts_cylindrical_frame_sound(const ts_cylindrical_frame *frame)
{
    return frame->m_n >= 1e-9 && frame->m_n <= 1e3 && frame->alpha_n >= 0.01 &&
           frame->alpha_n <= 1.5 && frame->beta >= 0.0 && frame->beta <= 1.5;
}

void ts_cylindrical_frame_solve(ts_cylindrical_frame *frame, ts_workings *workings)
{
    const double m_n = frame->m_n, alpha_n = frame->alpha_n, beta = frame->beta;
    const double cos_beta = cos(beta), sin_beta = sin(beta), tan_alpha_n = tan(alpha_n);
    TS_ASSERT(ts_cylindrical_frame_sound(frame));

    const double m_t = TS_STEP(workings, m_t_formula, m_n / cos_beta, m_n, beta);
    const double alpha_t =
        TS_STEP(workings, alpha_t_formula, atan(tan_alpha_n / cos_beta), alpha_n, beta);
    const double cos_alpha_t = cos(alpha_t);

    frame->m_t     = m_t;
    frame->alpha_t = alpha_t;
    frame->beta_b = TS_STEP(workings, beta_b_formula, asin(sin_beta * cos(alpha_n)), beta, alpha_n);
    frame->p_bt   = TS_STEP(workings, p_bt_formula, pi * m_t * cos_alpha_t, m_t, alpha_t);
    frame->p_t    = TS_STEP(workings, p_t_formula, pi * m_t, m_t);
    frame->p_x    = NAN;
    if (beta > 0.0)
        frame->p_x = TS_STEP(workings, p_x_formula, pi * m_n / sin_beta, m_n, beta);

    frame->cos_beta    = cos_beta;
    frame->tan_beta    = tan(beta);
    frame->sin_alpha_n = sin(alpha_n);
    frame->tan_alpha_n = tan_alpha_n;
    frame->sin_alpha_t = sin(alpha_t);
    frame->cos_alpha_t = cos_alpha_t;
    frame->inv_alpha_t = ts_inv(alpha_t);
}

/* ---- one gear -------------------------------------------------------------------------------- */

/* The same formula is called d, d_1 or d_2.  Each set of texts is spelled once here, and the
 * preprocessor puts the index in: I follows z, x and d, J follows a subscript that is there. */
typedef struct gear_formulas {
    ts_formula d, d_b, d_a, d_f, s_t, alpha_at, rho_a, s_at, s_an, x_min, rho_Ff, d_Ff;
} gear_formulas;

#define GEAR_FORMULAS(I, J)                                                                        \
    {                                                                                              \
        .d        = {"d" I, "reference diameter", "m", "z" I "*m_t", ISO_21771},                   \
        .d_b      = {"d_b" J, "base diameter", "m", "d" I "*cos(alpha_t)", ISO_21771},             \
        .d_a      = {"d_a" J, "tip diameter", "m", "d" I " + 2*m_n*(h_aPs + x" I " + k" I ")",     \
                     ISO_21771},                                                                   \
        .d_f      = {"d_f" J, "root diameter", "m", "d" I " - 2*m_n*(h_fPs - x" I ")", ISO_21771}, \
        .s_t      = {"s_t" J, "transverse tooth thickness at the reference circle", "m",           \
                     "m_t*(pi/2 + 2*x" I "*tan(alpha_n))", ISO_21771},                             \
        .alpha_at = {"alpha_at" J, "transverse profile angle at the tip", "rad",                   \
                     "acos(d_b" J "/d_a" J ")", ISO_21771},                                        \
        .rho_a    = {"rho_a" J, "radius of curvature at the tip", "m",                             \
                     "d_b" J "/2*tan(alpha_at" J ")", ISO_21771},                                  \
        .s_at     = {"s_at" J, "transverse tooth thickness at the tip", "m",                       \
                     "d_a" J "*(s_t" J "/d" I " + inv(alpha_t) - inv(alpha_at" J "))", ISO_21771}, \
        .s_an     = {"s_an" J, "normal tooth thickness at the tip", "m",                           \
                     "s_at" J "*cos(atan(d_a" J "/d" I "*tan(beta)))", ISO_21771},                 \
        .x_min    = {"x_min" J, "least profile shift without undercut", "1",                       \
                     "h_fPs - rho_fPs*(1 - sin(alpha_n)) - z" I "*sin(alpha_t)^2/(2*cos(beta))",   \
                     ISO_21771},                                                                   \
        .rho_Ff   = {"rho_Ff" J, "radius of curvature at the root form circle", "m",               \
                     "d" I "/2*sin(alpha_t) - m_n*(h_fPs - rho_fPs*(1 - sin(alpha_n)) - x" I       \
                     ")/sin(alpha_t)",                                                             \
                     ISO_21771},                                                                   \
        .d_Ff     = {"d_Ff" J, "root form diameter", "m", "sqrt(d_b" J "^2 + 4*rho_Ff" J "^2)",    \
                     ISO_21771},                                                                   \
    }

static const gear_formulas formulas[] = {
    GEAR_FORMULAS("", ""),
    GEAR_FORMULAS("_1", "1"),
    GEAR_FORMULAS("_2", "2"),
};

typedef struct gear_names {
    const char *z, *x, *k, *d, *d_b, *d_a, *s_t, *alpha_at, *s_at, *rho_Ff;
} gear_names;

#define GEAR_NAMES(I, J)                                                                           \
    {                                                                                              \
        "z" I, "x" I, "k" I, "d" I, "d_b" J, "d_a" J, "s_t" J, "alpha_at" J, "s_at" J, "rho_Ff" J  \
    }

static const gear_names names[] = {
    GEAR_NAMES("", ""),
    GEAR_NAMES("_1", "1"),
    GEAR_NAMES("_2", "2"),
};

/* As TS_STEP, with inputs whose name depends on the index written OWN(d) and others ALL(m_t). */
#define OWN(symbol)                                                                                \
    {                                                                                              \
        names[index].symbol, (symbol)                                                              \
    }
#define ALL(symbol)                                                                                \
    {                                                                                              \
#symbol, (symbol)                                                                          \
    }
#define STEP(which, result, ...)                                                                   \
    ts_step_list(workings, &formulas[index].which, (result), (const ts_input[]){__VA_ARGS__},      \
                 sizeof((const ts_input[]){__VA_ARGS__}) / sizeof(ts_input))

bool ts_cylindrical_gear_sound(const ts_cylindrical_frame      *frame,
                               const ts_cylindrical_gear_input *in)
{
    return in->z != 0 && fabs(in->x) <= 1e3 && fabs(in->k) <= 1e3 &&
           ts_basic_rack_possible(&in->rack, frame->alpha_n);
}

/* Reference, base, tip and root circles. */
static void solve_circles(const ts_cylindrical_frame *frame, ts_gear_index index,
                          ts_cylindrical_gear *gear, ts_workings *workings)
{
    const double m_n = frame->m_n, m_t = frame->m_t, alpha_t = frame->alpha_t;
    const double z = gear->in.z, x = gear->in.x, k = gear->in.k;
    const double h_aPs = gear->in.rack.h_aPs, h_fPs = gear->in.rack.h_fPs;

    const double d   = STEP(d, z * m_t, OWN(z), ALL(m_t));
    const double d_b = STEP(d_b, d * frame->cos_alpha_t, OWN(d), ALL(alpha_t));
    const double d_a =
        STEP(d_a, d + 2.0 * m_n * (h_aPs + x + k), OWN(d), ALL(m_n), ALL(h_aPs), OWN(x), OWN(k));
    const double d_f = STEP(d_f, d - 2.0 * m_n * (h_fPs - x), OWN(d), ALL(m_n), ALL(h_fPs), OWN(x));

    gear->d   = d;
    gear->d_b = d_b;
    gear->d_a = d_a;
    gear->d_f = d_f;
}

/* Thickness at the reference circle and at the tip.  A tip inside the base circle (or, for signed
 * diameters of a misdescribed gear, on the other side of the axis) leaves NaN. */
static void solve_tip(const ts_cylindrical_frame *frame, ts_gear_index index,
                      ts_cylindrical_gear *gear, ts_workings *workings)
{
    const double m_t = frame->m_t, alpha_n = frame->alpha_n, alpha_t = frame->alpha_t;
    const double beta = frame->beta, x = gear->in.x;
    const double d = gear->d, d_b = gear->d_b, d_a = gear->d_a;

    const double s_t =
        STEP(s_t, m_t * (pi / 2.0 + 2.0 * x * frame->tan_alpha_n), ALL(m_t), OWN(x), ALL(alpha_n));
    gear->s_t = s_t;
    if (!(d_a / d_b >= 1.0)) {
        gear->alpha_at = gear->rho_a = gear->s_at = gear->s_an = NAN;
        return;
    }
    const double alpha_at = STEP(alpha_at, acos(d_b / d_a), OWN(d_b), OWN(d_a));
    const double s_at     = STEP(s_at, d_a * (s_t / d + frame->inv_alpha_t - ts_inv(alpha_at)),
                                 OWN(d_a), OWN(s_t), OWN(d), ALL(alpha_t), OWN(alpha_at));

    gear->alpha_at = alpha_at;
    gear->rho_a    = STEP(rho_a, d_b / 2.0 * tan(alpha_at), OWN(d_b), OWN(alpha_at));
    gear->s_at     = s_at;
    gear->s_an     = STEP(s_an, s_at * cos(atan(d_a / d * frame->tan_beta)), OWN(s_at), OWN(d_a),
                          OWN(d), ALL(beta));
}

/* Where the rack that cuts the gear leaves the involute. */
static void solve_root(const ts_cylindrical_frame *frame, ts_gear_index index,
                       ts_cylindrical_gear *gear, ts_workings *workings)
{
    const double m_n = frame->m_n, alpha_n = frame->alpha_n, alpha_t = frame->alpha_t;
    const double beta = frame->beta, z = gear->in.z, x = gear->in.x, d = gear->d;
    const double h_fPs = gear->in.rack.h_fPs, rho_fPs = gear->in.rack.rho_fPs;

    gear->x_min = gear->rho_Ff = gear->d_Ff = NAN;
    if (gear->in.z < 0)
        return;
    const double sine = frame->sin_alpha_t;
    const double h    = h_fPs - rho_fPs * (1.0 - frame->sin_alpha_n);
    gear->x_min       = STEP(x_min, h - z * (sine * sine) / (2.0 * frame->cos_beta), ALL(h_fPs),
                             ALL(rho_fPs), ALL(alpha_n), OWN(z), ALL(alpha_t), ALL(beta));

    const double rho_Ff = STEP(rho_Ff, d / 2.0 * sine - m_n * (h - x) / sine, OWN(d), ALL(alpha_t),
                               ALL(m_n), ALL(h_fPs), ALL(rho_fPs), ALL(alpha_n), OWN(x));
    gear->rho_Ff        = rho_Ff;
    if (rho_Ff < 0.0)
        return;
    const double d_b = gear->d_b;
    gear->d_Ff       = STEP(d_Ff, sqrt(d_b * d_b + 4.0 * (rho_Ff * rho_Ff)), OWN(d_b), OWN(rho_Ff));
}

void ts_cylindrical_gear_solve(const ts_cylindrical_frame      *frame,
                               const ts_cylindrical_gear_input *in, ts_gear_index index,
                               ts_cylindrical_gear *gear, ts_workings *workings)
{
    TS_ASSERT(ts_cylindrical_gear_sound(frame, in));
    *gear = (ts_cylindrical_gear){.in = *in};
    solve_circles(frame, index, gear, workings);
    solve_tip(frame, index, gear, workings);
    solve_root(frame, index, gear, workings);
}

double ts_gear_profile_angle(const ts_cylindrical_gear *gear, double d_y)
{
    const double ratio = gear->d_b / d_y;

    return ratio > 0.0 && ratio <= 1.0 ? acos(ratio) : (double)NAN;
}

double ts_gear_thickness(const ts_cylindrical_frame *frame, const ts_cylindrical_gear *gear,
                         double d_y)
{
    const double alpha_yt = ts_gear_profile_angle(gear, d_y);

    return d_y * (gear->s_t / gear->d + ts_inv(frame->alpha_t) - ts_inv(alpha_yt));
}

static const ts_formula z_min_formula = {
    .symbol  = "z_min",
    .meaning = "least number of teeth without undercut and without profile shift",
    .unit    = "1",
    .text    = "2*(h_fPs - rho_fPs*(1 - sin(alpha_n)))*cos(beta)/sin(alpha_t)^2",
    .source  = ISO_21771,
};

double ts_gear_z_min(const ts_basic_rack *rack, double alpha_n, double beta, ts_workings *workings)
{
    const double h_fPs = rack->h_fPs, rho_fPs = rack->rho_fPs;
    const double alpha_t =
        TS_STEP(workings, alpha_t_formula, atan(tan(alpha_n) / cos(beta)), alpha_n, beta);
    const double h = h_fPs - rho_fPs * (1.0 - sin(alpha_n));

    return TS_STEP(workings, z_min_formula, 2.0 * h * cos(beta) / (sin(alpha_t) * sin(alpha_t)),
                   h_fPs, rho_fPs, alpha_n, beta, alpha_t);
}
