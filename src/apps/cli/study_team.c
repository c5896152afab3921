/* Is this process one of several, and how do samples go between them? */
#include "apps/cli/study_team.h"

#include <dlfcn.h>
#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <time.h>
#include <unistd.h>

#define MODULE "towershaft-ranks.so"

/* ---- the team -------------------------------------------------------------------------------- */

static bool started_as_one_of_several(void)
{
    const char *all = getenv("OMPI_COMM_WORLD_SIZE");

    if (all != NULL)
        return strcmp(all, "1") != 0;
    return getenv("PMIX_RANK") != NULL || getenv("SLURM_STEP_ID") != NULL;
}

/* Beside the program, as it is built, or where it is installed. */
static void *open_module(void)
{
    char          path[4096];
    const ssize_t length = readlink("/proc/self/exe", path, sizeof path - sizeof MODULE - 1);
    void         *module = NULL;

    if (length > 0) {
        path[length] = '\0';
        char *slash  = strrchr(path, '/');
        strcpy(slash != NULL ? slash + 1 : path, MODULE);
        module = dlopen(path, RTLD_NOW | RTLD_GLOBAL);
    }
    return module != NULL ? module : dlopen(TS_MODULES "/" MODULE, RTLD_NOW | RTLD_GLOBAL);
}

bool study_team_join(const rank_team **out)
{
    rank_team_join_function *join = NULL;

    *out = NULL;
    if (!started_as_one_of_several())
        return true;
    void *module = open_module();
    void *symbol = module != NULL ? dlsym(module, RANK_TEAM_JOIN) : NULL;
    memcpy(&join, &symbol, sizeof join);
    *out = symbol != NULL ? join() : NULL;
    if (*out != NULL)
        return true;
    fprintf(stderr,
            "towershaft study: started as one of several processes, but this copy cannot speak MPI "
            "(%s); expected one that was built where Open MPI is installed\n",
            module == NULL ? dlerror() : "its module does not fit");
    return false;
}

/* ---- samples as bytes ------------------------------------------------------------------------ */

/* What stands before the numbers of one sample; all of it in the byte order of the machine, for all
 * ranks of a team are of one kind. */
typedef struct row_head {
    uint64_t id;
    uint32_t state, finding_count, says; /* bytes of `says`, filled up to 8; 0: none */
    uint32_t unused;
} row_head;

static size_t filled(size_t bytes)
{
    return (bytes + 7) / 8 * 8;
}

static size_t says_length(const ts_sampling_row *row)
{
    return row->says != NULL ? filled(strlen(row->says) + 1) : 0;
}

static size_t row_length(const ts_sampling_row *row, size_t columns)
{
    return sizeof(row_head) + columns * sizeof(double) + row->finding_count * sizeof(uint64_t) +
           says_length(row);
}

static char *put(char *to, const void *from, size_t length)
{
    if (length > 0)
        memcpy(to, from, length);
    return to + length;
}

bool study_team_send(const rank_team *team, const ts_sampling_block *block, size_t count,
                     size_t columns)
{
    size_t length = 0;

    for (size_t i = 0; i < count; i++) {
        const ts_sampling_row row = ts_sampling_block_row(block, i);
        length += row_length(&row, columns);
    }
    char *bytes = calloc(1, length + 1), *to = bytes;
    for (size_t i = 0; bytes != NULL && i < count; i++) {
        const ts_sampling_row row  = ts_sampling_block_row(block, i);
        const row_head        head = {row.id, (uint32_t)row.state, (uint32_t)row.finding_count,
                                      (uint32_t)says_length(&row), 0};
        to                         = put(to, &head, sizeof head);
        to                         = put(to, row.values, columns * sizeof(double));
        to                         = put(to, row.findings, row.finding_count * sizeof(uint64_t));
        if (row.says != NULL)
            strcpy(to, row.says);
        to += head.says;
    }
    const bool sent = bytes != NULL && team->send(bytes, length);
    free(bytes);
    return sent;
}

/* One sample, and the bytes that it takes; 0 when they do not reach so far. */
static size_t read_row(char *bytes, size_t length, size_t columns, ts_sampling_row *row)
{
    row_head head;

    if (length < sizeof head)
        return 0;
    memcpy(&head, bytes, sizeof head);
    const size_t values = columns * sizeof(double);
    const size_t whole  = sizeof head + values + head.finding_count * sizeof(uint64_t) + head.says;
    if (length < whole || head.state >= TS_SAMPLE_STATES)
        return 0;
    char *findings = bytes + sizeof head + values;
    *row           = (ts_sampling_row){
                  .id            = head.id,
                  .values        = (const double *)(const void *)(bytes + sizeof head),
                  .state         = (ts_sampling_state)head.state,
                  .findings      = (const uint64_t *)(const void *)findings,
                  .finding_count = head.finding_count,
                  .says          = head.says > 0 ? findings + head.finding_count * sizeof(uint64_t) : NULL};
    return whole;
}

bool study_team_rows(void *bytes, size_t length, size_t columns, ts_sampling_row **rows,
                     size_t *count)
{
    const size_t least = sizeof(row_head) + columns * sizeof(double);
    size_t       at    = 0, taken;

    *count = 0;
    *rows  = malloc((length / least + 1) * sizeof **rows);
    if (*rows == NULL)
        return false;
    while (at < length &&
           (taken = read_row((char *)bytes + at, length - at, columns, &(*rows)[*count])) > 0) {
        at += taken;
        (*count)++;
    }
    if (at == length)
        return true;
    free(*rows);
    *rows = NULL;
    return false;
}

/* ---- Slurm ----------------------------------------------------------------------------------- */

/* A word of a shell that stands for itself, whatever it holds. */
static void print_quoted(const char *word)
{
    putchar('\'');
    for (; *word != '\0'; word++)
        fputs(*word == '\'' ? "'\\''" : (const char[]){*word, '\0'}, stdout);
    putchar('\'');
}

/* The very program that wrote the script, wherever it stands: a job has another PATH. */
static const char *own_program(char *room, size_t size)
{
    const ssize_t length = readlink("/proc/self/exe", room, size);

    if (length <= 0 || (size_t)length >= size)
        return "towershaft";
    room[length] = '\0';
    return room;
}

int study_slurm(const arguments *given, size_t ranks)
{
    char room[4096];

    if (given->value[OPTION_OUTPUT] == NULL) {
        fprintf(stderr, "towershaft study: --slurm needs -o FILE.sqlite, where the samples of all "
                        "ranks are kept\n");
        return EXIT_NOT_UNDERSTOOD;
    }
    printf("#!/bin/bash\n"
           "# One study on %zu ranks.  Broken off, it goes on where it was when it is sent again.\n"
           "#SBATCH --job-name=towershaft-study\n"
           "#SBATCH --ntasks=%zu\n"
           "#SBATCH --cpus-per-task=1\n"
           "#SBATCH --requeue\n"
           "srun ",
           ranks, ranks);
    print_quoted(own_program(room, sizeof room));
    printf(" study ");
    print_quoted(given->operand[0]);
    printf(" -o ");
    print_quoted(given->value[OPTION_OUTPUT]);
    const time_t     now       = time(NULL);
    const struct tm *utc       = gmtime(&now);
    char             today[16] = "";
    if (given->value[OPTION_TODAY] == NULL && utc != NULL)
        strftime(today, sizeof today, "%Y-%m-%d", utc);
    printf(" --today ");
    print_quoted(given->value[OPTION_TODAY] != NULL ? given->value[OPTION_TODAY] : today);
    printf(" --progress\n");
    return EXIT_HOLDS;
}
