/* mass/mass_note.c: of which metal is a part, and from where does a number of it come?
 */
#include "mass/mass_parts.h"

#include <math.h>
#include <string.h>

void ts_mass_borrow(const ts_mass_job *job, ts_node about, ts_input what, ts_node lender,
                    const char *theirs)
{
    if (job->workings == NULL || (about == lender && strcmp(what.name, theirs) == 0))
        return;
    ts_workings_borrow(job->workings, what.name, what.value,
                       (ts_subject){lender, TS_EVERY_CONDITION}, theirs);
}

ts_metal ts_mass_metal(const char *const *keys, ts_pick pick)
{
    ts_metal metal = {.rho = (double)NAN, .source = ""};

    if (ts_pick_known(pick))
        (void)ts_metal_named(ts_text_of(keys[pick.value]), &metal);
    return metal;
}
