/* rating/drive_opinion_parts.h: the steps of ts_opinion_solve, in their order.  For src/rating
 * alone. */
#ifndef TS_RATING_DRIVE_OPINION_PARTS_H
#define TS_RATING_DRIVE_OPINION_PARTS_H

#include "rating/drive_opinion.h"

typedef struct ts_opinion_case {
    const ts_drive *drive;
    const ts_train *train;
    const ts_teeth *teeth;
    ts_opinion     *opinion;
    ts_workings    *workings;
} ts_opinion_case;

/* What the loads do not change.  Returns what the standard lacks, or NULL. */
const char *ts_opinion_prepare_mesh(const ts_opinion_case *c, uint32_t mesh);
/* One condition that stands. */
void ts_opinion_rate(const ts_opinion_case *c, uint32_t mesh, uint32_t condition);
/* The same of bevels, by AGMA 2003 and ISO 10300, where the file asks for the former. */
void ts_opinion_compare_bevels(const ts_opinion_case *c, uint32_t mesh);

static inline ts_agma2101_rating *ts_opinion_at(const ts_opinion_case *c, uint32_t mesh,
                                                uint32_t condition)
{
    return &c->opinion->cases[(size_t)condition * c->train->mesh_count + mesh];
}

/* What ISO 6336 makes of the same. */
static inline const ts_mesh_case *ts_opinion_first(const ts_opinion_case *c, uint32_t mesh,
                                                   uint32_t condition)
{
    return &c->teeth->cases[(size_t)condition * c->train->mesh_count + mesh];
}

/* Of the workings: of this standard, and of ISO 6336. */
static inline ts_subject ts_opinion_subject(const ts_opinion_case *c, uint32_t mesh,
                                            int32_t condition)
{
    return (ts_subject){c->opinion->mesh[mesh].subject, condition};
}

static inline ts_subject ts_opinion_first_subject(const ts_opinion_case *c, uint32_t mesh,
                                                  int32_t condition)
{
    return (ts_subject){c->teeth->strength[mesh].subject, condition};
}

#endif
