/* search/drive_width.c: which tables were made already, and what do they say? */
#include "search/drive_width.h"

#include "search/drive_cowl.h"

#include <math.h>
#include <pthread.h>
#include <stdatomic.h>
#include <string.h>

static const double pi = 3.14159265358979323846;

enum { CONDITIONS_MOST = 40 }; /* of a drive file */

typedef _Atomic(ts_mesh_law *) law_slot;

/* The pairs of teeth of one plane: one module, turned by one input gear of one box, directly or by
 * a step shaft of that ratio. */
typedef struct shelf {
    uint32_t  box, module, z_in, take_off;
    uint32_t  z_first, z_second; /* 1 and 1: directly */
    double   *speed;             /* of the input gear, per condition */
    bool     *stands;            /* does it stand still there? */
    law_slot *laws;              /* [z_inner * stride + z_outer] */
} shelf;

struct ts_drive_width {
    ts_drive_width_wish wish;
    ts_arena           *arena; /* under the lock once the tables are open */
    pthread_mutex_t     lock;
    size_t              stride;
    shelf              *shelves;
    size_t              shelf_count;
    ts_mesh_rig       **idle[TS_ARRANGE_BOXES]; /* [box][..] rigs that no thread has */
    size_t              idle_count[TS_ARRANGE_BOXES];
    size_t              laws;
    bool                failed; /* did memory run out? */
};

/* ---- opening --------------------------------------------------------------------------------- */

static size_t greatest_teeth(const ts_arrange_problem *p)
{
    size_t most = p->z_most;
    for (size_t i = 0; i < p->idler_teeth_count; i++)
        most = p->idler_teeth[i] > most ? p->idler_teeth[i] : most;
    for (size_t b = 0; b < p->box_count; b++)
        for (size_t c = 0; c < p->boxes[b].choice_count; c++)
            most = p->boxes[b].choices[c].z_in > most ? p->boxes[b].choices[c].z_in : most;
    return most;
}

static bool is_of(const shelf *s, const shelf *other)
{
    return s->box == other->box && s->module == other->module && s->z_in == other->z_in &&
           s->take_off == other->take_off &&
           (uint64_t)s->z_first * other->z_second == (uint64_t)s->z_second * other->z_first;
}

static bool fill_shelf(ts_drive_width *w, const shelf *key, const ts_arrange_choice *choice)
{
    const size_t   count = w->wish.problem->condition_count;
    const uint32_t box   = key->box;
    shelf         *s     = &w->shelves[w->shelf_count];
    for (size_t i = 0; i < w->shelf_count; i++)
        if (is_of(&w->shelves[i], key))
            return true;
    w->shelf_count++;
    *s = (shelf){.box      = box,
                 .module   = key->module,
                 .z_in     = key->z_in,
                 .take_off = key->take_off,
                 .z_first  = key->z_first,
                 .z_second = key->z_second,
                 .speed    = TS_TAKE(w->arena, double, count),
                 .stands   = TS_TAKE(w->arena, bool, count),
                 .laws     = TS_TAKE(w->arena, law_slot, w->stride * w->stride)};
    if (s->speed == NULL || s->stands == NULL || s->laws == NULL)
        return false;
    const ts_drive *drive = w->wish.drive;
    const int32_t   spool = drive->drive[w->wish.tapped[box]].spool;
    for (size_t c = 0; c < count; c++) {
        s->speed[c]  = choice->speed[c];
        s->stands[c] = !(drive->conditions[c].speed[spool].value > 0.0);
    }
    for (size_t i = 0; i < w->stride * w->stride; i++)
        atomic_init(&s->laws[i], NULL);
    return true;
}

static bool fill_choice(ts_drive_width *w, uint32_t box, const ts_arrange_choice *choice)
{
    const ts_arrange_box *frame = &w->wish.problem->boxes[box];
    shelf                 key   = {.box      = box,
                                   .module   = choice->module,
                                   .z_in     = choice->z_in,
                                   .take_off = choice->take_off,
                                   .z_first  = 1,
                                   .z_second = 1};
    if (!fill_shelf(w, &key, choice))
        return false;
    for (size_t i = 0; i < frame->step_count; i++) {
        const ts_arrange_step *step = &frame->steps[i];
        key.module   = step->module == TS_MODULE_SAME ? choice->module : step->module;
        key.z_first  = step->z;
        key.z_second = step->z_step;
        if (!fill_shelf(w, &key, choice))
            return false;
    }
    return true;
}

static bool fill_shelves(ts_drive_width *w)
{
    const ts_arrange_problem *p     = w->wish.problem;
    size_t                    count = 0;
    for (size_t b = 0; b < p->box_count; b++)
        count += p->boxes[b].choice_count * (1 + p->boxes[b].step_count);
    w->shelves = TS_TAKE(w->arena, shelf, count);
    if (w->shelves == NULL)
        return false;
    for (uint32_t b = 0; b < p->box_count; b++)
        for (size_t c = 0; c < p->boxes[b].choice_count; c++)
            if (!fill_choice(w, b, &p->boxes[b].choices[c]))
                return false;
    return true;
}

static ts_status open_rigs(ts_drive_width *w)
{
    for (size_t b = 0; b < w->wish.problem->box_count; b++) {
        w->idle[b] = TS_TAKE(w->arena, ts_mesh_rig *, w->wish.workers);
        if (w->idle[b] == NULL)
            return TS_NO_MEMORY;
        for (size_t i = 0; i < w->wish.workers; i++) {
            const ts_status status = ts_mesh_rig_open(w->wish.drive, w->wish.tapped[b], w->arena,
                                                      w->wish.allocator, &w->idle[b][i]);
            if (status != TS_OK)
                return status;
            w->idle_count[b]++;
        }
    }
    return TS_OK;
}

ts_status ts_drive_width_open(const ts_drive_width_wish *wish, ts_drive_width **out)
{
    ts_arena *arena = ts_arena_open(wish->allocator);
    *out            = NULL;
    if (arena == NULL)
        return TS_NO_MEMORY;
    ts_drive_width *w = TS_TAKE(arena, ts_drive_width, 1);
    if (w == NULL || pthread_mutex_init(&w->lock, NULL) != 0) {
        ts_arena_close(arena);
        return TS_NO_MEMORY;
    }
    w->wish  = *wish;
    w->arena = arena;
    if (wish->problem->condition_count > CONDITIONS_MOST) {
        ts_drive_width_close(w);
        return TS_NOT_UNDERSTOOD;
    }
    w->stride        = greatest_teeth(wish->problem) + 1;
    ts_status status = fill_shelves(w) ? open_rigs(w) : TS_NO_MEMORY;
    if (status != TS_OK) {
        ts_drive_width_close(w);
        return status;
    }
    *out = w;
    return TS_OK;
}

void ts_drive_width_close(ts_drive_width *w)
{
    if (w == NULL)
        return;
    for (size_t b = 0; b < TS_ARRANGE_BOXES; b++)
        for (size_t i = 0; i < w->idle_count[b]; i++)
            ts_mesh_rig_close(w->idle[b][i]);
    (void)pthread_mutex_destroy(&w->lock);
    ts_arena_close(w->arena);
}

size_t ts_drive_width_laws(const ts_drive_width *w)
{
    return w->laws;
}

bool ts_drive_width_failed(const ts_drive_width *w)
{
    return w->failed;
}

/* ---- one law --------------------------------------------------------------------------------- */

static const shelf *shelf_of(const ts_drive_width *w, const ts_arrange_mesh *mesh)
{
    const shelf key = {.box      = mesh->box,
                       .module   = mesh->module,
                       .z_in     = mesh->z_in,
                       .take_off = mesh->take_off,
                       .z_first  = mesh->z_first > 0 ? mesh->z_first : 1,
                       .z_second = mesh->z_second > 0 ? mesh->z_second : 1};
    for (size_t i = 0; i < w->shelf_count; i++)
        if (is_of(&w->shelves[i], &key))
            return &w->shelves[i];
    return NULL;
}

/* Room for a law, and a rig; false without memory. */
static bool borrow(ts_drive_width *w, uint32_t box, ts_mesh_law **law, ts_mesh_rig **rig)
{
    (void)pthread_mutex_lock(&w->lock);
    const size_t numbers = ts_mesh_law_size(w->wish.problem->condition_count);
    *law                 = TS_TAKE(w->arena, ts_mesh_law, 1);
    if (*law != NULL)
        (*law)->ln_damage = TS_TAKE(w->arena, float, numbers);
    if (*law != NULL)
        (*law)->w_most = TS_TAKE(w->arena, double, w->wish.problem->condition_count *TS_LAW_PLACES);
    const bool all = *law != NULL && (*law)->ln_damage != NULL && (*law)->w_most != NULL &&
                     w->idle_count[box] > 0;
    if (all)
        *rig = w->idle[box][--w->idle_count[box]];
    w->failed = w->failed || !all;
    (void)pthread_mutex_unlock(&w->lock);
    return all;
}

static void give_back(ts_drive_width *w, uint32_t box, ts_mesh_rig *rig, bool kept)
{
    (void)pthread_mutex_lock(&w->lock);
    w->idle[box][w->idle_count[box]++] = rig;
    w->laws += kept ? 1 : 0;
    (void)pthread_mutex_unlock(&w->lock);
}

static void make(const ts_drive_width *w, const shelf *s, const ts_arrange_mesh *mesh,
                 ts_mesh_rig *rig, ts_mesh_law *law)
{
    double       omega[64];
    const size_t count = w->wish.problem->condition_count;
    for (size_t c = 0; c < count; c++)
        omega[c] = s->stands[c]
                       ? 0.0
                       : s->speed[c] * mesh->z_in * s->z_second / s->z_first / mesh->z_inner;
    const ts_law_pair pair = {.z_1     = (int)mesh->z_inner,
                              .z_2     = (int)mesh->z_outer,
                              .m_n     = w->wish.m_n[mesh->module],
                              .omega_1 = omega};
    (void)ts_mesh_law_make(rig, &pair, law);
}

/* Two threads may make the same law at once; both come to the same, and one of them stays. */
static const ts_mesh_law *law_of(ts_drive_width *w, const shelf *s, const ts_arrange_mesh *mesh)
{
    law_slot    *slot = &s->laws[mesh->z_inner * w->stride + mesh->z_outer];
    ts_mesh_law *law  = atomic_load_explicit(slot, memory_order_acquire);
    ts_mesh_rig *rig  = NULL;
    if (law != NULL)
        return law;
    if (!borrow(w, mesh->box, &law, &rig))
        return NULL;
    make(w, s, mesh, rig, law);
    ts_mesh_law *before = NULL;
    const bool   kept   = atomic_compare_exchange_strong_explicit(
            slot, &before, law, memory_order_acq_rel, memory_order_acquire);
    give_back(w, mesh->box, rig, kept);
    return kept ? law : before;
}

/* ---- a width --------------------------------------------------------------------------------- */

static bool meets_casing(const ts_drive_width *w, const ts_arrange_mesh *mesh, uint32_t z)
{
    return ts_drive_gear_meets_casing(w->wish.drive, w->wish.tapped[mesh->box],
                                      w->wish.problem->modules[mesh->module],
                                      w->wish.m_n[mesh->module], z);
}

/* Far beyond what a gear may have, in steps: how wide it may be is for the search to say, which
 * also asks what would be if it could be wider. */
#define WIDTH_OVER_DIAMETER 4.0
static long most_steps(const ts_arrange_problem *p, const ts_arrange_mesh *mesh)
{
    const uint32_t z = mesh->z_inner < mesh->z_outer ? mesh->z_inner : mesh->z_outer;
    return (long)(WIDTH_OVER_DIAMETER * p->modules[mesh->module] * z / p->width_step + 1e-9);
}

/* A table with which this mesh can be, or NULL. */
static const ts_mesh_law *usable_law(ts_drive_width *w, const shelf *s, const ts_arrange_mesh *mesh)
{
    if (s == NULL || meets_casing(w, mesh, mesh->z_inner) || meets_casing(w, mesh, mesh->z_outer))
        return NULL;
    const ts_mesh_law *law = law_of(w, s, mesh);
    return law != NULL && law->fault == NULL ? law : NULL;
}

double ts_drive_width_of(void *context, const ts_arrange_mesh *mesh)
{
    ts_drive_width           *w   = context;
    const ts_arrange_problem *p   = w->wish.problem;
    const shelf              *s   = shelf_of(w, mesh);
    const ts_mesh_law        *law = usable_law(w, s, mesh);
    double                    force[CONDITIONS_MOST];

    if (law == NULL)
        return INFINITY;
    for (size_t c = 0; c < p->condition_count; c++)
        force[c] = s->stands[c] ? 0.0 : mesh->force[c];
    const ts_law_load load = {.condition_count = p->condition_count,
                              .force           = force,
                              .reversed        = {mesh->reversed_inner, mesh->reversed_outer}};
    /* Each condition by itself says what is too narrow; it is mostly what is needed, too. */
    const double least = ts_mesh_law_least(law, &load) / p->width_step;
    const long   most  = most_steps(p, mesh);
    const long   first = (long)(p->width_least / p->width_step + 1e-9);
    if (!(least <= (double)most))
        return INFINITY;
    const long narrow = (long)ceil(least - 1e-9);
    long       low = narrow > first ? narrow : first, high = low, stride = 1;
    if (low > most)
        return INFINITY;
    while (!ts_mesh_law_bears(law, &load, (double)high * p->width_step)) {
        if (high == most)
            return INFINITY;
        low  = high;
        high = high + stride < most ? high + stride : most;
        stride *= 2;
    }
    while (high - low > 1) {
        const long middle = low + (high - low) / 2;
        if (ts_mesh_law_bears(law, &load, (double)middle * p->width_step))
            high = middle;
        else
            low = middle;
    }
    return (double)high * p->width_step;
}

/* Of one mesh, as far as it asks for less than what is known. */
static void lower(ts_drive_width *w, const shelf *s, const ts_arrange_mesh *mesh,
                  double *per_newton)
{
    const ts_mesh_law *law         = usable_law(w, s, mesh);
    const bool         reversed[2] = {mesh->reversed_inner, mesh->reversed_outer};
    for (size_t c = 0; law != NULL && c < mesh->condition_count; c++)
        per_newton[c] =
            fmin(per_newton[c], s->stands[c] ? 0.0 : ts_mesh_law_per_newton(law, c, reversed));
}

void ts_drive_width_least(void *context, const ts_arrange_gear *gear, double *per_newton)
{
    ts_drive_width *w    = context;
    ts_arrange_mesh mesh = {.box             = gear->box,
                            .module          = gear->module,
                            .z_in            = gear->z_in,
                            .take_off        = gear->take_off,
                            .z_first         = gear->z_first,
                            .z_second        = gear->z_second,
                            .condition_count = gear->condition_count};
    const shelf    *s    = shelf_of(w, &mesh);

    for (size_t c = 0; c < gear->condition_count; c++)
        per_newton[c] = INFINITY;
    for (size_t i = 0; s != NULL && i < gear->mate_count; i++) {
        mesh.z_inner        = gear->z;
        mesh.z_outer        = gear->mates[i];
        mesh.reversed_inner = gear->reversed;
        mesh.reversed_outer = false;
        lower(w, s, &mesh, per_newton);
        mesh.z_inner        = gear->mates[i];
        mesh.z_outer        = gear->z;
        mesh.reversed_inner = false;
        mesh.reversed_outer = gear->reversed;
        lower(w, s, &mesh, per_newton);
    }
}

double ts_drive_least_width(void *context, const ts_arrange_mesh *mesh)
{
    const ts_drive_width *w = context;
    if (meets_casing(w, mesh, mesh->z_inner) || meets_casing(w, mesh, mesh->z_outer))
        return INFINITY;
    return 0.0;
}

double ts_drive_gear_mass(void *context, uint32_t module, uint32_t z, double width)
{
    const ts_drive_width *w = context;
    const double          d = w->wish.problem->modules[module] * (double)z;
    return w->wish.density * pi / 4.0 * d * d * width;
}
