/* Builds the sample: lists of shafts with teeth and pads, then positions, speeds, powers. */
#include "draw/sample_drive.h"

#include <math.h>
#include <stdio.h>
#include <string.h>

#define RPM (M_PI / 30.0)
#define MM  1e-3

typedef struct row {
    const char *name;
    int         from; /* the row of the shaft that drives it, -1: by the tower shaft        */
    int         way;  /* +1 clockwise along the arc from behind, -1 anticlockwise, 0 input  */
    int         teeth, step;
    int         face;        /* mm */
    int         front, rear; /* accessories, -1: none, -2: cover */
    int         number;
} row;

/* The box of the hp spool, then that of the lp spool; a row stands after the one that drives it. */
static const row rows[] = {
    {"hp box input", -1, 0, 52, 0, 22, -1, -1, 5},
    {"fuel pump", 0, 1, 61, 0, 18, SAMPLE_OIL, SAMPLE_FUEL, 4},
    {"idler 3", 1, 1, 45, 0, 14, -1, -1, 3},
    {"hydraulic pump", 2, 1, 83, 0, 14, -1, SAMPLE_HYDRAULIC, 2},
    {"generator", 3, 1, 41, 0, 16, -2, SAMPLE_GENERATOR, 1},
    {"starter", 0, -1, 57, 0, 20, -1, SAMPLE_STARTER, 6},
    {"idler 7", 5, -1, 44, 27, 12, -1, -1, 7},
    {"alternator", 6, -1, 47, 0, 10, SAMPLE_ALTERNATOR, -1, 8},
    {"breather", 7, -1, 29, 0, 10, -1, SAMPLE_BREATHER, 9},
    {"lp box input", -1, 0, 47, 0, 12, -1, -1, 10},
    {"stand-by generator", 9, 1, 58, 0, 10, -1, SAMPLE_STAND_BY, 11},
    {"idler 12", 9, -1, 40, 0, 10, -1, -1, 12},
};
enum { ROWS = sizeof rows / sizeof *rows, HP_ROWS = 9, FIRST_BOX = 4 };

static const char *const condition_names[SAMPLE_CONDITIONS] = {"crank",  "light-off", "ground idle",
                                                               "cruise", "take-off",  "red line"};
static const double      hp_rpm[SAMPLE_CONDITIONS] = {2600, 4200, 13400, 22900, 24300, 24600};
static const double      lp_rpm[SAMPLE_CONDITIONS] = {0, 500, 4900, 10600, 11800, 12000};

static const char *const accessory_names[SAMPLE_ACCESSORIES] = {
    "fuel pump", "oil pump pack", "hydraulic pump", "generator",
    "starter",   "alternator",    "breather",       "stand-by generator"};
static const double kilowatts[SAMPLE_ACCESSORIES][SAMPLE_CONDITIONS] = {
    {0.2, 0.6, 4.5, 8.0, 13.0, 13.2},   {0.9, 1.0, 2.2, 3.9, 4.4, 4.6},
    {0.0, 0.2, 6.0, 14.0, 22.0, 22.0},  {0.0, 0.0, 18.0, 30.0, 34.0, 34.0},
    {-31.0, -38.0, 0.0, 0.0, 0.0, 0.0}, {0.1, 0.1, 0.5, 0.9, 1.0, 1.0},
    {0.0, 0.1, 0.6, 1.6, 1.9, 2.0},     {0.0, 0.0, 1.5, 6.0, 7.0, 7.0}};
static const double radius_mm[SAMPLE_ACCESSORIES] = {56, 44, 62, 68, 60, 40, 30, 46};
static const double length_mm[SAMPLE_ACCESSORIES] = {150, 120, 190, 240, 200, 90, 80, 150};
/* Demanded rpm per condition as (low, high) of take-off, and of the idle; 0: no demand. */
static const double band_rpm[SAMPLE_ACCESSORIES][4] = {{15500, 18500, 8500, 10500},
                                                       {14000, 19000, 0, 0},
                                                       {9000, 13500, 5000, 8000},
                                                       {25000, 28000, 15600, 17500},
                                                       {0, 0, 0, 0},
                                                       {0, 30000, 0, 0},
                                                       {20000, 32000, 0, 0},
                                                       {8000, 11000, 4200, 5200}};

static ts_measure given(double value)
{
    return (ts_measure){value, 1, TS_GIVEN};
}

static ts_measure absent(void)
{
    return (ts_measure){NAN, 1, TS_ABSENT};
}

static ts_tally tally(int value)
{
    return (ts_tally){value, 1, TS_GIVEN};
}

static bool describe_conditions(ts_drive *drive, ts_arena *arena)
{
    drive->conditions      = TS_TAKE(arena, ts_condition, SAMPLE_CONDITIONS);
    drive->condition_count = SAMPLE_CONDITIONS;
    drive->spools          = TS_TAKE(arena, ts_spool, 2);
    drive->spool_count     = 2;
    if (!drive->conditions || !drive->spools)
        return false;
    for (int c = 0; c < SAMPLE_CONDITIONS; c++) {
        ts_condition *condition = &drive->conditions[c];
        condition->name         = condition_names[c];
        condition->node         = 100 + (ts_node)c;
        condition->speed        = TS_TAKE(arena, ts_measure, 2);
        if (!condition->speed)
            return false;
        condition->speed[0] = given(hp_rpm[c] * RPM);
        condition->speed[1] = given(lp_rpm[c] * RPM);
    }
    drive->spools[0] = (ts_spool){.name    = "hp",
                                  .node    = 50,
                                  .turns   = {TS_CCW, 50, TS_GIVEN},
                                  .cranked = {TS_YES, 50, TS_GIVEN}};
    drive->spools[1] = (ts_spool){.name    = "lp",
                                  .node    = 51,
                                  .turns   = {TS_CCW, 51, TS_GIVEN},
                                  .cranked = {TS_NO, 51, TS_GIVEN}};
    return true;
}

static ts_span band_of(int accessory, int condition)
{
    const double *band = band_rpm[accessory];
    if (condition >= SAMPLE_CRUISE && band[1] > 0.0)
        return (ts_span){band[0] > 0.0 ? band[0] * RPM : (double)-INFINITY, band[1] * RPM, 1,
                         TS_GIVEN};
    if (condition == SAMPLE_IDLE && band[3] > 0.0)
        return (ts_span){band[2] * RPM, band[3] * RPM, 1, TS_GIVEN};
    return (ts_span){NAN, NAN, 1, TS_ABSENT};
}

static bool describe_accessories(ts_drive *drive, ts_arena *arena)
{
    drive->accessories     = TS_TAKE(arena, ts_accessory, SAMPLE_ACCESSORIES);
    drive->accessory_count = SAMPLE_ACCESSORIES;
    for (int a = 0; drive->accessories && a < SAMPLE_ACCESSORIES; a++) {
        ts_accessory *accessory  = &drive->accessories[a];
        accessory->name          = accessory_names[a];
        accessory->node          = 200 + (ts_node)a;
        accessory->purpose.value = a == SAMPLE_STARTER ? TS_FOR_START
                                   : a == SAMPLE_FUEL  ? TS_FOR_ENGINE
                                                       : TS_FOR_AIRCRAFT;
        accessory->turns         = (ts_pick){TS_EITHER, 1, TS_GIVEN};
        accessory->body.radius   = given(radius_mm[a] * MM);
        accessory->body.length   = given(length_mm[a] * MM);
        accessory->speed         = TS_TAKE(arena, ts_span, SAMPLE_CONDITIONS);
        accessory->power         = TS_TAKE(arena, ts_measure, SAMPLE_CONDITIONS);
        accessory->drives        = TS_TAKE(arena, ts_measure, SAMPLE_CONDITIONS);
        if (!accessory->speed || !accessory->power || !accessory->drives)
            return false;
        for (int c = 0; c < SAMPLE_CONDITIONS; c++) {
            accessory->speed[c]  = band_of(a, c);
            accessory->power[c]  = given(fmax(0.0, kilowatts[a][c]) * 1e3);
            accessory->drives[c] = absent();
        }
    }
    return drive->accessories != NULL;
}

static bool describe_engine(ts_drive *drive, ts_arena *arena)
{
    ts_engine *engine      = &drive->engine;
    engine->casing         = given(285 * MM);
    engine->cowl           = TS_TAKE(arena, ts_cowl_point, 3);
    engine->cowl_count     = 3;
    engine->keep_out       = TS_TAKE(arena, ts_keep_out, 1);
    engine->keep_out_count = 1;
    if (!engine->cowl || !engine->keep_out)
        return false;
    const double cowl[3][2] = {{90, 520}, {180, 455}, {270, 520}};
    for (int i = 0; i < 3; i++)
        engine->cowl[i] =
            (ts_cowl_point){60, given(cowl[i][0] * M_PI / 180.0), given(cowl[i][1] * MM)};
    engine->keep_out[0] = (ts_keep_out){.node   = 61,
                                        .name   = {"oil line", 61, TS_GIVEN},
                                        .clock  = given(152 * M_PI / 180.0),
                                        .radius = given(415 * MM),
                                        .size   = given(16 * MM),
                                        .face   = {2, 61, TS_GIVEN}};
    return true;
}

/* Tower shafts, bevels and arcs of both drives; no shafts, for the train holds them. */
static bool describe_drives(ts_drive *drive, ts_arena *arena)
{
    const double clock[2] = {180, 66}, radius[2] = {330, 392};
    const int    teeth[2][4] = {{43, 46, 37, 41}, {31, 37, 27, 31}};
    drive->drive             = TS_TAKE(arena, ts_spool_drive, 2);
    drive->drive_count       = 2;
    for (int d = 0; drive->drive && d < 2; d++) {
        ts_spool_drive *one       = &drive->drive[d];
        one->node                 = 70 + (ts_node)d;
        one->spool                = d;
        one->box.node             = 72 + (ts_node)d;
        one->box.arc.radius       = given(radius[d] * MM);
        one->box.arc.clock        = given(clock[d] * M_PI / 180.0);
        one->box.depth            = given(70 * MM);
        one->tower_shaft          = (ts_tower_shaft){.node        = 74 + (ts_node)d,
                                                     .clock       = given(clock[d] * M_PI / 180.0),
                                                     .length      = given(radius[d] * MM),
                                                     .outside     = given((d ? 18 : 26) * MM),
                                                     .bore        = given(12 * MM),
                                                     .mid_bearing = d ? absent() : given(160 * MM)};
        ts_bevel_gears *bevels[2] = {&one->take_off.bevels, &one->box.bevels};
        for (int i = 0; i < 2; i++)
            *bevels[i] =
                (ts_bevel_gears){.teeth  = {tally(teeth[d][2 * i]), tally(teeth[d][2 * i + 1])},
                                 .module = given((d ? 1.75 : 2.4) * MM),
                                 .pressure_angle = given(20 * M_PI / 180.0),
                                 .spiral         = given(35 * M_PI / 180.0),
                                 .face           = given(16 * MM),
                                 .shaft_angle    = given(0.5 * M_PI),
                                 .loss           = given(0.01)};
    }
    return drive->drive != NULL;
}

/* ---- the train --------------------------------------------------------------------------- */

static uint32_t add_pad(ts_train *train, uint32_t shaft, ts_face_side face, int accessory)
{
    if (accessory == -1)
        return TS_NOWHERE;
    ts_pad *pad = &train->pads[train->pad_count];
    *pad        = (ts_pad){.shaft     = shaft,
                           .face      = face,
                           .use       = accessory >= 0 ? TS_PAD_ACCESSORY : TS_PAD_COVER,
                           .accessory = accessory >= 0 ? accessory : -1,
                           .node      = 300 + train->pad_count,
                           .name      = accessory >= 0 ? accessory_names[accessory] : "cover"};
    return train->pad_count++;
}

static uint32_t add_gear(ts_train *train, ts_gear gear)
{
    train->gears[train->gear_count] = gear;
    return train->gear_count++;
}

static ts_gear spur(uint32_t shaft, int teeth, uint32_t step, int face)
{
    return (ts_gear){.role    = step ? TS_GEAR_STEP : TS_GEAR_MAIN,
                     .shaft   = shaft,
                     .step    = step,
                     .node    = 400 + shaft,
                     .teeth   = tally(teeth),
                     .m_n     = given(2.0 * MM),
                     .alpha_n = given(25 * M_PI / 180.0),
                     .beta    = given(0.0),
                     .face    = given(face * MM),
                     .x       = given(0.0)};
}

static void add_mesh(ts_train *train, ts_mesh_kind kind, uint32_t driver, uint32_t driven,
                     const ts_bevel_gears *bevels)
{
    const uint32_t driven_shaft      = train->gears[driven].shaft;
    train->shafts[driven_shaft].mesh = train->mesh_count;
    train->meshes[train->mesh_count] = (ts_mesh){.kind         = kind,
                                                 .driver       = driver,
                                                 .driven       = driven,
                                                 .driver_shaft = train->gears[driver].shaft,
                                                 .driven_shaft = driven_shaft,
                                                 .node         = 500 + train->mesh_count,
                                                 .loss         = given(bevels ? 0.01 : 0.005),
                                                 .bevels       = bevels};
    train->mesh_count++;
}

static void add_bevels(ts_train *train, uint32_t driver, uint32_t driven,
                       const ts_bevel_gears *bevels)
{
    ts_gear gear          = {.role    = TS_GEAR_BEVEL,
                             .node    = 600,
                             .m_n     = bevels->module,
                             .face    = bevels->face,
                             .alpha_n = bevels->pressure_angle,
                             .beta    = bevels->spiral};
    gear.shaft            = driver;
    gear.teeth            = bevels->teeth[0];
    const uint32_t first  = add_gear(train, gear);
    gear.shaft            = driven;
    gear.teeth            = bevels->teeth[1];
    const uint32_t second = add_gear(train, gear);
    add_mesh(train, TS_MESH_BEVEL, first, second, bevels);
}

/* Rows become shafts FIRST_BOX + row; 0 and 1 are the spools, 2 and 3 the tower shafts. */
static void add_row(const ts_drive *drive, ts_train *train, const ts_box_shaft *records, int r,
                    uint32_t *outer)
{
    const row *this      = &rows[r];
    const uint32_t shaft = FIRST_BOX + (uint32_t)r, d = r < HP_ROWS ? 0 : 1;
    ts_shaft      *one = &train->shafts[shaft];
    *one               = (ts_shaft){.kind   = TS_SHAFT_BOX,
                                    .node   = 400 + shaft,
                                    .name   = this->name,
                                    .spool  = d,
                                    .drive  = d,
                                    .number = (uint32_t)this->number,
                                    .way    = this->way > 0   ? TS_WAY_CLOCKWISE
                                              : this->way < 0 ? TS_WAY_ANTICLOCKWISE
                                                              : TS_WAY_NONE,
                                    .record = &records[r]};
    one->pad[TS_FRONT] = add_pad(train, shaft, TS_FRONT, this->front);
    one->pad[TS_REAR]  = add_pad(train, shaft, TS_REAR, this->rear);
    if (this->from < 0)
        add_bevels(train, 2 + d, shaft, &drive->drive[d].box.bevels);
    const uint32_t gear = add_gear(train, spur(shaft, this->teeth, 0, this->face));
    if (this->from >= 0)
        add_mesh(train, TS_MESH_CYLINDRICAL, outer[this->from], gear, NULL);
    outer[r] = this->step ? add_gear(train, spur(shaft, this->step, 1, this->face - 2)) : gear;
}

static bool lay_out_train(const ts_drive *drive, ts_train *train, ts_arena *arena)
{
    ts_box_shaft *records = TS_TAKE(arena, ts_box_shaft, ROWS);
    train->shafts         = TS_TAKE(arena, ts_shaft, FIRST_BOX + ROWS);
    train->gears          = TS_TAKE(arena, ts_gear, 3 * ROWS);
    train->meshes         = TS_TAKE(arena, ts_mesh, 2 * ROWS);
    train->pads           = TS_TAKE(arena, ts_pad, 2 * ROWS);
    if (!records || !train->shafts || !train->gears || !train->meshes || !train->pads)
        return false;
    train->shaft_count                = FIRST_BOX + ROWS;
    static const char *const names[4] = {"hp spool", "lp spool", "hp tower shaft",
                                         "lp tower shaft"};
    for (uint32_t s = 0; s < FIRST_BOX; s++)
        train->shafts[s] = (ts_shaft){.kind  = s < 2 ? TS_SHAFT_SPOOL : TS_SHAFT_TOWER,
                                      .node  = s < 2 ? 50 + s : 72 + s,
                                      .name  = names[s],
                                      .spool = s % 2,
                                      .drive = s % 2,
                                      .mesh  = TS_NOWHERE,
                                      .pad   = {TS_NOWHERE, TS_NOWHERE}};
    for (uint32_t d = 0; d < 2; d++)
        add_bevels(train, d, 2 + d, &drive->drive[d].take_off.bevels);
    uint32_t outer[ROWS] = {0};
    for (int r = 0; r < ROWS; r++) {
        records[r] = (ts_box_shaft){.node = 400, .face = given(rows[r].face * MM)};
        add_row(drive, train, records, r, outer);
    }
    return true;
}

/* ---- motion ------------------------------------------------------------------------------ */

static void solve_bevel(const ts_train *train, const ts_mesh *mesh, ts_mesh_motion *out)
{
    const ts_bevel_pair_input in = {.z_1     = (int)train->gears[mesh->driver].teeth.value,
                                    .z_2     = (int)train->gears[mesh->driven].teeth.value,
                                    .m_et    = mesh->bevels->module.value,
                                    .Sigma   = 0.5 * M_PI,
                                    .alpha_n = mesh->bevels->pressure_angle.value,
                                    .beta_m  = mesh->bevels->spiral.value,
                                    .b       = mesh->bevels->face.value};
    out->solved                  = ts_bevel_pair_solve(&in, &out->bevel, NULL) == TS_BEVEL_FINE;
    out->r_1                     = 0.5 * out->bevel.d_m1;
    out->r_2                     = 0.5 * out->bevel.d_m2;
}

static void solve_spur(const ts_train *train, const ts_mesh *mesh, ts_mesh_motion *out)
{
    const ts_gear *g1 = &train->gears[mesh->driver], *g2 = &train->gears[mesh->driven];
    const ts_cylindrical_pair_input in = {
        .z_1     = (int)g1->teeth.value,
        .z_2     = (int)g2->teeth.value,
        .m_n     = g1->m_n.value,
        .alpha_n = g1->alpha_n.value,
        .b_1     = g1->face.value,
        .b_2     = g2->face.value,
        .rack    = ts_basic_rack_fitted(&ts_basic_rack_C, g1->alpha_n.value)};
    out->solved = ts_cylindrical_pair_solve(&in, &out->pair, NULL) == TS_PAIR_FINE;
    out->a_w    = out->pair.a_w;
    out->r_1    = 0.5 * out->pair.d_w1;
    out->r_2    = 0.5 * out->pair.d_w2;
}

static void place(ts_shaft_motion *shaft, double radius, double clock)
{
    shaft->radius = radius;
    shaft->clock  = clock;
    shaft->x      = radius * sin(clock);
    shaft->y      = radius * cos(clock);
    shaft->placed = true;
}

/* The chord of the arc between two axes is their centre distance. */
static void place_shaft(const ts_drive *drive, const ts_train *train, ts_motion *motion, uint32_t s)
{
    const ts_shaft       *shaft = &train->shafts[s];
    const ts_spool_drive *in    = &drive->drive[shaft->drive];
    const double          R     = in->box.arc.radius.value;
    if (shaft->way == TS_WAY_NONE || shaft->mesh == TS_NOWHERE) {
        place(&motion->shafts[s], R, in->box.arc.clock.value);
        return;
    }
    const ts_mesh *mesh = &train->meshes[shaft->mesh];
    const double   turn = 2.0 * asin(0.5 * motion->meshes[shaft->mesh].a_w / R);
    place(&motion->shafts[s], R,
          motion->shafts[mesh->driver_shaft].clock +
              (shaft->way == TS_WAY_CLOCKWISE ? turn : -turn));
}

static void turn_shaft(const ts_train *train, ts_motion *motion, uint32_t s)
{
    const ts_mesh         *mesh   = &train->meshes[train->shafts[s].mesh];
    const ts_shaft_motion *driver = &motion->shafts[mesh->driver_shaft];
    const ts_rational      step   = ts_rational_of(train->gears[mesh->driver].teeth.value,
                                                   train->gears[mesh->driven].teeth.value);
    motion->shafts[s].ratio       = ts_rational_times(driver->ratio, step);
    motion->shafts[s].sense       = -driver->sense;
}

static bool solve_motion(const ts_drive *drive, const ts_train *train, ts_motion *motion,
                         ts_arena *arena)
{
    motion->train           = train;
    motion->condition_count = SAMPLE_CONDITIONS;
    motion->shafts          = TS_TAKE(arena, ts_shaft_motion, train->shaft_count);
    motion->meshes          = TS_TAKE(arena, ts_mesh_motion, train->mesh_count);
    motion->speed    = TS_TAKE(arena, double, (size_t)SAMPLE_CONDITIONS * train->shaft_count);
    motion->velocity = TS_TAKE(arena, double, (size_t)SAMPLE_CONDITIONS * train->mesh_count);
    if (!motion->shafts || !motion->meshes || !motion->speed || !motion->velocity)
        return false;
    for (uint32_t s = 0; s < train->shaft_count; s++) {
        if (s < 2) {
            motion->shafts[s] = (ts_shaft_motion){.ratio = {1, 1}, .sense = 1, .placed = true};
        } else {
            const uint32_t m = train->shafts[s].mesh;
            if (train->meshes[m].kind == TS_MESH_BEVEL)
                solve_bevel(train, &train->meshes[m], &motion->meshes[m]);
            else
                solve_spur(train, &train->meshes[m], &motion->meshes[m]);
            place_shaft(drive, train, motion, s);
            turn_shaft(train, motion, s);
        }
        for (uint32_t c = 0; c < SAMPLE_CONDITIONS; c++)
            motion->speed[c * train->shaft_count + s] =
                drive->conditions[c].speed[train->shafts[s].spool].value *
                ts_rational_value(motion->shafts[s].ratio);
    }
    return true;
}

/* ---- power ------------------------------------------------------------------------------- */

/* From the pads inwards: what goes out of a shaft came in through its mesh, less the loss. */
static void carry(const ts_train *train, const ts_motion *motion, ts_power *power, uint32_t c,
                  double *out_of)
{
    for (uint32_t p = 0; p < train->pad_count; p++) {
        const int32_t a    = train->pads[p].accessory;
        ts_pad_load  *load = &power->pad[c * train->pad_count + p];
        load->standing     = TS_GIVEN;
        load->P            = a >= 0 ? kilowatts[a][c] * 1e3 : 0.0;
        out_of[train->pads[p].shaft] += load->P;
    }
    for (uint32_t s = train->shaft_count; s-- > 2;) {
        const uint32_t m    = train->shafts[s].mesh;
        const ts_mesh *mesh = &train->meshes[m];
        ts_mesh_load  *load = &power->mesh[c * train->mesh_count + m];
        const double   keep = 1.0 - mesh->loss.value;
        load->P[1]          = out_of[s];
        load->P[0]          = out_of[s] >= 0.0 ? out_of[s] / keep : out_of[s] * keep;
        load->loss          = load->P[0] - load->P[1];
        load->flow          = out_of[s] > 0.0   ? TS_FLOW_OUTWARD
                              : out_of[s] < 0.0 ? TS_FLOW_INWARD
                                                : TS_FLOW_NONE;
        const double w      = motion->speed[c * train->shaft_count + mesh->driver_shaft];
        load->F_t =
            w > 0.0 ? fmax(fabs(load->P[0]), fabs(load->P[1])) / w / motion->meshes[m].r_1 : 0.0;
        out_of[mesh->driver_shaft] += load->P[0];
    }
}

static void balance(const ts_train *train, const ts_motion *motion, ts_power *power, uint32_t c,
                    const double *out_of)
{
    for (uint32_t k = 0; k < 2; k++) {
        ts_spool_load *load = &power->spool[c * 2 + k];
        const double   w    = motion->speed[c * train->shaft_count + k];
        load->P             = out_of[k];
        load->T             = w > 0.0 ? load->P / w : 0.0;
        for (uint32_t p = 0; p < train->pad_count; p++) {
            ts_pad_load *pad = &power->pad[c * train->pad_count + p];
            const double v   = motion->speed[c * train->shaft_count + train->pads[p].shaft];
            pad->T           = v > 0.0 ? pad->P / v : 0.0;
            if (train->shafts[train->pads[p].shaft].spool != k)
                continue;
            load->P_pads += pad->P;
            load->P_driving += fmax(0.0, -pad->P);
        }
        for (uint32_t m = 0; m < train->mesh_count; m++)
            if (train->shafts[train->meshes[m].driven_shaft].spool == k)
                load->P_lost += power->mesh[c * train->mesh_count + m].loss;
    }
}

static bool solve_power(const ts_train *train, const ts_motion *motion, ts_power *power,
                        ts_arena *arena)
{
    power->motion = motion;
    power->mesh   = TS_TAKE(arena, ts_mesh_load, (size_t)SAMPLE_CONDITIONS * train->mesh_count);
    power->pad    = TS_TAKE(arena, ts_pad_load, (size_t)SAMPLE_CONDITIONS * train->pad_count);
    power->spool  = TS_TAKE(arena, ts_spool_load, (size_t)SAMPLE_CONDITIONS * 2);
    power->shaft_imbalance = TS_TAKE(arena, double, (size_t)SAMPLE_CONDITIONS * train->shaft_count);
    if (!power->mesh || !power->pad || !power->spool || !power->shaft_imbalance)
        return false;
    for (uint32_t c = 0; c < SAMPLE_CONDITIONS; c++) {
        double out_of[FIRST_BOX + ROWS] = {0};
        carry(train, motion, power, c, out_of);
        balance(train, motion, power, c, out_of);
    }
    return true;
}

/* ---- findings ---------------------------------------------------------------------------- */

static void find(sample *out)
{
    static const struct {
        const char *rule, *says;
        ts_level    level;
        ts_state    state;
        ts_node     node;
        int         condition;
    } found[] = {
        {"B2-speed-band", "generator turns at 30 820 rpm at take-off, the band ends at 28 000 rpm",
         TS_REFUSE, TS_OPEN, 200 + SAMPLE_GENERATOR, SAMPLE_TAKE_OFF},
        {"D2-body-gap", "fuel pump and starter stand 2.8 mm apart, 5 mm are wanted", TS_REFUSE,
         TS_OPEN, 200 + SAMPLE_FUEL, -1},
        {"E4-bearing-life", "the mass of the breather is not known", TS_WARN, TS_NOT_COMPUTABLE,
         200 + SAMPLE_BREATHER, -1},
        {"F3-radial-shaft-speed", "the surface of the hp tower shaft runs at 35 m/s", TS_WARN,
         TS_OPEN, 74, SAMPLE_RED_LINE},
        {"C2-hunting-tooth",
         "61 and 45 teeth: every pair of teeth meets; nearest hunting pair "
         "stands as it is",
         TS_NOTE, TS_OPEN, 502 + 4, -1},
        {"G2-neck", "oil pump pack is essential to the engine and has a neck", TS_WARN, TS_WAIVED,
         200 + SAMPLE_OIL, -1},
        {"F1-float", "the axial travel of the hp spool takes 0.7 mm of 3 mm slide", TS_NOTE,
         TS_OPEN, 50, -1},
        {"A5-stale", "two assumptions are older than a year", TS_NOTE, TS_OPEN, 0, -1},
    };
    for (size_t i = 0; i < sizeof found / sizeof *found; i++)
        out->findings[i] = (ts_finding){.rule      = found[i].rule,
                                        .says      = found[i].says,
                                        .level     = found[i].level,
                                        .state     = found[i].state,
                                        .node      = found[i].node,
                                        .condition = found[i].condition,
                                        .value     = NAN,
                                        .limit     = NAN,
                                        .margin    = NAN};
}

/* ---- judgements -------------------------------------------------------------------------- */

static void judge(sample *out)
{
    static const double bands[SAMPLE_CONDITIONS] = {NAN, NAN, 0.12, 0.31, -0.091, 0.05};
    static const double teeth[SAMPLE_CONDITIONS] = {2.4, 1.9, 0.8, 0.35, 0.21, 0.2};
    ts_judgement       *to                       = out->judgements;
    for (int c = 0; c < SAMPLE_CONDITIONS; c++) {
        *to++ = (ts_judgement){.rule      = "B2-speed-band",
                               .node      = 200 + SAMPLE_GENERATOR,
                               .condition = c,
                               .margin    = bands[c],
                               .passed    = !(bands[c] < 0.0)};
        *to++ = (ts_judgement){.rule      = "B2-speed-band",
                               .node      = 200 + SAMPLE_FUEL,
                               .condition = c,
                               .margin    = 0.25,
                               .passed    = true};
    }
    for (int c = 0; c < SAMPLE_CONDITIONS; c++)
        *to++ = (ts_judgement){.rule      = "H1-power-known",
                               .node      = 200 + SAMPLE_BREATHER,
                               .condition = c,
                               .margin    = NAN,
                               .passed    = c != SAMPLE_CRANK};
    for (int c = 0; c < SAMPLE_CONDITIONS; c++)
        for (int mesh = 0; mesh < 2; mesh++)
            *to++ = (ts_judgement){.rule      = "C9-tooth-contact",
                                   .node      = mesh ? SAMPLE_MESH_B : SAMPLE_MESH_A,
                                   .condition = c,
                                   .symbol    = "S_H",
                                   .margin    = teeth[c] + 0.1 * mesh,
                                   .passed    = true};
    *to = (ts_judgement){
        .rule = "D2-body-gap", .node = 200 + SAMPLE_FUEL, .condition = -1, .margin = -0.44};
}

sample *sample_open(ts_arena *arena)
{
    sample *out = TS_TAKE(arena, sample, 1);
    if (!out)
        return NULL;
    out->drive.title    = (ts_word){"Corncrake 33, accessory drive", 1, TS_GIVEN};
    out->drive.revision = (ts_word){"C", 1, TS_GIVEN};
    if (!describe_conditions(&out->drive, arena) || !describe_accessories(&out->drive, arena) ||
        !describe_engine(&out->drive, arena) || !describe_drives(&out->drive, arena) ||
        !lay_out_train(&out->drive, &out->train, arena) ||
        !solve_motion(&out->drive, &out->train, &out->motion, arena) ||
        !solve_power(&out->train, &out->motion, &out->power, arena))
        return NULL;
    find(out);
    judge(out);
    out->subject = (ts_drawing_subject){
        .drive           = &out->drive,
        .train           = &out->train,
        .motion          = &out->motion,
        .power           = &out->power,
        .findings        = out->findings,
        .finding_count   = sizeof out->findings / sizeof *out->findings,
        .judgements      = out->judgements,
        .judgement_count = SAMPLE_JUDGEMENTS,
        .file            = "corncrake33.yaml",
        .hash            = "9f3c5a70e1d24b8896ab0c5d7e8f90123456789abcdef0123456789abcdef012",
        .version         = "0.1.0",
        .verdict = "does not hold: 2 refused, 1 warned, 1 not computable, 1 waived; 226 judged"};
    return out;
}
