/* base/assert.c: what happens when the program has caught itself in a mistake? */
#include "base/assert.h"

#include <stdio.h>
#include <stdlib.h>

_Noreturn void ts_assert_failed(const char *file, int line, const char *condition)
{
    fprintf(stderr, "%s:%d: this should always hold: %s\n", file, line, condition);
    abort();
}
