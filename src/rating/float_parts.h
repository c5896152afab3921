/* rating/float_parts.h: the steps of ts_floats_solve.  For src/rating alone. */
#ifndef TS_RATING_FLOAT_PARTS_H
#define TS_RATING_FLOAT_PARTS_H

#include "rating/drive_float.h"

#define TS_FLOAT_STEP(job, formula, result, ...)                                                   \
    TS_STEP((job)->workings, formula, result, __VA_ARGS__)

typedef struct ts_float_job {
    const ts_drive       *drive;
    const ts_floats      *floats;
    const ts_take_off    *take_off;
    const ts_mesh        *mesh;
    const ts_mesh_motion *turn;
    ts_drive_float       *item;
    ts_workings          *workings;
    bool                  played; /* is the backlash known, and its tolerance? */
    double                body;   /* +1: the bevel lies rearward of the radial shaft, -1: forward */
    double         F_a, F_r, T_1; /* N, N, N.m of bevel 1, the greatest of all conditions      */
    const ts_line *stand_in;      /* line whose shaft and bearings stand for a stub's; NULL    */
    const ts_line *inner;         /* line of the gear on the radial shaft; NULL                */
} ts_float_job;

void ts_float_note_loads(ts_float_job *job);
/* Notes of the inputs, and the bounds of the closing by growth: float_growth.c */
void ts_float_grow(ts_float_job *job, const ts_float_option *option);
void ts_float_fixed(ts_float_job *job, ts_float_option *option);
void ts_float_stub(ts_float_job *job, ts_float_option *option);
void ts_float_spur(ts_float_job *job, ts_float_option *option);

/* Backlash, contact and limits of a bevel that moves by s (both ends) and r: float_bevel.c */
void ts_float_bevel(ts_float_job *job, ts_float_option *option, const double s[2], double r);

/* kg, of the shaft and the bearings of the line that stands in for the bevel's own: float_mass.c */
double ts_float_shaft_mass(ts_float_job *job);
double ts_float_bearing_mass(ts_float_job *job);
/* kg, of a ring. */
double ts_float_ring(ts_float_job *job, const ts_formula *formula, double d_o, double d_h,
                     double L);

#endif
