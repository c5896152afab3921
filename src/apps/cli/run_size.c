/* How wide must the teeth be, which bearings hold, how thick should necks be? */
#include "apps/cli/arguments.h"
#include "apps/cli/session.h"

#include <string.h>

/* Where the changed text goes; NULL: nowhere. */
static const char *target_of(const arguments *given)
{
    if (given->value[OPTION_OUTPUT] != NULL)
        return given->value[OPTION_OUTPUT];
    return given->value[OPTION_WRITE] != NULL ? given->operand[0] : NULL;
}

static int show(const collector *told, const char *target, const ts_size_options *size, bool fits)
{
    static const char *const held[]   = {"mesh", "bearing", "neck"};
    static const char *const values[] = {"widths", "bearings", "diameters"};
    const ts_size_part       part     = size->part;

    const int code = output_send(told);
    if (size->json || code != EXIT_HOLDS)
        return code;
    if (!fits)
        printf("Nothing was written, since not every %s holds.\n", held[part]);
    else if (target == NULL)
        printf("Nothing was written; --write puts the new %s into the file.\n", values[part]);
    else
        printf("Written: %s\n", target);
    return EXIT_HOLDS;
}

static bool part_of(const arguments *given, ts_size_part *part)
{
    const char *chosen = NULL;

    *part = TS_SIZE_TEETH;
    if (!arguments_choice(given, OPTION_CHOOSE, &chosen))
        return false;
    if (chosen != NULL && strcmp(chosen, "bearings") == 0)
        *part = TS_SIZE_BEARINGS;
    if (chosen != NULL && strcmp(chosen, "necks") == 0)
        *part = TS_SIZE_NECKS;
    return true;
}

int run_size(const arguments *given)
{
    ts_page_options  page;
    ts_study_options options;
    const bool       json   = given->value[OPTION_JSON] != NULL;
    const char      *target = target_of(given);
    ts_size_part     part;
    if (!page_options(given, &page) || !study_options(given, &options) || !part_of(given, &part))
        return EXIT_NOT_UNDERSTOOD;
    if (target != NULL && strcmp(target, "-") == 0) {
        fprintf(stderr, "towershaft size: standard input needs -o FILE to be written\n");
        return EXIT_NOT_UNDERSTOOD;
    }
    int code         = EXIT_FAULT;
    options.workings = false;
    ts_study *study  = session_open(given->operand[0], &options, json, &code);
    if (study == NULL)
        return code;
    collector             told, text;
    const ts_sink         sink = collector_sink(&told), file = collector_sink(&text);
    const ts_size_options size   = {.step = given->value[OPTION_STEP], .json = json, .part = part};
    bool                  fits   = false;
    const ts_status       status = ts_size_write(study, &size, &page, &fits, &sink, &file);
    code                         = status == TS_OK ? EXIT_HOLDS : complain(study, status, json);
    if (code == EXIT_HOLDS && fits && target != NULL)
        code = file_save(target, text.bytes, text.length);
    if (code == EXIT_HOLDS)
        code = show(&told, target, &size, fits);
    if (code == EXIT_HOLDS && !fits)
        code = EXIT_DOES_NOT_HOLD;
    if (code == EXIT_HOLDS)
        code = session_verdict(study);
    collector_forget(&told);
    collector_forget(&text);
    ts_study_close(study);
    return code;
}
