/* Which bearings did sizing choose, and what asked for them?  JSON by
 * docs/schema/size-bearings.schema.json. */
#include "report/size_report.h"

#include "report/check_page.h"
#include "report/json_quantity.h"
#include "report/verdict_sentence.h"

#include <math.h>

#define GAP    2
#define INDENT 4

enum { NAME, FORM, BEFORE, AFTER, COLUMNS };

typedef struct table {
    const ts_bearing_plan *plan;
    const ts_size_masses  *before;
    const ts_answer       *answer;
    ts_page               *page;
    ts_buffer              text; /* of one cell */
    int                    width[COLUMNS];
} table;

static const ts_line *line_of(const ts_answer *answer, const ts_bearing_choice *choice)
{
    return &answer->lines->lines[choice->line];
}

static const char *form_of(const ts_bearing_kind *kind)
{
    return kind->form == TS_BEARING_ANGULAR_CONTACT && kind->rows == 2
               ? "angular pair"
               : ts_bearing_form_name(kind->form);
}

/* ---- cells ----------------------------------------------------------------------------------- */

static void length(table *t, double m)
{
    ts_page_short(&t->text, ts_from_si(m, ts_kind_shown(TS_KIND_LENGTH, t->page->units)), 5);
}

/* "10, 30 x 55" */
static void put_size(table *t, const ts_bearing_kind *kind)
{
    if (kind->series != NULL)
        ts_buffer_print(&t->text, "%s, ", kind->series);
    length(t, kind->d);
    ts_buffer_add(&t->text, " x ");
    length(t, kind->D);
}

static void put_head(table *t, int column)
{
    static const char *const heads[COLUMNS] = {"bearing", "form", "before", "after"};

    ts_buffer_add(&t->text, heads[column]);
    if (column >= BEFORE)
        ts_buffer_print(&t->text, " %s", ts_kind_shown(TS_KIND_LENGTH, t->page->units)->name);
}

static void put_cell(table *t, const ts_bearing_choice *choice, int column)
{
    const bool is_kept = choice->state == TS_BEARING_KEPT;

    switch (column) {
    case NAME:
        ts_buffer_print(&t->text, "%s: %s", line_of(t->answer, choice)->name,
                        line_of(t->answer, choice)->bearings[choice->k].place);
        break;
    case FORM:
        if (!is_kept || choice->was)
            ts_buffer_add(&t->text, form_of(is_kept ? &choice->before : &choice->after));
        break;
    case BEFORE:
        if (!choice->was) {
            ts_buffer_add(&t->text, "?");
            break;
        }
        put_size(t, &choice->before);
        if (!choice->stated && !is_kept)
            ts_buffer_add(&t->text, " *");
        break;
    default:
        if (is_kept)
            ts_buffer_add(&t->text, "kept");
        else
            put_size(t, &choice->after);
    }
}

/* NULL: the head.  Good until the next. */
static ts_text cell(table *t, const ts_bearing_choice *choice, int column)
{
    ts_buffer_clear(&t->text);
    if (choice == NULL)
        put_head(t, column);
    else
        put_cell(t, choice, column);
    return (ts_text){t->text.bytes != NULL ? t->text.bytes : "", t->text.length};
}

/* "static safety 1.31, not 1.5, at crank" */
static void put_margin(table *t, const ts_bearing_margin *margin)
{
    if (margin->demand == TS_DEMAND_ROOM) {
        ts_buffer_add(&t->text, margin->fault != NULL ? margin->fault : "no room");
        return;
    }
    ts_buffer_add(&t->text, ts_bearing_demand_says(margin->demand));
    ts_buffer_add(&t->text, " ");
    ts_page_short(&t->text, margin->value, 3);
    if (margin->reserve < 0.0) {
        ts_buffer_add(&t->text, ", not ");
        ts_page_short(&t->text, margin->limit, 3);
    }
    if (margin->condition >= 0)
        ts_buffer_print(&t->text, ", at %s", ts_answer_condition(t->answer, margin->condition));
}

static ts_text set_by(table *t, const ts_bearing_choice *choice)
{
    ts_buffer_clear(&t->text);
    switch (choice->state) {
    case TS_BEARING_KEPT:
        ts_buffer_add(&t->text, choice->why);
        break;
    case TS_BEARING_NONE:
        ts_buffer_add(&t->text, "NONE HOLDS; the nearest has ");
        put_margin(t, &choice->margin);
        break;
    case TS_BEARING_CHOSEN:
        if (choice->lightest) {
            ts_buffer_add(&t->text, "the lightest there is for its journal");
            break;
        }
        ts_buffer_add(&t->text, "a lighter one: ");
        put_margin(t, &choice->lighter);
        if (choice->lighter_k != choice->k)
            ts_buffer_print(&t->text, " of the %s one",
                            line_of(t->answer, choice)->bearings[choice->lighter_k].place);
    }
    return (ts_text){t->text.bytes != NULL ? t->text.bytes : "", t->text.length};
}

/* ---- layout ---------------------------------------------------------------------------------- */

static void lay_out(table *t)
{
    for (int column = 0; column < COLUMNS; column++) {
        size_t widest = ts_text_columns(cell(t, NULL, column));
        for (size_t i = 0; i < t->plan->count; i++) {
            const size_t width = ts_text_columns(cell(t, &t->plan->choices[i], column));
            widest             = width > widest ? width : widest;
        }
        t->width[column] = (int)widest;
    }
}

static void row(table *t, const ts_bearing_choice *choice)
{
    int used = 0;

    for (int column = 0; column < COLUMNS; column++) {
        ts_page_left(t->page, cell(t, choice, column), t->width[column]);
        ts_buffer_fill(t->page->out, ' ', GAP);
        used += t->width[column] + GAP;
    }
    if (choice == NULL)
        ts_buffer_add(t->page->out, "set by");
    else
        ts_page_spread(t->page, set_by(t, choice), INDENT, used);
}

static void sentence(table *t)
{
    if (!t->text.failed)
        ts_page_wrap(t->page, t->text.bytes, INDENT, 0);
    ts_buffer_clear(&t->text);
}

static void mass(table *t, double kg)
{
    if (isnan(kg))
        ts_buffer_add(&t->text, "not known");
    else
        ts_quantity_show(&t->text, kg, ts_kind_shown(TS_KIND_MASS, t->page->units), 4);
}

static bool any_unstated(const ts_bearing_plan *plan)
{
    for (size_t i = 0; i < plan->count; i++)
        if (plan->choices[i].was && !plan->choices[i].stated &&
            plan->choices[i].state != TS_BEARING_KEPT)
            return true;
    return false;
}

ts_size_masses ts_size_masses_of(const ts_mass *mass)
{
    ts_size_masses out = {0.0, mass->missing == 0 ? mass->metal.value : (double)NAN};

    for (size_t i = 0; i < mass->part_count; i++)
        if (mass->parts[i].kind == TS_MASS_SHAFT)
            out.shafts += mass->parts[i].missing == NULL ? mass->parts[i].m.value : (double)NAN;
    return out;
}

/* What the bearings do to the shafts that they stand on, and to all. */
static void whole(table *t)
{
    const ts_size_masses after = ts_size_masses_of(t->answer->mass);

    ts_buffer_add(&t->text, "Shafts of the boxes, which other bores fatten or thin: ");
    mass(t, t->before->shafts);
    ts_buffer_add(&t->text, " before, ");
    mass(t, after.shafts);
    ts_buffer_add(&t->text, " after; the drive without its accessories ");
    mass(t, t->before->drive);
    ts_buffer_add(&t->text, " before, ");
    mass(t, after.drive);
    ts_buffer_add(&t->text, " after.");
    if (after.drive > t->before->drive)
        ts_buffer_add(&t->text,
                      " The lighter bearings make the drive HEAVIER, for their wider bores "
                      "fatten its shafts: tell narrower ones where that counts.");
    sentence(t);
}

static void close(table *t)
{
    ts_buffer_clear(&t->text);
    ts_buffer_add(&t->text, "Bearings alone: ");
    mass(t, t->plan->mass_before);
    ts_buffer_add(&t->text, " before, ");
    mass(t, t->plan->mass_after);
    ts_buffer_print(&t->text,
                    " after, as far as they are known. %zu times a shaft was laid in other "
                    "bearings; of each shaft's, no lighter ones of the table hold in the "
                    "form that it has.",
                    t->plan->trials);
    sentence(t);
    whole(t);
    if (any_unstated(t->plan)) {
        ts_buffer_add(&t->text, "* chosen by the program: the file does not tell it.");
        sentence(t);
    }
    if (!t->plan->life_asked) {
        ts_buffer_add(&t->text, "No life was asked for: the times of a condition, or the oil, are "
                                "not known.");
        sentence(t);
    }
    ts_buffer_add(&t->text, "With these bearings: ");
    ts_verdict_sentence(t->answer->outcome, &t->text);
    sentence(t);
}

void ts_size_bearings_page(const ts_bearing_plan *plan, const ts_size_masses *before,
                           const ts_answer *answer, ts_page *page)
{
    table t = {.plan = plan, .before = before, .answer = answer, .page = page};

    ts_buffer_open(&t.text, page->out->allocator);
    ts_sized_title(answer, page);
    ts_page_heading(page, "The lightest bearings that hold for life, static safety, speed and "
                          "least load");
    lay_out(&t);
    ts_page_tone(page, TS_TONE_FAINT);
    row(&t, NULL);
    ts_page_tone(page, TS_TONE_PLAIN);
    ts_page_line_end(page);
    for (size_t i = 0; i < plan->count; i++) {
        row(&t, &plan->choices[i]);
        ts_page_line_end(page);
    }
    ts_buffer_add(page->out, "\n");
    close(&t);
    page->out->failed = page->out->failed || t.text.failed;
    ts_buffer_close(&t.text);
}

/* ---- JSON ------------------------------------------------------------------------------------ */

static void json_kind(ts_json *json, const char *key, const ts_bearing_kind *kind)
{
    ts_json_key(json, key);
    ts_json_object(json);
    ts_json_string_at(json, "form", ts_bearing_form_name(kind->form));
    ts_json_integer_at(json, "rows", kind->rows);
    ts_json_string_at(json, "series", kind->series);
    ts_json_number_at(json, "bore", kind->d);
    ts_json_number_at(json, "outside", kind->D);
    ts_json_number_at(json, "mass", kind->mass);
    ts_json_end(json, '}');
}

static void json_margin(ts_json *json, const ts_answer *answer, const char *key,
                        const ts_bearing_margin *margin)
{
    ts_json_key(json, key);
    ts_json_object(json);
    ts_json_string_at(json, "demand", ts_bearing_demand_says(margin->demand));
    ts_json_number_at(json, "reserve", margin->reserve);
    ts_json_number_at(json, "value", margin->value);
    ts_json_number_at(json, "limit", margin->limit);
    if (margin->fault != NULL)
        ts_json_string_at(json, "why", margin->fault);
    if (margin->condition >= 0)
        ts_json_string_at(json, "condition", ts_answer_condition(answer, margin->condition));
    ts_json_end(json, '}');
}

static void json_choice(ts_json *json, const ts_answer *answer, const ts_bearing_choice *choice)
{
    static const char *const states[] = {[TS_BEARING_KEPT]   = "kept",
                                         [TS_BEARING_CHOSEN] = "chosen",
                                         [TS_BEARING_NONE]   = "none holds"};
    const ts_line *const     line     = line_of(answer, choice);

    ts_json_object(json);
    ts_json_node(json, answer, "address", line->bearings[choice->k].node);
    ts_json_string_at(json, "line", line->name);
    ts_json_string_at(json, "place", line->bearings[choice->k].place);
    ts_json_string_at(json, "state", states[choice->state]);
    ts_json_bool_at(json, "stated", choice->stated);
    if (choice->was)
        json_kind(json, "before", &choice->before);
    if (choice->state == TS_BEARING_KEPT) {
        ts_json_string_at(json, "why", choice->why);
    } else {
        json_kind(json, "after", &choice->after);
        json_margin(json, answer, "margin", &choice->margin);
    }
    if (choice->state == TS_BEARING_CHOSEN && !choice->lightest)
        json_margin(json, answer, "lighter", &choice->lighter);
    ts_json_end(json, '}');
}

void ts_size_bearings_json(const ts_bearing_plan *plan, const ts_size_masses *before,
                           const ts_answer *answer, ts_buffer *out)
{
    ts_json json;

    ts_size_json_head(&json, answer, plan->fits, out);
    ts_json_number_at(&json, "mass_before", plan->mass_before);
    ts_json_number_at(&json, "mass_after", plan->mass_after);
    const ts_size_masses after = ts_size_masses_of(answer->mass);
    ts_json_number_at(&json, "shafts_before", before->shafts);
    ts_json_number_at(&json, "shafts_after", after.shafts);
    ts_json_number_at(&json, "drive_before", before->drive);
    ts_json_number_at(&json, "drive_after", after.drive);
    ts_json_bool_at(&json, "life_asked", plan->life_asked);
    ts_json_count_at(&json, "trials", plan->trials);
    ts_json_key(&json, "bearings");
    ts_json_array(&json);
    for (size_t i = 0; i < plan->count; i++)
        json_choice(&json, answer, &plan->choices[i]);
    ts_json_end(&json, ']');
    ts_json_end(&json, '}');
    ts_buffer_add(out, "\n");
}
