/* How are many samples computed at once? */
#include "study/sampling.h"

#include "base/assert.h"
#include "search/crew.h"

#include <math.h>
#include <stdatomic.h>
#include <string.h>

/* What is kept of one sample. */
typedef struct slot {
    uint64_t          id;
    ts_sampling_state state;
    ts_buffer         findings; /* numbers, 8 bytes each */
    ts_buffer         says;
} slot;

struct ts_sampling_block {
    const ts_sampling *sampling;
    ts_allocator       own;
    size_t             room, threads;
    ts_sampling_frame *frames; /* one a thread */
    slot              *slots;
    double            *values; /* [room][columns] */
    atomic_bool        failed;
};

static void *take(const ts_allocator *own, size_t count, size_t size)
{
    void *memory = own->resize(own->context, NULL, count * size);
    if (memory != NULL)
        memset(memory, 0, count * size);
    return memory;
}

static void give(const ts_allocator *own, void *memory)
{
    if (memory != NULL)
        own->resize(own->context, memory, 0);
}

void ts_sampling_block_close(ts_sampling_block *block)
{
    if (block == NULL)
        return;
    const ts_allocator own = block->own;
    for (size_t t = 0; block->frames != NULL && t < block->threads; t++)
        ts_sampling_frame_close(&block->frames[t]);
    for (size_t i = 0; block->slots != NULL && i < block->room; i++) {
        ts_buffer_close(&block->slots[i].findings);
        ts_buffer_close(&block->slots[i].says);
    }
    give(&own, block->frames);
    give(&own, block->slots);
    give(&own, block->values);
    own.resize(own.context, block, 0);
}

static ts_status open_parts(ts_sampling_block *block)
{
    const size_t columns = ts_sampling_columns(block->sampling);
    ts_status    status  = TS_OK;

    block->frames = take(&block->own, block->threads, sizeof *block->frames);
    block->slots  = take(&block->own, block->room, sizeof *block->slots);
    block->values = take(&block->own, block->room * columns, sizeof *block->values);
    if (block->frames == NULL || block->slots == NULL || block->values == NULL)
        return TS_NO_MEMORY;
    for (size_t i = 0; i < block->room; i++) {
        ts_buffer_open(&block->slots[i].findings, &block->own);
        ts_buffer_open(&block->slots[i].says, &block->own);
    }
    for (size_t t = 0; status == TS_OK && t < block->threads; t++)
        status = ts_sampling_frame_open(block->sampling, &block->frames[t]);
    return status;
}

ts_status ts_sampling_block_open(const ts_sampling *sampling, size_t room, size_t threads,
                                 ts_sampling_block **out)
{
    const ts_allocator *own   = &sampling->paper->own;
    ts_sampling_block  *block = take(own, 1, sizeof *block);

    *out = block;
    if (block == NULL)
        return TS_NO_MEMORY;
    block->sampling = sampling;
    block->own      = *own;
    block->room     = room;
    block->threads  = threads < 1 ? 1 : threads > 64 ? 64 : threads;
    atomic_init(&block->failed, false);
    const ts_status status = open_parts(block);
    if (status != TS_OK) {
        ts_sampling_block_close(block);
        *out = NULL;
    }
    return status;
}

/* ---- one sample ------------------------------------------------------------------------------ */

/* Numbers of the open findings of level refuse and warn, in order and each once. */
static void keep_findings(const ts_study *study, ts_buffer *kept)
{
    for (size_t i = 0; i < study->outcome.finding_count; i++) {
        const ts_finding *finding = &study->outcome.findings[i];
        if (finding->state != TS_OPEN || finding->level == TS_NOTE)
            continue;
        const uint64_t number = ts_sampled_finding(finding);
        uint64_t       other  = 0;
        size_t         at     = kept->length;
        for (; at > 0; at -= sizeof other) {
            memcpy(&other, kept->bytes + at - sizeof other, sizeof other);
            if (other <= number)
                break;
        }
        if (at > 0 && other == number)
            continue;
        ts_buffer_bytes(kept, (const char *)&number, sizeof number);
        if (kept->failed)
            return;
        memmove(kept->bytes + at + sizeof number, kept->bytes + at,
                kept->length - at - sizeof number);
        memcpy(kept->bytes + at, &number, sizeof number);
    }
}

static void keep_reason(const ts_study *study, ts_buffer *says)
{
    if (ts_study_message_count(study) == 0)
        return;
    const ts_message first = ts_study_message(study, 0);
    ts_buffer_print(says, "line %u: %s", first.line, first.says);
    if (first.expected != NULL)
        ts_buffer_print(says, "; expected %s", first.expected);
}

static ts_status solve(ts_sampling_frame *by, slot *kept, const double *inputs, double *outputs)
{
    static const ts_sampling_state states[] = {
        [TS_HOLDS]                  = TS_SAMPLE_HOLDS,
        [TS_DOES_NOT_HOLD]          = TS_SAMPLE_DOES_NOT_HOLD,
        [TS_VERDICT_NOT_COMPUTABLE] = TS_SAMPLE_NOT_COMPUTABLE,
    };
    const ts_status status = ts_sampling_frame_solve(by, inputs);

    if (status == TS_NOT_UNDERSTOOD) {
        kept->state = TS_SAMPLE_NOT_UNDERSTOOD;
        keep_reason(by->study, &kept->says);
        return TS_OK;
    }
    if (status != TS_OK)
        return status;
    kept->state = states[ts_study_verdict(by->study)];
    keep_findings(by->study, &kept->findings);
    ts_sampled_values(by->sampling, by->study, outputs);
    return TS_OK;
}

static void compute(void *context, size_t item, size_t thread)
{
    ts_sampling_block *block    = context;
    const ts_sampling *sampling = block->sampling;
    slot              *kept     = &block->slots[item];
    double            *values   = block->values + item * ts_sampling_columns(sampling);

    ts_buffer_clear(&kept->findings);
    ts_buffer_clear(&kept->says);
    ts_design_row(&sampling->design, kept->id, values);
    for (size_t k = 0; k < sampling->output_count; k++)
        values[sampling->input_count + k] = (double)NAN;
    const ts_status status =
        solve(&block->frames[thread], kept, values, values + sampling->input_count);
    if (status != TS_OK || kept->findings.failed || kept->says.failed)
        atomic_store(&block->failed, true);
}

ts_status ts_sampling_block_run(ts_sampling_block *block, const uint64_t *ids, size_t count)
{
    TS_ASSERT(count <= block->room);
    for (size_t i = 0; i < count; i++)
        block->slots[i].id = ids[i];
    ts_crew_run(block->threads, count, compute, block);
    return atomic_load(&block->failed) ? TS_NO_MEMORY : TS_OK;
}

ts_sampling_row ts_sampling_block_row(const ts_sampling_block *block, size_t index)
{
    const slot *kept = &block->slots[index];

    return (ts_sampling_row){
        .id            = kept->id,
        .values        = block->values + index * ts_sampling_columns(block->sampling),
        .state         = kept->state,
        .findings      = (const uint64_t *)(const void *)kept->findings.bytes,
        .finding_count = kept->findings.length / sizeof(uint64_t),
        .says          = kept->says.length > 0 ? kept->says.bytes : NULL,
    };
}

ts_status ts_sampling_write_drive(ts_sampling *sampling, uint64_t id, const ts_sink *sink)
{
    double    values[TS_SAMPLE_INPUTS_MOST];
    ts_buffer out;

    if (id >= ts_sampling_count(sampling))
        return TS_NOT_UNDERSTOOD;
    ts_design_row(&sampling->design, id, values);
    ts_buffer_open(&out, sampling->paper->allocator);
    ts_sampling_splice(sampling, values, &out);
    const ts_status status = ts_buffer_send(&out, sink);
    ts_buffer_close(&out);
    return status;
}
