/* rating/teeth_working.c: by which steps does the damage of all conditions add up to a safety? */
#include "rating/drive_teeth_parts.h"

#include <math.h>

#define MINER "ISO 6336-6:2019, clause 6 (from memory): Palmgren and Miner"

/* Between two nodes of the life factor, and beyond the last.  S and sigma are those of the place.
 */
#define BETWEEN(sigma) "N_b*(sigma_b/(S*" sigma "))^(ln(N_b/N_a)/ln(sigma_a/sigma_b))"
#define BEYOND(sigma)  "N_a*(sigma_a/(S*" sigma "))^(ln(1e10/N_a)/ln(1/f_long))"
#define BORNE(symbol, text)                                                                        \
    {                                                                                              \
        symbol, "load cycles that S times the stress may be borne", "1", text, MINER               \
    }
#define PART(symbol, N, borne)                                                                     \
    {                                                                                              \
        symbol, "damage done in this condition at S times the stress", "1", N "/" borne, MINER     \
    }
#define WHOLE(symbol)                                                                              \
    {                                                                                              \
        symbol, "safety of all conditions together: all stresses times S use up the life", "1",    \
            "U - 1", MINER                                                                         \
    }

typedef struct place_words {
    ts_formula  between, beyond, part, whole;
    const char *sigma, *N_L, *stat, *mid, *ref, *f_long;
} place_words;

#define WORDS(Q, F, I)                                                                             \
    {                                                                                              \
        BORNE("N_" Q I, BETWEEN("sigma_" Q I)), BORNE("N_" Q I, BEYOND("sigma_" Q I)),             \
            PART("U_" Q I, "N_L" I, "N_" Q I), WHOLE("S_" Q I), "sigma_" Q I, "N_L" I,             \
            "sigma_" Q "Gstat" I, "sigma_" Q "Gmid" I, "sigma_" Q "Gref" I, F "_NTlong" I          \
    }
/* [stress][gear] */
static const place_words words_of[2][2] = {
    {WORDS("H", "Z", "1"), WORDS("H", "Z", "2")},
    {WORDS("F", "Y", "1"), WORDS("F", "Y", "2")},
};

static const ts_formula U_formula = {
    .symbol  = "U",
    .meaning = "damage of all conditions that load this flank, at S times their stresses",
    .unit    = "1",
    .text    = "sum(U_c)",
    .source  = MINER,
};

/* ---- one condition --------------------------------------------------------------------------- */

static void note_node(const ts_teeth_case *c, ts_subject own, const char *N_name, double N,
                      const char *sigma_name, double sigma, const char *lender)
{
    ts_workings_row(c->workings, N_name, N, "1",
                    "node of the life factor, ISO 6336-2 and -3, tables of Z_NT and Y_NT (from "
                    "memory)");
    ts_workings_borrow(c->workings, sigma_name, sigma, own, lender);
}

static double note_between(const ts_teeth_case *c, ts_subject own, const place_words *words,
                           const ts_wear *wear, double S)
{
    const ts_life_curve *line    = wear->curve;
    const double         sigma   = wear->sigma;
    const bool           upper   = line->N_mid > 0.0 && S * sigma >= line->sigma_mid;
    const bool           whole   = !(line->N_mid > 0.0);
    const double         N_a     = whole || upper ? line->N_stat : line->N_mid;
    const double         N_b     = upper ? line->N_mid : line->N_ref;
    const double         sigma_a = whole || upper ? line->sigma_stat : line->sigma_mid;
    const double         sigma_b = upper ? line->sigma_mid : line->sigma_ref;

    note_node(c, own, "N_a", N_a, "sigma_a", sigma_a, whole || upper ? words->stat : words->mid);
    note_node(c, own, "N_b", N_b, "sigma_b", sigma_b, upper ? words->mid : words->ref);
    const ts_input inputs[] = {{"N_a", N_a}, {"N_b", N_b},         {"sigma_a", sigma_a},
                               {"S", S},     {"sigma_b", sigma_b}, {words->sigma, sigma}};
    return ts_step_list(c->workings, &words->between, ts_life_curve_cycles(line, S * sigma), inputs,
                        6);
}

static double note_beyond(const ts_teeth_case *c, ts_subject own, const place_words *words,
                          const ts_wear *wear, double f_long, double S)
{
    const ts_life_curve *line = wear->curve;
    const double         N_a = line->N_ref, sigma_a = line->sigma_ref, sigma = wear->sigma;

    note_node(c, own, "N_a", N_a, "sigma_a", sigma_a, words->ref);
    ts_workings_borrow(c->workings, "f_long", f_long, (ts_subject){own.object, TS_EVERY_CONDITION},
                       words->f_long);
    const ts_input inputs[] = {
        {"N_a", N_a}, {"sigma_a", sigma_a}, {"S", S}, {words->sigma, sigma}, {"f_long", f_long}};
    return ts_step_list(c->workings, &words->beyond, ts_life_curve_cycles(line, S * sigma), inputs,
                        5);
}

/* Returns the damage. */
static double note_wear(const ts_teeth_case *c, ts_subject own, const place_words *words,
                        const ts_wear *wear, double f_long, double S)
{
    const ts_life_curve *line = wear->curve;

    ts_workings_about(c->workings, own.object, own.condition);
    ts_workings_assumed(c->workings, "S", S, "1", "tried: what the search for S ends at");
    if (S * wear->sigma < line->sigma_ref && !(line->fall > 0.0)) {
        ts_workings_assumed(c->workings, words->part.symbol, 0.0, "1",
                            "S times the stress is borne without end");
        return 0.0;
    }
    const double   borne    = S * wear->sigma < line->sigma_ref
                                  ? note_beyond(c, own, words, wear, f_long, S)
                                  : note_between(c, own, words, wear, S);
    const ts_input inputs[] = {{words->N_L, wear->cycles}, {words->between.symbol, borne}};
    return ts_step_list(c->workings, &words->part, wear->cycles / borne, inputs, 2);
}

/* ---- one flank ------------------------------------------------------------------------------- */

static double long_factor(const ts_teeth_case *c, uint32_t m, int side, ts_rated_stress stress)
{
    if (ts_teeth_is_bevel(c, m)) {
        const ts_iso10300_gear *bevel = &ts_bevels_of(c, m)->prepared.mesh.gear[side];
        return stress == TS_RATED_CONTACT ? bevel->Z_NTlong : bevel->Y_NTlong;
    }
    const ts_iso6336_gear *gear = &c->teeth->prepared[m].mesh.gear[side];

    return stress == TS_RATED_CONTACT ? gear->Z_NTlong : gear->Y_NTlong;
}

void ts_teeth_note_safety(const ts_teeth_case *c, uint32_t m, int side, ts_rated_stress stress,
                          size_t count, double S)
{
    const ts_teeth_scratch *scratch = c->teeth->scratch;
    const ts_node           about   = c->train->meshes[m].node;
    const uint32_t gear  = side == 0 ? c->train->meshes[m].driver : c->train->meshes[m].driven;
    const double   below = S * (1.0 - 1e-15); /* at S itself static strength may be passed */
    double         U     = 0.0;

    for (size_t i = 0; i < count; i++) {
        const ts_flank_life *place = &scratch->places[i];
        const int            there = c->train->meshes[place->mesh].driver == gear ? 0 : 1;
        const ts_subject     own   = ts_teeth_subject(c, place->mesh, place->condition);
        const place_words   *words = &words_of[stress == TS_RATED_CONTACT ? 0 : 1][there];
        const double         U_c   = note_wear(c, own, words, &scratch->wears[i],
                                               long_factor(c, place->mesh, there, stress), below);

        ts_workings_about(c->workings, about, TS_EVERY_CONDITION);
        ts_workings_borrow(c->workings, "U_c", U_c, own, words->part.symbol);
        scratch->parts[i] = (ts_input){"U_c", U_c};
        U += U_c;
    }
    ts_workings_about(c->workings, about, TS_EVERY_CONDITION);
    U                       = ts_step_list(c->workings, &U_formula, U, scratch->parts, count);
    const ts_input inputs[] = {{"U", U}};
    ts_search_note(c->workings, &words_of[stress == TS_RATED_CONTACT ? 0 : 1][side].whole, S,
                   U - 1.0, inputs, 1);
}
