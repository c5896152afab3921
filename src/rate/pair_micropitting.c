/* rate/pair_micropitting.c: is the oil film of a pair of a rate file thick enough? */
#include "rate/pair_oil.h"
#include "rating/micropitting/micropitting.h"

static const char *const asked[] = {"H_v",          "mu_mC",      "theta_M",    "G_M",      "h_Y",
                                    "lambda_GFmin", "lambda_GFT", "lambda_GFP", "S_lambda", NULL};

static const ts_rated_section section = {
    .title     = "Micropitting, an indication",
    .standard  = "ISO/TS 6336-22:2018, method B",
    .condition = TS_RATED_MICROPITTING,
    .asked     = asked,
    .advisory  = true,
};

/* ---- inputs ------------------------------------------------------------------------------------
 */

static ts_film_gear take_gear(ts_rate_desk *desk, const ts_rated_pair *rated,
                              const ts_rated_oil *oil, int gear)
{
    const ts_rated_steel *steel = &rated->steel[gear];

    return (ts_film_gear){.E   = steel->E,
                          .nu  = steel->nu,
                          .B_M = oil->B_M,
                          .Ra  = oil->Ra[gear],
                          .C_a = ts_rate_take(desk, gear == 0 ? "C_a1" : "C_a2"),
                          .W_W = ts_film_material_factor(steel->class, steel->hardness)};
}

static void take_mesh(ts_rate_desk *desk, const ts_rated_pair *rated, const ts_rated_oil *oil,
                      ts_micropitting_mesh *mesh)
{
    const double SKS = ts_rate_take(desk, "SKS");

    *mesh = (ts_micropitting_mesh){
        .gear       = {take_gear(desk, rated, oil, 0), take_gear(desk, rated, oil, 1)},
        .driver     = oil->driver,
        .grade      = ts_rate_coarser(rated),
        .X_S        = oil->X_S,
        .X_L        = oil->X_L,
        .oil        = oil->oil,
        .lambda_GFP = ts_rate_take(desk, "lambda_GFP"),
        .SKS        = isnan(SKS) ? 0 : (int)SKS,
        .theta_test = isnan(SKS) ? 363.15 : ts_rate_take(desk, "theta_test"),
    };
}

static ts_micropitting_load load_of(const ts_rated_pair *rated, const ts_rated_oil *oil,
                                    double K_gamma)
{
    const ts_iso6336_rating *r = &rated->iso6336;

    return (ts_micropitting_load){.T_1           = rated->load.T_1,
                                  .omega_1       = rated->load.omega_1,
                                  .K_A           = rated->load.K_A,
                                  .K_gamma       = K_gamma,
                                  .K_v           = r->K_v,
                                  .K_Hbeta       = r->K_Hbeta,
                                  .K_Halpha      = r->K_Halpha,
                                  .cp            = r->cp,
                                  .c_gamma_alpha = r->c_gamma_alpha,
                                  .theta_oil     = oil->theta_oil,
                                  .theta_M       = NAN};
}

/* ---- findings ----------------------------------------------------------------------------------
 */

static void say_remarks(ts_rate_desk *desk, unsigned remarks)
{
    static const char *const names[TS_MICROPITTING_REMARKS] = {
        "micropitting-ratio", "micropitting-oil", "micropitting-limit", "micropitting-rest"};

    for (int i = 0; i < TS_MICROPITTING_REMARKS; i++) {
        const ts_micropitting_remark remark = (ts_micropitting_remark)(1 << i);
        if ((remarks & (unsigned)remark) != 0)
            ts_rate_remark(desk, names[i], ts_micropitting_remark_says(remark),
                           ts_micropitting_remark_clause(remark), TS_NOTE);
    }
}

/* It never decides by itself. */
static void judge_film(ts_rate_desk *desk, const ts_micropitting *rating)
{
    static const ts_safety_words words = {"rate-micropitting", "S_lambda", "the flanks",
                                          "micropitting"};

    if (!isnan(rating->S_lambda))
        ts_rate_safety(desk, &words, rating->S_lambda, 1.0, TS_WARN);
}

void ts_rate_pair_micropitting(ts_rate_desk *desk, const ts_rated_pair *rated,
                               const ts_rated_oil *oil)
{
    ts_micropitting_mesh     mesh;
    ts_micropitting_prepared prepared;
    ts_micropitting          rating;

    ts_rate_open_section(desk, &section);
    ts_rate_need_oil(desk, rated, oil);
    if (!ts_rate_lacks(desk) && rated->by_iso6336 && oil->has_law) {
        take_mesh(desk, rated, oil, &mesh);
        ts_rate_lend_factors(desk, rated);
        const ts_micropitting_load load = load_of(rated, oil, ts_rate_take(desk, "K_gamma"));
        (void)ts_micropitting_prepare(&rated->pair, &mesh, &prepared, desk->workings);
        if (ts_micropitting_rate(&prepared, &load, &rating, desk->workings)) {
            judge_film(desk, &rating);
            say_remarks(desk, prepared.remarks | rating.remarks);
            ts_rate_fact(desk, "thinnest", rating.where);
        } else {
            ts_rate_cannot(desk, "micropitting", rating.missing);
        }
    }
    (void)ts_rate_close_section(desk);
}
