/* element/pair_flaw.c: what keeps two cylindrical gears from running together? */
#include "element/pair_flaw.h"

#include "element/undercut_reach.h"

#include <math.h>

/* Does contact with the mate begin where the gear (0 or 1) has an involute?  Internal gears have no
 * root form here. */
static bool has_flank(const ts_cylindrical_pair *pair, int gear)
{
    const double rho   = gear == 0 ? pair->rho_Ff1 : pair->rho_Ff2;
    const double clear = gear == 0 ? pair->clear_Ff1 : pair->clear_Ff2;

    if (rho < 0.0)
        return ts_undercut_room(pair, gear, NULL) >= 0.0;
    return isnan(clear) || clear >= 0.0;
}

unsigned ts_pair_flaws(const ts_cylindrical_pair *pair, const ts_pair_bounds *bounds)
{
    const double s_an_least = bounds->s_an_least * pair->in.m_n;
    unsigned     flaws      = 0;

    if (!(pair->s_an1 >= s_an_least))
        flaws |= TS_FLAW_TIP_1;
    if (!(pair->s_an2 >= s_an_least))
        flaws |= TS_FLAW_TIP_2;
    if (!has_flank(pair, 0))
        flaws |= TS_FLAW_ROOT_1;
    if (!has_flank(pair, 1))
        flaws |= TS_FLAW_ROOT_2;
    if (!(pair->c_1 > 0.0 && pair->c_2 > 0.0))
        flaws |= TS_FLAW_TOUCH;
    if (!(pair->eps_alpha >= bounds->eps_alpha_least))
        flaws |= TS_FLAW_LETS_GO;
    return flaws;
}

unsigned ts_pair_flaws_of(const ts_cylindrical_pair_input *in, const ts_pair_bounds *bounds)
{
    ts_cylindrical_pair pair;
    const ts_pair_fault fault = ts_cylindrical_pair_solve(in, &pair, NULL);

    if (fault != TS_PAIR_FINE && fault != TS_PAIR_POINTED)
        return TS_PAIR_FLAWS_ALL;
    return ts_pair_flaws(&pair, bounds);
}

/* The involute function of the working angle must be positive. */
double ts_shift_sum_bound(const ts_cylindrical_pair_input *in)
{
    ts_cylindrical_frame frame = {.m_n = in->m_n, .alpha_n = in->alpha_n, .beta = in->beta};

    ts_cylindrical_frame_solve(&frame, NULL);
    return -frame.inv_alpha_t * (in->z_1 + in->z_2) / (2.0 * frame.tan_alpha_n);
}
