/* rating/bearing/life_modification.h: how do oil film, dirt and wanted reliability change the life?
 * ISO 281:2007, clause 9, annexes A and B: L_nm = a_1 a_ISO L_10 (from memory).
 *
 * Units     SI inside; the standard's numbers stand in the formula texts.
 * Ranges    kappa 0.1 to 4 (above 4 it counts as 4), a_ISO at most 50; below 0.1 no a_ISO: NaN.
 * Doubts    The coefficients are recalled; their branches join to 4e-4, which speaks for them.
 *           nu_1 jumps by 2.3 % at 1000 rpm: so does the standard.
 */
#ifndef TS_RATING_LIFE_MODIFICATION_H
#define TS_RATING_LIFE_MODIFICATION_H

#include "base/workings.h"

typedef enum ts_rolling_element { TS_ROLLING_BALLS, TS_ROLLING_ROLLERS } ts_rolling_element;

/* a_1 at reliability S, a share of 1 from 0.9 to below 1: the law behind table 12. */
double ts_reliability_factor(double S, ts_workings *workings);

/* Least viscosity for a film, m2/s; n rad/s, D_pw m. */
double ts_reference_viscosity(double n, double D_pw, ts_workings *workings);
double ts_viscosity_ratio(double nu, double nu_1, ts_workings *workings);

/* Fatigue load limit of high-quality bearing steel, simple form of annex B.3.3. */
double ts_fatigue_load_limit(ts_rolling_element element, double C_0r, double D_pw,
                             ts_workings *workings);

/* How clean is the oil?  Circulating oil by its filter (ISO 4406 code after a filter on the line)
 * or by the oil itself (bath, or a filter beside the circuit). */
typedef enum ts_cleanness {
    TS_ON_LINE_13_10, /* -/13/10, beta_6 >= 200    */
    TS_ON_LINE_15_12, /* -/15/12, beta_12 >= 200   */
    TS_ON_LINE_17_14, /* -/17/14, beta_25 >= 75    */
    TS_ON_LINE_19_16, /* -/19/16, beta_40 >= 75    */
    TS_OFF_LINE_13_10,
    TS_OFF_LINE_15_12,
    TS_OFF_LINE_17_14,
    TS_OFF_LINE_19_16,
    TS_OFF_LINE_21_18,
    TS_CLEANNESS_COUNT
} ts_cleanness;
const char *ts_cleanness_name(ts_cleanness cleanness); /* "on line 15/12" */

/* e_C = a (1 - b/D_pw^(1/3)), a = a_c kappa^0.68 D_pw^0.55 at most 1; never below 0. */
double ts_contamination_factor(double a_c, double b, double kappa, double D_pw,
                               ts_workings *workings);
double ts_contamination_of(ts_cleanness cleanness, double kappa, double D_pw,
                           ts_workings *workings);

/* What e_C asks of the pitch diameter alone: one for all duties of a bearing. */
typedef struct ts_dirt_room {
    double D_pw;  /* m                  */
    double power; /* D_pw^0.55,  in mm  */
    double root;  /* D_pw^(1/3), in mm  */
} ts_dirt_room;
ts_dirt_room ts_dirt_room_of(double D_pw);
double       ts_contamination_in(const ts_dirt_room *room, ts_cleanness cleanness, double kappa,
                                 ts_workings *workings);

/* How much of the root of q counts in a_ISO with that film; NaN below kappa 0.1.  Then a_ISO
 * itself.
 */
double ts_film_share(ts_rolling_element element, double kappa);
double ts_life_with_film(ts_rolling_element element, double film, double q);

/* a_ISO of radial bearings; q = e_C C_u/P. */
double ts_life_modification(ts_rolling_element element, double kappa, double q,
                            ts_workings *workings);
double ts_fatigue_load_share(double e_C, double C_u, double P, ts_workings *workings);

#endif
