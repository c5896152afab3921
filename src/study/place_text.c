/* Which place does a question such as "fuel pump on lp rear" mean? */
#include "study/place_text.h"

#include <stdio.h>
#include <string.h>

typedef struct reading {
    ts_study               *study;
    const ts_drive_problem *made;
    ts_text                 rest; /* what is not read yet */
} reading;

static bool refuse(ts_study *study, const char *says, const char *nearest)
{
    ts_study_say(study, "no-such-place", says,
                 "ACCESSORY on SPOOL (or the address of its box), front or rear, clockwise, "
                 "anticlockwise or input, or ACCESSORY with ACCESSORY",
                 nearest);
    return false;
}

/* Takes a word off the front when it stands there whole. */
static bool take(reading *r, const char *word)
{
    const size_t length = strlen(word);
    if (r->rest.length < length || memcmp(r->rest.at, word, length) != 0 ||
        (r->rest.length > length && r->rest.at[length] != ' '))
        return false;
    r->rest = ts_text_trim((ts_text){r->rest.at + length, r->rest.length - length});
    return true;
}

/* The accessory with the longest name that stands at the front; -1: none does. */
static int32_t take_accessory(reading *r)
{
    const ts_drive *drive = &r->study->drive;
    int32_t         best  = -1;
    size_t          most  = 0;
    for (size_t i = 0; i < drive->accessory_count; i++) {
        reading      trial  = *r;
        const size_t length = strlen(drive->accessories[i].name);
        if (length > most && take(&trial, drive->accessories[i].name)) {
            best = (int32_t)i;
            most = length;
        }
    }
    if (best >= 0)
        (void)take(r, drive->accessories[best].name);
    return best;
}

static const char *nearest_accessory(const reading *r)
{
    const char     *names[TS_ARRANGE_ACCESSORIES];
    const ts_drive *drive = &r->study->drive;
    size_t          count = 0, length = 0;
    for (size_t i = 0; i < drive->accessory_count && count < TS_ARRANGE_ACCESSORIES; i++)
        names[count++] = drive->accessories[i].name;
    while (length < r->rest.length && strncmp(r->rest.at + length, " on ", 4) != 0 &&
           strncmp(r->rest.at + length, " with ", 6) != 0)
        length++;
    return ts_text_nearest((ts_text){r->rest.at, length}, names, count);
}

/* The word that is not understood, and the place most like it. */
static bool refuse_word(const reading *r, const char *says)
{
    static const char *const words[] = {"front",         "rear",  "clockwise",
                                        "anticlockwise", "input", "with"};
    enum { WORDS = sizeof words / sizeof words[0], SPOOLS = 16 };
    const char *names[WORDS + SPOOLS];
    size_t      count = 0, length = 0;
    ts_buffer   text;

    while (count < WORDS) {
        names[count] = words[count];
        count++;
    }
    for (size_t b = 0; b < r->made->problem.box_count && count < WORDS + SPOOLS; b++)
        names[count++] = r->made->problem.boxes[b].name;
    while (length < r->rest.length && r->rest.at[length] != ' ')
        length++;
    if (length == 0)
        return refuse(r->study, says, NULL);
    ts_buffer_open(&text, r->study->allocator);
    ts_buffer_print(&text, "%s: `%.*s` is none", says, (int)length, r->rest.at);
    if (!text.failed)
        (void)refuse(r->study, text.bytes,
                     ts_text_nearest((ts_text){r->rest.at, length}, names, count));
    ts_buffer_close(&text);
    return false;
}

static bool has_box(const reading *r, int32_t spool)
{
    for (size_t b = 0; b < r->made->problem.box_count; b++)
        if (r->made->spool_of[b] == spool)
            return true;
    return false;
}

/* A spool by its name, or by the address of its box with or without a branch. */
static int32_t take_spool(reading *r, ts_drive_place *out)
{
    static const char *const ends[] = {"", "/box", "/box/input", "/box/clockwise",
                                       "/box/anticlockwise"};
    const ts_drive          *drive  = &r->study->drive;
    char                     address[200];
    for (size_t s = 0; s < drive->spool_count; s++) {
        if (take(r, drive->spools[s].name)) {
            (void)take(r, "box");
            return (int32_t)s;
        }
        for (size_t e = 0; e < sizeof ends / sizeof ends[0]; e++) {
            (void)snprintf(address, sizeof address, "drive/%s%s", drive->spools[s].name, ends[e]);
            if (!take(r, address))
                continue;
            out->input = out->input || e == 2;
            out->side = e == 3 ? TS_CHOOSE_CLOCKWISE : e == 4 ? TS_CHOOSE_ANTICLOCKWISE : out->side;
            return (int32_t)s;
        }
    }
    return -1;
}

/* "on lp rear clockwise" */
static bool read_place(reading *r, ts_drive_place *out)
{
    bool any   = false;
    out->spool = take_spool(r, out);
    any        = out->spool >= 0;
    if (any && !has_box(r, out->spool))
        return refuse(r->study, "that spool has no box to stand on", NULL);
    for (;;) {
        if (take(r, "front"))
            out->face = TS_CHOOSE_FRONT;
        else if (take(r, "rear"))
            out->face = TS_CHOOSE_REAR;
        else if (take(r, "clockwise"))
            out->side = TS_CHOOSE_CLOCKWISE;
        else if (take(r, "anticlockwise"))
            out->side = TS_CHOOSE_ANTICLOCKWISE;
        else if (take(r, "input"))
            out->input = true;
        else
            break;
        any = true;
    }
    return any || refuse_word(r, "no place is named behind `on`");
}

bool ts_place_read(ts_study *study, const ts_drive_problem *made, const char *text,
                   ts_drive_place *out)
{
    reading r = {.study = study, .made = made, .rest = ts_text_trim(ts_text_of(text))};
    *out      = (ts_drive_place){
             .spool = -1, .with = -1, .face = TS_CHOOSE_EITHER_FACE, .side = TS_CHOOSE_EITHER_SIDE};
    out->accessory = take_accessory(&r);
    if (out->accessory < 0)
        return refuse(study, "the question does not begin with an accessory",
                      nearest_accessory(&r));
    if (r.rest.length == 0)
        return refuse(study, "the question names no place", NULL);
    if (take(&r, "on") && !read_place(&r, out))
        return false;
    if (take(&r, "with")) {
        out->with = take_accessory(&r);
        if (out->with < 0 || out->with == out->accessory)
            return refuse(study, "no other accessory is named behind `with`",
                          nearest_accessory(&r));
    }
    if (r.rest.length > 0)
        return refuse_word(&r, "the place cannot be read to its end");
    if (out->input && out->side != TS_CHOOSE_EITHER_SIDE)
        return refuse(study, "the input stands on no side", NULL);
    return true;
}
