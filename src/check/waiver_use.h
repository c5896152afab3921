/* check/waiver_use.h: what became of each waiver of the file? */
#ifndef TS_CHECK_WAIVER_USE_H
#define TS_CHECK_WAIVER_USE_H

#include "check/rule.h"

#include <stdbool.h>
#include <stdint.h>

typedef enum ts_waiver_end {
    TS_WAIVER_ENDLESS, /* it names no end                                      */
    TS_WAIVER_RUNNING, /* its last day is today or later                       */
    TS_WAIVER_ENDED,   /* its last day is past: it waives nothing              */
    TS_WAIVER_UNJUDGED /* its end, or what day it is, is not known            */
} ts_waiver_end;

typedef struct ts_waiver_use {
    ts_node       object;    /* what its address names; 0: nothing                          */
    int32_t       condition; /* of the address; TS_EVERY_CONDITION: whichever               */
    bool          sound;     /* rule, address and reason are there, and the address exists  */
    ts_waiver_end end;
    uint32_t      matched;  /* findings of its rule at its address                         */
    uint32_t      unjudged; /* those of them that could not be computed                    */
} ts_waiver_use;

/* One entry a waiver of the file, in file order. */
const ts_waiver_use *ts_check_waiver_uses(const ts_check *check);

/* Reads the addresses of the waivers. */
void ts_waivers_read(ts_check *check);

/* Marks the findings that a waiver covers, and counts what each waiver met. */
void ts_waivers_apply(ts_check *check);

#endif
