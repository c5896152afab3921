/* draw/drawn_seizure.h: a seizure as its picture wants it. */
#ifndef TS_DRAW_DRAWN_SEIZURE_H
#define TS_DRAW_DRAWN_SEIZURE_H

#include "response/drive_torsion.h"
#include "response/elastic_train.h"

#define TS_DRAWN_RUNS 2

typedef struct ts_drawn_run {
    const char         *word; /* "neck at its strongest" */
    const ts_train_run *run;  /* with a trace            */
    const double       *ms;   /* [sample], its times     */
} ts_drawn_run;

typedef struct ts_drawn_seizure {
    const char           *accessory;
    const char           *condition;
    const char           *because; /* NULL, or why nothing could be followed */
    const ts_drive_twist *twist;
    const double         *bears; /* [joint] N.m once at its outer body; INFINITY: not known */
    ts_drawn_run          runs[TS_DRAWN_RUNS];
    size_t                run_count;
} ts_drawn_seizure;

#endif
