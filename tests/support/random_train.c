/* support/random_train.c: which drive belongs to a seed? */
#include "support/random_train.h"

static const double pi = 3.14159265358979323846;

/* Steele, Lea, Flood: "Fast splittable pseudorandom number generators" (2014); public domain. */
static uint64_t next_bits(random_source *source)
{
    uint64_t bits = (source->state += UINT64_C(0x9E3779B97F4A7C15));

    bits = (bits ^ (bits >> 30)) * UINT64_C(0xBF58476D1CE4E5B9);
    bits = (bits ^ (bits >> 27)) * UINT64_C(0x94D049BB133111EB);
    return bits ^ (bits >> 31);
}

int random_between(random_source *source, int low, int high)
{
    return low + (int)(next_bits(source) % (uint64_t)(high - low + 1));
}

double random_real(random_source *source, double low, double high)
{
    return low + (high - low) * ((double)(next_bits(source) >> 11) * 0x1p-53);
}

static bool chance(random_source *source, int percent)
{
    return random_between(source, 1, 100) <= percent;
}

static hand_bevels random_bevels(random_source *source)
{
    return (hand_bevels){
        .teeth       = {random_between(source, 25, 60), random_between(source, 25, 60)},
        .spiral      = chance(source, 20) ? 0.0 : random_real(source, 0.1, 0.7),
        .shaft_angle = 0.0,
        .hand        = chance(source, 50) ? TS_LEFT_HAND : TS_RIGHT_HAND,
        .side        = chance(source, 50) ? TS_FRONT : TS_REAR,
        .loss        = chance(source, 10) ? 0.0 : random_real(source, 0.0, 0.03),
    };
}

static void random_demand(hand_train *h, random_source *source, uint32_t pad)
{
    const bool starts = chance(source, 15);

    if (chance(source, 20))
        hand_clutch(h, pad);
    for (size_t c = 0; c < h->drive.condition_count; c++) {
        if (chance(source, 80))
            hand_absorbs(h, pad, c, chance(source, 10) ? 0.0 : random_real(source, 10.0, 60e3));
        if (starts && chance(source, 50))
            hand_drives(h, pad, c, random_real(source, 1.0, 500.0));
    }
}

static void random_pads(hand_train *h, random_source *source, uint32_t shaft)
{
    for (int face = TS_FRONT; face <= TS_REAR; face++) {
        const int lot = random_between(source, 1, 10);

        if (lot <= 4)
            random_demand(h, source, hand_accessory(h, shaft, (ts_face_side)face));
        else if (lot == 5)
            hand_cover(h, shaft, (ts_face_side)face);
    }
}

static void random_shafts(hand_train *h, random_source *source, uint32_t input, int count)
{
    uint32_t box[HAND_SHAFTS] = {input};
    int      known            = 1;

    random_pads(h, source, input);
    for (int i = 0; i < count; i++) {
        /* Mostly a chain goes on; sometimes a branch begins further back. */
        const int before = chance(source, 70) ? known - 1 : random_between(source, 0, known - 1);
        const uint32_t driver = box[before];
        const ts_way   way    = driver != input      ? h->shafts[driver].way
                                : chance(source, 50) ? TS_WAY_CLOCKWISE
                                                     : TS_WAY_ANTICLOCKWISE;
        const uint32_t s      = hand_shaft(h, driver, random_between(source, 17, 90), way);

        if (chance(source, 25))
            hand_shaft_toward(h, s, random_real(source, -2.0 * pi, 2.0 * pi));
        if (chance(source, 25))
            hand_shift(h, s, random_real(source, -0.2, 0.6));
        if (chance(source, 25))
            hand_step(h, s, random_between(source, 17, 90), 0.002);
        random_pads(h, source, s);
        box[known++] = s;
    }
}

void random_train(hand_train *h, uint64_t seed, int shafts_most)
{
    random_source source = {seed};
    const int     spools = random_between(&source, 1, HAND_SPOOLS);

    hand_open(h, (size_t)random_between(&source, 1, HAND_CONDITIONS));
    for (int i = 0; i < spools; i++) {
        const uint32_t    spool    = hand_spool(h, i == 0 ? "hp spool" : "lp spool",
                                          chance(&source, 50) ? TS_CW : TS_CCW, 0.0);
        const hand_bevels take_off = random_bevels(&source), box = random_bevels(&source);
        const hand_teeth  teeth = {
             .module         = 0.002,
             .pressure_angle = random_real(&source, 0.3, 0.45),
             .helix_angle    = chance(&source, 50) ? 0.0 : random_real(&source, 0.05, 0.5),
             .loss           = random_real(&source, 0.0, 0.02),
             .input_hand     = chance(&source, 50) ? 1 : -1,
        };

        for (size_t c = 0; c < h->drive.condition_count; c++)
            hand_set_speed(h, spool, c,
                           chance(&source, 15) ? 0.0 : random_real(&source, 10.0, 3000.0));
        const uint32_t tower = hand_tower(h, spool, &take_off, random_real(&source, 0.0, 2.0 * pi));
        const uint32_t input = hand_input(h, tower, &box, random_real(&source, 0.25, 1.0),
                                          random_between(&source, 30, 80));

        hand_box_teeth(h, input, &teeth);
        random_shafts(h, &source, input, random_between(&source, 0, shafts_most));
    }
}
