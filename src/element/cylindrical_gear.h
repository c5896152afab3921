/* element/cylindrical_gear.h: one spur or helical gear by itself, ISO 21771:2007.
 *
 * Units     m, rad.
 * Signs     ISO 21771: an internal gear has z < 0, and with it d, d_b, d_a, d_f < 0; profile shift
 *           is positive when the teeth grow thicker.  (Many textbooks keep z and x of a ring
 *           positive and turn the signs of the formulas instead: x = -x_textbook here.)
 */
#ifndef TS_ELEMENT_CYLINDRICAL_GEAR_H
#define TS_ELEMENT_CYLINDRICAL_GEAR_H

#include "base/workings.h"
#include "element/basic_rack.h"

#include <stdbool.h>

/* What both gears of a pair share. */
typedef struct ts_cylindrical_frame {
    double m_n;     /* m    normal module, 1e-9 .. 1000        */
    double alpha_n; /* rad  normal pressure angle, 0.01 .. 1.5 */
    double beta;    /* rad  helix angle, 0 .. 1.5              */
    double m_t;     /* m    transverse module                  */
    double alpha_t; /* rad  transverse pressure angle          */
    double beta_b;  /* rad  base helix angle                   */
    double p_bt;    /* m    transverse base pitch              */
    double p_t;     /* m    transverse pitch                   */
    double p_x;     /* m    axial pitch; NaN for spur gears    */

    /* The same angles' functions, computed once for both gears. */
    double cos_beta, tan_beta, sin_alpha_n, tan_alpha_n, sin_alpha_t, cos_alpha_t, inv_alpha_t;
} ts_cylindrical_frame;

/* Which names the workings use: "d", or "d_1", or "d_2". */
typedef enum ts_gear_index { TS_GEAR_ALONE, TS_GEAR_1, TS_GEAR_2 } ts_gear_index;

typedef struct ts_cylindrical_gear_input {
    int           z;    /* teeth; negative for an internal gear; 0 is a mistake      */
    double        x;    /* profile shift coefficient, -1000..1000                    */
    double        k;    /* tip alteration coefficient, < 0 when tips are cut, likewise */
    ts_basic_rack rack; /* see ts_basic_rack_fitted                                  */
} ts_cylindrical_gear_input;

typedef struct ts_cylindrical_gear {
    ts_cylindrical_gear_input in;

    double d;        /* m    reference diameter                                             */
    double d_b;      /* m    base diameter                                                  */
    double d_a;      /* m    tip diameter                                                   */
    double d_f;      /* m    root diameter                                                  */
    double s_t;      /* m    transverse tooth thickness at the reference circle             */
    double alpha_at; /* rad  transverse profile angle at the tip; NaN: tip inside the base  */
    double rho_a;    /* m    length of the base tangent up to the tip, signed like d        */
    double s_at;     /* m    transverse tooth thickness at the tip; <= 0: pointed           */
    double s_an;     /* m    the same in the normal section                                 */
    double x_min;    /* 1    least profile shift without undercut; NaN for internal gears   */
    double rho_Ff;   /* m    base tangent up to the root form circle, < 0: undercut;
                             NaN for internal gears, whose root depends on the cutter       */
    double d_Ff;     /* m    root form diameter; NaN where rho_Ff is negative or NaN        */
} ts_cylindrical_gear;

/* Fills m_t and all below it from m_n, alpha_n, beta. */
void ts_cylindrical_frame_solve(ts_cylindrical_frame *frame, ts_workings *workings);

/* The gear of this frame.  `index` chooses the names in the workings only. */
void ts_cylindrical_gear_solve(const ts_cylindrical_frame      *frame,
                               const ts_cylindrical_gear_input *in, ts_gear_index index,
                               ts_cylindrical_gear *gear, ts_workings *workings);

/* Are frame inputs and gear inputs inside the ranges above, and is the rack possible? */
bool ts_cylindrical_frame_sound(const ts_cylindrical_frame *frame);
bool ts_cylindrical_gear_sound(const ts_cylindrical_frame      *frame,
                               const ts_cylindrical_gear_input *in);

/* Transverse profile angle and tooth thickness at any diameter d_y of the gear (signed like d);
 * NaN inside the base circle. */
double ts_gear_profile_angle(const ts_cylindrical_gear *gear, double d_y);
double ts_gear_thickness(const ts_cylindrical_frame *frame, const ts_cylindrical_gear *gear,
                         double d_y);

/* The least number of teeth that a rack cuts without undercut at no profile shift, as the exact
 * (not whole) number. */
double ts_gear_z_min(const ts_basic_rack *rack, double alpha_n, double beta, ts_workings *workings);

#endif
