/* rate/rated_file.h: a rate file in a test, read and computed. */
#ifndef TS_TESTS_RATE_RATED_FILE_H
#define TS_TESTS_RATE_RATED_FILE_H

#include "support/close.h"
#include "towershaft/towershaft.h"

/* The study of a text; the caller closes it.  A text that cannot be read fails the test. */
ts_study *rated_text(const char *text);
/* The same of one element, without the head of the file: rated_element("gear pair",
 * "z_1: 25, ..."); the element is called `one`. */
ts_study *rated_element(const char *kind, const char *keys);

/* The finding of that rule, or NULL.  The view lives until the next call. */
const ts_finding_view *finding_of(ts_study *study, const char *rule);

#endif
