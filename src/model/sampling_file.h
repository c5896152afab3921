/* model/sampling_file.h: what a study file says: which drive, which values vary, what is watched.
 *
 * These structs mirror docs/study-file.md; src/model/field_sampling.c holds the field tables.  What
 * kind of quantity a varied value is follows from its place in the drive, so those are kept as text
 * and read by whoever has the drive.
 */
#ifndef TS_MODEL_SAMPLING_FILE_H
#define TS_MODEL_SAMPLING_FILE_H

#include "model/drive.h"
#include "model/source.h"

typedef enum ts_sampling_method {
    TS_SAMPLING_RANDOM,
    TS_SAMPLING_ONE_AT_A_TIME,
    TS_SAMPLING_SWEEP,
    TS_SAMPLING_SOBOL
} ts_sampling_method;

/* One value of the drive that varies. */
typedef struct ts_sampling_vary {
    ts_node  node;
    ts_word  at;  /* its address                                                */
    ts_pick  law; /* ts_law of sample/law.h                                     */
    ts_word  mean, deviation, least, most, mode; /* quantities, or shares of what stands there */
    ts_tally steps;
} ts_sampling_vary;

/* Two of them that go together. */
typedef struct ts_sampling_tie {
    ts_node    node;
    ts_word    of, with; /* addresses of `vary` */
    ts_measure r;        /* correlation of their normal scores */
} ts_sampling_tie;

/* One number that is kept of every sample. */
typedef struct ts_sampling_watch {
    ts_node node;
    ts_word margin, value; /* of a rule: its margin, or the value that it judges */
    ts_word number;        /* an address as `why` takes it                       */
    ts_word at, in;        /* of the rule: one object, one condition             */
} ts_sampling_watch;

typedef struct ts_sampling_file {
    ts_node  node;
    ts_tally version;
    ts_word  title, drive;
    ts_pick  method; /* ts_sampling_method */
    ts_tally samples, seed;

    ts_sampling_vary  *vary;
    size_t             vary_count;
    ts_sampling_tie   *ties;
    size_t             tie_count;
    ts_sampling_watch *watch;
    size_t             watch_count;

    const ts_source     *source;
    const ts_assumption *assumed; /* the register: every default of the file */
    size_t               assumed_count;
} ts_sampling_file;

#endif
