/* What could an address go on with? */
#include "study/address.h"

#include <string.h>

static bool begins(const ts_buffer *whole, ts_text prefix)
{
    return whole->length >= prefix.length &&
           (prefix.length == 0 || memcmp(whole->bytes, prefix.at, prefix.length) == 0);
}

/* Addresses one step deeper than the prefix, as a shell completes folders. */
static void paths(const ts_study *study, ts_text prefix, ts_buffer *out)
{
    ts_buffer made;
    ts_buffer_open(&made, study->allocator);
    for (ts_node n = 2; n <= study->source.node_count; n++) {
        ts_buffer_clear(&made);
        ts_source_address(&study->source, n, &made);
        if (made.bytes == NULL || !begins(&made, prefix) ||
            memchr(made.bytes + prefix.length, '/', made.length - prefix.length) != NULL)
            continue;
        ts_buffer_bytes(out, made.bytes, made.length);
        ts_buffer_add(out, study->source.nodes[n].form == TS_NODE_SCALAR ? "\n" : "/\n");
    }
    out->failed = out->failed || made.failed;
    ts_buffer_close(&made);
}

/* Symbols of one part, with every condition in which they stand. */
static void symbols(const ts_study *study, ts_node node, ts_text prefix, ts_buffer *out)
{
    ts_buffer made;
    ts_buffer_open(&made, study->allocator);
    for (size_t i = 0; i < ts_workings_count(study->workings); i++) {
        const ts_note *note = ts_workings_at(study->workings, i);
        if (note->subject.object != node || !ts_note_listed(note))
            continue;
        ts_buffer_clear(&made);
        ts_source_address(&study->source, node, &made);
        ts_buffer_print(&made, ":%s", note->symbol);
        if (note->subject.condition >= 0)
            ts_buffer_print(&made, "@%s", study->drive.conditions[note->subject.condition].name);
        if (begins(&made, prefix))
            ts_buffer_print(out, "%s\n", made.bytes);
    }
    out->failed = out->failed || made.failed;
    ts_buffer_close(&made);
}

ts_status ts_study_write_addresses(ts_study *study, const char *prefix, const ts_sink *sink)
{
    if (!ts_study_ask(study, TS_WANT_EITHER) || study->workings == NULL)
        return TS_NOT_UNDERSTOOD;
    const ts_text wanted = ts_text_of(prefix);
    const char   *colon  = strchr(prefix, ':');
    ts_buffer     out;
    ts_buffer_open(&out, study->allocator);
    if (colon == NULL) {
        paths(study, wanted, &out);
    } else {
        const ts_text path = {prefix, (size_t)(colon - prefix)};
        ts_node       deepest;
        const ts_node node = ts_source_find(&study->source, path, &deepest);
        if (node != 0)
            symbols(study, node, wanted, &out);
    }
    const ts_status status = ts_buffer_send(&out, sink);
    ts_buffer_close(&out);
    return status;
}
