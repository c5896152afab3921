/* How is a STEP file made by another program, in a bounded time? */
#include "apps/cli/step_program.h"

#include <errno.h>
#include <fcntl.h>
#include <poll.h>
#include <signal.h>
#include <spawn.h>
#include <stdlib.h>
#include <string.h>
#include <sys/wait.h>
#include <time.h>
#include <unistd.h>

extern char **environ;

enum { SECONDS_MOST = 60, SAID_MOST = 400, PATH_MOST = 4096 };

typedef struct child {
    pid_t id;
    int   in, out, err; /* our ends; -1: closed */
} child;

static void shut(int *end)
{
    if (*end >= 0)
        close(*end);
    *end = -1;
}

/* The program beside our own; false: there is none. */
static bool beside(char *path, size_t room)
{
    const ssize_t length = readlink("/proc/self/exe", path, room - sizeof STEP_PROGRAM - 1);
    if (length <= 0)
        return false;
    path[length] = '\0';
    char *slash  = strrchr(path, '/');
    if (slash == NULL)
        return false;
    memcpy(slash + 1, STEP_PROGRAM, sizeof STEP_PROGRAM);
    return access(path, X_OK) == 0;
}

static bool open_pipes(int pipes[3][2])
{
    for (int i = 0; i < 3; i++)
        pipes[i][0] = pipes[i][1] = -1;
    for (int i = 0; i < 3; i++) {
        if (pipe(pipes[i]) != 0)
            return false;
        for (int end = 0; end < 2; end++)
            fcntl(pipes[i][end], F_SETFD, FD_CLOEXEC);
    }
    return true;
}

/* 0, or the number of the error. */
static int start(child *one)
{
    char                       path[PATH_MOST];
    char                      *words[] = {(char[]){STEP_PROGRAM}, NULL};
    int                        pipes[3][2];
    posix_spawn_file_actions_t files;
    int                        failed = open_pipes(pipes) ? 0 : errno;
    const bool                 near   = beside(path, sizeof path);

    posix_spawn_file_actions_init(&files);
    for (int i = 0; i < 3; i++)
        posix_spawn_file_actions_adddup2(&files, pipes[i][i > 0], i);
    if (failed == 0)
        failed = posix_spawnp(&one->id, near ? path : STEP_PROGRAM, &files, NULL, words, environ);
    posix_spawn_file_actions_destroy(&files);
    for (int i = 0; i < 3; i++)
        shut(&pipes[i][i > 0]);
    one->in  = pipes[0][1];
    one->out = pipes[1][0];
    one->err = pipes[2][0];
    if (failed == 0)
        return 0;
    shut(&one->in);
    shut(&one->out);
    shut(&one->err);
    return failed;
}

static double seconds(void)
{
    struct timespec now;
    clock_gettime(CLOCK_MONOTONIC, &now);
    return (double)now.tv_sec + 1e-9 * (double)now.tv_nsec;
}

/* Takes what has come; closes the end when nothing more will. */
static void take(int *end, const ts_sink *sink)
{
    char          bytes[65536];
    const ssize_t got = read(*end, bytes, sizeof bytes);
    if (got > 0 ? sink->write(sink->context, bytes, (size_t)got) != 0 : errno != EINTR || got == 0)
        shut(end);
}

/* Feeds it and takes what it gives, until it is silent; false: its time is up. */
static bool converse(child *one, const collector *bodies, const ts_sink *sink,
                     const ts_sink *complaints)
{
    const double end  = seconds() + SECONDS_MOST;
    size_t       sent = 0;

    fcntl(one->in, F_SETFL, O_NONBLOCK);
    while (one->out >= 0 || one->err >= 0) {
        struct pollfd watched[3] = {
            {one->in, POLLOUT, 0}, {one->out, POLLIN, 0}, {one->err, POLLIN, 0}};
        const double left = end - seconds();
        if (!(left > 0.0))
            return false;
        if (poll(watched, 3, (int)(left * 1e3) + 1) < 0 && errno != EINTR)
            return false;
        if (one->in >= 0 && watched[0].revents != 0) {
            const ssize_t put = write(one->in, bodies->bytes + sent, bodies->length - sent);
            sent += put > 0 ? (size_t)put : 0;
            if (sent == bodies->length || (put < 0 && errno != EAGAIN && errno != EINTR))
                shut(&one->in);
        }
        if (one->out >= 0 && watched[1].revents != 0)
            take(&one->out, sink);
        if (one->err >= 0 && watched[2].revents != 0)
            take(&one->err, complaints);
    }
    return true;
}

static int say_missing(int failed)
{
    if (failed == ENOENT)
        fprintf(stderr,
                "towershaft draw: STEP files are written by " STEP_PROGRAM
                ", which is not here; expected it beside towershaft or on the path.  It is "
                "built where OpenCASCADE is (Debian: libocct-data-exchange-dev); .glb needs "
                "nothing\n");
    else
        fprintf(stderr, "towershaft draw: " STEP_PROGRAM " could not be started: %s\n",
                strerror(failed));
    return EXIT_FAULT;
}

/* What it said goes on, without the control characters that a terminal would obey. */
static int say_failed(const collector *complaints)
{
    fprintf(stderr, "towershaft draw: " STEP_PROGRAM " could not make the file: ");
    for (size_t i = 0; i < complaints->length && i < SAID_MOST; i++) {
        const unsigned char byte = (unsigned char)complaints->bytes[i];
        fputc(byte < 0x20 || byte == 0x7F ? ' ' : byte, stderr);
    }
    fputc('\n', stderr);
    return EXIT_FAULT;
}

int step_program(const collector *bodies, collector *to)
{
    child            one        = {0, -1, -1, -1};
    collector        complaints = {NULL, 0, 0};
    const ts_sink    sink = collector_sink(to), says = collector_sink(&complaints);
    struct sigaction ignore = {.sa_handler = SIG_IGN}, before;
    int              state  = 0;

    sigaction(SIGPIPE, &ignore, &before); /* it may end before it has read everything */
    const int failed = start(&one);
    if (failed != 0) {
        sigaction(SIGPIPE, &before, NULL);
        return say_missing(failed);
    }
    const bool done = converse(&one, bodies, &sink, &says);
    shut(&one.in);
    shut(&one.out);
    shut(&one.err);
    if (!done)
        kill(one.id, SIGKILL);
    while (waitpid(one.id, &state, 0) < 0 && errno == EINTR)
        continue;
    sigaction(SIGPIPE, &before, NULL);
    int code = EXIT_HOLDS;
    if (!done) {
        fprintf(stderr, "towershaft draw: " STEP_PROGRAM " was stopped after %d s\n", SECONDS_MOST);
        code = EXIT_FAULT;
    } else if (!WIFEXITED(state) || WEXITSTATUS(state) != 0 || to->length == 0) {
        code = say_failed(&complaints);
    }
    collector_forget(&complaints);
    return code;
}
