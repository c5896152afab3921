/* How is every search of one call done? */
#include "study/arranging.h"

#define ANSWERS_USUAL 5

ts_arrange_wish ts_arranging_wish(const ts_arranging *a)
{
    return (ts_arrange_wish){
        .allocator   = &a->shared,
        .memory_most = a->options->memory,
        .workers     = a->options->workers > 0 ? a->options->workers : 1,
        .answers     = (uint32_t)(a->options->answers > 0 ? a->options->answers : ANSWERS_USUAL),
        .stop        = a->options->stop,
        .context     = a->options->context};
}
