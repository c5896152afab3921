/* Does the reader stand files that are nearly right?
 *
 * 10,000 variants of the examples, made by a fixed seed; TS_SOAK=20 makes 20 times as many.  Each
 * either reads, and then its train can be laid out, or is refused with messages that have a line
 * and a column; none may take more than 64 MB or a second.
 *
 * ctest: timeout=1200
 */
#include "model/reader.h"
#include "model/train.h"
#include "support/read_file.h"

#include <glob.h>
#include <setjmp.h>
#include <stdarg.h>
#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/resource.h>
#include <time.h>
#include <unistd.h>

#include <cmocka.h>

#define VARIANTS   10000
#define BYTES_MOST ((size_t)64 << 20)
#define FILES_MOST 64

#if defined(__SANITIZE_ADDRESS__)
#define SANITIZED 1
#elif defined(__has_feature)
#if __has_feature(address_sanitizer)
#define SANITIZED 1
#endif
#endif
#ifndef SANITIZED
#define SANITIZED 0
#endif

static ts_text files[FILES_MOST];
static size_t  file_count;

/* ---- chance --------------------------------------------------------------------------------- */

static uint64_t seed;

/* splitmix64: the same numbers on every machine. */
static uint64_t chance(void)
{
    uint64_t z = seed += UINT64_C(0x9E3779B97F4A7C15);
    z          = (z ^ z >> 30) * UINT64_C(0xBF58476D1CE4E5B9);
    z          = (z ^ z >> 27) * UINT64_C(0x94D049BB133111EB);
    return z ^ z >> 31;
}

static size_t below(size_t limit)
{
    return limit == 0 ? 0 : (size_t)(chance() % limit);
}

/* ---- slips ---------------------------------------------------------------------------------- */

/* The variant that is being made: bytes[0..length). */
static char  *bytes;
static size_t length, room;

static void replace(size_t from, size_t to, const char *piece, size_t piece_length)
{
    const size_t grown = length - (to - from) + piece_length;
    if (grown > room) {
        room  = grown * 2;
        bytes = realloc(bytes, room);
        assert_non_null(bytes);
    }
    memmove(bytes + from + piece_length, bytes + to, length - to);
    memcpy(bytes + from, piece, piece_length);
    length = grown;
}

static void line_at(size_t at, size_t *from, size_t *to)
{
    *from = at;
    *to   = at;
    while (*from > 0 && bytes[*from - 1] != '\n')
        (*from)--;
    while (*to < length && bytes[*to] != '\n')
        (*to)++;
    if (*to < length)
        (*to)++;
}

static void flip_a_byte(void)
{
    if (length > 0)
        bytes[below(length)] = (char)chance();
}

static void drop_some_bytes(void)
{
    const size_t from = below(length), most = length - from;
    replace(from, from + below(most < 20 ? most + 1 : 20), "", 0);
}

static void double_a_line(void)
{
    size_t from, to;
    line_at(below(length), &from, &to);
    char *copy = malloc(to - from + 1);
    assert_non_null(copy);
    memcpy(copy, bytes + from, to - from);
    replace(from, from, copy, to - from);
    free(copy);
}

static void drop_a_line(void)
{
    size_t from, to;
    line_at(below(length), &from, &to);
    replace(from, to, "", 0);
}

static void move_a_line(void)
{
    size_t from, to;
    line_at(below(length), &from, &to);
    const size_t size = to - from;
    char        *copy = malloc(size + 1);
    assert_non_null(copy);
    memcpy(copy, bytes + from, size);
    replace(from, to, "", 0);
    size_t there, ignored;
    line_at(below(length), &there, &ignored);
    replace(there, there, copy, size);
    free(copy);
}

static const char *const pieces[] = {
    ":",
    ": ",
    "- ",
    "[",
    "]",
    "{",
    "}",
    ",",
    "'",
    "\"",
    "#",
    "&a ",
    "*a",
    "!t ",
    "<<: ",
    "? ",
    "|\n",
    ">\n",
    "\t",
    "\n",
    "\r\n",
    "\r",
    "---\n",
    "...\n",
    "%YAML",
    "\\",
    "\0x",
    "\xFF",
    "\xC3",
    "\xE2\x80\xA8",
    "unknown",
    "..",
    " rpm",
    " N.m",
    " J",
    " degC",
    "1e999",
    "-",
    "9,9",
    "nan",
    "cover",
    "always",
    "value:",
    "source: x",
    "either",
    "\"6:00\"",
    "hp",
    "cw",
    "teeth: 1",
    "2026-02-30",
    "=======\n",
    "            ",
    "{a: {b: {c: {d: {",
    "[[[[[[[[[[[[[[[[",
};

static void put_a_piece_in(void)
{
    const char  *piece = pieces[below(sizeof pieces / sizeof pieces[0])];
    const size_t at    = below(length + 1);
    replace(at, at, piece, piece[0] == '\0' ? 2 : strlen(piece));
}

static void exchange_words(void)
{
    static const char *const words[] = {"rpm",   "N.m",   "kW",    "mm",   "deg",    "kg",
                                        "teeth", "face",  "clock", "rear", "front",  "hp",
                                        "power", "speed", "turns", "cw",   "unknown"};
    const size_t             count   = sizeof words / sizeof words[0];
    const char              *old = words[below(count)], *new = words[below(count)];
    const size_t             start = below(length);
    for (size_t i = start; i + strlen(old) <= length; i++) {
        if (memcmp(bytes + i, old, strlen(old)) == 0) {
            replace(i, i + strlen(old), new, strlen(new));
            return;
        }
    }
}

static void exchange_a_digit(void)
{
    const size_t start = below(length);
    for (size_t i = start; i < length; i++) {
        if (bytes[i] >= '0' && bytes[i] <= '9') {
            bytes[i] = (char)('0' + below(10));
            return;
        }
    }
}

static void shift_a_line(void)
{
    size_t from, to;
    line_at(below(length), &from, &to);
    if (below(2) == 0 && bytes[from] == ' ')
        replace(from, from + 1, "", 0);
    else
        replace(from, from, " ", 1);
}

static void cut_the_end_off(void)
{
    length = below(length + 1);
}

static void take_a_stranger_in(void)
{
    const ts_text other = files[below(file_count)];
    const size_t  from = below(other.length), most = other.length - from;
    const size_t  at = below(length + 1);
    replace(at, at, other.at + from, below(most < 400 ? most + 1 : 400));
}

static void nest_deeply(void)
{
    char         nest[256];
    const size_t depth = 1 + below(100);
    memset(nest, below(2) == 0 ? '[' : '{', depth);
    const size_t at = below(length + 1);
    replace(at, at, nest, depth);
}

static void (*const slips[])(void) = {
    flip_a_byte,    drop_some_bytes, double_a_line,      drop_a_line,    move_a_line,
    put_a_piece_in, put_a_piece_in,  exchange_words,     exchange_words, exchange_a_digit,
    shift_a_line,   cut_the_end_off, take_a_stranger_in, nest_deeply,
};

static void make_variant(uint64_t number)
{
    seed               = number * UINT64_C(0x2545F4914F6CDD1D) + 33;
    const ts_text from = files[below(file_count)];
    length             = 0;
    replace(0, 0, from.at, from.length);
    const size_t count = 1 + below(3);
    for (size_t i = 0; i < count; i++) {
        if (length > 0)
            slips[below(sizeof slips / sizeof slips[0])]();
    }
}

/* ---- what must hold ------------------------------------------------------------------------- */

static void assert_placed(const ts_diagnostics *list, uint64_t number)
{
    ts_buffer out;
    if (ts_diagnostics_count(list) == 0)
        fail_msg("variant %llu is refused without a message", (unsigned long long)number);
    for (size_t i = 0; i < ts_diagnostics_kept(list); i++) {
        const ts_diagnostic *each = ts_diagnostics_at(list, i);
        if (each->line < 1 || each->column < 1 || strlen(each->says) < 5 || each->code[0] == '\0')
            fail_msg("variant %llu: %s at %u:%u", (unsigned long long)number, each->code,
                     each->line, each->column);
    }
    ts_buffer_open(&out, NULL);
    ts_diagnostics_print(list, 0, &out);
    assert_false(out.failed);
    ts_buffer_close(&out);
}

/* Reads the variant; true when it is sound. */
static bool read_variant(uint64_t number)
{
    const ts_text   text  = {bytes, length};
    ts_arena       *arena = ts_arena_open(NULL);
    ts_diagnostics *list  = ts_diagnostics_open(arena, "variant.yaml", text);
    ts_source       source;
    ts_drive        drive;
    ts_train        train;
    assert_non_null(list);
    const clock_t   from   = clock();
    const ts_status status = ts_read_drive(text, "variant.yaml", arena, list, &source, &drive);
    const double    took   = (double)(clock() - from) / CLOCKS_PER_SEC;
    if (status == TS_OK) {
        assert_int_equal(ts_diagnostics_count(list), 0);
        assert_int_equal(ts_train_build(&drive, arena, list, &train), TS_OK);
    } else if (status == TS_NOT_UNDERSTOOD) {
        assert_placed(list, number);
    } else {
        fail_msg("variant %llu: status %d", (unsigned long long)number, (int)status);
    }
    if (took > 1.0)
        fail_msg("variant %llu took %d ms", (unsigned long long)number, (int)(took * 1e3));
    ts_arena_close(arena);
    return status == TS_OK;
}

static void every_variant_reads_or_is_refused_with_a_place(void **state)
{
    (void)state;
    const char    *soak  = getenv("TS_SOAK");
    const uint64_t times = soak != NULL ? strtoull(soak, NULL, 10) : 1;
    uint64_t       sound = 0;
    for (uint64_t number = 0; number < VARIANTS * times; number++) {
        make_variant(number);
        sound += read_variant(number) ? 1 : 0;
    }
    /* Most slips matter, and some do not; a reader that says always the same fails here. */
    assert_true(sound > VARIANTS * times / 100);
    assert_true(sound < VARIANTS * times / 2);
}

/* ---- the room ------------------------------------------------------------------------------- */

/* From here on no more than 64 MB beyond what the process has now.  A sanitizer needs its own. */
static void limit_memory(void)
{
    unsigned long pages = 0;
    FILE         *statm = fopen("/proc/self/statm", "r");
    assert_non_null(statm);
    assert_int_equal(fscanf(statm, "%lu", &pages), 1);
    fclose(statm);
    const rlim_t        most  = (rlim_t)pages * (rlim_t)sysconf(_SC_PAGESIZE) + BYTES_MOST;
    const struct rlimit limit = {most, most};
    assert_int_equal(setrlimit(RLIMIT_AS, &limit), 0);
}

static void collect(const char *pattern)
{
    glob_t found;
    if (glob(pattern, 0, NULL, &found) != 0)
        return;
    for (size_t i = 0; i < found.gl_pathc && file_count < FILES_MOST; i++)
        files[file_count++] = read_file(found.gl_pathv[i]);
    globfree(&found);
}

/* The dearest files that the limits allow. */
static void largest_files_stay_within_the_room(void **state)
{
    (void)state;
    static const struct {
        const char *head, *piece;
    } shapes[] = {
        {"drive: {hp: {box: {clockwise: \n", "- {a: b, c: d, e: f, g: h, i: j, k: l}\n"},
        {"accessories:\n", "- {}\n"},
        {"", "# a comment of some length, as there are many in a file that people write\n"},
        {"a:\n", "- [b, c, d, e, f]\n"},
        {"a: ", "text that goes on and on "},
        {"a: \"", "text that goes on\\t and on "},
        {"drive:\n  hp:\n    box:\n      clockwise:\n", "        - {}\n"},
        {"waived:\n", "  - {rule: a, at: b, why: c}\n"},
    };
    for (size_t i = 0; i < sizeof shapes / sizeof shapes[0]; i++) {
        length = 0;
        replace(0, 0, shapes[i].head, strlen(shapes[i].head));
        while (length < ((size_t)4 << 20) - 200)
            replace(length, length, shapes[i].piece, strlen(shapes[i].piece));
        (void)read_variant(i);
    }
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(every_variant_reads_or_is_refused_with_a_place),
        cmocka_unit_test(largest_files_stay_within_the_room),
    };
    collect("tests/model/sample.yaml");
    collect("examples/*.yaml");
    collect("examples/traps/*.yaml");
    room  = (size_t)9 << 20;
    bytes = malloc(room);
    if (bytes == NULL)
        return 1;
    memset(bytes, 0, room);
    if (!SANITIZED)
        limit_memory();
    const int failed = cmocka_run_group_tests(tests, NULL, NULL);
    for (size_t i = 0; i < file_count; i++)
        free_file(files[i]);
    free(bytes);
    return failed;
}
