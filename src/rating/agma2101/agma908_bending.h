/* rating/agma2101/agma908_bending.h: how strong is the shape of a tooth against bending?  AGMA
 * 908-B89, clause 5: Y, K_f, Y_J.
 */
#ifndef TS_RATING_AGMA908_BENDING_H
#define TS_RATING_AGMA908_BENDING_H

#include "rating/agma2101/agma908_mesh.h"
#include "rating/agma2101/agma908_root.h"

/* How strongly a fillet concentrates stress at this pressure angle (after Dolan and Broghamer). */
typedef struct ts_agma_notch {
    double H_f, L_f, M_f;
} ts_agma_notch;
ts_agma_notch ts_agma_notch_of(double alpha_n, ts_workings *workings);

typedef struct ts_agma_bending {
    double Y;   /* tooth form factor                               */
    double K_f; /* stress correction factor                        */
    double Y_J; /* geometry factor for bending strength (J)        */
} ts_agma_bending;

/* root: a solved one.  gear: 0 or 1.  NaN where the load line misses: the direct stress would
 * outweigh the bending. */
ts_agma_bending ts_agma_bending_of(const ts_agma_root *root, const ts_agma_mesh *mesh,
                                   const ts_agma_notch *notch, int gear, ts_workings *workings);

#endif
