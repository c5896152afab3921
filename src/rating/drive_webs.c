/* rating/drive_webs.c: which gears of a drive swing across their planes? */
#include "rating/drive_webs.h"

#include "catalog/gear_material.h"

#include <math.h>
#include <string.h>

static const double pi = 3.14159265358979323846;

ts_status ts_webs_prepare(const ts_drive *drive, const ts_motion *motion, const ts_mass *mass,
                          ts_arena *arena, ts_webs *out)
{
    const ts_train *train = motion->train;

    *out = (ts_webs){.drive  = drive,
                     .mass   = mass,
                     .motion = motion,
                     .items  = TS_TAKE(arena, ts_web_item, train->gear_count + 1),
                     .count  = train->gear_count};
    if (out->items == NULL)
        return TS_NO_MEMORY;
    for (uint32_t g = 0; g < train->gear_count; g++) {
        const ts_gear *gear = &train->gears[g];
        out->items[g] =
            (ts_web_item){.gear  = g,
                          .shaft = gear->shaft,
                          .name  = train->shafts[gear->shaft].name,
                          .node  = gear->node,
                          .z     = (int)gear->teeth.value,
                          .bevel = gear->role == TS_GEAR_BEVEL,
                          .told = gear->role != TS_GEAR_BEVEL && (gear->rim.standing != TS_ABSENT ||
                                                                  gear->web.standing != TS_ABSENT)};
    }
    return TS_OK;
}

/* ---- its shape --------------------------------------------------------------------------------
 */

/* A mesh of the gear whose geometry is known, and which of both it is there, 0 or 1; -1: none. */
static int side_in(const ts_webs *webs, uint32_t gear, uint32_t *mesh)
{
    const ts_train *train = webs->motion->train;

    for (uint32_t m = 0; m < train->mesh_count; m++) {
        const ts_mesh *one = &train->meshes[m];
        *mesh              = m;
        if (webs->motion->meshes[m].solved && (one->driver == gear || one->driven == gear))
            return one->driver == gear ? 0 : 1;
    }
    return -1;
}

static void take_steel(ts_web_item *item, ts_pick material)
{
    if (!ts_pick_known(material)) {
        item->missing = "the material";
        return;
    }
    const ts_gear_material steel = ts_gear_material_at((size_t)material.value);

    item->plate.E   = steel.E;
    item->plate.nu  = steel.nu;
    item->plate.rho = steel.rho;
}

static void shape_bevel(const ts_webs *webs, ts_web_item *item, uint32_t m, int side)
{
    const ts_bevel_pair *pair  = &webs->motion->meshes[m].bevel;
    const double         delta = side == 0 ? pair->delta_1 : pair->delta_2;
    const double         r_e   = (side == 0 ? pair->d_e1 : pair->d_e2) / 2.0;
    const double         toe   = r_e - pair->in.b * sin(delta);
    ts_web_plate        *plate = &item->plate;

    plate->R = plate->a = (side == 0 ? pair->d_m1 : pair->d_m2) / 2.0;
    plate->b            = ts_mass_bevel_bore(webs->mass, webs->motion->train, item->shaft, toe);
    plate->h = plate->w = pair->in.b * cos(delta);
    take_steel(item, webs->motion->train->meshes[m].bevels->material);
}

/* Of the gear in the mass statement; NULL: it is not there. */
static const ts_mass_part *part_of(const ts_webs *webs, const ts_web_item *item)
{
    for (size_t i = 0; i < webs->mass->part_count; i++) {
        const ts_mass_part *part = &webs->mass->parts[i];
        if (part->kind == TS_MASS_GEAR && part->node == item->node)
            return part;
    }
    return NULL;
}

/* What it lacks to be weighed; NULL: nothing.  The statement calls an unknown web a rim. */
static const char *lack_of(const ts_webs *webs, const ts_web_item *item)
{
    const ts_mass_part *part = part_of(webs, item);

    if (part == NULL)
        return "the mass";
    if (webs->motion->train->gears[item->gear].web.standing == TS_UNKNOWN)
        return "the web";
    return part->missing;
}

static void shape_cylindrical(const ts_webs *webs, ts_web_item *item, uint32_t m, int side)
{
    const ts_gear       *gear  = &webs->motion->train->gears[item->gear];
    ts_web_plate        *plate = &item->plate;
    ts_cylindrical_frame frame;
    ts_cylindrical_gear  teeth;

    ts_cylindrical_pair_gear(&webs->motion->meshes[m].pair, side == 0 ? TS_GEAR_1 : TS_GEAR_2,
                             &frame, &teeth);
    const ts_gear_blank blank = ts_mass_gear_blank(webs->mass, gear, teeth.d_f / 2.0);
    const bool          light = ts_gear_blank_is_light(&blank);
    plate->b                  = blank.r_s;
    plate->R                  = blank.r_f;
    plate->a                  = light ? blank.r_f - blank.s_R : blank.r_f;
    plate->w                  = blank.b;
    plate->h                  = light ? blank.b_s : blank.b;
    take_steel(item, gear->material);
    const double V = pi * (plate->w * (plate->R * plate->R - plate->a * plate->a) +
                           plate->h * (plate->a * plate->a - plate->b * plate->b));
    item->light    = light;
    plate->teeth = fmax(0.0, part_of(webs, item)->m.value - plate->rho * V) / (2.0 * pi * plate->R);
    plate->arm   = fmax(0.0, teeth.d_a - teeth.d_f) / 4.0;
}

/* ---- its frequencies --------------------------------------------------------------------------
 */

/* 1/s, the highest of all conditions; 0: it is not known. */
static double top_of(const ts_webs *webs, uint32_t shaft)
{
    const uint32_t shafts = webs->motion->train->shaft_count;
    double         top    = 0.0;

    for (uint32_t c = 0; c < webs->drive->condition_count; c++)
        top = fmax(top, fabs(webs->motion->speed[(size_t)c * shafts + shaft]) / (2.0 * pi));
    return top;
}

/* Of one plate, as far as somebody asked. */
typedef struct plate_waves {
    int    count;
    double f[TS_WEB_DIAMETERS];
} plate_waves;

/* The more diameters the faster: what no harmonic comes near to is left out. */
static void find_frequencies(const ts_webs *webs, ts_web_item *item)
{
    const double N = top_of(webs, item->shaft);
    ts_web_modes modes;
    plate_waves  own = {.count = 0};
    bool         known, open = false;

    ts_memo_ask(webs->memo, &item->plate, sizeof item->plate); /* doubles alone */
    plate_waves *waves = ts_memo_answer(webs->memo, TS_MEMO_WEB, item->gear, sizeof *waves, &known);
    if (waves == NULL)
        waves = &own;
    if (!known)
        waves->count = 0;
    for (int n = 0; n < TS_WEB_DIAMETERS; n++) {
        if (n == waves->count && !open) {
            ts_web_open(&item->plate, &modes);
            open = true;
        }
        if (n == waves->count)
            waves->f[waves->count++] = ts_web_frequency(&modes, n);
        const double f = waves->f[n];
        if (!isfinite(f))
            break;
        item->f[item->count++] = f;
        if (n > 1 && f - n * N > 2.0 * TS_WEB_HARMONICS * item->z * N)
            break;
    }
    if (item->count == 0)
        item->missing = "a blank between shaft and roots";
}

void ts_webs_solve(ts_webs *webs, bool solid)
{
    for (uint32_t i = 0; i < webs->count; i++) {
        ts_web_item *item = &webs->items[i];
        uint32_t     mesh = 0;
        const int    side = side_in(webs, item->gear, &mesh);
        item->missing     = NULL;
        item->light       = false;
        item->count       = 0;
        item->plate       = (ts_web_plate){0};
        if (side < 0) {
            item->missing = "the geometry of the teeth";
            continue;
        }
        if (!item->bevel)
            item->missing = lack_of(webs, item);
        if (item->bevel)
            shape_bevel(webs, item, mesh, side);
        else if (item->missing == NULL)
            shape_cylindrical(webs, item, mesh, side);
        if (item->missing == NULL && (solid || item->light || item->bevel))
            find_frequencies(webs, item);
    }
}

double ts_web_turns(const ts_webs *webs, uint32_t item, uint32_t condition)
{
    const size_t row = (size_t)condition * webs->motion->train->shaft_count;

    return fabs(webs->motion->speed[row + webs->items[item].shaft]) / (2.0 * pi);
}

int ts_web_wave_count(const ts_web_item *item)
{
    return item->count > 0 ? 2 * item->count - 1 : 0;
}

ts_web_wave ts_web_wave_at(const ts_webs *webs, uint32_t index, uint32_t condition, int wave, int k)
{
    const ts_web_item *item = &webs->items[index];
    const int          n = (wave + 1) / 2, sense = wave == 0 || wave % 2 == 1 ? 1 : -1;
    const double       N = ts_web_turns(webs, index, condition);
    const double       f = ts_wave_frequency(item->f[n], 0.0, N, n, sense);
    const double       e = (double)k * item->z * N;

    if (!(N > 0.0) || !(f > 0.0))
        return (ts_web_wave){.N = N};
    return (ts_web_wave){n, k, sense, N, e, f, e / f - 1.0};
}

ts_web_wave ts_web_nearest(const ts_webs *webs, uint32_t item, uint32_t condition, int k)
{
    const int   count = ts_web_wave_count(&webs->items[item]);
    ts_web_wave out   = {.N = ts_web_turns(webs, item, condition)};

    for (int w = 0; w < count; w++) {
        const ts_web_wave wave = ts_web_wave_at(webs, item, condition, w, k);
        if (wave.k > 0 && (out.k == 0 || fabs(wave.gap) < fabs(out.gap)))
            out = wave;
    }
    return out;
}
