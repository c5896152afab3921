/* rating/agma2101/agma908_root.h: where is a tooth weakest at its root?  AGMA 908-B89, clause 5.
 *
 * A parabola with its top where the load line crosses the middle of the tooth is inscribed into the
 * virtual spur gear of the normal section; it touches the fillet, which the tool's tip round
 * generates, at the critical section.
 *
 * Units     Lengths in normal modules, angles in rad.
 * Range     External gears cut by a rack (hob, grinding rack).  Roots cut by a pinion cutter are
 *           left out.
 */
#ifndef TS_RATING_AGMA908_ROOT_H
#define TS_RATING_AGMA908_ROOT_H

#include "base/workings.h"
#include "element/basic_rack.h"

#include <stdbool.h>

/* The tool that cut the root, in normal modules.  The datum line is where its teeth and spaces are
 * equally wide. */
typedef struct ts_agma_tool {
    double h_a0;     /* addendum from the datum line to the tip                                */
    double rho_a0;   /* radius of the tip's round                                              */
    double delta_a0; /* protuberance beyond the finished flank (what stock leaves of it); 0: none */
} ts_agma_tool;

/* The tool that belongs to a basic rack. */
ts_agma_tool ts_agma_tool_of_rack(const ts_basic_rack *rack);

/* AGMA 908's own tables thin every tooth by 0.024 of the normal module. */
#define TS_AGMA_THINNING 0.024

typedef struct ts_agma_root_input {
    double       z;        /* teeth of the real gear, > 0                                       */
    double       x;        /* profile shift coefficient of the full tooth                       */
    double       delta_sn; /* thinning for backlash, in normal modules: the tool goes deeper    */
    double       h_a;      /* addendum, (d_a - d)/2                                             */
    double       alpha_n, beta;
    ts_agma_tool tool;
    double       rho_W; /* spur gears: base tangent up to the load at the highest point of single
                           contact; NaN: loaded at the tip                                      */
    int gear;           /* 0 or 1: the index in the workings                                    */
} ts_agma_root_input;

typedef struct ts_agma_root {
    double z_n, r_n, r_bn; /*      the virtual spur gear: teeth, reference and base radius       */
    double t_W;            /* 1    tangent of the profile angle where the load acts              */
    double alpha_nL;       /* rad  load angle: of the load to the tooth's cross direction        */
    double r_nL;           /*      radius of the parabola's top                                  */
    double x_g;            /* 1    shift of the tool, thinning included                          */
    double h_S, l_S;       /*      centre of the tip round: below the generating pitch circle, and
                                   beside the middle of the tooth, along the tool                */
    double theta, nu;      /* rad  where the parabola touches: on the tool, on the gear          */
    double s_F, h_F;       /*      thickness of the critical section, height of the load above it */
    double rho_F;          /*      least radius of curvature of the fillet                       */
    bool   above_fillet;   /*      the parabola touches past the end of the tip round             */
} ts_agma_root;

/* False, and NaN in s_F and h_F, when there is no such section: the load acts below the base
 * circle, or the tooth is cut through. */
bool ts_agma_root_solve(const ts_agma_root_input *in, ts_agma_root *root, ts_workings *workings);

#endif
