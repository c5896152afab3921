/* Which arrangement is the lightest? */
#include "apps/cli/arguments.h"
#include "apps/cli/session.h"

#include <errno.h>
#include <signal.h>
#include <stdlib.h>
#include <string.h>
#include <time.h>
#include <unistd.h>

#define MEMORY_MOST ((size_t)3 << 30) /* bytes, so that no small machine begins to swap */
#define TIME_MOST   1e6               /* s */

static volatile sig_atomic_t interrupted;

static void interrupt(int signal_number)
{
    (void)signal_number;
    interrupted = 1;
}

static double now(void)
{
    struct timespec t;
    (void)clock_gettime(CLOCK_MONOTONIC, &t);
    return (double)t.tv_sec + 1e-9 * (double)t.tv_nsec;
}

/* The time at which to end; context of should_stop. */
static bool should_stop(void *context)
{
    const double *end = context;
    return interrupted != 0 || now() > *end;
}

/* "30", "30 s" or "5 min", in seconds. */
static bool read_time(const char *text, double *seconds)
{
    char        *rest;
    const double value = strtod(text, &rest);
    rest += strspn(rest, " ");
    const double unit = strcmp(rest, "") == 0 || strcmp(rest, "s") == 0 ? 1.0
                        : strcmp(rest, "min") == 0                      ? 60.0
                                                                        : 0.0;
    *seconds          = value * unit;
    if (rest != text && *seconds > 0.0 && *seconds <= TIME_MOST)
        return true;
    fprintf(stderr, "towershaft arrange: --within needs a time such as 30 s or 5 min, not %s\n",
            text);
    return false;
}

static bool read_count(const arguments *given, option_id option, long most, size_t *out)
{
    char       *rest;
    const char *text = given->value[option];
    if (text == NULL)
        return true;
    const long value = strtol(text, &rest, 10);
    if (rest != text && *rest == '\0' && value >= 1 && value <= most) {
        *out = (size_t)value;
        return true;
    }
    fprintf(stderr, "towershaft arrange: %s needs a whole number from 1 to %ld, not %s\n",
            option_rows[option].word, most, text);
    return false;
}

static bool read_wish(const arguments *given, ts_arrange_options *wish, double *end)
{
    double     seconds    = TIME_MOST;
    const long processors = sysconf(_SC_NPROCESSORS_ONLN);
    *wish                 = (ts_arrange_options){.keep          = given->keep,
                                                 .keep_count    = (size_t)given->keep_count,
                                                 .why_not       = given->why_not,
                                                 .why_not_count = (size_t)given->why_not_count,
                                                 .workers       = processors > 0 ? (size_t)processors : 1,
                                                 .memory        = MEMORY_MOST,
                                                 .stop          = should_stop,
                                                 .context       = end,
                                                 .json          = given->value[OPTION_JSON] != NULL};
    if (given->value[OPTION_WITHIN] != NULL && !read_time(given->value[OPTION_WITHIN], &seconds))
        return false;
    *end = now() + seconds;
    return read_count(given, OPTION_ANSWERS, 16, &wish->answers) &&
           read_count(given, OPTION_FRONT, 40, &wish->front) &&
           read_count(given, OPTION_THREADS, 256, &wish->workers);
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
    if (fwrite(told->bytes, 1, told->length, stdout) != told->length)
        return EXIT_FAULT;
    if (!json && target == NULL)
        printf("\nNothing was written; --write puts the arrangement into the file.\n");
    if (!json && target != NULL)
        printf("\nWritten: %s\n", target);
    return EXIT_HOLDS;
}

static int arrange(const arguments *given, ts_study *study, const ts_arrange_options *wish,
                   const ts_page_options *page)
{
    collector       told, text;
    const ts_sink   sink = collector_sink(&told), file = collector_sink(&text);
    ts_arranged     ended  = TS_ARRANGED_SO_FAR;
    const char     *target = target_of(given);
    const ts_status status = ts_arrange_write(study, wish, page, &ended, &sink, &file);
    int             code   = status == TS_OK ? EXIT_HOLDS : complain(study, status, wish->json);
    if (text.length == 0)
        target = NULL;
    if (code == EXIT_HOLDS && target != NULL)
        code = file_save(target, text.bytes, text.length);
    if (code == EXIT_HOLDS)
        code = show(&told, target, wish->json);
    if (code == EXIT_HOLDS && ended != TS_ARRANGED)
        code = EXIT_DOES_NOT_HOLD;
    if (code == EXIT_HOLDS)
        code = session_verdict(study);
    collector_forget(&told);
    collector_forget(&text);
    return code;
}

int run_arrange(const arguments *given)
{
    ts_page_options    page;
    ts_study_options   options;
    ts_arrange_options wish;
    double             end;
    if (!page_options(given, &page) || !study_options(given, &options) ||
        !read_wish(given, &wish, &end))
        return EXIT_NOT_UNDERSTOOD;
    if (target_of(given) != NULL && strcmp(target_of(given), "-") == 0) {
        fprintf(stderr, "towershaft arrange: standard input needs -o FILE to be written\n");
        return EXIT_NOT_UNDERSTOOD;
    }
    int        code  = EXIT_FAULT;
    file_bytes added = {NULL, 0};
    options.workings = false;
    if (given->value[OPTION_ADD] != NULL && !file_read(given->value[OPTION_ADD], &added, &code))
        return code;
    wish.added        = added.bytes;
    wish.added_name   = given->value[OPTION_ADD];
    wish.added_length = added.length;
    ts_study *study   = session_open(given->operand[0], &options, wish.json, &code);
    if (study != NULL) {
        (void)signal(SIGINT, interrupt);
        code = arrange(given, study, &wish, &page);
        ts_study_close(study);
    }
    file_forget(&added);
    return code;
}
