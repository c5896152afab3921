/* check/nearest_teeth.c: which tooth number of one gear would bring every pad into its band? */
#include "check/nearest_teeth.h"

#include "check/envelope.h"
#include "check/visit.h"

#define TEETH_FEWEST 12.0

/* By which factor all speeds that depend on the gear may change, so that every band is kept. */
typedef struct factor_window {
    double least, most;
} factor_window;

/* Does the speed of `other` change when the main gear of `shaft` gets other teeth?  A train that
 * leaves the shaft by that same gear does not notice: the gear is an idler to it.  Drivers stand
 * before what they drive, so the answer for the driver is known. */
static bool follows(const ts_check *check, uint32_t other, uint32_t shaft, const bool *known)
{
    const ts_train *train = check->train;
    if (train->shafts[other].kind != TS_SHAFT_BOX || ts_is_box_input(train, other))
        return false;
    const ts_mesh *mesh = &train->meshes[train->shafts[other].mesh];
    if (mesh->driver_shaft == shaft)
        return train->gears[mesh->driver].role != TS_GEAR_MAIN;
    return known[mesh->driver_shaft];
}

static void mark_followers(const ts_check *check, uint32_t shaft)
{
    bool *marks = check->envelope->follows;
    for (uint32_t i = 0; i < check->train->shaft_count; i++)
        marks[i] = i == shaft || (i > shaft && follows(check, i, shaft, marks));
}

static void narrow(const ts_check *check, const ts_pad *pad, factor_window *window)
{
    const ts_accessory *accessory = ts_accessory_on(check, pad);
    const double        margin    = 1.0 + check->drive->limits.speed_margin.value;
    for (uint32_t c = 0; c < check->drive->condition_count; c++) {
        const ts_span *band = &accessory->speed[c];
        const double   n    = ts_shaft_speed(check, pad->shaft, c);
        if (band->standing == TS_ABSENT)
            continue;
        if (band->standing == TS_UNKNOWN) { /* nobody knows which teeth would fit */
            window->most = 0.0;
            return;
        }
        /* A pad at rest stays at rest with any teeth. */
        const double least = band->low > 0.0 ? band->low * margin / n : 0.0;
        const double most  = n > 0.0 ? band->high / (margin * n) : (double)INFINITY;
        window->least      = least <= window->least ? window->least : least;
        window->most       = most >= window->most ? window->most : most;
    }
}

int ts_nearest_teeth(const ts_check *check, uint32_t shaft)
{
    const ts_train *train = check->train;
    if (train->shafts[shaft].kind != TS_SHAFT_BOX || ts_is_box_input(train, shaft))
        return 0;
    factor_window window = {0.0, INFINITY};
    mark_followers(check, shaft);
    for (uint32_t i = 0; i < train->pad_count; i++)
        if (check->envelope->follows[train->pads[i].shaft] &&
            ts_accessory_at(check, &train->pads[i]) != NULL)
            narrow(check, &train->pads[i], &window);
    const double teeth =
        (double)train->gears[train->meshes[train->shafts[shaft].mesh].driven].teeth.value;
    /* Speeds go as 1/teeth. */
    const double fewest = fmax(fmax(ceil(teeth / window.most), ceil(teeth / 3.0)), TEETH_FEWEST);
    const double most   = fmin(floor(teeth / window.least), 3.0 * teeth);
    if (!(fewest <= most))
        return 0;
    const double nearest = teeth < fewest ? fewest : teeth > most ? most : teeth;
    return (int)nearest;
}
