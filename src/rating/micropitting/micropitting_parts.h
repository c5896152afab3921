/* rating/micropitting/micropitting_parts.h: what the files of this folder share. */
#ifndef TS_RATING_MICROPITTING_PARTS_H
#define TS_RATING_MICROPITTING_PARTS_H

#include "rating/micropitting/micropitting.h"

/* All of ts_micropitting_prepare but the permissible film, which stays NaN. */
bool ts_micropitting_prepare_mesh(const ts_cylindrical_pair *pair, const ts_micropitting_mesh *mesh,
                                  ts_micropitting_prepared *prepared, ts_workings *workings);

#endif
