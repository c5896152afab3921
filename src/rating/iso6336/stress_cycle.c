/* rating/iso6336/stress_cycle.c: which stress lasts how long? */
#include "rating/iso6336/stress_cycle.h"

#include "rating/iso6336/gear_step.h"

#include <math.h>

#define Z_NT_TABLE ISO_6336_2 "11.3, table of Z_NT (from memory)"
#define Y_NT_TABLE ISO_6336_3 "12.3, table of Y_NT (from memory)"

ts_life_nodes ts_life_nodes_contact(ts_gear_class class, bool pitting)
{
    switch (class) {
    case TS_GEAR_NITRIDED:
    case TS_GEAR_THROUGH_NITRIDED:
        return (ts_life_nodes){1e5, 0.0, 2e6, 1.3, 0.0};
    case TS_GEAR_NITROCARBURISED:
        return (ts_life_nodes){1e5, 0.0, 2e6, 1.1, 0.0};
    case TS_GEAR_CASE_HARDENED:
    case TS_GEAR_INDUCTION_HARDENED:
    case TS_GEAR_THROUGH_HARDENED:
    case TS_GEAR_NORMALISED:
    case TS_GEAR_CLASS_COUNT:
        break;
    }
    if (pitting)
        return (ts_life_nodes){6e5, 1e7, 1e9, 1.6, 1.3};
    return (ts_life_nodes){1e5, 0.0, 5e7, 1.6, 0.0};
}

ts_life_nodes ts_life_nodes_bending(ts_gear_class class)
{
    switch (class) {
    case TS_GEAR_CASE_HARDENED:
    case TS_GEAR_INDUCTION_HARDENED:
        return (ts_life_nodes){1e3, 0.0, 3e6, 2.5, 0.0};
    case TS_GEAR_NITRIDED:
    case TS_GEAR_THROUGH_NITRIDED:
        return (ts_life_nodes){1e3, 0.0, 3e6, 1.6, 0.0};
    case TS_GEAR_NITROCARBURISED:
        return (ts_life_nodes){1e3, 0.0, 3e6, 1.1, 0.0};
    case TS_GEAR_THROUGH_HARDENED:
    case TS_GEAR_NORMALISED:
    case TS_GEAR_CLASS_COUNT:
        break;
    }
    return (ts_life_nodes){1e4, 0.0, 3e6, 2.5, 0.0};
}

/* ---- one line -------------------------------------------------------------------------------- */

static double on_line(double N_a, double f_a, double N_b, double f_b, double N)
{
    return f_a * exp(log(f_b / f_a) / log(N_b / N_a) * log(N / N_a));
}

static const ts_formula between_formula = {
    .symbol  = "f_N",
    .meaning = "life factor between two nodes",
    .unit    = "1",
    .text    = "f_a*(N/N_a)^(ln(f_b/f_a)/ln(N_b/N_a))",
    .source  = "derived: a straight line on two logarithmic scales",
};

double ts_life_between(double N_a, double f_a, double N_b, double f_b, double N,
                       ts_workings *workings)
{
    return TS_STEP(workings, between_formula, on_line(N_a, f_a, N_b, f_b, N), N_a, f_a, N_b, f_b,
                   N);
}

/* The inputs are put together where somebody listens. */
#define LISTED(formula, result, ...)                                                               \
    ts_step_list(workings, &formulas[formula], (result),                                           \
                 TS_STEP_NEEDS_INPUTS(workings) ? (const ts_input[]){__VA_ARGS__} : NULL,          \
                 sizeof((const ts_input[]){__VA_ARGS__}) / sizeof(ts_input))

/* ---- life factor ----------------------------------------------------------------------------- */

/* F is Z_NT or Y_NT, Q is H or F, I the index. */
#define UPPER_TEXT(F, Q, I)                                                                        \
    F "stat" I "*(N_L" I "/N_" Q "stat" I ")^(ln(" F "mid" I "/" F "stat" I ")/ln(N_" Q "mid" I    \
      "/N_" Q "stat" I "))"
#define LOWER_TEXT(F, Q, I)                                                                        \
    F "mid" I "*(N_L" I "/N_" Q "mid" I ")^(ln(1/" F "mid" I ")/ln(N_" Q "ref" I "/N_" Q "mid" I   \
      "))"
#define WHOLE_TEXT(F, Q, I)                                                                        \
    F "stat" I "*(N_L" I "/N_" Q "stat" I ")^(ln(1/" F "stat" I ")/ln(N_" Q "ref" I "/N_" Q        \
      "stat" I "))"
#define LONG_TEXT(F, Q, I)                                                                         \
    "(N_L" I "/N_" Q "ref" I ")^(ln(" F "long" I ")/ln(1e10/N_" Q "ref" I "))"

enum { UPPER, LOWER, WHOLE, LONG, LINES };

#define FACTOR(F, Q, I, text, source)                                                              \
    {                                                                                              \
        F I, "life factor of gear " I, "1", text(F, Q, I), source                                  \
    }
#define FACTORS(F, Q, I, source)                                                                   \
    {                                                                                              \
        FACTOR(F, Q, I, UPPER_TEXT, source), FACTOR(F, Q, I, LOWER_TEXT, source),                  \
            FACTOR(F, Q, I, WHOLE_TEXT, source), FACTOR(F, Q, I, LONG_TEXT, source),               \
    }
static const ts_formula factor_formulas[2][2][LINES] = {
    {FACTORS("Z_NT", "H", "1", Z_NT_TABLE), FACTORS("Z_NT", "H", "2", Z_NT_TABLE)},
    {FACTORS("Y_NT", "F", "1", Y_NT_TABLE), FACTORS("Y_NT", "F", "2", Y_NT_TABLE)},
};

typedef struct life_names {
    const char *factor, *at_stat, *at_mid, *at_long, *N_stat, *N_mid, *N_ref, *N_L;
    const char *G_stat, *G_mid, *G_ref;
    const char *table;
} life_names;

#define NAMES(F, Q, I, source)                                                                     \
    {                                                                                              \
        F I, F "stat" I, F "mid" I, F "long" I, "N_" Q "stat" I, "N_" Q "mid" I, "N_" Q "ref" I,   \
            "N_L" I, "sigma_" Q "Gstat" I, "sigma_" Q "Gmid" I, "sigma_" Q "Gref" I, source        \
    }
static const life_names names[2][2] = {
    {NAMES("Z_NT", "H", "1", Z_NT_TABLE), NAMES("Z_NT", "H", "2", Z_NT_TABLE)},
    {NAMES("Y_NT", "F", "1", Y_NT_TABLE), NAMES("Y_NT", "F", "2", Y_NT_TABLE)},
};

static void note_nodes(ts_workings *workings, const life_names *name, const ts_life_nodes *nodes)
{
    if (workings == NULL)
        return;
    TS_ROW(workings, name->N_stat, nodes->N_stat, "1", name->table);
    TS_ROW(workings, name->N_ref, nodes->N_ref, "1", name->table);
    TS_ROW(workings, name->at_stat, nodes->at_stat, "1", name->table);
    if (nodes->N_mid > 0.0) {
        TS_ROW(workings, name->N_mid, nodes->N_mid, "1", name->table);
        TS_ROW(workings, name->at_mid, nodes->at_mid, "1", name->table);
    }
}

ts_cycles ts_cycles_of(double N)
{
    return (ts_cycles){N, log(N)};
}

ts_life_lines ts_life_lines_of(const ts_life_nodes *nodes, double at_long)
{
    const bool    has_mid = nodes->N_mid > 0.0;
    ts_life_lines lines   = {
          .nodes   = *nodes,
          .at_long = at_long,
          .ln_stat = log(nodes->N_stat),
          .ln_ref  = log(nodes->N_ref),
    };

    lines.fall = -log(at_long) / (log(TS_LIFE_LONG) - lines.ln_ref);
    if (!has_mid) {
        lines.lower = log(nodes->at_stat) / (lines.ln_ref - lines.ln_stat);
        return lines;
    }
    lines.ln_mid = log(nodes->N_mid);
    lines.lower  = log(nodes->at_mid) / (lines.ln_ref - lines.ln_mid);
    lines.upper  = log(nodes->at_stat / nodes->at_mid) / (lines.ln_mid - lines.ln_stat);
    return lines;
}

double ts_life_factor(const ts_life_lines *lines, ts_cycles cycles, ts_rated_stress stress,
                      int gear, ts_workings *workings)
{
    const ts_life_nodes *nodes    = &lines->nodes;
    const life_names    *name     = &names[stress][gear];
    const ts_formula    *formulas = factor_formulas[stress][gear];
    const ts_input       N_L = {name->N_L, cycles.N}, N_stat = {name->N_stat, nodes->N_stat};
    const ts_input       N_mid = {name->N_mid, nodes->N_mid}, N_ref = {name->N_ref, nodes->N_ref};
    const ts_input       at_stat = {name->at_stat, nodes->at_stat};
    const ts_input       at_mid  = {name->at_mid, nodes->at_mid};
    const ts_input       at_long = {name->at_long, lines->at_long};

    note_nodes(workings, name, nodes);
    if (cycles.N <= nodes->N_stat) {
        TS_ROW(workings, name->factor, nodes->at_stat, "1", name->table);
        return nodes->at_stat;
    }
    if (cycles.N > nodes->N_ref)
        return LISTED(LONG, exp(lines->fall * (lines->ln_ref - cycles.ln)), N_L, N_ref, at_long);
    const double lower = exp(lines->lower * (lines->ln_ref - cycles.ln));
    if (!(nodes->N_mid > 0.0))
        return LISTED(WHOLE, lower, N_L, N_stat, at_stat, N_ref);
    if (cycles.N > nodes->N_mid)
        return LISTED(LOWER, lower, N_L, N_mid, at_mid, N_ref);
    return LISTED(UPPER, nodes->at_mid * exp(lines->upper * (lines->ln_mid - cycles.ln)), N_L,
                  N_stat, at_stat, N_mid, at_mid);
}

/* ---- curve of one tooth ---------------------------------------------------------------------- */

ts_life_curve ts_life_curve_of(const ts_life_lines *lines, double sigma_stat, double sigma_ref)
{
    const ts_life_nodes *nodes = &lines->nodes;
    ts_life_curve        curve = {
               .N_stat     = nodes->N_stat,
               .N_mid      = nodes->N_mid,
               .N_ref      = nodes->N_ref,
               .sigma_stat = sigma_stat < sigma_ref ? sigma_ref : sigma_stat,
               .sigma_ref  = sigma_ref,
               .fall       = lines->fall,
    };
    const double height = log(curve.sigma_stat / sigma_ref);

    if (!(nodes->N_mid > 0.0)) {
        curve.lower = height / (lines->ln_ref - lines->ln_stat);
        return curve;
    }
    const double at_mid = height * log(nodes->at_mid) / log(nodes->at_stat);
    curve.sigma_mid     = sigma_ref * exp(at_mid);
    curve.lower         = at_mid / (lines->ln_ref - lines->ln_mid);
    curve.upper         = (height - at_mid) / (lines->ln_mid - lines->ln_stat);
    return curve;
}

#define G_STAT_TEXT(Q, F, I) "sigma_" Q "Gstat" I
#define G_LINE(Q, from, to, I)                                                                     \
    "sigma_" Q "G" from I "*(N_L" I "/N_" Q from I ")^(ln(sigma_" Q "G" to I "/sigma_" Q           \
    "G" from I ")/ln(N_" Q to I "/N_" Q from I "))"
#define G_UPPER_TEXT(Q, F, I) G_LINE(Q, "stat", "mid", I)
#define G_LOWER_TEXT(Q, F, I) G_LINE(Q, "mid", "ref", I)
#define G_WHOLE_TEXT(Q, F, I) G_LINE(Q, "stat", "ref", I)
#define G_LONG_TEXT(Q, F, I)  "sigma_" Q "Gref" I "*" F I

enum { G_STAT, G_UPPER, G_LOWER, G_WHOLE, G_LONG, G_LINES };

#define LIMIT(Q, F, I, text, source)                                                               \
    {                                                                                              \
        "sigma_" Q "G" I, "stress limit of gear " I " for its cycles", "Pa", text(Q, F, I), source \
    }
#define LIMITS(Q, F, I, source)                                                                    \
    {                                                                                              \
        LIMIT(Q, F, I, G_STAT_TEXT, source), LIMIT(Q, F, I, G_UPPER_TEXT, source),                 \
            LIMIT(Q, F, I, G_LOWER_TEXT, source), LIMIT(Q, F, I, G_WHOLE_TEXT, source),            \
            LIMIT(Q, F, I, G_LONG_TEXT, source),                                                   \
    }
#define H_SOURCE ISO_6336_2 "5.4.3" RECALLED
#define F_SOURCE ISO_6336_3 "5.4.3" RECALLED
static const ts_formula limit_formulas[2][2][G_LINES] = {
    {LIMITS("H", "Z_NT", "1", H_SOURCE), LIMITS("H", "Z_NT", "2", H_SOURCE)},
    {LIMITS("F", "Y_NT", "1", F_SOURCE), LIMITS("F", "Y_NT", "2", F_SOURCE)},
};

double ts_life_curve_stress(const ts_life_curve *curve, const ts_life_lines *lines,
                            const ts_life_question *question, ts_workings *workings)
{
    const ts_cycles   cycles   = question->cycles;
    const life_names *name     = &names[question->stress][question->gear];
    const ts_formula *formulas = limit_formulas[question->stress][question->gear];
    const ts_input    N_L = {name->N_L, cycles.N}, N_stat = {name->N_stat, curve->N_stat};
    const ts_input    N_mid = {name->N_mid, curve->N_mid}, N_ref = {name->N_ref, curve->N_ref};
    const ts_input    G_stat = {name->G_stat, curve->sigma_stat};
    const ts_input    G_mid  = {name->G_mid, curve->sigma_mid};
    const ts_input    G_ref  = {name->G_ref, curve->sigma_ref};
    const ts_input    factor = {name->factor, question->life_factor};

    if (cycles.N <= curve->N_stat)
        return LISTED(G_STAT, curve->sigma_stat, G_stat);
    if (cycles.N > curve->N_ref)
        return LISTED(G_LONG, curve->sigma_ref * question->life_factor, G_ref, factor);
    const double lower = curve->sigma_ref * exp(curve->lower * (lines->ln_ref - cycles.ln));
    if (!(curve->N_mid > 0.0))
        return LISTED(G_WHOLE, lower, N_L, N_stat, G_stat, N_ref, G_ref);
    if (cycles.N > curve->N_mid)
        return LISTED(G_LOWER, lower, N_L, N_mid, G_mid, N_ref, G_ref);
    return LISTED(G_UPPER, curve->sigma_mid * exp(curve->upper * (lines->ln_mid - cycles.ln)), N_L,
                  N_stat, G_stat, N_mid, G_mid);
}

/* ---- the other way round ----------------------------------------------------------------------
 */

typedef enum life_piece { PIECE_MISSING, BREAKS, ENDLESS, FALLS, LOWERS, UPPERS } life_piece;

static life_piece piece_of(const ts_life_curve *curve, double sigma)
{
    if (isnan(sigma) || isnan(curve->sigma_stat) || isnan(curve->sigma_ref))
        return PIECE_MISSING;
    if (sigma > curve->sigma_stat)
        return BREAKS;
    if (sigma < curve->sigma_ref)
        return curve->fall > 0.0 ? FALLS : ENDLESS;
    return curve->N_mid > 0.0 && sigma >= curve->sigma_mid ? UPPERS : LOWERS;
}

/* ln_over: of the stress at the end of the piece over this stress.  A level line is borne to its
 * end. */
static ts_borne on_slope(double N_end, double slope, double ln_over)
{
    return (ts_borne){slope > 0.0 ? N_end * exp(ln_over / slope) : N_end, slope};
}

static ts_borne on_piece(const ts_life_curve *curve, life_piece piece, double ln_over)
{
    switch (piece) {
    case FALLS:
        return on_slope(curve->N_ref, curve->fall, ln_over);
    case LOWERS:
        return on_slope(curve->N_ref, curve->lower, ln_over);
    case UPPERS:
        return on_slope(curve->N_mid, curve->upper, ln_over);
    case BREAKS:
        return (ts_borne){0.0, ts_life_curve_slope(curve, curve->sigma_stat)};
    case ENDLESS:
        return (ts_borne){(double)INFINITY, curve->fall};
    case PIECE_MISSING:
        break;
    }
    return (ts_borne){(double)NAN, (double)NAN};
}

ts_life_depth ts_life_depth_of(const ts_life_curve *curve, double sigma)
{
    return (ts_life_depth){curve->N_mid > 0.0 ? log(curve->sigma_mid / sigma) : 0.0,
                           log(curve->sigma_ref / sigma)};
}

ts_borne ts_life_curve_borne(const ts_life_curve *curve, double sigma, ts_life_depth depth,
                             double S, double ln_S)
{
    const life_piece piece = piece_of(curve, S * sigma);

    return on_piece(curve, piece, (piece == UPPERS ? depth.ln_mid : depth.ln_ref) - ln_S);
}

double ts_life_curve_cycles(const ts_life_curve *curve, double sigma)
{
    const life_piece piece = piece_of(curve, sigma);

    return on_piece(curve, piece,
                    log((piece == UPPERS ? curve->sigma_mid : curve->sigma_ref) / sigma))
        .N;
}

double ts_life_curve_slope(const ts_life_curve *curve, double sigma)
{
    if (sigma < curve->sigma_ref)
        return curve->fall;
    return curve->N_mid > 0.0 && sigma >= curve->sigma_mid ? curve->upper : curve->lower;
}
