/* model/start_complete.c: between which speeds is an engine started where the file is silent? */
#include "model/reading.h"

static const double pi = 3.14159265358979323846;

static bool anything_drives(const ts_drive *drive, size_t c)
{
    for (size_t a = 0; a < drive->accessory_count; a++)
        if (ts_measure_known(drive->accessories[a].drives[c]))
            return true;
    return false;
}

static double higher(double a, double b)
{
    return isnan(a) || b > a ? b : a;
}

static double lower(double a, double b)
{
    return isnan(a) || b < a ? b : a;
}

/* "2000 rpm", for the register. */
static const char *speed_text(ts_reading *reading, double speed)
{
    ts_buffer out;
    ts_buffer_open(&out, ts_arena_allocator(reading->arena));
    ts_buffer_number(&out, round(speed * 30.0 / pi * 1e3) / 1e3);
    ts_buffer_add(&out, " rpm");
    const char *copy = out.failed ? NULL : ts_arena_copy(reading->arena, out.bytes, out.length);
    ts_buffer_close(&out);
    return copy;
}

static void settle(ts_reading *reading, ts_measure *speed, double value, const char *key,
                   const char *whole, const char *reason)
{
    const ts_start *start = &reading->drive->start;
    if (speed->standing != TS_ABSENT || isnan(value) || !(value > 0.0))
        return;
    const ts_preset preset = {speed_text(reading, value), reason};
    if (preset.value == NULL) {
        reading->no_memory = true;
        return;
    }
    *speed         = (ts_measure){value, speed->node, TS_ASSUMED};
    reading->apart = TS_APART_START;
    if (start->node != 0)
        ts_assume(reading, start->node, key, preset);
    else
        ts_assume(reading, reading->drive->node, whole, preset);
    reading->apart = TS_APART_NOT;
}

void ts_complete_start(ts_reading *reading)
{
    ts_drive *drive     = reading->drive;
    size_t    spool     = drive->spool_count;
    double    light_off = (double)NAN, idle = (double)NAN, most = (double)NAN;

    for (size_t s = 0; s < drive->spool_count; s++)
        if (drive->spools[s].cranked.value == TS_YES && spool == drive->spool_count)
            spool = s;
    for (size_t c = 0; spool < drive->spool_count && c < drive->condition_count; c++) {
        const ts_measure speed = drive->conditions[c].speed[spool];
        if (!ts_measure_known(speed) || !(speed.value > 0.0))
            continue;
        most = higher(most, speed.value);
        if (anything_drives(drive, c))
            light_off = higher(light_off, speed.value);
        else
            idle = lower(idle, speed.value);
    }
    settle(
        reading, &drive->start.light_off, light_off, "light-off", "start/light-off",
        "the highest speed at which a starter drives in a condition; common practice, no source");
    settle(reading, &drive->start.cut_out, most / 2.0, "cut-out", "start/cut-out",
           "half of the highest speed, between 45 and 60 % of it; common practice, no source");
    settle(
        reading, &drive->start.idle, idle, "idle", "start/idle",
        "the lowest speed at which no starter drives in a condition; common practice, no source");
}
