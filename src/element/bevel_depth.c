/* element/bevel_depth.c: how high are the teeth of a bevel pair, and how large are its blanks? */
#include "element/bevel_depth.h"

#include "base/assert.h"

#include <math.h>
#include <stddef.h>

#define PROPORTIONS "long-addendum proportions, JGMA form (from memory)"
#define BLANK       "ISO 23509:2016 (formula from memory)"

static const ts_formula h_a2_straight_formula = {
    .symbol  = "h_a2",
    .meaning = "outer addendum of gear 2",
    .unit    = "m",
    .text    = "0.54*m_et + 0.46*m_et/(z_2*cos(delta_1)/(z_1*cos(delta_2)))",
    .source  = PROPORTIONS,
};
static const ts_formula h_a2_spiral_formula = {
    .symbol  = "h_a2",
    .meaning = "outer addendum of gear 2",
    .unit    = "m",
    .text    = "0.46*m_et + 0.39*m_et/(z_2*cos(delta_1)/(z_1*cos(delta_2)))",
    .source  = PROPORTIONS,
};
static const ts_formula h_a1_formula = {
    .symbol  = "h_a1",
    .meaning = "outer addendum of gear 1",
    .unit    = "m",
    .text    = "depth_w*m_et - h_a2",
    .source  = PROPORTIONS,
};
static const ts_formula h_f_formula[] = {
    {"h_f1", "outer dedendum of gear 1", "m", "depth*m_et - h_a1", PROPORTIONS},
    {"h_f2", "outer dedendum of gear 2", "m", "depth*m_et - h_a2", PROPORTIONS},
};
static const ts_formula equal_formula[] = {
    {"h_a1", "outer addendum of gear 1", "m", "1*m_et", PROPORTIONS},
    {"h_a2", "outer addendum of gear 2", "m", "1*m_et", PROPORTIONS},
    {"h_f1", "outer dedendum of gear 1", "m", "1.25*m_et", PROPORTIONS},
    {"h_f2", "outer dedendum of gear 2", "m", "1.25*m_et", PROPORTIONS},
};

/* The same text for gear 1 and gear 2; the mate's index stands in M. */
typedef struct blank_formulas {
    ts_formula theta_f, theta_a_own, theta_a_mate, delta_a, delta_f, d_ae, X, X_b, d_ai;
} blank_formulas;

#define BLANK_FORMULAS(I, M)                                                                       \
    {                                                                                              \
        .theta_f      = {"theta_f" I, "dedendum angle", "rad", "atan(h_f" I "/R_e)", BLANK},       \
        .theta_a_own  = {"theta_a" I, "addendum angle", "rad", "atan(h_a" I "/R_e)", BLANK},       \
        .theta_a_mate = {"theta_a" I, "addendum angle", "rad", "atan(h_f" M "/R_e)", PROPORTIONS}, \
        .delta_a      = {"delta_a" I, "face angle", "rad", "delta_" I " + theta_a" I, BLANK},      \
        .delta_f      = {"delta_f" I, "root angle", "rad", "delta_" I " - theta_f" I, BLANK},      \
        .d_ae = {"d_ae" I, "outer tip diameter", "m", "d_e" I " + 2*h_a" I "*cos(delta_" I ")",    \
                 BLANK},                                                                           \
        .X    = {"X_" I, "apex of the pitch cone to the outer tip", "m",                           \
                 "R_e*cos(delta_" I ") - h_a" I "*sin(delta_" I ")", BLANK},                       \
        .X_b  = {"X_b" I, "extent of the face along the axis", "m",                                \
                 "b*cos(delta_a" I ")/cos(theta_a" I ")", BLANK},                                  \
        .d_ai = {"d_ai" I, "inner tip diameter", "m",                                              \
                 "d_ae" I " - 2*b*sin(delta_a" I ")/cos(theta_a" I ")", BLANK},                    \
    }

static const blank_formulas blank[] = {BLANK_FORMULAS("1", "2"), BLANK_FORMULAS("2", "1")};

typedef struct blank_names {
    const char *h_a, *h_f, *h_f_mate, *theta_a, *theta_f, *delta, *delta_a, *d_e, *d_ae;
} blank_names;

static const blank_names names[] = {
    {"h_a1", "h_f1", "h_f2", "theta_a1", "theta_f1", "delta_1", "delta_a1", "d_e1", "d_ae1"},
    {"h_a2", "h_f2", "h_f1", "theta_a2", "theta_f2", "delta_2", "delta_a2", "d_e2", "d_ae2"},
};

#define OWN(symbol)                                                                                \
    {                                                                                              \
        names[index].symbol, (symbol)                                                              \
    }
#define ALL(symbol)                                                                                \
    {                                                                                              \
#symbol, (symbol)                                                                          \
    }
#define STEP(which, result, ...)                                                                   \
    ts_step_list(workings, &blank[index].which, (result), (const ts_input[]){__VA_ARGS__},         \
                 sizeof((const ts_input[]){__VA_ARGS__}) / sizeof(ts_input))

static void solve_long_addendum(const ts_bevel_pair *pair, bool spiral, ts_bevel_depth *out,
                                ts_workings *workings)
{
    const double m_et = pair->in.m_et, z_1 = pair->in.z_1, z_2 = pair->in.z_2;
    const double delta_1 = pair->delta_1, delta_2 = pair->delta_2;
    const double share   = z_2 * cos(delta_1) / (z_1 * cos(delta_2));
    const double depth_w = spiral ? 1.7 : 2.0, depth = spiral ? 1.888 : 2.188;

    const double h_a2 =
        spiral ? TS_STEP(workings, h_a2_spiral_formula, 0.46 * m_et + 0.39 * m_et / share, m_et,
                         z_2, delta_1, z_1, delta_2)
               : TS_STEP(workings, h_a2_straight_formula, 0.54 * m_et + 0.46 * m_et / share, m_et,
                         z_2, delta_1, z_1, delta_2);
    const double h_a1 = TS_STEP(workings, h_a1_formula, depth_w * m_et - h_a2, depth_w, m_et, h_a2);

    out->h_a1 = h_a1;
    out->h_a2 = h_a2;
    out->h_f1 = TS_STEP(workings, h_f_formula[0], depth * m_et - h_a1, depth, m_et, h_a1);
    out->h_f2 = TS_STEP(workings, h_f_formula[1], depth * m_et - h_a2, depth, m_et, h_a2);
}

static void solve_equal_addenda(const ts_bevel_pair *pair, ts_bevel_depth *out,
                                ts_workings *workings)
{
    const double m_et = pair->in.m_et;

    out->h_a1 = TS_STEP(workings, equal_formula[0], m_et, m_et);
    out->h_a2 = TS_STEP(workings, equal_formula[1], m_et, m_et);
    out->h_f1 = TS_STEP(workings, equal_formula[2], 1.25 * m_et, m_et);
    out->h_f2 = TS_STEP(workings, equal_formula[3], 1.25 * m_et, m_et);
}

/* One gear of the two, by index, so that the blank's formulas stand once. */
typedef struct one_gear {
    double h_a, h_f, h_f_mate, delta, d_e;
} one_gear;

typedef struct one_blank {
    double theta_a, theta_f, delta_a, delta_f, d_ae, X, X_b, d_ai;
} one_blank;

static one_blank solve_blank(const ts_bevel_pair *pair, const one_gear *gear, bool parallel,
                             int index, ts_workings *workings)
{
    const double R_e = pair->R_e, b = pair->in.b, delta = gear->delta, d_e = gear->d_e;
    const double h_a = gear->h_a, h_f = gear->h_f, h_f_mate = gear->h_f_mate;

    const double theta_f = STEP(theta_f, atan(h_f / R_e), OWN(h_f), ALL(R_e));
    const double theta_a = parallel
                               ? STEP(theta_a_mate, atan(h_f_mate / R_e), OWN(h_f_mate), ALL(R_e))
                               : STEP(theta_a_own, atan(h_a / R_e), OWN(h_a), ALL(R_e));
    const double delta_a = STEP(delta_a, delta + theta_a, OWN(delta), OWN(theta_a));
    const double d_ae    = STEP(d_ae, d_e + 2.0 * h_a * cos(delta), OWN(d_e), OWN(h_a), OWN(delta));

    return (one_blank){
        .theta_a = theta_a,
        .theta_f = theta_f,
        .delta_a = delta_a,
        .delta_f = STEP(delta_f, delta - theta_f, OWN(delta), OWN(theta_f)),
        .d_ae    = d_ae,
        .X       = STEP(X, R_e * cos(delta) - h_a * sin(delta), ALL(R_e), OWN(delta), OWN(h_a)),
        .X_b     = STEP(X_b, b * cos(delta_a) / cos(theta_a), ALL(b), OWN(delta_a), OWN(theta_a)),
        .d_ai    = STEP(d_ai, d_ae - 2.0 * b * sin(delta_a) / cos(theta_a), OWN(d_ae), ALL(b),
                        OWN(delta_a), OWN(theta_a)),
    };
}

static void solve_blanks(const ts_bevel_pair *pair, bool parallel, ts_bevel_depth *out,
                         ts_workings *workings)
{
    const one_gear  gear_1 = {out->h_a1, out->h_f1, out->h_f2, pair->delta_1, pair->d_e1};
    const one_gear  gear_2 = {out->h_a2, out->h_f2, out->h_f1, pair->delta_2, pair->d_e2};
    const one_blank first  = solve_blank(pair, &gear_1, parallel, 0, workings);
    const one_blank second = solve_blank(pair, &gear_2, parallel, 1, workings);

    out->theta_a1 = first.theta_a;
    out->theta_f1 = first.theta_f;
    out->delta_a1 = first.delta_a;
    out->delta_f1 = first.delta_f;
    out->d_ae1    = first.d_ae;
    out->X_1      = first.X;
    out->X_b1     = first.X_b;
    out->d_ai1    = first.d_ai;
    out->theta_a2 = second.theta_a;
    out->theta_f2 = second.theta_f;
    out->delta_a2 = second.delta_a;
    out->delta_f2 = second.delta_f;
    out->d_ae2    = second.d_ae;
    out->X_2      = second.X;
    out->X_b2     = second.X_b;
    out->d_ai2    = second.d_ai;
}

void ts_bevel_depth_solve(const ts_bevel_pair *pair, ts_bevel_depth_rule rule,
                          const ts_bevel_heights *given, ts_bevel_depth *depth,
                          ts_workings *workings)
{
    const bool parallel = rule == TS_BEVEL_LONG_ADDENDUM || rule == TS_BEVEL_LONG_SPIRAL;

    if (parallel) {
        solve_long_addendum(pair, rule == TS_BEVEL_LONG_SPIRAL, depth, workings);
    } else if (rule == TS_BEVEL_EQUAL_ADDENDA) {
        solve_equal_addenda(pair, depth, workings);
    } else {
        TS_ASSERT(given != NULL);
        depth->h_a1 = given->h_a1;
        depth->h_a2 = given->h_a2;
        depth->h_f1 = given->h_f1;
        depth->h_f2 = given->h_f2;
    }
    solve_blanks(pair, parallel, depth, workings);
}
