/* report/oil_assumptions.c: what does the answer on oil and heat take for granted? */
#include "report/check_page.h"
#include "report/json_quantity.h"
#include "report/oil_grid.h"
#include "report/register.h"

#include <string.h>

#define PRACTICE "; common practice, no source"

/* What no key of the file can change. */
static const ts_assumption fixed[] = {
    {0, "discharge of a jet", "0.7", "of a small round hole, 0.62 to 0.88 when measured" PRACTICE},
    {0, "face width of a jet", "40 mm", "that one hole wets" PRACTICE},
    {0, "side of a jet", "entering", "leaving from 100 m/s, both from 150 m/s" PRACTICE},
    {0, "friction of splines", "0.1", "oiled steel" PRACTICE},
    {0, "wind at a bearing", "half its speed", "the cage carries the air round" PRACTICE},
    {0, "tilt of splines", "0.001", "of two shafts in one pad, where it is not computed" PRACTICE},
    {0, "f_0 of bearings", "3 to 6.6",
     "Palmgren's of bearings that jets feed at speed (Harris, from memory); `start` takes its own "
     "`bearing factor`, since little oil comes while the pump runs up"},
    {0, "f_1 of bearings", "0.0003 to 0.001", "by form and load (Harris, from memory)"},
    {0, "friction of bearings", "0.0011 to 0.0015", "second method, ISO/TR 14179-1 (from memory)"},
    {0, "diameter of a seal", "as bored", "the bore of the bearing beside it" PRACTICE},
    {0, "depth of a dip", "2.25 modules", "of the driven gear, where teeth dip" PRACTICE},
    {0, "full flow", "from the slowest", "condition with `hours` on, in proportion below" PRACTICE},
    {0, "heat", "all into the oil", "none through the casing: the oil is warmer than in truth"},
    {0, "density and heat capacity", "-0.7 and +2.5 a kelvin",
     "of kg/m3 and J/(kg.K), for every oil (from memory)"},
};
#define FIXED_COUNT (sizeof fixed / sizeof fixed[0])

/* Does a default of the file bear on the oil? */
static bool bears(const ts_answer *answer, const ts_assumption *one)
{
    const ts_drive *drive = answer->drive;

    if (one->node == drive->oil.node && drive->oil.node != 0)
        return true;
    if (strncmp(one->key, "oil/", 4) == 0 || strstr(one->key, "jet speed") != NULL ||
        strstr(one->key, "lubrication") != NULL || strstr(one->key, "roughness") != NULL)
        return true;
    for (ts_node node = one->node; node != 0; node = answer->source->nodes[node].parent)
        for (size_t a = 0; a < drive->accessory_count; a++)
            if (node == drive->accessories[a].pumps.node ||
                node == drive->accessories[a].separator.node)
                return true;
    return false;
}

static bool is_new(const ts_drive *drive, size_t index)
{
    for (size_t i = 0; i < index; i++)
        if (strcmp(drive->assumed[i].key, drive->assumed[index].key) == 0 &&
            strcmp(drive->assumed[i].value, drive->assumed[index].value) == 0)
            return false;
    return true;
}

void ts_oil_assumptions_page(const ts_answer *answer, ts_page *page)
{
    ts_page_heading(page, "Assumptions of this answer (what the file does not say, and what no key "
                          "changes)");
    for (size_t i = 0; i < answer->drive->assumed_count; i++) {
        ts_buffer line;
        if (!bears(answer, &answer->drive->assumed[i]) || !is_new(answer->drive, i))
            continue;
        ts_buffer_open(&line, page->out->allocator);
        ts_assumption_words(answer, i, false, page->units, &line);
        ts_buffer_fill(page->out, ' ', 2);
        ts_page_wrap_made(page, &line, 4, 2);
    }
    ts_register_page(page, fixed, FIXED_COUNT);
}

void ts_oil_assumptions_cells(ts_chapter *chapter)
{
    static const ts_column columns[] = {{"what", false}, {"value", false}, {"why", false}};
    const ts_drive        *drive     = chapter->answer->drive;

    ts_manuscript_table(chapter->manuscript,
                        "What this chapter takes for granted: what the file does not say of the "
                        "oil, and what no key changes",
                        columns, 3);
    for (size_t i = 0; i < drive->assumed_count + FIXED_COUNT; i++) {
        const bool           told = i < drive->assumed_count;
        const ts_assumption *one  = told ? &drive->assumed[i] : &fixed[i - drive->assumed_count];
        if (told && (!bears(chapter->answer, one) || !is_new(drive, i)))
            continue;
        ts_chapter_word(chapter, one->key);
        ts_register_value(one, chapter->page.units, &chapter->cell);
        ts_chapter_cell(chapter);
        ts_chapter_word(chapter, one->reason);
    }
}

void ts_oil_assumptions_json(ts_json *json, const ts_answer *answer)
{
    const ts_drive *drive = answer->drive;

    ts_json_key(json, "assumptions");
    ts_json_array(json);
    for (size_t i = 0; i < drive->assumed_count + FIXED_COUNT; i++) {
        const bool           told = i < drive->assumed_count;
        const ts_assumption *one  = told ? &drive->assumed[i] : &fixed[i - drive->assumed_count];
        if (told && (!bears(answer, one) || !is_new(drive, i)))
            continue;
        ts_json_object(json);
        ts_json_string_at(json, "key", one->key);
        ts_json_string_at(json, "value", one->value);
        ts_json_string_at(json, "reason", one->reason);
        if (told)
            ts_json_node(json, answer, "at", one->node);
        ts_json_end(json, '}');
    }
    ts_json_end(json, ']');
}
