/* Which accessories stay where they are, when a part of the drive is to be kept? */
#include "study/arranging.h"

#include <string.h>

static bool is_at_or_below(ts_text address, const char *place)
{
    const size_t length = strlen(place);
    return address.length >= length && memcmp(address.at, place, length) == 0 &&
           (address.length == length || address.at[length] == '/');
}

static ts_side_choice side_of(ts_text address)
{
    const char *branches[2] = {"/box/clockwise/", "/box/anticlockwise/"};
    for (int i = 0; i < 2; i++)
        for (size_t k = 0; k + strlen(branches[i]) <= address.length; k++)
            if (memcmp(address.at + k, branches[i], strlen(branches[i])) == 0)
                return i == 0 ? TS_CHOOSE_CLOCKWISE : TS_CHOOSE_ANTICLOCKWISE;
    return TS_CHOOSE_EITHER_SIDE;
}

static ts_extra_demand demand_of(const ts_study *study, const ts_pad *pad, ts_text address)
{
    const ts_shaft *shaft = &study->train.shafts[pad->shaft];
    return (ts_extra_demand){
        .accessory = pad->accessory,
        .spool     = (int32_t)shaft->spool,
        .face      = pad->face == TS_FRONT ? TS_CHOOSE_FRONT : TS_CHOOSE_REAR,
        .side      = side_of(address),
        .ratio     = ts_rational_value(study->motion.shafts[pad->shaft].ratio),
    };
}

/* Demands of every accessory that stands at or below the address; how many. */
static size_t keep_one(const ts_arranging *a, const char *place, ts_extra_demand *out)
{
    const ts_study *study = a->study;
    size_t          count = 0;
    for (uint32_t p = 0; p < study->train.pad_count; p++) {
        const ts_pad *pad = &study->train.pads[p];
        ts_buffer     address;
        if (pad->accessory < 0)
            continue;
        ts_buffer_open(&address, study->allocator);
        ts_source_address(&study->source, pad->node, &address);
        const ts_text at = {address.bytes != NULL ? address.bytes : "", address.length};
        if (is_at_or_below(at, place))
            out[count++] = demand_of(study, pad, at);
        ts_buffer_close(&address);
    }
    return count;
}

/* ---- what is no address ---------------------------------------------------------------------- */

/* Addresses of pads, and of the shafts, branches and boxes that hold them. */
typedef struct names {
    const char **at;
    size_t       count, room;
} names;

static void add_name(names *all, ts_arena *arena, ts_text name)
{
    for (size_t i = 0; i < all->count; i++)
        if (ts_text_is(name, all->at[i]))
            return;
    const char *copy = all->count < all->room ? ts_arena_copy(arena, name.at, name.length) : NULL;
    if (copy != NULL)
        all->at[all->count++] = copy;
}

/* "drive/hp" is the shortest. */
static void add_with_parents(names *all, ts_arena *arena, ts_text address)
{
    size_t slashes = 0;
    for (size_t i = 0; i < address.length; i++)
        if (address.at[i] == '/' && slashes++ > 0)
            add_name(all, arena, (ts_text){address.at, i});
    add_name(all, arena, address);
}

/* Where the accessory of that name stands, or the address that is most alike. */
static const char *nearest_to(const ts_arranging *a, const char *place)
{
    enum { PARENTS = 6 };
    const ts_study *study = a->study;
    names           all   = {.room = (size_t)PARENTS * study->train.pad_count};
    const char     *there = NULL;
    all.at                = TS_TAKE(a->arena, const char *, all.room + 1);
    for (uint32_t p = 0; all.at != NULL && p < study->train.pad_count; p++) {
        const ts_pad *pad = &study->train.pads[p];
        ts_buffer     address;
        if (pad->accessory < 0)
            continue;
        ts_buffer_open(&address, study->allocator);
        ts_source_address(&study->source, pad->node, &address);
        if (!address.failed && address.bytes != NULL) {
            add_with_parents(&all, a->arena, (ts_text){address.bytes, address.length});
            if (strcmp(study->drive.accessories[pad->accessory].name, place) == 0)
                there = ts_arena_copy(a->arena, address.bytes, address.length);
        }
        ts_buffer_close(&address);
    }
    return there != NULL || all.at == NULL ? there
                                           : ts_text_nearest(ts_text_of(place), all.at, all.count);
}

static ts_status say_nobody(const ts_arranging *a, const char *place)
{
    ts_buffer says;
    ts_buffer_open(&says, a->study->allocator);
    ts_buffer_print(&says, "no accessory stands at the address to keep, `%s`", place);
    if (!says.failed)
        ts_study_say(a->study, "nothing-to-keep", says.bytes,
                     "the address of a pad, shaft, branch or box, such as drive/hp/box/clockwise/2",
                     nearest_to(a, place));
    ts_buffer_close(&says);
    return TS_NOT_UNDERSTOOD;
}

ts_status ts_arranging_keep(const ts_arranging *a, ts_extra_demand **extra, size_t *count)
{
    const size_t pads = a->study->train.pad_count;
    *count            = 0;
    *extra            = TS_TAKE(a->arena, ts_extra_demand, pads * (a->options->keep_count + 1) + 1);
    if (*extra == NULL)
        return TS_NO_MEMORY;
    for (size_t i = 0; i < a->options->keep_count; i++) {
        const size_t found = keep_one(a, a->options->keep[i], *extra + *count);
        if (found == 0)
            return say_nobody(a, a->options->keep[i]);
        *count += found;
    }
    return TS_OK;
}
