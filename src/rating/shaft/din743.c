/* rating/shaft/din743.c: does a section of a shaft hold against yield and fatigue? */
#include "rating/shaft/din743.h"

#include <math.h>
#include <stddef.h>

#define DIN_743(what) "DIN 743-" what " (from memory)"

/* One formula for each part of the stress: its symbols carry zd, b or t. */
#define THREE(symbol_, meaning_, unit_, text_, source_)                                            \
    {                                                                                              \
        {.symbol  = symbol_ "zd",                                                                  \
         .meaning = meaning_ ", pull",                                                             \
         .unit    = (unit_),                                                                       \
         .text    = text_("zd"),                                                                   \
         .source  = (source_)},                                                                     \
            {.symbol  = symbol_ "b",                                                               \
             .meaning = meaning_ ", bending",                                                      \
             .unit    = (unit_),                                                                   \
             .text    = text_("b"),                                                                \
             .source  = (source_)},                                                                 \
            {.symbol  = symbol_ "t",                                                               \
             .meaning = meaning_ ", torsion",                                                      \
             .unit    = (unit_),                                                                   \
             .text    = text_("t"),                                                                \
             .source  = (source_)},                                                                 \
    }
#define OF_PART(name_, part_)                                                                      \
    ((part_) == TS_DIN_ZD ? name_ "zd" : (part_) == TS_DIN_B ? name_ "b" : name_ "t")
#define STEP(formula, result, ...)                                                                 \
    ts_step_list(workings, &(formula), (result),                                                   \
                 TS_STEP_NEEDS_INPUTS(workings) ? (const ts_input[]){__VA_ARGS__} : NULL,          \
                 sizeof((const ts_input[]){__VA_ARGS__}) / sizeof(ts_input))

/* ---- size of the heat-treated blank ---------------------------------------------------------- */

typedef struct size_law {
    double from, to; /* over d_B, and in m where it ends */
    double fall;
} size_law;

#define K_1_TEXT "1 - fall*ln(max(1, min(d_eff, d_end)/d_from))/ln(10)"
static const ts_formula K_1B_formula = {
    .symbol  = "K_1B",
    .meaning = "size factor of the heat treatment, strength",
    .unit    = "1",
    .text    = K_1_TEXT,
    .source  = DIN_743("2:2012, 5.1"),
};
static const ts_formula K_1S_formula = {
    .symbol  = "K_1S",
    .meaning = "size factor of the heat treatment, yield",
    .unit    = "1",
    .text    = K_1_TEXT,
    .source  = DIN_743("2:2012, 5.1"),
};

static double size_factor(const ts_formula *formula, size_law law, double d_eff,
                          ts_workings *workings)
{
    const double fall = law.fall, d_from = law.from, d_end = law.to;
    const double K_1 = 1.0 - fall * log10(fmax(1.0, fmin(d_eff, d_end) / d_from));

    ts_workings_row(workings, "fall", fall, "1", DIN_743("2:2012, 5.1, by the kind of steel"));
    ts_workings_row(workings, "d_end", d_end, "m", DIN_743("2:2012, 5.1, by the kind of steel"));
    ts_workings_row(workings, "d_from", d_from, "m", DIN_743("2:2012, 5.1, from d_B on"));
    return TS_STEP(workings, *formula, K_1, fall, d_eff, d_end, d_from);
}

static size_law law_of_strength(const ts_din_steel *steel)
{
    switch (steel->kind) {
    case TS_DIN_CASE_HARDENED:
        return (size_law){steel->d_B, 0.15, 0.41};
    case TS_DIN_NITRIDED:
    case TS_DIN_STRUCTURAL:
        return (size_law){0.1, 0.3, 0.23};
    case TS_DIN_TEMPERED:
        break;
    }
    return (size_law){steel->d_B, 0.3, 0.26};
}

static size_law law_of_yield(const ts_din_steel *steel)
{
    switch (steel->kind) {
    case TS_DIN_CASE_HARDENED:
        return (size_law){steel->d_B, 0.15, 0.41};
    case TS_DIN_NITRIDED:
        return (size_law){0.1, 0.3, 0.23};
    case TS_DIN_STRUCTURAL:
        return (size_law){2.0 * steel->d_B, 0.3, 0.26};
    case TS_DIN_TEMPERED:
        break;
    }
    return (size_law){steel->d_B, 0.3, 0.34};
}

double ts_din_size_of_blank(const ts_din_steel *steel, double d_eff, ts_workings *workings)
{
    return size_factor(&K_1B_formula, law_of_strength(steel), d_eff, workings);
}

/* ---- notch factors --------------------------------------------------------------------------- */

#define BETA_TEXT(P)    "alpha_" P "/n_" P
#define SUPPORT_TEXT(P) "1 + (G_" P "/1000)^0.5*10^(-(0.33 + sigma_S/712e6))"
#define HARD_TEXT(P)    "1 + (G_" P "/1000)^0.5*10^-0.7"
#define K_2_TEXT(P)     "1 - 0.2*ln(max(1, min(d, 0.15)/0.0075))/ln(20)"
#define K_TEXT(P)       "(beta_" P "/K_2" P " + 1/K_F" P " - 1)/K_V"
#define WK_TEXT(P)      "sigma_W" P "*K_1B/K_" P
static const ts_formula beta_formulas[] =
    THREE("beta_", "fatigue notch factor", "1", BETA_TEXT, DIN_743("2:2012, 5.2"));
static const ts_formula support_formulas[] =
    THREE("n_", "support factor", "1", SUPPORT_TEXT, DIN_743("2:2012, 5.2"));
static const ts_formula hard_formulas[] =
    THREE("n_", "support factor under a hard surface", "1", HARD_TEXT, DIN_743("2:2012, 5.2"));
static const ts_formula K_2_formulas[] =
    THREE("K_2", "size factor of the stress gradient", "1", K_2_TEXT, DIN_743("2:2012, 5.4"));
static const ts_formula K_formulas[] =
    THREE("K_", "total influence", "1", K_TEXT, DIN_743("1:2012, 4.2"));
static const ts_formula WK_formulas[] =
    THREE("sigma_WK", "fatigue strength of the part", "Pa", WK_TEXT, DIN_743("1:2012, 4.2"));

static const ts_formula K_Fsigma_formula = {
    .symbol  = "K_Fb",
    .meaning = "roughness factor of pull and bending",
    .unit    = "1",
    .text    = "1 - 0.22*max(0, ln(1e6*R_z)/ln(10))*(ln(min(2000e6, sigma_BK)/20e6)/ln(10) - 1)",
    .source  = DIN_743("2:2012, 5.5"),
};
static const ts_formula K_Ftau_formula = {
    .symbol  = "K_Ft",
    .meaning = "roughness factor of torsion",
    .unit    = "1",
    .text    = "0.575*K_Fb + 0.425",
    .source  = DIN_743("2:2012, 5.5"),
};

/* Kinds whose fatigue notch factor was measured, roughness and all. */
static bool is_measured(ts_din_notch_kind kind)
{
    return kind >= TS_DIN_KEYWAY && kind <= TS_DIN_GIVEN;
}

/* DIN 743-2:2012, table 1, of specimens of 40 mm; splines by their own exponential. */
static double measured_beta(const ts_din_section *section, ts_din_part part, double sigma_BK)
{
    const double MPa = sigma_BK / 1e6, spline = exp(4.2e-7 * MPa * MPa);
    const bool   torsion = part == TS_DIN_T;
    const double key = 3.0 * pow(MPa / 1000.0, 0.38), press = 2.7 * pow(MPa / 1000.0, 0.43);

    switch (section->notch) {
    case TS_DIN_KEYWAY:
        return torsion ? 0.56 * key + 0.1 : key;
    case TS_DIN_TWO_KEYWAYS:
        return 1.15 * (torsion ? 0.56 * key + 0.1 : key);
    case TS_DIN_PRESS_FIT:
        return torsion ? 0.65 * press : press;
    case TS_DIN_INVOLUTE_SPLINE:
        return 1.0 + (torsion ? 0.75 : 0.49) * (spline - 1.0);
    case TS_DIN_STRAIGHT_SPLINE:
        return 1.0 + (torsion ? 1.0 : 0.45) * (spline - 1.0);
    case TS_DIN_SERRATION:
        return 1.0 + (torsion ? 1.0 : 0.65) * (spline - 1.0);
    default:
        return section->beta[part];
    }
}

/* A measured factor of a 40 mm specimen, brought to d by K_3. */
static double brought_to(double beta, double d)
{
    const double size = log10(fmax(1.0, fmin(d, 0.15) / 0.0075)) / log10(20.0);
    const double own = log10(0.04 / 0.0075) / log10(20.0), lift = 0.2 * log10(beta);

    return beta * (1.0 - lift * own) / (1.0 - lift * size);
}

static double beta_of(const ts_din_steel *steel, const ts_din_section *section, ts_din_part part,
                      ts_din_ability *ability, ts_workings *workings)
{
    const bool hard = steel->kind == TS_DIN_CASE_HARDENED || steel->kind == TS_DIN_NITRIDED;

    ability->alpha[part] = ts_din_alpha(section->notch, part, section);
    if (section->notch == TS_DIN_SMOOTH)
        return 1.0;
    if (is_measured(section->notch)) {
        const double raw  = measured_beta(section, part, ability->sigma_BK);
        const double beta = section->notch == TS_DIN_GIVEN ? raw : brought_to(raw, section->d);

        ts_workings_row(workings, OF_PART("beta_", part), beta, "1",
                        DIN_743("2:2012, table 1, brought from 40 mm to d by K_3"));
        return beta;
    }
    const double alpha = ability->alpha[part], sigma_S = ability->K_1S * steel->sigma_S;
    const double slope = ts_din_gradient(section->notch, part, section);
    const double n     = ts_din_support(slope, sigma_S, hard);

    ts_workings_row(workings, OF_PART("alpha_", part), alpha, "1", DIN_743("2:2012, 5.2"));
    ts_workings_row(workings, OF_PART("G_", part), slope, "1",
                    DIN_743("2:2012, relative stress gradient, per metre, table 2"));
    if (hard)
        STEP(hard_formulas[part], n, {OF_PART("G_", part), slope});
    else
        STEP(support_formulas[part], n, {OF_PART("G_", part), slope}, {"sigma_S", sigma_S});
    return STEP(beta_formulas[part], alpha / n, {OF_PART("alpha_", part), alpha},
                {OF_PART("n_", part), n});
}

/* ---- the part's strengths -------------------------------------------------------------------- */

double ts_din_roughness(double R_z, double sigma_BK, double *K_Fb_out, ts_workings *workings)
{
    const double um   = fmax(0.0, log10(1e6 * R_z));
    const double K_Fb = 1.0 - 0.22 * um * (log10(fmin(2000e6, sigma_BK) / 20e6) - 1.0);

    *K_Fb_out = TS_STEP(workings, K_Fsigma_formula, K_Fb, R_z, sigma_BK);
    return TS_STEP(workings, K_Ftau_formula, 0.575 * K_Fb + 0.425, K_Fb);
}

static void roughen(const ts_din_section *section, ts_din_ability *ability, ts_workings *workings)
{
    if (is_measured(section->notch)) {
        for (int part = 0; part < TS_DIN_PARTS; part++) {
            ability->K_F[part] = 1.0;
            ts_workings_row(workings, OF_PART("K_F", part), 1.0, "1",
                            DIN_743("2:2012, 5.5, held by the measured notch factor"));
        }
        return;
    }
    ability->K_F[TS_DIN_T] =
        ts_din_roughness(section->R_z, ability->sigma_BK, &ability->K_F[TS_DIN_B], workings);
    ability->K_F[TS_DIN_ZD] = ability->K_F[TS_DIN_B];
    ts_workings_row(workings, "K_Fzd", ability->K_F[TS_DIN_ZD], "1",
                    DIN_743("2:2012, 5.5, as K_Fb"));
}

static double fatigue_of(const ts_din_steel *steel, ts_din_part part)
{
    const double own   = part == TS_DIN_ZD  ? steel->sigma_zdW
                         : part == TS_DIN_B ? steel->sigma_bW
                                            : steel->tau_tW;
    const double share = part == TS_DIN_ZD ? 0.4 : part == TS_DIN_B ? 0.5 : 0.3;

    return isnan(own) ? share * steel->sigma_B : own;
}

/* DIN 743-1:2012, 4.3: support by yielding, and by the constraint in a notch round the shaft. */
static double yield_gain(const ts_din_steel *steel, const ts_din_section *section, ts_din_part part,
                         const ts_din_ability *ability)
{
    const bool   hollow = section->d_i > 0.0;
    const double notch  = isnan(ability->alpha[part]) ? ability->beta[part] : ability->alpha[part];
    const bool   round  = section->notch == TS_DIN_SHOULDER || section->notch == TS_DIN_GROOVE ||
                       section->notch == TS_DIN_UNDERCUT;
    const double constraint = notch < 1.5 ? 1.0 : notch < 2.0 ? 1.05 : notch < 3.0 ? 1.1 : 1.15;

    if (steel->kind == TS_DIN_CASE_HARDENED || steel->kind == TS_DIN_NITRIDED)
        return 1.0;
    if (part == TS_DIN_T)
        return hollow ? 1.0 : 1.2;
    if (part == TS_DIN_ZD)
        return round ? constraint : 1.0;
    return (hollow ? 1.1 : 1.2) * (round ? constraint : 1.0);
}

#define FK_TEXT(P) "K_1S*gain_" P "*sigma_S"
static const ts_formula FK_formulas[] = {
    {.symbol  = "sigma_FKzd",
     .meaning = "yield of the part, pull",
     .unit    = "Pa",
     .text    = FK_TEXT("zd"),
     .source  = DIN_743("1:2012, 4.3, gain K_2F gamma_F")},
    {.symbol  = "sigma_FKb",
     .meaning = "yield of the part, bending",
     .unit    = "Pa",
     .text    = FK_TEXT("b"),
     .source  = DIN_743("1:2012, 4.3, gain K_2F gamma_F")},
    {.symbol  = "sigma_FKt",
     .meaning = "yield of the part, torsion",
     .unit    = "Pa",
     .text    = FK_TEXT("t") "/sqrt(3)",
     .source  = DIN_743("1:2012, 4.3, gain K_2F gamma_F")},
};

double ts_din_size_of_gradient(double d)
{
    return 1.0 - 0.2 * log(fmax(1.0, fmin(d, 0.15) / 0.0075)) / log(20.0);
}

static void strengthen(const ts_din_steel *steel, const ts_din_section *section, ts_din_part part,
                       ts_din_ability *ability, ts_workings *workings)
{
    const double d = section->d, K_V = section->K_V, K_1B = ability->K_1B, K_1S = ability->K_1S;
    const double beta = ability->beta[part] = beta_of(steel, section, part, ability, workings);
    double       K_2                        = 1.0;

    if (part != TS_DIN_ZD)
        K_2 = STEP(K_2_formulas[part], ts_din_size_of_gradient(d), {"d", d});
    else
        ts_workings_row(workings, "K_2zd", 1.0, "1", DIN_743("2:2012, 5.4"));
    const double K_F = ability->K_F[part], W = fatigue_of(steel, part);
    ts_workings_row(workings, OF_PART("sigma_W", part), W, "Pa",
                    DIN_743("3:2012, 0.4, 0.5 and 0.3 of sigma_B where no other is told"));
    const double K =
        STEP(K_formulas[part], (beta / K_2 + 1.0 / K_F - 1.0) / K_V, {OF_PART("beta_", part), beta},
             {OF_PART("K_2", part), K_2}, {OF_PART("K_F", part), K_F}, {"K_V", K_V});

    ability->K_2[part]      = K_2;
    ability->K[part]        = K;
    ability->sigma_WK[part] = STEP(WK_formulas[part], W * K_1B / K, {OF_PART("sigma_W", part), W},
                                   {"K_1B", K_1B}, {OF_PART("K_", part), K});
    const double gain = yield_gain(steel, section, part, ability), sigma_S = steel->sigma_S;
    ts_workings_row(workings, OF_PART("gain_", part), gain, "1", DIN_743("1:2012, 4.3"));
    const double FK      = K_1S * gain * sigma_S;
    const double sheared = part == TS_DIN_T ? sqrt(3.0) : 1.0;

    ability->sigma_FK[part] = STEP(FK_formulas[part], FK / sheared, {"K_1S", K_1S},
                                   {OF_PART("gain_", part), gain}, {"sigma_S", sigma_S});
}

/* ---- judging --------------------------------------------------------------------------------- */

const char *ts_din_fault_says(ts_din_fault fault)
{
    static const char *const says[] = {
        [TS_DIN_FINE]        = "fine",
        [TS_DIN_BAD_STEEL]   = "the steel needs sigma_B >= sigma_S > 0 and d_B > 0",
        [TS_DIN_BAD_SECTION] = "the section needs d > d_i >= 0, d up to 500 mm, R_z from 0 to "
                               "400 um and K_V from 1 to 2",
        [TS_DIN_BAD_NOTCH]   = "the notch needs D > d and r > 0, an undercut also D > D_1 > d, a "
                               "given notch beta of at least 1",
    };

    return says[fault];
}

static bool notch_fits(const ts_din_section *section)
{
    const double D = section->D, D_1 = section->D_1, d = section->d, r = section->r;

    switch (section->notch) {
    case TS_DIN_SHOULDER:
    case TS_DIN_GROOVE:
        return D > d && r > 0.0 && r < 10.0;
    case TS_DIN_UNDERCUT:
        return D > D_1 && D_1 > d && r > 0.0 && r < 10.0;
    case TS_DIN_GIVEN:
        return section->beta[0] >= 1.0 && section->beta[1] >= 1.0 && section->beta[2] >= 1.0 &&
               section->beta[0] + section->beta[1] + section->beta[2] < 100.0;
    default:
        return true;
    }
}

static ts_din_fault judge(const ts_din_steel *steel, const ts_din_section *section)
{
    if (!(steel->sigma_S > 0.0 && steel->sigma_B >= steel->sigma_S && steel->sigma_B < 1e10 &&
          steel->d_B > 0.0 && steel->d_B < 1.0))
        return TS_DIN_BAD_STEEL;
    if (!(section->d > section->d_i && section->d_i >= 0.0 && section->d <= 0.5 &&
          section->R_z >= 0.0 && section->R_z <= 400e-6 && section->K_V >= 1.0 &&
          section->K_V <= 2.0))
        return TS_DIN_BAD_SECTION;
    return notch_fits(section) ? TS_DIN_FINE : TS_DIN_BAD_NOTCH;
}

static const ts_formula BK_formula = {
    .symbol  = "sigma_BK",
    .meaning = "tensile strength of the part",
    .unit    = "Pa",
    .text    = "K_1B*sigma_B",
    .source  = DIN_743("2:2012, 5.1"),
};

ts_din_fault ts_din_prepare(const ts_din_steel *steel, const ts_din_section *section,
                            ts_din_ability *ability, ts_workings *workings)
{
    const ts_din_fault fault = judge(steel, section);
    double             d_eff = section->d_eff;

    if (fault != TS_DIN_FINE)
        return fault;
    if (isnan(d_eff))
        d_eff = section->D > section->d ? section->D : section->d;
    ts_workings_assumed(workings, "d_eff", d_eff, "m",
                        "the larger diameter at the section, where no other is told");
    const double K_1B    = size_factor(&K_1B_formula, law_of_strength(steel), d_eff, workings);
    const double sigma_B = steel->sigma_B;

    ability->K_1B     = K_1B;
    ability->K_1S     = size_factor(&K_1S_formula, law_of_yield(steel), d_eff, workings);
    ability->sigma_BK = TS_STEP(workings, BK_formula, K_1B * sigma_B, K_1B, sigma_B);
    roughen(section, ability, workings);
    for (int part = 0; part < TS_DIN_PARTS; part++)
        strengthen(steel, section, (ts_din_part)part, ability, workings);
    return TS_DIN_FINE;
}
