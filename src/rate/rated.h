/* rate/rated.h: what is told of the elements of a rate file.
 *
 * Every number is a note of the workings (base/workings.h): symbol, value, unit, meaning, source
 * and working stand there, and nothing is told that was not noted.  A section is a run of notes
 * about one element.  Where a symbol stands several times for one element, each time is a condition
 * of its own: "W_k@gear 1", "S_F1@ISO 6336"; in the workings these stand where a drive has its
 * operating conditions.
 */
#ifndef TS_RATE_RATED_H
#define TS_RATE_RATED_H

#include "base/workings.h"
#include "check/outcome.h"
#include "model/rate_file.h"

/* What may stand behind the @ of an address.  The order is that of ts_rated_conditions. */
typedef enum ts_rated_condition {
    TS_RATED_GEAR_1,
    TS_RATED_GEAR_2,
    TS_RATED_UPPER, /* at the upper allowance of the tooth thickness */
    TS_RATED_LOWER,
    TS_RATED_GEAR_1_UPPER,
    TS_RATED_GEAR_2_UPPER,
    TS_RATED_GEAR_1_LOWER,
    TS_RATED_GEAR_2_LOWER,
    TS_RATED_LEAST_BACKLASH,
    TS_RATED_MOST_BACKLASH,
    TS_RATED_ISO_6336,
    TS_RATED_AGMA_2101,
    TS_RATED_SPECTRUM,
    TS_RATED_WORST_BIN,      /* all of ISO 6336 under the load that does most of the damage */
    TS_RATED_ALLOWABLE_LOAD, /* all of ISO 6336 at the load that was found */
    TS_RATED_LIFE,
    TS_RATED_LEAST_WIDTH,
    TS_RATED_SCUFFING,
    TS_RATED_MICROPITTING,
    TS_RATED_ISO_10300,
    TS_RATED_AGMA_2003,
    TS_RATED_WEAKEST, /* shear necks: the least that breaks it */
    TS_RATED_STRONGEST,
    TS_RATED_CONDITION_COUNT
} ts_rated_condition;

typedef struct ts_rated_section {
    const char        *title;     /* "Geometry"                                                  */
    const char        *standard;  /* "ISO 21771:2007"                                            */
    int32_t            condition; /* ts_rated_condition, or TS_EVERY_CONDITION                   */
    size_t             from, to;  /* its notes are those of this condition in [from, to)         */
    const char *const *asked;     /* what a page shows without being asked for all; NULL: all    */
    bool               advisory;  /* it never decides: what it lacks is no more than noted       */
} ts_rated_section;

/* What has no number: the grade of a steel, the range of a speed. */
typedef struct ts_rated_fact {
    const char *name, *says;
} ts_rated_fact;

/* A default that is a word: "shift", "equal sliding", why. */
typedef struct ts_rated_choice {
    const char *key, *value, *why;
} ts_rated_choice;

/* An input that a section lacks. */
typedef struct ts_rated_lack {
    const char *key, *says, *example;
    const char *standard; /* of the section */
} ts_rated_lack;

typedef struct ts_rated_element {
    const char       *kind; /* "gear pair" */
    const char       *name; /* "first mesh" */
    ts_node           node;
    size_t            from, to; /* its notes */
    ts_rated_section *sections;
    size_t            section_count;
    ts_rated_fact    *facts;
    size_t            fact_count;
    ts_rated_choice  *choices;
    size_t            choice_count;
    ts_rated_lack    *lacks;
    size_t            lack_count;
} ts_rated_element;

typedef struct ts_rated {
    ts_rated_element *elements; /* kind by kind, each in the order of the file */
    size_t            element_count;
    ts_condition     *conditions; /* [TS_RATED_CONDITION_COUNT]: names alone   */
    ts_check_outcome  outcome;    /* findings, counts and verdict              */
} ts_rated;

/* Computes every element of the file.  Notes go to `workings`, which must not be NULL; `units` are
 * those of numbers in sentences. */
ts_status ts_rate_run(const ts_rate_file *file, ts_units units, ts_arena *arena,
                      ts_workings *workings, ts_rated *rated);

#endif
