/* check/clearance.h: what every body and gear must keep clear of, one question an object. */
#ifndef TS_CHECK_CLEARANCE_H
#define TS_CHECK_CLEARANCE_H

#include "check/rule.h"

#include <stdint.h>

/* A body about its pad axis, or the tip circle of a gear. */
typedef struct ts_circle {
    ts_node  node;  /* the pad, or the gear's record               */
    uint32_t shaft; /* on whose axis it stands; placed             */
    double   r;     /* m                                           */
    uint32_t pad;   /* TS_NOWHERE for a gear                       */
    uint32_t gear;  /* TS_NOWHERE for a body                       */
} ts_circle;

/* Calls `judge` for every body, and every cylindrical gear, whose place and size are known. */
void ts_each_circle(ts_check *check, void (*judge)(ts_check *check, const ts_circle *circle));

/* "the body of fuel pump", "the gear of idler 3" */
const char *ts_circle_name(ts_check *check, const ts_circle *circle);

/* Notes the radius of the circle about the present subject as `r`. */
void ts_note_circle(const ts_check *check, const ts_circle *circle);

#endif
