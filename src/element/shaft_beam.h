/* element/shaft_beam.h: how does a stepped shaft bend, twist and lie on its bearings?  A Timoshenko
 * beam in two planes, on any number of rigid or elastic supports.
 *
 * Frame     x along the shaft, y and z across, right-handed.  v_y and v_z are deflections, theta_y
 *           = d(v_y)/dx and theta_z = d(v_z)/dx of the bent axis (turning of the sections), so
 *           theta_z turns against the y axis.  A load couple M_z turns x towards y, M_y turns z
 *           towards x; T turns y towards z.
 * Inside    Bending moments M_y = E I d(theta_y)/dx in the plane x-y, M_z likewise in x-z; Q their
 *           rise along x; T and N what the part to the right exerts on the part to the left.
 * Units     SI.  Round sections, one material.
 * Method    Unknown are the reactions and the start of the bent line; every load's line is carried
 *           on exactly from section to section, so that short steps cost no accuracy.  Forces
 *           balance to rounding.  Derived; see docs/method/shafts.md.
 * Memory    The caller's; a beam is some 40 kB.  Nothing is allocated.
 */
#ifndef TS_ELEMENT_SHAFT_BEAM_H
#define TS_ELEMENT_SHAFT_BEAM_H

#include <stdbool.h>

#define TS_BEAM_STATIONS_MOST 128
#define TS_BEAM_SUPPORTS_MOST 8
#define TS_BEAM_LOADS_MOST    64

/* From x_1 to x_2, diameters outside and inside (0: solid).  Sections follow each other without a
 * gap, ascending. */
typedef struct ts_beam_section {
    double x_1, x_2, d_o, d_i;
} ts_beam_section;

typedef struct ts_beam_support {
    double x;
    double k_r;     /* N/m       > 0, INFINITY: rigid                 */
    double k_t;     /* N.m/rad   against tilting; 0: free to tilt     */
    bool   locates; /*       carries the axial load; at most one  */
} ts_beam_support;

typedef struct ts_beam_load {
    double x;
    double F_x, F_y, F_z; /* N   */
    double T, M_y, M_z;   /* N.m */
} ts_beam_load;

typedef struct ts_beam {
    const ts_beam_section *sections;
    const ts_beam_support *supports;
    const double          *places; /* further places of interest */
    int                    section_count, support_count, place_count;
    double                 E, G;
    bool                   shear; /* false: the thin beam of Euler and Bernoulli */
} ts_beam;

typedef struct ts_beam_state {
    double v_y, v_z, theta_y, theta_z;
    double M_y, M_z, Q_y, Q_z, T, N;
    double phi; /* rad   twist against the left end */
} ts_beam_state;

typedef struct ts_beam_reaction {
    double F_x, F_y, F_z, M_y, M_z; /* on the shaft */
    double F_r;                     /* N   radial, >= 0 */
} ts_beam_reaction;

/* What depends on the shaft alone; one of these serves every load. */
typedef struct ts_beam_frame {
    int    count; /* stations, ascending in x                              */
    double x[TS_BEAM_STATIONS_MOST];
    double d_o[TS_BEAM_STATIONS_MOST], d_i[TS_BEAM_STATIONS_MOST]; /* of the stretch to the right */
    double EI[TS_BEAM_STATIONS_MOST], GA[TS_BEAM_STATIONS_MOST];   /* GA INFINITY without shear   */
    double GJ[TS_BEAM_STATIONS_MOST];
    int    support_at[TS_BEAM_SUPPORTS_MOST]; /* station of each support */
} ts_beam_frame;

typedef struct ts_beam_result {
    int              count;
    double           x[TS_BEAM_STATIONS_MOST];
    ts_beam_state    left[TS_BEAM_STATIONS_MOST], right[TS_BEAM_STATIONS_MOST]; /* of the station */
    ts_beam_reaction reaction[TS_BEAM_SUPPORTS_MOST];
    double           torque_rest; /* N.m  sum of all T: what nothing balances            */
    double           axial_rest;  /* N    sum of all F_x where no support locates         */
} ts_beam_result;

typedef enum ts_beam_fault {
    TS_BEAM_FINE,
    TS_BEAM_BAD_SECTION, /* no section, a gap, an empty length, d_i >= d_o, E or G <= 0        */
    TS_BEAM_TOO_FEW,     /* fewer than two supports, and none that holds against tilting       */
    TS_BEAM_OUTSIDE,     /* a support, load or place outside of the shaft                      */
    TS_BEAM_TWO_LOCATE,  /* two supports carry the axial load                                  */
    TS_BEAM_TOO_MANY,    /* more supports, loads or stations than there is room for    */
    TS_BEAM_BAD_NUMBER   /* a stiffness or load that is no number, k_r <= 0 or k_t < 0         */
} ts_beam_fault;
const char *ts_beam_fault_says(ts_beam_fault fault);

/* Loads may only act at stations: section ends, supports and places.  `frame` points to nothing. */
ts_beam_fault ts_beam_prepare(const ts_beam *beam, ts_beam_frame *frame);
ts_beam_fault ts_beam_solve(const ts_beam *beam, const ts_beam_frame *frame,
                            const ts_beam_load *loads, int load_count, ts_beam_result *result);

/* Station at x (to a hair), or -1. */
int ts_beam_station(const ts_beam_frame *frame, double x);

/* Share of the section that bears shear; G. R. Cowper, J. Applied Mechanics 33 (1966), 335 (from
 * memory). */
double ts_shear_coefficient(double d_o, double d_i, double nu);

#endif
