/* Is a certificate that was written down true of this drive? */
#include "base/number.h"
#include "model/tree_read.h"
#include "study/arranging.h"
#include "study/outlet.h"

#include <math.h>
#include <string.h>

#define REASONS_MOST 40
#define ROUNDING     1e-9

typedef struct verifying {
    ts_arranging  a;
    ts_source     from; /* the certificate */
    const char   *reasons[REASONS_MOST];
    ts_reverified told;
    bool          no_memory;
} verifying;

/* ---- reasons ----------------------------------------------------------------------------------
 */

static void doubt(verifying *v, const char *format, ...) __attribute__((format(printf, 2, 3)));

static void doubt(verifying *v, const char *format, ...)
{
    va_list   list;
    ts_buffer text;
    if (v->told.count == REASONS_MOST)
        return;
    ts_buffer_open(&text, v->a.study->allocator);
    va_start(list, format);
    ts_buffer_print_list(&text, format, list);
    va_end(list);
    const char *kept = text.failed ? NULL : ts_arena_copy(v->a.arena, text.bytes, text.length);
    v->no_memory     = v->no_memory || kept == NULL;
    if (kept != NULL)
        v->reasons[v->told.count++] = kept;
    ts_buffer_close(&text);
}

/* ---- values of the certificate ------------------------------------------------------------------
 */

static ts_node child(const verifying *v, ts_node node, const char *key)
{
    return node != 0 ? ts_source_child(&v->from, node, ts_text_of(key)) : 0;
}

static ts_text word(const verifying *v, ts_node node, const char *key)
{
    const ts_node value = child(v, node, key);
    return value != 0 ? v->from.nodes[value].scalar : (ts_text){NULL, 0};
}

/* NaN for null and for what is missing. */
static double number(const verifying *v, ts_node node, const char *key)
{
    const ts_text text  = word(v, node, key);
    double        value = (double)NAN;
    size_t        taken = 0;
    if (text.length == 0 || ts_number_parse(text, &value, &taken) != TS_NUMBER_FINE ||
        taken != text.length)
        return (double)NAN;
    return value;
}

static uint64_t count(const verifying *v, ts_node node, const char *key)
{
    const double value = number(v, node, key);
    return value >= 0.0 && value < 9e15 ? (uint64_t)value : 0;
}

static ts_node first_of(const verifying *v, ts_node list)
{
    return list != 0 ? v->from.nodes[list].first : 0;
}

/* ---- the file it is about -----------------------------------------------------------------------
 */

static ts_status read_certificate(verifying *v, const char *bytes, size_t length, const char *name)
{
    const ts_text   text = {bytes, length};
    ts_diagnostics *list = ts_diagnostics_open(v->a.arena, name, text);
    if (list == NULL)
        return TS_NO_MEMORY;
    const ts_status status = ts_read_tree(text, name, v->a.arena, list, &v->from);
    if (status == TS_NO_MEMORY)
        return status;
    if (status == TS_OK && ts_diagnostics_count(list) == 0 && v->from.node_count > 0 &&
        child(v, 1, "certificate") != 0 && child(v, 1, "answers") != 0)
        return TS_OK;
    ts_study_say(v->a.study, "no-certificate", "the certificate cannot be read",
                 "what towershaft arrange --json wrote", NULL);
    return TS_NOT_UNDERSTOOD;
}

/* What was kept when it was made is kept again. */
static ts_status keep_again(verifying *v, ts_arrange_options *options)
{
    const ts_node list  = child(v, 1, "kept");
    size_t        total = 0;
    for (ts_node n = first_of(v, list); n != 0; n = v->from.nodes[n].next)
        total++;
    const char **kept = TS_TAKE(v->a.arena, const char *, total + 1);
    if (kept == NULL)
        return TS_NO_MEMORY;
    total = 0;
    for (ts_node n = first_of(v, list); n != 0; n = v->from.nodes[n].next) {
        const ts_text text = v->from.nodes[n].scalar;
        kept[total]        = ts_arena_copy(v->a.arena, text.at, text.length);
        if (kept[total++] == NULL)
            return TS_NO_MEMORY;
    }
    options->keep       = kept;
    options->keep_count = total;
    return TS_OK;
}

static bool is_about_this(verifying *v)
{
    const size_t before = v->told.count;
    const bool   added  = v->a.options->added != NULL;
    if (!ts_text_is(word(v, 1, "sha256"), v->a.sha256))
        doubt(v, "the certificate was made of another drive file: its SHA-256 is not %s",
              v->a.sha256);
    if (!added && v->from.nodes[child(v, 1, "added_sha256")].quote != 0)
        doubt(v, "accessories were added when it was made, and --add names none");
    if (added && !ts_text_is(word(v, 1, "added_sha256"), v->a.added_sha256))
        doubt(v, "other accessories were added when it was made: their SHA-256 is not %s",
              v->a.added_sha256);
    return v->told.count == before;
}

/* ---- answers
 * ------------------------------------------------------------------------------------- */

static int8_t accessory_of(verifying *v, ts_node shaft, const char *key, bool *well)
{
    const ts_arrange_problem *p     = &v->a.problem.problem;
    const ts_node             value = child(v, shaft, key);
    if (value == 0 || v->from.nodes[value].quote == 0)
        return -1; /* null */
    for (size_t i = 0; i < p->accessory_count; i++)
        if (ts_text_is(v->from.nodes[value].scalar, p->accessories[i].name))
            return (int8_t)i;
    *well = false;
    return -1;
}

/* The module of a step shaft's second gear among those that the box may use. */
static uint32_t step_module_of(const verifying *v, size_t box, uint32_t choice, double m_n)
{
    const ts_arrange_box *frame = &v->a.problem.problem.boxes[box];
    for (size_t i = 0; i < frame->step_count; i++) {
        const uint32_t module = frame->steps[i].module == TS_MODULE_SAME
                                    ? frame->choices[choice].module
                                    : frame->steps[i].module;
        if (fabs(v->a.problem.m_n[module] - m_n) <= ROUNDING * m_n)
            return module;
    }
    return UINT32_MAX; /* no step shaft has it, which the rules then find */
}

static void read_step(verifying *v, ts_node node, size_t box, uint32_t choice,
                      ts_arranged_shaft *out, bool *well)
{
    const ts_node step = child(v, node, "step");
    if (step == 0 || v->from.nodes[step].form != TS_NODE_MAPPING)
        return; /* null */
    const double z   = number(v, step, "teeth");
    *well            = *well && z >= 1.0 && z <= TS_ARRANGE_TEETH;
    out->z_step      = *well ? (uint32_t)z : 0;
    out->step_width  = number(v, step, "face");
    out->step_module = step_module_of(v, box, choice, number(v, step, "module"));
}

static ts_arranged_shaft shaft_of(verifying *v, ts_node node, bool *well)
{
    const double z = number(v, node, "teeth"), face = number(v, node, "face");
    *well = *well && z >= 1.0 && z <= TS_ARRANGE_TEETH && face > 0.0;
    return (ts_arranged_shaft){.front = accessory_of(v, node, "front", well),
                               .rear  = accessory_of(v, node, "rear", well),
                               .z     = *well ? (uint32_t)z : 0,
                               .width = face};
}

/* The way to drive the box; UINT32_MAX: there is none such. */
static uint32_t choice_of(const verifying *v, size_t box, double module, double z, double take_off)
{
    const ts_arrange_box *frame = &v->a.problem.problem.boxes[box];
    for (uint32_t c = 0; c < frame->choice_count; c++)
        if (fabs(v->a.problem.m_n[frame->choices[c].module] - module) <= ROUNDING * module &&
            (double)frame->choices[c].z_in == z && (double)frame->choices[c].take_off == take_off)
            return c;
    return UINT32_MAX;
}

/* Which bevels and radial shaft; 0 where there is nothing to choose from. */
static double take_off_of(const verifying *v, ts_node node)
{
    const ts_node taken = child(v, node, "take_off");
    return taken != 0 && v->from.nodes[taken].form == TS_NODE_MAPPING ? number(v, taken, "index")
                                                                      : 0.0;
}

/* The box of that spool; box_count: there is none. */
static size_t box_of(const verifying *v, ts_node node)
{
    const ts_arrange_problem *p = &v->a.problem.problem;
    size_t                    b = 0;
    while (b < p->box_count && !ts_text_is(word(v, node, "spool"), p->boxes[b].name))
        b++;
    return b;
}

static bool read_box(verifying *v, ts_node node, ts_arrangement *out)
{
    static const char *const sides[] = {"clockwise", "anticlockwise"};
    const size_t             index   = box_of(v, node);
    bool                     well    = true;
    if (index == v->a.problem.problem.box_count || out->boxes[index].present)
        return false;
    ts_arranged_box *b = &out->boxes[index];
    b->present         = true;
    b->input           = shaft_of(v, child(v, node, "input"), &well);
    b->choice =
        choice_of(v, index, number(v, node, "module"), (double)b->input.z, take_off_of(v, node));
    b->wrap = number(v, node, "wrap");
    if (b->choice == UINT32_MAX)
        return false;
    for (int side = 0; side < 2 && well; side++)
        for (ts_node n = first_of(v, child(v, node, sides[side])); n != 0 && well;
             n         = v->from.nodes[n].next) {
            if (b->branches[side].count == TS_ARRANGE_SHAFTS)
                return false;
            ts_arranged_shaft *fresh = &b->branches[side].shafts[b->branches[side].count++];
            *fresh                   = shaft_of(v, n, &well);
            read_step(v, n, index, b->choice, fresh, &well);
        }
    return well;
}

static bool read_answer(verifying *v, ts_node node, ts_arrangement *out)
{
    memset(out, 0, sizeof *out);
    out->mass = number(v, node, "mass_widened") + number(v, node, "wrap_counts") +
                number(v, node, "lowered_counts");
    for (ts_node n = first_of(v, child(v, node, "boxes")); n != 0; n = v->from.nodes[n].next)
        if (!read_box(v, n, out))
            return false;
    return isfinite(out->mass);
}

static void check_verdict(verifying *v, ts_node node, size_t index, ts_arrangement *found)
{
    ts_arranged_verdict verdict = {0};
    ts_text             text;
    if (ts_arranging_judge(&v->a, found, &text, &verdict) != TS_OK) {
        v->no_memory = true;
        return;
    }
    const char *is = !verdict.read ? "not computable" : verdict.holds ? "holds" : "does not hold";
    if (!ts_text_is(word(v, node, "verdict"), is))
        doubt(v, "answer %zu: by all rules the drive is now: %s", index + 1, is);
    if (verdict.widened > 0)
        doubt(v, "answer %zu: its faces are too narrow for the whole drive", index + 1);
}

static bool is_near(const verifying *v, ts_node node, const char *key, double value, double mass)
{
    return fabs(number(v, node, key) - value) <= ROUNDING * mass;
}

/* Part by part; only gears are wider in the drive than as they were searched. */
static void check_masses(verifying *v, ts_node node, size_t index, const ts_arrangement *found)
{
    const ts_arrange_account a        = ts_arrange_account_of(&v->a.problem.problem, found);
    const ts_node            p        = child(v, node, "parts");
    const double             searched = number(v, node, "mass"), gears = number(v, p, "gears");
    if (!is_near(v, p, "boxes", a.boxes, a.mass) || !is_near(v, p, "pads", a.pads, a.mass) ||
        !is_near(v, p, "shafts", a.shafts, a.mass) || !is_near(v, p, "idlers", a.idlers, a.mass) ||
        !is_near(v, p, "steps", a.steps, a.mass) || !is_near(v, p, "casing", a.casing, a.mass) ||
        !(fabs(gears - a.gears - (searched - a.mass)) <= ROUNDING * a.mass) ||
        !is_near(v, node, "mass_widened", a.mass, a.mass))
        doubt(v, "answer %zu: its mass is not that of its parts", index + 1);
    if (!is_near(v, node, "wrap", a.wrap, a.wrap) ||
        !is_near(v, node, "wrap_counts", a.for_wrap, a.sum) ||
        !is_near(v, node, "lowered", a.lowered, a.mass) ||
        !is_near(v, node, "lowered_counts", a.for_servicing, a.sum) ||
        !is_near(v, node, "sum", searched + a.for_wrap + a.for_servicing, a.sum))
        doubt(v, "answer %zu: wrap and servicing do not count so much", index + 1);
}

static void check_answers(verifying *v)
{
    double before = 0.0, first = (double)NAN;
    for (ts_node n = first_of(v, child(v, 1, "answers")); n != 0; n = v->from.nodes[n].next) {
        ts_arrangement found;
        const size_t   index = v->told.answers++;
        const double   sum   = number(v, n, "sum");
        if (!read_answer(v, n, &found)) {
            doubt(v, "answer %zu: it has parts that this drive does not have", index + 1);
            continue;
        }
        const ts_arrange_rule rule = ts_arrange_verify(&v->a.problem.problem, &found);
        if (rule != TS_RULE_NONE)
            doubt(v, "answer %zu: %s", index + 1, ts_arrange_rule_says(rule));
        first = index == 0 ? sum : first;
        if (!(sum >= before) || !(sum <= found.mass * (1.0 + ROUNDING)))
            doubt(v, "answer %zu: its mass is out of order", index + 1);
        if (!(fabs(number(v, n, "regret") - (sum - first)) <= ROUNDING * first))
            doubt(v, "answer %zu: its regret is not what its mass says", index + 1);
        check_masses(v, n, index, &found);
        before = sum;
        check_verdict(v, n, index, &found);
    }
    v->told.mass = first;
}

/* What was left out is left out again, so that the account is about the same ways. */
static void leave_out(verifying *v)
{
    for (ts_node n = first_of(v, child(v, 1, "struck")); n != 0; n = v->from.nodes[n].next) {
        const size_t    box = box_of(v, n);
        const ts_struck one = {.box = box, .take_off = (uint32_t)take_off_of(v, n)};
        if (box < v->a.problem.problem.box_count && ts_arranging_leave_out(&v->a, &one))
            v->told.struck++;
        else
            doubt(v, "bevels or a radial shaft were left out that this drive may not choose");
    }
}

/* ---- the account of the search
 * ------------------------------------------------------------------- */

static ts_pair_end end_of(ts_text said)
{
    return ts_text_is(said, "cannot meet every demand") ? TS_PAIR_NO_WAY
           : ts_text_is(said, "by bound")               ? TS_PAIR_BY_BOUND
           : ts_text_is(said, "searched")               ? TS_PAIR_SEARCHED
                                                        : TS_PAIR_OPEN;
}

static double or_infinite(double value)
{
    return isnan(value) ? (double)INFINITY : value;
}

static ts_pair_record way_of(verifying *v, ts_node n)
{
    const size_t   box    = box_of(v, n);
    ts_pair_record record = {.box = (uint32_t)box, .choice = UINT32_MAX};
    if (box < v->a.problem.problem.box_count)
        record.choice = choice_of(v, box, number(v, n, "module"), number(v, n, "input_teeth"),
                                  number(v, n, "take_off"));
    record.bound                   = or_infinite(number(v, n, "bound"));
    record.found                   = or_infinite(number(v, n, "found"));
    record.end                     = end_of(word(v, n, "end"));
    record.labels.made             = count(v, n, "made");
    record.labels.kept             = count(v, n, "kept");
    record.labels.cut_by_bound     = count(v, n, "cut_by_bound");
    record.labels.cut_by_dominance = count(v, n, "cut_by_dominance");
    return record;
}

static void check_sums(verifying *v, ts_node said, const ts_arrange_result *r)
{
    uint64_t made = 0, kept = 0, bound = 0, dominance = 0;
    for (size_t i = 0; i < r->pair_count; i++) {
        made += r->pairs[i].labels.made;
        kept += r->pairs[i].labels.kept;
        bound += r->pairs[i].labels.cut_by_bound;
        dominance += r->pairs[i].labels.cut_by_dominance;
    }
    if (made != count(v, said, "made") || kept != count(v, said, "kept") ||
        bound != count(v, said, "cut_by_bound") || dominance != count(v, said, "cut_by_dominance"))
        doubt(v, "the counts of all ways do not add up to those of the search");
    v->told.labels = made;
}

static void check_account(verifying *v)
{
    const ts_node     said  = child(v, 1, "certificate");
    const ts_node     list  = child(v, said, "pairs");
    size_t            total = 0;
    ts_arrange_result r     = {.bound = or_infinite(number(v, said, "bound"))};
    for (ts_node n = first_of(v, list); n != 0; n = v->from.nodes[n].next)
        total++;
    r.pairs = TS_TAKE(v->a.arena, ts_pair_record, total + 1);
    if (r.pairs == NULL) {
        v->no_memory = true;
        return;
    }
    for (ts_node n = first_of(v, list); n != 0; n = v->from.nodes[n].next)
        r.pairs[r.pair_count++] = way_of(v, n);
    v->told.ways                     = total;
    v->told.proven                   = ts_text_is(word(v, said, "end"), "proven");
    r.end                            = v->told.proven ? TS_ARRANGE_PROVEN : TS_ARRANGE_STOPPED;
    const ts_certificate_check check = ts_arrange_check_certificate(&v->a.problem.problem, &r);
    if (!v->told.proven)
        doubt(v, "the search ended before its proof, so that the certificate proves nothing");
    if (check.missing > 0)
        doubt(v, "%zu ways to drive a box are missing, or told twice", check.missing);
    if (check.not_closed > 0)
        doubt(v, "%zu ways to drive a box are not closed by what is said of them",
              check.not_closed);
    if (v->told.mass > r.bound * (1.0 + ROUNDING))
        doubt(v, "the first answer is heavier than the bound");
    check_sums(v, said, &r);
}

/* ---- the answer
 * ---------------------------------------------------------------------------------- */

static ts_status tell(verifying *v, const ts_page_options *shown, const ts_sink *sink)
{
    ts_buffer out;
    v->told.reasons = v->reasons;
    v->told.caution = ts_caution();
    v->told.version = ts_version();
    v->told.sha256  = v->a.sha256;
    ts_buffer_open(&out, v->a.study->allocator);
    ts_page page = ts_outlet_page(shown, &out);
    if (v->a.options->json)
        ts_reverified_json(&v->told, &out);
    else
        ts_reverified_page(&v->told, &page);
    const ts_status status = ts_buffer_send(&out, sink);
    ts_buffer_close(&out);
    return status;
}

static ts_status verify(verifying *v, ts_arrange_options *options)
{
    if (!is_about_this(v))
        return TS_OK;
    ts_status status = keep_again(v, options);
    if (status == TS_OK)
        status = ts_arranging_prepare(&v->a);
    if (status != TS_OK)
        return status;
    leave_out(v);
    check_answers(v);
    check_account(v);
    return v->no_memory || ts_drive_width_failed(v->a.widths) ? TS_NO_MEMORY : TS_OK;
}

ts_status ts_arrange_verify_write(ts_study *study, const ts_arrange_options *options,
                                  const char *certificate, size_t length, const char *name,
                                  const ts_page_options *page, bool *holds, const ts_sink *sink)
{
    ts_arrange_options own = *options;
    verifying          v   = {.a    = {.study = study, .options = &own},
                              .told = {.certificate = name, .mass = (double)NAN}};
    *holds                 = false;
    if (!ts_study_ask(study, TS_WANT_DRIVE))
        return TS_NOT_UNDERSTOOD;
    ts_status status = ts_arranging_open(&v.a);
    if (status == TS_OK)
        status = read_certificate(&v, certificate, length, name);
    if (status == TS_OK)
        status = verify(&v, &own);
    if (status == TS_OK)
        status = tell(&v, page, sink);
    *holds = status == TS_OK && v.told.count == 0;
    ts_arranging_close(&v.a);
    return status;
}
