/* rating/drive_webs.h: which gears of a drive swing across their planes, and where do their own
 * teeth shake the waves that run round them?
 *
 * Gears: cylindrical ones as the mass statement has them, solid from the shaft to the roots or a
 * rim on a web; the weight of the teeth beyond.  A bevel gear as a disc as thick as its cone is
 * long, out to its mean pitch circle (common practice, no source).
 *
 * Waves: a shape of n nodal diameters is two waves that run round the gear; seen from the housing
 * they have f + n N and f - n N.  Teeth are loaded at a place that stands still, k z times a turn:
 * they excite a wave where k z N = f +- n N.
 *
 * Limits: clamped where the gear sits; what shaft and bearings give lowers n = 0 and n = 1.
 * Turning stiffens the plate a little (left out), and a warm rim softens it.
 *
 * Sources: docs/method/whirl.md
 */
#ifndef TS_RATING_DRIVE_WEBS_H
#define TS_RATING_DRIVE_WEBS_H

#include "base/memo.h"
#include "mass/mass.h"
#include "response/annular_plate.h"
#include "response/web_plate.h"

enum { TS_WEB_DIAMETERS = 7, TS_WEB_HARMONICS = 2 }; /* n = 0 to 6; k = 1, 2 */

typedef struct ts_web_item {
    uint32_t     gear, shaft;
    const char  *name; /* of its shaft     */
    ts_node      node; /* its record       */
    int          z;
    bool         bevel;
    bool         light;   /* a rim on a web, that the file tells      */
    bool         told;    /* the file speaks of rim or web, if only as unknown */
    const char  *missing; /* NULL, or what it lacks: a noun            */
    ts_web_plate plate;
    int          count;               /* of the frequencies below    */
    double       f[TS_WEB_DIAMETERS]; /* Hz, of n = 0, 1, ...        */
} ts_web_item;

typedef struct ts_webs {
    const ts_drive  *drive;
    const ts_mass   *mass;
    const ts_motion *motion;
    ts_memo         *memo;  /* of the last solve; NULL: none */
    ts_web_item     *items; /* every gear of the drive, in the order of the train */
    uint32_t         count;
} ts_webs;

/* A wave, and how far the k-th harmonic of the tooth frequency is from it in one condition. */
typedef struct ts_web_wave {
    int    n, k;       /* k 0: there is none */
    int    sense;      /* +1 runs forward    */
    double N;          /* 1/s, of the gear   */
    double excitation; /* Hz, k z N          */
    double frequency;  /* Hz, f + sense n N  */
    double gap;        /* excitation/frequency - 1 */
} ts_web_wave;

ts_status ts_webs_prepare(const ts_drive *drive, const ts_motion *motion, const ts_mass *mass,
                          ts_arena *arena, ts_webs *out);
/* Behind solved masses.  Allocates nothing.  Of solid cylindrical gears, which no rule asks about,
 * only with `solid`; else their count is 0. */
void ts_webs_solve(ts_webs *webs, bool solid);

/* 1/s, the magnitude; NaN: not known. */
double ts_web_turns(const ts_webs *webs, uint32_t item, uint32_t condition);
/* How many waves run round the gear: one without diameters, then two of each number. */
int ts_web_wave_count(const ts_web_item *item);
/* Wave `wave` of gear `index` beside the harmonic k >= 1; its k is 0 while the gear stands, while
 * its speed is not known, and where the gear outruns the wave. */
ts_web_wave ts_web_wave_at(const ts_webs *webs, uint32_t index, uint32_t condition, int wave,
                           int k);
/* The wave nearest to the harmonic k of the tooth frequency. */
ts_web_wave ts_web_nearest(const ts_webs *webs, uint32_t item, uint32_t condition, int k);

#endif
