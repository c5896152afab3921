/* check/rule/hunting_tooth.c: does every tooth of a pair meet every tooth of the other? */
#include "check/envelope.h"
#include "check/visit.h"

#include "element/hunting.h"

#define REACH           2
#define CANDIDATES      ((2 * REACH + 1) * (2 * REACH + 1))
#define TEETH_FEWEST    12
#define NEIGHBOURS_MOST 16

/* Would the gear hunt with everything else that it meshes with, too?  Of a gear that drives more
 * than a few others the first of them are asked. */
static bool suits_neighbours(const ts_check *check, uint32_t gear, uint32_t here, int teeth)
{
    const ts_train    *train    = check->train;
    const ts_envelope *envelope = check->envelope;
    const uint32_t     driver   = envelope->driver[gear];
    if (driver != TS_NOWHERE && train->meshes[here].driven != gear &&
        ts_gcd((uint64_t)teeth, (uint64_t)train->gears[driver].teeth.value) != 1)
        return false;
    uint32_t mesh = envelope->drives[gear];
    for (int asked = 0; mesh != TS_NOWHERE && asked < NEIGHBOURS_MOST; asked++) {
        const int64_t other = train->gears[train->meshes[mesh].driven].teeth.value;
        if (mesh != here && ts_gcd((uint64_t)teeth, (uint64_t)other) != 1)
            return false;
        mesh = envelope->sibling[mesh];
    }
    return true;
}

/* Changing few teeth comes before a small error in ratio: one new gear is cheaper than two. */
static bool is_nearer(const ts_tooth_pair *pair, const ts_tooth_pair *other)
{
    if (pair->change != other->change)
        return pair->change < other->change;
    return fabs(ts_rational_value(pair->error)) < fabs(ts_rational_value(other->error));
}

/* The nearest pair that leaves every other mesh of both gears hunting; failing that, the nearest.
 */
static bool nearest_pair(const ts_check *check, uint32_t mesh, int z_1, int z_2, ts_tooth_pair *out)
{
    const ts_mesh *record = &check->train->meshes[mesh];
    ts_tooth_pair  pairs[CANDIDATES];
    const size_t   there = ts_hunting_pairs(z_1, z_2, REACH, TEETH_FEWEST, pairs, CANDIDATES);
    const size_t   count = there < CANDIDATES ? there : CANDIDATES; /* as many as were written */
    bool           suits = false;
    for (size_t i = 0; i < count; i++) {
        const bool here = suits_neighbours(check, record->driver, mesh, pairs[i].z_1) &&
                          suits_neighbours(check, record->driven, mesh, pairs[i].z_2);
        if (i == 0 || (here && !suits) || (here == suits && is_nearer(&pairs[i], out))) {
            *out  = pairs[i];
            suits = here;
        }
    }
    return count > 0;
}

static void say(ts_check *check, ts_finding *finding, uint32_t mesh)
{
    const ts_mesh   *record  = &check->train->meshes[mesh];
    const int        z_1     = (int)check->train->gears[record->driver].teeth.value;
    const int        z_2     = (int)check->train->gears[record->driven].teeth.value;
    const ts_hunting hunting = ts_hunting_of(z_1, z_2);
    ts_tooth_pair    nearest = {.z_1 = z_1, .z_2 = z_2};
    ts_says(check, finding,
            "%d/%d shares %d in %s: the same teeth meet again after %d turns of the first", z_1,
            z_2, hunting.gcd, ts_mesh_name(check, mesh), hunting.turns_1);
    if (!nearest_pair(check, mesh, z_1, z_2, &nearest))
        return;
    ts_remedy(check, finding, "the nearest hunting pair is %d/%d, %s off in ratio", nearest.z_1,
              nearest.z_2, ts_shown_percent(check, ts_rational_value(nearest.error)));
}

static void run(ts_check *check)
{
    for (uint32_t i = 0; i < check->train->mesh_count; i++) {
        const int64_t gcd = check->motion->meshes[i].gcd;
        ts_finding   *finding =
            ts_judge_fact(check, check->train->meshes[i].node, TS_EVERY_CONDITION, gcd == 1);
        if (finding != NULL)
            say(check, finding, i);
    }
    ts_skip(check, "the drive has no mesh");
}

const ts_rule ts_rule_hunting_tooth = {
    .id       = "C2-hunting-tooth",
    .title    = "Hunting tooth",
    .question = "Have the two tooth numbers of every mesh no common divisor?",
    .why      = "With a common divisor the same teeth meet again and again, and a flaw of one "
                "wears into a few of the other instead of wearing away.",
    .level    = TS_REFUSE,
    .source   = "textbook practice, no source; the meeting of teeth: derived from gcd(z_1, z_2)",
    .hint     = "change one tooth number by one",
    .run      = run,
};
