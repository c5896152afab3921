/* check/tooth_safety.h: do the teeth of every mesh keep one of their two safeties? */
#ifndef TS_CHECK_TOOTH_SAFETY_H
#define TS_CHECK_TOOTH_SAFETY_H

#include "check/rule.h"

/* Puts the question about every loaded mesh in every condition by itself. */
void ts_judge_tooth_safety(ts_check *check, ts_rated_stress stress);

/* Is every condition by itself borne by that mesh, as far as it can be rated? */
bool ts_mesh_bears_each_condition(const ts_check *check, uint32_t mesh);

/* Is it loaded, and could every condition that loads it be rated? */
bool ts_mesh_is_rated(const ts_check *check, uint32_t mesh);

/* "", or ", other flank" where power flows to the spool in that condition. */
const char *ts_flank_words(const ts_check *check, uint32_t mesh, int32_t condition);

/* "make the face about 24 mm where it is 18 mm": stress goes with a power of the width; of bevels
 * that are as wide as they may be, with one of the module. */
const char *ts_wider_face(ts_check *check, uint32_t mesh, ts_rated_stress stress, double short_of);

#endif
