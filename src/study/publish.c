/* How does a manuscript about a study get on paper, or into a browser? */
#include "study/publish.h"

#include "draw/moving.h"
#include "report/brief.h"
#include "report/manuscript_html.h"
#include "study/figures.h"

#include <string.h>

/* Letters of 9 pt become 16 pt, the least that is called large print (common practice, no source).
 */
#define LARGE_PRINT (16.0 / 9.0)

typedef struct making {
    ts_study                 *study;
    const ts_paper_wish      *wish;
    const ts_drawing_subject *subject;
} making;

/* ---- figures --------------------------------------------------------------------------------- */

/* The face without numbers, which stands in no list of figures. */
static bool plain_of(const making *it, const ts_block *block, ts_draw_options *options)
{
    *options = (ts_draw_options){.figure    = TS_FIGURE_PLAIN,
                                 .ground    = it->wish->pdf ? TS_GROUND_PRINT : TS_GROUND_LIGHT,
                                 .units     = it->wish->units,
                                 .allocator = it->study->allocator};
    return ts_study_choose_condition(it->study, block->condition, &options->condition);
}

static bool figure_of(void *context, const ts_block *block, ts_draw_options *options)
{
    const making           *it   = context;
    const ts_figure_options from = {.figure    = block->figure,
                                    .format    = "svg",
                                    .condition = block->condition,
                                    .ground    = it->wish->pdf ? "print" : "light",
                                    .us        = it->wish->units == TS_UNITS_US};
    if (strcmp(block->figure, TS_BRIEF_PLAIN) == 0)
        return plain_of(it, block, options);
    if (!ts_study_figure(it->study, &from, options))
        return false;
    options->caution = NULL; /* it stands on every page */
    return true;
}

int ts_study_keep(void *context, const char *bytes, size_t length)
{
    ts_buffer *buffer = context;
    ts_buffer_bytes(buffer, bytes, length);
    return buffer->failed;
}

/* Only a page for a browser can show it. */
static ts_status moving_of(const making *it, const ts_block *block, ts_buffer *svg)
{
    ts_draw_options options = {.allocator = it->study->allocator};

    if (!ts_study_choose_condition(it->study, block->condition, &options.condition))
        return ts_study_refused(it->study);
    return ts_draw_moving(it->subject, &options, svg);
}

static ts_status svg_of(void *context, const ts_block *block, ts_buffer *svg)
{
    const making   *it   = context;
    const ts_sink   sink = {ts_study_keep, svg};
    ts_draw_options options;
    if (strcmp(block->figure, TS_BRIEF_MOVING) == 0)
        return moving_of(it, block, svg);
    if (!figure_of(context, block, &options))
        return ts_study_refused(it->study);
    return ts_draw(it->subject, &options, &sink);
}

/* ---- the whole ------------------------------------------------------------------------------- */

static ts_status send(const ts_manuscript *manuscript, making *it, const ts_sink *sink)
{
    if (it->wish->pdf) {
        const ts_typeset_options options = {.paper     = it->wish->paper,
                                            .subject   = it->subject,
                                            .figure    = figure_of,
                                            .context   = it,
                                            .enlarge   = it->wish->large ? LARGE_PRINT : 0.0,
                                            .allocator = it->study->allocator};
        return ts_typeset_pdf(manuscript, &options, sink);
    }
    const ts_figure_source figures = {it, svg_of};
    ts_buffer              out;
    ts_buffer_open(&out, it->study->allocator);
    ts_manuscript_html(manuscript, &figures, it->wish->large, &out);
    const ts_status status = out.failed ? TS_NO_MEMORY : ts_buffer_send(&out, sink);
    ts_buffer_close(&out);
    return status;
}

ts_status ts_study_publish(ts_study *study, const ts_manuscript *manuscript,
                           const ts_paper_wish *wish, const ts_drawing_subject *subject,
                           const ts_sink *sink)
{
    making it = {study, wish, subject};
    if (!ts_study_has_font(study))
        return TS_NOT_UNDERSTOOD;
    return manuscript->failed ? TS_NO_MEMORY : send(manuscript, &it, sink);
}
