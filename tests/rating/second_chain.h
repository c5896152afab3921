/* rating/second_chain.h: ISO 6336 written down once more, slowly and in the units of the standard
 * (mm, N, N/mm2, um, N/(mm um), rev/min, kg/mm), for external gears.
 *
 * It shares no line with src/rating and iterates in another way, so that a slip of units, of index
 * or of order shows.  It comes from the same memory of the standard, so a wrong constant would not.
 */
#ifndef TS_TESTS_RATING_SECOND_CHAIN_H
#define TS_TESTS_RATING_SECOND_CHAIN_H

#include "rating/iso6336/iso6336.h"

typedef struct second_gear {
    double Y_F, Y_S, Z_W, S_H, S_F, sigma_H, sigma_F, sigma_HG, sigma_FG;
} second_gear;

typedef struct second_rating {
    double      c_gamma_alpha, m_red, n_E1, N, K_v, K_Hbeta, K_Fbeta, K_Halpha, K_Falpha, sigma_H0;
    second_gear gear[2];
} second_rating;

second_rating second_chain(const ts_cylindrical_pair *pair, const ts_iso6336_mesh *mesh,
                           const ts_iso6336_load *load);

#endif
