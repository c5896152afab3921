/* support/designed_neck.h: an invented engine with a neck of one's own. */
#ifndef TS_SUPPORT_DESIGNED_NECK_H
#define TS_SUPPORT_DESIGNED_NECK_H

#include "support/read_file.h"

#include "study/study.h"

#include <stdio.h>
#include <string.h>

/* The trainer with a designed neck in place of the band of its starter-generator. */
static inline ts_study *study_with_neck(const char *neck)
{
    const ts_text          file    = read_file("examples/trainer.yaml");
    const ts_study_options options = {.today = 20000};
    const char            *band    = "{breaks: 60..74 N.m}";
    const char            *at      = strstr(file.at, band);
    static char            text[65536];
    ts_study              *study;

    assert_non_null(at);
    const int length = snprintf(text, sizeof text, "%.*s%s%s", (int)(at - file.at), file.at, neck,
                                at + strlen(band));
    assert_true(length > 0 && (size_t)length < sizeof text);
    assert_int_equal(ts_study_open(NULL, &study), TS_OK);
    assert_int_equal(ts_study_read(study, "designed", text, (size_t)length, &options), TS_OK);
    free_file(file);
    return study;
}

#endif
