/* check/run.c: does the drive hold?  Every rule asks, waivers answer, the worst comes first. */
#include "check/outcome.h"

#include "check/desk.h"
#include "check/envelope.h"
#include "check/finding_order.h"
#include "check/rule.h"
#include "check/rulebook.h"

#include <string.h>

/* Room for sentences: a finding takes about 300 bytes, and a drive that is worked on has few. */
#define SENTENCE_ROOM ((size_t)24 * 1024)
#define FINDING_ROOM  ((size_t)64)
#define ADDRESS_ROOM  ((size_t)2048)

/* The buffer's block only grows, so the old one is left to the arena. */
static void *resize_scratch(void *context, void *block, size_t size)
{
    ts_scratch *scratch = context;
    if (size == 0)
        return NULL;
    void *fresh = ts_arena_take(scratch->arena, size, 1);
    if (fresh == NULL)
        return NULL;
    if (block != NULL)
        memcpy(fresh, block, scratch->size < size ? scratch->size : size);
    scratch->size = size;
    return fresh;
}

static bool open_scratch(ts_scratch *scratch, ts_arena *arena)
{
    scratch->arena     = arena;
    scratch->allocator = (ts_allocator){resize_scratch, scratch};
    ts_buffer_open(&scratch->buffer, &scratch->allocator);
    ts_buffer_fill(&scratch->buffer, ' ', ADDRESS_ROOM - 1);
    return !scratch->buffer.failed;
}

/* Pads are asked in every condition by a few rules; shafts, gears and meshes once by about ten. */
static size_t judgements_expected(const ts_drive *drive, const ts_train *train)
{
    const size_t parts = (size_t)train->shaft_count + train->gear_count + train->mesh_count;
    return 5 * train->mesh_count * (drive->condition_count + 2) +
           6 * train->pad_count * (drive->condition_count + 2) + 8 * parts +
           4 * (drive->condition_count + 4) * (drive->spool_count + 2) +
           drive->accessory_count * 8 + 64;
}

static size_t bytes_expected(const ts_desk *desk, const ts_check_subject *subject)
{
    return SENTENCE_ROOM + desk->finding_room * sizeof *desk->findings +
           desk->judgement_room * sizeof *desk->judgements +
           ts_rulebook_count() * sizeof *desk->rules +
           subject->drive->waived_count * sizeof *desk->waivers + 2 * ADDRESS_ROOM +
           ts_envelope_bytes(subject->train) + 1024;
}

static bool open_desk(ts_desk *desk, const ts_check_subject *subject, ts_arena *arena)
{
    desk->arena          = arena;
    desk->finding_room   = FINDING_ROOM;
    desk->judgement_room = judgements_expected(subject->drive, subject->train);
    desk->sentences.room = SENTENCE_ROOM;
    if (!ts_arena_reserve(arena, bytes_expected(desk, subject)))
        return false;
    desk->sentences.bytes = ts_arena_take(arena, SENTENCE_ROOM, 1);
    desk->findings        = TS_TAKE(arena, ts_finding, desk->finding_room);
    desk->judgements      = TS_TAKE(arena, ts_judgement, desk->judgement_room);
    desk->rules           = TS_TAKE(arena, ts_rule_outcome, ts_rulebook_count());
    desk->waivers         = TS_TAKE(arena, ts_waiver_use, subject->drive->waived_count);
    return desk->sentences.bytes != NULL && desk->findings != NULL && desk->judgements != NULL &&
           desk->rules != NULL && desk->waivers != NULL && open_scratch(&desk->scratch, arena);
}

ts_status ts_check_prepare(const ts_check_subject *subject, ts_arena *arena,
                           ts_check_outcome *outcome)
{
    *outcome        = (ts_check_outcome){0};
    ts_check *check = TS_TAKE(arena, ts_check, 1);
    ts_desk  *desk  = TS_TAKE(arena, ts_desk, 1);
    if (check == NULL || desk == NULL || !open_desk(desk, subject, arena))
        return TS_NO_MEMORY;
    check->envelope = ts_envelope_prepare(subject->train, arena);
    if (check->envelope == NULL)
        return TS_NO_MEMORY;
    check->desk       = desk;
    check->rules      = ts_rulebook_rules();
    check->rule_count = ts_rulebook_count();
    outcome->check    = check;
    return TS_OK;
}

static void take_subject(ts_check *check, const ts_check_subject *subject, ts_workings *workings)
{
    check->drive        = subject->drive;
    check->train        = subject->train;
    check->motion       = subject->motion;
    check->power        = subject->power;
    check->mass         = subject->mass;
    check->teeth        = subject->teeth;
    check->lines        = subject->lines;
    check->opinion      = subject->opinion;
    check->select       = subject->select;
    check->rubbing      = subject->rubbing;
    check->splines      = subject->splines;
    check->heat         = subject->heat;
    check->floats       = subject->floats;
    check->whirls       = subject->whirls;
    check->webs         = subject->webs;
    check->forced       = subject->forced;
    check->forced_count = subject->forced_count;
    check->source       = subject->source;
    check->today        = subject->today;
    check->units        = subject->units;
    check->workings     = workings;
}

static void run_rules(ts_check *check, bool after_waivers)
{
    ts_desk *desk = check->desk;
    for (size_t i = 0; i < check->rule_count; i++) {
        const ts_rule *rule = check->rules[i];
        if (rule->after_waivers != after_waivers)
            continue;
        desk->rule     = rule;
        desk->result   = &desk->rules[i];
        desk->rules[i] = (ts_rule_outcome){.rule = rule->id};
        rule->run(check);
        if (desk->result->judged > 0)
            desk->result->skipped = NULL;
    }
}

static void sign_findings(ts_check *check)
{
    ts_desk *desk = check->desk;
    for (size_t i = 0; i < desk->finding_count; i++)
        if (!ts_finding_sign(&desk->findings[i], check->source, check->drive,
                             ts_desk_scratch(desk)))
            desk->failed = true;
}

static void count_findings(ts_check_outcome *outcome)
{
    bool unjudged = false;
    for (size_t i = 0; i < outcome->finding_count; i++) {
        const ts_finding *finding = &outcome->findings[i];
        outcome->waived += finding->state == TS_WAIVED;
        outcome->not_computable += finding->state == TS_NOT_COMPUTABLE;
        outcome->open[finding->level] += finding->state == TS_OPEN;
        unjudged = unjudged || (finding->state == TS_NOT_COMPUTABLE && finding->level == TS_REFUSE);
    }
    outcome->verdict = TS_HOLDS;
    if (outcome->open[TS_REFUSE] > 0)
        outcome->verdict = TS_DOES_NOT_HOLD;
    else if (unjudged)
        outcome->verdict = TS_VERDICT_NOT_COMPUTABLE;
}

static void give_outcome(ts_check *check, ts_check_outcome *outcome)
{
    const ts_desk *desk = check->desk;
    *outcome            = (ts_check_outcome){
                   .findings        = desk->findings,
                   .finding_count   = desk->finding_count,
                   .judgements      = desk->judgements,
                   .judgement_count = desk->judgement_count,
                   .rules           = desk->rules,
                   .rule_count      = check->rule_count,
                   .check           = check,
    };
    for (size_t i = 0; i < check->rule_count; i++) {
        outcome->passed += desk->rules[i].passed;
        outcome->rules_run += desk->rules[i].judged > 0;
        outcome->rules_skipped += desk->rules[i].judged == 0;
    }
    count_findings(outcome);
}

ts_status ts_check_run(const ts_check_subject *subject, ts_arena *arena, ts_workings *workings,
                       ts_check_outcome *outcome)
{
    ts_check *check    = outcome->check;
    check->desk->arena = arena;
    take_subject(check, subject, workings);
    ts_desk_clear(check->desk);
    ts_envelope_solve(check->train, check->motion, check->envelope);
    ts_waivers_read(check);
    run_rules(check, false);
    ts_waivers_apply(check);
    run_rules(check, true);
    sign_findings(check);
    if (check->desk->failed)
        return TS_NO_MEMORY;
    ts_findings_sort(check->desk->findings, check->desk->finding_count, check->source);
    give_outcome(check, outcome);
    return TS_OK;
}
