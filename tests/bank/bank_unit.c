/* bank/bank_unit.c: how do the published cases spell the units of the whitelist? */
#include "bank/bank_run.h"

#include <string.h>

typedef struct spelling {
    const char *printed;
    const char *name; /* in data/unit.tsv */
} spelling;

static const spelling spellings[] = {
    {"-", "1"},
    {"", "1"},
    {"cycles", "1"},
    {"rev", "1"},       /* as a number of load cycles */
    {"1/P_nd", "1"},    /* a length over the normal module                            */
    {"HB", "1"},        /* a Brinell number                                           */
    {"sqrt(psi)", "1"}, /* as printed: the binding turns it into the root of a stress */
    {"uin", "1"},       /* as printed: microinches, which the binding turns into m    */
    {"Pa.s", "1"},      /* and so on: units of no quantity that a drive file has           */
    {"m2/N", "1"},
    {"Mrev", "1"},       /* millions of turns, as the program counts them                    */
    {"mm rev/min", "1"}, /* the trade's speed number                                        */
    {"in/in", "1"},
    {"1e6 psi", "1"},
    {"N/(m s^1/2 K)", "1"},
    {"N/(mm s^1/2 K)", "1"},
    {"see symbol", "1"},
    {"cP", "1"}, /* as printed: the bindings turn these into Pa.s, J/(kg.K) and 1/m */
    {"mPa s", "1"},
    {"J/kg K", "1"},
    {"1/in", "1"},
    {"m/s2", "1"},
    {"1/s", "1"},
    {"in/s2", "1"},
    {"m/N", "1"},
    {"m4", "1"},
    {"in4", "1"},
    {"lbf in3", "1"},
    {"lbf/in3", "1"},
    {"cm3/rev", "1"},
    {"in3/rev", "1"},
    {"(N/m)^-1 cP (m/s)^3", "1"},
    {"(lbf/in)^-1 cP (in/s)^3", "1"},
    {"rev/min", "rpm"},
    {"N m", "N.m"},
    {"N mm", "N.mm"},
    {"N m/rad", "N.m/rad"},
    {"kg m2", "kg.m2"},
    {"lbf in", "lbf.in"},
    {"deg F", "degF"},
    {"l/min", "L/min"},
    {"US gal/min", "gpm"},
};

const ts_unit *ts_bank_unit(const char *printed, ts_kind kind)
{
    const char *name = printed;

    for (size_t i = 0; i < sizeof spellings / sizeof spellings[0]; i++)
        if (strcmp(printed, spellings[i].printed) == 0)
            name = spellings[i].name;
    return ts_unit_named(ts_text_of(name), kind);
}
