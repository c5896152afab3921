/* study/say_quantity.h: how is a quantity refused that cannot be understood? */
#ifndef TS_STUDY_SAY_QUANTITY_H
#define TS_STUDY_SAY_QUANTITY_H

#include "quantity/quantity.h"
#include "study/study.h"

/* That `text` is not what was expected; a number without a unit is nearest to itself with one. */
void ts_study_say_quantity(ts_study *study, const char *says, const char *expected,
                           const char *text, ts_kind kind, const char *unit);

#endif
