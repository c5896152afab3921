/* rating/line_branch.h: which torque may leave a shaft by one of its ways before the shaft yields
 * or a bearing of it is dented, whatever leaves it by the others?
 *
 * Ways
 *   A line takes its torque at one entry, a mesh or the spline at its front (inner) end, and gives
 *   it away at exits: meshes that it drives, pads and splines at its ends.  Losses and tooth forces
 *   of either direction of power as power/ has them.
 *
 * Corners
 *   Every other exit takes the most that it takes in any condition, or nothing, each for itself;
 *   where something drives at one of the exits, what they take and give then, each or nothing.
 *   Where the entry keeps its flank nothing between these is worse: what a section or a bearing
 *   has of its capacity is a norm of its loads, which grow straight with each torque, and so
 *   convex.
 *
 * Left out
 *   What does not bear the loads of the conditions as they are: E5-shaft-static and
 *   E7-bearing-static refuse that, and it has nothing left to compare.
 *
 * Given way
 *   DIN 743-1:2012, safety against yield (from memory); P_0 = C_0r, ISO 76:2006 (from memory).
 */
#ifndef TS_RATING_LINE_BRANCH_H
#define TS_RATING_LINE_BRANCH_H

#include "rating/drive_lines.h"

#define TS_LINE_ITEMS_MOST (TS_LINE_BEARINGS_MOST + TS_LINE_NOTCHES_MOST)

/* A mesh, or one end of the line. */
typedef struct ts_line_way {
    uint32_t mesh; /* TS_NOWHERE: an end                                    */
    int      end;  /* 0 front (inner), 1 rear (outer)                       */
    uint32_t pad;  /* at that end; TS_NOWHERE: none, a spline takes it on   */
} ts_line_way;

/* What loads a bearing or a section: radial or bending, two planes; axial; torque. */
typedef struct ts_line_effort {
    double across[2], along, torque;
} ts_line_effort;

/* A bearing, or a section of the line. */
typedef struct ts_line_item {
    bool   is_bearing;
    int    which;                     /* of the line's bearings, or notches              */
    double across_1, across_2, along; /* of its capacity, to one unit of load: bearings
                                         max(across_1*F_r, across_2*F_r + along*F_a)      */
    double         torque;            /* sections: square sum of both parts               */
    ts_line_effort entry[2];          /* of 1 N.m there, that flows inwards, outwards */
    ts_line_effort exit[TS_LINE_EXITS_MOST][2];
} ts_line_item;

typedef struct ts_line_branches {
    const ts_lines *lines;
    uint32_t        line;
    ts_line_way     entry, exits[TS_LINE_EXITS_MOST];
    int             exit_count; /* -1: more than there is room for */
    ts_line_item    items[TS_LINE_ITEMS_MOST];
    int             item_count;
    double          most[TS_LINE_EXITS_MOST];   /* N.m, the most that each takes */
    bool            drives[TS_LINE_EXITS_MOST]; /* in some condition             */
} ts_line_branches;

/* One corner: what gives way first, and beside what. */
typedef struct ts_line_limit {
    double T;                          /* N.m at the exit, >= 0; INFINITY: nothing does */
    int    item;                       /* -1: none                                      */
    double others[TS_LINE_EXITS_MOST]; /* N.m, + taken */
} ts_line_limit;

/* The ways of a line whose gears are known; returns how many exits, -1: more than there is room
 * for. */
int ts_line_list_ways(const ts_lines *lines, uint32_t line, ts_line_way *entry,
                      ts_line_way exits[TS_LINE_EXITS_MOST]);
/* Of a line without fault or missing: its ways, and what 1 N.m at each does to every item. */
void ts_line_branch_out(const ts_lines *lines, uint32_t line, ts_line_branches *out);
/* N.m that leave (flow 1) or enter (flow -1) by an exit in a condition. */
double ts_line_exit_torque(const ts_line_branches *b, int exit, uint32_t condition);
/* The least over all corners and items of one kind. */
ts_line_limit ts_line_branch_limit(const ts_line_branches *b, int exit, int flow, bool bearings);
/* What loads an item when T flows by that exit, beside the others of a limit. */
ts_line_effort ts_line_branch_effort(const ts_line_branches *b, const ts_line_item *item, int exit,
                                     int flow, double T, const double *others);
/* Share of its capacity that the effort takes: 1 where it gives way. */
double ts_line_item_share(const ts_line_item *item, const ts_line_effort *effort);

#endif
