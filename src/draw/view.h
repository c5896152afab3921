/* draw/view.h: the drive as numbers for a picture that somebody else draws. */
#ifndef TS_DRAW_VIEW_H
#define TS_DRAW_VIEW_H

#include "base/json_writer.h"
#include "draw/face.h"
#include "draw/margin_chart.h"

/* What is known of a place of the file once it was asked for. */
typedef struct ts_view_place {
    ts_text  address; /* at NULL: not yet */
    uint32_t shaft;
    bool     known; /* the shaft */
} ts_view_place;

/* What is written; towershaft/view.h tells its meaning. */
typedef struct ts_view {
    ts_face        *face;
    const ts_scene *scene;
    ts_json        *json;
    ts_buffer      *words;  /* for an address while it is made */
    ts_view_place  *places; /* [node]                          */
} ts_view;

/* Appends the whole document.  The subject needs its source. */
ts_status ts_view_write(const ts_drawing_subject *subject, const ts_draw_options *options,
                        ts_buffer *out);

/* ---- between the parts of the document ---- */
void ts_view_machine(const ts_view *view); /* engine, spools, towers, shafts, gears, meshes, pads */
void ts_view_margins(const ts_view *view); /* rows of reserves                                   */
void ts_view_findings(const ts_view *view); /* what was found, with the shaft that it is about    */

void    ts_view_number(const ts_view *view, const char *key, double value); /* not finite: null */
void    ts_view_word(const ts_view *view, const char *key, const char *value);
void    ts_view_count(const ts_view *view, const char *key, int64_t value);
void    ts_view_address(const ts_view *view, const char *key, ts_node node);
ts_text ts_view_address_of(const ts_view *view,
                           ts_node        node); /* lives as long as the scene's arena */
/* The shaft that a node stands on, or that carries the accessory it stands in; TS_NOWHERE: none. */
uint32_t ts_view_shaft_of(const ts_view *view, ts_node node);

#endif
