/* rating/iso6336/rate_parts.h: the parts of ts_iso6336_rate, each in a file of its own. */
#ifndef TS_RATING_RATE_PARTS_H
#define TS_RATING_RATE_PARTS_H

#include "rating/iso6336/iso6336.h"

/* load_rate.c: force, speed and all factors K. */
void ts_iso6336_rate_load(const ts_iso6336_prepared *p, const ts_iso6336_load *load,
                          ts_iso6336_rating *r, ts_workings *workings);
/* contact_rate.c: stress, limit and safety of both flanks. */
void ts_iso6336_rate_contact(const ts_iso6336_prepared *p, const ts_iso6336_load *load,
                             ts_iso6336_rating *r, ts_workings *workings);
/* root_rate.c: stress, limit and safety of both roots. */
void ts_iso6336_rate_root(const ts_iso6336_prepared *p, const ts_iso6336_load *load,
                          ts_iso6336_rating *r, ts_workings *workings);

#endif
