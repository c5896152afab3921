/* Report: what are the teeth, and how safe are they? */
#include "report/report_chapter.h"

#include "catalog/gear_material.h"
#include "report/tooth_sheet.h"

#include <math.h>

static const char *role_of(const ts_gear *gear)
{
    static const char *const roles[] = {"bevel", "", "step"};
    return roles[gear->role];
}

static void measure(ts_chapter *chapter, const ts_measure *given, ts_kind kind, int digits)
{
    ts_chapter_value(chapter, ts_measure_known(*given) ? given->value : (double)NAN, kind, digits);
}

static void gear(ts_chapter *chapter, const ts_gear *gear)
{
    const ts_train *train = chapter->answer->train;
    ts_buffer_print(&chapter->cell, "%s %s", train->shafts[gear->shaft].name, role_of(gear));
    ts_chapter_cell(chapter);
    ts_buffer_integer(&chapter->cell, gear->teeth.value);
    ts_chapter_cell(chapter);
    measure(chapter, &gear->m_n, TS_KIND_LENGTH, 4);
    measure(chapter, &gear->alpha_n, TS_KIND_ANGLE, 4);
    measure(chapter, &gear->beta, TS_KIND_ANGLE, 4);
    ts_chapter_word(chapter, gear->hand > 0 ? "right" : gear->hand < 0 ? "left" : "\xC2\xB7");
    if (gear->role == TS_GEAR_BEVEL)
        ts_chapter_word(chapter, "\xC2\xB7");
    else
        measure(chapter, &gear->x, TS_KIND_NUMBER, 4);
    measure(chapter, &gear->face, TS_KIND_LENGTH, 4);
    ts_chapter_word(chapter, ts_pick_known(gear->material)
                                 ? ts_gear_material_keys[gear->material.value]
                                 : "not told");
}

static void gears(ts_chapter *chapter)
{
    static const ts_column metric[] = {
        {"gear", false}, {"z", true}, {"m mm", true}, {"alpha deg", true}, {"beta deg", true},
        {"hand", false}, {"x", true}, {"b mm", true}, {"material", false}};
    static const ts_column us[]  = {{"gear", false},     {"z", true},        {"m in", true},
                                    {"alpha deg", true}, {"beta deg", true}, {"hand", false},
                                    {"x", true},         {"b in", true},     {"material", false}};
    const ts_train        *train = chapter->answer->train;
    ts_manuscript_heading(chapter->manuscript, 2, "Gears");
    ts_manuscript_table(
        chapter->manuscript,
        "m: normal module, of bevels the outer transverse module; beta: helix angle, "
        "of bevels the mean spiral angle",
        chapter->page.units == TS_UNITS_US ? us : metric, 9);
    for (uint32_t g = 0; g < train->gear_count; g++)
        gear(chapter, &train->gears[g]);
}

void ts_chapter_teeth(ts_chapter *chapter, const ts_tooth_data *data)
{
    ts_manuscript_heading(chapter->manuscript, 1, "Teeth");
    gears(chapter);
    if (data->count > 0)
        ts_tooth_data_cells(chapter, data);
    ts_manuscript_heading(chapter->manuscript, 2, "Meshes");
    ts_mesh_cells(chapter);
    if (chapter->answer->teeth == NULL)
        return;
    ts_manuscript_heading(chapter->manuscript, 2, "Strength");
    ts_strength_cells(chapter);
    ts_manuscript_heading(chapter->manuscript, 2, "Heat and films of the flanks");
    ts_rubbing_cells(chapter);
    ts_manuscript_figure(chapter->manuscript, "teeth", NULL,
                         "The cylindrical mesh that governs: path of contact and working flanks.");
    ts_manuscript_figure(chapter->manuscript, "root", NULL, "The critical sections of its roots.");
}
