/* apps/cli/study_team.h: is this process one of several, and how do samples go between them? */
#ifndef TS_APPS_CLI_STUDY_TEAM_H
#define TS_APPS_CLI_STUDY_TEAM_H

#include "apps/cli/command.h"
#include "apps/cli/ranks/rank_team.h"

/* Started by mpirun or srun as one of several?  *out is NULL for a process alone.  False with a
 * message when the module that speaks MPI cannot be had. */
bool study_team_join(const rank_team **out);

/* Samples as one message; false without memory. */
bool study_team_send(const rank_team *team, const ts_sampling_block *block, size_t count,
                     size_t columns);

/* The samples of a message: rows that point into it; free(*rows).  False when it is broken or
 * without memory. */
bool study_team_rows(void *bytes, size_t length, size_t columns, ts_sampling_row **rows,
                     size_t *count);

/* The script of a Slurm job of that many ranks, on standard output; the exit code. */
int study_slurm(const arguments *given, size_t ranks);

#endif
