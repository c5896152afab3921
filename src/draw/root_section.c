/* draw/root_section.c: what does the virtual spur gear's tooth look like, and where does it bend?
 */
#include "draw/root_section.h"

#include "element/involute.h"
#include "element/tooth_curve.h"

#include <math.h>

static ts_root_form_input form_input(const ts_cylindrical_pair *pair, int gear, double x_E)
{
    return (ts_root_form_input){
        .z         = gear == 0 ? pair->in.z_1 : pair->in.z_2,
        .x         = x_E,
        .d         = gear == 0 ? pair->d_1 : pair->d_2,
        .d_a       = gear == 0 ? pair->d_a1 : pair->d_a2,
        .m_n       = pair->in.m_n,
        .alpha_n   = pair->in.alpha_n,
        .beta      = pair->in.beta,
        .beta_b    = pair->beta_b,
        .eps_alpha = pair->eps_alpha,
        .rack      = pair->in.rack,
        .load      = TS_ROOT_LOAD_OUTER_SINGLE,
        .gear      = gear,
    };
}

/* The curves of a spur gear in the normal section; its number of teeth need not be whole. */
static ts_tooth_curve virtual_curve(const ts_cylindrical_pair *pair, double x,
                                    const ts_root_form *form)
{
    const ts_cylindrical_frame frame = {
        .m_n = pair->in.m_n, .alpha_n = pair->in.alpha_n, .alpha_t = pair->in.alpha_n};
    const ts_cylindrical_gear one = {
        .in  = {.x = x, .rack = pair->in.rack},
        .d   = form->d_n,
        .d_b = form->d_bn,
        .s_t = pair->in.m_n * (0.5 * M_PI + 2.0 * x * tan(pair->in.alpha_n)),
    };
    return ts_tooth_curve_of(&frame, &one);
}

static void add(ts_root_section *section, ts_outline_point point)
{
    section->points[section->count++] = point;
}

static ts_outline_point on_circle(double r, double angle)
{
    return (ts_outline_point){r * sin(angle), r * cos(angle)};
}

static bool trace(const ts_tooth_curve *curve, ts_root_section *section)
{
    const double           end  = ts_trochoid_end(curve);
    const ts_outline_point foot = ts_trochoid_point(curve, 0.0),
                           last = ts_trochoid_point(curve, end);
    const double r_form         = hypot(last.x, last.y);
    const double half           = M_PI / section->form.z_n;
    section->r_root             = hypot(foot.x, foot.y);
    if (!(last.x > 0.0) || !(section->r_tip > fmax(r_form, curve->r_b)))
        return false;
    if (half > atan2(foot.x, foot.y))
        add(section, on_circle(section->r_root, half));
    for (int i = 0; i <= TS_ROOT_FILLET; i++)
        add(section, ts_trochoid_point(curve, end * i / TS_ROOT_FILLET));
    const double from = sqrt(fmax(0.0, pow(r_form / curve->r_b, 2.0) - 1.0));
    /* A pointed tooth ends where its flanks meet. */
    const double top = fmin(section->r_tip, curve->r_b / cos(ts_inv_inverse(curve->psi_b)));
    const double to  = sqrt(pow(top / curve->r_b, 2.0) - 1.0);
    if (!(top > r_form))
        return false;
    for (int i = 1; i <= TS_ROOT_FLANK; i++)
        add(section, ts_involute_point(curve, from + (to - from) * i / TS_ROOT_FLANK));
    add(section, (ts_outline_point){0.0, top});
    return true;
}

/* The rating holds its formulas to be computed from numbers. */
static bool all_finite(const ts_root_form_input *in)
{
    const double needed[] = {in->x,       in->d,    in->d_a,    in->m_n,
                             in->alpha_n, in->beta, in->beta_b, in->eps_alpha};
    for (size_t i = 0; i < sizeof needed / sizeof *needed; i++)
        if (!isfinite(needed[i]))
            return false;
    return in->z > 0.0 && in->m_n > 0.0;
}

bool ts_root_section_of(const ts_cylindrical_pair *pair, int gear, double x_E,
                        ts_root_section *section)
{
    *section                     = (ts_root_section){.x_E = x_E};
    const ts_root_form_input in  = form_input(pair, gear, x_E);
    const bool               fit = all_finite(&in) && ts_root_form_solve(&in, &section->form, NULL);
    if (!fit || !isfinite(section->form.Y_F))
        return false;
    const ts_root_form *form   = &section->form;
    section->notch             = ts_root_notch_of(form->s_Fn, form->h_Fe, form->rho_F, gear, NULL);
    section->f_eps             = ts_load_share_2019(form->eps_alphan, pair->eps_beta, NULL);
    section->r_tip             = 0.5 * form->d_an;
    section->load              = on_circle(0.5 * form->d_en, form->gamma_e);
    section->load_y            = section->load.y - section->load.x * tan(form->alpha_Fen);
    section->chord_y           = section->load_y - form->h_Fe;
    const ts_tooth_curve curve = virtual_curve(pair, x_E, form);
    return trace(&curve, section);
}
