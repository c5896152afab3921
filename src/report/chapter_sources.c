/* Report: on which publications do the numbers rest, and how many of them on each? */
#include "report/report_chapter.h"

#include <string.h>

#define SOURCES_MOST 256
#define SHELVES      4096 /* of formulas already met; a power of two */

typedef struct publication {
    ts_text name;
    size_t  formulas, numbers;
} publication;

typedef struct survey {
    publication       found[SOURCES_MOST];
    size_t            count;
    const ts_formula *met[SHELVES];
    publication      *of[SHELVES];
} survey;

static bool begins(const char *text, const char *with)
{
    return strncmp(text, with, strlen(with)) == 0;
}

/* "ISO 6336-2:2019" of "ISO 6336-2:2019, clause 6 (from memory)"; books are named whole. */
static ts_text publication_of(const char *source)
{
    static const char *const houses[] = {"ISO", "ANSI", "AGMA", "DIN", "SAE", "NIST", "exact"};
    if (begins(source, "derived"))
        return TS_TEXT("derived here, as each formula says");
    if (begins(source, "common practice"))
        return TS_TEXT("common practice, no source");
    for (size_t i = 0; i < sizeof houses / sizeof houses[0]; i++)
        if (begins(source, houses[i]))
            return (ts_text){source, strcspn(source, ",(;")};
    return ts_text_of(source);
}

static ts_text without_blanks(ts_text text)
{
    while (text.length > 0 && text.at[text.length - 1] == ' ')
        text.length--;
    return text;
}

static publication *find(survey *all, const char *source)
{
    const ts_text name = without_blanks(publication_of(source));
    for (size_t i = 0; i < all->count; i++)
        if (all->found[i].name.length == name.length &&
            memcmp(all->found[i].name.at, name.at, name.length) == 0)
            return &all->found[i];
    if (all->count == SOURCES_MOST)
        return NULL;
    all->found[all->count] = (publication){.name = name};
    return &all->found[all->count++];
}

/* Each formula is looked up by its address; when the shelves are full the rest goes uncounted,
 * which no drive comes near. */
static void meet(survey *all, const ts_formula *formula)
{
    size_t shelf = ((uintptr_t)formula >> 4) % SHELVES;
    for (size_t tried = 0; tried < SHELVES; tried++, shelf = (shelf + 1) % SHELVES) {
        if (all->met[shelf] == NULL) {
            publication *of = find(all, formula->source);
            all->met[shelf] = formula;
            all->of[shelf]  = of;
            if (of != NULL)
                of->formulas++;
        }
        if (all->met[shelf] == formula) {
            if (all->of[shelf] != NULL)
                all->of[shelf]->numbers++;
            return;
        }
    }
}

/* Those with most numbers first; equal ones as they were met. */
static publication *next_of(survey *all, const bool *told)
{
    publication *best = NULL;
    for (size_t i = 0; i < all->count; i++)
        if (!told[i] && (best == NULL || all->found[i].numbers > best->numbers))
            best = &all->found[i];
    return best;
}

void ts_chapter_sources(ts_chapter *chapter)
{
    static const ts_column columns[] = {
        {"publication", false}, {"formulas", true}, {"numbers", true}};
    const ts_workings *workings = chapter->answer->workings;
    survey            *all      = TS_TAKE(chapter->manuscript->arena, survey, 1);
    bool              *told     = TS_TAKE(chapter->manuscript->arena, bool, SOURCES_MOST);
    if (all == NULL || told == NULL) {
        chapter->manuscript->failed = true;
        return;
    }
    for (size_t i = 0; i < ts_workings_count(workings); i++) {
        const ts_note *note = ts_workings_at(workings, i);
        if (note->formula != NULL)
            meet(all, note->formula);
    }
    ts_manuscript_heading(chapter->manuscript, 2, "Publications behind the numbers");
    ts_manuscript_table(chapter->manuscript,
                        "How many formulas of this drive rest on each, and how many numbers",
                        columns, 3);
    for (publication *one = next_of(all, told); one != NULL; one = next_of(all, told)) {
        told[one - all->found] = true;
        ts_manuscript_cell(chapter->manuscript, one->name);
        ts_buffer_print(&chapter->cell, "%zu", one->formulas);
        ts_chapter_cell(chapter);
        ts_buffer_print(&chapter->cell, "%zu", one->numbers);
        ts_chapter_cell(chapter);
    }
}
