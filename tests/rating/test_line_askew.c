/* Do bent and twisted shafts lay the teeth of a mesh askew as they should, and does the rating of
 * the teeth hear of it? */
#include "support/close.h"
#include "support/read_file.h"

#include "rating/drive_lines_parts.h"
#include "rating/iso6336/face_load.h"
#include "study/study.h"

#include <math.h>
#include <stdlib.h>
#include <string.h>

static ts_study *study_of(const char *path)
{
    const ts_study_options options = {.today = 20000};
    const ts_text          file    = read_file(path);
    ts_study              *study   = NULL;
    assert_int_equal(ts_study_open(NULL, &study), TS_OK);
    assert_int_equal(ts_study_read(study, path, file.at, file.length, &options), TS_OK);
    free_file(file);
    return study;
}

static ts_lines_case case_of(ts_study *study)
{
    return (ts_lines_case){&study->drive, &study->train, &study->lines, NULL};
}

static void bend_again(ts_study *study)
{
    const ts_lines_case c = case_of(study);
    for (uint32_t l = 0; l < study->lines.count; l++)
        ts_line_bend(&c, l);
    ts_lines_lay_askew(&c);
}

static double askew_at(const ts_study *study, uint32_t m, uint32_t condition)
{
    return study->lines.askew[(size_t)condition * study->train.mesh_count + m];
}

static void stiffen(ts_line *line, double by)
{
    line->E *= by;
    line->G *= by;
    for (int k = 0; k < line->bearing_count; k++)
        line->bearings[k].k_r *= by;
}

/* derived: deflections are linear in what gives way */
static void shafts_a_thousand_times_as_stiff_lay_teeth_a_thousandth_as_askew(void **state)
{
    (void)state;
    ts_study    *study = study_of("examples/bizjet.yaml");
    double       before[512];
    size_t       met   = 0;
    const size_t count = study->train.mesh_count * study->drive.condition_count;
    assert_true(count <= 512);
    memcpy(before, study->lines.askew, count * sizeof before[0]);
    for (uint32_t l = 0; l < study->lines.count; l++)
        stiffen(&study->lines.lines[l], 1e3);
    bend_again(study);
    for (size_t i = 0; i < count; i++) {
        if (isnan(before[i]))
            continue;
        met += fabs(before[i]) > 1e-8;
        assert_close(study->lines.askew[i] * 1e3, before[i], 1e-6);
    }
    assert_true(met > 20);
    ts_study_close(study);
}

/* ---- one shaft of a known shape -----------------------------------------------------------------
 */

/* A mesh whose driven gear stands alone on its shaft, and a condition that loads it. */
static uint32_t lonely_mesh(const ts_study *study, bool with_pad, uint32_t *condition)
{
    for (uint32_t m = 0; m < study->train.mesh_count; m++) {
        const uint32_t gear   = study->train.meshes[m].driven;
        const uint32_t l      = study->lines.of_gear[gear];
        uint32_t       others = 0;
        if (study->train.meshes[m].kind != TS_MESH_CYLINDRICAL ||
            study->lines.lines[l].gear_count != 1)
            continue;
        for (uint32_t k = 0; k < study->train.mesh_count; k++)
            others += study->train.meshes[k].driver == gear;
        for (uint32_t c = 0; c < study->drive.condition_count; c++) {
            const ts_line_case *one = ts_line_at(&study->lines, l, c);
            const bool          pad = (fabs(one->pad[0]) > 0.0) != (fabs(one->pad[1]) > 0.0);
            if (fabs(askew_at(study, m, c)) > 0.0 && pad == with_pad && (others == 0) == with_pad) {
                *condition = c;
                return m;
            }
        }
    }
    fail_msg("no such mesh");
    return 0;
}

/* The driven gear of that mesh `off` the middle of a plain shaft; its mate on a stiff one. */
static void make_plain(ts_study *study, uint32_t m, double d, double span, double off)
{
    ts_line *line       = &study->lines.lines[study->lines.of_gear[study->train.meshes[m].driven]];
    ts_line *mate       = &study->lines.lines[study->lines.of_gear[study->train.meshes[m].driver]];
    line->section_count = 1;
    line->sections[0]   = (ts_beam_section){0.0, span + 0.04, d, 0.0};
    line->bearings[0].x = 0.02;
    line->bearings[1].x = 0.02 + span;
    line->bearings[0].k_r = line->bearings[1].k_r = 1e15;
    line->gears[0].x                              = 0.02 + span / 2.0 + off;
    line->E                                       = 206e9;
    line->G                                       = 206e9 / 2.6;
    mate->E = mate->G     = 9e14;
    mate->bearings[0].k_r = mate->bearings[1].k_r = 1e15;
    bend_again(study);
}

/* derived: symmetry; an idler passes no torque along its shaft, and its load bends both halves
 * alike; its mate is stiff, but not quite */
static void an_idler_in_the_middle_of_its_bearings_stands_straight(void **state)
{
    (void)state;
    ts_study      *study = study_of("examples/bizjet.yaml");
    uint32_t       c;
    const uint32_t m = lonely_mesh(study, false, &c);
    make_plain(study, m, 0.03, 0.12, 0.01);
    const double beside = fabs(askew_at(study, m, c));
    make_plain(study, m, 0.03, 0.12, 0.0);
    assert_true(beside > 1e-8);
    assert_true(fabs(askew_at(study, m, c)) < 0.01 * beside);
    ts_study_close(study);
}

/* ISO 6336-1:2006, 7.5.2, method C (formula from memory): f_sh = F_m/b 0.023 um mm/N (|B* + K' l
 * s/d_1^2 (d_1/d_sh)^4 - 0.3| + 0.3) (b/d_1)^2, K' = 0.8 without the stiffening of a body.  The 0.3
 * that stands outside of the bars is the bending of the body to both sides of its middle, which is
 * the same at both ends and so no misalignment here; of B* = 1 it leaves 0.7, which is the twist by
 * a load that lies evenly, 4/(pi G) = 0.0161 um mm/N.  K' is rounded: a beam gives 0.72/cos(alpha),
 * and the offset lessens it a little. */
static void a_plain_pinion_lies_as_askew_as_the_approximation_of_the_standard(void **state)
{
    (void)state;
    ts_study           *study = study_of("examples/bizjet.yaml");
    uint32_t            c;
    const uint32_t      m = lonely_mesh(study, true, &c), gear = study->train.meshes[m].driven;
    const ts_mesh_load *load        = &study->power.mesh[c * study->train.mesh_count + m];
    const ts_cylindrical_pair *pair = &study->motion.meshes[m].pair;
    const double               d = pair->d_2, span = 5.0 * d, off = 0.4 * d;
    const ts_line_gear        *seat = &study->lines.lines[study->lines.of_gear[gear]].gears[0];
    const uint32_t             mate = study->train.meshes[m].driver;
    const double               b    = fmin(
                         seat->width,
                         study->lines.lines[study->lines.of_gear[mate]].gears[study->lines.seat_of[mate]].width);
    double       ours[2], theirs[2];
    const double F_mb = 2.0 * fabs(load->T[1]) / d / b;
    const double unit = F_mb * 0.023e-9 * (b / d) * (b / d);

    for (int side = 0; side < 2; side++) {
        ts_shaft_deflection_input in = {.F_mb = F_mb,
                                        .b    = b,
                                        .d_1  = d,
                                        .d_sh = d,
                                        .l    = span,
                                        .s    = side == 0 ? off : -off,
                                        .K_p  = 0.8,
                                        .B_s  = 1.0};
        make_plain(study, m, d, span, side == 0 ? off : -off);
        ours[side]   = fabs(askew_at(study, m, c)) / unit;
        theirs[side] = ts_shaft_deflection(&in, NULL) / unit - 0.3;
    }
    assert_close(fmax(ours[0], ours[1]), fmax(theirs[0], theirs[1]), 0.1);
    assert_close(fmin(ours[0], ours[1]), fmin(theirs[0], theirs[1]), 0.1);
    ts_study_close(study);
}

/* ---- against the beam under a load that lies evenly -------------------------------------------
 */

#define PIECES 24

/* The line of a lonely gear under its own load in many pieces, as element/shaft_beam has it: by how
 * much more the rear end of the face goes along the force of the mesh. */
static double spread_load(const ts_study *study, uint32_t m, uint32_t c, double n_y, double n_z)
{
    const uint32_t      gear = study->train.meshes[m].driven;
    const ts_line      *line = &study->lines.lines[study->lines.of_gear[gear]];
    const ts_line_case *one  = ts_line_at(&study->lines, study->lines.of_gear[gear], c);
    const ts_line_gear *seat = &line->gears[0];
    double              places[PIECES + 3], r[3];
    ts_beam_load        loads[PIECES + 2];
    ts_beam_support     supports[2];
    ts_beam_frame       frame;
    ts_beam_result     *result = malloc(sizeof *result);
    int                 count  = 0;
    const double        front = seat->x - seat->width / 2.0, rear = seat->x + seat->width / 2.0;

    assert_non_null(result);
    for (int k = 0; k < 2; k++)
        supports[k] = (ts_beam_support){.x = line->bearings[k].x, .k_r = line->bearings[k].k_r};
    for (int i = 0; i < PIECES; i++) {
        places[count] = front + (i + 0.5) * seat->width / PIECES;
        loads[count]  = (ts_beam_load){.x   = places[count],
                                       .F_y = one->load[0].F[1] / PIECES,
                                       .F_z = one->load[0].F[2] / PIECES,
                                       .T   = one->load[0].M[0] / PIECES,
                                       .M_y = one->load[0].M[1] / PIECES,
                                       .M_z = one->load[0].M[2] / PIECES};
        count++;
    }
    loads[count] = (ts_beam_load){.x = line->sections[0].x_1, .T = one->pad[0]};
    loads[count + 1] =
        (ts_beam_load){.x = line->sections[line->section_count - 1].x_2, .T = one->pad[1]};
    places[count]      = front;
    places[count + 1]  = rear;
    const ts_beam beam = {.sections      = line->sections,
                          .supports      = supports,
                          .places        = places,
                          .section_count = line->section_count,
                          .support_count = 2,
                          .place_count   = count + 2,
                          .E             = line->E,
                          .G             = line->G,
                          .shear         = true};
    assert_int_equal(ts_beam_prepare(&beam, &frame), TS_BEAM_FINE);
    assert_int_equal(ts_beam_solve(&beam, &frame, loads, count + 2, result), TS_BEAM_FINE);
    const ts_beam_state *a = &result->left[ts_beam_station(&frame, front)];
    const ts_beam_state *e = &result->left[ts_beam_station(&frame, rear)];
    ts_line_arm(&study->lines, m, 1, line, r);
    const double out = (e->v_y - a->v_y) * n_y + (e->v_z - a->v_z) * n_z +
                       (e->phi - a->phi) * (r[1] * n_z - r[2] * n_y);
    free(result);
    return out;
}

/* derived: one beam under one load, two ways; pieces end half a piece from the ends of the face */
static void a_load_in_many_pieces_lays_the_gear_as_askew(void **state)
{
    (void)state;
    ts_study           *study = study_of("examples/large.yaml");
    uint32_t            c;
    const uint32_t      m    = lonely_mesh(study, true, &c);
    const uint32_t      mate = study->lines.of_gear[study->train.meshes[m].driver];
    const uint32_t      own  = study->lines.of_gear[study->train.meshes[m].driven];
    const ts_mesh_load *load = &study->power.mesh[c * study->train.mesh_count + m];
    const double        F    = hypot(load->force[0], load->force[1]);
    stiffen(&study->lines.lines[mate], 1e3);
    bend_again(study);
    const double due = spread_load(study, m, c, load->force[0] / F, load->force[1] / F);
    const double share =
        fmin(1.0, study->lines.lines[mate].gears[0].width / study->lines.lines[own].gears[0].width);
    assert_true(fabs(due) > 1e-8);
    assert_close(askew_at(study, m, c), due * share, 0.02);
    ts_study_close(study);
}

/* ---- the teeth ----------------------------------------------------------------------------------
 */

static void the_rating_of_the_teeth_takes_the_deflection_of_its_condition(void **state)
{
    (void)state;
    ts_study *study = study_of("examples/large.yaml");
    size_t    met   = 0;
    for (uint32_t c = 0; c < study->drive.condition_count; c++)
        for (uint32_t m = 0; m < study->train.mesh_count; m++) {
            const ts_mesh_case *one = &study->teeth.cases[c * study->train.mesh_count + m];
            if (study->train.meshes[m].kind != TS_MESH_CYLINDRICAL || !one->loaded)
                continue;
            assert_int_equal(one->load.face, TS_FACE_LOAD_PARTS);
            assert_true(one->load.f_sh == fabs(askew_at(study, m, c)));
            assert_close(one->rating.F_betax,
                         fmax(1.33 * one->load.f_sh + one->load.f_ma, 5e-12 * one->rating.F_mb),
                         1e-12);
            met += one->load.f_sh > 1e-7;
        }
    assert_true(met > 30);
    ts_study_close(study);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(shafts_a_thousand_times_as_stiff_lay_teeth_a_thousandth_as_askew),
        cmocka_unit_test(an_idler_in_the_middle_of_its_bearings_stands_straight),
        cmocka_unit_test(a_plain_pinion_lies_as_askew_as_the_approximation_of_the_standard),
        cmocka_unit_test(a_load_in_many_pieces_lays_the_gear_as_askew),
        cmocka_unit_test(the_rating_of_the_teeth_takes_the_deflection_of_its_condition),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
