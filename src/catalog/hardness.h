/* catalog/hardness.h: one hardness of steel, told in another scale; ASTM E140, table 1.
 *
 * All of it is approximate by its nature: 5 to 10 HV either way is usual.  Between the rows of
 * data/hardness.tsv the value is interpolated; outside them there is none (NaN).
 */
#ifndef TS_CATALOG_HARDNESS_H
#define TS_CATALOG_HARDNESS_H

typedef enum ts_hardness_scale {
    TS_HARDNESS_HRC,
    TS_HARDNESS_HV,
    TS_HARDNESS_HBW
} ts_hardness_scale;

double ts_hardness_in(ts_hardness_scale to, double hardness, ts_hardness_scale from);

#endif
