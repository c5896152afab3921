/* search/clash_teller.c: how is a contradiction worded, and what do all who look for one ask? */
#include "search/clash_teller.h"

#include "quantity/quantity.h"

#include <math.h>
#include <stdarg.h>

/* ---- words ----------------------------------------------------------------------------------- */

/* "9600 rpm"; an empty text without memory, which the arena remembers. */
static const char *shown(const ts_clash_teller *t, double si, const char *unit, ts_kind kind)
{
    ts_buffer out;
    ts_buffer_open(&out, ts_arena_allocator(t->arena));
    ts_quantity_show(&out, si, ts_unit_named(ts_text_of(unit), kind), 5);
    const char *copy = ts_arena_copy(t->arena, out.bytes != NULL ? out.bytes : "", out.length);
    ts_buffer_close(&out);
    return copy != NULL ? copy : "";
}

const char *ts_clash_rpm(const ts_clash_teller *t, double omega)
{
    return shown(t, omega, "rpm", TS_KIND_ROTATIONAL_SPEED);
}

const char *ts_clash_mm(const ts_clash_teller *t, double length)
{
    return shown(t, length, "mm", TS_KIND_LENGTH);
}

const char *ts_clash_deg(const ts_clash_teller *t, double angle)
{
    return shown(t, angle, "deg", TS_KIND_ANGLE);
}

const char *ts_clash_worded(const ts_clash_teller *t, const char *format, ...)
{
    ts_buffer out;
    va_list   list;
    ts_buffer_open(&out, ts_arena_allocator(t->arena));
    va_start(list, format);
    ts_buffer_print_list(&out, format, list);
    va_end(list);
    const char *copy = ts_arena_copy(t->arena, out.bytes != NULL ? out.bytes : "", out.length);
    ts_buffer_close(&out);
    return copy != NULL ? copy : "";
}

void ts_clash_tell(ts_clash_teller *t, ts_node node, const char *says, const char *expected)
{
    const ts_node_place *place = &t->drive->source->nodes[node];
    ts_diagnose_format(t->list,
                       &(ts_diagnostic){.code     = "demands-clash",
                                        .line     = node != 0 ? place->key_line : 0,
                                        .column   = node != 0 ? place->key_column : 0,
                                        .columns  = 1,
                                        .expected = expected},
                       "%s", says);
    t->told++;
}

/* ---- what the file says ---------------------------------------------------------------------- */

const ts_extra_demand *ts_clash_kept(const ts_clash_teller *t, size_t accessory)
{
    for (size_t i = 0; i < t->question->extra_count; i++)
        if (t->question->extra[i].accessory == (int32_t)accessory)
            return &t->question->extra[i];
    return NULL;
}

const ts_box_freedom *ts_clash_box_freedom(const ts_clash_teller *t, size_t box)
{
    const int32_t spool = t->drive->drive[t->made->tapped[box]].spool;
    for (size_t i = 0; i < t->drive->arrange.box_count; i++)
        if (t->drive->arrange.boxes[i].spool == spool)
            return &t->drive->arrange.boxes[i];
    return NULL;
}

/* ---- speeds and teeth ------------------------------------------------------------------------ */

ts_clash_window ts_clash_ratios(const ts_clash_teller *t, const ts_arrange_accessory *a,
                                const ts_arrange_choice *choice)
{
    const double   *speed = choice->speed;
    ts_clash_window r     = {.least = 0.0, .most = (double)INFINITY};

    for (size_t c = 0; c < t->p->condition_count; c++) {
        if (a->speed_least[c] / speed[c] > r.least) {
            r.least    = a->speed_least[c] / speed[c];
            r.at_least = c;
        }
        if (a->speed_most[c] / speed[c] < r.most) {
            r.most    = a->speed_most[c] / speed[c];
            r.at_most = c;
        }
    }
    return r;
}

bool ts_clash_turns_right(const ts_arrange_problem *p, const ts_arrange_accessory *a,
                          const ts_arrange_choice *choice, double turns, double z)
{
    for (size_t c = 0; c < p->condition_count; c++) {
        const double n = choice->speed[c] * turns / z;
        if (n < a->speed_least[c] * (1.0 - TS_CLASH_SPEED_SLACK) ||
            n > a->speed_most[c] * (1.0 + TS_CLASH_SPEED_SLACK))
            return false;
    }
    return true;
}

bool ts_clash_plane_has_teeth(const ts_clash_teller *t, const ts_arrange_accessory *a,
                              const ts_arrange_choice *choice, double turns)
{
    for (uint32_t z = t->p->z_least; z <= t->p->z_most; z++)
        if (ts_clash_turns_right(t->p, a, choice, turns, (double)z))
            return true;
    return false;
}

bool ts_clash_has_teeth(const ts_clash_teller *t, const ts_arrange_accessory *a,
                        const ts_arrange_box *box)
{
    for (uint32_t i = 0; i < box->choice_count; i++) {
        const ts_arrange_choice *choice = &box->choices[i];
        const double             z_in   = (double)choice->z_in;
        if (ts_clash_turns_right(t->p, a, choice, z_in, z_in) ||
            ts_clash_plane_has_teeth(t, a, choice, z_in))
            return true;
        for (size_t k = 0; k < box->step_count; k++)
            if (ts_clash_plane_has_teeth(
                    t, a, choice, z_in * (double)box->steps[k].z_step / (double)box->steps[k].z))
                return true;
    }
    return false;
}

/* ---- room ------------------------------------------------------------------------------------ */

double ts_clash_reach(const ts_arrange_box *box)
{
    return fmin(box->side_most, box->wrap_most);
}

double ts_clash_mesh_angle(const ts_arrange_box *box, double m, double teeth)
{
    const double sine = m * teeth / (4.0 * box->radius);
    return sine < 1.0 ? 2.0 * asin(sine) : (double)INFINITY;
}

uint32_t ts_clash_smallest_gear(const ts_arrange_problem *p)
{
    uint32_t least = p->z_least;
    for (size_t i = 0; i < p->idler_teeth_count; i++)
        least = p->idler_teeth[i] < least ? p->idler_teeth[i] : least;
    return least;
}
