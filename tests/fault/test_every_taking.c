/* Does a command for which any one request of memory fails end cleanly, and say so?
 *
 * The commands run inside this program, linked so that every taking from an arena and every request
 * that our own code makes of the C library comes by here.  A first run notes from which chain of
 * callers each of them came; then the first of a chain fails, in a run of its own.  Either the
 * answer is whole and the same, or nothing is answered, the exit code is 3 and a sentence says it.
 * (test_allocation_sweep.c lets whole chunks fail, as a machine would: most takings have room in
 * one and never fail there.)  Libraries that are loaded ask the C library directly and never fail.
 *
 * Few chains of each command, evenly; TS_TAKINGS=300 takes so many of each (make coverage), and
 * lines that are arguments are swept alone, all their chains.
 *
 * ctest: timeout=3600 cost=5
 */
#include "support/case_count.h"
#include "support/close.h"

#include "base/arena.h"

#include <execinfo.h>
#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <unistd.h>

/* The door itself, under a name that can be called. */
int command_main(int argc, char **argv);
#define main command_main
#define run  command_run
#include "apps/cli/main.c"
#undef main
#undef run

enum {
    TURNS       = TS_CASES(4, 1), /* failing runs of each command  */
    LINES       = TS_CASES(1, 4), /* every so many lines are swept */
    CHAIN       = 6,              /* callers that tell one chain from another */
    CHAINS_MOST = 1 << 14,
    WORDS_MOST  = 12,
    LINE_MOST   = 256
};

/* ---- takings that fail ----------------------------------------------------------------------- */

static struct {
    size_t   taken;  /* requests of this run so far           */
    size_t   fails;  /* which one fails, from 1; 0: none      */
    bool     noting; /* are chains noted?                     */
    size_t   chains; /* different ones, each with its first request */
    uint64_t chain[CHAINS_MOST];
    size_t   first[CHAINS_MOST];
    int      depth; /* of the chain of the request that failed */
    void    *failed[2 * CHAIN];
} memory;

void *__real_ts_arena_take(ts_arena *arena, size_t count, size_t size);
char *__real_ts_arena_copy(ts_arena *arena, const char *bytes, size_t length);
void *__real_realloc(void *block, size_t size);
void *__real_malloc(size_t size);
void *__real_calloc(size_t count, size_t size);
void *__wrap_ts_arena_take(ts_arena *arena, size_t count, size_t size);
char *__wrap_ts_arena_copy(ts_arena *arena, const char *bytes, size_t length);
void *__wrap_realloc(void *block, size_t size);
void *__wrap_malloc(size_t size);
void *__wrap_calloc(size_t count, size_t size);

static void note_chain(void)
{
    void     *frames[CHAIN + 2];
    const int depth = backtrace(frames, CHAIN + 2);
    uint64_t  sum   = 1469598103934665603u; /* FNV-1a, 64 bit */
    for (int i = 2; i < depth; i++)
        sum = (sum ^ (uint64_t)(uintptr_t)frames[i]) * 1099511628211u;
    for (size_t i = memory.chains; i-- > 0;)
        if (memory.chain[i] == sum)
            return;
    assert_true(memory.chains < CHAINS_MOST);
    memory.chain[memory.chains]   = sum;
    memory.first[memory.chains++] = memory.taken;
}

static bool fails_now(void)
{
    memory.taken++;
    if (memory.noting)
        note_chain();
    if (memory.taken != memory.fails)
        return false;
    memory.depth = backtrace(memory.failed, 2 * CHAIN);
    return true;
}

/* An arena refuses what overflows, and remembers that it did. */
void *__wrap_ts_arena_take(ts_arena *arena, size_t count, size_t size)
{
    return fails_now() ? __real_ts_arena_take(arena, SIZE_MAX, 2)
                       : __real_ts_arena_take(arena, count, size);
}

char *__wrap_ts_arena_copy(ts_arena *arena, const char *bytes, size_t length)
{
    return __real_ts_arena_copy(arena, bytes, fails_now() ? SIZE_MAX : length);
}

void *__wrap_realloc(void *block, size_t size)
{
    return fails_now() ? NULL : __real_realloc(block, size);
}

void *__wrap_malloc(size_t size)
{
    return fails_now() ? NULL : __real_malloc(size);
}

void *__wrap_calloc(size_t count, size_t size)
{
    return fails_now() ? NULL : __real_calloc(count, size);
}

/* ---- one run of a command -------------------------------------------------------------------- */

typedef struct heard {
    int      code;
    size_t   answered; /* bytes on standard output and in the file that -o names */
    size_t   said;     /* bytes on standard error                                 */
    uint64_t sum;      /* of all of them, FNV-1a, 64 bit                          */
} heard;

static char folder[512]; /* of the file that is written, under TS_BUILD */
static char written[sizeof folder + 16];

static size_t add_all(FILE *from, uint64_t *sum)
{
    size_t count = 0;
    rewind(from);
    for (int c = getc(from); c != EOF; c = getc(from), count++)
        *sum = (*sum ^ (unsigned char)c) * 1099511628211u;
    fclose(from);
    return count;
}

/* "~" stands for a blank within a word, "@.svg" for a file that is written. */
static int words_of(char *line, char **argv)
{
    int argc     = 0;
    argv[argc++] = "towershaft";
    written[0]   = '\0';
    for (char *word = strtok(line, " "); word != NULL; word = strtok(NULL, " ")) {
        assert_true(argc < WORDS_MOST);
        for (char *each = word; *each != '\0'; each++)
            *each = *each == '~' ? ' ' : *each;
        if (*word == '@')
            snprintf(written, sizeof written, "%s/out%s", folder, word + 1);
        argv[argc++] = *word == '@' ? written : word;
    }
    return argc;
}

static heard run(const char *line, size_t fails, bool noting)
{
    char  words[LINE_MOST];
    char *argv[WORDS_MOST + 1] = {NULL};
    FILE *kept[2]              = {tmpfile(), tmpfile()};
    int   was[2];
    assert_true(strlen(line) < sizeof words && kept[0] != NULL && kept[1] != NULL);
    memcpy(words, line, strlen(line) + 1);
    const int argc = words_of(words, argv);
    fflush(NULL);
    for (int i = 0; i < 2; i++) {
        was[i] = dup(i + 1);
        assert_true(was[i] >= 0 && dup2(fileno(kept[i]), i + 1) == i + 1);
    }
    memory.taken  = 0;
    memory.fails  = fails;
    memory.noting = noting;
    heard told    = {.code = command_main(argc, argv), .sum = 1469598103934665603u};
    memory.noting = false;
    memory.fails  = 0;
    fflush(NULL);
    for (int i = 0; i < 2; i++)
        assert_true(dup2(was[i], i + 1) == i + 1 && close(was[i]) == 0);
    told.answered = add_all(kept[0], &told.sum);
    told.said     = add_all(kept[1], &told.sum);
    FILE *file    = written[0] != '\0' ? fopen(written, "rb") : NULL;
    if (file != NULL) {
        told.answered += add_all(file, &told.sum);
        assert_int_equal(remove(written), 0);
    }
    return told;
}

/* ---- the sweep ------------------------------------------------------------------------------- */

static bool is_clean(const heard *one, const heard *whole)
{
    if (one->code == EXIT_FAULT)
        return one->answered == 0 && one->said > 0;
    /* What is only a help may be lacking; the answer is then the same. */
    if (one->code == whole->code && one->sum == whole->sum)
        return true;
    /* A sentence about the file may come without its words; that it is not understood stands. */
    return one->code == EXIT_NOT_UNDERSTOOD && whole->code == EXIT_NOT_UNDERSTOOD && one->said > 0;
}

/* How many runs of the line were refused. */
static size_t sweep(const char *line, size_t turns)
{
    const char *wish = getenv("TS_TAKINGS");
    turns            = wish != NULL ? strtoul(wish, NULL, 10) : turns;
    assert_true(turns > 0);
    const heard first   = run(line, 0, false); /* what is kept between runs is kept from now on */
    memory.chains       = 0;
    const heard  whole  = run(line, 0, true);
    const size_t chains = memory.chains, stride = chains / turns + 1;
    size_t       refused = 0;
    assert_true(whole.sum == first.sum && whole.code != EXIT_FAULT && chains > 0);
    for (size_t i = (stride < chains ? stride : chains) / 2; i < chains; i += stride) {
        const heard one = run(line, memory.first[i], false);
        if (!is_clean(&one, &whole)) {
            fflush(stderr); /* addr2line -f -e tells which functions these are */
            backtrace_symbols_fd(memory.failed, memory.depth, STDERR_FILENO);
            fail_msg("towershaft %s: request %zu fails: code %d for %d, %zu bytes for %zu", line,
                     memory.first[i], one.code, whole.code, one.answered, whole.answered);
        }
        refused += one.code == EXIT_FAULT;
    }
    return refused;
}

/* Every one is swept when more runs are wished for. */
static size_t step_of(size_t usual)
{
    return getenv("TS_TAKINGS") == NULL ? usual : 1;
}

static void sweep_all(const char *const *lines, size_t count)
{
    for (size_t i = 0; i < count; i += step_of(LINES))
        assert_true(sweep(lines[i], TURNS) > 0);
}

#define SWEEP(...)                                                                                 \
    static const char *const lines[] = {__VA_ARGS__};                                              \
    (void)state;                                                                                   \
    sweep_all(lines, sizeof lines / sizeof lines[0])

static void a_check_is_whole_or_refused(void **state)
{
    SWEEP("check examples/trainer.yaml", "check examples/trainer.yaml --json",
          "check examples/traps/trainer_body_clash.yaml --all --units us",
          "check examples/trainer.yaml --sarif", "check examples/trainer.yaml --junit",
          "check examples/README.md",
          "why examples/trainer.yaml drive/hp/box/clockwise/2:n@take-off",
          "compare examples/trainer.yaml examples/traps/trainer_no_neck.yaml",
          "set examples/trainer.yaml revision Z -o @.yaml",
          "compare examples/trainer.yaml examples/bizjet.yaml --json",
          "check examples/large.yaml --all", "check examples/medium.yaml", "rules", "rules --json");
}

static void a_rating_is_whole_or_refused(void **state)
{
    SWEEP("rate examples/rate/gear_pairs.yaml", "rate examples/rate/bevels.yaml --units us",
          "rate examples/rate/shaft_parts.yaml --json", "rate examples/rate/inspection.yaml",
          "ratio 2.333", "ratio 2.1..2.2 --train cluster --json --sharing",
          "ratio 56/24 --centre 90~mm --module 1.5~mm");
}

static void a_choice_is_whole_or_refused(void **state)
{
    SWEEP("size examples/trainer.yaml", "size examples/bizjet.yaml --choose necks --json",
          "size examples/bizjet.yaml --choose bearings",
          "necks examples/trainer.yaml --samples 100 --threads 1",
          "necks examples/trainer.yaml --samples 100 --threads 1 --json");
}

static void a_course_is_whole_or_refused(void **state)
{
    SWEEP("oil examples/trainer.yaml", "oil examples/trainer.yaml --json",
          "warm examples/trainer.yaml", "warm examples/trainer.yaml --json",
          "start examples/trainer.yaml", "start examples/trainer.yaml --json",
          "seize examples/trainer.yaml hydraulic~pump", "whirl examples/trainer.yaml",
          "whirl examples/trainer.yaml --json", "twist examples/trainer.yaml",
          "twist examples/trainer.yaml --json", "jolt examples/trainer.yaml slam",
          "seize examples/trainer.yaml hydraulic~pump --json", "effects examples/trainer.yaml",
          "effects examples/trainer.yaml fuel~pump", "effects examples/trainer.yaml --json");
}

static void a_paper_is_whole_or_refused(void **state)
{
    SWEEP("sheet examples/trainer.yaml fuel~pump", "sheet examples/trainer.yaml fuel~pump --json",
          "brief examples/trainer.yaml -o @.html", "draw examples/trainer.yaml -o @.svg",
          "report examples/trainer.yaml -o @.html --sheets teeth",
          "brief examples/trainer.yaml --json", "draw examples/trainer.yaml -o @.json");
}

/* One picture after another, so each has one failing run, and every other one none, unless more are
 * wished for. */
static void a_picture_is_whole_or_refused(void **state)
{
    static const char *const figures[] = {
        "front", "pads",        "unrolled", "power",  "speeds", "teeth", "root",         "margins",
        "mass",  "selectivity", "necks",    "widths", "float",  "modes", "interference", "campbell",
        "reach", "start",       "seizure",  "jolt",   "swing",  "play",  "heat",         "stops"};
    const size_t step    = step_of(TS_CASES(2, 8));
    size_t       refused = 0;
    (void)state;
    for (size_t i = 0; i < sizeof figures / sizeof figures[0]; i += step) {
        char line[LINE_MOST];
        snprintf(line, sizeof line, "draw examples/trainer.yaml -o @.svg --figure %s", figures[i]);
        refused += sweep(line, 1);
    }
    assert_true(refused > 0); /* a picture may do without some */
}

static int open_folder(void **state)
{
    (void)state;
    const char *build = getenv("TS_BUILD");
    snprintf(folder, sizeof folder, "%s/taking-XXXXXX", build != NULL ? build : ".");
    return mkdtemp(folder) != NULL ? 0 : -1;
}

static int close_folder(void **state)
{
    (void)state;
    return rmdir(folder);
}

static const char *const *asked; /* lines of one's own, NULL after the last */

static void what_is_asked_is_whole_or_refused(void **state)
{
    (void)state;
    for (const char *const *each = asked; *each != NULL; each++)
        assert_true(sweep(*each, SIZE_MAX) > 0);
}

int main(int argc, char **argv)
{
    const struct CMUnitTest own[]   = {cmocka_unit_test(what_is_asked_is_whole_or_refused)};
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(a_check_is_whole_or_refused),
        cmocka_unit_test(a_rating_is_whole_or_refused),
        cmocka_unit_test(a_choice_is_whole_or_refused),
        cmocka_unit_test(a_course_is_whole_or_refused),
        cmocka_unit_test(a_paper_is_whole_or_refused),
        cmocka_unit_test(a_picture_is_whole_or_refused),
    };
    asked = (const char *const *)argv + 1;
    if (argc > 1)
        return cmocka_run_group_tests(own, open_folder, close_folder);
    return cmocka_run_group_tests(tests, open_folder, close_folder);
}
