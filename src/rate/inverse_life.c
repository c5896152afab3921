/* rate/inverse_life.c: how long do the teeth of a pair bear their load with the safeties wanted? */
#include "rate/inverse_question.h"
#include "rating/iso6336/life_limit.h"

static const char *const asked[] = {"N_LH1", "N_LH2", "N_LF1", "N_LF2", "L_hH1", "L_hH2",   "L_hF1",
                                    "L_hF2", "L_h",   "N_L1",  "N_L2",  "S_H1",  "S_H2",    "S_F1",
                                    "S_F2",  "Z_NT1", "Z_NT2", "Y_NT1", "Y_NT2", "reserve", NULL};

static const ts_rated_section section = {
    .title     = "Life under this load",
    .standard  = "ISO 6336-2, -3, life factors solved for the cycles",
    .condition = TS_RATED_LIFE,
    .asked     = asked,
};

#define TIME(symbol, what, text)                                                                   \
    {                                                                                              \
        symbol, "life of " what, "s", text, "derived: cycles by those of a second"                 \
    }
static const ts_formula time_formulas[4] = {
    TIME("L_hH1", "the flanks of gear 1", "N_LH1/f_1"),
    TIME("L_hH2", "the flanks of gear 2", "N_LH2/f_2"),
    TIME("L_hF1", "the roots of gear 1", "N_LF1/f_1"),
    TIME("L_hF2", "the roots of gear 2", "N_LF2/f_2"),
};
static const char *const cycle_names[4] = {"N_LH1", "N_LH2", "N_LF1", "N_LF2"};

static const ts_formula least_formula = {"L_h", "life of the pair, the least of them", "s",
                                         "min(L_hH1, L_hH2, L_hF1, L_hF2)",
                                         "derived: the pair lasts as long as its weakest place"};

#define PLACES 4

static ts_iso6336_place place_of(int i)
{
    return (ts_iso6336_place){.gear = i % 2, .stress = i < 2 ? TS_RATED_CONTACT : TS_RATED_BENDING};
}

/* Cycles of each place, noted or not. */
static void limit_cycles(const ts_rated_inverse *inverse, double N[PLACES], ts_workings *workings)
{
    const ts_iso6336_prepared *p = &inverse->teeth.prepared;

    for (int i = 0; i < PLACES; i++) {
        const ts_iso6336_place        place   = place_of(i);
        const ts_iso6336_gear_rating *out     = &inverse->one.rating.gear[place.gear];
        const bool                    contact = place.stress == TS_RATED_CONTACT;
        const ts_life_limit           limit   = {
                        .curve  = contact ? &out->contact : &out->bending,
                        .lines  = contact ? &p->gear[place.gear].life_H : &p->gear[place.gear].life_F,
                        .stress = place.stress,
                        .gear   = place.gear,
                        .sigma  = contact ? out->sigma_H : out->sigma_F,
                        .S_min  = contact ? inverse->one.load.S_Hmin : inverse->one.load.S_Fmin,
        };

        N[i] = ts_life_limit_cycles(&limit, workings);
    }
}

/* The place that ends the life, and when, s. */
static double least_of(const ts_rated_inverse *inverse, const double N[PLACES], int *worst)
{
    double least = INFINITY;

    *worst = 0;
    for (int i = 0; i < PLACES; i++) {
        const double time = N[i] / inverse->f[i % 2];

        if (time < least) {
            least  = time;
            *worst = i;
        }
    }
    return least;
}

static void note_times(const ts_rated_inverse *inverse, const double N[PLACES])
{
    ts_workings *workings = inverse->desk->workings;
    double       L_h[PLACES];

    for (int i = 0; i < PLACES; i++) {
        const double   f        = inverse->f[i % 2];
        const ts_input inputs[] = {{cycle_names[i], N[i]}, {i % 2 == 0 ? "f_1" : "f_2", f}};

        L_h[i] = ts_step_list(workings, &time_formulas[i], N[i] / f, inputs, 2);
    }
    const double L_hH1 = L_h[0], L_hH2 = L_h[1], L_hF1 = L_h[2], L_hF2 = L_h[3];
    (void)TS_STEP(workings, least_formula, fmin(fmin(L_hH1, L_hH2), fmin(L_hF1, L_hF2)), L_hH1,
                  L_hH2, L_hF1, L_hF2);
}

static void say_fact(const ts_rated_inverse *inverse, double least, int worst)
{
    static const char *const none[PLACES] = {
        "none: the flanks of gear 1 do not bear one cycle with the safety wanted (S_H1)",
        "none: the flanks of gear 2 do not bear one cycle with the safety wanted (S_H2)",
        "none: the roots of gear 1 do not bear one cycle with the safety wanted (S_F1)",
        "none: the roots of gear 2 do not bear one cycle with the safety wanted (S_F2)"};

    if (isinf(least))
        ts_rate_fact(inverse->desk, "life", "endless, since every place is below its endurance");
    else if (!(least > 0.0))
        ts_rate_fact(inverse->desk, "life", none[worst]);
    else
        ts_rate_fact(inverse->desk, "life", ts_inverse_place_says(place_of(worst)));
}

/* Where no time is found the proof is that of the last node, or of one cycle. */
static void note_life(ts_rated_inverse *inverse)
{
    ts_rate_desk    *desk = inverse->desk;
    ts_iso6336_load *load = &inverse->one.load;
    double           N[PLACES];
    int              worst = 0;
    ts_iso6336_place where;

    limit_cycles(inverse, N, NULL);
    const double least = least_of(inverse, N, &worst);
    for (int gear = 0; gear < 2; gear++)
        load->N_L[gear] = isinf(least) ? TS_LIFE_LONG : fmax(least * inverse->f[gear], 1.0);
    if (isinf(least) || !(least > 0.0)) {
        const char *why = isinf(least) ? "the last node of the life factors, for there is no end"
                                       : "one cycle, for there is no life";
        ts_workings_assumed(desk->workings, "N_L1", load->N_L[0], "1", why);
        ts_workings_assumed(desk->workings, "N_L2", load->N_L[1], "1", why);
    } else {
        const double L_h = least;

        ts_workings_row(desk->workings, "L_h", L_h, "s",
                        "that of the place that ends it, found first; see L_h of this section");
        ts_inverse_cycles(inverse, L_h, load->N_L);
    }
    if (!ts_inverse_prove(inverse, &inverse->rated->pair))
        return;
    limit_cycles(inverse, N, desk->workings);
    note_times(inverse, N);
    (void)ts_inverse_reserve(inverse, &where);
    say_fact(inverse, least, worst);
}

void ts_inverse_life(ts_rated_inverse *inverse)
{
    ts_rate_desk *desk = inverse->desk;

    if (ts_inverse_open(inverse, &section, TS_INVERSE_NEEDS_TORQUE)) {
        ts_iso6336_case *one = &inverse->one;

        (void)ts_iso6336_prepare(&inverse->rated->pair, &inverse->teeth.mesh,
                                 &inverse->teeth.prepared, NULL);
        if (!ts_iso6336_rate(&inverse->teeth.prepared, &one->load, &one->rating, NULL))
            ts_rate_cannot(desk, "the life by ISO 6336", one->rating.missing);
        else if (!(one->load.T_1 > 0.0))
            ts_rate_fact(desk, "life", "endless, since nothing loads the teeth");
        else if (!(inverse->f[0] > 0.0))
            ts_rate_cannot(desk, "the life by ISO 6336", "the pair does not turn");
        else
            note_life(inverse);
    }
    (void)ts_rate_close_section(desk);
}
