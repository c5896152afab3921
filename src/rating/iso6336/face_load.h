/* rating/iso6336/face_load.h: how unevenly does the load lie over the face width?
 * ISO 6336-1, clause 7: method C from a known misalignment of the mesh.
 */
#ifndef TS_RATING_FACE_LOAD_H
#define TS_RATING_FACE_LOAD_H

#include "base/workings.h"

#include <stdbool.h>

/* How the lead is made to suit: which share of deflection and of deviation it leaves. */
typedef enum ts_lead_design {
    TS_LEAD_STRAIGHT,          /* none                                                       */
    TS_LEAD_CROWNED,           /* crowned by half of f_ma                                    */
    TS_LEAD_CROWNED_WELL,      /* crowned by half of f_ma + f_sh                             */
    TS_LEAD_CORRECTED,         /* helix corrected for the torque that is rated               */
    TS_LEAD_CORRECTED_CROWNED, /* both                                                       */
    TS_LEAD_END_RELIEF,        /* relieved at the ends by a fitting amount                   */
    TS_LEAD_DESIGN_COUNT
} ts_lead_design;

/* Is the load taken off the ends of the face? */
bool ts_lead_design_eases_ends(ts_lead_design lead);

/* F_betax, m, from the deflection f_sh of shafts and bodies and the deviation f_ma of making, both
 * in m over the face width and >= 0; never below 0.005 um per N/mm of F_m/b (N/m). */
double ts_mesh_misalignment(double f_sh, double f_ma, ts_lead_design lead, double F_mb,
                            ts_workings *workings);

/* f_sh, m, of method C for a pinion between two bearings.  All lengths in m.
 *
 * F_mb   N/m  mean load over the face width, F_t K_A K_gamma K_v/b
 * K_p    1    K' of the place on the shaft: with a stiffening pinion 0.48 between, -0.48 nearer the
 *             bearing on the side away from the torque, 1.33 overhung, -0.36 and -0.6 with two
 *             meshes; without it 0.8, -0.8, 1.33, -0.6, -1.0 (from memory)
 * B_s    1    B*, 1 for one pinion that carries all the power */
typedef struct ts_shaft_deflection_input {
    double F_mb, b, d_1, d_sh, l, s, K_p, B_s;
} ts_shaft_deflection_input;
double ts_shaft_deflection(const ts_shaft_deflection_input *in, ts_workings *workings);

/* F_betay = F_betax - y_beta */
double ts_misalignment_run_in(double F_betax, double y_beta, ts_workings *workings);

/* K_Hbeta for the misalignment after running in. */
double ts_face_load_contact(double F_betay, double c_gamma_beta, double F_mb,
                            ts_workings *workings);

/* N_F, the exponent between contact and bending; h_t: m, the tooth height. */
double ts_face_load_exponent(double b_1, double h_t1, double b_2, double h_t2,
                             ts_workings *workings);
double ts_face_load_bending(double K_Hbeta, double N_F, ts_workings *workings); /* K_Fbeta */

#endif
