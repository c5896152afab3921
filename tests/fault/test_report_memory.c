/* Is a report or a sheet for which memory runs out refused, and never a page with a hole in it?
 *
 * Requests of the study's allocator fail once, in turn, while a report is written in both formats,
 * and while the sheet of a pad is written, its drive read before.
 * Pango, cairo and GLib take their memory from the C library and are not part of this.
 *
 * ctest: timeout=1200
 */
#include "support/case_count.h"
#include "support/close.h"
#include "support/faulty_allocator.h"
#include "support/read_file.h"

#include "towershaft/towershaft.h"

enum { TURNS = TS_CASES(20, 2) };

/* FNV-1a, 64 bit. */
static int swallow(void *context, const char *bytes, size_t length)
{
    uint64_t *sum = context;
    for (size_t i = 0; i < length; i++)
        *sum = (*sum ^ (unsigned char)bytes[i]) * 1099511628211u;
    return 0;
}

static ts_status report(const ts_allocator *allocator, ts_text file, const char *format,
                        uint64_t *written)
{
    const ts_study_options  read  = {.today = 20000};
    const ts_report_options write = {.format = format};
    const ts_sink           sink  = {swallow, written};
    ts_study               *study = NULL;
    ts_status               status;
    *written = 0;
    status   = ts_study_open(allocator, &study);
    if (status == TS_OK)
        status = ts_study_read(study, "drive.yaml", file.at, file.length, &read);
    if (status == TS_OK)
        status = ts_report_write(study, &write, &sink);
    ts_study_close(study);
    return status;
}

static void sweep(const char *format)
{
    const ts_text    file = read_file("examples/trainer.yaml");
    faulty_allocator faulty;
    uint64_t         whole = 0, written = 0;
    ts_allocator     sound = faulty_allocator_open(&faulty, 0, FAULTY_ONCE);
    assert_int_equal(report(&sound, file, format, &whole), TS_OK);
    const size_t calls  = faulty.calls;
    const size_t stride = calls / TURNS + 1;
    assert_true(calls > TURNS);
    for (size_t n = 1; n <= calls; n += stride) {
        const ts_allocator allocator = faulty_allocator_open(&faulty, n, FAULTY_ONCE);
        const ts_status    status    = report(&allocator, file, format, &written);
        assert_true(faulty.failed > 0);
        assert_int_equal(faulty.live_blocks, 0);
        if (status == TS_OK)
            assert_true(written == whole);
        else
            assert_int_equal(status, TS_NO_MEMORY);
    }
    free_file(file);
}

/* read: calls of the allocator until the drive was read. */
static ts_status sheet(faulty_allocator *faulty, size_t fails, ts_text file, const char *format,
                       uint64_t *written, size_t *read)
{
    const ts_allocator     allocator = faulty_allocator_open(faulty, fails, FAULTY_ONCE);
    const ts_study_options options   = {.today = 20000};
    const ts_sheet_options write     = {.accessory = "fuel pump", .format = format};
    const ts_page_options  page      = {.columns = 100};
    const ts_sink          sink      = {swallow, written};
    ts_study              *study     = NULL;
    *written                         = 0;
    assert_int_equal(ts_study_open(&allocator, &study), TS_OK);
    assert_int_equal(ts_study_read(study, "drive.yaml", file.at, file.length, &options), TS_OK);
    *read                  = faulty->calls;
    const ts_status status = ts_sheet_write_to(study, &write, &page, &sink);
    ts_study_close(study);
    return status;
}

static void sweep_sheet(const char *format)
{
    const ts_text    file = read_file("examples/trainer.yaml");
    faulty_allocator faulty;
    uint64_t         whole = 0, written = 0;
    size_t           read = 0, again = 0;
    assert_int_equal(sheet(&faulty, 0, file, format, &whole, &read), TS_OK);
    const size_t calls  = faulty.calls;
    const size_t stride = (calls - read) / (2 * TURNS) + 1;
    assert_true(calls > read);
    for (size_t n = read + 1; n <= calls; n += stride) {
        const ts_status status = sheet(&faulty, n, file, format, &written, &again);
        assert_int_equal(again, read);
        assert_true(faulty.failed > 0);
        assert_int_equal(faulty.live_blocks, 0);
        assert_true(status == TS_OK ? written == whole : status == TS_NO_MEMORY);
    }
    free_file(file);
}

static void sheets_are_whole_or_refused(void **state)
{
    (void)state;
    sweep_sheet(NULL);
    sweep_sheet("json");
    sweep_sheet("html");
}

static void pages_on_paper_are_whole_or_refused(void **state)
{
    (void)state;
    sweep("pdf");
}

static void pages_for_a_browser_are_whole_or_refused(void **state)
{
    (void)state;
    sweep("html");
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(pages_on_paper_are_whole_or_refused),
        cmocka_unit_test(pages_for_a_browser_are_whole_or_refused),
        cmocka_unit_test(sheets_are_whole_or_refused),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
