/* rating/scuffing/flash_temperature.h: how hot do two flanks get for an instant where they touch?
 * ISO/TS 6336-20, after H. Blok.
 *
 * Shapes    What geometry and materials decide is prepared once; a load case then costs two roots a
 *           point.
 * Units     SI; temperatures and their differences in K.
 */
#ifndef TS_RATING_FLASH_TEMPERATURE_H
#define TS_RATING_FLASH_TEMPERATURE_H

#include "base/workings.h"
#include "element/cylindrical_pair.h"
#include "element/flank_path.h"
#include "element/load_share.h"

typedef struct ts_flash_body {
    double E, nu; /* Pa, 1                                                              */
    double B_M;   /* J/(m2.K.s^0.5)   see ts_thermal_contact; 13795 for steel           */
} ts_flash_body;

typedef struct ts_flash_prepared {
    const ts_cylindrical_pair *pair; /* kept by the caller */
    ts_flank_path              path;
    ts_load_share              share;
    int                        grade;
    double                     E_r, B_M1, B_M2;
    double heat[TS_FLANK_POINTS];     /* theta_fl = 1.11 mu X_J sqrt(omega_1) heat w^(3/4)   */
    double pressure[TS_FLANK_POINTS]; /* p_H = pressure sqrt(w)                              */
    double approach[TS_FLANK_POINTS]; /* cube of the way from C, 0 where teeth recede        */
} ts_flash_prepared;

/* `driver` is 1 or 2.  path.missing says why there is no path; nothing else is then filled. */
void ts_flash_prepare(const ts_cylindrical_pair *pair, const ts_flash_body body[2], int grade,
                      int driver, ts_flash_prepared *prepared, ts_workings *workings);

typedef struct ts_flash_load {
    double w_n;      /* N/m    load normal to the flanks per length of contact, > 0             */
    double omega_1;  /* rad/s  > 0                                                              */
    double mu_m;     /* 1                                                                       */
    double r_1, r_2; /* 1      see load_share.h                                                 */
    double C_over;   /* m      C_eff less the relief of the tip that enters, 0 where negative:
                               what is left to knock                                            */
} ts_flash_load;

typedef struct ts_flash {
    double X_Gamma[TS_FLANK_POINTS];  /* 1   load share                                     */
    double p_H[TS_FLANK_POINTS];      /* Pa  greatest pressure across the contact            */
    double theta_fl[TS_FLANK_POINTS]; /* K   flash temperature, above the bulk              */
    double theta_flmax, theta_flm;    /* K   greatest (ts_flank_path_peak), and mean        */
    int    hot;                       /*     the point of the greatest                      */
} ts_flash;

void ts_flash_along(const ts_flash_prepared *prepared, const ts_flash_load *load, ts_flash *flash,
                    ts_workings *workings);

/* Notes one point as ts_flash_along notes the hottest. */
void ts_flash_point_note(const ts_flash_prepared *prepared, const ts_flash_load *load,
                         const ts_flash *flash, int point, ts_workings *workings);

#endif
