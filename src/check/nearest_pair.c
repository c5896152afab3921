/* check/nearest_pair.c: which shift, addendum or tooth number would mend a pair that cannot run? */
#include "check/nearest_pair.h"

#include "check/visit.h"

typedef enum value { SHIFT, ADDENDUM, TEETH, VALUES } value;

/* Steps of the search, and the ranges of the file. */
static const struct {
    double step, least, most;
} searched[VALUES] = {
    [SHIFT]    = {0.02, -2.0, 2.0},
    [ADDENDUM] = {0.01, 0.01, 2.0},
    [TEETH]    = {1.0, 5.0, 2000.0},
};
#define STEPS_MOST 200
#define BISECTIONS 30
#define TIMES_MOST 3.0 /* as many teeth, or as few: beyond it is another drive */

/* What is to be mended, and where. */
typedef struct wish {
    const ts_check *check;
    uint32_t        mesh;
    int             gear; /* 0 or 1 of that mesh */
    unsigned        mend;
    ts_pair_bounds  bounds;
} wish;

static uint32_t gear_of(const wish *w)
{
    const ts_mesh *mesh = &w->check->train->meshes[w->mesh];

    return w->gear == 0 ? mesh->driver : mesh->driven;
}

static double present(const wish *w, value which)
{
    const ts_gear *gear = &w->check->train->gears[gear_of(w)];

    if (which == SHIFT)
        return gear->x.value;
    return which == TEETH ? (double)gear->teeth.value : gear->system->addendum.value;
}

static ts_cylindrical_pair_input changed(const ts_cylindrical_pair_input *like, bool first,
                                         value which, double number)
{
    ts_cylindrical_pair_input in = *like;

    if (which == ADDENDUM)
        in.rack.h_aPs = number;
    else if (which == SHIFT && first)
        in.x_1 = number;
    else if (which == SHIFT)
        in.x_2 = number;
    else if (first)
        in.z_1 = (int)number;
    else
        in.z_2 = (int)number;
    return in;
}

/* Would the mesh be mended, and no other mesh of the gear harmed? */
static bool mends(const wish *w, value which, double number)
{
    const ts_train *train = w->check->train;
    const uint32_t  gear  = gear_of(w);

    for (uint32_t m = 0; m < train->mesh_count; m++) {
        const ts_mesh             *mesh = &train->meshes[m];
        const ts_mesh_motion      *turn = &w->check->motion->meshes[m];
        const ts_cylindrical_pair *pair = &turn->pair;

        if (mesh->kind != TS_MESH_CYLINDRICAL || (mesh->driver != gear && mesh->driven != gear) ||
            !(pair->in.z_1 > 0)) /* without an input: not known, or two modules */
            continue;
        const unsigned before =
            turn->solved ? ts_pair_flaws(pair, &w->bounds) : (unsigned)TS_PAIR_FLAWS_ALL;
        const ts_cylindrical_pair_input in =
            changed(&pair->in, mesh->driver == gear, which, number);
        const unsigned barred = ~before | (m == w->mesh ? w->mend : 0U);
        if ((ts_pair_flaws_of(&in, &w->bounds) & barred) != 0)
            return false;
    }
    return true;
}

/* Between a number that does not mend and one that does, to the edge. */
static double edge(const wish *w, value which, double fails, double holds)
{
    for (int i = 0; i < BISECTIONS && which != TEETH; i++) {
        const double half = (fails + holds) / 2.0;

        if (mends(w, which, half))
            holds = half;
        else
            fails = half;
    }
    return holds;
}

static bool in_reach(value which, double from, double to)
{
    if (which == TEETH && (to > from * TIMES_MOST || to < from / TIMES_MOST))
        return false;
    return to >= searched[which].least && to <= searched[which].most;
}

/* NaN: none in reach. */
static double nearest(const wish *w, value which)
{
    const double from = present(w, which), step = searched[which].step;

    for (int i = 1; i <= STEPS_MOST; i++)
        for (int way = 1; way >= -1; way -= 2) {
            const double to = from + way * i * step;

            if (in_reach(which, from, to) && mends(w, which, to))
                return edge(w, which, to - way * step, to);
        }
    return (double)NAN;
}

/* ---- words ----------------------------------------------------------------------------------- */

static const char *bound_words(ts_check *check, double from, double to)
{
    return ts_phrase(check, "at %s %s", to > from ? "least" : "most",
                     ts_shown_outward(check, to, TS_KIND_NUMBER, to > from ? +1 : -1));
}

/* Of two gears the one that has less to change; NaN when neither can mend it. */
static double nearest_of_both(wish *w, int gear, value which)
{
    double best = (double)NAN, least = INFINITY;
    int    kept = gear < 0 ? 0 : gear;

    for (int g = 0; g < 2; g++) {
        w->gear = g;
        if (gear >= 0 && g != gear)
            continue;
        const double to = nearest(w, which), way = fabs(to - present(w, which));
        if (!(way < least))
            continue;
        least = way;
        best  = to;
        kept  = g;
    }
    w->gear = kept;
    return best;
}

const char *ts_pair_remedy(ts_check *check, uint32_t mesh, int gear, unsigned mend)
{
    const ts_measure *limit = &check->drive->limits.contact_ratio;
    wish              w     = {.check  = check,
                               .mesh   = mesh,
                               .mend   = mend | (unsigned)TS_FLAW_UNSOLVED,
                               .bounds = {TS_TIP_LEAST, ts_measure_known(*limit) ? limit->value : 1.0}};
    const char       *parts[VALUES];
    int               count = 0;

    for (int which = SHIFT; which < VALUES; which++) {
        const double to   = nearest_of_both(&w, gear, (value)which);
        const double from = present(&w, (value)which);

        if (isnan(to))
            continue;
        const char *bound = bound_words(check, from, to);
        const char *name  = ts_gear_name(check, gear_of(&w));
        parts[count++]    = which == SHIFT ? ts_phrase(check, "a shift of %s of %s", name, bound)
                            : which == ADDENDUM ? ts_phrase(check, "an addendum of %s", bound)
                                                : ts_phrase(check, "%s teeth for %s", bound, name);
    }
    if (count == 0)
        return NULL;
    const char *says = ts_phrase(check, "use %s", parts[0]);
    for (int i = 1; i < count; i++)
        says = ts_phrase(check, "%s%s %s", says,
                         i + 1 < count ? ","
                         : count > 2   ? ", or"
                                       : " or",
                         parts[i]);
    return says;
}
