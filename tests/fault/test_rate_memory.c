/* Does every failed allocation end in a clean error while a rate file is read, computed and told?
 *
 * libfyaml takes its memory from the C library and is not part of this sweep.
 */
#include "support/case_count.h"
#include "support/close.h"
#include "support/faulty_allocator.h"
#include "support/read_file.h"

#include "towershaft/towershaft.h"

enum { STRIDE = TS_CASES(1, 29) };

/* A sum over what was written (FNV-1a, 64 bit). */
static int swallow(void *context, const char *bytes, size_t length)
{
    uint64_t *sum = context;
    for (size_t i = 0; i < length; i++)
        *sum = (*sum ^ (unsigned char)bytes[i]) * 1099511628211u;
    return 0;
}

static ts_status whole_rate(const ts_allocator *allocator, ts_text file, const char *address,
                            uint64_t *written)
{
    const ts_study_options options = {.file = TS_WANT_RATE};
    const ts_sink          sink    = {swallow, written};
    ts_study              *study   = NULL;
    ts_status              status  = ts_study_open(allocator, &study);
    if (status != TS_OK)
        return status;
    status = ts_study_read(study, "rate.yaml", file.at, file.length, &options);
    if (status == TS_OK)
        status = ts_rate_write(study, false, NULL, &sink);
    if (status == TS_OK)
        status = ts_rate_write(study, true, NULL, &sink);
    if (status == TS_OK)
        status = ts_study_write_why(study, address, false, NULL, &sink);
    ts_study_close(study);
    return status;
}

static void sweep(const char *path, const char *address, faulty_manner manner, size_t stride)
{
    const ts_text    file = read_file(path);
    faulty_allocator faulty;
    uint64_t         whole = 0;
    ts_allocator     sound = faulty_allocator_open(&faulty, 0, manner);
    assert_int_equal(whole_rate(&sound, file, address, &whole), TS_OK);
    assert_int_equal(faulty.live_blocks, 0);
    const size_t calls   = faulty.calls;
    size_t       refused = 0;
    assert_true(calls > 10);
    for (size_t n = 1; n <= calls; n += stride) {
        uint64_t           written   = 0;
        const ts_allocator allocator = faulty_allocator_open(&faulty, n, manner);
        const ts_status    status    = whole_rate(&allocator, file, address, &written);
        /* The index of the workings is a help that may be lacking; the answer is then the same. */
        if (status == TS_OK)
            assert_true(written == whole);
        else
            assert_int_equal(status, TS_NO_MEMORY);
        refused += status == TS_NO_MEMORY;
        assert_int_equal(faulty.live_blocks, 0);
    }
    assert_true(refused > 0);
    free_file(file);
}

static void one_failed_allocation_is_a_clean_error(void **state)
{
    (void)state;
    sweep("examples/rate/inspection.yaml", "tooth measurement/idler:M_dR@upper", FAULTY_ONCE,
          STRIDE);
    sweep("examples/rate/shaft_parts.yaml", "shear neck/generator:T_low@weakest", FAULTY_ONCE,
          STRIDE);
    sweep("examples/rate/gear_pairs.yaml", "gear pair/first mesh:S_B", FAULTY_ONCE, 5 * STRIDE);
    sweep("examples/rate/bevels.yaml", "bevel pair/take-off:S_F1@ISO 10300", FAULTY_ONCE,
          3 * STRIDE);
}

static void memory_that_stays_out_is_a_clean_error(void **state)
{
    (void)state;
    sweep("examples/rate/gear_pairs.yaml", "gear pair/first mesh:S_B", FAULTY_ONWARDS, 7 * STRIDE);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(one_failed_allocation_is_a_clean_error),
        cmocka_unit_test(memory_that_stays_out_is_a_clean_error),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
