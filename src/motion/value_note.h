/* motion/value_note.h: a value of the drive as the origin of a shown number. */
#ifndef TS_MOTION_VALUE_NOTE_H
#define TS_MOTION_VALUE_NOTE_H

#include "base/workings.h"
#include "model/drive.h"

typedef struct ts_value_note {
    const char *symbol;
    double      value;
    const char *unit; /* SI unit name                  */
    const char *key;  /* in the file: "pressure angle" */
    ts_standing standing;
    ts_node     node;
} ts_value_note;

/* Notes the value about the current subject: as given, with its place in the file, or as assumed,
 * with the reason that the register of assumptions holds for the key.  What is neither is not
 * noted; nothing is when workings is NULL. */
void ts_note_value(ts_workings *workings, const ts_drive *drive, const ts_value_note *note);

/* "feed" of "oil/feed" where the file has a record of the oil: as the register has the key. */
static inline const char *ts_oil_key(const ts_drive *drive, const char *key)
{
    return drive->oil.node != 0 ? key + sizeof "oil/" - 1 : key;
}

/* The same for a ts_measure: its SI value is the number shown. */
#define TS_NOTE_MEASURE(workings, drive, symbol, measure, unit, key)                               \
    ts_note_value((workings), (drive),                                                             \
                  &(ts_value_note){(symbol), (measure).value, (unit), (key), (measure).standing,   \
                                   (measure).node})

#endif
