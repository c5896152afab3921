/* rating/line_branch.c: which torque may leave a shaft by one of its ways before the shaft yields
 * or a bearing of it is dented, whatever leaves it by the others? */
#include "rating/line_branch.h"

#include "rating/drive_lines_parts.h"

#include <math.h>

#define TRIALS 60

/* Index of a direction of power. */
static int way_of(double T)
{
    return T < 0.0 ? 0 : 1;
}

/* ---- ways ------------------------------------------------------------------------------------ */

typedef struct ways {
    ts_line_way *exits;
    int          count; /* -1: more than there is room for */
} ways;

static void add_exit(ways *w, ts_line_way way)
{
    if (w->count == TS_LINE_EXITS_MOST)
        w->count = -1;
    if (w->count >= 0)
        w->exits[w->count++] = way;
}

/* The meshes that a shaft drives; of a take-off's shaft with that gear alone. */
static void add_meshes(ways *w, const ts_train *train, const ts_line *line)
{
    for (uint32_t m = 0; m < train->mesh_count; m++)
        if (line->kind == TS_LINE_STUB ? train->meshes[m].driver == line->gears[0].gear
                                       : train->meshes[m].driver_shaft == line->shaft)
            add_exit(w, (ts_line_way){m, 0, TS_NOWHERE});
}

int ts_line_list_ways(const ts_lines *lines, uint32_t number, ts_line_way *entry,
                      ts_line_way exits[TS_LINE_EXITS_MOST])
{
    const ts_train *train  = lines->motion->train;
    const ts_line  *line   = &lines->lines[number];
    const ts_shaft *shaft  = &train->shafts[line->shaft];
    const bool      meshed = line->kind == TS_LINE_INNER || line->kind == TS_LINE_BOX;
    ways            w      = {exits, 0};

    *entry = (ts_line_way){meshed ? shaft->mesh : TS_NOWHERE, 0, TS_NOWHERE};
    if (line->kind == TS_LINE_INNER || line->kind == TS_LINE_TUBE)
        add_exit(&w, (ts_line_way){TS_NOWHERE, 1, TS_NOWHERE});
    else
        add_meshes(&w, train, line);
    for (int end = 0; end < 2 && line->kind == TS_LINE_BOX; end++)
        if (shaft->pad[end] != TS_NOWHERE && train->pads[shaft->pad[end]].accessory >= 0)
            add_exit(&w, (ts_line_way){TS_NOWHERE, end, shaft->pad[end]});
    return w.count;
}

double ts_line_exit_torque(const ts_line_branches *b, int exit, uint32_t condition)
{
    const ts_power   *power = b->lines->power;
    const ts_train   *train = b->lines->motion->train;
    const ts_line_way way   = b->exits[exit];

    if (way.mesh != TS_NOWHERE)
        return power->mesh[(size_t)condition * train->mesh_count + way.mesh].T[0];
    if (way.pad != TS_NOWHERE)
        return power->pad[(size_t)condition * train->pad_count + way.pad].T;
    return power->T[(size_t)condition * train->shaft_count + b->lines->lines[b->line].shaft];
}

/* Does one of the exits drive then? */
static bool is_driven(const ts_line_branches *b, uint32_t condition)
{
    for (int e = 0; e < b->exit_count; e++)
        if (ts_line_exit_torque(b, e, condition) < 0.0)
            return true;
    return false;
}

static void gather_torques(ts_line_branches *b)
{
    for (uint32_t c = 0; c < b->lines->motion->condition_count; c++) {
        const bool driven = is_driven(b, c);

        for (int e = 0; e < b->exit_count; e++) {
            const double T = ts_line_exit_torque(b, e, c);
            if (!driven)
                b->most[e] = fmax(b->most[e], T);
            b->drives[e] = b->drives[e] || T < 0.0;
        }
    }
}

/* ---- items ----------------------------------------------------------------------------------- */

static void add_bearings(ts_line_branches *b, const ts_line *line)
{
    for (int k = 0; k < line->bearing_count && line->kind != TS_LINE_TUBE; k++) {
        const ts_line_bearing  *bearing = &line->bearings[k];
        const ts_static_factors still   = bearing->ability.still;
        const double            C_0r    = bearing->ability.C_0r;

        if (bearing->there && bearing->fault == NULL && !(bearing->rating.S_0 < 1.0))
            b->items[b->item_count++] = (ts_line_item){.is_bearing = true,
                                                       .which      = k,
                                                       .across_1   = 1.0 / C_0r,
                                                       .across_2   = still.X_0 / C_0r,
                                                       .along      = still.Y_0 / C_0r};
    }
}

/* Nominal stresses of one unit of load, over what each may be. */
static void add_sections(ts_line_branches *b, const ts_line *line)
{
    for (int n = 0; n < line->notch_count; n++) {
        const ts_din_section *s        = &line->notches[n].section;
        const double         *sigma_FK = line->notches[n].ability.sigma_FK;

        if (!(line->notches[n].S_F >= 1.0))
            continue;
        b->items[b->item_count++] = (ts_line_item){
            .which    = n,
            .across_1 = ts_nominal_bending(1.0, s->d, s->d_i, NULL) / sigma_FK[TS_DIN_B],
            .along    = ts_nominal_axial(1.0, s->d, s->d_i, NULL) / sigma_FK[TS_DIN_ZD],
            .torque   = ts_nominal_torsion(1.0, s->d, s->d_i, NULL) / sigma_FK[TS_DIN_T]};
    }
}

double ts_line_item_share(const ts_line_item *item, const ts_line_effort *effort)
{
    const double across =
        sqrt(effort->across[0] * effort->across[0] + effort->across[1] * effort->across[1]);
    const double along = fabs(effort->along);

    if (item->is_bearing)
        return fmax(item->across_1 * across, item->across_2 * across + item->along * along);
    const double pressed = item->across_1 * across + item->along * along;
    const double twisted = item->torque * effort->torque;
    return sqrt(pressed * pressed + twisted * twisted);
}

static ts_line_effort effort_in(const ts_line *line, const ts_line_case *one,
                                const ts_line_item *item)
{
    if (item->is_bearing) {
        const double *F = one->reaction[item->which].F;
        return (ts_line_effort){{F[1], F[2]}, F[0], 0.0};
    }
    const ts_line_cut cut = ts_line_cut_at(line, one, line->notches[item->which].x);
    return (ts_line_effort){{cut.M[0], cut.M[1]}, cut.N, cut.T};
}

/* ---- one newton metre ------------------------------------------------------------------------ */

/* What 1 N.m does alone that leaves by a way (`out`) or enters there, with power outwards or
 * inwards: balanced once its counterpart is added. */
static void try_unit(const ts_line_branches *b, const ts_line_way *way, bool out, int flow,
                     ts_line_case *one)
{
    const ts_line  *line  = &b->lines->lines[b->line];
    const ts_train *train = b->lines->motion->train;

    *one = (ts_line_case){.known = true};
    if (way->mesh == TS_NOWHERE) {
        one->pad[way->end] = line->sense * flow * (out ? -1.0 : 1.0);
    } else {
        const uint32_t gear =
            out ? train->meshes[way->mesh].driver : train->meshes[way->mesh].driven;
        ts_mesh_load       load = ts_power_load_of(b->lines->power, way->mesh, flow);
        const double       unit = fabs(load.T[out ? 0 : 1]);
        ts_line_gear_load *at   = &one->load[b->lines->seat_of[gear]];

        for (int i = 0; i < 3; i++)
            load.force[i] /= unit;
        for (int g = 0; g < 2; g++)
            load.T[g] /= unit;
        ts_line_press(b->lines, way->mesh, out ? 0 : 1, &load, at);
    }
    if (line->kind != TS_LINE_TUBE)
        ts_line_react(line, one);
}

static void fill(ts_line_branches *b, int exit, int flow)
{
    const ts_line *line = &b->lines->lines[b->line];
    ts_line_case   one;

    try_unit(b, exit < 0 ? &b->entry : &b->exits[exit], exit >= 0, flow, &one);
    for (int i = 0; i < b->item_count; i++) {
        ts_line_item *item = &b->items[i];
        *(exit < 0 ? &item->entry[way_of(flow)] : &item->exit[exit][way_of(flow)]) =
            effort_in(line, &one, item);
    }
}

void ts_line_branch_out(const ts_lines *lines, uint32_t number, ts_line_branches *out)
{
    bool driven = false;

    out->lines      = lines;
    out->line       = number;
    out->item_count = 0;
    for (int e = 0; e < TS_LINE_EXITS_MOST; e++) {
        out->most[e]   = 0.0;
        out->drives[e] = false;
    }
    out->exit_count = ts_line_list_ways(lines, number, &out->entry, out->exits);
    if (out->exit_count < 0)
        return;
    gather_torques(out);
    add_bearings(out, &lines->lines[number]);
    add_sections(out, &lines->lines[number]);
    for (int e = 0; e < out->exit_count; e++) {
        fill(out, e, 1);
        if (out->drives[e])
            fill(out, e, -1);
        driven = driven || out->drives[e];
    }
    fill(out, -1, 1);
    if (driven)
        fill(out, -1, -1);
}

/* ---- corners --------------------------------------------------------------------------------- */

static void add(ts_line_effort *to, const ts_line_effort *one, double factor)
{
    for (int i = 0; i < 2; i++)
        to->across[i] += factor * one->across[i];
    to->along += factor * one->along;
    to->torque += factor * one->torque;
}

static double share_at(const ts_line_item *item, const ts_line_effort *base,
                       const ts_line_effort *unit, double T)
{
    ts_line_effort all = *base;

    add(&all, unit, T);
    return ts_line_item_share(item, &all);
}

/* Where the share reaches 1, from `low`, where it does not, to `high`, where it is beyond.  The
 * share is convex: the line between both ends lies above it, and the place that it gives is below.
 */
static double reach(const ts_line_item *item, const ts_line_effort *base,
                    const ts_line_effort *unit, double low, double high)
{
    double y_low  = share_at(item, base, unit, low) - 1.0;
    double y_high = share_at(item, base, unit, high) - 1.0;

    for (int i = 0; i < TRIALS && high - low > 1e-14 * high; i++) {
        const double T = low - y_low * (high - low) / (y_high - y_low);
        const double y = share_at(item, base, unit, T) - 1.0;

        if (fabs(y) < 1e-14)
            return T;
        if (y < 0.0) {
            low   = T;
            y_low = y;
            y_high *= 0.5;
        } else {
            high   = T;
            y_high = y;
        }
    }
    return low;
}

/* N.m, the least of `best` and what brings the share from there on to 1. */
static double limit_from(const ts_line_item *item, const ts_line_effort *base,
                         const ts_line_effort *unit, double low, double best)
{
    static const ts_line_effort nothing = {{0.0, 0.0}, 0.0, 0.0};
    const double                grows   = share_at(item, &nothing, unit, 1.0);

    if (!(low < best))
        return best;
    if (share_at(item, base, unit, low) > 1.0)
        return low;
    if (!(grows > 0.0))
        return best;
    /* a norm: here it has grown beyond 1 whatever stands beside */
    const double far = low + 2.0 * (1.0 + ts_line_item_share(item, base)) / grows;
    const double end = fmin(best, far);
    if (!(share_at(item, base, unit, end) > 1.0))
        return end < best ? far : best;
    return reach(item, base, unit, low, end);
}

/* The entry carries what all exits add up to; its flank turns where that passes nothing. */
static void efforts_of(const ts_line_item *item, int exit, int flow, const double *others,
                       int count, int side, ts_line_effort *base, ts_line_effort *unit)
{
    const ts_line_effort *entry = &item->entry[way_of(side)];
    double                sum   = 0.0;

    *base = *unit = (ts_line_effort){{0.0, 0.0}, 0.0, 0.0};
    for (int e = 0; e < count; e++) {
        if (e == exit || others[e] == 0.0)
            continue;
        add(base, &item->exit[e][way_of(others[e])], fabs(others[e]));
        sum += others[e];
    }
    add(base, entry, side * sum);
    add(unit, &item->exit[exit][way_of(flow)], 1.0);
    add(unit, entry, (double)(side * flow));
}

static double sum_of(const double *others, int exit, int count)
{
    double sum = 0.0;

    for (int e = 0; e < count; e++)
        sum += e == exit ? 0.0 : others[e];
    return sum;
}

static double corner_limit(const ts_line_branches *b, const ts_line_item *item, int exit, int flow,
                           const double *others, double best)
{
    const double   turn = fmax(0.0, -flow * sum_of(others, exit, b->exit_count));
    ts_line_effort base, unit;

    if (turn > 0.0) { /* as long as the others drive the entry */
        efforts_of(item, exit, flow, others, b->exit_count, -flow, &base, &unit);
        if (share_at(item, &base, &unit, 0.0) > 1.0 || share_at(item, &base, &unit, turn) > 1.0)
            return limit_from(item, &base, &unit, 0.0, fmin(best, turn));
    }
    efforts_of(item, exit, flow, others, b->exit_count, flow, &base, &unit);
    return limit_from(item, &base, &unit, turn, best);
}

ts_line_effort ts_line_branch_effort(const ts_line_branches *b, const ts_line_item *item, int exit,
                                     int flow, double T, const double *others)
{
    const double   all  = flow * T + sum_of(others, exit, b->exit_count);
    const int      side = all == 0.0 ? flow : all < 0.0 ? -1 : 1;
    ts_line_effort base, unit;

    efforts_of(item, exit, flow, others, b->exit_count, side, &base, &unit);
    add(&base, &unit, T);
    return base;
}

/* Each of the others as it is in `full`, or nothing. */
static void try_corners(const ts_line_branches *b, int exit, int flow, bool bearings,
                        const double *full, ts_line_limit *least)
{
    int apart[TS_LINE_EXITS_MOST], count = 0;

    for (int e = 0; e < b->exit_count; e++)
        if (e != exit && full[e] != 0.0)
            apart[count++] = e;
    for (unsigned mask = 0; mask < 1u << count; mask++) {
        double others[TS_LINE_EXITS_MOST] = {0.0};

        for (int i = 0; i < count; i++)
            if ((mask >> i & 1u) != 0)
                others[apart[i]] = full[apart[i]];
        for (int i = 0; i < b->item_count; i++) {
            const ts_line_item *item = &b->items[i];
            if (item->is_bearing != bearings)
                continue;
            const double T = corner_limit(b, item, exit, flow, others, least->T);
            if (!(T < least->T))
                continue;
            least->T    = T;
            least->item = i;
            for (int e = 0; e < TS_LINE_EXITS_MOST; e++)
                least->others[e] = others[e];
        }
    }
}

ts_line_limit ts_line_branch_limit(const ts_line_branches *b, int exit, int flow, bool bearings)
{
    static const double nothing[TS_LINE_EXITS_MOST] = {0.0};
    ts_line_limit       least                       = {(double)INFINITY, -1, {0.0}};

    try_corners(b, exit, flow, bearings, flow > 0 ? b->most : nothing, &least);
    for (uint32_t c = 0; c < b->lines->motion->condition_count; c++) {
        double then[TS_LINE_EXITS_MOST];

        if (!is_driven(b, c) || b->exit_count < 2)
            continue;
        for (int e = 0; e < b->exit_count; e++)
            then[e] = ts_line_exit_torque(b, e, c);
        try_corners(b, exit, flow, bearings, then, &least);
    }
    return least;
}
