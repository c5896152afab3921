/* towershaft/figure.h: pictures of a solved drive, the same bytes from run to run. */
#ifndef TOWERSHAFT_FIGURE_H
#define TOWERSHAFT_FIGURE_H

#include "towershaft/study.h"

typedef struct ts_figure_options {
    const char *figure;    /* "behind", "teeth", ...: any that ts_figure_name says  */
    const char *format;    /* "svg", "pdf", "png"; "dxf" of those in true size      */
    const char *condition; /* NULL: the one with the highest power taken; for one mesh, the one
                              that governs it */
    const char *at; /* address of a cylindrical mesh, "drive/hp/box/clockwise/2", or of anything in
                       it; read by "teeth" and "root".  NULL: the mesh that governs, by its
                       judged teeth or else by its load a width of face.  Of "stops": the part that
                       fails, by name or address, perhaps with ": " and its failure.  Of
                       "seizure" the name of an accessory; NULL: the one with a neck that takes
                       most torque.  Of "jolt" one as "generator 1: short", or "slam", "chop"; NULL:
                       a slam.  Of "swing" the number of a mode; NULL: the first */
    const char *ground; /* "light", "dark", "contrast", "print" */
    bool        us;
    bool        seizures; /* "selectivity" also with peaks of seizures, up to a second */
    double      scale;    /* pixels a unit for PNG; 0 means 2 */
} ts_figure_options;

/* TS_NOT_UNDERSTOOD with a message for an unknown figure, format, ground, condition or mesh. */
TS_API ts_status ts_study_draw(ts_study *study, const ts_figure_options *options,
                               const ts_sink *sink);

/* Names for completion and help: 0-based until NULL. */
TS_API const char *ts_figure_name(size_t index);
TS_API const char *ts_figure_says(size_t index);
/* Has it a true size, and so a DXF? */
TS_API bool ts_figure_is_plan(size_t index);
/* Does it look at one condition?  ts_study_draw ignores the condition of a figure that shows them
 * all, or none; true for a name that is no figure. */
TS_API bool ts_figure_has_condition(const char *name);

#endif
