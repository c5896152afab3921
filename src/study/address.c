/* Which number does an address mean? */
#include "study/address.h"

#include <math.h>
#include <stdio.h>
#include <string.h>

ts_address ts_address_split(const char *address)
{
    const ts_text whole = ts_text_of(address);
    const char   *colon = memchr(whole.at, ':', whole.length);
    if (colon == NULL)
        return (ts_address){.path = whole};
    const size_t  before = (size_t)(colon - whole.at);
    const ts_text rest   = {colon + 1, whole.length - before - 1};
    const char   *at     = rest.length > 0 ? memchr(rest.at, '@', rest.length) : NULL;
    const size_t  symbol = at != NULL ? (size_t)(at - rest.at) : rest.length;
    ts_address    split  = {.path = {whole.at, before}, .symbol = {rest.at, symbol}};
    if (at != NULL)
        split.condition = (ts_text){at + 1, rest.length - symbol - 1};
    return split;
}

int32_t ts_address_condition(const ts_study *study, ts_text name)
{
    if (name.length == 0)
        return TS_EVERY_CONDITION;
    for (size_t c = 0; c < study->drive.condition_count; c++)
        if (ts_text_is(name, study->drive.conditions[c].name))
            return (int32_t)c;
    return -2;
}

bool ts_note_listed(const ts_note *note)
{
    return note->kind != TS_NOTE_BORROWED;
}

/* Says that `what` is not there, with the nearest of the names that are. */
static void say_missing(ts_study *study, const char *what, ts_text name, const char *const *names,
                        size_t count)
{
    ts_buffer says;
    ts_buffer_open(&says, study->allocator);
    ts_buffer_print(&says, "there is no %s %.*s", what, (int)name.length,
                    name.length > 0 ? name.at : "");
    const char *nearest = names != NULL ? ts_text_nearest(name, names, count) : NULL;
    if (!says.failed)
        ts_study_say(study, "unknown-address", says.bytes, NULL, nearest);
    ts_buffer_close(&says);
}

/* The children of the last node that exists, for "did you mean". */
static void say_no_path(ts_study *study, ts_text path, ts_node deepest)
{
    const ts_source *source = &study->source;
    const char     **names  = TS_TAKE(study->asked, const char *, source->node_count + 1);
    size_t           count  = 0;
    for (ts_node n = 1; names != NULL && n <= source->node_count; n++) {
        if (source->nodes[n].parent != deepest)
            continue;
        ts_buffer made;
        ts_buffer_open(&made, study->allocator);
        ts_source_address(source, n, &made);
        if (!made.failed && made.bytes != NULL)
            names[count] = ts_arena_copy(study->asked, made.bytes, made.length);
        ts_buffer_close(&made);
        count += names[count] != NULL;
    }
    say_missing(study, "part or value called", path, names, count);
}

ts_node ts_address_node(ts_study *study, ts_text path, bool *whole)
{
    *whole = path.length == 0;
    if (*whole)
        return 0;
    ts_node       deepest = 0;
    const ts_node node    = ts_source_find(&study->source, path, &deepest);
    if (node == 0)
        say_no_path(study, path, deepest != 0 ? deepest : 1);
    return node;
}

/* `asked`: the condition that was named in vain, or nothing where none was. */
static void say_conditions(ts_study *study, ts_text symbol, ts_text asked, ts_node node)
{
    static const char *const all = "@ and one of";
    ts_buffer                says, expected;
    ts_buffer_open(&says, study->allocator);
    ts_buffer_open(&expected, study->allocator);
    if (asked.length > 0)
        ts_buffer_print(&says, "there is no %.*s of %.*s", (int)symbol.length, symbol.at,
                        (int)asked.length, asked.at);
    else
        ts_buffer_print(&says, "%.*s varies with the condition", (int)symbol.length, symbol.at);
    ts_buffer_add(&expected, all);
    for (size_t c = 0; c < study->drive.condition_count; c++) {
        char             name[64];
        const ts_subject subject = {node, (int32_t)c};
        snprintf(name, sizeof name, "%.*s", (int)symbol.length, symbol.at);
        if (ts_workings_find(study->workings, subject, name) != SIZE_MAX)
            ts_buffer_print(&expected, "%s %s", expected.length > strlen(all) ? "," : "",
                            study->drive.conditions[c].name);
    }
    if (!says.failed && !expected.failed)
        ts_study_say(study, "condition-needed", says.bytes, expected.bytes, NULL);
    ts_buffer_close(&says);
    ts_buffer_close(&expected);
}

/* In how many conditions there is such a number; *note is that of the last. */
static size_t condition_count(const ts_study *study, ts_node node, const char *symbol, size_t *note)
{
    size_t count = 0;
    for (size_t c = 0; c < study->drive.condition_count; c++) {
        const ts_subject subject = {node, (int32_t)c};
        const size_t     found   = ts_workings_find(study->workings, subject, symbol);
        *note                    = found != SIZE_MAX ? found : *note;
        count += found != SIZE_MAX ? 1 : 0;
    }
    return count;
}

static void say_no_symbol(ts_study *study, ts_text symbol, ts_node node)
{
    const size_t count = ts_workings_count(study->workings);
    const char **names = TS_TAKE(study->asked, const char *, count);
    size_t       kept  = 0;
    for (size_t i = 0; names != NULL && i < count; i++) {
        const ts_note *note = ts_workings_at(study->workings, i);
        if (note->subject.object == node && ts_note_listed(note))
            names[kept++] = note->symbol;
    }
    say_missing(study, "number called", symbol, names, kept);
}

size_t ts_address_note(ts_study *study, ts_address address, ts_node node)
{
    char symbol[64];
    snprintf(symbol, sizeof symbol, "%.*s", (int)address.symbol.length, address.symbol.at);
    const int32_t condition = ts_address_condition(study, address.condition);
    if (condition == -2) {
        const size_t count = study->drive.condition_count;
        const char **names = TS_TAKE(study->asked, const char *, count);
        for (size_t c = 0; names != NULL && c < count; c++)
            names[c] = study->drive.conditions[c].name;
        say_missing(study, "condition", address.condition, names, count);
        return SIZE_MAX;
    }
    size_t found = ts_workings_find(study->workings, (ts_subject){node, condition}, symbol);
    /* "x@take-off" of a number that is the same in every condition. */
    if (found == SIZE_MAX && condition >= 0)
        found = ts_workings_find(study->workings, (ts_subject){node, TS_EVERY_CONDITION}, symbol);
    if (found != SIZE_MAX)
        return found;
    size_t       only  = SIZE_MAX;
    const size_t count = condition_count(study, node, symbol, &only);
    /* An element has its numbers in one section each, as a rule, and then none need be named. */
    if (count == 1 && study->rated && condition == TS_EVERY_CONDITION)
        return only;
    if (count > 0)
        say_conditions(study, address.symbol, address.condition, node);
    else
        say_no_symbol(study, address.symbol, node);
    return SIZE_MAX;
}

double ts_study_number(ts_study *study, const char *address)
{
    if (!ts_study_ask(study, TS_WANT_EITHER) || study->workings == NULL)
        return NAN;
    const ts_address split = ts_address_split(address);
    bool             whole = false;
    const ts_node    node  = ts_address_node(study, split.path, &whole);
    if (node == 0 && !whole)
        return NAN;
    const size_t found = ts_address_note(study, split, node);
    return found != SIZE_MAX ? ts_workings_at(study->workings, found)->value : (double)NAN;
}
