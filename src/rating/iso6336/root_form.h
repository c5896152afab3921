/* rating/iso6336/root_form.h: where is the tooth thinnest against its load?  ISO 6336-3, clause 6.
 *
 * The critical section lies between the points where tangents at 30 degrees (internal gears: 60) to
 * the middle of the tooth touch the fillet that the rack generates, in the virtual spur gear of the
 * normal section.  The load acts at the outer point of single contact, or at the tip.
 *
 * Units     m, rad; E_F, G_F, H_F and rho_fPv in modules.
 * Signs     as in the pair: an internal gear has z, d, d_a < 0.
 */
#ifndef TS_RATING_ROOT_FORM_H
#define TS_RATING_ROOT_FORM_H

#include "base/workings.h"
#include "element/basic_rack.h"

#include <stdbool.h>

typedef enum ts_root_load { TS_ROOT_LOAD_OUTER_SINGLE, TS_ROOT_LOAD_TIP } ts_root_load;

typedef struct ts_root_form_input {
    double        z, x;      /* x_E: the shift that generates the root                         */
    double        d, d_a;    /* m                                                              */
    double        m_n;       /* m                                                              */
    double        alpha_n;   /* rad                                                            */
    double        beta;      /* rad                                                            */
    double        beta_b;    /* rad                                                            */
    double        eps_alpha; /* of the pair; read for TS_ROOT_LOAD_OUTER_SINGLE                 */
    ts_basic_rack rack;      /* that cut the root                                              */
    double        s_pr;      /* m  residual undercut of a protuberance tool, 0: none            */
    double        z_0, x_0;  /* teeth and shift of the pinion cutter of an internal gear; 0: the
                                rack's own fillet is taken                                     */
    ts_root_load load;
    int          gear; /* 0 or 1: the index in the workings                              */
} ts_root_form_input;

typedef struct ts_root_form {
    double z_n, eps_alphan, d_n, p_bn, d_bn, d_an, d_en; /* the virtual spur gear              */
    double alpha_en, gamma_e, alpha_Fen; /* rad  directions of the load                        */
    double rho_fPv, E_F, G_F, H_F;       /* 1    auxiliary values                              */
    double theta;             /* rad  where on the tool's tip round the tangent touches */
    double s_Fn, h_Fe, rho_F; /* m    root chord, bending arm, fillet radius there  */
    double Y_F;               /* 1    form factor without f_eps                     */
    bool   on_fillet;         /* does the tangent touch what the tip round cut?     */
} ts_root_form;

/* False, and NaN in Y_F, when the tangent cannot be found. */
bool ts_root_form_solve(const ts_root_form_input *in, ts_root_form *form, ts_workings *workings);

#endif
