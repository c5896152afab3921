/* rating/line_askew.c: how far out of parallel do bent and twisted shafts lay the teeth of a mesh?
 *
 * Taken     At both ends of the face that the gears have in common, along the force of the mesh in
 *           the transverse plane, which is the plane of action: the bent line of either shaft on
 *           its bearings as they give way, and the twist of either gear under a load that lies
 *           evenly on the face.  What is the same at both ends costs nothing; the difference is
 *           f_sh.
 * Even      A load that lies evenly bends both halves of a face alike, as the force in its middle
 *           does, so the beam's ends are those of the even load as far as they differ.
 */
#include "rating/drive_lines_parts.h"

#include "rating/drive_teeth.h"

#include <math.h>

#define CUT   "derived: balance of all torques before it"
#define PLANE "derived: part along the force of the mesh, which is the plane of action"
#define DEFLECTED                                                                                  \
    "ISO 6336-1:2019 (as in 2006), clause 7.5 (from memory): from deflections that are computed"

static const ts_formula T_front_formula  = {"T_front", "torque in the shaft before the gear", "N.m",
                                            "-sum(T)", CUT};
static const ts_formula T_rear_formula   = {"T_rear", "torque in the shaft behind the gear", "N.m",
                                            "T_front - T", CUT};
static const ts_formula bend_formulas[2] = {
    {"bend_1", "by how much more the rear end of gear 1 gives way than its front end", "m",
     "(dv_y1*n_y + dv_z1*n_z)*b_common/b_1", PLANE},
    {"bend_2", "by how much more the rear end of gear 2 gives way than its front end", "m",
     "(dv_y2*n_y + dv_z2*n_z)*b_common/b_2", PLANE},
};
#define TWIST "derived: torque of a load that lies evenly on the face, over G J of the body"
static const ts_formula twist_formulas[2] = {
    {"twist_1", "by how much the rear end of gear 1 turns ahead of its front end, at its teeth",
     "m", "(T_front1 + T_rear1)/2/k_twist1*r_n1*b_common/b_1", TWIST},
    {"twist_2", "by how much the rear end of gear 2 turns ahead of its front end, at its teeth",
     "m", "(T_front2 + T_rear2)/2/k_twist2*r_n2*b_common/b_2", TWIST},
};
static const ts_formula askew_formula = {
    "askew", "by how much more the teeth part at their rear ends than at their front ends", "m",
    "bend_2 + twist_2 - bend_1 - twist_1", DEFLECTED};
static const ts_formula f_sh_formula = {
    "f_sh", "misalignment of the mesh by the deflection of shafts and bearings", "m", "abs(askew)",
    DEFLECTED};

/* ---- one gear -------------------------------------------------------------------------------- */

typedef struct askew_gear {
    const ts_line *line;
    int            seat;
    double         dv[2]; /* m, rear less front end of its own face   */
    double         T_front, T_rear;
    double         r_n; /* m, arm of the force of the mesh about the axis */
    double         bend, twist;
} askew_gear;

typedef struct askew_mesh {
    double     n[2]; /* direction of the force on the driven gear, y and z */
    double     b;    /* m, the common face */
    askew_gear gear[2];
    double     askew;
} askew_mesh;

static double torque_before(const ts_line *line, int seat, const ts_line_case *one)
{
    double T = one->pad[0];

    for (int g = 0; g < line->gear_count; g++)
        if (line->gears[g].x < line->gears[seat].x)
            T += one->load[g].M[0];
    return -T;
}

static void measure_gear(const ts_lines_case *c, uint32_t m, uint32_t condition, int g,
                         askew_mesh *all)
{
    askew_gear         *own    = &all->gear[g];
    const ts_mesh      *mesh   = &c->train->meshes[m];
    const uint32_t      number = c->lines->of_gear[g == 0 ? mesh->driver : mesh->driven];
    const ts_line_case *one    = ts_line_case_at(c, number, condition);
    const ts_line_gear *gear   = &own->line->gears[own->seat];
    const double        share  = all->b / gear->width;
    double              r[3];

    for (int plane = 0; plane < 2; plane++)
        own->dv[plane] = one->state[own->seat].dv[plane];
    ts_line_arm(c->lines, m, g, own->line, r);
    own->r_n     = r[1] * all->n[1] - r[2] * all->n[0];
    own->T_front = torque_before(own->line, own->seat, one);
    own->T_rear  = own->T_front - one->load[own->seat].M[0];
    own->bend    = (own->dv[0] * all->n[0] + own->dv[1] * all->n[1]) * share;
    own->twist   = (own->T_front + own->T_rear) / 2.0 / gear->k_twist * own->r_n * share;
}

/* ---- one mesh -------------------------------------------------------------------------------- */

/* False: a shaft of it is not computed. */
static bool find_gears(const ts_lines_case *c, uint32_t m, askew_mesh *all)
{
    const ts_mesh *mesh = &c->train->meshes[m];

    if (mesh->kind != TS_MESH_CYLINDRICAL)
        return false;
    for (int g = 0; g < 2; g++) {
        const uint32_t gear = g == 0 ? mesh->driver : mesh->driven;
        if (c->lines->of_gear[gear] == TS_NOWHERE)
            return false;
        all->gear[g].line = &c->lines->lines[c->lines->of_gear[gear]];
        all->gear[g].seat = c->lines->seat_of[gear];
        if (all->gear[g].line->fault != NULL || all->gear[g].line->missing != NULL)
            return false;
    }
    all->b = fmin(all->gear[0].line->gears[all->gear[0].seat].width,
                  all->gear[1].line->gears[all->gear[1].seat].width);
    return true;
}

/* False: nothing presses the teeth, or it is not known what. */
static bool find_way(const ts_lines_case *c, uint32_t m, uint32_t condition, askew_mesh *all)
{
    const ts_mesh_load *load = &c->lines->power->mesh[(size_t)condition * c->train->mesh_count + m];
    const ts_line      *line = all->gear[0].line;
    double              F[2] = {0.0, 0.0};

    for (int i = 0; i < 3; i++) {
        F[0] += load->force[i] * line->across[i];
        F[1] += load->force[i] * line->up[i];
    }
    const double most = sqrt(F[0] * F[0] + F[1] * F[1]);
    if (load->flow == TS_FLOW_NONE || !(most > 0.0))
        return false;
    all->n[0] = F[0] / most;
    all->n[1] = F[1] / most;
    return true;
}

static void measure_mesh(const ts_lines_case *c, uint32_t m, uint32_t condition, askew_mesh *all)
{
    measure_gear(c, m, condition, 0, all);
    measure_gear(c, m, condition, 1, all);
    all->askew = all->gear[1].bend + all->gear[1].twist - all->gear[0].bend - all->gear[0].twist;
}

/* ---- workings -------------------------------------------------------------------------------- */

static void note_torques(const ts_lines_case *c, const askew_gear *own, int32_t condition)
{
    ts_input     in[TS_LINE_GEARS_MOST + 1];
    size_t       count = 0;
    const double pad =
        ts_line_at(c->lines, (uint32_t)(own->line - c->lines->lines), (uint32_t)condition)->pad[0];
    const ts_line_case *one =
        ts_line_at(c->lines, (uint32_t)(own->line - c->lines->lines), (uint32_t)condition);
    const double T_front = own->T_front, T = one->load[own->seat].M[0];

    ts_workings_about(c->workings, own->line->gears[own->seat].node, condition);
    ts_workings_row(c->workings, "T", pad, "N.m",
                    "derived: torque at the front end of the shaft, of its pad");
    in[count++] = (ts_input){"T", pad};
    for (int g = 0; g < own->line->gear_count; g++)
        if (own->line->gears[g].x < own->line->gears[own->seat].x) {
            ts_workings_borrow(c->workings, "T", one->load[g].M[0],
                               (ts_subject){own->line->gears[g].node, condition}, "T");
            in[count++] = (ts_input){"T", one->load[g].M[0]};
        }
    (void)ts_step_list(c->workings, &T_front_formula, T_front, in, count);
    (void)TS_STEP(c->workings, T_rear_formula, own->T_rear, T_front, T);
}

static void note_gear(const ts_lines_case *c, ts_subject mesh, const askew_mesh *all, int g)
{
    static const char *const names[2][8] = {
        {"dv_y1", "dv_z1", "b_1", "T_front1", "T_rear1", "k_twist1", "r_n1", "b_common"},
        {"dv_y2", "dv_z2", "b_2", "T_front2", "T_rear2", "k_twist2", "r_n2", "b_common"}};
    const askew_gear   *own      = &all->gear[g];
    const ts_line_gear *gear     = &own->line->gears[own->seat];
    const ts_subject    lender   = {gear->node, mesh.condition};
    const double        value[8] = {own->dv[0],  own->dv[1],    gear->width, own->T_front,
                                    own->T_rear, gear->k_twist, own->r_n,    all->b};
    const char *const  *name     = names[g];

    note_torques(c, own, mesh.condition);
    ts_workings_about(c->workings, mesh.object, mesh.condition);
    ts_workings_borrow(c->workings, name[0], value[0], lender, "dv_y");
    ts_workings_borrow(c->workings, name[1], value[1], lender, "dv_z");
    ts_workings_borrow(c->workings, name[2], value[2], (ts_subject){gear->node, TS_EVERY_CONDITION},
                       "b");
    ts_workings_borrow(c->workings, name[3], value[3], lender, "T_front");
    ts_workings_borrow(c->workings, name[4], value[4], lender, "T_rear");
    ts_workings_borrow(c->workings, name[5], value[5], (ts_subject){gear->node, TS_EVERY_CONDITION},
                       "k_twist");
    ts_workings_row(
        c->workings, name[6], value[6], "m",
        "derived: arm of the force of the mesh about the axis: follows from where the axes "
        "stand");
    const ts_input bend[] = {{name[0], value[0]}, {"n_y", all->n[0]},  {name[1], value[1]},
                             {"n_z", all->n[1]},  {name[7], value[7]}, {name[2], value[2]}};
    (void)ts_step_list(c->workings, &bend_formulas[g], own->bend, bend, 6);
    const ts_input twist[] = {{name[3], value[3]}, {name[4], value[4]}, {name[5], value[5]},
                              {name[6], value[6]}, {name[7], value[7]}, {name[2], value[2]}};
    (void)ts_step_list(c->workings, &twist_formulas[g], own->twist, twist, 6);
}

/* About the tooth number of the driven gear, as the rating of the mesh. */
static void note_mesh(const ts_lines_case *c, uint32_t m, uint32_t condition, const askew_mesh *all)
{
    const ts_node    teeth  = c->train->gears[c->train->meshes[m].driven].teeth.node;
    const ts_subject own    = {teeth, (int32_t)condition};
    const double     bend_1 = all->gear[0].bend, twist_1 = all->gear[0].twist;
    const double     bend_2 = all->gear[1].bend, twist_2 = all->gear[1].twist;
    const double     askew = all->askew;

    ts_workings_about(c->workings, own.object, own.condition);
    ts_workings_row(c->workings, "b_common", all->b, "m", "derived: the narrower of both faces");
    ts_workings_row(c->workings, "n_y", all->n[0], "1",
                    "derived: direction of the transverse force on the driven gear, to the right");
    ts_workings_row(c->workings, "n_z", all->n[1], "1",
                    "derived: direction of the transverse force on the driven gear, upwards");
    note_gear(c, own, all, 0);
    note_gear(c, own, all, 1);
    (void)TS_STEP(c->workings, askew_formula, askew, bend_2, twist_2, bend_1, twist_1);
    (void)TS_STEP(c->workings, f_sh_formula, fabs(askew), askew);
}

/* ---- all meshes ------------------------------------------------------------------------------ */

void ts_lines_lay_askew(const ts_lines_case *c)
{
    for (uint32_t m = 0; m < c->train->mesh_count; m++) {
        askew_mesh all   = {.b = (double)NAN};
        const bool known = find_gears(c, m, &all);

        for (uint32_t i = 0; i < c->drive->condition_count; i++) {
            double *out = &c->lines->askew[(size_t)i * c->train->mesh_count + m];

            *out = known ? 0.0 : (double)NAN;
            if (!known || !find_way(c, m, i, &all))
                continue;
            measure_mesh(c, m, i, &all);
            *out = all.askew;
            if (c->workings != NULL)
                note_mesh(c, m, i, &all);
        }
    }
}
