/* model/edit_move.c: how does one item of a list take another place in it? */
#include "model/edit_plan.h"

static ts_node item_at(const ts_source *source, ts_node list, uint32_t position)
{
    ts_node at = source->nodes[list].first;
    while (at != 0 && source->nodes[at].position != position)
        at = source->nodes[at].next;
    return at;
}

static void add_item(ts_edit_plan *plan, ts_node item)
{
    const ts_node_place *place = &plan->source->nodes[item];
    ts_buffer_bytes(&plan->text, plan->source->bytes.at + place->start, place->end - place->start);
}

/* The items from `first` to `last`, with that of `from` moved to `to`; what stands between two
 * places of the list, comments too, stays between them. */
static void write_order(ts_edit_plan *plan, ts_node list, uint32_t from, uint32_t to)
{
    const ts_source *source = plan->source;
    const uint32_t   low = from < to ? from : to, high = from < to ? to : from;
    for (uint32_t place = low; place <= high; place++) {
        const uint32_t item = place == to ? from : from < to ? place + 1 : place - 1;
        const ts_node  here = item_at(source, list, place);
        add_item(plan, item_at(source, list, item));
        if (place == high)
            break;
        const size_t end  = source->nodes[here].end;
        const size_t next = source->nodes[item_at(source, list, place + 1)].start;
        ts_buffer_bytes(&plan->text, source->bytes.at + end, next - end);
    }
}

bool ts_plan_move(ts_edit_plan *plan, ts_node item, uint32_t to)
{
    const ts_source *source = plan->source;
    const ts_node    list   = source->nodes[item].parent;
    const uint32_t   from   = source->nodes[item].position;
    plan->at                = item;
    if (from == 0 || list == 0)
        return ts_plan_refuse(plan, "no-list-item", "this is no item of a list",
                              "the address of an item, such as drive/hp/box/clockwise/2");
    const ts_node other = item_at(source, list, to);
    if (other == 0)
        return ts_plan_refuse(plan, "no-such-place", "the list has no such place",
                              "the number of an item of the same list");
    const ts_node low = from < to ? item : other, high = from < to ? other : item;
    plan->from = source->nodes[low].start;
    plan->to   = source->nodes[high].end;
    if (from == to)
        add_item(plan, item);
    else
        write_order(plan, list, from, to);
    return true;
}
