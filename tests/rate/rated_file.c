/* rate/rated_file.c: how does a test come to a rate file? */
#include "rate/rated_file.h"

#include <stdio.h>
#include <string.h>

ts_study *rated_text(const char *text)
{
    const ts_study_options options = {.file = TS_WANT_RATE};
    ts_study              *study   = NULL;
    assert_int_equal(ts_study_open(NULL, &study), TS_OK);
    const ts_status status = ts_study_read(study, "rate.yaml", text, strlen(text), &options);
    if (status != TS_OK)
        for (size_t i = 0; i < ts_study_message_count(study); i++)
            print_error("%s\n", ts_study_message(study, i).says);
    assert_int_equal(status, TS_OK);
    return study;
}

ts_study *rated_element(const char *kind, const char *keys)
{
    char      text[4096];
    const int length = snprintf(text, sizeof text,
                                "towershaft rate: 1\ntitle: test\n%s:\n  one: {%s}\n", kind, keys);
    assert_true(length > 0 && (size_t)length < sizeof text);
    return rated_text(text);
}

const ts_finding_view *finding_of(ts_study *study, const char *rule)
{
    static ts_finding_view view;
    for (size_t i = 0; i < ts_study_finding_count(study); i++) {
        view = ts_study_finding(study, i);
        if (strcmp(view.rule, rule) == 0)
            return &view;
    }
    return NULL;
}
