/* How did the user ask for a picture to look? */
#include "apps/cli/picture_wish.h"

#include <stdio.h>
#include <stdlib.h>
#include <string.h>

const char *picture_ending(const char *path)
{
    const char *slash = strrchr(path, '/');
    const char *dot   = strrchr(slash != NULL ? slash : path, '.');
    return dot != NULL && dot[1] != '\0' ? dot + 1 : NULL;
}

const char *paper_ending(const char *path)
{
    const char *ending = path != NULL ? picture_ending(path) : NULL;
    return ending != NULL && (strcmp(ending, "pdf") == 0 || strcmp(ending, "html") == 0) ? ending
                                                                                         : NULL;
}

bool picture_wish(const arguments *given, ts_figure_options *out)
{
    const char *units = "metric";
    out->figure       = "behind";
    out->ground       = "light";
    out->format       = NULL;
    if (!arguments_choice(given, OPTION_FIGURE, &out->figure) ||
        !arguments_choice(given, OPTION_FORMAT, &out->format) ||
        !arguments_choice(given, OPTION_GROUND, &out->ground) ||
        !arguments_choice(given, OPTION_UNITS, &units))
        return false;
    out->seizures  = given->value[OPTION_SEIZURES] != NULL;
    out->us        = strcmp(units, "us") == 0;
    out->condition = given->value[OPTION_CONDITION];
    out->at        = given->value[OPTION_AT];
    out->scale     = 0.0;
    if (given->value[OPTION_SCALE] != NULL) {
        char *end  = NULL;
        out->scale = strtod(given->value[OPTION_SCALE], &end);
        if (*end != '\0' || !(out->scale >= 0.25 && out->scale <= 8.0)) {
            fprintf(stderr, "towershaft: --scale %s: expected a number from 0.25 to 8\n",
                    given->value[OPTION_SCALE]);
            return false;
        }
    }
    return true;
}

bool picture_beside(const arguments *given, const char *command, ts_figure_options *out)
{
    const char *path = given->value[OPTION_PICTURE];

    if (!picture_wish(given, out))
        return false;
    out->format = path != NULL ? picture_ending(path) : NULL;
    if (path == NULL || out->format != NULL)
        return true;
    fprintf(stderr, "towershaft %s: --picture %s: expected an ending .svg, .pdf or .png\n", command,
            path);
    return false;
}
