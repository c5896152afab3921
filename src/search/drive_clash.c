/* search/drive_clash.c: what could no arrangement ever meet, as one look at the numbers tells? */
#include "search/drive_clash.h"

#include "search/clash_teller.h"

#include <math.h>

#define SLOWEST 1e-6 /* rad/s; below it a spool stands */

/* ---- where one accessory may stand ----------------------------------------------------------- */

static const ts_accessory_freedom *freedom_of(const ts_clash_teller *t, size_t accessory)
{
    for (size_t i = 0; i < t->drive->arrange.accessory_count; i++)
        if (t->drive->arrange.accessories[i].accessory == (int32_t)accessory)
            return &t->drive->arrange.accessories[i];
    return NULL;
}

static bool spools_clash(ts_clash_teller *t, size_t accessory, const ts_extra_demand *kept,
                         const ts_accessory_freedom *f)
{
    const ts_accessory *a    = &t->drive->accessories[accessory];
    const int32_t       keep = kept != NULL ? kept->spool : -1, only = f != NULL ? f->only : -1;
    const bool   essential = a->purpose.value == TS_FOR_ENGINE || a->purpose.value == TS_FOR_START;
    const size_t told      = t->told;

    if (keep >= 0 && only >= 0 && keep != only)
        ts_clash_tell(
            t, f->node,
            ts_clash_worded(
                t, "`%s` is to be kept on the box of `%s`, and `arrange` puts it on that of `%s`",
                a->name, t->drive->spools[keep].name, t->drive->spools[only].name),
            ts_clash_worded(t, "`box of: %s`, or not to keep it", t->drive->spools[keep].name));
    if (essential && only >= 0 && t->drive->spools[only].cranked.value != TS_YES)
        ts_clash_tell(
            t, f->node,
            ts_clash_worded(
                t,
                "`arrange` puts `%s` on the box of `%s`, which is not cranked, and the start "
                "needs it",
                a->name, t->drive->spools[only].name),
            "a spool that is cranked");
    if (essential && keep >= 0 && t->drive->spools[keep].cranked.value != TS_YES)
        ts_clash_tell(
            t, a->node,
            ts_clash_worded(
                t,
                "`%s` is to be kept on the box of `%s`, which is not cranked, and the start "
                "needs it",
                a->name, t->drive->spools[keep].name),
            "not to keep it there");
    return t->told > told;
}

static const char *face_of(int choice)
{
    return choice == TS_CHOOSE_FRONT ? "front" : "rear";
}

static const char *side_of(int choice)
{
    return choice == TS_CHOOSE_CLOCKWISE ? "clockwise" : "anticlockwise";
}

bool ts_drive_place_clash(const ts_drive_question *question, size_t accessory, ts_diagnostics *list,
                          ts_arena *arena)
{
    ts_clash_teller t = {
        .question = question, .drive = question->drive, .list = list, .arena = arena};
    const char                 *name = t.drive->accessories[accessory].name;
    const ts_accessory_freedom *f    = freedom_of(&t, accessory);
    const ts_extra_demand      *kept = ts_clash_kept(&t, accessory);

    (void)spools_clash(&t, accessory, kept, f);
    if (f == NULL || kept == NULL)
        return t.told > 0;
    if (f->face.value != TS_CHOOSE_EITHER_FACE && kept->face != TS_CHOOSE_EITHER_FACE &&
        f->face.value != (int)kept->face)
        ts_clash_tell(
            &t, f->node,
            ts_clash_worded(&t, "`%s` is to be kept on the %s, and `arrange` puts it on the %s",
                            name, face_of((int)kept->face), face_of(f->face.value)),
            ts_clash_worded(&t, "`face: %s`, or not to keep it", face_of((int)kept->face)));
    if (f->side.value != TS_CHOOSE_EITHER_SIDE && kept->side != TS_CHOOSE_EITHER_SIDE &&
        f->side.value != (int)kept->side)
        ts_clash_tell(
            &t, f->node,
            ts_clash_worded(
                &t, "`%s` is to be kept on the %s side, and `arrange` puts it on the %s one", name,
                side_of((int)kept->side), side_of(f->side.value)),
            ts_clash_worded(&t, "`side: %s`, or not to keep it", side_of((int)kept->side)));
    return t.told > 0;
}

/* ---- the speeds of one accessory ------------------------------------------------------------- */

static const char *condition(const ts_clash_teller *t, size_t c)
{
    return t->drive->conditions[c].name;
}

/* Is there a condition whose own band, with all that was asked of it, is empty? */
static bool band_clash(ts_clash_teller *t, size_t accessory)
{
    const ts_arrange_accessory *a    = &t->p->accessories[accessory];
    const ts_extra_demand      *kept = ts_clash_kept(t, accessory);

    for (size_t c = 0; c < t->p->condition_count; c++) {
        const double low = a->speed_least[c], high = a->speed_most[c];
        if (!(low > high * (1.0 + TS_CLASH_SPEED_SLACK)))
            continue;
        const ts_node node = t->drive->accessories[accessory].node;
        if (kept == NULL || !(kept->ratio > 0.0) || kept->spool < 0) {
            ts_clash_tell(
                t, node,
                ts_clash_worded(
                    t,
                    "with the reserve that `limits` asks for, the band of `%s` in `%s` begins "
                    "at %s and ends at %s",
                    a->name, condition(t, c), ts_clash_rpm(t, low), ts_clash_rpm(t, high)),
                "a wider band, or a smaller reserve");
            return true;
        }
        const double n = kept->ratio * t->drive->conditions[c].speed[kept->spool].value;
        ts_clash_tell(
            t, node,
            ts_clash_worded(
                t, "`%s` is to keep its ratio, which is %s in `%s`, and there its band %s %s",
                a->name, ts_clash_rpm(t, n), condition(t, c),
                n < 0.5 * (low + high) ? "begins at" : "ends at",
                ts_clash_rpm(t, n < 0.5 * (low + high) ? low : high)),
            ts_clash_worded(t, "a band that reaches %s, with its reserve, or not to keep it",
                            ts_clash_rpm(t, n)));
        return true;
    }
    return false;
}

static void tell_ratios(ts_clash_teller *t, size_t accessory, const ts_arrange_box *box,
                        const ts_clash_window *r)
{
    const ts_arrange_accessory *a     = &t->p->accessories[accessory];
    const double               *speed = box->choices[0].speed;
    const ts_node               node  = t->drive->accessories[accessory].node;

    if (!(speed[r->at_least] > SLOWEST)) {
        ts_clash_tell(t, node,
                      ts_clash_worded(
                          t,
                          "`%s` must turn at %s or more in `%s`, where the spool `%s` stands still",
                          a->name, ts_clash_rpm(t, a->speed_least[r->at_least]),
                          condition(t, r->at_least), box->name),
                      "no lower end of its speed there, or another spool");
        return;
    }
    ts_clash_tell(
        t, node,
        ts_clash_worded(
            t,
            "no one ratio meets every band of `%s` on the box of `%s`: %s at least in `%s` asks "
            "for more than %s at most in `%s` allows",
            a->name, box->name, ts_clash_rpm(t, a->speed_least[r->at_least]),
            condition(t, r->at_least), ts_clash_rpm(t, a->speed_most[r->at_most]),
            condition(t, r->at_most)),
        ts_clash_worded(t, "%s or less there in `%s`, or %s or more in `%s`",
                        ts_clash_rpm(t, r->most * speed[r->at_least]), condition(t, r->at_least),
                        ts_clash_rpm(t, r->least * speed[r->at_most]), condition(t, r->at_most)));
}

/* Told for the box where the least is missing. */
static bool ratio_clash(ts_clash_teller *t, size_t accessory)
{
    const ts_arrange_accessory *a     = &t->p->accessories[accessory];
    const ts_arrange_box       *worst = NULL;
    ts_clash_window             least = {.least = (double)INFINITY, .most = 1.0};

    for (size_t b = 0; b < t->p->box_count; b++) {
        const ts_arrange_box *box = &t->p->boxes[b];
        if ((a->boxes >> b & 1u) == 0)
            continue;
        const ts_clash_window r = ts_clash_ratios(t, a, &box->choices[0]);
        if (!(r.least > r.most * (1.0 + TS_CLASH_SPEED_SLACK)))
            return false;
        if (worst == NULL || r.least * least.most < least.least * r.most) {
            least = r;
            worst = box;
        }
    }
    if (worst != NULL)
        tell_ratios(t, accessory, worst, &least);
    return worst != NULL;
}

/* ---- a ratio to keep ------------------------------------------------------------------------- */

static void kept_ratio_clash(ts_clash_teller *t, size_t accessory)
{
    const ts_arrange_accessory *a    = &t->p->accessories[accessory];
    const ts_extra_demand      *kept = ts_clash_kept(t, accessory);

    if (kept == NULL || !(kept->ratio > 0.0))
        return;
    for (size_t b = 0; b < t->p->box_count; b++)
        if ((a->boxes >> b & 1u) != 0 && ts_clash_has_teeth(t, a, &t->p->boxes[b]))
            return;
    ts_clash_tell(
        t, t->drive->accessories[accessory].node,
        ts_clash_worded(
            t,
            "`%s` is to keep its ratio, and no gear of %u to %u teeth has it, on the input, "
            "along it, or beyond one step shaft that `arrange` may use",
            a->name, (unsigned)t->p->z_least, (unsigned)t->p->z_most),
        "`teeth`, `stepped teeth` and `step teeth` that allow it, or not to keep it");
}

size_t ts_drive_clashes(const ts_drive_question *question, const ts_drive_problem *made,
                        ts_diagnostics *list, ts_arena *arena)
{
    ts_clash_teller t = {.question = question,
                         .drive    = question->drive,
                         .p        = &made->problem,
                         .made     = made,
                         .list     = list,
                         .arena    = arena};

    for (size_t a = 0; a < t.p->accessory_count; a++)
        if (!band_clash(&t, a) && !ratio_clash(&t, a))
            kept_ratio_clash(&t, a);
    ts_clash_choice(&t);
    ts_clash_room(&t);
    return t.told;
}
