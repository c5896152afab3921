/* rate/pair_agma2101.c: what does ANSI/AGMA 2101 say of a pair of a rate file, as a second opinion?
 */
#include "catalog/agma_allowable.h"
#include "rate/pair_parts.h"
#include "rating/agma2101/agma2101.h"

static const char *const asked[] = {
    "F_t",      "v",        "A_v",       "K_v",       "K_o",       "K_H",  "Z_I",
    "Z_E",      "Z_R",      "Y_Z",       "Y_theta",   "Z_N1",      "Z_N2", "Z_W1",
    "Z_W2",     "sigma_H1", "sigma_H2",  "sigma_HP1", "sigma_HP2", "S_H1", "S_H2",
    "Y_1",      "Y_2",      "K_f1",      "K_f2",      "Y_J1",      "Y_J2", "K_B1",
    "K_B2",     "K_s1",     "K_s2",      "Y_N1",      "Y_N2",      "Y_M1", "Y_M2",
    "sigma_F1", "sigma_F2", "sigma_FP1", "sigma_FP2", "S_F1",      "S_F2", NULL};

static const ts_rated_section section = {
    .title     = "Load capacity, second opinion",
    .standard  = "ANSI/AGMA 2101-D04, AGMA 908-B89",
    .condition = TS_RATED_AGMA_2101,
    .asked     = asked,
    .advisory  = true,
};

#define AGMA_2101 "ANSI/AGMA 2101-D04, clause "
#define RECALLED  " (formula and clause from memory)"

static const ts_formula F_t_formula = {
    .symbol  = "F_t",
    .meaning = "tangential force at the operating pitch circle",
    .unit    = "N",
    .text    = "2*T_1/d_w1",
    .source  = AGMA_2101 "7" RECALLED,
};
static const ts_formula v_formula = {
    .symbol  = "v",
    .meaning = "pitch-line speed",
    .unit    = "m/s",
    .text    = "omega_1*d_w1/2",
    .source  = AGMA_2101 "8" RECALLED,
};
static const ts_formula K_o_formula = {
    .symbol  = "K_o",
    .meaning = "overload factor, of the busiest load path",
    .unit    = "1",
    .text    = "K_A*K_gamma",
    .source  = "derived: the standard knows one load path; K_gamma raises the force of a mesh",
};
static const ts_formula d_T_formulas[2] = {
    {"d_T1", "tolerance diameter of gear 1", "m", "d_1 - 2*m_n", AGMA_2101 "8" RECALLED},
    {"d_T2", "tolerance diameter of gear 2", "m", "d_2 - 2*m_n", AGMA_2101 "8" RECALLED},
};
#define Q_TEXT(I) "min(1, max(0, -R_" I "/1.2))"
static const ts_formula q_formulas[2] = {
    {"q_1", "bending of the other flank over the bending of this one, gear 1", "1", Q_TEXT("1"),
     "derived: R = -1.2 q of ISO 6336-3, annex B, solved for q"},
    {"q_2", "bending of the other flank over the bending of this one, gear 2", "1", Q_TEXT("2"),
     "derived: R = -1.2 q of ISO 6336-3, annex B, solved for q"},
};

typedef struct gear_keys {
    const char *sigma_HP, *sigma_FP, *R, *N_L, *n_L, *s_R, *t_R, *material, *Ra, *f_pt;
} gear_keys;

static const gear_keys keys[2] = {
    {"sigma_HP1", "sigma_FP1", "R_1", "N_L1", "n_L1", "s_R1", "t_R1", "material 1", "Ra_1",
     "f_pt1"},
    {"sigma_HP2", "sigma_FP2", "R_2", "N_L2", "n_L2", "s_R2", "t_R2", "material 2", "Ra_2",
     "f_pt2"},
};

/* ---- inputs ------------------------------------------------------------------------------------
 */

static ts_agma_life_line line_of(ts_gear_class class)
{
    switch (class) {
    case TS_GEAR_NITRIDED:
    case TS_GEAR_THROUGH_NITRIDED:
    case TS_GEAR_NITROCARBURISED:
        return TS_AGMA_LINE_NITRIDED;
    case TS_GEAR_THROUGH_HARDENED:
    case TS_GEAR_NORMALISED:
        return TS_AGMA_LINE_BY_HARDNESS;
    default:
        return TS_AGMA_LINE_CASE_CARBURISED;
    }
}

static const char *const hardness_symbols[2][2] = {{"hardness_H1", "hardness_F1"},
                                                   {"hardness_H2", "hardness_F2"}};

/* The lines go by the hardness of the flank, of nitrided roots by that of the core. */
static void note_hardness(ts_rate_desk *desk, const ts_agma_steel *steel, int gear)
{
    const char *scale = "hardness in the scale of AGMA's lines (HRC, or HBW of through-hardened "
                        "steel and of cores); ASTM E140, table 1 (from memory), approximate";

    if (!isnan(steel->core))
        ts_workings_row(desk->workings, hardness_symbols[gear][1], steel->core, "1", scale);
    ts_workings_row(desk->workings, hardness_symbols[gear][1], steel->flank, "1", scale);
    ts_workings_row(desk->workings, hardness_symbols[gear][0], steel->flank, "1", scale);
}

/* The allowable numbers of the AGMA steel that the row stands for; what is given goes before. */
static void take_strengths(ts_rate_desk *desk, const ts_rated_steel *steel, int gear,
                           ts_agma2101_gear *out)
{
    const gear_keys  *key      = &keys[gear];
    const bool        sigma_HP = ts_rate_is_given(desk, key->sigma_HP);
    const bool        sigma_FP = ts_rate_is_given(desk, key->sigma_FP);
    ts_agma_steel     found;
    ts_agma_allowable allowable = {.sigma_HP = NAN, .sigma_FP = NAN};

    if (!(sigma_HP && sigma_FP) && steel->from_row && !desk->failed &&
        ts_agma_steel_of(&steel->row, steel->hardness, &found)) {
        note_hardness(desk, &found, gear);
        (void)ts_agma_allowable_of(&found, gear + 1, &allowable, desk->workings);
    }
    out->sigma_HP = sigma_HP ? ts_rate_take(desk, key->sigma_HP) : allowable.sigma_HP;
    out->sigma_FP = sigma_FP ? ts_rate_take(desk, key->sigma_FP) : allowable.sigma_FP;
    if (isnan(out->sigma_HP))
        ts_rate_lack(desk, steel->from_row ? key->sigma_HP : key->material);
    if (isnan(out->sigma_FP))
        ts_rate_lack(desk, steel->from_row ? key->sigma_FP : key->material);
}

static void take_gear(ts_rate_desk *desk, const ts_rated_pair *rated, int gear,
                      ts_agma2101_gear *out)
{
    const ts_rated_steel *steel = &rated->steel[gear];
    const double          rim   = ts_rate_take(desk, keys[gear].s_R);

    out->line     = line_of(steel->class);
    out->hardness = steel->HB;
    out->hard     = ts_gear_class_surface_hardened(steel->class);
    out->E        = steel->E;
    out->nu       = steel->nu;
    out->R_a      = ts_rate_take(desk, keys[gear].Ra);
    if (rim > 0.0) {
        out->t_R = rim;
        ts_rate_borrow(desk, keys[gear].t_R, rim, keys[gear].s_R);
    }
    take_strengths(desk, steel, gear, out);
}

/* A_v of the coarser gear, from the single pitch deviations. */
static double take_accuracy(ts_rate_desk *desk, const ts_rated_pair *rated)
{
    const double given = ts_rate_take(desk, "A_v"), m_n = rated->in.m_n;
    const double d_1 = rated->pair.d_1, d_2 = fabs(rated->pair.d_2);
    double       A_v = NAN;

    if (!isnan(given))
        return given;
    if (isnan(rated->make[0].f_pt) || isnan(rated->make[1].f_pt)) {
        ts_rate_lack(desk, isnan(rated->make[0].f_pt) ? "accuracy 1" : "accuracy 2");
        return NAN;
    }
    if (desk->failed)
        return NAN;
    const double first  = ts_agma_accuracy_of(rated->make[0].f_pt, m_n, d_1 - 2.0 * m_n, NULL);
    const double second = ts_agma_accuracy_of(rated->make[1].f_pt, m_n, d_2 - 2.0 * m_n, NULL);
    const int    gear   = second > first ? 1 : 0;
    const double d      = gear == 0 ? d_1 : rated->pair.d_2;
    const double d_T =
        ts_step_list(desk->workings, &d_T_formulas[gear], fabs(d) - 2.0 * m_n,
                     (const ts_input[]){{gear == 0 ? "d_1" : "d_2", fabs(d)}, {"m_n", m_n}}, 2);
    ts_workings_borrow(desk->workings, "d_T", d_T,
                       (ts_subject){desk->element->node, TS_RATED_AGMA_2101},
                       d_T_formulas[gear].symbol);
    ts_rate_borrow(desk, "f_pt", rated->make[gear].f_pt, keys[gear].f_pt);
    A_v = ts_agma_accuracy_of(rated->make[gear].f_pt, m_n, d_T, desk->workings);
    return A_v;
}

/* The face load factor is a matter of shafts and making, not of the standard. */
static double take_face_load(ts_rate_desk *desk, const ts_rated_pair *rated)
{
    const double given = ts_rate_take(desk, "K_Hbeta");

    if (!isnan(given)) {
        ts_rate_borrow(desk, "K_H", given, "K_Hbeta");
        return given;
    }
    if (!rated->by_iso6336) {
        ts_rate_lack(desk, "K_Hbeta");
        return NAN;
    }
    if (!desk->failed)
        ts_workings_borrow(desk->workings, "K_H", rated->iso6336.K_Hbeta,
                           (ts_subject){desk->element->node, TS_RATED_ISO_6336}, "K_Hbeta");
    return rated->iso6336.K_Hbeta;
}

static ts_agma2101_load take_load(ts_rate_desk *desk, const ts_rated_pair *rated)
{
    const double     T_1 = rated->load.T_1, omega_1 = rated->load.omega_1, d_w1 = rated->pair.d_w1;
    const double     K_A = rated->load.K_A, K_gamma = ts_rate_take(desk, "K_gamma");
    ts_agma2101_load load = {.K_H = NAN, .T_M = NAN};

    load.F_t = TS_STEP(desk->workings, F_t_formula, 2.0 * T_1 / d_w1, T_1, d_w1);
    load.v   = TS_STEP(desk->workings, v_formula, omega_1 * d_w1 / 2.0, omega_1, d_w1);
    load.K_o = TS_STEP(desk->workings, K_o_formula, K_A * K_gamma, K_A, K_gamma);
    for (int gear = 0; gear < 2; gear++) {
        const double R = ts_rate_take(desk, keys[gear].R);
        load.n_L[gear] = rated->load.N_L[gear];
        load.q[gear] =
            ts_step_list(desk->workings, &q_formulas[gear], fmin(1.0, fmax(0.0, -R / 1.2)),
                         (const ts_input[]){{keys[gear].R, R}}, 1);
        ts_rate_borrow(desk, keys[gear].n_L, load.n_L[gear], keys[gear].N_L);
    }
    return load;
}

/* ---- findings ----------------------------------------------------------------------------------
 */

static void say_remarks(ts_rate_desk *desk, uint32_t remarks)
{
    static const char *const names[TS_AGMA_REMARK_COUNT] = {"agma-contact-ratio",
                                                            "agma-helix",
                                                            "agma-interference",
                                                            "agma-pointed",
                                                            "agma-clearance",
                                                            "agma-backlash",
                                                            "agma-internal",
                                                            "agma-overlap",
                                                            "agma-fillet",
                                                            "agma-section",
                                                            "agma-face-diameter",
                                                            "agma-face",
                                                            "agma-overhung",
                                                            "agma-very-accurate",
                                                            "agma-coarse",
                                                            "agma-rim",
                                                            "agma-ratio",
                                                            "agma-wheel",
                                                            "agma-reliability",
                                                            "agma-speed",
                                                            "agma-few-cycles",
                                                            "agma-many-cycles",
                                                            "agma-hot"};

    for (int i = 0; i < (int)TS_AGMA_REMARK_COUNT; i++) {
        const ts_agma_remark remark = (ts_agma_remark)i;
        if ((remarks & TS_AGMA_REMARKED(remark)) != 0)
            ts_rate_remark(desk, names[i], ts_agma_remark_says(remark),
                           ts_agma_remark_clause(remark), TS_NOTE);
    }
}

/* The second opinion warns; the first one decides. */
static void judge_safeties(ts_rate_desk *desk, const ts_rated_pair *rated,
                           const ts_agma2101_rating *r)
{
    static const ts_safety_words words[2][2] = {
        {{"rate-contact-safety-1", "S_H1", "the flanks of gear 1", "pitting"},
         {"rate-contact-safety-2", "S_H2", "the flanks of gear 2", "pitting"}},
        {{"rate-bending-safety-1", "S_F1", "the teeth of gear 1", "breakage"},
         {"rate-bending-safety-2", "S_F2", "the teeth of gear 2", "breakage"}}};

    for (int gear = 0; gear < 2; gear++) {
        ts_rate_safety(desk, &words[0][gear], r->gear[gear].S_H, rated->load.S_Hmin, TS_WARN);
        if (rated->in.z_2 > 0 || gear == 0)
            ts_rate_safety(desk, &words[1][gear], r->gear[gear].S_F, rated->load.S_Fmin, TS_WARN);
    }
}

#define OPINIONS_APART 0.15

/* How far two standards are apart on the same question. */
static void compare(ts_rate_desk *desk, const char *rule, const char *symbol, double iso,
                    double agma)
{
    const bool  close   = !(fabs(agma / iso - 1.0) > OPINIONS_APART);
    ts_finding *finding = ts_rate_judge(desk, close, rule, TS_NOTE);

    ts_rate_limit(finding, symbol, agma, iso, TS_KIND_NUMBER);
    ts_rate_says(desk, finding, "%s is %s by AGMA and %s by ISO, more than 15 %% apart", symbol,
                 ts_rate_shown(desk, agma, TS_KIND_NUMBER),
                 ts_rate_shown(desk, iso, TS_KIND_NUMBER));
}

static void compare_opinions(ts_rate_desk *desk, const ts_rated_pair *rated,
                             const ts_agma2101_rating *r)
{
    const ts_iso6336_gear_rating *iso = rated->iso6336.gear;

    if (!rated->by_iso6336)
        return;
    compare(desk, "rate-opinions-contact-1", "S_H1", iso[0].S_H, r->gear[0].S_H);
    compare(desk, "rate-opinions-contact-2", "S_H2", iso[1].S_H, r->gear[1].S_H);
    compare(desk, "rate-opinions-bending-1", "S_F1", iso[0].S_F, r->gear[0].S_F);
    compare(desk, "rate-opinions-bending-2", "S_F2", iso[1].S_F, r->gear[1].S_F);
}

void ts_rate_pair_agma2101(ts_rate_desk *desk, ts_rated_pair *rated)
{
    ts_agma2101_input  in = ts_agma2101_input_of(&rated->pair);
    ts_agma2101_pair   pair;
    ts_agma2101_rating rating;

    ts_rate_open_section(desk, &section);
    take_gear(desk, rated, 0, &in.gear[0]);
    take_gear(desk, rated, 1, &in.gear[1]);
    in.accuracy = take_accuracy(desk, rated);
    in.K_H      = take_face_load(desk, rated);
    in.R        = ts_rate_take(desk, "R");
    ts_rate_need_load(desk, &rated->load);
    if (!ts_rate_lacks(desk)) {
        if (ts_agma2101_pair_prepare(&in, &pair, desk->workings)) {
            const ts_agma2101_load load = take_load(desk, rated);
            ts_agma2101_rate(&pair, &load, &rating, desk->workings);
            judge_safeties(desk, rated, &rating);
            compare_opinions(desk, rated, &rating);
            say_remarks(desk, rating.remarks);
        } else {
            ts_rate_cannot(desk, "ANSI/AGMA 2101", pair.missing);
        }
    }
    (void)ts_rate_close_section(desk);
}
