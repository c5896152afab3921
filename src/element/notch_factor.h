/* element/notch_factor.h: how much higher is the stress at the root of a notch than the nominal
 * one, in an elastic round shaft?
 *
 * Shapes    U-groove round the shaft (a neck), shoulder with fillet.  D outside, d at the notch, r
 *           its radius; nominal stress in the section d.
 * Ranges    Those of the fits, else NaN.  Charts of the same case differ by 4 to 8 % from each
 *           other: read the factors with that breadth.
 * Sources   W. D. Pilkey, Peterson's Stress Concentration Factors; R. J. Roark, Formulas for Stress
 *           and Strain.
 */
#ifndef TS_ELEMENT_NOTCH_FACTOR_H
#define TS_ELEMENT_NOTCH_FACTOR_H

#include "base/workings.h"

typedef enum ts_groove_fit { TS_GROOVE_PILKEY, TS_GROOVE_ROARK } ts_groove_fit;
/* Torsion; Pilkey for (D-d)/2r from 0.25 to 50, Roark from 0.25 to 2. */
double ts_groove_torsion_factor(ts_groove_fit fit, double D, double d, double r,
                                ts_workings *workings);

/* Pilkey; torsion for (D-d)/2r from 0.25 to 4, bending from 0.1 to 20. */
double ts_shoulder_torsion_factor(double D, double d, double r, ts_workings *workings);
double ts_shoulder_bending_factor(double D, double d, double r, ts_workings *workings);

#endif
