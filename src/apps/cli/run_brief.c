/* How is a drive told to those who meet it the first time? */
#include "apps/cli/session.h"
#include "towershaft/brief.h"

#include <string.h>

static bool brief_options(const arguments *given, ts_brief_options *out)
{
    const char *units = "metric";

    *out = (ts_brief_options){.paper   = "A4",
                              .numbers = given->value[OPTION_NUMBERS] != NULL,
                              .key     = given->value[OPTION_KEY] != NULL,
                              .large   = given->value[OPTION_LARGE] != NULL};
    if (!arguments_choice(given, OPTION_PAPER, &out->paper) ||
        !arguments_choice(given, OPTION_UNITS, &units))
        return false;
    out->us     = strcmp(units, "us") == 0;
    out->format = file_ending(given->value[OPTION_OUTPUT]);
    return true;
}

static int write_quiz(ts_study *study, const arguments *given, bool numbers)
{
    collector       collected;
    const ts_sink   sink   = collector_sink(&collected);
    const ts_status status = ts_brief_quiz(study, numbers, &sink);
    const int       code =
        status == TS_OK ? output_deliver(given, &collected) : complain(study, status, true);
    collector_forget(&collected);
    return code;
}

static int write_brief(ts_study *study, const ts_brief_options *brief, const char *path)
{
    collector       collected;
    const ts_sink   sink   = collector_sink(&collected);
    const ts_status status = ts_brief_write(study, brief, &sink);
    const int       code   = status == TS_OK ? file_save(path, collected.bytes, collected.length)
                                             : complain(study, status, false);
    if (code == EXIT_HOLDS)
        printf("Written: %s\n", path);
    collector_forget(&collected);
    return code;
}

int run_brief(const arguments *given)
{
    const bool       json = given->value[OPTION_JSON] != NULL;
    const char      *path = given->value[OPTION_OUTPUT];
    ts_brief_options brief;
    ts_study_options options;

    if (!json && (path == NULL || file_ending(path) == NULL)) {
        fprintf(stderr, "towershaft brief: -o says where: a file such as brief.pdf or brief.html; "
                        "or --json, for the quiz alone\n");
        return EXIT_NOT_UNDERSTOOD;
    }
    if (!brief_options(given, &brief) || !study_options(given, &options))
        return EXIT_NOT_UNDERSTOOD;
    int code        = EXIT_FAULT;
    options.us      = brief.us;
    ts_study *study = session_open(given->operand[0], &options, json, &code);
    if (study == NULL)
        return code;
    code = json ? write_quiz(study, given, brief.numbers) : write_brief(study, &brief, path);
    ts_study_close(study);
    return code;
}
