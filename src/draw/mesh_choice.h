/* draw/mesh_choice.h: which mesh is drawn, and in which condition? */
#ifndef TS_DRAW_MESH_CHOICE_H
#define TS_DRAW_MESH_CHOICE_H

#include "draw/scene.h"

/* The cylindrical mesh of the options; or, when they name none, the one that governs: the least
 * reserve of teeth that were judged, in the condition of the options or in any; or, where no teeth
 * were judged, the highest line load F_t/b.  TS_NOWHERE: the drive has none.
 *
 * Sets scene->condition to that of the options, to the one that governs, or to the one in which the
 * mesh carries most. */
uint32_t ts_choose_mesh(ts_scene *scene);
/* "with the least reserve of its teeth in any condition"; "" when the options name the mesh. */
const char *ts_choice_says(const ts_scene *scene);

/* Is it about the strength of teeth?  Safeties have S_H, S_F and the like for their symbols. */
bool ts_judgement_of_teeth(const ts_judgement *judgement);

/* "4-3": the numbers of its two shafts, or their names where they have no numbers: appended. */
void ts_add_mesh_name(ts_buffer *out, const ts_scene *scene, uint32_t mesh);
/* "idler 4, step": appended. */
void ts_add_gear_name(ts_buffer *out, const ts_scene *scene, uint32_t gear);

/* N/m of the mesh in a condition; NaN when force or face width is not known. */
double ts_mesh_line_load(const ts_scene *scene, uint32_t mesh, uint32_t condition);

/* What a gear is filled with: the tint of its sense (+1 ccw, -1 cw, 0 not known), or, on grounds
 * where that is paper, one tint for all, so that metal and space differ. */
ts_colour ts_tooth_tint(const ts_canvas *canvas, int sense);

/* What stands on the sheet when there is no such mesh. */
void ts_write_no_mesh(ts_scene *scene);

#endif
