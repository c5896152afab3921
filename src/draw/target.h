/* draw/target.h: which thing on the picture is a finding about? */
#ifndef TS_DRAW_TARGET_H
#define TS_DRAW_TARGET_H

#include "draw/scene.h"

typedef enum ts_target_kind {
    TS_TARGET_NONE,    /* the drive as a whole, a condition, a limit: no mark on the picture */
    TS_TARGET_SPOOL,   /* index: shaft of the spool  */
    TS_TARGET_TOWER,   /* index: shaft               */
    TS_TARGET_SHAFT,   /* index: shaft               */
    TS_TARGET_PAD,     /* index: pad                 */
    TS_TARGET_KEEP_OUT /* index: of the engine's     */
} ts_target_kind;

typedef struct ts_target {
    ts_target_kind kind;
    uint32_t       index;
} ts_target;

/* The object of a node of the file, or of the nearest node above it that is one. */
ts_target ts_node_target(const ts_scene *scene, ts_node node);
/* "fuel pump", "hp spool", "4 idler 4"; else the address of the node: appended. */
void ts_add_node_name(ts_buffer *out, const ts_scene *scene, ts_node node);
/* The object of the finding's node, or of the nearest node above it that is one. */
ts_target ts_finding_target(const ts_scene *scene, const ts_finding *finding);
bool      ts_target_same(ts_target a, ts_target b);

#endif
