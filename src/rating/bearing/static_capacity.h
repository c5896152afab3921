/* rating/bearing/static_capacity.h: which standing load dents a bearing no more than it may?
 * ISO 76:2006, radial bearings (from memory).
 *
 * Units     SI; alpha in rad.
 * Meaning   At C_0r the most loaded contact is pressed with 4200 MPa (balls) or 4000 MPa (rollers),
 *           a fifth of the load of all elements being five times that of one: Q_max = 5 C_0r/(i Z).
 */
#ifndef TS_RATING_STATIC_CAPACITY_H
#define TS_RATING_STATIC_CAPACITY_H

#include "base/workings.h"

/* f_0 of ISO 76, table 1, in N/mm2; gamma up to 0.40, NaN beyond. */
double ts_static_f_0(double gamma, ts_workings *workings);
double ts_ball_static_capacity(double f_0, int i, int Z, double D_w, double alpha,
                               ts_workings *workings);

typedef struct ts_static_rollers {
    int    i, Z;
    double D_we, L_we, D_pw, alpha;
} ts_static_rollers;
double ts_roller_static_capacity(const ts_static_rollers *rollers, ts_workings *workings);

/* Two equal bearings side by side bear `i` times the standing load of one. */
double ts_static_rows_gain(double i, ts_workings *workings);

/* Factors of P_0 = max(F_r, X_0 F_r + Y_0 F_a). */
typedef struct ts_static_factors {
    double X_0, Y_0;
} ts_static_factors;
ts_static_factors ts_static_deep_groove(void);
/* alpha from 5 to 45 degrees, linear between the printed angles; NaN outside.  A pair back to back
 * or face to face takes the second column. */
ts_static_factors ts_static_angular_contact(double alpha, int rows);
double ts_static_load(ts_static_factors factors, double F_r, double F_a, ts_workings *workings);

#endif
