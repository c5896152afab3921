/* element/flank_path.h: how curved and how fast are the flanks at every point of the path of
 * contact?
 *
 * Shapes    TS_FLANK_POINTS points from A to E.  B and D stand twice, for the load jumps there:
 *           once as the end of double contact, once as the end of single contact.
 * Units     m.  Gamma = rho_1/rho_C1 - 1 is 0 at the pitch point C, as in ISO/TS 6336-20.
 * Signs     As in the pair: rho_2 < 0 for an internal gear.
 * Speeds    A surface moves with omega_1*rho_1 or omega_1*rho_2/u along the path, so that their
 *           roots are sqrt(omega_1)*root_1 and sqrt(omega_1)*root_2.
 */
#ifndef TS_ELEMENT_FLANK_PATH_H
#define TS_ELEMENT_FLANK_PATH_H

#include "base/workings.h"
#include "element/cylindrical_pair.h"

enum { TS_FLANK_POINTS = 30 };

typedef enum ts_path_zone {
    TS_PATH_ENTERING, /* A to B: the pair of teeth before still carries */
    TS_PATH_ALONE,    /* B to D                                          */
    TS_PATH_LEAVING   /* D to E                                          */
} ts_path_zone;

typedef struct ts_flank_path {
    const char *missing; /* NULL, or why there is no path; then all numbers are NaN */
    double      Gamma_A, Gamma_B, Gamma_D, Gamma_E;
    double      u;
    /* Their indices: B and D are the ends of the middle zone, whichever comes first; C is the
     * pitch point, or the end of a path that does not reach it. */
    int          A, B, C, D, E;
    double       Gamma[TS_FLANK_POINTS];
    double       rho_1[TS_FLANK_POINTS], rho_2[TS_FLANK_POINTS]; /* transverse           */
    double       rho_n[TS_FLANK_POINTS]; /* reduced, in the section normal to the flanks */
    double       root_1[TS_FLANK_POINTS], root_2[TS_FLANK_POINTS]; /* sqrt(m)          */
    double       length[TS_FLANK_POINTS]; /* of the path that a point stands for, in Gamma */
    ts_path_zone zone[TS_FLANK_POINTS];
} ts_flank_path;

/* Lays the points.  A path that is shorter than the base pitch or reaches past a base circle is
 * none. */
void ts_flank_path_lay(const ts_cylindrical_pair *pair, ts_flank_path *path, ts_workings *workings);

/* Notes Gamma and the radii of one point. */
void ts_flank_point_note(const ts_cylindrical_pair *pair, const ts_flank_path *path, int point,
                         ts_workings *workings);

/* The mean over the path of a value that is known at its points. */
double ts_flank_path_mean(const ts_flank_path *path, const double value[TS_FLANK_POINTS]);

/* Greatest of a value between the points: the vertex of the parabola through the greatest and both
 * its neighbours, where they lie in one zone and bend down; else the greatest itself.  `hot` is the
 * index of the greatest; the workings ask the caller for theta_fl. */
double ts_flank_path_peak(const ts_flank_path *path, const double theta[TS_FLANK_POINTS], int hot,
                          ts_workings *workings);

/* The end of the path, or the place between, that the point is nearest to: "at B, where gear 1
 * begins to carry alone". */
const char *ts_flank_point_says(const ts_flank_path *path, int point);

#endif
