/* draw/typeset.c: how does a manuscript become pages? */
#include "draw/typeset.h"

#include "draw/canvas.h"
#include "draw/lettering.h"
#include "draw/paper.h"
#include "draw/pdf_catalog.h"
#include "draw/picture_library.h"
#include "draw/typeset_figure.h"
#include "draw/typeset_lines.h"

#include <cairo-pdf.h>
#include <math.h>
#include <string.h>

#define BODY  9.0
#define LABEL 26.0 /* pt that the sign of an item takes */

/* ---- blocks ---------------------------------------------------------------------------------- */

static double room_of(ts_setting *setting)
{
    return setting->right - setting->left;
}

static void bookmark(ts_setting *setting, const ts_block *block)
{
    ts_buffer name, place;
    ts_buffer_open(&name, setting->options->allocator);
    ts_buffer_open(&place, setting->options->allocator);
    ts_buffer_print(&name, "%s ", block->label);
    ts_add_clean(&name, block->text);
    ts_buffer_print(&place, "page=%d pos=[%d %d]", setting->page, (int)setting->left,
                    (int)setting->y);
    if (!name.failed && !place.failed) {
        const int mark = cairo_pdf_surface_add_outline(
            setting->surface, block->level > 1 ? setting->chapter_mark : CAIRO_PDF_OUTLINE_ROOT,
            name.bytes, place.bytes, CAIRO_PDF_OUTLINE_FLAG_OPEN);
        if (block->level == 1)
            setting->chapter_mark = mark;
    }
    setting->failed = setting->failed || name.failed || place.failed;
    ts_buffer_close(&name);
    ts_buffer_close(&place);
}

static void set_text(ts_setting *setting, const ts_block *block)
{
    const ts_type type = {.size   = BODY,
                          .colour = block->tone == TS_BLOCK_FAINT ? TS_COLOUR_INK2 : TS_COLOUR_INK,
                          .width  = room_of(setting)};
    ts_set_paragraph(setting, block->text, &type, setting->left);
    setting->y += 5.0;
}

static void set_item(ts_setting *setting, const ts_block *block)
{
    const ts_type sign  = {.size = BODY, .bold = true, .colour = TS_COLOUR_INK};
    const ts_type type  = {.size   = BODY,
                           .colour = block->tone == TS_BLOCK_FAINT ? TS_COLOUR_INK2 : TS_COLOUR_INK,
                           .width  = room_of(setting) - LABEL};
    PangoLayout  *label = ts_type_layout(setting, block->label != NULL ? block->label : "", &sign);
    ts_paper_need(setting, 2.0 * BODY);
    if (label != NULL) {
        if (!setting->trial)
            ts_type_show(setting, label, setting->left, setting->y, TS_COLOUR_INK);
        g_object_unref(label);
    }
    ts_set_paragraph(setting, block->text, &type, setting->left + LABEL);
    setting->y += 3.0;
}

static void set_box(ts_setting *setting, const ts_block *block)
{
    const bool    strong = block->tone == TS_BLOCK_WARNING;
    const double  inset  = 8.0;
    const ts_type type   = {.size  = BODY + (strong ? 0.5 : 0.0),
                            .bold  = strong,
                            .width = room_of(setting) - 2.0 * inset};
    PangoLayout  *layout = ts_type_layout(setting, block->text, &type);
    if (layout == NULL)
        return;
    const double height = ts_type_height(layout) + 2.0 * inset;
    ts_paper_need(setting, height + 6.0);
    if (!setting->trial) {
        ts_paper_colour(setting, TS_COLOUR_INK);
        cairo_set_line_width(setting->cr, strong ? 2.0 : 0.8);
        cairo_rectangle(setting->cr, setting->left, setting->y, room_of(setting), height);
        cairo_stroke(setting->cr);
        ts_paper_tag(setting, "P");
        ts_type_show(setting, layout, setting->left + inset, setting->y + inset, TS_COLOUR_INK);
        ts_paper_untag(setting);
    }
    g_object_unref(layout);
    setting->y += height + 8.0;
}

/* A figure, or a boxed sentence in its place. */
static void set_figure(ts_setting *setting, const ts_block *block)
{
    ts_block  instead = {.kind = TS_BLOCK_BOX};
    ts_buffer says;
    if (ts_set_figure(setting, block))
        return;
    ts_buffer_open(&says, setting->options->allocator);
    ts_buffer_print(&says, "This picture cannot be drawn: %s", block->text);
    instead.text = says.failed ? "This picture cannot be drawn." : says.bytes;
    set_box(setting, &instead);
    setting->failed = setting->failed || says.failed;
    ts_buffer_close(&says);
}

static void set_heading(ts_setting *setting, const ts_block *block)
{
    const bool    chapter = block->level == 1;
    const ts_type type    = {.size   = chapter ? 15.0 : 11.0,
                             .bold   = true,
                             .colour = TS_COLOUR_INK,
                             .width  = room_of(setting)};
    ts_buffer     line;
    if (block->fresh)
        ts_paper_turn(setting, setting->turned);
    if (setting->y > setting->top)
        setting->y += chapter ? 20.0 : 10.0;
    ts_paper_need(setting, chapter ? 110.0 : 80.0);
    if (setting->trial)
        setting->heading_page[setting->heading] = setting->page;
    else
        bookmark(setting, block);
    setting->heading++;
    ts_buffer_open(&line, setting->options->allocator);
    ts_buffer_print(&line, "%s  %s", block->label, block->text);
    ts_paper_tag(setting, chapter ? "H1" : "H2");
    if (!line.failed)
        ts_set_paragraph(setting, line.bytes, &type, setting->left);
    ts_paper_untag(setting);
    setting->failed = setting->failed || line.failed;
    ts_buffer_close(&line);
    setting->y += chapter ? 6.0 : 3.0;
}

/* ---- the first page -------------------------------------------------------------------------- */

static void set_title(ts_setting *setting)
{
    const ts_manuscript *manuscript = setting->manuscript;
    const ts_type        title      = {
                    .size = 22.0, .bold = true, .colour = TS_COLOUR_INK, .width = room_of(setting)};
    const ts_type plain = {.size = BODY, .colour = TS_COLOUR_INK2, .width = room_of(setting)};
    ts_buffer     line;
    setting->y += 10.0;
    ts_set_paragraph(setting, manuscript->title, &title, setting->left);
    setting->y += 4.0;
    ts_buffer_open(&line, setting->options->allocator);
    ts_buffer_print(&line, "revision %s \xC2\xB7 %s \xC2\xB7 towershaft %s", manuscript->revision,
                    manuscript->file, manuscript->version);
    if (!line.failed)
        ts_set_paragraph(setting, line.bytes, &plain, setting->left);
    ts_buffer_clear(&line);
    ts_buffer_print(&line, "SHA-256 of the file: %s", manuscript->hash);
    if (!line.failed)
        ts_set_paragraph(setting, line.bytes, &plain, setting->left);
    char family[64];
    ts_buffer_clear(&line);
    if (!ts_picture_font(family, sizeof family)) {
        ts_buffer_print(&line, "set in %s, for " TS_LOOK_TYPE_FAMILY_TEXT " is not installed",
                        family);
        if (!line.failed)
            ts_set_paragraph(setting, line.bytes, &plain, setting->left);
    }
    setting->failed = setting->failed || line.failed;
    ts_buffer_close(&line);
    setting->y += 8.0;
    const ts_block caution = {
        .kind = TS_BLOCK_BOX, .tone = TS_BLOCK_WARNING, .text = manuscript->caution};
    set_box(setting, &caution);
}

/* "3  Teeth ........ 7": a line that leads to its page. */
static void contents_line(ts_setting *setting, const ts_block *block, int page)
{
    const ts_type type = {.size = BODY, .colour = TS_COLOUR_INK};
    ts_buffer     line, number, place;
    ts_buffer_open(&line, setting->options->allocator);
    ts_buffer_open(&number, setting->options->allocator);
    ts_buffer_open(&place, setting->options->allocator);
    ts_buffer_print(&line, "%s  %s", block->label, block->text);
    ts_buffer_print(&number, "%d", page);
    ts_buffer_print(&place, "page=%d", page);
    ts_paper_need(setting, 13.0);
    if (!setting->trial && !line.failed && !number.failed && !place.failed) {
        PangoLayout *left  = ts_type_layout(setting, line.bytes, &type);
        PangoLayout *right = ts_type_layout(setting, number.bytes, &type);
        if (left != NULL && right != NULL) {
            cairo_tag_begin(setting->cr, CAIRO_TAG_LINK, place.bytes);
            ts_type_show(setting, left, setting->left, setting->y, TS_COLOUR_INK);
            ts_type_show(setting, right, setting->right - ts_type_width(right), setting->y,
                         TS_COLOUR_INK);
            cairo_tag_end(setting->cr, CAIRO_TAG_LINK);
        }
        g_clear_object(&left);
        g_clear_object(&right);
    }
    setting->y += 13.0;
    setting->failed = setting->failed || line.failed || number.failed || place.failed;
    ts_buffer_close(&line);
    ts_buffer_close(&number);
    ts_buffer_close(&place);
}

/* One chapter needs no list of chapters. */
static void set_contents(ts_setting *setting)
{
    size_t heading = 0;
    if (setting->manuscript->chapter < 2)
        return;
    for (const ts_block *b = setting->manuscript->first; b != NULL; b = b->next) {
        if (b->kind != TS_BLOCK_HEADING)
            continue;
        if (b->level == 1)
            contents_line(setting, b, setting->trial ? 0 : setting->heading_page[heading]);
        heading++;
    }
    setting->y += 10.0;
}

/* ---- pages ----------------------------------------------------------------------------------- */

static void set_block(ts_setting *setting, const ts_block *block)
{
    ts_paper_suit(setting, block);
    switch (block->kind) {
    case TS_BLOCK_HEADING:
        set_heading(setting, block);
        return;
    case TS_BLOCK_TEXT:
        set_text(setting, block);
        return;
    case TS_BLOCK_ITEM:
        set_item(setting, block);
        return;
    case TS_BLOCK_BOX:
        set_box(setting, block);
        return;
    case TS_BLOCK_TABLE:
        ts_set_table(setting, block);
        return;
    case TS_BLOCK_FIGURE:
        set_figure(setting, block);
        return;
    case TS_BLOCK_LINES:
        ts_set_lines(setting, block);
        return;
    }
}

static void set_all(ts_setting *setting)
{
    setting->page    = 0;
    setting->heading = 0;
    setting->figure  = 0;
    setting->table   = 0;
    setting->turned  = false;
    setting->headed  = false;
    ts_paper_begin_page(setting);
    if (!setting->trial)
        cairo_tag_begin(setting->cr, "Document", NULL);
    set_title(setting);
    set_contents(setting);
    for (const ts_block *block = setting->manuscript->first; block != NULL; block = block->next)
        set_block(setting, block);
    if (!setting->trial)
        cairo_tag_end(setting->cr, "Document");
    ts_paper_end_page(setting);
}

static cairo_status_t keep(void *context, const unsigned char *bytes, unsigned length)
{
    ts_buffer *buffer = context;
    ts_buffer_bytes(buffer, (const char *)bytes, length);
    return buffer->failed ? CAIRO_STATUS_WRITE_ERROR : CAIRO_STATUS_SUCCESS;
}

static cairo_status_t forget(void *context, const unsigned char *bytes, unsigned length)
{
    (void)context;
    (void)bytes;
    (void)length;
    return CAIRO_STATUS_SUCCESS;
}

/* An empty date keeps the clock out of the file. */
static void say_of_itself(ts_setting *setting)
{
    ts_buffer line;
    ts_buffer_open(&line, setting->options->allocator);
    ts_add_clean(&line, setting->manuscript->title);
    if (!line.failed && line.bytes != NULL)
        cairo_pdf_surface_set_metadata(setting->surface, CAIRO_PDF_METADATA_TITLE, line.bytes);
    ts_buffer_clear(&line);
    ts_buffer_print(&line, "towershaft %s", setting->manuscript->version);
    if (!line.failed)
        cairo_pdf_surface_set_metadata(setting->surface, CAIRO_PDF_METADATA_CREATOR, line.bytes);
    cairo_pdf_surface_set_metadata(setting->surface, CAIRO_PDF_METADATA_CREATE_DATE, "");
    setting->failed = setting->failed || line.failed;
    ts_buffer_close(&line);
}

/* Sets everything once; in earnest the bytes go to `bytes`, NULL makes it a trial. */
static bool set_once(ts_setting *setting, ts_buffer *bytes)
{
    setting->trial   = bytes == NULL;
    setting->pages   = setting->page;
    setting->surface = cairo_pdf_surface_create_for_stream(bytes != NULL ? keep : forget, bytes,
                                                           setting->width * setting->enlarge,
                                                           setting->height * setting->enlarge);
    setting->cr      = cairo_create(setting->surface);
    cairo_scale(setting->cr, setting->enlarge, setting->enlarge);
    if (bytes != NULL)
        say_of_itself(setting);
    set_all(setting);
    cairo_status_t status = cairo_status(setting->cr);
    cairo_destroy(setting->cr);
    cairo_surface_finish(setting->surface);
    if (status == CAIRO_STATUS_SUCCESS)
        status = cairo_surface_status(setting->surface);
    cairo_surface_destroy(setting->surface);
    return status == CAIRO_STATUS_SUCCESS && !setting->failed;
}

static size_t blocks_in(const ts_manuscript *manuscript, ts_block_kind kind)
{
    size_t count = 0;
    for (const ts_block *block = manuscript->first; block != NULL; block = block->next)
        count += block->kind == kind;
    return count;
}

static void close_setting(ts_setting *setting)
{
    for (size_t i = 0; i < TS_FIGURES_MOST; i++)
        if (setting->recorded[i].surface != NULL)
            cairo_surface_destroy(setting->recorded[i].surface);
    ts_letters_forget(setting->kept);
    g_clear_object(&setting->letters);
    g_clear_object(&setting->fonts);
    ts_arena_close(setting->arena);
}

static bool open_setting(ts_setting *setting, const ts_manuscript *manuscript,
                         const ts_typeset_options *options)
{
    const bool a4          = options->paper == TS_PAPER_A4;
    *setting               = (ts_setting){.manuscript = manuscript, .options = options};
    setting->enlarge       = options->enlarge > 0.0 ? options->enlarge : 1.0;
    setting->width         = (a4 ? 210.0 * 72.0 / 25.4 : 612.0) / setting->enlarge;
    setting->height        = (a4 ? 297.0 * 72.0 / 25.4 : 792.0) / setting->enlarge;
    setting->heading_count = blocks_in(manuscript, TS_BLOCK_HEADING);
    setting->arena         = ts_arena_open(options->allocator);
    if (setting->arena == NULL)
        return false;
    setting->heading_page = TS_TAKE(setting->arena, int, setting->heading_count);
    setting->tables =
        TS_TAKE(setting->arena, ts_table_kept, blocks_in(manuscript, TS_BLOCK_TABLE) + 1);
    return setting->heading_page != NULL && setting->tables != NULL &&
           ts_letters_open(&setting->fonts, &setting->letters);
}

static ts_status send(const ts_buffer *pdf, const ts_sink *sink)
{
    ts_buffer told;
    ts_buffer_open(&told, pdf->allocator);
    ts_pdf_tell(pdf, &told);
    const ts_status status = told.failed ? TS_NO_MEMORY : ts_buffer_send(&told, sink);
    ts_buffer_close(&told);
    return status;
}

ts_status ts_typeset_pdf(const ts_manuscript *manuscript, const ts_typeset_options *options,
                         const ts_sink *sink)
{
    ts_setting setting;
    ts_buffer  bytes;
    ts_status  status = TS_NO_MEMORY;
    ts_buffer_open(&bytes, options->allocator);
    if (!manuscript->failed && open_setting(&setting, manuscript, options)) {
        if (set_once(&setting, NULL) && set_once(&setting, &bytes) && !bytes.failed)
            status = send(&bytes, sink);
    }
    if (!manuscript->failed)
        close_setting(&setting);
    ts_buffer_close(&bytes);
    return status;
}
