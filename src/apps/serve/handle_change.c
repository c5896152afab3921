/* What may a page do? */
#include "apps/serve/handle.h"
#include "apps/serve/reply.h"
#include "apps/serve/stopwatch.h"

#include <stdlib.h>
#include <string.h>

#define SAYS_MOST 300

typedef struct change {
    server                *at;
    struct MHD_Connection *to;
    const json_t          *whole;
} change;

/* ---- how it ended --------------------------------------------------------------------------- */

/* With the view as well, for a page that says in which units. */
static enum MHD_Result state_of(const change *one)
{
    const json_t *units = request_body_item(one->whole, "units", JSON_STRING);
    const json_t *seen  = request_body_item(one->whole, "seen", JSON_STRING);
    if (units == NULL || one->at->here.computed != one->at->here.serial)
        return handle_state(one->at, one->to, 200);
    return handle_state_and_view(one->at, one->to, 200, json_string_value(units),
                                 seen != NULL ? json_string_value(seen) : NULL);
}

static enum MHD_Result answer(const change *one, sitting_end end)
{
    switch (end) {
    case SITTING_DONE:
        handle_tell(one->at);
        return state_of(one);
    case SITTING_OUTSIDE:
        handle_tell(one->at);
        return handle_state(one->at, one->to, 409);
    case SITTING_NOTHING:
        return handle_state(one->at, one->to, 200);
    default:
        return reply_say(one->to, 507, "it could not be saved; the file stands as it was before");
    }
}

/* A page that has not seen the newest text does not change it. */
static bool is_newest(const change *one)
{
    const json_t *base = request_body_item(one->whole, "base", JSON_INTEGER);
    return base != NULL && json_integer_value(base) == (json_int_t)one->at->here.serial;
}

/* ---- edits ---------------------------------------------------------------------------------- */

typedef struct edited {
    growing text, messages;
} edited;

static void forget(edited *it)
{
    growing_forget(&it->text);
    growing_forget(&it->messages);
}

/* What a page may ask for: an address with one of a value, its removal, and a place in its list. */
static bool read_edit(const json_t *edit, ts_study_edit *out)
{
    const json_t    *at    = request_body_item(edit, "at", JSON_STRING);
    const json_t    *to    = request_body_item(edit, "to", JSON_STRING);
    const json_t    *gone  = request_body_item(edit, "gone", JSON_TRUE);
    const json_t    *move  = request_body_item(edit, "place", JSON_INTEGER);
    const int        ways  = (to != NULL) + (gone != NULL) + (move != NULL);
    const json_int_t place = move != NULL ? json_integer_value(move) : 1;
    if (at == NULL || ways != 1 || place < 1 || place > 1000)
        return false;
    *out = (ts_study_edit){json_string_value(at), to != NULL ? json_string_value(to) : NULL,
                           move != NULL ? (uint32_t)place : 0};
    return true;
}

static void say_edit(growing *says, const ts_study_edit *edit)
{
    if (says->length > SAYS_MOST)
        return;
    if (says->length > 0)
        growing_text(says, "; ");
    growing_text(says, edit->address);
    if (edit->place != 0) {
        growing_text(says, " to place ");
        growing_number(says, edit->place);
    } else if (edit->value == NULL) {
        growing_text(says, " removed");
    } else {
        const size_t length = strlen(edit->value);
        growing_text(says, " = ");
        growing_add(says, edit->value, length < SAYS_MOST ? length : SAYS_MOST);
    }
}

/* One edit by the library on what the edits before it left. */
static ts_status edit_once(const change *one, const ts_study_edit *edit, edited *it)
{
    ts_study *study  = NULL;
    growing   next   = {0};
    ts_sink   sink   = growing_sink(&next);
    ts_status status = ts_study_open(NULL, &study);
    if (status == TS_OK && edit->place != 0)
        status = ts_study_move_bytes(study, one->at->here.shown, it->text.bytes, it->text.length,
                                     edit->address, edit->place, &sink);
    else if (status == TS_OK)
        status = ts_study_set_bytes(study, one->at->here.shown, it->text.bytes, it->text.length,
                                    edit->address, edit->value, &sink);
    if (status == TS_NOT_UNDERSTOOD) {
        sink = growing_sink(&it->messages);
        (void)ts_study_write_messages(study, true, 0, &sink);
    }
    ts_study_close(study);
    if (status == TS_OK) {
        growing_forget(&it->text);
        it->text = next;
    } else {
        growing_forget(&next);
    }
    return status;
}

static ts_status edit_all(const change *one, const ts_study_edit *edits, size_t count, edited *it)
{
    growing_add(&it->text, one->at->here.text.bytes, one->at->here.text.length);
    ts_status status = it->text.failed ? TS_NO_MEMORY : TS_OK;
    for (size_t i = 0; i < count && status == TS_OK; i++)
        status = edit_once(one, &edits[i], it);
    return status;
}

/* By the tree that is there already, and proven by being computed: nearly every act.
 * SITTING_REFUSED: it takes the long way, which tells why not. */
static sitting_end act_at_once(const change *one, const ts_study_edit *edits, size_t count,
                               const char *says)
{
    sitting    *here = &one->at->here;
    growing     text = {0};
    sitting_end end  = SITTING_REFUSED;
    ts_sink     sink = growing_sink(&text);
    if (here->computed == here->serial &&
        ts_study_propose(sitting_newest(here), edits, count, &sink) == TS_OK && !text.failed)
        end = sitting_put(here, text.bytes, text.length, says, true);
    growing_forget(&text);
    return end;
}

static enum MHD_Result act_in_steps(const change *one, const ts_study_edit *edits, size_t count,
                                    const char *says)
{
    edited          it     = {0};
    const ts_status status = edit_all(one, edits, count, &it);
    enum MHD_Result sent;
    if (status == TS_OK)
        sent = answer(one, sitting_put(&one->at->here, it.text.bytes, it.text.length, says, false));
    else if (status == TS_NOT_UNDERSTOOD)
        sent = reply_send(one->to, 422, "application/json", &it.messages);
    else
        sent = reply_say(one->to, 507, "there is not enough memory for this act");
    forget(&it);
    return sent;
}

static enum MHD_Result act(const change *one)
{
    const json_t  *list  = request_body_item(one->whole, "edits", JSON_ARRAY);
    const json_t  *named = request_body_item(one->whole, "says", JSON_STRING);
    const size_t   count = json_array_size(list), length = json_string_length(named);
    ts_study_edit *edits = count > 0 ? calloc(count, sizeof *edits) : NULL;
    growing        says  = {0};
    bool           good  = edits != NULL;
    for (size_t i = 0; i < count && good; i++) {
        good = read_edit(json_array_get(list, i), &edits[i]);
        if (good)
            say_edit(&says, &edits[i]);
    }
    enum MHD_Result sent;
    if (!good || says.failed) {
        sent = reply_say(one->to, says.failed ? 507 : 400,
                         "an act is a list of edits, each with `at` and one of `to`, `gone` "
                         "and `place`");
    } else {
        const char *words =
            length > 0 && length <= SAYS_MOST ? json_string_value(named) : says.bytes;
        const sitting_end end = act_at_once(one, edits, count, words);
        sent = end != SITTING_REFUSED ? answer(one, end) : act_in_steps(one, edits, count, words);
    }
    growing_forget(&says);
    free(edits);
    return sent;
}

static enum MHD_Result put_text(const change *one)
{
    const json_t *text = request_body_item(one->whole, "text", JSON_STRING);
    if (text == NULL || json_string_length(text) > WORKSPACE_FILE_MOST)
        return reply_say(one->to, 400, "a text of at most 4 MiB is wanted");
    return answer(one, sitting_put(&one->at->here, json_string_value(text),
                                   json_string_length(text), "edited as text", false));
}

/* ---- a text that is not kept ---------------------------------------------------------------- */

static void add_field(growing *out, const char *key, const char *value)
{
    growing_text(out, ", \"");
    growing_text(out, key);
    growing_text(out, "\": ");
    if (value == NULL)
        growing_text(out, "null");
    else
        growing_string(out, value, strlen(value));
}

static void add_finding(growing *out, const ts_finding_view *finding)
{
    growing_text(out, "{\"line\": ");
    growing_number(out, finding->line);
    growing_text(out, ", \"column\": ");
    growing_number(out, finding->column);
    add_field(out, "rule", finding->rule);
    add_field(out, "level", finding->level);
    add_field(out, "state", finding->state);
    add_field(out, "says", finding->says);
    add_field(out, "remedy", finding->remedy);
    growing_text(out, "}");
}

static void add_findings(growing *out, ts_study *study)
{
    growing_text(out, "{\"wrong\": null, \"findings\": [");
    for (size_t i = 0; i < ts_study_finding_count(study); i++) {
        const ts_finding_view finding = ts_study_finding(study, i);
        if (i > 0)
            growing_text(out, ", ");
        add_finding(out, &finding);
    }
    growing_text(out, "]}\n");
}

static enum MHD_Result try_text(const change *one)
{
    const json_t          *text    = request_body_item(one->whole, "text", JSON_STRING);
    const ts_study_options options = sitting_options(false, false);
    growing                out     = {0};
    ts_study              *study   = NULL;
    if (text == NULL)
        return reply_say(one->to, 400, "a text is wanted");
    ts_status status = ts_study_open(NULL, &study);
    if (status == TS_OK)
        status = ts_study_read(study, one->at->here.shown, json_string_value(text),
                               json_string_length(text), &options);
    if (status == TS_OK) {
        add_findings(&out, study);
    } else if (study != NULL) {
        const ts_sink sink = growing_sink(&out);
        growing_text(&out, "{\"findings\": [], \"wrong\": ");
        (void)ts_study_write_messages(study, true, 0, &sink);
        growing_text(&out, "}\n");
    }
    ts_study_close(study);
    return reply_send(one->to, 200, "application/json", &out);
}

/* ---- the search ----------------------------------------------------------------------------- */

static enum MHD_Result begin_search(const change *one)
{
    const char      *keep[JOB_KEEP_MOST];
    size_t           count   = 0;
    const json_t    *list    = request_body_item(one->whole, "keep", JSON_ARRAY);
    const json_t    *seconds = request_body_item(one->whole, "seconds", JSON_INTEGER);
    const json_int_t most    = seconds != NULL ? json_integer_value(seconds) : 20;
    for (size_t i = 0; i < json_array_size(list); i++) {
        const char *address = json_string_value(json_array_get(list, i));
        if (count == JOB_KEEP_MOST || address == NULL)
            return reply_say(one->to, 400, "what is kept is a list of at most 32 addresses");
        keep[count++] = address;
    }
    if (most < 1 || most > 600)
        return reply_say(one->to, 400, "a search takes 1 to 600 seconds");
    const sitting *here = &one->at->here;
    if (!arrange_job_begin(&one->at->job, here->shown, &here->text, here->serial, keep, count,
                           (int64_t)most))
        return reply_say(one->to, 409, "a search runs already; stop it first");
    handle_tell(one->at);
    return handle_state(one->at, one->to, 200);
}

static enum MHD_Result stop_search(const change *one)
{
    arrange_job_stop(&one->at->job);
    return handle_state(one->at, one->to, 200);
}

static enum MHD_Result take_found(const change *one)
{
    const arrange_job *job   = &one->at->job;
    const json_t      *which = request_body_item(one->whole, "answer", JSON_INTEGER);
    const growing     *file  = &job->found;
    if (which != NULL) {
        const json_int_t index = json_integer_value(which);
        if (index < 0 || index >= (json_int_t)job->answer_count || !job->answers[index].holds)
            return reply_say(one->to, 409, "the search has no such answer that holds");
        file = &job->answers[index].file;
    }
    if (job->state != JOB_ENDED || file->length == 0)
        return reply_say(one->to, 409, "no arrangement was found that could be taken");
    if (job->serial != one->at->here.serial)
        return reply_say(one->to, 409, "the file has changed since this search; search again");
    return answer(one, sitting_put(&one->at->here, file->bytes, file->length,
                                   which != NULL ? "an arrangement of the search taken"
                                                 : "the best arrangement taken",
                                   false));
}

/* ---- which of them -------------------------------------------------------------------------- */

static enum MHD_Result do_it(const change *one, route_id id)
{
    switch (id) {
    case ROUTE_ACT:
        return act(one);
    case ROUTE_UNDO:
        return answer(one, sitting_undo(&one->at->here));
    case ROUTE_REDO:
        return answer(one, sitting_redo(&one->at->here));
    case ROUTE_TEXT:
        return put_text(one);
    case ROUTE_ARRANGE:
        return begin_search(one);
    case ROUTE_ARRANGE_TAKE:
        return take_found(one);
    default:
        return reply_say(one->to, 404, "there is nothing at this address");
    }
}

static enum MHD_Result change_as_told(server *at, struct MHD_Connection *to, const route *where,
                                      const growing *body)
{
    json_t *whole = request_body_read(body->bytes, body->length);
    if (whole == NULL)
        return reply_say(to, 400, "the body is not a JSON object as this server reads it");
    const change    one = {at, to, whole};
    enum MHD_Result sent;
    if (where->id == ROUTE_TRY) {
        sent = try_text(&one);
    } else if (where->id == ROUTE_ARRANGE_STOP) {
        sent = stop_search(&one);
    } else if (where->id == ROUTE_STOP) {
        at->stopping = true;
        sent         = reply_say(to, 200, "towershaft ends");
    } else if (!is_newest(&one)) {
        sent = handle_state(at, to, 409);
    } else {
        const json_t *units = request_body_item(whole, "units", JSON_STRING);
        if (units != NULL)
            at->here.us = handle_is_us(json_string_value(units));
        sent = do_it(&one, where->id);
    }
    json_decref(whole);
    return sent;
}

enum MHD_Result handle_change(server *at, struct MHD_Connection *to, const route *where,
                              const growing *body)
{
    at->begun                  = stopwatch_ms();
    at->here.on_disk           = 0.0;
    const enum MHD_Result sent = change_as_told(at, to, where, body);
    at->begun                  = 0.0;
    return sent;
}
