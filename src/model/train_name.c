/* model/train_name.c: what is each shaft of a train called, and which number has it? */
#include "model/train_name.h"

/* ---- numbers -------------------------------------------------------------------------------- */

/* The shafts of one box stand together, the input first. */
static uint32_t box_end(const ts_train *train, uint32_t input)
{
    uint32_t end = input + 1;
    while (end < train->shaft_count && train->shafts[end].kind == TS_SHAFT_BOX &&
           train->shafts[end].drive == train->shafts[input].drive)
        end++;
    return end;
}

/* Is this shaft of a main branch, not of a side branch? */
static bool is_main(const ts_train *train, uint32_t shaft)
{
    return train->shafts[shaft].way != TS_WAY_NONE && !train->shafts[shaft].side;
}

static uint32_t number_box(ts_train *train, uint32_t input, uint32_t next)
{
    const uint32_t end = box_end(train, input);
    for (uint32_t s = end; s-- > input + 1;) {
        if (is_main(train, s) && train->shafts[s].way == TS_WAY_CLOCKWISE)
            train->shafts[s].number = next++;
    }
    train->shafts[input].number = next++;
    for (uint32_t s = input + 1; s < end; s++) {
        if (is_main(train, s) && train->shafts[s].way == TS_WAY_ANTICLOCKWISE)
            train->shafts[s].number = next++;
    }
    for (uint32_t s = input + 1; s < end; s++) {
        if (!is_main(train, s))
            train->shafts[s].number = next++;
    }
    return next;
}

void ts_train_number(ts_train *train)
{
    uint32_t next = 1;
    for (uint32_t s = 0; s < train->shaft_count; s++) {
        if (train->shafts[s].kind == TS_SHAFT_TOWER)
            next = number_box(train, s + 1, next);
    }
}

/* ---- names ---------------------------------------------------------------------------------- */

static const char *accessory_name(const ts_drive *drive, const ts_pad_end *pad)
{
    return pad->use == TS_PAD_ACCESSORY ? drive->accessories[pad->accessory].name : NULL;
}

static void add_box_shaft_name(const ts_drive *drive, const ts_shaft *shaft, ts_buffer *out)
{
    const ts_box_shaft *record = shaft->record;
    const char         *front  = accessory_name(drive, &record->front);
    const char         *rear   = accessory_name(drive, &record->rear);
    if (record->name.text != NULL)
        ts_buffer_add(out, record->name.text);
    else if (front != NULL && rear != NULL)
        ts_buffer_print(out, "%s + %s", front, rear);
    else if (front != NULL || rear != NULL)
        ts_buffer_add(out, front != NULL ? front : rear);
    else
        ts_buffer_print(out, "idler %u", shaft->number);
}

static void add_name(const ts_drive *drive, const ts_train *train, uint32_t s, ts_buffer *out)
{
    const ts_shaft *shaft = &train->shafts[s];
    const char     *spool = drive->spools[shaft->spool].name;
    const bool      input = shaft->kind == TS_SHAFT_BOX && shaft->way == TS_WAY_NONE;
    if (shaft->kind == TS_SHAFT_SPOOL)
        ts_buffer_print(out, "%s spool", spool);
    else if (shaft->kind == TS_SHAFT_TOWER)
        ts_buffer_print(out, "%s tower shaft", spool);
    else if (!input || shaft->record->name.text != NULL)
        add_box_shaft_name(drive, shaft, out);
    else if (drive->drive_count > 1)
        ts_buffer_print(out, "%s box input", spool);
    else
        ts_buffer_add(out, "box input");
}

bool ts_train_name(const ts_drive *drive, ts_train *train, ts_arena *arena)
{
    ts_buffer name;
    bool      sound = true;
    ts_buffer_open(&name, ts_arena_allocator(arena));
    for (uint32_t s = 0; s < train->shaft_count && sound; s++) {
        ts_buffer_clear(&name);
        add_name(drive, train, s, &name);
        train->shafts[s].name = name.failed ? NULL : ts_arena_copy(arena, name.bytes, name.length);
        sound                 = train->shafts[s].name != NULL;
    }
    ts_buffer_close(&name);
    return sound;
}
