/* rate/pair_geometry.c: how do two cylindrical gears of a rate file sit together? */
#include "rate/pair_oil.h"

#define ISO_21771 "ISO 21771:2007"

/* What a page shows: sizes, working mesh, tips and roots, contact. */
static const char *const asked[] = {
    "u",        "m_t",       "alpha_t",   "beta_b",    "a",         "a_w",     "alpha_wt",
    "y",        "sum_x",     "x_1",       "x_2",       "k_1",       "k_2",     "d_1",
    "d_2",      "d_b1",      "d_b2",      "d_w1",      "d_w2",      "d_a1",    "d_a2",
    "d_f1",     "d_f2",      "d_Ff1",     "d_Ff2",     "s_an1",     "s_an2",   "x_min1",
    "x_min2",   "c_1",       "c_2",       "j_wt",      "j_bn",      "g_alpha", "rho_A1",
    "rho_B1",   "rho_C1",    "rho_D1",    "rho_a1",    "eps_alpha", "zeta_A1", "zeta_E2",
    "eps_beta", "eps_gamma", "clear_Ff1", "clear_Ff2", NULL};

static const ts_rated_section section = {
    .title     = "Geometry",
    .standard  = ISO_21771,
    .condition = TS_EVERY_CONDITION,
    .asked     = asked,
};

/* ---- inputs ------------------------------------------------------------------------------------
 */

static void take_teeth(ts_rate_desk *desk, ts_cylindrical_pair_input *in)
{
    in->z_1     = ts_rate_take_whole(desk, "z_1");
    in->z_2     = ts_rate_take_whole(desk, "z_2");
    in->m_n     = ts_rate_take(desk, "m_n");
    in->alpha_n = ts_rate_take(desk, "alpha_n");
    in->beta    = ts_rate_take(desk, "beta");
    in->b_1     = ts_rate_take(desk, "b_1");
    in->b_2     = ts_rate_take_or(desk, "b_2", in->b_1, "as wide as gear 1, for b_2 is not given");
}

/* A fillet that was merely assumed gives way where a larger pressure angle leaves no room for it;
 * one that stands in the file does not. */
static void take_rack(ts_rate_desk *desk, const ts_rate_pair *given, ts_cylindrical_pair_input *in)
{
    const ts_basic_rack written = {given->h_aPs.value, given->h_fPs.value, given->rho_fPs.value};

    in->rack = written;
    if (!ts_rate_is_given(desk, "h_fPs") || !ts_rate_is_given(desk, "rho_fPs"))
        (void)ts_rate_choose(desk, "rack");
    (void)ts_rate_take(desk, "h_aPs");
    (void)ts_rate_take(desk, "h_fPs");
    if (!ts_rate_is_given(desk, "rho_fPs"))
        in->rack = ts_basic_rack_fitted(&written, in->alpha_n);
    if (in->rack.rho_fPs < written.rho_fPs)
        ts_rate_assume(desk, "rho_fPs", in->rack.rho_fPs, TS_KIND_NUMBER,
                       "the full root round, since the fillet of the `rack` does not fit between "
                       "the flanks at this pressure angle");
    else
        (void)ts_rate_take(desk, "rho_fPs");
}

static void take_shifts(ts_rate_desk *desk, ts_cylindrical_pair_input *in)
{
    const double sign = in->z_1 + in->z_2 < 0 ? -1.0 : 1.0;

    in->shift = (ts_shift_rule)ts_rate_choose(desk, "shift");
    if (ts_rate_is_given(desk, "a_w"))
        in->a_w = ts_rate_take_signed(desk, "a_w", sign);
    if (in->shift == TS_SHIFT_GIVEN || in->shift == TS_SHIFT_REST_2)
        in->x_1 = ts_rate_take(desk, "x_1");
    if (in->shift == TS_SHIFT_GIVEN || in->shift == TS_SHIFT_REST_1)
        in->x_2 = ts_rate_take(desk, "x_2");
}

static void take_tips(ts_rate_desk *desk, ts_cylindrical_pair_input *in)
{
    in->tip = (ts_tip_rule)ts_rate_choose(desk, "tip");
    if (in->tip == TS_TIP_DIAMETERS) {
        in->d_a1 = ts_rate_take(desk, "d_a1");
        in->d_a2 = ts_rate_take_signed(desk, "d_a2", in->z_2 < 0 ? -1.0 : 1.0);
    } else if (in->tip == TS_TIP_GIVEN) {
        in->k_1 = ts_rate_take(desk, "k_1");
        in->k_2 = ts_rate_take(desk, "k_2");
    }
}

bool ts_rate_pair_geometry(ts_rate_desk *desk, ts_rated_pair *rated)
{
    ts_rate_open_section(desk, &section);
    take_teeth(desk, &rated->in);
    take_rack(desk, rated->given, &rated->in);
    take_shifts(desk, &rated->in);
    take_tips(desk, &rated->in);
    if (desk->failed)
        return false;
    const ts_pair_fault fault = ts_cylindrical_pair_solve(&rated->in, &rated->pair, desk->workings);
    const bool          solved = fault == TS_PAIR_FINE || fault == TS_PAIR_POINTED;

    if (solved)
        ts_rate_pair_limits(desk, rated);
    else
        ts_rate_pair_fault(desk, rated, fault);
    (void)ts_rate_close_section(desk);
    return solved;
}

/* ---- the whole element -------------------------------------------------------------------------
 */

static const ts_formula T_1_formula = {
    .symbol  = "T_1",
    .meaning = "torque of gear 1",
    .unit    = "N.m",
    .text    = "F_t*d_1/2",
    .source  = "derived: force at the reference circle",
};

static bool has_life(const ts_rate_desk *desk)
{
    return ts_rate_is_given(desk, "L_h") || ts_rate_is_given(desk, "N_L1") ||
           ts_rate_is_given(desk, "N_L2");
}

static void rate_capacity(ts_rate_desk *desk, ts_rated_pair *rated)
{
    const ts_load_arm arm = {.force   = "F_t",
                             .d       = "d_1",
                             .d_value = rated->pair.d_1,
                             .u       = rated->pair.u,
                             .T_1     = &T_1_formula};
    ts_rated_oil      oil;

    if (rated->given->spectrum_count > 0) {
        ts_rate_pair_make(desk, rated);
        ts_rate_pair_spectrum(desk, rated);
        return;
    }
    const bool asks_back = rated->given->inverse.node != 0;
    const bool loaded    = ts_rate_is_loaded(desk, &arm);
    if (!loaded && !asks_back)
        return;
    ts_rate_load_section(desk, &arm, &rated->load);
    ts_rate_pair_make(desk, rated);
    /* Who asks for the life need not know one, and who asks for the load need not have one. */
    const bool capacity = loaded && !(asks_back && !has_life(desk));
    if (capacity) {
        ts_rate_pair_iso6336(desk, rated);
        ts_rate_pair_agma2101(desk, rated);
    }
    ts_rate_pair_inverse(desk, rated);
    if (!capacity || !ts_rate_has_oil(desk))
        return;
    ts_rate_pair_oil(desk, rated, &oil);
    ts_rate_pair_scuffing(desk, rated, &oil);
    ts_rate_pair_micropitting(desk, rated, &oil);
}

void ts_rate_pair_element(ts_rate_desk *desk, const ts_rate_pair *given)
{
    ts_rated_pair rated = {.given = given};

    ts_rate_open_element(desk, "gear pair", &ts_table_rate_pair, given);
    if (!desk->failed && ts_rate_pair_geometry(desk, &rated)) {
        ts_rate_pair_measures(desk, &rated);
        ts_rate_pair_backlash(desk, &rated);
        rate_capacity(desk, &rated);
    }
    ts_rate_close_element(desk);
}
