/* rating/line_capacity.c: which torque does a radial shaft, with its gearshafts, splines and
 * bearings, bear once? */
#include "rating/line_capacity.h"

#include <math.h>

static const double pi = 3.14159265358979323846;

static const ts_formula yield_formula = {
    .symbol  = "T_yield",
    .meaning = "torque at which the section of its weakest spline yields",
    .unit    = "N.m",
    .text    = "tau_FK*pi/16*(d^4 - d_i^4)/d",
    .source  = "DIN 743-1:2012 (from memory)",
};
static const ts_formula dent_formula = {
    .symbol  = "T_dent",
    .meaning = "torque at which a bearing has its static capacity",
    .unit    = "N.m",
    .text    = "S_0*T",
    .source  = "ISO 76:2006; derived: with one bevel on the shaft the load grows with the torque",
};

static bool is_tower(const ts_line *line)
{
    return (line->kind == TS_LINE_INNER || line->kind == TS_LINE_TUBE ||
            line->kind == TS_LINE_OUTER) &&
           line->fault == NULL && line->missing == NULL;
}

uint32_t ts_lines_capacity_count(const ts_lines *lines)
{
    return 2 * lines->count;
}

static void add(ts_part_capacities *list, ts_part_kind kind, const ts_line *line, double T,
                const char *symbol)
{
    const ts_part_capacity part = {.kind   = kind,
                                   .shaft  = line->shaft,
                                   .mesh   = TS_NOWHERE,
                                   .T      = T,
                                   .node   = line->node,
                                   .symbol = symbol,
                                   .what   = line->name};
    (void)ts_part_capacity_add(list, &part);
}

static double yield_of(const ts_line_notch *notch)
{
    const double d = notch->section.d, d_i = notch->section.d_i;

    return notch->ability.sigma_FK[TS_DIN_T] * pi / 16.0 * (pow(d, 4.0) - pow(d_i, 4.0)) / d;
}

static void add_yield(const ts_line *line, ts_part_capacities *list, ts_workings *workings)
{
    const ts_line_notch *least = NULL;

    for (int i = 0; i < line->notch_count; i++) {
        const ts_line_notch *notch = &line->notches[i];
        if (notch->section.notch == TS_DIN_INVOLUTE_SPLINE && yield_of(notch) > 0.0 &&
            (least == NULL || yield_of(notch) < yield_of(least)))
            least = notch;
    }
    if (least == NULL)
        return;
    const double tau_FK = least->ability.sigma_FK[TS_DIN_T];
    const double d = least->section.d, d_i = least->section.d_i;

    ts_workings_row(workings, "tau_FK", tau_FK, "Pa",
                    "derived: yield of the spline's section, DIN 743");
    ts_workings_row(workings, "d", d, "m", "derived: by the shape");
    ts_workings_row(workings, "d_i", d_i, "m", "derived: by the shape");
    add(list, TS_PART_SHAFT, line,
        TS_STEP(workings, yield_formula, yield_of(least), tau_FK, d, d_i), "T_yield");
}

/* The least of all conditions and bearings. */
static void add_dent(const ts_lines *lines, uint32_t l, ts_part_capacities *list,
                     ts_workings *workings)
{
    const ts_line *line   = &lines->lines[l];
    const uint32_t shafts = lines->motion->train->shaft_count;
    double         S_0 = (double)NAN, T = (double)NAN, least = INFINITY;

    for (uint32_t c = 0; c < lines->motion->condition_count; c++) {
        const double torque = fabs(lines->power->T[(size_t)c * shafts + line->shaft]);
        for (int k = 0; k < line->bearing_count; k++) {
            const double S = ts_line_at(lines, l, c)->duty[k].S_0;
            if (line->bearings[k].there && torque > 0.0 && S * torque < least) {
                least = S * torque;
                S_0   = S;
                T     = torque;
            }
        }
    }
    if (!isfinite(least))
        return;
    ts_workings_row(workings, "S_0", S_0, "1",
                    "derived: of the bearing and condition that bear least");
    ts_workings_row(workings, "T", T, "N.m", "derived: of the radial shaft in that condition");
    add(list, TS_PART_BEARING, line, TS_STEP(workings, dent_formula, least, S_0, T), "T_dent");
}

void ts_lines_capacities(const ts_lines *lines, ts_part_capacities *list, ts_workings *workings)
{
    for (uint32_t l = 0; l < lines->count; l++) {
        const ts_line *line = &lines->lines[l];
        if (!is_tower(line))
            continue;
        ts_workings_about(workings, line->node, TS_EVERY_CONDITION);
        add_yield(line, list, workings);
        if (line->gear_count == 1)
            add_dent(lines, l, list, workings);
    }
}
