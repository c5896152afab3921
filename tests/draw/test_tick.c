/* Which multiples of a step stand on a scale? */
#include "draw/tick.h"

#include "support/test.h"

#include <math.h>
