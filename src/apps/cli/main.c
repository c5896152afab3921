/* The command: which door was knocked at? */
#include "apps/cli/arguments.h"
#include "apps/cli/files.h"

#include <stdio.h>
#include <string.h>

static int run(const command_row *command, int count, char **words)
{
    arguments given;
    if (!arguments_read(command, count, words, &given))
        return EXIT_NOT_UNDERSTOOD;
    return command->run(&given);
}

static int answer(int argc, char **argv)
{
    if (argc < 2 || strcmp(argv[1], "--help") == 0 || strcmp(argv[1], "-h") == 0)
        return run(command_named("help"), 0, NULL);
    if (strcmp(argv[1], "--version") == 0) {
        printf("towershaft %s\n%s\n", ts_version(), ts_caution());
        return EXIT_HOLDS;
    }
    const command_row *command = command_named(argv[1]);
    if (command == NULL) {
        const char *nearest = command_nearest(argv[1]);
        fprintf(stderr, "towershaft: no command %s", argv[1]);
        if (nearest != NULL)
            fprintf(stderr, "; did you mean %s?", nearest);
        fprintf(stderr, "\n(towershaft help)\n");
        return EXIT_NOT_UNDERSTOOD;
    }
    if (argc > 2 && (strcmp(argv[2], "--help") == 0 || strcmp(argv[2], "-h") == 0))
        return run(command_named("help"), 1, &argv[1]);
    return run(command, argc - 2, argv + 2);
}

int main(int argc, char **argv)
{
    return output_end(answer(argc, argv));
}
