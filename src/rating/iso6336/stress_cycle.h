/* rating/iso6336/stress_cycle.h: how much stress for how many cycles?  ISO 6336-2, clause 11
 * (Z_NT), ISO 6336-3, clause 12 (Y_NT): straight lines between nodes on two logarithmic scales.
 */
#ifndef TS_RATING_STRESS_CYCLE_H
#define TS_RATING_STRESS_CYCLE_H

#include "base/workings.h"
#include "catalog/gear_material.h"

#include <stdbool.h>

typedef enum ts_rated_stress { TS_RATED_CONTACT, TS_RATED_BENDING } ts_rated_stress;

/* The nodes of a class.  N_mid = 0: there is none. */
typedef struct ts_life_nodes {
    double N_stat, N_mid, N_ref;
    double at_stat, at_mid; /* life factor there; 1 at N_ref */
} ts_life_nodes;

/* pitting: is some pitting permitted (contact of Eh, IF, V, St only)? */
ts_life_nodes ts_life_nodes_contact(ts_gear_class class, bool pitting);
ts_life_nodes ts_life_nodes_bending(ts_gear_class class);

/* The last node, in cycles: 0.85 in general, up to 1 for the best practice. */
#define TS_LIFE_LONG 1e10

/* The nodes with their logarithms and the slopes between them, worked out once a mesh.  Each line
 * is factor = factor_end*(N_end/N)^slope. */
typedef struct ts_life_lines {
    ts_life_nodes nodes;
    double        at_long; /* 0 < at_long <= 1, at 1e10                             */
    double        ln_stat, ln_mid, ln_ref;
    double        upper, lower; /* before and after N_mid; lower alone where there is none */
    double        fall;         /* beyond N_ref; 0: endurance                             */
} ts_life_lines;
ts_life_lines ts_life_lines_of(const ts_life_nodes *nodes, double at_long);

/* A number of load cycles, > 0, with its logarithm. */
typedef struct ts_cycles {
    double N, ln;
} ts_cycles;
ts_cycles ts_cycles_of(double N);

/* One straight line through (N_a, f_a) and (N_b, f_b), at N; all > 0. */
double ts_life_between(double N_a, double f_a, double N_b, double f_b, double N,
                       ts_workings *workings);

/* Z_NT or Y_NT by the nodes alone.  Beyond 1e10 cycles the last line is carried on.  gear: 0 or 1.
 */
double ts_life_factor(const ts_life_lines *lines, ts_cycles cycles, ts_rated_stress stress,
                      int gear, ts_workings *workings);

/* The same lines as stresses of one tooth, Pa: what it bears at most (static), at N_ref, and what
 * is left of that later.  Each line is sigma = sigma_end*(N_end/N)^slope. */
typedef struct ts_life_curve {
    double N_stat, N_mid, N_ref;
    double sigma_stat, sigma_mid, sigma_ref;
    double upper, lower, fall; /* slopes, as in ts_life_lines */
} ts_life_curve;

/* sigma_stat is raised to sigma_ref where it lies below it. */
ts_life_curve ts_life_curve_of(const ts_life_lines *lines, double sigma_stat, double sigma_ref);
/* The limit stress sigma_HG or sigma_FG for so many cycles; life_factor: Z_NT or Y_NT there. */
typedef struct ts_life_question {
    ts_cycles       cycles;
    double          life_factor;
    ts_rated_stress stress;
    int             gear; /* 0 or 1 */
} ts_life_question;
double ts_life_curve_stress(const ts_life_curve *curve, const ts_life_lines *lines,
                            const ts_life_question *question, ts_workings *workings);
/* The cycles that a stress may be borne: 0 above sigma_stat, INFINITY below endurance. */
double ts_life_curve_cycles(const ts_life_curve *curve, double sigma);
/* The slope of the line on which that stress lies. */
double ts_life_curve_slope(const ts_life_curve *curve, double sigma);

/* The same for S times a stress that is asked about with many S: how far it lies below the ends of
 * its lines, ln(sigma_end/sigma), is worked out once. */
typedef struct ts_life_depth {
    double ln_mid, ln_ref;
} ts_life_depth;
typedef struct ts_borne {
    double N, slope; /* cycles as above, slope of the line */
} ts_borne;
ts_life_depth ts_life_depth_of(const ts_life_curve *curve, double sigma);
ts_borne      ts_life_curve_borne(const ts_life_curve *curve, double sigma, ts_life_depth depth,
                                  double S, double ln_S);

#endif
