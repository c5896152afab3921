/* Is a start or a seizure for which memory runs out refused, and never told with a hole in it?
 *
 * Requests of the study's allocator fail once, in turn, after the drive was read.  SUNDIALS takes
 * its memory from the C library and is not part of this.
 *
 * ctest: timeout=600
 */
#include "support/case_count.h"
#include "support/close.h"
#include "support/faulty_allocator.h"
#include "support/read_file.h"

#include "towershaft/towershaft.h"

enum { TURNS = TS_CASES(40, 8) };

typedef ts_status writer(ts_study *study, const ts_sink *sink);

/* FNV-1a, 64 bit. */
static int swallow(void *context, const char *bytes, size_t length)
{
    uint64_t *sum = context;
    for (size_t i = 0; i < length; i++)
        *sum = (*sum ^ (unsigned char)bytes[i]) * 1099511628211u;
    return 0;
}

static ts_status start_page(ts_study *study, const ts_sink *sink)
{
    const ts_start_options options = {.json = false};
    ts_verdict             verdict;
    return ts_start_write(study, &options, NULL, &verdict, sink);
}

static ts_status start_json(ts_study *study, const ts_sink *sink)
{
    const ts_start_options options = {.json = true};
    ts_verdict             verdict;
    return ts_start_write(study, &options, NULL, &verdict, sink);
}

static ts_status seize_json(ts_study *study, const ts_sink *sink)
{
    const ts_seize_options options = {.accessory = "hydraulic pump", .json = true};
    ts_verdict             verdict;
    return ts_seize_write(study, &options, NULL, &verdict, sink);
}

static ts_status follow(faulty_allocator *faulty, size_t fails, ts_text file, writer *write,
                        uint64_t *written, size_t *read)
{
    const ts_allocator     allocator = faulty_allocator_open(faulty, fails, FAULTY_ONCE);
    const ts_study_options options   = {.today = 20000};
    const ts_sink          sink      = {swallow, written};
    ts_study              *study     = NULL;
    *written                         = 0;
    assert_int_equal(ts_study_open(&allocator, &study), TS_OK);
    assert_int_equal(ts_study_read(study, "drive.yaml", file.at, file.length, &options), TS_OK);
    *read                  = faulty->calls;
    const ts_status status = write(study, &sink);
    ts_study_close(study);
    return status;
}

static void sweep(writer *write)
{
    const ts_text    file = read_file("examples/trainer.yaml");
    faulty_allocator faulty;
    uint64_t         whole = 0, written = 0;
    size_t           read = 0, again = 0;
    assert_int_equal(follow(&faulty, 0, file, write, &whole, &read), TS_OK);
    const size_t calls  = faulty.calls;
    const size_t stride = (calls - read) / TURNS + 1;
    assert_true(calls > read);
    for (size_t n = read + 1; n <= calls; n += stride) {
        const ts_status status = follow(&faulty, n, file, write, &written, &again);
        assert_int_equal(again, read);
        assert_true(faulty.failed > 0);
        assert_int_equal(faulty.live_blocks, 0);
        assert_true(status == TS_OK ? written == whole : status == TS_NO_MEMORY);
    }
    free_file(file);
}

static void a_start_is_whole_or_refused(void **state)
{
    (void)state;
    sweep(start_page);
    sweep(start_json);
}

static ts_status seize_page(ts_study *study, const ts_sink *sink)
{
    const ts_seize_options options = {.accessory = "hydraulic pump"};
    ts_verdict             verdict;
    return ts_seize_write(study, &options, NULL, &verdict, sink);
}

static void a_seizure_is_whole_or_refused(void **state)
{
    (void)state;
    sweep(seize_page);
    sweep(seize_json);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(a_start_is_whole_or_refused),
        cmocka_unit_test(a_seizure_is_whole_or_refused),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
