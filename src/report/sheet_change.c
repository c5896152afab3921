/* report/sheet_change.c: what stands on the sheet of a pad that did not stand so on the issued one?
 */
#include "report/sheet_report.h"

#include <math.h>
#include <string.h>

#define NEAR 1e-9 /* of the greater amount; what is less is rounding */

static bool same_text(const char *a, const char *b)
{
    return (a == NULL && b == NULL) || (a != NULL && b != NULL && strcmp(a, b) == 0);
}

bool ts_sheet_value_changed(const ts_sheet_row *now, const ts_sheet_row *before)
{
    if (isnan(now->si) || isnan(before->si))
        return isnan(now->si) != isnan(before->si);
    return fabs(now->si - before->si) > NEAR * fmax(fabs(now->si), fabs(before->si));
}

const ts_sheet_row *ts_sheet_issued_row(const ts_sheet *sheet, ts_sheet_part part, const char *what)
{
    const ts_sheet *before = sheet->before;
    for (size_t i = 0; before != NULL && i < before->row_count[part]; i++)
        if (same_text(before->rows[part][i].what, what))
            return &before->rows[part][i];
    return NULL;
}

const char *ts_sheet_issued_word(const ts_sheet *sheet, const char *label)
{
    const ts_sheet *before = sheet->before;
    for (size_t i = 0; before != NULL && i < before->word_count; i++)
        if (same_text(before->words[i].label, label))
            return before->words[i].says;
    return NULL;
}

size_t ts_sheet_issued_condition(const ts_sheet *sheet, const char *name)
{
    const ts_sheet *before = sheet->before;
    const size_t    count  = before != NULL ? before->answer->drive->condition_count : 0;
    for (size_t c = 0; c < count; c++)
        if (same_text(before->answer->drive->conditions[c].name, name))
            return c;
    return SIZE_MAX;
}

bool ts_sheet_issued_line(const ts_sheet_line *list, size_t count, const ts_sheet_line *one)
{
    for (size_t i = 0; i < count; i++)
        if (same_text(list[i].label, one->label) && same_text(list[i].says, one->says))
            return true;
    return false;
}

/* ---- how much ---------------------------------------------------------------------------------
 */

static size_t changed_rows(const ts_sheet *sheet, ts_sheet_part part)
{
    size_t changed = 0;
    for (size_t i = 0; i < sheet->row_count[part]; i++) {
        const ts_sheet_row *now    = &sheet->rows[part][i];
        const ts_sheet_row *before = ts_sheet_issued_row(sheet, part, now->what);
        changed += before == NULL || ts_sheet_value_changed(now, before);
    }
    return changed;
}

bool ts_sheet_condition_changed(const ts_sheet *sheet, size_t c)
{
    const size_t old = ts_sheet_issued_condition(sheet, sheet->answer->drive->conditions[c].name);
    if (old == SIZE_MAX || !same_text(sheet->states[c], sheet->before->states[old]))
        return true;
    for (int k = 0; k < TS_SHEET_COLUMNS; k++)
        if (ts_sheet_value_changed(&sheet->conditions[c][k], &sheet->before->conditions[old][k]))
            return true;
    return false;
}

static bool has_row(const ts_sheet *sheet, ts_sheet_part part, const char *what)
{
    for (size_t i = 0; i < sheet->row_count[part]; i++)
        if (same_text(sheet->rows[part][i].what, what))
            return true;
    return false;
}

static bool has_condition(const ts_sheet *sheet, const char *name)
{
    for (size_t c = 0; c < sheet->answer->drive->condition_count; c++)
        if (same_text(sheet->answer->drive->conditions[c].name, name))
            return true;
    return false;
}

static size_t changed_words(const ts_sheet *sheet)
{
    size_t changed = 0;
    for (size_t i = 0; i < sheet->word_count; i++)
        changed +=
            !same_text(sheet->words[i].says, ts_sheet_issued_word(sheet, sheet->words[i].label));
    return changed;
}

size_t ts_sheet_changed(const ts_sheet *sheet)
{
    size_t changed = changed_words(sheet);
    for (size_t c = 0; c < sheet->answer->drive->condition_count; c++)
        changed += ts_sheet_condition_changed(sheet, c);
    for (int part = 0; part < TS_SHEET_PARTS; part++)
        changed += changed_rows(sheet, (ts_sheet_part)part);
    return changed;
}

size_t ts_sheet_gone(const ts_sheet *sheet, ts_buffer *out)
{
    const ts_sheet *before = sheet->before;
    size_t          gone   = 0;
    for (int part = 0; part < TS_SHEET_PARTS; part++)
        for (size_t i = 0; i < before->row_count[part]; i++)
            if (!has_row(sheet, (ts_sheet_part)part, before->rows[part][i].what))
                ts_buffer_print(out, "%s%s", gone++ > 0 ? ", " : "", before->rows[part][i].what);
    for (size_t c = 0; c < before->answer->drive->condition_count; c++)
        if (!has_condition(sheet, before->answer->drive->conditions[c].name))
            ts_buffer_print(out, "%s%s", gone++ > 0 ? ", " : "",
                            before->answer->drive->conditions[c].name);
    return gone;
}
