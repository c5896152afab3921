/* Which picture of the drive was asked for? */
#include "study/figures.h"

#include "draw/picture_library.h"
#include "report/verdict_sentence.h"
#include "study/address.h"
#include "study/neck_seizures.h"
#include "study/starting.h"
#include "study/twisting.h"
#include "study/warm_course.h"
#include "study/whirling.h"

#include <math.h>
#include <stdlib.h>
#include <string.h>

static const struct {
    const char *name, *says;
    ts_figure   figure;
    bool        all; /* it shows all conditions at once, or none: none is to be chosen */
} figures[] = {
    {"behind", "the face of the boxes, seen from behind, looking forward", TS_FIGURE_BEHIND, false},
    {"front", "the face of the boxes, seen from the front, looking rearward", TS_FIGURE_FRONT,
     false},
    {"pads", "the faces that bear pads, each as who faces it sees it, with their places",
     TS_FIGURE_PADS, true},
    {"unrolled", "the arc laid flat: face widths, bodies on both faces, gaps", TS_FIGURE_UNROLLED,
     true},
    {"power", "who drives whom in one condition: ribbons over the face", TS_FIGURE_POWER, false},
    {"speeds", "pad speed bands against the travel of the spools", TS_FIGURE_SPEEDS, true},
    {"teeth", "one mesh, tooth in space: path of contact, working flanks, sliding", TS_FIGURE_TEETH,
     false},
    {"root", "the critical sections of both roots of one mesh", TS_FIGURE_ROOT, false},
    {"margins", "every reserve in every condition: which condition governs?", TS_FIGURE_MARGINS,
     true},
    {"mass", "what weighs how much, heaviest first, with what is assumed", TS_FIGURE_MASS, true},
    {"selectivity", "does the right neck break first? torque against duration, pad by pad",
     TS_FIGURE_SELECTIVITY, true},
    {"necks", "chances of breaking too early and too late over the diameter of a neck",
     TS_FIGURE_NECKS, false},
    {"widths", "face widths before and after `size`, and what sets each", TS_FIGURE_WIDTHS, true},
    {"float", "the take-offs in section with the travel of their spools, three ways to bear it",
     TS_FIGURE_FLOAT, false},
    {"modes", "how the parts swing in torsion, mode by mode", TS_FIGURE_MODES, true},
    {"interference", "natural frequencies of torsion against what excites them, by time spent",
     TS_FIGURE_INTERFERENCE, true},
    {"campbell", "whirl speeds, shapes and unbalance of the radial shaft nearest to whirling",
     TS_FIGURE_CAMPBELL, true},
    {"reach", "how long and thick the radial shaft may be, by the place of its mid bearing",
     TS_FIGURE_REACH, true},
    {"start", "how the engine comes from rest to idle, or on to a condition: speeds and torques",
     TS_FIGURE_START, false},
    {"seizure", "an accessory seizes: what bears how much of it in time, with its neck and without",
     TS_FIGURE_SEIZURE, false},
    {"jolt",
     "a load that comes suddenly: what bears how much of it in time, and which neck is nearest",
     TS_FIGURE_JOLT, false},
    {"swing", "one mode of torsion over the face: how far each part swings, and what strains",
     TS_FIGURE_SWING, true},
    {"play", "what play is left between teeth from a cold soak on, condition by condition",
     TS_FIGURE_PLAY, true},
    {"heat", "where power becomes heat in one condition: discs over the face", TS_FIGURE_HEAT,
     false},
    {"stops", "the drive as a tree, greyed to what still turns after a failure", TS_FIGURE_STOPS,
     false},
};

static const char *const formats[] = {"svg", "pdf", "png", "dxf"};
static const char *const grounds[] = {"light", "dark", "contrast", "print"};

#define COUNT(list) (sizeof(list) / sizeof(list)[0])

const char *ts_figure_name(size_t index)
{
    return index < COUNT(figures) ? figures[index].name : NULL;
}

const char *ts_figure_says(size_t index)
{
    return index < COUNT(figures) ? figures[index].says : NULL;
}

bool ts_figure_is_plan(size_t index)
{
    return index < COUNT(figures) && ts_figure_has_size(figures[index].figure);
}

bool ts_figure_has_condition(const char *name)
{
    for (size_t i = 0; i < COUNT(figures); i++)
        if (strcmp(figures[i].name, name) == 0)
            return !figures[i].all;
    return true;
}

static bool choose_figure(ts_study *study, const char *word, ts_figure *figure)
{
    const char *names[COUNT(figures)];
    for (size_t i = 0; i < COUNT(figures); i++)
        names[i] = figures[i].name;
    const int chosen = ts_study_choose(study, "picture", word, names, COUNT(figures));
    if (chosen >= 0)
        *figure = figures[chosen].figure;
    return chosen >= 0;
}

/* The cylindrical mesh that a node is, or lies in; TS_NOWHERE when there is none. */
static uint32_t mesh_of(const ts_study *study, ts_node node)
{
    for (; node != 0; node = study->source.nodes[node].parent)
        for (uint32_t m = 0; m < study->train.mesh_count; m++)
            if (study->train.meshes[m].node == node &&
                study->train.meshes[m].kind == TS_MESH_CYLINDRICAL)
                return m;
    return TS_NOWHERE;
}

/* Names every mesh that can be drawn. */
static void say_no_mesh(ts_study *study, const char *word)
{
    ts_buffer says, expected;
    ts_buffer_open(&says, study->allocator);
    ts_buffer_open(&expected, study->allocator);
    ts_buffer_print(&says, "%s is no cylindrical mesh", *word != 0 ? word : "an empty address");
    for (uint32_t m = 0; m < study->train.mesh_count; m++) {
        if (study->train.meshes[m].kind != TS_MESH_CYLINDRICAL)
            continue;
        if (expected.length > 0)
            ts_buffer_add(&expected, ", ");
        ts_source_address(&study->source, study->train.meshes[m].node, &expected);
    }
    if (!says.failed && !expected.failed)
        ts_study_say(study, "no-mesh", says.bytes,
                     expected.length > 0 ? expected.bytes : "a drive with a box of gears", NULL);
    ts_buffer_close(&says);
    ts_buffer_close(&expected);
}

static bool choose_mesh(ts_study *study, const char *word, ts_node *node)
{
    bool whole = false;
    *node      = 0;
    if (word == NULL)
        return true;
    const ts_node named = ts_address_node(study, ts_text_of(word), &whole);
    if (named == 0 && !whole)
        return false;
    const uint32_t mesh = mesh_of(study, named);
    if (mesh == TS_NOWHERE) {
        say_no_mesh(study, word);
        return false;
    }
    *node = study->train.meshes[mesh].node;
    return true;
}

/* Names every figure that may be written as DXF. */
static void say_no_size(ts_study *study, const char *word)
{
    ts_buffer says, expected;
    ts_buffer_open(&says, study->allocator);
    ts_buffer_open(&expected, study->allocator);
    ts_buffer_print(&says, "the picture %s has no true size, and a DXF wants one", word);
    for (size_t i = 0; i < COUNT(figures); i++)
        if (ts_figure_has_size(figures[i].figure))
            ts_buffer_print(&expected, "%s%s", expected.length > 0 ? ", " : "", figures[i].name);
    if (!says.failed && !expected.failed)
        ts_study_say(study, "no-true-size", says.bytes, expected.bytes, NULL);
    ts_buffer_close(&says);
    ts_buffer_close(&expected);
}

/* Of a failure or a seizure the word names something else. */
static bool names_mesh(ts_figure figure)
{
    return figure != TS_FIGURE_STOPS && figure != TS_FIGURE_SEIZURE && figure != TS_FIGURE_JOLT &&
           figure != TS_FIGURE_SWING;
}

bool ts_study_figure(ts_study *study, const ts_figure_options *from, ts_draw_options *to)
{
    if (!choose_figure(study, from->figure, &to->figure) ||
        !ts_study_choose_condition(study, from->condition, &to->condition) ||
        !choose_mesh(study, names_mesh(to->figure) ? from->at : NULL, &to->mesh))
        return false;
    const int format = ts_study_choose(study, "format", from->format, formats, COUNT(formats));
    const int ground =
        format < 0 ? -1 : ts_study_choose(study, "ground", from->ground, grounds, COUNT(grounds));
    if (format == TS_PICTURE_DXF && !ts_figure_has_size(to->figure)) {
        say_no_size(study, from->figure);
        return false;
    }
    to->format    = (ts_picture_format)format;
    to->ground    = (ts_ground)ground;
    to->width     = 0.0;
    to->scale     = from->scale;
    to->units     = from->us ? TS_UNITS_US : TS_UNITS_METRIC;
    to->caution   = ts_caution();
    to->allocator = study->allocator;
    return ground >= 0;
}

/* Finds the face widths of a solved study, whose gears have them then. */
static ts_status widen(ts_study *study, ts_drawing_subject *subject)
{
    const ts_width_rig rig    = {&study->drive, &study->train,      &study->motion, &study->power,
                                 &study->teeth, study->diagnostics, &study->lines};
    ts_width_plan     *plan   = TS_TAKE(study->asked, ts_width_plan, 1);
    ts_status          status = plan != NULL ? TS_OK : TS_NO_MEMORY;

    if (status == TS_OK)
        status = ts_find_tooth_widths(&rig, TS_WIDTH_STEP_USUAL, study->asked, plan);
    subject->train      = &study->train;
    subject->motion     = &study->motion;
    subject->power      = &study->power;
    subject->drive      = &study->drive;
    subject->source     = &study->source;
    subject->widths     = plan;
    subject->teeth      = &study->teeth;
    subject->width_step = TS_WIDTH_STEP_USUAL;
    return status;
}

/* On a study of its own, so that the one that was asked stays as it is. */
static ts_status draw_widened(const ts_study *study, const ts_draw_options *drawn,
                              ts_drawing_subject *subject, const ts_sink *sink)
{
    ts_study *other  = NULL;
    ts_status status = ts_study_open(study->allocator, &other);

    if (status != TS_OK)
        return status;
    ts_study_options options = study->options;
    options.workings         = false;
    status = ts_study_read(other, study->name, study->bytes.at, study->bytes.length, &options);
    if (status == TS_OK)
        status = widen(other, subject);
    if (status == TS_OK)
        status = ts_draw(subject, drawn, sink);
    ts_study_close(other);
    return status;
}

ts_drawing_subject ts_study_subject(const ts_study *study, const char *verdict)
{
    return (ts_drawing_subject){
        .drive           = &study->drive,
        .memo            = ts_stock_memo(study->stock),
        .train           = &study->train,
        .motion          = &study->motion,
        .power           = &study->power,
        .floats          = &study->floats,
        .mass            = &study->mass,
        .heat            = &study->heat,
        .source          = &study->source,
        .findings        = study->outcome.findings,
        .finding_count   = study->outcome.finding_count,
        .select          = &study->select,
        .judgements      = study->outcome.judgements,
        .judgement_count = study->outcome.judgement_count,
        .file            = study->name,
        .hash            = ts_study_sha256(study),
        .version         = ts_version(),
        .verdict         = verdict,
    };
}

/* To a condition that is faster than idle it goes on. */
static ts_status follow_start(ts_study *study, int32_t condition, ts_drawing_subject *subject)
{
    const bool          on   = condition >= 0 && ts_start_is_beyond(study, (uint32_t)condition);
    const ts_start_wish wish = {(double)NAN, (double)NAN, TS_START_SAMPLES, false,
                                on ? (uint32_t)condition : TS_NOWHERE};
    ts_start_answer     start;
    const ts_status     status = ts_study_start(study, &wish, study->asked, &start);
    subject->start             = status == TS_OK ? start.it : NULL;
    subject->start_to = on && status == TS_OK ? study->drive.conditions[condition].name : NULL;
    return status;
}

/* Of the drive with the most meshes. */
static ts_status follow_play(const ts_study *study, ts_arena *arena, ts_drawn_warmth *out)
{
    const ts_warm_wish wish = {.soak = (double)NAN, .air = (double)NAN, .samples = TS_WARM_SAMPLES};
    ts_warm_answer     warm;
    const ts_status    status = ts_study_warm(study, &wish, arena, &warm);

    *out = (ts_drawn_warmth){warm.courses, warm.legs, warm.leg_count, warm.samples};
    for (uint32_t d = 1; status == TS_OK && d < study->drive.drive_count; d++)
        if (warm.courses[d].play_count > out->course->play_count)
            out->course = warm.courses + d;
    return status;
}

bool ts_study_has_font(ts_study *study)
{
    char family[64];
    (void)ts_picture_font(family, sizeof family);
    if (strcmp(family, "none") != 0)
        return true;
    ts_study_say(study, "no-font", "this machine has no font to write with",
                 "the font B612 (Debian package fonts-b612), or any other", NULL);
    return false;
}

/* With all figures of a folder the address is that of a mesh. */
static const char *named_of(const ts_figure_options *options)
{
    return options->at != NULL && strncmp(options->at, "drive/", 6) != 0 ? options->at : NULL;
}

/* "2" is the second mode that strains anything. */
static bool choose_mode(ts_study *study, const char *word, size_t *mode)
{
    char *end = NULL;

    *mode = 0;
    if (word == NULL)
        return true;
    const long number = strtol(word, &end, 10);
    *mode             = number > 0 ? (size_t)number - 1 : 0;
    if (end != word && *end == '\0' && number > 0 && number < 1000)
        return true;
    ts_study_say(study, "unknown-choice", "that is no number of a mode of torsion",
                 "1 for the slowest, 2 for the next one, ...", NULL);
    return false;
}

ts_status ts_study_draw(ts_study *study, const ts_figure_options *options, const ts_sink *sink)
{
    ts_draw_options drawn;
    if (!ts_study_ask(study, TS_WANT_DRIVE) || !ts_study_figure(study, options, &drawn))
        return ts_study_refused(study);
    if (drawn.format != TS_PICTURE_DXF && !ts_study_has_font(study))
        return TS_NOT_UNDERSTOOD;
    ts_buffer verdict;
    ts_buffer_open(&verdict, study->allocator);
    ts_verdict_sentence(&study->outcome, &verdict);
    ts_drawing_subject subject = ts_study_subject(study, verdict.bytes);
    ts_status          status  = verdict.failed ? TS_NO_MEMORY : TS_OK;
    if (status == TS_OK && drawn.figure == TS_FIGURE_CAMPBELL)
        status = ts_study_course(study, TS_COURSE_SPEEDS, study->asked, &subject.courses);
    if (status == TS_OK && drawn.figure == TS_FIGURE_REACH)
        status = ts_study_course(study, TS_COURSE_MAP, study->asked, &subject.courses);
    if (status == TS_OK && drawn.figure == TS_FIGURE_START)
        status = follow_start(study, drawn.condition, &subject);
    if (status == TS_OK && drawn.figure == TS_FIGURE_SELECTIVITY && options->seizures)
        status = ts_study_neck_seizures(study, study->asked, &subject.peaks);
    if (status == TS_OK && drawn.figure == TS_FIGURE_STOPS)
        status = ts_study_show_failure(study, options->at, study->asked, &subject);
    ts_drawn_warmth warmth;
    if (status == TS_OK && drawn.figure == TS_FIGURE_PLAY) {
        status       = follow_play(study, study->asked, &warmth);
        subject.warm = &warmth;
    }
    ts_drawn_seizure seizure;
    if (status == TS_OK && drawn.figure == TS_FIGURE_SEIZURE) {
        status = ts_study_drawn_seizure(study, named_of(options), options->condition, &seizure);
        subject.seizure = &seizure;
    }
    if (status == TS_OK && drawn.figure == TS_FIGURE_JOLT) {
        status = ts_study_drawn_jolt(study, named_of(options), options->condition, &seizure);
        subject.seizure = &seizure;
    }
    if (status == TS_OK && drawn.figure == TS_FIGURE_SWING &&
        !choose_mode(study, named_of(options), &subject.mode))
        status = ts_study_refused(study);
    subject.twists      = study->twist.items;
    subject.forced      = study->twist.forced;
    subject.twist_count = study->twist.count;
    subject.whirls      = &study->whirls;
    if (status == TS_OK)
        status = drawn.figure == TS_FIGURE_WIDTHS ? draw_widened(study, &drawn, &subject, sink)
                                                  : ts_draw(&subject, &drawn, sink);
    ts_buffer_close(&verdict);
    return status;
}
