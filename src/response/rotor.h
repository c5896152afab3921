/* response/rotor.h: at which speeds does a shaft whirl, and how far does its unbalance bend it?
 *
 * Model     A round stepped shaft as beam elements with shear, rotatory inertia and
 *           gyroscopic moments, discs on it, bearings that are alike in all directions, and joints
 *           at which it may tilt, as a spline lets it.
 * Whirl     As every direction is alike, v = v_y + i v_z whirls in circles: (K - w^2 M + w Omega G)
 *           x = 0, with w > 0 forward; backward whirl is Omega taken negative.  Nelson, J.
 *           Mechanical Design 102 (1980), 793, elements and matrices (from memory).
 * Method    By counting how many eigenvalues of that matrix are below zero, as many whirl speeds
 * are below w: none is lost.  What is found is settled by Rayleigh's quotient, and counted again.
 * Memory    The caller's; nothing is allocated.
 * Units     SI; speeds in rad/s.
 */
#ifndef TS_RESPONSE_ROTOR_H
#define TS_RESPONSE_ROTOR_H

#include <stdbool.h>
#include <stddef.h>

#define TS_ROTOR_NODES_MOST  96
#define TS_ROTOR_JOINTS_MOST 4
#define TS_ROTOR_DOF_MOST    (2 * TS_ROTOR_NODES_MOST + TS_ROTOR_JOINTS_MOST)
#define TS_ROTOR_BAND        5 /* of a row with its diagonal */

typedef struct ts_rotor_section {
    double x_1, x_2, d_o, d_i;
    double d_m; /* outside of what weighs, d_i <= d_m; what is beyond stands among the discs */
} ts_rotor_section;

typedef struct ts_rotor_disc {
    double x, m, I_p, I_d; /* m; kg; kg.m2 about the axis, and across it */
} ts_rotor_disc;

typedef struct ts_rotor_bearing {
    double x;
    double k_r;  /* N/m      > 0                                             */
    double k_t;  /* N.m/rad  against tilting; 0: none                        */
    double c_r;  /* N.s/m                                                    */
    double loss; /* of k_r: it is k_r (1 + i loss)                           */
} ts_rotor_bearing;

typedef struct ts_rotor_joint {
    double x;
    double k_t; /* N.m/rad; 0: a hinge */
} ts_rotor_joint;

typedef struct ts_rotor {
    const ts_rotor_section *sections; /* ascending, without a gap */
    int                     section_count;
    const ts_rotor_disc    *discs;
    int                     disc_count;
    const ts_rotor_bearing *bearings;
    int                     bearing_count;
    const ts_rotor_joint   *joints;
    int                     joint_count;
    double                  E, G, rho;
    double                  kappa; /* share of the section that bears shear; 0: by Cowper        */
    bool   shearless; /* sections stay square to the bent line                                    */
    bool   slopeless; /* the shaft itself has no rotatory inertia                                */
    double longest;   /* m, of an element; 0: a fortieth of the shaft             */
} ts_rotor;

typedef enum ts_rotor_fault {
    TS_ROTOR_FINE,
    TS_ROTOR_BAD_SECTION, /* none, a gap, an empty length, d_o <= d_i, E, G or rho <= 0         */
    TS_ROTOR_BAD_NUMBER,  /* a stiffness, mass or inertia that is no number or below 0          */
    TS_ROTOR_OUTSIDE,     /* a disc, bearing or joint beyond the shaft                         */
    TS_ROTOR_TOO_MANY,    /* more nodes or joints than there is room for                       */
    TS_ROTOR_LOOSE        /* the bearings do not hold it against moving or tilting               */
} ts_rotor_fault;
const char *ts_rotor_fault_says(ts_rotor_fault fault);

/* The matrices of a rotor; some 40 kB. */
typedef struct ts_rotor_frame {
    int    nodes, dofs;
    double x[TS_ROTOR_NODES_MOST];
    int    v[TS_ROTOR_NODES_MOST]; /* number of the deflection; the slope left of the node is next,
                                      at a joint the slope right of it after that               */
    double K[TS_ROTOR_DOF_MOST][TS_ROTOR_BAND]; /* [row][row - column] */
    double M[TS_ROTOR_DOF_MOST][TS_ROTOR_BAND];
    double G[TS_ROTOR_DOF_MOST][TS_ROTOR_BAND];
    double mass; /* kg, all of it */
} ts_rotor_frame;

ts_rotor_fault ts_rotor_prepare(const ts_rotor *rotor, ts_rotor_frame *frame);
/* The node at x (to a hair), or -1. */
int ts_rotor_node(const ts_rotor_frame *frame, double x);

typedef enum ts_whirl_sense { TS_WHIRL_BACKWARD = -1, TS_WHIRL_FORWARD = 1 } ts_whirl_sense;

/* The whirl speed of that number (0: the slowest) and sense while it turns with Omega >= 0. `shape`
 * [TS_ROTOR_DOF_MOST] may be NULL: its largest deflection is 1.  `near` > 0 is where it is sought
 * first, `shape` being what it was there. */
double ts_rotor_whirl(const ts_rotor_frame *frame, double Omega, ts_whirl_sense sense, int number,
                      double near, double *shape);

/* The critical speed of that number: whirl with the speed of the shaft, which unbalance excites
 * when forward.  INFINITY: there is none, as gyroscopic moments hold the shaft straight. */
double ts_rotor_critical(const ts_rotor_frame *frame, ts_whirl_sense sense, int number,
                         double *shape);

/* How many criticals of that sense are below w. */
int ts_rotor_criticals_below(const ts_rotor_frame *frame, ts_whirl_sense sense, double w);

/* kg.m of unbalance at a node; several may stand side by side, all in one plane. */
typedef struct ts_rotor_unbalance {
    int    node;
    double U; /* its sign: the side */
} ts_rotor_unbalance;

/* Deflection of every node: real[node], imaginary[node] against the plane of the unbalance. */
bool ts_rotor_respond(const ts_rotor *rotor, const ts_rotor_frame *frame, double Omega,
                      const ts_rotor_unbalance *unbalance, int count, double *real,
                      double *imaginary);

/* Residual unbalance that a balance quality grade allows, kg.m; ISO 21940-11:2016, U_per = 1000
 * (e_per Omega) m/Omega (from memory): `grade` in m/s, as 0.0025 for G 2.5. */
double ts_permissible_unbalance(double grade, double mass, double Omega);

#endif
