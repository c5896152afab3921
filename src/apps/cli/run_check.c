/* Does the drive hold? */
#include "apps/cli/session.h"

static bool chosen_document(const arguments *given, ts_document *out)
{
    const option_id   options[]   = {OPTION_JSON, OPTION_SARIF, OPTION_JUNIT};
    const ts_document documents[] = {TS_DOCUMENT_JSON, TS_DOCUMENT_SARIF, TS_DOCUMENT_JUNIT};
    int               asked       = 0;
    *out                          = TS_DOCUMENT_PAGE;
    for (int i = 0; i < 3; i++) {
        if (given->value[options[i]] == NULL)
            continue;
        *out = documents[i];
        asked++;
    }
    if (asked > 1)
        fprintf(stderr, "towershaft check: only one of --json, --sarif, --junit\n");
    return asked <= 1;
}

int run_check(const arguments *given)
{
    ts_document      document;
    ts_page_options  page;
    ts_study_options options;
    if (!chosen_document(given, &document) || !page_options(given, &page) ||
        !study_options(given, &options))
        return EXIT_NOT_UNDERSTOOD;
    int       code = EXIT_FAULT;
    ts_study *study =
        session_open(given->operand[0], &options, document == TS_DOCUMENT_JSON, &code);
    if (study == NULL)
        return code;
    collector       collected;
    const ts_sink   sink   = collector_sink(&collected);
    const ts_status status = ts_study_write(study, document, &page, &sink);
    code = status == TS_OK ? output_deliver(given, &collected) : complain(study, status, false);
    if (code == EXIT_HOLDS)
        code = session_verdict(study);
    collector_forget(&collected);
    ts_study_close(study);
    return code;
}
