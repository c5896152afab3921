/* rating/drive_teeth_parts.h: the steps of ts_teeth_solve, in their order.  For src/rating alone.
 */
#ifndef TS_RATING_DRIVE_TEETH_PARTS_H
#define TS_RATING_DRIVE_TEETH_PARTS_H

#include "rating/drive_teeth.h"

/* The load that a flank of a gear meets at most. */
typedef struct ts_flank_peak {
    double   w; /* N/m; 0: never */
    uint32_t mesh;
    uint32_t condition;
} ts_flank_peak;

struct ts_teeth_scratch {
    ts_flank_peak *peaks;  /* [gear * 2 + flank]                                      */
    uint32_t      *first;  /* [gear]: where its meshes begin in the list; one more at the end */
    uint32_t      *mesh;   /* the meshes of every gear, gear by gear                  */
    ts_wear       *wears;  /* what wears one flank ...                                */
    ts_flank_life *places; /* ... and where each of it comes from                     */
    ts_input      *parts;  /* ... and how much it does                                */
};

typedef struct ts_teeth_case {
    const ts_drive *drive;
    const ts_train *train;
    ts_teeth       *teeth;
    ts_workings    *workings;
} ts_teeth_case;

/* Strengths, tolerances and all that the loads do not change, of every mesh. */
void ts_teeth_prepare_mesh(const ts_teeth_case *c, uint32_t mesh);
/* Lends what the mesh itself has computed of its pair to what the workings are about. */
void ts_teeth_borrow_pair(const ts_motion *motion, uint32_t mesh, ts_workings *workings);
/* One gear of it, g 0 or 1; returns what the file lacks, or NULL, and the tolerance of the helix
 * slope. */
const char *ts_teeth_fill_gear(const ts_teeth_case *c, uint32_t mesh, int g, ts_iso6336_gear *out,
                               double *f_Hbeta);
/* The steel of it alone; returns what is missing. */
const char *ts_teeth_fill_steel(const ts_teeth_case *c, const ts_gear *gear, int g,
                                ts_iso6336_gear *out);
/* What work hardening asks of soft gears and of their hard mates. */
void ts_teeth_note_soft(const ts_teeth_case *c, ts_subject own, const ts_iso6336_mesh *in);
/* Torque, cycles and load per width of one mesh in one condition. */
void ts_teeth_load(const ts_teeth_case *c, uint32_t mesh, uint32_t condition);
/* The largest load of every flank. */
void ts_teeth_peaks(const ts_teeth_case *c);
/* Stresses and safeties, once all peaks are known. */
void ts_teeth_rate(const ts_teeth_case *c, uint32_t mesh, uint32_t condition);
/* R of the root of one gear of it (side 0 or 1), noted as R_1 or R_2. */
double ts_teeth_stress_ratio(const ts_teeth_case *c, uint32_t mesh, uint32_t condition, int side);
/* The mesh itself lends its results, so that they are found where its forces are. */
void ts_teeth_lend(const ts_teeth_case *c, uint32_t mesh, uint32_t condition);
/* All conditions together, flank by flank, and what sets each mesh. */
void ts_teeth_add_up(const ts_teeth_case *c);

/* How `count` gathered wears (scratch) come to the safety S of a gear of that mesh. */
void ts_teeth_note_safety(const ts_teeth_case *c, uint32_t mesh, int side, ts_rated_stress stress,
                          size_t count, double S);

/* The same of bevels: before any load, and in one condition once all peaks are known. */
void ts_bevels_prepare_mesh(const ts_teeth_case *c, uint32_t mesh);
void ts_bevels_rate(const ts_teeth_case *c, uint32_t mesh, uint32_t condition);
/* By the second opinion, which asks for its own geometry factors. */
void ts_bevels_prepare_second(const ts_teeth_case *c, uint32_t mesh);
void ts_bevels_rate_second(const ts_teeth_case *c, uint32_t mesh, uint32_t condition);

static inline bool ts_teeth_is_bevel(const ts_teeth_case *c, uint32_t mesh)
{
    return c->train->meshes[mesh].kind == TS_MESH_BEVEL;
}

static inline ts_bevels_mesh *ts_bevels_of(const ts_teeth_case *c, uint32_t mesh)
{
    return &c->teeth->bevels.meshes[c->teeth->bevels.number[mesh]];
}

static inline ts_bevels_case *ts_bevels_at(const ts_teeth_case *c, uint32_t mesh,
                                           uint32_t condition)
{
    const ts_bevels *bevels = &c->teeth->bevels;
    return &bevels->cases[(size_t)condition * bevels->count + bevels->number[mesh]];
}

static inline ts_mesh_case *ts_teeth_at(const ts_teeth_case *c, uint32_t mesh, uint32_t condition)
{
    return &c->teeth->cases[(size_t)condition * c->train->mesh_count + mesh];
}

static inline ts_subject ts_teeth_subject(const ts_teeth_case *c, uint32_t mesh, int32_t condition)
{
    return (ts_subject){c->teeth->strength[mesh].subject, condition};
}

#endif
