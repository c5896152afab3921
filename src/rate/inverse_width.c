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

static double limit_of(const ts_rated_inverse *inverse, const ts_measure *given, const char *symbol,
                       double otherwise, const char *why)
{
    const double b = ts_inverse_wanted(inverse, given, symbol, "m", NAN);

    if (!isnan(b))
        return b;
    ts_workings_assumed(inverse->desk->workings, symbol, otherwise, "m", why);
    return otherwise;
}

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

static void say_too_wide(ts_rated_inverse *inverse, const ts_width_search *search,
                         const ts_width_found *found)
{
    ts_rate_desk *desk    = inverse->desk;
    ts_finding   *finding = ts_rate_judge(desk, false, "rate-no-width", TS_REFUSE);

    ts_rate_limit(finding, "reserve", found->reserve, 0.0, TS_KIND_NUMBER);
    ts_rate_says(desk, finding,
                 "no common face width from %s to %s has the safeties wanted; at the greatest "
                 "%s decides, and %s of it is missing",
                 ts_rate_shown(desk, search->least, TS_KIND_LENGTH),
                 ts_rate_shown(desk, search->most, TS_KIND_LENGTH),
                 ts_inverse_place_says(found->where),
                 ts_rate_shown(desk, -found->reserve, TS_KIND_NUMBER));
    ts_rate_remedy(desk, finding,
                   "choose a larger module, a stronger steel or less misalignment, or lower the "
                   "load");
}

static void ask_width(ts_rated_inverse *inverse)
{
    ts_rate_desk              *desk  = inverse->desk;
    const ts_rate_inverse     *given = inverse->given;
    const ts_cylindrical_pair *pair  = &inverse->rated->pair;
    ts_iso6336_case            one   = inverse->one;
    ts_width_found             found;
    ts_width_search            search = {
                   .pair   = inverse->rated->in,
                   .mesh   = inverse->teeth.mesh,
                   .S_Hmin = one.load.S_Hmin,
                   .S_Fmin = one.load.S_Fmin,
                   .least  = limit_of(inverse, &given->b_low, "b_low", pair->in.m_n,
                                      "one module; common practice, no source"),
                   .most   = limit_of(inverse, &given->b_high, "b_high", 2.0 * pair->d_1,
                                      "twice the reference diameter of gear 1; common practice, no source"),
    };

    switch (ts_width_for_safety(&search, &one, 1, &found, NULL)) {
    case TS_WIDTH_FINE:
        note_width(inverse, &search, &found, false);
        break;
    case TS_WIDTH_AT_LEAST:
        note_width(inverse, &search, &found, true);
        break;
    case TS_WIDTH_TOO_WIDE:
        say_too_wide(inverse, &search, &found);
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
