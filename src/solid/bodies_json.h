/* solid/bodies_json.h: the bodies of a drive as numbers, for a page or for another program. */
#ifndef TS_SOLID_BODIES_JSON_H
#define TS_SOLID_BODIES_JSON_H

#include "base/json_writer.h"
#include "model/source.h"
#include "solid/bodies.h"

/* One object by docs/schema/solids.schema.json.  `source` gives the addresses of the parts. */
void ts_solids_write(const ts_solids *solids, const ts_source *source, const char *version,
                     const char *caution, ts_json *json);

#endif
