/* rating/drive_rubbing_parts.h: the steps of ts_rubbing_solve, in their order.  For src/rating
 * alone. */
#ifndef TS_RATING_DRIVE_RUBBING_PARTS_H
#define TS_RATING_DRIVE_RUBBING_PARTS_H

#include "rating/drive_rubbing.h"

typedef struct ts_rubbing_desk {
    const ts_drive *drive;
    const ts_train *train;
    const ts_teeth *teeth;
    ts_rubbing     *rubbing;
    ts_workings    *workings;
} ts_rubbing_desk;

/* The oil, and how thick it is in every condition. */
void ts_rubbing_solve_oil(const ts_rubbing_desk *desk);

/* One mesh in all conditions: returns what the file lacks for it, or NULL. */
const char *ts_rubbing_rate_mesh(const ts_rubbing_desk *desk, uint32_t mesh);
const char *ts_rubbing_rate_bevels(const ts_rubbing_desk *desk, uint32_t mesh);
const char *ts_rubbing_film_mesh(const ts_rubbing_desk *desk, uint32_t mesh);

/* ---- what these share (rubbing_mesh.c) ---- */

/* 13795 J/(m2.K.s^0.5), of steel. */
#define TS_STEEL_B_M 13795.0

/* What of a mesh all conditions and both methods share; noted about the mesh. */
typedef struct ts_rubbing_mesh {
    double Ra[2];
    double X_S, phi_E;
    int    grade; /* coarser class of both */
    int    mates;
} ts_rubbing_mesh;

/* Returns what is missing. */
const char *ts_rubbing_open_mesh(const ts_rubbing_desk *desk, uint32_t mesh, ts_rubbing_mesh *out);
/* A method of rating a mesh whose preparation depends on which gear drives. */
typedef struct ts_rubbing_method {
    void (*prepare)(const ts_rubbing_desk *desk, uint32_t m, const ts_rubbing_mesh *mesh,
                    int driver, void *prepared);
    void (*rate)(const ts_rubbing_desk *desk, uint32_t m, const void *prepared, uint32_t condition);
} ts_rubbing_method;

/* The mesh by that method in all its conditions, prepared once for each driver; `prepared` is room
 * for what the method prepares.  Returns what is missing. */
const char *ts_rubbing_by_method(const ts_rubbing_desk *desk, uint32_t m,
                                 const ts_rubbing_method *method, void *prepared);
/* Lends the oil of a condition and what the tooth forces ask by other names. */
void ts_rubbing_lend(const ts_rubbing_desk *desk, uint32_t mesh, uint32_t condition);

/* Which gear of the mesh drives in that condition, 1 or 2. */
static inline int ts_rubbing_driver(const ts_rubbing_desk *desk, uint32_t mesh, uint32_t condition)
{
    const size_t at = (size_t)condition * desk->train->mesh_count + mesh;
    return desk->teeth->power->mesh[at].flow == TS_FLOW_INWARD ? 2 : 1;
}

static inline const ts_mesh_case *ts_rubbing_teeth_case(const ts_rubbing_desk *desk, uint32_t mesh,
                                                        uint32_t condition)
{
    return &desk->teeth->cases[(size_t)condition * desk->train->mesh_count + mesh];
}

static inline ts_scuffing_case *ts_rubbing_case(const ts_rubbing_desk *desk, uint32_t mesh,
                                                uint32_t condition)
{
    return &desk->rubbing->cases[(size_t)condition * desk->train->mesh_count + mesh];
}

static inline ts_film_of_case *ts_rubbing_film(const ts_rubbing_desk *desk, uint32_t mesh,
                                               uint32_t condition)
{
    return &desk->rubbing->films[(size_t)condition * desk->train->mesh_count + mesh];
}

static inline ts_subject ts_rubbing_subject(const ts_rubbing_desk *desk, uint32_t mesh,
                                            int32_t condition)
{
    return (ts_subject){desk->teeth->strength[mesh].subject, condition};
}

#endif
