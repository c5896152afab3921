/* solid/glb.h: the bodies of a drive as one binary file of glTF 2.0 (ISO/IEC 12113:2022).
 *
 * Metres, y up, z towards the viewer who stands behind the engine: the frame of the engine is that
 * of the format.  A node a part, named "fuel pump: gear"; parts of one shape share one mesh.  Teeth
 * are the traced involutes.
 */
#ifndef TS_SOLID_GLB_H
#define TS_SOLID_GLB_H

#include "base/buffer.h"
#include "solid/bodies.h"

#define TS_GLB_CHORD_ERROR 2e-5 /* m, fine enough to be looked at */

/* Appends the whole file.  `generator` says by whom.  TS_OK or TS_NO_MEMORY. */
ts_status ts_glb_write(const ts_solids *solids, const char *generator, const char *caution,
                       ts_arena *arena, ts_buffer *out);

#endif
