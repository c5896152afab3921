/* rating/agma2101/agma_face_load.c: how much more does the worst part of the face carry? */
#include "rating/agma2101/agma_face_load.h"

#include "rating/agma2101/agma_step.h"

#include <math.h>

#define CLAUSE_15 AGMA_2101 "15" RECALLED
#define INCH      0.0254
#define FACE_LAST 1e6 /* inches; the parabola of wide faces has long turned down */

typedef struct alignment_row {
    const char *class;
    double      A, B, C; /* b in inches */
    const char *meaning;
} alignment_row;

static const alignment_row rows[TS_AGMA_BOX_COUNT] = {
#include "agma_alignment.inc"
};

const char *ts_agma_box_name(ts_agma_box box)
{
    return rows[box].class;
}

bool ts_agma_box_named(ts_text name, ts_agma_box *box)
{
    for (int i = 0; i < TS_AGMA_BOX_COUNT; i++) {
        if (!ts_text_is(name, rows[i].class))
            continue;
        *box = (ts_agma_box)i;
        return true;
    }
    return false;
}

ts_agma_alignment ts_agma_alignment_of(ts_agma_box box)
{
    return (ts_agma_alignment){
        .A = rows[box].A,
        .B = rows[box].B / INCH,
        .C = rows[box].C / (INCH * INCH),
    };
}

/* ---- pinion proportion ----------------------------------------------------------------------- */

#define PROPORTION(name, range, expression)                                                        \
    static const ts_formula name##_formula = {                                                     \
        .symbol  = "K_Hpf",                                                                        \
        .meaning = "pinion proportion factor, " range,                                             \
        .unit    = "1",                                                                            \
        .text    = (expression),                                                                   \
        .source  = CLAUSE_15,                                                                      \
    }

/* d_P: operating pitch diameter of the pinion, which may be gear 1 or gear 2. */
#define SLENDER "max(0.05, b/(10*d_P))"
PROPORTION(narrow, "b <= 1 in", SLENDER " - 0.025");
PROPORTION(usual, "1 in < b <= 17 in", SLENDER " - 0.0375 + 0.0125*b/0.0254");
PROPORTION(wide, "17 in < b <= 40 in",
           SLENDER " - 0.1109 + 0.0207*b/0.0254 - 0.000228*(b/0.0254)^2");

double ts_agma_pinion_proportion(double b, double d_P, ts_workings *workings)
{
    const double slender = fmax(0.05, b / (10.0 * d_P)), inches = b / INCH;

    if (!(b > 0.0) || !(d_P > 0.0) || !isfinite(slender) || inches > FACE_LAST)
        return NAN;
    if (inches <= 1.0)
        return TS_STEP(workings, narrow_formula, slender - 0.025, b, d_P);
    if (inches <= 17.0)
        return TS_STEP(workings, usual_formula, slender - 0.0375 + 0.0125 * inches, b, d_P);
    return TS_STEP(workings, wide_formula,
                   slender - 0.1109 + 0.0207 * inches - 0.000228 * (inches * inches), b, d_P);
}

/* ---- the whole ------------------------------------------------------------------------------- */

static const ts_formula K_Hma_formula = {
    .symbol  = "K_Hma",
    .meaning = "mesh alignment factor",
    .unit    = "1",
    .text    = "A_ma + B_ma*b + C_ma*b^2",
    .source  = CLAUSE_15,
};
static const ts_formula K_H_formula = {
    .symbol  = "K_H",
    .meaning = "load distribution factor",
    .unit    = "1",
    .text    = "1 + K_Hmc*(K_Hpf*K_Hpm + K_Hma*K_He)",
    .source  = CLAUSE_15,
};

static double row(ts_workings *workings, const char *symbol, double value, const char *unit)
{
    ts_workings_row(workings, symbol, value, unit, CLAUSE_15);
    return value;
}

ts_agma_face_load ts_agma_face_load_of(double b, double d_w, const ts_agma_mounting *mounting,
                                       ts_workings *workings)
{
    const double      A_ma  = row(workings, "A_ma", mounting->alignment.A, "1");
    const double      B_ma  = row(workings, "B_ma", mounting->alignment.B, "1/m");
    const double      C_ma  = row(workings, "C_ma", mounting->alignment.C, "1/m2");
    const double      K_Hmc = row(workings, "K_Hmc", mounting->lead_corrected ? 0.8 : 1.0, "1");
    const double      K_Hpm = row(workings, "K_Hpm", mounting->offset < 0.175 ? 1.0 : 1.1, "1");
    const double      K_He  = row(workings, "K_He", mounting->adjusted ? 0.8 : 1.0, "1");
    const double      K_Hpf = ts_agma_pinion_proportion(b, d_w, workings);
    ts_agma_face_load out   = {
          .K_Hmc = K_Hmc, .K_Hpf = K_Hpf, .K_Hpm = K_Hpm, .K_Hma = NAN, .K_He = K_He, .K_H = NAN};

    const double K_Hma = A_ma + B_ma * b + C_ma * (b * b);
    if (isnan(K_Hpf) || !isfinite(K_Hma))
        return out;
    out.K_Hma = TS_STEP(workings, K_Hma_formula, K_Hma, A_ma, B_ma, b, C_ma);
    out.K_H   = TS_STEP(workings, K_H_formula, 1.0 + K_Hmc * (K_Hpf * K_Hpm + K_Hma * K_He), K_Hmc,
                        K_Hpf, K_Hpm, K_Hma, K_He);
    return out;
}
