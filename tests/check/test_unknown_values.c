/* Knowing less never makes a drive hold: every value of every failing page, made unknown in turn.
 *
 * ctest: timeout=1200
 */
#include "page_snippet.h"
#include "support/case_count.h"

#include "check/rulebook.h"

#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdio.h>
#include <string.h>

#include <cmocka.h>

static int into_buffer(void *context, const char *bytes, size_t length)
{
    ts_buffer_bytes(context, bytes, length);
    return ((ts_buffer *)context)->failed ? 1 : 0;
}

/* The verdict of the drive with one value unknown; does-not-hold where that cannot be written. */
static ts_verdict verdict_without(const ts_buffer *drive, const char *address)
{
    ts_study *study = NULL;
    ts_buffer less;
    ts_buffer_open(&less, NULL);
    assert_int_equal(ts_study_open(NULL, &study), TS_OK);
    const ts_sink          sink    = {into_buffer, &less};
    const ts_study_options options = {.today = PAGE_DAY};
    ts_verdict             verdict = TS_DOES_NOT_HOLD;
    if (ts_study_set_bytes(study, "page.yaml", drive->bytes, drive->length, address, "unknown",
                           &sink) == TS_OK &&
        ts_study_read(study, "page.yaml", less.bytes, less.length, &options) == TS_OK)
        verdict = ts_study_verdict(study);
    ts_study_close(study);
    ts_buffer_close(&less);
    return verdict;
}

/* Values about which a rule of another level asks, or which state the very question that fails: to
 * take the statement back is to ask less, not to know less. */
static bool is_a_demand(const char *rule, const char *address)
{
    (void)rule;
    return strstr(address, "/why") != NULL;
}

/* Every so many values of every so many failing drives; sanitizers make each solve ten times
 * slower. */
enum { STRIDE = TS_CASES(5, 151), EVERY = TS_CASES(1, 5) };

static size_t try_values(const char *rule, const ts_buffer *drive, size_t first, size_t stride)
{
    ts_study       *study  = page_study(drive, PAGE_DAY);
    const ts_source source = study->source;
    ts_buffer       address;
    size_t          tried = 0;
    ts_buffer_open(&address, NULL);
    for (ts_node node = (ts_node)first; node <= source.node_count; node += (ts_node)stride) {
        if (source.nodes[node].form != TS_NODE_SCALAR)
            continue;
        ts_buffer_clear(&address);
        ts_source_address(&source, node, &address);
        if (is_a_demand(rule, address.bytes))
            continue;
        tried++;
        if (verdict_without(drive, address.bytes) == TS_HOLDS)
            fail_msg("the drive that fails %s holds once %s is unknown", rule, address.bytes);
    }
    ts_buffer_close(&address);
    ts_study_close(study);
    return tried;
}

static void knowing_less_never_makes_a_drive_hold(void **state)
{
    (void)state;
    const size_t stride = STRIDE;
    size_t       tried  = 0;
    for (size_t i = 0; i < ts_rulebook_count(); i += EVERY) {
        const ts_text diff = page_block(ts_rulebook_page(i), "diff fails");
        if (diff.length == 0 || ts_rulebook_rules()[i]->level != TS_REFUSE)
            continue;
        ts_buffer drive;
        ts_buffer_open(&drive, NULL);
        page_apply(diff, &drive);
        tried += try_values(ts_rulebook_rules()[i]->id, &drive, 1 + i % stride, stride);
        ts_buffer_close(&drive);
    }
    assert_true(tried > 3000 / STRIDE / EVERY);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(knowing_less_never_makes_a_drive_hold),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
