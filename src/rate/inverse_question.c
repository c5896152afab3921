/* rate/inverse_question.c: what does a question of `inverse` want, and is its answer true? */
#include "rate/inverse_question.h"

#define DERIVED "derived: common mechanics"

static const double pi = 3.14159265358979323846;

/* ---- what is wanted ----------------------------------------------------------------------------
 */

static const ts_formula f_1_formula = {
    "f_1",
    "load cycles of a tooth of gear 1 in a second, one a turn and "
    "mate",
    "1/s", "omega_1/(2*pi)*q_1", DERIVED};
static const ts_formula f_2_formula = {
    "f_2",
    "load cycles of a tooth of gear 2 in a second, one a turn and "
    "mate",
    "1/s", "f_1/q_1*q_2/abs(u)", DERIVED};
static const ts_formula f_2_of_cycles_formula = {
    "f_2", "load cycles of a tooth of gear 2 in a second, in the ratio of those given", "1/s",
    "f_1*N_L2/N_L1", DERIVED};
static const ts_formula N_L_formulas[2] = {
    {"N_L1", "load cycles of a tooth of gear 1", "1", "L_h*f_1", DERIVED},
    {"N_L2", "load cycles of a tooth of gear 2", "1", "L_h*f_2", DERIVED},
};

/* Where the file gives the cycles of both gears, a tooth may meet more than one mate a turn. */
static void take_frequencies(ts_rated_inverse *inverse)
{
    ts_workings        *workings = inverse->desk->workings;
    const ts_rate_gear *gear     = inverse->rated->given->gear;
    const double        omega_1 = inverse->rated->load.omega_1, u = inverse->rated->pair.u;
    const double        N_L1 = inverse->rated->load.N_L[0], N_L2 = inverse->rated->load.N_L[1];
    const bool          both = gear[0].N_L.standing == TS_GIVEN && gear[1].N_L.standing == TS_GIVEN;

    const double q_1 = inverse->rated->load.q[0], q_2 = inverse->rated->load.q[1];

    const double f_1 = TS_STEP(workings, f_1_formula, omega_1 / (2.0 * pi) * q_1, omega_1, q_1);
    inverse->f[0]    = f_1;
    inverse->f[1] =
        both ? TS_STEP(workings, f_2_of_cycles_formula, f_1 * N_L2 / N_L1, f_1, N_L2, N_L1)
             : TS_STEP(workings, f_2_formula, f_1 / q_1 * q_2 / fabs(u), f_1, q_1, q_2, u);
}

void ts_inverse_cycles(const ts_rated_inverse *inverse, double L_h, double N_L[2])
{
    for (int gear = 0; gear < 2; gear++) {
        const double   f        = inverse->f[gear];
        const ts_input inputs[] = {{"L_h", L_h}, {gear == 0 ? "f_1" : "f_2", f}};

        N_L[gear] = ts_step_list(inverse->desk->workings, &N_L_formulas[gear], L_h * f, inputs, 2);
    }
}

static void take_cycles(ts_rated_inverse *inverse)
{
    const ts_rated_load *load = &inverse->rated->load;
    ts_iso6336_load     *to   = &inverse->one.load;
    const double L_h = ts_inverse_wanted(inverse->desk, &inverse->given->L_h, "L_h", "s", NAN);

    to->N_L[0] = load->N_L[0];
    to->N_L[1] = load->N_L[1];
    if (!isnan(L_h) && inverse->f[0] > 0.0)
        ts_inverse_cycles(inverse, L_h, to->N_L);
    if (!(to->N_L[0] > 0.0) || !(to->N_L[1] > 0.0))
        ts_rate_lack(inverse->desk, "L_h");
}

bool ts_inverse_open(ts_rated_inverse *inverse, const ts_rated_section *section, unsigned needs)
{
    ts_rate_desk          *desk  = inverse->desk;
    const ts_rated_load   *load  = &inverse->rated->load;
    ts_iso6336_load       *to    = &inverse->one.load;
    const ts_rate_inverse *given = inverse->given;

    ts_rate_open_section(desk, section);
    ts_rate_pair_take_teeth(desk, inverse->rated, &inverse->teeth);
    inverse->one = (ts_iso6336_case){.load = inverse->teeth.load};
    to->T_1      = load->T_1;
    to->N_L[0] = to->N_L[1] = 1.0;
    if (isnan(load->omega_1))
        ts_rate_lack(desk, "n_1");
    if ((needs & TS_INVERSE_NEEDS_TORQUE) != 0 && isnan(load->T_1))
        ts_rate_lack(desk, "T_1");
    if (desk->failed)
        return false;
    inverse->f[0] = inverse->f[1] = 0.0;
    if (!isnan(load->omega_1))
        take_frequencies(inverse);
    if ((needs & TS_INVERSE_NEEDS_CYCLES) != 0)
        take_cycles(inverse);
    to->S_Hmin = ts_inverse_wanted(inverse->desk, &given->S_Hmin, "S_Hmin", "1", load->S_Hmin);
    to->S_Fmin = ts_inverse_wanted(inverse->desk, &given->S_Fmin, "S_Fmin", "1", load->S_Fmin);
    return !ts_rate_lacks(desk);
}

/* ---- the proof ---------------------------------------------------------------------------------
 */

bool ts_inverse_prove(ts_rated_inverse *inverse, const ts_cylindrical_pair *pair)
{
    ts_rate_desk *desk = inverse->desk;

    if (desk->failed)
        return false;
    ts_rate_pair_prepare(desk, pair, &inverse->teeth);
    const bool rated = ts_iso6336_rate(&inverse->teeth.prepared, &inverse->one.load,
                                       &inverse->one.rating, desk->workings);
    if (rated)
        ts_rate_pair_remarks(desk, inverse->rated,
                             inverse->teeth.prepared.remarks | inverse->one.rating.remarks);
    else
        ts_rate_cannot(desk, "ISO 6336", inverse->one.rating.missing);
    return rated;
}

static size_t place_index(ts_iso6336_place place)
{
    return 2 * (size_t)place.stress + (size_t)place.gear;
}

double ts_inverse_reserve(const ts_rated_inverse *inverse, ts_iso6336_place *where)
{
#define LEFT " - 1 of the rating at the answer, which is told in this section"
    static const char *const source[] = {"S_H1/S_Hmin" LEFT, "S_H2/S_Hmin" LEFT, "S_F1/S_Fmin" LEFT,
                                         "S_F2/S_Fmin" LEFT};
#undef LEFT
    *where = (ts_iso6336_place){0};
    const double reserve =
        ts_iso6336_reserve(&inverse->one.rating, &inverse->one.load, &where->stress, &where->gear);

    ts_workings_row(inverse->desk->workings, "reserve", reserve, "1", source[place_index(*where)]);
    return reserve;
}
