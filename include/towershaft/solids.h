/* towershaft/solids.h: the parts of a drive as bodies in space: gears with their teeth, shafts,
 * radial shafts, casings, bodies of accessories.
 *
 * Metres in the frame of the engine: x to the right and y up seen from behind, from the engine
 * axis; z rearward.  Shapes are those that the statement of mass weighs (docs/method/solids.md).
 */
#ifndef TOWERSHAFT_SOLIDS_H
#define TOWERSHAFT_SOLIDS_H

#include "towershaft/study.h"

/* The bodies as numbers: JSON by docs/schema/solids.schema.json. */
TS_API ts_status ts_study_write_solids(ts_study *study, const ts_sink *sink);

/* The bodies as triangles: a binary file of glTF 2.0 (ISO/IEC 12113:2022). */
TS_API ts_status ts_study_write_glb(ts_study *study, const ts_sink *sink);

/* Both: TS_NOT_UNDERSTOOD when the study holds no solved drive. */

#endif
