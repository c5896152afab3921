/* As what are the bodies of a drive written? */
#include "apps/cli/solid_file.h"

#include "apps/cli/step_program.h"

#include <string.h>

bool solid_ending(const char *ending)
{
    static const char *const endings[] = {"glb", "step", "stp", "json"};
    for (size_t i = 0; ending != NULL && i < sizeof endings / sizeof endings[0]; i++)
        if (strcmp(ending, endings[i]) == 0)
            return true;
    return false;
}

bool solid_options_fit(const arguments *given)
{
    static const struct {
        option_id   option;
        const char *word;
    } strange[] = {{OPTION_FIGURE, "--figure"}, {OPTION_CONDITION, "--condition"},
                   {OPTION_AT, "--at"},         {OPTION_GROUND, "--ground"},
                   {OPTION_SCALE, "--scale"},   {OPTION_UNITS, "--units"},
                   {OPTION_FORMAT, "--format"}};
    for (size_t i = 0; i < sizeof strange / sizeof strange[0]; i++)
        if (given->value[strange[i].option] != NULL) {
            fprintf(stderr,
                    "towershaft draw: %s is for pictures; a .glb, .step or .json has all bodies in "
                    "true size\n",
                    strange[i].word);
            return false;
        }
    return true;
}

int solid_save(ts_study *study, const char *ending, const char *path)
{
    collector       bodies, made = {NULL, 0, 0};
    const ts_sink   sink = collector_sink(&bodies);
    const bool      glb  = strcmp(ending, "glb") == 0;
    const bool      step = !glb && strcmp(ending, "json") != 0;
    const ts_status status =
        glb ? ts_study_write_glb(study, &sink) : ts_study_write_solids(study, &sink);
    int code = EXIT_HOLDS;
    if (status != TS_OK)
        code = complain(study, status, false);
    else if (step)
        code = step_program(&bodies, &made);
    if (code == EXIT_HOLDS)
        code =
            file_save(path, step ? made.bytes : bodies.bytes, step ? made.length : bodies.length);
    collector_forget(&bodies);
    collector_forget(&made);
    return code;
}
