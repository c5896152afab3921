/* Can any order of calls break the library?
 *
 * Each byte is a call on one of two studies: opened, read, read with something else, asked before
 * and after, closed and opened again.  Texts of addresses come from the bytes that follow.
 */
#include "fuzz/fuzz.h"

#include "towershaft/figure.h"
#include "towershaft/lines.h"
#include "towershaft/oil.h"

static const char small[] = "towershaft: 1\ntitle: x\n";

typedef struct players {
    ts_study *study[2];
    char      drive[65536];
    size_t    length;
} players;

static void ask(ts_study *study, unsigned what, const char *text)
{
    const ts_page_options page  = {.columns = (int)(what * 7)};
    size_t                taken = 0;
    const ts_sink         sink  = {fuzz_take, &taken};
    switch (what % 8) {
    case 0:
        (void)ts_study_verdict(study);
        break;
    case 1:
        (void)ts_study_write(study, (ts_document)(what % 4), &page, &sink);
        break;
    case 2:
        (void)ts_study_write_why(study, text, (what & 32) != 0, &page, &sink);
        break;
    case 3:
        (void)ts_study_number(study, text);
        break;
    case 4:
        for (size_t i = 0; i < ts_study_finding_count(study); i += 7)
            require(ts_study_finding(study, i).rule != NULL);
        break;
    case 5:
        (void)ts_study_write_messages(study, (what & 32) != 0, (int)what, &sink);
        break;
    case 6:
        (void)ts_study_line(study, what);
        (void)ts_study_bearing(study, what, what);
        (void)ts_study_bearing_set_life(study);
        break;
    default:
        (void)ts_study_write_addresses(study, text, &sink);
        break;
    }
}

static void play(players *it, unsigned call, const char *text)
{
    const ts_study_options options = {.today = 20000, .workings = (call & 64) != 0};
    ts_study             **one     = &it->study[call & 1];
    const ts_page_options  page    = {0};
    size_t                 taken   = 0;
    const ts_sink          sink    = {fuzz_take, &taken};
    switch (call / 2 % 8) {
    case 0:
        ts_study_close(*one);
        *one = NULL;
        require(ts_study_open(NULL, one) == TS_OK);
        break;
    case 1:
        require(ts_study_read(*one, "a.yaml", it->drive, it->length, &options) == TS_OK ||
                ts_study_message_count(*one) > 0);
        break;
    case 2:
        (void)ts_study_read(*one, "b.yaml", small, sizeof small - 1, &options);
        break;
    case 3:
        (void)ts_compare_write(it->study[0], it->study[1], (call & 32) != 0, &page, &sink);
        break;
    case 4:
        (void)ts_study_set_bytes(*one, "a.yaml", it->drive, it->length, text, "12", &sink);
        break;
    default:
        ask(*one, call, text);
        break;
    }
}

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size)
{
    static players it;
    if (it.length == 0) {
        FILE *file = fopen("examples/trainer.yaml", "rb");
        if (file == NULL)
            return 0;
        it.length = fread(it.drive, 1, sizeof it.drive, file);
        fclose(file);
    }
    char *text = fuzz_text(data, size);
    if (text == NULL)
        return 0;
    for (int i = 0; i < 2; i++)
        require(ts_study_open(NULL, &it.study[i]) == TS_OK);
    for (size_t i = 0; i < size && i < 24; i++)
        play(&it, data[i], i < strlen(text) ? text + i : "");
    for (int i = 0; i < 2; i++) {
        ts_study_close(it.study[i]);
        it.study[i] = NULL;
    }
    free(text);
    return 0;
}
