/* rating/line_bearing.c: what does each bearing of a line carry, which one holds it, and how long?
 */
#include "rating/drive_lines_parts.h"

#include "rating/drive_teeth.h"

#include <math.h>
#include <string.h>

static const double pi = 3.14159265358979323846;

#define CONDITIONS_MOST 40 /* of a drive file                                            */
/* Speeding up is asked for at 3600 only. */
#define SLOW_DOWN  (5000.0 * pi / 30.0) /* rad/s2  at the box input, SAE 841605 */
#define TRACTION   0.03 /*      of oil between element and race; common practice        */
#define CAGE_SHARE 1.15 /*      elements and cage over the elements; common practice    */

/* ---- reactions ------------------------------------------------------------------------------- */

double ts_line_tube_mass(const ts_line *line)
{
    const ts_beam_section *s = &line->sections[0];

    return line->rho * pi / 4.0 * (s->d_o * s->d_o - s->d_i * s->d_i) * (s->x_2 - s->x_1);
}

/* Half of the tube's mass hangs in its middle. */
static void react_tube(const ts_line *line, ts_line_case *one)
{
    one->reaction[0].F[0] = one->reaction[0].F[2] = 0.0;
    one->reaction[0].F[1]                         = one->reaction[0].F_r =
        ts_line_tube_mass(line) / 2.0 * TS_LINE_UNBALANCE * fabs(one->omega);
}

/* Two bearings that do not hold against tilting are a matter of balance alone. */
static void react(const ts_line *line, ts_line_case *one)
{
    double axial = 0.0;

    if (line->kind == TS_LINE_TUBE) {
        if (line->bearing_count > 0)
            react_tube(line, one);
        return;
    }
    for (int k = 0; k < 2; k++)
        for (int plane = 0; plane < 2; plane++) {
            const double other = line->bearings[1 - k].x, span = line->bearings[k].x - other;
            double       moment = 0.0, couple = 0.0; /* x towards the plane */

            for (int g = 0; g < line->gear_count; g++) {
                moment += one->load[g].F[1 + plane] * (line->gears[g].x - other);
                couple += plane == 0 ? one->load[g].M[2] : -one->load[g].M[1];
            }
            one->reaction[k].F[1 + plane] = -(moment + couple) / span;
        }
    for (int g = 0; g < line->gear_count; g++)
        axial += one->load[g].F[0];
    for (int k = 0; k < 2; k++) {
        one->reaction[k].F[0] = line->bearings[k].locates ? -axial : 0.0;
        one->reaction[k].F_r  = hypot(one->reaction[k].F[1], one->reaction[k].F[2]);
    }
}

/* ---- which one locates ----------------------------------------------------------------------- */

static bool has_axial(const ts_lines_case *c, const ts_line *line)
{
    for (int g = 0; g < line->gear_count; g++) {
        const ts_gear *gear = &c->train->gears[line->gears[g].gear];
        if (gear->role == TS_GEAR_BEVEL || gear->beta.value > 0.0)
            return true;
    }
    return false;
}

static bool may_locate(const ts_line_bearing *b)
{
    return b->there && !(b->seat->form.standing == TS_GIVEN &&
                         b->seat->form.value == TS_SEAT_CYLINDRICAL_ROLLER);
}

static void choose_locating(const ts_lines_case *c, ts_line *line)
{
    int first = has_axial(c, line) ? 1 : 0; /* away from the bevel gear */

    for (int k = 0; k < line->bearing_count; k++)
        line->bearings[k].locates = false;
    for (int k = 0; k < line->bearing_count; k++) {
        const ts_pick locates = line->bearings[k].seat->locates;
        if (locates.standing == TS_GIVEN && locates.value == TS_YES)
            first = k;
        else if (locates.standing == TS_GIVEN)
            first = 1 - k;
    }
    if (line->bearing_count == 2 && !may_locate(&line->bearings[first]))
        first = 1 - first;
    if (first < line->bearing_count && line->bearings[first].there)
        line->bearings[first].locates = true;
}

/* ---- duties ---------------------------------------------------------------------------------- */

static int list_duties(const ts_lines_case *c, uint32_t number, int k,
                       ts_bearing_duty duties[CONDITIONS_MOST])
{
    for (uint32_t i = 0; i < c->drive->condition_count && i < CONDITIONS_MOST; i++) {
        const ts_line_case *one = ts_line_case_at(c, number, i);

        duties[i] = (ts_bearing_duty){.F_r = one->reaction[k].F_r,
                                      .F_a = fabs(one->reaction[k].F[0]),
                                      .n   = fabs(one->omega),
                                      .t   = ts_condition_seconds(&c->drive->conditions[i]),
                                      .nu  = c->lines->nu};
    }
    return (int)c->drive->condition_count;
}

static const ts_bearing_want usual_want = {
    .S = 0.9, .e_C = (double)NAN, .cleanness = TS_ON_LINE_15_12};

/* Below kappa = 0.1 the standard has no a_ISO; no film makes a life shorter than a tenth of the
 * basic one, the least that its law gives. */
#define LEAST_A_ISO 0.1

static ts_duty_rating rate_duty(const ts_bearing *bearing, const ts_bearing_ability *ability,
                                const ts_bearing_duty *duty, ts_workings *workings)
{
    ts_duty_rating one = ts_bearing_duty_rate(bearing, ability, duty, &usual_want, workings);

    if (isnan(one.L_nmh) && one.kappa < 0.1) {
        one.a_ISO = LEAST_A_ISO;
        one.L_nmh = LEAST_A_ISO * one.L_10h;
    }
    return one;
}

/* All conditions, by the sum of their harm. */
static ts_bearing_rating rate_all(const ts_bearing *bearing, const ts_bearing_ability *ability,
                                  const ts_bearing_duty *duties, int count, ts_duty_rating *ratings)
{
    ts_bearing_rating all = {
        .S_0 = INFINITY, .slip = INFINITY, .worst_life = -1, .worst_static = -1, .worst_slip = -1};
    double time = 0.0, basic = 0.0, modified = 0.0, most = 0.0;

    for (int j = 0; j < count; j++) {
        const ts_duty_rating one  = rate_duty(bearing, ability, &duties[j], NULL);
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
        if (ratings != NULL)
            ratings[j] = one;
    }
    all.L_10h = time / basic;
    all.L_nmh = time / modified;
    return all;
}

void ts_line_rate_again(const ts_line_bearing *b, double n, double F_r, double F_a,
                        const ts_lines_case *c)
{
    const ts_bearing_duty duty = {.F_r = F_r, .F_a = F_a, .n = n, .nu = c->lines->nu};

    (void)rate_duty(&b->bearing, &b->ability, &duty, c->workings);
}

/* ---- choosing -------------------------------------------------------------------------------- */

static double mass_of(const ts_bearing_size *size, const ts_line_generic *one)
{
    return (size->D * size->D - size->d * size->d) * size->B * one->bearing.rows;
}

typedef struct candidate {
    size_t       size;
    ts_line_make make;
    double       mass;
} candidate;

#define BORES_MOST      7
#define CANDIDATES_MOST (BORES_MOST * TS_LINE_SERIES * 3)

static bool fits_form(const ts_line_bearing *b, bool axial, ts_line_make make)
{
    if (b->seat->rows.standing == TS_GIVEN && make != TS_MAKE_ROLLER &&
        (b->seat->rows.value == 2) != (make == TS_MAKE_ANGULAR_PAIR))
        return false;
    if (b->seat->form.standing == TS_GIVEN) {
        switch (b->seat->form.value) {
        case TS_SEAT_DEEP_GROOVE:
            return make == TS_MAKE_DEEP_GROOVE;
        case TS_SEAT_ANGULAR_CONTACT:
            /* A single one cannot hold a shaft both ways. */
            return b->seat->rows.standing == TS_GIVEN
                       ? make == TS_MAKE_ANGULAR || make == TS_MAKE_ANGULAR_PAIR
                       : make == TS_MAKE_ANGULAR_PAIR;
        default:
            return make == TS_MAKE_ROLLER;
        }
    }
    if (make == TS_MAKE_ANGULAR)
        return false;
    /* Bevels ask for bearings that hardly give way, and push along the shaft both ways. */
    if (b->locates)
        return axial ? make == TS_MAKE_ANGULAR_PAIR : make != TS_MAKE_ROLLER;
    return axial ? make == TS_MAKE_ROLLER : make != TS_MAKE_ANGULAR_PAIR;
}

/* Bores that may be taken: that of the file, or the journal and what is a little wider. */
static int list_bores(const ts_lines_case *c, const ts_line *line, const ts_line_bearing *b,
                      double bores[BORES_MOST])
{
    const ts_lines_catalog *catalog = c->lines->catalog;
    int                     count   = 0;

    bores[count++] = b->bearing.d;
    if (ts_measure_known(b->seat->bore))
        return count;
    for (size_t i = 0; i < catalog->bore_count && count < BORES_MOST; i++)
        if (catalog->bores[i] > b->bearing.d + 1e-6 && catalog->bores[i] <= line->d_most)
            bores[count++] = catalog->bores[i];
    return count;
}

static void enter(const ts_lines_case *c, size_t size, ts_line_make make, candidate *out,
                  int *count)
{
    const ts_line_generic *one = ts_lines_generic(c->lines->catalog, size, make);

    if (!one->sound || *count == CANDIDATES_MOST)
        return;
    const candidate made = {size, make, mass_of(&c->lines->catalog->sizes[size], one)};
    int             at   = (*count)++;
    for (; at > 0 && out[at - 1].mass > made.mass; at--)
        out[at] = out[at - 1];
    out[at] = made;
}

/* Every generic bearing of those bores, the lightest first. */
static int list_candidates(const ts_lines_case *c, const ts_line *line, const ts_line_bearing *b,
                           candidate out[CANDIDATES_MOST])
{
    double     bores[BORES_MOST];
    const bool axial      = has_axial(c, line);
    const int  bore_count = list_bores(c, line, b, bores);
    int        count      = 0;

    for (int i = 0; i < bore_count; i++)
        for (int s = 0; s < TS_LINE_SERIES; s++) {
            const size_t size = ts_lines_size_of(c->lines->catalog, s, bores[i]);

            if (size == c->lines->catalog->size_count ||
                (b->seat->series.standing == TS_GIVEN && b->seat->series.value != s))
                continue;
            for (int make = 0; make < TS_MAKES; make++)
                if (fits_form(b, axial, (ts_line_make)make))
                    enter(c, size, (ts_line_make)make, out, &count);
        }
    return count;
}

static double limit_of(ts_measure measure)
{
    return ts_measure_known(measure) ? measure.value : 0.0;
}

/* Rollers that carry next to nothing where most time is spent are no choice either. */
static bool rolls(const ts_lines_case *c, const ts_line_generic *one, const ts_bearing_duty *duty)
{
    return one->bearing.form != TS_BEARING_CYLINDRICAL_ROLLER ||
           duty->F_r >= 0.02 * one->ability.C_r * limit_of(c->drive->limits.bearing_slip);
}

static bool holds(const ts_lines_case *c, const ts_bearing_rating *rating)
{
    const ts_limits *limits = &c->drive->limits;

    return rating->L_nmh >= c->lines->life * limit_of(limits->bearing_life) &&
           rating->S_0 >= limit_of(limits->bearing_static_safety);
}

/* The condition that wears most at equal capacities, which most bearings fail in or in none. */
static int hardest(const ts_bearing_duty *duties, int count)
{
    double most = -1.0;
    int    at   = 0;

    for (int i = 0; i < count; i++) {
        const double F    = duties[i].F_r + duties[i].F_a,
                     wear = F * F * F * duties[i].n * duties[i].t;
        if (wear > most) {
            most = wear;
            at   = i;
        }
    }
    return at;
}

static int longest(const ts_bearing_duty *duties, int count)
{
    int at = 0;

    for (int i = 1; i < count; i++)
        if (duties[i].n > 0.0 && duties[i].t > duties[at].t)
            at = i;
    return at;
}

/* False: that condition alone wears it out. */
static bool may_hold(const ts_lines_case *c, const ts_line_generic *one,
                     const ts_bearing_duty *duty)
{
    const ts_duty_rating rating = rate_duty(&one->bearing, &one->ability, duty, NULL);

    return duty->t / rating.L_nmh * limit_of(c->drive->limits.bearing_life) <= 1.0;
}

/* The lightest that holds, else the one that lasts longest. */
static bool choose(const ts_lines_case *c, const ts_line *line, ts_line_bearing *b,
                   const ts_bearing_duty *duties, int count)
{
    candidate              found[CANDIDATES_MOST];
    const int              most = list_candidates(c, line, b, found), hard = hardest(duties, count);
    const ts_line_generic *best = NULL, *idle = NULL;
    const char            *series = NULL, *idle_series = NULL;

    for (int i = 0; i < most; i++) {
        const ts_line_generic *one =
            ts_lines_generic(c->lines->catalog, found[i].size, found[i].make);
        if (idle == NULL && (best == NULL || one->ability.C_r > best->ability.C_r)) {
            best   = one; /* what bears most, should none hold */
            series = c->lines->catalog->sizes[found[i].size].series;
        }
        if (!may_hold(c, one, &duties[hard]))
            continue;
        const ts_bearing_rating rating =
            rate_all(&one->bearing, &one->ability, duties, count, NULL);
        if (!holds(c, &rating))
            continue;
        series = c->lines->catalog->sizes[found[i].size].series;
        best   = one;
        if (rolls(c, one, &duties[longest(duties, count)])) {
            idle = NULL;
            break;
        }
        if (idle == NULL) {
            idle        = one;
            idle_series = series;
        }
    }
    if (idle != NULL) {
        best   = idle;
        series = idle_series;
    }
    if (best == NULL)
        return false;
    b->bearing = best->bearing;
    b->ability = best->ability;
    b->series  = series;
    return true;
}

/* ---- a bearing of one's own -------------------------------------------------------------------
 */

static double own_or(ts_measure own, double otherwise)
{
    return ts_measure_known(own) ? own.value : otherwise;
}

static bool is_own(const ts_bearing_seat *seat)
{
    return ts_measure_known(seat->outside) || ts_measure_known(seat->ball) ||
           ts_measure_known(seat->length) || seat->elements.standing == TS_GIVEN ||
           ts_measure_known(seat->capacity) || ts_measure_known(seat->static_capacity) ||
           ts_measure_known(seat->angle);
}

/* What was chosen or taken from its series, with the file's own numbers over it. */
static void overlay(ts_line_bearing *b)
{
    const ts_bearing_seat *seat = b->seat;
    ts_bearing            *own  = &b->bearing;

    if (seat->form.standing == TS_GIVEN)
        own->form = (ts_bearing_form)seat->form.value;
    own->D           = own_or(seat->outside, own->D);
    own->alpha       = own_or(seat->angle, own->alpha);
    own->inside.D_w  = own_or(seat->ball, own->inside.D_w);
    own->inside.L_we = own_or(seat->length, own->inside.L_we);
    own->inside.D_pw = ts_measure_known(seat->outside) ? (own->d + own->D) / 2.0 : own->inside.D_pw;
    if (seat->elements.standing == TS_GIVEN)
        own->inside.Z = (int)seat->elements.value;
    own->C_r                     = own_or(seat->capacity, own->C_r);
    own->C_0r                    = own_or(seat->static_capacity, own->C_0r);
    const ts_bearing_fault fault = ts_bearing_prepare(own, &b->ability, NULL);
    b->fault                     = fault == TS_BEARING_FINE ? NULL : ts_bearing_fault_says(fault);
}

/* Without a generic one of that form and bore the file must tell the whole inside. */
static void begin_own(ts_line_bearing *b)
{
    const ts_bearing_seat *seat = b->seat;

    b->bearing =
        (ts_bearing){.form   = seat->form.standing == TS_GIVEN ? (ts_bearing_form)seat->form.value
                                                               : TS_BEARING_DEEP_GROOVE,
                     .rows   = seat->rows.standing == TS_GIVEN ? (int)seat->rows.value : 1,
                     .d      = b->bearing.d,
                     .D      = (double)NAN,
                     .inside = {.D_w  = (double)NAN,
                                .L_we = (double)NAN,
                                .D_pw = (double)NAN,
                                .f_i  = 0.52,
                                .f_e  = 0.52},
                     .C_r    = (double)NAN,
                     .C_0r   = (double)NAN};
}

/* ---- stiffness ------------------------------------------------------------------------------- */

/* A. Palmgren, Ball and Roller Bearing Engineering (from memory), in mm and N, at a fifth of the
 * elements' load on the most loaded one. */
static double stiffness(const ts_bearing *bearing, double F_r)
{
    const double Q      = 5.0 * F_r / (bearing->rows * bearing->inside.Z * cos(bearing->alpha));
    const bool   roller = bearing->form == TS_BEARING_CYLINDRICAL_ROLLER;
    const double give =
        roller ? 7.68e-5 * pow(Q, 0.9) / pow(bearing->inside.L_we * 1e3, 0.8)
               : 4.36e-4 * cbrt(Q * Q / (bearing->inside.D_w * 1e3)) / cos(bearing->alpha);

    return F_r / (give * 1e-3);
}

/* Linear at the greatest load that it meets; an idle one at a hundredth of its capacity. */
static void stiffen(const ts_lines_case *c, uint32_t number, int k)
{
    ts_line_bearing *b    = &c->lines->lines[number].bearings[k];
    double           most = b->ability.C_0r / 100.0;

    if (ts_measure_known(b->seat->stiffness)) {
        b->k_r = b->seat->stiffness.value;
        return;
    }
    for (uint32_t i = 0; i < c->drive->condition_count; i++)
        most = fmax(most, ts_line_case_at(c, number, i)->reaction[k].F_r);
    b->F_ref = most;
    b->k_r   = stiffness(&b->bearing, most);
}

/* ---- slip ------------------------------------------------------------------------------------ */

#define INERTIA "derived: what orbits with (1 - gamma)/2 of the speed and spins has that energy"

static const ts_formula m_ball_formula = {"m_set", "mass of the balls", "kg", "rho*i*Z*pi/6*D_w^3",
                                          "derived: balls of steel"};
static const ts_formula m_roller_formula = {"m_set", "mass of the rollers", "kg",
                                            "rho*i*Z*pi/4*D_w^2*L_we", "derived: cylinders"};
static const ts_formula J_set_formula    = {
       "J_set", "inertia of elements and cage, as the inner ring feels it", "kg.m2",
       "cage*m_set*D_pw^2/4*((1 - gamma)/2)^2 + f_spin*m_set*D_w^2*(D_pw/D_w*(1 - gamma^2)/2)^2",
       INERTIA};
static const ts_formula F_follow_formula = {
    "F_follow", "load whose traction lets the elements follow the shaft", "N",
    "J_set*a_shaft/(mu*(D_pw - D_w)/2)", "derived: torque of the traction at the inner race"};

static double inertia_of_elements(const ts_line_bearing *b, ts_workings *w)
{
    const bool   roller = b->bearing.form == TS_BEARING_CYLINDRICAL_ROLLER;
    const double D_w = b->bearing.inside.D_w, D_pw = b->bearing.inside.D_pw, rho = 7830.0;
    const double Z = b->bearing.inside.Z, i = b->bearing.rows, L_we = b->bearing.inside.L_we;
    const double gamma = b->ability.gamma, cage = CAGE_SHARE, f_spin = roller ? 0.125 : 0.1;
    const double m_set =
        roller
            ? TS_STEP(w, m_roller_formula, rho * i * Z * pi / 4.0 * D_w * D_w * L_we, rho, i, Z,
                      D_w, L_we)
            : TS_STEP(w, m_ball_formula, rho * i * Z * pi / 6.0 * D_w * D_w * D_w, rho, i, Z, D_w);
    const double orbit = (1.0 - gamma) / 2.0, spin = D_pw / D_w * (1.0 - gamma * gamma) / 2.0;

    ts_workings_assumed(w, "cage", cage, "1",
                        "elements and cage over the elements; common "
                        "practice, no source");
    ts_workings_row(w, "f_spin", f_spin, "1", "inertia of a ball, of a roller, over m D_w^2");
    return TS_STEP(w, J_set_formula,
                   cage * m_set * D_pw * D_pw / 4.0 * (orbit * orbit) +
                       f_spin * m_set * D_w * D_w * (spin * spin),
                   cage, m_set, D_pw, gamma, f_spin, D_w);
}

/* rad/s2 of the shaft when the box input slows down as fast as it may. */
static double hardest_change(const ts_lines_case *c, const ts_line *line)
{
    const ts_shaft_motion *shaft = &c->lines->motion->shafts[line->shaft];

    for (uint32_t s = 0; s < c->train->shaft_count; s++) {
        const ts_shaft *input = &c->train->shafts[s];
        if (input->kind == TS_SHAFT_BOX && input->spool == c->train->shafts[line->shaft].spool &&
            c->train->meshes[input->mesh].kind == TS_MESH_BEVEL)
            return SLOW_DOWN * ts_rational_value(shaft->ratio) /
                   ts_rational_value(c->lines->motion->shafts[s].ratio);
    }
    return SLOW_DOWN;
}

double ts_line_load_to_follow(const ts_lines_case *c, const ts_line *line, const ts_line_bearing *b,
                              ts_workings *w)
{
    const double D_w = b->bearing.inside.D_w, D_pw = b->bearing.inside.D_pw, mu = TRACTION;
    const double a_shaft = hardest_change(c, line), rho = 7830.0;

    ts_workings_row(w, "rho", rho, "kg/m3",
                    "steel of rolling bearings; data/metal.tsv rounds to it");
    ts_workings_assumed(w, "mu", mu, "1",
                        "traction of oil between element and race; common practice, no source");
    ts_workings_assumed(w, "a_shaft", a_shaft, "rad/s2",
                        "5000 rpm each second at the box input, SAE 841605, times the ratio");
    const double J_set = inertia_of_elements(b, w);
    return TS_STEP(w, F_follow_formula, J_set * a_shaft / (mu * (D_pw - D_w) / 2.0), J_set, a_shaft,
                   mu, D_pw, D_w);
}

static void judge_slip(const ts_lines_case *c, uint32_t number, int k)
{
    const ts_line   *line = &c->lines->lines[number];
    ts_line_bearing *b    = &c->lines->lines[number].bearings[k];
    const double     due  = ts_line_load_to_follow(c, line, b, NULL);

    b->F_follow      = due;
    b->slip_start    = INFINITY;
    b->slip_start_at = -1;
    for (uint32_t i = 0; i < c->drive->condition_count; i++) {
        const ts_line_case *one = ts_line_case_at(c, number, i);
        if (!(fabs(one->omega) > 0.0) || !(one->duty[k].P / due < b->slip_start))
            continue;
        b->slip_start    = one->duty[k].P / due;
        b->slip_start_at = (int32_t)i;
    }
}

/* ---- the line -------------------------------------------------------------------------------- */

static const char *missing_of(const ts_lines_case *c, uint32_t number)
{
    for (uint32_t i = 0; i < c->drive->condition_count; i++)
        if (!ts_line_case_at(c, number, i)->known)
            return "the forces of a condition";
    return NULL;
}

static double width_of(const ts_lines_case *c, const ts_line_bearing *b)
{
    double one = b->width / b->bearing.rows;

    for (int s = 0; s < TS_LINE_SERIES && b->series != NULL; s++) {
        const size_t size = ts_lines_size_of(c->lines->catalog, s, b->bearing.d);
        if (size < c->lines->catalog->size_count &&
            c->lines->catalog->sizes[size].series == b->series)
            one = c->lines->catalog->sizes[size].B;
    }
    return own_or(b->seat->width, one) * b->bearing.rows;
}

static void bear(const ts_lines_case *c, uint32_t number, int k)
{
    ts_bearing_duty  duties[CONDITIONS_MOST];
    ts_duty_rating   ratings[CONDITIONS_MOST];
    ts_line_bearing *b     = &c->lines->lines[number].bearings[k];
    const int        count = list_duties(c, number, k, duties);

    b->fault = NULL;
    b->given = b->seat->series.standing == TS_GIVEN && ts_measure_known(b->seat->bore);
    if (!choose(c, &c->lines->lines[number], b, duties, count)) {
        if (!is_own(b->seat)) {
            b->fault = "no generic bearing of that form, series and bore is in the table";
            b->k_r   = (double)NAN;
            return;
        }
        begin_own(b);
    }
    b->width = width_of(c, b);
    if (is_own(b->seat)) {
        b->given = ts_measure_known(b->seat->bore);
        overlay(b);
    }
    if (b->fault != NULL)
        return;
    b->rating = rate_all(&b->bearing, &b->ability, duties, count, ratings);
    for (int i = 0; i < count; i++)
        ts_line_case_at(c, number, (uint32_t)i)->duty[k] = ratings[i];
    stiffen(c, number, k);
    judge_slip(c, number, k);
}

void ts_line_bear(const ts_lines_case *c, uint32_t number)
{
    ts_line *line = &c->lines->lines[number];

    choose_locating(c, line);
    for (uint32_t i = 0; i < c->drive->condition_count; i++)
        if (ts_line_case_at(c, number, i)->known)
            react(line, ts_line_case_at(c, number, i));
    line->missing = missing_of(c, number);
    if (line->missing != NULL)
        return;
    for (int k = 0; k < line->bearing_count; k++)
        if (line->bearings[k].there)
            bear(c, number, k);
    for (int k = 0; k < line->bearing_count; k++)
        if (line->bearings[k].there && line->bearings[k].fault != NULL && line->fault == NULL)
            line->fault = "a bearing of it is not known";
}
