/* How does a search run while the page stays quick? */
#include "apps/serve/arrange_job.h"

#include "apps/serve/server.h"
#include "towershaft/towershaft.h"

#include <stdlib.h>
#include <string.h>
#include <sys/eventfd.h>
#include <time.h>
#include <unistd.h>

#define MEMORY_MOST ((size_t)2 << 30)
#define TELL_MS     100
#define END_MS      1000

static bool should_stop(void *context)
{
    const arrange_job *job = context;
    return atomic_load(&job->stop) || server_now() > job->end;
}

static void ring(const arrange_job *job)
{
    const uint64_t one = 1;
    (void)!write(job->bell, &one, sizeof one);
}

/* Kept for whoever asks; told ten times a second at the most. */
static void note_progress(void *context, double found, double bound, size_t done, size_t count)
{
    arrange_job  *job = context;
    const int64_t now = server_now();
    pthread_mutex_lock(&job->lock);
    const uint64_t told = job->progress.told + 1;
    job->progress       = (job_progress){found, bound, done, count, now - job->begun, told};
    pthread_mutex_unlock(&job->lock);
    if (told == 1 || now - job->rung >= TELL_MS) {
        job->rung = now;
        ring(job);
    }
}

job_progress arrange_job_progress(arrange_job *job)
{
    pthread_mutex_lock(&job->lock);
    const job_progress now = job->progress;
    pthread_mutex_unlock(&job->lock);
    return now;
}

static void keep_answer(void *context, size_t index, bool holds, const char *bytes, size_t length)
{
    arrange_job *job = context;
    if (index != job->answer_count || index >= JOB_ANSWER_MOST)
        return;
    job->answers[index].holds = holds;
    growing_add(&job->answers[index].file, bytes, length);
    job->answer_count++;
}

static void search(arrange_job *job)
{
    ts_study                *study   = NULL;
    const ts_study_options   options = sitting_options(false, false);
    const ts_arrange_options wish    = {.keep       = (const char *const *)job->keep,
                                        .keep_count = job->keep_count,
                                        .workers    = 1,
                                        .memory     = MEMORY_MOST,
                                        .stop       = should_stop,
                                        .progress   = note_progress,
                                        .answer     = keep_answer,
                                        .context    = job,
                                        .json       = true};
    const ts_page_options    page    = {0};
    ts_arranged              ended;
    const ts_sink            told = growing_sink(&job->answer), file = growing_sink(&job->found);
    ts_status                status = ts_study_open(NULL, &study);
    if (status == TS_OK)
        status = ts_study_read(study, job->shown, job->text.bytes, job->text.length, &options);
    if (status == TS_OK)
        status = ts_arrange_write(study, &wish, &page, &ended, &told, &file);
    job->understood = status == TS_OK;
    if (status != TS_OK) {
        job->answer.length = 0;
        if (study != NULL)
            (void)ts_study_write_messages(study, true, 0, &told);
    }
    ts_study_close(study);
}

static void *run(void *context)
{
    arrange_job *job = context;
    search(job);
    atomic_store(&job->ended, true);
    ring(job);
    return NULL;
}

bool arrange_job_open(arrange_job *job)
{
    *job = (arrange_job){.bell = eventfd(0, EFD_NONBLOCK | EFD_CLOEXEC)};
    return job->bell >= 0 && pthread_mutex_init(&job->lock, NULL) == 0;
}

static void forget(arrange_job *job)
{
    growing_forget(&job->text);
    growing_forget(&job->answer);
    growing_forget(&job->found);
    while (job->answer_count > 0)
        growing_forget(&job->answers[--job->answer_count].file);
    job->progress = (job_progress){0};
    while (job->keep_count > 0)
        free(job->keep[--job->keep_count]);
}

bool arrange_job_begin(arrange_job *job, const char *shown, const growing *text, uint64_t serial,
                       const char *const *keep, size_t keep_count, int64_t seconds)
{
    if (job->state == JOB_RUNS || keep_count > JOB_KEEP_MOST)
        return false;
    forget(job);
    job->state  = JOB_NONE;
    job->shown  = shown;
    job->serial = serial;
    job->begun  = server_now();
    job->end    = job->begun + seconds * 1000;
    atomic_store(&job->stop, false);
    atomic_store(&job->ended, false);
    growing_add(&job->text, text->bytes, text->length);
    bool good = !job->text.failed;
    for (size_t i = 0; i < keep_count && good; i++) {
        job->keep[i] = strdup(keep[i]);
        good         = job->keep[i] != NULL;
        job->keep_count += good;
    }
    if (!good || pthread_create(&job->thread, NULL, run, job) != 0) {
        forget(job);
        return false;
    }
    job->state = JOB_RUNS;
    return true;
}

void arrange_job_collect(arrange_job *job)
{
    uint64_t rung;
    if (read(job->bell, &rung, sizeof rung) != (ssize_t)sizeof rung || job->state != JOB_RUNS ||
        !atomic_load(&job->ended))
        return;
    (void)pthread_join(job->thread, NULL);
    job->state = JOB_ENDED;
}

void arrange_job_stop(arrange_job *job)
{
    atomic_store(&job->stop, true);
}

/* Rates of the teeth that all pairs share are asked for at one go, and until then nobody asks
 * whether to stop. */
static bool ends_soon(arrange_job *job)
{
    const struct timespec while_short = {.tv_nsec = 5000000};
    const int64_t         until       = server_now() + END_MS;

    while (!atomic_load(&job->ended) && server_now() < until)
        (void)nanosleep(&while_short, NULL);
    return atomic_load(&job->ended);
}

bool arrange_job_close(arrange_job *job)
{
    if (job->state == JOB_RUNS) {
        arrange_job_stop(job);
        if (!ends_soon(job)) {
            (void)pthread_detach(job->thread);
            return false;
        }
        (void)pthread_join(job->thread, NULL);
    }
    forget(job);
    if (job->bell >= 0)
        close(job->bell);
    return true;
}
