/* apps/cli/ranks/rank_team.h: processes on one or many machines that share the work of one study.
 *
 * The command loads the module that speaks MPI only when it finds itself started as one of several,
 * so that nobody else needs MPI.  Nothing here knows what is sent.
 */
#ifndef TS_APPS_CLI_RANKS_RANK_TEAM_H
#define TS_APPS_CLI_RANKS_RANK_TEAM_H

#include <stdbool.h>
#include <stddef.h>

typedef struct rank_team {
    int rank, count; /* this one, from 0, and all */
    /* What rank 0 has becomes what all have; every rank calls it with the same length. */
    void (*tell)(void *bytes, size_t length);
    /* To rank 0, which may take it later; the bytes may be used again at once.  False without
     * memory. */
    bool (*send)(const void *bytes, size_t length);
    /* At rank 0: the next message of another rank, to be given back by free(); false when `wait` is
     * false and none is there, or without memory. */
    bool (*take)(bool wait, void **bytes, size_t *length);
    void (*leave)(void);    /* all that was sent is then taken */
    void (*quit)(int code); /* ends every rank at once */
} rank_team;

typedef const rank_team *rank_team_join_function(void);
#define RANK_TEAM_JOIN "towershaft_rank_team_join"

#endif
