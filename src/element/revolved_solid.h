/* element/revolved_solid.h: how large is a body that a section makes by turning about an axis, and
 * how hard is it to spin and to tilt?
 *
 * Frame     z along the axis, r from it.
 * Units     SI at density 1: V in m3, moments of inertia in m5.  Times kg/m3 they are kg and kg.m2.
 * Method    The section is a polygon; what lies between one of its edges and the axis is a frustum,
 *           whose integrals are exact polynomials (derived: integrals over r linear in z).
 * Ranges    r >= 0.  Fewer than three points are an empty body.
 */
#ifndef TS_ELEMENT_REVOLVED_SOLID_H
#define TS_ELEMENT_REVOLVED_SOLID_H

#include <stddef.h>

typedef struct ts_section_point {
    double z, r; /* m */
} ts_section_point;

typedef struct ts_solid {
    double V;   /* m3                                                            */
    double z;   /* m   its centre of volume along the axis                        */
    double I_z; /* m5  about the axis                                            */
    double I_x; /* m5  about any axis across it through the centre of volume     */
} ts_solid;

/* A closed polygon that does not cross itself, in either sense. */
ts_solid ts_revolve(const ts_section_point *points, size_t count);

/* A ring between z and z + h, whose outer radius goes evenly from R_1 to R_2 and whose inner radius
 * goes from r_1 to r_2: tube, cone, disc. */
typedef struct ts_ring {
    double z, h, R_1, R_2, r_1, r_2; /* m */
} ts_ring;
ts_solid ts_ring_solid(const ts_ring *ring);

/* Both bodies on one axis as one (parallel axis theorem for I_x). */
ts_solid ts_solid_sum(ts_solid a, ts_solid b);

/* I_x about a cross axis at `at` on the axis of the body. */
double ts_solid_tilting(const ts_solid *solid, double at);

#endif
