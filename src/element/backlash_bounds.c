/* element/backlash_bounds.c: between which bounds does the play of two gears lie? */
#include "element/backlash_bounds.h"

#include "element/involute.h"

#include <math.h>

#define DERIVED_PLAY                                                                               \
    "derived: base pitch less both tooth thicknesses on the line of action, ISO 21771:2007, at "   \
    "another distance of the axes"

#define CENTRE(S, A)                                                                               \
    {                                                                                              \
        "a_w" S, "centre distance at that end", "m", "a_w + " A,                                   \
            "derived: nominal centre distance and its deviation"                                   \
    }
#define WARM_CENTRE(S, OF)                                                                         \
    {                                                                                              \
        "a_w" S, "centre distance at that end, in lengths of the gears as built", "m",             \
            "a_w" OF "*apart_" S, "derived: both grow evenly"                                      \
    }
static const ts_formula a_w_formulas[TS_BACKLASH_ENDS] = {
    CENTRE("min", "A_ai"), CENTRE("max", "A_ae"), WARM_CENTRE("low", "min"),
    WARM_CENTRE("high", "max")};

#define ANGLE(S)                                                                                   \
    {                                                                                              \
        "alpha_wt" S, "working transverse pressure angle there", "rad",                            \
            "acos(a*cos(alpha_t)/a_w" S ")", "ISO 21771:2007 (definition of the working angle)"    \
    }
static const ts_formula alpha_formulas[TS_BACKLASH_ENDS] = {ANGLE("min"), ANGLE("max"),
                                                            ANGLE("low"), ANGLE("high")};

#define PLAY_TEXT(S, E)                                                                            \
    "cos(beta_b)*m_t*cos(alpha_t)*(z_1 + z_2)*(inv(alpha_wt" S ") - inv(alpha_wt)) - (" E "1 + " E \
    "2)*cos(alpha_n)"
#define WARM_PLAY_TEXT(S, E) "grow_" S "*(" PLAY_TEXT(S, E) ")"
static const ts_formula j_bn_formulas[TS_BACKLASH_ENDS] = {
    {"j_bnmin", "least normal backlash as built", "m", PLAY_TEXT("min", "E_sns"), DERIVED_PLAY},
    {"j_bnmax", "greatest normal backlash as built", "m", PLAY_TEXT("max", "E_sni"), DERIVED_PLAY},
    {"j_bnlow", "least normal backlash at any temperature of the file", "m",
     WARM_PLAY_TEXT("low", "E_sns"), DERIVED_PLAY},
    {"j_bnhigh", "greatest normal backlash at any temperature of the file", "m",
     WARM_PLAY_TEXT("high", "E_sni"), DERIVED_PLAY},
};

#define ROUND_TEXT(S) "j_bn" S "/(cos(alpha_wt" S ")*cos(beta_b))"
#define ROUND(S, SAYS)                                                                             \
    {                                                                                              \
        "j_wt" S, SAYS ", along the working pitch circles", "m", ROUND_TEXT(S), "ISO 21771:2007"   \
    }
static const ts_formula j_wt_formulas[TS_BACKLASH_ENDS] = {
    ROUND("min", "least backlash as built"), ROUND("max", "greatest backlash as built"),
    ROUND("low", "least backlash at any temperature of the file"),
    ROUND("high", "greatest backlash at any temperature of the file")};

/* Which end of the temperature of the gears counts is found out; each has a text of its own. */
#define APART(S, T, D)                                                                             \
    {                                                                                              \
        "apart_" S, "growth of the casing over growth of the gears", "1",                          \
            "(1 + alpha_casing*(" T " + " D " - 293.15))/(1 + alpha_gears*(" T " - 293.15))",      \
            "derived: linear expansion from 20 degrees Celsius (ISO 1)"                            \
    }
static const ts_formula apart_formulas[2][2] = {
    {APART("low", "theta_min", "dtheta_min"), APART("low", "theta_max", "dtheta_min")},
    {APART("high", "theta_min", "dtheta_max"), APART("high", "theta_max", "dtheta_max")},
};

#define GROW(S, T)                                                                                 \
    {                                                                                              \
        "grow_" S, "growth of the gears, and of the play between them", "1",                       \
            "1 + alpha_gears*(" T " - 293.15)",                                                    \
            "derived: linear expansion from 20 degrees Celsius (ISO 1)"                            \
    }
static const ts_formula grow_formulas[2][2] = {
    {GROW("low", "theta_min"), GROW("low", "theta_max")},
    {GROW("high", "theta_min"), GROW("high", "theta_max")}};
static const char *const theta_names[2]  = {"theta_min", "theta_max"};
static const char *const dtheta_names[2] = {"dtheta_min", "dtheta_max"};

typedef struct end_names {
    const char *a_w, *alpha, *E_1, *E_2, *j_bn, *A_a;
} end_names;
static const end_names names[TS_BACKLASH_ENDS] = {
    {"a_wmin", "alpha_wtmin", "E_sns1", "E_sns2", "j_bnmin", "A_ai"},
    {"a_wmax", "alpha_wtmax", "E_sni1", "E_sni2", "j_bnmax", "A_ae"},
    {"a_wlow", "alpha_wtlow", "E_sns1", "E_sns2", "j_bnlow", "apart_low"},
    {"a_whigh", "alpha_wthigh", "E_sni1", "E_sni2", "j_bnhigh", "apart_high"},
};

/* ---- one end --------------------------------------------------------------------------------- */

static double angle_at(const ts_cylindrical_pair *pair, double a_w, int end, ts_workings *workings)
{
    const ts_input inputs[] = {{"a", pair->a}, {"alpha_t", pair->alpha_t}, {names[end].a_w, a_w}};

    return ts_step_list(workings, &alpha_formulas[end], acos(pair->a * cos(pair->alpha_t) / a_w),
                        inputs, 3);
}

/* The play of gears that have not grown. */
static double play_at(const ts_cylindrical_pair *pair, double alpha, double E_1, double E_2)
{
    const double z = (double)pair->in.z_1 + (double)pair->in.z_2;

    return cos(pair->beta_b) * pair->m_t * cos(pair->alpha_t) * z *
               (ts_inv(alpha) - ts_inv(pair->alpha_wt)) -
           (E_1 + E_2) * cos(pair->in.alpha_n);
}

typedef struct end_input {
    double a_w, E_1, E_2;
    double grow[2]; /* 1 of gears as built; else the least and the most */
} end_input;

/* Play that is least grows least, and an overlap that is least grows most. */
static double growth(const end_input *in, double j, bool least)
{
    return least == (j >= 0.0) ? in->grow[0] : in->grow[1];
}

static void note_growth(const ts_backlash_warmth *warmth, const end_input *in, int end, double grow,
                        ts_workings *workings)
{
    const int      at       = grow > in->grow[0] ? 1 : 0;
    const ts_input inputs[] = {{"alpha_gears", warmth->alpha_gears},
                               {theta_names[at], warmth->theta[at]}};

    (void)ts_step_list(workings, &grow_formulas[end - TS_BACKLASH_LOW][at], grow, inputs, 2);
}

static void solve_end(const ts_cylindrical_pair *pair, const ts_backlash_warmth *warmth,
                      const end_input *in, int end, ts_backlash *out, ts_workings *workings)
{
    const bool     warm   = end >= TS_BACKLASH_LOW;
    const bool     least  = end == TS_BACKLASH_MIN || end == TS_BACKLASH_LOW;
    const double   alpha  = angle_at(pair, in->a_w, end, workings);
    const double   play   = play_at(pair, alpha, in->E_1, in->E_2);
    const double   grow   = warm ? growth(in, play, least) : 1.0;
    const ts_input list[] = {
        {"beta_b", pair->beta_b},
        {"m_t", pair->m_t},
        {"alpha_t", pair->alpha_t},
        {"z_1", pair->in.z_1},
        {"z_2", pair->in.z_2},
        {names[end].alpha, alpha},
        {"alpha_wt", pair->alpha_wt},
        {names[end].E_1, in->E_1},
        {names[end].E_2, in->E_2},
        {"alpha_n", pair->in.alpha_n},
        {least ? "grow_low" : "grow_high", grow},
    };

    if (warm && workings != NULL)
        note_growth(warmth, in, end, grow, workings);
    out->j_bn[end] = ts_step_list(workings, &j_bn_formulas[end], grow * play, list, warm ? 11 : 10);
    const ts_input round[] = {
        {names[end].j_bn, out->j_bn[end]}, {names[end].alpha, alpha}, {"beta_b", pair->beta_b}};
    out->j_wt[end] = ts_step_list(workings, &j_wt_formulas[end],
                                  out->j_bn[end] / (cos(alpha) * cos(pair->beta_b)), round, 3);
    if (end == TS_BACKLASH_LOW)
        out->shrink = grow;
}

/* ---- warmth ---------------------------------------------------------------------------------- */

static double apart_at(const ts_backlash_warmth *warmth, double theta, double dtheta)
{
    return (1.0 + warmth->alpha_casing * (theta + dtheta - TS_TEMPERATURE_BUILT)) /
           (1.0 + warmth->alpha_gears * (theta - TS_TEMPERATURE_BUILT));
}

/* It grows with the casing's lead, and one way or the other with the warmth of both. */
static double apart(const ts_backlash_warmth *warmth, bool least, ts_workings *workings)
{
    const int      which    = least ? 0 : 1;
    const double   dtheta   = warmth->dtheta[which];
    const double   both[2]  = {apart_at(warmth, warmth->theta[0], dtheta),
                               apart_at(warmth, warmth->theta[1], dtheta)};
    const int      at       = least == (both[0] <= both[1]) ? 0 : 1;
    const ts_input inputs[] = {
        {"alpha_casing", warmth->alpha_casing},
        {theta_names[at], warmth->theta[at]},
        {dtheta_names[which], dtheta},
        {"alpha_gears", warmth->alpha_gears},
    };

    return ts_step_list(workings, &apart_formulas[which][at], both[at], inputs, 4);
}

/* ---- all ends -------------------------------------------------------------------------------- */

static double centre_of(const ts_cylindrical_pair *pair, const ts_backlash_allowance *allowance,
                        int end, double factor, double a_wbuilt, ts_workings *workings)
{
    if (end < TS_BACKLASH_LOW) {
        const double   A_a      = allowance->A_a[end];
        const ts_input inputs[] = {{"a_w", pair->a_w}, {names[end].A_a, A_a}};

        return ts_step_list(workings, &a_w_formulas[end], pair->a_w + A_a, inputs, 2);
    }
    const ts_input inputs[] = {{names[end - TS_BACKLASH_LOW].a_w, a_wbuilt},
                               {names[end].A_a, factor}};

    return ts_step_list(workings, &a_w_formulas[end], a_wbuilt * factor, inputs, 2);
}

void ts_backlash_solve(const ts_cylindrical_pair *pair, const ts_backlash_allowance *allowance,
                       const ts_backlash_warmth *warmth, ts_backlash *out, ts_workings *workings)
{
    double built[2];

    *out = (ts_backlash){{(double)NAN, (double)NAN, (double)NAN, (double)NAN},
                         {(double)NAN, (double)NAN, (double)NAN, (double)NAN},
                         1.0};
    for (int end = 0; end < TS_BACKLASH_ENDS; end++) {
        const int which = end % 2;
        end_input in = {(double)NAN, allowance->E_sn1[which], allowance->E_sn2[which], {1.0, 1.0}};

        if (end >= TS_BACKLASH_LOW && warmth == NULL)
            return;
        if (end < TS_BACKLASH_LOW) {
            in.a_w = built[which] = centre_of(pair, allowance, end, 1.0, 0.0, workings);
        } else {
            const double factor = apart(warmth, which == 0, workings);

            in.a_w = centre_of(pair, allowance, end, factor, built[which], workings);
            for (int t = 0; t < 2; t++)
                in.grow[t] = 1.0 + warmth->alpha_gears * (warmth->theta[t] - TS_TEMPERATURE_BUILT);
        }
        solve_end(pair, warmth, &in, end, out, workings);
    }
}
