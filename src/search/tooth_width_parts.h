/* search/tooth_width_parts.h: one trial of widths, and the way through the trials.  For
 * tooth_width*.c alone. */
#ifndef TS_SEARCH_TOOTH_WIDTH_PARTS_H
#define TS_SEARCH_TOOTH_WIDTH_PARTS_H

#include "search/tooth_width.h"

typedef struct ts_sizing {
    const ts_width_rig *rig;
    ts_width_plan      *plan;
    double              step;         /* m */
    long               *w;            /* [gear] width in steps; 0: no mesh of it is sized     */
    long               *kept;         /* [gear] the same before a trial that may be taken back */
    long               *floor_steps;  /* [gear] what it is not made narrower than             */
    double             *floor;        /* [gear] m that it keeps for meshes that are not sized */
    uint32_t           *order;        /* [plan gear] indices of gears, heavy ones first       */
    long               *least, *most; /* [mesh] of the common width                           */
} ts_sizing;

static inline bool ts_sizing_free(const ts_sizing *s, uint32_t mesh)
{
    return s->plan->meshes[mesh].state != TS_MESH_NOT_SIZED;
}

/* Is that gear one of the two? */
static inline bool ts_sizing_touches(const ts_sizing *s, uint32_t mesh, uint32_t gear)
{
    return s->rig->train->meshes[mesh].driver == gear || s->rig->train->meshes[mesh].driven == gear;
}

/* Steps that both gears of a mesh have. */
static inline long ts_sizing_common(const ts_sizing *s, uint32_t mesh)
{
    const ts_mesh *own = &s->rig->train->meshes[mesh];

    return s->w[own->driver] < s->w[own->driven] ? s->w[own->driver] : s->w[own->driven];
}

/* m of so many steps, and of a gear. */
double ts_sizing_width(const ts_sizing *s, long steps);
double ts_sizing_gear(const ts_sizing *s, uint32_t gear);

/* kg of one gear of that width; NaN: its geometry is not known. */
double ts_sizing_gear_mass(const ts_sizing *s, uint32_t gear, double b);

/* Gives the gears their widths and rates the whole drive. */
ts_status ts_sizing_rate(const ts_sizing *s);
bool      ts_sizing_holds(const ts_sizing *s, uint32_t mesh);
/* Do all meshes that were not given up? */
bool ts_sizing_all_hold(const ts_sizing *s);

/* From the least widths to the lightest that hold: up, down, and to and fro. */
ts_status ts_sizing_climb(ts_sizing *s);

#endif
