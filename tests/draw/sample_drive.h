/* A drive put together by hand, so that pictures are tested without the reader and the solvers.
 *
 * All of it is invented: two spools, a box of ten shafts on the arc below the engine, with one step
 * gear and pads on both faces, and a box of three shafts at its right side. */
#ifndef TESTS_DRAW_SAMPLE_DRIVE_H
#define TESTS_DRAW_SAMPLE_DRIVE_H

#include "draw/figure.h"

enum {
    SAMPLE_CRANK,
    SAMPLE_LIGHT_OFF,
    SAMPLE_IDLE,
    SAMPLE_CRUISE,
    SAMPLE_TAKE_OFF,
    SAMPLE_RED_LINE,
    SAMPLE_CONDITIONS
};
enum {
    SAMPLE_FUEL,
    SAMPLE_OIL,
    SAMPLE_HYDRAULIC,
    SAMPLE_GENERATOR,
    SAMPLE_STARTER,
    SAMPLE_ALTERNATOR,
    SAMPLE_BREATHER,
    SAMPLE_STAND_BY,
    SAMPLE_ACCESSORIES
};
/* Two bands and one power in every condition, the contact of two meshes in all, a body gap. */
enum { SAMPLE_JUDGEMENTS = 5 * SAMPLE_CONDITIONS + 1 };
/* Nodes of the judgements. */
enum { SAMPLE_MESH_A = 504, SAMPLE_MESH_B = 506 };

typedef struct sample {
    ts_drive           drive;
    ts_train           train;
    ts_motion          motion;
    ts_power           power;
    ts_finding         findings[8];
    ts_judgement       judgements[SAMPLE_JUDGEMENTS];
    ts_drawing_subject subject;
} sample;

/* NULL without memory.  Everything may be changed before drawing. */
sample *sample_open(ts_arena *arena);

#endif
