/* model/drive_complete.c: what follows from the whole drive where the file is silent? */
#include "model/reading.h"

/* ---- the cranked spool ---------------------------------------------------------------------- */

static const char *const cranked_reason =
    "no spool is said to be cranked, and of those that are left open this one turns fastest in the "
    "first condition; common practice, no source";
static const char *const not_cranked_reason =
    "the starter turns one spool, and another one is cranked; common practice, no source";

static bool is_said_cranked(const ts_spool *spool)
{
    return spool->cranked.standing == TS_GIVEN && spool->cranked.value == TS_YES;
}

/* The spool left open that turns fastest in the first condition, the earlier of equals. */
static size_t fastest_open_spool(const ts_drive *drive)
{
    size_t fastest = drive->spool_count;
    for (size_t s = 0; s < drive->spool_count; s++) {
        const ts_measure speed = drive->conditions[0].speed[s];
        if (drive->spools[s].cranked.standing != TS_ABSENT || !ts_measure_known(speed))
            continue;
        if (fastest == drive->spool_count ||
            speed.value > drive->conditions[0].speed[fastest].value)
            fastest = s;
    }
    return fastest;
}

static void settle_cranked(ts_reading *reading)
{
    ts_drive *drive   = reading->drive;
    bool      is_said = false;
    for (size_t s = 0; s < drive->spool_count; s++)
        is_said = is_said || is_said_cranked(&drive->spools[s]);
    const size_t cranked = is_said ? drive->spool_count : fastest_open_spool(drive);
    for (size_t s = 0; s < drive->spool_count; s++) {
        ts_spool *spool = &drive->spools[s];
        if (spool->cranked.standing != TS_ABSENT)
            continue;
        const ts_preset preset = s == cranked ? (ts_preset){"yes", cranked_reason}
                                              : (ts_preset){"no", not_cranked_reason};
        spool->cranked         = (ts_pick){s == cranked ? TS_YES : TS_NO, spool->node, TS_ASSUMED};
        ts_assume(reading, spool->node, "cranked", preset);
    }
}

/* ---- power in conditions that are not named -------------------------------------------------- */

static void note_pad(const ts_pad_end *pad, int32_t spool, int32_t *spool_of)
{
    if (pad->use == TS_PAD_ACCESSORY && spool_of[pad->accessory] < 0)
        spool_of[pad->accessory] = spool;
}

/* Depth is bounded by that of the file. */
static void note_shafts(const ts_box_shaft *shafts, size_t count, int32_t spool, int32_t *spool_of)
{
    for (size_t i = 0; i < count; i++) {
        note_pad(&shafts[i].front, spool, spool_of);
        note_pad(&shafts[i].rear, spool, spool_of);
        note_shafts(shafts[i].branch, shafts[i].branch_count, spool, spool_of);
    }
}

/* The spool on which each accessory sits, or -1; NULL without memory. */
static int32_t *find_spools(ts_reading *reading)
{
    const ts_drive *drive    = reading->drive;
    int32_t        *spool_of = TS_TAKE(reading->arena, int32_t, drive->accessory_count);
    if (spool_of == NULL)
        return NULL;
    for (size_t a = 0; a < drive->accessory_count; a++)
        spool_of[a] = -1;
    for (size_t d = 0; d < drive->drive_count; d++) {
        const ts_spool_drive *tapped = &drive->drive[d];
        note_shafts(&tapped->box.input, 1, tapped->spool, spool_of);
        note_shafts(tapped->box.clockwise, tapped->box.clockwise_count, tapped->spool, spool_of);
        note_shafts(tapped->box.anticlockwise, tapped->box.anticlockwise_count, tapped->spool,
                    spool_of);
    }
    return spool_of;
}

/* The named condition whose speed of `spool` is nearest to that of condition c; condition_count
 * when no power is named at a speed above 0. */
static size_t nearest_named(const ts_drive *drive, const ts_accessory *accessory, int32_t spool,
                            size_t c)
{
    const double here    = drive->conditions[c].speed[spool].value;
    size_t       nearest = drive->condition_count;
    double       least   = INFINITY;
    for (size_t n = 0; n < drive->condition_count; n++) {
        const double there = drive->conditions[n].speed[spool].value;
        if (accessory->power[n].standing != TS_GIVEN || !(there > 0.0))
            continue;
        if (fabs(there - here) < least) {
            least   = fabs(there - here);
            nearest = n;
        }
    }
    return nearest;
}

/* "4.21 kW", for the register. */
static const char *power_text(ts_reading *reading, double watts)
{
    ts_buffer out;
    ts_buffer_open(&out, ts_arena_allocator(reading->arena));
    ts_buffer_significant(&out, watts / 1000.0, 4);
    ts_buffer_add(&out, " kW");
    const char *copy = out.failed ? NULL : ts_arena_copy(reading->arena, out.bytes, out.length);
    ts_buffer_close(&out);
    return copy;
}

static const char *power_reason(ts_reading *reading, const char *condition)
{
    ts_buffer out;
    ts_buffer_open(&out, ts_arena_allocator(reading->arena));
    ts_buffer_print(&out,
                    "keeps the torque of `%s`, the named condition nearest in spool speed; "
                    "common practice, no source",
                    condition);
    const char *copy = out.failed ? NULL : ts_arena_copy(reading->arena, out.bytes, out.length);
    ts_buffer_close(&out);
    return copy;
}

/* At constant torque power goes with speed: P_c = P_n * omega_c / omega_n (derived). */
static void fill_power(ts_reading *reading, ts_accessory *accessory, int32_t spool, size_t c)
{
    const ts_drive *drive   = reading->drive;
    const size_t    nearest = nearest_named(drive, accessory, spool, c);
    if (nearest == drive->condition_count || !ts_measure_known(drive->conditions[c].speed[spool]))
        return;
    const ts_node   power   = ts_source_child(reading->source, accessory->node, TS_TEXT("power"));
    const double    omega_c = drive->conditions[c].speed[spool].value;
    const double    omega_n = drive->conditions[nearest].speed[spool].value;
    const double    watts   = accessory->power[nearest].value * (omega_c / omega_n);
    const ts_preset preset  = {power_text(reading, watts),
                               power_reason(reading, drive->conditions[nearest].name)};
    if (preset.value == NULL || preset.reason == NULL) {
        reading->no_memory = true;
        return;
    }
    accessory->power[c] = (ts_measure){watts, power, TS_ASSUMED};
    ts_assume(reading, power, drive->conditions[c].name, preset);
}

static void complete_power(ts_reading *reading)
{
    const ts_drive *drive    = reading->drive;
    const int32_t  *spool_of = find_spools(reading);
    if (spool_of == NULL) {
        reading->no_memory = true;
        return;
    }
    for (size_t a = 0; a < drive->accessory_count; a++) {
        ts_accessory *accessory = &drive->accessories[a];
        for (size_t c = 0; spool_of[a] >= 0 && c < drive->condition_count; c++) {
            const bool drives = ts_measure_known(accessory->drives[c]);
            if (accessory->power[c].standing == TS_ABSENT && !drives)
                fill_power(reading, accessory, spool_of[a], c);
        }
    }
}

/* ---- misalignment of teeth ------------------------------------------------------------------- */

/* What the tolerances allow is known only when the gears are, so the register holds words. */
static void assume_misalignments(ts_reading *reading)
{
    static const ts_preset preset = {"as bent and toleranced",
                                     "what the accuracy allows both gears, and how far the shafts "
                                     "and bearings of each condition "
                                     "give way; ISO 6336-1 (from memory)"};
    for (size_t d = 0; d < reading->drive->drive_count && !reading->no_memory; d++) {
        const ts_box          *box   = &reading->drive->drive[d].box;
        const ts_tooth_system *gears = &box->gears;
        if (gears->face_load_factor.standing != TS_ABSENT ||
            gears->misalignment.standing != TS_ABSENT)
            continue;
        if (gears->node != 0)
            ts_assume(reading, gears->node, "misalignment", preset);
        else
            ts_assume(reading, box->node, "gears/misalignment", preset);
    }
}

/* ---- shafts and bearings --------------------------------------------------------------------- */

/* They follow from the loads, so the register holds words; `why` and the table of shafts tell the
 * numbers. */
static void assume_shafts(ts_reading *reading)
{
    static const ts_preset box = {
        "as its loads ask",
        "where a shaft does not say them: journals and gear seats by a reference stress of 60 "
        "MPa, "
        "bores of half a journal, the span by the depth of the box, and the lightest bearings that "
        "hold; common practice, no source"};
    static const ts_preset tower = {
        "as its loads ask",
        "where they are not said: a gearshaft on two bearings at either end of the radial shaft, "
        "by "
        "the same reference stress, and the lightest bearings that hold; common practice, no "
        "source"};
    for (size_t d = 0; d < reading->drive->drive_count && !reading->no_memory; d++) {
        const ts_spool_drive *tapped = &reading->drive->drive[d];
        if (tapped->take_off.bearings.node == 0 && tapped->take_off.scheme.standing == TS_GIVEN &&
            tapped->take_off.scheme.value != TS_FLOAT_FIXED_BEVEL)
            ts_assume(reading, tapped->take_off.node, "bearings", tower);
        if (tapped->tower_shaft.bearings.node == 0)
            ts_assume(reading, tapped->tower_shaft.node, "bearings", tower);
        ts_assume(reading, tapped->box.node, "outside, bore and bearings", box);
    }
}

void ts_complete_drive(ts_reading *reading)
{
    settle_cranked(reading);
    assume_misalignments(reading);
    if (!reading->no_memory)
        assume_shafts(reading);
    if (!reading->no_memory)
        complete_power(reading);
    if (!reading->no_memory)
        ts_complete_start(reading);
}
