/* rating/iso6336/mesh_stiffness.h: how stiff is a mesh?  ISO 6336-1, clause 9, method B.
 *
 * Units     1 N/(mm um) of the standard is 1 GPa here: stiffness and unit face width are in m.
 */
#ifndef TS_RATING_MESH_STIFFNESS_H
#define TS_RATING_MESH_STIFFNESS_H

#include "base/workings.h"

/* The approximation is for the pinion as the one and the wheel as the other, with x of the pinion
 * not below that of the wheel; which of the gears is the pinion is said by `pinion` (0 or 1). */
typedef struct ts_tooth_flexibility_input {
    double z_n1, z_n2; /* virtual numbers of teeth; < 0 for an internal gear 2 */
    double x_1, x_2;
    int    pinion;
} ts_tooth_flexibility_input;

/* q', m2/N: the least flexibility of one pair of teeth of rack 1.2/20 degrees. */
double ts_tooth_flexibility(const ts_tooth_flexibility_input *in, ts_workings *workings);

/* C_R of one gear: a thin web is softer than a disc.  b_s, s_R: m, thickness of web and of rim; a
 * solid gear has C_R = 1 and is not asked about.  gear: 0 or 1. */
double ts_blank_factor(double b_s, double b, double s_R, double m_n, int gear,
                       ts_workings *workings);

/* C_B: another rack than 1.2 deep at 20 degrees. */
double ts_rack_factor(double h_fPs, double alpha_n, ts_workings *workings);

/* c' at 100 N/mm and more, Pa.  C_R: mean of both gears; E_1, E_2: moduli, Pa. */
typedef struct ts_single_stiffness_input {
    double qp, C_R, C_B, beta, E_1, E_2;
} ts_single_stiffness_input;
double ts_single_stiffness(const ts_single_stiffness_input *in, ts_workings *workings);

/* c' at the specific load w_t (N/m), which matters below 100 N/mm. */
double ts_single_stiffness_loaded(double cp_100, double w_t, ts_workings *workings);

double ts_mesh_stiffness(double cp, double eps_alpha, ts_workings *workings); /* c_gamma_alpha */
double ts_mesh_stiffness_lead(double c_gamma_alpha, ts_workings *workings);   /* c_gamma_beta  */

#endif
