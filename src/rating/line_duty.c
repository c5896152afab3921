/* rating/line_duty.c: how long does one bearing bear what all conditions ask of it? */
#include "rating/drive_lines_parts.h"

#include "rating/drive_teeth.h"

#include <math.h>

int ts_line_list_duties(const ts_lines_case *c, uint32_t number, int k,
                        ts_bearing_duty duties[TS_CONDITIONS_MOST])
{
    for (uint32_t i = 0; i < c->drive->condition_count; i++) {
        const ts_line_case *one = ts_line_case_at(c, number, i);

        duties[i] = (ts_bearing_duty){.F_r = one->reaction[k].F_r,
                                      .F_a = fabs(one->reaction[k].F[0]),
                                      .n   = fabs(one->omega),
                                      .t   = ts_condition_seconds(&c->drive->conditions[i]),
                                      .nu  = c->lines->nu[i]};
    }
    return (int)c->drive->condition_count;
}

/* Below kappa = 0.1 the standard has no a_ISO; no film makes a life shorter than a tenth of the
 * basic one, the least that its law gives. */
ts_duty_rating ts_line_rate_duty(const ts_bearing *bearing, const ts_bearing_ability *ability,
                                 const ts_bearing_duty *duty, const ts_bearing_want *want,
                                 ts_workings *workings)
{
    ts_duty_rating one = ts_bearing_duty_rate(bearing, ability, duty, want, workings);

    if (isnan(one.L_nmh) && one.kappa < 0.1) {
        one.a_ISO = TS_A_ISO_LEAST;
        one.L_nmh = TS_A_ISO_LEAST * one.L_10h;
    }
    return one;
}

ts_bearing_rating ts_line_add_up(const ts_bearing_duty *duties, const ts_duty_rating *ratings,
                                 int count)
{
    ts_bearing_rating all = {
        .S_0 = INFINITY, .slip = INFINITY, .worst_life = -1, .worst_static = -1, .worst_slip = -1};
    double time = 0.0, basic = 0.0, modified = 0.0, most = 0.0;

    for (int j = 0; j < count; j++) {
        const ts_duty_rating one  = ratings[j];
        const double         harm = duties[j].t / one.L_nmh;

        if (one.S_0 < all.S_0) {
            all.S_0          = one.S_0;
            all.worst_static = j;
        }
        if (duties[j].n > 0.0 && one.P / one.F_rmin < all.slip) {
            all.slip       = one.P / one.F_rmin;
            all.worst_slip = j;
        }
        if (harm > most) {
            most           = harm;
            all.worst_life = j;
        }
        all.n_dm = fmax(all.n_dm, one.n_dm);
        time += duties[j].t;
        basic += duties[j].t / one.L_10h;
        modified += harm;
    }
    all.L_10h = time / basic;
    all.L_nmh = time / modified;
    return all;
}

void ts_line_rate_again(const ts_lines_case *c, const ts_line_bearing *b, uint32_t condition,
                        double n, const ts_line_reaction *load)
{
    const ts_bearing_duty duty = {
        .F_r = load->F_r, .F_a = fabs(load->F[0]), .n = n, .nu = c->lines->nu[condition]};

    (void)ts_line_rate_duty(&b->bearing, &b->ability, &duty, &c->lines->want, c->workings);
}
