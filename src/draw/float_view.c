/* draw/float_view.c: how do the sections, the ruler and the numbers of a take-off share the sheet?
 */
#include "draw/float_view.h"

#include "draw/lettering.h"
#include "draw/sheet.h"
#include "draw/value_table.h"

#include <math.h>

enum { ROWS = 16 };

/* px */
static const double head = 46.0, foot = 34.0, sections = 372.0, table_wide = 486.0, gap = 12.0,
                    chosen_wide = 1.25, below = 284.0;

static const char *numbered(ts_scene *scene, double si, ts_kind kind)
{
    if (isnan(si))
        return "\xC2\xB7";
    if (kind == TS_KIND_LENGTH)
        return ts_value_length(scene, si);
    ts_add_value(ts_canvas_line(&scene->canvas), scene, si, kind);
    return ts_scene_kept(scene);
}

/* ---- numbers --------------------------------------------------------------------------------- */

typedef struct quantity_row {
    const char *words, *symbol, *subscript;
    ts_kind     kind;
} quantity_row;

static const quantity_row kinds[ROWS] = {
    {"least backlash", "j", "bn", TS_KIND_LENGTH},
    {"greatest backlash", "j", "bn", TS_KIND_LENGTH},
    {"... taken by the axial travel", NULL, NULL, TS_KIND_LENGTH},
    {"... added by it", NULL, NULL, TS_KIND_LENGTH},
    {"contact moves in along the face", NULL, NULL, TS_KIND_LENGTH},
    {"... and out", NULL, NULL, TS_KIND_LENGTH},
    {"least common face", "b", NULL, TS_KIND_LENGTH},
    {"least contact ratio", "\xCE\xB5", "v\xCE\xB1", TS_KIND_NUMBER},
    {"slide left at the worse end", NULL, NULL, TS_KIND_LENGTH},
    {"least engaged length", NULL, NULL, TS_KIND_LENGTH},
    {"radial travel borne", NULL, NULL, TS_KIND_LENGTH},
    {"push on the bearing", "F", "a", TS_KIND_FORCE},
    {"across, on its bearings", "F", "r", TS_KIND_FORCE},
    {"more mass", "m", NULL, TS_KIND_MASS},
    {"more parts", NULL, NULL, TS_KIND_NUMBER},
    {"more meshes of the start", NULL, NULL, TS_KIND_NUMBER},
};

static void values_of(const ts_float_option *o, double out[ROWS])
{
    const double all[ROWS] = {o->j[0],      o->j[1],     fabs(o->dj[0]),   o->dj[1],
                              -o->shift[0], o->shift[1], o->b_left,        o->eps,
                              o->left,      o->engaged,  o->r_stop,        o->F_a,
                              o->F_r,       o->m,        (double)o->parts, (double)o->meshes};

    for (int i = 0; i < ROWS; i++)
        out[i] = all[i];
}

static void draw_numbers(ts_scene *scene, const ts_drive_float *item, ts_area area)
{
    double       value[TS_FLOAT_SCHEMES][ROWS];
    ts_value_row rows[ROWS];

    for (int i = 0; i < TS_FLOAT_SCHEMES; i++)
        values_of(&item->options[i], value[i]);
    for (int r = 0; r < ROWS; r++) {
        const bool count = r >= ROWS - 2;

        rows[r] = (ts_value_row){
            .words = kinds[r].words, .symbol = kinds[r].symbol, .subscript = kinds[r].subscript};
        if (kinds[r].kind != TS_KIND_NUMBER)
            rows[r].unit = ts_scene_unit(scene, kinds[r].kind);
        for (int i = 0; i < TS_FLOAT_SCHEMES; i++)
            rows[r].value[i] = count ? ts_value_count(scene, (int64_t)value[i][r])
                                     : numbered(scene, value[i][r], kinds[r].kind);
    }
    const ts_value_table table = {.title   = "Bounds over all travel",
                                  .heads   = {ts_float_scheme_name(TS_FLOAT_FIXED_BEVEL),
                                              ts_float_scheme_name(TS_FLOAT_SPLINED_STUB),
                                              ts_float_scheme_name(TS_FLOAT_WIDE_SPUR)},
                                  .columns = TS_FLOAT_SCHEMES,
                                  .column  = 88.0,
                                  .rows    = rows,
                                  .count   = ROWS};
    ts_value_table_draw(scene, &table, area);
}

/* ---- one take-off ---------------------------------------------------------------------------- */

static const char *title_words(ts_scene *scene, const ts_drive_float *item)
{
    const ts_spool *spool = &scene->drive->spools[scene->drive->drive[item->drive].spool];
    const char     *s     = ts_float_span_words(scene, item->s[0], item->s[1]);
    const char     *r     = ts_value_length(scene, item->r);

    ts_buffer_print(ts_canvas_line(&scene->canvas),
                    "Take-off of the %s spool: axial travel %s from the cold build, + rearward; "
                    "radial \xC2\xB1%s %s",
                    spool->name, s, r, ts_scene_unit(scene, TS_KIND_LENGTH));
    return ts_scene_kept(scene);
}

/* The chosen one large; the first where none is. */
static int first_scheme(const ts_drive_float *item)
{
    const ts_float_option *chosen = ts_float_chosen(item);

    return chosen != NULL ? (int)(chosen - item->options) : 0;
}

static void draw_sections(ts_scene *scene, const ts_drive_float *item, ts_area area)
{
    const int        first = first_scheme(item);
    ts_float_section one   = {.scene  = scene,
                              .floats = scene->subject->floats,
                              .item   = item,
                              .scheme = (ts_float_scheme)first,
                              .area   = area,
                              .large  = true};
    const double     each  = (area.w - 2.0 * gap) / (2.0 + chosen_wide);

    /* In the order of the rulers and of the table below. */
    double x = area.x;
    for (int i = 0; i < TS_FLOAT_SCHEMES; i++) {
        const double wide = i == first ? chosen_wide * each : each;

        one.scheme = (ts_float_scheme)i;
        one.large  = i == first;
        one.area   = (ts_area){x, area.y, wide, area.h};
        ts_float_draw_section(&one);
        x += wide + gap;
    }
}

static double height_of_one(void)
{
    return head + sections + gap + below + gap;
}

static void draw_one(ts_scene *scene, const ts_drive_float *item, double y)
{
    const ts_area      field = scene->field;
    const ts_lettering lead  = {.size   = TS_LOOK_TYPE_PX_LEAD,
                                .bold   = true,
                                .colour = TS_COLOUR_INK,
                                .width  = field.w - 24.0};

    if (item->missing != NULL) {
        ts_buffer_print(ts_canvas_line(&scene->canvas), "Take-off of the %s spool: %s is not known",
                        scene->drive->spools[scene->drive->drive[item->drive].spool].name,
                        item->missing);
        ts_write(&scene->canvas, (ts_point){field.x + 12.0, y + 26.0}, ts_scene_kept(scene), &lead);
        return;
    }
    ts_write(&scene->canvas, (ts_point){field.x + 12.0, y + 26.0}, title_words(scene, item), &lead);
    const double  second  = y + head + sections + gap;
    const ts_area numbers = {field.x + field.w - table_wide - 12.0, second, table_wide, below};

    draw_sections(scene, item, (ts_area){field.x + 12.0, y + head, field.w - 24.0, sections});
    draw_numbers(scene, item, numbers);
    ts_float_draw_ruler(
        scene, item,
        (ts_area){field.x + 12.0, second, field.w - table_wide - 48.0, ts_float_ruler_height()});
    ts_note_area(&scene->canvas.places, TS_PLACE_ROW, item->drive,
                 (ts_area){field.x, y, field.w, height_of_one()});
}

static void write_foot(ts_scene *scene)
{
    const ts_lettering how = {.size   = TS_LOOK_TYPE_PX_SMALL,
                              .colour = TS_COLOUR_INK2,
                              .width  = scene->field.w - 24.0,
                              .lines  = 2};

    ts_write(
        &scene->canvas,
        (ts_point){scene->field.x + 12.0, scene->field.y + scene->field.h - foot + 14.0},
        "Sections to scale, front at the left. Green: what the spool moves, with its outline at "
        "both ends of the travel. Teeth, shafts and bearings as they are rated; what the file "
        "does not say of a scheme, the rotor and the casing are made up. Hatched: it no longer "
        "works there, all else at its worst.",
        &how);
}

ts_status ts_draw_float(ts_scene *scene)
{
    const ts_floats *floats = scene->subject->floats;
    const uint32_t   count  = floats != NULL ? floats->count : 0;
    const char  *title = scene->subject->title ? scene->subject->title : scene->drive->title.text;
    const double height =
        ts_sheet_height(scene, height_of_one() * (double)(count > 0 ? count : 1) + foot);
    ts_status status = TS_OK;

    ts_sheet_divide(scene, height);
    status = ts_canvas_sheet(&scene->canvas, height, title);
    if (status != TS_OK)
        return status;
    const double each = count > 0 ? (scene->field.h - foot) / (double)count : 0.0;
    for (uint32_t d = 0; d < count; d++)
        draw_one(scene, &floats->items[d], scene->field.y + each * (double)d);
    write_foot(scene);
    ts_sheet_draw(scene, "Float of the take-offs", "sections along the spool");
    return TS_OK;
}
