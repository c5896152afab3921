/* draw/typeset_figure.c: on which page does a figure stand, and how large? */
#include "draw/typeset_figure.h"

#include "draw/recorded.h"

#include <math.h>

#define CAPTION 20.0 /* pt, room for it */
/* px: the sheet of a figure that goes on A4 is laid out narrower than A3, and its letters are
 * larger for it. */
#define SHEET_WIDTH 1240.0

static void record(ts_setting *setting, const ts_block *block, ts_recorded *kept)
{
    ts_draw_options drawn;
    kept->tried = true;
    if (!setting->options->figure(setting->options->context, block, &drawn))
        return;
    drawn.allocator        = setting->options->allocator;
    drawn.width            = SHEET_WIDTH;
    const ts_status status = ts_draw_recorded(setting->options->subject, &drawn, &kept->surface,
                                              &kept->width, &kept->height);
    setting->failed        = setting->failed || status == TS_NO_MEMORY;
}

/* The figure that comes next, which is that of the block; NULL beyond the most, and where it cannot
 * be drawn. */
static const ts_recorded *next_figure(ts_setting *setting, const ts_block *block)
{
    if (setting->figure >= TS_FIGURES_MOST)
        return NULL;
    ts_recorded *figure = &setting->recorded[setting->figure];
    if (!figure->tried)
        record(setting, block, figure);
    return figure->surface != NULL ? figure : NULL;
}

/* A heading goes with the figure below it. */
static bool is_wide(ts_setting *setting, const ts_block *block)
{
    while (block->kind == TS_BLOCK_HEADING && block->next != NULL)
        block = block->next;
    if (block->kind != TS_BLOCK_FIGURE)
        return false;
    const ts_recorded *figure = next_figure(setting, block);
    return figure != NULL && figure->width > figure->height;
}

void ts_paper_suit(ts_setting *setting, const ts_block *block)
{
    const bool wide = is_wide(setting, block);
    const bool used = setting->y > setting->top && !setting->headed;
    if (wide != setting->turned || (wide && used))
        ts_paper_turn(setting, wide);
    setting->headed =
        block->kind == TS_BLOCK_HEADING && (setting->headed || !(setting->y > setting->top));
}

static double scale_of(const ts_setting *setting, const ts_recorded *figure)
{
    const double top = setting->turned ? setting->y : setting->top;
    return fmin((setting->right - setting->left) / figure->width,
                (setting->bottom - top - CAPTION) / figure->height);
}

bool ts_set_figure(ts_setting *setting, const ts_block *block)
{
    const ts_recorded *figure = next_figure(setting, block);
    setting->figure++;
    if (figure == NULL)
        return false;
    const double  scale   = scale_of(setting, figure);
    const double  room    = setting->right - setting->left;
    const double  x       = setting->left + 0.5 * (room - scale * figure->width);
    const ts_type caption = {.size = 8.0, .colour = TS_COLOUR_INK2, .width = room};
    ts_paper_need(setting, scale * figure->height + CAPTION - 1.0);
    ts_paper_tag(setting, "Figure");
    if (!setting->trial) {
        cairo_save(setting->cr);
        cairo_translate(setting->cr, x, setting->y);
        cairo_scale(setting->cr, scale, scale);
        cairo_set_source_surface(setting->cr, figure->surface, 0.0, 0.0);
        cairo_rectangle(setting->cr, 0.0, 0.0, figure->width, figure->height);
        cairo_fill(setting->cr);
        cairo_restore(setting->cr);
    }
    ts_paper_untag(setting);
    setting->y += scale * figure->height + 3.0;
    ts_set_paragraph(setting, block->text, &caption, setting->left);
    setting->y += 10.0;
    return true;
}
