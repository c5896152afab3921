/* element/tooth_tolerance.h: how far may a flank deviate?  ISO 1328-1:2013, and :1995 beside it;
 * radial composite deviations of ISO 1328-2:1997.
 *
 * Units     m, rad.  Every result is rounded as its edition rounds, so that it is a value of a
 *           drawing: 6.5 um, never 6.47 um.
 * Ranges    What lies outside a range of the standard is told in `remarks`, each with its clause.
 *           2013 goes on with its formulas there; 1995 and 1997 know no value between the limits
 *           that are missing, and the result is NaN.  A class that the edition lacks has no
 *           tolerance at all.
 * Workings  Each tolerance is noted before and after rounding.
 * Sources   docs/method/iso1328.md.
 */
#ifndef TS_ELEMENT_TOOTH_TOLERANCE_H
#define TS_ELEMENT_TOOTH_TOLERANCE_H

#include "base/workings.h"

typedef struct ts_tolerance_input {
    double m_n;  /* m    normal module                                                  */
    double d;    /* m    reference diameter; its sign (internal gears) is of no account */
    double b;    /* m    face width; NaN: not known, and only F_beta and its parts lack */
    double beta; /* rad  helix angle                                                    */
    int class;   /*      of the gear, finest first                                      */
} ts_tolerance_input;

/* Sets of these. */
typedef enum ts_tolerance_remark {
    TS_TOLERANCE_CLASS    = 1 << 0,
    TS_TOLERANCE_MODULE   = 1 << 1,
    TS_TOLERANCE_DIAMETER = 1 << 2,
    TS_TOLERANCE_WIDTH    = 1 << 3,
    TS_TOLERANCE_TEETH    = 1 << 4,
    TS_TOLERANCE_HELIX    = 1 << 5
} ts_tolerance_remark;
#define TS_TOLERANCE_REMARKS 6

/* m; NaN where there is none.  Symbols of 2013 carry a T for tolerance, f_pT; the notes do too. */
typedef struct ts_tooth_tolerance {
    double   f_p;      /* single pitch                                                   */
    double   F_p;      /* total cumulative pitch                                         */
    double   f_Halpha; /* profile slope                                                  */
    double   f_falpha; /* profile form                                                   */
    double   F_alpha;  /* total profile                                                  */
    double   f_Hbeta;  /* helix slope                                                    */
    double   f_fbeta;  /* helix form                                                     */
    double   F_beta;   /* total helix                                                    */
    double   F_r;      /* runout: an annex of 2013; ISO 1328-2:1997 beside 1995          */
    unsigned remarks;
} ts_tooth_tolerance;

/* Classes 1 to 11; 5 <= z <= 1000, 5 mm <= d <= 15 m, 0.5 <= m_n <= 70 mm, 4 mm <= b <= 1.2 m,
 * beta <= 45 degrees. */
ts_tooth_tolerance ts_tooth_tolerance_2013(const ts_tolerance_input *in, ts_workings *workings);

/* Classes 0 to 12; 5 mm <= d <= 10 m, 0.5 <= m_n <= 70 mm, 4 mm <= b <= 1 m. */
ts_tooth_tolerance ts_tooth_tolerance_1995(const ts_tolerance_input *in, ts_workings *workings);

typedef struct ts_radial_tolerance {
    double   F_ipp; /* total radial composite, both flanks against a master gear */
    double   f_ipp; /* the same from tooth to tooth                              */
    unsigned remarks;
} ts_radial_tolerance;

/* Classes 4 to 12; 5 mm <= d <= 1 m, 0.2 <= m_n <= 10 mm. */
ts_radial_tolerance ts_radial_tolerance_1997(const ts_tolerance_input *in, ts_workings *workings);

typedef enum ts_tolerance_year {
    TS_TOLERANCE_2013,
    TS_TOLERANCE_1995,
    TS_RADIAL_1997
} ts_tolerance_year;

/* One of the remarks of that edition as a sentence without a full stop, and its clause. */
const char *ts_tolerance_remark_says(ts_tolerance_remark remark, ts_tolerance_year year);
const char *ts_tolerance_remark_clause(ts_tolerance_remark remark, ts_tolerance_year year);

#endif
