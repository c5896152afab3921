/* rate/pair_agma2101.c: what does ANSI/AGMA 2101 say of a pair of a rate file, as a second opinion?
 */
#include "catalog/agma_allowable.h"
#include "rate/pair_parts.h"
#include "rating/agma2101/agma2101_case.h"
#include "rating/opinion_gap.h"

static const char *const asked[] = {
    "F_t",      "v",        "A_v",       "K_v",       "K_o",       "K_H",  "Z_I",
    "Z_E",      "Z_R",      "Y_Z",       "Y_theta",   "Z_N1",      "Z_N2", "Z_W1",
    "Z_W2",     "sigma_H1", "sigma_H2",  "sigma_HP1", "sigma_HP2", "S_H1", "S_H2",
    "Y_1",      "Y_2",      "K_f1",      "K_f2",      "Y_J1",      "Y_J2", "K_B1",
    "K_B2",     "K_s1",     "K_s2",      "Y_N1",      "Y_N2",      "Y_M1", "Y_M2",
    "sigma_F1", "sigma_F2", "sigma_FP1", "sigma_FP2", "S_F1",      "S_F2", "r_H1",
    "r_H2",     "r_F1",     "r_F2",      NULL};

static const ts_rated_section section = {
    .title     = "Load capacity, second opinion",
    .standard  = "ANSI/AGMA 2101-D04, AGMA 908-B89",
    .condition = TS_RATED_AGMA_2101,
    .asked     = asked,
    .advisory  = true,
};

typedef struct gear_keys {
    const char *sigma_HP, *sigma_FP, *R, *N_L, *n_L, *s_R, *t_R, *material, *Ra, *f_pt, *E_sni,
        *E_sns;
} gear_keys;

static const gear_keys keys[2] = {
    {"sigma_HP1", "sigma_FP1", "R_1", "N_L1", "n_L1", "s_R1", "t_R1", "material 1", "Ra_1", "f_pt1",
     "E_sni1", "E_sns1"},
    {"sigma_HP2", "sigma_FP2", "R_2", "N_L2", "n_L2", "s_R2", "t_R2", "material 2", "Ra_2", "f_pt2",
     "E_sni2", "E_sns2"},
};

/* ---- inputs ------------------------------------------------------------------------------------
 */

/* The allowable numbers of the AGMA steel that the row stands for; what is given goes before. */
static void take_strengths(ts_rate_desk *desk, const ts_rated_steel *steel, int gear,
                           ts_agma2101_gear *out)
{
    const gear_keys  *key       = &keys[gear];
    const bool        sigma_HP  = ts_rate_is_given(desk, key->sigma_HP);
    const bool        sigma_FP  = ts_rate_is_given(desk, key->sigma_FP);
    ts_agma_allowable allowable = {.sigma_HP = NAN, .sigma_FP = NAN};

    if (!(sigma_HP && sigma_FP) && steel->from_row && !desk->failed)
        (void)ts_agma_allowable_of_row(&steel->row, steel->hardness, gear + 1, &allowable,
                                       desk->workings);
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

    out->line          = ts_agma_line_of(steel->class);
    out->hardness      = steel->HB;
    out->hard          = ts_gear_class_surface_hardened(steel->class);
    out->E             = steel->E;
    out->nu            = steel->nu;
    out->R_a           = ts_rate_take(desk, keys[gear].Ra);
    const double E_sni = ts_rate_allowance(desk, keys[gear].E_sni, keys[gear].E_sns);

    if (!desk->failed)
        out->delta_sn = ts_agma_thinning_of(E_sni, rated->pair.in.m_n, gear, desk->workings);
    if (rim > 0.0) {
        out->t_R = rim;
        ts_rate_borrow(desk, keys[gear].t_R, rim, keys[gear].s_R);
    }
    take_strengths(desk, steel, gear, out);
}

/* A_v of the coarser gear, from the single pitch deviations. */
static double take_accuracy(ts_rate_desk *desk, const ts_rated_pair *rated)
{
    const double given   = ts_rate_take(desk, "A_v");
    const double f_pt[2] = {rated->make[0].f_pt, rated->make[1].f_pt};

    if (!isnan(given))
        return given;
    if (isnan(f_pt[0]) || isnan(f_pt[1])) {
        ts_rate_lack(desk, isnan(f_pt[0]) ? "accuracy 1" : "accuracy 2");
        return NAN;
    }
    if (desk->failed)
        return NAN;
    const int        gear = ts_agma_coarser_gear(&rated->pair, f_pt);
    const ts_subject own  = {desk->element->node, TS_RATED_AGMA_2101};
    ts_rate_borrow(desk, "f_pt", f_pt[gear], keys[gear].f_pt);
    return ts_agma_accuracy_of_gear(&rated->pair, gear, f_pt[gear], own, desk->workings);
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
    const ts_rated_load   *load = &rated->load;
    const ts_agma2101_case one  = {
         .T_1     = load->T_1,
         .omega_1 = load->omega_1,
         .d_w1    = rated->pair.d_w1,
         .N_L     = {load->N_L[0], load->N_L[1]},
         .R       = {ts_rate_take(desk, keys[0].R), ts_rate_take(desk, keys[1].R)},
         .K_A     = load->K_A,
         .K_gamma = ts_rate_take(desk, "K_gamma")};

    for (int gear = 0; gear < 2; gear++)
        ts_rate_borrow(desk, keys[gear].n_L, load->N_L[gear], keys[gear].N_L);
    return ts_agma2101_load_of(&one, desk->workings);
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
    for (int gear = 0; gear < 2; gear++) {
        ts_rate_contact_safety(desk, gear, r->gear[gear].S_H, rated->load.S_Hmin, TS_WARN);
        if (rated->in.z_2 > 0 || gear == 0)
            ts_rate_bending_safety(desk, gear, r->gear[gear].S_F, rated->load.S_Fmin, TS_WARN);
    }
}

#define OPINIONS_APART 0.15

/* "the dynamic factor (K_v), which alone makes it 1.21 times as much", as `check` says it. */
static void say_apart(ts_rate_desk *desk, ts_finding *finding, const char *symbol,
                      const ts_opinion_gap *gap, ts_rated_stress stress)
{
    const ts_opinion_reason by     = ts_opinion_reason_of(gap);
    const char             *agma   = ts_rate_shown(desk, gap->second, TS_KIND_NUMBER);
    const char             *iso    = ts_rate_shown(desk, gap->first, TS_KIND_NUMBER);
    const char             *first  = ts_opinion_factor_says(by.first, stress);
    const char             *factor = ts_rate_shown(desk, gap->factor[by.first], TS_KIND_NUMBER);

    if (by.second == TS_FACTORS)
        ts_rate_says(desk, finding,
                     "%s is %s by AGMA and %s by ISO, more than 15 %% apart, most of it by %s, "
                     "which alone makes it %s times as much",
                     symbol, agma, iso, first, factor);
    else
        ts_rate_says(desk, finding,
                     "%s is %s by AGMA and %s by ISO, more than 15 %% apart, most of it by %s, "
                     "which alone makes it %s times as much, and %s, %s times",
                     symbol, agma, iso, first, factor, ts_opinion_factor_says(by.second, stress),
                     ts_rate_shown(desk, gap->factor[by.second], TS_KIND_NUMBER));
    ts_rate_remedy(desk, finding, "look into the factor that is named before you trust either");
}

typedef struct compared {
    const char     *rule, *symbol;
    ts_rated_stress stress;
    int             gear;
} compared;

/* How far the two standards are apart on the same question, and by which factor. */
static void compare(ts_rate_desk *desk, const ts_two_opinions *two, const compared *what)
{
    ts_opinion_gap gap     = {.condition = desk->condition, .gear = what->gear};
    const bool     contact = what->stress == TS_RATED_CONTACT;

    const double second =
        contact ? two->agma->gear[what->gear].S_H : two->agma->gear[what->gear].S_F;
    const double first = contact ? two->iso->gear[what->gear].S_H : two->iso->gear[what->gear].S_F;
    /* Nothing to compare; why stands with the safety itself. */
    if (desk->failed || !isfinite(first) || !isfinite(second))
        return;
    ts_opinion_set_side_by_side(two, what->stress, &gap, desk->workings);
    const bool  close   = fabs(gap.ratio - 1.0) <= OPINIONS_APART;
    ts_finding *finding = ts_rate_judge(desk, close, what->rule, TS_NOTE);

    ts_rate_limit(finding, what->symbol, gap.second, gap.first, TS_KIND_NUMBER);
    if (finding != NULL)
        say_apart(desk, finding, what->symbol, &gap, what->stress);
}

static void compare_opinions(ts_rate_desk *desk, const ts_rated_pair *rated,
                             const ts_agma2101_pair *pair, const ts_agma2101_rating *r)
{
    static const compared all[] = {
        {"rate-opinions-contact-1", "S_H1", TS_RATED_CONTACT, 0},
        {"rate-opinions-contact-2", "S_H2", TS_RATED_CONTACT, 1},
        {"rate-opinions-bending-1", "S_F1", TS_RATED_BENDING, 0},
        {"rate-opinions-bending-2", "S_F2", TS_RATED_BENDING, 1},
    };
    const ts_two_opinions two = {
        &rated->iso6336_pair, &rated->iso6336, pair, r, {desk->element->node, TS_RATED_ISO_6336}};

    if (!rated->by_iso6336)
        return;
    for (size_t i = 0; i < sizeof all / sizeof all[0]; i++)
        compare(desk, &two, &all[i]);
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
            compare_opinions(desk, rated, &pair, &rating);
            say_remarks(desk, rating.remarks);
        } else {
            ts_rate_cannot(desk, "ANSI/AGMA 2101", pair.missing);
        }
    }
    (void)ts_rate_close_section(desk);
}
