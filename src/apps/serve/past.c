/* Where do earlier texts of the file, and other files, come from? */
#include "apps/serve/past.h"

#include "apps/serve/git_past.h"

#include <dirent.h>
#include <fcntl.h>
#include <stdlib.h>
#include <string.h>
#include <unistd.h>

#define FILES_MOST 200
#define ACTS_MOST  500

/* ---- what there is -------------------------------------------------------------------------- */

static void list_acts(const sitting *here, growing *out)
{
    const size_t first = here->act_count > ACTS_MOST ? here->act_count - ACTS_MOST : 0;
    growing_text(out, "\"acts\": [");
    for (size_t i = first; i < here->act_count; i++) {
        growing_text(out, i > first ? ", {\"act\": " : "{\"act\": ");
        growing_number(out, (long long)i + 1);
        growing_text(out, ", \"says\": ");
        growing_string(out, here->acts[i].says, strlen(here->acts[i].says));
        growing_text(out, i < here->done ? ", \"done\": true}" : ", \"done\": false}");
    }
    growing_text(out, "]");
}

/* Lines "id date subject". */
static void list_commits(const sitting *here, growing *out)
{
    growing lines = {0};
    bool    any   = false;
    growing_text(out, ", \"git\": [");
    const char *line = git_past_list(&here->place, &lines) ? lines.bytes : NULL;
    while (line != NULL && *line != '\0') {
        const size_t length = strcspn(line, "\n"), id = strcspn(line, " \n");
        if (id >= 40 && id < length) {
            growing_text(out, any ? ", {\"id\": " : "{\"id\": ");
            growing_string(out, line, id);
            growing_text(out, ", \"says\": ");
            growing_string(out, line + id + 1, length - id - 1);
            growing_text(out, "}");
            any = true;
        }
        line += line[length] == '\n' ? length + 1 : length;
    }
    growing_text(out, "]");
    growing_forget(&lines);
}

static bool is_drive_name(const sitting *here, const char *name)
{
    const char *end = strrchr(name, '.');
    return name[0] != '.' && end != NULL && strlen(name) <= WORKSPACE_NAME_MOST &&
           (strcmp(end, ".yaml") == 0 || strcmp(end, ".yml") == 0) &&
           strcmp(name, here->place.name) != 0;
}

/* Names of the folder that may be asked for; `visit` returns true to end. */
static bool each_file(const sitting *here, bool (*visit)(void *context, const char *name),
                      void          *context)
{
    const int own    = openat(here->place.folder, ".", O_RDONLY | O_DIRECTORY | O_CLOEXEC);
    DIR      *folder = own >= 0 ? fdopendir(own) : NULL;
    bool      ended  = false;
    if (folder == NULL) {
        if (own >= 0)
            close(own);
        return false;
    }
    for (struct dirent *one = readdir(folder); one != NULL && !ended; one = readdir(folder))
        ended = is_drive_name(here, one->d_name) && visit(context, one->d_name);
    closedir(folder);
    return ended;
}

typedef struct names {
    char  *items[FILES_MOST];
    size_t count;
} names;

static bool take_name(void *context, const char *name)
{
    names *all = context;
    char  *own = strdup(name);
    if (own == NULL)
        return true;
    all->items[all->count++] = own;
    return all->count == FILES_MOST;
}

static int by_name(const void *a, const void *b)
{
    return strcmp(*(char *const *)a, *(char *const *)b);
}

static void list_files(const sitting *here, growing *out)
{
    names all = {.count = 0};
    (void)each_file(here, take_name, &all);
    qsort(all.items, all.count, sizeof all.items[0], by_name);
    growing_text(out, ", \"files\": [");
    for (size_t i = 0; i < all.count; i++) {
        if (i > 0)
            growing_text(out, ", ");
        growing_string(out, all.items[i], strlen(all.items[i]));
        free(all.items[i]);
    }
    growing_text(out, "]");
}

void past_list(const sitting *here, growing *out)
{
    growing_text(out, "{");
    list_acts(here, out);
    list_commits(here, out);
    list_files(here, out);
    growing_text(out, "}\n");
}

/* ---- one of them ---------------------------------------------------------------------------- */

typedef struct sought {
    const char *name;
    char        found[WORKSPACE_NAME_MOST + 1];
} sought;

static bool is_it(void *context, const char *name)
{
    sought *it = context;
    if (strcmp(it->name, name) != 0)
        return false;
    strcpy(it->found, name);
    return true;
}

static const char *text_of_file(const sitting *here, const char *name, growing *text)
{
    sought it = {.name = name};
    if (!each_file(here, is_it, &it))
        return "there is no such drive file beside this one";
    return workspace_read_other(&here->place, it.found, text);
}

static const char *text_of_act(const sitting *here, const char *number, growing *text)
{
    char               *end;
    const unsigned long act = strtoul(number, &end, 10);
    if (end == number || *end != '\0' || number[0] < '0' || number[0] > '9' ||
        act > here->act_count)
        return "there is no such act";
    return sitting_text_after(here, act, text) ? NULL : "there is not enough memory";
}

static const char *find_text(const sitting *here, const char *from, growing *text)
{
    if (strncmp(from, "act:", 4) == 0)
        return text_of_act(here, from + 4, text);
    if (strncmp(from, "git:", 4) == 0)
        return git_past_text(&here->place, from + 4, text) ? NULL
                                                           : "git does not know the file there";
    if (strncmp(from, "file:", 5) == 0)
        return text_of_file(here, from + 5, text);
    return "what is compared with is `opened`, `act:NUMBER`, `git:COMMIT` or `file:NAME`";
}

const char *past_study(const sitting *here, const char *from, ts_study **study)
{
    growing                text    = {0};
    const ts_study_options options = sitting_options(false, false);
    const char            *why     = find_text(here, from, &text);
    *study                         = NULL;
    if (why == NULL && (text.failed || ts_study_open(NULL, study) != TS_OK))
        why = "there is not enough memory";
    if (why == NULL &&
        ts_study_read(*study, strchr(from, ':') + 1, text.bytes, text.length, &options) != TS_OK)
        why = "the drive as it stands there cannot be computed";
    if (why != NULL) {
        ts_study_close(*study);
        *study = NULL;
    }
    growing_forget(&text);
    return why;
}
