/* How does a file change while several hands work on it? */
#include "apps/serve/sitting.h"

#include "apps/serve/stopwatch.h"

#include <stdlib.h>
#include <string.h>
#include <time.h>

ts_study_options sitting_options(bool workings, bool us)
{
    return (ts_study_options){.today    = (int32_t)(time(NULL) / 86400),
                              .workings = workings,
                              .us       = us,
                              .file     = TS_WANT_DRIVE};
}

/* ---- what follows from the text ------------------------------------------------------------- */

ts_study *sitting_newest(const sitting *here)
{
    const sitting_told *told =
        &here->told[here->told[here->us].of == here->computed ? here->us : !here->us];
    return here->computed != 0 ? told->study : NULL;
}

/* The study of a text; *status tells whether it could be computed.  NULL: no memory.  An act
 * changes little: what the study that is shown has computed is not computed anew. */
static ts_study *study_of(const sitting *here, const growing *text, const ts_study_options *options,
                          ts_status *status)
{
    ts_study *fresh = NULL, *shown = sitting_newest(here);
    *status = shown != NULL ? ts_study_open_beside(shown, &fresh) : ts_study_open(NULL, &fresh);
    if (*status == TS_OK)
        *status = ts_study_read(fresh, here->shown, text->bytes, text->length, options);
    return fresh;
}

static void take_over(sitting_told *told, ts_study *fresh, uint64_t of)
{
    ts_study_close(told->study);
    *told = (sitting_told){fresh, of};
}

/* The study of the text as it is now is taken over. */
static void adopt(sitting *here, ts_study *fresh, ts_status status)
{
    here->messages.length = 0;
    if (status == TS_OK) {
        growing_forget(&here->sound);
        growing_add(&here->sound, here->text.bytes, here->text.length);
        here->computed = here->serial;
        take_over(&here->told[here->us], fresh, here->serial);
        return;
    }
    const ts_sink sink = growing_sink(&here->messages);
    if (fresh != NULL)
        (void)ts_study_write_messages(fresh, true, 0, &sink);
    ts_study_close(fresh);
}

static void compute(sitting *here)
{
    const ts_study_options options = sitting_options(false, here->us);
    ts_status              status;
    ts_study *const        fresh = study_of(here, &here->text, &options, &status);
    adopt(here, fresh, status);
}

/* A study of the text that was computed last, read with other wishes when they come. */
static ts_study *beside(const sitting *here, const ts_study_options *options, sitting_told *told)
{
    if (here->computed == 0 || told->of == here->computed)
        return told->study;
    ts_status       status = TS_NO_MEMORY;
    ts_study *const fresh =
        here->sound.failed ? NULL : study_of(here, &here->sound, options, &status);
    if (status != TS_OK) {
        ts_study_close(fresh);
        return NULL;
    }
    take_over(told, fresh, here->computed);
    return fresh;
}

ts_study *sitting_workings(sitting *here)
{
    const ts_study_options options = sitting_options(true, false);
    return beside(here, &options, &here->workings);
}

ts_study *sitting_study(sitting *here, bool us)
{
    const ts_study_options options = sitting_options(false, us);
    return beside(here, &options, &here->told[us]);
}

/* ---- acts ----------------------------------------------------------------------------------- */

static void forget_act(sitting_act *act)
{
    free(act->gone);
    free(act->came);
    free(act->says);
    *act = (sitting_act){0};
}

static char *copy(const char *bytes, size_t length)
{
    char *out = malloc(length + 1);
    if (out == NULL)
        return NULL;
    if (length > 0)
        memcpy(out, bytes, length);
    out[length] = '\0';
    return out;
}

/* A new act takes the place of those that were taken back. */
static bool push_act(sitting *here, const journal_record *record)
{
    if (here->done == here->act_room) {
        const size_t room  = here->act_room == 0 ? 64 : here->act_room * 2;
        sitting_act *grown = realloc(here->acts, room * sizeof *grown);
        if (grown == NULL)
            return false;
        here->acts     = grown;
        here->act_room = room;
    }
    sitting_act one = {.from        = record->from,
                       .gone        = copy(record->gone, record->gone_length),
                       .came        = copy(record->came, record->came_length),
                       .says        = copy(record->says, record->says_length),
                       .gone_length = record->gone_length,
                       .came_length = record->came_length};
    if (one.gone == NULL || one.came == NULL || one.says == NULL) {
        forget_act(&one);
        return false;
    }
    while (here->act_count > here->done)
        forget_act(&here->acts[--here->act_count]);
    here->acts[here->act_count++] = one;
    here->done                    = here->act_count;
    return true;
}

/* `text` with the bytes [from, from + gone) given way to `came`; false without memory, or when the
 * bytes that should go are not there. */
static bool replaced(const growing *text, size_t from, const char *gone, size_t gone_length,
                     const char *came, size_t came_length, growing *out)
{
    if (from > text->length || gone_length > text->length - from ||
        (gone_length > 0 && memcmp(text->bytes + from, gone, gone_length) != 0))
        return false;
    growing_add(out, text->bytes, from);
    growing_add(out, came, came_length);
    growing_add(out, text->bytes + from + gone_length, text->length - from - gone_length);
    return !out->failed && out->length <= WORKSPACE_FILE_MOST;
}

static bool text_after(const sitting *here, const journal_record *record, growing *out)
{
    const bool back = record->kind == JOURNAL_UNDO;
    if (record->kind == JOURNAL_ACT)
        return replaced(&here->text, record->from, record->gone, record->gone_length, record->came,
                        record->came_length, out);
    if (back ? here->done == 0 : here->done == here->act_count)
        return false;
    const sitting_act *act = &here->acts[back ? here->done - 1 : here->done];
    return back ? replaced(&here->text, act->from, act->came, act->came_length, act->gone,
                           act->gone_length, out)
                : replaced(&here->text, act->from, act->gone, act->gone_length, act->came,
                           act->came_length, out);
}

bool sitting_text_after(const sitting *here, size_t acts, growing *text)
{
    growing_add(text, here->text.bytes, here->text.length);
    for (size_t at = here->done; at != acts && !text->failed;) {
        const bool         back = at > acts;
        const sitting_act *act  = &here->acts[back ? at - 1 : at];
        growing            next = {0};
        const bool good = back ? replaced(text, act->from, act->came, act->came_length, act->gone,
                                          act->gone_length, &next)
                               : replaced(text, act->from, act->gone, act->gone_length, act->came,
                                          act->came_length, &next);
        growing_forget(text);
        *text = next;
        if (!good)
            return false;
        at = back ? at - 1 : at + 1;
    }
    return !text->failed;
}

/* The text becomes `after`, which is taken over. */
static bool apply(sitting *here, const journal_record *record, growing *after)
{
    if (record->kind == JOURNAL_ACT) {
        if (!push_act(here, record))
            return false;
    } else {
        here->done = record->kind == JOURNAL_UNDO ? here->done - 1 : here->done + 1;
    }
    growing_forget(&here->text);
    here->text = *after;
    *after     = (growing){0};
    here->serial++;
    return true;
}

/* ---- the journal of an earlier sitting ------------------------------------------------------ */

static bool replay(void *context, const journal_record *record)
{
    sitting *here = context;
    if (record->kind == JOURNAL_BASE) {
        growing_add(&here->text, record->came, record->came_length);
        return !here->text.failed;
    }
    growing    after = {0};
    const bool good  = text_after(here, record, &after) && apply(here, record, &after);
    growing_forget(&after);
    return good;
}

static bool same(const growing *a, const growing *b)
{
    return a->length == b->length && (a->length == 0 || memcmp(a->bytes, b->bytes, a->length) == 0);
}

static journal_record base_record(const growing *text)
{
    return (journal_record){.kind        = JOURNAL_BASE,
                            .gone        = "",
                            .came        = text->bytes,
                            .came_length = text->length,
                            .says        = ""};
}

/* From the first byte to the last in which they differ. */
static journal_record difference(const growing *from, const char *to, size_t length,
                                 const char *says)
{
    const size_t least = from->length < length ? from->length : length;
    size_t       head = 0, tail = 0;
    while (head < least && from->bytes[head] == to[head])
        head++;
    while (tail < least - head && from->bytes[from->length - 1 - tail] == to[length - 1 - tail])
        tail++;
    return (journal_record){.kind        = JOURNAL_ACT,
                            .from        = head,
                            .gone        = from->bytes + head,
                            .gone_length = from->length - head - tail,
                            .came        = to + head,
                            .came_length = length - head - tail,
                            .says        = says,
                            .says_length = strlen(says)};
}

static const char outside_says[] = "changed outside of this page";

/* The file stands as `bytes`, and not by our hand: noted as an act, so that it can be taken back.
 */
static bool take_in(sitting *here, const growing *bytes)
{
    const journal_record record =
        difference(&here->text, bytes->bytes, bytes->length, outside_says);
    growing after = {0};
    growing_add(&after, bytes->bytes, bytes->length);
    const bool good =
        !after.failed && edit_journal_add(&here->journal, &record) && apply(here, &record, &after);
    growing_forget(&after);
    if (good)
        here->acts[here->done - 1].outside = true;
    return good;
}

/* A crash fell between the journal and the file: the last step is taken back, and can be done
 * again. */
static bool unsaved_step(sitting *here, const growing *file)
{
    const journal_record back  = {.kind = JOURNAL_UNDO, .gone = "", .came = "", .says = ""};
    growing              after = {0};
    const bool           good  = text_after(here, &back, &after) && same(&after, file) &&
                      edit_journal_add(&here->journal, &back) && apply(here, &back, &after);
    growing_forget(&after);
    return good;
}

/* The journal told what the text should be; the file tells what it is. */
static const char *meet(sitting *here, growing *file)
{
    if (!here->journal.begun) {
        const journal_record base = base_record(file);
        growing_forget(&here->text);
        here->text = *file;
        *file      = (growing){0};
        return edit_journal_add(&here->journal, &base) ? NULL : "its journal cannot be written";
    }
    if (same(&here->text, file) || unsaved_step(here, file))
        return NULL;
    return take_in(here, file) ? NULL : "its journal cannot be written";
}

static void forget_acts(sitting *here)
{
    while (here->act_count > 0)
        forget_act(&here->acts[--here->act_count]);
    here->done = 0;
}

const char *sitting_open(sitting *here, const char *path)
{
    *here            = (sitting){.shown = path, .serial = 1, .journal = {.file = -1}};
    const char *why  = workspace_open(&here->place, path);
    growing     file = {0};
    if (why == NULL)
        why = workspace_read(&here->place, &file);
    if (why == NULL)
        why = edit_journal_open(&here->journal, &here->place, replay, here);
    if (why == NULL)
        why = meet(here, &file);
    growing_forget(&file);
    if (why != NULL)
        return why;
    compute(here);
    const ts_study_options options = sitting_options(false, false);
    if (ts_study_open(NULL, &here->opened) != TS_OK ||
        ts_study_read(here->opened, path, here->text.bytes, here->text.length, &options) != TS_OK) {
        ts_study_close(here->opened);
        here->opened = NULL;
    }
    return NULL;
}

void sitting_close(sitting *here)
{
    forget_acts(here);
    free(here->acts);
    growing_forget(&here->text);
    growing_forget(&here->messages);
    growing_forget(&here->sound);
    ts_study_close(here->told[0].study);
    ts_study_close(here->told[1].study);
    ts_study_close(here->workings.study);
    ts_study_close(here->opened);
    edit_journal_close(&here->journal);
    workspace_close(&here->place);
}

/* ---- changes -------------------------------------------------------------------------------- */

bool sitting_look_outside(sitting *here)
{
    if (!workspace_touched(&here->place))
        return false;
    growing    file  = {0};
    const bool there = workspace_read(&here->place, &file) == NULL;
    const bool other = there && !same(&here->text, &file) && take_in(here, &file);
    growing_forget(&file);
    if (other) {
        here->outside = here->serial;
        compute(here);
    }
    return other;
}

/* First the journal, then the file, then the memory.  When the file cannot be saved, the journal
 * forgets the act, and the page, the history and what was taken back stay as they were. */
static sitting_end save(sitting *here, const journal_record *record, growing *after)
{
    const char  *why    = NULL;
    const size_t length = here->journal.length;
    const double from   = stopwatch_ms();
    if (!edit_journal_add(&here->journal, record))
        return SITTING_FAULT;
    const workspace_saved saved =
        workspace_save(&here->place, here->text.bytes, here->text.length, &why);
    here->on_disk += stopwatch_ms() - from;
    if (saved != WORKSPACE_SAVED)
        edit_journal_shorten(&here->journal, length);
    if (saved == WORKSPACE_SAVED && apply(here, record, after))
        return SITTING_DONE;
    if (saved != WORKSPACE_SAVED && saved != WORKSPACE_CHANGED_OUTSIDE)
        return SITTING_FAULT;
    /* Somebody else wrote the file, or it has the act and the memory has not: it is read anew,
     * whatever its date says. */
    here->place.seen.st_ino = 0;
    (void)sitting_look_outside(here);
    return saved == WORKSPACE_SAVED ? SITTING_FAULT : SITTING_OUTSIDE;
}

/* The disk writes while the drive is computed.  `sound`: what cannot be computed is refused. */
static sitting_end change(sitting *here, const journal_record *record, bool sound)
{
    const ts_study_options options = sitting_options(false, here->us);
    growing                after   = {0};
    ts_status              status;
    if (!text_after(here, record, &after)) {
        const bool full = after.failed;
        growing_forget(&after);
        return full ? SITTING_FAULT : SITTING_NOTHING;
    }
    const double from  = stopwatch_ms();
    const bool   begun = workspace_begin(&here->place, after.bytes, after.length);
    here->on_disk      = stopwatch_ms() - from;
    ts_study   *fresh  = begun ? study_of(here, &after, &options, &status) : NULL;
    sitting_end end    = SITTING_FAULT;
    if (begun && sound && status != TS_OK)
        end = SITTING_REFUSED;
    else if (begun)
        end = save(here, record, &after);
    workspace_forget(&here->place);
    growing_forget(&after);
    if (end == SITTING_DONE) {
        adopt(here, fresh, status);
        return end;
    }
    ts_study_close(fresh);
    return end;
}

sitting_end sitting_put(sitting *here, const char *bytes, size_t length, const char *says,
                        bool sound)
{
    if (sitting_look_outside(here))
        return SITTING_OUTSIDE;
    const journal_record record = difference(&here->text, bytes, length, says);
    if (record.gone_length == 0 && record.came_length == 0)
        return SITTING_NOTHING;
    return change(here, &record, sound);
}

static sitting_end step(sitting *here, journal_kind kind)
{
    if (sitting_look_outside(here))
        return SITTING_OUTSIDE;
    const journal_record record = {.kind = kind, .gone = "", .came = "", .says = ""};
    return change(here, &record, false);
}

sitting_end sitting_undo(sitting *here)
{
    return step(here, JOURNAL_UNDO);
}

sitting_end sitting_redo(sitting *here)
{
    return step(here, JOURNAL_REDO);
}
