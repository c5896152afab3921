/* rate/pair_oil.c: how thick is the oil of a gear pair where it is needed, and how rough are the
 * flanks? */
#include "rate/pair_oil.h"

#include "rating/iso6336/flank_film.h"

#include <math.h>

static const char *const asked[] = {"theta_oil", "nu",   "rho_oil", "eta",
                                    "alpha_38",  "Ra_1", "Ra_2",    NULL};

static const ts_rated_section section = {
    .title     = "Oil and surfaces",
    .standard  = "ISO/TS 6336-22:2018",
    .condition = TS_EVERY_CONDITION,
    .asked     = asked,
};

/* ---- roughness ---------------------------------------------------------------------------------
 */

static const char *const Ra_keys[2] = {"Ra_1", "Ra_2"}, *const R_z_keys[2] = {"R_z1", "R_z2"};

static double roughness(ts_rate_desk *desk, int gear)
{
    const double given = ts_rate_take(desk, Ra_keys[gear]);
    const double R_z   = isnan(given) ? ts_rate_take(desk, R_z_keys[gear]) : (double)NAN;

    if (!isnan(given) || isnan(R_z) || desk->failed)
        return given;
    return ts_mean_roughness(R_z, gear, desk->workings);
}

/* ---- viscosity ---------------------------------------------------------------------------------
 */

static void solve_oil(ts_rate_desk *desk, ts_lubricant kind, ts_rated_oil *oil)
{
    const ts_subject own = {desk->element->node, TS_EVERY_CONDITION};
    ts_film_law      law;

    if (!ts_film_law_of_kind(&oil->oil, kind, &law, desk->workings))
        return;
    oil->oil = law.oil;
    ts_workings_borrow(desk->workings, "theta", oil->theta_oil, own, "theta_oil");
    oil->eta_oil = ts_film_viscosity(&law, oil->theta_oil, desk->workings);
    ts_workings_borrow(desk->workings, "eta_oil", oil->eta_oil, own, "eta");
    oil->has_law = true;
}

/* ---- the section -------------------------------------------------------------------------------
 */

bool ts_rate_has_oil(const ts_rate_desk *desk)
{
    return ts_rate_is_given(desk, "theta_oil");
}

/* Jets on the mesh take less heat away than a bath. */
static double supply_factor(ts_rate_desk *desk)
{
    static const double X_S[3] = {1.2, 1.0, 0.2};
    const int           way    = ts_rate_choose(desk, "lubrication");

    if (way < 0 || desk->failed)
        return NAN;
    ts_workings_row(desk->workings, "X_S", X_S[way], "1",
                    "ISO/TS 6336-20:2017, lubrication system factor (from memory)");
    return X_S[way];
}

void ts_rate_pair_oil(ts_rate_desk *desk, ts_rated_pair *rated, ts_rated_oil *oil)
{
    (void)rated;
    ts_rate_open_section(desk, &section);
    *oil            = (ts_rated_oil){.eta_oil = NAN, .X_L = NAN};
    oil->theta_oil  = ts_rate_take(desk, "theta_oil");
    oil->oil.nu_40  = ts_rate_take(desk, "nu_40");
    oil->oil.nu_100 = ts_rate_take(desk, "nu_100");
    oil->oil.rho_15 = ts_rate_take(desk, "rho_15");
    oil->X_S        = supply_factor(desk);
    oil->Ra[0]      = roughness(desk, 0);
    oil->Ra[1]      = roughness(desk, 1);
    oil->driver     = ts_rate_choose(desk, "driver") + 1;
    const int kind  = ts_rate_choose(desk, "oil");
    if (!desk->failed && kind >= 0) {
        oil->X_L = ts_lubricant_friction((ts_lubricant)kind);
        ts_workings_row(desk->workings, "X_L", oil->X_L, "1",
                        ts_lubricant_source((ts_lubricant)kind));
        solve_oil(desk, (ts_lubricant)kind, oil);
    }
    oil->B_M = 13795.0;
    if (!desk->failed) {
        const char *steel = "13795 for steel, ISO/TS 6336-20:2017 (from memory)";
        ts_workings_row(desk->workings, "B_M1", oil->B_M, "J/(m2.K.s^0.5)", steel);
        ts_workings_row(desk->workings, "B_M2", oil->B_M, "J/(m2.K.s^0.5)", steel);
    }
    (void)ts_rate_close_section(desk);
}

void ts_rate_need_oil(ts_rate_desk *desk, const ts_rated_pair *rated, const ts_rated_oil *oil)
{
    if (isnan(oil->oil.nu_40))
        ts_rate_lack(desk, "nu_40");
    if (isnan(oil->oil.nu_100))
        ts_rate_lack(desk, "nu_100");
    if (isnan(oil->oil.rho_15))
        ts_rate_lack(desk, "rho_15");
    for (int gear = 0; gear < 2; gear++) {
        if (isnan(oil->Ra[gear]))
            ts_rate_lack(desk, Ra_keys[gear]);
    }
    ts_rate_need_load(desk, &rated->load);
}

void ts_rate_lend_factors(ts_rate_desk *desk, const ts_rated_pair *rated)
{
    const ts_iso6336_rating *r         = &rated->iso6336;
    const ts_subject         iso       = {desk->element->node, TS_RATED_ISO_6336};
    const ts_input           factors[] = {{"K_v", r->K_v},
                                          {"K_Hbeta", r->K_Hbeta},
                                          {"K_Halpha", r->K_Halpha},
                                          {"cp", r->cp},
                                          {"c_gamma_alpha", r->c_gamma_alpha}};
    for (size_t i = 0; i < sizeof factors / sizeof factors[0] && !desk->failed; i++)
        ts_workings_borrow(desk->workings, factors[i].name, factors[i].value, iso, factors[i].name);
    /* The elements that these methods use have no gear 1 in their names. */
    ts_rate_borrow(desk, "T", rated->load.T_1, "T_1");
    ts_rate_borrow(desk, "omega", rated->load.omega_1, "omega_1");
    ts_rate_borrow(desk, "d", rated->pair.d_1, "d_1");
    ts_rate_borrow(desk, "Q", ts_rate_coarser(rated),
                   rated->make[1].accuracy > rated->make[0].accuracy ? "accuracy_2" : "accuracy_1");
    if (!desk->failed) {
        const double b = fmin(rated->in.b_1, rated->in.b_2);
        ts_workings_borrow(desk->workings, "b", b, iso, "b");
        ts_workings_borrow(desk->workings, "w_A", r->w_t, iso, "w_t");
        if (rated->pair.eps_beta > 0.0)
            ts_workings_borrow(desk->workings, "c_mesh", r->c_gamma_alpha, iso, "c_gamma_alpha");
        else
            ts_workings_borrow(desk->workings, "c_mesh", r->cp, iso, "cp");
    }
}
