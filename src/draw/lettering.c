/* draw/lettering.c: how is a text made to fit, and where does it stand? */
#include "draw/lettering.h"

#include <math.h>
#include <pango/pangocairo.h>
#include <string.h>

static const char families[] = TS_LOOK_TYPE_FAMILY_TEXT ", " TS_LOOK_TYPE_FAMILY_FALLBACK_TEXT;

static double px_of(int pango_units)
{
    return (double)pango_units / PANGO_SCALE;
}

static void set_size(PangoLayout *layout, const ts_lettering *how, double size)
{
    PangoFontDescription *font = pango_font_description_new();
    pango_font_description_set_family_static(font, families);
    pango_font_description_set_weight(font, how->bold ? PANGO_WEIGHT_BOLD : PANGO_WEIGHT_NORMAL);
    pango_font_description_set_style(font, how->italic ? PANGO_STYLE_ITALIC : PANGO_STYLE_NORMAL);
    pango_font_description_set_absolute_size(font, size * PANGO_SCALE);
    pango_layout_set_font_description(layout, font);
    pango_font_description_free(font);
}

static bool fits(PangoLayout *layout, const ts_lettering *how, int lines)
{
    PangoRectangle box;
    pango_layout_get_extents(layout, NULL, &box);
    return px_of(box.width) <= how->width + 0.01 && pango_layout_get_line_count(layout) <= lines;
}

/* First smaller, then on more lines at the wanted size and smaller, at last cut. */
static void make_it_fit(PangoLayout *layout, const ts_lettering *how, double size)
{
    const double least = fmin(size, TS_LOOK_TYPE_LEAST_PX);
    const int    lines = how->lines > 1 ? how->lines : 1;
    if (lines > 1) {
        pango_layout_set_width(layout, (int)(how->width * PANGO_SCALE));
        pango_layout_set_wrap(layout, PANGO_WRAP_WORD);
    }
    for (int smaller = 0;; smaller++) {
        const double s = size - 0.5 * smaller;
        set_size(layout, how, fmax(s, least));
        if (fits(layout, how, lines))
            return;
        if (s <= least)
            break;
    }
    pango_layout_set_wrap(layout, PANGO_WRAP_WORD_CHAR);
    pango_layout_set_width(layout, (int)(how->width * PANGO_SCALE));
    pango_layout_set_height(layout, -lines);
    pango_layout_set_ellipsize(layout, PANGO_ELLIPSIZE_END);
}

/* "m/s" and "drive/hp/box" stay in one piece. */
static void keep_slashes(PangoLayout *layout, const char *text, size_t length)
{
    PangoAttrList *list = pango_attr_list_new();
    for (size_t i = 1; i + 1 < length; i++) {
        if (text[i] != '/')
            continue;
        PangoAttribute *whole = pango_attr_allow_breaks_new(FALSE);
        whole->start_index    = (guint)(i - 1);
        whole->end_index      = (guint)(i + 2);
        pango_attr_list_insert(list, whole);
    }
    pango_layout_set_attributes(layout, list);
    pango_attr_list_unref(list);
}

/* A layout of the cleaned text; NULL without memory.  `clean` keeps the text. */
static PangoLayout *layout_of(ts_canvas *canvas, const char *text, const ts_lettering *how)
{
    ts_buffer clean;
    ts_buffer_open(&clean, canvas->line.allocator);
    ts_add_clean(&clean, text);
    if (clean.failed) {
        canvas->line.failed = true;
        ts_buffer_close(&clean);
        return NULL;
    }
    const double size   = how->size > 0.0 ? how->size : TS_LOOK_TYPE_PX_BODY;
    PangoLayout *layout = pango_layout_new(canvas->letters);
    pango_layout_set_auto_dir(layout, FALSE);
    pango_layout_set_single_paragraph_mode(layout, TRUE);
    pango_layout_set_text(layout, clean.bytes ? clean.bytes : "", (int)clean.length);
    if (clean.bytes != NULL && strchr(clean.bytes, '/'))
        keep_slashes(layout, clean.bytes, clean.length);
    ts_buffer_close(&clean);
    set_size(layout, how, size);
    if (how->anchor == TS_ANCHOR_MIDDLE)
        pango_layout_set_alignment(layout, PANGO_ALIGN_CENTER);
    if (how->anchor == TS_ANCHOR_RIGHT)
        pango_layout_set_alignment(layout, PANGO_ALIGN_RIGHT);
    if (how->width > 0.0)
        make_it_fit(layout, how, size);
    return layout;
}

/* The logical box relative to the layout's corner (aligned texts are set off by their width). */
static ts_area box_of(PangoLayout *layout)
{
    PangoRectangle box;
    pango_layout_get_extents(layout, NULL, &box);
    return (ts_area){px_of(box.x), px_of(box.y), px_of(box.width), px_of(box.height)};
}

/* Where the layout's corner goes so that the anchor and the first baseline come to stand at 0. */
static ts_point corner_of(PangoLayout *layout, ts_area box, ts_anchor anchor)
{
    const double share = anchor == TS_ANCHOR_LEFT ? 0.0 : anchor == TS_ANCHOR_MIDDLE ? 0.5 : 1.0;
    return (ts_point){-box.x - share * box.w, -px_of(pango_layout_get_baseline(layout))};
}

static ts_area area_at(ts_point at, ts_point corner, ts_area box, bool upright)
{
    const double x = corner.x + box.x, y = corner.y + box.y;
    if (upright)
        return (ts_area){at.x + y, at.y - x - box.w, box.h, box.w};
    return (ts_area){at.x + x, at.y + y, box.w, box.h};
}

ts_area ts_text_area(ts_canvas *canvas, ts_point at, const char *text, const ts_lettering *how)
{
    PangoLayout *layout = layout_of(canvas, text, how);
    if (!layout)
        return (ts_area){at.x, at.y, 0.0, 0.0};
    const ts_area box  = box_of(layout);
    const ts_area area = area_at(at, corner_of(layout, box, how->anchor), box, how->upright);
    g_object_unref(layout);
    return area;
}

static void show(ts_canvas *canvas, PangoLayout *layout, ts_point corner, const ts_lettering *how)
{
    if (how->halo) {
        PangoRectangle ink;
        pango_layout_get_extents(layout, &ink, NULL);
        const ts_area area = {corner.x + px_of(ink.x), corner.y + px_of(ink.y), px_of(ink.width),
                              px_of(ink.height)};
        ts_path_area(canvas, ts_area_inset(area, -0.5 * TS_LOOK_FIGURE_HALO));
        ts_fill(canvas, TS_COLOUR_PAPER);
    }
    ts_use_colour(canvas, how->colour, 1.0);
    cairo_move_to(canvas->cr, corner.x, corner.y);
    pango_cairo_show_layout(canvas->cr, layout);
    cairo_new_path(canvas->cr);
}

ts_area ts_write(ts_canvas *canvas, ts_point at, const char *text, const ts_lettering *how)
{
    PangoLayout *layout = layout_of(canvas, text, how);
    if (!layout)
        return (ts_area){at.x, at.y, 0.0, 0.0};
    const ts_area  box    = box_of(layout);
    const ts_point corner = corner_of(layout, box, how->anchor);
    const ts_area  area   = area_at(at, corner, box, how->upright);
    cairo_save(canvas->cr);
    cairo_translate(canvas->cr, at.x, at.y);
    if (how->upright)
        cairo_rotate(canvas->cr, -0.5 * M_PI);
    show(canvas, layout, corner, how);
    cairo_restore(canvas->cr);
    const ts_place place = {.kind = TS_PLACE_TEXT,
                            .area = area,
                            .cut  = pango_layout_is_ellipsized(layout),
                            .text = ts_arena_copy(canvas->places.arena, text, strlen(text))};
    g_object_unref(layout);
    if (area.w > 0.0)
        ts_note_place(&canvas->places, &place);
    return area;
}

double ts_write_symbol(ts_canvas *canvas, ts_point at, const char *symbol, const char *subscript,
                       ts_colour colour)
{
    const double       size  = TS_LOOK_TYPE_PX_SMALL;
    const ts_lettering slant = {.size = size, .italic = true, .colour = colour};
    const ts_lettering small = {.size = 0.75 * size, .colour = colour};
    const ts_area      one   = ts_write(canvas, at, symbol, &slant);
    const double       right = one.x + one.w;
    if (!subscript)
        return right;
    const ts_area two =
        ts_write(canvas, (ts_point){right + 0.5, at.y + 0.25 * size}, subscript, &small);
    return two.x + two.w;
}

const char *ts_letters_family(ts_canvas *canvas)
{
    const ts_lettering    how    = {.size = TS_LOOK_TYPE_PX_BODY};
    PangoFontDescription *wanted = pango_font_description_new();
    pango_font_description_set_family_static(wanted, families);
    pango_font_description_set_absolute_size(wanted, how.size * PANGO_SCALE);
    PangoFont  *font  = pango_context_load_font(canvas->letters, wanted);
    const char *found = "";
    if (font) {
        PangoFontDescription *real = pango_font_describe(font);
        ts_buffer            *line = ts_canvas_line(canvas);
        ts_add_clean(line, pango_font_description_get_family(real));
        found = line->bytes ? line->bytes : "";
        pango_font_description_free(real);
        g_object_unref(font);
    }
    pango_font_description_free(wanted);
    return found;
}
