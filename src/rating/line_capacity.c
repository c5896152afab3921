/* rating/line_capacity.c: which torque do the shafts of a drive, with their splines and bearings,
 * bear once? */
#include "rating/line_capacity.h"

#include "rating/drive_lines_parts.h"
#include "rating/line_branch.h"

#include <math.h>

#define MEANT_YIELD "torque at which the shaft yields, beside the worst of what else leaves it"
#define MEANT_DENT                                                                                 \
    "torque at which a bearing has its static capacity, beside the worst of what else leaves the " \
    "shaft"
#define ON_AT "derived: found by trial, taken on by the last safety, which is 1 but for a rounding"
#define OVER  "derived: found by trial; referred to the driven gear of the mesh by which it leaves"

/* [bearing][through a mesh][inwards] */
static const ts_formula formulas[2][2][2] = {
    {{{"T_yield", MEANT_YIELD, "N.m", "T_F*S_F", ON_AT},
      {"T_yield", MEANT_YIELD, "N.m", "T_F*S_F", ON_AT}},
     {{"T_yield", MEANT_YIELD, "N.m", "T_F*S_F*z_2/z_1*(1 - loss)", OVER},
      {"T_yield", MEANT_YIELD, "N.m", "T_F*S_F*z_2/(z_1*(1 - loss))", OVER}}},
    {{{"T_dent", MEANT_DENT, "N.m", "T_0*S_0", ON_AT},
      {"T_dent", MEANT_DENT, "N.m", "T_0*S_0", ON_AT}},
     {{"T_dent", MEANT_DENT, "N.m", "T_0*S_0*z_2/z_1*(1 - loss)", OVER},
      {"T_dent", MEANT_DENT, "N.m", "T_0*S_0*z_2/(z_1*(1 - loss))", OVER}}},
};
static const ts_formula S_F_formula = {
    .symbol  = "S_F",
    .meaning = "safety against yield at that torque",
    .unit    = "1",
    .text    = "1/sqrt((sigma_zd/sigma_FKzd + sigma_b/sigma_FKb)^2 + (tau_t/tau_FK)^2)",
    .source  = "DIN 743-1:2012 (from memory)",
};
static const ts_formula S_0_formula = {
    .symbol  = "S_0",
    .meaning = "static safety at that torque",
    .unit    = "1",
    .text    = "C_0r/P_0",
    .source  = "ISO 76:2006 (from memory)",
};
static const ts_formula F_r_formula = {
    .symbol  = "F_r",
    .meaning = "radial load of the bearing at that torque",
    .unit    = "N",
    .text    = "sqrt(F_y^2 + F_z^2)",
    .source  = "derived: both planes together",
};
static const ts_formula M_formula = {
    .symbol  = "M",
    .meaning = "bending moment in the section at that torque",
    .unit    = "N.m",
    .text    = "sqrt(M_1^2 + M_2^2)",
    .source  = "derived: both planes together",
};

uint32_t ts_lines_capacity_count(const ts_lines *lines)
{
    const ts_train *train = lines->motion->train;

    return 2 * (train->mesh_count + train->pad_count + lines->count);
}

/* What stands at one exit, and the less of both ways of the power. */
typedef struct capacity {
    ts_line_limit limit;
    int           flow;
    double        T; /* N.m, of the part's shaft, mesh or pad */
} capacity;

static bool is_tower(const ts_line *line)
{
    return line->kind == TS_LINE_INNER || line->kind == TS_LINE_TUBE || line->kind == TS_LINE_OUTER;
}

/* The torque of a mesh counts at its driven gear; a radial shaft has its own. */
static uint32_t mesh_of(const ts_line_branches *b, int exit)
{
    return is_tower(&b->lines->lines[b->line]) ? TS_NOWHERE : b->exits[exit].mesh;
}

static double referred(const ts_line_branches *b, int exit, int flow, double T)
{
    const ts_train *train = b->lines->motion->train;
    const uint32_t  m     = mesh_of(b, exit);

    if (m == TS_NOWHERE)
        return T;
    const double z_1   = (double)train->gears[train->meshes[m].driver].teeth.value;
    const double z_2   = (double)train->gears[train->meshes[m].driven].teeth.value;
    const double keeps = 1.0 - train->meshes[m].loss.value;
    return T * z_2 / z_1 * (flow > 0 ? keeps : 1.0 / keeps);
}

static capacity of_exit(const ts_line_branches *b, int exit, bool bearings)
{
    capacity least = {{(double)INFINITY, -1, {0.0}}, 1, (double)INFINITY};

    for (int flow = 1; flow >= -1; flow -= 2) {
        if (flow < 0 && !b->drives[exit])
            continue;
        const ts_line_limit limit = ts_line_branch_limit(b, exit, flow, bearings);
        const double        T     = referred(b, exit, flow, limit.T);
        if (T < least.T)
            least = (capacity){limit, flow, T};
    }
    return least;
}

/* ---- workings -------------------------------------------------------------------------------- */

static double note_yield(const ts_line_notch *notch, const ts_line_effort *effort, ts_workings *w)
{
    const double  M_1 = effort->across[0], M_2 = effort->across[1];
    const double  N = fabs(effort->along), T = fabs(effort->torque);
    const double *sigma_FK   = notch->ability.sigma_FK;
    const double  sigma_FKzd = sigma_FK[TS_DIN_ZD], sigma_FKb = sigma_FK[TS_DIN_B];
    const double  tau_FK = sigma_FK[TS_DIN_T], d = notch->section.d, d_i = notch->section.d_i;

    ts_workings_row(w, "d", d, "m", "derived: by the shape");
    ts_workings_row(w, "d_i", d_i, "m", "derived: by the shape");
    ts_workings_row(w, "M_1", M_1, "N.m", "derived: balance before the section, first plane");
    ts_workings_row(w, "M_2", M_2, "N.m", "derived: balance before the section, second plane");
    const double M = TS_STEP(w, M_formula, sqrt(M_1 * M_1 + M_2 * M_2), M_1, M_2);
    ts_workings_row(w, "N", N, "N", "derived: axial loads before the section");
    ts_workings_row(w, "T", T, "N.m", "derived: torque in the section");
    const double sigma_b  = ts_nominal_bending(M, d, d_i, w);
    const double tau_t    = ts_nominal_torsion(T, d, d_i, w);
    const double sigma_zd = ts_nominal_axial(N, d, d_i, w);
    ts_workings_row(w, "sigma_FKzd", sigma_FKzd, "Pa", "derived: yield of the section, DIN 743");
    ts_workings_row(w, "sigma_FKb", sigma_FKb, "Pa", "derived: yield of the section, DIN 743");
    ts_workings_row(w, "tau_FK", tau_FK, "Pa", "derived: yield of the section, DIN 743");
    const double pressed = sigma_zd / sigma_FKzd + sigma_b / sigma_FKb, twisted = tau_t / tau_FK;
    return TS_STEP(w, S_F_formula, 1.0 / sqrt(pressed * pressed + twisted * twisted), sigma_zd,
                   sigma_FKzd, sigma_b, sigma_FKb, tau_t, tau_FK);
}

static double note_dent(const ts_line_bearing *bearing, const ts_line_effort *effort,
                        ts_workings *w)
{
    const double C_0r = bearing->ability.C_0r, F_y = effort->across[0], F_z = effort->across[1];

    ts_workings_row(w, "F_y", F_y, "N", "derived: reaction at that torque, first plane");
    ts_workings_row(w, "F_z", F_z, "N", "derived: reaction at that torque, second plane");
    const double F_r = TS_STEP(w, F_r_formula, sqrt(F_y * F_y + F_z * F_z), F_y, F_z);
    const double F_a = fabs(effort->along);
    ts_workings_row(w, "F_a", F_a, "N", "derived: axial load at that torque");
    const ts_subject own = {bearing->node, TS_EVERY_CONDITION};
    ts_workings_borrow(w, "X_0", bearing->ability.still.X_0, own, "X_0");
    ts_workings_borrow(w, "Y_0", bearing->ability.still.Y_0, own, "Y_0");
    const double P_0 = ts_static_load(bearing->ability.still, F_r, F_a, w);
    ts_workings_borrow(w, "C_0r", C_0r, own, "C_0r");
    return TS_STEP(w, S_0_formula, C_0r / P_0, C_0r, P_0);
}

static double note(const ts_line_branches *b, int exit, const capacity *found, bool bearing,
                   ts_workings *w)
{
    const ts_train      *train = b->lines->motion->train;
    const ts_line       *line  = &b->lines->lines[b->line];
    const ts_line_item  *item  = &b->items[found->limit.item];
    const double         T     = found->limit.T;
    const uint32_t       m     = mesh_of(b, exit);
    const ts_formula    *text  = &formulas[bearing][m != TS_NOWHERE][found->flow < 0];
    const ts_line_effort effort =
        ts_line_branch_effort(b, item, exit, found->flow, T, found->limit.others);

    const double   S      = bearing ? note_dent(&line->bearings[item->which], &effort, w)
                                    : note_yield(&line->notches[item->which], &effort, w);
    const ts_input safety = {bearing ? "S_0" : "S_F", S}, torque = {bearing ? "T_0" : "T_F", T};
    ts_workings_row(w, torque.name, T, "N.m",
                    "found by trial: the torque by this way at which the safety is 1");
    if (m == TS_NOWHERE) {
        const ts_input inputs[] = {torque, safety};
        return ts_step_list(w, text, T * S, inputs, 2);
    }
    const double     z_1  = (double)train->gears[train->meshes[m].driver].teeth.value;
    const double     z_2  = (double)train->gears[train->meshes[m].driven].teeth.value;
    const double     loss = train->meshes[m].loss.value;
    const ts_subject own  = {train->meshes[m].node, TS_EVERY_CONDITION};
    ts_workings_borrow(w, "z_1", z_1, own, "z_1");
    ts_workings_borrow(w, "z_2", z_2, own, "z_2");
    ts_workings_borrow(w, "loss", loss, own, "loss");
    const ts_input inputs[] = {torque, safety, {"z_1", z_1}, {"z_2", z_2}, {"loss", loss}};
    const double   value =
        found->flow > 0 ? T * S * z_2 / z_1 * (1.0 - loss) : T * S * z_2 / (z_1 * (1.0 - loss));
    return ts_step_list(w, text, value, inputs, 5);
}

/* ---- parts ----------------------------------------------------------------------------------- */

static void add(const ts_line_branches *b, int exit, bool bearing, ts_part_capacities *list,
                ts_workings *workings)
{
    const ts_line    *line  = &b->lines->lines[b->line];
    const ts_line_way way   = b->exits[exit];
    const capacity    found = of_exit(b, exit, bearing);
    ts_part_capacity  part  = {.kind   = bearing ? TS_PART_BEARING : TS_PART_SHAFT,
                               .shaft  = line->shaft,
                               .mesh   = mesh_of(b, exit),
                               .of_pad = way.pad != TS_NOWHERE,
                               .pad    = way.pad != TS_NOWHERE ? way.pad : 0,
                               .T      = found.T,
                               .node   = line->exit_nodes[exit],
                               .symbol = bearing ? "T_dent" : "T_yield",
                               .what   = line->name};

    if (found.limit.item < 0)
        return;
    if (part.mesh != TS_NOWHERE)
        part.shaft = TS_NOWHERE;
    ts_workings_about(workings, part.node, TS_EVERY_CONDITION);
    part.T = note(b, exit, &found, bearing, workings);
    (void)ts_part_capacity_add(list, &part);
}

void ts_lines_capacities(const ts_lines *lines, ts_part_capacities *list, ts_workings *workings)
{
    for (uint32_t l = 0; l < lines->count; l++) {
        ts_line_branches b;

        if (lines->lines[l].fault != NULL || lines->lines[l].missing != NULL)
            continue;
        ts_line_branch_out(lines, l, &b);
        for (int e = 0; e < b.exit_count; e++) {
            add(&b, e, false, list, workings);
            add(&b, e, true, list, workings);
        }
    }
}
