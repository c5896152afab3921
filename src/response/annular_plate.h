/* response/annular_plate.h: with which frequencies does the web of a gear swing across its plane,
 * and which speeds let a fixed mesh excite its waves?
 *
 * Model: a thin plate between the radii b and a, and at a a ring (the rim with its teeth) that
 * moves and turns with the edge: Kirchhoff's plate, a ring that bends out of its plane and twists.
 * Shapes w = f(r) cos(n theta), n nodal diameters.
 *
 * Method: Ritz; polynomials that keep what the held edge asks, energies by Gauss's rule; the
 * frequencies are upper bounds that fall with the terms.
 *
 * Left out: stiffening by the turning (Southwell): B = 0 unless it is told.
 *
 * Sources: A. Leissa, Vibration of Plates, NASA SP-160 (from memory) for values to check against.
 */
#ifndef TS_RESPONSE_ANNULAR_PLATE_H
#define TS_RESPONSE_ANNULAR_PLATE_H

#include <stdbool.h>

typedef enum ts_plate_hold {
    TS_PLATE_HUB,  /* clamped at b > 0, free at a */
    TS_PLATE_FREE, /* a whole disc, free all round */
    TS_PLATE_EDGE  /* a whole disc, clamped at a  */
} ts_plate_hold;

typedef struct ts_annular_plate {
    ts_plate_hold hold;
    double        b, a, h; /* m; thickness h                                     */
    double        E, nu, rho;
    double        ring_mass;    /* kg/m along the edge                                */
    double        ring_turning; /* kg.m, mass inertia per length about the tangent    */
    double        ring_bending; /* N.m2, E I of the ring across its plane             */
    double        ring_twist;   /* N.m2, G J of it                                    */
} ts_annular_plate;

/* Hz, of n nodal diameters and, beside those that the hold makes, 0 to 3 nodal circles; a free disc
 * needs one of its own where n < 2, for it moves and tilts without any strain.  NaN: the plate is
 * no plate, or has no such mode. */
double ts_plate_frequency(const ts_annular_plate *plate, int n, int circles);

/* The speed (Hz) at which the k-th harmonic of z teeth meets the wave of n diameters that runs
 * forward (+1) or backward (-1): k z N = f +- n N, with f^2 = f_0^2 + B N^2.  INFINITY: none. */
double ts_wave_speed(double f_0, double B, int z, int n, int k, int sense);
/* Hz, of that wave as it is seen from the housing at the speed N. */
double ts_wave_frequency(double f_0, double B, double N, int n, int sense);

#endif
