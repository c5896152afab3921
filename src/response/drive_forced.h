/* response/drive_forced.h: by how much does the torque in a drive swing in each condition, and what
 * swings it?
 *
 * Shaken    By the teeth of every mesh, once and twice a tooth; by the pitch of each of its gears,
 *           once a turn; by every accessory, a ripple of its torque so many times a turn.
 * Sum       Each shakes at a frequency of its own and no error is likely to be as large as its
 *           tolerance beside all others: the root of the sum of squares of the amplitudes (common
 *           practice, no source).  It swings at the root of the mean of their squared frequencies,
 *           weighed by their squared amplitudes (S. O. Rice, Mathematical Analysis of Random Noise,
 *           1945: the rate of upward crossings of the mean; from memory).
 * Linear    Flanks in contact.  Where the swing of a mesh is above the torque that it carries they
 *           part, and the swing is only told to be above it.
 * Damping   Of a mesh and of a shaft, as shares of critical of the two bodies that it joins by
 *           themselves: `mesh damping` and `shaft damping` of the record `seizure`.
 * Sources   docs/method/torsion.md
 */
#ifndef TS_RESPONSE_DRIVE_FORCED_H
#define TS_RESPONSE_DRIVE_FORCED_H

#include "response/drive_torsion.h"
#include "response/forced_torsion.h"

typedef enum ts_shaker { TS_SHAKER_TEETH, TS_SHAKER_TURN, TS_SHAKER_ACCESSORY } ts_shaker;

typedef struct ts_shake_source {
    ts_shaker kind;
    uint32_t  mesh;      /* of teeth and turns; TS_NOWHERE                   */
    int       side;      /* of a turn: 0 its driver, 1 its driven gear       */
    int32_t   accessory; /* that ripples; -1                                 */
    int       order;     /* of teeth, of turns: how many times               */
    double    frequency; /* Hz                                               */
} ts_shake_source;

#define TS_NEAR_A_MODE 0.10 /* meets a natural frequency; common practice, no source */

/* What swings a spring from sources near a natural frequency of its tree. */
typedef struct ts_torque_near {
    double          swing;  /* N.m, amplitude of all of them together, as that of all sources */
    double          most;   /* N.m, of it by the strongest of them ...                        */
    ts_shake_source source; /* ... which is this ...                                          */
    size_t          mode;   /* ... near this one of twist->modes; SIZE_MAX: there is none     */
} ts_torque_near;

/* One spring in one condition; torques are those of its outer body. */
typedef struct ts_torque_swing {
    double          mean;   /* N.m, that it carries; >= 0                 */
    double          swing;  /* N.m, amplitude of all together; NaN: not computed */
    double          rate;   /* Hz, swings a second: Rice's rate of the sum, 0 without a swing */
    double          sum;    /* N.m, what it never exceeds: the sum of all amplitudes      */
    double          most;   /* N.m, of it by the strongest source alone ... */
    ts_shake_source source; /* ... which is this                           */
    ts_torque_near  near;
} ts_torque_swing;

typedef struct ts_drive_forced {
    const ts_drive_twist *twist;
    uint32_t              condition_count;
    bool                 *here;   /* [condition] is the drive in the state of the twist then?   */
    ts_torque_swing      *swings; /* [condition * spring_count + spring]                      */
    double                mesh_damping, shaft_damping;
    size_t                ripples_assumed; /* accessories whose ripple the file does not tell  */
    ts_twist_fault        fault;
} ts_drive_forced;

/* What is asked of others: amplitudes of the errors along the line of action. */
typedef struct ts_forced_question {
    const ts_drive       *drive;
    const ts_power       *power;
    const ts_drive_twist *twist;   /* computed */
    const double         *e_teeth; /* [mesh] m, once a tooth; NaN: not known, counts as none      */
    const double         *e_turn; /* [2 * mesh + side] m, once a turn; the same                   */
} ts_forced_question;

#define TS_RIPPLE_ASSUMED                                                                          \
    0.05 /* of the torque of an accessory, once a turn; common practice,                           \
            no source */
#define TS_SECOND_HARMONIC                                                                         \
    0.25 /* of an error twice a tooth over that once a tooth; common                               \
            practice, no source */

ts_status ts_drive_force(const ts_forced_question *question, ts_arena *arena, ts_drive_forced *out);

/* N.m.s/rad or N.s/m of a spring that is so far from critical by itself. */
double ts_twist_damper(const ts_drive_twist *twist, size_t spring, double mesh, double shaft);

/* The swing of the torque of the driven gear of a mesh, in the tube of a radial shaft, or at the
 * rotor of an accessory (a neck
 * stands there): of that state of its tree in which the condition is.  NULL: there is none. */
const ts_torque_swing *ts_forced_at_mesh(const ts_drive_forced *forced, size_t count,
                                         uint32_t condition, uint32_t mesh);
const ts_torque_swing *ts_forced_at_tube(const ts_drive_forced *forced, size_t count,
                                         uint32_t condition, uint32_t shaft);
const ts_torque_swing *ts_forced_at_accessory(const ts_drive_forced *forced, size_t count,
                                              uint32_t condition, int32_t accessory);

static inline const ts_torque_swing *ts_forced_spring(const ts_drive_forced *forced,
                                                      uint32_t condition, size_t spring)
{
    return &forced->swings[(size_t)condition * forced->twist->model.spring_count + spring];
}

#endif
