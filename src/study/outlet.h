/* study/outlet.h: what the outlets of a study share. */
#ifndef TS_STUDY_OUTLET_H
#define TS_STUDY_OUTLET_H

#include "report/page.h"
#include "towershaft/study.h"

/* The page that a caller's options ask for; NULL: metric, no colour, 100 columns. */
ts_page ts_outlet_page(const ts_page_options *options, ts_buffer *out);

/* What `why` tells people about one number, below a heading of the caller's in place of the title
 * and the caution.  Errors: those of ts_study_write_why.
 */
ts_status ts_study_write_working(ts_study *study, const char *address,
                                 const ts_page_options *options, const ts_sink *sink);

#endif
