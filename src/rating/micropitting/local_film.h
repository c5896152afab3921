/* rating/micropitting/local_film.h: how thick is the film at one point of the path of contact?
 * ISO/TS 6336-22, after D. Dowson and G. R. Higginson with the heat of sliding.
 */
#ifndef TS_RATING_LOCAL_FILM_H
#define TS_RATING_LOCAL_FILM_H

#include "rating/micropitting/micropitting.h"

/* What the points of one load case share. */
typedef struct ts_film_case {
    double w_Bt;    /* N/m                              */
    double omega_1; /* rad/s                            */
    double mu_m;    /* 1                                */
    double theta_M; /* K                                */
    double r_1, r_2;
    double eta_M, alpha_M; /* Pa.s, 1/Pa at theta_M     */
    double G_M;
} ts_film_case;

typedef struct ts_local_film {
    double theta_B; /* K  */
    double h;       /* m  */
    double lambda;  /* 1; INFINITY where the point carries nothing */
} ts_local_film;

ts_local_film ts_film_at(const ts_micropitting_prepared *prepared, const ts_film_case *load,
                         int point, ts_workings *workings);

#endif
