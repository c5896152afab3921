/* May 32 threads use the library at once, each with a study of its own?
 *
 * Every thread asks the same questions of the same files, each beginning with another one, and must
 * get the bytes that one thread alone gets.  The thread sanitizer watches this in `make soak`.
 *
 * ctest: threads
 */
#include "support/case_count.h"
#include "support/read_file.h"

#include "towershaft/figure.h"
#include "towershaft/oil.h"
#include "towershaft/report.h"
#include "towershaft/seize.h"
#include "towershaft/sheet.h"
#include "towershaft/solids.h"
#include "towershaft/twist.h"

#include <pthread.h>
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <stdlib.h>
#include <string.h>

#include <cmocka.h>

enum { THREADS = 32 };

typedef struct text {
    char  *bytes;
    size_t length, room;
} text;

static int take(void *context, const char *bytes, size_t length)
{
    text *into = context;
    if (into->length + length > into->room) {
        const size_t room  = 2 * (into->length + length);
        char        *wider = realloc(into->bytes, room);
        if (wider == NULL)
            return -1;
        into->bytes = wider;
        into->room  = room;
    }
    memcpy(into->bytes + into->length, bytes, length);
    into->length += length;
    return 0;
}

/* ---- what is asked ----------------------------------------------------------------------------
 */

typedef ts_status question(ts_study *study, const ts_sink *sink);

static const ts_page_options page = {.columns = 100, .all = true};

static ts_status ask_answer(ts_study *study, const ts_sink *sink)
{
    return ts_study_write(study, TS_DOCUMENT_JSON, &page, sink);
}

static ts_status ask_page(ts_study *study, const ts_sink *sink)
{
    return ts_study_write(study, TS_DOCUMENT_PAGE, &page, sink);
}

static ts_status ask_why(ts_study *study, const ts_sink *sink)
{
    return ts_study_write_why(study, "drive/hp/box/clockwise/1", false, &page, sink);
}

static ts_status ask_wrong(ts_study *study, const ts_sink *sink)
{
    const ts_status status = ts_study_write_why(study, "drive/hq/box", false, &page, sink);
    return status == TS_NOT_UNDERSTOOD ? ts_study_write_messages(study, true, 0, sink)
                                       : TS_NO_OUTPUT;
}

static ts_status ask_picture(ts_study *study, const ts_sink *sink)
{
    const ts_figure_options options = {.figure = "power", .format = "svg", .ground = "light"};
    return ts_study_draw(study, &options, sink);
}

static ts_status ask_bodies(ts_study *study, const ts_sink *sink)
{
    return ts_study_write_glb(study, sink);
}

static ts_status ask_modes(ts_study *study, const ts_sink *sink)
{
    bool computed;
    return ts_twist_write(study, true, &page, &computed, sink);
}

static ts_status ask_seizure(ts_study *study, const ts_sink *sink)
{
    const ts_seize_options options = {.accessory = "fuel pump", .json = true, .samples = 50};
    ts_verdict             verdict;
    return ts_seize_write(study, &options, &page, &verdict, sink);
}

static ts_status ask_numbers(ts_study *study, const ts_sink *sink)
{
    const ts_report_options options = {.format = "csv"};
    return ts_report_write(study, &options, sink);
}

static question *const questions[] = {ask_answer, ask_picture, ask_why,     ask_seizure, ask_wrong,
                                      ask_bodies, ask_modes,   ask_numbers, ask_page};
#define QUESTIONS (sizeof questions / sizeof questions[0])

static const char *const names[] = {"examples/trainer.yaml", "examples/bizjet.yaml"};
#define FILES (sizeof names / sizeof names[0])

static ts_text files[FILES];
static text    alone[FILES][QUESTIONS];

/* A study of its own, one question, and the answer; false: something went wrong. */
static bool ask(size_t file, size_t number, text *told)
{
    const ts_study_options options = {.today = 20000, .workings = true};
    const ts_sink          sink    = {take, told};
    ts_study              *study;

    *told = (text){NULL, 0, 0};
    if (ts_study_open(NULL, &study) != TS_OK)
        return false;
    const bool good =
        ts_study_read(study, names[file], files[file].at, files[file].length, &options) == TS_OK &&
        questions[number](study, &sink) == TS_OK;
    ts_study_close(study);
    return good && told->length > 0;
}

/* ---- many at once -----------------------------------------------------------------------------
 */

typedef struct asker {
    pthread_t          thread;
    pthread_barrier_t *begin;
    size_t             number;
    const char        *wrong;
} asker;

static void *ask_all(void *context)
{
    asker       *one  = context;
    const size_t asks = TS_CASES(2, 1);

    pthread_barrier_wait(one->begin);
    for (size_t k = 0; k < asks && one->wrong == NULL; k++) {
        const size_t which = (one->number + k) % QUESTIONS, file = (one->number / 2 + k) % FILES;
        const text  *due = &alone[file][which];
        text         told;
        if (!ask(file, which, &told))
            one->wrong = "an answer did not come";
        else if (told.length != due->length || memcmp(told.bytes, due->bytes, due->length) != 0)
            one->wrong = "an answer differs from that of one thread alone";
        free(told.bytes);
    }
    return NULL;
}

static void test_32_threads_get_the_answers_of_one(void **state)
{
    (void)state;
    static asker      askers[THREADS];
    pthread_barrier_t begin;

    for (size_t file = 0; file < FILES; file++) {
        files[file] = read_file(names[file]);
        for (size_t k = 0; k < QUESTIONS; k++)
            if (!ask(file, k, &alone[file][k]))
                fail_msg("%s: question %zu", names[file], k);
    }
    assert_int_equal(pthread_barrier_init(&begin, NULL, THREADS), 0);
    for (size_t i = 0; i < THREADS; i++) {
        askers[i] = (asker){.begin = &begin, .number = i};
        assert_int_equal(pthread_create(&askers[i].thread, NULL, ask_all, &askers[i]), 0);
    }
    for (size_t i = 0; i < THREADS; i++)
        assert_int_equal(pthread_join(askers[i].thread, NULL), 0);
    pthread_barrier_destroy(&begin);
    for (size_t i = 0; i < THREADS; i++)
        if (askers[i].wrong != NULL)
            fail_msg("thread %zu: %s", i, askers[i].wrong);
    for (size_t file = 0; file < FILES; file++) {
        for (size_t k = 0; k < QUESTIONS; k++)
            free(alone[file][k].bytes);
        free_file(files[file]);
    }
}

int main(void)
{
    const struct CMUnitTest tests[] = {cmocka_unit_test(test_32_threads_get_the_answers_of_one)};
    return cmocka_run_group_tests(tests, NULL, NULL);
}
