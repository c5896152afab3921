/* Does rating stand files that are nearly right, and numbers that no gear has?
 *
 * 4,000 variants of the examples, made by a fixed seed; TS_SOAK=20 makes 20 times as many.  Each is
 * refused with messages that have a line and a column, or is computed, told as JSON that can be
 * read, and told on a page.  In checked builds every formula proves itself on the way.
 *
 * ctest: timeout=1200
 */
#include "support/case_count.h"
#include "support/close.h"
#include "support/read_file.h"

#include "towershaft/towershaft.h"

#include <jansson.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

enum { VARIANTS = TS_CASES(4000, 800) };
#define ROOM (1 << 16)

static const char *const paths[] = {"examples/rate/gear_pairs.yaml", "examples/rate/bevels.yaml",
                                    "examples/rate/inspection.yaml",
                                    "examples/rate/shaft_parts.yaml"};
#define FILE_COUNT (sizeof paths / sizeof paths[0])
static ts_text files[FILE_COUNT];

/* The variant that is being made. */
static char   bytes[ROOM];
static size_t length;

/* splitmix64: the same numbers on every machine. */
static uint64_t seed;
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

static void replace(size_t from, size_t to, const char *piece)
{
    const size_t size = strlen(piece);
    if (length - (to - from) + size >= ROOM)
        return;
    memmove(bytes + from + size, bytes + to, length - to);
    memcpy(bytes + from, piece, size);
    length += size - (to - from);
}

/* ---- slips -------------------------------------------------------------------------------------
 */

static bool is_digit(char byte)
{
    return byte >= '0' && byte <= '9';
}

/* The number at or behind a random place; false when there is none. */
static bool find_number(size_t *from, size_t *to)
{
    size_t at = below(length);
    while (at < length && !is_digit(bytes[at]))
        at++;
    *from = at;
    while (*from > 0 && (is_digit(bytes[*from - 1]) || bytes[*from - 1] == '.'))
        (*from)--;
    *to = at;
    while (*to < length && (is_digit(bytes[*to]) || bytes[*to] == '.'))
        (*to)++;
    return at < length;
}

/* Another number in its place: near, far, of another sign, and on the edges of ranges. */
static void change_number(void)
{
    static const char *const numbers[] = {
        "0",      "1",   "2",   "3",    "5",     "7",      "13",    "0.1",   "0.01",
        "0.5",    "0.9", "1.1", "2.5",  "45",    "60",     "90",    "100",   "1000",
        "100000", "1e6", "1e9", "1e-9", "1e-3",  "1e-30",  "1e30",  "1e170", "-1",
        "-0.5",   "-7",  "0.0", "4.99", "-1e-6", "999999", "1e-170"};
    size_t from, to;
    char   scaled[32];
    if (!find_number(&from, &to))
        return;
    if (below(2) == 0) {
        replace(from, to, numbers[below(sizeof numbers / sizeof numbers[0])]);
        return;
    }
    const double value = strtod(bytes + from, NULL);
    const double scale = pow(10.0, ((double)below(2001) - 1000.0) / 500.0);
    snprintf(scaled, sizeof scaled, "%.4g", value * scale);
    replace(from, to, scaled);
}

static void drop_a_line(void)
{
    size_t from = below(length), to;
    while (from > 0 && bytes[from - 1] != '\n')
        from--;
    for (to = from; to < length && bytes[to] != '\n'; to++)
        ;
    replace(from, to < length ? to + 1 : to, "");
}

/* One key of a record in braces less. */
static void drop_an_entry(void)
{
    size_t from = below(length), to;
    while (from < length && bytes[from] != ',')
        from++;
    for (to = from + 1; to < length && bytes[to] != ',' && bytes[to] != '}' && bytes[to] != '\n';
         to++)
        ;
    if (to < length)
        replace(from, to, "");
}

static void spoil_a_byte(void)
{
    char piece[2] = {(char)(1 + below(126)), '\0'};
    if (length > 0) {
        const size_t at = below(length);
        replace(at, at + 1, piece);
    }
}

static void put_a_word(void)
{
    static const char *const words[] = {"unknown", "yes",         "gear pair",  "{}",
                                        "[]",      "\n",          ": ",         "z_1",
                                        "k_W",     "d_a1: 50 mm", "a_w: 90 mm", "P: 10 kW"};
    const size_t             at      = below(length);
    replace(at, at, words[below(sizeof words / sizeof words[0])]);
}

static void make_variant(uint64_t number)
{
    const ts_text file = files[number % FILE_COUNT];
    seed               = number * UINT64_C(0x2545F4914F6CDD1D) + 77;
    assert_true(file.length < ROOM);
    memcpy(bytes, file.at, file.length);
    length = file.length;
    for (size_t slips = 1 + below(4); slips > 0; slips--) {
        switch (below(10)) {
        case 0:
            drop_a_line();
            break;
        case 1:
            drop_an_entry();
            break;
        case 2:
            if (below(4) == 0)
                spoil_a_byte();
            break;
        case 3:
            if (below(4) == 0)
                put_a_word();
            break;
        default:
            change_number();
            break;
        }
    }
}

/* ---- what comes out ----------------------------------------------------------------------------
 */

static char  *told;
static size_t told_length;

static int tell(void *context, const char *piece, size_t size)
{
    (void)context;
    char *more = realloc(told, told_length + size + 1);
    assert_non_null(more);
    told = more;
    memcpy(told + told_length, piece, size);
    told_length += size;
    told[told_length] = '\0';
    return 0;
}

static void assert_readable(uint64_t number)
{
    json_error_t fault;
    json_t      *root = json_loadb(told, told_length, 0, &fault);
    if (root == NULL)
        fail_msg("variant %llu: %s", (unsigned long long)number, fault.text);
    json_decref(root);
}

/* Was it computed? */
static bool rate_variant(uint64_t number)
{
    const ts_study_options options = {.file = TS_WANT_RATE};
    const ts_sink          sink    = {tell, NULL};
    ts_study              *study   = NULL;
    assert_int_equal(ts_study_open(NULL, &study), TS_OK);
    const ts_status status = ts_study_read(study, "variant.yaml", bytes, length, &options);
    told_length            = 0;
    if (status == TS_OK) {
        assert_int_equal(ts_rate_write(study, true, NULL, &sink), TS_OK);
        assert_readable(number);
        told_length = 0;
        assert_int_equal(ts_rate_write(study, false, NULL, &sink), TS_OK);
        if (strstr(told, " nan") != NULL || strstr(told, " inf ") != NULL)
            fail_msg("variant %llu: a page with nan or inf", (unsigned long long)number);
        for (size_t i = 0; i < ts_study_finding_count(study); i++)
            assert_true(strlen(ts_study_finding(study, i).says) > 10);
    } else {
        assert_int_equal(status, TS_NOT_UNDERSTOOD);
        assert_true(ts_study_message_count(study) > 0);
        for (size_t i = 0; i < ts_study_message_count(study); i++)
            assert_true(ts_study_message(study, i).line >= 1 &&
                        ts_study_message(study, i).column >= 1);
    }
    ts_study_close(study);
    return status == TS_OK;
}

static void every_variant_is_computed_or_refused_with_a_place(void **state)
{
    (void)state;
    const char    *soak  = getenv("TS_SOAK");
    const uint64_t times = soak != NULL ? strtoull(soak, NULL, 10) : 1;
    uint64_t       sound = 0;
    for (int i = 0; i < (int)FILE_COUNT; i++)
        files[i] = read_file(paths[i]);
    for (uint64_t number = 0; number < VARIANTS * times; number++) {
        make_variant(number);
        sound += rate_variant(number) ? 1 : 0;
    }
    for (int i = 0; i < (int)FILE_COUNT; i++)
        free_file(files[i]);
    free(told);
    /* Most changed numbers are still numbers; most other slips are not. */
    assert_true(sound > VARIANTS * times / 10);
    assert_true(sound < VARIANTS * times * 9 / 10);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(every_variant_is_computed_or_refused_with_a_place),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
