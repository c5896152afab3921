/* search/arrange_least.c: what width must a gear have at least, whatever it meshes with?
 *
 * The model says so per newton of each condition.  A width is never less than the most that any one
 * condition asks for by itself.
 */
#include "search/arrange_tables.h"

#include <math.h>

typedef struct asker {
    ts_pair_tables *plane;
    uint32_t        teeth[TS_ARRANGE_TEETH + 1]; /* of every gear that the plane may have */
    size_t          count;
    double         *needs; /* [(2 * index + reversed) * conditions + c], m/N */
} asker;

static void list_teeth(asker *k)
{
    const ts_pair_tables     *pair                      = k->plane;
    const ts_arrange_problem *p                         = pair->tables->problem;
    bool                      has[TS_ARRANGE_TEETH + 1] = {false};

    for (size_t a = 0; a < p->accessory_count; a++)
        for (uint32_t z = pair->window[a].least; z <= pair->window[a].most; z++)
            has[z] = true;
    for (size_t i = 0; i < p->idler_teeth_count && p->idlers_in_row > 0; i++)
        has[p->idler_teeth[i]] = true;
    for (size_t i = 0; i < pair->frame->step_count; i++) {
        has[pair->frame->steps[i].z]      = true;
        has[pair->frame->steps[i].z_step] = true;
    }
    has[pair->z_in] = true;
    for (uint32_t z = 1; z <= TS_ARRANGE_TEETH; z++)
        if (has[z])
            k->teeth[k->count++] = z;
}

static double *need_of(const asker *k, size_t index, size_t reversed)
{
    return &k->needs[(2 * index + reversed) * k->plane->tables->problem->condition_count];
}

/* Those of its mates that a gear may mesh with. */
static size_t mates_of(const asker *k, uint32_t z, uint32_t *mates)
{
    const ts_arrange_tables *t     = k->plane->tables;
    size_t                   count = 0;
    for (size_t i = 0; i < k->count; i++)
        if (t->coprime[z * t->stride + k->teeth[i]] != 0)
            mates[count++] = k->teeth[i];
    return count;
}

static void ask(asker *k)
{
    uint32_t                  mates[TS_ARRANGE_TEETH + 1];
    const ts_pair_tables     *pair = k->plane;
    const ts_arrange_problem *p    = pair->tables->problem;
    ts_arrange_gear           gear = {.box             = pair->box_index,
                                      .module          = pair->module_index,
                                      .z_in            = pair->z_in,
                                      .take_off        = pair->take_off,
                                      .z_first         = pair->z_first,
                                      .z_second        = pair->z_second,
                                      .mates           = mates,
                                      .condition_count = p->condition_count};

    for (size_t i = 0; i < k->count; i++)
        for (size_t reversed = 0; reversed < 2; reversed++) {
            gear.z          = k->teeth[i];
            gear.mate_count = mates_of(k, gear.z, mates);
            gear.reversed   = reversed != 0;
            p->model.least(p->model.context, &gear, need_of(k, i, reversed));
        }
}

/* Each set has loads of its own; the most that any condition asks for is needed at least. */
static void fill(const asker *k, uint16_t *steps)
{
    const ts_pair_tables *pair       = k->plane;
    const size_t          conditions = pair->tables->problem->condition_count;
    const double          step       = pair->tables->problem->width_step;

    for (size_t set = 1; set <= pair->tables->all; set++)
        for (size_t reversed = 0; reversed < 2; reversed++)
            for (size_t i = 0; i < k->count; i++) {
                const double *needs = need_of(k, i, reversed);
                const double *force = &pair->forces[set * conditions];
                double        most  = 0.0;
                for (size_t c = 0; c < conditions; c++)
                    if (needs[c] > 0.0 && fabs(force[c]) > 0.0)
                        most = fmax(most, fabs(force[c]) * needs[c]);
                steps[(2 * set + reversed) * pair->tables->stride + k->teeth[i]] =
                    (uint16_t)ts_steps_of(most / step);
            }
}

bool ts_plane_ask_least(ts_pair_tables *plane, ts_arena *arena)
{
    const ts_arrange_problem *p     = plane->tables->problem;
    const size_t              sets  = (size_t)plane->tables->all + 1;
    asker                     k     = {.plane = plane};
    uint16_t                 *steps = TS_TAKE(arena, uint16_t, 2 * sets * plane->tables->stride);

    list_teeth(&k);
    k.needs = TS_TAKE(arena, double, 2 * k.count * p->condition_count);
    if (ts_arena_failed(arena))
        return false;
    ask(&k);
    fill(&k, steps);
    plane->least_steps = steps;
    return true;
}
