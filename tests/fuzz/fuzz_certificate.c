/* Can any JSON break what verifies an arrangement, or pass for the proof of one? */
#include "fuzz/fuzz.h"

#include "towershaft/arrange.h"

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size)
{
    static ts_study         *study;
    const ts_page_options    page  = {0};
    const ts_arrange_options asked = {.answers = 1};
    size_t                   taken = 0;
    const ts_sink            sink  = {fuzz_take, &taken};
    bool                     holds = true;
    char                    *bytes = fuzz_copy(data, size);
    if (study == NULL)
        study = fuzz_study("examples/trainer.yaml", false);
    if (bytes == NULL || study == NULL) {
        free(bytes);
        return 0;
    }
    const ts_status status =
        ts_arrange_verify_write(study, &asked, bytes, size, "fuzz.json", &page, &holds, &sink);
    require(status == TS_OK || status == TS_NOT_UNDERSTOOD);
    require(status == TS_OK || !holds);
    free(bytes);
    return 0;
}
