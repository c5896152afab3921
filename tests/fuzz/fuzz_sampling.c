/* Can any study file break what reads it and finds what it varies and watches in a drive? */
#include "fuzz/fuzz.h"

#include "towershaft/sampling.h"

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size)
{
    static char            drive[65536];
    static size_t          length;
    const ts_study_options options  = {.today = 20000};
    ts_sampling           *sampling = NULL;
    char                  *bytes    = fuzz_copy(data, size);
    if (length == 0) {
        FILE *file = fopen("examples/trainer.yaml", "rb");
        if (file != NULL) {
            length = fread(drive, 1, sizeof drive, file);
            fclose(file);
        }
    }
    if (bytes == NULL || length == 0)
        return 0;
    ts_status status = ts_sampling_open(NULL, "fuzz.yaml", bytes, size, &sampling);
    require(status == TS_OK || status == TS_NOT_UNDERSTOOD);
    if (status == TS_OK)
        status = ts_sampling_take(sampling, "trainer.yaml", drive, length, &options);
    require(status == TS_OK || status == TS_NOT_UNDERSTOOD);
    if (status == TS_NOT_UNDERSTOOD && sampling != NULL)
        fuzz_check_messages(ts_sampling_messages(sampling), status);
    if (status == TS_OK)
        require(ts_sampling_columns(sampling) > 0 && ts_sampling_count(sampling) > 0);
    ts_sampling_close(sampling);
    free(bytes);
    return 0;
}
