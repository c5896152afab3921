/* oil/warming.c: how warm do gears and casing become, moment by moment, and what play is left? */
#include "oil/warming.h"

#include "element/dulong_petit.h"
#include "response/symmetric_modes.h"

#include <math.h>

static const double pi = 3.14159265358979323846;

/* Of the gears, over that of the casing; the first is the one whose temperatures are told. */
static const double films[] = {2.0, 1.0, 5.0};

typedef struct body {
    uint32_t shaft; /* TS_NOWHERE: the casing */
    double   C;     /* J/K */
    double   A;     /* m2, that meets the oil */
    double   G;     /* W/K, to the oil */
    double   q;     /* W, that teeth put in, in the leg that runs */
} body;

typedef struct oven {
    const ts_warm_question *asked;
    const ts_train         *train;
    ts_warm_course         *out;
    body                   *bodies; /* the casing last */
    uint32_t                count;
    uint32_t               *body_of;      /* [shaft]; TS_NOWHERE: of no body */
    double                 *A, *w, *work; /* modes in columns; their rates; room for LAPACK */
    double                 *T, *z, *b;    /* [body] K; in modes: state and drive */

    bool told; /* is this the course that is told? */

    /* of the leg that runs */
    double K;     /* W/K, that oil carries away a kelvin of its rise            */
    double S;     /* W/K, all that the oil exchanges                             */
    double base;  /* W, what enters the oil, and what its feed brings above 0 K  */
    double G_air; /* W/K */
    double heat;  /* W */
    double theta_in;
} oven;

/* ---- what exchanges heat ----------------------------------------------------------------------
 */

static bool is_of_drive(const oven *it, uint32_t mesh)
{
    return it->train->shafts[it->train->meshes[mesh].driven_shaft].drive == it->asked->drive;
}

/* W that its teeth turn into heat; 0 where it carries nothing. */
static double heat_of_teeth(const oven *it, uint32_t condition, uint32_t mesh)
{
    const ts_heat_case *one = ts_heat_at(it->asked->heat, 0, condition, mesh);

    return it->asked->heat->places[mesh].missing == NULL ? one->P[TS_HEAT_TEETH] : 0.0;
}

/* m2, faces and rim of all gears that turn with a shaft in the mist. */
static double area_of(const oven *it, uint32_t shaft)
{
    const ts_heat *heat = it->asked->heat;
    double         A    = 0.0;

    for (uint32_t m = 0; m < it->train->mesh_count; m++)
        for (int g = 0; g < heat->places[m].gear_count; g++) {
            const ts_heat_gear *gear = &heat->places[m].gears[g];
            if (gear->shaft == shaft)
                A += 2.0 * pi * gear->R * (gear->R + gear->F);
        }
    return A;
}

/* ---- bodies -----------------------------------------------------------------------------------
 */

static bool turns_warm(ts_mass_kind kind)
{
    return kind == TS_MASS_GEAR || kind == TS_MASS_BEVEL || kind == TS_MASS_SHAFT ||
           kind == TS_MASS_TOWER;
}

/* J/K of all that turns with a shaft; NaN: a mass is not known. */
static double capacity_of(const oven *it, uint32_t shaft)
{
    const ts_mass *mass = it->asked->mass;
    double         C    = 0.0;

    for (size_t i = 0; i < mass->part_count; i++) {
        const ts_mass_part *part = &mass->parts[i];
        if (part->shaft == shaft && turns_warm(part->kind))
            C += part->m.value * ts_heat_capacity_of_metal(part->rho);
    }
    return C;
}

static const ts_mass_part *casing_of(const oven *it)
{
    const ts_mass *mass = it->asked->mass;

    for (size_t i = 0; i < mass->part_count; i++)
        if (mass->parts[i].kind == TS_MASS_CASING && mass->parts[i].drive == it->asked->drive)
            return &mass->parts[i];
    return NULL;
}

/* m2, what its mass is spread over. */
static double wall_area(const oven *it, const ts_mass_part *casing)
{
    const ts_weighing *wall = &it->asked->heat->drive->mass;

    return casing->m.value /
           (casing->rho * wall->casing_wall.value * (1.0 + wall->casing_extra.value));
}

/* NaN, once there, stays: in one of the bands the axes come too close. */
static double wider(double old, double fresh, bool low)
{
    if (isnan(old) || isnan(fresh))
        return (double)NAN;
    return low ? fmin(old, fresh) : fmax(old, fresh);
}

static bool lack(oven *it, const char *what, const char *of)
{
    it->out->missing = what;
    it->out->lacks   = of;
    return false;
}

/* Every shaft that a mesh of this drive turns or is turned by. */
static bool lay_bodies(oven *it)
{
    const ts_train     *train  = it->train;
    const ts_mass_part *casing = casing_of(it);

    for (uint32_t s = 0; s < train->shaft_count; s++)
        it->body_of[s] = TS_NOWHERE;
    for (uint32_t m = 0; m < train->mesh_count; m++)
        for (int end = 0; is_of_drive(it, m) && end < 2; end++) {
            const uint32_t s =
                end == 0 ? train->meshes[m].driver_shaft : train->meshes[m].driven_shaft;
            if (it->body_of[s] != TS_NOWHERE)
                continue;
            it->bodies[it->count] =
                (body){.shaft = s, .C = capacity_of(it, s), .A = area_of(it, s)};
            if (!(it->bodies[it->count].C > 0.0))
                return lack(it, "the mass", train->shafts[s].name);
            if (!(it->bodies[it->count].A > 0.0))
                return lack(it, "the shape of the gears", train->shafts[s].name);
            it->body_of[s] = it->count++;
        }
    if (casing == NULL || !(casing->m.value > 0.0))
        return lack(it, "the mass of the casing", NULL);
    it->bodies[it->count++] = (body){.shaft = TS_NOWHERE,
                                     .C = casing->m.value * ts_heat_capacity_of_metal(casing->rho),
                                     .A = wall_area(it, casing)};
    return true;
}

static void lay_films(oven *it, double film)
{
    const body *casing = &it->bodies[it->count - 1];

    for (uint32_t i = 0; i < it->count; i++)
        it->bodies[i].G = TS_WARM_OIL_TO_METAL * it->bodies[i].A * (i + 1 < it->count ? film : 1.0);
    it->G_air = isnan(it->asked->air) ? 0.0 : TS_WARM_CASING_TO_AIR * casing->A;
}

/* ---- one condition ----------------------------------------------------------------------------
 */

static void lay_heat(oven *it, uint32_t condition)
{
    const ts_heat_state *state = ts_heat_state_at(it->asked->heat, 0, condition, it->asked->drive);
    double               teeth = 0.0;

    for (uint32_t i = 0; i < it->count; i++)
        it->bodies[i].q = 0.0;
    for (uint32_t m = 0; m < it->train->mesh_count; m++) {
        if (!is_of_drive(it, m))
            continue;
        const ts_mesh *mesh = &it->train->meshes[m];
        const double   P    = heat_of_teeth(it, condition, m);
        it->bodies[it->body_of[mesh->driver_shaft]].q += 0.5 * P;
        it->bodies[it->body_of[mesh->driven_shaft]].q += 0.5 * P;
        teeth += P;
    }
    it->K        = state->rho_in * state->Q * state->c;
    it->heat     = state->heat;
    it->theta_in = state->theta_in;
    it->S        = 2.0 * it->K;
    for (uint32_t i = 0; i < it->count; i++)
        it->S += it->bodies[i].G;
    it->base = state->heat - teeth + 2.0 * it->K * state->theta_in;
}

/* The oil settles at once: what enters it leaves it. */
static double oil_between(const oven *it, const double *T)
{
    double sum = it->base;

    for (uint32_t i = 0; i < it->count; i++)
        sum += it->bodies[i].G * T[i];
    return sum / it->S;
}

/* C T' = q - G (T - oil) - G_air (T - air), each body times the root of its capacity: symmetric. */
static bool find_modes(oven *it)
{
    const uint32_t n = it->count;

    for (uint32_t i = 0; i < n; i++)
        for (uint32_t j = 0; j < n; j++) {
            const body  *a = &it->bodies[i], *b = &it->bodies[j];
            const double air = i + 1 == n ? it->G_air : 0.0;
            it->A[j * n + i] =
                (i == j ? (a->G + air) / a->C : 0.0) - a->G * b->G / (it->S * sqrt(a->C * b->C));
        }
    return ts_symmetric_modes(n, it->A, it->w, it->work);
}

/* State and what drives it, seen in the modes. */
static void enter_modes(oven *it)
{
    const uint32_t n = it->count;

    for (uint32_t k = 0; k < n; k++) {
        it->z[k] = it->b[k] = 0.0;
        for (uint32_t i = 0; i < n; i++) {
            const body  *one = &it->bodies[i];
            const double air = i + 1 == n && it->G_air > 0.0 ? it->G_air * it->asked->air : 0.0;
            const double in  = one->q + one->G * it->base / it->S + air;
            it->z[k] += it->A[k * n + i] * sqrt(one->C) * it->T[i];
            it->b[k] += it->A[k * n + i] * in / sqrt(one->C);
        }
    }
}

/* (1 - exp(-l t))/l, and the integral of it from 0 to t; t and t t/2 where nothing leaves. */
static double grown(double l, double t)
{
    return l * t > 1e-9 ? -expm1(-l * t) / l : t * (1.0 - 0.5 * l * t);
}

static double grown_sum(double l, double t)
{
    return l * t > 1e-4 ? (t - grown(l, t)) / l : 0.5 * t * t * (1.0 - l * t / 3.0);
}

/* T after t seconds of the leg, or with `summed` the integral of it until then. */
static void leave_modes(const oven *it, double t, bool summed, double *T)
{
    const uint32_t n = it->count;

    for (uint32_t i = 0; i < n; i++)
        T[i] = 0.0;
    for (uint32_t k = 0; k < n; k++) {
        const double l = fmax(it->w[k], 0.0);
        const double z = summed ? it->z[k] * grown(l, t) + it->b[k] * grown_sum(l, t)
                                : it->z[k] * exp(-l * t) + it->b[k] * grown(l, t);
        for (uint32_t i = 0; i < n; i++)
            T[i] += it->A[k * n + i] * z / sqrt(it->bodies[i].C);
    }
}

/* ---- what is told -----------------------------------------------------------------------------
 */

static double known_or(const ts_temperatures *told, ts_measure here, double usual)
{
    return told->node != 0 && ts_measure_known(here) ? here.value : usual;
}

static void note_play(oven *it, ts_warm_play *play, size_t moment, const double *T)
{
    const ts_mesh *mesh = &it->train->meshes[play->mesh];
    const double   theta =
        0.5 * (T[it->body_of[mesh->driver_shaft]] + T[it->body_of[mesh->driven_shaft]]);
    const double apart = T[it->count - 1] - theta;
    ts_backlash  now;

    it->out->gears[0] = fmin(it->out->gears[0], theta);
    it->out->gears[1] = fmax(it->out->gears[1], theta);
    it->out->apart[0] = fmin(it->out->apart[0], apart);
    it->out->apart[1] = fmax(it->out->apart[1], apart);
    if (play->missing != NULL)
        return;
    const ts_temperatures   *told   = &it->train->gears[mesh->driver].system->temperatures;
    const ts_backlash_warmth warmth = {
        .theta        = {theta, theta},
        .dtheta       = {apart, apart},
        .alpha_gears  = known_or(told, told->gears_expansion, it->asked->alpha[0]),
        .alpha_casing = known_or(told, told->casing_expansion, it->asked->alpha[1])};
    ts_motion_backlash_at(it->train, it->asked->heat->motion, play->mesh, &warmth, &now);

    const double low = now.j_bn[TS_BACKLASH_LOW], high = now.j_bn[TS_BACKLASH_HIGH];
    play->low[moment]  = it->told ? low : wider(play->low[moment], low, true);
    play->high[moment] = it->told ? high : wider(play->high[moment], high, false);
}

static void note_moment(oven *it, size_t moment, double t, uint32_t leg)
{
    ts_warm_moment *now = &it->out->moments[moment];

    for (size_t p = 0; p < it->out->play_count; p++)
        note_play(it, &it->out->plays[p], moment, it->T);
    if (!it->told)
        return;
    *now = (ts_warm_moment){.t      = t,
                            .leg    = leg,
                            .oil    = oil_between(it, it->T),
                            .casing = it->T[it->count - 1],
                            .least  = (double)INFINITY,
                            .most   = -(double)INFINITY};
    for (uint32_t i = 0; i + 1 < it->count; i++) {
        now->least = fmin(now->least, it->T[i]);
        now->most  = fmax(now->most, it->T[i]);
    }
}

/* What arose, left and stayed in a leg; T is that at its end, `sum` the integral of it. */
static void add_energies(oven *it, const double *before, const double *sum, double t)
{
    double oil = it->base * t;

    for (uint32_t i = 0; i < it->count; i++) {
        oil += it->bodies[i].G * sum[i];
        it->out->stored += it->bodies[i].C * (it->T[i] - before[i]);
    }
    it->out->heat += it->heat * t;
    it->out->carried += 2.0 * it->K * (oil / it->S - it->theta_in * t);
    if (it->G_air > 0.0)
        it->out->given += it->G_air * (sum[it->count - 1] - it->asked->air * t);
}

static bool follow_leg(oven *it, uint32_t leg, double *begin, double *before, double *sum)
{
    const ts_warm_leg *one = &it->asked->legs[leg];
    const size_t       n   = it->asked->samples;

    lay_heat(it, one->condition);
    if (!find_modes(it))
        it->out->fault = "the modes of the bodies were not found";
    if (it->out->fault != NULL)
        return false;
    for (uint32_t i = 0; i < it->count; i++)
        before[i] = it->T[i];
    enter_modes(it);
    if (leg == 0)
        note_moment(it, 0, 0.0, 0);
    for (size_t k = 1; k <= n; k++) {
        const double part = (double)k / (double)n, t = one->duration * part * part;
        leave_modes(it, t, false, it->T);
        note_moment(it, leg * n + k, *begin + t, leg);
    }
    leave_modes(it, one->duration, true, sum);
    if (it->told)
        add_energies(it, before, sum, one->duration);
    *begin += one->duration;
    return true;
}

static bool follow(oven *it, double film, double *before, double *sum)
{
    double begin = 0.0;

    it->told = film == films[0];
    lay_films(it, film);
    for (uint32_t i = 0; i < it->count; i++)
        it->T[i] = it->asked->soak;
    for (uint32_t leg = 0; leg < it->asked->leg_count; leg++)
        if (!follow_leg(it, leg, &begin, before, sum))
            return false;
    return true;
}

static void find_extremes(ts_warm_play *play, size_t count)
{
    for (size_t i = 1; play->missing == NULL && i < count; i++) {
        if (isnan(play->low[i]) ? !isnan(play->low[play->least])
                                : play->low[i] < play->low[play->least])
            play->least = i;
        if (isnan(play->high[play->most]) || play->high[i] > play->high[play->most])
            play->most = i;
    }
}

static void sum_up(ts_warm_course *out)
{
    const double most =
        fmax(fmax(fabs(out->heat), fabs(out->carried)), fmax(fabs(out->given), fabs(out->stored)));

    out->balance =
        most > 0.0 ? fabs(out->heat - out->carried - out->given - out->stored) / most : 0.0;
    for (size_t p = 0; p < out->play_count; p++)
        find_extremes(&out->plays[p], out->moment_count);
}

/* ---- memory -----------------------------------------------------------------------------------
 */

static ts_status lay_plays(oven *it, ts_arena *arena)
{
    ts_warm_course *out     = it->out;
    const size_t    moments = it->asked->leg_count * it->asked->samples + 1;

    out->moment_count = moments;
    out->moments      = TS_TAKE(arena, ts_warm_moment, moments);
    out->plays        = TS_TAKE(arena, ts_warm_play, it->train->mesh_count + 1);
    if (out->moments == NULL || out->plays == NULL)
        return TS_NO_MEMORY;
    for (uint32_t m = 0; m < it->train->mesh_count; m++) {
        if (!is_of_drive(it, m) || it->train->meshes[m].kind != TS_MESH_CYLINDRICAL)
            continue;
        ts_warm_play *play = &out->plays[out->play_count++];
        *play              = (ts_warm_play){.mesh = m,
                                            .missing =
                                                ts_motion_backlash_lacks(it->train, it->asked->heat->motion, m),
                                            .low  = TS_TAKE(arena, double, moments),
                                            .high = TS_TAKE(arena, double, moments)};
        if (play->low == NULL || play->high == NULL)
            return TS_NO_MEMORY;
    }
    return TS_OK;
}

ts_status ts_warm_follow(const ts_warm_question *question, ts_arena *arena, ts_warm_course *out)
{
    const ts_train *train  = question->heat->motion->train;
    const size_t    most   = (size_t)train->shaft_count + 1;
    oven            it     = {.asked   = question,
                              .train   = train,
                              .out     = out,
                              .bodies  = TS_TAKE(arena, body, most),
                              .body_of = TS_TAKE(arena, uint32_t, most),
                              .A       = TS_TAKE(arena, double, most *most),
                              .w       = TS_TAKE(arena, double, most),
                              .work    = TS_TAKE(arena, double, TS_SYMMETRIC_WORK(most)),
                              .T       = TS_TAKE(arena, double, most),
                              .z       = TS_TAKE(arena, double, most),
                              .b       = TS_TAKE(arena, double, most)};
    double         *before = TS_TAKE(arena, double, most), *sum = TS_TAKE(arena, double, most);

    *out = (ts_warm_course){.gears = {(double)INFINITY, -(double)INFINITY},
                            .apart = {(double)INFINITY, -(double)INFINITY}};
    if (ts_arena_failed(arena))
        return TS_NO_MEMORY;
    if (question->heat->missing != NULL) {
        out->missing = question->heat->missing;
        return TS_OK;
    }
    if (!lay_bodies(&it))
        return TS_OK;
    const ts_status status = lay_plays(&it, arena);
    for (size_t f = 0; status == TS_OK && f < sizeof films / sizeof films[0]; f++)
        if (!follow(&it, films[f], before, sum))
            return TS_OK;
    if (status == TS_OK)
        sum_up(out);
    return status;
}
