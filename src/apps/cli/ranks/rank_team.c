/* How do processes share the work of one study by MPI? */
#include "apps/cli/ranks/rank_team.h"

#include <limits.h>
#include <mpi.h>
#include <stdlib.h>
#include <string.h>

#define AHEAD 2         /* messages that may be under way while the next block is computed */
#define PART  (1 << 30) /* bytes told at once: MPI counts in int */

static struct {
    void       *bytes;
    MPI_Request request;
} under_way[AHEAD];
static int next_slot;

static void tell(void *bytes, size_t length)
{
    for (size_t at = 0; at < length; at += PART) {
        const size_t part = length - at < PART ? length - at : PART;
        MPI_Bcast((char *)bytes + at, (int)part, MPI_BYTE, 0, MPI_COMM_WORLD);
    }
}

static void clear(int slot)
{
    if (under_way[slot].bytes == NULL)
        return;
    MPI_Wait(&under_way[slot].request, MPI_STATUS_IGNORE);
    free(under_way[slot].bytes);
    under_way[slot].bytes = NULL;
}

static bool send(const void *bytes, size_t length)
{
    const int slot = next_slot;

    clear(slot);
    under_way[slot].bytes = length <= INT_MAX ? malloc(length + 1) : NULL;
    if (under_way[slot].bytes == NULL)
        return false;
    if (length > 0)
        memcpy(under_way[slot].bytes, bytes, length);
    MPI_Isend(under_way[slot].bytes, (int)length, MPI_BYTE, 0, 0, MPI_COMM_WORLD,
              &under_way[slot].request);
    next_slot = (slot + 1) % AHEAD;
    return true;
}

static bool take(bool wait, void **bytes, size_t *length)
{
    MPI_Status status;
    int        there = 1, count = 0;

    if (wait)
        MPI_Probe(MPI_ANY_SOURCE, 0, MPI_COMM_WORLD, &status);
    else
        MPI_Iprobe(MPI_ANY_SOURCE, 0, MPI_COMM_WORLD, &there, &status);
    if (!there)
        return false;
    MPI_Get_count(&status, MPI_BYTE, &count);
    *length = (size_t)count;
    *bytes  = malloc(*length + 1);
    if (*bytes == NULL)
        return false;
    MPI_Recv(*bytes, count, MPI_BYTE, status.MPI_SOURCE, 0, MPI_COMM_WORLD, MPI_STATUS_IGNORE);
    return true;
}

static void leave(void)
{
    for (int slot = 0; slot < AHEAD; slot++)
        clear(slot);
    MPI_Finalize();
}

static void quit(int code)
{
    MPI_Abort(MPI_COMM_WORLD, code);
}

__attribute__((visibility("default"))) const rank_team *towershaft_rank_team_join(void);

const rank_team *towershaft_rank_team_join(void)
{
    static rank_team team = {
        .tell = tell, .send = send, .take = take, .leave = leave, .quit = quit};
    int provided;

    if (MPI_Init_thread(NULL, NULL, MPI_THREAD_FUNNELED, &provided) != MPI_SUCCESS ||
        provided < MPI_THREAD_FUNNELED)
        return NULL;
    MPI_Comm_rank(MPI_COMM_WORLD, &team.rank);
    MPI_Comm_size(MPI_COMM_WORLD, &team.count);
    return &team;
}
