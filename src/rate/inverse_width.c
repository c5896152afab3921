/* rate/inverse_width.c: how wide must the teeth of a pair be for the safeties wanted? */
#include "rate/inverse_question.h"
#include "rating/iso6336/width_search.h"

static const char *const asked[] = {"b_min",    "b_1",     "b_2",  "N_L1", "N_L2",
                                    "eps_beta", "K_Hbeta", "S_H1", "S_H2", "S_F1",
                                    "S_F2",     "reserve", NULL};

static const ts_rated_section section = {
    .title     = "Least width",
    .standard  = "ISO 6336-1, -2, -3, method B, solved for the width",
    .condition = TS_RATED_LEAST_WIDTH,
    .asked     = asked,
};

static const ts_formula width_equation = {
    "b_min", "least common face width with the safeties wanted", "m", "reserve",
    "derived: the least of S_H/S_Hmin and S_F/S_Fmin is 1, by ISO 6336-2 and -3"};
static const ts_formula low_formula = {
    "b_min", "least common face width that was tried; it is more than enough", "m", "b_low",
    "derived: the search begins there"};
#define WIDTH_TEXT(own, other) "b_min + max(" own " - " other ", 0)"
#define WIDER                  "derived: what one gear is wider than the other stays as it is"
static const ts_formula b_formulas[2] = {
    {"b_1", "face width of gear 1", "m", WIDTH_TEXT("b_1from", "b_2from"), WIDER},
    {"b_2", "face width of gear 2", "m", WIDTH_TEXT("b_2from", "b_1from"), WIDER},
};

static void note_width(ts_rated_inverse *inverse, const ts_width_search *search,
                       const ts_width_found *found, bool at_least)
{
    ts_rate_desk             *desk     = inverse->desk;
    ts_workings              *workings = desk->workings;
    ts_cylindrical_pair_input in       = search->pair;
    const double              b_1from = in.b_1, b_2from = in.b_2, b_min = found->b;
    ts_cylindrical_pair       pair;
    ts_iso6336_place          where;

    ts_rate_borrow(desk, "b_1from", b_1from, "b_1");
    ts_rate_borrow(desk, "b_2from", b_2from, "b_2");
    const double b_low = search->least, reserve = found->reserve;
    if (at_least) {
        (void)TS_STEP(workings, low_formula, b_low, b_low);
    } else {
        const ts_input inputs[] = {{"reserve", reserve}};

        ts_workings_row(workings, "reserve", reserve, "1", "that of the rating at this width");
        ts_search_note(workings, &width_equation, b_min, reserve, inputs, 1);
    }
    in.b_1 = ts_step_list(
        workings, &b_formulas[0], b_min + fmax(b_1from - b_2from, 0.0),
        (const ts_input[]){{"b_min", b_min}, {"b_1from", b_1from}, {"b_2from", b_2from}}, 3);
    in.b_2 = ts_step_list(
        workings, &b_formulas[1], b_min + fmax(b_2from - b_1from, 0.0),
        (const ts_input[]){{"b_min", b_min}, {"b_2from", b_2from}, {"b_1from", b_1from}}, 3);
    (void)ts_cylindrical_pair_solve(&in, &pair, workings);
    if (!ts_inverse_prove(inverse, &pair))
        return;
    (void)ts_inverse_reserve(inverse, &where);
    ts_rate_fact(desk, "width",
                 at_least ? "the least width that was tried is more than enough"
                          : ts_inverse_place_says(where));
}

static void ask_width(ts_rated_inverse *inverse)
{
    ts_rate_desk              *desk  = inverse->desk;
    const ts_rate_inverse     *given = inverse->given;
    const ts_cylindrical_pair *pair  = &inverse->rated->pair;
    ts_iso6336_case            one   = inverse->one;
    ts_width_found             found;
    const ts_width_limits      limits = ts_inverse_widths(desk, given, pair->in.m_n, pair->d_1);
    const ts_width_search      search = {
             .pair   = inverse->rated->in,
             .mesh   = inverse->teeth.mesh,
             .S_Hmin = one.load.S_Hmin,
             .S_Fmin = one.load.S_Fmin,
             .least  = limits.least,
             .most   = limits.most,
    };

    switch (ts_width_for_safety(&search, &one, 1, &found, NULL)) {
    case TS_WIDTH_FINE:
        note_width(inverse, &search, &found, false);
        break;
    case TS_WIDTH_AT_LEAST:
        note_width(inverse, &search, &found, true);
        break;
    case TS_WIDTH_TOO_WIDE:
        ts_inverse_no_width(desk, &limits, found.where, found.reserve);
        break;
    case TS_WIDTH_NO_RANGE:
        ts_rate_cannot(desk, "the least width by ISO 6336",
                       "the widths to be tried end before they begin; state b_low and b_high");
        break;
    case TS_WIDTH_NOT_RATED:
        ts_rate_cannot(desk, "the least width by ISO 6336",
                       one.load.T_1 > 0.0 ? one.rating.missing : "nothing loads the teeth");
        break;
    }
}

void ts_inverse_width(ts_rated_inverse *inverse)
{
    if (ts_inverse_open(inverse, &section, TS_INVERSE_NEEDS_TORQUE | TS_INVERSE_NEEDS_CYCLES))
        ask_width(inverse);
    (void)ts_rate_close_section(inverse->desk);
}
