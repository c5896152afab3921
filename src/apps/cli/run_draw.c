/* What does it look like? */
#include "apps/cli/arguments.h"
#include "apps/cli/picture_wish.h"
#include "apps/cli/session.h"
#include "apps/cli/solid_file.h"

#include <stdlib.h>
#include <string.h>
#include <sys/stat.h>

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

/* Of the longest name that a figure has. */
static int figures_width(void)
{
    size_t widest = 0;
    for (size_t i = 0; ts_figure_name(i) != NULL; i++) {
        const size_t width = strlen(ts_figure_name(i));
        widest             = width > widest ? width : widest;
    }
    return (int)widest;
}

static int tell(const arguments *given, const char *figure, const char *path)
{
    if (given->value[OPTION_JSON] == NULL) {
        printf("%-*s %s\n", figures_width(), figure, path);
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
    const bool plans = strcmp(options.format, "dxf") == 0;
    for (size_t i = 0; code == EXIT_HOLDS && ts_figure_name(i) != NULL; i++) {
        if (plans && !ts_figure_is_plan(i))
            continue;
        options.figure = ts_figure_name(i);
        snprintf(path, room, "%s%s%s.%s", folder, between, options.figure, options.format);
        code = draw_one(study, &options, path);
        if (code == EXIT_HOLDS)
            code = tell(given, options.figure, path);
    }
    free(path);
    return code;
}

/* Is the condition that was asked for one that the picture can show? */
/* Does the ending of the file say the format that is written into it? */
static bool ending_fits(const char *output, const char *format)
{
    const char *ending = picture_ending(output);
    if (ending == NULL || strcmp(ending, format) == 0)
        return true;
    fprintf(stderr,
            "towershaft draw: %s: its ending says .%s and --format says %s; expected one of them\n",
            output, ending, format);
    return false;
}

static bool condition_fits(const ts_figure_options *figure)
{
    if (figure->condition == NULL || ts_figure_has_condition(figure->figure))
        return true;
    fprintf(stderr,
            "towershaft draw: the picture %s is of no single condition; expected no "
            "--condition, or one of the pictures",
            figure->figure);
    for (size_t i = 0; ts_figure_name(i) != NULL; i++)
        if (ts_figure_has_condition(ts_figure_name(i)))
            fprintf(stderr, " %s", ts_figure_name(i));
    fprintf(stderr, "\n");
    return false;
}

static int draw_bodies(const arguments *given, const char *ending)
{
    const char      *output = given->value[OPTION_OUTPUT];
    ts_study_options options;
    int              code = EXIT_FAULT;
    if (!solid_options_fit(given) || !study_options(given, &options))
        return EXIT_NOT_UNDERSTOOD;
    ts_study *study = session_open(given->operand[0], &options, false, &code);
    if (study == NULL)
        return code;
    code = solid_save(study, ending, output);
    if (code == EXIT_HOLDS)
        code = tell(given, "bodies", output);
    ts_study_close(study);
    return code;
}

int run_draw(const arguments *given)
{
    const char *output = given->value[OPTION_OUTPUT];
    if (output == NULL || *output == '\0') {
        fprintf(stderr, "towershaft draw: -o says where: a file such as face.svg, or a folder\n");
        return EXIT_NOT_UNDERSTOOD;
    }
    if (!is_folder(output) && solid_ending(picture_ending(output)))
        return draw_bodies(given, picture_ending(output));
    ts_figure_options figure;
    ts_study_options  options;
    if (!picture_wish(given, &figure) || !study_options(given, &options))
        return EXIT_NOT_UNDERSTOOD;
    const bool folder = is_folder(output);
    if (!folder && !condition_fits(&figure))
        return EXIT_NOT_UNDERSTOOD;
    if (figure.format == NULL)
        figure.format = folder ? "svg" : picture_ending(output);
    if (figure.format == NULL) {
        fprintf(stderr,
                "towershaft draw: %s: expected an ending .svg, .pdf, .png or .dxf, or of "
                "bodies .glb, .step or .json\n",
                output);
        return EXIT_NOT_UNDERSTOOD;
    }
    if (!folder && !ending_fits(output, figure.format))
        return EXIT_NOT_UNDERSTOOD;
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
