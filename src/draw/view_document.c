/* What does a page need to know of a drive, in which order? */
#include "draw/view.h"

/* px a metre for the outlines: no chord is further than 25 um from its curve. */
#define OUTLINE_PX 4000.0

/* ---- the document --------------------------------------------------------------------------- */

static void write_units(const ts_view *view)
{
    static const struct {
        const char *key;
        ts_kind     kind;
    } kinds[] = {{"speed", TS_KIND_ROTATIONAL_SPEED},
                 {"power", TS_KIND_POWER},
                 {"torque", TS_KIND_TORQUE},
                 {"length", TS_KIND_LENGTH}};
    ts_json_key(view->json, "units");
    ts_json_object(view->json);
    for (size_t i = 0; i < sizeof kinds / sizeof kinds[0]; i++)
        ts_view_word(view, kinds[i].key, ts_scene_unit(view->scene, kinds[i].kind));
    ts_json_end(view->json, '}');
}

/* Accessories that are described and stand on no pad yet. */
static void write_unplaced(const ts_view *view)
{
    const ts_drive *drive = view->scene->drive;
    const ts_train *train = view->scene->train;
    ts_json_key(view->json, "unplaced");
    ts_json_array(view->json);
    for (size_t i = 0; i < drive->accessory_count; i++) {
        bool placed = false;
        for (uint32_t k = 0; k < train->pad_count && !placed; k++)
            placed = train->pads[k].accessory == (int32_t)i;
        if (!placed)
            ts_json_string(view->json, drive->accessories[i].name);
    }
    ts_json_end(view->json, ']');
}

static void write_conditions(const ts_view *view)
{
    const ts_drive *drive = view->scene->drive;
    ts_json_key(view->json, "conditions");
    ts_json_array(view->json);
    for (size_t c = 0; c < drive->condition_count; c++)
        ts_json_string(view->json, drive->conditions[c].name);
    ts_json_end(view->json, ']');
    ts_view_count(view, "most_power", ts_draw_condition(view->scene->subject));
}

static void write_all(const ts_view *view)
{
    const ts_drawing_subject *subject = view->scene->subject;
    ts_json_object(view->json);
    ts_view_word(view, "version", subject->version);
    ts_view_word(view, "caution", view->scene->options->caution);
    ts_view_word(view, "file", subject->file);
    ts_view_word(view, "sha256", subject->hash);
    ts_view_word(view, "title", view->scene->drive->title.text);
    ts_view_word(view, "revision", view->scene->drive->revision.text);
    ts_view_word(view, "says", subject->verdict);
    ts_view_count(view, "dial", ts_scene_dial(view->scene, 1.0) > 0.0 ? 1 : -1);
    ts_view_count(view, "waivers", (int64_t)view->scene->drive->waived_count);
    ts_view_count(view, "assumptions", (int64_t)view->scene->drive->assumption_count);
    write_unplaced(view);
    write_units(view);
    write_conditions(view);
    ts_view_machine(view);
    ts_view_margins(view);
    ts_view_findings(view);
    ts_json_end(view->json, '}');
}

ts_status ts_view_write(const ts_drawing_subject *subject, const ts_draw_options *options,
                        ts_buffer *out)
{
    ts_arena *arena = ts_arena_open(options->allocator);
    if (arena == NULL)
        return TS_NO_MEMORY;
    ts_scene  scene = ts_scene_of(subject, options, arena);
    ts_face   face  = {.scene = &scene, .px = OUTLINE_PX};
    ts_buffer words;
    ts_json   json;
    ts_buffer_open(&words, options->allocator);
    ts_json_begin(&json, out, true);
    const size_t   nodes  = (size_t)subject->source->node_count + subject->source->made_count;
    ts_view_place *places = TS_TAKE(arena, ts_view_place, nodes + 1);
    ts_status      status = places != NULL ? ts_face_measure(&face) : TS_NO_MEMORY;
    if (status == TS_OK) {
        const ts_view view = {&face, &scene, &json, &words, places};
        ts_face_trace_gears(&face);
        write_all(&view);
        ts_buffer_add(out, "\n");
        if (ts_arena_failed(arena) || out->failed || words.failed)
            status = TS_NO_MEMORY;
    }
    ts_buffer_close(&words);
    ts_arena_close(arena);
    return status;
}
