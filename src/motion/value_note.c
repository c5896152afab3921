/* motion/value_note.c: where does a number that enters a formula stand in the file? */
#include "motion/value_note.h"

#include <string.h>

static const char *reason_of(const ts_drive *drive, const ts_value_note *note)
{
    for (size_t i = 0; i < drive->assumed_count; i++) {
        const ts_assumption *assumption = &drive->assumed[i];

        if (assumption->node == note->node && strcmp(assumption->key, note->key) == 0)
            return assumption->reason;
    }
    return "assumed, since the file does not say";
}

void ts_note_value(ts_workings *workings, const ts_drive *drive, const ts_value_note *note)
{
    if (workings == NULL)
        return;
    if (note->standing == TS_GIVEN)
        ts_workings_given(workings, note->symbol, note->value, note->unit, note->node);
    else if (note->standing == TS_ASSUMED)
        ts_workings_assumed(workings, note->symbol, note->value, note->unit,
                            reason_of(drive, note));
}
