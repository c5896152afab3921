/* report/seize_report.h: seizures for people and as JSON. */
#ifndef TS_REPORT_SEIZE_REPORT_H
#define TS_REPORT_SEIZE_REPORT_H

#include "report/answer.h"
#include "report/report_chapter.h"
#include "response/drive_seizure.h"

typedef enum ts_jolt {
    TS_JOLT_SHORT,  /* a generator is shorted                                 */
    TS_JOLT_STEP,   /* an accessory takes its overload at once                */
    TS_JOLT_SLAM,   /* the spool is sped up                                   */
    TS_JOLT_CHOP,   /* ... or down                                            */
    TS_JOLT_ENGAGE, /* the clutch of a starter takes hold of a turning engine */
    TS_JOLTS,
    TS_JOLT_NONE = TS_JOLTS /* it seizes */
} ts_jolt;
extern const char *const ts_jolt_words[TS_JOLTS];

/* One run: with the neck as strong as it may be, as weak, or without it; of a jolt with all necks
 * as weak as they may be, and without any. */
enum { TS_SEIZE_STRONG, TS_SEIZE_WEAK, TS_SEIZE_BARE, TS_SEIZE_RUNS };

typedef struct ts_seize_run {
    bool       there;
    double     neck;   /* N.m; INFINITY: none        */
    double    *breaks; /* [joint] N.m, as it was run */
    ts_seizure seizure;
} ts_seize_run;

/* What a spring bears once, necks apart. */
typedef struct ts_seize_wall {
    double       T; /* N.m at its outer body; INFINITY: not known */
    ts_part_kind kind;
} ts_seize_wall;

typedef struct ts_seize_answer {
    int32_t               accessory;
    ts_jolt               jolt;
    double                alpha; /* rad/s2 of the input of the box, of a slam; + faster          */
    double                slip;  /* rad/s, of an engagement                                      */
    uint32_t              condition;
    double                speed;   /* rad/s at the pad                         */
    double                ramp;    /* s; 0: at once                            */
    const char           *neck_of; /* whose neck stands in its place; NULL: its own */
    const char           *because; /* NULL, or why nothing was computed ...    */
    const char           *of;      /* ... and of what; NULL: of nothing        */
    const ts_drive_twist *twist;
    const ts_seize_wall  *walls; /* [joint] */
    ts_seize_run          runs[TS_SEIZE_RUNS];
} ts_seize_answer;

/* "neck at its strongest", "necks at their weakest" */
const char *ts_seize_run_word(const ts_seize_answer *seize, int which);
/* Spring whose neck comes nearest to what breaks it, and its share of that; SIZE_MAX: there is
 * no neck. */
size_t ts_seize_nearest_neck(const ts_seize_answer *seize, const ts_seize_run *run, double *share);
/* Of what a spring bears once, its largest torque of a run; 0 where that is not known. */
double ts_seize_share(const ts_seize_answer *seize, const ts_seize_run *run, size_t joint);
/* "generator 1 is shorted at take-off" */
void ts_seize_name(const ts_seize_answer *seize, const ts_answer *answer, ts_buffer *text);
/* "mesh idler 4 > fuel pump" */
void ts_seize_joint(ts_buffer *out, const ts_drive_twist *twist, size_t joint);
/* Larger of both peaks, + or -. */
double ts_seize_peak(const ts_seize_run *run, size_t joint);
/* Joint of the spring that comes nearest to what it bears, and its share; the run must be there. */
size_t ts_seize_nearest(const ts_seize_answer *seize, const ts_seize_run *run, double *share);

/* Does every part hold under a jolt with all necks at their weakest?  A seizure is a failure, and
 * what breaks for it is told, not judged: true. */
bool ts_seize_is_borne(const ts_seize_answer *seize);

/* Is the pad of its tree, with an accessory that has no rotor there? */
bool ts_seize_leaves_out(const ts_seize_answer *seize, const ts_answer *answer, uint32_t pad);

/* Below a heading of that level, alike for the terminal and for a report. */
void ts_chapter_seizure(ts_chapter *chapter, const ts_seize_answer *seize, int level);
void ts_seize_json(const ts_seize_answer *seize, const ts_answer *answer, ts_buffer *out);

#endif
