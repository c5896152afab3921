/* How does a drive get the face widths that its teeth need, and the file the text of them? */
#include "study/study.h"

#include "model/edit.h"
#include "report/size_report.h"
#include "study/outlet.h"
#include "towershaft/size.h"

#include <math.h>
#include <string.h>

#define STEP_USUAL "0.5 mm" /* TS_WIDTH_STEP_USUAL */
#define STEP_LEAST 1e-6     /* m */
#define STEP_MOST  0.1

/* ---- the text of the new file ---------------------------------------------------------------- */

/* The unit in which the file has that width; mm where it has none. */
static const ts_unit *unit_of(const ts_study *study, ts_node face)
{
    const ts_unit *unit  = NULL;
    const ts_node  value = ts_source_value(&study->source, face);
    double         si;

    if (value != 0 &&
        ts_quantity_parse(study->source.nodes[value].scalar, TS_KIND_LENGTH, &si, &unit, NULL))
        return unit;
    return ts_unit_named(TS_TEXT("mm"), TS_KIND_LENGTH);
}

static bool is_changed(const ts_gear_width *width)
{
    return !isnan(width->after) && !(fabs(width->after - width->before) < 1e-12);
}

/* One width into the text; *bytes becomes the new text, in `arena`. */
static ts_status set_width(ts_study *study, const ts_gear_width *width, ts_arena *arena,
                           ts_text *bytes)
{
    const ts_node face = study->train.gears[width->gear].face.node;
    ts_buffer     address, value, out;

    ts_buffer_open(&address, study->allocator);
    ts_buffer_open(&value, study->allocator);
    ts_buffer_open(&out, study->allocator);
    ts_source_address(&study->source, face, &address);
    ts_quantity_print(&value, width->after, unit_of(study, face));
    ts_status status = address.failed || value.failed ? TS_NO_MEMORY : TS_OK;
    if (status == TS_OK)
        status = ts_edit_set(*bytes, study->name, (ts_text){address.bytes, address.length},
                             (ts_text){value.bytes, value.length}, arena, study->diagnostics, &out);
    if (status == TS_OK) {
        *bytes = (ts_text){ts_arena_copy(arena, out.bytes, out.length), out.length};
        status = out.failed || bytes->at == NULL ? TS_NO_MEMORY : TS_OK;
    }
    ts_buffer_close(&out);
    ts_buffer_close(&value);
    ts_buffer_close(&address);
    return status;
}

static ts_status set_widths(ts_study *study, const ts_width_plan *plan, ts_arena *arena,
                            ts_text *bytes)
{
    ts_status status = TS_OK;

    *bytes =
        (ts_text){ts_arena_copy(arena, study->bytes.at, study->bytes.length), study->bytes.length};
    if (bytes->at == NULL)
        return TS_NO_MEMORY;
    for (size_t i = 0; i < plan->gear_count && status == TS_OK; i++)
        if (is_changed(&plan->gears[i]))
            status = set_width(study, &plan->gears[i], arena, bytes);
    return status;
}

/* ---- the answer ------------------------------------------------------------------------------ */

static ts_status tell(ts_study *study, const ts_width_plan *plan, double step,
                      const ts_size_options *options, const ts_page_options *shown,
                      const ts_sink *sink)
{
    const ts_answer answer = ts_study_answer(study);
    ts_buffer       out;

    ts_buffer_open(&out, study->allocator);
    ts_page page = ts_outlet_page(shown, &out);
    if (options->json)
        ts_size_json(plan, step, &answer, &out);
    else
        ts_size_page(plan, step, &answer, &page);
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

/* What outlives the reading of the new file stands in `arena`. */
static ts_status size_in(ts_study *study, double step, ts_arena *arena, ts_width_plan *plan,
                         ts_text *bytes)
{
    const ts_width_rig rig    = {&study->drive, &study->train,      &study->motion, &study->power,
                                 &study->teeth, study->diagnostics, &study->lines};
    ts_status          status = ts_find_tooth_widths(&rig, step, arena, plan);
    const char        *name   = ts_arena_copy(arena, study->name, strlen(study->name));

    if (status == TS_OK && name == NULL)
        status = TS_NO_MEMORY;
    if (status == TS_OK)
        status = set_widths(study, plan, arena, bytes);
    if (status != TS_OK)
        return status;
    const ts_study_options options = study->options;
    return ts_study_read(study, name, bytes->at, bytes->length, &options);
}

/* m; NaN with a message when it is no step. */
static double step_of(ts_study *study, const char *given)
{
    const char       *text = given != NULL ? given : STEP_USUAL;
    ts_quantity_fault fault;
    double            step;

    if (!ts_quantity_parse(ts_text_of(text), TS_KIND_LENGTH, &step, NULL, &fault)) {
        ts_study_say(study, fault.code, fault.says, fault.expected, fault.nearest);
        return (double)NAN;
    }
    if (step >= STEP_LEAST && step <= STEP_MOST)
        return step;
    ts_study_say(study, "out-of-range", "the step of widths is out of range",
                 "a length from 0.001 mm to 100 mm, such as 0.5 mm", NULL);
    return (double)NAN;
}

ts_status ts_size_write(ts_study *study, const ts_size_options *options,
                        const ts_page_options *page, bool *fits, const ts_sink *sink,
                        const ts_sink *file)
{
    ts_width_plan plan;
    ts_text       bytes;

    *fits = false;
    if (!study->solved)
        return TS_NOT_UNDERSTOOD;
    const double step = step_of(study, options->step);
    if (isnan(step))
        return TS_NOT_UNDERSTOOD;
    ts_arena *arena = ts_arena_open(study->allocator);
    if (arena == NULL)
        return TS_NO_MEMORY;
    ts_status status = size_in(study, step, arena, &plan, &bytes);
    if (status == TS_OK)
        status = tell(study, &plan, step, options, page, sink);
    if (status == TS_OK && plan.fits)
        status = send(bytes, file);
    *fits = status == TS_OK && plan.fits;
    ts_arena_close(arena);
    return status;
}
