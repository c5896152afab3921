/* How is one sample after the other solved without doing all of it again? */
#include "study/sampling.h"

#include <string.h>

ts_status ts_sampling_frame_open(const ts_sampling *sampling, ts_sampling_frame *frame)
{
    const ts_allocator *own = &sampling->paper->own;

    *frame = (ts_sampling_frame){.sampling = sampling, .tree = sampling->tree};
    ts_buffer_open(&frame->words, own);
    ts_buffer_open(&frame->text, own);
    frame->lasting = ts_arena_open(own);
    if (frame->lasting == NULL || ts_study_open(own, &frame->study) != TS_OK)
        return TS_NO_MEMORY;
    const size_t nodes = (size_t)sampling->tree.node_count + 1;
    frame->tree.nodes  = TS_TAKE(frame->lasting, ts_node_place, nodes);
    if (frame->tree.nodes == NULL)
        return TS_NO_MEMORY;
    memcpy(frame->tree.nodes, sampling->tree.nodes, nodes * sizeof *frame->tree.nodes);
    frame->study->stock = ts_stock_open(own, 1);
    return frame->study->stock != NULL ? TS_OK : TS_NO_MEMORY;
}

void ts_sampling_frame_close(ts_sampling_frame *frame)
{
    if (frame->sampling == NULL)
        return; /* never opened */
    ts_study_close(frame->study);
    ts_arena_close(frame->lasting);
    ts_buffer_close(&frame->words);
    ts_buffer_close(&frame->text);
    *frame = (ts_sampling_frame){0};
}

/* The words stand one behind the other; they are found once none moves any more. */
static bool write_values(ts_sampling_frame *frame, const double *values)
{
    const ts_sampling *sampling = frame->sampling;
    size_t             ends[TS_SAMPLE_INPUTS_MOST], from = 0;

    ts_buffer_clear(&frame->words);
    for (size_t k = 0; k < sampling->input_count; k++) {
        ts_sampling_print_value(sampling, k, values[k], &frame->words);
        ends[k] = frame->words.length;
    }
    for (size_t k = 0; !frame->words.failed && k < sampling->input_count; k++) {
        ts_node_place *place = &frame->tree.nodes[sampling->inputs[k].node];

        place->scalar = (ts_text){frame->words.bytes + from, ends[k] - from};
        place->quote  = 0;
        from          = ends[k];
    }
    return !frame->words.failed;
}

/* Its own text, for messages that speak of its lines. */
static ts_status solve_text(ts_sampling_frame *frame, const double *values,
                            const ts_study_options *options)
{
    const char *name = frame->sampling->nominal->name;

    ts_buffer_clear(&frame->text);
    ts_sampling_splice(frame->sampling, values, &frame->text);
    if (frame->text.failed)
        return TS_NO_MEMORY;
    return ts_study_read(frame->study, name, frame->text.bytes, frame->text.length, options);
}

ts_status ts_sampling_frame_solve(ts_sampling_frame *frame, const double *values)
{
    const ts_sampling *sampling = frame->sampling;
    ts_study_options   options  = sampling->paper->options;

    options.workings = sampling->workings;
    if (!write_values(frame, values))
        return TS_NO_MEMORY;
    const ts_status status =
        ts_study_read_nodes(frame->study, sampling->nominal->name, &frame->tree, &options);
    return status == TS_NOT_UNDERSTOOD ? solve_text(frame, values, &options) : status;
}
