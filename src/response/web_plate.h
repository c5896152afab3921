/* response/web_plate.h: with which frequencies does a gear swing across its plane?
 *
 * Model: a plate that is clamped at the shaft, b, h thick to the inside of the rim, a, and w thick
 * from there to the roots, R; the teeth are weight at their own radius.  Shapes w = f(r)
 * cos(n theta), n nodal diameters.  A solid gear has a = b or h = w.
 *
 * Thick: Mindlin's plate shears (coefficient 5/6) and turns with inertia.  Gears are as thick as
 * this; ts_plate_frequency of response/annular_plate.h is its limit for thin ones.
 *
 * Method: Ritz; powers that begin at the hub, and others that begin at the rim.  What does not
 * depend on n is integrated once.  Frequencies are upper bounds but for the clamped hub.
 *
 * Left out: stiffening by the turning; what shaft and bearings give, which lowers n = 0 and n = 1.
 *
 * Sources: R. Mindlin, J. Applied Mechanics 18 (1951), 31; E. Reissner, J. Applied Mechanics 12
 * (1945), 69 (both from memory).
 */
#ifndef TS_RESPONSE_WEB_PLATE_H
#define TS_RESPONSE_WEB_PLATE_H

#include <stdbool.h>

typedef struct ts_web_plate {
    double b, a, R; /* m, clamped to b, web to a, rim to R; b < R, b <= a <= R  */
    double h, w;    /* m, thickness of web and of rim                         */
    double E, nu, rho;
    double teeth; /* kg/m along R, of the teeth; 0                          */
    double arm;   /* m, from R out to their middle                          */
} ts_web_plate;

enum { TS_WEB_POWERS = 6, TS_WEB_RIM_POWERS = 4, TS_WEB_TERMS = TS_WEB_POWERS + TS_WEB_RIM_POWERS };

/* Integrals over x = r/R of terms and of their slopes (the first index); [0] with the thickness
 * over w, [1] with its cube. */
typedef struct ts_web_integrals {
    double slopes_x[TS_WEB_TERMS][TS_WEB_TERMS]; /* f' g' x */
    double slope_x[TS_WEB_TERMS][TS_WEB_TERMS];  /* f' g x  */
    double slope[TS_WEB_TERMS][TS_WEB_TERMS];    /* f' g    */
    double terms_x[TS_WEB_TERMS][TS_WEB_TERMS];  /* f g x   */
    double terms[TS_WEB_TERMS][TS_WEB_TERMS];    /* f g     */
    double terms_r[TS_WEB_TERMS][TS_WEB_TERMS];  /* f g / x */
} ts_web_integrals;

typedef struct ts_web_modes {
    ts_web_plate     plate;
    int              count;              /* of terms; 0: it is no plate */
    double           edge[TS_WEB_TERMS]; /* values of the terms at R */
    ts_web_integrals by[2];
} ts_web_modes;

void ts_web_open(const ts_web_plate *plate, ts_web_modes *out);
/* Hz, of n >= 0 nodal diameters and no nodal circle.  NaN: it is no plate. */
double ts_web_frequency(const ts_web_modes *modes, int n);

#endif
