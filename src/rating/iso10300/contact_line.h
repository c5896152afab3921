/* rating/iso10300/contact_line.h: how do the lines of contact share the load?
 * ISO 10300-1:2014, annex A (lines), ISO 10300-2:2014, clause 6.4.2 (Z_LS).
 *
 * Of the lines that lie in the zone of action at once, the middle one is rated; the one nearer the
 * tip and the one nearer the root stand a base pitch away.
 * Units     m.
 */
#ifndef TS_RATING_CONTACT_LINE_H
#define TS_RATING_CONTACT_LINE_H

#include "base/workings.h"
#include "element/bevel_virtual.h"

typedef struct ts_contact_line {
    double f;    /* m    distance from the centre of the zone, positive towards the tip of gear 1 */
    double l_b0; /* m    length inside the zone of action                                         */
    double l_b;  /* m    the same in the contact pattern                                          */
    double ps;   /* 1    peak load over that of a line through the centre                         */
    double As;   /* m    its share of load: area under half an ellipse                            */
} ts_contact_line;

typedef struct ts_contact_lines {
    double          f_max; /* m    half the zone, across the lines */
    ts_contact_line tip, middle, root;
    double          Z_LS; /* 1    load sharing factor, contact */
    double          Y_LS; /* 1    load sharing factor, bending: Z_LS^2 */
} ts_contact_lines;

/* Exponents of the peak load over the path of contact. */
#define TS_BEVEL_CROWNING_LOW  3.0 /* little profile crowning */
#define TS_BEVEL_CROWNING_HIGH 1.5 /* much profile crowning   */

/* e: exponent, > 0 */
ts_contact_lines ts_contact_lines_of(const ts_bevel_virtual *v, double e, ts_workings *workings);

/* The length of the line at distance f inside a zone g_valpha by b_v, inclined by beta_vb. */
double ts_contact_line_length(const ts_bevel_virtual *v, double f);

#endif
