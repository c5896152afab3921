/* rating/drive_opinion.c: in which order is a drive rated by a second standard, and what governs by
 * it? */
#include "rating/drive_opinion.h"

#include "rating/drive_opinion_parts.h"

#include <math.h>

/* ---- memory ---------------------------------------------------------------------------------- */

ts_status ts_opinion_prepare(const ts_drive *drive, const ts_teeth *teeth, ts_arena *arena,
                             ts_opinion *out)
{
    const size_t meshes = teeth->motion->train->mesh_count;

    *out          = (ts_opinion){.teeth = teeth};
    out->prepared = TS_TAKE(arena, ts_agma2101_pair, meshes);
    out->mesh     = TS_TAKE(arena, ts_mesh_opinion, meshes);
    out->cases    = TS_TAKE(arena, ts_agma2101_rating, meshes * drive->condition_count);
    if (out->prepared == NULL || out->mesh == NULL || out->cases == NULL)
        return TS_NO_MEMORY;
    return TS_OK;
}

/* ---- what governs ---------------------------------------------------------------------------- */

bool ts_opinion_stands(const ts_opinion *opinion, uint32_t mesh, uint32_t condition)
{
    const ts_train     *train = opinion->teeth->motion->train;
    const ts_mesh_case *one = &opinion->teeth->cases[(size_t)condition * train->mesh_count + mesh];

    return train->meshes[mesh].kind == TS_MESH_CYLINDRICAL && one->loaded && one->missing == NULL &&
           one->fault == NULL && opinion->mesh[mesh].missing == NULL;
}

/* Is any torque passed that could not be rated? */
static bool is_dark(const ts_opinion_case *c, uint32_t mesh, uint32_t condition)
{
    return ts_opinion_first(c, mesh, condition)->loaded &&
           !ts_opinion_stands(c->opinion, mesh, condition);
}

/* NaN stands only where nothing is known: what could be rated governs, and what could not is told
 * of its own condition. */
static bool worse(double a, double b, bool first)
{
    return first ? !(a >= b) : isnan(b) ? !isnan(a) : a < b;
}

static void weigh(const ts_teeth *teeth, const ts_least_safety *least, ts_rated_stress stress,
                  int gear, ts_mesh_opinion *out)
{
    const double S_min   = stress == TS_RATED_CONTACT ? teeth->S_Hmin : teeth->S_Fmin;
    const double reserve = least->S / S_min - 1.0;

    if (!worse(reserve, out->reserve, out->condition < 0))
        return;
    out->reserve   = reserve;
    out->gear      = gear;
    out->stress    = stress;
    out->condition = least->condition;
}

static void lend_least(const ts_opinion_case *c, uint32_t m, const char *symbol,
                       const ts_least_safety *least)
{
    if (least->condition >= 0 && isfinite(least->S))
        ts_workings_borrow(c->workings, symbol, least->S,
                           ts_opinion_subject(c, m, least->condition), symbol);
}

static void take_least(ts_least_safety *least, double S, uint32_t condition)
{
    if (worse(S, least->S, least->condition < 0))
        *least = (ts_least_safety){S, (int32_t)condition};
}

static void govern(const ts_opinion_case *c, uint32_t m)
{
    static const char *const names[2][2] = {{"S_H1", "S_F1"}, {"S_H2", "S_F2"}};
    ts_mesh_opinion         *out         = &c->opinion->mesh[m];

    ts_workings_about(c->workings, out->subject, TS_EVERY_CONDITION);
    for (int g = 0; g < 2; g++) {
        out->S_H[g] = out->S_F[g] = (ts_least_safety){INFINITY, TS_EVERY_CONDITION};
        for (uint32_t condition = 0; condition < c->drive->condition_count; condition++) {
            const ts_agma2101_gear_rating *gear = &ts_opinion_at(c, m, condition)->gear[g];
            const bool                     dark = is_dark(c, m, condition);

            if (!dark && !ts_opinion_stands(c->opinion, m, condition))
                continue;
            take_least(&out->S_H[g], dark ? (double)NAN : gear->S_H, condition);
            take_least(&out->S_F[g], dark ? (double)NAN : gear->S_F, condition);
        }
        weigh(c->teeth, &out->S_H[g], TS_RATED_CONTACT, g, out);
        weigh(c->teeth, &out->S_F[g], TS_RATED_BENDING, g, out);
        lend_least(c, m, names[g][0], &out->S_H[g]);
        lend_least(c, m, names[g][1], &out->S_F[g]);
    }
}

/* ---- both standards -------------------------------------------------------------------------- */

static double iso_safety(const ts_mesh_case *one, ts_rated_stress stress, int gear)
{
    return stress == TS_RATED_CONTACT ? one->rating.gear[gear].S_H : one->rating.gear[gear].S_F;
}

/* Where ISO 6336 sees the least safety. */
static ts_opinion_gap gap_of(const ts_opinion_case *c, uint32_t m, ts_rated_stress stress)
{
    ts_opinion_gap gap = {.condition = TS_EVERY_CONDITION,
                          .first     = INFINITY,
                          .second    = (double)NAN,
                          .ratio     = (double)NAN};

    for (uint32_t condition = 0; condition < c->drive->condition_count; condition++) {
        if (!ts_opinion_stands(c->opinion, m, condition))
            continue;
        for (int gear = 0; gear < 2; gear++) {
            const double S = iso_safety(ts_opinion_first(c, m, condition), stress, gear);

            if (!(S < gap.first))
                continue;
            gap.first     = S;
            gap.condition = (int32_t)condition;
            gap.gear      = gear;
        }
    }
    if (gap.condition < 0)
        return gap;
    const ts_two_opinions two = {
        &c->teeth->prepared[m], &ts_opinion_first(c, m, (uint32_t)gap.condition)->rating,
        &c->opinion->prepared[m], ts_opinion_at(c, m, (uint32_t)gap.condition),
        ts_opinion_first_subject(c, m, gap.condition)};

    ts_workings_about(c->workings, c->opinion->mesh[m].subject, gap.condition);
    ts_opinion_set_side_by_side(&two, stress, &gap, c->workings);
    return gap;
}

static void solve_mesh(const ts_opinion_case *c, uint32_t m)
{
    ts_mesh_opinion *out = &c->opinion->mesh[m];

    out->missing = ts_opinion_prepare_mesh(c, m);
    for (uint32_t condition = 0; condition < c->drive->condition_count; condition++)
        if (ts_opinion_stands(c->opinion, m, condition))
            ts_opinion_rate(c, m, condition);
    govern(c, m);
    out->contact = gap_of(c, m, TS_RATED_CONTACT);
    out->bending = gap_of(c, m, TS_RATED_BENDING);
}

void ts_opinion_solve(const ts_drive *drive, ts_opinion *opinion, ts_workings *workings)
{
    const ts_train       *train = opinion->teeth->motion->train;
    const ts_opinion_case c     = {drive, train, opinion->teeth, opinion, workings};

    for (uint32_t m = 0; m < train->mesh_count; m++) {
        const ts_gear *driven = &train->gears[train->meshes[m].driven];

        opinion->mesh[m] = (ts_mesh_opinion){
            .subject = driven->face.node, .reserve = INFINITY, .condition = TS_EVERY_CONDITION};
        if (train->meshes[m].kind == TS_MESH_CYLINDRICAL)
            solve_mesh(&c, m);
        else
            ts_opinion_compare_bevels(&c, m);
    }
}
