/* study/outlet.h: what the outlets of a study share. */
#ifndef TS_STUDY_OUTLET_H
#define TS_STUDY_OUTLET_H

#include "report/page.h"
#include "study/study.h"

/* The page that a caller's options ask for; NULL: metric, no colour, 100 columns. */
ts_page ts_outlet_page(const ts_page_options *options, ts_buffer *out);

/* One answer from question to sink: what is computed for it lives in `arena`, what is told goes to
 * page.out. */
typedef struct ts_telling {
    ts_study *study;
    ts_arena *arena;
    ts_answer answer;
    ts_page   page;
} ts_telling;
typedef ts_status ts_teller(ts_telling *telling, void *about);

/* A question of its own (ts_study_ask).  TS_NOT_UNDERSTOOD where no drive was solved; else what
 * `tell` or the sink says.  Nothing is sent unless `tell` ends with TS_OK. */
ts_status ts_outlet_tell(ts_study *study, const ts_page_options *look, ts_teller *tell, void *about,
                         const ts_sink *sink);

/* What `why` tells people about one number, below a heading of the caller's in place of the title
 * and the caution.  Errors: those of ts_study_write_why.
 */
ts_status ts_study_write_working(ts_study *study, const char *address,
                                 const ts_page_options *options, const ts_sink *sink);

#endif
