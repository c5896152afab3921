/* pump/drive_pumps_parts.h: the steps of ts_oil_units_solve. */
#ifndef TS_PUMP_DRIVE_PUMPS_PARTS_H
#define TS_PUMP_DRIVE_PUMPS_PARTS_H

#include "pump/drive_pumps.h"

typedef struct ts_units_desk {
    const ts_oil_units *units;
    ts_workings        *workings;
} ts_units_desk;

/* What the file lacks to know its oil; notes what it has of it. */
const char *ts_units_oil(const ts_units_desk *desk, ts_node about, ts_film_law *law);
/* Lends the oil of `lender` to `about`. */
void ts_units_lend_oil(const ts_units_desk *desk, ts_node about, ts_node lender,
                       const ts_film_law *law);
/* K of the feed, or of what comes back; about the current subject. */
double ts_units_feed(const ts_units_desk *desk, uint32_t condition);
double ts_units_return(const ts_units_desk *desk, uint32_t condition);
/* rad/s of the pad; about the current subject, which is in that condition. */
double ts_units_speed(const ts_units_desk *desk, uint32_t pad, uint32_t condition);

void ts_pack_solve(const ts_units_desk *desk, ts_pack *pack);
void ts_pack_attitudes_solve(ts_pack *pack, const ts_drive *drive);
void ts_breather_solve(const ts_units_desk *desk, ts_breather *breather);

#endif
