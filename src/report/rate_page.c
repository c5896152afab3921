/* What do the elements of a rate file come to? */
#include "report/rate_report.h"

#include "report/check_page.h"

#include <math.h>
#include <string.h>

#define DIGITS       6
#define SYMBOL_WIDTH 13
#define VALUE_WIDTH  12
#define UNIT_WIDTH   10
#define SOURCES_MOST 400

/* Sources are told once, below, and referred to by their number. */
typedef struct source_list {
    const char *items[SOURCES_MOST];
    size_t      count;
} source_list;

typedef struct sheet {
    const ts_rated  *rated;
    const ts_answer *answer;
    ts_page         *page;
    source_list      sources;
} sheet;

/* From 1; 0 when there are too many. */
static size_t number_of(source_list *list, const char *source)
{
    for (size_t i = 0; i < list->count; i++) {
        if (strcmp(list->items[i], source) == 0)
            return i + 1;
    }
    if (list->count == SOURCES_MOST)
        return 0;
    list->items[list->count++] = source;
    return list->count;
}

/* ---- inputs ------------------------------------------------------------------------------------
 */

static void say_number(ts_buffer *out, const ts_rated_number *number)
{
    if (isnan(number->value))
        ts_buffer_add(out, "?");
    else if (isinf(number->value))
        ts_buffer_add(out, number->value > 0.0 ? "without end" : "-without end");
    else
        ts_page_short(out, number->value, DIGITS);
}

/* Is it of a section that computes a method again, to prove the answer to `inverse`? */
static bool is_again(const ts_note *note)
{
    return note->subject.condition == (int32_t)TS_RATED_SPECTRUM ||
           note->subject.condition == (int32_t)TS_RATED_WORST_BIN ||
           note->subject.condition == (int32_t)TS_RATED_ALLOWABLE_LOAD ||
           note->subject.condition == (int32_t)TS_RATED_LIFE ||
           note->subject.condition == (int32_t)TS_RATED_LEAST_WIDTH;
}

/* The same value of the file, for another section. */
static bool is_given_above(const ts_workings *workings, const ts_rated_element *element,
                           size_t index)
{
    const ts_note *note = ts_workings_at(workings, index);

    for (size_t i = element->from; is_again(note) && i < index; i++) {
        const ts_note *other = ts_workings_at(workings, i);
        if (other->kind == TS_NOTE_GIVEN && other->node == note->node)
            return true;
    }
    return false;
}

/* "inverse/" or "spectrum 2/" */
static void record_of(const ts_source *source, ts_node node, ts_buffer *out)
{
    const ts_node_place *place = &source->nodes[node];
    const ts_text        key = place->position > 0 ? source->nodes[place->parent].key : place->key;

    ts_buffer_text(out, key);
    if (place->position > 0)
        ts_buffer_print(out, " %u", place->position);
    ts_buffer_add(out, "/");
}

/* "z_1 = 25, m_n = 2 mm": as the file has it. */
static void given(const sheet *s, const ts_rated_element *element)
{
    const ts_answer *answer = s->answer;
    ts_buffer        line;
    ts_buffer_open(&line, answer->allocator);
    for (size_t i = element->from; i < element->to; i++) {
        if (!ts_rated_is_input(answer->workings, element, i, TS_NOTE_GIVEN))
            continue;
        const ts_note       *note  = ts_workings_at(answer->workings, i);
        const ts_node_place *place = &answer->source->nodes[note->node];
        if (is_given_above(answer->workings, element, i))
            continue;
        ts_buffer_add(&line, line.length > 0 ? ", " : "");
        if (is_again(note))
            record_of(answer->source, place->parent, &line);
        ts_buffer_print(&line, "%s = %.*s", note->symbol, (int)place->scalar.length,
                        place->scalar.at);
    }
    if (line.length > 0) {
        ts_buffer_add(s->page->out, "  given    ");
        ts_page_wrap(s->page, line.bytes, 11, 11);
    }
    s->page->out->failed = s->page->out->failed || line.failed;
    ts_buffer_close(&line);
}

static void assumption(const sheet *s, ts_buffer *line, bool *first)
{
    ts_buffer_add(s->page->out, *first ? "  assumed  " : "           ");
    *first = false;
    if (!line->failed)
        ts_page_wrap(s->page, line->bytes, 13, 11);
    s->page->out->failed = s->page->out->failed || line->failed;
    ts_buffer_clear(line);
}

/* The same assumption of a section further up. */
static bool is_told(const ts_workings *workings, const ts_rated_element *element, size_t index)
{
    const ts_note *note = ts_workings_at(workings, index);

    for (size_t i = element->from; i < index; i++) {
        const ts_note *other = ts_workings_at(workings, i);
        if (other->kind == TS_NOTE_ASSUMED && other->subject.condition >= 0 &&
            strcmp(other->symbol, note->symbol) == 0 && strcmp(other->source, note->source) == 0 &&
            !(fabs(other->value - note->value) > 0.0) &&
            ts_rated_is_input(workings, element, i, TS_NOTE_ASSUMED))
            return true;
    }
    return false;
}

static void assumed(const sheet *s, const ts_rated_element *element)
{
    const ts_answer *answer = s->answer;
    bool             first  = true;
    ts_buffer        line;
    ts_buffer_open(&line, answer->allocator);
    for (size_t i = element->from; i < element->to; i++) {
        if (!ts_rated_is_input(answer->workings, element, i, TS_NOTE_ASSUMED))
            continue;
        const ts_note        *note   = ts_workings_at(answer->workings, i);
        const ts_rated_number number = ts_rated_number_of(note, s->page->units, true);
        if (is_again(note) && is_told(answer->workings, element, i))
            continue;
        ts_buffer_print(&line, "%s", note->symbol);
        if (note->subject.condition >= 0)
            ts_buffer_print(&line, "@%s", ts_answer_condition(answer, note->subject.condition));
        ts_buffer_add(&line, " = ");
        say_number(&line, &number);
        if (strcmp(number.unit, "1") != 0)
            ts_buffer_print(&line, " %s", number.unit);
        ts_buffer_print(&line, ": %s", note->source);
        assumption(s, &line, &first);
    }
    for (size_t i = 0; i < element->choice_count; i++) {
        const ts_rated_choice *choice = &element->choices[i];
        ts_buffer_print(&line, "%s = %s: %s", choice->key, choice->value, choice->why);
        assumption(s, &line, &first);
    }
    ts_buffer_close(&line);
}

static void facts(const sheet *s, const ts_rated_element *element)
{
    for (size_t i = 0; i < element->fact_count; i++) {
        ts_buffer_add(s->page->out, "  ");
        ts_page_left(s->page, ts_text_of(element->facts[i].name), 9);
        ts_page_wrap(s->page, element->facts[i].says, 11, 11);
    }
}

/* "n_1: Speed of gear 1., such as 9000 rpm", once for all sections that lack it. */
static void lacks(const sheet *s, const ts_rated_element *element)
{
    bool first = true;
    for (size_t i = 0; i < element->lack_count; i++) {
        const ts_rated_lack *lack  = &element->lacks[i];
        bool                 again = false;
        ts_buffer            line;
        for (size_t k = 0; k < i; k++)
            again = again || strcmp(element->lacks[k].key, lack->key) == 0;
        if (again)
            continue;
        const size_t says = strlen(lack->says);
        ts_buffer_open(&line, s->answer->allocator);
        ts_buffer_print(&line, "%s: %.*s, such as %s", lack->key, (int)(says > 0 ? says - 1 : 0),
                        lack->says, lack->example);
        ts_buffer_add(s->page->out, first ? "  missing  " : "           ");
        first = false;
        if (!line.failed)
            ts_page_wrap(s->page, line.bytes, 13, 11);
        s->page->out->failed = s->page->out->failed || line.failed;
        ts_buffer_close(&line);
    }
}

/* ---- results -----------------------------------------------------------------------------------
 */

static void result(sheet *s, const ts_note *note)
{
    ts_page              *page   = s->page;
    const ts_rated_number number = ts_rated_number_of(note, page->units, true);
    const bool            plain  = strcmp(number.unit, "1") == 0;
    const size_t          source = number_of(&s->sources, ts_rated_source(note));
    ts_buffer             text;
    ts_buffer_open(&text, s->answer->allocator);
    say_number(&text, &number);
    ts_buffer_add(page->out, "    ");
    ts_page_left(page, ts_text_of(note->symbol), SYMBOL_WIDTH);
    if (!text.failed)
        ts_page_right(page, (ts_text){text.bytes, text.length}, VALUE_WIDTH);
    ts_buffer_add(page->out, " ");
    ts_page_left(page, ts_text_of(plain ? "" : number.unit), UNIT_WIDTH);
    ts_buffer_clear(&text);
    ts_buffer_print(&text, "%s [%zu]", ts_rated_meaning(note), source);
    if (!text.failed)
        ts_page_wrap(page, text.bytes, 4 + SYMBOL_WIDTH + VALUE_WIDTH + 1 + UNIT_WIDTH,
                     4 + SYMBOL_WIDTH + VALUE_WIDTH + 1 + UNIT_WIDTH);
    page->out->failed = page->out->failed || text.failed;
    ts_buffer_close(&text);
}

/* In the order in which the section asks, or all in the order of the work. */
static void results(sheet *s, const ts_rated_section *section)
{
    const ts_workings *workings = s->answer->workings;
    if (s->page->all || section->asked == NULL) {
        for (size_t i = section->from; i < section->to; i++) {
            if (ts_rated_is_result(workings, section, i))
                result(s, ts_workings_at(workings, i));
        }
        return;
    }
    for (size_t a = 0; section->asked[a] != NULL; a++) {
        for (size_t i = section->from; i < section->to; i++) {
            const ts_note *note = ts_workings_at(workings, i);
            if (strcmp(note->symbol, section->asked[a]) == 0 &&
                ts_rated_is_result(workings, section, i))
                result(s, note);
        }
    }
}

static bool has_results(const sheet *s, const ts_rated_section *section)
{
    for (size_t i = section->from; i < section->to; i++) {
        const char *symbol = ts_workings_at(s->answer->workings, i)->symbol;
        if (ts_rated_is_result(s->answer->workings, section, i) &&
            (s->page->all || ts_rated_is_asked(section, symbol)))
            return true;
    }
    return false;
}

static void section_page(sheet *s, const ts_rated_section *section)
{
    ts_page *page = s->page;
    if (!has_results(s, section))
        return;
    ts_buffer_add(page->out, "\n  ");
    ts_page_tone(page, TS_TONE_STRONG);
    ts_buffer_add(page->out, section->title);
    ts_page_tone(page, TS_TONE_PLAIN);
    ts_buffer_print(page->out, ", %s", section->standard);
    if (section->condition >= 0)
        ts_buffer_print(page->out, "   @%s", ts_answer_condition(s->answer, section->condition));
    ts_buffer_add(page->out, "\n");
    results(s, section);
}

static void element_page(sheet *s, const ts_rated_element *element)
{
    ts_buffer heading;
    ts_buffer_open(&heading, s->answer->allocator);
    ts_buffer_print(&heading, "%s/%s", element->kind, element->name);
    if (!heading.failed)
        ts_page_heading(s->page, heading.bytes);
    s->page->out->failed = s->page->out->failed || heading.failed;
    ts_buffer_close(&heading);
    given(s, element);
    assumed(s, element);
    lacks(s, element);
    facts(s, element);
    for (size_t i = 0; i < element->section_count; i++)
        section_page(s, &element->sections[i]);
}

/* ---- the page ----------------------------------------------------------------------------------
 */

static void sources(const sheet *s)
{
    if (s->sources.count == 0)
        return;
    ts_page_heading(s->page, "Sources");
    for (size_t i = 0; i < s->sources.count; i++) {
        ts_buffer_print(s->page->out, "  [%zu] ", i + 1);
        ts_page_wrap(s->page, s->sources.items[i], 7, 7);
    }
}

/* The last line, or the last few on a narrow page. */
static void verdict(const sheet *s)
{
    ts_buffer says;
    ts_buffer_open(&says, s->answer->allocator);
    ts_rated_verdict(s->rated, &says);
    ts_buffer_add(s->page->out, "\n");
    ts_page_tone(s->page, TS_TONE_STRONG);
    if (!says.failed)
        ts_page_wrap(s->page, says.bytes, 0, 0);
    ts_page_tone(s->page, TS_TONE_PLAIN);
    s->page->out->failed = s->page->out->failed || says.failed;
    ts_buffer_close(&says);
}

void ts_rate_page(const ts_rated *rated, const ts_answer *answer, ts_page *page)
{
    sheet s = {.rated = rated, .answer = answer, .page = page};
    ts_answer_title(answer, page);
    for (size_t i = 0; i < rated->element_count; i++)
        element_page(&s, &rated->elements[i]);
    sources(&s);
    ts_finding_list(answer, page);
    verdict(&s);
}
