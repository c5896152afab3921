/* Which study of a varying drive does a file ask for? */
#include "study/sampling.h"

#include "check/rulebook.h"
#include "model/sampling_read.h"

#include <string.h>

#define FINDING_PLACES 1048576u /* more than a drive file has nodes */

ts_status ts_sampling_open(const ts_allocator *allocator, const char *name, const char *bytes,
                           size_t length, ts_sampling **out)
{
    const ts_allocator *from     = allocator != NULL ? allocator : &ts_allocator_standard;
    ts_sampling        *sampling = from->resize(from->context, NULL, sizeof *sampling);
    ts_status           status   = TS_NO_MEMORY;

    *out = sampling;
    if (sampling == NULL)
        return TS_NO_MEMORY;
    memset(sampling, 0, sizeof *sampling);
    status = ts_study_open(from, &sampling->paper);
    if (status == TS_OK)
        status = ts_study_begin(sampling->paper, name, bytes, length);
    if (status != TS_OK) {
        ts_study_close(sampling->paper);
        from->resize(from->context, sampling, 0);
        *out = NULL;
        return status;
    }
    ts_study            *paper  = sampling->paper;
    const ts_file_places places = {paper->name, paper->arena, paper->diagnostics, &paper->source};
    return ts_read_sampling(paper->bytes, &places, &sampling->file);
}

void ts_sampling_close(ts_sampling *sampling)
{
    if (sampling == NULL)
        return;
    const ts_allocator own = sampling->paper->own;
    ts_study_close(sampling->nominal);
    ts_study_close(sampling->paper);
    own.resize(own.context, sampling, 0);
}

const char *ts_sampling_drive(const ts_sampling *sampling)
{
    return sampling->file.drive.text;
}

const ts_study *ts_sampling_messages(const ts_sampling *sampling)
{
    const bool drive = sampling->nominal != NULL && ts_study_message_count(sampling->nominal) > 0;
    return drive && ts_study_message_count(sampling->paper) == 0 ? sampling->nominal
                                                                 : sampling->paper;
}

void ts_sampling_say(ts_sampling *sampling, const ts_diagnostic *what, ts_node node)
{
    const ts_node_place *place = &sampling->paper->source.nodes[node];
    ts_diagnostic        said  = *what;

    said.line    = place->line;
    said.column  = place->column;
    said.columns = place->end > place->start ? (uint32_t)(place->end - place->start) : 1;
    ts_diagnose(sampling->paper->diagnostics, &said);
}

/* ---- what is asked of it --------------------------------------------------------------------- */

uint64_t ts_sampling_count(const ts_sampling *sampling)
{
    return ts_design_rows(&sampling->design);
}

size_t ts_sampling_columns(const ts_sampling *sampling)
{
    return sampling->input_count + sampling->output_count;
}

ts_sampling_column ts_sampling_column_at(const ts_sampling *sampling, size_t index)
{
    if (index < sampling->input_count) {
        const ts_sampled_input *input = &sampling->inputs[index];
        return (ts_sampling_column){input->name, ts_kind_si(input->kind)->name, true};
    }
    const ts_sampled_output *output = &sampling->outputs[index - sampling->input_count];
    return (ts_sampling_column){output->name, output->unit, false};
}

const char *ts_sampling_identity(const ts_sampling *sampling)
{
    return sampling->identity;
}

ts_sampling_fact ts_sampling_fact_at(const ts_sampling *sampling, size_t index)
{
    const ts_sampling_fact facts[] = {
        {"towershaft", ts_version()},
        {"caution", ts_caution()},
        {"title", sampling->file.title.text},
        {"study", sampling->paper->name},
        {"study sha256", ts_study_sha256(sampling->paper)},
        {"drive", sampling->nominal->name},
        {"drive sha256", ts_study_sha256(sampling->nominal)},
        {"method", sampling->method},
        {"samples", sampling->samples},
        {"seed", sampling->seed},
        {"identity", sampling->identity},
    };
    return index < sizeof facts / sizeof facts[0] ? facts[index] : (ts_sampling_fact){NULL, NULL};
}

uint64_t ts_sampled_finding(const ts_finding *finding)
{
    const size_t rule = ts_rulebook_find(ts_text_of(finding->rule), NULL);

    return (uint64_t)rule * FINDING_PLACES + finding->node % FINDING_PLACES;
}

ts_sampling_finding ts_sampling_finding_of(const ts_sampling *sampling, uint64_t finding)
{
    static const char *const levels[] = {"refuse", "warn", "note"};
    const ts_source         *source   = &sampling->nominal->source;
    const uint64_t           rule = finding / FINDING_PLACES, node = finding % FINDING_PLACES;
    ts_sampling_finding      of = {.rule = "unknown", .level = "unknown"};
    ts_buffer                made;

    if (rule >= ts_rulebook_count())
        return of;
    of.rule  = ts_rulebook_rules()[rule]->id;
    of.level = levels[ts_rulebook_rules()[rule]->level];
    ts_buffer_open(&made, sampling->paper->allocator);
    if (node > 0 && node <= source->node_count + source->made_count)
        ts_source_address(source, (ts_node)node, &made);
    const size_t length = made.failed ? 0 : made.length;
    const size_t kept   = length < sizeof of.address ? length : sizeof of.address - 1;
    if (kept > 0)
        memcpy(of.address, made.bytes, kept);
    of.address[kept] = '\0';
    ts_buffer_close(&made);
    return of;
}

const char *ts_sampling_state_name(ts_sampling_state state)
{
    static const char *const names[] = {"holds", "does not hold", "not computable",
                                        "not understood"};
    return state < TS_SAMPLE_STATES ? names[state] : "unknown";
}
