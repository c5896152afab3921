/* rating/agma2101/agma908_mesh.h: how is the load shared along the path of contact, and how curved
 * are the flanks there?  AGMA 908-B89, clauses 3 and 4: m_N, C_psi, Z_I.
 *
 * AGMA counts from the pinion, the gear with fewer teeth, which may be gear 1 or gear 2 here.
 *
 * Units     m, rad.
 * Signs     as in the pair: of an internal gear 2, rho[1] is negative.
 */
#ifndef TS_RATING_AGMA908_MESH_H
#define TS_RATING_AGMA908_MESH_H

#include "base/workings.h"
#include "element/cylindrical_pair.h"

/* How far the overlap goes: it decides which formulas hold. */
typedef enum ts_agma_overlap {
    TS_AGMA_SPUR,
    TS_AGMA_LOW_OVERLAP, /* helical, eps_beta <= 1 ("low axial contact ratio")                  */
    TS_AGMA_HELICAL      /* helical, eps_beta > 1 ("conventional helical")                      */
} ts_agma_overlap;

typedef struct ts_agma_mesh {
    ts_agma_overlap overlap;
    int             pinion;   /*      0 or 1: which gear is the pinion                          */
    double          b;        /* m    face width of the narrower gear                           */
    double          m_G;      /* 1    ratio of teeth, >= 1                                      */
    double          d_w;      /* m    operating pitch diameter of the pinion                    */
    double          beta_w;   /* rad  operating helix angle                                     */
    double          alpha_wn; /* rad  operating normal pressure angle                           */
    double          L_min;    /* m    least length of the lines of contact                      */
    double          m_N;      /* 1    load sharing ratio b/L_min; 1 unless helical              */
    double          C_psi;    /* 1    helical overlap factor; 1 unless low overlap              */
    double          C_h;      /* 1    helical factor: a slanting load line bends less           */
    double          K_psi;    /* 1    helix angle factor                                        */
    double          rho[2];   /* m    curvatures of gear 1 and gear 2 where contact is judged   */
    double          Z_I;      /* 1    geometry factor for pitting resistance (I)                */
} ts_agma_mesh;

/* The pair is a solved one with eps_alpha >= 1.  Z_I is NaN (and rho with it) when the path of
 * contact reaches past a base circle. */
void ts_agma_mesh_solve(const ts_cylindrical_pair *pair, ts_agma_mesh *mesh, ts_workings *workings);

/* The closed form of textbooks: curvatures at the pitch point, standard centre distance.  It comes
 * out larger than Z_I (by 3 % at 21/21 teeth, 14 % at 21/55) and is kept to redo their examples.
 * m_G: the larger number of teeth over the smaller; internal: an internal wheel. */
double ts_agma_pitch_point_factor(double alpha_t, double m_G, double m_N, bool internal,
                                  ts_workings *workings);
/* m_N = p_bn/(0.95 g_alpha) of textbooks, for helical gears (1 for spur gears); m. */
double ts_agma_load_share_simple(double p_bn, double g_alpha, ts_workings *workings);

#endif
