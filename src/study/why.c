/* How is the working of one number found and told? */
#include "study/address.h"

#include "report/check_page.h"
#include "report/why_page.h"
#include "study/outlet.h"

#include <string.h>

typedef struct places {
    ts_study *study;
    ts_buffer made; /* the address told last */
} places;

static const char *place_address(void *context, uint32_t node)
{
    places *from = context;
    ts_buffer_clear(&from->made);
    if (node != 0)
        ts_source_address(&from->study->source, node, &from->made);
    return from->made.bytes != NULL ? from->made.bytes : "";
}

static const char *place_condition(void *context, int32_t condition)
{
    const places *from = context;
    return from->study->drive.conditions[condition].name;
}

static uint32_t place_line(void *context, uint32_t node)
{
    const places *from = context;
    return from->study->source.nodes[node].line;
}

static ts_text place_text(void *context, uint32_t node)
{
    const places *from  = context;
    const ts_text bytes = from->study->source.bytes;
    size_t        start = from->study->source.nodes[node].start;
    size_t        end   = start;
    while (start > 0 && bytes.at[start - 1] != '\n')
        start--;
    while (end < bytes.length && bytes.at[end] != '\n' && bytes.at[end] != '\r')
        end++;
    return (ts_text){bytes.at + start, end - start};
}

static ts_status working_json(const ts_study *study, const ts_why *why, ts_page *page)
{
    ts_json json;
    ts_json_begin(&json, page->out, false);
    ts_json_object(&json);
    ts_json_string_at(&json, "tool", "towershaft");
    ts_json_string_at(&json, "version", ts_version());
    ts_json_string_at(&json, "caution", ts_caution());
    ts_json_key(&json, "input");
    ts_json_object(&json);
    ts_json_string_at(&json, "path", study->name);
    ts_json_string_at(&json, "sha256", ts_study_sha256(study));
    ts_json_end(&json, '}');
    ts_json_key(&json, "working");
    const ts_status status = ts_why_json(why, page->units, &json);
    if (status != TS_OK)
        return status;
    ts_json_end(&json, '}');
    ts_buffer_add(page->out, "\n");
    return TS_OK;
}

static ts_status working(ts_study *study, size_t note, bool json, ts_page *page)
{
    places from = {.study = study};
    ts_buffer_open(&from.made, study->allocator);
    const ts_why_places told = {.context   = &from,
                                .file      = study->name,
                                .address   = place_address,
                                .condition = place_condition,
                                .line      = place_line,
                                .text      = place_text};
    const ts_why        why  = {.workings = study->workings, .index = note, .places = &told};
    ts_status           status;
    if (json) {
        status = working_json(study, &why, page);
    } else {
        status = ts_why_page(&why, page);
    }
    if (from.made.failed)
        status = TS_NO_MEMORY;
    ts_buffer_close(&from.made);
    return status;
}

/* A number of the file is its own explanation. */
static void scalar(const ts_study *study, ts_node node, ts_page *page)
{
    const ts_node_place *place = &study->source.nodes[node];
    ts_source_address(&study->source, node, page->out);
    ts_buffer_print(page->out, " = %.*s\n    %s:%u:%u", (int)place->scalar.length, place->scalar.at,
                    study->name, place->line, place->column);
    if (place->source != 0)
        ts_buffer_print(page->out, "   source: %.*s",
                        (int)study->source.nodes[place->source].scalar.length,
                        study->source.nodes[place->source].scalar.at);
    ts_buffer_add(page->out, "\n");
}

/* The operating conditions of a drive are listed as one; the sections of an element are not. */
static bool seen_earlier(const ts_study *study, size_t index)
{
    const ts_note *now = ts_workings_at(study->workings, index);
    for (size_t i = 0; i < index; i++) {
        const ts_note *earlier = ts_workings_at(study->workings, i);
        if (earlier->subject.object == now->subject.object && ts_note_listed(earlier) &&
            (!study->rated || earlier->subject.condition == now->subject.condition) &&
            strcmp(earlier->symbol, now->symbol) == 0)
            return true;
    }
    return false;
}

/* What a number means, or where it comes from when no formula says that. */
static void add_meaning(ts_buffer *out, const ts_note *note)
{
    if (note->formula != NULL && note->formula->meaning != NULL)
        ts_buffer_add(out, note->formula->meaning);
    switch (note->kind) {
    case TS_NOTE_SEARCHED:
        ts_buffer_add(out, out->length > 0 ? ", found by iteration" : "found by iteration");
        break;
    case TS_NOTE_ROW:
        ts_buffer_add(out, strcmp(ts_why_stands(note), "table") == 0 ? "read from a table"
                                                                     : "computed before");
        break;
    case TS_NOTE_GIVEN:
        ts_buffer_add(out, "given in the file");
        break;
    case TS_NOTE_ASSUMED:
        ts_buffer_add(out, "assumed");
        break;
    case TS_NOTE_BORROWED:
        ts_buffer_add(out, "a number of another part");
        break;
    case TS_NOTE_STEP:
        break;
    }
}

/* "drive/hp:n@take-off   rotational speed", the meaning below where both do not fit. */
static void list_symbol(const ts_study *study, size_t index, ts_page *page)
{
    const ts_note *note   = ts_workings_at(study->workings, index);
    const bool     varies = note->subject.condition >= 0;
    ts_buffer      address, meaning;
    ts_buffer_open(&address, study->allocator);
    ts_buffer_open(&meaning, study->allocator);
    ts_source_address(&study->source, note->subject.object, &address);
    ts_buffer_print(&address, ":%s", note->symbol);
    if (varies)
        ts_buffer_print(&address, "@%s", study->drive.conditions[note->subject.condition].name);
    add_meaning(&meaning, note);
    if (varies && !study->rated)
        ts_buffer_add(&meaning, " (and in the other conditions)");
    const ts_text says  = {meaning.bytes != NULL ? meaning.bytes : "", meaning.length};
    const bool    sound = !address.failed && !meaning.failed;
    ts_buffer_add(page->out, "  ");
    const size_t taken =
        sound ? ts_page_spread(page, (ts_text){address.bytes, address.length}, 4, 2) : 0;
    const bool fits = taken + 3 + ts_text_columns(says) <= (size_t)page->columns;
    ts_buffer_add(page->out, fits ? "   " : "\n      ");
    (void)ts_page_spread(page, says, 6, fits ? (int)taken + 3 : 6);
    ts_page_line_end(page);
    page->out->failed = page->out->failed || !sound;
    ts_buffer_close(&address);
    ts_buffer_close(&meaning);
}

/* What can be asked about one part. */
static void list_numbers(const ts_study *study, ts_node node, ts_page *page)
{
    size_t listed = 0;
    for (size_t i = 0; i < ts_workings_count(study->workings); i++) {
        const ts_note *note = ts_workings_at(study->workings, i);
        if (note->subject.object != node || !ts_note_listed(note) || seen_earlier(study, i))
            continue;
        list_symbol(study, i, page);
        listed++;
    }
    if (listed == 0)
        ts_buffer_add(page->out, "  no number is computed there; its parts may have some\n");
}

static void list_parts(const ts_study *study, ts_page *page)
{
    ts_buffer_add(page->out, "Parts; ask for one to see its numbers.\n");
    for (uint32_t s = 0; s < study->train.shaft_count; s++) {
        ts_buffer_add(page->out, "  ");
        ts_source_address(&study->source, study->train.shafts[s].node, page->out);
        ts_buffer_print(page->out, "   %s\n", study->train.shafts[s].name);
    }
    for (size_t e = 0; e < study->elements.element_count; e++) {
        ts_buffer_add(page->out, "  ");
        ts_source_address(&study->source, study->elements.elements[e].node, page->out);
        ts_buffer_add(page->out, "\n");
    }
    for (uint32_t p = 0; p < study->train.pad_count; p++) {
        ts_buffer_add(page->out, "  ");
        ts_source_address(&study->source, study->train.pads[p].node, page->out);
        ts_buffer_print(page->out, "   pad of %s\n", study->train.pads[p].name);
    }
}

static ts_status tell(ts_study *study, const char *address, bool json, ts_page *page)
{
    const ts_address split = ts_address_split(address);
    bool             whole = false;
    const ts_node    node  = ts_address_node(study, split.path, &whole);
    if (node == 0 && !whole)
        return ts_study_refused(study);
    if (split.symbol.length > 0) {
        const size_t note = ts_address_note(study, split, node);
        return note != SIZE_MAX ? working(study, note, json, page) : ts_study_refused(study);
    }
    if (json) {
        ts_study_say(study, "symbol-needed", "as JSON only the working of one number is told",
                     "an address with a colon and a symbol", NULL);
        return TS_NOT_UNDERSTOOD;
    }
    if (whole)
        list_parts(study, page);
    else if (study->source.nodes[node].form == TS_NODE_SCALAR)
        scalar(study, node, page);
    if (!whole)
        list_numbers(study, node, page);
    return TS_OK;
}

static void title(const ts_study *study, ts_page *page)
{
    const ts_answer answer = ts_study_answer(study);
    ts_answer_title(&answer, page);
    ts_page_line_end(page);
}

static ts_status write_why(ts_study *study, const char *address, bool json, bool titled,
                           const ts_page_options *options, const ts_sink *sink)
{
    if (!ts_study_ask(study, TS_WANT_EITHER) || study->workings == NULL)
        return TS_NOT_UNDERSTOOD;
    ts_buffer out;
    ts_buffer_open(&out, study->allocator);
    ts_page page = ts_outlet_page(options, &out);
    if (titled)
        title(study, &page);
    ts_status status = tell(study, address, json, &page);
    if (status == TS_OK)
        status = ts_buffer_send(&out, sink);
    ts_buffer_close(&out);
    return status;
}

ts_status ts_study_write_why(ts_study *study, const char *address, bool json,
                             const ts_page_options *options, const ts_sink *sink)
{
    return write_why(study, address, json, !json, options, sink);
}

ts_status ts_study_write_working(ts_study *study, const char *address,
                                 const ts_page_options *options, const ts_sink *sink)
{
    return write_why(study, address, false, false, options, sink);
}
