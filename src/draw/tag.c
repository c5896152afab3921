/* draw/tag.c: where does the mark of a finding stand? */
#include "draw/tag.h"

#include "draw/lettering.h"
#include "draw/sheet.h"
#include "draw/symbol.h"

#include <math.h>

ts_point ts_target_point(const ts_face *face, ts_target target)
{
    const ts_motion *motion = face->scene->motion;
    const ts_point   none   = {NAN, NAN};
    switch (target.kind) {
    case TS_TARGET_SPOOL:
        return face->engine;
    case TS_TARGET_TOWER: {
        const ts_shaft_motion *end = &motion->shafts[target.index];
        return end->placed ? ts_face_point(face, 0.45 * end->x, 0.45 * end->y) : none;
    }
    case TS_TARGET_SHAFT:
        return face->shafts[target.index].shown ? face->shafts[target.index].at : none;
    case TS_TARGET_PAD: {
        const ts_pad        *pad   = &face->scene->train->pads[target.index];
        const ts_face_shaft *shaft = &face->shafts[pad->shaft];
        const double         r     = shaft->r_body[pad->face];
        const double outward = atan2(shaft->at.y - face->engine.y, shaft->at.x - face->engine.x) +
                               (pad->face == TS_REAR ? 0.6 : -0.6);
        return !shaft->shown ? none : ts_polar(shaft->at, r > 0.0 ? r : shaft->r_number, outward);
    }
    case TS_TARGET_KEEP_OUT: {
        const ts_keep_out *one = &face->scene->drive->engine.keep_out[target.index];
        return ts_face_clock_point(face, one->clock.value, one->radius.value);
    }
    case TS_TARGET_NONE:
        break;
    }
    return none;
}

/* ---- one tag ----------------------------------------------------------------------------- */

/* More tags than this would hide the drive; the list says where the others stand. */
enum { MOST_ENTRIES = 3, MOST_TAGS = 40 };

typedef struct tag {
    ts_target target;
    size_t    findings[MOST_ENTRIES];
    size_t    count; /* all of them, also those that find no room in the tag */
} tag;

static size_t entries_of(const tag *one)
{
    return one->count < MOST_ENTRIES ? one->count : MOST_ENTRIES;
}

/* Room for the symbol and "#7", "#12", "#140". */
static double entry_width(size_t finding)
{
    return finding < 9 ? 35.0 : finding < 99 ? 42.0 : 49.0;
}

static double tag_width(const tag *one)
{
    double width = one->count > MOST_ENTRIES ? 26.0 : 2.0;
    for (size_t i = 0; i < entries_of(one); i++)
        width += entry_width(one->findings[i]);
    return width;
}

static void write_entry(ts_canvas *canvas, ts_point at, const char *text)
{
    const ts_lettering how = {.size = TS_LOOK_TYPE_PX_SMALL, .colour = TS_COLOUR_INK};
    ts_write(canvas, (ts_point){at.x, at.y + 0.5 * TS_LOOK_FIGURE_TAG_HEIGHT + 4.0}, text, &how);
}

static void fill_tag(const ts_face *face, const tag *one, ts_area area)
{
    ts_canvas   *canvas = &face->scene->canvas;
    const double inset  = 0.5 * (TS_LOOK_FIGURE_TAG_HEIGHT - TS_LOOK_FIGURE_MARK);
    double       x      = area.x;
    for (size_t i = 0; i < entries_of(one); i++) {
        const ts_finding *finding = &face->scene->subject->findings[one->findings[i]];
        ts_draw_symbol(canvas, ts_symbol_of(finding), (ts_point){x + inset, area.y + inset},
                       TS_LOOK_FIGURE_MARK);
        ts_buffer *line = ts_canvas_line(canvas);
        ts_buffer_print(line, "#%zu", one->findings[i] + 1);
        write_entry(canvas, (ts_point){x + 17.5, area.y}, line->bytes ? line->bytes : "");
        x += entry_width(one->findings[i]);
    }
    if (one->count > MOST_ENTRIES) {
        ts_buffer *line = ts_canvas_line(canvas);
        ts_buffer_print(line, "+%zu", one->count - MOST_ENTRIES);
        write_entry(canvas, (ts_point){x + 2.0, area.y}, line->bytes ? line->bytes : "");
    }
}

/* A leader ends at the edge of a number circle, never in it. */
static ts_point leader_end(const ts_face *face, const tag *one, ts_point at, ts_point towards)
{
    if (one->target.kind != TS_TARGET_SHAFT)
        return at;
    const double r = face->shafts[one->target.index].r_number + 1.0;
    return ts_polar(at, r, atan2(towards.y - at.y, towards.x - at.x));
}

static void draw_tag(const ts_face *face, const tag *one, ts_obstacles *obstacles)
{
    ts_canvas     *canvas = &face->scene->canvas;
    const ts_point at     = ts_target_point(face, one->target);
    if (isnan(at.x))
        return;
    const ts_point size = {tag_width(one), TS_LOOK_FIGURE_TAG_HEIGHT};
    const ts_area  area = ts_place_near(obstacles, at, size, (const double[]){30.0, 120.0}, NULL);
    const ts_point mid  = {area.x + 0.5 * area.w, area.y + 0.5 * area.h};
    const ts_point end  = leader_end(face, one, at, mid);
    ts_use_pen(canvas, TS_PEN_1, TS_COLOUR_INK);
    ts_draw_line(canvas, end, mid);
    ts_draw_dot(canvas, end, TS_LOOK_FIGURE_DOT, TS_COLOUR_INK);
    ts_path_area(canvas, area);
    ts_fill_and_stroke(canvas, TS_COLOUR_PAPER, TS_PEN_2, TS_COLOUR_INK);
    fill_tag(face, one, area);
    ts_note_area(&canvas->places, TS_PLACE_TAG, (uint32_t)one->findings[0], area);
    ts_avoid_area(obstacles, ts_area_inset(area, -3.0), 1000.0);
    ts_avoid_line(obstacles, end, mid, 30.0);
}

void ts_face_draw_tags(const ts_face *face, ts_obstacles *obstacles)
{
    const ts_scene *scene = face->scene;
    const size_t    count = scene->subject->findings ? scene->subject->finding_count : 0;
    tag            *tags  = TS_TAKE(scene->arena, tag, count);
    size_t          used  = 0;
    for (size_t i = 0; tags && i < count; i++) {
        const ts_target target = ts_finding_target(scene, &scene->subject->findings[i]);
        size_t          t      = 0;
        if (target.kind == TS_TARGET_NONE)
            continue;
        while (t < used && !ts_target_same(tags[t].target, target))
            t++;
        if (t == used)
            tags[used++].target = target;
        if (tags[t].count < MOST_ENTRIES)
            tags[t].findings[tags[t].count] = i;
        tags[t].count++;
    }
    for (size_t t = 0; t < used && t < MOST_TAGS; t++)
        draw_tag(face, &tags[t], obstacles);
}

/* ---- the list beside the picture --------------------------------------------------------- */

static void write_head(const ts_face *face, size_t index, double y)
{
    ts_scene          *scene   = face->scene;
    const ts_finding  *finding = &scene->subject->findings[index];
    const ts_symbol    symbol  = ts_symbol_of(finding);
    const ts_lettering how     = {
            .bold = true, .colour = TS_COLOUR_INK, .width = face->column.w - 70.0};
    const ts_point at = ts_target_point(face, ts_finding_target(scene, finding));
    ts_draw_symbol(&scene->canvas, symbol, (ts_point){face->column.x + 10.0, y - 11.0},
                   TS_LOOK_FIGURE_MARK);
    ts_buffer *line = ts_canvas_line(&scene->canvas);
    ts_buffer_print(line, "#%zu  %s  %s", index + 1, ts_symbol_word(symbol), finding->rule);
    ts_write(&scene->canvas, (ts_point){face->column.x + 30.0, y}, line->bytes ? line->bytes : "",
             &how);
    if (isnan(at.x))
        return;
    const ts_lettering zone = {
        .size = TS_LOOK_TYPE_PX_SMALL, .anchor = TS_ANCHOR_RIGHT, .colour = TS_COLOUR_INK2};
    ts_write(&scene->canvas, (ts_point){face->column.x + face->column.w - 10.0, y},
             ts_sheet_zone(scene, at).name, &zone);
}

/* Returns where the next entry begins. */
static double write_finding(const ts_face *face, size_t index, double y)
{
    ts_scene          *scene   = face->scene;
    const ts_finding  *finding = &scene->subject->findings[index];
    const ts_lettering how     = {.size   = TS_LOOK_TYPE_PX_SMALL,
                                  .colour = TS_COLOUR_INK2,
                                  .width  = face->column.w - 40.0,
                                  .lines  = 4};
    write_head(face, index, y);
    const ts_area says = ts_write(&scene->canvas, (ts_point){face->column.x + 30.0, y + 15.0},
                                  finding->says ? finding->says : "", &how);
    return says.y + says.h + 20.0;
}

static void write_rest(const ts_face *face, size_t rest, double y)
{
    const ts_lettering how  = {.size = TS_LOOK_TYPE_PX_SMALL, .colour = TS_COLOUR_INK2};
    ts_buffer         *line = ts_canvas_line(&face->scene->canvas);
    ts_buffer_print(line, "and %zu more: see `towershaft check`", rest);
    ts_write(&face->scene->canvas, (ts_point){face->column.x + 30.0, y},
             line->bytes ? line->bytes : "", &how);
}

void ts_face_draw_findings(const ts_face *face)
{
    ts_canvas         *canvas = &face->scene->canvas;
    const size_t       count  = face->scene->subject->finding_count;
    const double       bottom = face->column.y + face->column.h;
    const ts_lettering how = {.size = TS_LOOK_TYPE_PX_LEAD, .bold = true, .colour = TS_COLOUR_INK};
    ts_write(canvas, (ts_point){face->column.x + 10.0, face->column.y + 22.0}, "Findings", &how);
    double y = face->column.y + 46.0;
    for (size_t i = 0; i < count; i++) {
        if (y > bottom - 74.0 && i + 1 < count) {
            write_rest(face, count - i, y);
            break;
        }
        y = write_finding(face, i, y);
    }
    ts_use_pen(canvas, TS_PEN_1, TS_COLOUR_RULE);
    ts_draw_line(canvas, (ts_point){face->column.x, face->column.y},
                 (ts_point){face->column.x, bottom});
    ts_draw_line(canvas, (ts_point){face->column.x, bottom},
                 (ts_point){face->column.x + face->column.w, bottom});
}
