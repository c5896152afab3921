/* rating/drive_splines.h: how hard is the spline of every pad worked, in every condition?
 *
 * Size      From the public standard number that the file gives: `AS972`, `B92.1 24T 16/32`,
 *           `ISO 4156 24z 1.5m`; other numbers are not known here, and said so.
 * Stress    After Dudley, a flexible spline: shear under the roots and of the teeth, pressure on
 *           the flanks, bursting of the sleeve; in every condition, and for the overload.
 * Wear      Way of rubbing by the tilt, and the depth that it wears by Archard: an indication that
 *           ranks designs.
 * Made up   Length, tilt, bore and sleeve where the file says nothing: docs/method/splines.md.
 * Workings  About the accessory's `spline`; of the overload about its record.
 */
#ifndef TS_RATING_DRIVE_SPLINES_H
#define TS_RATING_DRIVE_SPLINES_H

#include "base/arena.h"
#include "element/involute_spline.h"
#include "power/power.h"
#include "rating/spline/spline_stress.h"

typedef enum ts_spline_stress {
    TS_SPLINE_ROOT_SHEAR,  /* S_s  under the roots of the shaft */
    TS_SPLINE_TOOTH_SHEAR, /* S_sp at the pitch line            */
    TS_SPLINE_PRESSURE,    /* S_c  on the flanks                */
    TS_SPLINE_BURSTING,    /* S_t  of the sleeve                */
    TS_SPLINE_STRESSES
} ts_spline_stress;
const char *ts_spline_stress_symbol(ts_spline_stress stress);
/* "the shear under its roots" */
const char *ts_spline_stress_says(ts_spline_stress stress);
/* Pa, of surface-hardened steel: Machinery's Handbook, involute splines (from memory). */
double ts_spline_stress_permitted(ts_spline_stress stress);

typedef struct ts_spline_case {
    double T;                     /* N.m, its amount                              */
    double n;                     /* rad/s                                        */
    double K_a, K_w;              /* application, wear                            */
    double S[TS_SPLINE_STRESSES]; /* Pa                                           */
    double h_w; /* m    worn depth over the condition; NaN: how long is not told */
    bool   known;
} ts_spline_case;

typedef struct ts_drive_spline {
    uint32_t        pad;
    ts_node         node;    /* of its workings                                  */
    ts_node         over;    /* ... for the overload                             */
    const char     *number;  /* as the file has it                               */
    const char     *missing; /* NULL, or what is not known: a noun               */
    bool            sized;   /* what it bears once follows, whatever is missing for its life */
    bool            made;    /* its length is made up                            */
    ts_spline       shape;
    double          L_e;    /* m    engaged length                              */
    double          slope;  /* 1    tilt of the two shafts                      */
    double          D_oi;   /* m    outside of the sleeve                       */
    double          t_w;    /* m    its wall                                    */
    double          slide;  /* m    way of rubbing in a turn                    */
    double          cycles; /* 1    of torque: starts of the engine             */
    double          turns;  /* 1    over the life; NaN: not told                */
    double          K_a, K_m, K_f, K_w;
    ts_spline_case  overload;                 /* known: there is one                              */
    double          h_w;                      /* m    worn depth over the life; NaN: not known    */
    double          most[TS_SPLINE_STRESSES]; /* Pa  the greatest of all          */
    int32_t         at[TS_SPLINE_STRESSES];   /* TS_EVERY_CONDITION: the overload */
    ts_spline_case *cases;                    /* [condition]                                      */
} ts_drive_spline;

typedef struct ts_splines {
    const ts_power  *power;
    ts_drive_spline *items;
    uint32_t         count;
} ts_splines;

ts_status ts_splines_prepare(const ts_drive *drive, const ts_power *power, ts_arena *arena,
                             ts_splines *out);
/* Everything behind a solved power.  Allocates nothing. */
void ts_splines_solve(const ts_drive *drive, ts_splines *splines, ts_workings *workings);

/* What its formulas ask, with torque, speed and factors of `one`. */
ts_spline_load   ts_spline_load_of(const ts_drive_spline *item, const ts_spline_case *one);
ts_spline_sleeve ts_spline_sleeve_of(const ts_drive_spline *item, const ts_spline_case *one);

/* Its shape and what is made up of it, borrowed for workings about another place. */
void ts_spline_note_shape(const ts_drive_spline *item, ts_workings *workings);

/* m, to be engaged so that its greatest stress of that kind comes down to what is permitted, the
 * misalignment factor of that length included; NaN: no length does that.  Silent. */
double ts_spline_length_for(const ts_drive_spline *item, const ts_spline_case *one,
                            ts_spline_stress stress);
/* m, outside of the sleeve, the same for its bursting. */
double ts_spline_sleeve_for(const ts_drive_spline *item, const ts_spline_case *one);
/* That which brings its greatest stress of that kind. */
const ts_spline_case *ts_spline_worst(const ts_drive_spline *item, ts_spline_stress stress);

/* Teeth and pitch (diametral in 1/m, or module in m) of a public standard number; false: unknown.
 */
typedef struct ts_spline_number {
    double N, P_d, m; /* P_d or m is 0 */
} ts_spline_number;
bool ts_spline_number_read(const char *text, ts_spline_number *out);

#endif
