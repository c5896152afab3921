/* effect/effect_parts.h: the steps of ts_effects_solve.  For src/effect alone. */
#ifndef TS_EFFECT_EFFECT_PARTS_H
#define TS_EFFECT_EFFECT_PARTS_H

#include "effect/effect.h"

ts_status ts_failures_list(ts_effects *effects, ts_arena *arena);
ts_status ts_effects_list(ts_effects *effects, ts_arena *arena);
/* Every single and double cause of every effect. */
ts_status ts_causes_list(ts_effects *effects, ts_arena *arena);

bool ts_effect_has_clutch(const ts_drive *drive, const ts_pad *pad);
/* What it serves, or its own name. */
const char *ts_effect_service(const ts_accessory *accessory);

bool ts_effect_is_starter(const ts_drive *drive, const ts_pad *pad);

/* The radial shaft on the way to shaft k; the spool, of a shaft of its own. */
uint32_t ts_effect_tube(const ts_train *train, uint32_t k);

/* ---- jams ------------------------------------------------------------------------------------ */

ts_status ts_weakest_prepare(ts_effects *effects, ts_arena *arena);
void      ts_weakest_solve(ts_effects *effects);

/* What is held, and what of it cannot break. */
typedef struct ts_held {
    uint32_t shaft;
    uint32_t neck;       /* of the necks, between the shaft and what holds it; TS_NOWHERE: none */
    bool     tube_holds; /* the neck of its radial shaft would not break                        */
} ts_held;

typedef enum ts_suspect_kind { TS_SUSPECT_PAD, TS_SUSPECT_TUBE, TS_SUSPECT_PART } ts_suspect_kind;

typedef struct ts_suspect {
    ts_suspect_kind kind;
    double          low, high; /* N.m at the held shaft, between which it breaks; NaN: not known */
    double          next;      /* N.m there that the next one bears at least; NaN: not known     */
    uint32_t        part;      /* TS_SUSPECT_PART: which one; TS_NOWHERE: not known              */
    uint32_t        shaft;     /* beyond which nothing is driven; TS_NOWHERE: beyond the pad     */
    bool            sure;
} ts_suspect;

ts_suspect ts_suspect_of(const ts_effects *effects, const ts_held *held);

#endif
