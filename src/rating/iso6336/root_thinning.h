/* rating/iso6336/root_thinning.h: which profile shift shapes the root of a tooth made thinner for
 * backlash?  ISO 6336-3:2019, clause 6 (from memory).
 *
 * Teeth that are at most 0.05 normal modules thinner than nominal are rated as designed.  Thinner
 * ones count as thin as they may be made: the tool goes deeper, by the generating profile shift x_E
 * of the lower allowance.
 */
#ifndef TS_RATING_ROOT_THINNING_H
#define TS_RATING_ROOT_THINNING_H

#include "base/workings.h"

#include <stdbool.h>

/* E_sni, m_n in m; E_sni < 0: thinner, normal at the reference circle. */
bool ts_root_is_thinned(double E_sni, double m_n);

/* x_E from x and alpha_n (rad); `gear` 0 or 1 is the index in the workings, which ask the caller
 * for x_1 or x_2 and, of thinner teeth, for E_sni1 or E_sni2. */
double ts_root_shift(double x, double E_sni, double m_n, double alpha_n, int gear,
                     ts_workings *workings);

#endif
