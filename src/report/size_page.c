/* Which widths did sizing choose, and what asked for them? */
#include "report/size_report.h"

#include "report/check_page.h"
#include "report/verdict_sentence.h"
#include "search/tooth_width_says.h"

#include <math.h>

#define GAP    2
#define INDENT 4

typedef struct table {
    const ts_width_plan *plan;
    const ts_answer     *answer;
    ts_page             *page;
    ts_buffer            text;        /* of one cell */
    int                  gear, width; /* columns of a name, of a width */
} table;

static ts_text made(const table *t)
{
    return (ts_text){t->text.bytes != NULL ? t->text.bytes : "", t->text.length};
}

/* "idler 4 (step), 33 teeth" */
static ts_text gear_name(table *t, uint32_t gear)
{
    const ts_gear *record = &t->answer->train->gears[gear];
    ts_buffer_clear(&t->text);
    ts_buffer_add(&t->text, t->answer->train->shafts[record->shaft].name);
    if (record->step == 1)
        ts_buffer_add(&t->text, " (step)");
    if (record->step > 1)
        ts_buffer_print(&t->text, " (step %d)", (int)record->step);
    ts_buffer_print(&t->text, ", %d teeth", (int)record->teeth.value);
    return made(t);
}

static ts_text width(table *t, double b)
{
    ts_buffer_clear(&t->text);
    if (isnan(b))
        ts_buffer_add(&t->text, "?");
    else
        ts_page_short(&t->text, ts_from_si(b, ts_kind_shown(TS_KIND_LENGTH, t->page->units)), 5);
    return made(t);
}

/* What it is for: what fails with a step less, or "least width, with idler 2". */
static ts_text set_by(table *t, const ts_gear_width *width)
{
    const ts_width_scene scene = {t->answer->drive, t->answer->train, t->answer->power};
    ts_buffer_clear(&t->text);
    ts_width_says(&t->text, &scene, width);
    return made(t);
}

/* ---- layout ---------------------------------------------------------------------------------- */

static int wider(int before, ts_text text)
{
    const int columns = (int)ts_text_columns(text);
    return columns > before ? columns : before;
}

static void lay_out(table *t)
{
    t->gear  = 4;
    t->width = 9;
    for (size_t i = 0; i < t->plan->gear_count; i++) {
        t->gear  = wider(t->gear, gear_name(t, t->plan->gears[i].gear));
        t->width = wider(t->width, width(t, t->plan->gears[i].before));
        t->width = wider(t->width, width(t, t->plan->gears[i].after));
    }
    const int most = t->page->columns - 2 * (t->width + GAP) - 8;
    t->gear        = t->gear > most ? most : t->gear;
}

static void head(table *t)
{
    const char *unit = ts_kind_shown(TS_KIND_LENGTH, t->page->units)->name;
    ts_page_tone(t->page, TS_TONE_FAINT);
    ts_page_left(t->page, TS_TEXT("gear"), t->gear);
    ts_buffer_fill(t->page->out, ' ', GAP);
    ts_buffer_clear(&t->text);
    ts_buffer_print(&t->text, "before %s", unit);
    ts_page_right(t->page, made(t), t->width);
    ts_buffer_fill(t->page->out, ' ', GAP);
    ts_buffer_clear(&t->text);
    ts_buffer_print(&t->text, "after %s", unit);
    ts_page_right(t->page, made(t), t->width);
    ts_buffer_add(t->page->out, "  set by");
    ts_page_tone(t->page, TS_TONE_PLAIN);
    ts_page_line_end(t->page);
}

static void row(table *t, const ts_gear_width *one)
{
    const int used = t->gear + 2 * (t->width + GAP) + GAP;
    ts_page_left(t->page, gear_name(t, one->gear), t->gear);
    ts_buffer_fill(t->page->out, ' ', GAP);
    ts_page_right(t->page, width(t, one->before), t->width);
    ts_buffer_fill(t->page->out, ' ', GAP);
    ts_page_right(t->page, width(t, one->after), t->width);
    ts_buffer_fill(t->page->out, ' ', GAP);
    const ts_text why = set_by(t, one);
    ts_page_spread(t->page, why, INDENT, used);
    ts_page_line_end(t->page);
}

/* ---- sentences ------------------------------------------------------------------------------- */

static void sentence(table *t)
{
    if (!t->text.failed)
        ts_page_wrap(t->page, t->text.bytes, INDENT, 0);
    ts_buffer_clear(&t->text);
}

static void show(table *t, double si, ts_kind kind)
{
    const ts_unit *unit = ts_kind_shown(kind, t->page->units);
    if (isnan(si))
        ts_buffer_add(&t->text, "not known");
    else
        ts_quantity_show(&t->text, si, unit, 4);
}

/* "hp box input > idler 2" */
static void begin_mesh(table *t, uint32_t m)
{
    const ts_train *train = t->answer->train;
    ts_buffer_clear(&t->text);
    ts_buffer_print(&t->text, "%s > %s", train->shafts[train->meshes[m].driver_shaft].name,
                    train->shafts[train->meshes[m].driven_shaft].name);
}

/* Which mesh no width saves, and by how much what is too weak. */
static void weak(table *t, uint32_t m)
{
    const ts_answer        *answer   = t->answer;
    const ts_mesh_strength *strength = &answer->teeth->strength[m];
    const bool              touch    = strength->stress == TS_RATED_CONTACT;
    const double            least    = touch ? answer->teeth->S_Hmin : answer->teeth->S_Fmin;
    begin_mesh(t, m);
    ts_buffer_add(&t->text, ": not even ");
    show(t, t->plan->meshes[m].most, TS_KIND_LENGTH);
    ts_buffer_print(&t->text,
                    ", the greatest width that `face to diameter` allows, is enough: %s of the %s",
                    ts_rated_stress_says(strength->stress),
                    ts_mesh_side_says(answer->train, m, strength->gear));
    if (strength->life.condition >= 0)
        ts_buffer_print(&t->text, " at %s", ts_answer_condition(answer, strength->life.condition));
    ts_buffer_print(&t->text, " has %s ", touch ? "S_H" : "S_F");
    ts_page_short(&t->text, least * (1.0 + strength->reserve), 3);
    ts_buffer_add(&t->text, " where ");
    ts_page_short(&t->text, least, 3);
    ts_buffer_add(&t->text, " is wanted; change module, tooth numbers, material or load.");
    sentence(t);
}

static void unsized(table *t, uint32_t m)
{
    const ts_mesh_width *width = &t->plan->meshes[m];
    begin_mesh(t, m);
    if (width->missing != NULL)
        ts_buffer_print(&t->text, " is not sized: %s is missing.", width->missing);
    else
        ts_buffer_print(&t->text, " is not sized: %s.", width->fault);
    sentence(t);
}

static void exceptions(table *t)
{
    for (uint32_t m = 0; m < t->answer->train->mesh_count; m++) {
        if (t->plan->meshes[m].state == TS_MESH_TOO_WEAK)
            weak(t, m);
        if (t->answer->train->meshes[m].kind == TS_MESH_CYLINDRICAL &&
            t->plan->meshes[m].state == TS_MESH_NOT_SIZED)
            unsized(t, m);
    }
}

static void masses(table *t)
{
    ts_buffer_clear(&t->text);
    ts_buffer_add(&t->text, "The gears as discs: ");
    show(t, t->plan->mass_before, TS_KIND_MASS);
    ts_buffer_add(&t->text, " before, ");
    show(t, t->plan->mass_after, TS_KIND_MASS);
    ts_buffer_print(&t->text,
                    " after. The drive was rated %zu times; no gear alone can be a step narrower, "
                    "and none made wider saves its mass at those near to it.",
                    t->plan->ratings);
    sentence(t);
}

static void heading(table *t, double step)
{
    ts_buffer_clear(&t->text);
    ts_buffer_add(&t->text, "Face widths for S_H ");
    ts_page_short(&t->text, t->answer->teeth->S_Hmin, 4);
    ts_buffer_add(&t->text, " and S_F ");
    ts_page_short(&t->text, t->answer->teeth->S_Fmin, 4);
    ts_buffer_add(&t->text, " over all conditions, in steps of ");
    const ts_unit *unit = ts_kind_shown(TS_KIND_LENGTH, t->page->units);
    ts_page_short(&t->text, ts_from_si(step, unit), 5);
    ts_buffer_print(&t->text, " %s", unit->name);
    if (!t->text.failed)
        ts_page_heading(t->page, t->text.bytes);
}

void ts_size_page(const ts_width_plan *plan, double step, const ts_answer *answer, ts_page *page)
{
    table t = {.plan = plan, .answer = answer, .page = page};
    ts_buffer_open(&t.text, page->out->allocator);
    ts_sized_title(answer, page);
    heading(&t, step);
    lay_out(&t);
    head(&t);
    for (size_t i = 0; i < plan->gear_count; i++)
        row(&t, &plan->gears[i]);
    ts_buffer_add(page->out, "\n");
    exceptions(&t);
    masses(&t);
    ts_buffer_add(&t.text, "With these widths: ");
    ts_verdict_sentence(answer->outcome, &t.text);
    sentence(&t);
    page->out->failed = page->out->failed || t.text.failed;
    ts_buffer_close(&t.text);
}
