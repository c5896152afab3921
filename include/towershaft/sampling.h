/* towershaft/sampling.h: what becomes of a drive whose values vary?
 *
 * Shapes    A study file names a drive, values in it with their laws, and numbers that are watched.
 *           Every sample is a whole drive file, read and solved as any other.  Columns are the
 *           varied values, then the watched numbers.
 * Units     SI everywhere; each column names its unit.  A margin is capacity / demand - 1.
 * Errors    A status other than TS_OK means that the work could not be done; the reasons are in the
 *           messages of ts_sampling_messages.  A sample that is refused is a row with its reason.
 * Missing   What could not be computed in a sample is NaN in its row, and counted in the answer.
 * Order     Open, take the drive, then everything else.
 * Threads   One thread per study at a time; a block uses as many as it was opened for.
 * Purity    Sample number i is the same whatever ran before it, on any number of threads.
 */
#ifndef TOWERSHAFT_SAMPLING_H
#define TOWERSHAFT_SAMPLING_H

#include "towershaft/figure.h"
#include "towershaft/study.h"

typedef struct ts_sampling ts_sampling;

/* Reads a study file.  *out may be given also with TS_NOT_UNDERSTOOD, for its messages. */
TS_API ts_status ts_sampling_open(const ts_allocator *allocator, const char *name,
                                  const char *bytes, size_t length, ts_sampling **out);
TS_API void      ts_sampling_close(ts_sampling *sampling); /* NULL is allowed */

/* The drive as the file names it, from the folder of the file. */
TS_API const char *ts_sampling_drive(const ts_sampling *sampling);

/* Takes that drive and finds what varies and what is watched in it. */
TS_API ts_status ts_sampling_take(ts_sampling *sampling, const char *name, const char *bytes,
                                  size_t length, const ts_study_options *options);

/* Whose messages tell why: those of the study file, or of the drive. */
TS_API const ts_study *ts_sampling_messages(const ts_sampling *sampling);

/* ---- what is drawn and watched ---- */

TS_API uint64_t ts_sampling_count(const ts_sampling *sampling); /* samples in all */

typedef struct ts_sampling_column {
    const char *name; /* "accessories/fuel pump/mass", "margin of E1-pitting" */
    const char *unit; /* SI */
    bool        input;
} ts_sampling_column;

TS_API size_t             ts_sampling_columns(const ts_sampling *sampling);
TS_API ts_sampling_column ts_sampling_column_at(const ts_sampling *sampling, size_t index);

/* What makes two studies the same: a hash of version, both files and the day. */
TS_API const char *ts_sampling_identity(const ts_sampling *sampling);
/* Facts of the study for whoever keeps its samples: "title", "drive sha256", ...; key NULL behind
 * the last. */
typedef struct ts_sampling_fact {
    const char *key, *value;
} ts_sampling_fact;
TS_API ts_sampling_fact ts_sampling_fact_at(const ts_sampling *sampling, size_t index);

/* The rule and address behind the number of a finding. */
typedef struct ts_sampling_finding {
    const char *rule, *level;
    char        address[256]; /* cut when it is longer */
} ts_sampling_finding;
TS_API ts_sampling_finding ts_sampling_finding_of(const ts_sampling *sampling, uint64_t finding);

/* ---- samples ---- */

typedef enum ts_sampling_state {
    TS_SAMPLE_HOLDS,
    TS_SAMPLE_DOES_NOT_HOLD,
    TS_SAMPLE_NOT_COMPUTABLE,
    TS_SAMPLE_NOT_UNDERSTOOD, /* as a drive file it is refused */
    TS_SAMPLE_STATES
} ts_sampling_state;
TS_API const char *ts_sampling_state_name(ts_sampling_state state);

typedef struct ts_sampling_row {
    uint64_t          id;     /* from 0 */
    const double     *values; /* [columns] */
    ts_sampling_state state;
    const uint64_t   *findings; /* open ones of level refuse and warn, each once, in order */
    size_t            finding_count;
    const char       *says; /* of a sample that is not understood: why; else NULL */
} ts_sampling_row;

typedef struct ts_sampling_block ts_sampling_block;

/* Memory for `room` samples at a time on `threads` threads (1 to 64). */
TS_API ts_status ts_sampling_block_open(const ts_sampling *sampling, size_t room, size_t threads,
                                        ts_sampling_block **out);
TS_API void      ts_sampling_block_close(ts_sampling_block *block); /* NULL is allowed */
/* Computes the samples ids[count], count up to the room.  TS_NO_MEMORY: none of them counts. */
TS_API ts_status ts_sampling_block_run(ts_sampling_block *block, const uint64_t *ids, size_t count);
/* One of the last run, good until the next. */
TS_API ts_sampling_row ts_sampling_block_row(const ts_sampling_block *block, size_t index);

/* The drive file of one sample. */
TS_API ts_status ts_sampling_write_drive(ts_sampling *sampling, uint64_t id, const ts_sink *sink);

/* ---- the answer ---- */

/* The samples that there are, wherever they are kept. */
typedef struct ts_sampling_found {
    uint64_t        count;
    const uint64_t *ids; /* [count], ascending */
    uint64_t        states[TS_SAMPLE_STATES];
    /* Writes column `column` of the samples, in the order of ids; false when it cannot. */
    bool (*column)(void *context, size_t column, double *values);
    void           *context;
    const uint64_t *findings; /* [finding_count], with how many samples have each */
    const uint64_t *hits;
    size_t          finding_count;
} ts_sampling_found;

/* Page or JSON (docs/schema/study.schema.json).  TS_NO_OUTPUT also when a column cannot be had. */
TS_API ts_status ts_sampling_write(ts_sampling *sampling, const ts_sampling_found *found, bool json,
                                   const ts_page_options *options, const ts_sink *sink);

/* The answer as a picture: chances, distributions against their limits, what moves what.  Of the
 * options format, ground, scale and us are read, and figure must be one that there is.  Messages
 * are those of the drive. */
TS_API ts_status ts_sampling_draw(ts_sampling *sampling, const ts_sampling_found *found,
                                  const ts_figure_options *options, const ts_sink *sink);

#endif
