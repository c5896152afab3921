/* oil/heat_gather.c: which places of a drive turn power into heat? */
#include "oil/heat_parts.h"

#include "rating/iso6336/flank_film.h"

#include <math.h>

const char *ts_heat_kind_says(ts_heat_kind kind)
{
    static const char *const says[TS_HEAT_KINDS] = {
        [TS_HEAT_TEETH]        = "teeth",
        [TS_HEAT_WINDAGE]      = "windage",
        [TS_HEAT_OIL]          = "churned and thrown oil",
        [TS_HEAT_BEARING_OIL]  = "oil in bearings",
        [TS_HEAT_BEARING_LOAD] = "load of bearings",
        [TS_HEAT_SEAL]         = "seals",
        [TS_HEAT_SPLINE]       = "splines",
    };
    return says[kind];
}

/* ---- meshes ---------------------------------------------------------------------------------- */

static double roughness_of(const ts_train *train, const ts_mesh *mesh, int g)
{
    const ts_tooth_system *system = train->gears[g == 0 ? mesh->driver : mesh->driven].system;
    const ts_measure       R_z =
        mesh->kind == TS_MESH_BEVEL ? mesh->bevels->flank_roughness : system->flank_roughness;

    return ts_mean_roughness(R_z.value, g, NULL);
}

static ts_pick way_of(const ts_drive *drive, const ts_train *train, const ts_mesh *mesh)
{
    const ts_spool_drive *one = &drive->drive[train->shafts[mesh->driven_shaft].drive];

    return mesh->bevels == &one->take_off.bevels ? one->take_off.lubrication : one->box.lubrication;
}

static bool dips(const ts_drive *drive, const ts_train *train, const ts_mesh *mesh)
{
    const ts_pick way = way_of(drive, train, mesh);

    return ts_pick_known(way) && way.value == TS_OILED_BY_DIPPING;
}

static bool is_told_unknown(const ts_drive *drive, const ts_train *train, const ts_mesh *mesh)
{
    return way_of(drive, train, mesh).standing == TS_UNKNOWN;
}

/* Gear 1 is the smaller: the mean rolling speed of Anderson and Loewenthal counts from it. */
static ts_loss_mesh cylindrical_teeth(const ts_cylindrical_pair *pair)
{
    const bool   swap   = pair->u < 1.0;
    const double u      = swap ? 1.0 / pair->u : pair->u;
    const double eps[2] = {
        ts_tip_contact_ratio(pair->d_a1, pair->d_b1, pair->alpha_wt, pair->p_bt, 1, NULL),
        ts_tip_contact_ratio(pair->d_a2, pair->d_b2, pair->alpha_wt, pair->p_bt, 2, NULL)};
    const double d_w1 = swap ? pair->d_w2 : pair->d_w1;

    return (ts_loss_mesh){
        .z_1      = swap ? pair->in.z_2 : pair->in.z_1,
        .u        = u,
        .beta_b   = pair->beta_b,
        .alpha_wt = pair->alpha_wt,
        .eps_1    = eps[swap ? 1 : 0],
        .eps_2    = eps[swap ? 0 : 1],
        .g_alpha  = pair->g_alpha,
        .r_b1     = (swap ? pair->d_b2 : pair->d_b1) / 2.0,
        .r_b2     = (swap ? pair->d_b1 : pair->d_b2) / 2.0,
        .r_w1     = d_w1 / 2.0,
        .rho_redC = ts_loss_radius(d_w1, u, pair->alpha_wt, pair->beta_b, NULL),
    };
}

static ts_loss_mesh bevel_teeth(const ts_bevel_virtual *v)
{
    const int    one = v->u_v < 1.0 ? 1 : 0, two = 1 - one;
    const double u = one == 1 ? 1.0 / v->u_v : v->u_v;

    return (ts_loss_mesh){
        .z_1      = v->z_v[one],
        .u        = u,
        .beta_b   = v->beta_vb,
        .alpha_wt = v->alpha_vet,
        .eps_1 = ts_tip_contact_ratio(v->d_va[one], v->d_vb[one], v->alpha_vet, v->p_vet, 1, NULL),
        .eps_2 = ts_tip_contact_ratio(v->d_va[two], v->d_vb[two], v->alpha_vet, v->p_vet, 2, NULL),
        .g_alpha  = v->g_valpha,
        .r_b1     = v->d_vb[one] / 2.0,
        .r_b2     = v->d_vb[two] / 2.0,
        .r_w1     = v->d_v[one] / 2.0,
        .rho_redC = ts_loss_radius(v->d_v[one], u, v->alpha_vet, v->beta_vb, NULL),
    };
}

static ts_heat_gear gear_of(const ts_heat *heat, uint32_t m, int side)
{
    const ts_train       *train = heat->motion->train;
    const ts_mesh        *mesh  = &train->meshes[m];
    const ts_gear        *gear  = &train->gears[side == 0 ? mesh->driver : mesh->driven];
    const ts_mesh_motion *known = &heat->motion->meshes[m];
    ts_heat_gear          out   = {.shaft = gear->shaft, .F = gear->face.value};

    if (mesh->kind == TS_MESH_BEVEL) {
        const double d_m = side == 0 ? known->bevel.d_m1 : known->bevel.d_m2;
        out.R            = d_m / 2.0;
        out.d_f          = d_m - 2.0 * known->teeth.h_fm[side];
        out.m_n          = known->bevel.m_mn;
        return out;
    }
    out.R   = (side == 0 ? known->pair.d_1 : known->pair.d_2) / 2.0;
    out.d_f = side == 0 ? known->pair.d_f1 : known->pair.d_f2;
    out.m_n = known->pair.in.m_n;
    return out;
}

/* A gear of several meshes churns the air once: with the mesh that drives it, or else with the
 * first that it drives. */
static bool is_counted(const ts_train *train, uint32_t m, uint32_t gear, int side)
{
    if (side == 1)
        return true;
    for (uint32_t other = 0; other < train->mesh_count; other++)
        if (train->meshes[other].driven == gear ||
            (other < m && train->meshes[other].driver == gear))
            return false;
    return true;
}

static void open_mesh(ts_heat *heat, uint32_t m)
{
    const ts_train       *train = heat->motion->train;
    const ts_mesh        *mesh  = &train->meshes[m];
    const ts_mesh_motion *known = &heat->motion->meshes[m];
    ts_heat_place        *place = &heat->places[m];
    const bool            bevel = mesh->kind == TS_MESH_BEVEL;

    if (is_told_unknown(heat->drive, train, mesh)) {
        heat->missing = "how oil comes to the teeth (`lubrication`)";
        return;
    }
    if (!known->solved || (bevel && known->teeth_fault != NULL)) {
        heat->missing  = "the shape of the teeth";
        heat->no_teeth = true;
        return;
    }
    place->teeth = bevel ? bevel_teeth(&known->virt) : cylindrical_teeth(&known->pair);
    place->b =
        bevel ? known->virt.b_v
              : fmin(train->gears[mesh->driver].face.value, train->gears[mesh->driven].face.value);
    place->teeth.b     = place->b;
    place->teeth.Ra    = (roughness_of(train, mesh, 0) + roughness_of(train, mesh, 1)) / 2.0;
    place->teeth.X_L   = heat->oil->X_L;
    place->eps_alpha   = bevel ? known->virt.eps_valpha : known->pair.eps_alpha;
    place->H_v         = ts_tooth_loss_factor(&place->teeth, NULL);
    place->alpha_n     = bevel ? known->alpha_wn : known->pair.in.alpha_n;
    place->m           = bevel ? known->bevel.m_mn : known->pair.in.m_n;
    place->dips        = dips(heat->drive, train, mesh);
    place->gear_count  = 0;
    double known_gears = 0.0;
    for (int side = 0; side < 2; side++)
        if (is_counted(train, m, side == 0 ? mesh->driver : mesh->driven, side))
            place->gears[place->gear_count++] = gear_of(heat, m, side);
    for (int g = 0; g < place->gear_count; g++)
        known_gears +=
            place->gears[g].R + place->gears[g].F + place->gears[g].d_f + place->gears[g].m_n;
    if (isnan(place->H_v + place->b + place->teeth.Ra + place->teeth.rho_redC + known_gears))
        heat->missing = "the shape or roughness of the teeth";
}

/* ---- bearings and pads ----------------------------------------------------------------------- */

/* Harris, Rolling Bearing Analysis, friction torque: oil jets, and an oil bath (from memory). */
static const struct {
    double f_0[2]; /* [ts_lubrication] */
    double z, y;   /* f_1 = z (P_0/C_0r)^y */
    double mu;     /* ISO/TR 14179-1:2001 (from memory) */
} kinds[] = {
    [TS_BEARING_DEEP_GROOVE]        = {{4.0, 2.0}, 0.0005, 0.55, 0.0015},
    [TS_BEARING_ANGULAR_CONTACT]    = {{6.6, 3.3}, 0.001, 0.33, 0.0013},
    [TS_BEARING_CYLINDRICAL_ROLLER] = {{3.0, 3.0}, 0.0003, 0.0, 0.0011},
};

static void open_bearing(ts_heat *heat, ts_heat_place *place)
{
    const ts_line         *line    = &heat->lines->lines[place->line];
    const ts_line_bearing *bearing = &line->bearings[place->seat];
    const ts_bearing_form  form    = bearing->bearing.form;
    const ts_box          *box     = &heat->drive->drive[place->drive].box;
    const bool             dip =
        ts_pick_known(box->lubrication) && box->lubrication.value == TS_OILED_BY_DIPPING;

    place->missing = NULL;
    if (!bearing->there || bearing->fault != NULL || line->missing != NULL || line->fault != NULL) {
        place->missing = !bearing->there          ? "a bearing"
                         : bearing->fault != NULL ? "a bearing that is known"
                                                  : "the loads of the shaft";
        heat->skipped += bearing->there;
        return;
    }
    place->d     = bearing->bearing.d;
    place->d_m   = (bearing->bearing.d + bearing->bearing.D) / 2.0;
    place->alpha = bearing->bearing.alpha;
    place->f_0   = kinds[form].f_0[dip ? TS_OILED_BY_DIPPING : TS_OILED_BY_JETS] *
                 (double)bearing->bearing.rows;
    place->f_1z  = kinds[form].z;
    place->f_1y  = kinds[form].y;
    place->mu    = kinds[form].mu;
    place->C_0r  = bearing->ability.C_0r;
    place->rolls = form == TS_BEARING_CYLINDRICAL_ROLLER;
}

/* The bearing of a box shaft beside one of its pads; TS_NOWHERE: none is known. */
static uint32_t bearing_beside(const ts_heat *heat, uint32_t shaft, ts_face_side face)
{
    uint32_t found = TS_NOWHERE;

    for (uint32_t p = heat->bearing_begin; p < heat->pad_begin; p++)
        if (heat->places[p].shaft == shaft && heat->places[p].missing == NULL &&
            (found == TS_NOWHERE || face == TS_REAR))
            found = p;
    return found;
}

static void open_pad(ts_heat *heat, ts_heat_place *place)
{
    const ts_pad  *pad  = &heat->motion->train->pads[place->pad];
    const uint32_t near = bearing_beside(heat, pad->shaft, pad->face);

    place->fed   = near != TS_NOWHERE ? near : heat->motion->train->shafts[pad->shaft].mesh;
    place->d_sh  = near != TS_NOWHERE ? heat->places[near].d : 0.0;
    place->slope = TS_HEAT_TILT;
    for (uint32_t i = 0; i < heat->splines->count; i++)
        if (heat->splines->items[i].pad == place->pad && heat->splines->items[i].slope > 0.0)
            place->slope = heat->splines->items[i].slope;
    place->missing = pad->use == TS_PAD_ACCESSORY ? NULL : "an accessory";
}

void ts_heat_gather(ts_heat *heat)
{
    heat->missing  = heat->oil->missing;
    heat->skipped  = 0;
    heat->no_teeth = false;
    for (uint32_t m = 0; m < heat->bearing_begin && heat->missing == NULL; m++)
        open_mesh(heat, m);
    for (uint32_t p = heat->bearing_begin; p < heat->pad_begin; p++)
        open_bearing(heat, &heat->places[p]);
    for (uint32_t p = heat->pad_begin; p < heat->place_count; p++)
        open_pad(heat, &heat->places[p]);
}
