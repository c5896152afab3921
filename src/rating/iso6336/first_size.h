/* rating/iso6336/first_size.h: how large must a pinion be, before anything else is known?
 *
 * The contact stress of ISO 6336-2 solved for the diameter, with the face width as a share of it:
 * a start for a search, not a rating.
 */
#ifndef TS_RATING_FIRST_SIZE_H
#define TS_RATING_FIRST_SIZE_H

#include "base/workings.h"

typedef struct ts_first_size_input {
    double T_1;      /* N.m  torque of the pinion                                            */
    double K;        /* 1    product of all load factors                                     */
    double phi_d;    /* 1    face width over pinion diameter                                 */
    double u;        /* 1    ratio, negative for an internal wheel                           */
    double Z;        /* sqrt(Pa)  product of Z_H, Z_E, Z_eps, Z_beta                         */
    double sigma_HP; /* Pa   permissible contact stress                                      */
} ts_first_size_input;

double ts_first_pinion_diameter(const ts_first_size_input *in, ts_workings *workings); /* m */

/* The diameter that was found with K_used, for the load factors K that belong to it. */
double ts_corrected_diameter(double d_1, double K, double K_used, ts_workings *workings);

#endif
