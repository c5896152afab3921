/* oil/drive_heat.c: where does a drive turn power into heat, and how warm does the oil become? */
#include "oil/heat_parts.h"

#include "base/number.h"
#include "catalog/oil.h"

#include <math.h>
#include <string.h>

/* ---- memory ---------------------------------------------------------------------------------- */

typedef struct opener {
    ts_heat   *heat;
    ts_source *source;
    ts_arena  *arena;
    bool       failed;
} opener;

static ts_node made(const opener *o, ts_node parent, const char *key)
{
    const ts_node node = o->source != NULL ? ts_source_make(o->source, parent, key) : 0;

    return node != 0 ? node : parent;
}

static const char *name_of(opener *o, const char *a, const char *between, const char *b)
{
    ts_buffer out;

    ts_buffer_open(&out, ts_arena_allocator(o->arena));
    ts_buffer_print(&out, "%s%s%s", a, between, b);
    const char *name = out.failed ? NULL : ts_arena_copy(o->arena, out.bytes, out.length);
    ts_buffer_close(&out);
    o->failed = o->failed || name == NULL;
    return name;
}

static void put(opener *o, ts_heat_place place, ts_node record)
{
    ts_heat *heat = o->heat;

    place.node[0] = made(o, record, "heat");
    place.node[1] = made(o, record, "heat by the second method");
    if (place.site != TS_HEAT_AT_PAD)
        place.fed = heat->place_count;
    heat->places[heat->place_count++] = place;
}

static void put_drives(opener *o)
{
    for (uint32_t d = 0; d < o->heat->drive->drive_count; d++) {
        const ts_node record = o->heat->drive->drive[d].node;

        o->heat->nodes[d][0] = made(o, record, "heat");
        o->heat->nodes[d][1] = made(o, record, "heat by the second method");
    }
}

static void put_meshes(opener *o, const ts_train *train)
{
    for (uint32_t m = 0; m < train->mesh_count; m++) {
        const ts_mesh *mesh = &train->meshes[m];

        put(o,
            (ts_heat_place){.site  = TS_HEAT_AT_MESH,
                            .drive = train->shafts[mesh->driven_shaft].drive,
                            .shaft = mesh->driver_shaft,
                            .mesh  = m,
                            .name  = name_of(o, train->shafts[mesh->driver_shaft].name, " > ",
                                             train->shafts[mesh->driven_shaft].name)},
            mesh->node);
    }
}

static void put_bearings(opener *o, const ts_train *train, const ts_lines *lines)
{
    for (uint32_t l = 0; l < lines->count; l++)
        for (int k = 0; k < lines->lines[l].bearing_count; k++) {
            const ts_line *line = &lines->lines[l];

            put(o,
                (ts_heat_place){.site  = TS_HEAT_AT_BEARING,
                                .drive = train->shafts[line->shaft].drive,
                                .shaft = line->shaft,
                                .line  = l,
                                .seat  = k,
                                .name =
                                    name_of(o, line->name, ", bearing ", line->bearings[k].place)},
                line->bearings[k].node);
        }
}

static void put_pads(opener *o, const ts_train *train)
{
    const ts_accessory *accessories = o->heat->drive->accessories;

    for (uint32_t p = 0; p < train->pad_count; p++)
        put(o,
            (ts_heat_place){.site  = TS_HEAT_AT_PAD,
                            .drive = train->shafts[train->pads[p].shaft].drive,
                            .shaft = train->pads[p].shaft,
                            .pad   = p,
                            .name  = name_of(o, train->pads[p].name, ", ", "seal and spline")},
            train->pads[p].use == TS_PAD_ACCESSORY ? accessories[train->pads[p].accessory].node
                                                   : train->pads[p].node);
}

static uint32_t count_bearings(const ts_lines *lines)
{
    uint32_t count = 0;

    for (uint32_t l = 0; l < lines->count; l++)
        count += (uint32_t)lines->lines[l].bearing_count;
    return count;
}

static bool take_scratch(ts_heat *heat, size_t places, ts_arena *arena)
{
    const ts_train  *train  = heat->motion->train;
    const size_t     drives = heat->drive->drive_count;
    ts_heat_scratch *s      = heat->scratch;

    *s = (ts_heat_scratch){
        .on     = TS_TAKE(arena, double, train->shaft_count),
        .in     = TS_TAKE(arena, double, train->shaft_count),
        .x      = TS_TAKE(arena, double, drives),
        .g      = TS_TAKE(arena, double, drives),
        .heat   = TS_TAKE(arena, double, drives),
        .change = TS_TAKE(arena, double, drives),
        .most   = TS_TAKE(arena, double, drives),
        .need   = TS_TAKE(arena, double, places),
        .Q      = TS_TAKE(arena, double, places),
        .P      = ts_arena_take(arena, (size_t)train->mesh_count + 1, sizeof *s->P),
        .cases  = TS_TAKE(arena, ts_heat_case, places),
        .states = TS_TAKE(arena, ts_heat_state, drives),
        .quick =
            TS_TAKE(arena, ts_heat_quick, TS_HEAT_METHODS * heat->motion->condition_count * places),
    };
    return s->on != NULL && s->in != NULL && s->x != NULL && s->g != NULL && s->heat != NULL &&
           s->change != NULL && s->most != NULL && s->need != NULL && s->Q != NULL &&
           s->P != NULL && s->cases != NULL && s->states != NULL && s->quick != NULL;
}

static bool take(ts_heat *heat, size_t places, ts_arena *arena)
{
    const ts_train *train = heat->motion->train;
    const size_t    rows  = (size_t)TS_HEAT_METHODS * heat->motion->condition_count;

    heat->places     = TS_TAKE(arena, ts_heat_place, places);
    heat->cases      = TS_TAKE(arena, ts_heat_case, rows * places);
    heat->P          = ts_arena_take(arena, rows * train->mesh_count + 1, sizeof *heat->P);
    heat->states     = TS_TAKE(arena, ts_heat_state, rows * heat->drive->drive_count);
    heat->jets       = TS_TAKE(arena, ts_heat_jet, places);
    heat->rises      = TS_TAKE(arena, ts_heat_worst, heat->drive->drive_count);
    heat->leavings   = TS_TAKE(arena, ts_heat_worst, heat->drive->drive_count);
    heat->nodes      = ts_arena_take(arena, heat->drive->drive_count, sizeof *heat->nodes);
    heat->share      = TS_TAKE(arena, double, heat->motion->condition_count * train->pad_count);
    heat->feed_share = TS_TAKE(arena, double, heat->motion->condition_count);
    heat->scratch    = TS_TAKE(arena, ts_heat_scratch, 1);
    return heat->places != NULL && heat->cases != NULL && heat->P != NULL && heat->states != NULL &&
           heat->jets != NULL && heat->rises != NULL && heat->leavings != NULL &&
           heat->nodes != NULL && heat->share != NULL && heat->feed_share != NULL &&
           heat->scratch != NULL && take_scratch(heat, places, arena);
}

ts_status ts_heat_prepare(const ts_heat_from *from, ts_source *source, ts_arena *arena,
                          ts_heat *out)
{
    const ts_motion *motion = from->power->motion;
    const ts_train  *train  = motion->train;
    const uint32_t   places = train->mesh_count + count_bearings(from->lines) + train->pad_count;
    opener           o      = {out, source, arena, false};

    *out = (ts_heat){.drive   = from->drive,
                     .motion  = motion,
                     .power   = from->power,
                     .lines   = from->lines,
                     .splines = from->splines,
                     .oil     = &from->rubbing->oil};
    if (!take(out, places + 1, arena))
        return TS_NO_MEMORY;
    if (source != NULL &&
        ts_source_make_room(source,
                            (places + (uint32_t)from->drive->drive_count) * TS_HEAT_NODES_MOST,
                            arena) != TS_OK)
        return TS_NO_MEMORY;
    put_drives(&o);
    put_meshes(&o, train);
    out->bearing_begin = out->place_count;
    put_bearings(&o, train, from->lines);
    out->pad_begin = out->place_count;
    put_pads(&o, train);
    return o.failed ? TS_NO_MEMORY : TS_OK;
}

/* ---- the pump -------------------------------------------------------------------------------- */

static double spool_speed(const ts_heat *heat, uint32_t condition)
{
    const ts_train *train = heat->motion->train;
    double          n     = (double)NAN;

    for (uint32_t s = 0; s < train->shaft_count; s++) {
        const ts_spool *spool = &heat->drive->spools[train->shafts[s].spool];
        if (train->shafts[s].kind == TS_SHAFT_SPOOL &&
            (isnan(n) || (spool->cranked.standing == TS_GIVEN && spool->cranked.value == TS_YES)))
            n = heat->motion->speed[(size_t)condition * train->shaft_count + s];
    }
    return n;
}

/* The pump hangs on the spool that is cranked.  Its valve holds the pressure from the slowest
 * condition that lasts; below, the flow follows the speed.  Common practice, no source. */
static void feed(ts_heat *heat)
{
    heat->n_full = (double)INFINITY;
    for (uint32_t c = 0; c < heat->motion->condition_count; c++) {
        const double n = spool_speed(heat, c);
        if (ts_heat_lasts(heat->drive, c) && n > 0.0 && n < heat->n_full) {
            heat->n_full  = n;
            heat->full_at = c;
        }
    }
    for (uint32_t c = 0; c < heat->motion->condition_count; c++)
        heat->feed_share[c] = fmin(spool_speed(heat, c) / heat->n_full, 1.0);
    if (!isfinite(heat->n_full))
        heat->missing = "a condition that lasts (`hours`)";
}

/* ---- solving --------------------------------------------------------------------------------- */

static double heat_capacity(const ts_drive *drive)
{
    double value = (double)NAN;
    size_t taken = 0;

    if (ts_pick_known(drive->oil.specification)) {
        const ts_oil_row *row = ts_oil_at((size_t)drive->oil.specification.value);
        if (ts_number_parse(ts_text_of(row->c_100), &value, &taken) != TS_NUMBER_FINE)
            value = (double)NAN;
    }
    return value;
}

static const char *lacking(const ts_heat *heat)
{
    const ts_oil *oil = &heat->drive->oil;

    if (!ts_measure_known(oil->rise) || !(oil->rise.value > 0.0))
        return "the rise that is allowed to the oil";
    if (!ts_measure_known(oil->jet_pressure))
        return "the pressure at the jets";
    if (!ts_measure_known(oil->least_jet))
        return "the smallest hole of a jet";
    if (!ts_measure_known(oil->jet_gap))
        return "the gap that jets have to cross";
    if (oil->flow.standing == TS_UNKNOWN)
        return "the flow of the oil";
    if (isnan(heat->c_100))
        return "the heat capacity of the oil";
    for (uint32_t c = 0; c < heat->motion->condition_count; c++) {
        if (isnan(heat->oil->theta_oil[c]))
            return "the temperature of the oil that is fed";
        if (isnan(spool_speed(heat, c)))
            return "the speeds of the spools";
    }
    for (size_t i = 0; i < (size_t)heat->motion->condition_count * heat->motion->train->shaft_count;
         i++)
        if (isnan(heat->motion->speed[i]))
            return "the speeds of the spools";
    return NULL;
}

static void quicken_all(ts_heat *heat)
{
    for (int method = 0; method < TS_HEAT_METHODS; method++)
        for (uint32_t c = 0; c < heat->motion->condition_count; c++) {
            const ts_heat_desk desk = ts_heat_open(heat, method, c, NULL);

            ts_heat_quicken(&desk);
        }
}

static void settle_all(ts_heat *heat, ts_workings *workings)
{
    const uint32_t conditions = heat->motion->condition_count;

    for (int method = 0; method < TS_HEAT_METHODS; method++)
        for (uint32_t c = 0; c < conditions; c++) {
            ts_heat_desk desk = ts_heat_open(heat, method, c, workings);
            const size_t row  = (size_t)method * conditions + c;

            desk.P      = &heat->P[row * heat->motion->train->mesh_count];
            desk.cases  = &heat->cases[row * heat->place_count];
            desk.states = &heat->states[row * heat->drive->drive_count];
            ts_heat_settle(&desk);
        }
}

void ts_heat_solve(ts_heat *heat, ts_workings *workings)
{
    heat->c_100 = heat_capacity(heat->drive);
    ts_heat_gather(heat);
    if (heat->missing == NULL)
        heat->missing = lacking(heat);
    if (heat->missing == NULL)
        feed(heat);
    if (heat->missing != NULL)
        return;
    quicken_all(heat);
    ts_heat_size(heat);
    ts_heat_jets(heat, workings);
    settle_all(heat, workings);
    ts_heat_paths(heat);
    ts_heat_find_worst(heat);
}

ts_heat_state ts_heat_with_feed(ts_heat *heat, uint32_t drive, uint32_t condition, double more)
{
    ts_heat_desk desk = ts_heat_open(heat, 0, condition, NULL);

    desk.warmer = more;
    ts_heat_settle(&desk);
    return desk.states[drive];
}
