/* rating/mesh_law.c: what does every load of a mesh wear off its teeth? */
#include "rating/mesh_law.h"

#include "rating/drive_teeth_parts.h"

#include <math.h>
#include <string.h>

static const double pi = 3.14159265358979323846;

/* ---- the table ------------------------------------------------------------------------------- */

enum { CONTACT, BENDING, REVERSED, KINDS, PLACES = TS_LAW_PLACES, POINTS = 28 };
_Static_assert(PLACES == 2 * KINDS, "of two gears");

#define W_LEAST      2e3   /* N/m */
#define W_MOST       2.5e6 /* N/m, far beyond what any steel bears */
#define FACE_MODULES 8.0

static double w_at(int point)
{
    return W_LEAST * pow(W_MOST / W_LEAST, (double)point / (POINTS - 1));
}

size_t ts_mesh_law_size(size_t condition_count)
{
    return condition_count * PLACES * POINTS;
}

static float *row_of(const ts_mesh_law *law, size_t condition, int place)
{
    return law->ln_damage + (condition * PLACES + (size_t)place) * POINTS;
}

/* ---- the rig --------------------------------------------------------------------------------- */

struct ts_mesh_rig {
    const ts_drive *drive;
    ts_drive        own;   /* the same with one box, of two shafts and no pads */
    ts_spool_drive  taken; /* ... which is this one */
    ts_box_shaft    outer;
    ts_train        train;
    ts_motion       motion;
    ts_power        power;
    ts_teeth        teeth;
    ts_diagnostics *list; /* in an arena of its own, for several rigs work at one time */
    ts_arena       *list_arena;
    uint32_t        mesh;
    double          seconds[]; /* of each condition */
};

static const ts_pad_end no_pad = {.use = TS_PAD_NONE, .accessory = -1};

/* A shaft with one gear and nothing else; what it does not say itself comes from the box. */
static ts_box_shaft bare_shaft(const ts_box_shaft *like)
{
    ts_box_shaft out = *like;

    out.name = (ts_word){.text = NULL};
    out.from = out.turns = (ts_pick){.standing = TS_ABSENT};
    out.toward           = (ts_measure){(double)NAN, 0, TS_ABSENT};
    out.rim = out.web = (ts_measure){(double)NAN, 0, TS_ABSENT};
    out.shift         = (ts_measure){0.0, 0, TS_ASSUMED};
    out.support       = (ts_pick){TS_STRADDLED, 0, TS_ASSUMED};
    out.front = out.rear = no_pad;
    out.steps            = NULL;
    out.branch           = NULL;
    out.step_count = out.branch_count = 0;
    return out;
}

static void reduce(ts_mesh_rig *rig, const ts_drive *drive, size_t tapped)
{
    rig->drive                         = drive;
    rig->own                           = *drive;
    rig->taken                         = drive->drive[tapped];
    rig->own.drive                     = &rig->taken;
    rig->own.drive_count               = 1;
    rig->taken.box.input               = bare_shaft(&rig->taken.box.input);
    rig->outer                         = rig->taken.box.input;
    rig->taken.box.clockwise           = &rig->outer;
    rig->taken.box.clockwise_count     = 1;
    rig->taken.box.anticlockwise_count = 0;
    for (size_t c = 0; c < drive->condition_count; c++)
        rig->seconds[c] = ts_condition_seconds(&drive->conditions[c]);
}

static bool find_mesh(ts_mesh_rig *rig)
{
    for (uint32_t m = 0; m < rig->train.mesh_count; m++) {
        rig->mesh = m;
        if (rig->train.meshes[m].kind == TS_MESH_CYLINDRICAL)
            return true;
    }
    return false;
}

static ts_status build(ts_mesh_rig *rig, ts_arena *arena, const ts_allocator *allocator)
{
    rig->list_arena = ts_arena_open(allocator);
    rig->list =
        rig->list_arena != NULL ? ts_diagnostics_open(rig->list_arena, "", (ts_text){"", 0}) : NULL;
    if (rig->list == NULL)
        return TS_NO_MEMORY;
    ts_status status = ts_train_build(&rig->own, arena, rig->list, &rig->train);
    if (status == TS_OK)
        status = ts_motion_prepare(&rig->own, &rig->train, arena, &rig->motion);
    if (status == TS_OK)
        status = ts_power_prepare(&rig->own, &rig->motion, arena, &rig->power);
    if (status == TS_OK)
        status = ts_teeth_prepare(&rig->own, &rig->power, arena, &rig->teeth);
    if (status == TS_OK && !find_mesh(rig))
        status = TS_NOT_UNDERSTOOD;
    return status;
}

ts_status ts_mesh_rig_open(const ts_drive *drive, size_t tapped, ts_arena *arena,
                           const ts_allocator *allocator, ts_mesh_rig **out)
{
    const size_t size = sizeof(ts_mesh_rig) + drive->condition_count * sizeof(double);
    ts_mesh_rig *rig  = ts_arena_take(arena, 1, size);

    *out = NULL;
    if (rig == NULL)
        return TS_NO_MEMORY;
    reduce(rig, drive, tapped);
    const ts_status status = build(rig, arena, allocator);
    if (status == TS_OK)
        *out = rig;
    else
        ts_mesh_rig_close(rig);
    return status;
}

void ts_mesh_rig_close(ts_mesh_rig *rig)
{
    if (rig != NULL)
        ts_arena_close(rig->list_arena);
}

/* ---- one pair -------------------------------------------------------------------------------- */

static void set_gear(ts_gear *gear, int z, double m_n)
{
    gear->teeth = (ts_tally){z, gear->teeth.node, TS_GIVEN};
    gear->m_n   = (ts_measure){m_n, gear->m_n.node, TS_GIVEN};
    gear->face  = (ts_measure){FACE_MODULES * m_n, gear->face.node, TS_GIVEN};
}

/* Geometry and strength of the pair; returns why it will not do, or NULL. */
static const char *prepare_pair(ts_mesh_rig *rig, const ts_law_pair *pair)
{
    const ts_mesh        *mesh  = &rig->train.meshes[rig->mesh];
    const ts_teeth_case   c     = {&rig->own, &rig->train, &rig->teeth, NULL};
    const ts_mesh_motion *turn  = &rig->motion.meshes[rig->mesh];
    const ts_measure      limit = rig->drive->limits.contact_ratio;

    set_gear(&rig->train.gears[mesh->driver], pair->z_1, pair->m_n);
    set_gear(&rig->train.gears[mesh->driven], pair->z_2, pair->m_n);
    if (ts_motion_solve(&rig->own, &rig->motion, rig->list, NULL) != TS_OK)
        return "its ratio is out of range";
    if (!turn->solved || turn->fault != NULL)
        return turn->fault != NULL ? turn->fault : "the gears cannot mesh";
    if (turn->pair.rho_Ff1 < 0.0 || turn->pair.rho_Ff2 < 0.0)
        return "its teeth are undercut";
    if (turn->pair.clear_Ff1 < 0.0 || turn->pair.clear_Ff2 < 0.0)
        return "a tip meets the fillet of the mate";
    if (ts_measure_known(limit) && turn->pair.eps_alpha < limit.value)
        return "its contact ratio is too small";
    rig->teeth.S_Hmin = rig->drive->limits.contact_safety.value;
    rig->teeth.S_Fmin = rig->drive->limits.bending_safety.value;
    ts_teeth_prepare_mesh(&c, rig->mesh);
    const ts_mesh_strength *strength = &rig->teeth.strength[rig->mesh];
    return strength->missing != NULL ? strength->missing : strength->fault;
}

/* ---- one condition --------------------------------------------------------------------------- */

static float ln_damage_of(const ts_life_curve *curve, double sigma, double S, double cycles)
{
    const double bears = ts_life_curve_cycles(curve, S * sigma);

    if (isnan(bears) || !(bears > 0.0))
        return INFINITY;
    return isinf(bears) ? -INFINITY : (float)log(cycles / bears);
}

/* The load of one point; R is that of both gears. */
static ts_iso6336_load load_at(const ts_mesh_rig *rig, const ts_law_pair *pair, size_t condition,
                               double w, double R)
{
    const ts_cylindrical_pair *geometry = &rig->motion.meshes[rig->mesh].pair;
    ts_iso6336_load            load     = rig->teeth.cases[rig->mesh].load;
    const double               omega    = pair->omega_1[condition];
    const double               turns    = omega / (2.0 * pi) * rig->seconds[condition];

    load.omega_1 = omega;
    load.T_1     = w * rig->teeth.prepared[rig->mesh].b * 0.5 * geometry->d_1;
    load.N_L[0]  = fmax(turns, 1.0);
    load.N_L[1]  = fmax(turns * pair->z_1 / pair->z_2, 1.0);
    load.R[0] = load.R[1] = R;
    return load;
}

static bool rate_point(const ts_mesh_rig *rig, const ts_law_pair *pair, size_t condition, int point,
                       const ts_mesh_law *law)
{
    const ts_iso6336_prepared *prepared = &rig->teeth.prepared[rig->mesh];
    const double               w        = w_at(point);
    ts_iso6336_rating          rating;

    for (int turn = 0; turn < 2; turn++) {
        const double          R    = turn == 0 ? 0.0 : ts_stress_ratio(w, w, NULL);
        const ts_iso6336_load load = load_at(rig, pair, condition, w, R);
        if (!ts_iso6336_rate(prepared, &load, &rating, NULL))
            return false;
        for (int g = 0; g < 2; g++) {
            const ts_iso6336_gear_rating *one = &rating.gear[g];
            float *bending = row_of(law, condition, g * KINDS + (turn == 0 ? BENDING : REVERSED));
            bending[point] =
                ln_damage_of(&one->bending, one->sigma_F, rig->teeth.S_Fmin, load.N_L[g]);
            if (turn == 0)
                row_of(law, condition, g * KINDS + CONTACT)[point] =
                    ln_damage_of(&one->contact, one->sigma_H, rig->teeth.S_Hmin, load.N_L[g]);
        }
    }
    return true;
}

static void never_fall(const ts_mesh_law *law, size_t condition)
{
    for (int place = 0; place < PLACES; place++) {
        float *row = row_of(law, condition, place);
        for (int point = 1; point < POINTS; point++)
            row[point] = row[point] < row[point - 1] ? row[point - 1] : row[point];
    }
}

/* Where between two points the damage of a row passes 1: nothing above it is ever borne. */
static double widest_of(const float *row)
{
    int last = -1;
    while (last + 1 < POINTS && !(row[last + 1] > 0.0f))
        last++;
    if (last < 0)
        return 0.0; /* not even the least load */
    double at = last;
    if (last + 1 < POINTS && isfinite(row[last]) && isfinite(row[last + 1])) {
        const double low = (double)row[last], high = (double)row[last + 1];
        at += -low / (high - low);
    }
    return W_LEAST * pow(W_MOST / W_LEAST, at / (POINTS - 1));
}

static void find_widest(const ts_mesh_law *law, size_t condition)
{
    for (int place = 0; place < PLACES; place++)
        law->w_most[condition * PLACES + (size_t)place] = widest_of(row_of(law, condition, place));
}

ts_status ts_mesh_law_make(ts_mesh_rig *rig, const ts_law_pair *pair, ts_mesh_law *law)
{
    law->fault = prepare_pair(rig, pair);
    for (size_t c = 0; c < rig->drive->condition_count && law->fault == NULL; c++) {
        if (isnan(rig->seconds[c]))
            law->fault = "the time spent in a condition is not known";
        for (int point = 0; point < POINTS && law->fault == NULL; point++) {
            if (!rate_point(rig, pair, c, point, law))
                law->fault = "its load cannot be rated";
        }
        if (law->fault != NULL)
            break;
        never_fall(law, c);
        find_widest(law, c);
    }
    return TS_OK;
}

/* ---- a width --------------------------------------------------------------------------------- */

/* ln of what a load does in one condition at one place; `at` counts points from W_LEAST on. */
static double ln_damage_at(const float *row, double at)
{
    const int lower = at < 0.0 ? -1 : at < POINTS ? (int)at : POINTS;

    if (lower < 0)
        return (double)row[0];
    if (lower >= POINTS - 1)
        return at > POINTS - 1 ? (double)INFINITY : (double)row[POINTS - 1];
    const double low = (double)row[lower], high = (double)row[lower + 1];
    if (!isfinite(low) || !isfinite(high))
        return high;
    return low + (high - low) * (at - lower);
}

/* Which of the three kinds of a gear counts for `i` = 0 pitting, 1 bending? */
static int place_of(int gear, int i, const bool reversed[2])
{
    return gear * KINDS + (i == 0 ? CONTACT : reversed[gear] ? REVERSED : BENDING);
}

/* Below this no number of conditions adds up to anything. */
#define LN_NOTHING (-40.0)

/* Do all conditions together wear this place out?  at[condition] as above; NaN: no load. */
static bool place_bears(const ts_mesh_law *law, const ts_law_load *load, int place,
                        const double *at)
{
    double sum[2] = {0.0, 0.0}; /* of either flank */

    for (size_t c = 0; c < load->condition_count; c++) {
        if (isnan(at[c]))
            continue;
        const double ln = ln_damage_at(row_of(law, c, place), at[c]);
        if (ln > 0.0)
            return false;
        if (ln > LN_NOTHING)
            sum[load->force[c] < 0.0] += exp(ln);
    }
    return sum[0] <= 1.0 && sum[1] <= 1.0;
}

/* What rounding of logarithms may add. */
#define SURE (1.0 - 1e-9)

double ts_mesh_law_per_newton(const ts_mesh_law *law, size_t condition, const bool reversed[2])
{
    double most = INFINITY;
    for (int k = 0; k < 4; k++)
        most =
            fmin(most, law->w_most[condition * PLACES + (size_t)place_of(k / 2, k % 2, reversed)]);
    return SURE / most;
}

double ts_mesh_law_least(const ts_mesh_law *law, const ts_law_load *load)
{
    double least = 0.0;
    if (law->fault != NULL)
        return INFINITY;
    for (size_t c = 0; c < load->condition_count; c++) {
        const double F = fabs(load->force[c]);
        if (F > 0.0)
            least = fmax(least, F * ts_mesh_law_per_newton(law, c, load->reversed));
    }
    return least;
}

bool ts_mesh_law_bears(const ts_mesh_law *law, const ts_law_load *load, double b)
{
    const double scale = (POINTS - 1) / log(W_MOST / W_LEAST);
    double       at[TS_LAW_CONDITIONS_MOST];

    if (law->fault != NULL || !(b > 0.0) || load->condition_count > TS_LAW_CONDITIONS_MOST)
        return false;
    for (size_t c = 0; c < load->condition_count; c++) {
        const double F = fabs(load->force[c]);
        at[c]          = F > 0.0 ? log(F / (b * W_LEAST)) * scale : (double)NAN;
    }
    for (int k = 0; k < 4; k++)
        if (!place_bears(law, load, place_of(k / 2, k % 2, load->reversed), at))
            return false;
    return true;
}
