/* rating/drive_whirl.c: which rotors are the shafts of a drive, and where are their criticals? */
#include "rating/drive_whirl.h"

#include <math.h>
#include <string.h>

/* ---- which there are --------------------------------------------------------------------------
 */

static bool begins(const ts_line *line)
{
    return line->kind == TS_LINE_BOX || line->kind == TS_LINE_STUB || line->kind == TS_LINE_INNER;
}

ts_status ts_whirls_prepare(const ts_drive *drive, const ts_lines *lines, const ts_mass *mass,
                            ts_arena *arena, ts_whirls *out)
{
    *out = (ts_whirls){.drive = drive,
                       .lines = lines,
                       .mass  = mass,
                       .items = TS_TAKE(arena, ts_whirl_item, lines->count + 1),
                       .frame = TS_TAKE(arena, ts_rotor_frame, 1)};
    if (out->items == NULL || out->frame == NULL)
        return TS_NO_MEMORY;
    for (uint32_t i = 0; i < lines->count; i++) {
        const ts_line  *line  = &lines->lines[i];
        const ts_shaft *shaft = &lines->motion->train->shafts[line->shaft];
        if (!begins(line))
            continue;
        ts_whirl_item *item = &out->items[out->count++];
        item->radial        = line->kind == TS_LINE_INNER;
        item->name          = item->radial ? shaft->name : line->name;
        item->node          = line->subject;
        item->shaft         = line->shaft;
        item->drive         = shaft->drive;
        item->part_count    = item->radial ? 3 : 1;
        for (int p = 0; p < item->part_count; p++)
            item->parts[p].line = i + (uint32_t)p;
    }
    return TS_OK;
}

/* ---- what lies along it ------------------------------------------------------------------------
 */

typedef struct build {
    const ts_whirls      *whirls;
    ts_whirl_item        *item;
    const ts_whirl_trial *trial; /* NULL: as it is */
} build;

static const ts_line *line_of(const build *b, int part)
{
    return &b->whirls->lines->lines[b->item->parts[part].line];
}

/* From the middle of the face of a bevel gear to its apex, along the shaft. */
static double apex_distance(const build *b, const ts_line *line)
{
    const ts_motion *motion = b->whirls->lines->motion;
    const ts_train  *train  = motion->train;

    for (uint32_t m = 0; line->gear_count > 0 && m < train->mesh_count; m++) {
        const ts_mesh *mesh  = &train->meshes[m];
        const bool     first = mesh->driver == line->gears[0].gear;
        if (mesh->kind != TS_MESH_BEVEL || (!first && mesh->driven != line->gears[0].gear))
            continue;
        const ts_bevel_pair *pair = &motion->meshes[m].bevel;
        return line->gears[0].r / tan(first ? pair->delta_1 : pair->delta_2);
    }
    return (double)NAN;
}

/* Where the three lines of a radial shaft lie between its apices. */
static void lay_radial(build *b)
{
    ts_whirl_item *item  = b->item;
    const ts_line *inner = line_of(b, 0), *tube = line_of(b, 1), *outer = line_of(b, 2);
    const double   L = b->trial != NULL ? b->trial->length : tube->length;

    item->parts[0].offset = apex_distance(b, inner) - inner->gears[0].x;
    item->parts[1].offset = 0.0;
    item->parts[2].offset = L - apex_distance(b, outer) - outer->gears[0].x;
    item->parts[0].from   = item->parts[0].offset;
    item->parts[0].to     = item->parts[1].from =
        item->parts[0].offset + inner->length - TS_LINE_SPLINE / 2.0;
    item->parts[1].to = item->parts[2].from = item->parts[2].offset + TS_LINE_SPLINE / 2.0;
    item->parts[2].to                       = item->parts[2].offset + outer->length;
    item->length                            = L;
    if (!(item->parts[1].to > item->parts[1].from + 1e-3))
        item->fault = "its gearshafts leave no room for a tube between their splines";
    item->joints[0] =
        (ts_rotor_joint){item->parts[0].to, b->whirls->drive->whirl.spline_stiffness.value};
    item->joints[1] =
        (ts_rotor_joint){item->parts[1].to, b->whirls->drive->whirl.spline_stiffness.value};
    item->rotor.joint_count = 2;
}

static void lay(build *b)
{
    if (b->item->radial) {
        lay_radial(b);
        return;
    }
    b->item->parts[0].from = 0.0;
    b->item->parts[0].to = b->item->length = line_of(b, 0)->length;
}

static void add_sections(build *b, int part)
{
    const ts_whirl_part *at   = &b->item->parts[part];
    const ts_line       *line = line_of(b, part);
    const bool           tube = line->kind == TS_LINE_TUBE;

    for (int i = 0; i < line->section_count; i++) {
        const ts_beam_section *s    = &line->sections[i];
        const double           d_o  = tube && b->trial != NULL ? b->trial->outside : s->d_o;
        const double           d_i  = tube && b->trial != NULL ? b->trial->bore : s->d_i;
        const double           from = tube ? at->from : fmax(at->from, s->x_1 + at->offset);
        const double           to   = tube ? at->to : fmin(at->to, s->x_2 + at->offset);
        if (to > from + 1e-7)
            b->item->sections[b->item->rotor.section_count++] = (ts_rotor_section){
                from, to, d_o, d_i, tube ? d_o : fmax(d_i, fmin(d_o, line->d_seat))};
    }
}

/* The weight of a gear, among the parts of the drive. */
static const ts_mass_part *weight_of(const build *b, uint32_t gear)
{
    const ts_train *train = b->whirls->lines->motion->train;
    const ts_mass  *mass  = b->whirls->mass;

    for (size_t i = 0; i < mass->part_count; i++) {
        const ts_mass_part *part = &mass->parts[i];
        if (part->kind == TS_MASS_GEAR && part->node == train->gears[gear].node)
            return part;
        if (part->kind != TS_MASS_BEVEL)
            continue;
        const bool driven = strcmp(part->J_name, "J_bevel2") == 0;
        for (uint32_t m = 0; m < train->mesh_count; m++)
            if (train->meshes[m].node == part->node && train->meshes[m].kind == TS_MESH_BEVEL &&
                (driven ? train->meshes[m].driven : train->meshes[m].driver) == gear)
                return part;
    }
    return NULL;
}

static void add_discs(build *b, int part)
{
    const ts_line *line = line_of(b, part);

    for (int g = 0; g < line->gear_count; g++) {
        const ts_mass_part *gear = weight_of(b, line->gears[g].gear);
        if (gear == NULL || gear->missing != NULL || gear->J_missing != NULL) {
            b->item->fault = "the mass of one of its gears is not known";
            return;
        }
        const double m = gear->m.value, J = gear->J.value, w = line->gears[g].width;
        b->item->discs[b->item->rotor.disc_count++] = (ts_rotor_disc){
            line->gears[g].x + b->item->parts[part].offset, m, J, J / 2.0 + m * w * w / 12.0};
    }
}

static void put_bearing(build *b, double x, const ts_line_bearing *bearing)
{
    ts_whirl_item *item = b->item;
    const int      at   = item->rotor.bearing_count++;

    item->bearings[at] = (ts_rotor_bearing){
        .x = x, .k_r = bearing->k_r, .loss = b->whirls->drive->whirl.bearing_loss.value};
    item->bearing_names[at] = bearing->place;
    item->stated            = item->stated && ts_measure_known(bearing->seat->stiffness);
}

static void add_bearings(build *b, int part)
{
    const ts_line *line  = line_of(b, part);
    const bool     tried = line->kind == TS_LINE_TUBE && b->trial != NULL;

    for (int k = 0; k < line->bearing_count && !tried; k++) {
        if (!line->bearings[k].there)
            continue;
        if (!(line->bearings[k].k_r > 0.0)) {
            b->item->missing = "the stiffness of a bearing";
            b->item->lacks   = line->name;
            return;
        }
        put_bearing(b, line->bearings[k].x + b->item->parts[part].offset, &line->bearings[k]);
        if (line->kind == TS_LINE_TUBE)
            b->item->mid = line->bearings[k].x;
    }
    /* A mid bearing that is only tried: as it is, or else as that of the outer end away from its
     * gear. */
    if (!tried || isnan(b->trial->mid))
        return;
    const ts_line *outer = line_of(b, 2);
    b->item->mid         = b->trial->mid * b->item->length;
    if (line->bearing_count > 0)
        put_bearing(b, b->item->mid, &line->bearings[0]);
    else if (outer->bearing_count > 1 && outer->bearings[1].k_r > 0.0)
        put_bearing(b, b->item->mid, &outer->bearings[1]);
    else
        b->item->missing = "the stiffness of a bearing";
}

/* What keeps a line from being a rotor. */
static bool is_whole(build *b)
{
    for (int p = 0; p < b->item->part_count; p++) {
        const ts_line *line = line_of(b, p);
        if (line->missing != NULL) {
            b->item->missing = line->missing;
            b->item->lacks   = line->name;
        }
        if (line->fault != NULL)
            b->item->fault = line->fault;
        if (line->section_count == 0 && b->item->missing == NULL && b->item->fault == NULL)
            b->item->fault = "its shape is not known";
    }
    return b->item->missing == NULL && b->item->fault == NULL;
}

static void put_together(build *b)
{
    ts_whirl_item *item = b->item;

    item->fault = item->missing = item->lacks = NULL;
    item->rotor                               = (ts_rotor){0};
    item->stated                              = true;
    item->mid = item->length = (double)NAN;
    if (!is_whole(b))
        return;
    lay(b);
    for (int p = 0; p < item->part_count && item->fault == NULL && item->missing == NULL; p++) {
        add_sections(b, p);
        add_discs(b, p);
        add_bearings(b, p);
    }
    item->rotor.sections = item->sections;
    item->rotor.discs    = item->discs;
    item->rotor.bearings = item->bearings;
    item->rotor.joints   = item->joints;
    item->rotor.E        = line_of(b, 0)->E;
    item->rotor.G        = line_of(b, 0)->G;
    item->rotor.rho      = line_of(b, 0)->rho;
}

/* ---- all of them ------------------------------------------------------------------------------
 */

static const ts_formula critical_formula = {
    .symbol  = "n_critical",
    .meaning = "first forward critical speed",
    .unit    = "rad/s",
    .text    = "omega_whirl",
    .source  = "beam elements with shear, rotatory inertia and gyroscopic moments: H. Nelson, J. "
               "Mechanical Design 102 (1980), 793 (from memory)",
};

static void find_top(const ts_whirls *whirls, ts_whirl_item *item)
{
    const ts_motion *motion = whirls->lines->motion;

    item->top    = (double)NAN;
    item->top_at = -1;
    for (uint32_t c = 0; c < whirls->drive->condition_count; c++) {
        const double here =
            fabs(motion->speed[(size_t)c * motion->train->shaft_count + item->shaft]);
        if (here > 0.0 && (isnan(item->top) || here > item->top)) {
            item->top    = here;
            item->top_at = (int32_t)c;
        }
    }
}

/* What becomes of one rotor. */
typedef struct first_whirl {
    ts_rotor_fault fault;
    double         forward;
} first_whirl;

static first_whirl whirl_of(const ts_whirls *whirls, const ts_rotor *rotor)
{
    first_whirl found = {ts_rotor_prepare(rotor, whirls->frame), (double)NAN};

    if (found.fault == TS_ROTOR_FINE)
        found.forward = ts_rotor_critical(whirls->frame, TS_WHIRL_FORWARD, 0, NULL);
    return found;
}

/* The whole rotor is the question: put_together() leaves its other members as they begin. */
static first_whirl first_whirl_of(const ts_whirls *whirls, uint32_t item)
{
    const ts_rotor *r         = &whirls->items[item].rotor;
    const int       counts[]  = {r->section_count, r->disc_count, r->bearing_count, r->joint_count};
    const int       leave[]   = {r->shearless, r->slopeless};
    const double    numbers[] = {r->E, r->G, r->rho, r->kappa, r->longest};
    ts_memo        *memo      = whirls->memo;
    bool            known;

    ts_memo_ask(memo, counts, sizeof counts);
    ts_memo_ask(memo, leave, sizeof leave);
    ts_memo_ask(memo, numbers, sizeof numbers);
    ts_memo_ask(memo, r->sections, (size_t)r->section_count * sizeof *r->sections);
    ts_memo_ask(memo, r->discs, (size_t)r->disc_count * sizeof *r->discs);
    ts_memo_ask(memo, r->bearings, (size_t)r->bearing_count * sizeof *r->bearings);
    ts_memo_ask(memo, r->joints, (size_t)r->joint_count * sizeof *r->joints);
    first_whirl *kept = ts_memo_answer(memo, TS_MEMO_WHIRL, item, sizeof *kept, &known);
    if (known)
        return *kept;
    const first_whirl found = whirl_of(whirls, r);
    if (kept != NULL)
        *kept = found;
    return found;
}

void ts_whirls_solve(ts_whirls *whirls, ts_workings *workings)
{
    for (uint32_t i = 0; i < whirls->count; i++) {
        ts_whirl_item *item = &whirls->items[i];
        build          b    = {whirls, item, NULL};
        find_top(whirls, item);
        put_together(&b);
        item->forward = (double)NAN;
        if (item->fault != NULL || item->missing != NULL)
            continue;
        const first_whirl found = first_whirl_of(whirls, i);
        if (found.fault != TS_ROTOR_FINE) {
            item->fault = ts_rotor_fault_says(found.fault);
            continue;
        }
        item->forward            = found.forward;
        const double omega_whirl = item->forward;
        if (!isfinite(omega_whirl))
            continue;
        ts_workings_about(workings, item->node, TS_EVERY_CONDITION);
        ts_workings_row(workings, "omega_whirl", omega_whirl, "rad/s",
                        "derived: the eigenvalue of the rotor (docs/method/whirl.md)");
        (void)TS_STEP(workings, critical_formula, omega_whirl, omega_whirl);
    }
}

/* ---- as it might be ---------------------------------------------------------------------------
 */

double ts_whirl_try(const ts_whirls *whirls, uint32_t item, const ts_whirl_trial *trial)
{
    ts_whirl_item copy = whirls->items[item];
    build         b    = {whirls, &copy, trial};

    put_together(&b);
    if (copy.fault != NULL || copy.missing != NULL ||
        ts_rotor_prepare(&copy.rotor, whirls->frame) != TS_ROTOR_FINE)
        return (double)NAN;
    return ts_rotor_critical(whirls->frame, TS_WHIRL_FORWARD, 0, NULL);
}

/* Does it hold there?  One count in place of a search. */
static int holds(const ts_whirls *whirls, uint32_t item, const ts_whirl_trial *trial, double least)
{
    ts_whirl_item copy = whirls->items[item];
    build         b    = {whirls, &copy, trial};

    put_together(&b);
    if (copy.fault != NULL || copy.missing != NULL ||
        ts_rotor_prepare(&copy.rotor, whirls->frame) != TS_ROTOR_FINE)
        return -1;
    return ts_rotor_criticals_below(whirls->frame, TS_WHIRL_FORWARD, least) == 0;
}

double ts_whirl_longest(const ts_whirls *whirls, uint32_t item, const ts_whirl_trial *trial,
                        double least)
{
    const ts_whirl_item *now  = &whirls->items[item];
    ts_whirl_trial       here = *trial;
    double low = now->length - (now->parts[1].to - now->parts[1].from) + 5e-3, high = 2.5;

    here.length = low;
    if (!(least > 0.0) || holds(whirls, item, &here, least) != 1)
        return (double)NAN;
    here.length = high;
    if (holds(whirls, item, &here, least) == 1)
        return high;
    while (high - low > 1e-4) {
        here.length                                              = (low + high) / 2.0;
        *(holds(whirls, item, &here, least) == 1 ? &low : &high) = here.length;
    }
    return low;
}
