/* check/scuffing_safety.h: do the flanks of every mesh keep one of their two safeties against
 * scuffing? */
#ifndef TS_CHECK_SCUFFING_SAFETY_H
#define TS_CHECK_SCUFFING_SAFETY_H

#include "check/rule.h"

typedef enum ts_scuffing_method {
    TS_BY_FLASH,   /* cylindrical meshes */
    TS_BY_INTEGRAL /* bevels as well     */
} ts_scuffing_method;

/* Puts the question about every loaded mesh in every condition by itself. */
void ts_judge_scuffing(ts_check *check, ts_scuffing_method method);

/* What the file lacks for any heat or film, asked once: true when the rule can go. */
bool ts_oil_is_unknown(ts_check *check);

/* Is the mesh loaded and rated, so that its heat and film can be asked for?  What its first
 * standard cannot rate is said by the rules that ask for that. */
bool ts_rubbing_asked(const ts_check *check, uint32_t mesh, uint32_t condition);

#endif
