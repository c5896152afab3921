/* Does a mistake of the program's own stop it in checked builds, and say where it was made? */
#include "base/assert.h"

#include "support/close.h"

#include <signal.h>
#include <stdio.h>
#include <string.h>
#include <sys/wait.h>
#include <unistd.h>

/* Runs the assertion in a process of its own; returns how that ended and what it said. */
static int outcome(bool condition, char said[200])
{
    int pipe_ends[2];
    assert_int_equal(pipe(pipe_ends), 0);
    const pid_t child = fork();
    if (child == 0) {
        (void)signal(SIGABRT, SIG_DFL);
        (void)dup2(pipe_ends[1], STDERR_FILENO);
        TS_ASSERT(condition);
        _exit(0);
    }
    (void)close(pipe_ends[1]);
    size_t  length = 0;
    ssize_t got;
    while (length < 199 && (got = read(pipe_ends[0], said + length, 199 - length)) > 0)
        length += (size_t)got;
    said[length] = '\0';
    (void)close(pipe_ends[0]);
    int how = 0;
    assert_int_equal(waitpid(child, &how, 0), child);
    return how;
}

static void what_holds_passes_in_silence(void **state)
{
    (void)state;
    char      said[200];
    const int how = outcome(true, said);
    assert_true(WIFEXITED(how) && WEXITSTATUS(how) == 0);
    assert_string_equal(said, "");
}

static void what_does_not_hold_stops_the_program_and_says_where(void **state)
{
    (void)state;
    char      said[200];
    const int how = outcome(false, said);
    assert_true(WIFSIGNALED(how) && WTERMSIG(how) == SIGABRT);
    assert_non_null(strstr(said, "test_assert.c:"));
    assert_non_null(strstr(said, "this should always hold: condition"));
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(what_holds_passes_in_silence),
        cmocka_unit_test(what_does_not_hold_stops_the_program_and_says_where),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
