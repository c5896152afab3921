/* search/drive_step.h: which step shafts may a box have, by its drive file? */
#ifndef TS_SEARCH_DRIVE_STEP_H
#define TS_SEARCH_DRIVE_STEP_H

#include "model/drive.h"
#include "search/arrange_problem.h"

#include "base/arena.h"

enum { TS_STEP_MODULES = 24 }; /* most modules of second gears of one box */

/* What is to be filled in for one box.  Further modules are put behind those that there are. */
typedef struct ts_step_wish {
    const ts_drive       *drive;
    const ts_box         *box;
    const ts_box_freedom *freedom; /* NULL: nothing was said */
    const uint32_t       *idlers;  /* tooth numbers of idlers */
    size_t                idler_count;
    double               *m_n, *m_t; /* [module] */
    size_t               *module_count;
} ts_step_wish;

/* What `arrange` allows in the box, else the step shafts that it has.  NULL without memory. */
const ts_arrange_step *ts_drive_steps(const ts_step_wish *wish, ts_arena *arena, size_t *count);

#endif
