/* How does the whole answer get on paper? */
#include "apps/cli/arguments.h"
#include "apps/cli/session.h"

#include <string.h>

/* "pdf" of "out/report.pdf"; NULL when the name has no ending. */
static const char *ending_of(const char *path)
{
    const char *slash = strrchr(path, '/');
    const char *dot   = strrchr(slash != NULL ? slash : path, '.');
    return dot != NULL && dot[1] != '\0' ? dot + 1 : NULL;
}

static bool report_options(const arguments *given, ts_report_options *out)
{
    const char *units = "metric";
    *out              = (ts_report_options){.format = NULL, .paper = "A4"};
    if (!arguments_choice(given, OPTION_PAPER, &out->paper) ||
        !arguments_choice(given, OPTION_WORKINGS, &out->workings) ||
        !arguments_choice(given, OPTION_UNITS, &units))
        return false;
    out->us     = strcmp(units, "us") == 0;
    out->format = ending_of(given->value[OPTION_OUTPUT]);
    if (out->format == NULL) {
        fprintf(stderr, "towershaft report: %s: expected an ending .pdf or .html\n",
                given->value[OPTION_OUTPUT]);
        return false;
    }
    return true;
}

static int write_report(ts_study *study, const ts_report_options *options, const char *path,
                        bool json)
{
    collector       collected;
    const ts_sink   sink   = collector_sink(&collected);
    const ts_status status = ts_report_write(study, options, &sink);
    int             code   = status == TS_OK ? file_save(path, collected.bytes, collected.length)
                                             : complain(study, status, json);
    collector_forget(&collected);
    if (code != EXIT_HOLDS)
        return code;
    if (!json) {
        printf("Written: %s\n", path);
        return EXIT_HOLDS;
    }
    const ts_act_field fields[] = {{"written", path}};
    const ts_sink      told     = collector_sink(&collected);
    code = ts_act_write("report", fields, 1, &told) == TS_OK ? EXIT_HOLDS : EXIT_FAULT;
    fwrite(collected.bytes, 1, collected.length, stdout);
    collector_forget(&collected);
    return code;
}

int run_report(const arguments *given)
{
    ts_report_options report;
    ts_study_options  options;
    const bool        json = given->value[OPTION_JSON] != NULL;
    if (given->value[OPTION_OUTPUT] == NULL || *given->value[OPTION_OUTPUT] == '\0') {
        fprintf(stderr, "towershaft report: -o says where: a file such as report.pdf or "
                        "report.html\n");
        return EXIT_NOT_UNDERSTOOD;
    }
    if (!report_options(given, &report) || !study_options(given, &options))
        return EXIT_NOT_UNDERSTOOD;
    int code         = EXIT_FAULT;
    options.workings = true; /* their sources are a chapter */
    options.us       = report.us;
    ts_study *study  = session_open(given->operand[0], &options, json, &code);
    if (study == NULL)
        return code;
    code = write_report(study, &report, given->value[OPTION_OUTPUT], json);
    ts_study_close(study);
    return code;
}
