/* Do the view, places, necks and sizes end cleanly when memory runs out? */
#include "support/case_count.h"
#include "support/close.h"
#include "support/faulty_allocator.h"
#include "support/read_file.h"

#include "towershaft/towershaft.h"

/* How many of the requests for memory fail, one in each turn; sanitizers make each slower. */
enum { TURNS = TS_CASES(60, 8) };

typedef ts_status (*asked)(ts_study *study, const ts_sink *sink);

static int measure(void *context, const char *bytes, size_t length)
{
    uint64_t *sum = context;
    for (size_t i = 0; i < length; i++)
        *sum = (*sum ^ (unsigned char)bytes[i]) * UINT64_C(1099511628211);
    return 0;
}

static ts_status view(ts_study *study, const ts_sink *sink)
{
    return ts_study_write_view(study, &(ts_view_options){.us = true}, sink);
}

static ts_status places(ts_study *study, const ts_sink *sink)
{
    return ts_places_write(study, "control alternator", sink);
}

static const ts_page_options page = {.columns = 110};

static ts_status necks(ts_study *study, const ts_sink *sink)
{
    const ts_necks_options some = {.samples = 300, .threads = 1};
    bool                   computed;
    return ts_necks_write(study, &some, &page, &computed, sink);
}

static ts_status sized(ts_study *study, ts_size_part part, const ts_sink *sink)
{
    const ts_size_options options = {.part = part};
    bool                  fits;
    return ts_size_write(study, &options, &page, &fits, sink, NULL);
}

static ts_status bearings(ts_study *study, const ts_sink *sink)
{
    return sized(study, TS_SIZE_BEARINGS, sink);
}

static ts_status diameters(ts_study *study, const ts_sink *sink)
{
    return sized(study, TS_SIZE_NECKS, sink);
}

static ts_status read_and_ask(const ts_allocator *allocator, ts_text file, asked ask, uint64_t *sum)
{
    const ts_study_options options = {.today = 20000};
    const ts_sink          sink    = {measure, sum};
    ts_study              *study   = NULL;
    ts_status              status  = ts_study_open(allocator, &study);
    if (status == TS_OK)
        status = ts_study_read(study, "drive.yaml", file.at, file.length, &options);
    if (status == TS_OK)
        status = ask(study, &sink);
    ts_study_close(study);
    return status;
}

static void sweep(asked ask)
{
    const ts_text    file  = read_file("examples/trainer.yaml");
    uint64_t         whole = 0;
    faulty_allocator faulty;
    ts_allocator     sound = faulty_allocator_open(&faulty, 0, FAULTY_ONCE);
    assert_int_equal(read_and_ask(&sound, file, ask, &whole), TS_OK);
    assert_int_equal(faulty.live_blocks, 0);
    const size_t calls = faulty.calls;
    for (size_t n = 1; n <= calls; n += 1 + calls / TURNS) {
        uint64_t           written   = 0;
        const ts_allocator allocator = faulty_allocator_open(&faulty, n, FAULTY_ONCE);
        const ts_status    status    = read_and_ask(&allocator, file, ask, &written);
        if (status == TS_OK)
            assert_true(written == whole);
        else
            assert_int_equal(status, TS_NO_MEMORY);
        assert_int_equal(faulty.live_blocks, 0);
    }
    free_file(file);
}

static void view_without_memory_says_so(void **state)
{
    (void)state;
    sweep(view);
}

static void places_without_memory_say_so(void **state)
{
    (void)state;
    sweep(places);
}

static void necks_and_sizes_without_memory_say_so(void **state)
{
    (void)state;
    sweep(necks);
    sweep(bearings);
    sweep(diameters);
}

static void what_was_not_read_has_no_view_and_no_places(void **state)
{
    (void)state;
    uint64_t      sum   = 0;
    const ts_sink sink  = {measure, &sum};
    ts_study     *study = NULL;
    assert_int_equal(ts_study_open(NULL, &study), TS_OK);
    assert_int_equal(view(study, &sink), TS_NOT_UNDERSTOOD);
    assert_int_equal(places(study, &sink), TS_NOT_UNDERSTOOD);
    assert_int_equal(necks(study, &sink), TS_NOT_UNDERSTOOD);
    assert_int_equal(bearings(study, &sink), TS_NOT_UNDERSTOOD);
    assert_true(sum == 0);
    ts_study_close(study);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(view_without_memory_says_so),
        cmocka_unit_test(places_without_memory_say_so),
        cmocka_unit_test(necks_and_sizes_without_memory_say_so),
        cmocka_unit_test(what_was_not_read_has_no_view_and_no_places),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
