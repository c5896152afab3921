/* How does the whole answer get on paper? */
#include "apps/cli/arguments.h"
#include "apps/cli/session.h"

#include <stdlib.h>
#include <string.h>

static bool report_options(const arguments *given, ts_report_options *out)
{
    const char *units = "metric";
    *out              = (ts_report_options){.format = NULL, .paper = "A4"};
    if (!arguments_choice(given, OPTION_PAPER, &out->paper) ||
        !arguments_choice(given, OPTION_WORKINGS, &out->workings) ||
        !arguments_choice(given, OPTION_SHEETS, &out->sheets) ||
        !arguments_choice(given, OPTION_UNITS, &units))
        return false;
    out->seizures = given->value[OPTION_SEIZURES] != NULL;
    out->us       = strcmp(units, "us") == 0;
    out->format   = file_ending(given->value[OPTION_OUTPUT]);
    if (out->format == NULL) {
        fprintf(stderr, "towershaft report: %s: expected an ending .pdf, .html, .csv or .xlsx\n",
                given->value[OPTION_OUTPUT]);
        return false;
    }
    return true;
}

/* "out/report.recheck" and an ending, of "out/report.pdf"; NULL without memory. */
static char *beside(const char *path, const char *ending)
{
    const size_t stem = (size_t)(file_ending(path) - 1 - path);
    const size_t room = stem + sizeof ".recheck" + strlen(ending);
    char        *name = malloc(room);
    if (name != NULL)
        snprintf(name, room, "%.*s.recheck%s", (int)stem, path, ending);
    return name;
}

static ts_status write_script(ts_study *study, const ts_sink *sink)
{
    (void)study;
    return ts_recheck_script_write(sink);
}

static int write_beside(ts_study *study, const char *path, const char *ending,
                        ts_status (*write)(ts_study *study, const ts_sink *sink), bool json)
{
    collector       collected;
    const ts_sink   sink   = collector_sink(&collected);
    char           *name   = beside(path, ending);
    const ts_status status = name != NULL ? write(study, &sink) : TS_NO_MEMORY;
    const int       code   = status == TS_OK ? file_save(name, collected.bytes, collected.length)
                                             : complain(study, status, json);
    if (code == EXIT_HOLDS && !json)
        printf("Written: %s\n", name);
    collector_forget(&collected);
    free(name);
    return code;
}

static int write_recheck(ts_study *study, const char *path, bool json)
{
    const int code = write_beside(study, path, ".json", ts_recheck_write, json);
    return code == EXIT_HOLDS ? write_beside(study, path, ".py", write_script, json) : code;
}

static int write_report(ts_study *study, const ts_report_options *options, const char *path,
                        bool json)
{
    collector       collected;
    const ts_sink   sink   = collector_sink(&collected);
    const ts_status status = ts_report_write(study, options, &sink);
    const int       code   = status == TS_OK ? file_save(path, collected.bytes, collected.length)
                                             : complain(study, status, json);
    if (code == EXIT_HOLDS && !json)
        printf("Written: %s\n", path);
    collector_forget(&collected);
    return code;
}

static int tell_written(const char *path)
{
    collector          collected;
    const ts_act_field fields[] = {{"written", path}};
    const ts_sink      told     = collector_sink(&collected);
    const int code = ts_act_write("report", fields, 1, &told) == TS_OK ? EXIT_HOLDS : EXIT_FAULT;
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
        fprintf(stderr, "towershaft report: -o says where: a file such as report.pdf, "
                        "report.html or results.csv\n");
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
    const char *path = given->value[OPTION_OUTPUT];
    code             = write_report(study, &report, path, json);
    if (code == EXIT_HOLDS && given->value[OPTION_RECHECK] != NULL)
        code = write_recheck(study, path, json);
    if (code == EXIT_HOLDS && json)
        code = tell_written(path);
    ts_study_close(study);
    return code;
}
