/* rating/tooth_capacity.c: which torque do the teeth of a mesh bear once, and which for a
 * short while? */
#include "rating/tooth_capacity.h"

#include "rating/drive_teeth_parts.h"
#include "rating/iso6336/root_strength.h"

#include <math.h>

#define TRIALS 40

static const double pi = 3.14159265358979323846;

#define HELD             "common practice, no source: the torque at which the least safety against it is 1"
#define AT_DRIVEN(power) "T_1*" power "*z_2/z_1*(1 - loss)"
static const ts_formula formulas[2][2] = {
    {{"T_flank", "torque at the driven gear at which a flank yields", "N.m", AT_DRIVEN("S_H1^2"),
      HELD},
     {"T_flank", "torque at the driven gear at which a flank yields", "N.m", AT_DRIVEN("S_H2^2"),
      HELD}},
    {{"T_root", "torque at the driven gear at which a tooth breaks", "N.m", AT_DRIVEN("S_F1"),
      HELD},
     {"T_root", "torque at the driven gear at which a tooth breaks", "N.m", AT_DRIVEN("S_F2"),
      HELD}},
};

static const ts_formula f_sh_formula = {
    "f_sh", "misalignment by the deflection of shafts and bearings at that torque", "m",
    "f_c/T_c*T_1",
    "derived: deflections grow with the torque; from the condition that loads the mesh most"};

/* ---- one rating ------------------------------------------------------------------------------ */

/* Safeties of both gears; NaN when it cannot be rated. */
typedef struct safeties {
    double S[2][2]; /* [stress][gear] */
} safeties;

static const safeties none = {{{(double)NAN, (double)NAN}, {(double)NAN, (double)NAN}}};

static safeties rate_bevels(const ts_teeth *teeth, uint32_t m, const ts_iso6336_load *load,
                            ts_workings *workings)
{
    const ts_bevels_mesh  *mesh = &teeth->bevels.meshes[teeth->bevels.number[m]];
    const ts_iso10300_load one  = {.T_1     = load->T_1,
                                   .omega_1 = load->omega_1,
                                   .K_A     = load->K_A,
                                   .N_L     = {load->N_L[0], load->N_L[1]},
                                   .Y_M     = {1.0, 1.0},
                                   .S_Hmin  = 1.0,
                                   .S_Fmin  = 1.0};
    ts_iso10300_rating     r;

    ts_workings_assumed(workings, "Y_M1", 1.0, "1", "loaded on one flank");
    ts_workings_assumed(workings, "Y_M2", 1.0, "1", "loaded on one flank");
    if (!ts_iso10300_rate(&mesh->prepared, &one, &r, workings))
        return none;
    return (safeties){{{r.gear[0].S_H, r.gear[1].S_H}, {r.gear[0].S_F, r.gear[1].S_F}}};
}

static safeties rate(const ts_teeth *teeth, uint32_t m, const ts_iso6336_load *load,
                     ts_workings *workings)
{
    ts_iso6336_rating r;

    if (teeth->motion->train->meshes[m].kind == TS_MESH_BEVEL)
        return rate_bevels(teeth, m, load, workings);
    if (!ts_iso6336_rate(&teeth->prepared[m], load, &r, workings))
        return none;
    return (safeties){{{r.gear[0].S_H, r.gear[1].S_H}, {r.gear[0].S_F, r.gear[1].S_F}}};
}

/* By which factor may the torque grow until that stress is what the weaker gear bears? */
static double growth(const safeties *s, ts_rated_stress stress, int *gear)
{
    const double *S = s->S[stress];

    *gear = S[1] < S[0] ? 1 : 0;
    if (isnan(S[0]) || isnan(S[1]))
        return (double)NAN;
    return stress == TS_RATED_CONTACT ? S[*gear] * S[*gear] : S[*gear];
}

/* ---- the load -------------------------------------------------------------------------------- */

/* Does the gear pass on to a mesh further out what another one brings it? */
static bool passes_on(const ts_teeth *teeth, uint32_t gear)
{
    const ts_teeth_scratch *scratch = teeth->scratch;
    bool                    driven = false, driver = false;

    for (uint32_t i = scratch->first[gear]; i < scratch->first[gear + 1]; i++) {
        const ts_mesh *mesh = &teeth->motion->train->meshes[scratch->mesh[i]];

        driven = driven || mesh->driven == gear;
        driver = driver || mesh->driver == gear;
    }
    return driven && driver;
}

/* The condition that loads the mesh most, where its own torque bends the shafts and not that of a
 * neighbour; NULL: it is never loaded, shafts are stiff, or K_Hbeta is given. */
static const ts_mesh_case *most_loaded(const ts_teeth *teeth, uint32_t m)
{
    const ts_mesh_case *found = NULL;
    double              most  = 0.0;

    for (uint32_t i = 0; i < teeth->condition_count; i++) {
        const ts_mesh_case *one = &teeth->cases[(size_t)i * teeth->motion->train->mesh_count + m];
        if (one->load.face != TS_FACE_LOAD_PARTS || !one->loaded || !(one->load.T_1 > most))
            continue;
        most  = one->load.T_1;
        found = one;
    }
    return found;
}

static double askew_at(const ts_mesh_case *worst, double T_1)
{
    return worst == NULL ? 0.0 : worst->load.f_sh / worst->load.T_1 * T_1;
}

static void note_askew(const ts_teeth *teeth, uint32_t m, const ts_iso6336_load *load,
                       ts_workings *workings)
{
    const ts_mesh_case *worst = most_loaded(teeth, m);

    if (worst == NULL) {
        ts_workings_assumed(workings, "f_sh", 0.0, "m", "nothing is known to lay its shafts askew");
        return;
    }
    const size_t     at  = (size_t)(worst - teeth->cases) / teeth->motion->train->mesh_count;
    const ts_subject own = {teeth->strength[m].subject, (int32_t)at};
    const double     f_c = worst->load.f_sh, T_c = worst->load.T_1, T_1 = load->T_1;
    ts_workings_borrow(workings, "f_c", f_c, own, "f_sh");
    ts_workings_borrow(workings, "T_c", T_c, own, "T_1");
    (void)TS_STEP(workings, f_sh_formula, load->f_sh, f_c, T_c, T_1);
}

/* One load cycle at rest. */
static ts_iso6336_load load_once(const ts_teeth *teeth, uint32_t m, ts_workings *workings)
{
    static const char *const names[2] = {"R_1", "R_2"};
    const ts_train          *train    = teeth->motion->train;
    const ts_mesh           *mesh     = &train->meshes[m];
    ts_iso6336_load          load     = teeth->cases[m].load;

    load.K_A     = 1.0;
    load.omega_1 = 0.0;
    load.S_Hmin = load.S_Fmin = 1.0;
    ts_workings_assumed(workings, "K_A", 1.0, "1", "a neck breaks at the peak itself");
    ts_workings_assumed(workings, "omega_1", 0.0, "rad/s", "a seizure brings it to rest");
    ts_workings_assumed(workings, "N_L1", 1.0, "1", "it is met once");
    ts_workings_assumed(workings, "N_L2", 1.0, "1", "it is met once");
    ts_workings_assumed(workings, "S_Hmin", 1.0, "1", "the torque at which it gives way");
    ts_workings_assumed(workings, "S_Fmin", 1.0, "1", "the torque at which it gives way");
    for (int g = 0; g < 2; g++) {
        const bool back = mesh->kind == TS_MESH_CYLINDRICAL &&
                          passes_on(teeth, g == 0 ? mesh->driver : mesh->driven);

        load.N_L[g] = 1.0;
        load.R[g]   = back ? ts_stress_ratio(1.0, 1.0, NULL) : 0.0;
        ts_workings_assumed(workings, names[g], load.R[g], "1",
                            back ? "it passes the torque on: its teeth are bent to both sides alike"
                                 : "its teeth are loaded on one flank");
    }
    return load;
}

/* ---- the torque ------------------------------------------------------------------------------ */

/* N.m of the driver where the growth is 1; by secants on two logarithmic scales, for the growth is
 * nearly T_cap/T.  NaN when it cannot be rated. */
static double search(const ts_teeth *teeth, uint32_t m, ts_iso6336_load *load,
                     ts_rated_stress stress)
{
    const ts_mesh_case *worst = most_loaded(teeth, m);
    double              x = 0.0, y, x_1 = 0.0, y_1 = 0.0;
    int                 gear;

    for (int i = 0; i < TRIALS; i++) {
        load->T_1        = exp(x);
        load->f_sh       = askew_at(worst, load->T_1);
        const safeties s = rate(teeth, m, load, NULL);

        y = log(growth(&s, stress, &gear));
        if (!isfinite(y))
            return (double)NAN;
        if (fabs(y) < 1e-13)
            break;
        const double steep = i == 0 ? -1.0 : (y - y_1) / (x - x_1);

        x_1 = x;
        y_1 = y;
        x -= y / (steep < -0.2 ? steep : -1.0);
    }
    return load->T_1;
}

/* The torque where it was found, taken on by the last growth, which is 1 but for a rounding. */
static double note_torque(const ts_teeth *teeth, uint32_t m, const ts_iso6336_load *load,
                          ts_rated_stress stress, int *gear, ts_workings *workings)
{
    static const char *const S_names[2][2] = {{"S_H1", "S_H2"}, {"S_F1", "S_F2"}};
    const ts_train          *train         = teeth->motion->train;
    const ts_mesh           *mesh          = &train->meshes[m];
    const double             z_1           = (double)train->gears[mesh->driver].teeth.value;
    const double             z_2           = (double)train->gears[mesh->driven].teeth.value;
    const double             loss          = ts_measure_known(mesh->loss) ? mesh->loss.value : 0.0;
    const double             T_1           = load->T_1;

    ts_workings_row(workings, "T_1", T_1, "N.m",
                    "found by trial: the torque of the driver at which the safety is 1");
    if (load->face == TS_FACE_LOAD_PARTS && mesh->kind == TS_MESH_CYLINDRICAL && workings != NULL)
        note_askew(teeth, m, load, workings);
    const safeties   s    = rate(teeth, m, load, workings);
    const double     more = growth(&s, stress, gear);
    const ts_subject own  = {mesh->node, TS_EVERY_CONDITION};
    ts_workings_borrow(workings, "z_1", z_1, own, "z_1");
    ts_workings_borrow(workings, "z_2", z_2, own, "z_2");
    ts_workings_borrow(workings, "loss", loss, own, "loss");
    const ts_input inputs[] = {{"T_1", T_1},
                               {S_names[stress][*gear], s.S[stress][*gear]},
                               {"z_1", z_1},
                               {"z_2", z_2},
                               {"loss", loss}};
    return ts_step_list(workings, &formulas[stress][*gear], T_1 * more * z_2 / z_1 * (1.0 - loss),
                        inputs, 5);
}

ts_tooth_capacity ts_tooth_capacity_of(const ts_teeth *teeth, uint32_t m, ts_workings *workings)
{
    const ts_mesh_strength *strength = &teeth->strength[m];
    ts_tooth_capacity       out      = {.T = {(double)NAN, (double)NAN}};

    out.missing = strength->missing != NULL ? strength->missing : strength->fault;
    if (out.missing != NULL)
        return out;
    ts_workings_about(workings, strength->subject, TS_EVERY_CONDITION);
    const ts_iso6336_load once = load_once(teeth, m, workings);

    for (int s = TS_RATED_CONTACT; s <= TS_RATED_BENDING; s++) {
        out.load[s] = once;
        if (isnan(search(teeth, m, &out.load[s], (ts_rated_stress)s))) {
            out.missing = "a rating of its teeth at rest";
            return out;
        }
        out.T[s] = note_torque(teeth, m, &out.load[s], (ts_rated_stress)s, &out.gear[s], workings);
    }
    return out;
}

/* The dynamic factor falls with the load, so that three steps come from above to within 1 %; the
 * least of them is told. */
static double wear_down(const ts_teeth *teeth, uint32_t m, ts_iso6336_load *load, double T,
                        ts_rated_stress stress)
{
    const double T_1 = load->T_1, f_sh = load->f_sh;
    double       left = 1.0, least = 1.0;

    for (int i = 0; i < 3; i++) {
        int gear;

        load->T_1          = T_1 * left;
        load->f_sh         = f_sh * left;
        const safeties now = rate(teeth, m, load, NULL);

        left *= growth(&now, stress, &gear);
        least = left < least || isnan(left) ? left : least;
    }
    return T * least;
}

void ts_tooth_capacity_for(const ts_teeth *teeth, uint32_t m, const ts_tooth_capacity *once,
                           double seconds, double omega, double T[2])
{
    const ts_train *train = teeth->motion->train;
    const ts_mesh  *mesh  = &train->meshes[m];
    const double    z_1   = (double)train->gears[mesh->driver].teeth.value;
    const double    z_2   = (double)train->gears[mesh->driven].teeth.value;
    const double    turns = omega * seconds / (2.0 * pi);

    for (int s = TS_RATED_CONTACT; s <= TS_RATED_BENDING; s++) {
        ts_iso6336_load load = once->load[s];

        T[s] = (double)NAN;
        if (once->missing != NULL)
            continue;
        load.omega_1 = omega * z_2 / z_1;
        load.N_L[0]  = fmax(turns * z_2 / z_1, 1.0);
        load.N_L[1]  = fmax(turns, 1.0);
        T[s]         = wear_down(teeth, m, &load, once->T[s], (ts_rated_stress)s);
    }
}
