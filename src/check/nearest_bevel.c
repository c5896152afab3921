/* check/nearest_bevel.c: which face, spiral, addendum or shift would mend bevels that cannot run?
 */
#include "check/nearest_bevel.h"

#include "check/nearest_pair.h"

#include <stddef.h>

/* Steps of the search and the ranges of the file. */
typedef struct bevel_value {
    const char *name;
    size_t      at; /* in ts_bevel_gears */
    double      step, least, most;
    ts_kind     kind;
    bool        relative; /* the step is a share of the present value */
} bevel_value;

#define DEGREE 0.017453292519943295
static const bevel_value values[] = {
    {"a face", offsetof(ts_bevel_gears, face), 0.02, 1e-4, 0.5, TS_KIND_LENGTH, true},
    {"a spiral", offsetof(ts_bevel_gears, spiral), 0.5 * DEGREE, 0.0, 55.0 * DEGREE, TS_KIND_ANGLE,
     false},
    {"an addendum", offsetof(ts_bevel_gears, addendum), 0.02, 0.02, 2.0, TS_KIND_NUMBER, false},
    {"a profile shift", offsetof(ts_bevel_gears, profile_shift), 0.02, -1.5, 1.5, TS_KIND_NUMBER,
     false},
};
enum { VALUES = sizeof values / sizeof values[0] };
#define STEPS_MOST 80
#define BISECTIONS 24

static unsigned flaws_of(const ts_check *check, const ts_mesh_motion *turn)
{
    const ts_measure *limit = &check->drive->limits.contact_ratio;
    const double      least = ts_measure_known(*limit) ? limit->value : 1.0;
    unsigned          flaws = 0;

    if (!turn->solved || turn->teeth_fault != NULL)
        return TS_BEVEL_FLAWS_ALL;
    if (!(turn->toe.s_ai[0] >= TS_TIP_LEAST * turn->toe.m_ni))
        flaws |= TS_BEVEL_FLAW_TOE_1;
    if (!(turn->toe.s_ai[1] >= TS_TIP_LEAST * turn->toe.m_ni))
        flaws |= TS_BEVEL_FLAW_TOE_2;
    if (!(turn->virt.eps_vgamma >= least))
        flaws |= TS_BEVEL_FLAW_LETS_GO;
    return flaws;
}

/* The flaws of a mesh with another value; a dedendum that leaves no clearance is one as well. */
static unsigned flaws_with(const ts_check *check, uint32_t m, const bevel_value *value,
                           double number)
{
    const ts_train *train  = check->train;
    const ts_mesh  *mesh   = &train->meshes[m];
    ts_bevel_gears  bevels = *mesh->bevels;
    ts_mesh_motion  turn;
    const int       z[2] = {(int)train->gears[mesh->driver].teeth.value,
                            (int)train->gears[mesh->driven].teeth.value};
    ts_measure     *at   = (ts_measure *)(void *)((char *)&bevels + value->at);

    at->value    = number;
    at->standing = TS_GIVEN;
    if (bevels.dedendum.value <= bevels.addendum.value ||
        !ts_motion_bevel(check->drive, &bevels, z, &turn, NULL))
        return TS_BEVEL_FLAWS_ALL;
    return flaws_of(check, &turn);
}

/* What the file does not say of the shift follows from the ratio. */
static double present(const ts_check *check, uint32_t m, const bevel_value *value)
{
    const ts_bevel_gears *bevels = check->train->meshes[m].bevels;
    const ts_measure     *at = (const ts_measure *)(const void *)((const char *)bevels + value->at);

    if (ts_measure_known(*at))
        return at->value;
    return check->motion->meshes[m].teeth.x_hm[0];
}

/* NaN: none in reach. */
static double nearest(const ts_check *check, uint32_t m, const bevel_value *value, unsigned barred)
{
    const double from = present(check, m, value);
    const double step = value->relative ? value->step * from : value->step;

    for (int i = 1; i <= STEPS_MOST && isfinite(from); i++)
        for (int way = 1; way >= -1; way -= 2) {
            double holds = from + way * i * step, fails = holds - way * step;

            if (!(holds >= value->least && holds <= value->most) ||
                (flaws_with(check, m, value, holds) & barred) != 0)
                continue;
            for (int b = 0; b < BISECTIONS; b++) {
                const double half = (fails + holds) / 2.0;
                if ((flaws_with(check, m, value, half) & barred) == 0)
                    holds = half;
                else
                    fails = half;
            }
            return holds;
        }
    return (double)NAN;
}

const char *ts_bevel_remedy(ts_check *check, uint32_t mesh, unsigned mend)
{
    const unsigned before = flaws_of(check, &check->motion->meshes[mesh]);
    const unsigned barred = ~before | mend | (unsigned)TS_BEVEL_FLAW_UNSOLVED;
    const char    *says   = NULL;

    for (int v = 0; v < VALUES; v++) {
        const double to = nearest(check, mesh, &values[v], barred);

        if (isnan(to))
            continue;
        const bool more = to > present(check, mesh, &values[v]);
        says            = ts_phrase(check, "%s %s of at %s %s",
                         says == NULL ? "use" : ts_phrase(check, "%s, or", says), values[v].name,
                         more ? "least" : "most",
                                    ts_shown_outward(check, to, values[v].kind, more ? +1 : -1));
    }
    return says;
}
