/* check/rule/standard_module.c: can the gears be cut with tools that exist? */
#include "check/visit.h"

#include "base/number.h"

#include <string.h>

typedef struct module_row {
    const char *module; /* mm, as printed   */
    const char *series; /* "I" or "II"      */
} module_row;

static const module_row modules[] = {
#include "module.inc"
};

#define MODULE_COUNT (sizeof modules / sizeof modules[0])
#define MILLIMETRE   0.001
#define INCH         0.0254

/* Values of the file in mm come back as they were written, so texts compare. */
static const module_row *standard_row(double m_n)
{
    char text[TS_NUMBER_ROOM];
    (void)ts_number_print(text, ts_from_si(m_n, ts_unit_named(TS_TEXT("mm"), TS_KIND_LENGTH)));
    for (size_t i = 0; i < MODULE_COUNT; i++)
        if (strcmp(modules[i].module, text) == 0)
            return &modules[i];
    return NULL;
}

static double nearest_module(double m_n)
{
    double nearest = NAN;
    for (size_t i = 0; i < MODULE_COUNT; i++) {
        double module = 0.0;
        size_t taken  = 0;
        (void)ts_number_parse(ts_text_of(modules[i].module), &module, &taken);
        module *= MILLIMETRE;
        if (strcmp(modules[i].series, "I") == 0 && !(fabs(nearest - m_n) <= fabs(module - m_n)))
            nearest = module;
    }
    return nearest;
}

static void judge_module(ts_check *check, ts_node node, double m_n)
{
    const module_row *row     = standard_row(m_n);
    ts_finding       *finding = ts_judge_fact(check, node, TS_EVERY_CONDITION,
                                              row != NULL && strcmp(row->series, "I") == 0);
    if (finding == NULL)
        return;
    const char  *module  = ts_shown(check, m_n, TS_KIND_LENGTH);
    const char  *nearest = ts_shown(check, nearest_module(m_n), TS_KIND_LENGTH);
    const double pitch   = INCH / m_n;
    ts_remedy(check, finding, "the nearest module of series I is %s", nearest);
    if (row != NULL) {
        finding->level = TS_NOTE;
        ts_says(check, finding, "the module %s stands in series II of ISO 54, to be avoided",
                module);
    } else if (fabs(pitch - floor(pitch + 0.5)) < 1e-6 * pitch) {
        finding->level = TS_NOTE;
        ts_says(check, finding, "the module %s is diametral pitch %d, not a module of ISO 54",
                module, (int)(pitch + 0.5));
    } else {
        ts_says(check, finding, "the module %s stands in no series of ISO 54", module);
    }
}

/* A gear that says no module of its own has that of its box, and is not asked again. */
static void run(ts_check *check)
{
    for (size_t i = 0; i < check->drive->drive_count; i++) {
        const ts_measure module = check->drive->drive[i].box.gears.module;
        if (ts_measure_known(module))
            judge_module(check, module.node, module.value);
    }
    for (uint32_t i = 0; i < check->train->gear_count; i++) {
        const ts_gear *gear = &check->train->gears[i];
        if (gear->system != NULL && ts_measure_known(gear->m_n) &&
            gear->m_n.node != gear->system->module.node)
            judge_module(check, gear->m_n.node, gear->m_n.value);
    }
    ts_skip(check, "no cylindrical gear has a module");
}

const ts_rule ts_rule_standard_module = {
    .id       = "C1-standard-module",
    .title    = "Standard module",
    .question = "Is every module of the cylindrical gears one of ISO 54, series I?",
    .why      = "Cutters, masters and measuring pins exist for the standard series; another module "
                "has to earn its tools.",
    .level    = TS_WARN,
    .source   = "ISO 54:1996, table 1",
    .hint     = "choose a module of series I",
    .run      = run,
};
