/* How does an open study grow hot? */
#include "study/warm_course.h"

#include "catalog/metal.h"
#include "study/figures.h"
#include "study/lone_chapter.h"
#include "study/outlet.h"
#include "study/say_quantity.h"
#include "towershaft/warm.h"

#include <math.h>

enum { LEGS_MOST = 64 };

static const double long_leg = 600.0, short_leg = 60.0, coldest_else = 288.15;

/* ---- what nobody told -------------------------------------------------------------------------
 */

static ts_warm_leg *usual_legs(const ts_study *study, ts_arena *arena, size_t *count)
{
    ts_warm_leg *legs = TS_TAKE(arena, ts_warm_leg, study->drive.condition_count + 1);

    *count = study->drive.condition_count;
    for (uint32_t c = 0; legs != NULL && c < *count; c++)
        legs[c] = (ts_warm_leg){c, ts_heat_lasts(&study->drive, c) ? long_leg : short_leg};
    return legs;
}

/* K, the coldest that any box has for its gears; where none tells 15 degC, the air of ISO 2533 at
 * sea level. */
static double usual_soak(const ts_study *study, bool *of_file)
{
    double coldest = (double)INFINITY;

    for (size_t d = 0; d < study->drive.drive_count; d++) {
        const ts_temperatures *warm = &study->drive.drive[d].box.gears.temperatures;
        if (warm->node != 0 && warm->gears.low < coldest)
            coldest = warm->gears.low;
    }
    *of_file = isfinite(coldest);
    return *of_file ? coldest : coldest_else;
}

/* Of the metals of `mass`, for boxes that tell none. */
static void usual_expansion(const ts_study *study, ts_warm_answer *out)
{
    ts_metal metal;

    out->metal[0] = ts_shaft_metals[study->drive.mass.shaft_metal.value];
    out->metal[1] = ts_casing_metals[study->drive.mass.casing_metal.value];
    for (int i = 0; i < 2; i++)
        out->alpha[i] = ts_metal_named(ts_text_of(out->metal[i]), &metal) ? metal.cte : (double)NAN;
    for (size_t d = 0; d < study->drive.drive_count; d++)
        if (study->drive.drive[d].box.gears.temperatures.node == 0)
            out->alpha_assumed = true;
}

ts_status ts_study_warm(const ts_study *study, const ts_warm_wish *wish, ts_arena *arena,
                        ts_warm_answer *out)
{
    ts_warm_course *courses = TS_TAKE(arena, ts_warm_course, study->drive.drive_count + 1);

    *out = (ts_warm_answer){.legs         = wish->legs,
                            .leg_count    = wish->leg_count,
                            .legs_assumed = wish->legs == NULL,
                            .soak_assumed = isnan(wish->soak),
                            .soak         = wish->soak,
                            .air          = wish->air,
                            .samples      = wish->samples,
                            .courses      = courses};
    if (isnan(wish->soak))
        out->soak = usual_soak(study, &out->soak_of_file);
    usual_expansion(study, out);
    if (wish->legs == NULL)
        out->legs = usual_legs(study, arena, &out->leg_count);
    ts_status status = out->legs != NULL && courses != NULL ? TS_OK : TS_NO_MEMORY;
    for (uint32_t d = 0; status == TS_OK && d < study->drive.drive_count; d++) {
        const ts_warm_question question = {.heat      = &study->heat,
                                           .mass      = &study->mass,
                                           .drive     = d,
                                           .legs      = out->legs,
                                           .leg_count = out->leg_count,
                                           .soak      = out->soak,
                                           .air       = out->air,
                                           .alpha     = {out->alpha[0], out->alpha[1]},
                                           .samples   = out->samples};
        status                          = ts_warm_follow(&question, arena, &courses[d]);
    }
    return status;
}

/* ---- what was told ----------------------------------------------------------------------------
 */

static bool read_temperature(ts_study *study, const char *text, double *kelvin)
{
    const ts_unit *unit;

    *kelvin = (double)NAN;
    if (text == NULL ||
        (ts_quantity_parse(ts_text_of(text), TS_KIND_TEMPERATURE, kelvin, &unit, NULL) &&
         *kelvin >= 200.0 && *kelvin <= 450.0))
        return true;
    ts_study_say_quantity(study, "that is no temperature of air or metal",
                          "a temperature from -73 to 176 degC, such as '-40 degC'", text,
                          TS_KIND_TEMPERATURE, "degC");
    return false;
}

/* "take-off 2 min": the name of a condition, then how long; `word` is cut in two. */
static bool read_leg(ts_study *study, char *word, ts_warm_leg *leg)
{
    const ts_unit *unit;
    int32_t        condition = -1;

    for (char *cut = word; *cut != '\0'; cut++) {
        if (*cut != ' ' ||
            !ts_quantity_parse(ts_text_of(cut + 1), TS_KIND_TIME, &leg->duration, &unit, NULL))
            continue;
        *cut = '\0';
        if (!ts_study_choose_condition(study, word, &condition))
            return false;
        leg->condition = (uint32_t)condition;
        if (leg->duration > 0.0 && leg->duration <= 1e6)
            return true;
        break;
    }
    ts_study_say(study, "out-of-range", "that is no part of a course",
                 "a condition and how long it lasts, up to 1e6 s, such as 'ground idle 5 min'",
                 NULL);
    return false;
}

static bool read_legs(ts_study *study, const char *text, ts_arena *arena, ts_warm_wish *wish)
{
    ts_warm_leg *legs = TS_TAKE(arena, ts_warm_leg, LEGS_MOST);
    char        *rest = ts_arena_copy(arena, text, ts_text_of(text).length);

    wish->legs = legs;
    while (legs != NULL && rest != NULL) {
        char *word = rest, *end = rest;
        while (*end != '\0' && *end != ',')
            end++;
        rest = *end == ',' ? end + 1 : NULL;
        *end = '\0';
        while (*word == ' ')
            word++;
        if (wish->leg_count == LEGS_MOST) {
            ts_study_say(study, "out-of-range", "the course has too many parts", "up to 64", NULL);
            return false;
        }
        if (!read_leg(study, word, &legs[wish->leg_count++]))
            return false;
    }
    return legs != NULL;
}

/* ---- the doors --------------------------------------------------------------------------------
 */

static void write_chapter(ts_chapter *chapter, const void *warm)
{
    ts_chapter_warm(chapter, warm);
}

static ts_status tell(ts_study *study, const ts_warm_options *options, const ts_warm_wish *wish,
                      const ts_page_options *look, ts_arena *arena, ts_verdict *verdict,
                      const ts_sink *sink)
{
    const ts_answer answer = ts_study_answer(study);
    ts_warm_answer  warm;
    ts_buffer       out;

    ts_buffer_open(&out, study->allocator);
    ts_page   page   = ts_outlet_page(look, &out);
    ts_status status = ts_study_warm(study, wish, arena, &warm);
    if (status == TS_OK && options->json)
        ts_warm_json(&warm, &answer, &out);
    else if (status == TS_OK)
        status = ts_study_lone_chapter(study, arena, write_chapter, &warm, &page);
    if (status == TS_OK)
        status = ts_buffer_send(&out, sink);
    if (status == TS_OK)
        *verdict = ts_warm_verdict(&warm, &answer);
    ts_buffer_close(&out);
    return status;
}

ts_status ts_warm_write(ts_study *study, const ts_warm_options *options,
                        const ts_page_options *page, ts_verdict *verdict, const ts_sink *sink)
{
    ts_warm_wish wish = {.samples = TS_WARM_SAMPLES};

    *verdict = TS_VERDICT_NOT_COMPUTABLE;
    if (!ts_study_ask(study, TS_WANT_DRIVE) || options == NULL ||
        !read_temperature(study, options->soak, &wish.soak) ||
        !read_temperature(study, options->ambient, &wish.air))
        return TS_NOT_UNDERSTOOD;
    ts_arena *arena = ts_arena_open(study->allocator);
    if (arena == NULL)
        return TS_NO_MEMORY;
    ts_status status = TS_NOT_UNDERSTOOD;
    if (options->through == NULL || read_legs(study, options->through, arena, &wish))
        status = tell(study, options, &wish, page, arena, verdict, sink);
    else if (ts_arena_failed(arena) || ts_study_refused(study) == TS_NO_MEMORY)
        status = TS_NO_MEMORY;
    ts_arena_close(arena);
    return status;
}
