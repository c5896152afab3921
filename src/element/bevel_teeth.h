/* element/bevel_teeth.h: the teeth of a bevel pair without offset, from their mean section outwards
 * and inwards; ISO 23509:2016, method 0 (and method 1 where its offset is 0).
 *
 * Shapes    Members with [2] belong to gear 1 and gear 2; nothing here asks which one is smaller.
 * Units     m, rad.
 * Range     Both members have one pitch cone distance, one face width and generated teeth whose
 *           profile shifts add to zero, as the standard's methods make them.
 */
#ifndef TS_ELEMENT_BEVEL_TEETH_H
#define TS_ELEMENT_BEVEL_TEETH_H

#include "base/workings.h"
#include "element/bevel_pair.h"
#include "element/bevel_profile.h"

/* How the depth of the teeth changes along the face. */
typedef enum ts_bevel_taper {
    TS_BEVEL_TAPER_STANDARD, /* depth in proportion to the cone distance: root lines to the apex  */
    TS_BEVEL_TAPER_UNIFORM,  /* one depth over the whole face                                     */
    TS_BEVEL_TAPER_SLOT,     /* constant slot width (duplex)                                      */
    TS_BEVEL_TAPER_TILTED    /* modified slot width (tilted root line): constant slot width, but
                                no more than 1.3 times the standard taper                        */
} ts_bevel_taper;

typedef struct ts_bevel_teeth_input {
    ts_bevel_taper   taper;
    ts_bevel_profile profile;
    double j_mn; /* m    normal backlash in the mean section, shared equally; >= 0       */
    double r_c0; /* m    mean cutter radius of face milling; NaN: not given.  Spiral teeth
                    need it for the two slot width tapers.                              */
} ts_bevel_teeth_input;

typedef enum ts_bevel_teeth_fault {
    TS_BEVEL_TEETH_FINE,
    TS_BEVEL_TEETH_OUT_OF_RANGE, /* an input is outside what is stated here               */
    TS_BEVEL_TEETH_NO_CUTTER,    /* this taper needs the cutter radius                    */
    TS_BEVEL_TEETH_NO_DEPTH,     /* a height of a tooth is not above 0 at an end          */
    TS_BEVEL_TEETH_NO_ROOT_CONE, /* the root cone has no angle left                       */
    TS_BEVEL_TEETH_NO_THICKNESS  /* tooth or slot has no thickness left at the pitch cone */
} ts_bevel_teeth_fault;

typedef struct ts_bevel_teeth {
    ts_bevel_teeth_input in;

    double R_i;              /* m    inner cone distance                                       */
    double m_mn;             /* m    mean normal module                                        */
    double h_mw, c, h_m;     /* m    working depth, clearance, whole depth in the mean section */
    double Sigma_theta_f;    /* rad  sum of both dedendum angles                               */
    double h_am[2], h_fm[2]; /* m    mean addendum and dedendum                                */
    double theta_a[2];       /* rad  addendum angle                                            */
    double theta_f[2];       /* rad  dedendum angle                                            */
    double delta_a[2];       /* rad  face angle                                                */
    double delta_f[2];       /* rad  root angle                                                */
    double h_ae[2], h_fe[2]; /* m    addendum and dedendum at the outer end ...                */
    double h_ai[2], h_fi[2]; /* m    ... and at the inner end                                  */
    double x_hm[2];          /* 1    profile shift                                             */
    double x_sm[2];          /* 1    thickness modification, backlash taken off                */
    double s_mn[2], s_mt[2]; /* m    mean normal and transverse circular thickness             */
    double s_mnc[2];         /* m    mean normal chordal thickness ...                         */
    double h_amc[2];         /* m    ... and the addendum above its chord                      */
} ts_bevel_teeth;

/* `pair` is solved and its face width above 0.  Unless it returns TS_BEVEL_TEETH_FINE every result
 * is NaN.  |x_hm1| < k_hap, so that both gears have an addendum; factors up to 10. */
ts_bevel_teeth_fault ts_bevel_teeth_solve(const ts_bevel_pair *pair, const ts_bevel_teeth_input *in,
                                          ts_bevel_teeth *teeth, ts_workings *workings);

/* One sentence without a full stop. */
const char *ts_bevel_teeth_fault_says(ts_bevel_teeth_fault fault);

#endif
