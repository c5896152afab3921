/* Which tooth numbers give a ratio? */
#include "apps/cli/session.h"

#include <stdlib.h>

static bool read_answers(const arguments *given, size_t *out)
{
    const char *text = given->value[OPTION_ANSWERS];
    char       *rest;
    if (text == NULL)
        return true;
    const long value = strtol(text, &rest, 10);
    *out             = (size_t)value;
    if (rest != text && *rest == '\0' && value >= 1 && value <= 64)
        return true;
    fprintf(stderr, "towershaft ratio: --answers needs a whole number from 1 to 64, not %s\n",
            text);
    return false;
}

static int answer(const arguments *given, ts_study *study, const ts_ratio_options *wish,
                  const ts_page_options *page)
{
    collector       told;
    const ts_sink   sink   = collector_sink(&told);
    bool            found  = false;
    const ts_status status = ts_ratio_write(study, wish, page, &found, &sink);
    int code = status == TS_OK ? output_deliver(given, &told) : complain(study, status, wish->json);
    if (code == EXIT_HOLDS && !found)
        code = EXIT_DOES_NOT_HOLD;
    collector_forget(&told);
    return code;
}

int run_ratio(const arguments *given)
{
    ts_page_options  page;
    ts_study        *study = NULL;
    ts_ratio_options wish  = {.wanted         = given->operand[0],
                              .tolerance      = given->value[OPTION_TOLERANCE],
                              .teeth          = given->value[OPTION_TEETH],
                              .train          = given->value[OPTION_TRAIN],
                              .centre         = given->value[OPTION_CENTRE],
                              .module         = given->value[OPTION_MODULE],
                              .pressure_angle = given->value[OPTION_PRESSURE_ANGLE],
                              .sharing        = given->value[OPTION_SHARING] != NULL,
                              .json           = given->value[OPTION_JSON] != NULL};
    if (!page_options(given, &page) || !read_answers(given, &wish.answers))
        return EXIT_NOT_UNDERSTOOD;
    if (ts_study_open(NULL, &study) != TS_OK)
        return complain(NULL, TS_NO_MEMORY, false);
    const int code = answer(given, study, &wish, &page);
    ts_study_close(study);
    return code;
}
