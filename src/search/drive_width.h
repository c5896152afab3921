/* search/drive_width.h: which face does a mesh of a drive need, for the search of arrangements?
 *
 * Each pair of teeth is tabulated when it is first asked about (rating/mesh_law.h), whichever
 * thread asks; afterwards a width is a matter of adding up.  The same question has the same answer
 * from every thread.
 */
#ifndef TS_SEARCH_DRIVE_WIDTH_H
#define TS_SEARCH_DRIVE_WIDTH_H

#include "rating/mesh_law.h"
#include "search/arrange_problem.h"

typedef struct ts_drive_width ts_drive_width;

/* What the tables are made for.  Everything must outlive them. */
typedef struct ts_drive_width_wish {
    const ts_drive           *drive;
    const ts_arrange_problem *problem; /* its model need not be filled in yet           */
    const size_t             *tapped;  /* [box] index into drive->drive                 */
    const double             *m_n;     /* [module] m, normal; the problem's are transverse */
    double                    density; /* kg/m3 of a gear's pitch cylinder              */
    size_t                    workers; /* threads that may ask at one time              */
    const ts_allocator       *allocator;
} ts_drive_width_wish;

ts_status ts_drive_width_open(const ts_drive_width_wish *wish, ts_drive_width **out);
void      ts_drive_width_close(ts_drive_width *widths); /* NULL is allowed */

/* For ts_arrange_model; `context` is the ts_drive_width. */
double ts_drive_width_of(void *context, const ts_arrange_mesh *mesh);
/* What a gear needs at least per newton of each condition, for bounds. */
void ts_drive_width_least(void *context, const ts_arrange_gear *gear, double *per_newton);
/* The same as if no tooth were ever too weak: none, where the gears clear the casing.  As such
 * `proportional`. */
double ts_drive_least_width(void *context, const ts_arrange_mesh *mesh);
double ts_drive_gear_mass(void *context, uint32_t module, uint32_t z, double width);

/* How many pairs of teeth were tabulated. */
size_t ts_drive_width_laws(const ts_drive_width *widths);
/* Did memory run out?  Then some width was told to be infinite that may not be. */
bool ts_drive_width_failed(const ts_drive_width *widths);

#endif
