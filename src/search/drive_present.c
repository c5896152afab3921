/* search/drive_present.c: how does what stands in the boxes of a file read as an arrangement? */
#include "search/drive_present.h"

#include "search/arrange_verify.h"

#include <math.h>
#include <string.h>

typedef struct reader {
    const ts_drive         *drive;
    const ts_drive_problem *made;
    ts_present             *out;
    bool                    weighed; /* is every face and module known so far? */
} reader;

/* The index of an accessory in the problem; -1: none of its. */
static int8_t accessory_of(const reader *r, const ts_pad_end *pad)
{
    if (pad->use != TS_PAD_ACCESSORY)
        return -1;
    for (size_t i = 0; i < r->made->problem.accessory_count; i++)
        if (r->made->accessory_of[i] == (size_t)pad->accessory)
            return (int8_t)i;
    return -1;
}

static uint32_t teeth_of(reader *r, const ts_tally *tally)
{
    const bool known = tally->standing == TS_GIVEN && tally->value > 0;
    r->weighed       = r->weighed && known;
    return known ? (uint32_t)tally->value : 0;
}

static double face_of(reader *r, ts_measure face)
{
    r->weighed = r->weighed && ts_measure_known(face);
    return ts_measure_known(face) ? face.value : 0.0;
}

/* The module of the question that is this one; the number of modules: none is. */
static uint32_t module_of(const reader *r, double m_n)
{
    uint32_t i = 0;
    while (i < r->made->problem.module_count && fabs(r->made->m_n[i] - m_n) > 1e-9)
        i++;
    return i;
}

static bool is_beyond(const ts_box_shaft *record, const char **says)
{
    if (record->branch_count > 0)
        *says = "side branches";
    else if (record->step_count > 1)
        *says = "shafts with more than one further gear";
    else if (record->toward.standing == TS_GIVEN)
        *says = "axes beside the arc";
    return *says != NULL;
}

static ts_arranged_shaft shaft_of(reader *r, const ts_box_shaft *record, double m_n)
{
    ts_arranged_shaft s = {.front = accessory_of(r, &record->front),
                           .rear  = accessory_of(r, &record->rear),
                           .z     = teeth_of(r, &record->teeth),
                           .width = face_of(r, record->face)};
    if (s.front >= 0)
        r->out->placed |= 1u << s.front;
    if (s.rear >= 0)
        r->out->placed |= 1u << s.rear;
    if (record->step_count > 0) {
        const ts_step_gear *step = &record->steps[0];
        s.z_step                 = teeth_of(r, &step->teeth);
        s.step_width             = face_of(r, step->face);
        s.step_module = module_of(r, ts_measure_known(step->module) ? step->module.value : m_n);
        r->weighed    = r->weighed && s.step_module < r->made->problem.module_count;
    }
    (void)is_beyond(record, &r->out->beyond);
    return s;
}

static size_t pads_off(const ts_box_shaft *record)
{
    const ts_pad_end *ends[2] = {&record->front, &record->rear};
    size_t            count   = 0;
    for (int i = 0; i < 2; i++)
        count += ends[i]->use == TS_PAD_COVER || ends[i]->use == TS_PAD_HAND ? 1 : 0;
    return count;
}

static void read_branch(reader *r, const ts_box_shaft *records, size_t count, double m_n,
                        ts_arranged_branch *out)
{
    if (count > TS_ARRANGE_SHAFTS) {
        r->out->beyond = "more shafts than a branch of the search may have";
        return;
    }
    for (size_t i = 0; i < count; i++) {
        out->shafts[out->count++] = shaft_of(r, &records[i], m_n);
        r->out->pads_off += pads_off(&records[i]);
    }
}

/* The one choice of a box as it stands: its module and the teeth of its input. */
static void read_box(reader *r, size_t index, ts_arrange_choice *choice)
{
    const ts_box    *box = &r->drive->drive[r->made->tapped[index]].box;
    ts_arranged_box *out = &r->out->shafts.boxes[index];
    const ts_measure m_n = box->gears.module;
    out->input           = shaft_of(r, &box->input, m_n.value);
    read_branch(r, box->clockwise, box->clockwise_count, m_n.value, &out->branches[0]);
    read_branch(r, box->anticlockwise, box->anticlockwise_count, m_n.value, &out->branches[1]);
    out->present = box->clockwise_count + box->anticlockwise_count > 0 || box->input.node != 0;
    if (!ts_measure_known(m_n) || module_of(r, m_n.value) == r->made->problem.module_count) {
        r->weighed = r->weighed && !out->present;
        return;
    }
    *choice = (ts_arrange_choice){
        .module = module_of(r, m_n.value), .z_in = out->input.z, .speed = r->made->speed[index]};
}

static bool has_accessory(const ts_arranged_box *b)
{
    bool any = b->input.front >= 0 || b->input.rear >= 0;
    for (int side = 0; side < 2; side++)
        for (uint32_t i = 0; i < b->branches[side].count; i++)
            any = any || b->branches[side].shafts[i].front >= 0 ||
                  b->branches[side].shafts[i].rear >= 0;
    return any;
}

bool ts_drive_present(const ts_drive *drive, const ts_drive_problem *made, ts_arena *arena,
                      ts_present *out)
{
    const size_t       count   = made->problem.box_count;
    ts_arrange_box    *boxes   = TS_TAKE(arena, ts_arrange_box, count);
    ts_arrange_choice *choices = TS_TAKE(arena, ts_arrange_choice, count);
    reader             r       = {drive, made, out, true};
    if (boxes == NULL || choices == NULL)
        return false;
    memset(out, 0, sizeof *out);
    memcpy(boxes, made->problem.boxes, count * sizeof *boxes);
    for (size_t b = 0; b < count; b++) {
        read_box(&r, b, &choices[b]);
        boxes[b].choices             = &choices[b];
        boxes[b].choice_count        = 1;
        out->shafts.boxes[b].present = has_accessory(&out->shafts.boxes[b]);
        out->stands                  = out->stands || out->shafts.boxes[b].present;
    }
    out->problem                 = made->problem;
    out->problem.boxes           = boxes;
    r.weighed                    = r.weighed && out->stands && out->beyond == NULL;
    const ts_arrange_account sum = ts_arrange_account_of(&out->problem, &out->shafts);
    out->mass                    = r.weighed ? sum.mass : (double)NAN;
    out->shafts.mass             = r.weighed ? sum.sum : (double)NAN;
    for (uint32_t b = 0; b < count && r.weighed; b++)
        out->shafts.boxes[b].wrap = ts_arrange_wrap(&out->problem, &out->shafts, b);
    return true;
}
