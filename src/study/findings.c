/* How does a caller look at single findings? */
#include "study/study.h"

#include "report/page.h"

size_t ts_study_finding_count(const ts_study *study)
{
    return study->solved || study->rated ? study->outcome.finding_count : 0;
}

/* The address as text that lives as long as the study. */
static const char *address_text(ts_study *study, ts_node node)
{
    ts_buffer made;
    ts_buffer_open(&made, study->allocator);
    ts_source_address(&study->source, node, &made);
    const char *kept = made.failed || made.bytes == NULL
                           ? NULL
                           : ts_arena_copy(study->arena, made.bytes, made.length);
    ts_buffer_close(&made);
    return kept != NULL ? kept : "";
}

/* That of a finding, made when it is first asked for. */
static const char *address_of(ts_study *study, size_t index)
{
    if (study->addresses == NULL)
        study->addresses = TS_TAKE(study->arena, const char *, study->outcome.finding_count);
    if (study->addresses == NULL)
        return "";
    if (study->addresses[index] == NULL)
        study->addresses[index] = address_text(study, study->outcome.findings[index].node);
    return study->addresses[index];
}

ts_finding_view ts_study_finding(ts_study *study, size_t index)
{
    const ts_finding    *finding = &study->outcome.findings[index];
    const ts_node_place *place   = &study->source.nodes[finding->node];
    const ts_answer      answer  = ts_study_answer(study);
    ts_finding_view      view    = {
                .rule        = finding->rule,
                .level       = ts_level_name(finding->level),
                .state       = ts_state_name(finding->state),
                .address     = address_of(study, index),
                .line        = place->line,
                .column      = place->column,
                .condition   = ts_answer_condition(&answer, finding->condition),
                .says        = finding->says,
                .remedy      = finding->remedy,
                .value       = finding->value,
                .limit       = finding->limit,
                .margin      = finding->margin,
                .unit        = finding->unit,
                .source      = finding->source,
                .fingerprint = finding->fingerprint,
    };
    return view;
}
