/* How is a long computation answered while the page stays quick? */
#include "apps/serve/slow_answer.h"

#include "apps/serve/reply.h"
#include "apps/serve/sitting.h"
#include "towershaft/towershaft.h"

#include <pthread.h>
#include <stdatomic.h>
#include <stdlib.h>
#include <string.h>
#include <sys/eventfd.h>
#include <unistd.h>

#define SEIZE_SAMPLES 600

struct slow_answer {
    struct MHD_Connection *to;
    pthread_t              thread;
    atomic_bool            done;
    bool                   asleep;
    int                    bell;
    route_id               which;
    const char            *shown;
    growing                text;
    char                  *words[SLOW_WORDS];
    ts_status              status;
    growing                answer; /* JSON, or messages when it was not understood */
};

/* ---- in its own thread ---------------------------------------------------------------------- */

static ts_status tell_start(slow_answer *job, ts_study *study, const ts_sink *sink)
{
    const ts_start_options options = {
        .ambient = job->words[0], .oil = job->words[1], .to = job->words[2], .json = true};
    const ts_page_options page = {0};
    ts_verdict            verdict;
    return ts_start_write(study, &options, &page, &verdict, sink);
}

static ts_status tell_seizure(slow_answer *job, ts_study *study, const ts_sink *sink)
{
    const ts_seize_options options = {.accessory = job->words[0] != NULL ? job->words[0] : "",
                                      .condition = job->words[1],
                                      .ramp      = job->words[2],
                                      .neck_of   = job->words[3],
                                      .json      = true,
                                      .samples   = SEIZE_SAMPLES};
    const ts_page_options  page    = {0};
    ts_verdict             verdict;
    return ts_seize_write(study, &options, &page, &verdict, sink);
}

static ts_status tell_warming(slow_answer *job, ts_study *study, const ts_sink *sink)
{
    const ts_warm_options options = {
        .soak = job->words[0], .ambient = job->words[1], .through = job->words[2], .json = true};
    const ts_page_options page = {0};
    ts_verdict            verdict;
    return ts_warm_write(study, &options, &page, &verdict, sink);
}

static ts_status tell(slow_answer *job, ts_study *study, const ts_sink *sink)
{
    switch (job->which) {
    case ROUTE_START:
        return tell_start(job, study, sink);
    case ROUTE_SEIZE:
        return tell_seizure(job, study, sink);
    default:
        return tell_warming(job, study, sink);
    }
}

static void compute(slow_answer *job)
{
    ts_study              *study   = NULL;
    const ts_study_options options = sitting_options(false, false);
    const ts_sink          sink    = growing_sink(&job->answer);
    job->status                    = ts_study_open(NULL, &study);
    if (job->status == TS_OK)
        job->status = ts_study_read(study, job->shown, job->text.bytes, job->text.length, &options);
    if (job->status == TS_OK)
        job->status = tell(job, study, &sink);
    if (job->status == TS_NOT_UNDERSTOOD) {
        job->answer.length = 0;
        (void)ts_study_write_messages(study, true, 0, &sink);
    }
    ts_study_close(study);
}

static void *run(void *context)
{
    slow_answer   *job  = context;
    const uint64_t one  = 1;
    const int      bell = job->bell;
    compute(job);
    atomic_store(&job->done, true);
    (void)!write(bell, &one, sizeof one);
    return NULL;
}

/* ---- in the thread of the server ------------------------------------------------------------ */

bool slow_desk_open(slow_desk *desk)
{
    *desk = (slow_desk){.bell = eventfd(0, EFD_NONBLOCK | EFD_CLOEXEC)};
    return desk->bell >= 0;
}

static void forget(slow_answer *job)
{
    growing_forget(&job->text);
    growing_forget(&job->answer);
    for (int i = 0; i < SLOW_WORDS; i++)
        free(job->words[i]);
    free(job);
}

static slow_answer *make(const slow_desk *desk, struct MHD_Connection *to,
                         const slow_question *what)
{
    slow_answer *job = calloc(1, sizeof *job);
    if (job == NULL)
        return NULL;
    job->to    = to;
    job->bell  = desk->bell;
    job->which = what->which;
    job->shown = what->shown;
    growing_add(&job->text, what->text->bytes, what->text->length);
    bool good = !job->text.failed;
    for (int i = 0; i < SLOW_WORDS && good; i++) {
        job->words[i] = what->words[i] != NULL ? strdup(what->words[i]) : NULL;
        good          = what->words[i] == NULL || job->words[i] != NULL;
    }
    if (good && pthread_create(&job->thread, NULL, run, job) == 0)
        return job;
    forget(job);
    return NULL;
}

static enum MHD_Result begin(slow_desk *desk, struct MHD_Connection *to, const slow_question *what)
{
    for (int i = 0; i < SLOW_MOST; i++) {
        if (desk->jobs[i] != NULL)
            continue;
        desk->jobs[i] = make(desk, to, what);
        if (desk->jobs[i] == NULL)
            return reply_say(to, 500, "there is not enough memory for this answer");
        desk->jobs[i]->asleep = true;
        MHD_suspend_connection(to);
        return MHD_YES;
    }
    return reply_say(to, 503, "other long answers are being computed; ask again");
}

static enum MHD_Result answer(slow_answer *job)
{
    if (!atomic_load(&job->done))
        return reply_say(job->to, 503, "towershaft ends");
    if (job->answer.failed || (job->status != TS_OK && job->status != TS_NOT_UNDERSTOOD))
        return reply_say(job->to, 500, "there is not enough memory for this answer");
    return reply_send(job->to, job->status == TS_OK ? 200 : 422, "application/json", &job->answer);
}

enum MHD_Result slow_desk_ask(slow_desk *desk, struct MHD_Connection *to, const slow_question *what)
{
    for (int i = 0; i < SLOW_MOST; i++)
        if (desk->jobs[i] != NULL && desk->jobs[i]->to == to)
            return answer(desk->jobs[i]);
    return desk->ending ? reply_say(to, 503, "towershaft ends") : begin(desk, to, what);
}

static void wake(slow_answer *job)
{
    if (!job->asleep)
        return;
    job->asleep = false;
    MHD_resume_connection(job->to);
}

void slow_desk_collect(slow_desk *desk)
{
    uint64_t rung;
    if (read(desk->bell, &rung, sizeof rung) != (ssize_t)sizeof rung)
        return;
    for (int i = 0; i < SLOW_MOST; i++)
        if (desk->jobs[i] != NULL && atomic_load(&desk->jobs[i]->done))
            wake(desk->jobs[i]);
}

void slow_desk_left(slow_desk *desk, const struct MHD_Connection *to)
{
    for (int i = 0; i < SLOW_MOST; i++) {
        slow_answer *job = desk->jobs[i];
        if (job == NULL || job->to != to)
            continue;
        if (atomic_load(&job->done)) {
            (void)pthread_join(job->thread, NULL);
            forget(job);
            desk->jobs[i] = NULL;
        } else {
            job->to = NULL; /* the program ends; its thread goes on until then */
        }
    }
}

void slow_desk_end(slow_desk *desk)
{
    desk->ending = true;
    for (int i = 0; i < SLOW_MOST; i++)
        if (desk->jobs[i] != NULL)
            wake(desk->jobs[i]);
}

bool slow_desk_waits(const slow_desk *desk)
{
    for (int i = 0; i < SLOW_MOST; i++)
        if (desk->jobs[i] != NULL && desk->jobs[i]->to != NULL)
            return true;
    return false;
}

void slow_desk_close(slow_desk *desk)
{
    bool left = false;
    for (int i = 0; i < SLOW_MOST; i++) {
        slow_answer *job = desk->jobs[i];
        if (job == NULL)
            continue;
        if (!atomic_load(&job->done)) {
            (void)pthread_detach(job->thread); /* it still rings the bell */
            left = true;
        } else {
            (void)pthread_join(job->thread, NULL);
            forget(job);
            desk->jobs[i] = NULL;
        }
    }
    if (desk->bell >= 0 && !left)
        close(desk->bell);
}
