/* What may a page ask for? */
#include "apps/serve/asset.h"
#include "apps/serve/event_stream.h"
#include "apps/serve/handle.h"
#include "apps/serve/past.h"
#include "apps/serve/reply.h"
#include "apps/serve/stopwatch.h"

#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

static const char json_kind_name[] = "application/json";

static const char *asked(struct MHD_Connection *to, const char *name)
{
    return MHD_lookup_connection_value(to, MHD_GET_ARGUMENT_KIND, name);
}

bool handle_is_us(const char *units)
{
    return units != NULL && strcmp(units, "us") == 0;
}

/* ---- the page ------------------------------------------------------------------------------- */

static enum MHD_Result send_asset(struct MHD_Connection *to, const asset *one)
{
    if (one == NULL)
        return reply_say(to, 404, "there is nothing at this address");
    struct MHD_Response *response = MHD_create_response_from_buffer(
        one->length, (void *)(uintptr_t)one->bytes, MHD_RESPMEM_PERSISTENT);
    if (response == NULL)
        return MHD_NO;
    reply_add_policy(response);
    (void)MHD_add_response_header(response, "Content-Type", asset_kind(one));
    const enum MHD_Result sent = MHD_queue_response(to, 200, response);
    MHD_destroy_response(response);
    return sent;
}

static enum MHD_Result send_in(const server *at, struct MHD_Connection *to)
{
    struct MHD_Response *response =
        MHD_create_response_from_buffer(0, NULL, MHD_RESPMEM_PERSISTENT);
    if (response == NULL)
        return MHD_NO;
    char cookie[256];
    snprintf(cookie, sizeof cookie, "%s; Path=/; HttpOnly; SameSite=Strict", at->house[0].cookie);
    reply_add_policy(response);
    (void)MHD_add_response_header(response, "Set-Cookie", cookie);
    (void)MHD_add_response_header(response, "Location", "/");
    const enum MHD_Result sent = MHD_queue_response(to, 303, response);
    MHD_destroy_response(response);
    return sent;
}

/* With the launch key, once; without a query the guard has seen the cookie. */
static enum MHD_Result enter(server *at, struct MHD_Connection *to)
{
    const char *key = asked(to, "key");
    if (key == NULL)
        return send_asset(to, asset_page());
    const bool good = strlen(key) == LAUNCH_KEY_DIGITS && at->launch.text[0] != '\0' &&
                      launch_key_equal(key, at->launch.text, LAUNCH_KEY_DIGITS);
    if (!good)
        return reply_say(to, 403,
                         "this link was used already, or it is not the one that was "
                         "printed; stop towershaft and open the file again");
    at->launch.text[0] = '\0';
    return send_in(at, to);
}

/* ---- state ---------------------------------------------------------------------------------- */

static void add_says(growing *out, const char *key, const sitting_act *act)
{
    growing_text(out, key);
    if (act == NULL)
        growing_text(out, "null");
    else
        growing_string(out, act->says, strlen(act->says));
}

/* kg, or null where there is none. */
static void add_mass(growing *out, const char *key, double mass)
{
    char text[40];
    snprintf(text, sizeof text, "%.9g", mass);
    growing_text(out, key);
    growing_text(out, isfinite(mass) ? text : "null");
}

static void add_progress(growing *out, arrange_job *job)
{
    const job_progress now = arrange_job_progress(job);
    if (now.told == 0) {
        growing_text(out, "null");
        return;
    }
    add_mass(out, "{\"found\": ", now.found);
    add_mass(out, ", \"bound\": ", now.bound);
    growing_text(out, ", \"done\": ");
    growing_number(out, (long long)now.done);
    growing_text(out, ", \"count\": ");
    growing_number(out, (long long)now.count);
    growing_text(out, ", \"ms\": ");
    growing_number(out, (long long)now.ms);
    growing_text(out, "}");
}

/* Which of its answers may be taken. */
static void add_takes(growing *out, const arrange_job *job)
{
    growing_text(out, ", \"takes\": [");
    for (size_t i = 0; job->state == JOB_ENDED && i < job->answer_count; i++) {
        growing_text(out, i > 0 ? ", " : "");
        growing_text(out, job->answers[i].holds ? "true" : "false");
    }
    growing_text(out, "]");
}

static void add_job(growing *out, arrange_job *job)
{
    static const char *const states[] = {"none", "runs", "ended"};
    growing_text(out, ", \"search\": {\"state\": \"");
    growing_text(out, states[job->state]);
    growing_text(out, "\", \"serial\": ");
    growing_number(out, (long long)job->serial);
    growing_text(out, ", \"can_take\": ");
    growing_text(out, job->state == JOB_ENDED && job->found.length > 0 ? "true" : "false");
    growing_text(out, ", \"progress\": ");
    add_progress(out, job);
    add_takes(out, job);
    growing_text(out, ", \"answer\": ");
    if (job->state == JOB_ENDED && job->answer.length > 0)
        growing_add(out, job->answer.bytes, job->answer.length);
    else
        growing_text(out, "null");
    growing_text(out, "}");
}

enum { TIMING_ROOM = 80 };

/* What a change took until now, as whoever looks at the page's network reads it (W3C Server
 * Timing): ms, apart from those for which it waited for the disk. */
static const char *time_change(const server *at, char *out)
{
    const long long disk = (long long)(at->here.on_disk * 1e3);
    const long long all  = (long long)((stopwatch_ms() - at->begun) * 1e3);
    const long long rest = all > disk ? all - disk : 0;

    (void)snprintf(out, TIMING_ROOM, "compute;dur=%lld.%03d, disk;dur=%lld.%03d", rest / 1000,
                   (int)(rest % 1000), disk / 1000, (int)(disk % 1000));
    return out;
}

/* NULL: without a view. */
static enum MHD_Result send_state(server *at, struct MHD_Connection *to, unsigned status,
                                  const growing *view)
{
    const sitting *here = &at->here;
    growing        out  = {0};
    growing_text(&out, "{\"serial\": ");
    growing_number(&out, (long long)here->serial);
    growing_text(&out, ", \"computed\": ");
    growing_number(&out, (long long)here->computed);
    growing_text(&out, ", \"outside\": ");
    growing_number(&out, (long long)here->outside);
    growing_text(&out, ", \"steps\": ");
    growing_number(&out, (long long)here->done);
    growing_text(&out, ", \"file\": ");
    growing_string(&out, here->place.name, strlen(here->place.name));
    add_says(&out, ", \"undo\": ", here->done > 0 ? &here->acts[here->done - 1] : NULL);
    add_says(&out, ", \"redo\": ", here->done < here->act_count ? &here->acts[here->done] : NULL);
    growing_text(&out, ", \"wrong\": ");
    if (here->messages.length > 0)
        growing_add(&out, here->messages.bytes, here->messages.length);
    else
        growing_text(&out, "null");
    growing_text(&out, ", \"text\": ");
    growing_string(&out, here->text.bytes, here->text.length);
    add_job(&out, &at->job);
    if (view != NULL) {
        growing_text(&out, ", \"view\": ");
        growing_add(&out, view->bytes, view->length);
    }
    growing_text(&out, "}\n");
    char timing[TIMING_ROOM];
    return reply_send_timed(to, status, json_kind_name, &out,
                            at->begun > 0.0 ? time_change(at, timing) : NULL);
}

enum MHD_Result handle_state(server *at, struct MHD_Connection *to, unsigned status)
{
    return send_state(at, to, status, NULL);
}

/* False: it cannot be written; nothing is to be forgotten then. */
static bool write_view(server *at, const char *units, const char *seen, growing *out)
{
    growing               fresh   = {0};
    const ts_sink         sink    = growing_sink(&fresh);
    const ts_view_options options = {.us = handle_is_us(units)};
    ts_study             *study   = sitting_study(&at->here, options.us);
    if (study == NULL || ts_study_write_view(study, &options, &sink) != TS_OK || fresh.failed) {
        growing_forget(&fresh);
        return false;
    }
    view_delta_answer(&at->shelf[options.us], seen, &fresh, out);
    return true;
}

enum MHD_Result handle_state_and_view(server *at, struct MHD_Connection *to, unsigned status,
                                      const char *units, const char *seen)
{
    growing               view = {0};
    const bool            good = write_view(at, units, seen, &view);
    const enum MHD_Result sent = send_state(at, to, status, good ? &view : NULL);
    growing_forget(&view);
    return sent;
}

void handle_tell(server *at)
{
    growing data = {0};
    growing_text(&data, "{\"serial\": ");
    growing_number(&data, (long long)at->here.serial);
    growing_text(&data, ", \"search\": ");
    growing_number(&data, (long long)at->job.state);
    growing_text(&data, ", \"progress\": ");
    add_progress(&data, &at->job);
    growing_text(&data, "}");
    if (!data.failed)
        event_stream_tell(at, data.bytes);
    growing_forget(&data);
}

/* ---- what the library writes ---------------------------------------------------------------- */

static enum MHD_Result send_written(struct MHD_Connection *to, ts_study *study, ts_status status,
                                    const char *kind, growing *out)
{
    if (status == TS_OK && !out->failed)
        return reply_send(to, 200, kind, out);
    growing_forget(out);
    if (status != TS_NOT_UNDERSTOOD)
        return reply_say(to, 500, "there is not enough memory for this answer");
    growing       messages = {0};
    const ts_sink sink     = growing_sink(&messages);
    (void)ts_study_write_messages(study, true, 0, &sink);
    return reply_send(to, 422, json_kind_name, &messages);
}

static enum MHD_Result nothing_computed(struct MHD_Connection *to)
{
    return reply_say(to, 409, "the file could not be computed yet");
}

static enum MHD_Result send_answer(server *at, struct MHD_Connection *to)
{
    growing               out   = {0};
    const ts_sink         sink  = growing_sink(&out);
    const ts_page_options page  = {0};
    ts_study *const       study = sitting_study(&at->here, false);
    if (study == NULL)
        return nothing_computed(to);
    const ts_status status = ts_study_write(study, TS_DOCUMENT_JSON, &page, &sink);
    return send_written(to, study, status, json_kind_name, &out);
}

static enum MHD_Result send_view(server *at, struct MHD_Connection *to)
{
    growing out = {0};
    if (at->here.computed == 0)
        return nothing_computed(to);
    if (!write_view(at, asked(to, "units"), asked(to, "seen"), &out))
        return reply_say(to, 500, "there is not enough memory for this answer");
    return reply_send(to, 200, json_kind_name, &out);
}

static enum MHD_Result send_places(server *at, struct MHD_Connection *to)
{
    growing       out   = {0};
    const ts_sink sink  = growing_sink(&out);
    const char   *name  = asked(to, "accessory");
    ts_study     *study = sitting_study(&at->here, handle_is_us(asked(to, "units")));
    if (study == NULL)
        return nothing_computed(to);
    const ts_status status = ts_places_write(study, name != NULL ? name : "", &sink);
    return send_written(to, study, status, json_kind_name, &out);
}

static enum MHD_Result send_sheet(server *at, struct MHD_Connection *to)
{
    growing                out   = {0};
    const ts_sink          sink  = growing_sink(&out);
    const char            *name  = asked(to, "accessory");
    const ts_page_options  page  = {0};
    const ts_sheet_options what  = {.accessory = name != NULL ? name : "", .format = "pdf"};
    ts_study *const        study = sitting_study(&at->here, false);
    if (study == NULL)
        return nothing_computed(to);
    const ts_status status = ts_sheet_write_to(study, &what, &page, &sink);
    return send_written(to, study, status, "application/pdf", &out);
}

static enum MHD_Result send_why(server *at, struct MHD_Connection *to)
{
    growing               out   = {0};
    const ts_sink         sink  = growing_sink(&out);
    const ts_page_options page  = {.us = handle_is_us(asked(to, "units"))};
    ts_study             *study = sitting_workings(&at->here);
    const char           *where = asked(to, "at");
    if (study == NULL)
        return nothing_computed(to);
    const ts_status status =
        ts_study_write_why(study, where != NULL ? where : "", true, &page, &sink);
    return send_written(to, study, status, json_kind_name, &out);
}

static enum MHD_Result send_picture(server *at, struct MHD_Connection *to)
{
    growing                 out    = {0};
    const ts_sink           sink   = growing_sink(&out);
    const char             *figure = asked(to, "figure"), *ground = asked(to, "ground");
    const char             *units   = asked(to, "units");
    const ts_figure_options options = {
        .figure    = figure != NULL ? figure : "behind",
        .format    = "svg",
        .condition = asked(to, "condition"),
        .at        = asked(to, "at"),
        .ground    = ground != NULL ? ground : "light",
        .us        = handle_is_us(units),
    };
    ts_study *const study = sitting_study(&at->here, false);
    if (study == NULL)
        return nothing_computed(to);
    const ts_status status = ts_study_draw(study, &options, &sink);
    return send_written(to, study, status, "image/svg+xml", &out);
}

/* The study that `from` asks for: the one that the sitting keeps, or one that is to be closed. */
static const char *past_of(const server *at, struct MHD_Connection *to, ts_study **study,
                           bool *close)
{
    const char *from = asked(to, "from");
    *close           = from != NULL && strcmp(from, "opened") != 0;
    *study           = at->here.opened;
    if (*close)
        return past_study(&at->here, from, study);
    return at->here.opened != NULL ? NULL : "the file could not be computed when it was opened";
}

static enum MHD_Result send_compare(server *at, struct MHD_Connection *to)
{
    growing               out  = {0};
    const ts_sink         sink = growing_sink(&out);
    const ts_page_options page = {.us = handle_is_us(asked(to, "units"))};
    ts_study             *past;
    bool                  close;
    ts_study *const       study = sitting_study(&at->here, false);
    if (study == NULL)
        return nothing_computed(to);
    const char *why = past_of(at, to, &past, &close);
    if (why != NULL)
        return reply_say(to, 422, why);
    const ts_status status = ts_compare_write(past, study, true, &page, &sink);
    if (close)
        ts_study_close(past);
    return send_written(to, study, status, json_kind_name, &out);
}

static enum MHD_Result send_past_view(server *at, struct MHD_Connection *to)
{
    growing               out     = {0};
    const ts_sink         sink    = growing_sink(&out);
    const char           *units   = asked(to, "units");
    const ts_view_options options = {.us = handle_is_us(units)};
    ts_study             *past;
    bool                  close;
    const char           *why = past_of(at, to, &past, &close);
    if (why != NULL)
        return reply_say(to, 422, why);
    const ts_status       status = ts_study_write_view(past, &options, &sink);
    const enum MHD_Result sent   = send_written(to, past, status, json_kind_name, &out);
    if (close)
        ts_study_close(past);
    return sent;
}

static enum MHD_Result send_past(const server *at, struct MHD_Connection *to)
{
    growing out = {0};
    past_list(&at->here, &out);
    return reply_send(to, 200, json_kind_name, &out);
}

/* The drive of an answer of the search, number `answer` from 0. */
static enum MHD_Result send_candidate(server *at, struct MHD_Connection *to)
{
    growing                out   = {0};
    const ts_sink          sink  = growing_sink(&out);
    const char            *units = asked(to, "units"), *word = asked(to, "answer");
    const ts_view_options  options = {.us = handle_is_us(units)};
    const ts_study_options how     = sitting_options(false, false);
    const arrange_job     *job     = &at->job;
    const size_t           index =
        word != NULL && strlen(word) == 1 && *word >= '0' ? (size_t)(*word - '0') : JOB_ANSWER_MOST;
    ts_study *study = NULL;
    if (job->state != JOB_ENDED || index >= job->answer_count)
        return reply_say(to, 422, "the search has no such answer");
    ts_status status = ts_study_open(NULL, &study);
    if (status == TS_OK)
        status = ts_study_read(study, at->here.shown, job->answers[index].file.bytes,
                               job->answers[index].file.length, &how);
    if (status == TS_OK)
        status = ts_study_write_view(study, &options, &sink);
    const enum MHD_Result sent = send_written(to, study, status, json_kind_name, &out);
    ts_study_close(study);
    return sent;
}

static enum MHD_Result send_effects(server *at, struct MHD_Connection *to)
{
    growing                  out   = {0};
    const ts_sink            sink  = growing_sink(&out);
    const ts_page_options    page  = {0};
    const ts_effects_options whole = {0};
    ts_study *const          study = sitting_study(&at->here, false);
    if (study == NULL)
        return nothing_computed(to);
    const ts_status status = ts_effects_write(study, &whole, true, &page, &sink);
    return send_written(to, study, status, json_kind_name, &out);
}

static enum MHD_Result send_brief(server *at, struct MHD_Connection *to)
{
    growing         out   = {0};
    const ts_sink   sink  = growing_sink(&out);
    ts_study *const study = sitting_study(&at->here, false);
    if (study == NULL)
        return nothing_computed(to);
    const ts_status status = ts_brief_quiz(study, false, &sink);
    return send_written(to, study, status, json_kind_name, &out);
}

static enum MHD_Result send_moving(server *at, struct MHD_Connection *to)
{
    growing         out   = {0};
    const ts_sink   sink  = growing_sink(&out);
    ts_study *const study = sitting_study(&at->here, false);
    if (study == NULL)
        return nothing_computed(to);
    const ts_status status =
        ts_brief_picture(study, asked(to, "condition"), asked(to, "ground"), &sink);
    return send_written(to, study, status, "image/svg+xml", &out);
}

static enum MHD_Result send_slow(server *at, struct MHD_Connection *to, const route *where)
{
    if (at->here.computed == 0)
        return nothing_computed(to);
    slow_question what = {.which = where->id, .shown = at->here.shown, .text = &at->here.text};
    const char   *name = where->query;
    for (int i = 0; i < SLOW_WORDS && *name != '\0'; i++) {
        char         word[16] = "";
        const size_t length   = strcspn(name, "|");
        memcpy(word, name, length < sizeof word ? length : sizeof word - 1);
        what.words[i] = asked(to, word);
        name += length + (name[length] == '|');
    }
    return slow_desk_ask(&at->slow, to, &what);
}

static enum MHD_Result send_twist(server *at, struct MHD_Connection *to)
{
    growing               out   = {0};
    const ts_sink         sink  = growing_sink(&out);
    const ts_page_options page  = {0};
    ts_study *const       study = sitting_study(&at->here, false);
    bool                  computed;
    if (study == NULL)
        return nothing_computed(to);
    const ts_status status = ts_twist_write(study, true, &page, &computed, &sink);
    return send_written(to, study, status, json_kind_name, &out);
}

static enum MHD_Result send_solids(server *at, struct MHD_Connection *to)
{
    growing         out   = {0};
    const ts_sink   sink  = growing_sink(&out);
    ts_study *const study = sitting_study(&at->here, false);
    if (study == NULL)
        return nothing_computed(to);
    const ts_status status = ts_study_write_solids(study, &sink);
    return send_written(to, study, status, json_kind_name, &out);
}

static enum MHD_Result send_notation(struct MHD_Connection *to)
{
    growing         out    = {0};
    const ts_sink   sink   = growing_sink(&out);
    const ts_status status = ts_notation_write("drive.schema.json", &sink);
    return status == TS_OK ? reply_send(to, 200, json_kind_name, &out)
                           : reply_say(to, 500, "the notation cannot be written");
}

enum MHD_Result handle_read(server *at, struct MHD_Connection *to, const route *where,
                            const char *path)
{
    switch (where->id) {
    case ROUTE_ENTER:
        return enter(at, to);
    case ROUTE_ASSET:
        return send_asset(to, asset_find(path, strlen(path)));
    case ROUTE_STATE:
        return handle_state(at, to, 200);
    case ROUTE_ANSWER:
        return send_answer(at, to);
    case ROUTE_VIEW:
        return send_view(at, to);
    case ROUTE_PLACES:
        return send_places(at, to);
    case ROUTE_WHY:
        return send_why(at, to);
    case ROUTE_PICTURE:
        return send_picture(at, to);
    case ROUTE_COMPARE:
        return send_compare(at, to);
    case ROUTE_SHEET:
        return send_sheet(at, to);
    case ROUTE_PAST:
        return send_past(at, to);
    case ROUTE_PAST_VIEW:
        return send_past_view(at, to);
    case ROUTE_ARRANGE_VIEW:
        return send_candidate(at, to);
    case ROUTE_EFFECTS:
        return send_effects(at, to);
    case ROUTE_BRIEF:
        return send_brief(at, to);
    case ROUTE_MOVING:
        return send_moving(at, to);
    case ROUTE_START:
    case ROUTE_SEIZE:
    case ROUTE_WARM:
        return send_slow(at, to, where);
    case ROUTE_TWIST:
        return send_twist(at, to);
    case ROUTE_SOLIDS:
        return send_solids(at, to);
    case ROUTE_NOTATION:
        return send_notation(to);
    default:
        return reply_say(to, 404, "there is nothing at this address");
    }
}
