/* search/arranged_face.h: which faces of an arrangement does the rating of the whole drive ask to
 * be wider?
 *
 * The search rates each mesh by itself; in the drive, losses and what two meshes wear off one flank
 * come on top.  The lightest arrangement needs a step or two more here and there, which is found by
 * adding it where a mesh does not hold; tooth_width.h is for the least mass of faces altogether.
 */
#ifndef TS_SEARCH_ARRANGED_FACE_H
#define TS_SEARCH_ARRANGED_FACE_H

#include "rating/drive_teeth.h"
#include "search/drive_problem.h"

/* The drive that an arrangement became, solved and rated. */
typedef struct ts_arranged_drive {
    const ts_drive *drive;
    const ts_train *train;
    const ts_teeth *teeth;
} ts_arranged_drive;

/* One step more for both gears of every mesh that does not hold; how many steps. */
size_t ts_arranged_widen(const ts_drive_problem *problem, const ts_arranged_drive *read,
                         ts_arrangement *found);

#endif
