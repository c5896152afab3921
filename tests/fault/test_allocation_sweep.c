/* Does every failed allocation end in a clean error?
 *
 * Every request that the study makes of its allocator fails once, in turn, while a drive is read,
 * solved, judged and written; then every request from the n-th on.  libfyaml takes its memory from
 * the C library and is not part of this sweep.
 */
#include "support/close.h"
#include "support/faulty_allocator.h"
#include "support/read_file.h"

#include "towershaft/towershaft.h"

#include <string.h>

static int swallow(void *context, const char *bytes, size_t length)
{
    (void)bytes;
    *(size_t *)context += length;
    return 0;
}

static ts_status whole_check(const ts_allocator *allocator, ts_text file, size_t *written)
{
    const ts_study_options options = {.today = 20000, .workings = true};
    const ts_sink          sink    = {swallow, written};
    ts_study              *study   = NULL;
    ts_status              status  = ts_study_open(allocator, &study);
    if (status != TS_OK)
        return status;
    status = ts_study_read(study, "drive.yaml", file.at, file.length, &options);
    for (int document = TS_DOCUMENT_PAGE; status == TS_OK && document <= TS_DOCUMENT_JUNIT;
         document++)
        status = ts_study_write(study, (ts_document)document, NULL, &sink);
    if (status == TS_OK)
        status = ts_study_write_why(study, "drive/hp/box/input:n@take-off", false, NULL, &sink);
    if (status == TS_OK)
        status =
            ts_study_set_bytes(study, "drive.yaml", file.at, file.length, "revision", "Z", &sink);
    ts_study_close(study);
    return status;
}

static void sweep(faulty_manner manner, size_t stride)
{
    const ts_text    file = read_file("examples/bizjet.yaml");
    faulty_allocator faulty;
    size_t           whole = 0;
    ts_allocator     sound = faulty_allocator_open(&faulty, 0, manner);
    assert_int_equal(whole_check(&sound, file, &whole), TS_OK);
    assert_int_equal(faulty.live_blocks, 0);
    const size_t calls = faulty.calls;
    assert_true(calls > 10);
    for (size_t n = 1; n <= calls; n += stride) {
        size_t             written   = 0;
        const ts_allocator allocator = faulty_allocator_open(&faulty, n, manner);
        assert_int_equal(whole_check(&allocator, file, &written), TS_NO_MEMORY);
        assert_true(faulty.failed > 0);
        assert_int_equal(faulty.live_blocks, 0);
    }
    free_file(file);
}

static void one_failed_allocation_is_a_clean_error(void **state)
{
    (void)state;
    sweep(FAULTY_ONCE, 1);
}

static void memory_that_stays_out_is_a_clean_error(void **state)
{
    (void)state;
    sweep(FAULTY_ONWARDS, 1);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(one_failed_allocation_is_a_clean_error),
        cmocka_unit_test(memory_that_stays_out_is_a_clean_error),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
