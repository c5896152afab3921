/* support/hand_train.h: a drive put together in the test itself, without a file or a reader.
 *
 * One box a spool.  Everything has a node of its own.  Values are in SI and as seen from behind.
 * A hand_train is large: keep it static or take it from the heap.
 */
#ifndef TS_SUPPORT_HAND_TRAIN_H
#define TS_SUPPORT_HAND_TRAIN_H

#include "model/drive.h"
#include "model/train.h"

#define HAND_SHAFTS     72
#define HAND_GEARS      (3 * HAND_SHAFTS)
#define HAND_CONDITIONS 8
#define HAND_SPOOLS     2

typedef struct hand_train {
    ts_drive       drive;
    ts_train       train;
    ts_condition   conditions[HAND_CONDITIONS];
    ts_measure     speeds[HAND_CONDITIONS][HAND_SPOOLS];
    ts_spool       spools[HAND_SPOOLS];
    ts_spool_drive drives[HAND_SPOOLS];
    ts_bevel_gears bevels[2 * HAND_SPOOLS];
    size_t         bevel_count;
    ts_accessory   accessories[2 * HAND_SHAFTS];
    ts_measure     power[2 * HAND_SHAFTS][HAND_CONDITIONS];
    ts_measure     driving[2 * HAND_SHAFTS][HAND_CONDITIONS];
    char           names[2 * HAND_SHAFTS][24];
    ts_shaft       shafts[HAND_SHAFTS];
    ts_box_shaft   records[HAND_SHAFTS];
    ts_gear        gears[HAND_GEARS];
    ts_mesh        meshes[HAND_SHAFTS];
    ts_pad         pads[2 * HAND_SHAFTS];
    uint32_t       main_gear[HAND_SHAFTS];   /* [shaft]                                          */
    uint32_t       drives_with[HAND_SHAFTS]; /* [shaft] the gear that drives what comes next   */
    ts_node        last_node;
} hand_train;

typedef struct hand_bevels {
    int          teeth[2];
    double       spiral;      /* rad                                   */
    double       shaft_angle; /* rad; 0: a right angle                 */
    ts_hand      hand;
    ts_face_side side;
    double       loss;
} hand_bevels;

/* What all gears of a box share; a test may change it before it adds a box. */
typedef struct hand_teeth {
    double module, pressure_angle, helix_angle, loss;
    int    input_hand; /* +1 right, -1 left; without meaning when helix_angle is 0 */
} hand_teeth;

void     hand_open(hand_train *h, size_t conditions);
uint32_t hand_spool(hand_train *h, const char *name, ts_turn turns, double speed);
void     hand_set_speed(hand_train *h, uint32_t spool_shaft, size_t condition, double speed);
uint32_t hand_tower(hand_train *h, uint32_t spool_shaft, const hand_bevels *bevels, double clock);
/* `teeth` of the input's own gear; the arc has `radius` and the input stands at `clock`. */
uint32_t hand_input(hand_train *h, uint32_t tower, const hand_bevels *bevels, double radius,
                    int teeth);
void     hand_box_teeth(hand_train *h, uint32_t input, const hand_teeth *teeth);
/* A shaft driven by the last step of `driver`, or by its gear. */
uint32_t hand_shaft(hand_train *h, uint32_t driver, int teeth, ts_way way);
void     hand_shaft_toward(hand_train *h, uint32_t shaft, double toward);
void     hand_step(hand_train *h, uint32_t shaft, int teeth, double module);
void     hand_shift(hand_train *h, uint32_t shaft, double x);
/* Returns the pad; its accessory asks for nothing until told so. */
uint32_t hand_accessory(hand_train *h, uint32_t shaft, ts_face_side face);
void     hand_cover(hand_train *h, uint32_t shaft, ts_face_side face);
void     hand_absorbs(hand_train *h, uint32_t pad, size_t condition, double power);
void     hand_drives(hand_train *h, uint32_t pad, size_t condition, double torque);
void     hand_clutch(hand_train *h, uint32_t pad);

/* A usual small drive: spool "hp", bevels 43/46 and 37/41 at 6:00, input of 52 teeth on an arc of
 * 330 mm, module 2 mm.  Returns the box input. */
uint32_t hand_usual(hand_train *h, size_t conditions);

#endif
