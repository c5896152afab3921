/* rating/iso10300/bevel_spectrum.c: what do all conditions together take of a bevel's life? */
#include "rating/iso10300/bevel_spectrum.h"

#include "base/assert.h"

#include <math.h>

bool ts_iso10300_rate_cases(const ts_iso10300_prepared *prepared, ts_iso10300_case *cases,
                            size_t count)
{
    bool all = true;

    for (size_t i = 0; i < count; i++)
        all = ts_iso10300_rate(prepared, &cases[i].load, &cases[i].rating, NULL) && all;
    return all;
}

/* ---- damage ---------------------------------------------------------------------------------- */

static const ts_formula U_formula = {
    .symbol  = "U",
    .meaning = "damage of the conditions together",
    .unit    = "1",
    .text    = "sum(n_case/N_case)",
    .source  = "Palmgren and Miner, as ISO 6336-6:2019 (from memory)",
};

/* The cycles that this case's stress, times S, may be borne. */
static double borne(const ts_iso10300_prepared *prepared, const ts_iso10300_case *of,
                    ts_iso10300_place place, double S)
{
    const ts_iso10300_gear_prepared *gear = &prepared->gear[place.gear];
    const ts_iso10300_gear_rating   *r    = &of->rating.gear[place.gear];

    if (place.stress == TS_BEVEL_CONTACT)
        return isinf(r->S_H) ? (double)INFINITY
                             : ts_bevel_life_cycles(&gear->life_H, r->Z_NT / r->S_H * S);
    return isinf(r->S_F) ? (double)INFINITY
                         : ts_bevel_life_cycles(&gear->life_F, r->Y_NT / r->S_F * S);
}

/* n/N of one case; 0 for one that loads the other flank or lasts for ever. */
static double wear_of(const ts_iso10300_prepared *prepared, const ts_iso10300_case *of,
                      ts_iso10300_place place, double S)
{
    if (of->flank != place.flank)
        return 0.0;
    return of->load.N_L[place.gear] / borne(prepared, of, place, S);
}

double ts_iso10300_damage(const ts_iso10300_prepared *prepared, const ts_iso10300_case *cases,
                          size_t count, ts_iso10300_place place, double S)
{
    double U = 0.0;

    TS_ASSERT(place.flank >= 0 && place.flank <= 1 && place.gear >= 0 && place.gear <= 1);
    if (!(S > 0.0))
        return NAN;
    for (size_t i = 0; i < count; i++)
        U += wear_of(prepared, &cases[i], place, S);
    return U;
}

/* Every loaded case is one term; there is nothing to add up when there is none. */
static void note_damage(const ts_iso10300_prepared *prepared, const ts_iso10300_case *cases,
                        size_t count, ts_iso10300_place place, ts_workings *workings)
{
    enum { MOST = 40 }; /* as many conditions as a drive may have */
    ts_input inputs[2 * MOST];
    size_t   used = 0;
    double   U    = 0.0;

    for (size_t i = 0; i < count; i++) {
        const double n = cases[i].load.N_L[place.gear];
        const double N = borne(prepared, &cases[i], place, 1.0);

        if (cases[i].flank != place.flank || !isfinite(N) || !(N > 0.0))
            continue;
        if (used == 2 * MOST)
            return;
        inputs[used++] = (ts_input){"n_case", n};
        inputs[used++] = (ts_input){"N_case", N};
        U += n / N;
    }
    if (used > 0)
        (void)ts_step_list(workings, &U_formula, U, inputs, used);
}

/* Stresses times S: the damage grows with S, so that halving the logarithm finds where it is 1. */
static double exhausting(const ts_iso10300_prepared *prepared, const ts_iso10300_case *cases,
                         size_t count, ts_iso10300_place place)
{
    double low = -30.0, high = 30.0;

    if (!(ts_iso10300_damage(prepared, cases, count, place, exp(high)) > 1.0))
        return INFINITY;
    for (int i = 0; i < 80; i++) {
        const double middle = (low + high) / 2.0;

        if (ts_iso10300_damage(prepared, cases, count, place, exp(middle)) > 1.0)
            high = middle;
        else
            low = middle;
    }
    return exp(low);
}

ts_iso10300_life ts_iso10300_life_of(const ts_iso10300_prepared *prepared,
                                     const ts_iso10300_case *cases, size_t count,
                                     ts_iso10300_place place, ts_workings *workings)
{
    ts_iso10300_life life = {.U = ts_iso10300_damage(prepared, cases, count, place, 1.0),
                             .S = (double)NAN};

    if (isnan(life.U))
        return life;
    life.S = exhausting(prepared, cases, count, place);
    if (isinf(life.S))
        return life;
    const double whole = ts_iso10300_damage(prepared, cases, count, place, life.S);

    for (size_t i = 0; i < count; i++) {
        const double share = wear_of(prepared, &cases[i], place, life.S) / whole;

        if (share > life.share) {
            life.share = share;
            life.worst = i;
        }
    }
    if (TS_STEP_NEEDS_INPUTS(workings))
        note_damage(prepared, cases, count, place, workings);
    return life;
}

/* ---- reserve, load --------------------------------------------------------------------------- */

double ts_iso10300_spectrum_reserve(const ts_iso10300_prepared *prepared,
                                    const ts_iso10300_case *cases, size_t count,
                                    const double S_min[2], ts_iso10300_place *where)
{
    double least = INFINITY;

    if (!(S_min[0] > 0.0 && S_min[1] > 0.0))
        return NAN;
    for (int i = 0; i < 8; i++) {
        const ts_iso10300_place place = {i / 4, i / 2 % 2,
                                         i % 2 == 0 ? TS_BEVEL_CONTACT : TS_BEVEL_BENDING};
        const double            S     = ts_iso10300_life_of(prepared, cases, count, place, NULL).S;

        if (isnan(S))
            return NAN;
        if (i > 0 && !(S / S_min[i % 2] < least))
            continue;
        least = S / S_min[i % 2];
        if (where != NULL)
            *where = place;
    }
    return least - 1.0;
}

/* The reserve with all torques times `factor`; the load factors change with them. */
static double reserve_at(const ts_iso10300_prepared *prepared, ts_iso10300_case *cases,
                         size_t count, const double S_min[2], double factor)
{
    bool all = true;

    for (size_t i = 0; i < count; i++) {
        ts_iso10300_load load = cases[i].load;

        load.T_1 *= factor;
        all = ts_iso10300_rate(prepared, &load, &cases[i].rating, NULL) && all;
    }
    return all ? ts_iso10300_spectrum_reserve(prepared, cases, count, S_min, NULL) : (double)NAN;
}

double ts_iso10300_load_factor(const ts_iso10300_prepared *prepared, ts_iso10300_case *cases,
                               size_t count, const double S_min[2])
{
    double low = -20.0, high = 20.0;

    if (!(reserve_at(prepared, cases, count, S_min, exp(high)) < 0.0) ||
        !(reserve_at(prepared, cases, count, S_min, exp(low)) > 0.0))
        return NAN;
    for (int i = 0; i < 60; i++) {
        const double middle = (low + high) / 2.0;

        if (reserve_at(prepared, cases, count, S_min, exp(middle)) < 0.0)
            high = middle;
        else
            low = middle;
    }
    (void)reserve_at(prepared, cases, count, S_min, exp(low));
    return exp(low);
}
