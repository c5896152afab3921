/* response/drive_torsion.c: which bodies and springs is a drive in torsion?
 */
#include "response/drive_torsion.h"

#include "catalog/metal.h"
#include "element/round_torsion.h"

#include <math.h>
#include <string.h>

#define MEAN_STIFFNESS                                                                             \
    2e10 /* Pa, 20 N/(mm um) of face; ISO 6336-1 for usual gears (from memory)                     \
          */

static const double two_pi = 6.28318530717958647693;

typedef struct builder {
    const ts_twist_question *ask;
    const ts_train          *train;
    const ts_motion         *motion;
    ts_arena                *arena;
    ts_drive_twist          *out;
    ts_twist_body           *bodies;
    ts_twist_spring         *springs;
    uint32_t                *body_of; /* [shaft]: its body; of a radial shaft the inner end */
    double                   G;
} builder;

/* ---- bodies -----------------------------------------------------------------------------------
 */

static uint32_t add_body(builder *b, const char *name, uint32_t shaft)
{
    const uint32_t at = (uint32_t)b->out->model.body_count++;

    b->bodies[at] = (ts_twist_body){0.0, at, 1.0};
    b->out->parts[at] =
        (ts_twist_part){name, shaft, -1, ts_rational_value(b->motion->shafts[shaft].ratio)};
    return at;
}

static const char *joined(builder *b, const char *name, const char *end)
{
    const size_t long_name = strlen(name), long_end = strlen(end);
    char        *text = TS_TAKE(b->arena, char, long_name + long_end + 1);

    if (text == NULL)
        return name;
    memcpy(text, name, long_name + 1);
    memcpy(text + long_name, end, long_end + 1);
    return text;
}

static bool is_ours(const builder *b, uint32_t shaft)
{
    const ts_shaft *one = &b->train->shafts[shaft];

    if (one->kind == TS_SHAFT_SPOOL)
        return one->spool == (uint32_t)b->ask->drive->drive[b->ask->tapped].spool;
    return one->drive == b->ask->tapped;
}

static void add_shafts(builder *b)
{
    for (uint32_t s = 0; s < b->train->shaft_count; s++) {
        if (!is_ours(b, s))
            continue;
        const char *name = b->train->shafts[s].name;
        if (b->train->shafts[s].kind != TS_SHAFT_TOWER) {
            b->body_of[s] = add_body(b, name, s);
            continue;
        }
        b->body_of[s] = add_body(b, joined(b, name, ", inner end"), s);
        (void)add_body(b, joined(b, name, ", outer end"), s);
    }
}

static void lack(builder *b, const char *missing, const char *part)
{
    if (b->out->missing != NULL)
        return;
    b->out->missing = missing;
    b->out->lacks   = part;
}

static void add_spool_inertia(builder *b)
{
    const ts_spool *spool = &b->ask->drive->spools[b->ask->drive->drive[b->ask->tapped].spool];

    for (uint32_t s = 0; s < b->train->shaft_count; s++)
        if (is_ours(b, s) && b->train->shafts[s].kind == TS_SHAFT_SPOOL) {
            if (ts_measure_known(spool->inertia))
                b->bodies[b->body_of[s]].J += spool->inertia.value;
            else
                lack(b, "the inertia of the spool", spool->name);
        }
}

/* A bevel stands on one end of a radial shaft, what is all of the shaft half on either. */
static void add_to_tower(builder *b, const ts_mass_part *part, uint32_t inner)
{
    if (part->kind != TS_MASS_BEVEL) {
        b->bodies[inner].J += part->J.value / 2.0;
        b->bodies[inner + 1].J += part->J.value / 2.0;
        return;
    }
    const bool driven = strcmp(part->J_name, "J_bevel2") == 0;
    b->bodies[driven ? inner : inner + 1].J += part->J.value;
}

static void add_parts(builder *b)
{
    for (size_t i = 0; i < b->ask->mass->part_count; i++) {
        const ts_mass_part *part = &b->ask->mass->parts[i];
        if (part->drive != b->ask->tapped || part->J_name == NULL ||
            part->kind == TS_MASS_ACCESSORY)
            continue;
        if (part->J_missing != NULL)
            lack(b, part->J_missing, part->name);
        else if (b->train->shafts[part->shaft].kind == TS_SHAFT_TOWER)
            add_to_tower(b, part, b->body_of[part->shaft]);
        else
            b->bodies[b->body_of[part->shaft]].J += part->J.value;
    }
}

/* ---- springs ----------------------------------------------------------------------------------
 */

static void add_spring(builder *b, ts_twist_link link, ts_twist_spring spring, bool assumed)
{
    const size_t at = b->out->model.spring_count++;
    const double i  = b->out->parts[spring.b].ratio; /* of the driven side */

    b->springs[at]     = spring;
    b->out->joints[at] = (ts_twist_joint){
        link, spring.a, spring.b, TS_NOWHERE, spring.k * spring.g_b * spring.g_b * i * i, assumed};
}

/* Of a tube; NaN without a shape. */
static double shaft_stiffness(const builder *b, double l, double d_o, double d_i)
{
    return ts_torsion_of_twist(1.0, l, b->G, ts_torsion_J(d_o, d_i, NULL), NULL);
}

static void add_towers(builder *b)
{
    for (uint32_t s = 0; s < b->train->shaft_count; s++) {
        if (!is_ours(b, s) || b->train->shafts[s].kind != TS_SHAFT_TOWER)
            continue;
        const ts_tower_shaft *tower = &b->ask->drive->drive[b->ask->tapped].tower_shaft;
        const double          k =
            shaft_stiffness(b, tower->length.value, tower->outside.value, tower->bore.value);
        if (!(k > 0.0)) {
            lack(b, "length, outside or bore", b->train->shafts[s].name);
            continue;
        }
        add_spring(b, TS_LINK_SHAFT,
                   (ts_twist_spring){b->body_of[s], b->body_of[s] + 1, 1.0, 1.0, k}, false);
    }
}

/* Radii at which the mesh acts: base circles; of bevels the mean circles, turned to the tooth's
 * normal. */
static void radii_of(const builder *b, uint32_t m, double radius[2])
{
    const ts_mesh_motion *mesh = &b->motion->meshes[m];

    if (b->train->meshes[m].kind == TS_MESH_CYLINDRICAL) {
        radius[0] = mesh->pair.d_b1 / 2.0;
        radius[1] = mesh->pair.d_b2 / 2.0;
        return;
    }
    const double alpha_t = atan(tan(mesh->bevel.in.alpha_n) / cos(mesh->bevel.in.beta_m));
    radius[0]            = mesh->bevel.d_m1 / 2.0 * cos(alpha_t);
    radius[1]            = mesh->bevel.d_m2 / 2.0 * cos(alpha_t);
}

static double face_of(const builder *b, uint32_t m)
{
    const ts_mesh *mesh = &b->train->meshes[m];

    return fmin(b->train->gears[mesh->driver].face.value, b->train->gears[mesh->driven].face.value);
}

static void add_meshes(builder *b)
{
    for (uint32_t m = 0; m < b->train->mesh_count; m++) {
        const ts_mesh *mesh = &b->train->meshes[m];
        double         radius[2];
        if (!is_ours(b, mesh->driven_shaft))
            continue;
        const double known = b->ask->mesh_k[m];
        const double k     = isnan(known) ? MEAN_STIFFNESS * face_of(b, m) : known;
        radii_of(b, m, radius);
        if (!b->motion->meshes[m].solved || !(k > 0.0)) {
            lack(b, "the geometry of its teeth", b->train->shafts[mesh->driven_shaft].name);
            continue;
        }
        const bool outer = b->train->shafts[mesh->driver_shaft].kind == TS_SHAFT_TOWER;
        add_spring(b, TS_LINK_MESH,
                   (ts_twist_spring){b->body_of[mesh->driver_shaft] + (outer ? 1 : 0),
                                     b->body_of[mesh->driven_shaft], radius[0], radius[1], k},
                   isnan(known));
        b->out->joints[b->out->model.spring_count - 1].mesh = m;
    }
}

/* The rotor of an accessory hangs on the half of its shaft. */
static void add_pad(builder *b, const ts_mass_part *part, int32_t accessory)
{
    const ts_measure      depth   = b->ask->drive->drive[b->ask->tapped].box.depth;
    const ts_beam_section section = ts_mass_section(b->ask->mass, part->shaft);

    if (part->J_missing != NULL || !(part->J.value > 0.0)) {
        b->out->left_out++;
        return;
    }
    if (isnan(section.d_o) || !ts_measure_known(depth)) {
        lack(b, "the thickness of its shaft", part->name);
        return;
    }
    const uint32_t at           = add_body(b, joined(b, part->name, ", rotor"), part->shaft);
    b->bodies[at].J             = part->J.value;
    b->out->parts[at].accessory = accessory;
    add_spring(b, TS_LINK_PAD,
               (ts_twist_spring){b->body_of[part->shaft], at, 1.0, 1.0,
                                 shaft_stiffness(b, depth.value / 2.0, section.d_o, section.d_i)},
               true);
}

static void add_pads(builder *b)
{
    size_t next = 0;

    for (uint32_t p = 0; p < b->train->pad_count; p++) {
        const ts_pad *pad = &b->train->pads[p];
        if (pad->accessory < 0 || !is_ours(b, pad->shaft))
            continue;
        while (next < b->ask->mass->part_count &&
               (b->ask->mass->parts[next].kind != TS_MASS_ACCESSORY ||
                b->ask->mass->parts[next].node != b->ask->drive->accessories[pad->accessory].node))
            next++;
        if (next == b->ask->mass->part_count)
            return;
        const ts_mass_part *part = &b->ask->mass->parts[next];
        if (!part->clutch || b->ask->cranked)
            add_pad(b, part, pad->accessory);
        next = 0;
    }
}

/* ---- the whole --------------------------------------------------------------------------------
 */

static bool open_builder(builder *b)
{
    const size_t most = 2 * (size_t)b->train->shaft_count + b->train->pad_count + 2;
    const size_t more = most + b->train->mesh_count;

    b->bodies      = TS_TAKE(b->arena, ts_twist_body, most);
    b->springs     = TS_TAKE(b->arena, ts_twist_spring, more);
    b->body_of     = TS_TAKE(b->arena, uint32_t, b->train->shaft_count);
    b->out->parts  = TS_TAKE(b->arena, ts_twist_part, most);
    b->out->joints = TS_TAKE(b->arena, ts_twist_joint, more);
    return b->bodies != NULL && b->springs != NULL && b->body_of != NULL && b->out->parts != NULL &&
           b->out->joints != NULL;
}

bool ts_drive_twist_has_clutch(const ts_mass *mass, uint32_t tapped)
{
    for (size_t i = 0; i < mass->part_count; i++)
        if (mass->parts[i].drive == tapped && mass->parts[i].clutch &&
            mass->parts[i].J_missing == NULL)
            return true;
    return false;
}

ts_status ts_drive_twist_solve(const ts_twist_question *question, ts_arena *arena,
                               ts_drive_twist *out)
{
    const ts_motion *motion = question->mass->power->motion;
    builder          b      = {
                      .ask = question, .train = motion->train, .motion = motion, .arena = arena, .out = out};
    ts_metal metal = {.G = (double)NAN};

    *out = (ts_drive_twist){.drive   = question->tapped,
                            .cranked = question->cranked,
                            .clutch  = ts_drive_twist_has_clutch(question->mass, question->tapped)};
    if (!open_builder(&b))
        return TS_NO_MEMORY;
    if (ts_pick_known(question->drive->mass.shaft_metal))
        (void)ts_metal_named(ts_text_of(ts_shaft_metals[question->drive->mass.shaft_metal.value]),
                             &metal);
    b.G = isnan(metal.G) ? ts_shear_modulus(metal.E, metal.nu) : metal.G;
    add_shafts(&b);
    add_spool_inertia(&b);
    add_parts(&b);
    add_towers(&b);
    add_meshes(&b);
    add_pads(&b);
    out->model.bodies           = b.bodies;
    out->model.springs          = b.springs;
    out->model.coordinate_count = out->model.body_count;
    if (out->missing != NULL)
        return TS_OK;
    out->fault = ts_twist_solve(&out->model, arena, &out->modes);
    return out->fault == TS_TWIST_NO_MEMORY ? TS_NO_MEMORY : TS_OK;
}

/* ---- what may excite it -----------------------------------------------------------------------
 */

static void meet(ts_twist_meeting *best, double f, double frequency, ts_twist_meeting fresh)
{
    if (!(frequency > 0.0))
        return;
    fresh.off = frequency / f - 1.0;
    if (best->condition < 0 || fabs(fresh.off) < fabs(best->off))
        *best = fresh;
}

bool ts_drive_is_cranked(const ts_power *power, uint32_t drive, uint32_t c)
{
    const ts_train *train = power->motion->train;

    for (uint32_t p = 0; p < train->pad_count; p++)
        if (train->shafts[train->pads[p].shaft].drive == drive &&
            power->pad[c * train->pad_count + p].clutch_state == TS_CLUTCH_STATE_ENGAGED)
            return true;
    return false;
}

static void meet_in(const ts_drive_twist *twist, const ts_motion *motion, uint32_t c, double f,
                    ts_twist_meeting *best)
{
    const ts_train *train = motion->train;

    for (size_t i = 0; i < twist->model.body_count; i++) {
        const uint32_t s = twist->parts[i].shaft;
        const double   n = motion->speed[c * train->shaft_count + s] / two_pi;
        for (int order = 1; order <= 2; order++)
            meet(best, f, n * order, (ts_twist_meeting){(int32_t)c, s, TS_NOWHERE, order, 0.0});
    }
    for (uint32_t m = 0; m < train->mesh_count; m++)
        if (train->shafts[train->meshes[m].driven_shaft].drive == twist->drive)
            meet(best, f, motion->frequency[c * train->mesh_count + m],
                 (ts_twist_meeting){(int32_t)c, TS_NOWHERE, m, 1, 0.0});
}

ts_twist_meeting ts_twist_meeting_of(const ts_drive_twist *twist, const ts_power *power,
                                     size_t mode)
{
    const double     f    = twist->modes.omega[mode] / two_pi;
    ts_twist_meeting best = {.condition = -1, .shaft = TS_NOWHERE, .mesh = TS_NOWHERE};

    for (uint32_t c = 0; c < power->motion->condition_count; c++)
        if (!twist->clutch || ts_drive_is_cranked(power, twist->drive, c) == twist->cranked)
            meet_in(twist, power->motion, c, f, &best);
    return best;
}
