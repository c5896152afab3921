/* rating/line_shape.c: how long and how thick is a line, and where do its gears and bearings stand?
 *
 * What the file does not say follows from few numbers below, all of them common practice without a
 * source (docs/method/drive_lines.md).
 */
#include "rating/drive_lines_parts.h"

#include "catalog/gear_material.h"

#include <math.h>

static const double pi = 3.14159265358979323846;

#define GAP           TS_LINE_GAP
#define WALL          TS_LINE_WALL
#define TIP           2e-3  /* m    of shaft beyond a bearing where nothing follows       */
#define SIGMA_REF     60e6  /* Pa   reference stress of the first sizing                  */
#define BORE_SHARE    0.5   /*      bore over journal                                     */
#define SEAT_SHARE    1.2   /*      diameter between the bearings over the journal        */
#define LEAST_JOURNAL 20e-3 /* m */
#define SPREAD        2.0   /*      bearings of an overhung line apart, over the overhang   */

/* Of the series 02 at that bore, where the file says nothing. */
static double usual_width(const ts_lines_catalog *catalog, double bore)
{
    size_t size = ts_lines_size_of(catalog, 2, bore);

    if (size == catalog->size_count)
        size = ts_lines_size_of(catalog, 1, bore);
    if (size < catalog->size_count)
        return catalog->sizes[size].B;
    return 0.4 * bore; /* between the tables: what the series 02 tends to */
}

/* ---- gears ----------------------------------------------------------------------------------- */

static double known(ts_measure measure)
{
    return ts_measure_known(measure) ? measure.value : (double)NAN;
}

/* Any mesh of it knows its size. */
static void size_gear(const ts_lines_case *c, ts_line_gear *seat)
{
    const ts_gear *gear = &c->train->gears[seat->gear];

    seat->width = known(gear->face);
    seat->d_f = seat->r = (double)NAN;
    for (uint32_t m = 0; m < c->train->mesh_count; m++) {
        const ts_mesh        *mesh  = &c->train->meshes[m];
        const ts_mesh_motion *turn  = &c->lines->motion->meshes[m];
        const bool            first = mesh->driver == seat->gear;

        if ((!first && mesh->driven != seat->gear) || !turn->solved)
            continue;
        seat->r = first ? turn->r_1 : turn->r_2;
        if (mesh->kind == TS_MESH_CYLINDRICAL) {
            seat->d_f = first ? turn->pair.d_f1 : turn->pair.d_f2;
            return;
        }
        const double delta = first ? turn->bevel.delta_1 : turn->bevel.delta_2;
        seat->width        = turn->bevel.in.b * cos(delta);
        seat->d_f          = 2.0 * seat->r - 2.4 * turn->bevel.m_mn * cos(delta);
        return;
    }
    /* A step that drives nothing. */
    const double m_n = known(gear->m_n), z = (double)gear->teeth.value;
    seat->d_f = m_n * (z - 2.5);
    seat->r   = m_n * z / 2.0;
}

/* Front to rear: the bevel of a box input first where its back is at the rear. */
static void order_gears(const ts_lines_case *c, ts_line *line, int order[TS_LINE_GEARS_MOST])
{
    int count = 0, bevel = -1;

    for (int g = 0; g < line->gear_count; g++) {
        if (c->train->gears[line->gears[g].gear].role == TS_GEAR_BEVEL)
            bevel = g;
        else
            order[count++] = g;
    }
    if (bevel < 0)
        return;
    const uint32_t m = c->train->shafts[line->shaft].mesh;
    const bool     rear =
        line->kind == TS_LINE_BOX && c->train->meshes[m].bevels->side.value == TS_REAR;
    if (rear) /* apex, then back, then the other gears */
        for (int i = count; i > 0; i--)
            order[i] = order[i - 1];
    order[rear ? 0 : count] = bevel;
}

static const char *size_gears(const ts_lines_case *c, ts_line *line)
{
    for (int g = 0; g < line->gear_count; g++) {
        size_gear(c, &line->gears[g]);
        if (isnan(line->gears[g].width))
            return "a face width";
        if (!(line->gears[g].r > 0.0 && line->gears[g].d_f > 0.0))
            return "the geometry of a mesh";
    }
    return NULL;
}

/* ---- first diameters ------------------------------------------------------------------------- */

typedef struct first_size {
    double stack;    /* m   of gears and what is between them           */
    double T, F;     /* greatest torque, and radial force of all gears  */
    double d_f;      /* m   of the thinnest gear                        */
    bool   overhung; /*     bearings on one side of the gears           */
} first_size;

static bool is_overhung(const ts_lines_case *c, const ts_line *line)
{
    const ts_shaft *shaft = &c->train->shafts[line->shaft];

    switch (line->kind) {
    case TS_LINE_BOX:
        return shaft->record->support.value == TS_OVERHUNG;
    case TS_LINE_STUB:
    case TS_LINE_OUTER: /* the first gear of its bevels */
    case TS_LINE_INNER: /* the second                   */
        break;
    case TS_LINE_TUBE:
        return false;
    }
    if (line->gear_count == 0)
        return false;
    for (uint32_t m = 0; m < c->train->mesh_count; m++) {
        const ts_mesh *mesh = &c->train->meshes[m];
        if (mesh->kind == TS_MESH_BEVEL &&
            (mesh->driver == line->gears[0].gear || mesh->driven == line->gears[0].gear))
            return (mesh->driver == line->gears[0].gear ? 0 : 1) < mesh->bevels->mounting.value;
    }
    return false;
}

static first_size gather(const ts_lines_case *c, uint32_t number)
{
    const ts_line *line = &c->lines->lines[number];
    first_size     out  = {.d_f = INFINITY, .overhung = is_overhung(c, line)};

    for (int g = 0; g < line->gear_count; g++) {
        out.stack += line->gears[g].width + (g > 0 ? GAP : 0.0);
        out.d_f = fmin(out.d_f, line->gears[g].d_f);
    }
    for (uint32_t k = 0; k < c->drive->condition_count; k++) {
        const ts_line_case *one = ts_line_case_at(c, number, k);
        double              F   = 0.0;

        if (!one->known)
            continue;
        out.T = fmax(out.T, fmax(fabs(one->pad[0]), fabs(one->pad[1])));
        for (int g = 0; g < line->gear_count; g++) {
            F += hypot(one->load[g].F[1], one->load[g].F[2]);
            /* An axial force at the rim bends as much as a radial one with its arm. */
            F += hypot(one->load[g].M[1], one->load[g].M[2]) / fmax(out.stack, 0.02);
            if (line->gear_count > 1)
                out.T = fmax(out.T, fabs(one->load[g].M[0]));
        }
        out.F = fmax(out.F, F);
    }
    return out;
}

/* The diameter that bears both moments with the reference stress, bored by the usual share. */
static double reference_diameter(const first_size *first)
{
    const double arm = first->overhung ? first->stack / 2.0 + GAP + 10e-3
                                       : (first->stack + 2.0 * GAP + 20e-3) / 4.0;
    const double M = first->F * arm, T = first->T, k = BORE_SHARE;

    return cbrt(32.0 * sqrt(M * M + 0.75 * T * T) / (pi * SIGMA_REF * (1.0 - k * k * k * k)));
}

static double up_to(double d, double step)
{
    return ceil(d / step - 1e-6) * step;
}

static void choose_diameters(const ts_lines_case *c, ts_line *line, const first_size *first)
{
    const ts_box_shaft *record = c->train->shafts[line->shaft].record;
    const bool          told   = line->kind == TS_LINE_BOX && record != NULL;

    line->d_ref = reference_diameter(first);
    double most = first->d_f - 2e-3;
    if (told && ts_measure_known(record->outside))
        most = fmin(most, record->outside.value - 1e-3);
    line->d_most = most;
    most         = ts_lines_bore_near(c->lines->catalog, most, false);
    double journal =
        ts_lines_bore_near(c->lines->catalog, fmax(0.85 * line->d_ref, LEAST_JOURNAL), true);
    if (isnan(journal))
        journal = ts_lines_bore_near(c->lines->catalog, 1.0, false);
    if (most < journal)
        journal = most;
    line->d_journal = journal;
    for (int k = 0; k < line->bearing_count; k++) {
        ts_line_bearing *b = &line->bearings[k];

        b->bearing.d   = ts_measure_known(b->seat->bore) ? b->seat->bore.value : journal;
        const int rows = b->seat->rows.standing == TS_GIVEN ? (int)b->seat->rows.value : 1;
        if (b->laid_width > 0.0)
            b->width = b->laid_width;
        else
            b->width = rows * (ts_measure_known(b->seat->width)
                                   ? b->seat->width.value
                                   : usual_width(c->lines->catalog, b->bearing.d));
    }
}

/* Between the bearings, and the bore of all: once the bearings are there. */
static void finish_diameters(const ts_lines_case *c, ts_line *line)
{
    const ts_box_shaft *record = c->train->shafts[line->shaft].record;
    const bool          told   = line->kind == TS_LINE_BOX && record != NULL;
    double              widest = line->d_journal, thinnest = INFINITY;

    for (int k = 0; k < line->bearing_count; k++) {
        widest   = fmax(widest, line->bearings[k].bearing.d);
        thinnest = fmin(thinnest, line->bearings[k].bearing.d);
    }
    for (int g = 0; g < line->gear_count; g++)
        thinnest = fmin(thinnest, line->gears[g].d_f);
    line->d_seat = fmax(up_to(SEAT_SHARE * widest, 5e-4), up_to(line->d_ref, 5e-4));
    if (told && ts_measure_known(record->outside))
        line->d_seat = record->outside.value;
    line->d_bore = floor(BORE_SHARE * fmin(thinnest, line->d_seat) / 1e-3) * 1e-3;
    if (told && ts_measure_known(record->bore))
        line->d_bore = record->bore.value;
}

/* ---- places ---------------------------------------------------------------------------------- */

/* Gears from x on, in order. */
static double stack_gears(ts_line *line, const int *order, double x)
{
    for (int i = 0; i < line->gear_count; i++) {
        ts_line_gear *gear = &line->gears[order[i]];
        gear->x            = x + gear->width / 2.0;
        x += gear->width + GAP;
    }
    return x - GAP;
}

/* What stands beyond the middle of an outer bearing. */
static double beyond(const ts_line *line, int k, bool torque)
{
    return line->bearings[k].width / 2.0 + (torque ? TS_LINE_SPLINE : TIP);
}

/* Bearings on both sides; the span as wide as the box lets it be. */
static double place_straddled(const ts_lines_case *c, ts_line *line, const int *order,
                              const first_size *first, const bool torque[2])
{
    const double B_1 = line->bearings[0].width, B_2 = line->bearings[1].width;
    double       span = first->stack + 2.0 * GAP + (B_1 + B_2) / 2.0;

    if (line->kind == TS_LINE_BOX) {
        const ts_box *box   = &c->drive->drive[c->train->shafts[line->shaft].drive].box;
        const double  depth = known(box->depth);
        if (depth - 2.0 * WALL - (B_1 + B_2) / 2.0 > span)
            span = depth - 2.0 * WALL - (B_1 + B_2) / 2.0;
    }
    const double front  = beyond(line, 0, torque[0]);
    line->bearings[0].x = front;
    line->bearings[1].x = front + span;
    (void)stack_gears(line, order, front + (B_1 - B_2) / 4.0 + (span - first->stack) / 2.0);
    return front + span + beyond(line, 1, torque[1]);
}

/* Gears at the front end, or at the rear one. */
static double place_overhung(ts_line *line, const int *order, const first_size *first,
                             bool gears_rear, const bool torque[2])
{
    const double B_1 = line->bearings[0].width, B_2 = line->bearings[1].width;
    const double arm  = first->stack / 2.0 + GAP + B_1 / 2.0;
    const double span = fmax(SPREAD * arm, (B_1 + B_2) / 2.0 + GAP);

    if (!gears_rear) {
        const double x      = torque[0] ? TS_LINE_SPLINE : 0.0;
        const double end    = stack_gears(line, order, x);
        line->bearings[0].x = end + GAP + B_1 / 2.0;
        line->bearings[1].x = line->bearings[0].x + span;
        return line->bearings[1].x + beyond(line, 1, torque[1]);
    }
    line->bearings[1].x = beyond(line, 1, torque[0]);
    line->bearings[0].x = line->bearings[1].x + span;
    return stack_gears(line, order, line->bearings[0].x + B_1 / 2.0 + GAP) +
           (torque[1] ? TS_LINE_SPLINE : 0.0);
}

/* A bevel gearshaft between its bearings: seats are numbered from the gear, not from the front. */
static double place_gearshaft(ts_line *line, const int *order, const first_size *first, bool rear,
                              const bool torque[2])
{
    const int    apex = rear ? 1 : 0; /* the end where the gear's apex is: at the front, or rear */
    const double B_1 = line->bearings[0].width, B_2 = line->bearings[1].width;
    const double span  = first->stack + 2.0 * GAP + (B_1 + B_2) / 2.0;
    const int    early = apex == 0 ? 0 : 1, late = 1 - early;
    const double front = beyond(line, early, torque[0]);

    line->bearings[early].x = front;
    line->bearings[late].x  = front + span;
    (void)stack_gears(line, order, front + line->bearings[early].width / 2.0 + GAP);
    return front + span + beyond(line, late, torque[1]);
}

static bool passes_torque(const ts_lines_case *c, const ts_line *line, int end)
{
    switch (line->kind) {
    case TS_LINE_BOX:
        return c->train->shafts[line->shaft].pad[end] != TS_NOWHERE;
    case TS_LINE_INNER:
        return end == 1;
    case TS_LINE_OUTER:
    case TS_LINE_STUB:
        return end == 0;
    case TS_LINE_TUBE:
        break;
    }
    return true;
}

/* Returns the length of the line. */
static double place_all(const ts_lines_case *c, ts_line *line, const int *order,
                        const first_size *first)
{
    const bool torque[2] = {passes_torque(c, line, 0), passes_torque(c, line, 1)};
    /* The gear of a radial shaft's outer end, and that of a take-off, stand away from the spline.
     */
    const bool rear = line->kind == TS_LINE_OUTER || line->kind == TS_LINE_STUB;

    if (line->kind == TS_LINE_BOX)
        return first->overhung ? place_overhung(line, order, first, false, torque)
                               : place_straddled(c, line, order, first, torque);
    return first->overhung ? place_overhung(line, order, first, rear, torque)
                           : place_gearshaft(line, order, first, rear, torque);
}

/* ---- sections -------------------------------------------------------------------------------- */

static void add(ts_line *line, double to, double d_o)
{
    const double from = line->section_count > 0 ? line->sections[line->section_count - 1].x_2 : 0.0;

    if (!(to > from + 1e-6) || line->section_count == TS_LINE_SECTIONS_MOST)
        return;
    if (line->section_count > 0 && fabs(line->sections[line->section_count - 1].d_o - d_o) < 1e-9) {
        line->sections[line->section_count - 1].x_2 = to;
        return;
    }
    line->sections[line->section_count++] =
        (ts_beam_section){.x_1 = from, .x_2 = to, .d_o = d_o, .d_i = line->d_bore};
}

/* Stress spreads at 45 degrees from the seat into the body of a gear; a thin pinion is its roots.
 */
static double body_of(const ts_line *line, const ts_line_gear *gear)
{
    return fmin(gear->d_f, line->d_seat + gear->width / 2.0);
}

/* Place of the first (-1) or last (+1) gear along the shaft, which need not be so in the train;
 * beyond everything when there is none. */
static double outermost_gear(const ts_line *line, int way)
{
    double x = way < 0 ? (double)INFINITY : -(double)INFINITY;

    for (int g = 0; g < line->gear_count; g++)
        if (way * line->gears[g].x > way * x)
            x = line->gears[g].x;
    return x;
}

/* Outside diameter at x of the outline that is made. */
static double outline_at(const ts_line *line, double x)
{
    for (int g = 0; g < line->gear_count; g++)
        if (fabs(x - line->gears[g].x) < line->gears[g].width / 2.0)
            return body_of(line, &line->gears[g]);
    for (int k = 0; k < line->bearing_count; k++) {
        const ts_line_bearing *b     = &line->bearings[k];
        const ts_line_bearing *other = &line->bearings[line->bearing_count - 1 - k];
        const bool outer = line->gear_count == 0 || (b->x < other->x ? x < b->x + b->width / 2.0
                                                                     : x > b->x - b->width / 2.0);
        if (outer && fabs(x - b->x) < b->width / 2.0)
            return b->bearing.d;
        /* beyond a bearing that is the last of that side, gears aside */
        if (b->x < other->x && x < b->x && x < outermost_gear(line, -1))
            return b->bearing.d;
        if (b->x > other->x && x > b->x && x > outermost_gear(line, +1))
            return b->bearing.d;
    }
    return line->d_seat;
}

static int by_place(double *x, int count)
{
    int kept = 0;

    for (int i = 1; i < count; i++)
        for (int k = i; k > 0 && x[k] < x[k - 1]; k--) {
            const double held = x[k];
            x[k]              = x[k - 1];
            x[k - 1]          = held;
        }
    for (int i = 0; i < count; i++)
        if (kept == 0 || x[i] > x[kept - 1] + 1e-6)
            x[kept++] = x[i];
    return kept;
}

static void outline(ts_line *line, double length)
{
    double x[2 + 2 * (TS_LINE_GEARS_MOST + TS_LINE_BEARINGS_MOST)];
    int    count = 0;

    x[count++] = 0.0;
    x[count++] = length;
    for (int g = 0; g < line->gear_count; g++) {
        x[count++] = line->gears[g].x - line->gears[g].width / 2.0;
        x[count++] = line->gears[g].x + line->gears[g].width / 2.0;
    }
    for (int k = 0; k < line->bearing_count; k++) {
        x[count++] = line->bearings[k].x - line->bearings[k].width / 2.0;
        x[count++] = line->bearings[k].x + line->bearings[k].width / 2.0;
    }
    count = by_place(x, count);
    for (int i = 1; i < count; i++)
        add(line, x[i], outline_at(line, (x[i - 1] + x[i]) / 2.0));
}

/* As the file has them. */
static void take_sections(ts_line *line, const ts_box_shaft *record)
{
    double x = 0.0;

    for (size_t i = 0; i < record->section_count && i < TS_LINE_SECTIONS_MOST; i++) {
        const ts_shaft_section *s = &record->sections[i];

        line->sections[line->section_count++] =
            (ts_beam_section){.x_1 = x,
                              .x_2 = x + s->length.value,
                              .d_o = s->outside.value,
                              .d_i = ts_measure_known(s->bore)
                                         ? s->bore.value
                                         : (line->d_bore < s->outside.value ? line->d_bore : 0.0)};
        x += s->length.value;
    }
}

/* Gears and bearings as they were made, in the middle of what the file has. */
static void centre(ts_line *line, double length)
{
    const double shift = (length - line->length) / 2.0;

    for (int g = 0; g < line->gear_count; g++)
        line->gears[g].x += shift;
    for (int k = 0; k < line->bearing_count; k++)
        line->bearings[k].x += shift;
    line->length = length;
}

static const char *judge_places(const ts_line *line, double end)
{
    int stands = 0;

    for (int g = 0; g < line->gear_count; g++)
        if (!(line->gears[g].x - line->gears[g].width / 2.0 >= -1e-9 &&
              line->gears[g].x + line->gears[g].width / 2.0 <= end + 1e-9))
            return "a gear stands beyond the end of the shaft";
    for (int k = 0; k < line->bearing_count; k++) {
        if (!line->bearings[k].there)
            continue;
        stands++;
        if (!(line->bearings[k].x >= 0.0 && line->bearings[k].x <= end))
            return "a bearing stands beyond the end of the shaft";
    }
    if (line->kind == TS_LINE_TUBE)
        return NULL;
    if (stands < 2)
        return "the shaft has fewer than two bearings";
    if (fabs(line->bearings[0].x - line->bearings[1].x) < 1e-6)
        return "both bearings stand at one place";
    return NULL;
}

/* ---- the tube of a radial shaft ---------------------------------------------------------------
 */

static bool shape_tube(const ts_lines_case *c, ts_line *line)
{
    const ts_tower_shaft *tower = &c->drive->drive[c->train->shafts[line->shaft].drive].tower_shaft;
    const double          length = known(tower->length), d_o = known(tower->outside);
    const double          d_i = known(tower->bore);

    if (isnan(length) || isnan(d_o) || isnan(d_i)) {
        line->missing = isnan(length) ? "the length" : isnan(d_o) ? "the outside" : "the bore";
        return false;
    }
    line->d_ref = line->d_seat = d_o;
    line->d_bore               = d_i;
    line->sections[0]          = (ts_beam_section){0.0, length, d_o, d_i};
    line->section_count        = 1;
    line->length               = length;
    line->d_journal            = ts_lines_bore_near(c->lines->catalog, d_o, true);
    if (line->bearing_count == 0)
        return true;
    ts_line_bearing *mid = &line->bearings[0];
    mid->x               = tower->mid_bearing.value;
    mid->bearing.d       = known(mid->seat->bore);
    if (isnan(mid->bearing.d))
        mid->bearing.d = line->d_journal;
    mid->width =
        mid->laid_width > 0.0 ? mid->laid_width : usual_width(c->lines->catalog, mid->bearing.d);
    line->length = length;
    line->fault  = judge_places(line, length);
    return line->fault == NULL;
}

static void take_steel(const ts_lines_case *c, ts_line *line)
{
    line->E   = 206e9;
    line->G   = 206e9 / 2.6;
    line->rho = 7830.0;
    for (int g = 0; g < line->gear_count; g++) {
        const ts_pick pick = c->train->gears[line->gears[g].gear].material;
        if (!ts_pick_known(pick))
            continue;
        const ts_gear_material steel = ts_gear_material_at((size_t)pick.value);
        line->E                      = steel.E;
        line->G                      = steel.E / (2.0 * (1.0 + steel.nu));
        line->rho                    = steel.rho;
        return;
    }
}

/* How long the sections of the file are together. */
static double told_length(const ts_box_shaft *record)
{
    double x = 0.0;

    for (size_t i = 0; i < record->section_count; i++)
        x += record->sections[i].length.value;
    return x;
}

bool ts_line_place(const ts_lines_case *c, uint32_t number)
{
    ts_line            *line                      = &c->lines->lines[number];
    const ts_box_shaft *record                    = c->train->shafts[line->shaft].record;
    int                 order[TS_LINE_GEARS_MOST] = {0};

    line->section_count = 0;
    line->fault = line->missing = NULL;
    take_steel(c, line);
    if (line->kind == TS_LINE_TUBE)
        return shape_tube(c, line);
    line->missing = line->gear_count == 0 ? "a gear" : size_gears(c, line);
    if (line->missing != NULL)
        return false;
    order_gears(c, line, order);
    const first_size first = gather(c, number);
    choose_diameters(c, line, &first);
    if (!(line->d_journal > 0.0)) {
        line->fault = "the roots of a gear leave no room for a shaft with bearings";
        return false;
    }
    line->length = place_all(c, line, order, &first);
    if (line->kind == TS_LINE_BOX && record->section_count > 0)
        centre(line, told_length(record));
    for (int k = 0; k < line->bearing_count; k++)
        if (ts_measure_known(line->bearings[k].seat->at))
            line->bearings[k].x = line->bearings[k].seat->at.value;
    line->fault = judge_places(line, line->length);
    return line->fault == NULL;
}

bool ts_line_outline(const ts_lines_case *c, uint32_t number)
{
    ts_line            *line   = &c->lines->lines[number];
    const ts_box_shaft *record = c->train->shafts[line->shaft].record;

    if (line->kind == TS_LINE_TUBE)
        return true;
    finish_diameters(c, line);
    if (line->kind == TS_LINE_BOX && record->section_count > 0)
        take_sections(line, record);
    else
        outline(line, line->length);
    for (int i = 0; i < line->section_count && line->fault == NULL; i++)
        if (!(line->sections[i].d_o > line->sections[i].d_i))
            line->fault = "its bore is as wide as one of its sections";
    return line->fault == NULL;
}
