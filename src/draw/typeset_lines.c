/* draw/typeset_lines.c: how are thousands of lines of one width set quickly?
 *
 * Every letter is shaped once, by the same library as all other text, and its glyph kept; a line is
 * then a row of kept glyphs, one advance apart.  A line with a letter that does not stand alone
 * goes the slow way.
 */
#include "draw/typeset_lines.h"

#include "draw/lettering.h"

#include <pango/pangocairo.h>
#include <string.h>

#define SIZE         6.6    /* pt */
#define LETTERS_MOST 0x2600 /* beyond these nothing stands alone */
#define LINE_MOST    512    /* glyphs of one set line */
#define HANGING      4      /* columns by which what is broken off is set in */

typedef struct letter {
    PangoFont    *font; /* NULL: not looked at; ours to unref */
    unsigned long glyph;
    bool          alone; /* one glyph, as wide as all others */
} letter;

struct ts_letters_kept {
    letter letters[LETTERS_MOST];
    double advance, height, baseline;
    int    columns;
};

static const ts_type type = {.size = SIZE, .fixed = true, .colour = TS_COLOUR_INK};

/* The first run of a layout; NULL when there is another, or none. */
static PangoLayoutRun *only_run(PangoLayout *layout)
{
    PangoLayoutLine *line = pango_layout_get_line_readonly(layout, 0);
    const bool       one  = line != NULL && line->runs != NULL && line->runs->next == NULL;
    return one ? line->runs->data : NULL;
}

/* Measures with the letter x what all of them must be like. */
static bool measure(ts_setting *setting, ts_letters_kept *kept)
{
    PangoLayout   *layout = ts_type_layout(setting, "x", &type);
    PangoRectangle box;
    if (layout == NULL)
        return false;
    pango_layout_line_get_extents(pango_layout_get_line_readonly(layout, 0), NULL, &box);
    kept->advance  = (double)box.width / PANGO_SCALE;
    kept->height   = TS_LOOK_TYPE_LINE_HEIGHT_TIGHT * (double)box.height / PANGO_SCALE;
    kept->baseline = -(double)box.y / PANGO_SCALE;
    const int room = (int)((setting->right - setting->left) / kept->advance);
    kept->columns  = room < LINE_MOST ? room : LINE_MOST;
    g_object_unref(layout);
    return kept->advance > 0.0;
}

static void look_at(ts_setting *setting, ts_letters_kept *kept, letter *one, const char *bytes,
                    size_t length)
{
    char text[8] = {0};
    memcpy(text, bytes, length);
    PangoLayout *layout = ts_type_layout(setting, text, &type);
    if (layout == NULL)
        return;
    const PangoLayoutRun *run = only_run(layout);
    if (run != NULL) {
        const PangoGlyphInfo *info  = &run->glyphs->glyphs[0];
        const double          width = (double)info->geometry.width / PANGO_SCALE;
        one->font                   = g_object_ref(run->item->analysis.font);
        one->glyph                  = info->glyph;
        one->alone                  = run->glyphs->num_glyphs == 1 &&
                     (info->glyph & PANGO_GLYPH_UNKNOWN_FLAG) == 0 &&
                     width > 0.99 * kept->advance && width < 1.01 * kept->advance;
    }
    g_object_unref(layout);
}

static const letter *letter_of(ts_setting *setting, const char *text, size_t length, uint32_t code)
{
    ts_letters_kept *kept = setting->kept;
    if (code < 0x20 || code >= LETTERS_MOST)
        return NULL;
    letter *one = &kept->letters[code];
    if (one->font == NULL)
        look_at(setting, kept, one, text, length);
    return one->alone ? one : NULL;
}

/* ---- one line ------------------------------------------------------------------------------ */

typedef struct row {
    const letter *letters[LINE_MOST * 8];
    size_t        count;
} row;

/* False when the line must go the slow way. */
static bool read_row(ts_setting *setting, const char *bytes, size_t length, row *out)
{
    const ts_text text = {bytes, length};
    out->count         = 0;
    for (size_t at = 0; at < length;) {
        uint32_t     code  = 0;
        const size_t taken = ts_text_code_point(text, at, &code);
        if (taken == 0 || out->count == sizeof out->letters / sizeof out->letters[0])
            return false;
        const letter *one = letter_of(setting, bytes + at, taken, code);
        if (one == NULL)
            return false;
        out->letters[out->count++] = one;
        at += taken;
    }
    return true;
}

static void show(ts_setting *setting, const letter *const *letters, size_t count, int column)
{
    const ts_letters_kept *kept = setting->kept;
    cairo_glyph_t          glyphs[LINE_MOST];
    const double           y = setting->y + kept->baseline;
    for (size_t at = 0; at < count;) {
        PangoFont *font = letters[at]->font;
        int        used = 0;
        for (; at < count && letters[at]->font == font; at++)
            glyphs[used++] = (cairo_glyph_t){
                letters[at]->glyph, setting->left + (column + (double)at) * kept->advance, y};
        cairo_set_scaled_font(setting->cr,
                              pango_cairo_font_get_scaled_font(PANGO_CAIRO_FONT(font)));
        cairo_show_glyphs(setting->cr, glyphs, used);
    }
}

/* How many of the letters go on this line: up to the last blank that it reaches. */
static size_t broken_at(const letter *const *letters, size_t count, size_t room,
                        const letter *blank)
{
    if (count <= room)
        return count;
    for (size_t i = room; i > room / 2; i--)
        if (letters[i] == blank)
            return i;
    return room;
}

static void set_row(ts_setting *setting, const row *all)
{
    ts_letters_kept *kept   = setting->kept;
    const letter    *blank  = letter_of(setting, " ", 1, ' ');
    size_t           indent = 0;
    while (indent < all->count && all->letters[indent] == blank)
        indent++;
    indent = indent + HANGING < (size_t)kept->columns / 2 ? indent + HANGING : HANGING;
    for (size_t at = 0; at < all->count || at == 0;) {
        const size_t column = at == 0 ? 0 : indent;
        const size_t count =
            broken_at(all->letters + at, all->count - at, (size_t)kept->columns - column, blank);
        ts_paper_need(setting, kept->height);
        if (!setting->trial && count > 0)
            show(setting, all->letters + at, count, (int)column);
        setting->y += kept->height;
        at += count;
        while (at < all->count && all->letters[at] == blank)
            at++;
        if (all->count == 0)
            return;
    }
}

static void set_slowly(ts_setting *setting, const char *bytes, size_t length)
{
    const ts_type wide = {.size   = SIZE,
                          .fixed  = true,
                          .colour = TS_COLOUR_INK,
                          .width  = setting->right - setting->left};
    ts_buffer     line;
    ts_buffer_open(&line, setting->options->allocator);
    ts_buffer_bytes(&line, bytes, length);
    if (!line.failed)
        ts_set_paragraph(setting, line.bytes, &wide, setting->left);
    setting->failed = setting->failed || line.failed;
    ts_buffer_close(&line);
    if (!setting->trial)
        ts_paper_colour(setting, TS_COLOUR_INK);
}

void ts_set_lines(ts_setting *setting, const ts_block *block)
{
    row *all = TS_TAKE(setting->arena, row, 1);
    if (setting->kept == NULL)
        setting->kept = TS_TAKE(setting->arena, ts_letters_kept, 1);
    if (all == NULL || setting->kept == NULL ||
        (!(setting->kept->advance > 0.0) && !measure(setting, setting->kept))) {
        setting->failed = true;
        return;
    }
    ts_paper_tag(setting, "Code");
    if (!setting->trial)
        ts_paper_colour(setting, TS_COLOUR_INK);
    for (const char *at = block->text; *at != '\0';) {
        const char  *end    = strchr(at, '\n');
        const size_t length = end != NULL ? (size_t)(end - at) : strlen(at);
        if (read_row(setting, at, length, all))
            set_row(setting, all);
        else
            set_slowly(setting, at, length);
        at += length + (end != NULL);
    }
    ts_paper_untag(setting);
    setting->y += 6.0;
}

void ts_letters_forget(ts_letters_kept *kept)
{
    for (size_t i = 0; kept != NULL && i < LETTERS_MOST; i++)
        g_clear_object(&kept->letters[i].font);
}
