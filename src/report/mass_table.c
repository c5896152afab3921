/* What does the drive weigh, part by part, where is its centre, and what do the mounts bear? */
#include "report/check_page.h"
#include "report/report_chapter.h"

#include <math.h>

enum { LABEL = 24, NUMBER = 11, HEAVIEST = 8, INDENT = 2 };

static ts_unit const *unit_of(const ts_page *page, ts_kind kind)
{
    return ts_kind_shown(kind, page->units);
}

/* ---- by kind ----------------------------------------------------------------------------------
 */

static ts_band sum_of(const ts_mass *mass, ts_mass_kind kind, size_t *count, size_t *missing)
{
    ts_band sum = {0.0, 0.0, 0.0};
    *count = *missing = 0;
    for (size_t i = 0; i < mass->part_count; i++) {
        const ts_mass_part *part = &mass->parts[i];
        if (part->kind != kind)
            continue;
        ++*count;
        if (part->missing != NULL) {
            ++*missing;
            continue;
        }
        sum.low += part->m.low;
        sum.value += part->m.value;
        sum.high += part->m.high;
    }
    return sum;
}

static void cell_share(ts_page *page, double share)
{
    ts_buffer text;
    ts_buffer_open(&text, page->out->allocator);
    ts_buffer_fixed(&text, 100.0 * share, 1);
    ts_buffer_add(&text, " %");
    ts_page_right(page, (ts_text){text.bytes != NULL ? text.bytes : "", text.length}, NUMBER);
    page->out->failed = page->out->failed || text.failed;
    ts_buffer_close(&text);
}

/* All bearings of one shaft are weighed as one part. */
static const char *label_of(int kind)
{
    return kind == TS_MASS_BEARINGS ? "bearings, by shaft" : ts_mass_kind_says((ts_mass_kind)kind);
}

static void row(ts_page *page, const char *label, size_t parts, ts_band m, double whole)
{
    ts_buffer text;
    ts_buffer_open(&text, page->out->allocator);
    ts_buffer_fill(page->out, ' ', INDENT);
    ts_buffer_print(&text, "%s", label);
    if (parts > 0)
        ts_buffer_print(&text, " (%zu)", parts);
    ts_page_left(page, (ts_text){text.bytes != NULL ? text.bytes : "", text.length}, LABEL);
    ts_page_value(page, m.value, TS_KIND_MASS, 4, NUMBER);
    ts_page_value(page, m.low, TS_KIND_MASS, 4, NUMBER);
    ts_page_value(page, m.high, TS_KIND_MASS, 4, NUMBER);
    cell_share(page, m.value / whole);
    page->out->failed = page->out->failed || text.failed;
    ts_buffer_close(&text);
    ts_page_line_end(page);
}

static void heads(ts_page *page)
{
    static const char *const names[] = {"mass", "least", "most", "share"};
    ts_page_tone(page, TS_TONE_FAINT);
    ts_buffer_fill(page->out, ' ', INDENT);
    ts_page_left(page, TS_TEXT("parts"), LABEL);
    for (size_t i = 0; i < sizeof names / sizeof names[0]; i++)
        ts_page_right(page, ts_text_of(names[i]), NUMBER);
    ts_page_tone(page, TS_TONE_PLAIN);
    ts_page_line_end(page);
}

static void by_kind(const ts_answer *answer, ts_page *page)
{
    const ts_mass *mass = answer->mass;
    heads(page);
    for (int kind = 0; kind < TS_MASS_KINDS; kind++) {
        size_t        count, missing;
        const ts_band sum = sum_of(mass, (ts_mass_kind)kind, &count, &missing);
        if (kind == TS_MASS_ACCESSORY)
            row(page, "the drive itself", 0, mass->metal, mass->total.value);
        if (count > 0)
            row(page, label_of(kind), count, sum, mass->total.value);
    }
    row(page, "all", 0, mass->total, mass->total.value);
}

/* ---- sentences --------------------------------------------------------------------------------
 */

static void put(ts_buffer *text, const ts_page *page, double si, ts_kind kind, int digits)
{
    ts_page_value_text(page, text, si, kind, digits);
    ts_buffer_print(text, " %s", unit_of(page, kind)->name);
}

static void what_is_missing(const ts_answer *answer, ts_page *page)
{
    const ts_mass *mass = answer->mass;
    ts_buffer      text;
    size_t         told = 0;
    if (mass->missing == 0)
        return;
    ts_buffer_open(&text, page->out->allocator);
    ts_buffer_print(&text, "Not in these sums: ");
    for (size_t i = 0; i < mass->part_count; i++) {
        const ts_mass_part *part = &mass->parts[i];
        if (part->missing == NULL)
            continue;
        if (told < 6)
            ts_buffer_print(&text, "%s%s %s (%s is not known)", told > 0 ? ", " : "",
                            ts_mass_part_says(part->kind), part->name, part->missing);
        told++;
    }
    if (told > 6)
        ts_buffer_print(&text, " and %zu more", told - 6);
    ts_buffer_add(&text, ".");
    ts_buffer_fill(page->out, ' ', INDENT);
    ts_page_wrap_made(page, &text, INDENT, INDENT);
}

/* The heaviest parts of the drive itself, accessories left out. */
static void heaviest(const ts_answer *answer, ts_page *page)
{
    const ts_mass *mass  = answer->mass;
    double         below = INFINITY;
    size_t         last  = SIZE_MAX;
    ts_buffer      text;
    ts_buffer_open(&text, page->out->allocator);
    ts_buffer_print(&text, "Heaviest:");
    for (int told = 0; told < HEAVIEST; told++) {
        size_t best = SIZE_MAX;
        for (size_t i = 0; i < mass->part_count; i++) {
            const ts_mass_part *part = &mass->parts[i];
            if (part->missing != NULL || part->kind == TS_MASS_ACCESSORY)
                continue;
            const double m    = part->m.value;
            const bool   next = m < below || (m == below && last != SIZE_MAX && i > last);
            if (next && (best == SIZE_MAX || m > mass->parts[best].m.value))
                best = i;
        }
        if (best == SIZE_MAX)
            break;
        ts_buffer_print(&text, "%s %s of %s ", told > 0 ? "," : "",
                        ts_mass_part_says(mass->parts[best].kind), mass->parts[best].name);
        put(&text, page, mass->parts[best].m.value, TS_KIND_MASS, 3);
        below = mass->parts[best].m.value;
        last  = best;
    }
    ts_buffer_add(&text, ".");
    ts_buffer_fill(page->out, ' ', INDENT);
    ts_page_wrap_made(page, &text, INDENT, INDENT);
}

static void centre(const ts_answer *answer, ts_page *page)
{
    const ts_mass *mass = answer->mass;
    ts_buffer      text;
    if (isnan(mass->x + mass->y + mass->z))
        return;
    ts_buffer_open(&text, page->out->allocator);
    ts_buffer_add(&text, "Centre of mass of all: x ");
    put(&text, page, mass->x, TS_KIND_LENGTH, 4);
    ts_buffer_add(&text, " to the right seen from behind, y ");
    put(&text, page, mass->y, TS_KIND_LENGTH, 4);
    ts_buffer_add(&text, " upwards, z ");
    put(&text, page, mass->z, TS_KIND_LENGTH, 3);
    ts_buffer_add(&text, " rearward of the datum.");
    ts_buffer_fill(page->out, ' ', INDENT);
    ts_page_wrap_made(page, &text, INDENT, INDENT);
}

static void inertia(const ts_answer *answer, ts_page *page)
{
    for (size_t s = 0; s < answer->drive->spool_count; s++) {
        const ts_spool_inertia *seen = &answer->mass->spools[s];
        ts_buffer               text;
        if (!(seen->cranked.value > 0.0))
            continue;
        ts_buffer_open(&text, page->out->allocator);
        ts_buffer_print(&text, "Seen from the %s spool the drive is ",
                        answer->drive->spools[s].name);
        put(&text, page, seen->J.value, TS_KIND_INERTIA, 3);
        ts_buffer_add(&text, " to spin (");
        ts_page_value_text(page, &text, seen->J.low, TS_KIND_INERTIA, 3);
        ts_buffer_add(&text, " to ");
        ts_page_value_text(page, &text, seen->J.high, TS_KIND_INERTIA, 3);
        ts_buffer_add(&text, ")");
        if (seen->cranked.value > seen->J.value) {
            ts_buffer_add(&text, "; ");
            put(&text, page, seen->cranked.value, TS_KIND_INERTIA, 3);
            ts_buffer_add(&text, " while its starter drives it");
        }
        if (!isnan(seen->own)) {
            ts_buffer_add(&text, "; the spool itself ");
            put(&text, page, seen->own, TS_KIND_INERTIA, 3);
        }
        ts_buffer_add(&text, ".");
        ts_buffer_fill(page->out, ' ', INDENT);
        ts_page_wrap_made(page, &text, INDENT, INDENT);
    }
}

/* ---- mounts -----------------------------------------------------------------------------------
 */

/* With the torque of the radial shaft. */
static void put_running(ts_buffer *text, const ts_answer *answer, const ts_page *page,
                        const ts_mount_load *mount)
{
    ts_buffer_add(text, ", running ");
    if (isnan(mount->run)) {
        ts_buffer_add(text, "not known");
        return;
    }
    put(text, page, mount->run, TS_KIND_FORCE, 3);
    if (mount->run_at != TS_EVERY_CONDITION)
        ts_buffer_print(text, " (%s)", ts_answer_condition(answer, mount->run_at));
}

static void mounts_of(const ts_answer *answer, ts_page *page, uint32_t d)
{
    const ts_box_mass *box = &answer->mass->boxes[d];
    ts_buffer          text;
    ts_buffer_open(&text, page->out->allocator);
    ts_buffer_print(&text, "Mounts of the %s box%s",
                    answer->drive->spools[answer->drive->drive[d].spool].name,
                    box->mounts_assumed ? " (assumed)" : "");
    if (box->missing != NULL) {
        ts_buffer_print(&text, ": no loads, for %s.", box->missing);
    } else {
        ts_buffer_add(&text, " carry ");
        put(&text, page, box->installed.value, TS_KIND_MASS, 4);
        ts_buffer_add(&text, ", its centre ");
        put(&text, page, fabs(box->overhang), TS_KIND_LENGTH, 3);
        ts_buffer_print(&text,
                        " %s the middle of its depth:", box->overhang < 0.0 ? "before" : "behind");
        for (int i = 0; i < 3; i++) {
            const ts_mount_load *mount = &box->mounts[i];
            ts_buffer_print(&text, "%s mount %d ", i > 0 ? ";" : "", i + 1);
            put(&text, page, mount->rest, TS_KIND_FORCE, 3);
            ts_buffer_add(&text, " at rest, at most ");
            put(&text, page, mount->most, TS_KIND_FORCE, 3);
            ts_buffer_print(&text, " (%s)", ts_shake_says(mount->shake));
            put_running(&text, answer, page, mount);
        }
        ts_buffer_add(&text,
                      ". At rest and at most: weight alone, under the load factors; running: "
                      "weight and the torque of the radial shaft.");
    }
    ts_buffer_fill(page->out, ' ', INDENT);
    ts_page_wrap_made(page, &text, INDENT, INDENT);
}

static const char *caption(ts_units units)
{
    return units == TS_UNITS_US ? "Mass, lb (without seals, studs, jets, pipes and oil)"
                                : "Mass, kg (without seals, studs, jets, pipes and oil)";
}

static void sentences(const ts_answer *answer, ts_page *page)
{
    what_is_missing(answer, page);
    heaviest(answer, page);
    centre(answer, page);
    inertia(answer, page);
    for (uint32_t d = 0; d < answer->drive->drive_count; d++)
        mounts_of(answer, page, d);
}

void ts_mass_table(const ts_answer *answer, ts_page *page)
{
    if (answer->mass == NULL || !(answer->mass->total.value > 0.0))
        return;
    ts_page_heading(page, caption(page->units));
    by_kind(answer, page);
    sentences(answer, page);
}

/* ---- the same in a report -------------------------------------------------------------------- */

static void row_cells(ts_chapter *chapter, const char *label, size_t parts, ts_band m)
{
    ts_chapter_word(chapter, label);
    if (parts > 0)
        ts_buffer_print(&chapter->cell, "%zu", parts);
    ts_chapter_cell(chapter);
    ts_chapter_value(chapter, m.value, TS_KIND_MASS, 4);
    ts_chapter_value(chapter, m.low, TS_KIND_MASS, 4);
    ts_chapter_value(chapter, m.high, TS_KIND_MASS, 4);
    ts_buffer_fixed(&chapter->cell, 100.0 * m.value / chapter->answer->mass->total.value, 1);
    ts_buffer_add(&chapter->cell, " %");
    ts_chapter_cell(chapter);
}

void ts_mass_cells(ts_chapter *chapter)
{
    static const ts_column columns[] = {{"parts", false}, {"number", true}, {"mass", true},
                                        {"least", true},  {"most", true},   {"share", true}};
    const ts_mass         *mass      = chapter->answer->mass;
    ts_manuscript_table(chapter->manuscript, caption(chapter->page.units), columns, 6);
    for (int kind = 0; kind < TS_MASS_KINDS; kind++) {
        size_t        count, missing;
        const ts_band sum = sum_of(mass, (ts_mass_kind)kind, &count, &missing);
        if (kind == TS_MASS_ACCESSORY)
            row_cells(chapter, "the drive itself", 0, mass->metal);
        if (count > 0)
            row_cells(chapter, label_of(kind), count, sum);
    }
    row_cells(chapter, "all", 0, mass->total);
    ts_chapter_sentences(chapter, sentences);
}
