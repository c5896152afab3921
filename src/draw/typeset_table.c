/* draw/typeset_table.c: how wide is every column of a table, and where does a row go? */
#include "draw/paper.h"

#include <math.h>
#include <string.h>

#define GAP        8.0  /* pt between columns                                     */
#define WORD_MOST  90.0 /* a longer word of a sentence may be broken              */
#define ROW_SPACE  2.5
#define PARTS_MOST 32
#define LABEL_PT                                                                                   \
    48.0 /* a column of labels, none wider than this at the first size, is not broken */

static const double sizes[] = {8.0, 7.25, 6.5, 5.75}; /* pt, tried from the first */

enum { LABELLED = 2 }; /* columns of a table of labels and what they stand for */

typedef struct grid {
    ts_setting     *setting;
    const ts_block *table;
    ts_table_kept  *kept;
    double          size;
    double          width[PARTS_MOST];
    size_t          count;
} grid;

static const char *text_at(const grid *g, size_t row, size_t column, bool head)
{
    return head ? g->table->columns[column].head
                : g->table->cells[row * g->table->column_count + column];
}

static double width_of(const grid *g, const char *text, bool bold)
{
    const ts_type type   = {.size = g->size, .bold = bold};
    PangoLayout  *layout = ts_type_layout(g->setting, text, &type);
    if (layout == NULL)
        return 0.0;
    const double width = ts_type_width(layout);
    g_object_unref(layout);
    return width;
}

/* Of the longest piece between blanks: "take-off" is not broken while there is room. */
static double word_width(const grid *g, const char *text, bool bold)
{
    double most = 0.0;
    while (*text != '\0' && most < WORD_MOST) {
        const char  *end    = strchr(text, ' ');
        const size_t length = end != NULL ? (size_t)(end - text) : strlen(text);
        ts_buffer    word;
        ts_buffer_open(&word, g->setting->options->allocator);
        ts_buffer_bytes(&word, text, length);
        if (!word.failed && length > 0)
            most = fmax(most, width_of(g, word.bytes, bold));
        g->setting->failed = g->setting->failed || word.failed;
        ts_buffer_close(&word);
        text += length + (end != NULL);
    }
    return fmin(most, WORD_MOST);
}

/* Widths at the first size; a smaller one makes all of them smaller alike, for nothing is hinted.
 */
static void measure(const grid *g, size_t column, double *natural, double *least)
{
    const bool   number = g->table->columns[column].number;
    const size_t rows   = ts_block_rows(g->table);
    *natural            = width_of(g, text_at(g, 0, column, true), true);
    *least              = number ? *natural : word_width(g, text_at(g, 0, column, true), true);
    for (size_t r = 0; r < rows; r++) {
        const char  *text  = text_at(g, r, column, false);
        const double width = width_of(g, text, false);
        *natural           = fmax(*natural, width);
        if (number)
            *least = fmax(*least, width);
        else if (width > *least) /* no word is wider than its sentence */
            *least = fmax(*least, word_width(g, text, false));
    }
    if (g->count == LABELLED && column == 0 && *natural <= LABEL_PT)
        *least = *natural;
    *natural += 0.5; /* what layouts round away */
    *least += 0.5;
}

/* Shares the width among the columns, in letters that are as large as their longest words allow. */
static void share(grid *g)
{
    const double room = g->setting->right - g->setting->left - GAP * (double)(g->count - 1);
    double       natural[PARTS_MOST], least[PARTS_MOST], all = 0.0, words = 0.0;
    g->size = sizes[0];
    for (size_t c = 0; c < g->count; c++) {
        measure(g, c, &natural[c], &least[c]);
        all += natural[c];
        words += least[c];
    }
    double smaller = 1.0;
    for (size_t i = 0; i < sizeof sizes / sizeof sizes[0]; i++) {
        g->size = sizes[i];
        smaller = sizes[i] / sizes[0];
        if (smaller * words <= room)
            break;
    }
    all *= smaller;
    words *= smaller;
    const double grown = all > words ? fmax(0.0, fmin(1.0, (room - words) / (all - words))) : 0.0;
    const double cut   = words > room ? room / words : 1.0;
    for (size_t c = 0; c < g->count; c++) {
        const double more = smaller * (natural[c] - least[c]);
        g->width[c] =
            all <= room ? smaller * natural[c] + 0.5 : cut * (smaller * least[c] + grown * more);
    }
}

/* Returns the height; draws nothing with `draw` false. */
static double row(const grid *g, size_t r, bool head, bool draw)
{
    double x = g->setting->left, most = 0.0;
    for (size_t c = 0; c < g->count; c++) {
        const bool    number = g->table->columns[c].number;
        const ts_type type = {.size = g->size, .bold = head, .width = g->width[c], .right = number};
        PangoLayout  *layout = ts_type_layout(g->setting, text_at(g, r, c, head), &type);
        if (layout == NULL)
            return most;
        const double room = 0.8 * (g->setting->bottom - g->setting->top);
        if (ts_type_height(layout) > room) {
            pango_layout_set_height(layout, (int)(room * PANGO_SCALE));
            pango_layout_set_ellipsize(layout, PANGO_ELLIPSIZE_END);
        }
        most = fmax(most, ts_type_height(layout));
        if (draw) {
            cairo_tag_begin(g->setting->cr, head ? "TH" : "TD", NULL);
            ts_type_show(g->setting, layout, x, g->setting->y + 0.5 * ROW_SPACE, TS_COLOUR_INK);
            cairo_tag_end(g->setting->cr, head ? "TH" : "TD");
        }
        g_object_unref(layout);
        x += g->width[c] + GAP;
    }
    return most + ROW_SPACE;
}

/* Row `r`, or the head behind the last. */
static void set_row(const grid *g, size_t r, bool head)
{
    ts_setting *setting = g->setting;
    if (!setting->trial) {
        cairo_tag_begin(setting->cr, "TR", NULL);
        row(g, r, head, true);
        cairo_tag_end(setting->cr, "TR");
    }
    setting->y += g->kept->height[head ? ts_block_rows(g->table) : r];
    if (!setting->trial)
        ts_paper_rule(setting, setting->y, head ? 1.0 : 0.3, head ? TS_COLOUR_INK : TS_COLOUR_HAIR);
}

/* Lays the table out, once for both passes; false without memory. */
static bool lay_out(grid *g)
{
    const size_t rows = ts_block_rows(g->table);
    if (g->kept->width == NULL) {
        g->kept->width  = TS_TAKE(g->setting->arena, double, g->count);
        g->kept->height = TS_TAKE(g->setting->arena, double, rows + 1);
        if (g->kept->width == NULL || g->kept->height == NULL)
            return false;
        share(g);
        g->kept->size = g->size;
        memcpy(g->kept->width, g->width, g->count * sizeof g->width[0]);
        for (size_t r = 0; r < rows; r++)
            g->kept->height[r] = row(g, r, false, false);
        g->kept->height[rows] = row(g, 0, true, false);
    }
    g->size = g->kept->size;
    memcpy(g->width, g->kept->width, g->count * sizeof g->width[0]);
    return true;
}

static bool has_heads(const ts_block *table)
{
    for (size_t c = 0; c < table->column_count; c++)
        if (*table->columns[c].head != '\0')
            return true;
    return false;
}

void ts_set_table(ts_setting *setting, const ts_block *table)
{
    grid g = {.setting = setting,
              .table   = table,
              .count   = table->column_count,
              .kept    = &setting->tables[setting->table++]};
    if (g.count > PARTS_MOST)
        g.count = PARTS_MOST;
    if (!lay_out(&g)) {
        setting->failed = true;
        return;
    }
    const size_t  rows    = ts_block_rows(table);
    const ts_type caption = {.size   = 8.5,
                             .bold   = true,
                             .colour = TS_COLOUR_INK,
                             .width  = setting->right - setting->left};
    ts_paper_need(setting, 14.0 + g.kept->height[rows] + (rows > 0 ? g.kept->height[0] : 0.0));
    if (*table->text != '\0')
        ts_set_paragraph(setting, table->text, &caption, setting->left);
    setting->y += 2.0;
    ts_paper_tag(setting, "Table");
    if (has_heads(table))
        set_row(&g, 0, true);
    for (size_t r = 0; r < rows; r++) {
        const int page = setting->page;
        ts_paper_need(setting, g.kept->height[r]);
        if (setting->page != page && has_heads(table))
            set_row(&g, 0, true);
        set_row(&g, r, false);
    }
    ts_paper_untag(setting);
    setting->y += 8.0;
}
