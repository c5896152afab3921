/* Can any address break what explains a number, completes an address, or sets a value? */
#include "fuzz/fuzz.h"

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size)
{
    static ts_study      *study;
    const ts_page_options page  = {0};
    size_t                taken = 0;
    const ts_sink         sink  = {fuzz_take, &taken};
    char                 *text  = fuzz_text(data, size);
    if (study == NULL)
        study = fuzz_study("examples/trainer.yaml", true);
    if (text == NULL || study == NULL) {
        free(text);
        return 0;
    }
    const ts_status why = ts_study_write_why(study, text, (size & 1) != 0, &page, &sink);
    require(why == TS_OK || why == TS_NOT_UNDERSTOOD);
    require(why != TS_OK || taken > 0);
    const ts_status list = ts_study_write_addresses(study, text, &sink);
    require(list == TS_OK || list == TS_NOT_UNDERSTOOD);
    (void)ts_study_number(study, text);
    free(text);
    return 0;
}
