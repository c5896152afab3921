/* rate/pair_scuffing.c: will the flanks of a pair of a rate file weld and tear? */
#include "rate/pair_oil.h"
#include "rating/scuffing/scuffing.h"

static const char *const asked[] = {"w_Bt",       "mu_m",         "theta_flmax", "theta_flm",
                                    "theta_M",    "theta_Bmax",   "theta_S",     "S_B",
                                    "mu_mC",      "theta_flaint", "theta_Mint",  "theta_int",
                                    "theta_intS", "S_intS",       "S_Sl",        NULL};

static const ts_rated_section section = {
    .title     = "Scuffing",
    .standard  = "ISO/TS 6336-20, -21:2017",
    .condition = TS_RATED_SCUFFING,
    .asked     = asked,
};

/* ---- inputs ------------------------------------------------------------------------------------
 */

static ts_scuffing_gear take_gear(ts_rate_desk *desk, const ts_rated_pair *rated,
                                  const ts_rated_oil *oil, int gear)
{
    const ts_rated_steel *steel     = &rated->steel[gear];
    const char           *key       = gear == 0 ? "structure 1" : "structure 2";
    ts_flank_structure    structure = ts_usual_structure(steel->class);

    if (ts_rate_is_given(desk, key))
        structure = (ts_flank_structure)ts_rate_choose(desk, key);
    const double X_W = ts_structure_factor(structure);
    if (!desk->failed)
        ts_workings_row(desk->workings, gear == 0 ? "X_W1" : "X_W2", X_W, "1",
                        "ISO/TS 6336-20 and -21:2017, structural factor (from memory)");
    return (ts_scuffing_gear){.body = {.E = steel->E, .nu = steel->nu, .B_M = oil->B_M},
                              .Ra   = oil->Ra[gear],
                              .C_a  = ts_rate_take(desk, gear == 0 ? "C_a1" : "C_a2"),
                              .X_W  = X_W};
}

static void take_mesh(ts_rate_desk *desk, const ts_rated_pair *rated, const ts_rated_oil *oil,
                      ts_scuffing_mesh *mesh)
{
    *mesh =
        (ts_scuffing_mesh){.gear = {take_gear(desk, rated, oil, 0), take_gear(desk, rated, oil, 1)},
                           .driver     = oil->driver,
                           .grade      = ts_rate_coarser(rated),
                           .mates      = ts_rate_take_whole(desk, "mates"),
                           .X_S        = oil->X_S,
                           .X_L        = oil->X_L,
                           .phi_E      = ts_rate_take(desk, "phi_E"),
                           .S_FZG      = ts_rate_take(desk, "S_FZG"),
                           .nu_40      = oil->oil.nu_40,
                           .theta_S    = ts_rate_take(desk, "theta_S"),
                           .theta_intS = ts_rate_take(desk, "theta_intS")};
    ts_rate_borrow(desk, "n_p", mesh->mates, "mates");
}

static ts_scuffing_load load_of(const ts_rated_pair *rated, const ts_rated_oil *oil, double K_gamma)
{
    const ts_iso6336_rating *r = &rated->iso6336;

    return (ts_scuffing_load){.T_1           = rated->load.T_1,
                              .omega_1       = rated->load.omega_1,
                              .K_A           = rated->load.K_A,
                              .K_gamma       = K_gamma,
                              .K_v           = r->K_v,
                              .K_Hbeta       = r->K_Hbeta,
                              .K_Halpha      = r->K_Halpha,
                              .cp            = r->cp,
                              .c_gamma_alpha = r->c_gamma_alpha,
                              .theta_oil     = oil->theta_oil,
                              .eta_oil       = oil->eta_oil,
                              .theta_M       = NAN};
}

/* What the sliding speeds call otherwise than the geometry does. */
static void lend_path(ts_rate_desk *desk, const ts_rated_pair *rated)
{
    ts_rate_borrow(desk, "g", rated->pair.g_f, "g_f");
    ts_rate_borrow(desk, "g", rated->pair.g_a, "g_a");
}

/* ---- findings ----------------------------------------------------------------------------------
 */

static void say_remarks(ts_rate_desk *desk, unsigned remarks)
{
    static const char *const names[TS_SCUFFING_REMARKS] = {
        "scuffing-ratio", "scuffing-overlap", "scuffing-pitch-point", "scuffing-relief",
        "scuffing-grade", "scuffing-speed",   "scuffing-load",        "scuffing-stage",
        "scuffing-limit", "scuffing-rest"};

    for (int i = 0; i < TS_SCUFFING_REMARKS; i++) {
        const ts_scuffing_remark remark = (ts_scuffing_remark)(1 << i);
        if ((remarks & (unsigned)remark) != 0)
            ts_rate_remark(desk, names[i], ts_scuffing_remark_says(remark),
                           ts_scuffing_remark_clause(remark), TS_NOTE);
    }
}

/* Below 1 the risk is high, above 2 low; between them it depends on how well all is known. */
static void judge_risk(ts_rate_desk *desk, const char *rule, const char *symbol, double S,
                       const char *standard)
{
    if (isnan(S)) /* nothing is known of the oil, and a remark says so */
        return;
    ts_finding *finding = ts_rate_judge(desk, S >= 2.0, rule, S < 1.0 ? TS_REFUSE : TS_WARN);
    if (finding == NULL)
        return;
    ts_rate_limit(finding, symbol, S, S < 1.0 ? 1.0 : 2.0, TS_KIND_NUMBER);
    finding->margin = S / finding->limit - 1.0;
    finding->source = standard;
    ts_rate_says(desk, finding,
                 S < 1.0 ? "the safety %s against scuffing is %s: the risk is high below 1"
                         : "the safety %s against scuffing is %s: between 1 and 2 the risk depends "
                           "on how well load, oil and surfaces are known",
                 symbol, ts_rate_shown(desk, S, TS_KIND_NUMBER));
    ts_rate_remedy(
        desk, finding,
        "use smoother flanks, more tip relief, cooler oil or one of a higher load stage");
}

void ts_rate_pair_scuffing(ts_rate_desk *desk, const ts_rated_pair *rated, const ts_rated_oil *oil)
{
    ts_scuffing_mesh     mesh;
    ts_scuffing_prepared prepared;
    ts_scuffing          rating;

    ts_rate_open_section(desk, &section);
    ts_rate_need_oil(desk, rated, oil);
    if (!ts_rate_lacks(desk) && (!rated->by_iso6336 || !oil->has_law)) {
        ts_rate_cannot(desk, "scuffing",
                       rated->by_iso6336
                           ? "the oil is not thinner at 100 than at 40 degrees Celsius"
                           : "its load factors come from ISO 6336, which lacks something");
    } else if (!ts_rate_lacks(desk)) {
        take_mesh(desk, rated, oil, &mesh);
        ts_rate_lend_factors(desk, rated);
        lend_path(desk, rated);
        const ts_scuffing_load load = load_of(rated, oil, ts_rate_take(desk, "K_gamma"));
        (void)ts_scuffing_prepare(&rated->pair, &mesh, &prepared, desk->workings);
        if (ts_scuffing_rate(&prepared, &load, &rating, desk->workings)) {
            judge_risk(desk, "rate-scuffing-flash", "S_B", rating.S_B,
                       "ISO/TS 6336-20:2017, safety factor (from memory)");
            judge_risk(desk, "rate-scuffing-integral", "S_intS", rating.S_intS,
                       "ISO/TS 6336-21:2017, safety factor (from memory)");
            say_remarks(desk, prepared.remarks | rating.remarks);
            ts_rate_fact(desk, "hottest", rating.hot_spot);
        } else {
            ts_rate_cannot(desk, "scuffing", rating.missing);
        }
    }
    (void)ts_rate_close_section(desk);
}
