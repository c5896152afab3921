/* How is a start written as JSON, by docs/schema/start.schema.json? */
#include "report/start_report.h"

#include "report/json_quantity.h"
#include "report/register.h"

#include <math.h>

static void events(ts_json *json, const ts_start_answer *start, const ts_answer *answer)
{
    const ts_start_run *run = &start->it->run;

    ts_json_key(json, "events");
    ts_json_array(json);
    for (size_t i = 0; i < run->event_count; i++) {
        ts_json_object(json);
        ts_json_rounded_at(json, "t", run->events[i].t);
        ts_json_string_at(json, "what", ts_start_event_words[run->events[i].what]);
        ts_json_string_at(json, "of", ts_start_event_of(start, answer, &run->events[i]));
        ts_json_rounded_at(json, "speed", run->events[i].w);
        ts_json_end(json, '}');
    }
    ts_json_end(json, ']');
}

static void peak(ts_json *json, const char *of, const ts_start_peak *one)
{
    ts_json_string_at(json, "of", of);
    ts_json_rounded_at(json, "T", one->T);
    ts_json_rounded_at(json, "t", one->t);
    ts_json_rounded_at(json, "speed", one->w);
}

static void bears(ts_json *json, const ts_start_wall *wall)
{
    ts_json_rounded_at(json, "bears", wall->T);
    if (isfinite(wall->T))
        ts_json_string_at(json, "by", ts_part_kind_word(wall->kind));
}

static void peaks(ts_json *json, const ts_start_answer *start, const ts_answer *answer)
{
    const ts_drive_start *it = start->it;

    ts_json_key(json, "shafts");
    ts_json_array(json);
    for (uint32_t s = 0; s < it->start.shaft_count; s++) {
        if (it->start.shafts[s].driver == TS_NO_DRIVER)
            continue;
        ts_json_object(json);
        peak(json, answer->train->shafts[s].name, &it->run.shafts[s]);
        bears(json, &start->walls[s]);
        ts_json_end(json, '}');
    }
    ts_json_end(json, ']');
    ts_json_key(json, "pads");
    ts_json_array(json);
    for (uint32_t p = 0; p < it->start.pad_count; p++) {
        ts_json_object(json);
        peak(json, answer->train->pads[it->pad_of[p]].name, &it->run.pads[p]);
        bears(json, &start->pad_walls[it->pad_of[p]]);
        ts_json_end(json, '}');
    }
    ts_json_end(json, ']');
}

static void necks(ts_json *json, const ts_start_answer *start)
{
    ts_json_key(json, "necks");
    ts_json_array(json);
    for (size_t i = 0; i < start->neck_count; i++) {
        ts_json_object(json);
        ts_json_string_at(json, "of", start->necks[i].name);
        ts_json_rounded_at(json, "T", start->necks[i].T);
        ts_json_rounded_at(json, "t", start->necks[i].t);
        ts_json_rounded_at(json, "breaks_from", start->necks[i].low);
        ts_json_rounded_at(json, "breaks_to", start->necks[i].high);
        ts_json_end(json, '}');
    }
    ts_json_end(json, ']');
}

static void energy(ts_json *json, const ts_start_energy *e)
{
    ts_json_key(json, "energy");
    ts_json_object(json);
    ts_json_rounded_at(json, "starters", e->starters);
    ts_json_rounded_at(json, "gases", e->gases);
    ts_json_rounded_at(json, "pads", e->pads);
    ts_json_rounded_at(json, "oil", e->oil);
    ts_json_rounded_at(json, "meshes", e->meshes);
    ts_json_rounded_at(json, "kinetic", e->kinetic);
    ts_json_rounded_at(json, "balance", e->balance < 1e-8 ? 0.0 : e->balance);
    ts_json_end(json, '}');
}

static void speeds(ts_json *json, const ts_start_answer *start, const ts_answer *answer)
{
    ts_json_key(json, "spools");
    ts_json_array(json);
    for (uint32_t k = 0; k < start->it->start.spool_count; k++) {
        ts_json_object(json);
        ts_json_string_at(json, "of", answer->drive->spools[k].name);
        ts_json_bool_at(json, "cranked", k == start->it->spool);
        ts_json_rounded_at(json, "speed", start->it->run.w[k]);
        ts_json_end(json, '}');
    }
    ts_json_end(json, ']');
}

/* Column `at` of a table of `wide` columns, sample by sample. */
static void column(ts_json *json, const char *key, const double *of, size_t count, size_t wide,
                   size_t at)
{
    ts_json_key(json, key);
    ts_json_array(json);
    for (size_t i = 0; i < count; i++)
        ts_json_rounded(json, of[i * wide + at]);
    ts_json_end(json, ']');
}

/* Torques from their drivers, and what pads take. */
static void torques(ts_json *json, const ts_start_answer *start, const ts_answer *answer)
{
    const ts_drive_start *it    = start->it;
    const ts_start_trace *trace = &it->run.trace;

    ts_json_key(json, "shafts");
    ts_json_array(json);
    for (uint32_t s = 0; s < it->start.shaft_count; s++) {
        if (it->start.shafts[s].driver == TS_NO_DRIVER)
            continue;
        ts_json_object(json);
        ts_json_string_at(json, "of", answer->train->shafts[s].name);
        ts_json_count_at(json, "shaft", s);
        column(json, "T", trace->T, trace->count, it->start.shaft_count, s);
        ts_json_end(json, '}');
    }
    ts_json_end(json, ']');
    ts_json_key(json, "pads");
    ts_json_array(json);
    for (uint32_t p = 0; p < it->start.pad_count; p++) {
        ts_json_object(json);
        ts_json_string_at(json, "of", answer->train->pads[it->pad_of[p]].name);
        ts_json_count_at(json, "shaft", answer->train->pads[it->pad_of[p]].shaft);
        column(json, "T", trace->pad, trace->count, it->start.pad_count, p);
        ts_json_end(json, '}');
    }
    ts_json_end(json, ']');
}

static void trace(ts_json *json, const ts_start_answer *start, const ts_answer *answer)
{
    const ts_start_trace *trace = &start->it->run.trace;
    const uint32_t        n     = start->it->start.spool_count;

    ts_json_key(json, "trace");
    ts_json_object(json);
    column(json, "t", trace->t, trace->count, 1, 0);
    ts_json_key(json, "spools");
    ts_json_array(json);
    for (uint32_t k = 0; k < n; k++) {
        ts_json_object(json);
        ts_json_string_at(json, "of", answer->drive->spools[k].name);
        column(json, "speed", trace->w, trace->count, n, k);
        ts_json_end(json, '}');
    }
    ts_json_end(json, ']');
    torques(json, start, answer);
    ts_json_end(json, '}');
}

static void drag_at(ts_json *json, const ts_start_answer *start, double w)
{
    static const char *const names[TS_DRAG_KINDS] = {
        [TS_DRAG_SEAL] = "seals", [TS_DRAG_AIR] = "air", [TS_DRAG_TEETH] = "teeth"};
    const ts_rigid_start *it    = &start->it->start;
    const uint32_t        spool = start->it->spool;

    ts_json_object(json);
    ts_json_rounded_at(json, "speed", w);
    ts_json_rounded_at(json, "bearings", ts_start_bearing_drag(it, spool, w));
    for (int kind = 0; kind < TS_DRAG_KINDS && start->drag_missing == NULL; kind++)
        ts_json_rounded_at(json, names[kind], ts_start_drag(it, spool, (ts_drag_kind)kind, w));
    ts_json_end(json, '}');
}

static void drag(ts_json *json, const ts_start_answer *start)
{
    const ts_rigid_start *it = &start->it->start;

    ts_json_key(json, "drag");
    ts_json_array(json);
    drag_at(json, start, 0.0);
    drag_at(json, start, it->light_off);
    drag_at(json, start, it->spools[start->it->spool].idle);
    ts_json_end(json, ']');
    if (start->drag_missing != NULL)
        ts_json_string_at(json, "drag_missing", start->drag_missing);
}

static void grid(ts_json *json, const ts_start_answer *start, const ts_answer *answer)
{
    if (start->cells == NULL)
        return;
    ts_json_key(json, "grid");
    ts_json_array(json);
    for (size_t i = 0; i < start->steps * start->steps; i++) {
        const ts_start_cell *one = &start->cells[i];
        ts_json_object(json);
        ts_json_rounded_at(json, "ambient", one->ambient);
        ts_json_rounded_at(json, "oil", one->oil);
        ts_json_string_at(json, "outcome", ts_start_outcome_words[one->outcome]);
        ts_json_rounded_at(json, "t", one->t);
        ts_json_rounded_at(json, "speed", one->w);
        ts_json_rounded_at(json, "light_off", one->t_light);
        ts_json_rounded_at(json, "starter", one->T);
        ts_json_rounded_at(json, "share", one->share);
        if (one->nearest != TS_NOWHERE)
            ts_json_string_at(json, "nearest", answer->train->shafts[one->nearest].name);
        ts_json_end(json, '}');
    }
    ts_json_end(json, ']');
}

void ts_start_json(const ts_start_answer *start, const ts_answer *answer, ts_buffer *out)
{
    const ts_drive_start *it = start->it;
    ts_json               json;

    ts_json_begin(&json, out, false);
    ts_json_object(&json);
    ts_json_head(&json, answer);
    ts_json_rounded_at(&json, "ambient", start->ambient);
    ts_json_rounded_at(&json, "oil", start->oil);
    ts_json_rounded_at(&json, "viscosity", start->nu);
    ts_register_json(&json, start->assumed, start->assumed_count);
    if (it->missing != NULL) {
        ts_json_string_at(&json, "missing", it->missing);
        if (it->lacks != NULL)
            ts_json_string_at(&json, "of", it->lacks);
    } else {
        if (start->beyond != NULL)
            ts_json_string_at(&json, "to", start->beyond);
        ts_json_string_at(&json, "outcome", ts_start_outcome_words[it->run.outcome]);
        if (it->run.fault != TS_START_FINE)
            ts_json_string_at(&json, "because", ts_start_fault_says(it->run.fault));
    }
    if (it->missing == NULL && it->run.fault != TS_START_BAD_NUMBER) {
        ts_json_rounded_at(&json, "t", it->run.t);
        ts_json_rounded_at(&json, "acceleration", it->run.alpha);
        speeds(&json, start, answer);
        events(&json, start, answer);
        peaks(&json, start, answer);
        necks(&json, start);
        drag(&json, start);
        energy(&json, &it->run.energy);
        trace(&json, start, answer);
        grid(&json, start, answer);
    }
    ts_json_end(&json, '}');
    ts_buffer_add(out, "\n");
}
