/* draw/drawn_seizure.h: a seizure, or a jolt, as its picture wants it. */
#ifndef TS_DRAW_DRAWN_SEIZURE_H
#define TS_DRAW_DRAWN_SEIZURE_H

#include "response/drive_torsion.h"
#include "response/elastic_train.h"

enum { TS_DRAWN_RUNS = 2, TS_DRAWN_LINES = 4 };

/* The torque of one spring, as a share. */
typedef struct ts_drawn_line {
    size_t joint;
    double of;   /* N.m that are 100 %: what it bears once, of a neck what breaks it */
    bool   neck; /* it is that of a neck                                             */
} ts_drawn_line;

typedef struct ts_drawn_run {
    const char         *word;            /* "neck at its strongest" */
    const ts_train_run *run;             /* with a trace            */
    const double       *ms;              /* [sample], its times     */
    ts_drawn_line lines[TS_DRAWN_LINES]; /* the nearest to its 100 % first, a neck before all */
    size_t        line_count;
} ts_drawn_run;

typedef struct ts_drawn_seizure {
    const char           *what;    /* "generator 1 seizes at take-off"; NULL: nothing can     */
    const char           *because; /* NULL, or why nothing could be followed                  */
    bool                  jolt;
    const ts_drive_twist *twist;
    ts_drawn_run          runs[TS_DRAWN_RUNS];
    size_t                run_count;
} ts_drawn_seizure;

#endif
