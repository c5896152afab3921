/* check/finding_order.h: which finding does a reader meet first, and how is it known again? */
#ifndef TS_CHECK_FINDING_ORDER_H
#define TS_CHECK_FINDING_ORDER_H

#include "base/buffer.h"
#include "check/finding.h"
#include "model/drive.h"
#include "model/source.h"

#include <stddef.h>

/* Worst first: open refuse, not computable, open warn, waived, open note; then by place in the
 * file, rule and condition.  Takes no memory. */
void ts_findings_sort(ts_finding *findings, size_t count, const ts_source *source);

/* The first 16 hexadecimal digits of the SHA-256 of rule, address and condition name, one a line.
 * Lines that move, and other findings, do not change it.  Returns false when `scratch` fails. */
bool ts_finding_sign(ts_finding *finding, const ts_source *source, const ts_drive *drive,
                     ts_buffer *scratch);

#endif
