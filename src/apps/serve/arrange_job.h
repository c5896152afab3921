/* apps/serve/arrange_job.h: one search at a time, beside everything else. */
#ifndef TS_APPS_SERVE_ARRANGE_JOB_H
#define TS_APPS_SERVE_ARRANGE_JOB_H

#include "apps/serve/growing.h"

#include <pthread.h>
#include <stdatomic.h>
#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>

#define JOB_KEEP_MOST   32
#define JOB_ANSWER_MOST 8

typedef enum job_state { JOB_NONE, JOB_RUNS, JOB_ENDED } job_state;

/* How far it is: kg, as ts_arrange_options.progress tells it. */
typedef struct job_progress {
    double   found, bound; /* found: infinite when there is none yet */
    size_t   done, count;
    int64_t  ms;   /* since it began */
    uint64_t told; /* how often; 0: nothing is known yet */
} job_progress;

typedef struct job_answer {
    growing file;
    bool    holds;
} job_answer;

typedef struct arrange_job {
    job_state       state;
    pthread_t       thread;
    int             bell; /* eventfd: rings when the search has come further, or has ended */
    atomic_bool     stop, ended;
    int64_t         begun;
    int64_t         end;    /* ms at which it shall end with what it has */
    uint64_t        serial; /* of the text that it searches              */
    const char     *shown;
    growing         text;
    char           *keep[JOB_KEEP_MOST];
    size_t          keep_count;
    growing         answer; /* JSON, or messages when it is not understood */
    growing         found;  /* the file with the best in it; empty: none   */
    job_answer      answers[JOB_ANSWER_MOST];
    size_t          answer_count;
    pthread_mutex_t lock; /* of `progress` */
    job_progress    progress;
    int64_t         rung;
    bool            understood;
} arrange_job;

bool arrange_job_open(arrange_job *job);
/* False when one runs already, or there is no memory or thread.  The text and names are copied. */
bool arrange_job_begin(arrange_job *job, const char *shown, const growing *text, uint64_t serial,
                       const char *const *keep, size_t keep_count, int64_t seconds);
/* The bell rang: when it has ended, takes the thread back. */
void         arrange_job_collect(arrange_job *job);
job_progress arrange_job_progress(arrange_job *job);
/* Asks it to end with what it has. */
void arrange_job_stop(arrange_job *job);
/* Stops a search that runs.  False: it does not end within a second; it and what it works on are
 * then left to the end of the program. */
bool arrange_job_close(arrange_job *job);

#endif
