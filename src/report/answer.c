/* What is a condition called? */
#include "report/answer.h"

const char *ts_answer_condition(const ts_answer *answer, int32_t condition)
{
    return condition < 0 ? NULL : answer->drive->conditions[condition].name;
}
