/* draw/root_section.h: the tooth of the virtual spur gear with the section in which it bends.
 *
 * The axis is the origin and the middle of the tooth lies on +y; lengths in m.
 */
#ifndef TS_DRAW_ROOT_SECTION_H
#define TS_DRAW_ROOT_SECTION_H

#include "element/cylindrical_pair.h"
#include "element/tooth_outline.h"
#include "rating/iso6336/root_form.h"
#include "rating/iso6336/root_stress.h"

enum { TS_ROOT_FILLET = 40, TS_ROOT_FLANK = 32, TS_ROOT_POINTS = 80 };

typedef struct ts_root_section {
    double           x_E; /* 1    profile shift that shapes the root              */
    ts_root_form     form;
    ts_root_notch    notch;
    double           f_eps;         /* share of the load that one pair takes, 2019 edition       */
    double           r_root, r_tip; /* m, of the virtual gear                                    */
    double           chord_y;       /* height of the critical chord; its ends are +-s_Fn/2        */
    double           load_y;        /* where the line of the load crosses the middle of the tooth */
    ts_outline_point load;          /* where it meets the right flank                             */
    size_t           count;         /* right half, from the middle of the space to the tip's      */
    ts_outline_point points[TS_ROOT_POINTS];
} ts_root_section;

/* Gear 0 or 1 of a solved pair, its root shaped by the generating profile shift x_E.  False when
 * the section cannot be found or drawn: internal gears, teeth that are cut through, numbers that
 * are not finite. */
bool ts_root_section_of(const ts_cylindrical_pair *pair, int gear, double x_E,
                        ts_root_section *section);

#endif
