/* rating/drive_bevels.h: what the rating of the bevels of a drive holds, beside what it has in
 * common with cylindrical meshes (rating/drive_teeth.h).
 *
 * Methods   ISO 10300, method B1; ANSI/AGMA 2003 beside it, where the file has its geometry
 *           factors: it sets no margin.
 * Workings  Of ISO 10300 about the tooth number of the driven gear, of AGMA 2003 about that of the
 *           driver, so that equal symbols do not hide each other.
 */
#ifndef TS_RATING_DRIVE_BEVELS_H
#define TS_RATING_DRIVE_BEVELS_H

#include "model/train.h"
#include "rating/agma2003/agma2003.h"
#include "rating/iso10300/iso10300.h"
#include "rating/iso6336/root_strength.h"

typedef struct ts_bevels_case {
    ts_iso10300_load   load;
    ts_iso10300_rating rating;
    double             second_Y_M[2]; /* of AGMA 2003: 0.7 where both flanks are ever loaded */
    ts_agma2003_rating second;        /* read it where the mesh has `second_asked` */
} ts_bevels_case;

typedef struct ts_bevels_mesh {
    ts_iso10300_prepared prepared;
    ts_mean_stress_ratio mean[2];
    double               K_A;
    bool                 second_asked;   /* has the file a geometry factor of AGMA 2003?     */
    const char          *second_missing; /* NULL, or why nothing at all can be rated by it   */
    ts_agma2003_pair     second;
    ts_subject           second_subject; /* of its workings, in every condition              */
} ts_bevels_mesh;

typedef struct ts_bevels {
    uint32_t        count;
    uint32_t       *number; /* [mesh of the train]: which of the bevels; TS_NOWHERE: none of them */
    ts_bevels_mesh *meshes; /* [bevel]                                                            */
    ts_bevels_case *cases;  /* [condition * count + bevel]                                        */
} ts_bevels;

/* Memory for the bevels of one drive. */
ts_status ts_bevels_prepare(const ts_train *train, size_t conditions, ts_arena *arena,
                            ts_bevels *out);

#endif
