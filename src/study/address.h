/* study/address.h: from the address of a number to the note that holds it. */
#ifndef TS_STUDY_ADDRESS_H
#define TS_STUDY_ADDRESS_H

#include "study/study.h"

/* "drive/hp/box/clockwise/2:F_t@take-off" in its parts; symbol and condition may be empty. */
typedef struct ts_address {
    ts_text path, symbol, condition;
} ts_address;

ts_address ts_address_split(const char *address);

/* The condition's index, TS_EVERY_CONDITION for the empty text, or -2 for an unknown name. */
int32_t ts_address_condition(const ts_study *study, ts_text name);

/* The note of a number; SIZE_MAX with a message of the study when there is none. */
size_t ts_address_note(ts_study *study, ts_address address, ts_node node);

/* The node of a path; 0 with a message naming the nearest when there is none.  The empty path and
 * "drive-wide" numbers have no node: then *whole is set. */
ts_node ts_address_node(ts_study *study, ts_text path, bool *whole);

/* Does the note carry a number of its own, to be listed? */
bool ts_note_listed(const ts_note *note);

#endif
