/* model/field_rate_choice.c: which words do the fields of a rate file choose from? */
#include "model/field_rate_parts.h"

const char *const ts_rate_answers[]   = {"yes", "no", NULL};
const char *const ts_rate_hardening[] = {
    "case-hardened",   "induction-hardened", "nitrided",   "through-nitrided",
    "nitrocarburised", "through-hardened",   "normalised", NULL};
