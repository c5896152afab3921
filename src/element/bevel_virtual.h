/* element/bevel_virtual.h: the cylindrical gears that stand for a bevel pair at its mean section;
 * ISO 10300-1:2014, annex A (method B1), pairs without offset.
 *
 * Units     m, rad.
 * Range     The pair's mean section as teeth of involute form on the back cone; gears without
 *           offset, so that both spiral angles are beta_m and both faces are b.
 */
#ifndef TS_ELEMENT_BEVEL_VIRTUAL_H
#define TS_ELEMENT_BEVEL_VIRTUAL_H

#include "base/workings.h"
#include "element/bevel_pair.h"
#include "element/bevel_teeth.h"

/* [0] gear 1, [1] gear 2; transverse section unless it says normal. */
typedef struct ts_bevel_virtual {
    double z_v[2];  /* 1    teeth (as in the pair)                                       */
    double d_v[2];  /* m    pitch diameters                                              */
    double d_va[2]; /* m    tip diameters                                                */
    double d_vb[2]; /* m    base diameters                                               */
    double z_vn[2]; /* 1    teeth in the normal section                                  */
    double d_vn[2]; /* m    normal section: pitch, tip and base diameters                */
    double d_van[2], d_vbn[2];
    double s_van[2];    /* m    normal tooth thickness at the tip; <= 0: pointed             */
    double u_v, a_v;    /* 1, m ratio z_v2/z_v1, centre distance                             */
    double alpha_vet;   /* rad  transverse pressure angle                                    */
    double beta_vb;     /* rad  base helix angle                                             */
    double p_vet;       /* m    transverse base pitch                                        */
    double b_v;         /* m    face width                                                   */
    double b_veff;      /* m    effective face width: length of the contact pattern          */
    double g_valpha;    /* m    length of the path of contact                                */
    double eps_valpha;  /* 1    transverse contact ratio                                     */
    double eps_vbeta;   /* 1    face contact ratio, of the effective width                   */
    double eps_vgamma;  /* 1    modified contact ratio, root of the sum of squares           */
    double eps_valphan; /* 1    transverse contact ratio of the normal section               */
    double rho_rel;     /* m    relative radius of curvature across the line of contact, at
                                the pitch point                                              */
} ts_bevel_virtual;

/* `pair` and `teeth` are solved.
 * share   b_veff/b, 0 < share <= 1: contact pattern under load over the face (usually 0.85) */
void ts_bevel_virtual_solve(const ts_bevel_pair *pair, const ts_bevel_teeth *teeth, double share,
                            ts_bevel_virtual *v, ts_workings *workings);

#endif
