/* Can the example in the manual be read as it stands? */
#include "model/opened_drive.h"
#include "support/read_file.h"

#include <setjmp.h>
#include <stdarg.h>
#include <stdint.h>
#include <string.h>

#include <cmocka.h>

static void small_file_of_the_manual_reads(void **state)
{
    (void)state;
    const ts_text manual = read_file("docs/drive-file.md");
    const char   *begin  = strstr(manual.at, "```yaml\n");
    assert_non_null(begin);
    begin += strlen("```yaml\n");
    const char *end = strstr(begin, "```");
    assert_non_null(end);
    opened_drive opened;
    open_bytes(&opened, (ts_text){begin, (size_t)(end - begin)});
    if (opened.status != TS_OK)
        fail_msg("%s", ts_diagnostics_at(opened.list, 0)->says);
    ts_train train;
    assert_int_equal(ts_train_build(&opened.drive, opened.arena, opened.list, &train), TS_OK);
    assert_int_equal(train.shaft_count, 4);
    close_drive(&opened);
    free_file(manual);
}

int main(void)
{
    const struct CMUnitTest tests[] = {cmocka_unit_test(small_file_of_the_manual_reads)};
    return cmocka_run_group_tests(tests, NULL, NULL);
}
