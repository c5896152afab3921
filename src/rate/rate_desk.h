/* rate/rate_desk.h: with what words an element is rated.
 *
 * An element is rated by one function over its record.  It takes its inputs by their keys, so that
 * each is noted with its place in the file or as the assumption that it is; it opens a section for
 * every standard, lets that room compute and note, and judges what comes out.  Without memory every
 * call does nothing more, and ts_rate_run returns TS_NO_MEMORY.
 */
#ifndef TS_RATE_RATE_DESK_H
#define TS_RATE_RATE_DESK_H

#include "model/field.h"
#include "quantity/quantity.h"
#include "rate/rated.h"

#include <math.h>

typedef struct ts_rate_desk {
    const ts_rate_file *file;
    ts_arena           *arena;
    ts_workings        *workings;
    ts_rated           *rated;
    ts_units            units; /* of the numbers in sentences */
    size_t              element_room, finding_room;
    bool                failed; /* there is no memory */

    /* The element that is being rated. */
    ts_rated_element      *element;
    const ts_record_table *table;
    const void            *record;
    int32_t                condition;   /* of the section that is open          */
    bool                   advisory;    /* is that section?                     */
    size_t                 lacked_from; /* lacks of the section begin here      */
} ts_rate_desk;

/* ---- inputs, by their keys in the field table --------------------------------------------------
 */

/* The value in SI, noted once for the element as given or assumed; NaN when it is neither.  Tooth
 * numbers and the like come as doubles. */
double ts_rate_take(ts_rate_desk *desk, const char *key);
/* The same of a whole number; 0 when it is not known. */
int ts_rate_take_whole(ts_rate_desk *desk, const char *key);
/* The same with the sign that the standard's formulas want: the file writes it without. */
double ts_rate_take_signed(ts_rate_desk *desk, const char *key, double sign);
/* The same, and named as lacking when it is not known. */
double ts_rate_need(ts_rate_desk *desk, const char *key);
/* The value, or `otherwise` as an assumption with its reason. */
double ts_rate_take_or(ts_rate_desk *desk, const char *key, double otherwise, const char *why);
void   ts_rate_lack(ts_rate_desk *desk, const char *key);

bool ts_rate_is_given(const ts_rate_desk *desk, const char *key); /* stands in the file       */
bool ts_rate_is_known(const ts_rate_desk *desk, const char *key); /* is given or assumed      */
/* The index of a choice; a default is told with the element.  -1: not known. */
int ts_rate_choose(ts_rate_desk *desk, const char *key);
/* A text of the file; NULL: none. */
const char *ts_rate_word(const ts_rate_desk *desk, const char *key);

/* ---- sections ----------------------------------------------------------------------------------
 */

void ts_rate_open_element(ts_rate_desk *desk, const char *kind, const ts_record_table *table,
                          const void *record);
void ts_rate_close_element(ts_rate_desk *desk);

/* All notes from here on belong to the section, under its condition. */
void ts_rate_open_section(ts_rate_desk *desk, const ts_rated_section *section);
/* What the section lacked becomes one finding.  True when it lacked nothing. */
bool ts_rate_close_section(ts_rate_desk *desk);
/* Lacks so far in the open section: a method that lacks something is not begun. */
bool ts_rate_lacks(const ts_rate_desk *desk);

void ts_rate_fact(ts_rate_desk *desk, const char *name, const char *says);

/* From here on `symbol` of the open section is what the element calls `lender`. */
void ts_rate_borrow(ts_rate_desk *desk, const char *symbol, double value, const char *lender);
void ts_rate_assume(ts_rate_desk *desk, const char *symbol, double value, ts_kind kind,
                    const char *why);

/* ---- findings ----------------------------------------------------------------------------------
 */

/* Counts a judgement; when it does not hold, the open finding about the element, whose sentences
 * and numbers the caller fills in.  NULL: it holds, or there is no memory. */
ts_finding *ts_rate_judge(ts_rate_desk *desk, bool holds, const char *rule, ts_level level);

/* Value and limit of a finding. */
void ts_rate_limit(ts_finding *finding, const char *symbol, double value, double limit,
                   ts_kind kind);
/* Sentences without a full stop; %s, %d and %zu only. */
void ts_rate_says(ts_rate_desk *desk, ts_finding *finding, const char *format, ...)
    __attribute__((format(printf, 3, 4)));
void ts_rate_remedy(ts_rate_desk *desk, ts_finding *finding, const char *format, ...)
    __attribute__((format(printf, 3, 4)));

/* A standard's range of validity is left: "rate-range-<name>". */
void ts_rate_remark(ts_rate_desk *desk, const char *name, const char *says, const char *clause,
                    ts_level level);
/* What an open section cannot compute is refused, unless it never decides. */
static inline ts_level ts_rate_lack_level(const ts_rate_desk *desk)
{
    return desk->advisory ? TS_NOTE : TS_REFUSE;
}

/* The method cannot be computed, for `why` (a sentence without a full stop). */
void ts_rate_cannot(ts_rate_desk *desk, const char *method, const char *why);

/* A safety against its least; NaN never holds. */
typedef struct ts_safety_words {
    const char *rule;   /* "rate-contact-safety-1" */
    const char *symbol; /* "S_H1"                  */
    const char *what;   /* "the flanks of gear 1"  */
    const char *harm;   /* "pitting"               */
} ts_safety_words;
void ts_rate_safety(ts_rate_desk *desk, const ts_safety_words *words, double S, double least,
                    ts_level level);
/* The same of gear 0 or 1: S_H of its flanks, S_F of its roots. */
void ts_rate_contact_safety(ts_rate_desk *desk, int gear, double S_H, double least, ts_level level);
void ts_rate_bending_safety(ts_rate_desk *desk, int gear, double S_F, double least, ts_level level);

/* "87.5 mm", six digits; rounded up (way > 0) or down (way < 0) to be typed in. */
const char *ts_rate_shown(ts_rate_desk *desk, double si, ts_kind kind);
const char *ts_rate_shown_outward(ts_rate_desk *desk, double si, ts_kind kind, int way);

/* ---- the elements, one file each ---------------------------------------------------------------
 */

void ts_rate_pair_element(ts_rate_desk *desk, const ts_rate_pair *given);
void ts_rate_bevel_element(ts_rate_desk *desk, const ts_rate_bevels *given);
void ts_rate_tooth_element(ts_rate_desk *desk, const ts_rate_tooth *given);
void ts_rate_tolerance_element(ts_rate_desk *desk, const ts_rate_tolerance *given);
void ts_rate_steel_element(ts_rate_desk *desk, const ts_rate_steel *given);
void ts_rate_bearing_element(ts_rate_desk *desk, const ts_rate_bearing *given);
void ts_rate_neck_element(ts_rate_desk *desk, const ts_rate_neck *given);
void ts_rate_spline_element(ts_rate_desk *desk, const ts_rate_spline *given);

#endif
