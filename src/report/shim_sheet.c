/* report/shim_sheet.c: which shims go under which bevel gear, and what backlash is to be found? */
#include "report/shim_sheet.h"

#include <math.h>

#define COUNT(list) (sizeof(list) / sizeof(list)[0])

typedef struct sheet {
    ts_chapter     *chapter;
    const ts_train *train;
} sheet;

/* "0.170 .. 0.230", or that it is not told. */
static void bounds(const sheet *s, const double j[2])
{
    if (isnan(j[0]) && isnan(j[1])) {
        ts_chapter_word(s->chapter, "not told");
        return;
    }
    ts_chapter_fine(s->chapter, j[0]);
    ts_buffer_add(&s->chapter->cell, " .. ");
    ts_chapter_fine(s->chapter, j[1]);
    ts_chapter_cell(s->chapter);
}

static void fine(const sheet *s, double si)
{
    ts_chapter_fine(s->chapter, si);
    ts_chapter_cell(s->chapter);
}

static void pair_name(const sheet *s, uint32_t m)
{
    const ts_mesh *mesh = &s->train->meshes[m];

    ts_buffer_print(&s->chapter->cell, "%s to %s", s->train->shafts[mesh->driver_shaft].name,
                    s->train->shafts[mesh->driven_shaft].name);
    ts_chapter_cell(s->chapter);
}

static void table(const sheet *s, const char *metric, const char *us, const ts_column *columns,
                  size_t count)
{
    ts_manuscript_table(s->chapter->manuscript, s->chapter->page.units == TS_UNITS_US ? us : metric,
                        columns, count);
}

/* ---- bevels ---------------------------------------------------------------------------------- */

static void stands(const sheet *s, const ts_shim_plan *plan)
{
    static const ts_column columns[] = {{"bevel gear on", false}, {"z", true},     {"t_xo", true},
                                        {"t_xi", true},           {"stack", true}, {"likely", true},
                                        {"shims from", true},     {"to", true},    {"step", true},
                                        {"backlash a step", true}};
    table(s,
          "mm; t_xo, t_xi: pitch apex (crossing of the axes) to the outer and inner crown, ISO "
          "23509; stack: what seat, bearing and crown may be off together, likely: as the root of "
          "the squares; last: normal backlash that one step of its shim changes",
          "in; t_xo, t_xi: pitch apex (crossing of the axes) to the outer and inner crown, ISO "
          "23509; stack: what seat, bearing and crown may be off together, likely: as the root of "
          "the squares; last: normal backlash that one step of its shim changes",
          columns, COUNT(columns));
    for (uint32_t i = 0; i < plan->count; i++)
        for (int g = 0; plan->items[i].missing == NULL && g < 2; g++) {
            const ts_shim *shim = &plan->items[i].shims[g];
            ts_chapter_word(s->chapter, s->train->shafts[s->train->gears[shim->gear].shaft].name);
            ts_buffer_integer(&s->chapter->cell, s->train->gears[shim->gear].teeth.value);
            ts_chapter_cell(s->chapter);
            fine(s, shim->t_xo);
            fine(s, shim->t_xi);
            fine(s, shim->stack);
            fine(s, shim->likely);
            fine(s, shim->range[0]);
            fine(s, shim->range[1]);
            fine(s, plan->items[i].step);
            fine(s, shim->k_j * plan->items[i].step);
        }
}

static void bevel_play(const sheet *s, const ts_shim_plan *plan)
{
    static const ts_column columns[] = {{"bevels", false},
                                        {"j_bn cold, as built", true},
                                        {"j_bn hot and cold, all travel", true},
                                        {"left by half a step", true}};
    table(s, "mm; normal backlash of the bevels, least to greatest",
          "in; normal backlash of the bevels, least to greatest", columns, COUNT(columns));
    for (uint32_t i = 0; i < plan->count; i++) {
        const ts_bevel_shims *one = &plan->items[i];
        if (one->missing != NULL)
            continue;
        pair_name(s, one->mesh);
        bounds(s, one->j_bn);
        bounds(s, one->j_all);
        fine(s, one->j_step);
    }
}

static void bevels(const sheet *s, const ts_shim_plan *plan)
{
    ts_manuscript *manuscript = s->chapter->manuscript;

    ts_manuscript_heading(manuscript, 2, "Bevel gears and their shims");
    if (plan->count == 0) {
        ts_manuscript_text(manuscript, TS_BLOCK_PLAIN, "This drive has no bevel gears.");
        return;
    }
    stands(s, plan);
    bevel_play(s, plan);
    for (uint32_t i = 0; i < plan->count; i++) {
        const ts_bevel_shims *one = &plan->items[i];
        const char *name          = s->train->shafts[s->train->meshes[one->mesh].driven_shaft].name;
        if (one->missing != NULL)
            ts_buffer_print(&s->chapter->cell, "Bevels to %s: %s is not known.", name,
                            one->missing);
        else if (!one->chosen)
            ts_buffer_print(&s->chapter->cell,
                            "Bevels to %s: the file tells no tolerance of their backlash, so the "
                            "step of their shims is the usual one.",
                            name);
        else
            continue;
        if (!s->chapter->cell.failed)
            ts_manuscript_box(manuscript, TS_BLOCK_PLAIN, s->chapter->cell.bytes);
        ts_buffer_clear(&s->chapter->cell);
    }
}

/* ---- cylindrical gears ----------------------------------------------------------------------- */

static void cylindrical(const sheet *s)
{
    static const ts_column columns[] = {{"mesh", false},
                                        {"a_w", true},
                                        {"its allowance", true},
                                        {"j_bn cold, as built", true},
                                        {"j_bn at any warmth", true},
                                        {"j_wt cold, on the dial", true}};
    const ts_motion       *motion    = s->chapter->answer->motion;
    ts_manuscript_heading(s->chapter->manuscript, 2, "Cylindrical meshes");
    table(s,
          "mm; no shims: backlash comes from the thickness of the teeth and the distance of the "
          "axes; j_bn: normal, j_wt: along the working pitch circles, least to greatest",
          "in; no shims: backlash comes from the thickness of the teeth and the distance of the "
          "axes; j_bn: normal, j_wt: along the working pitch circles, least to greatest",
          columns, COUNT(columns));
    for (uint32_t m = 0; m < s->train->mesh_count; m++) {
        const ts_mesh        *mesh = &s->train->meshes[m];
        const ts_mesh_motion *turn = &motion->meshes[m];
        if (mesh->kind != TS_MESH_CYLINDRICAL)
            continue;
        const ts_span *centre = &s->train->gears[mesh->driver].system->centre;
        pair_name(s, m);
        fine(s, turn->a_w);
        bounds(s, (double[]){centre->low, centre->high});
        bounds(s, &turn->backlash.j_bn[TS_BACKLASH_MIN]);
        bounds(s, &turn->backlash.j_bn[TS_BACKLASH_LOW]);
        bounds(s, &turn->backlash.j_wt[TS_BACKLASH_MIN]);
    }
}

/* ---- words ----------------------------------------------------------------------------------- */

static void how(const sheet *s)
{
    static const char *const says[] = {
        "Measure the casing from the crossing of the axes to the seat of each locating bearing, "
        "the "
        "bearing's width, and the gear from its seat to its crown; the shim is what is left to "
        "t_xo. Choose the nearest step.",
        "Hold one gear of the pair. Set a dial on a flank of the other, square to it at the outer "
        "end, and rock it: that is the normal backlash. Take it at four places a quarter turn "
        "apart; the least counts. Bevels: a thicker shim that moves a gear towards its mate takes "
        "what the table says a step, the other way it adds as much.",
        "Set both gears of a pair by their crowns first; correct backlash with the gear that "
        "changes it most a step, then look at the contact pattern: it must lie as it was checked.",
        "Cylindrical gears: dial on a flank at the working pitch circle, square to the radius; the "
        "reading is j_wt. What is told is at 20 degrees Celsius, drained, without load."};
    ts_manuscript_heading(s->chapter->manuscript, 2, "How to shim and to measure");
    for (size_t i = 0; i < COUNT(says); i++) {
        ts_buffer_print(&s->chapter->cell, "%zu", i + 1);
        if (!s->chapter->cell.failed)
            ts_manuscript_item(s->chapter->manuscript, TS_BLOCK_PLAIN, s->chapter->cell.bytes,
                               says[i]);
        ts_buffer_clear(&s->chapter->cell);
    }
}

static void assumed(const sheet *s)
{
    static const ts_column columns[] = {
        {"assumed here", false}, {"value", true}, {"source", false}};
    static const struct {
        const char *says;
        double      value;
    } rows[] = {
        {"seat in the casing from the crossing of the axes, either way", TS_SHIM_SEAT},
        {"width of a bearing about its middle, either way", TS_SHIM_BEARING},
        {"crown of the gear from its seat, either way", TS_SHIM_CROWN},
        {"thickness of the shim that is designed for", TS_SHIM_NOMINAL},
    };
    ts_manuscript_heading(s->chapter->manuscript, 2, "What shims are assumed from");
    table(s, "mm; the drive file does not tell these: put the drawing's in their place",
          "in; the drive file does not tell these: put the drawing's in their place", columns,
          COUNT(columns));
    for (size_t i = 0; i < COUNT(rows); i++) {
        ts_chapter_word(s->chapter, rows[i].says);
        fine(s, rows[i].value);
        ts_chapter_word(s->chapter, "common practice, no source");
    }
}

void ts_shim_sheet(ts_chapter *chapter, const ts_shim_plan *plan)
{
    const sheet s = {chapter, chapter->answer->train};

    ts_manuscript_heading(chapter->manuscript, 1, "Shims and backlash");
    bevels(&s, plan);
    cylindrical(&s);
    how(&s);
    assumed(&s);
}
