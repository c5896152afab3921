/* What do options that take a number or a time mean, and does somebody want to stop? */
#include "apps/cli/option_value.h"

#include <signal.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <time.h>

bool option_count(const arguments *given, const char *command, option_id option, long most,
                  size_t *out)
{
    const char *text = given->value[option];
    char       *rest;

    if (text == NULL)
        return true;
    const long value = strtol(text, &rest, 10);
    if (rest != text && *rest == '\0' && value >= 1 && value <= most) {
        *out = (size_t)value;
        return true;
    }
    fprintf(stderr, "towershaft %s: %s needs a whole number from 1 to %ld, not %s\n", command,
            option_rows[option].word, most, text);
    return false;
}

bool option_time(const arguments *given, const char *command, double *seconds)
{
    const char *text = given->value[OPTION_WITHIN];
    char       *rest;

    if (text == NULL)
        return true;
    const double value = strtod(text, &rest);
    rest += strspn(rest, " ");
    const double unit = strcmp(rest, "") == 0 || strcmp(rest, "s") == 0 ? 1.0
                        : strcmp(rest, "min") == 0                      ? 60.0
                                                                        : 0.0;
    *seconds          = value * unit;
    if (rest != text && *seconds > 0.0 && *seconds <= OPTION_TIME_MOST)
        return true;
    fprintf(stderr, "towershaft %s: --within needs a time such as 30 s or 5 min, not %s\n", command,
            text);
    return false;
}

double clock_now(void)
{
    struct timespec t;
    (void)clock_gettime(CLOCK_MONOTONIC, &t);
    return (double)t.tv_sec + 1e-9 * (double)t.tv_nsec;
}

static volatile sig_atomic_t interrupted;

static void keep(int signal_number)
{
    (void)signal_number;
    interrupted = 1;
}

void interrupt_keep(void)
{
    (void)signal(SIGINT, keep);
    (void)signal(SIGTERM, keep);
}

bool interrupt_came(void)
{
    return interrupted != 0;
}
