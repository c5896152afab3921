/* rate/inverse_words.h: what `inverse` wants, and how its answers are put into words. */
#ifndef TS_RATE_INVERSE_WORDS_H
#define TS_RATE_INVERSE_WORDS_H

#include "rate/rate_desk.h"
#include "rating/iso6336/spectrum_life.h"

/* A wanted value of `inverse`, noted in the open section; else what the pair has. */
double ts_inverse_wanted(ts_rate_desk *desk, const ts_measure *wanted, const char *symbol,
                         const char *unit, double otherwise);

/* Between which common face widths the least is looked for: one module and twice the reference
 * diameter of gear 1, where the file does not say. */
typedef struct ts_width_limits {
    double least, most; /* m */
} ts_width_limits;
ts_width_limits ts_inverse_widths(ts_rate_desk *desk, const ts_rate_inverse *given, double m_n,
                                  double d_1);

/* "breakage of gear 1 (S_F1)" */
const char *ts_inverse_place_says(ts_iso6336_place place);

/* None of them has the safeties wanted; at the greatest `place` decides. */
void ts_inverse_no_width(ts_rate_desk *desk, const ts_width_limits *limits, ts_iso6336_place place,
                         double reserve);

#endif
