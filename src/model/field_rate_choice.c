/* model/field_rate_choice.c: which words do the fields of a rate file choose from? */
#include "model/field_rate_film.h"
#include "model/field_rate_parts.h"

const char *const ts_rate_answers[]   = {"yes", "no", NULL};
const char *const ts_rate_hardening[] = {
    "case-hardened",   "induction-hardened", "nitrided",   "through-nitrided",
    "nitrocarburised", "through-hardened",   "normalised", NULL};

/* In the order of ts_lubricant, with TS_LUBRICANT_COUNT names. */
const char *const ts_rate_oils[] = {"mineral oil",
                                    "polyalphaolefin",
                                    "polyglycol that water does not dissolve",
                                    "polyglycol that water dissolves",
                                    "traction fluid",
                                    "phosphate ester",
                                    "polyol ester",
                                    NULL};

const char *const ts_rate_lubrications[] = {"jets", "dip", "submerged", NULL};

const char *const ts_rate_drivers[] = {"gear 1", "gear 2", NULL};

/* In the order of ts_flank_structure. */
const char *const ts_rate_structures[] = {"through-hardened",
                                          "case-hardened, less than 10 % austenite",
                                          "case-hardened, 10 % to 20 % austenite",
                                          "case-hardened, 20 % to 30 % austenite",
                                          "nitrided",
                                          "phosphated",
                                          "copper-plated",
                                          "austenitic stainless",
                                          NULL};
