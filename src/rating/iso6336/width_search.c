/* rating/iso6336/width_search.c: which face width is just enough? */
#include "rating/iso6336/width_search.h"

#include <math.h>

const char *ts_width_fault_says(ts_width_fault fault)
{
    static const char *const says[] = {
        [TS_WIDTH_FINE]      = "the width is found",
        [TS_WIDTH_AT_LEAST]  = "the least width is more than enough",
        [TS_WIDTH_TOO_WIDE]  = "not even the greatest width is enough",
        [TS_WIDTH_NOT_RATED] = "the pair cannot be rated, or nothing is loaded",
        [TS_WIDTH_NO_RANGE]  = "the limits are no range of widths above 0",
    };

    return says[fault];
}

/* The reserve at the common width b; NaN when it cannot be rated. */
static double reserve_at(const ts_width_search *search, double b, ts_iso6336_case *cases,
                         size_t count, ts_iso6336_place *where)
{
    ts_cylindrical_pair_input in     = search->pair;
    const double              common = fmin(in.b_1, in.b_2);
    ts_cylindrical_pair       pair;
    ts_iso6336_prepared       prepared;

    in.b_1 += b - common;
    in.b_2 += b - common;
    const ts_pair_fault fault = ts_cylindrical_pair_solve(&in, &pair, NULL);
    if (fault != TS_PAIR_FINE && fault != TS_PAIR_POINTED)
        return NAN;
    if (!ts_iso6336_prepare(&pair, &search->mesh, &prepared, NULL) ||
        !ts_iso6336_rate_cases(&prepared, cases, count))
        return NAN;
    return ts_iso6336_spectrum_reserve(cases, count, search->S_Hmin, search->S_Fmin, where);
}

static const ts_formula width_equation = {
    .symbol  = "b",
    .meaning = "least common face width",
    .unit    = "m",
    .text    = "S/S_min - 1",
    .source  = "ISO 6336-6:2019, clause 6 (from memory), solved for the width",
};

static void note_width(ts_workings *workings, const ts_width_search *search,
                       const ts_width_found *found)
{
    const double S_min = found->where.stress == TS_RATED_CONTACT ? search->S_Hmin : search->S_Fmin;
    const double S     = (1.0 + found->reserve) * S_min;
    const ts_input inputs[] = {{"S", S}, {"S_min", S_min}};

    ts_search_note(workings, &width_equation, found->b, S / S_min - 1.0, inputs, 2);
}

/* A misalignment that stays as it is may outgrow the width: then the greatest width is not the
 * safest.  Rungs of a ladder from the least width to the greatest find the first one that is
 * enough; *low is the rung below it.  NaN: none is. */
#define RUNGS 48
static double first_enough(const ts_width_search *search, ts_iso6336_case *cases, size_t count,
                           double *low)
{
    const double ratio = log(search->most / search->least);

    *low = search->least;
    for (int i = 1; i <= RUNGS; i++) {
        const double b = i == RUNGS ? search->most : search->least * exp(ratio * i / RUNGS);

        if (reserve_at(search, b, cases, count, NULL) >= 0.0)
            return b;
        *low = b;
    }
    return NAN;
}

/* Halving, for a width may meet a jump (a contact ratio of 2, the end of endurance): the upper end
 * always has the reserve. */
static double close_in(const ts_width_search *search, ts_iso6336_case *cases, size_t count,
                       double low, double high)
{
    for (int round = 0; round < 60 && high - low > 1e-12 * high; round++) {
        const double middle = 0.5 * (low + high);

        if (reserve_at(search, middle, cases, count, NULL) >= 0.0)
            high = middle;
        else
            low = middle;
    }
    return high;
}

ts_width_fault ts_width_for_safety(const ts_width_search *search, ts_iso6336_case *cases,
                                   size_t count, ts_width_found *found, ts_workings *workings)
{
    *found = (ts_width_found){.b = NAN, .reserve = NAN};
    if (!(search->least > 0.0 && search->least <= search->most && isfinite(search->most)) ||
        !(search->S_Hmin > 0.0) || !(search->S_Fmin > 0.0))
        return TS_WIDTH_NO_RANGE;

    const double at_least = reserve_at(search, search->least, cases, count, &found->where);
    if (!isfinite(at_least))
        return TS_WIDTH_NOT_RATED;
    if (at_least >= 0.0) {
        found->b       = search->least;
        found->reserve = at_least;
        return TS_WIDTH_AT_LEAST;
    }
    const double at_most = reserve_at(search, search->most, cases, count, &found->where);
    if (isnan(at_most))
        return TS_WIDTH_NOT_RATED;
    double       low  = NAN;
    const double high = first_enough(search, cases, count, &low);
    if (isnan(high)) {
        found->reserve = at_most;
        return TS_WIDTH_TOO_WIDE;
    }

    const double b = close_in(search, cases, count, low, high);
    found->reserve = reserve_at(search, b, cases, count, &found->where);
    if (!(found->reserve >= 0.0))
        return TS_WIDTH_NOT_RATED;
    found->b = b;
    if (workings != NULL)
        note_width(workings, search, found);
    return TS_WIDTH_FINE;
}
