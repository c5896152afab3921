/* By how much does the torque swing at every place of a tree, when, and because of what? */
#include "report/swing_page.h"

#include "report/json_quantity.h"

#include <math.h>

enum { INDENT = 2, DIGITS = 9 };

void ts_twist_add_joint(ts_buffer *text, const ts_drive_twist *twist, size_t joint)
{
    const ts_twist_joint *one = &twist->joints[joint];
    if (one->link == TS_LINK_MESH)
        ts_buffer_print(text, "mesh %s > %s", twist->parts[one->from].name,
                        twist->parts[one->to].name);
    else if (one->link == TS_LINK_PAD)
        ts_buffer_print(text, "shaft to %s", twist->parts[one->to].name);
    else
        ts_buffer_print(text, "tube to %s", twist->parts[one->to].name);
}

/* The condition in which the spring swings most; NULL: it swings in none. */
static const ts_torque_swing *worst_of(const ts_drive_forced *forced, size_t spring,
                                       int32_t *condition)
{
    const ts_torque_swing *worst = NULL;

    for (uint32_t c = 0; forced->here != NULL && c < forced->condition_count; c++) {
        const ts_torque_swing *here = ts_forced_spring(forced, c, spring);
        if (!forced->here[c] || !isfinite(here->swing))
            continue;
        if (worst == NULL || here->swing > worst->swing) {
            worst      = here;
            *condition = (int32_t)c;
        }
    }
    return worst;
}

static void add_source(ts_buffer *text, const ts_answer *answer, const ts_shake_source *source)
{
    const ts_train *train = answer->train;

    if (source->kind == TS_SHAKER_ACCESSORY && source->accessory >= 0)
        ts_buffer_print(text, "the torque of the %s, %d a turn",
                        answer->drive->accessories[source->accessory].name, source->order);
    else if (source->mesh == TS_NOWHERE)
        ts_buffer_add(text, "nothing");
    else if (source->kind == TS_SHAKER_TURN)
        ts_buffer_print(text, "the pitch of the gear on %s, once a turn",
                        train
                            ->shafts[source->side == 0 ? train->meshes[source->mesh].driver_shaft
                                                       : train->meshes[source->mesh].driven_shaft]
                            .name);
    else
        ts_buffer_print(text, "the teeth %s > %s%s",
                        train->shafts[train->meshes[source->mesh].driver_shaft].name,
                        train->shafts[train->meshes[source->mesh].driven_shaft].name,
                        source->order == 2 ? ", twice a tooth" : "");
    if (source->frequency > 0.0) {
        ts_buffer_add(text, " at ");
        ts_page_short(text, source->frequency, 4);
        ts_buffer_add(text, " Hz");
    }
}

static bool parts(const ts_drive_forced *forced, size_t spring, const ts_torque_swing *swing)
{
    return forced->twist->joints[spring].link == TS_LINK_MESH && swing->swing > swing->mean;
}

static void add_torque(const ts_page *page, ts_buffer *text, double T)
{
    ts_page_value_text(page, text, T, TS_KIND_TORQUE, 3);
    ts_buffer_print(text, " %s", ts_kind_shown(TS_KIND_TORQUE, page->units)->name);
}

static void swing_line(const ts_answer *answer, ts_page *page, const ts_drive_forced *forced,
                       size_t spring)
{
    int32_t                c     = -1;
    const ts_torque_swing *worst = worst_of(forced, spring, &c);
    ts_buffer              text;

    if (worst == NULL)
        return;
    ts_buffer_open(&text, page->out->allocator);
    ts_twist_add_joint(&text, forced->twist, spring);
    ts_buffer_print(&text, ": %s", parts(forced, spring, worst) ? "! " : "");
    add_torque(page, &text, worst->swing);
    ts_buffer_add(&text, " about ");
    add_torque(page, &text, worst->mean);
    ts_buffer_print(&text, " at %s", ts_answer_condition(answer, c));
    if (worst->swing > 0.0) {
        ts_buffer_add(&text, "; ");
        ts_buffer_fixed(&text, 100.0 * worst->most / worst->swing, 0);
        ts_buffer_add(&text, " % of it from ");
        add_source(&text, answer, &worst->source);
    }
    ts_buffer_fill(page->out, ' ', INDENT);
    ts_page_wrap_made(page, &text, 3 * INDENT, INDENT);
}

static void say_grounds(const ts_drive_forced *forced, ts_buffer *text)
{
    ts_buffer_add(
        text,
        "Swing: the root of the sum of squares of all amplitudes, at the outer part. Damping ");
    ts_page_short(text, 100.0 * forced->mesh_damping, 3);
    ts_buffer_add(text, " % of critical at a mesh, ");
    ts_page_short(text, 100.0 * forced->shaft_damping, 3);
    ts_buffer_add(text, " % in a shaft (`mesh damping`, `shaft damping` of the record `seizure`). "
                        "Teeth err by half of their pitch tolerances");
    if (forced->ripples_assumed > 0)
        ts_buffer_print(text,
                        "; of %zu accessor%s the file tells no `ripple`, and 5 %% of the torque "
                        "once a turn are taken (common practice, no source)",
                        forced->ripples_assumed, forced->ripples_assumed == 1 ? "y" : "ies");
    ts_buffer_add(text,
                  ". ! before a swing: flanks part, and it is told too high; before what comes "
                  "nearest to a mode: nearer than the rules want.");
}

void ts_swing_page(const ts_drive_forced *forced, const ts_answer *answer, ts_page *page)
{
    ts_buffer text;
    bool      any = false;

    for (uint32_t c = 0; forced->here != NULL && c < forced->condition_count; c++)
        any = any || forced->here[c];
    if (forced->fault != TS_TWIST_FINE || !any)
        return;
    ts_buffer_fill(page->out, ' ', INDENT);
    ts_buffer_add(page->out, "By how much the torque swings, where each swings most\n");
    for (size_t i = 0; i < forced->twist->model.spring_count; i++)
        swing_line(answer, page, forced, i);
    ts_buffer_open(&text, page->out->allocator);
    say_grounds(forced, &text);
    ts_buffer_fill(page->out, ' ', INDENT);
    ts_page_wrap_made(page, &text, INDENT, INDENT);
}

/* ---- in a report ------------------------------------------------------------------------------
 */

static void torque_cell(ts_chapter *chapter, double T)
{
    ts_chapter_value(chapter, T, TS_KIND_TORQUE, 3);
}

void ts_swing_chapter(ts_chapter *chapter, const ts_drive_forced *forced)
{
    static const ts_column columns[] = {{"where", false},
                                        {"condition", false},
                                        {"carries", true},
                                        {"swings by", true},
                                        {"most of it from", false}};

    if (forced->fault != TS_TWIST_FINE || forced->here == NULL)
        return;
    ts_manuscript_table(chapter->manuscript, "By how much the torque swings, where it swings most",
                        columns, 5);
    for (size_t i = 0; i < forced->twist->model.spring_count; i++) {
        int32_t                c     = -1;
        const ts_torque_swing *worst = worst_of(forced, i, &c);
        if (worst == NULL)
            continue;
        ts_twist_add_joint(&chapter->cell, forced->twist, i);
        ts_chapter_cell(chapter);
        ts_chapter_word(chapter, ts_answer_condition(chapter->answer, c));
        torque_cell(chapter, worst->mean);
        torque_cell(chapter, worst->swing);
        add_source(&chapter->cell, chapter->answer, &worst->source);
        ts_chapter_cell(chapter);
    }
    say_grounds(forced, &chapter->cell);
    if (!chapter->cell.failed)
        ts_manuscript_text(chapter->manuscript, TS_BLOCK_FAINT, chapter->cell.bytes);
    ts_buffer_clear(&chapter->cell);
}

/* ---- as JSON ----------------------------------------------------------------------------------
 */

static void rounded(ts_json *json, const char *key, double value)
{
    ts_json_key(json, key);
    if (!isfinite(value)) {
        ts_json_null(json);
        return;
    }
    const double ten =
        fabs(value) < 1e-12 ? 0.0 : pow(10.0, DIGITS - 1 - floor(log10(fabs(value))));
    ts_json_number(json, ten > 0.0 ? round(value * ten) / ten : 0.0);
}

static void source(ts_json *json, const ts_answer *answer, const ts_shake_source *from)
{
    static const char *const kinds[] = {[TS_SHAKER_TEETH]     = "teeth",
                                        [TS_SHAKER_TURN]      = "turn",
                                        [TS_SHAKER_ACCESSORY] = "accessory"};

    ts_json_key(json, "source");
    ts_json_object(json);
    ts_json_string_at(json, "kind", kinds[from->kind]);
    if (from->kind == TS_SHAKER_ACCESSORY)
        ts_json_node(json, answer, "at", answer->drive->accessories[from->accessory].node);
    else
        ts_json_node(json, answer, "at", answer->train->meshes[from->mesh].node);
    ts_json_key(json, "order");
    ts_json_integer(json, from->order);
    rounded(json, "frequency", from->frequency);
    ts_json_end(json, '}');
}

void ts_swing_json(ts_json *json, const ts_answer *answer, const ts_drive_forced *forced,
                   size_t spring)
{
    ts_json_key(json, "swings");
    ts_json_array(json);
    for (uint32_t c = 0;
         forced->here != NULL && forced->fault == TS_TWIST_FINE && c < forced->condition_count;
         c++) {
        const ts_torque_swing *swing = ts_forced_spring(forced, c, spring);
        if (!forced->here[c])
            continue;
        ts_json_object(json);
        ts_json_string_at(json, "condition", ts_answer_condition(answer, (int32_t)c));
        rounded(json, "mean", swing->mean);
        rounded(json, "swing", swing->swing);
        if (swing->most > 0.0) {
            rounded(json, "most", swing->most);
            source(json, answer, &swing->source);
        }
        ts_json_end(json, '}');
    }
    ts_json_end(json, ']');
}
