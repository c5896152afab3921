/* draw/paper.c: how is a line of text set, and what stands at the head and foot of every page? */
#include "draw/paper.h"

#include "draw/lettering.h"

#include <cairo-pdf.h>
#include <pango/pangocairo.h>
#include <string.h>

#define HEAD_SIZE 7.5
#define FOOT_SIZE 6.5

/* pt, margins of the paper, upright and turned */
#define SIDE        42.0
#define TOP         62.0
#define FOOT        58.0
#define TURNED_TOP  46.0
#define TURNED_FOOT 36.0

static const char families[] = TS_LOOK_TYPE_FAMILY_TEXT ", " TS_LOOK_TYPE_FAMILY_FALLBACK_TEXT;
static const char fixed_families[] =
    TS_LOOK_TYPE_FAMILY_FIXED ", " TS_LOOK_TYPE_FAMILY_FALLBACK_FIXED;

/* ---- letters --------------------------------------------------------------------------------- */

static void set_font(PangoLayout *layout, const ts_type *type)
{
    PangoFontDescription *font = pango_font_description_new();
    pango_font_description_set_family_static(font, type->fixed ? fixed_families : families);
    pango_font_description_set_weight(font, type->bold ? PANGO_WEIGHT_BOLD : PANGO_WEIGHT_NORMAL);
    pango_font_description_set_absolute_size(font, type->size * PANGO_SCALE);
    pango_layout_set_font_description(layout, font);
    pango_font_description_free(font);
}

PangoLayout *ts_type_layout(ts_setting *setting, const char *text, const ts_type *type)
{
    ts_buffer clean;
    ts_buffer_open(&clean, setting->options->allocator);
    ts_add_clean(&clean, text);
    PangoLayout *layout = clean.failed ? NULL : pango_layout_new(setting->letters);
    if (layout != NULL) {
        pango_layout_set_auto_dir(layout, FALSE);
        pango_layout_set_single_paragraph_mode(layout, TRUE);
        pango_layout_set_text(layout, clean.bytes != NULL ? clean.bytes : "", (int)clean.length);
        set_font(layout, type);
        if (type->width > 0.0) {
            pango_layout_set_width(layout, (int)(type->width * PANGO_SCALE));
            pango_layout_set_wrap(layout, PANGO_WRAP_WORD_CHAR);
        }
        if (type->right)
            pango_layout_set_alignment(layout, PANGO_ALIGN_RIGHT);
    }
    setting->failed = setting->failed || layout == NULL;
    ts_buffer_close(&clean);
    return layout;
}

double ts_type_width(PangoLayout *layout)
{
    PangoRectangle box;
    pango_layout_get_extents(layout, NULL, &box);
    return (double)box.width / PANGO_SCALE;
}

double ts_type_height(PangoLayout *layout)
{
    PangoRectangle box;
    pango_layout_get_extents(layout, NULL, &box);
    return (double)box.height / PANGO_SCALE;
}

void ts_paper_colour(ts_setting *setting, ts_colour colour)
{
    const ts_rgb rgb = ts_look_rgb(TS_GROUND_PRINT, colour);
    cairo_set_source_rgb(setting->cr, rgb.red, rgb.green, rgb.blue);
}

void ts_type_show(ts_setting *setting, PangoLayout *layout, double x, double y, ts_colour colour)
{
    ts_paper_colour(setting, colour);
    cairo_move_to(setting->cr, x, y);
    pango_cairo_show_layout(setting->cr, layout);
    cairo_new_path(setting->cr);
}

void ts_paper_rule(ts_setting *setting, double y, double thickness, ts_colour colour)
{
    ts_paper_colour(setting, colour);
    cairo_set_line_width(setting->cr, thickness);
    cairo_move_to(setting->cr, setting->left, y);
    cairo_line_to(setting->cr, setting->right, y);
    cairo_stroke(setting->cr);
}

/* ---- pages ----------------------------------------------------------------------------------- */

static void one_line(ts_setting *setting, const char *text, double y, bool right)
{
    const ts_type type   = {.size = HEAD_SIZE, .colour = TS_COLOUR_INK2};
    PangoLayout  *layout = ts_type_layout(setting, text, &type);
    if (layout == NULL)
        return;
    if (!right) {
        pango_layout_set_width(layout, (int)(0.7 * (setting->right - setting->left) * PANGO_SCALE));
        pango_layout_set_ellipsize(layout, PANGO_ELLIPSIZE_END);
    }
    ts_type_show(setting, layout, right ? setting->right - ts_type_width(layout) : setting->left, y,
                 TS_COLOUR_INK2);
    g_object_unref(layout);
}

static void page_number(ts_setting *setting)
{
    ts_buffer line;
    ts_buffer_open(&line, setting->options->allocator);
    ts_buffer_print(&line, "page %d of %d", setting->page, setting->pages);
    if (!line.failed)
        one_line(setting, line.bytes, setting->top - 26.0, true);
    setting->failed = setting->failed || line.failed;
    ts_buffer_close(&line);
}

static void page_title(ts_setting *setting)
{
    const ts_manuscript *manuscript = setting->manuscript;
    ts_buffer            line;
    ts_buffer_open(&line, setting->options->allocator);
    ts_buffer_print(&line, "%s, revision %s \xC2\xB7 towershaft %s", manuscript->title,
                    manuscript->revision, manuscript->version);
    if (!line.failed)
        one_line(setting, line.bytes, setting->top - 26.0, false);
    setting->failed = setting->failed || line.failed;
    ts_buffer_close(&line);
}

static void foot(ts_setting *setting)
{
    const ts_type type = {
        .size = FOOT_SIZE, .colour = TS_COLOUR_INK2, .width = setting->right - setting->left};
    PangoLayout *layout = ts_type_layout(setting, setting->manuscript->caution, &type);
    if (layout == NULL)
        return;
    ts_paper_rule(setting, setting->bottom + 8.0, 0.5, TS_COLOUR_RULE);
    ts_type_show(setting, layout, setting->left, setting->bottom + 11.0, TS_COLOUR_INK2);
    g_object_unref(layout);
}

/* The paper as it lies, and what it may hold.  Cairo takes the size of a page as long as nothing is
 * drawn on it. */
static void lay_paper(ts_setting *setting)
{
    const double wide = setting->turned ? setting->height : setting->width;
    const double high = setting->turned ? setting->width : setting->height;
    setting->left     = SIDE;
    setting->right    = wide - SIDE;
    setting->top      = setting->turned ? TURNED_TOP : TOP;
    setting->bottom   = high - (setting->turned ? TURNED_FOOT : FOOT);
    setting->y        = setting->top;
    if (!setting->trial)
        cairo_pdf_surface_set_size(setting->surface, wide * setting->enlarge,
                                   high * setting->enlarge);
}

void ts_paper_begin_page(ts_setting *setting)
{
    setting->page++;
    lay_paper(setting);
    if (setting->tag != NULL && !setting->trial)
        cairo_tag_begin(setting->cr, setting->tag, NULL);
}

void ts_paper_end_page(ts_setting *setting)
{
    if (setting->trial)
        return;
    if (setting->tag != NULL)
        cairo_tag_end(setting->cr, setting->tag);
    page_title(setting);
    page_number(setting);
    ts_paper_rule(setting, setting->top - 13.0, 0.5, TS_COLOUR_RULE);
    foot(setting);
    cairo_show_page(setting->cr);
}

void ts_paper_turn(ts_setting *setting, bool turned)
{
    const bool used = setting->y > setting->top;
    if (used)
        ts_paper_end_page(setting);
    setting->turned = turned;
    if (used)
        ts_paper_begin_page(setting);
    else
        lay_paper(setting);
}

void ts_paper_tag(ts_setting *setting, const char *tag)
{
    setting->tag = tag;
    if (!setting->trial)
        cairo_tag_begin(setting->cr, tag, NULL);
}

void ts_paper_untag(ts_setting *setting)
{
    if (!setting->trial)
        cairo_tag_end(setting->cr, setting->tag);
    setting->tag = NULL;
}

void ts_paper_need(ts_setting *setting, double height)
{
    if (setting->y + height <= setting->bottom || !(setting->y > setting->top))
        return;
    ts_paper_end_page(setting);
    ts_paper_begin_page(setting);
}

void ts_set_paragraph(ts_setting *setting, const char *text, const ts_type *type, double x)
{
    PangoLayout *layout = ts_type_layout(setting, text, type);
    if (layout == NULL)
        return;
    const bool own = setting->tag == NULL;
    if (own)
        ts_paper_tag(setting, "P");
    for (int i = 0; i < pango_layout_get_line_count(layout); i++) {
        PangoLayoutLine *line = pango_layout_get_line_readonly(layout, i);
        PangoRectangle   box;
        pango_layout_line_get_extents(line, NULL, &box);
        const double height = TS_LOOK_TYPE_LINE_HEIGHT_TIGHT * (double)box.height / PANGO_SCALE;
        ts_paper_need(setting, height);
        if (!setting->trial) {
            ts_paper_colour(setting, type->colour);
            cairo_move_to(setting->cr, x, setting->y - (double)box.y / PANGO_SCALE);
            pango_cairo_show_layout_line(setting->cr, line);
            cairo_new_path(setting->cr);
        }
        setting->y += height;
    }
    if (own)
        ts_paper_untag(setting);
    g_object_unref(layout);
}
