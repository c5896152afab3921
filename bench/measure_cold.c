/* How long does a person wait for `towershaft check` of the large example, from nothing? */
#include "bench.h"

#include <fcntl.h>
#include <math.h>
#include <spawn.h>
#include <stdlib.h>
#include <string.h>
#include <sys/wait.h>

/* The environment of a program started with none of ours: the answer depends on none of it. */
static char *const no_environment[] = {NULL};

static void cold_check(void *context)
{
    char *const words[] = {
        "build/release/towershaft", "check", "examples/large.yaml", "--today", "2026-06-30", NULL};
    int  *failed = context;
    pid_t child  = 0;

    posix_spawn_file_actions_t quiet;
    posix_spawn_file_actions_init(&quiet);
    posix_spawn_file_actions_addopen(&quiet, 1, "/dev/null", O_WRONLY, 0);
    int outcome = -1;
    if (posix_spawn(&child, words[0], &quiet, NULL, words, no_environment) != 0 ||
        waitpid(child, &outcome, 0) != child || outcome != 0)
        *failed = 1;
    posix_spawn_file_actions_destroy(&quiet);
}

static double cold(void)
{
    int          failed  = 0;
    const double seconds = bench_wall_seconds(cold_check, &failed);
    return failed ? (double)NAN : seconds;
}

static const bench_case cases[] = {
    {"cold-check", "check of the large example as a whole process, wall time", "s", 30e-3, cold},
};

const bench_group measure_cold = {cases, sizeof cases / sizeof cases[0]};
