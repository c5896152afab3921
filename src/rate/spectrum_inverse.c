/* rate/spectrum_inverse.c: which loads, how often and how wide for the safeties wanted of a
 * spectrum? */
#include "rate/inverse_words.h"
#include "rate/pair_spectrum.h"
#include "rating/iso6336/width_search.h"

#include <string.h>

#define MINER "derived: ISO 6336-6:2019, clause 6 (from memory), solved for "

/* ---- what the answers have in common -----------------------------------------------------------
 */

/* For a search to change; NULL without memory. */
static ts_iso6336_case *copy_of(const ts_rated_spectrum *spectrum)
{
    ts_rate_desk    *desk = spectrum->desk;
    ts_iso6336_case *copy = TS_TAKE(desk->arena, ts_iso6336_case, spectrum->count);

    desk->failed = desk->failed || copy == NULL;
    if (copy != NULL)
        memcpy(copy, spectrum->cases, spectrum->count * sizeof *copy);
    return copy;
}

typedef struct wanted {
    double S_Hmin, S_Fmin;
} wanted;

static wanted take_wanted(const ts_rated_spectrum *spectrum)
{
    const ts_rate_inverse *given = &spectrum->rated->given->inverse;
    const ts_rated_load   *load  = &spectrum->rated->load;
    ts_rate_desk          *desk  = spectrum->desk;

    return (wanted){ts_inverse_wanted(desk, &given->S_Hmin, "S_Hmin", "1", load->S_Hmin),
                    ts_inverse_wanted(desk, &given->S_Fmin, "S_Fmin", "1", load->S_Fmin)};
}

/* Rated anew at the answer. */
static double note_reserve(const ts_rated_spectrum *spectrum, const ts_iso6336_case *cases,
                           const wanted *of, ts_iso6336_place *where)
{
    const double reserve =
        ts_iso6336_spectrum_reserve(cases, spectrum->count, of->S_Hmin, of->S_Fmin, where);

    ts_workings_row(spectrum->desk->workings, "reserve", reserve, "1",
                    "least safety of the spectrum over its least, less 1, all bins rated anew at "
                    "the answer");
    return reserve;
}

/* ---- load --------------------------------------------------------------------------------------
 */

static const ts_rated_section load_section = {
    .title     = "Allowable load",
    .standard  = "ISO 6336-6, solved for the load",
    .condition = TS_RATED_ALLOWABLE_LOAD,
};
static const ts_formula factor_equation = {
    "load_factor", "factor on all torques of the spectrum that leaves no reserve", "1", "reserve",
    MINER "the load"};

static void ask_load(ts_rated_spectrum *spectrum)
{
    ts_rate_desk    *desk  = spectrum->desk;
    ts_iso6336_case *cases = copy_of(spectrum);
    ts_iso6336_place where = {0};

    ts_rate_open_section(desk, &load_section);
    if (cases != NULL && !desk->failed) {
        const wanted of     = take_wanted(spectrum);
        const double factor = ts_iso6336_load_factor(&spectrum->teeth.prepared, cases,
                                                     spectrum->count, of.S_Hmin, of.S_Fmin, NULL);
        if (factor > 0.0) {
            const double   reserve  = note_reserve(spectrum, cases, &of, &where);
            const ts_input inputs[] = {{"reserve", reserve}};

            ts_search_note(desk->workings, &factor_equation, factor, reserve, inputs, 1);
            ts_rate_fact(desk, "load", ts_inverse_place_says(where));
        } else {
            ts_rate_cannot(desk, "the allowable load by ISO 6336-6", "nothing loads the teeth");
        }
    }
    (void)ts_rate_close_section(desk);
}

/* ---- life --------------------------------------------------------------------------------------
 */

static const char *const asked_life[] = {"times_H1", "times_H2", "times_F1",
                                         "times_F2", "L_h",      NULL};

static const ts_rated_section life_section = {
    .title     = "Life under this spectrum",
    .standard  = "ISO 6336-6, damage with the safeties wanted",
    .condition = TS_RATED_LIFE,
    .asked     = asked_life,
};
#define TIMES(symbol, what, text)                                                                  \
    {                                                                                              \
        symbol, "how often " what " bear the spectrum", "1", text, MINER "the life"                \
    }
static const ts_formula times_formulas[4] = {
    TIMES("times_H1", "the flanks of gear 1", "1/U_wH1"),
    TIMES("times_H2", "the flanks of gear 2", "1/U_wH2"),
    TIMES("times_F1", "the roots of gear 1", "1/U_wF1"),
    TIMES("times_F2", "the roots of gear 2", "1/U_wF2"),
};
static const char *const worn_names[4] = {"U_wH1", "U_wH2", "U_wF1", "U_wF2"};
static const ts_formula  life_formula  = {"L_h", "life of the pair under this spectrum", "s",
                                          "L_hfrom*min(times_H1, times_H2, times_F1, times_F2)",
                                          MINER "the life"};

/* The damage of the worse flank with the safety wanted. */
static double worn(const ts_rated_spectrum *spectrum, int i, double S_min)
{
    double U = 0.0;

    for (int flank = 0; flank < 2; flank++) {
        const ts_iso6336_place place = {
            .flank = flank, .gear = i % 2, .stress = i < 2 ? TS_RATED_CONTACT : TS_RATED_BENDING};
        U = fmax(U, ts_iso6336_damage(spectrum->cases, spectrum->count, place, S_min));
    }
    return U;
}

static void ask_life(ts_rated_spectrum *spectrum)
{
    ts_rate_desk *desk = spectrum->desk;
    double        t[4];
    int           worst = 0;

    ts_rate_open_section(desk, &life_section);
    if (!desk->failed) {
        const wanted of = take_wanted(spectrum);

        for (int i = 0; i < 4; i++) {
            const double   U        = worn(spectrum, i, i < 2 ? of.S_Hmin : of.S_Fmin);
            const ts_input inputs[] = {{worn_names[i], U}};

            ts_workings_row(desk->workings, worn_names[i], U, "1",
                            "sum of n/N over the bins with all stresses times the safety wanted, "
                            "of the flank that is worn more");
            t[i]  = ts_step_list(desk->workings, &times_formulas[i], 1.0 / U, inputs, 1);
            worst = t[i] < t[worst] ? i : worst;
        }
        const double times_H1 = t[0], times_H2 = t[1], times_F1 = t[2], times_F2 = t[3];
        const double L_hfrom = spectrum->L_h;
        ts_workings_borrow(desk->workings, "L_hfrom", L_hfrom,
                           (ts_subject){desk->element->node, TS_RATED_SPECTRUM}, "L_h");
        (void)TS_STEP(desk->workings, life_formula,
                      L_hfrom * fmin(fmin(times_H1, times_H2), fmin(times_F1, times_F2)), L_hfrom,
                      times_H1, times_H2, times_F1, times_F2);
        ts_rate_fact(desk, "life",
                     isinf(t[worst])
                         ? "endless, since every place is below its endurance"
                         : ts_inverse_place_says((ts_iso6336_place){
                               .gear   = worst % 2,
                               .stress = worst < 2 ? TS_RATED_CONTACT : TS_RATED_BENDING}));
    }
    (void)ts_rate_close_section(desk);
}

/* ---- width -------------------------------------------------------------------------------------
 */

static const ts_rated_section width_section = {
    .title     = "Least width",
    .standard  = "ISO 6336-6, solved for the width",
    .condition = TS_RATED_LEAST_WIDTH,
};
static const ts_formula width_equation = {
    "b_min", "least common face width with the safeties wanted", "m", "reserve", MINER "the width"};

static void say_width(ts_rated_spectrum *spectrum, const ts_width_search *search,
                      const ts_iso6336_case *cases, const ts_width_found *found,
                      ts_width_fault fault)
{
    ts_rate_desk    *desk  = spectrum->desk;
    const wanted     of    = {search->S_Hmin, search->S_Fmin};
    ts_iso6336_place where = {0};

    if (fault == TS_WIDTH_FINE) {
        const double   reserve  = note_reserve(spectrum, cases, &of, &where);
        const ts_input inputs[] = {{"reserve", reserve}};

        ts_search_note(desk->workings, &width_equation, found->b, reserve, inputs, 1);
        ts_rate_fact(desk, "width", ts_inverse_place_says(where));
        return;
    }
    if (fault == TS_WIDTH_AT_LEAST) {
        ts_workings_row(desk->workings, "b_min", found->b, "m",
                        "the least width that was tried, b_low; it is more than enough");
        (void)note_reserve(spectrum, cases, &of, &where);
        ts_rate_fact(desk, "width", "the least width that was tried is more than enough");
        return;
    }
    if (fault != TS_WIDTH_TOO_WIDE) {
        ts_rate_cannot(desk, "the least width by ISO 6336-6", ts_width_fault_says(fault));
        return;
    }
    ts_inverse_no_width(desk, &(ts_width_limits){search->least, search->most}, found->where,
                        found->reserve);
}

static void ask_width(ts_rated_spectrum *spectrum)
{
    ts_rate_desk              *desk  = spectrum->desk;
    const ts_rate_inverse     *given = &spectrum->rated->given->inverse;
    const ts_cylindrical_pair *pair  = &spectrum->rated->pair;
    ts_iso6336_case           *cases = copy_of(spectrum);
    ts_width_found             found;

    ts_rate_open_section(desk, &width_section);
    if (cases != NULL && !desk->failed) {
        const wanted          of     = take_wanted(spectrum);
        const ts_width_limits limits = ts_inverse_widths(desk, given, pair->in.m_n, pair->d_1);
        const ts_width_search search = {
            .pair   = spectrum->rated->in,
            .mesh   = spectrum->teeth.mesh,
            .S_Hmin = of.S_Hmin,
            .S_Fmin = of.S_Fmin,
            .least  = limits.least,
            .most   = limits.most,
        };
        const ts_width_fault fault =
            ts_width_for_safety(&search, cases, spectrum->count, &found, NULL);
        say_width(spectrum, &search, cases, &found, fault);
    }
    (void)ts_rate_close_section(desk);
}

void ts_rate_spectrum_inverse(ts_rated_spectrum *spectrum)
{
    const ts_rate_inverse *given = &spectrum->rated->given->inverse;

    if (given->load.value == (int)TS_YES)
        ask_load(spectrum);
    if (given->life.value == (int)TS_YES)
        ask_life(spectrum);
    if (given->width.value == (int)TS_YES)
        ask_width(spectrum);
}
