/* report/start_report.h: starts for people and as JSON. */
#ifndef TS_REPORT_START_REPORT_H
#define TS_REPORT_START_REPORT_H

#include "report/answer.h"
#include "report/report_chapter.h"
#include "response/drive_start.h"

/* What a shaft, and the mesh that drives it, bear once. */
typedef struct ts_start_wall {
    double       T; /* N.m at the shaft; INFINITY: not known */
    ts_part_kind kind;
} ts_start_wall;

/* A neck, and the largest torque that passes through it. */
typedef struct ts_start_neck {
    const char *name;
    double      T, t;      /* N.m, s                */
    double      low, high; /* N.m, of its break band */
} ts_start_neck;

/* One start of the grid. */
typedef struct ts_start_cell {
    double           ambient, oil; /* K */
    ts_start_outcome outcome;
    double           t, w;     /* s, rad/s of the cranked spool where it ended */
    double           t_light;  /* s; NaN: it did not light */
    double           T, share; /* N.m, largest at a starter; the largest share of what bears it */
    uint32_t         nearest;  /* shaft of that share; TS_NOWHERE: none */
} ts_start_cell;

typedef struct ts_start_answer {
    const char           *beyond;       /* name of the condition to which it went on; NULL: none */
    double                ambient, oil; /* K    */
    double                nu;           /* m2/s */
    const ts_drive_start *it;
    size_t                bearings_left; /* whose oil is not counted */
    const char           *drag_missing;  /* NULL, or why seals, air and teeth are not counted */
    const ts_start_wall  *walls;         /* [shaft] but for what one pad alone loads */
    const ts_start_wall  *pad_walls;     /* [pad of the train], of what it alone loads */
    const ts_start_neck  *necks;
    size_t                neck_count;
    const ts_start_cell  *cells;   /* ambient by ambient; NULL: no grid was asked for */
    size_t                steps;   /* of both */
    const ts_assumption  *assumed; /* the defaults that this start went by */
    size_t                assumed_count;
} ts_start_answer;

extern const char *const ts_start_outcome_words[]; /* [ts_start_outcome] */
extern const char *const ts_start_event_words[];   /* [ts_start_happening] */
/* Share of what bears it, of the shaft that comes nearest; TS_NOWHERE: none. */
uint32_t ts_start_nearest(const ts_start_answer *start, const ts_start_run *run, double *share);
/* Did it come to idle, or to where it was to go on? */
bool ts_start_is_done(const ts_start_answer *start);
/* The first neck whose least break torque is reached; NULL: all hold. */
const ts_start_neck *ts_start_broken(const ts_start_answer *start);
/* Whose it is: the name of a pad's accessory, or of a spool. */
const char *ts_start_event_of(const ts_start_answer *start, const ts_answer *answer,
                              const ts_start_event *event);

/* A chapter, alike for the terminal and for a report. */
void ts_chapter_start(ts_chapter *chapter, const ts_start_answer *start);
void ts_start_json(const ts_start_answer *start, const ts_answer *answer, ts_buffer *out);

#endif
