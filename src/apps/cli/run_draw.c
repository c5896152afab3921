/* What does it look like? */
#include "apps/cli/arguments.h"
#include "apps/cli/session.h"

#include <stdlib.h>
#include <string.h>
#include <sys/stat.h>

/* "svg" of "out/face.svg"; NULL when the name has no ending. */
static const char *ending_of(const char *path)
{
    const char *slash = strrchr(path, '/');
    const char *dot   = strrchr(slash != NULL ? slash : path, '.');
    return dot != NULL && dot[1] != '\0' ? dot + 1 : NULL;
}

static bool is_folder(const char *path)
{
    struct stat about;
    return path[strlen(path) - 1] == '/' || (stat(path, &about) == 0 && S_ISDIR(about.st_mode));
}

static int draw_one(ts_study *study, const ts_figure_options *options, const char *path)
{
    collector       collected;
    const ts_sink   sink   = collector_sink(&collected);
    const ts_status status = ts_study_draw(study, options, &sink);
    const int       code   = status == TS_OK ? file_save(path, collected.bytes, collected.length)
                                             : complain(study, status, false);
    collector_forget(&collected);
    return code;
}

static int tell(const arguments *given, const char *figure, const char *path)
{
    if (given->value[OPTION_JSON] == NULL) {
        printf("%-9s %s\n", figure, path);
        return EXIT_HOLDS;
    }
    const ts_act_field fields[] = {{"figure", figure}, {"written", path}};
    collector          collected;
    const ts_sink      sink = collector_sink(&collected);
    const int code = ts_act_write("draw", fields, 2, &sink) == TS_OK ? EXIT_HOLDS : EXIT_FAULT;
    fwrite(collected.bytes, 1, collected.length, stdout);
    collector_forget(&collected);
    return code;
}

static int draw_all(ts_study *study, const arguments *given, ts_figure_options options)
{
    const char  *folder = given->value[OPTION_OUTPUT];
    const size_t room   = strlen(folder) + 64;
    char        *path   = malloc(room);
    if (path == NULL)
        return complain(NULL, TS_NO_MEMORY, false);
    const char *between = folder[strlen(folder) - 1] == '/' ? "" : "/";
    int         code    = EXIT_HOLDS;
    if (mkdir(folder, 0777) != 0 && !is_folder(folder))
        code = EXIT_FAULT;
    for (size_t i = 0; code == EXIT_HOLDS && ts_figure_name(i) != NULL; i++) {
        options.figure = ts_figure_name(i);
        snprintf(path, room, "%s%s%s.%s", folder, between, options.figure, options.format);
        code = draw_one(study, &options, path);
        if (code == EXIT_HOLDS)
            code = tell(given, options.figure, path);
    }
    free(path);
    return code;
}

static bool figure_options(const arguments *given, ts_figure_options *out)
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
    out->us        = strcmp(units, "us") == 0;
    out->condition = given->value[OPTION_CONDITION];
    out->at        = given->value[OPTION_AT];
    out->scale     = 0.0;
    if (given->value[OPTION_SCALE] != NULL) {
        char *end  = NULL;
        out->scale = strtod(given->value[OPTION_SCALE], &end);
        if (*end != '\0' || !(out->scale >= 0.25 && out->scale <= 8.0)) {
            fprintf(stderr, "towershaft draw: --scale %s: expected a number from 0.25 to 8\n",
                    given->value[OPTION_SCALE]);
            return false;
        }
    }
    return true;
}

int run_draw(const arguments *given)
{
    const char *output = given->value[OPTION_OUTPUT];
    if (output == NULL || *output == '\0') {
        fprintf(stderr, "towershaft draw: -o says where: a file such as face.svg, or a folder\n");
        return EXIT_NOT_UNDERSTOOD;
    }
    ts_figure_options figure;
    ts_study_options  options;
    if (!figure_options(given, &figure) || !study_options(given, &options))
        return EXIT_NOT_UNDERSTOOD;
    const bool folder = is_folder(output);
    if (figure.format == NULL)
        figure.format = folder ? "svg" : ending_of(output);
    if (figure.format == NULL) {
        fprintf(stderr, "towershaft draw: %s: expected an ending .svg, .pdf or .png\n", output);
        return EXIT_NOT_UNDERSTOOD;
    }
    int       code  = EXIT_FAULT;
    ts_study *study = session_open(given->operand[0], &options, false, &code);
    if (study == NULL)
        return code;
    if (folder) {
        code = draw_all(study, given, figure);
    } else {
        code = draw_one(study, &figure, output);
        if (code == EXIT_HOLDS)
            code = tell(given, figure.figure, output);
    }
    ts_study_close(study);
    return code;
}
