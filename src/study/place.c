/* On which pad could an accessory stand? */
#include "towershaft/place.h"

#include "base/json_writer.h"
#include "study/study.h"

#include <stdlib.h>
#include <string.h>

enum { EDITS_MOST = 4, REASONS_MOST = 3 };

typedef struct place_edit {
    const char *at;
    const char *value; /* NULL: removed */
} place_edit;

typedef struct trial {
    uint32_t     shaft;
    ts_face_side face;
    bool         here;  /* it stands there now */
    const char  *other; /* the accessory that it changes places with; may be NULL */
    place_edit   edits[EDITS_MOST];
    size_t       edit_count;
    ts_verdict   verdict;
    size_t       open[3], not_computable, order;
    const char  *why[REASONS_MOST];
    size_t       why_count;
    bool         read;
} trial;

typedef struct search {
    ts_study *study;
    ts_arena *arena;
    int32_t   accessory;
    uint32_t  pad; /* on which it stands; TS_NOWHERE: on none */
    trial    *trials;
    size_t    count;
    ts_status status;
} search;

/* ---- what would be edited ------------------------------------------------------------------- */

/* "drive/hp/box/clockwise/2/rear" */
static const char *pad_address(search *s, uint32_t shaft, ts_face_side face)
{
    ts_buffer made;
    ts_buffer_open(&made, ts_arena_allocator(s->arena));
    ts_source_address(&s->study->source, s->study->train.shafts[shaft].node, &made);
    ts_buffer_add(&made, face == TS_FRONT ? "/front" : "/rear");
    const char *out = made.failed ? NULL : ts_arena_copy(s->arena, made.bytes, made.length);
    ts_buffer_close(&made);
    if (out == NULL)
        s->status = TS_NO_MEMORY;
    return out;
}

static void add_edit(trial *one, const char *at, const char *value)
{
    one->edits[one->edit_count++] = (place_edit){at, value};
}

/* Both pads are cleared first, for no accessory may stand on two. */
static void plan(search *s, trial *one)
{
    const ts_train *train = &s->study->train;
    const char     *name  = s->study->drive.accessories[s->accessory].name;
    const uint32_t  there = train->shafts[one->shaft].pad[one->face];
    const char     *to    = pad_address(s, one->shaft, one->face);
    const ts_pad   *own   = s->pad != TS_NOWHERE ? &train->pads[s->pad] : NULL;
    const char     *from  = own != NULL ? pad_address(s, own->shaft, own->face) : NULL;
    one->here             = own != NULL && own->shaft == one->shaft && own->face == one->face;
    if (one->here)
        return;
    if (there != TS_NOWHERE && train->pads[there].accessory >= 0)
        one->other = train->pads[there].name;
    if (from != NULL)
        add_edit(one, from, NULL);
    if (there != TS_NOWHERE)
        add_edit(one, to, NULL);
    add_edit(one, to, name);
    if (one->other != NULL && from != NULL)
        add_edit(one, from, one->other);
}

/* ---- what becomes of it --------------------------------------------------------------------- */

static int collect(void *context, const char *bytes, size_t length)
{
    ts_buffer *into = context;
    ts_buffer_bytes(into, bytes, length);
    return into->failed ? -1 : 0;
}

/* The text with the edits of the trial in `text`; false when one of them cannot be made. */
static bool edit(search *s, ts_study *desk, const trial *one, ts_buffer *text)
{
    ts_buffer next;
    ts_buffer_open(&next, s->study->allocator);
    ts_buffer_bytes(text, s->study->bytes.at, s->study->bytes.length);
    bool good = !text->failed;
    for (size_t i = 0; i < one->edit_count && good; i++) {
        const ts_sink   sink = {collect, &next};
        const ts_status made = ts_study_set_bytes(desk, s->study->name, text->bytes, text->length,
                                                  one->edits[i].at, one->edits[i].value, &sink);
        if (made == TS_NO_MEMORY || made == TS_NO_OUTPUT)
            s->status = TS_NO_MEMORY; /* the only sink here is memory */
        good = made == TS_OK;
        ts_buffer_clear(text);
        if (good)
            ts_buffer_bytes(text, next.bytes, next.length);
        ts_buffer_clear(&next);
    }
    ts_buffer_close(&next);
    if (text->failed)
        s->status = TS_NO_MEMORY;
    return good && !text->failed;
}

static void note_reasons(search *s, const ts_check_outcome *outcome, trial *one)
{
    for (size_t i = 0; i < outcome->finding_count && one->why_count < REASONS_MOST; i++) {
        const ts_finding *finding = &outcome->findings[i];
        if (finding->level != TS_REFUSE || finding->state == TS_WAIVED)
            continue;
        one->why[one->why_count] = ts_arena_copy(s->arena, finding->says, strlen(finding->says));
        if (one->why[one->why_count] == NULL)
            s->status = TS_NO_MEMORY;
        one->why_count++;
    }
}

static void judge(search *s, const ts_study *desk, trial *one)
{
    const ts_check_outcome *outcome = &desk->outcome;
    one->read                       = true;
    one->verdict                    = outcome->verdict;
    one->not_computable             = outcome->not_computable;
    memcpy(one->open, outcome->open, sizeof one->open);
    note_reasons(s, outcome, one);
}

static void run_trial(search *s, trial *one)
{
    ts_buffer text;
    ts_study *desk = NULL;
    ts_buffer_open(&text, s->study->allocator);
    if (ts_study_open(s->study->allocator, &desk) != TS_OK)
        s->status = TS_NO_MEMORY;
    else if (edit(s, desk, one, &text)) {
        ts_study_options options = s->study->options;
        options.workings         = false;
        const ts_status status =
            ts_study_read(desk, s->study->name, text.bytes, text.length, &options);
        if (status == TS_OK)
            judge(s, desk, one);
        else if (status == TS_NO_MEMORY)
            s->status = status;
    }
    ts_study_close(desk);
    ts_buffer_close(&text);
}

/* ---- which is better? ----------------------------------------------------------------------- */

static int apart(size_t a, size_t b)
{
    return a < b ? -1 : a > b;
}

static int compare(const void *left, const void *right)
{
    const trial *a = left, *b = right;
    if (a->read != b->read)
        return a->read ? -1 : 1;
    if (apart(a->open[TS_REFUSE], b->open[TS_REFUSE]) != 0)
        return apart(a->open[TS_REFUSE], b->open[TS_REFUSE]);
    if (apart(a->not_computable, b->not_computable) != 0)
        return apart(a->not_computable, b->not_computable);
    if (apart(a->open[TS_WARN], b->open[TS_WARN]) != 0)
        return apart(a->open[TS_WARN], b->open[TS_WARN]);
    return apart(a->order, b->order);
}

/* ---- the answer ----------------------------------------------------------------------------- */

static void write_edits(ts_json *json, const trial *one)
{
    ts_json_key(json, "edits");
    ts_json_array(json);
    for (size_t i = 0; i < one->edit_count; i++) {
        ts_json_object(json);
        ts_json_string_at(json, "at", one->edits[i].at);
        if (one->edits[i].value != NULL) {
            ts_json_string_at(json, "to", one->edits[i].value);
        } else {
            ts_json_key(json, "gone");
            ts_json_bool(json, true);
        }
        ts_json_end(json, '}');
    }
    ts_json_end(json, ']');
}

static void write_trial(search *s, ts_json *json, const trial *one)
{
    static const char *const verdicts[] = {"holds", "does not hold", "not computable"};
    const ts_shaft          *shaft      = &s->study->train.shafts[one->shaft];
    ts_json_object(json);
    ts_json_string_at(json, "shaft", shaft->name);
    ts_json_count_at(json, "number", shaft->number);
    ts_json_string_at(json, "address", pad_address(s, one->shaft, one->face));
    ts_json_string_at(json, "face", one->face == TS_FRONT ? "front" : "rear");
    ts_json_string_at(json, "other", one->other);
    ts_json_key(json, "here");
    ts_json_bool(json, one->here);
    ts_json_string_at(json, "verdict", one->read ? verdicts[one->verdict] : "not computable");
    ts_json_count_at(json, "refuse", one->open[TS_REFUSE]);
    ts_json_count_at(json, "warn", one->open[TS_WARN]);
    ts_json_count_at(json, "note", one->open[TS_NOTE]);
    ts_json_count_at(json, "not_computable", one->not_computable);
    ts_json_key(json, "why");
    ts_json_array(json);
    for (size_t i = 0; i < one->why_count; i++)
        ts_json_string(json, one->why[i]);
    ts_json_end(json, ']');
    write_edits(json, one);
    ts_json_end(json, '}');
}

static ts_status write_all(search *s, const ts_sink *sink)
{
    ts_buffer out;
    ts_json   json;
    ts_buffer_open(&out, s->study->allocator);
    ts_json_begin(&json, &out, true);
    ts_json_object(&json);
    ts_json_string_at(&json, "accessory", s->study->drive.accessories[s->accessory].name);
    ts_json_count_at(&json, "tried", s->count);
    ts_json_key(&json, "places");
    ts_json_array(&json);
    for (size_t i = 0; i < s->count; i++)
        write_trial(s, &json, &s->trials[i]);
    ts_json_end(&json, ']');
    ts_json_end(&json, '}');
    ts_buffer_add(&out, "\n");
    const ts_status status = s->status != TS_OK ? s->status : ts_buffer_send(&out, sink);
    ts_buffer_close(&out);
    return status;
}

static ts_status try_all(search *s, const ts_sink *sink)
{
    const ts_train *train = &s->study->train;
    s->trials             = TS_TAKE(s->arena, trial, 2 * (size_t)train->shaft_count);
    if (s->trials == NULL)
        return TS_NO_MEMORY;
    for (uint32_t shaft = 0; shaft < train->shaft_count; shaft++) {
        if (train->shafts[shaft].kind != TS_SHAFT_BOX)
            continue;
        for (int face = 0; face < 2; face++) {
            trial *one = &s->trials[s->count];
            *one       = (trial){.shaft = shaft, .face = (ts_face_side)face, .order = s->count};
            s->count++;
            plan(s, one);
            if (s->status == TS_OK)
                run_trial(s, one);
        }
    }
    qsort(s->trials, s->count, sizeof *s->trials, compare);
    return write_all(s, sink);
}

static int32_t find_accessory(ts_study *study, const char *name)
{
    const size_t count = study->drive.accessory_count;
    const char **names = TS_TAKE(study->asked, const char *, count + 1);
    for (size_t i = 0; names != NULL && i < count; i++) {
        names[i] = study->drive.accessories[i].name;
        if (strcmp(names[i], name) == 0)
            return (int32_t)i;
    }
    ts_study_say(study, "no-such-accessory", "the drive has no such accessory",
                 "the name of one of `accessories`",
                 names != NULL ? ts_text_nearest(ts_text_of(name), names, count) : NULL);
    return -1;
}

ts_status ts_places_write(ts_study *study, const char *accessory, const ts_sink *sink)
{
    if (!ts_study_ask(study, TS_WANT_DRIVE))
        return TS_NOT_UNDERSTOOD;
    search s = {.study = study, .accessory = find_accessory(study, accessory)};
    if (s.accessory < 0)
        return TS_NOT_UNDERSTOOD;
    s.pad   = ts_train_pad_of(&study->train, s.accessory);
    s.arena = ts_arena_open(study->allocator);
    if (s.arena == NULL)
        return TS_NO_MEMORY;
    const ts_status status = try_all(&s, sink);
    ts_arena_close(s.arena);
    return status;
}
