/* How wide is the page, does it take colour, and what day is it? */
#include "apps/cli/terminal.h"

#include "apps/cli/arguments.h"

#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/ioctl.h>
#include <time.h>
#include <unistd.h>

#define COLUMNS_WITHOUT_TERMINAL 110

int terminal_columns(int stream, int otherwise)
{
    struct winsize size;
    if (ioctl(stream, TIOCGWINSZ, &size) == 0 && size.ws_col >= 40)
        return size.ws_col;
    return otherwise;
}

/* One word of a paragraph, on this line or the next; returns the column behind it. */
static int print_word(const char *word, int length, int column, int indent, int columns)
{
    if (column > indent && column + 1 + length > columns) {
        printf("\n%*s", indent, "");
        column = indent;
    } else if (column > indent) {
        putchar(' ');
        column++;
    }
    printf("%.*s", length, word);
    return column + length;
}

/* A line that stands as it is; returns what follows it. */
static const char *print_line(const char *text, int indent)
{
    const size_t length = strcspn(text, "\n");
    const bool   more   = text[length] != '\0' && text[length + 1] != '\0';
    printf("%.*s", (int)length, text);
    if (more)
        printf("\n%*s", indent, "");
    return text + length + (text[length] != '\0');
}

void print_paragraphs(const char *text, int indent, int columns)
{
    int column = indent;
    while (*text != '\0') {
        if (*text == ' ' && column == indent) {
            text = print_line(text, indent);
            continue;
        }
        const size_t length = strcspn(text, " \n");
        column              = print_word(text, (int)length, column, indent, columns);
        text += length;
        if (text[0] == '\n' && (text[1] == '\n' || text[1] == ' ')) {
            printf("\n%*s", indent, "");
            column = indent;
            text++;
        } else {
            text += strspn(text, column > indent ? " \n" : "\n");
        }
    }
    printf("\n");
}

bool page_options(const arguments *given, ts_page_options *out)
{
    const char *units = "metric", *colour = "auto";
    if (!arguments_choice(given, OPTION_UNITS, &units) ||
        !arguments_choice(given, OPTION_COLOUR, &colour))
        return false;
    const bool terminal =
        isatty(STDOUT_FILENO) && given->value[OPTION_OUTPUT] == NULL && getenv("NO_COLOR") == NULL;
    *out = (ts_page_options){
        .us      = strcmp(units, "us") == 0,
        .colour  = strcmp(colour, "always") == 0 || (strcmp(colour, "auto") == 0 && terminal),
        .columns = terminal_columns(STDOUT_FILENO, COLUMNS_WITHOUT_TERMINAL),
        .all     = given->value[OPTION_ALL] != NULL,
    };
    return true;
}

/* Days since 1970-01-01 of a proleptic Gregorian date (the count of days before March of a year
 * that begins in March; a closed form, checked against the calendar in the tests). */
static int32_t day_of(int year, int month, int day)
{
    const int shifted = month > 2 ? year : year - 1;
    const int era     = (shifted >= 0 ? shifted : shifted - 399) / 400;
    const int in_era  = shifted - era * 400;
    const int of_year = (153 * (month + (month > 2 ? -3 : 9)) + 2) / 5 + day - 1;
    return era * 146097 + in_era * 365 + in_era / 4 - in_era / 100 + of_year - 719468;
}

static bool today_given(const char *text, int32_t *day)
{
    int year = 0, month = 0, date = 0, taken = 0;
    /* NOLINTNEXTLINE(cert-err34-c): four digits at most, so nothing can overflow */
    bool read = sscanf(text, "%4d-%2d-%2d%n", &year, &month, &date, &taken) == 3 &&
                text[taken] == '\0' && taken == 10 && month >= 1 && month <= 12 && date >= 1 &&
                date <= 31;
    if (read)
        *day = day_of(year, month, date);
    else
        fprintf(stderr, "towershaft: --today %s: expected a date such as 2026-06-30\n", text);
    return read;
}

bool study_options(const arguments *given, ts_study_options *out)
{
    /* Machines read metric units, whatever people are shown. */
    const bool machine = given->value[OPTION_JSON] != NULL || given->value[OPTION_SARIF] != NULL ||
                         given->value[OPTION_JUNIT] != NULL;
    const char *units = "metric";
    if (!arguments_choice(given, OPTION_UNITS, &units))
        return false;
    *out = (ts_study_options){.workings = given->value[OPTION_JSON] != NULL,
                              .us       = !machine && strcmp(units, "us") == 0};
    if (given->value[OPTION_TODAY] != NULL)
        return today_given(given->value[OPTION_TODAY], &out->today);
    const time_t now = time(NULL);
    struct tm    utc;
    if (gmtime_r(&now, &utc) == NULL)
        out->today = INT32_MIN;
    else
        out->today = day_of(utc.tm_year + 1900, utc.tm_mon + 1, utc.tm_mday);
    return true;
}
