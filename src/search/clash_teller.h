/* search/clash_teller.h: what do those who look for contradictions of a drive file share?  Of
 * drive_clash.c and clash_*.c alone.
 */
#ifndef TS_SEARCH_CLASH_TELLER_H
#define TS_SEARCH_CLASH_TELLER_H

#include "model/source.h"
#include "search/drive_problem.h"

/* Relative; more than the search forgives, so that it is never stricter. */
#define TS_CLASH_SPEED_SLACK 1e-9
#define TS_CLASH_ARC_SLACK   1e-6 /* rad */

typedef struct ts_clash_teller {
    const ts_drive_question  *question;
    const ts_drive           *drive;
    const ts_arrange_problem *p;
    const ts_drive_problem   *made;
    ts_diagnostics           *list;
    ts_arena                 *arena;
    size_t                    told;
} ts_clash_teller;

/* ---- words: empty without memory, which the arena remembers ---------------------------------- */

const char *ts_clash_worded(const ts_clash_teller *t, const char *format, ...)
    __attribute__((format(printf, 2, 3)));
const char *ts_clash_rpm(const ts_clash_teller *t, double omega);
const char *ts_clash_deg(const ts_clash_teller *t, double angle);
const char *ts_clash_mm(const ts_clash_teller *t, double length);

/* At the key of that node; counts. */
void ts_clash_tell(ts_clash_teller *t, ts_node node, const char *says, const char *expected);

/* ---- what the file says ---------------------------------------------------------------------- */

/* NULL: nothing is to be kept of it. */
const ts_extra_demand *ts_clash_kept(const ts_clash_teller *t, size_t accessory);
/* What `arrange` says of a box; NULL: nothing. */
const ts_box_freedom *ts_clash_box_freedom(const ts_clash_teller *t, size_t box);

/* ---- speeds and teeth ------------------------------------------------------------------------ */

/* Ratios to the input shaft of a choice that every band allows, and the conditions that say so. */
typedef struct ts_clash_window {
    double least, most;
    size_t at_least, at_most;
} ts_clash_window;
ts_clash_window ts_clash_ratios(const ts_clash_teller *t, const ts_arrange_accessory *a,
                                const ts_arrange_choice *choice);

/* turns: teeth of a gear on the input that would turn the plane as fast. */
bool ts_clash_turns_right(const ts_arrange_problem *p, const ts_arrange_accessory *a,
                          const ts_arrange_choice *choice, double turns, double z);
bool ts_clash_plane_has_teeth(const ts_clash_teller *t, const ts_arrange_accessory *a,
                              const ts_arrange_choice *choice, double turns);
/* On the input, in its plane, or in one that a step shaft drives. */
bool ts_clash_has_teeth(const ts_clash_teller *t, const ts_arrange_accessory *a,
                        const ts_arrange_box *box);

/* ---- room ------------------------------------------------------------------------------------ */

/* On either side of the input, rad. */
double ts_clash_reach(const ts_arrange_box *box);
/* Between the axes of two gears with so many teeth together; infinite: the arc is too tight. */
double   ts_clash_mesh_angle(const ts_arrange_box *box, double m, double teeth);
uint32_t ts_clash_smallest_gear(const ts_arrange_problem *p);

/* ---- who looks, each told in his own file ---------------------------------------------------- */

/* Accessories that no gear turns within their bands, boxes without any gear. */
void ts_clash_choice(ts_clash_teller *t);
/* Accessories and bodies for which there is no arc. */
void ts_clash_room(ts_clash_teller *t);

#endif
