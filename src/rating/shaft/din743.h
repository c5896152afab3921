/* rating/shaft/din743.h: does a section of a shaft hold against yield and fatigue?  DIN 743:2012,
 * parts 1 to 3 (from memory).
 *
 * Units     SI.  Stresses are nominal ones in the section d (bore d_i).
 * Parts     zd: pull or push along the shaft, b: bending, t: torsion.  Each has an amplitude, a
 *           mean and a greatest value, all >= 0.
 * Ranges    Steel of 16 to 2000 MPa tensile strength, d up to 500 mm, no cracks, no corrosion.
 * Missing   NaN.  A part without stress takes nothing from the safety.
 * Sources   docs/method/shafts.md
 */
#ifndef TS_RATING_DIN743_H
#define TS_RATING_DIN743_H

#include "base/workings.h"

#include <stdbool.h>

typedef enum ts_din_steel_kind {
    TS_DIN_TEMPERED,      /* quenched and tempered        */
    TS_DIN_CASE_HARDENED, /* strengths of the core        */
    TS_DIN_NITRIDED,
    TS_DIN_STRUCTURAL /* normalised                   */
} ts_din_steel_kind;

typedef struct ts_din_steel {
    ts_din_steel_kind kind;
    double            sigma_B, sigma_S; /* Pa   tensile strength, yield, of the diameter d_B    */
    double            d_B;              /* m                                                    */
    double sigma_zdW, sigma_bW, tau_tW; /* Pa   fatigue strengths of d_B; NaN: 0.4, 0.5, 0.3 of
                                           sigma_B                                              */
} ts_din_steel;

typedef enum ts_din_notch_kind {
    TS_DIN_SMOOTH,
    TS_DIN_SHOULDER, /* D, d, r                                    */
    TS_DIN_GROOVE,   /* D, d, r: round groove, a neck              */
    TS_DIN_UNDERCUT, /* D, D_1, d, r: groove at the foot of a shoulder, D_1 the journal */
    TS_DIN_KEYWAY,
    TS_DIN_TWO_KEYWAYS,
    TS_DIN_PRESS_FIT,
    TS_DIN_INVOLUTE_SPLINE, /* d: root diameter                         */
    TS_DIN_STRAIGHT_SPLINE,
    TS_DIN_SERRATION,
    TS_DIN_GIVEN, /* beta of its own */
    TS_DIN_NOTCH_COUNT
} ts_din_notch_kind;
const char *ts_din_notch_name(ts_din_notch_kind kind); /* "shoulder" */

typedef enum ts_din_part { TS_DIN_ZD, TS_DIN_B, TS_DIN_T, TS_DIN_PARTS } ts_din_part;

typedef struct ts_din_section {
    ts_din_notch_kind notch;
    double            d, d_i;    /* m   nominal section, bore                                    */
    double            D, D_1, r; /* m   of the notch, where its kind says so                     */
    double            R_z;       /* m   mean roughness depth                                     */
    double            d_eff;     /* m   heat-treated diameter; NaN: the larger of d and D        */
    double            K_V;       /* strengthened surface; 1: none                                */
    double beta[TS_DIN_PARTS];   /* of TS_DIN_GIVEN, >= 1                                        */
    bool   mean_follows;         /* overload raises mean and amplitude alike (case 2); else the
                                    mean stays (case 1)                                          */
} ts_din_section;

typedef struct ts_din_stress {
    double a[TS_DIN_PARTS], m[TS_DIN_PARTS], most[TS_DIN_PARTS]; /* Pa */
} ts_din_stress;

/* What depends on section and steel alone. */
typedef struct ts_din_ability {
    double K_1B, K_1S;          /* of strength and of yield               */
    double alpha[TS_DIN_PARTS]; /* NaN where the kind has only a beta     */
    double beta[TS_DIN_PARTS];
    double K_2[TS_DIN_PARTS], K_F[TS_DIN_PARTS], K[TS_DIN_PARTS];
    double sigma_WK[TS_DIN_PARTS], sigma_FK[TS_DIN_PARTS]; /* Pa */
    double sigma_BK;                                       /* Pa   K_1B sigma_B */
} ts_din_ability;

typedef enum ts_din_fault {
    TS_DIN_FINE,
    TS_DIN_BAD_STEEL,   /* a strength or d_B not above 0, or yield above strength */
    TS_DIN_BAD_SECTION, /* diameters, radius, roughness or K_V out of range       */
    TS_DIN_BAD_NOTCH    /* the notch's own sizes do not fit its kind              */
} ts_din_fault;
const char *ts_din_fault_says(ts_din_fault fault);

ts_din_fault ts_din_prepare(const ts_din_steel *steel, const ts_din_section *section,
                            ts_din_ability *ability, ts_workings *workings);

/* Safety against fatigue and against yield; infinite without stress.  At least 1.2 each is asked
 * for by the standard. */
typedef struct ts_din_safety {
    double S_D, S_F;
    double sigma_ADK[TS_DIN_PARTS]; /* Pa   bearable amplitudes */
} ts_din_safety;
ts_din_safety ts_din_rate(const ts_din_section *section, const ts_din_ability *ability,
                          const ts_din_stress *stress, ts_workings *workings);

/* Nominal stresses of N, M and T in the section. */
double ts_nominal_axial(double N, double d, double d_i, ts_workings *workings);
double ts_nominal_bending(double M, double d, double d_i, ts_workings *workings);
double ts_nominal_torsion(double T, double d, double d_i, ts_workings *workings);

/* Stress concentration alpha and fatigue notch factor beta of a kind, exposed for the necks:
 * `gradient` is the relative stress gradient in 1/m. */
double ts_din_alpha(ts_din_notch_kind kind, ts_din_part part, const ts_din_section *section);
double ts_din_gradient(ts_din_notch_kind kind, ts_din_part part, const ts_din_section *section);
double ts_din_support(double gradient, double sigma_S, bool hard_surface);

/* K_1B of a blank heat-treated at the diameter d_eff (m; DIN 743-2, 5.1): 1 up to d_B; kind and d_B
 * of the steel alone are read.  K_2 of bending and torsion at the diameter d (DIN 743-2, 5.4).  K_F
 * of torsion, and into *K_Fb that of bending, of the roughness R_z (m) and the strength sigma_BK
 * (DIN 743-2, 5.5).  Exposed for the necks. */
double ts_din_size_of_blank(const ts_din_steel *steel, double d_eff, ts_workings *workings);
double ts_din_size_of_gradient(double d);
double ts_din_roughness(double R_z, double sigma_BK, double *K_Fb, ts_workings *workings);

#endif
