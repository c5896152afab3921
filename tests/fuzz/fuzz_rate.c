/* Can any rate file break what rates it, or put a number into its answer that is none? */
#include "fuzz/fuzz.h"

#include "towershaft/rate.h"

/* JSON has neither NaN nor infinities, and neither has an answer: none may be written.  What stands
 * in quotes is words, of the file too. */
static int look(void *context, const char *bytes, size_t length)
{
    bool quoted = false;

    (void)context;
    for (size_t i = 0; i < length; i++) {
        if (bytes[i] == '"')
            quoted = !quoted;
        else if (bytes[i] == '\\')
            i++;
        else if (!quoted && i + 3 <= length)
            require(memcmp(bytes + i, "nan", 3) != 0 && memcmp(bytes + i, "inf", 3) != 0);
    }
    return 0;
}

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size)
{
    const ts_study_options options = {.today = 20000, .file = TS_WANT_RATE};
    const ts_page_options  page    = {0};
    const ts_sink          sink    = {look, NULL};
    size_t                 taken   = 0;
    const ts_sink          any     = {fuzz_take, &taken};
    ts_study              *study   = NULL;
    char                  *bytes   = fuzz_copy(data, size);
    if (bytes == NULL || ts_study_open(NULL, &study) != TS_OK)
        return 0;
    const ts_status status = ts_study_read(study, "fuzz.yaml", bytes, size, &options);
    require(status == TS_OK || status == TS_NOT_UNDERSTOOD);
    fuzz_check_messages(study, status);
    if (status == TS_OK) {
        require(ts_rate_write(study, true, &page, &sink) == TS_OK);
        require(ts_rate_write(study, false, &page, &any) == TS_OK);
    }
    ts_study_close(study);
    free(bytes);
    return 0;
}
