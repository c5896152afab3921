/* How is one fact of the view written, and which shaft is a place of the file about? */
#include "draw/view.h"

#include <math.h>

void ts_view_number(const ts_view *view, const char *key, double value)
{
    ts_json_key(view->json, key);
    if (isfinite(value))
        ts_json_number(view->json, value);
    else
        ts_json_null(view->json);
}

void ts_view_word(const ts_view *view, const char *key, const char *value)
{
    ts_json_key(view->json, key);
    ts_json_string(view->json, value);
}

void ts_view_count(const ts_view *view, const char *key, int64_t value)
{
    ts_json_key(view->json, key);
    ts_json_integer(view->json, value);
}

ts_text ts_view_address_of(const ts_view *view, ts_node node)
{
    ts_view_place *place = &view->places[node];
    if (place->address.at != NULL)
        return place->address;
    ts_buffer_clear(view->words);
    ts_source_address(view->scene->subject->source, node, view->words);
    const char *copied = ts_arena_copy(view->scene->arena, view->words->bytes, view->words->length);
    if (copied != NULL)
        place->address = (ts_text){copied, view->words->length};
    return place->address;
}

void ts_view_address(const ts_view *view, const char *key, ts_node node)
{
    ts_json_key(view->json, key);
    if (node == 0) {
        ts_json_null(view->json);
        return;
    }
    ts_json_text(view->json, ts_view_address_of(view, node));
}

static uint32_t shaft_at(const ts_train *train, ts_node node)
{
    for (uint32_t s = 0; s < train->shaft_count; s++)
        if (train->shafts[s].node == node)
            return s;
    for (uint32_t m = 0; m < train->mesh_count; m++)
        if (train->meshes[m].node == node)
            return train->meshes[m].driven_shaft;
    for (uint32_t g = 0; g < train->gear_count; g++)
        if (train->gears[g].node == node)
            return train->gears[g].shaft;
    for (uint32_t p = 0; p < train->pad_count; p++)
        if (train->pads[p].node == node)
            return train->pads[p].shaft;
    return TS_NOWHERE;
}

static uint32_t shaft_of_accessory(const ts_view *view, ts_node node)
{
    const ts_train *train = view->scene->train;
    for (uint32_t p = 0; p < train->pad_count; p++)
        if (train->pads[p].accessory >= 0 &&
            view->scene->drive->accessories[train->pads[p].accessory].node == node)
            return train->pads[p].shaft;
    return TS_NOWHERE;
}

static uint32_t find_shaft(const ts_view *view, ts_node node)
{
    const ts_source *source = view->scene->subject->source;
    for (ts_node at = node; at != 0; at = source->nodes[at].parent) {
        uint32_t shaft = shaft_at(view->scene->train, at);
        if (shaft == TS_NOWHERE)
            shaft = shaft_of_accessory(view, at);
        if (shaft != TS_NOWHERE)
            return shaft;
    }
    return TS_NOWHERE;
}

uint32_t ts_view_shaft_of(const ts_view *view, ts_node node)
{
    ts_view_place *place = &view->places[node];
    if (!place->known)
        *place = (ts_view_place){place->address, find_shaft(view, node), true};
    return place->shaft;
}
