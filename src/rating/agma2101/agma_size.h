/* rating/agma2101/agma_size.h: what do the size of a tooth and the rim below it add to its stress?
 * ANSI/AGMA 2101-D04, clause 20 (K_s), clause 5 and annex B (K_B).
 */
#ifndef TS_RATING_AGMA_SIZE_H
#define TS_RATING_AGMA_SIZE_H

#include "rating/agma2101/agma908_root.h"

/* K_B of a rim of thickness t_R under teeth of height h_t (m): 1 for a rim of 1.2 h_t and more. The
 * curve is drawn down to 0.5 h_t; below it the formula is carried on.  gear: 0 or 1. */
double ts_agma_rim_factor(double t_R, double h_t, int gear, ts_workings *workings);
#define TS_AGMA_RIM_LEAST 0.5

/* K_s: the standard takes 1 unless a size effect is known.  Shigley's textbook takes another: the
 * size factor of a rotating beam as large as the loaded root, with Lewis's form factor Y.
 * b, m_t: m.  gear: 0 or 1. */
double ts_agma_size_factor_beam(double b, double m_t, double Y, int gear, ts_workings *workings);

/* Lewis's form factor of a section that was found with the load at the tip: s_F^2/(6 h_F).  (Tables
 * of it were drawn for sharper tools and lie 2 to 8 % higher.) */
double ts_agma_lewis_form(const ts_agma_root *root, int gear, ts_workings *workings);

/* Tangential force, N, that bends a tooth to sigma (Pa) after Lewis: F, m in m. */
double ts_agma_lewis_load(double sigma, double b, double m, double Y, double K_v,
                          ts_workings *workings);

#endif
