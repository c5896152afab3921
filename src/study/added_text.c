/* Where do further accessories stand, and how far are they indented? */
#include "study/added_text.h"

#include "model/tree_read.h"

#include <string.h>

static ts_node accessories_of(const ts_source *source)
{
    const ts_node list =
        source->node_count > 0 ? ts_source_child(source, 1, TS_TEXT("accessories")) : 0;
    const ts_node_place *place = &source->nodes[list];
    return list != 0 && place->form == TS_NODE_MAPPING && !place->flow && place->first != 0 ? list
                                                                                            : 0;
}

static size_t line_start(ts_text bytes, size_t at)
{
    while (at > 0 && bytes.at[at - 1] != '\n')
        at--;
    return at;
}

/* Behind the end of the line on which `at` lies. */
static size_t line_end(ts_text bytes, size_t at)
{
    while (at < bytes.length && bytes.at[at] != '\n')
        at++;
    return at < bytes.length ? at + 1 : at;
}

/* One line, `less` blanks taken away in front and `more` put there. */
static void add_line(ts_buffer *out, ts_text line, size_t less, size_t more)
{
    size_t blanks = 0;
    while (blanks < less && blanks < line.length && line.at[blanks] == ' ')
        blanks++;
    const ts_text rest = {line.at + blanks, line.length - blanks};
    if (rest.length > 0 && rest.at[0] != '\n')
        ts_buffer_fill(out, ' ', more);
    ts_buffer_text(out, rest);
    if (rest.length == 0 || rest.at[rest.length - 1] != '\n')
        ts_buffer_add(out, "\n");
}

/* The accessories of `from` at the indent of those of `to`. */
static void add_block(ts_buffer *out, const ts_source *to, const ts_source *from)
{
    const ts_node_place *list  = &from->nodes[accessories_of(from)];
    const ts_node_place *first = &from->nodes[list->first];
    const ts_node_place *model = &to->nodes[to->nodes[accessories_of(to)].first];
    const size_t         end   = line_end(from->bytes, list->end > 0 ? list->end - 1 : 0);
    size_t               at    = line_start(from->bytes, first->key_start);
    while (at < end) {
        const size_t next = line_end(from->bytes, at);
        add_line(out, (ts_text){from->bytes.at + at, next - at}, first->key_column - 1,
                 model->key_column - 1);
        at = next;
    }
}

static ts_status refuse(ts_study *study, const char *says)
{
    ts_study_say(study, "nothing-to-add", says,
                 "accessories: and below it, indented, each accessory as in a drive file", NULL);
    return TS_NOT_UNDERSTOOD;
}

ts_status ts_added_text(ts_study *study, ts_text added, const char *added_name, ts_arena *arena,
                        ts_text *bytes)
{
    ts_diagnostics *list = ts_diagnostics_open(arena, added_name, added);
    ts_source       from;
    ts_buffer       out;
    if (list == NULL)
        return TS_NO_MEMORY;
    const ts_status status = ts_read_tree(added, added_name, arena, list, &from);
    if (status == TS_NO_MEMORY)
        return status;
    if (status != TS_OK || ts_diagnostics_count(list) > 0 || accessories_of(&from) == 0)
        return refuse(study, "the file to add has no readable accessories in block form");
    const ts_node own = accessories_of(&study->source);
    if (own == 0)
        return refuse(study, "the drive file has no accessories in block form to add to");
    const size_t end = line_end(study->bytes, study->source.nodes[own].end - 1);
    ts_buffer_open(&out, study->allocator);
    ts_buffer_text(&out, (ts_text){study->bytes.at, end});
    if (end > 0 && study->bytes.at[end - 1] != '\n')
        ts_buffer_add(&out, "\n"); /* the file ends without one */
    add_block(&out, &study->source, &from);
    ts_buffer_text(&out, (ts_text){study->bytes.at + end, study->bytes.length - end});
    *bytes            = (ts_text){ts_arena_copy(arena, out.bytes, out.length), out.length};
    const bool failed = out.failed || bytes->at == NULL;
    ts_buffer_close(&out);
    return failed ? TS_NO_MEMORY : TS_OK;
}
