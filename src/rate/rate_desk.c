/* rate/rate_desk.c: how does an element get its inputs, and where do its sections lie? */
#include "rate/rate_desk.h"

#include "base/assert.h"

#include <string.h>

#define SECTIONS_MOST 24
#define FACTS_MOST    12
#define CHOICES_MOST  16
#define LACKS_MOST    96

/* ---- elements ----------------------------------------------------------------------------------
 */

static void *take(ts_rate_desk *desk, size_t count, size_t size)
{
    void *room   = ts_arena_take(desk->arena, count, size);
    desk->failed = desk->failed || room == NULL;
    return room;
}

static bool make_room(ts_rate_desk *desk)
{
    ts_rated *rated = desk->rated;
    if (rated->element_count < desk->element_room)
        return true;
    const size_t      room = desk->element_room == 0 ? 16 : 2 * desk->element_room;
    ts_rated_element *more = take(desk, room, sizeof *more);
    if (more == NULL)
        return false;
    if (rated->element_count > 0)
        memcpy(more, rated->elements, rated->element_count * sizeof *more);
    rated->elements    = more;
    desk->element_room = room;
    return true;
}

void ts_rate_open_element(ts_rate_desk *desk, const char *kind, const ts_record_table *table,
                          const void *record)
{
    /* The structs of all lists by name begin with their name (model/field.h). */
    const char   *name = *(const char *const *)record;
    const ts_node node =
        *(const ts_node *)(const void *)((const char *)record + table->node_offset);
    if (desk->failed || !make_room(desk))
        return;
    desk->element   = &desk->rated->elements[desk->rated->element_count++];
    desk->table     = table;
    desk->record    = record;
    desk->condition = TS_EVERY_CONDITION;
    *desk->element  = (ts_rated_element){
         .kind     = kind,
         .name     = name,
         .node     = node,
         .from     = ts_workings_count(desk->workings),
         .sections = take(desk, SECTIONS_MOST, sizeof(ts_rated_section)),
         .facts    = take(desk, FACTS_MOST, sizeof(ts_rated_fact)),
         .choices  = take(desk, CHOICES_MOST, sizeof(ts_rated_choice)),
         .lacks    = take(desk, LACKS_MOST, sizeof(ts_rated_lack)),
    };
    desk->lacked_from = 0;
    ts_workings_about(desk->workings, node, TS_EVERY_CONDITION);
}

void ts_rate_close_element(ts_rate_desk *desk)
{
    if (!desk->failed)
        desk->element->to = ts_workings_count(desk->workings);
}

void ts_rate_fact(ts_rate_desk *desk, const char *name, const char *says)
{
    if (desk->failed)
        return;
    TS_ASSERT(desk->element->fact_count < FACTS_MOST);
    desk->element->facts[desk->element->fact_count++] = (ts_rated_fact){name, says};
}

/* ---- sections ----------------------------------------------------------------------------------
 */

void ts_rate_open_section(ts_rate_desk *desk, const ts_rated_section *section)
{
    if (desk->failed)
        return;
    ts_rated_element *element = desk->element;
    TS_ASSERT(element->section_count < SECTIONS_MOST);
    ts_rated_section *opened = &element->sections[element->section_count++];
    *opened                  = *section;
    opened->from = opened->to = ts_workings_count(desk->workings);
    desk->condition           = section->condition;
    desk->advisory            = section->advisory;
    desk->lacked_from         = element->lack_count;
    ts_workings_about(desk->workings, element->node, section->condition);
}

bool ts_rate_lacks(const ts_rate_desk *desk)
{
    return desk->failed || desk->element->lack_count > desk->lacked_from;
}

/* "it lacks n_1 (speed of gear 1), nu_40 (...)" */
static void say_lacks(ts_rate_desk *desk, const ts_rated_section *section)
{
    const ts_rated_element *element = desk->element;
    ts_finding             *finding =
        ts_rate_judge(desk, false, "rate-missing-input", ts_rate_lack_level(desk));
    ts_buffer keys;
    if (finding == NULL)
        return;
    ts_buffer_open(&keys, ts_arena_allocator(desk->arena));
    for (size_t i = desk->lacked_from; i < element->lack_count; i++)
        ts_buffer_print(&keys, "%s%s", i > desk->lacked_from ? ", " : "", element->lacks[i].key);
    desk->failed   = desk->failed || keys.failed;
    finding->state = TS_NOT_COMPUTABLE;
    if (!keys.failed) {
        ts_rate_says(desk, finding, "%s by %s cannot be computed: the file does not give %s",
                     section->title, section->standard, keys.bytes);
        ts_rate_remedy(desk, finding, "state %s of %s", keys.bytes, element->name);
    }
    ts_buffer_close(&keys);
}

bool ts_rate_close_section(ts_rate_desk *desk)
{
    if (desk->failed)
        return false;
    ts_rated_element *element = desk->element;
    ts_rated_section *section = &element->sections[element->section_count - 1];
    const bool        whole   = element->lack_count == desk->lacked_from;
    section->to               = ts_workings_count(desk->workings);
    if (!whole)
        say_lacks(desk, section);
    desk->condition   = TS_EVERY_CONDITION;
    desk->advisory    = false;
    desk->lacked_from = element->lack_count;
    ts_workings_about(desk->workings, element->node, TS_EVERY_CONDITION);
    return whole;
}

/* ---- inputs ------------------------------------------------------------------------------------
 */

static const ts_field *field_of(const ts_rate_desk *desk, const char *key)
{
    const ts_field *field = ts_field_named(desk->table, ts_text_of(key));
    TS_ASSERT(field != NULL);
    return field;
}

/* What every value of value.h has behind its number. */
typedef struct input {
    double      value;
    ts_node     node;
    ts_standing standing;
} input;

static input input_of(const ts_rate_desk *desk, const ts_field *field)
{
    const void *at = (const char *)desk->record + field->offset;
    if (field->form == TS_FORM_TALLY) {
        const ts_tally *tally = at;
        const bool      known = tally->standing == TS_GIVEN || tally->standing == TS_ASSUMED;
        return (input){known ? (double)tally->value : (double)NAN, tally->node, tally->standing};
    }
    if (field->form == TS_FORM_PICK) {
        const ts_pick *pick = at;
        return (input){pick->value, pick->node, pick->standing};
    }
    if (field->form == TS_FORM_WORD) {
        const ts_word *word = at;
        return (input){NAN, word->node, word->standing};
    }
    const ts_measure *measure = at;
    return (input){measure->value, measure->node, measure->standing};
}

static const ts_assumption *assumption_of(const ts_rate_desk *desk, const char *key)
{
    for (size_t i = 0; i < desk->file->assumed_count; i++) {
        const ts_assumption *assumed = &desk->file->assumed[i];
        if (assumed->node == desk->element->node && strcmp(assumed->key, key) == 0)
            return assumed;
    }
    return NULL;
}

/* "hardness 1" is noted as hardness_1. */
static const char *symbol_of(ts_rate_desk *desk, const char *key)
{
    if (strchr(key, ' ') == NULL)
        return key;
    char *symbol = ts_arena_copy(desk->arena, key, strlen(key));
    desk->failed = desk->failed || symbol == NULL;
    for (char *at = symbol; at != NULL && *at != '\0'; at++)
        *at = *at == ' ' ? '_' : *at;
    return symbol;
}

/* A value of a table, which a given one may follow, is no input. */
static bool is_noted(const ts_rate_desk *desk, const char *symbol)
{
    const ts_subject whole = {desk->element->node, TS_EVERY_CONDITION};
    const size_t     found = ts_workings_find(desk->workings, whole, symbol);
    if (found == SIZE_MAX)
        return false;
    const ts_note_kind kind = ts_workings_at(desk->workings, found)->kind;
    return kind == TS_NOTE_GIVEN || kind == TS_NOTE_ASSUMED;
}

/* Inputs belong to the element, whichever section asks first. */
static void note(ts_rate_desk *desk, const ts_field *field, input from)
{
    const char *symbol = symbol_of(desk, field->key);
    const char *unit   = ts_kind_si(field->kind)->name;
    if (desk->failed || is_noted(desk, symbol))
        return;
    ts_workings_about(desk->workings, desk->element->node, TS_EVERY_CONDITION);
    if (from.standing == TS_GIVEN) {
        ts_workings_given(desk->workings, symbol, from.value, unit, from.node);
    } else {
        const ts_assumption *assumed = assumption_of(desk, field->key);
        ts_workings_assumed(desk->workings, symbol, from.value, unit,
                            assumed != NULL ? assumed->reason : "the default of this key");
    }
    ts_workings_about(desk->workings, desk->element->node, desk->condition);
}

static bool is_known(input from)
{
    return from.standing == TS_GIVEN || from.standing == TS_ASSUMED;
}

double ts_rate_take_signed(ts_rate_desk *desk, const char *key, double sign)
{
    if (desk->failed)
        return NAN;
    const ts_field *field = field_of(desk, key);
    input           from  = input_of(desk, field);
    if (!is_known(from))
        return NAN;
    from.value *= sign;
    note(desk, field, from);
    return from.value;
}

double ts_rate_take(ts_rate_desk *desk, const char *key)
{
    return ts_rate_take_signed(desk, key, 1.0);
}

int ts_rate_take_whole(ts_rate_desk *desk, const char *key)
{
    const double value = ts_rate_take(desk, key);
    return isnan(value) ? 0 : (int)value;
}

void ts_rate_lack(ts_rate_desk *desk, const char *key)
{
    if (desk->failed)
        return;
    ts_rated_element *element = desk->element;
    const ts_field   *field   = field_of(desk, key);
    for (size_t i = desk->lacked_from; i < element->lack_count; i++) {
        if (strcmp(element->lacks[i].key, key) == 0)
            return;
    }
    TS_ASSERT(element->lack_count < LACKS_MOST);
    const char *standard =
        element->section_count > 0 ? element->sections[element->section_count - 1].standard : "";
    element->lacks[element->lack_count++] =
        (ts_rated_lack){key, field->says, field->example, standard};
}

double ts_rate_need(ts_rate_desk *desk, const char *key)
{
    const double value = ts_rate_take(desk, key);
    if (isnan(value))
        ts_rate_lack(desk, key);
    return value;
}

double ts_rate_take_or(ts_rate_desk *desk, const char *key, double otherwise, const char *why)
{
    const double value = ts_rate_take(desk, key);
    if (desk->failed || !isnan(value))
        return value;
    const char *symbol = symbol_of(desk, key);
    if (!desk->failed && !is_noted(desk, symbol))
        ts_rate_assume(desk, symbol, otherwise, field_of(desk, key)->kind, why);
    return otherwise;
}

bool ts_rate_is_given(const ts_rate_desk *desk, const char *key)
{
    return !desk->failed && input_of(desk, field_of(desk, key)).standing == TS_GIVEN;
}

bool ts_rate_is_known(const ts_rate_desk *desk, const char *key)
{
    return !desk->failed && is_known(input_of(desk, field_of(desk, key)));
}

static bool is_told(const ts_rated_element *element, const char *key)
{
    for (size_t i = 0; i < element->choice_count; i++) {
        if (strcmp(element->choices[i].key, key) == 0)
            return true;
    }
    return false;
}

int ts_rate_choose(ts_rate_desk *desk, const char *key)
{
    if (desk->failed)
        return -1;
    const ts_field *field = field_of(desk, key);
    const input     from  = input_of(desk, field);
    if (!is_known(from))
        return -1;
    const int            choice  = (int)from.value;
    const ts_assumption *assumed = assumption_of(desk, key);
    if (from.standing == TS_ASSUMED && assumed != NULL && !is_told(desk->element, key)) {
        TS_ASSERT(desk->element->choice_count < CHOICES_MOST);
        desk->element->choices[desk->element->choice_count++] =
            (ts_rated_choice){key, field->choices[choice], assumed->reason};
    }
    return choice;
}

const char *ts_rate_word(const ts_rate_desk *desk, const char *key)
{
    if (desk->failed)
        return NULL;
    const ts_field *field = field_of(desk, key);
    const ts_word  *word  = (const void *)((const char *)desk->record + field->offset);
    return word->standing == TS_GIVEN ? word->text : NULL;
}

void ts_rate_borrow(ts_rate_desk *desk, const char *symbol, double value, const char *lender)
{
    const bool own = desk->condition == TS_EVERY_CONDITION && strcmp(symbol, lender) == 0;
    if (!desk->failed && !own)
        ts_workings_borrow(desk->workings, symbol, value,
                           (ts_subject){desk->element->node, TS_EVERY_CONDITION}, lender);
}

void ts_rate_assume(ts_rate_desk *desk, const char *symbol, double value, ts_kind kind,
                    const char *why)
{
    if (desk->failed)
        return;
    ts_workings_about(desk->workings, desk->element->node, TS_EVERY_CONDITION);
    ts_workings_assumed(desk->workings, symbol, value, ts_kind_si(kind)->name, why);
    ts_workings_about(desk->workings, desk->element->node, desk->condition);
}
