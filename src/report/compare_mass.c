/* What became heavier or lighter, and which parts made it so? */
#include "report/comparison_parts.h"

#include <math.h>
#include <string.h>

enum { TOLD_MOST = 6 };

/* Parts are the same when kind, address and name of their mass are. */
static const ts_mass_part *same_part(ts_changes *list, const ts_answer *answer, const char *address,
                                     const ts_mass_part *wanted)
{
    for (size_t i = 0; i < answer->mass->part_count; i++) {
        const ts_mass_part *part = &answer->mass->parts[i];
        if (part->kind != wanted->kind || strcmp(part->m_name, wanted->m_name) != 0)
            continue;
        const char *own = ts_change_address(list, answer, part->node);
        if (own != NULL && address != NULL && strcmp(own, address) == 0)
            return part;
    }
    return NULL;
}

typedef struct gain {
    const ts_mass_part *part;
    double              by; /* kg */
} gain;

static double mass_of(const ts_mass_part *part)
{
    return part != NULL && part->missing == NULL ? part->m.value : 0.0;
}

/* The largest first, those of equal size in the order of the file. */
static void keep(gain *best, gain fresh)
{
    for (int i = 0; i < TOLD_MOST; i++) {
        if (!(fabs(fresh.by) > fabs(best[i].by)))
            continue;
        const gain out = best[i];
        best[i]        = fresh;
        fresh          = out;
    }
}

static void gather(ts_changes *list, const ts_answer *before, const ts_answer *after, gain *best)
{
    for (size_t i = 0; i < after->mass->part_count; i++) {
        const ts_mass_part *now     = &after->mass->parts[i];
        const char         *address = ts_change_address(list, after, now->node);
        const ts_mass_part *then    = same_part(list, before, address, now);
        keep(best, (gain){now, mass_of(now) - mass_of(then)});
    }
    for (size_t i = 0; i < before->mass->part_count; i++) {
        const ts_mass_part *then    = &before->mass->parts[i];
        const char         *address = ts_change_address(list, before, then->node);
        if (same_part(list, after, address, then) == NULL)
            keep(best, (gain){then, -mass_of(then)});
    }
}

static void put_signed(ts_changes *list, ts_buffer *text, double by)
{
    const ts_unit *unit = ts_kind_shown(TS_KIND_MASS, list->units);
    ts_buffer_add(text, by < 0.0 ? "-" : "+");
    ts_buffer_significant(text, fabs(ts_from_si(by, unit)), 3);
    ts_buffer_print(text, " %s", unit->name);
}

/* "14.71 kg (+0.420 kg: gear of idler 3 +0.300 kg, casing of hp +0.120 kg)" */
static const char *after_text(ts_changes *list, double from, double to, const gain *best)
{
    ts_buffer text;
    ts_buffer_open(&text, list->allocator);
    const char *now = ts_change_quantity(list, to, TS_KIND_MASS);
    ts_buffer_print(&text, "%s (", now != NULL ? now : "");
    put_signed(list, &text, to - from);
    for (int i = 0; i < TOLD_MOST && best[i].part != NULL && fabs(best[i].by) > 1e-9 * to; i++) {
        ts_buffer_print(&text, "%s %s of %s ", i == 0 ? ":" : ",",
                        ts_mass_part_says(best[i].part->kind), best[i].part->name);
        put_signed(list, &text, best[i].by);
    }
    ts_buffer_add(&text, ")");
    const char *kept = ts_change_keep(list, &text);
    ts_buffer_close(&text);
    return kept;
}

void ts_compare_mass(ts_changes *list, const ts_answer *before, const ts_answer *after)
{
    gain best[TOLD_MOST] = {{NULL, 0.0}};
    if (before->mass == NULL || after->mass == NULL)
        return;
    const double from = before->mass->total.value, to = after->mass->total.value;
    gather(list, before, after, best);
    if (!(fabs(best[0].by) > 1e-9 * fmax(from, to)))
        return;
    ts_change_add(list, (ts_change){.kind     = TS_CHANGE_MASS,
                                    .subject  = "the drive with its accessories",
                                    .before   = ts_change_quantity(list, from, TS_KIND_MASS),
                                    .after    = after_text(list, from, to, best),
                                    .relative = ts_change_relative(from, to)});
}
