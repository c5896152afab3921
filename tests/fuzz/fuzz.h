/* fuzz/fuzz.h: what every target needs: a copy of just its input, and a promise that is kept. */
#ifndef TS_TESTS_FUZZ_H
#define TS_TESTS_FUZZ_H

#include "towershaft/study.h"

#include <stdio.h>
#include <stdlib.h>
#include <string.h>

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size);

static inline void require(bool condition)
{
    if (!condition)
        abort();
}

/* Of just this size, so that a byte read past the end is noticed; NULL: no memory. */
static inline char *fuzz_copy(const uint8_t *data, size_t size)
{
    char *bytes = malloc(size > 0 ? size : 1);
    if (bytes != NULL && size > 0)
        memcpy(bytes, data, size);
    return bytes;
}

/* The same with a zero behind it, and none before it. */
static inline char *fuzz_text(const uint8_t *data, size_t size)
{
    const uint8_t *end    = memchr(data, 0, size);
    const size_t   length = end != NULL ? (size_t)(end - data) : size;
    char          *text   = malloc(length + 1);
    if (text != NULL) {
        memcpy(text, data, length);
        text[length] = '\0';
    }
    return text;
}

/* A sink that holds what it gets to the promises of every answer: no number that is none. */
static inline int fuzz_take(void *context, const char *bytes, size_t length)
{
    size_t *taken = context;
    *taken += length;
    require(length == 0 || bytes != NULL);
    return 0;
}

/* Messages have a place and words, and there is one where something was not understood. */
static inline void fuzz_check_messages(const ts_study *study, ts_status status)
{
    if (status == TS_NOT_UNDERSTOOD)
        require(ts_study_message_count(study) > 0);
    for (size_t i = 0; i < ts_study_message_count(study); i++) {
        const ts_message one = ts_study_message(study, i);
        require(one.code[0] != '\0' && one.says[0] != '\0');
    }
}

/* A drive of the examples, solved once for all inputs; NULL: the tree is not there. */
static inline ts_study *fuzz_study(const char *path, bool workings)
{
    static char bytes[65536];
    FILE       *file  = fopen(path, "rb");
    ts_study   *study = NULL;
    if (file == NULL)
        return NULL;
    const size_t length = fread(bytes, 1, sizeof bytes, file);
    fclose(file);
    const ts_study_options options = {.today = 20000, .workings = workings};
    require(ts_study_open(NULL, &study) == TS_OK);
    require(ts_study_read(study, path, bytes, length, &options) == TS_OK);
    return study;
}

#endif
