/* rate/inverse_question.h: what the three answers of `inverse` have in common. */
#ifndef TS_RATE_INVERSE_QUESTION_H
#define TS_RATE_INVERSE_QUESTION_H

#include "rate/inverse_words.h"
#include "rate/pair_parts.h"

/* A question on its way to its answer.  The one case is the load of the pair with the life and the
 * safeties wanted. */
typedef struct ts_rated_inverse {
    ts_rate_desk          *desk;
    ts_rated_pair         *rated;
    const ts_rate_inverse *given;
    ts_rated_teeth         teeth;
    ts_iso6336_case        one;
    double                 f[2]; /* Hz  load cycles of a tooth in a second */
} ts_rated_inverse;

/* What of it a question reads. */
typedef enum ts_inverse_need {
    TS_INVERSE_NEEDS_TORQUE = 1,
    TS_INVERSE_NEEDS_CYCLES = 2
} ts_inverse_need;

/* Opens the section, takes what ISO 6336 needs and what is wanted; false when something lacks,
 * which is named.  `needs` is a set of ts_inverse_need. */
bool ts_inverse_open(ts_rated_inverse *inverse, const ts_rated_section *section, unsigned needs);

/* Cycles of both gears over a time, noted in the open section. */
void ts_inverse_cycles(const ts_rated_inverse *inverse, double L_h, double N_L[2]);

/* Rates the one case for `pair`, with notes in the open section: the proof of the answer.  False,
 * with a finding, when it cannot be rated. */
bool ts_inverse_prove(ts_rated_inverse *inverse, const ts_cylindrical_pair *pair);

/* Notes what is left of the least safety at the answer, as it was rated: `reserve`. */
double ts_inverse_reserve(const ts_rated_inverse *inverse, ts_iso6336_place *where);

/* inverse_load.c, inverse_life.c, inverse_width.c: one question each. */
void ts_inverse_load(ts_rated_inverse *inverse);
void ts_inverse_life(ts_rated_inverse *inverse);
void ts_inverse_width(ts_rated_inverse *inverse);

#endif
