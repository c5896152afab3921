/* element/film_thickness.h: how thick is the oil film that the speed of two surfaces draws in
 * between them?  Elastohydrodynamic films of smooth bodies, fully flooded, at one temperature.
 *
 * Groups    H = h/R, U = eta_0*u/(E_r*R), G = alpha_p*E_r, W = Q/(E_r*R^2) of a point and
 *           w/(E_r*R) of a line contact.  R is R_x, the reduced radius in the direction of rolling;
 *           u the mean of both surface speeds; E_r as in hertz.h.  (Some books put (1/R_x +
 *           1/R_y)^-1 everywhere and find films 28 % thinner: never mix.)
 * Ranges    The fits rest on U from about 1e-13 to 1e-11, G from 2000 to 6000, W up to 1e-6
 *           (point) and 3e-4 (line); the caller judges.
 */
#ifndef TS_ELEMENT_FILM_THICKNESS_H
#define TS_ELEMENT_FILM_THICKNESS_H

#include "base/workings.h"

/* The groups of SI quantities: eta_0 Pa.s, u m/s, alpha_p 1/Pa, Q N, w N/m. */
double ts_film_speed_group(double eta_0, double u, double E_r, double R, ts_workings *workings);
double ts_film_material_group(double alpha_p, double E_r, ts_workings *workings);
double ts_film_load_group_point(double Q, double E_r, double R, ts_workings *workings);
double ts_film_load_group_line(double w, double E_r, double R, ts_workings *workings);

/* Ellipticity across over along the rolling, from the radii: 1.03 (R_y/R_x)^0.64 of Hamrock and
 * Dowson 1977, 1.0339 (R_y/R_x)^0.636 of Brewe and Hamrock. */
double ts_ellipticity_1977(double R_x, double R_y, ts_workings *workings);
double ts_ellipticity_brewe(double R_x, double R_y, ts_workings *workings);

/* Hamrock and Dowson 1977: least and central film of a point contact, as H. */
double ts_film_point_least(double U, double G, double W, double k, ts_workings *workings);
double ts_film_point_central(double U, double G, double W, double k, ts_workings *workings);

/* Dowson and Higginson: least film of a line contact, as H. */
double ts_film_line_least(double U, double G, double W, ts_workings *workings);

/* How viscosity grows with pressure: alpha_p in 1/Pa from eta (Pa.s) at the same temperature. */
typedef enum ts_base_oil {
    TS_OIL_MINERAL,
    TS_OIL_PAO,       /* polyalphaolefin                    */
    TS_OIL_PAG,       /* polyglycol                         */
    TS_OIL_MIL_7808,  /* turbine oils, esters of 3 mm2/s    */
    TS_OIL_MIL_23699, /* and of 5 mm2/s at 100 degrees C    */
    TS_OIL_COUNT
} ts_base_oil;
double      ts_pressure_viscosity(ts_base_oil oil, double eta, ts_workings *workings);
const char *ts_base_oil_name(ts_base_oil oil); /* "mineral" */

#endif
