/* rating/selectivity.h: when something on a pad seizes, does its neck break before anything
 * else does, and never before?
 *
 * Guard     Of every pad with an accessory and of every neck in a tower shaft: the torques that
 *           are legitimate there, the band in which its neck breaks, and the wall: the least
 *           torque there that breaks something on the way to the spool.
 * Wall      Each part upstream bears T once.  At the worst moment the others that hang behind it
 *           take L there, so that (T - L)/g is left for the pad; g is the torque of the part over
 *           that of the pad, the exact ratio of their speeds over what the meshes lose between
 *           them.  The least over all parts and conditions is the wall.  Where something drives at
 *           that moment, as at a start, L is what the others leave of it, and never below nothing.
 * Corner    The greatest break torque, the least capacity, the losses as they are and the worst
 *           condition at once: torque at a part rises with each of the first three, so no other
 *           combination of them is worse.
 * Overload  The same wall with the teeth as they bear it for the time of the overload, turning as
 *           fast as they ever do.  That of a starter comes at the speeds of the start, flows
 *           inwards, and what the others take lightens it: they are left out.
 * Tower     What is legitimate for a neck in a tower shaft: what it carries in every condition; in
 *           each in which it carries outwards one overload at a time on a pad behind it, in place
 *           of what that pad takes then; and of what drives the overload or the summit of the
 *           curve, less what the meshes lose on the way in, with nothing taken by the others.
 * Seizure   of another accessory is static: its torque stops at its own neck.
 * Swapped   What the neck of one pad would do in another one.
 * Sources   docs/method/selectivity.md
 */
#ifndef TS_RATING_SELECTIVITY_H
#define TS_RATING_SELECTIVITY_H

#include "rating/drive_necks.h"
#include "rating/part_capacity.h"
#include "rating/tooth_capacity.h"
#include "response/drive_forced.h"

/* A torque that is met in a condition; TS_EVERY_CONDITION: in none. */
typedef struct ts_met_torque {
    double  T; /* N.m, >= 0; NaN: not known */
    int32_t condition;
} ts_met_torque;

typedef struct ts_wall {
    double   T;    /* N.m at the pad; INFINITY: no part that is known stands in the way           */
    uint32_t part; /* which one; TS_NOWHERE: none                                                 */
    double   g;    /* torque at the part over torque at the pad                                   */
    double   L;    /* N.m that the others take there                                              */
    int32_t  with; /* ... in this condition; TS_EVERY_CONDITION: nothing                          */
} ts_wall;

typedef struct ts_guard {
    uint32_t      pad;        /* TS_NOWHERE: a neck in a tower shaft                             */
    uint32_t      shaft;      /* where its torque is counted                                     */
    uint32_t      neck;       /* of the necks; TS_NOWHERE: none                                  */
    ts_met_torque run, start; /* the highest absorbed (carried outwards), and driven (inwards)   */
    double   plain_run, plain_start; /* N.m, the same without the overload of any pad          */
    ts_node  summit;     /* the point of its `curve` that `start` is; 0: of a condition      */
    uint32_t run_by;     /* of a neck in a tower shaft: the pad whose overload raises `run` ... */
    uint32_t start_by;   /* ... whose curve or overload of the start `start` is; TS_NOWHERE     */
    double   T_over;     /* N.m of the overload; 0: none, NaN: not known                    */
    double   t_over;     /* s                                                               */
    bool     at_start;   /* the overload is one of the start: it flows inwards */
    double   T_static;   /* N.m that the drive of the accessory holds; NaN: not told        */
    ts_met_torque legit; /* the highest of run, start and overload                          */
    ts_wall  once, lasting; /* met once; and for as long as the overload lasts                   */
    uint32_t reference;     /* the shaft to which the chart refers it: its box input           */
    double   refer;         /* torque there over torque here, the exact ratio alone            */
} ts_guard;

typedef struct ts_select_scratch ts_select_scratch; /* made by ts_select_prepare */

typedef struct ts_select {
    const ts_drive    *drive;
    const ts_teeth    *teeth;
    const ts_necks    *necks;
    ts_part_capacities parts;
    ts_tooth_capacity *teeth_once; /* [mesh] */
    ts_guard          *guards;
    uint32_t           count;
    uint32_t          *of_pad;   /* [pad]; TS_NOWHERE: no accessory */
    uint32_t          *of_shaft; /* [shaft]; of a neck in a tower shaft */
    double             f;        /* factor that a neck keeps to either side; NaN: not known */
    ts_select_scratch *scratch;
    /* Torsional vibration, of every tree in its states, for the fatigue of necks; NULL: not known.
     * Nothing here reads it; who solves both lends it. */
    const ts_drive_forced *forced;
    size_t                 forced_count;
} ts_select;

/* Memory for one drive, and for `more` parts beyond teeth and necks. */
ts_status ts_select_prepare(const ts_drive *drive, const ts_teeth *teeth, const ts_necks *necks,
                            size_t more, ts_arena *arena, ts_select *out);

/* Empties the list of parts and puts teeth and tower necks into it; others add theirs after it. */
void ts_select_gather(ts_select *select, ts_workings *workings);
/* Guards and walls of all that is in the list.  Allocates nothing. */
void ts_select_solve(ts_select *select, ts_workings *workings);

/* Torque at the part over torque at the guard; the part stands upstream of it, or on its shaft. */
double ts_select_transfer(const ts_select *select, const ts_guard *guard,
                          const ts_part_capacity *part);
/* N.m that the part of a wall bears, for as long as the wall is asked to stand. */
double ts_wall_bears(const ts_wall *wall);
/* Of part number `part`, from this guard on: its wall by itself. */
ts_wall ts_select_wall_of(const ts_select *select, const ts_guard *guard, uint32_t part);
/* The parts between the guard and its spool, the nearest first: writes at most `room` of them. */
size_t ts_select_upstream(const ts_select *select, const ts_guard *guard, uint32_t *parts,
                          size_t room);
/* The wall for a while of so many seconds (> 0): takes about 5 us a mesh of the way.  start: of a
 * torque that the guard drives with. */
ts_wall ts_select_wall_for(const ts_select *select, const ts_guard *guard, double seconds,
                           bool start);

/* What the neck of `other` would do in the place of `guard`: both must have a neck. */
typedef enum ts_swap_verdict {
    TS_SWAP_HOLDS,     /* far enough above the loads and below the wall       */
    TS_SWAP_NEAR,      /* between them, but nearer than the factor asks       */
    TS_SWAP_EARLY,     /* may break under a legitimate torque                 */
    TS_SWAP_LATE,      /* may let a part behind it break                      */
    TS_SWAP_NOT_KNOWN, /* a band, a load or a wall is not known               */
    TS_SWAP_VERDICTS
} ts_swap_verdict;
typedef struct ts_swap {
    ts_swap_verdict verdict;
    bool            fits; /* their splines do not differ by what the file says */
    ts_neck_limits  band;
} ts_swap;
ts_swap ts_select_swapped(const ts_select *select, const ts_guard *guard, const ts_guard *other);

/* "a tooth of %s breaks", with one %s for part->what. */
const char *ts_part_gives_way(ts_part_kind kind);

#endif
