/* report/warm_report.h: drives that grow hot, for people and as JSON. */
#ifndef TS_REPORT_WARM_REPORT_H
#define TS_REPORT_WARM_REPORT_H

#include "oil/warming.h"
#include "report/answer.h"
#include "report/report_chapter.h"

typedef struct ts_warm_answer {
    const ts_warm_leg    *legs;
    size_t                leg_count;
    bool                  legs_assumed, soak_assumed;
    bool                  soak_of_file; /* assumed, but from the temperatures of a box */
    double                soak, air;    /* K; air NaN: none is told */
    double                alpha[2]; /* 1/K, of gears and casing where their box tells none ... */
    const char           *metal[2]; /* ... of these rows of data/metal.tsv                    */
    bool                  alpha_assumed; /* is there such a box? */
    size_t                samples;       /* of every leg             */
    const ts_warm_course *courses;       /* [drive]                  */
} ts_warm_answer;

/* Do the temperatures of a course stay within those that the file has for the box? */
bool ts_warm_is_within(const ts_warm_answer *warm, const ts_answer *answer, uint32_t drive);
/* Could every drive be followed; is play left at every moment, and are all within? */
ts_verdict ts_warm_verdict(const ts_warm_answer *warm, const ts_answer *answer);

/* A chapter, alike for the terminal and for a report. */
void ts_chapter_warm(ts_chapter *chapter, const ts_warm_answer *warm);
void ts_warm_json(const ts_warm_answer *warm, const ts_answer *answer, ts_buffer *out);

#endif
