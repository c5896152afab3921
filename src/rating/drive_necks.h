/* rating/drive_necks.h: between which torques does every neck of a drive break?
 *
 * A neck whose diameter is told is designed: its band follows from metal, size and temperature by
 * element/shear_neck.h, guaranteed at the corners of all its limits.  Else the file states the band
 * and nothing else is known of it.
 *
 * Workings  About the record of the neck: T_break_least, T_break_most.
 * Samples   ts_drive_neck_draw; the same torques for any number of workers.
 * Sources   docs/method/necks.md
 */
#ifndef TS_RATING_DRIVE_NECKS_H
#define TS_RATING_DRIVE_NECKS_H

#include "base/arena.h"
#include "element/shear_neck.h"
#include "model/train.h"

typedef struct ts_drive_neck {
    const ts_neck *neck;
    const char    *name;     /* of the accessory, or of the tower shaft                        */
    uint32_t       pad;      /* TS_NOWHERE: it is in a tower shaft                             */
    uint32_t       shaft;    /* on which it sits                                               */
    bool           designed; /* the band is computed                                           */
    ts_neck_limits band;     /* N.m in force; NaN: not known                                   */
    ts_neck_limits stated;   /* N.m, what the file asks for; NaN: nothing                      */
    const char    *missing;  /* NULL, or what the band lacks: a noun                           */
    ts_shear_neck  made;     /* where it is designed                                           */
    double         K_ts;     /* notch factor; 1 where no notch is told                         */
} ts_drive_neck;

typedef struct ts_necks {
    ts_drive_neck *items;
    uint32_t       count;
    uint32_t      *of_pad;   /* [pad]: which of the items; TS_NOWHERE: none                    */
    uint32_t      *of_shaft; /* [shaft]: of a tower shaft                                      */
} ts_necks;

ts_status ts_necks_prepare(const ts_drive *drive, const ts_train *train, ts_arena *arena,
                           ts_necks *out);
/* Allocates nothing. */
void ts_necks_solve(const ts_drive *drive, ts_necks *necks, ts_workings *workings);

/* The break torques of samples first, first + 1, ... of a designed neck; NaN for another one. */
void ts_drive_neck_draw(const ts_drive_neck *neck, uint64_t seed, uint64_t first, size_t count,
                        double *T);

#endif
