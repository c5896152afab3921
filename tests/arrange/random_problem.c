/* arrange/random_problem.c: what might an engineer want to put on a box? */
#include "arrange/random_problem.h"

#include <math.h>

#define PI 3.14159265358979323846

/* splitmix64: the same numbers on every machine. */
static uint64_t chance(uint64_t *state)
{
    uint64_t z = *state += UINT64_C(0x9E3779B97F4A7C15);
    z          = (z ^ z >> 30) * UINT64_C(0xBF58476D1CE4E5B9);
    z          = (z ^ z >> 27) * UINT64_C(0x94D049BB133111EB);
    return z ^ z >> 31;
}

static double between(uint64_t *s, double low, double high)
{
    return low + (high - low) * (double)(chance(s) >> 11) * 0x1p-53;
}

static uint32_t whole(uint64_t *s, uint32_t low, uint32_t high)
{
    return low + (uint32_t)(chance(s) % (high - low + 1));
}

static bool likely(uint64_t *s, double part)
{
    return between(s, 0.0, 1.0) < part;
}

typedef struct kind {
    const char *name;
    double      slowest, fastest; /* highest speed, rpm             */
    double      weak, strong;     /* power at full speed, kW        */
    double      start, idle;      /* parts of it                    */
    double      small, large;     /* radius of the body, mm         */
} kind;

static const kind kinds[] = {
    {"starter", 10000, 14000, 0.4, 0.6, -120.0, 0.6, 85, 105},
    {"fuel-pump", 7500, 9500, 45, 80, 0.05, 0.3, 75, 95},
    {"oil-pump", 4500, 7500, 8, 15, 0.02, 0.6, 65, 75},
    {"generator", 8000, 12500, 50, 95, 0.03, 0.9, 95, 120},
    {"hyd-pump", 3500, 5800, 15, 42, 0.02, 0.6, 65, 85},
    {"tacho", 8000, 13000, 0.8, 1.2, 0.04, 0.7, 45, 55},
    {"scavenge", 5500, 8000, 3, 7, 0.05, 0.6, 60, 75},
    {"vent", 9500, 15000, 3, 6, 0.04, 0.5, 55, 70},
    {"fuel-boost", 8000, 10000, 3, 11, 0.03, 0.5, 60, 80},
    {"hyd-pump2", 3500, 5800, 15, 42, 0.02, 0.6, 65, 85},
    {"air-pump", 12000, 14500, 9, 15, 0.04, 0.5, 75, 85},
    {"pma", 17000, 24000, 0.7, 1.5, 0.05, 0.7, 45, 55},
    {"generator2", 8000, 12500, 50, 95, 0.03, 0.9, 95, 120},
    {"deoiler", 10000, 18000, 3, 5, 0.05, 0.5, 55, 75},
    {"hand-turn", 5500, 10000, 0.4, 0.6, 0.05, 0.5, 50, 55},
    {"hyd-pump3", 3500, 5800, 15, 42, 0.02, 0.6, 65, 85},
};

static void make_accessory(random_problem *r, uint64_t *s, size_t i, const random_wish *wish,
                           const kind *k)
{
    ts_arrange_accessory *a     = &r->accessories[i];
    const double          rpm   = 2.0 * PI / 60.0;
    const double          top   = between(s, k->slowest, k->fastest);
    const double          width = wish->narrow ? between(s, 0.02, 0.09) : between(s, 0.03, 0.18);
    const double          full  = between(s, k->weak, k->strong);

    for (size_t c = 0; c < RANDOM_CONDITIONS; c++) {
        r->most[i][c]  = rpm * top;
        r->least[i][c] = 0.0;
    }
    r->least[i][1] = rpm * top * (1.0 - width) * between(s, 0.45, 0.58);
    r->least[i][2] = rpm * top * (1.0 - width);
    r->power[i][0] = 1e3 * full * k->start * (likely(s, 0.7) ? 1.0 : 0.0);
    r->power[i][1] = 1e3 * full * k->idle;
    r->power[i][2] = 1e3 * full;
    *a             = (ts_arrange_accessory){.name        = k->name,
                                            .boxes       = wish->boxes == 1 ? 1
                                                           : likely(s, 0.6) ? 3
                                                                            : whole(s, 1, 2),
                                            .faces       = likely(s, 0.65) ? 3 : whole(s, 1, 2),
                                            .sense       = (int)whole(s, 0, 2) - 1,
                                            .body_radius = 1e-3 * floor(between(s, k->small, k->large)),
                                            .pad_mass    = 0.4,
                                            .speed_least = r->least[i],
                                            .speed_most  = r->most[i],
                                            .power       = r->power[i]};
    if (likely(s, 0.3))
        a->sense = 0;
    if (likely(s, 0.06))
        a->side = likely(s, 0.5) ? TS_SIDE_LEFT : TS_SIDE_RIGHT;
}

static void make_choices(random_problem *r, uint64_t *s, size_t b, const random_wish *wish)
{
    uint32_t z = whole(s, 24, 34);
    for (uint32_t k = 0; k < wish->z_in; k++) {
        for (uint32_t i = 0; i < wish->modules; i++)
            r->choices[b][i * wish->z_in + k] =
                (ts_arrange_choice){.module = i, .z_in = z, .speed = r->input_speed[b]};
        z += wish->narrow ? whole(s, 3, 12) : whole(s, 1, 3);
    }
}

static void make_box(random_problem *r, uint64_t *s, size_t b, const random_wish *wish)
{
    static const double radii[] = {350, 420, 500, 560};
    const double        crowd   = 0.5 * (double)wish->accessories / (double)wish->boxes;
    const double        top     = (b == 0 ? 14000.0 : 9000.0) * between(s, 0.9, 1.1);
    static const double parts[] = {0.2, 0.6, 1.0};
    const double        wrap    = wish->narrow ? between(s, 60.0, 150.0)
                                               : fmin(220.0, between(s, 26.0, 34.0) * (crowd + 1.0));

    for (size_t c = 0; c < RANDOM_CONDITIONS; c++)
        r->input_speed[b][c] = 2.0 * PI / 60.0 * top * parts[c];
    r->boxes[b] = (ts_arrange_box){
        .name         = b == 0 ? "HP" : "LP",
        .input_sense  = likely(s, 0.5) ? 1 : -1,
        .choices      = r->choices[b],
        .choice_count = (uint32_t)(wish->modules * wish->z_in),
        .radius       = 1e-3 * radii[whole(s, 0, wish->narrow ? 1 : 3)],
        .wrap_most    = PI / 180.0 * wrap,
        .side_most    = PI / 180.0 * wrap * between(s, 0.6, 0.9),
        .input_faces  = whole(s, 0, 3),
        .input_body   = {0.0, likely(s, 0.4) ? 0.05 : 0.0},
        .mass         = 3.8,
        .shaft_mass   = 0.8,
        .idler_mass   = 0.5,
        .casing       = 15.0,
    };
    make_choices(r, s, b, wish);
}

/* Second gears that slow the plane down, now and then with another module. */
static void make_steps(random_problem *r, uint64_t *s, size_t b, const random_wish *wish)
{
    const uint32_t count = wish->steps > 0 ? whole(s, 1, (uint32_t)wish->steps) : 0;
    for (uint32_t i = 0; i < count; i++) {
        const uint32_t z = whole(s, 30, 60);
        r->steps[b][i]   = (ts_arrange_step){
              .z      = z,
              .z_step = whole(s, 19, z),
              .module = likely(s, 0.6) ? TS_MODULE_SAME : whole(s, 0, (uint32_t)wish->modules - 1)};
    }
    r->boxes[b].steps      = r->steps[b];
    r->boxes[b].step_count = count;
    r->boxes[b].step_mass  = 0.2;
    r->boxes[b].step_gap   = 2e-3;
    r->boxes[b].addendum   = 1.0;
}

/* Other bevels: faster or slower by up to a quarter, lighter or heavier. */
static void make_take_offs(random_problem *r, uint64_t *s, size_t b)
{
    const uint32_t count  = r->boxes[b].choice_count;
    const double   faster = between(s, 0.8, 1.25), more = between(s, -0.4, 0.4);

    for (size_t c = 0; c < RANDOM_CONDITIONS; c++)
        r->other_speed[b][c] = faster * r->input_speed[b][c];
    for (uint32_t i = 0; i < count; i++) {
        ts_arrange_choice *other = &r->choices[b][count + i];
        *other                   = r->choices[b][i];
        other->take_off          = 1;
        other->speed             = r->other_speed[b];
        other->mass              = more;
    }
    r->boxes[b].choice_count = 2 * count;
}

void random_problem_make(random_problem *out, uint64_t seed, const random_wish *wish)
{
    static const double modules[] = {1.75, 2.0, 2.25, 2.5, 3.0, 2.75, 1.5};
    uint64_t            s         = seed * UINT64_C(0x632BE59BD9B4E019) + 1;
    const size_t        first     = wish->narrow ? whole(&s, 0, 15) : 0;

    *out = (random_problem){
        .model = {.K_bend        = 0.0067e-6,
                  .K_cont        = 0.37e-6,
                  .Y0            = 0.484,
                  .Y1            = 2.87,
                  .reversed_rate = 0.7,
                  .density       = 3100.0},
    };
    for (size_t i = 0; i < wish->modules; i++)
        out->model.modules[i] = 1e-3 * modules[wish->narrow ? (i + first) % 5 : i % 7];
    for (size_t i = 0; i < wish->accessories; i++)
        make_accessory(out, &s, i, wish, &kinds[(i + first) % 16]);
    for (size_t b = 0; b < wish->boxes; b++)
        make_box(out, &s, b, wish);
    for (size_t b = 0; b < wish->boxes && wish->steps > 0; b++)
        make_steps(out, &s, b, wish);
    for (size_t b = 0; b < wish->boxes && wish->take_offs; b++)
        make_take_offs(out, &s, b);
    const uint32_t idlers = whole(&s, 1, wish->narrow ? 2 : 3);
    for (uint32_t i = 0; i < idlers; i++)
        out->idlers[i] = whole(&s, 19 + 9 * i, 27 + 9 * i);
    out->problem = (ts_arrange_problem){
        .condition_count     = RANDOM_CONDITIONS,
        .modules             = out->model.modules,
        .module_count        = wish->modules,
        .accessories         = out->accessories,
        .accessory_count     = wish->accessories,
        .boxes               = out->boxes,
        .box_count           = wish->boxes,
        .clearance           = likely(&s, 0.5) ? TS_CLEARANCE_CHORD : TS_CLEARANCE_SECTOR,
        .gap                 = 5e-3,
        .z_least             = 17,
        .z_most              = 110,
        .idler_teeth         = out->idlers,
        .idler_teeth_count   = idlers,
        .idlers_in_row       = wish->narrow ? whole(&s, 0, 2) : 2,
        .hunting             = likely(&s, 0.6),
        .width_step          = 0.5e-3,
        .width_least         = 6e-3,
        .width_over_diameter = 0.4,
        .model               = closed_model_of(&out->model),
    };
    if (!wish->weights)
        return;
    for (size_t i = 0; i < wish->accessories; i++)
        out->accessories[i].lift = between(&s, 1.0, 25.0);
    out->problem.wrap_weight      = likely(&s, 0.6) ? between(&s, 0.5, 25.0) : 0.0;
    out->problem.servicing_weight = likely(&s, 0.8) ? between(&s, 0.01, 0.6) : 0.0;
}
