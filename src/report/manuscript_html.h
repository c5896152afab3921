/* report/manuscript_html.h: a manuscript as one HTML file that needs nothing else. */
#ifndef TS_REPORT_MANUSCRIPT_HTML_H
#define TS_REPORT_MANUSCRIPT_HTML_H

#include "base/manuscript.h"

/* The SVG of a figure block goes to `svg`.  TS_NO_MEMORY fails the page; any other status but TS_OK
 * puts a boxed sentence in place of the picture. */
typedef struct ts_figure_source {
    void *context;
    ts_status (*svg)(void *context, const ts_block *figure, ts_buffer *svg);
} ts_figure_source;

/* `large`: in large print.  HTML 5 with its style inside and pictures as data addresses, no script, nothing from outside: a
 * content security policy in its head says so.  Every text is escaped.  Failures stand in
 * out->failed. */
void ts_manuscript_html(const ts_manuscript *manuscript, const ts_figure_source *figures, bool large,
                        ts_buffer *out);

#endif
