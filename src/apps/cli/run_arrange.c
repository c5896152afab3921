/* Which arrangement is the lightest? */
#include "apps/cli/arguments.h"
#include "apps/cli/named_drive.h"
#include "apps/cli/option_value.h"
#include "apps/cli/picture_wish.h"
#include "apps/cli/session.h"

#include <math.h>
#include <stdlib.h>
#include <string.h>
#include <unistd.h>

#define MEMORY_MOST ((size_t)3 << 30) /* bytes, so that no small machine begins to swap */

/* When to end, and what was told; context of should_stop and take_progress. */
typedef struct watch {
    double begin, end, told; /* s */
    double found, bound;     /* kg */
    size_t done, count;      /* ways to drive a box */
    bool   shown, terminal;
    bool   sampled; /* the search is over, and answers are put under samples */
} watch;

/* Once a second at most. */
static void show_progress(watch *w)
{
    const double at = clock_now();
    if (!w->shown || w->sampled || at - w->told < 1.0)
        return;
    w->told = at;
    fprintf(stderr, "%s%.0f s: ", w->terminal ? "\r\x1b[K" : "", at - w->begin);
    if (isfinite(w->found))
        fprintf(stderr, "best so far %.4f kg, ", w->found);
    if (w->count > 0 && isfinite(w->bound))
        fprintf(stderr, "none below %.4f kg, ", w->bound);
    if (isfinite(w->found) && w->count > 0 && w->bound > 0.0)
        fprintf(stderr, "gap %.2f %%, ", 100.0 * (w->found / w->bound - 1.0));
    if (w->count > 0)
        fprintf(stderr, "way %zu of %zu", w->done + 1, w->count);
    else
        fprintf(stderr, "looking for something to begin with");
    fputs(w->terminal ? "" : "\n", stderr);
    fflush(stderr);
}

static void take_progress(void *context, double found, double bound, size_t done, size_t count)
{
    watch *w = context;
    w->found = found;
    w->bound = bound;
    w->done  = done;
    w->count = count;
    show_progress(w);
}

static void show_sampled(void *context, uint64_t done, uint64_t due)
{
    watch       *w  = context;
    const double at = clock_now();
    if (!w->shown || (done < due && at - w->told < 1.0))
        return;
    w->told    = at;
    w->sampled = true;
    fprintf(stderr, "%s%.0f s: %llu of %llu samples of each answer%s",
            w->terminal ? "\r\x1b[K" : "", at - w->begin, (unsigned long long)done,
            (unsigned long long)due, w->terminal ? "" : "\n");
    fflush(stderr);
}

static bool should_stop(void *context)
{
    watch *w = context;
    show_progress(w);
    return interrupt_came() || clock_now() > w->end;
}

static bool read_memory(const arguments *given, ts_arrange_options *wish)
{
    size_t megabytes = 0;
    if (!option_count(given, "arrange", OPTION_MEMORY, 1L << 20, &megabytes))
        return false;
    if (megabytes > 0)
        wish->memory = megabytes << 20;
    return true;
}

static bool read_wish(const arguments *given, ts_arrange_options *wish, watch *w)
{
    double     seconds    = OPTION_TIME_MOST;
    const long processors = sysconf(_SC_NPROCESSORS_ONLN);
    *wish                 = (ts_arrange_options){.keep          = given->keep,
                                                 .keep_count    = (size_t)given->keep_count,
                                                 .why_not       = given->why_not,
                                                 .loads         = given->value[OPTION_LOADS],
                                                 .bands         = given->value[OPTION_BANDS],
                                                 .why_not_count = (size_t)given->why_not_count,
                                                 .workers       = processors > 0 ? (size_t)processors : 1,
                                                 .memory        = MEMORY_MOST,
                                                 .stop          = should_stop,
                                                 .context       = w,
                                                 .progress      = take_progress,
                                                 .sampled       = show_sampled,
                                                 .json          = given->value[OPTION_JSON] != NULL};
    if (!option_time(given, "arrange", &seconds))
        return false;
    const bool   terminal = isatty(STDERR_FILENO) != 0;
    const double begin    = clock_now();
    *w                    = (watch){.begin    = begin,
                                    .end      = begin + seconds,
                                    .told     = begin,
                                    .found    = (double)INFINITY,
                                    .terminal = terminal,
                                    .shown    = terminal || given->value[OPTION_PROGRESS] != NULL};
    return option_count(given, "arrange", OPTION_ANSWERS, 16, &wish->answers) &&
           option_count(given, "arrange", OPTION_FRONT, 40, &wish->front) &&
           option_count(given, "arrange", OPTION_THREADS, 256, &wish->workers) &&
           read_memory(given, wish);
}

/* Where the changed text goes; NULL: nowhere. */
static const char *target_of(const arguments *given)
{
    if (given->value[OPTION_OUTPUT] != NULL)
        return given->value[OPTION_OUTPUT];
    return given->value[OPTION_WRITE] != NULL ? given->operand[0] : NULL;
}

static int show(const collector *told, const char *target, bool json)
{
    const int code = output_send(told);
    if (json || code != EXIT_HOLDS)
        return code;
    if (target == NULL)
        printf("\nNothing was written; --write puts the arrangement into the file.\n");
    else
        printf("\nWritten: %s\n", target);
    return EXIT_HOLDS;
}

/* A limit below which not even a beginning can be made is no fault of the machine. */
static int refused(const arguments *given, const ts_study *study, ts_status status, bool json)
{
    if (status != TS_NO_MEMORY || given->value[OPTION_MEMORY] == NULL)
        return complain(study, status, json);
    fprintf(
        stderr,
        "towershaft arrange: --memory %s is too little to begin with: nothing was found, nothing "
        "is known, and nothing was written\n",
        given->value[OPTION_MEMORY]);
    return EXIT_DOES_NOT_HOLD;
}

static int arrange(const arguments *given, ts_study *study, const ts_arrange_options *asked,
                   const ts_page_options *page)
{
    collector                 told, text, picture;
    ts_figure_options         figure;
    const ts_sink             drawn = collector_sink(&picture);
    ts_arrange_options        own   = *asked;
    const ts_arrange_options *wish  = &own;
    if (!picture_beside(given, "arrange", &figure))
        return EXIT_NOT_UNDERSTOOD;
    if (given->value[OPTION_PICTURE] != NULL) {
        own.picture      = &figure;
        own.picture_sink = &drawn;
    }
    const ts_sink   sink = collector_sink(&told), file = collector_sink(&text);
    ts_arranged     ended  = TS_ARRANGED_SO_FAR;
    const char     *target = target_of(given);
    const ts_status status = ts_arrange_write(study, wish, page, &ended, &sink, &file);
    int             code = status == TS_OK ? EXIT_HOLDS : refused(given, study, status, wish->json);
    if (text.length == 0)
        target = NULL;
    if (code == EXIT_HOLDS && target != NULL)
        code = file_save(target, text.bytes, text.length);
    if (code == EXIT_HOLDS && own.picture != NULL)
        code = file_save(given->value[OPTION_PICTURE], picture.bytes, picture.length);
    if (code == EXIT_HOLDS)
        code = show(&told, target, wish->json);
    if (code == EXIT_HOLDS && ended != TS_ARRANGED)
        code = EXIT_DOES_NOT_HOLD;
    if (code == EXIT_HOLDS)
        code = session_verdict(study);
    collector_forget(&told);
    collector_forget(&text);
    collector_forget(&picture);
    return code;
}

static int verify(const arguments *given, ts_study *study, const ts_arrange_options *wish,
                  const ts_page_options *page)
{
    const char *path = given->value[OPTION_VERIFY];
    file_bytes  certificate;
    collector   told;
    bool        holds = false;
    int         code  = EXIT_FAULT;
    if (!file_read(path, &certificate, &code))
        return code;
    const ts_sink   sink   = collector_sink(&told);
    const ts_status status = ts_arrange_verify_write(study, wish, certificate.bytes,
                                                     certificate.length, path, page, &holds, &sink);
    code = status == TS_OK ? output_deliver(given, &told) : complain(study, status, wish->json);
    if (code == EXIT_HOLDS && !holds)
        code = EXIT_DOES_NOT_HOLD;
    collector_forget(&told);
    file_forget(&certificate);
    return code;
}

/* What is read beside the drive. */
typedef struct beside {
    file_bytes   added;
    ts_sampling *samples;
} beside;

static bool read_beside(const arguments *given, ts_arrange_options *wish, beside *b, int *code)
{
    const char *added = given->value[OPTION_ADD], *study = given->value[OPTION_STUDY];
    if (added != NULL && !file_read(added, &b->added, code))
        return false;
    wish->added        = b->added.bytes;
    wish->added_name   = added;
    wish->added_length = b->added.length;
    if (study == NULL)
        return true;
    b->samples    = named_drive_study(study, wish->json, code);
    wish->samples = b->samples;
    if (b->samples == NULL)
        return false;
    *code = EXIT_NOT_UNDERSTOOD;
    return named_drive_is(study, b->samples, given->operand[0]);
}

static int answer(const arguments *given, ts_arrange_options *wish, watch *w)
{
    ts_page_options  page;
    ts_study_options options;
    beside           b    = {{NULL, 0}, NULL};
    int              code = EXIT_NOT_UNDERSTOOD;
    ts_study        *study;
    if (!page_options(given, &page) || !study_options(given, &options))
        return code;
    options.workings = false;
    if (read_beside(given, wish, &b, &code)) {
        interrupt_keep(); /* from here on: what is known by then is told */
        study = session_open(given->operand[0], &options, wish->json, &code);
        if (study != NULL)
            code = given->value[OPTION_VERIFY] != NULL ? verify(given, study, wish, &page)
                                                       : arrange(given, study, wish, &page);
        if (study != NULL && w->terminal)
            fputs("\r\x1b[K", stderr);
        ts_study_close(study);
    }
    ts_sampling_close(b.samples);
    file_forget(&b.added);
    return code;
}

int run_arrange(const arguments *given)
{
    ts_arrange_options wish;
    watch              w;
    if (!read_wish(given, &wish, &w))
        return EXIT_NOT_UNDERSTOOD;
    if (target_of(given) != NULL && strcmp(target_of(given), "-") == 0) {
        fprintf(stderr, "towershaft arrange: standard input needs -o FILE to be written\n");
        return EXIT_NOT_UNDERSTOOD;
    }
    return answer(given, &wish, &w);
}
