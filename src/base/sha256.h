/* base/sha256.h: the fingerprint of a file (FIPS 180-4). */
#ifndef TS_BASE_SHA256_H
#define TS_BASE_SHA256_H

#include "base/text.h"

/* 64 lower-case hexadecimal digits and a zero. */
void ts_sha256(ts_text bytes, char out[65]);

#endif
