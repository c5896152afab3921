/* draw/paper.h: pages of paper that fill from the top, with what stands on each of them. */
#ifndef TS_DRAW_PAPER_H
#define TS_DRAW_PAPER_H

#include "draw/look.h"
#include "draw/typeset.h"

#include <cairo.h>
#include <pango/pango.h>

#define TS_FIGURES_MOST 64

typedef struct ts_recorded {
    cairo_surface_t *surface; /* NULL: cannot be drawn */
    double           width, height;
    bool             tried;
} ts_recorded;

typedef struct ts_letters_kept ts_letters_kept; /* draw/typeset_lines.c */

/* How a table was laid out in the trial. */
typedef struct ts_table_kept {
    double  size;   /* pt, of its letters; 0: not laid out */
    double *width;  /* [column] */
    double *height; /* [row]; the head stands behind the last */
} ts_table_kept;

/* The same pages are set twice: a trial, of which only the page numbers stay, and in earnest. */
typedef struct ts_setting {
    const ts_manuscript      *manuscript;
    const ts_typeset_options *options;
    ts_arena                 *arena;
    PangoFontMap             *fonts;
    PangoContext             *letters;
    cairo_surface_t          *surface;
    cairo_t                  *cr;
    double                    enlarge;                  /* pt of the paper a pt in here */
    double                    width, height;            /* of the paper, in pt in here  */
    double                    left, right, top, bottom; /* of what a page may hold */
    double                    y;
    bool                      trial;
    int                       page, pages;   /* from 1; pages: 0 in the trial */
    int                      *heading_page;  /* of each heading, in order */
    size_t                    heading_count; /* in the manuscript */
    size_t                    heading;       /* set so far */
    int                       chapter_mark;  /* outline item of the chapter, for its sections */
    ts_recorded               recorded[TS_FIGURES_MOST];
    size_t                    figure; /* set so far */
    ts_table_kept            *tables; /* of the manuscript, in order */
    size_t                    table;  /* set so far */
    ts_letters_kept          *kept;   /* NULL before the first line of letters of one width */
    bool                      turned; /* this page is wider than high */
    bool                      headed; /* this page holds nothing but headings */
    const char               *tag;    /* what is being set: "P", "H1"; NULL: decoration */
    bool                      failed; /* memory ran out: what was set is not whole */
} ts_setting;

typedef struct ts_type {
    double    size; /* pt */
    bool      bold, fixed;
    ts_colour colour;
    double    width; /* wraps there; 0: one line */
    bool      right; /* its lines end at the right */
} ts_type;

/* A layout of the cleaned text, which the caller unrefs; NULL without memory. */
PangoLayout *ts_type_layout(ts_setting *setting, const char *text, const ts_type *type);
double       ts_type_width(PangoLayout *layout);
double       ts_type_height(PangoLayout *layout);
/* Draws it with its top left corner there. */
void ts_type_show(ts_setting *setting, PangoLayout *layout, double x, double y, ts_colour colour);

void ts_paper_colour(ts_setting *setting, ts_colour colour);
void ts_paper_rule(ts_setting *setting, double y, double thickness, ts_colour colour);

/* A new page, turned or upright; the present one if nothing stands on it. */
void ts_paper_turn(ts_setting *setting, bool turned);
/* What is set until ts_paper_untag is a part of the text of that kind, also over pages. */
void ts_paper_tag(ts_setting *setting, const char *tag);
void ts_paper_untag(ts_setting *setting);

/* A new page unless `height` is left on this one. */
void ts_paper_need(ts_setting *setting, double height);
void ts_paper_begin_page(ts_setting *setting);
void ts_paper_end_page(ts_setting *setting);

/* A paragraph that may go over pages, from `x` on; returns nothing and moves y. */
void ts_set_paragraph(ts_setting *setting, const char *text, const ts_type *type, double x);

/* draw/typeset_table.c */
void ts_set_table(ts_setting *setting, const ts_block *table);

#endif
