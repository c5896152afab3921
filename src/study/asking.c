/* What does a study hold, and when is it forgotten: by closing, by reading, by asking? */
#include "study/study.h"

#include <string.h>

/* Who works on a drive goes to and fro: an act, the next, and both taken back. */
#define DRIVES_BACK 8

ts_status ts_study_open(const ts_allocator *allocator, ts_study **out)
{
    const ts_allocator *from  = allocator != NULL ? allocator : &ts_allocator_standard;
    ts_study           *study = from->resize(from->context, NULL, sizeof *study);
    *out                      = study;
    if (study == NULL)
        return TS_NO_MEMORY;
    memset(study, 0, sizeof *study);
    study->own       = *from;
    study->allocator = &study->own;
    return TS_OK;
}

ts_status ts_study_open_beside(ts_study *like, ts_study **out)
{
    *out = NULL;
    if (like->stock == NULL)
        like->stock = ts_stock_open(like->allocator, DRIVES_BACK);
    if (like->stock == NULL)
        return TS_NO_MEMORY;
    if (like->is_text)
        ts_stock_lend_tree(like->stock, &like->told);
    const ts_status status = ts_study_open(like->allocator, out);
    if (status == TS_OK)
        (*out)->stock = ts_stock_share(like->stock);
    return status;
}

void ts_study_close(ts_study *study)
{
    if (study == NULL)
        return;
    const ts_allocator own = study->own;
    ts_stock_take_back(study->stock, &study->told);
    ts_arena_close(study->asked);
    ts_arena_close(study->arena);
    ts_stock_leave(study->stock);
    own.resize(own.context, study, 0);
}

/* Forgets all but what is lent to it. */
static void forget(ts_study *study)
{
    const ts_study kept = *study;

    ts_stock_take_back(study->stock, &study->told);
    memset(study, 0, sizeof *study);
    study->own       = kept.own;
    study->stock     = kept.stock;
    study->arena     = kept.arena;
    study->asked     = kept.asked;
    study->allocator = &study->own;
}

static ts_status begin_with(ts_study *study, const char *name, ts_text bytes)
{
    study->name   = ts_arena_copy(study->arena, name, strlen(name));
    study->bytes  = bytes;
    study->sha256 = TS_TAKE(study->arena, char, 65);
    if (study->name == NULL || study->bytes.at == NULL || study->sha256 == NULL)
        return TS_NO_MEMORY;
    study->diagnostics = ts_diagnostics_open(study->arena, study->name, study->bytes);
    return study->diagnostics != NULL ? TS_OK : TS_NO_MEMORY;
}

ts_status ts_study_begin(ts_study *study, const char *name, const char *bytes, size_t length)
{
    ts_arena_close(study->asked);
    ts_arena_close(study->arena);
    forget(study);
    study->arena = ts_arena_open(study->allocator);
    study->asked = ts_arena_open(study->allocator);
    if (study->arena == NULL || study->asked == NULL)
        return TS_NO_MEMORY;
    return begin_with(study, name, (ts_text){ts_arena_copy(study->arena, bytes, length), length});
}

ts_status ts_study_begin_again(ts_study *study, const char *name, ts_text bytes)
{
    if (study->arena == NULL || study->asked == NULL)
        return ts_study_begin(study, name, bytes.at, bytes.length);
    ts_arena_empty(study->asked);
    ts_arena_empty(study->arena);
    forget(study);
    return begin_with(study, name, bytes);
}

bool ts_study_ask(ts_study *study, ts_file_wanted about)
{
    if (!study->solved && !study->rated)
        return false;
    ts_arena_empty(study->asked);
    ts_diagnostics_clear(study->diagnostics, study->asked);
    return about == TS_WANT_EITHER || study->solved == (about == TS_WANT_DRIVE);
}

ts_status ts_study_refused(const ts_study *study)
{
    return study->asked != NULL && ts_arena_failed(study->asked) ? TS_NO_MEMORY : TS_NOT_UNDERSTOOD;
}
