/* quantity/quantity_fault.h: what is said when a quantity cannot be read. */
#ifndef TS_QUANTITY_QUANTITY_FAULT_H
#define TS_QUANTITY_QUANTITY_FAULT_H

#include "quantity/quantity.h"

/* Where in the whole text the trouble stands, and what was due. */
typedef struct ts_complaint {
    ts_text whole;
    ts_text part;   /* the piece of `whole` that is wrong             */
    ts_text number; /* the number as written, empty when there is none */
    ts_kind kind;
} ts_complaint;

/* Each fills the fault, when there is one to fill, and returns false. */
bool ts_fault_number(ts_quantity_fault *fault, const ts_complaint *c, int number_fault);
bool ts_fault_size(ts_quantity_fault *fault, const ts_complaint *c, bool large);
bool ts_fault_missing_unit(ts_quantity_fault *fault, const ts_complaint *c);
bool ts_fault_unknown_unit(ts_quantity_fault *fault, const ts_complaint *c);
bool ts_fault_wrong_kind(ts_quantity_fault *fault, const ts_complaint *c, const ts_unit *unit);
/* Ranges: the code and a sentence say it all. */
bool ts_fault_range(ts_quantity_fault *fault, const ts_complaint *c, const char *code,
                    const char *says);

#endif
