/* rating/iso6336/single_contact.h: where one pair of teeth is alone, the flanks press harder than
 * at the pitch point; ISO 6336-2, clause 6.3 (Z_B, Z_D).
 */
#ifndef TS_RATING_SINGLE_CONTACT_H
#define TS_RATING_SINGLE_CONTACT_H

#include "base/workings.h"
#include "element/cylindrical_pair.h"

/* How the ends of the path of contact of helical gears were looked after; read by the edition of
 * 2019 only. */
typedef enum ts_profile_design {
    TS_PROFILE_PLAIN, /* no relief: f_ZCa = 1.2                                             */
    TS_PROFILE_BY_EXPERIENCE, /* relief by the maker's experience: 1.07 */
    TS_PROFILE_BY_ANALYSIS /* relief by a computed distribution of load: 1                       */
} ts_profile_design;

double ts_profile_design_f_ZCa(ts_profile_design profile);

typedef struct ts_single_contact {
    double M_1, M_2; /* raw ratios of curvature at B (gear 1) and D (gear 2)               */
    double Z_B, Z_D; /* >= 1                                                               */
} ts_single_contact;

/* eps_alpha > 1 */
ts_single_contact ts_single_contact_2006(const ts_cylindrical_pair *pair, double f_ZCa,
                                         ts_workings *workings);
ts_single_contact ts_single_contact_2019(const ts_cylindrical_pair *pair, double f_ZCa,
                                         ts_workings *workings);

#endif
