/* Does every failed allocation end in a clean error?
 *
 * Requests that the study makes of its allocator fail once, in turn, while a drive is read, solved,
 * judged and written; then every request from the n-th on.  libfyaml takes its memory from
 * the C library and is not part of this sweep.
 *
 * ctest: timeout=1200
 */
#include "support/case_count.h"
#include "support/close.h"
#include "support/faulty_allocator.h"
#include "support/read_file.h"

#include "towershaft/towershaft.h"

#include <stdlib.h>
#include <string.h>

/* A turn reads, solves and writes a whole drive, so not every request has one: the first ones do,
 * and then as many as fit, evenly.  TS_SOAK=20 makes 20 times as many. */
enum { TURNS = TS_CASES(80, 10) };

static size_t turns_wanted(void)
{
    const char *soak = getenv("TS_SOAK");
    return TURNS * (soak != NULL ? strtoul(soak, NULL, 10) : 1);
}

/* A sum over what was written: another byte, or another place of a byte, gives another sum
 * (FNV-1a, 64 bit). */
static int swallow(void *context, const char *bytes, size_t length)
{
    uint64_t *sum = context;
    for (size_t i = 0; i < length; i++)
        *sum = (*sum ^ (unsigned char)bytes[i]) * 1099511628211u;
    return 0;
}

static ts_status whole_check(const ts_allocator *allocator, ts_text file, uint64_t *written)
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
    const ts_study_edit edits[] = {{"drive/hp/box/clockwise/1", NULL, 2}, {"revision", "Z", 0}};
    if (status == TS_OK)
        status = ts_study_propose(study, edits, 2, &sink);
    if (status == TS_OK)
        status =
            ts_study_set_bytes(study, "drive.yaml", file.at, file.length, "revision", "Z", &sink);
    ts_study_close(study);
    return status;
}

static void sweep(faulty_manner manner, size_t turns)
{
    const ts_text    file = read_file("examples/bizjet.yaml");
    faulty_allocator faulty;
    uint64_t         whole = 0;
    ts_allocator     sound = faulty_allocator_open(&faulty, 0, manner);
    assert_int_equal(whole_check(&sound, file, &whole), TS_OK);
    assert_int_equal(faulty.live_blocks, 0);
    const size_t calls   = faulty.calls;
    const size_t stride  = calls / turns + 1;
    size_t       refused = 0, taken = 0;
    assert_true(calls > 10);
    for (size_t n = 1; n <= calls; n += n < turns / 4 ? 1 : stride) {
        uint64_t           written   = 0;
        const ts_allocator allocator = faulty_allocator_open(&faulty, n, manner);
        const ts_status    status    = whole_check(&allocator, file, &written);
        /* The index of the workings is a help that may be lacking; the answer is then the same. */
        if (status == TS_OK)
            assert_true(written == whole);
        else
            assert_int_equal(status, TS_NO_MEMORY);
        refused += status == TS_NO_MEMORY;
        taken++;
        assert_true(faulty.failed > 0);
        assert_int_equal(faulty.live_blocks, 0);
    }
    assert_true(refused * 100 >= taken * 80);
    free_file(file);
}

static void one_failed_allocation_is_a_clean_error(void **state)
{
    (void)state;
    sweep(FAULTY_ONCE, turns_wanted());
}

static void memory_that_stays_out_is_a_clean_error(void **state)
{
    (void)state;
    sweep(FAULTY_ONWARDS, turns_wanted() / 4);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(one_failed_allocation_is_a_clean_error),
        cmocka_unit_test(memory_that_stays_out_is_a_clean_error),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
