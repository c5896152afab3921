/* draw/root_view.c: how do the roots of a mesh share the sheet? */
#include "draw/root_view.h"

#include "draw/face.h"
#include "draw/lettering.h"
#include "draw/mesh_choice.h"
#include "draw/sheet.h"
#include "draw/value_table.h"
#include "rating/iso6336/root_thinning.h"

#include <math.h>

enum { SECTION_ROWS = 7, FACTOR_ROWS = 8 };

/* px: words over the drawings, and under the tables. */
static const double head = 62.0, foot = 42.0, gap = 12.0;
/* In modules: above the tip and below the root circle. */
static const double above = 0.35, below = 0.85;
/* px beside the chord. */
static const double beside = 158.0;

typedef struct view {
    ts_scene             *scene;
    uint32_t              mesh;
    const ts_mesh_motion *motion;
    ts_root_panel         panel[2];
} view;

/* ---- tables ------------------------------------------------------------------------------ */

static double section_value(const view *it, int gear, double value)
{
    return it->panel[gear].found ? value : (double)NAN;
}

#define OF(member)                                                                                 \
    section_value(it, 0, it->panel[0].section.member),                                             \
        section_value(it, 1, it->panel[1].section.member)

typedef const char *(*number_words)(ts_scene *scene, double value);

static ts_value_row row_of(const view *it, ts_value_row names, number_words words, double first,
                           double second)
{
    names.value[0] = words(it->scene, first);
    names.value[1] = words(it->scene, second);
    return names;
}

static const char *factor_words(ts_scene *scene, double value)
{
    return ts_value_ratio(scene, value, 4);
}

static const char *tooth_words(ts_scene *scene, double value)
{
    return ts_value_ratio(scene, value, 2);
}

static ts_value_table section_table(const view *it, ts_value_row *rows)
{
    const char *unit = ts_scene_unit(it->scene, TS_KIND_LENGTH);
    rows[0] = row_of(it, (ts_value_row){"teeth of the virtual spur gear", "z", "n", NULL, {NULL}},
                     tooth_words, OF(form.z_n));
    rows[1] = row_of(it, (ts_value_row){"its tip circle", "d", "an", unit, {NULL}}, ts_value_length,
                     OF(form.d_an));
    rows[2] = row_of(
        it, (ts_value_row){"circle of the load, outer single contact", "d", "en", unit, {NULL}},
        ts_value_length, OF(form.d_en));
    rows[3] = row_of(it, (ts_value_row){"angle of the load", "\xCE\xB1", "Fen", "\xC2\xB0", {NULL}},
                     ts_value_angle, OF(form.alpha_Fen));
    rows[4] =
        row_of(it, (ts_value_row){"root chord at the 30\xC2\xB0 tangents", "s", "Fn", unit, {NULL}},
               ts_value_length, OF(form.s_Fn));
    rows[5] = row_of(it, (ts_value_row){"bending arm", "h", "Fe", unit, {NULL}}, ts_value_length,
                     OF(form.h_Fe));
    rows[6] = row_of(it, (ts_value_row){"fillet radius there", "\xCF\x81", "F", unit, {NULL}},
                     ts_value_length, OF(form.rho_F));
    return (ts_value_table){.title   = "Critical section",
                            .heads   = {"left, 1", "right, 2"},
                            .columns = 2,
                            .column  = 96.0,
                            .rows    = rows,
                            .count   = SECTION_ROWS};
}

static double product(const view *it, int gear)
{
    const ts_root_section *one = &it->panel[gear].section;
    return section_value(it, gear, one->form.Y_F * one->f_eps * one->notch.Y_S);
}

static double form_factor(const view *it, int gear)
{
    const ts_root_section *one = &it->panel[gear].section;
    return section_value(it, gear, one->form.Y_F * one->f_eps);
}

static ts_value_table factor_table(const view *it, ts_value_row *rows)
{
    const double m_n = it->motion->pair.in.m_n;
    rows[0]          = row_of(it, (ts_value_row){"root chord in modules", NULL, NULL, NULL, {NULL}},
                              factor_words, section_value(it, 0, it->panel[0].section.form.s_Fn / m_n),
                              section_value(it, 1, it->panel[1].section.form.s_Fn / m_n));
    rows[1] = row_of(it, (ts_value_row){"shape of the section alone", "Y", "F0", NULL, {NULL}},
                     factor_words, OF(form.Y_F));
    rows[2] =
        row_of(it, (ts_value_row){"share of the load of one pair", "f", "\xCE\xB5", NULL, {NULL}},
               factor_words, OF(f_eps));
    rows[3] = row_of(it, (ts_value_row){"form factor", "Y", "F", NULL, {NULL}}, factor_words,
                     form_factor(it, 0), form_factor(it, 1));
    rows[4] = row_of(it, (ts_value_row){"notch parameter", "q", "s", NULL, {NULL}}, factor_words,
                     OF(notch.q_s));
    rows[5] = row_of(it, (ts_value_row){"stress correction factor", "Y", "S", NULL, {NULL}},
                     factor_words, OF(notch.Y_S));
    rows[6] = row_of(it, (ts_value_row){"product of both factors", NULL, NULL, NULL, {NULL}},
                     factor_words, product(it, 0), product(it, 1));
    rows[7] =
        row_of(it, (ts_value_row){"profile shift that shapes the root", "x", "E", NULL, {NULL}},
               factor_words, OF(x_E));
    return (ts_value_table){.title   = "Factors",
                            .heads   = {"left, 1", "right, 2"},
                            .columns = 2,
                            .column  = 96.0,
                            .rows    = rows,
                            .count   = FACTOR_ROWS};
}

static double tables_height(void)
{
    const ts_value_table table = {.count = FACTOR_ROWS}; /* the longer one */
    return ts_value_table_height(&table);
}

static void draw_tables(const view *it, ts_area area)
{
    ts_value_row         rows[2][FACTOR_ROWS];
    const double         wide   = 0.5 * (area.w - 24.0);
    const ts_value_table all[2] = {section_table(it, rows[0]), factor_table(it, rows[1])};
    for (int i = 0; i < 2; i++)
        ts_value_table_draw(it->scene, &all[i],
                            (ts_area){area.x + i * (wide + 24.0), area.y, wide, area.h});
}

/* ---- words ------------------------------------------------------------------------------- */

static void write_title(const ts_root_panel *panel)
{
    ts_scene          *scene  = panel->scene;
    ts_canvas         *canvas = &scene->canvas;
    const ts_gear     *gear   = &scene->train->gears[panel->gear];
    const double       r      = TS_LOOK_FIGURE_NUMBER_RADIUS;
    const ts_point     at     = {panel->area.x + r + 2.0, panel->area.y - 18.0};
    const ts_lettering bold   = {
          .bold = true, .colour = TS_COLOUR_INK, .width = panel->area.w - 3.0 * r - 8.0};
    ts_draw_number_circle(canvas, at, r, scene->train->shafts[gear->shaft].number);
    ts_note_area(&canvas->places, TS_PLACE_NUMBER, gear->shaft,
                 (ts_area){at.x - r, at.y - r, 2.0 * r, 2.0 * r});
    ts_buffer *line = ts_canvas_line(canvas);
    ts_add_gear_name(line, scene, panel->gear);
    ts_buffer_add(line, ", ");
    ts_buffer_integer(line, gear->teeth.value);
    ts_buffer_add(line, " teeth");
    ts_write(canvas, (ts_point){at.x + r + 8.0, at.y + 5.0}, ts_scene_kept(scene), &bold);
    if (panel->found)
        return;
    const ts_lettering plain = {.size   = TS_LOOK_TYPE_PX_SMALL,
                                .colour = TS_COLOUR_INK2,
                                .width  = panel->area.w - 24.0,
                                .lines  = 2};
    ts_write(canvas, (ts_point){panel->area.x + 12.0, panel->area.y + 20.0},
             "There is no picture: no critical section of this root is found.", &plain);
}

static void write_head(const view *it)
{
    ts_scene          *scene = it->scene;
    const ts_lettering lead  = {.size   = TS_LOOK_TYPE_PX_LEAD,
                                .bold   = true,
                                .colour = TS_COLOUR_INK,
                                .width  = scene->field.w - 24.0};
    ts_buffer         *line  = ts_canvas_line(&scene->canvas);
    ts_buffer_add(line, "Roots of mesh ");
    ts_add_mesh_name(line, scene, it->mesh);
    if (scene->options->mesh == 0)
        ts_buffer_print(line, ", the cylindrical mesh %s", ts_choice_says(scene));
    ts_write(&scene->canvas, (ts_point){scene->field.x + 12.0, scene->field.y + 22.0},
             ts_scene_kept(scene), &lead);
}

static void write_foot(const view *it)
{
    ts_scene          *scene = it->scene;
    const ts_lettering how   = {.size   = TS_LOOK_TYPE_PX_TICK,
                                .colour = TS_COLOUR_INK2,
                                .width  = scene->field.w - 24.0,
                                .lines  = 4};
    ts_buffer         *line  = ts_canvas_line(&scene->canvas);
    ts_buffer_add(line,
                  "Normal section of the virtual spur gear, ISO 6336-3:2019, clause 6 and 7, "
                  "method B (recalled, not compared with the printed standard). Both roots to one "
                  "scale, as the rack generates them. The load acts at the outer point of single "
                  "contact, dashed circle; pitch circle chain line.");
    for (int i = 0; i < 2; i++)
        if (it->panel[i].found && !it->panel[i].section.form.on_fillet)
            ts_buffer_print(line, " The tangent of gear %d touches beyond what the tip round cuts.",
                            i + 1);
    if (it->motion->fault)
        ts_buffer_print(line, " Of the mesh: %s.", it->motion->fault);
    ts_write(&scene->canvas,
             (ts_point){scene->field.x + 12.0, scene->field.y + scene->field.h - foot + 16.0},
             ts_scene_kept(scene), &how);
}

/* ---- the sheet --------------------------------------------------------------------------- */

/* As the rating sees it: a root that is cut deeper for backlash by more than a little. */
static double shift_of(const view *it, int i, uint32_t gear)
{
    const ts_cylindrical_pair *pair = &it->motion->pair;
    const ts_tooth_system     *own  = it->scene->train->gears[gear].system;
    const ts_span             *thin = own != NULL ? &own->thickness : NULL;
    const bool known = thin != NULL && (thin->standing == TS_GIVEN || thin->standing == TS_ASSUMED);

    return ts_root_shift(i == 0 ? pair->x_1 : pair->x_2, known ? thin->low : 0.0, pair->in.m_n,
                         pair->in.alpha_n, i, NULL);
}

static void find_sections(view *it)
{
    const ts_mesh *mesh = &it->scene->train->meshes[it->mesh];
    it->motion          = &it->scene->motion->meshes[it->mesh];
    for (int i = 0; i < 2; i++) {
        ts_root_panel *panel = &it->panel[i];
        panel->scene         = it->scene;
        panel->index         = i;
        panel->gear          = i == 0 ? mesh->driver : mesh->driven;
        panel->found =
            it->motion->solved &&
            ts_root_section_of(&it->motion->pair, i, shift_of(it, i, panel->gear), &panel->section);
    }
}

/* px a metre at which both teeth fit, and beside them the names of arm and fillet radius. */
static double scale_of(const view *it, ts_area area)
{
    double tall = 0.0, broad = 0.0; /* m */
    for (int i = 0; i < 2; i++) {
        const ts_root_section *one = &it->panel[i].section;
        if (!it->panel[i].found)
            continue;
        tall  = fmax(tall, one->r_tip - one->r_root);
        broad = fmax(broad, one->form.s_Fn);
    }
    const double m_n = it->motion->pair.in.m_n;
    return fmin(area.h / (tall + (above + below) * m_n), (area.w - 2.0 * beside) / broad);
}

/* Side by side, at one scale, with the same room over the tips as under the roots. */
static void divide(view *it)
{
    const ts_area field = it->scene->field;
    const double  wide  = 0.5 * (field.w - 24.0 - 24.0);
    const double  high  = field.h - head - foot - tables_height() - 2.0 * gap;
    const double  m_n   = it->motion->pair.in.m_n;
    for (int i = 0; i < 2; i++)
        it->panel[i].area =
            (ts_area){field.x + 12.0 + i * (wide + 24.0), field.y + head, wide, high};
    const double px = scale_of(it, it->panel[0].area);
    for (int i = 0; i < 2; i++) {
        const ts_root_section *one = &it->panel[i].section;
        it->panel[i].px            = px;
        it->panel[i].base =
            0.5 * (one->r_root - below * m_n + one->r_tip + above * m_n) - 0.5 * high / px;
    }
}

static void say_scale(view *it)
{
    ts_buffer *line = ts_canvas_line(&it->scene->canvas);
    if (!it->panel[0].found && !it->panel[1].found)
        return;
    ts_buffer_fixed(line, it->panel[0].px / (1e3 * it->scene->canvas.mm), 2);
    ts_buffer_add(line, " : 1 on A3");
    it->scene->scale = ts_scene_kept(it->scene);
}

static void draw_all(const view *it)
{
    const ts_area field = it->scene->field;
    write_head(it);
    for (int i = 0; i < 2; i++) {
        write_title(&it->panel[i]);
        if (it->panel[i].found)
            ts_root_draw_section(&it->panel[i]);
    }
    draw_tables(it, (ts_area){field.x + 12.0, it->panel[0].area.y + it->panel[0].area.h + gap,
                              field.w - 24.0, tables_height()});
    write_foot(it);
}

ts_status ts_draw_root(ts_scene *scene)
{
    view         it     = {.scene = scene, .mesh = ts_choose_mesh(scene)};
    const double height = ts_sheet_height(scene, head + foot + tables_height() + 2.0 * gap + 420.0);
    ts_sheet_divide(scene, height);
    if (it.mesh != TS_NOWHERE) {
        find_sections(&it);
        divide(&it);
        say_scale(&it);
    }
    const ts_status status =
        ts_canvas_sheet(&scene->canvas, height,
                        scene->subject->title ? scene->subject->title : scene->drive->title.text);
    if (status != TS_OK)
        return status;
    if (it.mesh != TS_NOWHERE)
        draw_all(&it);
    else
        ts_write_no_mesh(scene);
    ts_sheet_draw(scene, "Roots of the teeth", "normal section of the virtual gear");
    return TS_OK;
}
