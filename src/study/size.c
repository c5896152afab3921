/* How does a drive get the widths, bearings or diameters that it needs, and the file the text of
 * them? */
#include "study/study.h"

#include "model/edit.h"
#include "report/size_report.h"
#include "study/outlet.h"
#include "towershaft/size.h"

#include <math.h>
#include <string.h>

#define WIDTH_USUAL    "0.5 mm"  /* TS_WIDTH_STEP_USUAL */
#define DIAMETER_USUAL "0.05 mm" /* TS_NECK_STEP_USUAL  */
#define STEP_LEAST     1e-6      /* m */
#define STEP_MOST      0.1

/* One sizing: what is asked, the plan that came of it, and the text with the new values. */
typedef struct sizing {
    ts_study              *study;
    const ts_size_options *options;
    ts_arena              *arena; /* outlives the reading of the new file */
    double                 step;  /* m */
    ts_width_plan          widths;
    ts_bearing_plan        bearings;
    ts_neck_plan           necks;
    ts_size_masses         before;
    ts_text                bytes;
    bool                   fits;
} sizing;

/* ---- the text of the new file ---------------------------------------------------------------- */

/* The unit in which the file has that length; mm where it has none. */
static const ts_unit *unit_of(const ts_study *study, ts_node node)
{
    const ts_unit *unit  = NULL;
    const ts_node  value = ts_source_value(&study->source, node);
    double         si;

    if (value != 0 &&
        ts_quantity_parse(study->source.nodes[value].scalar, TS_KIND_LENGTH, &si, &unit, NULL))
        return unit;
    return ts_unit_named(TS_TEXT("mm"), TS_KIND_LENGTH);
}

/* One value into the text, which is edited from then on; `value` is closed. */
static ts_status put(sizing *s, ts_node node, const char *key, ts_buffer *value)
{
    ts_study *study = s->study;
    ts_buffer address, out;

    ts_buffer_open(&address, study->allocator);
    ts_buffer_open(&out, study->allocator);
    ts_source_address(&study->source, node, &address);
    if (key != NULL)
        ts_buffer_print(&address, "/%s", key);
    ts_status status = address.failed || value->failed ? TS_NO_MEMORY : TS_OK;
    if (status == TS_OK)
        status =
            ts_edit_set(s->bytes, study->name, (ts_text){address.bytes, address.length},
                        (ts_text){value->bytes, value->length}, s->arena, study->diagnostics, &out);
    if (status == TS_OK) {
        s->bytes = (ts_text){ts_arena_copy(s->arena, out.bytes, out.length), out.length};
        status   = out.failed || s->bytes.at == NULL ? TS_NO_MEMORY : TS_OK;
    }
    ts_buffer_close(&out);
    ts_buffer_close(&address);
    ts_buffer_close(value);
    return status;
}

static ts_status put_length(sizing *s, ts_node node, const char *key, double si, ts_node like)
{
    ts_buffer value;

    ts_buffer_open(&value, s->study->allocator);
    ts_quantity_print(&value, si, unit_of(s->study, like));
    return put(s, node, key, &value);
}

static ts_status put_word(sizing *s, ts_node node, const char *key, const char *word)
{
    ts_buffer value;

    ts_buffer_open(&value, s->study->allocator);
    ts_buffer_add(&value, word);
    return put(s, node, key, &value);
}

static bool is_changed(double before, double after)
{
    return !isnan(after) && !(fabs(after - before) < 1e-12);
}

static ts_status put_widths(sizing *s)
{
    ts_status status = TS_OK;

    for (size_t i = 0; i < s->widths.gear_count && status == TS_OK; i++) {
        const ts_gear_width *width = &s->widths.gears[i];
        const ts_node        face  = s->study->train.gears[width->gear].face.node;

        if (is_changed(width->before, width->after))
            status = put_length(s, face, NULL, width->after, face);
    }
    return status;
}

/* A seat of which the file says nothing gets its whole record. */
static ts_status put_seat(sizing *s, ts_node node, const ts_bearing_kind *kind)
{
    ts_buffer value;

    ts_buffer_open(&value, s->study->allocator);
    ts_buffer_print(&value, "{form: %s, ", ts_bearing_form_name(kind->form));
    if (kind->form == TS_BEARING_ANGULAR_CONTACT)
        ts_buffer_print(&value, "rows: %d, ", kind->rows);
    ts_buffer_print(&value, "series: %s, bore: ", kind->series);
    ts_quantity_print(&value, kind->d, ts_unit_named(TS_TEXT("mm"), TS_KIND_LENGTH));
    ts_buffer_add(&value, "}");
    return put(s, node, NULL, &value);
}

static ts_status put_bearing(sizing *s, const ts_bearing_choice *choice)
{
    const ts_line_bearing *b    = &s->study->lines.lines[choice->line].bearings[choice->k];
    const ts_bearing_kind *kind = &choice->after, *was = &choice->before;
    const ts_node          node   = b->seat->node;
    ts_status              status = TS_OK;

    if (node == 0)
        return put_seat(s, b->node, kind);
    if (!choice->was || !choice->stated || was->form != kind->form)
        status = put_word(s, node, "form", ts_bearing_form_name(kind->form));
    if (status == TS_OK && kind->form == TS_BEARING_ANGULAR_CONTACT &&
        (!choice->was || !choice->stated || was->rows != kind->rows))
        status = put_word(s, node, "rows", kind->rows == 2 ? "2" : "1");
    if (status == TS_OK && (!choice->was || !choice->stated || was->series != kind->series))
        status = put_word(s, node, "series", kind->series);
    if (status == TS_OK && (!choice->was || !choice->stated || is_changed(was->d, kind->d)))
        status = put_length(s, node, "bore", kind->d, node);
    return status;
}

static ts_status put_bearings(sizing *s)
{
    ts_status status = TS_OK;

    for (size_t i = 0; i < s->bearings.count && status == TS_OK; i++)
        if (s->bearings.choices[i].state == TS_BEARING_CHOSEN)
            status = put_bearing(s, &s->bearings.choices[i]);
    return status;
}

static ts_status put_necks(sizing *s)
{
    ts_status status = TS_OK;

    for (size_t i = 0; i < s->necks.count && status == TS_OK; i++) {
        const ts_neck_choice *choice = &s->necks.choices[i];
        const ts_guard       *guard  = &s->study->select.guards[choice->guard];
        const ts_node         node   = s->study->necks.items[guard->neck].neck->diameter.node;

        if (choice->need != TS_NECK_KEPT && is_changed(choice->before.d, choice->after.d))
            status = put_length(s, node, NULL, choice->after.d, node);
    }
    return status;
}

/* ---- finding --------------------------------------------------------------------------------- */

static ts_status find_widths(sizing *s)
{
    ts_study          *study  = s->study;
    const ts_width_rig rig    = {&study->drive, &study->train,      &study->motion, &study->power,
                                 &study->teeth, study->diagnostics, &study->lines};
    const ts_status    status = ts_find_tooth_widths(&rig, s->step, s->arena, &s->widths);

    s->fits = status == TS_OK && s->widths.fits;
    return status == TS_OK ? put_widths(s) : status;
}

static ts_status find_bearings(sizing *s)
{
    const ts_status status =
        ts_find_bearings(&s->study->drive, &s->study->lines, s->arena, &s->bearings);

    s->fits = status == TS_OK && s->bearings.fits;
    return status == TS_OK ? put_bearings(s) : status;
}

static ts_status find_necks(sizing *s)
{
    const ts_neck_rig rig    = {&s->study->drive, &s->study->lines, &s->study->splines,
                                &s->study->necks, &s->study->select};
    const ts_status   status = ts_find_neck_diameters(&rig, s->step, s->arena, &s->necks);

    s->fits = status == TS_OK && s->necks.fits;
    return status == TS_OK ? put_necks(s) : status;
}

static ts_status find(sizing *s)
{
    ts_study   *study = s->study;
    const char *name  = ts_arena_copy(s->arena, study->name, strlen(study->name));

    s->bytes = (ts_text){ts_arena_copy(s->arena, study->bytes.at, study->bytes.length),
                         study->bytes.length};
    if (name == NULL || s->bytes.at == NULL)
        return TS_NO_MEMORY;
    ts_status status;
    s->before = ts_size_masses_of(&study->mass);
    switch (s->options->part) {
    case TS_SIZE_BEARINGS:
        status = find_bearings(s);
        break;
    case TS_SIZE_NECKS:
        status = find_necks(s);
        break;
    default:
        status = find_widths(s);
    }
    if (status != TS_OK)
        return status;
    const ts_study_options options = study->options;
    return ts_study_read(study, name, s->bytes.at, s->bytes.length, &options);
}

/* ---- the answer ------------------------------------------------------------------------------ */

static void tell_json(const sizing *s, const ts_answer *answer, ts_buffer *out)
{
    if (s->options->part == TS_SIZE_BEARINGS)
        ts_size_bearings_json(&s->bearings, &s->before, answer, out);
    else if (s->options->part == TS_SIZE_NECKS)
        ts_size_necks_json(&s->necks, s->step, answer, out);
    else
        ts_size_json(&s->widths, s->step, answer, out);
}

static void tell_page(const sizing *s, const ts_answer *answer, ts_page *page)
{
    if (s->options->part == TS_SIZE_BEARINGS)
        ts_size_bearings_page(&s->bearings, &s->before, answer, page);
    else if (s->options->part == TS_SIZE_NECKS)
        ts_size_necks_page(&s->necks, s->step, answer, page);
    else
        ts_size_page(&s->widths, s->step, answer, page);
}

static ts_status tell(const sizing *s, const ts_page_options *shown, const ts_sink *sink)
{
    const ts_answer answer = ts_study_answer(s->study);
    ts_buffer       out;

    ts_buffer_open(&out, s->study->allocator);
    ts_page page = ts_outlet_page(shown, &out);
    if (s->options->json)
        tell_json(s, &answer, &out);
    else
        tell_page(s, &answer, &page);
    const ts_status status = ts_buffer_send(&out, sink);
    ts_buffer_close(&out);
    return status;
}

static ts_status send(ts_text bytes, const ts_sink *sink)
{
    if (sink == NULL)
        return TS_OK;
    return sink->write(sink->context, bytes.at, bytes.length) == 0 ? TS_OK : TS_NO_OUTPUT;
}

/* m; NaN with a message when it is no step. */
static double step_of(ts_study *study, const ts_size_options *options)
{
    const char       *usual = options->part == TS_SIZE_NECKS ? DIAMETER_USUAL : WIDTH_USUAL;
    const char       *text  = options->step != NULL ? options->step : usual;
    ts_quantity_fault fault;
    double            step;

    if (options->part == TS_SIZE_BEARINGS && options->step != NULL) {
        ts_study_say(study, "unknown-choice", "bearings come in the sizes of the table",
                     "no step, or teeth or necks to choose", NULL);
        return (double)NAN;
    }
    if (!ts_quantity_parse(ts_text_of(text), TS_KIND_LENGTH, &step, NULL, &fault)) {
        ts_study_say(study, fault.code, fault.says, fault.expected, fault.nearest);
        return (double)NAN;
    }
    if (step >= STEP_LEAST && step <= STEP_MOST)
        return step;
    ts_study_say(study, "out-of-range", "the step is out of range",
                 "a length from 0.001 mm to 100 mm, such as 0.5 mm", NULL);
    return (double)NAN;
}

ts_status ts_size_write(ts_study *study, const ts_size_options *options,
                        const ts_page_options *page, bool *fits, const ts_sink *sink,
                        const ts_sink *file)
{
    sizing s = {.study = study, .options = options};

    *fits = false;
    if (!ts_study_ask(study, TS_WANT_DRIVE))
        return TS_NOT_UNDERSTOOD;
    s.step = step_of(study, options);
    if (isnan(s.step))
        return TS_NOT_UNDERSTOOD;
    s.arena = ts_arena_open(study->allocator);
    if (s.arena == NULL)
        return TS_NO_MEMORY;
    ts_status status = find(&s);
    if (status == TS_OK)
        status = tell(&s, page, sink);
    if (status == TS_OK && s.fits)
        status = send(s.bytes, file);
    *fits = status == TS_OK && s.fits;
    ts_arena_close(s.arena);
    return status;
}
