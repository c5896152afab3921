/* rating/opinion_mesh.c: what does AGMA 2101 make of a mesh and its loads that ISO 6336 was given?
 */
#include "rating/agma2101/agma2101_case.h"
#include "rating/drive_opinion_parts.h"
#include "rating/drive_teeth_parts.h"
#include "rating/iso6336/flank_film.h"

#include "catalog/agma_allowable.h"

#include <math.h>

/* ---- one gear -------------------------------------------------------------------------------- */

static const struct {
    const char *E, *nu, *s_R, *t_R, *R_z, *Ra, *HB, *f_pt, *R, *N_L, *n_L, *E_sni;
} names[2] = {
    {"E_1", "nu_1", "s_R1", "t_R1", "R_z1", "Ra_1", "HB_1", "f_pt1", "R_1", "N_L1", "n_L1",
     "E_sni1"},
    {"E_2", "nu_2", "s_R2", "t_R2", "R_z2", "Ra_2", "HB_2", "f_pt2", "R_2", "N_L2", "n_L2",
     "E_sni2"},
};

/* What ISO 6336 notes of the mesh in every condition. */
static void borrow(const ts_opinion_case *c, uint32_t m, const char *name, double value,
                   const char *lender)
{
    ts_workings_borrow(c->workings, name, value, ts_opinion_first_subject(c, m, TS_EVERY_CONDITION),
                       lender);
}

/* Returns what is missing. */
static const char *fill_strength(const ts_opinion_case *c, uint32_t m, int g, ts_agma2101_gear *out)
{
    const ts_mesh         *mesh     = &c->train->meshes[m];
    const ts_gear         *gear     = &c->train->gears[g == 0 ? mesh->driver : mesh->driven];
    const ts_gear_material material = ts_gear_material_at((size_t)gear->material.value);
    ts_agma_allowable      allowable;

    out->line = ts_agma_line_of(material.class);
    out->hard = ts_gear_class_surface_hardened(material.class);
    if (!ts_agma_allowable_of_row(&material, material.hardness, g + 1, &allowable, c->workings))
        return "an allowable stress of the material";
    if (isnan(allowable.sigma_FP))
        return "an allowable bending stress of the material";
    out->sigma_HP = allowable.sigma_HP;
    out->sigma_FP = allowable.sigma_FP;
    return NULL;
}

/* A soft gear is asked for its hardness, and its hard mate for its roughness. */
static void fill_soft(const ts_opinion_case *c, uint32_t m, int g, ts_agma2101_gear *out)
{
    const ts_iso6336_mesh           *mesh   = &c->teeth->prepared[m].mesh;
    const ts_cylindrical_pair_input *in     = &c->teeth->motion->meshes[m].pair.in;
    const bool                       pinion = g == (in->z_2 < in->z_1 ? 1 : 0);

    if (mesh->gear[g].HB > 0.0) {
        out->hardness = mesh->gear[g].HB;
        borrow(c, m, pinion ? "H_B1" : "H_B2", out->hardness, names[g].HB);
    }
    if (!out->hard || !(mesh->gear[1 - g].HB > 0.0))
        return;
    borrow(c, m, names[g].R_z, mesh->gear[g].R_z, names[g].R_z);
    out->R_a = ts_mean_roughness(mesh->gear[g].R_z, g, c->workings);
    ts_workings_borrow(c->workings, "R_a", out->R_a, ts_opinion_subject(c, m, TS_EVERY_CONDITION),
                       names[g].Ra);
}

static const char *fill_gear(const ts_opinion_case *c, uint32_t m, int g, ts_agma2101_gear *out)
{
    const ts_iso6336_gear *gear = &c->teeth->prepared[m].mesh.gear[g];

    out->E  = gear->E;
    out->nu = gear->nu;
    borrow(c, m, names[g].E, gear->E, names[g].E);
    borrow(c, m, names[g].nu, gear->nu, names[g].nu);
    borrow(c, m, names[g].E_sni, gear->E_sni, names[g].E_sni);
    out->delta_sn =
        ts_agma_thinning_of(gear->E_sni, c->teeth->prepared[m].pair.in.m_n, g, c->workings);
    if (gear->s_R > 0.0) {
        out->t_R = gear->s_R;
        borrow(c, m, names[g].t_R, gear->s_R, names[g].s_R);
    }
    fill_soft(c, m, g, out);
    return fill_strength(c, m, g, out);
}

/* ---- the mesh -------------------------------------------------------------------------------- */

static double accuracy_of(const ts_opinion_case *c, uint32_t m)
{
    const ts_iso6336_gear     *gear    = c->teeth->prepared[m].mesh.gear;
    const ts_cylindrical_pair *pair    = &c->teeth->motion->meshes[m].pair;
    const double               f_pt[2] = {gear[0].f_pt, gear[1].f_pt};
    const int                  coarser = ts_agma_coarser_gear(pair, f_pt);

    borrow(c, m, "f_pt", f_pt[coarser], names[coarser].f_pt);
    return ts_agma_accuracy_of_gear(pair, coarser, f_pt[coarser],
                                    ts_opinion_subject(c, m, TS_EVERY_CONDITION), c->workings);
}

/* A face load factor of the file holds for both standards; what ISO 6336 makes of deviations does
 * not: AGMA has a method of its own. */
static void fill_face_load(const ts_opinion_case *c, uint32_t m, ts_agma2101_input *in)
{
    const ts_train        *train = c->train;
    const ts_iso6336_load *load  = &ts_opinion_first(c, m, 0)->load;
    const ts_box_shaft    *first = train->shafts[train->meshes[m].driver_shaft].record;
    const ts_box_shaft    *last  = train->shafts[train->meshes[m].driven_shaft].record;

    in->overhung = (first != NULL && first->support.value == TS_OVERHUNG) ||
                   (last != NULL && last->support.value == TS_OVERHUNG);
    if (load->face != TS_FACE_LOAD_GIVEN)
        return;
    in->K_H = load->K_Hbeta;
    borrow(c, m, "K_H", in->K_H, "K_Hbeta");
}

const char *ts_opinion_prepare_mesh(const ts_opinion_case *c, uint32_t m)
{
    const ts_teeth         *teeth    = c->teeth;
    const ts_mesh_strength *strength = &teeth->strength[m];

    if (strength->missing != NULL || strength->fault != NULL)
        return strength->missing != NULL ? strength->missing : strength->fault;
    ts_workings_about(c->workings, c->opinion->mesh[m].subject, TS_EVERY_CONDITION);
    if (c->workings != NULL)
        ts_teeth_borrow_pair(c->teeth->motion, m, c->workings);
    ts_agma2101_input in = ts_agma2101_input_of(&teeth->motion->meshes[m].pair);
    for (int g = 0; g < 2; g++) {
        const char *missing = fill_gear(c, m, g, &in.gear[g]);

        if (missing != NULL)
            return missing;
    }
    in.accuracy = accuracy_of(c, m);
    fill_face_load(c, m, &in);
    (void)ts_agma2101_pair_prepare(&in, &c->opinion->prepared[m], c->workings);
    return c->opinion->prepared[m].missing;
}

/* ---- the load -------------------------------------------------------------------------------- */

void ts_opinion_rate(const ts_opinion_case *c, uint32_t m, uint32_t condition)
{
    const ts_mesh_case    *one      = ts_opinion_first(c, m, condition);
    ts_workings           *workings = c->workings;
    const ts_subject       iso      = ts_opinion_first_subject(c, m, (int32_t)condition);
    const ts_agma2101_case in       = {.T_1     = one->load.T_1,
                                       .omega_1 = one->load.omega_1,
                                       .d_w1    = c->teeth->motion->meshes[m].pair.d_w1,
                                       .N_L     = {one->load.N_L[0], one->load.N_L[1]},
                                       .R       = {one->load.R[0], one->load.R[1]},
                                       .K_A     = one->load.K_A,
                                       .K_gamma = one->load.K_gamma};

    ts_workings_about(workings, c->opinion->mesh[m].subject, (int32_t)condition);
    ts_workings_borrow(workings, "T_1", in.T_1, iso, "T_1");
    ts_workings_borrow(workings, "omega_1", in.omega_1, iso, "omega_1");
    ts_workings_borrow(workings, "K_A", in.K_A, iso, "K_A");
    ts_workings_borrow(workings, "K_gamma", in.K_gamma, iso, "K_gamma");
    for (int g = 0; g < 2; g++) {
        ts_workings_borrow(workings, names[g].n_L, in.N_L[g], iso, names[g].N_L);
        ts_workings_borrow(workings, names[g].R, in.R[g], iso, names[g].R);
    }
    const ts_agma2101_load load = ts_agma2101_load_of(&in, workings);
    ts_agma2101_rate(&c->opinion->prepared[m], &load, ts_opinion_at(c, m, condition), workings);
}
