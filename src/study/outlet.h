/* study/outlet.h: what the outlets of a study share. */
#ifndef TS_STUDY_OUTLET_H
#define TS_STUDY_OUTLET_H

#include "report/page.h"
#include "towershaft/study.h"

/* The page that a caller's options ask for; NULL: metric, no colour, 100 columns. */
ts_page ts_outlet_page(const ts_page_options *options, ts_buffer *out);

#endif
