/* draw/canvas.c: how does a picture begin, end and become bytes? */
#include "draw/canvas.h"

#include "draw/lettering.h"

#include <cairo-pdf.h>
#include <cairo-svg.h>
#include <pango/pangocairo.h>
#include <string.h>

static cairo_status_t keep_bytes(void *context, const unsigned char *bytes, unsigned length)
{
    ts_buffer *buffer = context;
    ts_buffer_bytes(buffer, (const char *)bytes, length);
    return buffer->failed ? CAIRO_STATUS_WRITE_ERROR : CAIRO_STATUS_SUCCESS;
}

/* Neither hinting nor the desktop's wishes may move a glyph: positions are those of the outlines,
 * the language and the direction of paragraphs do not come from the locale. */
bool ts_letters_open(PangoFontMap **fonts, PangoContext **letters)
{
    *fonts   = pango_cairo_font_map_new();
    *letters = *fonts ? pango_font_map_create_context(*fonts) : NULL;
    if (!*letters)
        return false;
    cairo_font_options_t *options = cairo_font_options_create();
    cairo_font_options_set_antialias(options, CAIRO_ANTIALIAS_GRAY);
    cairo_font_options_set_hint_style(options, CAIRO_HINT_STYLE_NONE);
    cairo_font_options_set_hint_metrics(options, CAIRO_HINT_METRICS_OFF);
    pango_cairo_context_set_font_options(*letters, options);
    cairo_font_options_destroy(options);
    pango_cairo_context_set_resolution(*letters, 96.0);
    pango_context_set_language(*letters, pango_language_from_string("en"));
    pango_context_set_base_dir(*letters, PANGO_DIRECTION_LTR);
    pango_context_set_round_glyph_positions(*letters, FALSE);
    return true;
}

ts_status ts_canvas_open(ts_canvas *canvas, const ts_draw_options *options, ts_arena *arena)
{
    *canvas = (ts_canvas){
        .ground = options->ground,
        .format = options->format,
        .width  = options->width > 0.0 ? options->width : TS_LOOK_SHEET_WIDTH,
        .scale  = options->scale > 0.0 ? options->scale : 2.0,
        .places = {.arena = arena},
    };
    canvas->mm = canvas->width / TS_LOOK_SHEET_PAPER_MM;
    ts_buffer_open(&canvas->bytes, options->allocator);
    ts_buffer_open(&canvas->line, options->allocator);
    return ts_letters_open(&canvas->fonts, &canvas->letters) ? TS_OK : TS_NO_MEMORY;
}

static cairo_surface_t *open_surface(ts_canvas *canvas)
{
    const double w = canvas->width, h = canvas->height;
    const double pt = 72.0 / 25.4 / canvas->mm; /* points a px of a sheet that is A3 wide */
    switch (canvas->format) {
    case TS_PICTURE_PDF:
        canvas->scale = pt;
        return cairo_pdf_surface_create_for_stream(keep_bytes, &canvas->bytes, w * pt, h * pt);
    case TS_PICTURE_PNG:
        return cairo_image_surface_create(CAIRO_FORMAT_RGB24, (int)(w * canvas->scale + 0.5),
                                          (int)(h * canvas->scale + 0.5));
    case TS_PICTURE_STROKES:
        canvas->scale = 1.0;
        return cairo_recording_surface_create(CAIRO_CONTENT_COLOR,
                                              &(cairo_rectangle_t){0.0, 0.0, w, h});
    case TS_PICTURE_DXF: /* has no surface */
    case TS_PICTURE_SVG:
        break;
    }
    canvas->scale          = 1.0;
    cairo_surface_t *sheet = cairo_svg_surface_create_for_stream(keep_bytes, &canvas->bytes, w, h);
    cairo_svg_surface_set_document_unit(sheet, CAIRO_SVG_UNIT_PX);
    return sheet;
}

/* What a PDF says of itself; an empty date keeps the clock out of the file. */
static void say_of_itself(ts_canvas *canvas, const char *title)
{
    ts_buffer *line = ts_canvas_line(canvas);
    ts_add_clean(line, title);
    if (line->failed || !line->bytes)
        return;
    cairo_pdf_surface_set_metadata(canvas->surface, CAIRO_PDF_METADATA_TITLE, line->bytes);
    cairo_pdf_surface_set_metadata(canvas->surface, CAIRO_PDF_METADATA_CREATE_DATE, "");
}

ts_status ts_canvas_sheet(ts_canvas *canvas, double height, const char *title)
{
    canvas->height  = height;
    canvas->surface = open_surface(canvas);
    if (cairo_surface_status(canvas->surface) != CAIRO_STATUS_SUCCESS)
        return TS_NO_MEMORY;
    if (canvas->format == TS_PICTURE_PDF)
        say_of_itself(canvas, title);
    canvas->cr = cairo_create(canvas->surface);
    cairo_scale(canvas->cr, canvas->scale, canvas->scale);
    cairo_set_line_join(canvas->cr, CAIRO_LINE_JOIN_ROUND);
    ts_use_colour(canvas, TS_COLOUR_PAPER, 1.0);
    cairo_paint(canvas->cr);
    return cairo_status(canvas->cr) == CAIRO_STATUS_SUCCESS ? TS_OK : TS_NO_MEMORY;
}

static void add_escaped(ts_buffer *out, const char *text)
{
    for (; *text; text++) {
        if (*text == '<')
            ts_buffer_add(out, "&lt;");
        else if (*text == '>')
            ts_buffer_add(out, "&gt;");
        else if (*text == '&')
            ts_buffer_add(out, "&amp;");
        else
            ts_buffer_bytes(out, text, 1);
    }
}

/* Cairo names the sheet "surface" and a number that counts all surfaces of the program so far; the
 * picture must not depend on what was drawn before it. */
static void add_body(ts_buffer *out, const char *body, size_t length)
{
    static const char counted[] = "id=\"surface";
    const char       *start     = strstr(body, counted);
    const char       *end       = start ? strchr(start + sizeof counted - 1, '"') : NULL;
    if (!end) {
        ts_buffer_bytes(out, body, length);
        return;
    }
    ts_buffer_bytes(out, body, (size_t)(start - body));
    ts_buffer_add(out, "id=\"sheet");
    ts_buffer_bytes(out, end, length - (size_t)(end - body));
}

/* An SVG says its title in its first element, which Cairo cannot write. */
static void title_svg(ts_canvas *canvas, const char *title)
{
    const char *start = canvas->bytes.bytes ? strstr(canvas->bytes.bytes, "<svg ") : NULL;
    const char *end   = start ? strchr(start, '>') : NULL;
    if (!end)
        return;
    const size_t head = (size_t)(end - canvas->bytes.bytes) + 1;
    ts_buffer    whole;
    ts_buffer_open(&whole, canvas->bytes.allocator);
    ts_buffer_bytes(&whole, canvas->bytes.bytes, head);
    ts_buffer *line = ts_canvas_line(canvas);
    ts_add_clean(line, title);
    ts_buffer_add(&whole, "\n<title>");
    add_escaped(&whole, line->bytes ? line->bytes : "");
    ts_buffer_add(&whole, "</title>");
    add_body(&whole, canvas->bytes.bytes + head, canvas->bytes.length - head);
    ts_buffer_close(&canvas->bytes);
    canvas->bytes = whole;
}

ts_status ts_canvas_finish(ts_canvas *canvas, const char *title)
{
    cairo_status_t status = cairo_status(canvas->cr);
    if (status == CAIRO_STATUS_SUCCESS && canvas->format == TS_PICTURE_PNG)
        status = cairo_surface_write_to_png_stream(canvas->surface, keep_bytes, &canvas->bytes);
    if (canvas->format == TS_PICTURE_STROKES)
        cairo_surface_flush(canvas->surface);
    else
        cairo_surface_finish(canvas->surface);
    if (status == CAIRO_STATUS_SUCCESS)
        status = cairo_surface_status(canvas->surface);
    if (status == CAIRO_STATUS_SUCCESS && canvas->format == TS_PICTURE_SVG)
        title_svg(canvas, title);
    return status == CAIRO_STATUS_SUCCESS && !canvas->bytes.failed && !canvas->line.failed
               ? TS_OK
               : TS_NO_MEMORY;
}

void ts_canvas_close(ts_canvas *canvas)
{
    if (canvas->cr)
        cairo_destroy(canvas->cr);
    if (canvas->surface) {
        if (canvas->format != TS_PICTURE_STROKES)
            cairo_surface_finish(canvas->surface);
        cairo_surface_destroy(canvas->surface);
    }
    g_clear_object(&canvas->letters);
    g_clear_object(&canvas->fonts);
    ts_buffer_close(&canvas->bytes);
    ts_buffer_close(&canvas->line);
}

ts_buffer *ts_canvas_line(ts_canvas *canvas)
{
    ts_buffer_clear(&canvas->line);
    return &canvas->line;
}
