/* Between which torques do the necks break, and how likely too early or too late? */
#include "apps/cli/session.h"
#include "towershaft/necks.h"

#include <stdio.h>
#include <stdlib.h>

static bool read_count(const arguments *given, option_id option, long most, size_t *out)
{
    const char *text = given->value[option];
    char       *rest;

    if (text == NULL)
        return true;
    const long value = strtol(text, &rest, 10);
    *out             = (size_t)value;
    if (rest != text && *rest == '\0' && value >= 1 && value <= most)
        return true;
    fprintf(stderr, "towershaft necks: %s needs a whole number from 1 to %ld, not %s\n",
            option_rows[option].word, most, text);
    return false;
}

static ts_status necks(const session_asked *asked, int *exit_code)
{
    bool             computed = false;
    ts_necks_options what     = {.json = asked->json};

    if (!read_count(asked->given, OPTION_SAMPLES, 20000000, &what.samples) ||
        !read_count(asked->given, OPTION_THREADS, 64, &what.threads)) {
        *exit_code = EXIT_NOT_UNDERSTOOD;
        return TS_OK;
    }
    const ts_status status =
        ts_necks_write(asked->study, &what, asked->page, &computed, asked->sink);
    *exit_code = computed ? EXIT_HOLDS : EXIT_NOT_UNDERSTOOD;
    return status;
}

int run_necks(const arguments *given)
{
    return session_answer(given, TS_WANT_DRIVE, necks);
}
