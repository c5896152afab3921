/* base/workings.c: which steps, inputs, assumptions and table rows made a number? */
#include "base/workings.h"

#include "base/assert.h"
#include "base/workings_store.h"

#include <string.h>

ts_workings *ts_workings_open(ts_arena *arena)
{
    ts_workings   *workings = TS_TAKE(arena, ts_workings, 1);
    ts_note_index *index    = TS_TAKE(arena, ts_note_index, 1);
    if (workings == NULL || index == NULL)
        return NULL;
    workings->arena   = arena;
    workings->index   = index;
    workings->subject = (ts_subject){0, TS_EVERY_CONDITION};
    return workings;
}

bool ts_workings_complete(const ts_workings *workings)
{
    return workings == NULL || !workings->incomplete;
}

void ts_workings_about(ts_workings *workings, uint32_t object, int32_t condition)
{
    if (workings != NULL)
        workings->subject = (ts_subject){object, condition};
}

static bool add_block(ts_workings *workings, size_t block)
{
    if (block >= workings->block_room) {
        const size_t room   = workings->block_room == 0 ? 16 : 2 * workings->block_room;
        ts_note    **blocks = TS_TAKE(workings->arena, ts_note *, room);
        if (blocks == NULL)
            return false;
        if (block > 0)
            memcpy(blocks, workings->blocks, block * sizeof *blocks);
        workings->blocks     = blocks;
        workings->block_room = room;
    }
    workings->blocks[block] = TS_TAKE(workings->arena, ts_note, TS_NOTES_A_BLOCK);
    return workings->blocks[block] != NULL;
}

/* Once one note is lost, all later ones are: a hole in the middle would give wrong origins. */
static ts_note *add_note(ts_workings *workings, ts_note_kind kind, const char *symbol, double value)
{
    const size_t block = workings->count / TS_NOTES_A_BLOCK;
    const size_t place = workings->count % TS_NOTES_A_BLOCK;
    if (!workings->incomplete &&
        ((place == 0 && !add_block(workings, block)) || workings->count >= UINT32_MAX / 2))
        workings->incomplete = true;
    if (workings->incomplete)
        return NULL;
    workings->count++;
    ts_note *note = &workings->blocks[block][place];
    note->kind    = kind;
    note->subject = workings->subject;
    note->symbol  = symbol;
    note->value   = value;
    return note;
}

static void add_computed(ts_workings *workings, const ts_note *computed, const ts_input *inputs,
                         size_t count)
{
    ts_input *kept = workings->incomplete ? NULL : TS_TAKE(workings->arena, ts_input, count);
    if (kept == NULL) {
        workings->incomplete = true;
        return;
    }
    ts_note *note = add_note(workings, computed->kind, computed->formula->symbol, computed->value);
    if (note == NULL)
        return;
    if (count > 0)
        memcpy(kept, inputs, count * sizeof *kept);
    note->formula     = computed->formula;
    note->residual    = computed->residual;
    note->inputs      = kept;
    note->input_count = (uint32_t)count;
}

void ts_step_note(ts_workings *workings, const ts_formula *formula, double result,
                  const ts_input *inputs, size_t count)
{
    const ts_note step = {.kind = TS_NOTE_STEP, .value = result, .formula = formula};
    if (workings != NULL)
        add_computed(workings, &step, inputs, count);
}

void ts_search_note(ts_workings *workings, const ts_formula *equation, double found,
                    double residual, const ts_input *inputs, size_t count)
{
    const ts_note search = {
        .kind     = TS_NOTE_SEARCHED,
        .value    = found,
        .formula  = equation,
        .residual = residual,
    };
#ifdef TS_CHECKED
    ts_step_prove(equation, residual, inputs, count);
#endif
    if (workings != NULL)
        add_computed(workings, &search, inputs, count);
}

void ts_workings_given(ts_workings *workings, const char *symbol, double value, const char *unit,
                       uint32_t node)
{
    if (workings == NULL)
        return;
    ts_note *note = add_note(workings, TS_NOTE_GIVEN, symbol, value);
    if (note == NULL)
        return;
    note->unit = unit;
    note->node = node;
}

static void add_sourced(ts_workings *workings, const ts_note *sourced)
{
    if (workings == NULL)
        return;
    ts_note *note = add_note(workings, sourced->kind, sourced->symbol, sourced->value);
    if (note == NULL)
        return;
    note->unit   = sourced->unit;
    note->source = sourced->source;
}

void ts_workings_assumed(ts_workings *workings, const char *symbol, double value, const char *unit,
                         const char *why)
{
    add_sourced(workings, &(ts_note){.kind   = TS_NOTE_ASSUMED,
                                     .symbol = symbol,
                                     .value  = value,
                                     .unit   = unit,
                                     .source = why});
}

void ts_workings_row(ts_workings *workings, const char *symbol, double value, const char *unit,
                     const char *table_row_source)
{
    add_sourced(workings, &(ts_note){.kind   = TS_NOTE_ROW,
                                     .symbol = symbol,
                                     .value  = value,
                                     .unit   = unit,
                                     .source = table_row_source});
}

void ts_workings_borrow(ts_workings *workings, const char *symbol, double value, ts_subject lender,
                        const char *lender_symbol)
{
    if (workings == NULL)
        return;
    ts_note *note = add_note(workings, TS_NOTE_BORROWED, symbol, value);
    if (note == NULL)
        return;
    note->lender        = lender;
    note->lender_symbol = lender_symbol;
}

size_t ts_workings_count(const ts_workings *workings)
{
    return workings == NULL ? 0 : workings->count;
}

const ts_note *ts_workings_at(const ts_workings *workings, size_t index)
{
    TS_ASSERT(workings != NULL && index < workings->count);
    return &workings->blocks[index / TS_NOTES_A_BLOCK][index % TS_NOTES_A_BLOCK];
}
