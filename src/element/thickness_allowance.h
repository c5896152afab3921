/* element/thickness_allowance.h: which gear has teeth that are thinner by an allowance?
 *
 * A tooth whose normal thickness at the reference circle is E_sn thinner (E_sn < 0) is the tooth of
 * the same gear with a smaller profile shift, the generated one; whatever is measured or runs with
 * that tooth follows from that shift.
 */
#ifndef TS_ELEMENT_THICKNESS_ALLOWANCE_H
#define TS_ELEMENT_THICKNESS_ALLOWANCE_H

#include "base/workings.h"
#include "element/cylindrical_gear.h"

/* The generated profile shift coefficient.  x_nominal: as designed; E_sn: m, allowance of the
 * normal thickness; m_n: m, alpha_n: rad, normal module and pressure angle.  `index` chooses the
 * names in the workings: x, x_nominal and E_sn, or x_1, x_nominal1 and E_sn1 ... */
double ts_generated_shift(double x_nominal, double E_sn, const ts_cylindrical_frame *frame,
                          ts_gear_index index, ts_workings *workings);

/* a_w that deviates by A_a from a_wnominal; m, of one sign with it. */
double ts_deviated_centre(double a_wnominal, double A_a, ts_workings *workings);

#endif
