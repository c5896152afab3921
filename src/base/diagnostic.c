/* base/diagnostic.c: what could not be understood, kept in the order in which it stands? */
#include "base/diagnostic.h"

#include "base/assert.h"
#include "base/diagnostic_list.h"

#include <string.h>

ts_diagnostics *ts_diagnostics_open(ts_arena *arena, const char *name, ts_text bytes)
{
    ts_diagnostics *list = TS_TAKE(arena, ts_diagnostics, 1);
    if (list == NULL)
        return NULL;
    list->arena = arena;
    list->name  = name;
    list->bytes = bytes;
    return list;
}

void ts_diagnostics_clear(ts_diagnostics *list, ts_arena *arena)
{
    list->arena = arena;
    list->count = 0;
    list->kept  = 0;
}

/* A text that cannot be copied for want of memory becomes `instead`; the arena remembers. */
static const char *copied(ts_arena *arena, const char *text, const char *instead)
{
    if (text == NULL)
        return NULL;
    const char *copy = ts_arena_copy(arena, text, strlen(text));
    return copy != NULL ? copy : instead;
}

static bool stands_before(const ts_diagnostic *a, const ts_diagnostic *b)
{
    return a->line != b->line ? a->line < b->line : a->column < b->column;
}

void ts_diagnose(ts_diagnostics *list, const ts_diagnostic *diagnostic)
{
    TS_ASSERT(diagnostic->code != NULL && diagnostic->says != NULL);
    list->count++;
    if (list->kept == TS_DIAGNOSTICS_MOST)
        return;
    const ts_diagnostic fresh = {
        .code     = copied(list->arena, diagnostic->code, "no-memory"),
        .line     = diagnostic->line,
        .column   = diagnostic->column,
        .columns  = diagnostic->columns > 0 ? diagnostic->columns : 1,
        .says     = copied(list->arena, diagnostic->says, "no memory is left to say what is wrong"),
        .expected = copied(list->arena, diagnostic->expected, NULL),
        .nearest  = copied(list->arena, diagnostic->nearest, NULL),
        .address  = copied(list->arena, diagnostic->address, NULL),
    };
    size_t place = list->kept;
    while (place > 0 && stands_before(&fresh, &list->items[place - 1])) {
        list->items[place] = list->items[place - 1];
        place--;
    }
    list->items[place] = fresh;
    list->kept++;
}

void ts_diagnose_format(ts_diagnostics *list, const ts_diagnostic *rest, const char *format, ...)
{
    ts_buffer says;
    ts_buffer_open(&says, ts_arena_allocator(list->arena));
    va_list arguments;
    va_start(arguments, format);
    ts_buffer_print_list(&says, format, arguments);
    va_end(arguments);

    ts_diagnostic whole = *rest;
    whole.says          = says.bytes != NULL ? says.bytes : format;
    ts_diagnose(list, &whole);
    ts_buffer_close(&says);
}

size_t ts_diagnostics_count(const ts_diagnostics *list)
{
    return list->count;
}

size_t ts_diagnostics_kept(const ts_diagnostics *list)
{
    return list->kept;
}

const ts_diagnostic *ts_diagnostics_at(const ts_diagnostics *list, size_t index)
{
    TS_ASSERT(index < list->kept);
    return &list->items[index];
}
