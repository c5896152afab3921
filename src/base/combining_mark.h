/* base/combining_mark.h: code points that take no column on a terminal. */
#ifndef TS_BASE_COMBINING_MARK_H
#define TS_BASE_COMBINING_MARK_H

#include <stdbool.h>
#include <stdint.h>

bool ts_combining_mark(uint32_t code_point);

#endif
