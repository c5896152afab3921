/* rating/iso6336/single_contact.c: how much harder do lone flanks press than at the pitch point? */
#include "rating/iso6336/single_contact.h"

#include "rating/iso6336/gear_step.h"

#include <math.h>

static const double pi = 3.14159265358979323846;

double ts_profile_design_f_ZCa(ts_profile_design profile)
{
    static const double f_ZCa[] = {[TS_PROFILE_PLAIN]         = 1.2,
                                   [TS_PROFILE_BY_EXPERIENCE] = 1.07,
                                   [TS_PROFILE_BY_ANALYSIS]   = 1.0};

    return f_ZCa[profile];
}

#define M_TEXT(A, B)                                                                               \
    "tan(alpha_wt)/sqrt((sqrt((d_a" A "/d_b" A ")^2 - 1) - 2*pi/z_" A ")*(sqrt((d_a" B "/d_b" B    \
    ")^2 - 1) - (eps_alpha - 1)*2*pi/z_" B "))"

static const ts_formula M_1_formula = {
    .symbol  = "M_1",
    .meaning = "curvature at the pitch point over that at B, as a root",
    .unit    = "1",
    .text    = M_TEXT("1", "2"),
    .source  = ISO_6336_2 "6.3" RECALLED,
};
static const ts_formula M_2_formula = {
    .symbol  = "M_2",
    .meaning = "curvature at the pitch point over that at D, as a root",
    .unit    = "1",
    .text    = M_TEXT("2", "1"),
    .source  = ISO_6336_2 "6.3" RECALLED,
};

static double ratio_at_end(double alpha_wt, double along_own, double along_mate)
{
    return tan(alpha_wt) / sqrt(along_own * along_mate);
}

static void find_ratios(const ts_cylindrical_pair *pair, ts_single_contact *out,
                        ts_workings *workings)
{
    const double alpha_wt = pair->alpha_wt, eps_alpha = pair->eps_alpha;
    const double d_a1 = pair->d_a1, d_b1 = pair->d_b1, d_a2 = pair->d_a2, d_b2 = pair->d_b2;
    const double z_1 = pair->in.z_1, z_2 = pair->in.z_2;
    const double tip_1 = sqrt((d_a1 / d_b1) * (d_a1 / d_b1) - 1.0);
    const double tip_2 = sqrt((d_a2 / d_b2) * (d_a2 / d_b2) - 1.0);
    const double M_1 =
        ratio_at_end(alpha_wt, tip_1 - 2.0 * pi / z_1, tip_2 - (eps_alpha - 1.0) * 2.0 * pi / z_2);
    const double M_2 =
        ratio_at_end(alpha_wt, tip_2 - 2.0 * pi / z_2, tip_1 - (eps_alpha - 1.0) * 2.0 * pi / z_1);

    out->M_1 = isnan(M_1) ? M_1
                          : TS_STEP(workings, M_1_formula, M_1, alpha_wt, d_a1, d_b1, z_1, d_a2,
                                    d_b2, eps_alpha, z_2);
    out->M_2 = isnan(M_2) ? M_2
                          : TS_STEP(workings, M_2_formula, M_2, alpha_wt, d_a1, d_b1, z_1, d_a2,
                                    d_b2, eps_alpha, z_2);
}

#define Z_AT(name, sign, what, expression, origin)                                                 \
    static const ts_formula name##_formula = {.symbol  = (sign),                                   \
                                              .meaning = "single pair contact factor of " what,    \
                                              .unit    = "1",                                      \
                                              .text    = (expression),                             \
                                              .source  = origin RECALLED}
#define SPUR "ISO 6336-2:2019 (as in 2006), clause 6.3"
Z_AT(Z_B_spur, "Z_B", "gear 1", "max(1, M_1)", SPUR);
Z_AT(Z_D_spur, "Z_D", "gear 2", "max(1, M_2)", SPUR);
Z_AT(Z_B_2006, "Z_B", "gear 1", "max(1, M_1 - min(1, eps_beta)*(M_1 - 1))",
     "ISO 6336-2:2006, clause 6.3");
Z_AT(Z_D_2006, "Z_D", "gear 2", "max(1, M_2 - min(1, eps_beta)*(M_2 - 1))",
     "ISO 6336-2:2006, clause 6.3");
Z_AT(Z_B_2019, "Z_B", "gear 1", "max(1, M_1 - min(1, eps_beta)*(M_1 - sqrt(f_ZCa)))",
     "ISO 6336-2:2019, clause 6.3; f_ZCa under a root doubted");
Z_AT(Z_D_2019, "Z_D", "gear 2", "max(1, M_2 - min(1, eps_beta)*(M_2 - sqrt(f_ZCa)))",
     "ISO 6336-2:2019, clause 6.3; f_ZCa under a root doubted");

/* fmax would let a NaN become 1. */
static double at_least_1(double factor)
{
    return isnan(factor) ? factor : fmax(1.0, factor);
}

/* The wheel with inside teeth has Z_D = 1: its flanks hug the mate's where it is alone. */
static double hollow_flank(ts_workings *workings)
{
    ts_workings_assumed(workings, "Z_D", 1.0, "1",
                        "an internal gear has Z_D = 1, " ISO_6336_2 "6.3" RECALLED);
    return 1.0;
}

static bool spur_pair(const ts_cylindrical_pair *pair, ts_single_contact *out,
                      ts_workings *workings)
{
    const double M_1 = out->M_1, M_2 = out->M_2;

    out->Z_B = at_least_1(M_1);
    out->Z_D = at_least_1(M_2);
    if (pair->eps_beta > 0.0)
        return false;
    if (!isnan(M_1))
        (void)TS_STEP(workings, Z_B_spur_formula, out->Z_B, M_1);
    if (pair->in.z_2 < 0)
        out->Z_D = hollow_flank(workings);
    else if (!isnan(M_2))
        (void)TS_STEP(workings, Z_D_spur_formula, out->Z_D, M_2);
    return true;
}

ts_single_contact ts_single_contact_2006(const ts_cylindrical_pair *pair, double f_ZCa,
                                         ts_workings *workings)
{
    ts_single_contact out;
    (void)f_ZCa;

    find_ratios(pair, &out, workings);
    if (spur_pair(pair, &out, workings) || isnan(out.M_1) || isnan(out.M_2))
        return out;
    const double M_1 = out.M_1, M_2 = out.M_2, eps_beta = pair->eps_beta;
    const double share = fmin(1.0, eps_beta);
    out.Z_B =
        TS_STEP(workings, Z_B_2006_formula, fmax(1.0, M_1 - share * (M_1 - 1.0)), M_1, eps_beta);
    if (pair->in.z_2 < 0)
        out.Z_D = hollow_flank(workings);
    else
        out.Z_D = TS_STEP(workings, Z_D_2006_formula, fmax(1.0, M_2 - share * (M_2 - 1.0)), M_2,
                          eps_beta);
    return out;
}

ts_single_contact ts_single_contact_2019(const ts_cylindrical_pair *pair, double f_ZCa,
                                         ts_workings *workings)
{
    ts_single_contact out;

    find_ratios(pair, &out, workings);
    if (spur_pair(pair, &out, workings) || isnan(out.M_1) || isnan(out.M_2))
        return out;
    const double M_1 = out.M_1, M_2 = out.M_2, eps_beta = pair->eps_beta;
    const double share = fmin(1.0, eps_beta), ends = sqrt(f_ZCa);
    ts_workings_row(workings, "f_ZCa", f_ZCa, "1", "ISO 6336-2:2019, clause 6.3, table" RECALLED);
    out.Z_B = TS_STEP(workings, Z_B_2019_formula, fmax(1.0, M_1 - share * (M_1 - ends)), M_1,
                      eps_beta, f_ZCa);
    if (pair->in.z_2 < 0)
        out.Z_D = hollow_flank(workings);
    else
        out.Z_D = TS_STEP(workings, Z_D_2019_formula, fmax(1.0, M_2 - share * (M_2 - ends)), M_2,
                          eps_beta, f_ZCa);
    return out;
}
