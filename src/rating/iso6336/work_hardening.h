/* rating/iso6336/work_hardening.h: how does a hard gear strengthen a softer mate by running on it?
 * ISO 6336-2, clause 13 (Z_W); it is the softer gear's alone.
 */
#ifndef TS_RATING_WORK_HARDENING_H
#define TS_RATING_WORK_HARDENING_H

#include "base/workings.h"

/* A through-hardened gear with a mate of hardened surface.
 *
 * HB        Brinell hardness of the soft gear, used between 130 and 470
 * R_zhard   m     flank roughness of the hard gear before running, R_zsoft that of the soft one
 * rho_red   m     radius of relative curvature at the pitch point
 * nu_40     m2/s  viscosity at 40 degrees Celsius
 * v         m/s   pitch line velocity */
typedef struct ts_work_hardening_input {
    double HB, R_zhard, R_zsoft, rho_red, nu_40, v;
} ts_work_hardening_input;

/* The roughness that a smooth soft flank would feel, m, limited to 3 .. 16 um. */
double ts_equivalent_roughness(const ts_work_hardening_input *in, ts_workings *workings);
double ts_work_hardening_surface(double HB, double R_zH, ts_workings *workings);
double ts_work_hardening_surface_static(double HB, ts_workings *workings);

/* Both through-hardened, and the pinion harder: hardness ratio HB_1/HB_2 (harder over softer)
 * between 1.2 and 1.7, u = teeth of the larger gear over the smaller, used up to 20. */
double ts_work_hardening_through(double HB_ratio, double u, ts_workings *workings);

#endif
