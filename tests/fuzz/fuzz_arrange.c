/* Can any drive file with an `arrange` section break what reads it, sets the problem up, tabulates
 * its widths and begins to search?  A search is ended when it first asks.
 */
#include "fuzz/fuzz.h"

#include "towershaft/arrange.h"

static bool ended(void *context)
{
    (void)context;
    return true;
}

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size)
{
    const ts_study_options   options = {.today = 20000};
    const ts_page_options    page    = {0};
    const ts_arrange_options asked   = {
          .answers = 1, .memory = 64 << 20, .stop = ended, .json = true};
    ts_study     *study = NULL;
    ts_arranged   how;
    size_t        taken = 0;
    const ts_sink sink  = {fuzz_take, &taken};
    char         *bytes = fuzz_copy(data, size);
    if (bytes == NULL || ts_study_open(NULL, &study) != TS_OK)
        return 0;
    ts_status status = ts_study_read(study, "fuzz.yaml", bytes, size, &options);
    require(status == TS_OK || status == TS_NOT_UNDERSTOOD);
    if (status == TS_OK)
        status = ts_arrange_write(study, &asked, &page, &how, &sink, NULL);
    require(status == TS_OK || status == TS_NOT_UNDERSTOOD);
    fuzz_check_messages(study, status);
    ts_study_close(study);
    free(bytes);
    return 0;
}
