/* draw/teeth_table.c: which numbers belong to the picture of a mesh? */
#include "draw/teeth_view.h"
#include "draw/value_table.h"

#include "element/cylindrical_contact.h"

#include <math.h>

enum { MESH_ROWS = 13, GEAR_ROWS = 13, POINT_ROWS = 5 };
static const double gap = 10.0;

#define ALPHA "\xCE\xB1"
#define BETA  "\xCE\xB2"
#define EPS   "\xCE\xB5"
#define ZETA  "\xCE\xB6"
#define RHO   "\xCF\x81"
#define DEG   "\xC2\xB0"

static ts_value_table mesh_table(const ts_teeth_view *view, ts_value_row *rows)
{
    ts_scene                  *scene           = view->scene;
    const ts_cylindrical_pair *pair            = &view->motion->pair;
    const double              *play            = view->motion->backlash.j_wt;
    const char                *unit            = ts_scene_unit(scene, TS_KIND_LENGTH);
    const ts_value_row         list[MESH_ROWS] = {
                {"normal module", "m", "n", "mm", {ts_value_ratio(scene, 1e3 * pair->in.m_n, 3)}},
                {"normal pressure angle", ALPHA, "n", DEG, {ts_value_angle(scene, pair->in.alpha_n)}},
                {"helix angle", BETA, NULL, DEG, {ts_value_angle(scene, pair->in.beta)}},
                {"working centre distance", "a", "w", unit, {ts_value_length(scene, pair->a_w)}},
                {"working pressure angle", ALPHA, "wt", DEG, {ts_value_angle(scene, pair->alpha_wt)}},
                {"transverse base pitch", "p", "bt", unit, {ts_value_length(scene, pair->p_bt)}},
                {"path of contact", "g", ALPHA, unit, {ts_value_length(scene, pair->g_alpha)}},
                {"transverse contact ratio", EPS, ALPHA, NULL, {ts_value_ratio(scene, pair->eps_alpha, 3)}},
                {"overlap ratio", EPS, BETA, NULL, {ts_value_ratio(scene, pair->eps_beta, 3)}},
                {"circumferential backlash, nominal",
                 "j",
                 "wt",
                 unit,
                 {ts_value_length(scene, pair->j_wt)}},
                {"the same as built, least",
                 "j",
                 "wtmin",
                 unit,
                 {ts_value_length(scene, play[TS_BACKLASH_MIN])}},
                {"the same as built, most",
                 "j",
                 "wtmax",
                 unit,
                 {ts_value_length(scene, play[TS_BACKLASH_MAX])}},
                {"common face width",
                 "b",
                 NULL,
                 unit,
                 {ts_value_length(scene, fmin(pair->in.b_1, pair->in.b_2))}},
    };
    for (int i = 0; i < MESH_ROWS; i++)
        rows[i] = list[i];
    return (ts_value_table){
        .title = "Mesh", .columns = 1, .column = 84.0, .rows = rows, .count = MESH_ROWS};
}

static ts_value_table gear_table(const ts_teeth_view *view, ts_value_row *rows)
{
    ts_scene                  *s  = view->scene;
    const ts_cylindrical_pair *p  = &view->motion->pair;
    const char                *mm = ts_scene_unit(s, TS_KIND_LENGTH);
#define LENGTHS(a, b)                                                                              \
    {                                                                                              \
        ts_value_length(s, (a)), ts_value_length(s, (b))                                           \
    }
#define RATIOS(a, b)                                                                               \
    {                                                                                              \
        ts_value_ratio(s, (a), 3), ts_value_ratio(s, (b), 3)                                       \
    }
    const ts_value_row list[GEAR_ROWS] = {
        {"teeth",
         "z",
         NULL,
         NULL,
         {ts_value_count(s, s->train->gears[s->train->meshes[view->mesh].driver].teeth.value),
          ts_value_count(s, s->train->gears[s->train->meshes[view->mesh].driven].teeth.value)}},
        {"profile shift", "x", NULL, NULL, RATIOS(p->x_1, p->x_2)},
        {"tip circle", "d", "a", mm, LENGTHS(p->d_a1, p->d_a2)},
        {"pitch circle", "d", "w", mm, LENGTHS(p->d_w1, p->d_w2)},
        {"base circle", "d", "b", mm, LENGTHS(p->d_b1, p->d_b2)},
        {"root form circle", "d", "Ff", mm,
         LENGTHS(ts_teeth_root_form(view, 0), ts_teeth_root_form(view, 1))},
        {"root circle", "d", "f", mm, LENGTHS(p->d_f1, p->d_f2)},
        {"tip thickness, normal", "s", "an", mm, LENGTHS(p->s_an1, p->s_an2)},
        {"the same in modules", NULL, NULL, NULL,
         RATIOS(p->s_an1 / p->in.m_n, p->s_an2 / p->in.m_n)},
        {"clearance of its tip", "c", NULL, mm, LENGTHS(p->c_1, p->c_2)},
        {"involute left at the root", NULL, NULL, mm,
         LENGTHS(ts_teeth_involute_left(view, 0), ts_teeth_involute_left(view, 1))},
        {"specific sliding at A", ZETA, "A", NULL, RATIOS(p->zeta_A1, p->zeta_A2)},
        {"specific sliding at E", ZETA, "E", NULL, RATIOS(p->zeta_E1, p->zeta_E2)},
    };
#undef LENGTHS
#undef RATIOS
    for (int i = 0; i < GEAR_ROWS; i++)
        rows[i] = list[i];
    return (ts_value_table){.title   = "Gears",
                            .heads   = {"below, 1", "above, 2"},
                            .columns = 2,
                            .column  = 84.0,
                            .rows    = rows,
                            .count   = GEAR_ROWS};
}

static ts_value_table point_table(const ts_teeth_view *view, ts_value_row *rows)
{
    const bool        alone             = view->motion->pair.eps_alpha < 2.0;
    const char *const words[POINT_ROWS] = {
        "A, tip of 2 at the foot of 1",
        alone ? "B, from here to D one pair alone" : "B, one base pitch before E", "C, pitch point",
        alone ? "D, outer single contact of 1" : "D, one base pitch after A",
        "E, tip of 1 at the foot of 2"};
    ts_scene                  *s    = view->scene;
    const ts_cylindrical_pair *pair = &view->motion->pair;
    const double rho[POINT_ROWS]    = {pair->rho_A1, pair->rho_B1, pair->rho_C1, pair->rho_D1,
                                       pair->rho_E1};
    for (int i = 0; i < POINT_ROWS; i++)
        rows[i] = (ts_value_row){
            .words = words[i],
            .value = {ts_value_length(s, rho[i]), ts_value_length(s, pair->rho_T - rho[i])}};
    return (ts_value_table){.title   = "Points of the path",
                            .heads   = {RHO " of 1", RHO " of 2"},
                            .columns = 2,
                            .column  = 84.0,
                            .rows    = rows,
                            .count   = POINT_ROWS};
}

double ts_teeth_tables_height(void)
{
    const ts_value_table all[3] = {
        {.count = MESH_ROWS}, {.count = GEAR_ROWS}, {.count = POINT_ROWS}};
    double sum = 0.0;
    for (int i = 0; i < 3; i++)
        sum += ts_value_table_height(&all[i]) + gap;
    return sum;
}

void ts_teeth_draw_tables(const ts_teeth_view *view)
{
    ts_value_row   rows[3][GEAR_ROWS];
    ts_value_table all[3];
    ts_area        area = view->column;
    all[0]              = mesh_table(view, rows[0]);
    all[1]              = gear_table(view, rows[1]);
    all[2]              = point_table(view, rows[2]);
    for (int i = 0; i < 3; i++) {
        area.h = ts_value_table_height(&all[i]);
        ts_value_table_draw(view->scene, &all[i], area);
        area.y += area.h + gap;
    }
    area.h = view->column.y + view->column.h - area.y - 8.0;
    if (view->posed && area.h > 120.0)
        ts_teeth_draw_sliding(view, area);
}
