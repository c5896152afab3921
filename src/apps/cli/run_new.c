/* Where does one begin? */
#include "apps/cli/session.h"

#include <errno.h>
#include <stdlib.h>
#include <string.h>
#include <unistd.h>

static bool known_like(const char *like)
{
    for (size_t i = 0; ts_starting_file_name(i) != NULL; i++)
        if (like != NULL && strcmp(like, ts_starting_file_name(i)) == 0)
            return true;
    if (like == NULL)
        fprintf(stderr, "towershaft new: --like says which engine to begin with:");
    else
        fprintf(stderr, "towershaft new: no engine %s; there is:", like);
    for (size_t i = 0; ts_starting_file_name(i) != NULL; i++)
        fprintf(stderr, " %s", ts_starting_file_name(i));
    fprintf(stderr, "\n");
    return false;
}

/* NAME, or NAME.yaml when it has no such ending. */
static char *path_of(const char *name)
{
    const char  *dot    = strrchr(name, '.');
    const bool   ending = dot != NULL && (strcmp(dot, ".yaml") == 0 || strcmp(dot, ".yml") == 0);
    const size_t room   = strlen(name) + sizeof ".yaml";
    char        *path   = malloc(room);
    if (path != NULL)
        snprintf(path, room, "%s%s", name, ending ? "" : ".yaml");
    return path;
}

/* The file's own name without folder and ending: the title of the new drive. */
static char *title_of(const char *path)
{
    const char *slash = strrchr(path, '/');
    char       *title = strdup(slash != NULL ? slash + 1 : path);
    char       *dot   = title != NULL ? strrchr(title, '.') : NULL;
    if (dot != NULL)
        *dot = '\0';
    return title;
}

static int write_new(const arguments *given, const char *path, const char *title)
{
    const char *like = given->value[OPTION_LIKE];
    if (access(path, F_OK) == 0) {
        fprintf(stderr, "towershaft new: %s is there already; nothing was changed\n", path);
        return EXIT_NOT_UNDERSTOOD;
    }
    collector     collected;
    const ts_sink sink = collector_sink(&collected);
    int           code = ts_starting_file_write(like, title, &sink) == TS_OK
                             ? file_save(path, collected.bytes, collected.length)
                             : complain(NULL, TS_NO_MEMORY, false);
    collector_forget(&collected);
    if (code != EXIT_HOLDS)
        return code;
    if (given->value[OPTION_JSON] == NULL) {
        printf("%s: written, like the invented engine `%s`; next: towershaft check %s\n", path,
               like, path);
        return EXIT_HOLDS;
    }
    const ts_sink      out      = collector_sink(&collected);
    const ts_act_field fields[] = {{"written", path}, {"like", like}};
    code = ts_act_write("new", fields, 2, &out) == TS_OK ? EXIT_HOLDS : EXIT_FAULT;
    fwrite(collected.bytes, 1, collected.length, stdout);
    collector_forget(&collected);
    return code;
}

int run_new(const arguments *given)
{
    if (!known_like(given->value[OPTION_LIKE]))
        return EXIT_NOT_UNDERSTOOD;
    char     *path  = path_of(given->value[OPTION_OUTPUT] != NULL ? given->value[OPTION_OUTPUT]
                                                                  : given->operand[0]);
    char     *title = path != NULL ? title_of(given->operand[0]) : NULL;
    const int code =
        title != NULL ? write_new(given, path, title) : complain(NULL, TS_NO_MEMORY, false);
    free(title);
    free(path);
    return code;
}
