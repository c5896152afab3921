/* Can any drive file break what solves, judges and tells it, in any kind of answer?
 *
 * The first byte chooses the answer.
 */
#include "fuzz/fuzz.h"

#include "towershaft/report.h"

static int look(void *context, const char *bytes, size_t length)
{
    (void)context;
    for (size_t i = 0; i + 4 < length; i++)
        require(memcmp(bytes + i, ": nan", 5) != 0 && memcmp(bytes + i, ": inf", 5) != 0);
    return 0;
}

static void tell(ts_study *study, unsigned which)
{
    static const char *const sheets[] = {"csv", "html"};
    const ts_page_options    page     = {.us = (which & 8) != 0, .all = (which & 16) != 0};
    const ts_sink            sink     = {look, NULL};
    if (which % 8 < 4) {
        require(ts_study_write(study, (ts_document)(which % 4), &page, &sink) == TS_OK);
        return;
    }
    const ts_report_options asked  = {.format = sheets[which % 2], .us = page.us};
    const ts_status         status = ts_report_write(study, &asked, &sink);
    require(status == TS_OK || status == TS_NOT_UNDERSTOOD);
}

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size)
{
    const ts_study_options options = {.today = 20000};
    ts_study              *study   = NULL;
    if (size == 0)
        return 0;
    char *bytes = fuzz_copy(data + 1, size - 1);
    if (bytes == NULL || ts_study_open(NULL, &study) != TS_OK)
        return 0;
    const ts_status status = ts_study_read(study, "fuzz.yaml", bytes, size - 1, &options);
    require(status == TS_OK || status == TS_NOT_UNDERSTOOD);
    fuzz_check_messages(study, status);
    if (status == TS_OK)
        tell(study, data[0]);
    ts_study_close(study);
    free(bytes);
    return 0;
}
