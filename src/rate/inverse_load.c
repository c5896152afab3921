/* rate/inverse_load.c: which load do the teeth of a pair bear with the safeties wanted? */
#include "rate/inverse_question.h"

#define DERIVED "derived: common mechanics"

static const char *const asked[] = {"load_factor", "T_1",  "P",    "F_t",  "N_L1",    "N_L2", "K_v",
                                    "S_H1",        "S_H2", "S_F1", "S_F2", "reserve", NULL};

static const ts_rated_section section = {
    .title     = "Allowable load",
    .standard  = "ISO 6336-1, -2, -3, method B, solved for the load",
    .condition = TS_RATED_ALLOWABLE_LOAD,
    .asked     = asked,
};

static const ts_formula factor_equation = {
    "load_factor", "factor on the torque that leaves no reserve", "1", "reserve",
    "derived: the least of S_H/S_Hmin and S_F/S_Fmin is 1, by ISO 6336-2 and -3"};
static const ts_formula T_1_formula = {
    "T_1", "torque of gear 1 that the teeth bear with the safeties wanted", "N.m",
    "load_factor*T_1from", DERIVED};
static const ts_formula f_sh_formula = {"f_sh", "deflection of the shafts under that torque", "m",
                                        "load_factor*f_shfrom",
                                        "derived: deflection goes with the load"};
static const ts_formula P_formula    = {"P", "power at that torque", "W", "T_1*omega_1", DERIVED};

#define ANY_TORQUE 1.0 /* N.m */

/* The torque from which the search begins. */
static double begin(ts_rated_inverse *inverse)
{
    ts_rate_desk *desk = inverse->desk;
    const double  T_1  = inverse->rated->load.T_1;

    if (T_1 > 0.0) {
        ts_rate_borrow(desk, "T_1from", T_1, "T_1");
        return T_1;
    }
    ts_workings_assumed(desk->workings, "T_1from", ANY_TORQUE, "N.m",
                        "the search begins there; what it finds does not depend on it");
    return ANY_TORQUE;
}

static void note_load(ts_rated_inverse *inverse, double load_factor, double T_1from)
{
    ts_rate_desk     *desk     = inverse->desk;
    ts_workings      *workings = desk->workings;
    ts_iso6336_load  *load     = &inverse->one.load;
    const double      f_shfrom = inverse->teeth.load.f_sh, omega_1 = load->omega_1;
    ts_iso6336_place  where;
    ts_iso6336_rating again;

    load->T_1  = load_factor * T_1from;
    load->f_sh = f_shfrom;
    if (load->face == TS_FACE_LOAD_PARTS)
        load->f_sh = load_factor * f_shfrom;
    (void)ts_iso6336_rate(&inverse->teeth.prepared, load, &again, NULL);
    inverse->one.rating = again;

    const double   reserve  = ts_inverse_reserve(inverse, &where);
    const ts_input inputs[] = {{"reserve", reserve}};
    ts_search_note(workings, &factor_equation, load_factor, reserve, inputs, 1);
    const double T_1 = TS_STEP(workings, T_1_formula, load->T_1, load_factor, T_1from);
    (void)TS_STEP(workings, P_formula, T_1 * omega_1, T_1, omega_1);
    if (load->face == TS_FACE_LOAD_PARTS) {
        ts_rate_borrow(desk, "f_shfrom", f_shfrom, "f_sh");
        (void)TS_STEP(workings, f_sh_formula, load->f_sh, load_factor, f_shfrom);
    }
    if (ts_inverse_prove(inverse, &inverse->rated->pair))
        ts_rate_fact(desk, "load", ts_inverse_place_says(where));
}

void ts_inverse_load(ts_rated_inverse *inverse)
{
    ts_rate_desk *desk = inverse->desk;

    if (ts_inverse_open(inverse, &section, TS_INVERSE_NEEDS_CYCLES) &&
        inverse->one.load.face == TS_FACE_LOAD_PARTS && inverse->one.load.f_sh > 0.0 &&
        isnan(inverse->rated->load.T_1))
        ts_rate_lack(desk, "T_1"); /* under which the shafts bend so much */
    if (!ts_rate_lacks(desk)) {
        const double    T_1from = begin(inverse);
        ts_iso6336_case one     = inverse->one;
        one.load.T_1            = T_1from;
        (void)ts_iso6336_prepare(&inverse->rated->pair, &inverse->teeth.mesh,
                                 &inverse->teeth.prepared, NULL);
        const double load_factor = ts_iso6336_load_factor(&inverse->teeth.prepared, &one, 1,
                                                          one.load.S_Hmin, one.load.S_Fmin, NULL);
        if (load_factor > 0.0)
            note_load(inverse, load_factor, T_1from);
        else
            ts_rate_cannot(desk, "the allowable load by ISO 6336", one.rating.missing);
    }
    (void)ts_rate_close_section(desk);
}
