/* How is git asked without letting it, or the folder, do anything else? */
#include "apps/serve/git_past.h"

#include "apps/serve/server.h"

#include <errno.h>
#include <fcntl.h>
#include <poll.h>
#include <signal.h>
#include <spawn.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/wait.h>
#include <unistd.h>

#define PATIENCE_MS 1000
#define WORDS_MOST  24

bool git_past_is_id(const char *text)
{
    const size_t length = strspn(text, "0123456789abcdef");
    return length >= 40 && length <= GIT_ID_MOST && text[length] == '\0';
}

/* Where git is, and who asks: nothing else of our environment. */
static char *path_word(const char *name)
{
    const char  *value  = getenv(name);
    const size_t length = strlen(name) + 2 + (value != NULL ? strlen(value) : 0);
    char        *word   = malloc(length);
    if (word != NULL)
        snprintf(word, length, "%s=%s", name, value != NULL ? value : "");
    return word;
}

static bool spawn_in(const workspace *place, char *const *words, int to, pid_t *child)
{
    char *path = path_word("PATH"), *home = path_word("HOME");
    char  locale[] = "LC_ALL=C", ask[] = "GIT_TERMINAL_PROMPT=0", locks[] = "GIT_OPTIONAL_LOCKS=0";
    char  lazy[] = "GIT_NO_LAZY_FETCH=1", replaced[] = "GIT_NO_REPLACE_OBJECTS=1";
    char *around[] = {path, home, locale, ask, locks, lazy, replaced, NULL};
    posix_spawn_file_actions_t files;
    posix_spawnattr_t          how;
    sigset_t                   none, usual;
    sigemptyset(&none);
    sigemptyset(&usual);
    sigaddset(&usual, SIGPIPE);
    posix_spawnattr_init(&how);
    posix_spawnattr_setsigmask(&how, &none);
    posix_spawnattr_setsigdefault(&how, &usual);
    posix_spawnattr_setflags(&how, POSIX_SPAWN_SETSIGMASK | POSIX_SPAWN_SETSIGDEF);
    posix_spawn_file_actions_init(&files);
    posix_spawn_file_actions_addfchdir_np(&files, place->folder);
    posix_spawn_file_actions_addopen(&files, 0, "/dev/null", O_RDONLY, 0);
    posix_spawn_file_actions_adddup2(&files, to, 1);
    posix_spawn_file_actions_addopen(&files, 2, "/dev/null", O_WRONLY, 0);
    const bool good = path != NULL && home != NULL &&
                      posix_spawnp(child, words[0], &files, &how, words, around) == 0;
    posix_spawn_file_actions_destroy(&files);
    posix_spawnattr_destroy(&how);
    free(path);
    free(home);
    return good;
}

/* All that comes before the deadline; false: it did not end, or said too much. */
static bool drain(int from, growing *into)
{
    const int64_t until = server_now() + PATIENCE_MS;
    char          block[16384];
    for (;;) {
        const int64_t left  = until - server_now();
        struct pollfd which = {.fd = from, .events = POLLIN};
        if (left <= 0 || poll(&which, 1, (int)left) < 0)
            return false;
        const ssize_t got = which.revents != 0 ? read(from, block, sizeof block) : -1;
        if (got == 0)
            return !into->failed;
        if (got < 0)
            return false;
        growing_add(into, block, (size_t)got);
        if (into->failed || into->length > WORKSPACE_FILE_MOST)
            return false;
    }
}

static bool ask(const workspace *place, const char *const *words, growing *into)
{
    static const char *const always[]        = {"git", "--no-pager",
                                                "-c",  "core.fsmonitor=false",
                                                "-c",  "core.hooksPath=/dev/null",
                                                "-c",  "protocol.allow=never"};
    char                    *all[WORDS_MOST] = {0};
    size_t                   count           = 0;
    for (size_t i = 0; i < sizeof always / sizeof always[0]; i++)
        all[count++] = (char *)(uintptr_t)always[i];
    for (size_t i = 0; words[i] != NULL && count < WORDS_MOST - 1; i++)
        all[count++] = (char *)(uintptr_t)words[i];
    int   ends[2];
    pid_t child;
    if (pipe2(ends, O_CLOEXEC) != 0)
        return false;
    const bool begun = spawn_in(place, all, ends[1], &child);
    close(ends[1]);
    bool good = begun && drain(ends[0], into);
    close(ends[0]);
    int end = 0;
    if (begun && !good)
        (void)kill(child, SIGKILL);
    while (begun && waitpid(child, &end, 0) < 0 && errno == EINTR)
        ;
    good = good && WIFEXITED(end) && WEXITSTATUS(end) == 0;
    if (!good)
        into->length = 0;
    return good;
}

bool git_past_list(const workspace *place, growing *lines)
{
    const char *const words[] = {"rev-list",     "--max-count=50",
                                 "--date=short", "--format=%H %cd %s",
                                 "HEAD",         "--",
                                 place->name,    NULL};
    return ask(place, words, lines) && lines->length > 0;
}

bool git_past_text(const workspace *place, const char *id, growing *text)
{
    char what[GIT_ID_MOST + WORKSPACE_NAME_MOST + 8];
    snprintf(what, sizeof what, "%s:./%s", id, place->name);
    const char *const words[] = {"cat-file", "blob", what, NULL};
    return git_past_is_id(id) && ask(place, words, text);
}
