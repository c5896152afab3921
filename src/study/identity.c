/* Which program is this, and what does it always say? */
#include "towershaft/study.h"

#ifndef TS_VERSION
#error "the build says which version this is"
#endif

const char *ts_version(void)
{
    return TS_VERSION;
}

const char *ts_caution(void)
{
    return "Preliminary design aid. Not a substitute for the engine's type design, its "
           "certification "
           "basis (14 CFR Part 33, CS-E and their guidance) or a qualified engineer's approval; "
           "results are as good as the loads, materials and assumptions in the file.";
}
