/* Which words does every account of arrangements use? */
#include "report/arrange_report.h"

#include <math.h>

void ts_arrange_kg(const ts_page *page, double kg, ts_buffer *out)
{
    ts_page_value_text(page, out, kg, TS_KIND_MASS, 5);
    ts_buffer_print(out, " %s", ts_kind_shown(TS_KIND_MASS, page->units)->name);
}

bool ts_arrange_is_weighted(const ts_arrange_told *told)
{
    const ts_arrange_problem *p = &told->problem->problem;
    return p->wrap_weight + p->servicing_weight > 0.0;
}

void ts_arrange_sum(const ts_arrange_told *told, const ts_page *page, double kg, ts_buffer *out)
{
    ts_arrange_kg(page, kg, out);
    ts_buffer_add(out, ts_arrange_is_weighted(told) ? " in sum" : "");
}

ts_arrange_account ts_arrange_searched(const ts_arrange_told *told, const ts_arrangement *found)
{
    return ts_arrange_account_as_found(&told->problem->problem, found);
}

static const char *accessory(const ts_arrange_told *told, int8_t index)
{
    return index >= 0 ? told->problem->problem.accessories[index].name : "";
}

/* "generator + breather" */
static void add_shaft(const ts_arrange_told *told, ts_buffer *out, const ts_arranged_shaft *s)
{
    if (s->front < 0 && s->rear < 0) {
        ts_buffer_add(out, s->z_step > 0 ? "step" : "-");
        return;
    }
    ts_buffer_add(out, accessory(told, s->front));
    if (s->front >= 0 && s->rear >= 0)
        ts_buffer_add(out, " | ");
    ts_buffer_add(out, accessory(told, s->rear));
    if (s->z_step > 0)
        ts_buffer_add(out, " (step)");
}

/* One box from the clockwise end to the anticlockwise end, the input in brackets. */
static void add_order(const ts_arrange_told *told, const ts_arranged_box *box, size_t index,
                      ts_buffer *out)
{
    const ts_arranged_branch *b = box->branches;
    ts_buffer_print(out, "%s: ", told->problem->problem.boxes[index].name);
    for (uint32_t i = b[0].count; i-- > 0;) {
        add_shaft(told, out, &b[0].shafts[i]);
        ts_buffer_add(out, ", ");
    }
    ts_buffer_add(out, "[");
    add_shaft(told, out, &box->input);
    ts_buffer_add(out, "]");
    for (uint32_t i = 0; i < b[1].count; i++) {
        ts_buffer_add(out, ", ");
        add_shaft(told, out, &b[1].shafts[i]);
    }
}

void ts_arrange_order(const ts_arrange_told *told, const ts_arrangement *found, ts_buffer *out)
{
    bool any = false;
    for (size_t b = 0; b < told->problem->problem.box_count; b++) {
        if (!found->boxes[b].present)
            continue;
        ts_buffer_add(out, any ? "; " : "");
        add_order(told, &found->boxes[b], b, out);
        any = true;
    }
}

void ts_arrange_weighted_says(const ts_arrange_told *told, const ts_page *page,
                              const ts_arrange_account *account, ts_buffer *out)
{
    const ts_arrange_problem *p = &told->problem->problem;
    if (!ts_arrange_is_weighted(told))
        return;
    ts_buffer_add(out, "  Beside its mass ");
    if (p->wrap_weight > 0.0) {
        ts_page_value_text(page, out, account->wrap, TS_KIND_ANGLE, 4);
        ts_buffer_print(out, " %s of wrap count as ",
                        ts_kind_shown(TS_KIND_ANGLE, page->units)->name);
        ts_arrange_kg(page, account->for_wrap, out);
    }
    if (p->servicing_weight > 0.0) {
        ts_buffer_add(out, p->wrap_weight > 0.0 ? ", and " : "");
        ts_arrange_kg(page, account->lowered, out);
        ts_buffer_add(out, " to be lowered out of the way count as ");
        ts_arrange_kg(page, account->for_servicing, out);
    }
    ts_buffer_add(out, ": together ");
    ts_arrange_sum(told, page, account->sum, out);
    ts_buffer_add(out, ".");
}

void ts_arrange_regret(const ts_arrange_told *told, const ts_page *page, double kg, ts_buffer *out)
{
    const double best = told->result->answers[0].mass;
    ts_buffer_add(out, "+");
    ts_arrange_sum(told, page, fmax(kg - best, 0.0), out);
    ts_buffer_add(out, ", ");
    ts_page_short(out, 100.0 * fmax(kg / best - 1.0, 0.0), 2);
    ts_buffer_add(out, " %");
}

void ts_arrange_verdict(const ts_arranged_verdict *v, ts_buffer *out)
{
    if (!v->read)
        ts_buffer_add(out, "could not be read again");
    else if (v->holds)
        ts_buffer_print(out, "holds, %zu warning%s", v->warnings, v->warnings == 1 ? "" : "s");
    else
        ts_buffer_print(out, "does not hold: %s%s%s",
                        v->first != NULL ? v->first : "not computable",
                        v->address != NULL ? ", at " : "", v->address != NULL ? v->address : "");
}

double ts_arranged_speed(const ts_arrange_told *told, const double *input, uint32_t z, double turns)
{
    double most = 0.0;
    for (size_t c = 0; c < told->drive->condition_count; c++)
        most = fmax(most, input[c]);
    return most * turns / (double)z;
}

/* ---- between spool and box ------------------------------------------------------------------- */

static void add_length(const ts_page *page, double length, ts_buffer *out)
{
    ts_page_value_text(page, out, length, TS_KIND_LENGTH, 4);
    ts_buffer_print(out, " %s", ts_kind_shown(TS_KIND_LENGTH, page->units)->name);
}

static void add_bevels(const ts_page *page, const ts_bevels_taken *b, ts_buffer *out)
{
    ts_buffer_print(out, "%u/%u of ", (unsigned)b->teeth[0], (unsigned)b->teeth[1]);
    add_length(page, b->module, out);
}

static ts_bevels_taken bevels_of(const ts_bevel_gears *has, const ts_bevel_choice *now)
{
    if (now == NULL)
        return (ts_bevels_taken){{(uint32_t)has->teeth[0].value, (uint32_t)has->teeth[1].value},
                                 has->module.value,
                                 has->face.value};
    return (ts_bevels_taken){{(uint32_t)now->teeth[0].value, (uint32_t)now->teeth[1].value},
                             ts_measure_known(now->module) ? now->module.value : has->module.value,
                             ts_measure_known(now->face) ? now->face.value : has->face.value};
}

bool ts_arrange_take_off(const ts_arrange_told *told, size_t box, uint32_t index,
                         ts_take_off_taken *out)
{
    const ts_take_off_list *list = &told->problem->take_offs[box];
    const ts_spool_drive   *has  = &told->drive->drive[told->problem->tapped[box]];
    if (index >= list->count)
        return false;
    const ts_drive_take_off *now   = &list->items[index];
    const ts_tower_choice   *tower = now->tower;
    *out = (ts_take_off_taken){.spool   = bevels_of(&has->take_off.bevels, now->spool),
                               .box     = bevels_of(&has->box.bevels, now->box),
                               .outside = has->tower_shaft.outside.value,
                               .bore    = has->tower_shaft.bore.value,
                               .more    = now->more};
    if (tower != NULL)
        out->outside = tower->outside.value;
    if (tower != NULL && ts_measure_known(tower->bore))
        out->bore = tower->bore.value;
    return true;
}

void ts_arrange_take_off_says(const ts_page *page, const ts_take_off_taken *t, ts_buffer *out)
{
    ts_buffer_add(out, "bevels ");
    add_bevels(page, &t->spool, out);
    ts_buffer_add(out, " at the spool and ");
    add_bevels(page, &t->box, out);
    ts_buffer_add(out, " at the box, radial shaft of ");
    add_length(page, t->outside, out);
}

static void bevels_json(ts_json *json, const char *key, const ts_bevels_taken *b)
{
    ts_json_key(json, key);
    ts_json_object(json);
    ts_json_key(json, "teeth");
    ts_json_array(json);
    ts_json_integer(json, b->teeth[0]);
    ts_json_integer(json, b->teeth[1]);
    ts_json_end(json, ']');
    ts_json_number_at(json, "module", b->module);
    ts_json_number_at(json, "face", b->face);
    ts_json_end(json, '}');
}

void ts_arrange_take_off_json(ts_json *json, const ts_arrange_told *told, size_t box,
                              uint32_t index)
{
    ts_take_off_taken t;
    ts_json_key(json, "take_off");
    if (!ts_arrange_take_off(told, box, index, &t)) {
        ts_json_null(json);
        return;
    }
    ts_json_object(json);
    ts_json_count_at(json, "index", index);
    bevels_json(json, "spool_bevels", &t.spool);
    bevels_json(json, "box_bevels", &t.box);
    ts_json_number_at(json, "outside", t.outside);
    ts_json_number_at(json, "bore", t.bore);
    ts_json_number_at(json, "more", t.more);
    ts_json_end(json, '}');
}
