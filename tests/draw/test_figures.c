/* Every figure in every format: the same bytes twice, not blank, all words on the sheet and apart,
 * whatever the file says. */
#include "draw/drawn.h"

#include <math.h>
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <string.h>

#include <cmocka.h>

static void the_same_drive_gives_the_same_bytes(void **state)
{
    (void)state;
    ts_arena *arena = ts_arena_open(NULL);
    sample   *one   = sample_open(arena);
    for (int figure = 0; figure < TS_FIGURE_COUNT; figure++)
        for (int format = TS_PICTURE_SVG; format <= TS_PICTURE_PNG; format++) {
            ts_draw_options options = usual_options;
            options.figure          = (ts_figure)figure;
            options.format          = (ts_picture_format)format;
            options.scale           = 0.5;
            ts_buffer first = bytes_of(one, &options), second = bytes_of(one, &options);
            assert_true(first.length > 10000);
            assert_int_equal(first.length, second.length);
            assert_memory_equal(first.bytes, second.bytes, first.length);
            ts_buffer_close(&first);
            ts_buffer_close(&second);
        }
    ts_arena_close(arena);
}

typedef struct reader {
    const ts_buffer *from;
    size_t           at;
} reader;

static cairo_status_t read_png(void *context, unsigned char *out, unsigned length)
{
    reader *in = context;
    if (in->at + length > in->from->length)
        return CAIRO_STATUS_READ_ERROR;
    memcpy(out, in->from->bytes + in->at, length);
    in->at += length;
    return CAIRO_STATUS_SUCCESS;
}

/* The share of pixels that are not paper. */
static double share_of_ink(const ts_buffer *png, ts_ground ground)
{
    reader           in    = {png, 0};
    cairo_surface_t *image = cairo_image_surface_create_from_png_stream(read_png, &in);
    assert_int_equal(cairo_surface_status(image), CAIRO_STATUS_SUCCESS);
    const int            w      = cairo_image_surface_get_width(image);
    const int            h      = cairo_image_surface_get_height(image);
    const int            stride = cairo_image_surface_get_stride(image);
    const unsigned char *data   = cairo_image_surface_get_data(image);
    const ts_rgb         paper  = ts_look_rgb(ground, TS_COLOUR_PAPER);
    const uint32_t       blank  = (uint32_t)lround(paper.red * 255.0) << 16 |
                           (uint32_t)lround(paper.green * 255.0) << 8 |
                           (uint32_t)lround(paper.blue * 255.0);
    size_t inked = 0;
    for (int y = 0; y < h; y++)
        for (int x = 0; x < w; x++) {
            uint32_t pixel = 0;
            memcpy(&pixel, data + (ptrdiff_t)y * stride + 4 * x, 4);
            inked += (pixel & 0xFFFFFF) != blank;
        }
    cairo_surface_destroy(image);
    return (double)inked / ((double)w * h);
}

static void no_picture_is_blank_on_any_ground(void **state)
{
    (void)state;
    ts_arena *arena = ts_arena_open(NULL);
    sample   *one   = sample_open(arena);
    for (int figure = 0; figure < TS_FIGURE_COUNT; figure++)
        for (int ground = 0; ground < TS_GROUND_COUNT; ground++) {
            ts_draw_options options = usual_options;
            options.figure          = (ts_figure)figure;
            options.format          = TS_PICTURE_PNG;
            options.ground          = (ts_ground)ground;
            options.scale           = 0.5;
            ts_buffer    png        = bytes_of(one, &options);
            const double share      = share_of_ink(&png, options.ground);
            /* Gears under the glass fill the most part of their sheets. */
            const bool near = figure == TS_FIGURE_TEETH || figure == TS_FIGURE_ROOT;
            assert_true(share > 0.04 && share < (near ? 0.8 : 0.5));
            ts_buffer_close(&png);
        }
    ts_arena_close(arena);
}

/* ---- words ------------------------------------------------------------------------------- */

static void assert_words_on_the_sheet(const drawn *it)
{
    const ts_canvas *canvas = &it->scene.canvas;
    const ts_area    sheet  = {0.0, 0.0, canvas->width, canvas->height};
    size_t           words  = 0;
    for (size_t i = 0; i < canvas->places.count; i++) {
        const ts_place *place = &canvas->places.items[i];
        if (place->kind == TS_PLACE_LEADER || place->kind == TS_PLACE_RIBBON ||
            place->kind == TS_PLACE_WALL)
            continue;
        assert_true(ts_area_holds(sheet, place->area));
        words += place->kind == TS_PLACE_TEXT;
    }
    assert_true(words > 40);
}

/* Letters leave the outer quarter of their line's height empty, so that much may be shared. */
static size_t count_meeting_words(const drawn *it)
{
    const ts_places *places = &it->scene.canvas.places;
    size_t           count  = 0;
    for (size_t i = 0; i < places->count; i++)
        for (size_t j = i + 1; j < places->count; j++) {
            const ts_place *a = &places->items[i], *b = &places->items[j];
            if (a->kind != TS_PLACE_TEXT || b->kind != TS_PLACE_TEXT)
                continue;
            if (ts_areas_meet(ts_area_inset(a->area, fmin(3.5, 0.25 * a->area.h)),
                              ts_area_inset(b->area, fmin(3.5, 0.25 * b->area.h)))) {
                print_message("(%.1f %.1f %.1f %.1f) meets (%.1f %.1f %.1f %.1f)\n", a->area.x,
                              a->area.y, a->area.w, a->area.h, b->area.x, b->area.y, b->area.w,
                              b->area.h);
                count++;
            }
        }
    return count;
}

static void all_words_stand_on_the_sheet_and_none_on_another(void **state)
{
    (void)state;
    for (int figure = 0; figure < TS_FIGURE_COUNT; figure++)
        for (int condition = 0; condition < SAMPLE_CONDITIONS; condition++) {
            drawn it;
            open_drawn(&it, (ts_figure)figure);
            it.options.condition = condition;
            draw_it(&it);
            assert_words_on_the_sheet(&it);
            assert_int_equal(count_meeting_words(&it), 0);
            close_drawn(&it);
        }
}

static void widths_and_units_of_all_kinds_keep_words_on_the_sheet(void **state)
{
    (void)state;
    const double widths[] = {900.0, 1200.0, 1900.0, 3000.0};
    for (int figure = 0; figure < TS_FIGURE_COUNT; figure++)
        for (size_t i = 0; i < sizeof widths / sizeof *widths; i++) {
            drawn it;
            open_drawn(&it, (ts_figure)figure);
            it.options.width = widths[i];
            it.options.units = i % 2 ? TS_UNITS_US : TS_UNITS_METRIC;
            draw_it(&it);
            assert_words_on_the_sheet(&it);
            close_drawn(&it);
        }
}

static const char *const hostile[] = {
    "<b>&amp;\"'</b><script>",
    "\xD7\x9E\xD7\xA9\xD7\x90\xD7\x91\xD7\xAA \xD7\x93\xD7\x9C\xD7\xA7", /* right to left    */
    "a\xE2\x80\xAE"
    "b\xE2\x80\xAD"
    "c\x1B[31m\x07",                                  /* turns and controls */
    "\xFF\xFE\xC3(",                                  /* no UTF-8          */
    "Zweitwellengetriebeschmiermittelruecklaufpumpe", /* one long word     */
    "%s%n%d %n",
    "",
};

static void hostile_names_are_drawn_and_stay_on_the_sheet(void **state)
{
    (void)state;
    const size_t count = sizeof hostile / sizeof *hostile;
    for (int figure = 0; figure < TS_FIGURE_COUNT; figure++) {
        drawn it;
        open_drawn(&it, (ts_figure)figure);
        for (uint32_t p = 0; p < it.sample->train.pad_count; p++)
            it.sample->train.pads[p].name = hostile[p % count];
        for (uint32_t s = 0; s < it.sample->train.shaft_count; s++)
            it.sample->train.shafts[s].name = hostile[(s + 1) % count];
        for (size_t c = 0; c < it.sample->drive.condition_count; c++)
            it.sample->drive.conditions[c].name = hostile[(c + 2) % count];
        for (size_t i = 0; i < it.sample->subject.finding_count; i++)
            it.sample->findings[i].says = hostile[i % count];
        it.sample->subject.title   = hostile[0];
        it.sample->subject.verdict = hostile[2];
        draw_it(&it);
        assert_words_on_the_sheet(&it);
        close_drawn(&it);
    }
}

/* The reader takes names of 40 bytes at most; none of them is cut beside or over the bars. */
static void the_longest_names_are_not_cut_in_the_speed_chart(void **state)
{
    (void)state;
    for (size_t which = 0; which < SAMPLE_CONDITIONS; which++) {
        drawn it;
        open_drawn(&it, TS_FIGURE_SPEEDS);
        it.sample->drive.conditions[which].name = "climb with one engine inoperative, hot d";
        it.sample->train.pads[which].name       = "recirculation pump of the heat exchanger";
        draw_it(&it);
        for (size_t i = 0; i < it.scene.canvas.places.count; i++)
            assert_false(it.scene.canvas.places.items[i].cut);
        close_drawn(&it);
    }
}

static void the_title_of_an_svg_is_escaped(void **state)
{
    (void)state;
    ts_arena *arena         = ts_arena_open(NULL);
    sample   *one           = sample_open(arena);
    one->subject.title      = "A <b> & \x01 B";
    ts_draw_options options = usual_options;
    ts_buffer       svg     = bytes_of(one, &options);
    assert_non_null(strstr(svg.bytes, "<title>A &lt;b&gt; &amp; \xEF\xBF\xBD B</title>"));
    ts_buffer_close(&svg);
    ts_arena_close(arena);
}

/* ---- what is not known ------------------------------------------------------------------- */

static void a_drive_full_of_unknowns_is_drawn(void **state)
{
    (void)state;
    for (int figure = 0; figure < TS_FIGURE_COUNT; figure++) {
        drawn it;
        open_drawn(&it, (ts_figure)figure);
        sample *s = it.sample;
        for (uint32_t i = 0; i < s->train.mesh_count; i++) {
            s->motion.meshes[i].solved = i % 2;
            memset(&s->motion.meshes[i].pair, 0xFF, sizeof s->motion.meshes[i].pair);
            memset(&s->motion.meshes[i].bevel, 0xFF, sizeof s->motion.meshes[i].bevel);
        }
        for (uint32_t i = 6; i < s->train.shaft_count; i += 3) {
            s->motion.shafts[i].placed = false;
            s->motion.shafts[i].x = s->motion.shafts[i].y = (double)NAN;
            s->motion.shafts[i].radius = s->motion.shafts[i].clock = (double)NAN;
        }
        for (size_t i = 0; i < SAMPLE_CONDITIONS * s->train.shaft_count; i += 5)
            s->motion.speed[i] = (double)NAN;
        for (size_t i = 0; i < SAMPLE_CONDITIONS * s->train.mesh_count; i += 4)
            s->power.mesh[i].P[0] = s->power.mesh[i].P[1] = (double)NAN;
        for (size_t i = 0; i < SAMPLE_ACCESSORIES; i += 2) {
            s->drive.accessories[i].body.radius = (ts_measure){(double)NAN, 1, TS_UNKNOWN};
            s->drive.accessories[i].body.length = (ts_measure){(double)NAN, 1, TS_ABSENT};
        }
        s->drive.engine.casing  = (ts_measure){(double)NAN, 1, TS_UNKNOWN};
        s->drive.engine.cowl[1] = (ts_cowl_point){.radius = {(double)NAN, 1, TS_UNKNOWN}};
        s->drive.engine.keep_out[0].radius = (ts_measure){(double)NAN, 1, TS_UNKNOWN};
        draw_it(&it);
        assert_words_on_the_sheet(&it);
        close_drawn(&it);
    }
}

static void a_drive_without_findings_or_pads_is_drawn(void **state)
{
    (void)state;
    for (int figure = 0; figure < TS_FIGURE_COUNT; figure++) {
        drawn it;
        open_drawn(&it, (ts_figure)figure);
        sample *s                  = it.sample;
        s->subject.findings        = NULL;
        s->subject.finding_count   = 0;
        s->subject.verdict         = NULL;
        s->train.pad_count         = 0;
        s->drive.engine.cowl_count = s->drive.engine.keep_out_count = 0;
        for (uint32_t i = 0; i < s->train.shaft_count; i++)
            s->train.shafts[i].pad[0] = s->train.shafts[i].pad[1] = TS_NOWHERE;
        draw_it(&it);
        close_drawn(&it);
    }
}

static void every_pad_with_an_accessory_has_its_row_of_speeds(void **state)
{
    (void)state;
    drawn it;
    open_drawn(&it, TS_FIGURE_SPEEDS);
    draw_it(&it);
    for (uint32_t p = 0; p < it.sample->train.pad_count; p++) {
        const bool busy = it.sample->train.pads[p].use == TS_PAD_ACCESSORY;
        assert_int_equal(find_place(&it, TS_PLACE_ROW, p) != NULL, busy);
    }
    close_drawn(&it);
}

/* ---- refusals ---------------------------------------------------------------------------- */

static int refuse(void *context, const char *bytes, size_t length)
{
    (void)context;
    (void)bytes;
    (void)length;
    return 1;
}

static void options_out_of_range_are_not_understood(void **state)
{
    (void)state;
    ts_arena       *arena   = ts_arena_open(NULL);
    sample         *one     = sample_open(arena);
    const ts_sink   sink    = {refuse, NULL};
    ts_draw_options options = usual_options;
    assert_int_equal(ts_draw(&one->subject, &options, &sink), TS_NO_OUTPUT);
    options.condition = SAMPLE_CONDITIONS;
    assert_int_equal(ts_draw(&one->subject, &options, &sink), TS_NOT_UNDERSTOOD);
    options       = usual_options;
    options.width = 100.0;
    assert_int_equal(ts_draw(&one->subject, &options, &sink), TS_NOT_UNDERSTOOD);
    options       = usual_options;
    options.scale = 100.0;
    assert_int_equal(ts_draw(&one->subject, &options, &sink), TS_NOT_UNDERSTOOD);
    ts_arena_close(arena);
}

static void the_condition_of_most_power_is_taken_when_none_is_asked_for(void **state)
{
    (void)state;
    ts_arena *arena = ts_arena_open(NULL);
    sample   *one   = sample_open(arena);
    assert_int_equal(ts_draw_condition(&one->subject), SAMPLE_RED_LINE);
    one->power.spool[2 * SAMPLE_CRANK].P = -1e6; /* driven counts as well */
    assert_int_equal(ts_draw_condition(&one->subject), SAMPLE_CRANK);
    ts_arena_close(arena);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(the_same_drive_gives_the_same_bytes),
        cmocka_unit_test(no_picture_is_blank_on_any_ground),
        cmocka_unit_test(all_words_stand_on_the_sheet_and_none_on_another),
        cmocka_unit_test(widths_and_units_of_all_kinds_keep_words_on_the_sheet),
        cmocka_unit_test(hostile_names_are_drawn_and_stay_on_the_sheet),
        cmocka_unit_test(the_longest_names_are_not_cut_in_the_speed_chart),
        cmocka_unit_test(the_title_of_an_svg_is_escaped),
        cmocka_unit_test(a_drive_full_of_unknowns_is_drawn),
        cmocka_unit_test(a_drive_without_findings_or_pads_is_drawn),
        cmocka_unit_test(every_pad_with_an_accessory_has_its_row_of_speeds),
        cmocka_unit_test(options_out_of_range_are_not_understood),
        cmocka_unit_test(the_condition_of_most_power_is_taken_when_none_is_asked_for),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
