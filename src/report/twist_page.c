/* At which frequencies does the drive swing, where is it soft, and what may excite it? */
#include "report/twist_report.h"

#include "report/check_page.h"
#include "report/swing_page.h"

#include <math.h>

#define NEAR 0.10 /* an excitation nearer than this is marked; common practice, no source */
#define FAR  0.25 /* one further off is not worth a word                                 */

enum { MODES_MOST = 10, MODES_ON_PAPER = 8, INDENT = 2, NUMBER = 2, HERTZ = 9 };

static const double two_pi = 6.28318530717958647693;

static size_t largest(const double *shares, size_t count)
{
    size_t best = 0;
    for (size_t i = 1; i < count; i++)
        best = shares[i] > shares[best] * (1.0 + 1e-9) ? i : best;
    return best;
}

static void add_percent(ts_buffer *text, double share)
{
    ts_buffer_fixed(text, 100.0 * share, 0);
    ts_buffer_add(text, " %");
}

static void add_meeting(ts_buffer *text, const ts_answer *answer, const ts_drive_twist *twist,
                        size_t mode)
{
    const ts_train        *train = answer->train;
    const ts_twist_meeting met   = ts_twist_meeting_of(twist, answer->power, mode);
    if (met.condition < 0 || fabs(met.off) > FAR) {
        ts_buffer_add(text, "nothing within 25 %");
        return;
    }
    if (fabs(met.off) < NEAR)
        ts_buffer_add(text, "! ");
    if (met.shaft != TS_NOWHERE)
        ts_buffer_print(text, "%d x %s", met.order, train->shafts[met.shaft].name);
    else
        ts_buffer_print(text, "teeth %s > %s",
                        train->shafts[train->meshes[met.mesh].driver_shaft].name,
                        train->shafts[train->meshes[met.mesh].driven_shaft].name);
    ts_buffer_print(text, " at %s, ", ts_answer_condition(answer, met.condition));
    ts_buffer_fixed(text, 100.0 * met.off, 1);
    ts_buffer_add(text, " %");
}

/* What moves most is told as seen from the spool, or a fast light shaft would always be it. */
static size_t mover_of(const ts_drive_twist *twist, size_t mode)
{
    const double *shape = &twist->modes.shape[mode * twist->model.body_count];
    size_t        best  = 0;
    double        most  = 0.0;
    for (size_t i = 0; i < twist->model.body_count; i++) {
        const double seen = fabs(shape[i] / twist->parts[i].ratio);
        if (seen > most * (1.0 + 1e-9)) {
            most = seen;
            best = i;
        }
    }
    return best;
}

/* "10   2847.4 ": not left to the wrapping, which keeps no columns. */
static void put_number(ts_page *page, size_t number, double omega)
{
    ts_buffer text;
    ts_buffer_open(&text, page->out->allocator);
    ts_buffer_print(&text, "%zu", number);
    ts_page_right(page, (ts_text){text.bytes != NULL ? text.bytes : "", text.length}, NUMBER);
    ts_buffer_clear(&text);
    ts_page_short(&text, omega / two_pi, 5);
    ts_page_right(page, (ts_text){text.bytes != NULL ? text.bytes : "", text.length}, HERTZ);
    ts_buffer_add(page->out, " ");
    page->out->failed = page->out->failed || text.failed;
    ts_buffer_close(&text);
}

static void mode_line(const ts_answer *answer, ts_page *page, const ts_drive_twist *twist,
                      size_t mode)
{
    const size_t springs = twist->model.spring_count;
    const size_t soft    = largest(&twist->modes.strain[mode * springs], springs);
    ts_buffer    text;
    ts_buffer_open(&text, page->out->allocator);
    ts_buffer_fill(page->out, ' ', INDENT);
    put_number(page, mode - twist->modes.rigid + 1, twist->modes.omega[mode]);
    ts_buffer_add(&text, "Hz: strain ");
    add_percent(&text, twist->modes.strain[mode * springs + soft]);
    ts_buffer_add(&text, " in ");
    ts_twist_add_joint(&text, twist, soft);
    ts_buffer_print(&text, "; moves most: %s; ", twist->parts[mover_of(twist, mode)].name);
    add_meeting(&text, answer, twist, mode);
    ts_page_wrap_made(page, &text, 3 * INDENT, INDENT + NUMBER + HERTZ + 1);
}

static void say_tree(const ts_answer *answer, const ts_drive_twist *twist, ts_buffer *text)
{
    ts_buffer_print(text, "Torsion of the %s drive, %s",
                    answer->drive->spools[answer->drive->drive[twist->drive].spool].name,
                    twist->cranked ? "its starter engaged" : "running");
}

static void heading(const ts_answer *answer, ts_page *page, const ts_drive_twist *twist)
{
    ts_buffer text;
    ts_buffer_open(&text, page->out->allocator);
    say_tree(answer, twist, &text);
    if (!text.failed)
        ts_page_heading(page, text.bytes);
    page->out->failed = page->out->failed || text.failed;
    ts_buffer_close(&text);
}

/* What the numbers rest on, and how well they satisfy the equation. */
static void say_grounds(const ts_drive_twist *twist, ts_buffer *text)
{
    size_t assumed = 0;
    for (size_t i = 0; i < twist->model.spring_count; i++)
        assumed += twist->joints[i].assumed;
    ts_buffer_print(text,
                    "%zu bodies, %zu springs, of which %zu rest on an assumed shape or mean "
                    "stiffness; rotors of accessories count as rigid",
                    twist->model.body_count, twist->model.spring_count, assumed);
    if (twist->left_out > 0)
        ts_buffer_print(text, "; %zu without an inertia in the file left out", twist->left_out);
    ts_buffer_add(text, ". Free to turn as a whole at 0 Hz. Residual ");
    ts_buffer_significant(text, twist->modes.residual, 2);
    ts_buffer_add(text, ".");
}

static void grounds(ts_page *page, const ts_drive_twist *twist)
{
    ts_buffer text;
    ts_buffer_open(&text, page->out->allocator);
    say_grounds(twist, &text);
    ts_buffer_fill(page->out, ' ', INDENT);
    ts_page_wrap_made(page, &text, INDENT, INDENT);
}

static bool is_lacking(const ts_drive_twist *twist)
{
    return twist->missing != NULL || twist->fault != TS_TWIST_FINE;
}

static void say_lack(const ts_drive_twist *twist, ts_buffer *text)
{
    if (twist->missing != NULL)
        ts_buffer_print(text, "not computed: %s of %s is not known", twist->missing, twist->lacks);
    else
        ts_buffer_print(text, "not computed: %s", ts_twist_fault_says(twist->fault));
}

static void tree(const ts_answer *answer, ts_page *page, const ts_drive_twist *twist)
{
    heading(answer, page, twist);
    if (is_lacking(twist)) {
        ts_buffer text;
        ts_buffer_open(&text, page->out->allocator);
        say_lack(twist, &text);
        ts_buffer_fill(page->out, ' ', INDENT);
        ts_page_wrap_made(page, &text, INDENT, INDENT);
        return;
    }
    for (size_t mode = twist->modes.rigid;
         mode < twist->modes.count && mode < twist->modes.rigid + MODES_MOST; mode++)
        mode_line(answer, page, twist, mode);
    if (twist->modes.count > twist->modes.rigid + MODES_MOST)
        ts_buffer_print(page->out, "  and %zu faster ones (--json)\n",
                        twist->modes.count - twist->modes.rigid - MODES_MOST);
    grounds(page, twist);
}

void ts_twist_page(const ts_twist_answer *twist, const ts_answer *answer, ts_page *page)
{
    ts_answer_title(answer, page);
    for (size_t i = 0; i < twist->count; i++) {
        tree(answer, page, &twist->items[i]);
        ts_swing_page(&twist->forced[i], answer, page);
    }
}

/* ---- the same in a report -------------------------------------------------------------------- */

static void mode_cells(ts_chapter *chapter, const ts_drive_twist *twist, size_t mode)
{
    const size_t springs = twist->model.spring_count;
    const size_t soft    = largest(&twist->modes.strain[mode * springs], springs);
    ts_buffer_print(&chapter->cell, "%zu", mode - twist->modes.rigid + 1);
    ts_chapter_cell(chapter);
    ts_page_short(&chapter->cell, twist->modes.omega[mode] / two_pi, 5);
    ts_chapter_cell(chapter);
    add_percent(&chapter->cell, twist->modes.strain[mode * springs + soft]);
    ts_chapter_cell(chapter);
    ts_twist_add_joint(&chapter->cell, twist, soft);
    ts_chapter_cell(chapter);
    ts_chapter_word(chapter, twist->parts[mover_of(twist, mode)].name);
    add_meeting(&chapter->cell, chapter->answer, twist, mode);
    ts_chapter_cell(chapter);
}

/* What was put into chapter->cell, as a paragraph or a boxed one. */
static void paragraph(ts_chapter *chapter, bool boxed)
{
    if (!chapter->cell.failed && boxed)
        ts_manuscript_box(chapter->manuscript, TS_BLOCK_PLAIN, chapter->cell.bytes);
    else if (!chapter->cell.failed)
        ts_manuscript_text(chapter->manuscript, TS_BLOCK_FAINT, chapter->cell.bytes);
    ts_buffer_clear(&chapter->cell);
}

static void tree_cells(ts_chapter *chapter, const ts_drive_twist *twist)
{
    static const ts_column columns[] = {{"mode", true},        {"Hz", true},
                                        {"strain", true},      {"in", false},
                                        {"moves most", false}, {"nearest excitation", false}};
    say_tree(chapter->answer, twist, &chapter->cell);
    if (is_lacking(twist)) {
        ts_buffer_add(&chapter->cell, ": ");
        say_lack(twist, &chapter->cell);
        paragraph(chapter, true);
        return;
    }
    if (!chapter->cell.failed)
        ts_manuscript_table(chapter->manuscript, chapter->cell.bytes, columns, 6);
    ts_buffer_clear(&chapter->cell);
    for (size_t mode = twist->modes.rigid;
         mode < twist->modes.count && mode < twist->modes.rigid + MODES_ON_PAPER; mode++)
        mode_cells(chapter, twist, mode);
    say_grounds(twist, &chapter->cell);
    paragraph(chapter, false);
}

void ts_chapter_torsion(ts_chapter *chapter, const ts_twist_answer *twist)
{
    ts_manuscript_heading(chapter->manuscript, 1, "Torsion");
    ts_manuscript_text(chapter->manuscript, TS_BLOCK_FAINT,
                       "Natural frequencies without damping, slowest first; !: an excitation is "
                       "nearer than 10 %; strain: the share of its energy in the softest place.");
    for (size_t i = 0; i < twist->count; i++) {
        tree_cells(chapter, &twist->items[i]);
        ts_swing_chapter(chapter, &twist->forced[i]);
    }
    ts_manuscript_figure(chapter->manuscript, "modes", NULL, "How the parts swing, mode by mode.");
}
