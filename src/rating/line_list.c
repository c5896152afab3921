/* rating/line_list.c: which bodies of a drive turn in bearings of their own, and what do they
 * carry? */
#include "rating/drive_lines_parts.h"
#include "rating/line_branch.h"

#include <math.h>

const char *ts_line_kind_name(ts_line_kind kind)
{
    static const char *const names[] = {[TS_LINE_STUB]  = "stub",
                                        [TS_LINE_INNER] = "inner",
                                        [TS_LINE_TUBE]  = "tube",
                                        [TS_LINE_OUTER] = "outer",
                                        [TS_LINE_BOX]   = "box"};
    return names[kind];
}

static bool has_stub(const ts_drive *drive, const ts_shaft *tower)
{
    const ts_pick scheme = drive->drive[tower->drive].take_off.scheme;

    return scheme.standing == TS_GIVEN && scheme.value != TS_FLOAT_FIXED_BEVEL;
}

uint32_t ts_lines_count(const ts_drive *drive, const ts_train *train)
{
    uint32_t count = 0;

    for (uint32_t s = 0; s < train->shaft_count; s++) {
        if (train->shafts[s].kind == TS_SHAFT_BOX)
            count++;
        if (train->shafts[s].kind == TS_SHAFT_TOWER)
            count += has_stub(drive, &train->shafts[s]) ? 4 : 3;
    }
    return count;
}

/* ---- one line -------------------------------------------------------------------------------- */

typedef struct lister {
    const ts_drive *drive;
    const ts_train *train;
    ts_source      *source;
    ts_arena       *arena;
    ts_lines       *lines;
    bool            failed;
} lister;

/* Address `key` below a record; that of the record itself for a drive made by hand. */
static ts_node made(const lister *l, ts_node parent, const char *key)
{
    const ts_node node = l->source != NULL ? ts_source_make(l->source, parent, key) : 0;
    return node != 0 ? node : parent;
}

static void put_gear(const lister *l, uint32_t number, uint32_t gear, const char *key)
{
    ts_line *line = &l->lines->lines[number];

    if (line->gear_count == TS_LINE_GEARS_MOST)
        return;
    l->lines->of_gear[gear] = number;
    l->lines->seat_of[gear] = line->gear_count;
    line->gears[line->gear_count++] =
        (ts_line_gear){.gear = gear, .node = made(l, line->node, key)};
}

static void put_bearing(const lister *l, ts_line *line, ts_node record, const ts_bearing_seat *seat,
                        const char *key)
{
    const ts_node bearings = made(l, record, "bearings");

    line->bearings[line->bearing_count++] = (ts_line_bearing){
        .place = key,
        .node  = seat->node != 0 ? seat->node : made(l, bearings, key),
        .seat  = seat,
        .there = !(seat->form.standing == TS_GIVEN && seat->form.value == TS_SEAT_NONE)};
}

static void make_notches(const lister *l, uint32_t number)
{
    static const char *const keys[TS_LINE_NOTCHES_MOST] = {
        "notch 1", "notch 2", "notch 3",  "notch 4",  "notch 5",  "notch 6",  "notch 7",
        "notch 8", "notch 9", "notch 10", "notch 11", "notch 12", "notch 13", "notch 14"};
    ts_line *line = &l->lines->lines[number];

    for (int i = 0; i < TS_LINE_NOTCHES_MOST; i++)
        line->notch_nodes[i] = made(l, line->node, keys[i]);
}

static uint32_t begin(lister *l, ts_line_kind kind, uint32_t shaft, ts_node record, const char *key,
                      const char *name)
{
    const uint32_t number   = l->lines->count++;
    l->lines->lines[number] = (ts_line){.kind    = kind,
                                        .shaft   = shaft,
                                        .node    = made(l, record, key),
                                        .subject = record,
                                        .name    = name};
    make_notches(l, number);
    return number;
}

/* "hp tower shaft, inner end" */
static const char *name_of(lister *l, const char *shaft, const char *what)
{
    ts_buffer out;
    ts_buffer_open(&out, ts_arena_allocator(l->arena));
    ts_buffer_print(&out, "%s, %s", shaft, what);
    const char *name = out.failed ? NULL : ts_arena_copy(l->arena, out.bytes, out.length);
    ts_buffer_close(&out);
    l->failed = l->failed || name == NULL;
    return name;
}

/* ---- all of them ------------------------------------------------------------------------------
 */

static void list_tower(lister *l, uint32_t shaft)
{
    const ts_shaft       *tower    = &l->train->shafts[shaft];
    const ts_spool_drive *tapped   = &l->drive->drive[tower->drive];
    const ts_mesh        *take_off = &l->train->meshes[tower->mesh];
    const ts_tower_seats *seats    = &tapped->tower_shaft.bearings;
    uint32_t              number;

    if (has_stub(l->drive, tower)) {
        number = begin(l, TS_LINE_STUB, take_off->driver_shaft, tapped->take_off.node, "shaft",
                       name_of(l, l->train->shafts[take_off->driver_shaft].name, "take-off shaft"));
        put_gear(l, number, take_off->driver, "bevel");
        put_bearing(l, &l->lines->lines[number], tapped->take_off.node,
                    &tapped->take_off.bearings.seat[0], "gear");
        put_bearing(l, &l->lines->lines[number], tapped->take_off.node,
                    &tapped->take_off.bearings.seat[1], "away");
    }
    number = begin(l, TS_LINE_INNER, shaft, tower->node, "inner end",
                   name_of(l, tower->name, "inner end"));
    put_gear(l, number, take_off->driven, "bevel");
    put_bearing(l, &l->lines->lines[number], tower->node, &seats->inner[0], "inner gear");
    put_bearing(l, &l->lines->lines[number], tower->node, &seats->inner[1], "inner away");
    number = begin(l, TS_LINE_TUBE, shaft, tower->node, "tube", name_of(l, tower->name, "tube"));
    if (ts_measure_known(tapped->tower_shaft.mid_bearing))
        put_bearing(l, &l->lines->lines[number], tower->node, &seats->mid, "mid");
    number = begin(l, TS_LINE_OUTER, shaft, tower->node, "outer end",
                   name_of(l, tower->name, "outer end"));
    for (uint32_t m = 0; m < l->train->mesh_count; m++)
        if (l->train->meshes[m].driver_shaft == shaft)
            put_gear(l, number, l->train->meshes[m].driver, "bevel");
    put_bearing(l, &l->lines->lines[number], tower->node, &seats->outer[0], "outer gear");
    put_bearing(l, &l->lines->lines[number], tower->node, &seats->outer[1], "outer away");
}

static void list_box_shaft(lister *l, uint32_t shaft)
{
    static const char *const steps[] = {"gear", "step", "step 2", "step 3"};
    const ts_shaft          *box     = &l->train->shafts[shaft];
    const uint32_t           number  = begin(l, TS_LINE_BOX, shaft, box->node, "shaft", box->name);

    for (uint32_t g = 0; g < l->train->gear_count; g++) {
        const ts_gear *gear = &l->train->gears[g];
        if (gear->shaft == shaft)
            put_gear(l, number, g, gear->role == TS_GEAR_BEVEL ? "bevel" : steps[gear->step & 3u]);
    }
    put_bearing(l, &l->lines->lines[number], box->node, &box->record->bearings.seat[0], "front");
    put_bearing(l, &l->lines->lines[number], box->node, &box->record->bearings.seat[1], "rear");
}

static void make_exits(const lister *l, uint32_t number)
{
    static const char *const keys[TS_LINE_EXITS_MOST] = {"way 1", "way 2",  "way 3",  "way 4",
                                                         "way 5", "way 6",  "way 7",  "way 8",
                                                         "way 9", "way 10", "way 11", "way 12"};
    ts_line_way              entry, exits[TS_LINE_EXITS_MOST];
    ts_line                 *line  = &l->lines->lines[number];
    const int                count = ts_line_list_ways(l->lines, number, &entry, exits);

    for (int e = 0; e < count; e++)
        line->exit_nodes[e] = made(l, line->node, keys[e]);
}

ts_status ts_lines_list(const ts_drive *drive, ts_source *source, ts_arena *arena, ts_lines *lines)
{
    const ts_train *train = lines->motion->train;
    lister l = {.drive = drive, .train = train, .source = source, .arena = arena, .lines = lines};

    lines->oil_node = made(&l, drive->oil.node != 0 ? drive->oil.node : drive->node, "in bearings");
    for (uint32_t g = 0; g < train->gear_count; g++)
        lines->of_gear[g] = TS_NOWHERE;
    for (uint32_t s = 0; s < train->shaft_count; s++) {
        if (train->shafts[s].kind == TS_SHAFT_TOWER)
            list_tower(&l, s);
        if (train->shafts[s].kind == TS_SHAFT_BOX)
            list_box_shaft(&l, s);
    }
    for (uint32_t n = 0; n < lines->count; n++)
        make_exits(&l, n);
    return l.failed ? TS_NO_MEMORY : TS_OK;
}
