/* model/scalar_decode.h: which text do the bytes of a YAML scalar stand for?
 *
 * libfyaml has found where the scalar begins and ends and that it is well formed; its own decoding
 * (0.7.12) leaks memory on some quoted texts.
 */
#ifndef TS_MODEL_SCALAR_DECODE_H
#define TS_MODEL_SCALAR_DECODE_H

#include "base/arena.h"
#include "base/text.h"

/* Decodes what stands between the quotes, or a plain scalar (quote 0), by YAML 1.2.2, chapter 7.3:
 * lines are folded, escapes replaced.  False without memory. */
bool ts_scalar_decode(ts_text raw, char quote, ts_arena *arena, ts_text *out);

#endif
