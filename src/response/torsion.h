/* response/torsion.h: how does a train of bodies and springs swing in torsion?  Geared, branched,
 * in loops, held or free.
 *
 * Model     Bodies with moments of inertia turn with coordinates q: theta = factor * q, so that
 *           bodies behind a rigid mesh share a coordinate.  A spring stores k s^2/2 with the
 *           stretch s = g_a q_a - g_b q_b: a shaft has g = 1 and k in N.m/rad, a mesh has the base
 *           radii and k in N/m along the line of action.
 * Signs     The caller's.  With every angle counted in the sense in which its shaft runs, all
 *           meshes have two positive radii.
 * Method    K x = omega^2 M x, made symmetric by M^-1/2, by LAPACK (dsyev); omega then from the
 *           energies of the shape, a sum of squares in which nothing cancels.  Where bodies can
 *           turn without any stretch, that mode is found by following the springs, and its omega
 *           is 0 and no small number.
 * Units     SI; omega in rad/s.
 */
#ifndef TS_RESPONSE_TORSION_H
#define TS_RESPONSE_TORSION_H

#include "base/arena.h"

#include <stdbool.h>
#include <stdint.h>

#define TS_HELD                                                                                    \
    UINT32_MAX /* in place of a coordinate: the spring ends in something that stands               \
                */

typedef struct ts_twist_body {
    double   J;      /* kg.m2, >= 0                  */
    uint32_t at;     /* coordinate                   */
    double   factor; /* angle of the body over it    */
} ts_twist_body;

typedef struct ts_twist_spring {
    uint32_t a, b;     /* coordinates; b may be TS_HELD */
    double   g_a, g_b; /* 1 and 1, or m and m           */
    double   k;        /* N.m/rad, or N/m; > 0          */
} ts_twist_spring;

typedef struct ts_twist_model {
    const ts_twist_body   *bodies;
    size_t                 body_count;
    const ts_twist_spring *springs;
    size_t                 spring_count;
    size_t                 coordinate_count; /* each with some inertia */
} ts_twist_model;

typedef struct ts_twist_modes {
    size_t  count;    /* as many as coordinates, slowest first                           */
    size_t  rigid;    /* the first of them, with omega 0                                 */
    double *omega;    /* [mode] rad/s                                                    */
    double *shape;    /* [mode * body_count + body] angle, the largest of a mode is 1    */
    double *strain;   /* [mode * spring_count + spring] share of the strain energy       */
    double *kinetic;  /* [mode * body_count + body] share of the kinetic energy          */
    double  residual; /* of K x = omega^2 M x, largest over all modes, relative to the largest
                         entry of K x and omega^2 M x together                           */
} ts_twist_modes;

typedef enum ts_twist_fault {
    TS_TWIST_FINE,
    TS_TWIST_BAD_NUMBER, /* an inertia, stiffness or radius that is no number, or below 0 */
    TS_TWIST_NO_INERTIA, /* a coordinate without any inertia                              */
    TS_TWIST_BAD_LINK,   /* a body or spring names a coordinate that is not there         */
    TS_TWIST_TOO_MANY,   /* more than 2000 coordinates                                    */
    TS_TWIST_NO_ANSWER,  /* LAPACK did not converge                                       */
    TS_TWIST_NO_MEMORY
} ts_twist_fault;
const char *ts_twist_fault_says(ts_twist_fault fault);

ts_twist_fault ts_twist_solve(const ts_twist_model *model, ts_arena *arena, ts_twist_modes *modes);

#endif
