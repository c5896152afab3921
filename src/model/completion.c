/* model/completion.c: what could stand below an address? */
#include "model/schema.h"

/* A record, a value of it, or a collection whose next word is a name or number. */
typedef struct place {
    const ts_record_table *table;  /* the keys that follow; NULL: a value or a collection    */
    const ts_field        *field;  /* the value or collection; NULL at the top               */
    bool                   inside; /* the word of the collection is taken already            */
} place;

static bool is_collection(const ts_field *field)
{
    switch (field->form) {
    case TS_FORM_LIST:
    case TS_FORM_NAMED:
    case TS_FORM_TAPPED:
        return true;
    default:
        return false;
    }
}

static bool is_position(ts_text word)
{
    for (size_t i = 0; i < word.length; i++) {
        if (word.at[i] < '0' || word.at[i] > '9')
            return false;
    }
    return word.length > 0;
}

/* One word further; false when nothing is known there. */
static bool step(place *at, ts_text word)
{
    if (at->field != NULL && is_collection(at->field) && at->table == NULL) {
        at->table = at->field->record;
        return true;
    }
    if (at->table == NULL)
        return false;
    if (at->field != NULL && at->field->form == TS_FORM_ONE_OR_LIST && !at->inside &&
        is_position(word)) {
        at->inside = true;
        return true;
    }
    const ts_field *field = ts_field_named(at->table, word);
    if (field == NULL)
        return false;
    *at = (place){.table = is_collection(field) ? NULL : field->record, .field = field};
    return true;
}

static bool walk(ts_text address, place *at)
{
    size_t from = 0;
    while (from < address.length) {
        size_t to = from;
        while (to < address.length && address.at[to] != '/')
            to++;
        if (!step(at, (ts_text){address.at + from, to - from}))
            return false;
        from = to + 1;
    }
    return true;
}

void ts_schema_write_completions(ts_text address, ts_buffer *out)
{
    place at = {.table = &ts_table_drive};
    if (!walk(address, &at))
        return;
    if (at.table != NULL) {
        for (size_t i = 0; i < at.table->field_count; i++) {
            if (at.table->fields[i].form != TS_FORM_SPOOL_SPEEDS)
                ts_buffer_print(out, "%s\n", at.table->fields[i].key);
        }
    } else if (at.field != NULL && at.field->choices != NULL) {
        for (size_t i = 0; at.field->choices[i] != NULL; i++)
            ts_buffer_print(out, "%s\n", at.field->choices[i]);
    } else if (at.field != NULL && at.field->form == TS_FORM_PAD) {
        ts_buffer_add(out, "cover\nhand turning\nopen\n");
    }
}
