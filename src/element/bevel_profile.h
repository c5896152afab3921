/* element/bevel_profile.h: how high and how thick are bevel teeth, in modules?
 * ISO 23509:2016, clause 7 (data of types I and II) and annex C.
 */
#ifndef TS_ELEMENT_BEVEL_PROFILE_H
#define TS_ELEMENT_BEVEL_PROFILE_H

#include "base/workings.h"
#include "element/bevel_pair.h"

/* Data of the profile in mean normal modules m_mn ("data type I" of the standard). */
typedef struct ts_bevel_profile {
    double k_hap; /* addendum factor of the basic crown gear, > 0                     */
    double k_hfp; /* dedendum factor, > k_hap                                         */
    double x_hm1; /* profile shift of gear 1; gear 2 has its negative                 */
    double x_smn; /* thickness modification of gear 1 without backlash, likewise      */
} ts_bevel_profile;

/* The same told by whole depths ("data type II"). */
typedef struct ts_bevel_depth_factors {
    double c_ham; /* mean addendum of the wheel over the working depth */
    double k_d;   /* working depth in m_mn                              */
    double k_c;   /* clearance over the working depth                   */
    double k_t;   /* thickness factor                                   */
} ts_bevel_depth_factors;

/* Data type I from type II.  `wheel` says which gear c_ham means: 1 or 2. */
ts_bevel_profile ts_bevel_profile_of(const ts_bevel_depth_factors *factors, int wheel,
                                     ts_workings *workings);

/* The proportions of ISO 23509:2016, annex C, for a pair that says nothing of its own: noted as
 * assumptions.  The wheel is the gear with more teeth (gear 2 of an equal pair). */
ts_bevel_profile ts_bevel_profile_usual(const ts_bevel_pair *pair, ts_workings *workings);
/* Its profile shift x_hm1 alone, where the addendum factor is known; likewise. */
double ts_bevel_shift_usual(const ts_bevel_pair *pair, double k_hap, ts_workings *workings);

#endif
