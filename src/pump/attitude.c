/* pump/attitude.c: which pick-ups draw oil in which attitude, and do they take all of it? */
#include "pump/drive_pumps_parts.h"

#include <math.h>

static ts_pull pull_at(const ts_pack *pack, uint32_t attitude)
{
    if (attitude == 0)
        return ts_pull_of(0.0, 0.0);
    const ts_attitude *one = &pack->told->attitudes[attitude - 1];
    return ts_pull_of(one->pitch.value, one->roll.value);
}

/* Of all conditions that last: what the covered elements of a sump take over the oil that comes. */
static double least_taken(const ts_pack *pack, const ts_drive *drive, const ts_sump *sump,
                          const ts_pack_dip *dips)
{
    double least = (double)INFINITY;

    for (uint32_t c = 0; c < drive->condition_count; c++) {
        const double oil  = sump->share.value * pack->states[c].Q;
        double       able = 0.0;
        if (!ts_condition_lasts(&drive->conditions[c]) || !(oil > 0.0))
            continue;
        for (uint32_t e = 1; e < pack->element_count; e++)
            if (pack->elements[e].sump == sump && dips[e].covered)
                able += pack->cases[(size_t)c * TS_PACK_ELEMENTS + e].able;
        least = fmin(least, able / oil);
    }
    return least;
}

void ts_pack_attitudes_solve(ts_pack *pack, const ts_drive *drive)
{
    for (uint32_t a = 0; a < ts_pack_attitudes(pack); a++) {
        const ts_pull pull    = pull_at(pack, a);
        ts_pack_dip  *dips    = &pack->dips[(size_t)a * TS_PACK_ELEMENTS];
        double        surface = 0.0;

        for (uint32_t e = 1; e < pack->element_count; e++) {
            const ts_sump      *sump  = pack->elements[e].sump;
            const ts_scavenge  *told  = pack->elements[e].told;
            const ts_sump_box   box   = {sump->length.value, sump->width.value, sump->height.value,
                                         sump->depth.value};
            const ts_sump_place place = {told->rearward.value, told->rightward.value,
                                         told->above.value};
            if (e == 1 || sump != pack->elements[e - 1].sump)
                surface = ts_sump_surface(&box, &pull);
            dips[e].cover   = ts_sump_cover(&box, &pull, surface, &place);
            dips[e].covered = dips[e].cover >= pack->told->cover.value;
        }
        for (size_t i = 0; i < pack->told->sump_count; i++)
            pack->taken[(size_t)a * pack->told->sump_count + i] =
                least_taken(pack, drive, &pack->told->sumps[i], dips);
    }
}
