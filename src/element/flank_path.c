/* element/flank_path.c: how curved and how fast are the flanks along the path of contact? */
#include "element/flank_path.h"

#include <math.h>
#include <stdbool.h>

#define ISO_20  "ISO/TS 6336-20:2017, parameter on the line of action (from memory)"
#define DERIVED "derived: curvatures of two involutes along their line of action"

static const ts_formula Gamma_A_formula = {
    .symbol  = "Gamma_A",
    .meaning = "parameter of the point where contact begins",
    .unit    = "1",
    .text    = "rho_A1/rho_C1 - 1",
    .source  = ISO_20,
};
static const ts_formula Gamma_B_formula = {
    .symbol  = "Gamma_B",
    .meaning = "parameter of the lowest point of single contact",
    .unit    = "1",
    .text    = "rho_B1/rho_C1 - 1",
    .source  = ISO_20,
};
static const ts_formula Gamma_D_formula = {
    .symbol  = "Gamma_D",
    .meaning = "parameter of the highest point of single contact",
    .unit    = "1",
    .text    = "rho_D1/rho_C1 - 1",
    .source  = ISO_20,
};
static const ts_formula Gamma_E_formula = {
    .symbol  = "Gamma_E",
    .meaning = "parameter of the point where contact ends",
    .unit    = "1",
    .text    = "rho_a1/rho_C1 - 1",
    .source  = ISO_20,
};
static const ts_formula rho_y1_formula = {
    .symbol  = "rho_y1",
    .meaning = "curvature of gear 1 at the point of contact",
    .unit    = "m",
    .text    = "rho_C1*(1 + Gamma)",
    .source  = DERIVED,
};
static const ts_formula rho_y2_formula = {
    .symbol  = "rho_y2",
    .meaning = "curvature of gear 2 at the point of contact",
    .unit    = "m",
    .text    = "rho_T - rho_y1",
    .source  = DERIVED,
};
static const ts_formula rho_n_formula = {
    .symbol  = "rho_n",
    .meaning = "reduced radius of curvature, normal to the flanks",
    .unit    = "m",
    .text    = "1/((1/rho_y1 + 1/rho_y2)*cos(beta_b))",
    .source  = DERIVED,
};

/* How many points each zone has; with C they are TS_FLANK_POINTS. */
enum { ENTERING = 9, ALONE = 11, LEAVING = 9 };

/* A path with a middle zone in which the ends of single contact have changed places (eps_alpha
 * above 2) is laid in the same three pieces. */
static void set_ends(const ts_cylindrical_pair *pair, ts_flank_path *path, ts_workings *workings)
{
    const double rho_A1 = pair->rho_A1, rho_B1 = pair->rho_B1, rho_C1 = pair->rho_C1;
    const double rho_D1 = pair->rho_D1, rho_a1 = pair->rho_E1;

    path->Gamma_A = TS_STEP(workings, Gamma_A_formula, rho_A1 / rho_C1 - 1.0, rho_A1, rho_C1);
    path->Gamma_B = TS_STEP(workings, Gamma_B_formula, rho_B1 / rho_C1 - 1.0, rho_B1, rho_C1);
    path->Gamma_D = TS_STEP(workings, Gamma_D_formula, rho_D1 / rho_C1 - 1.0, rho_D1, rho_C1);
    path->Gamma_E = TS_STEP(workings, Gamma_E_formula, rho_a1 / rho_C1 - 1.0, rho_a1, rho_C1);
    path->u       = pair->u;
}

/* The path as it is laid: where the next point goes, and C until it has its place. */
typedef struct layer {
    ts_flank_path *path;
    int            next;
    double         pitch; /* Gamma of C, or of the end of the path that is nearest to it */
    ts_path_zone   pitch_zone;
    bool           pitch_laid;
} layer;

static void lay_point(layer *l, double Gamma, ts_path_zone zone)
{
    l->path->Gamma[l->next] = Gamma;
    l->path->zone[l->next]  = zone;
    l->next++;
}

static void lay_pitch_point(layer *l)
{
    l->path->C    = l->next;
    l->pitch_laid = true;
    lay_point(l, l->pitch, l->pitch_zone);
}

/* Returns the index of the first point; the last is the one laid last. */
static int lay_piece(layer *l, int count, double from, double to, ts_path_zone zone)
{
    int first = -1;

    for (int i = 0; i < count; i++) {
        const double part  = (double)i / (count - 1);
        const double Gamma = i == count - 1 ? to : from + part * (to - from);

        if (zone == l->pitch_zone && !l->pitch_laid && i > 0 &&
            (Gamma > l->pitch || i == count - 1))
            lay_pitch_point(l);
        if (first < 0)
            first = l->next;
        lay_point(l, Gamma, zone);
    }
    return first;
}

static void lay_points(ts_flank_path *path)
{
    const double low   = fmin(path->Gamma_B, path->Gamma_D);
    const double high  = fmax(path->Gamma_B, path->Gamma_D);
    const double pitch = fmin(fmax(0.0, path->Gamma_A), path->Gamma_E);
    layer        l     = {.path = path, .pitch = pitch, .pitch_zone = TS_PATH_ALONE};

    if (pitch < low)
        l.pitch_zone = TS_PATH_ENTERING;
    if (pitch > high)
        l.pitch_zone = TS_PATH_LEAVING;
    path->A = lay_piece(&l, ENTERING, path->Gamma_A, low, TS_PATH_ENTERING);
    path->B = lay_piece(&l, ALONE, low, high, TS_PATH_ALONE);
    path->D = l.next - 1;
    lay_piece(&l, LEAVING, high, path->Gamma_E, TS_PATH_LEAVING);
    path->E = l.next - 1;
}

/* Trapezia: half of each gap belongs to the point on either side of it. */
static void measure_lengths(ts_flank_path *path)
{
    for (int i = 0; i < TS_FLANK_POINTS; i++) {
        const double before = i > 0 ? path->Gamma[i] - path->Gamma[i - 1] : 0.0;
        const double after  = i < TS_FLANK_POINTS - 1 ? path->Gamma[i + 1] - path->Gamma[i] : 0.0;

        path->length[i] = (before + after) / 2.0;
    }
}

static void curve_points(const ts_cylindrical_pair *pair, ts_flank_path *path)
{
    const double rho_C1 = pair->rho_C1, rho_T = pair->rho_T;
    const double normal = cos(pair->beta_b);

    for (int i = 0; i < TS_FLANK_POINTS; i++) {
        const double rho_y1 = rho_C1 * (1.0 + path->Gamma[i]);
        const double rho_y2 = rho_T - rho_y1;

        path->rho_1[i]  = rho_y1;
        path->rho_2[i]  = rho_y2;
        path->rho_n[i]  = 1.0 / ((1.0 / rho_y1 + 1.0 / rho_y2) * normal);
        path->root_1[i] = sqrt(rho_y1);
        path->root_2[i] = sqrt(rho_y2 / path->u);
    }
}

static const char *fault_of(const ts_cylindrical_pair *pair)
{
    const double rho_a2 = pair->rho_T - pair->rho_A1;

    if (pair->u < 0.0 && pair->u >= -1.0)
        return "a ring that is larger than its pinion";
    /* Written so that a NaN is a fault. */
    if (!(pair->eps_alpha >= 1.0))
        return "a transverse contact ratio of at least 1";
    if (!(pair->rho_A1 > 0.0 && rho_a2 / pair->u > 0.0 && pair->rho_E1 > 0.0 &&
          (pair->rho_T - pair->rho_E1) / pair->u > 0.0))
        return "a path of contact between the base circles";
    return NULL;
}

static void void_path(ts_flank_path *path)
{
    path->Gamma_A = path->Gamma_B = path->Gamma_D = path->Gamma_E = path->u = NAN;
    path->A = path->B = path->C = path->D = path->E = 0;
    for (int i = 0; i < TS_FLANK_POINTS; i++) {
        path->Gamma[i] = path->rho_1[i] = path->rho_2[i] = path->rho_n[i] = NAN;
        path->root_1[i] = path->root_2[i] = path->length[i] = NAN;
        path->zone[i]                                       = TS_PATH_ALONE;
    }
}

void ts_flank_path_lay(const ts_cylindrical_pair *pair, ts_flank_path *path, ts_workings *workings)
{
    path->missing = fault_of(pair);
    if (path->missing != NULL) {
        void_path(path);
        return;
    }
    set_ends(pair, path, workings);
    lay_points(path);
    curve_points(pair, path);
    measure_lengths(path);
}

void ts_flank_point_note(const ts_cylindrical_pair *pair, const ts_flank_path *path, int point,
                         ts_workings *workings)
{
    const double rho_C1 = pair->rho_C1, rho_T = pair->rho_T, beta_b = pair->beta_b;
    const double Gamma = path->Gamma[point];

    ts_workings_row(workings, "Gamma", Gamma, "1", ts_flank_point_says(path, point));
    const double rho_y1 = TS_STEP(workings, rho_y1_formula, path->rho_1[point], rho_C1, Gamma);
    const double rho_y2 = TS_STEP(workings, rho_y2_formula, path->rho_2[point], rho_T, rho_y1);
    TS_STEP(workings, rho_n_formula, path->rho_n[point], rho_y1, rho_y2, beta_b);
}

double ts_flank_path_mean(const ts_flank_path *path, const double value[TS_FLANK_POINTS])
{
    double sum = 0.0;

    for (int i = 0; i < TS_FLANK_POINTS; i++)
        sum += path->length[i] * value[i];
    return sum / (path->Gamma_E - path->Gamma_A);
}

#define PEAK_SOURCE "derived: parabola through the hottest of 30 points and both its neighbours"
static const ts_formula peak_formula = {
    .symbol  = "theta_flmax",
    .meaning = "greatest flash temperature, between the points of the path",
    .unit    = TS_UNIT_DIFFERENCE,
    .text    = "theta_fl - ((theta_flnext - theta_fl)/h_next*h_last + (theta_fl - "
               "theta_fllast)/h_last*h_next)^2/(4*(h_last + h_next)*((theta_flnext - "
               "theta_fl)/h_next - (theta_fl - theta_fllast)/h_last))",
    .source  = PEAK_SOURCE,
};
static const ts_formula edge_formula = {
    .symbol  = "theta_flmax",
    .meaning = "greatest flash temperature, where one zone of the path ends",
    .unit    = TS_UNIT_DIFFERENCE,
    .text    = "theta_fl",
    .source  = "derived: the load jumps there, and nothing lies between",
};

double ts_flank_path_peak(const ts_flank_path *path, const double theta[TS_FLANK_POINTS], int hot,
                          ts_workings *workings)
{
    const double theta_fl = theta[hot];

    if (hot == 0 || hot == TS_FLANK_POINTS - 1 || path->zone[hot - 1] != path->zone[hot] ||
        path->zone[hot + 1] != path->zone[hot])
        return TS_STEP(workings, edge_formula, theta_fl, theta_fl);
    const double h_last       = path->Gamma[hot] - path->Gamma[hot - 1];
    const double h_next       = path->Gamma[hot + 1] - path->Gamma[hot];
    const double theta_fllast = theta[hot - 1], theta_flnext = theta[hot + 1];
    const double up = (theta_fl - theta_fllast) / h_last, down = (theta_flnext - theta_fl) / h_next;
    const double lean = down * h_last + up * h_next;

    if (!(h_last > 0.0 && h_next > 0.0 && down < up))
        return TS_STEP(workings, edge_formula, theta_fl, theta_fl);
    ts_workings_row(workings, "h_last", h_last, "1", "from the point before, in Gamma");
    ts_workings_row(workings, "h_next", h_next, "1", "to the point behind, in Gamma");
    ts_workings_row(workings, "theta_fllast", theta_fllast, TS_UNIT_DIFFERENCE,
                    "at the point before");
    ts_workings_row(workings, "theta_flnext", theta_flnext, TS_UNIT_DIFFERENCE,
                    "at the point behind");
    return TS_STEP(workings, peak_formula,
                   theta_fl - lean * lean / (4.0 * (h_last + h_next) * (down - up)), theta_fl,
                   theta_flnext, h_next, h_last, theta_fllast);
}

const char *ts_flank_point_says(const ts_flank_path *path, int point)
{
    if (point == path->A)
        return "at A, where the tip of gear 2 meets the root of gear 1";
    if (point == path->E)
        return "at E, where the tip of gear 1 leaves the root of gear 2";
    if (point == path->B && path->Gamma_B <= path->Gamma_D)
        return "at B, from where one pair of teeth carries alone";
    if (point == path->D && path->Gamma_B <= path->Gamma_D)
        return "at D, up to where one pair of teeth carries alone";
    if (path->zone[point] == TS_PATH_ALONE && path->Gamma_B > path->Gamma_D)
        return "in the middle of the path of contact";
    if (path->zone[point] == TS_PATH_ALONE)
        return "between B and D, where one pair of teeth carries alone";
    return path->zone[point] == TS_PATH_ENTERING
               ? "between A and B, at the tip of gear 2 and the root of gear 1"
               : "between D and E, at the tip of gear 1 and the root of gear 2";
}
