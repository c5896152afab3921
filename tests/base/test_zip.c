/* Do files that stand in one come out as they went in? */
#include "base/zip.h"

#include "support/close.h"

#include <string.h>

/* Check value of CRC-32/ISO-HDLC for the digits 1 to 9, as catalogues of check sums print it (from
 * memory). */
static void the_check_sum_is_the_published_one(void **state)
{
    (void)state;
    assert_int_equal(ts_crc32("123456789", 9), 0xCBF43926);
    assert_int_equal(ts_crc32("", 0), 0);
}

static uint32_t number_at(const char *bytes, int count)
{
    uint32_t value = 0;
    for (int i = count; i-- > 0;)
        value = value << 8 | (unsigned char)bytes[i];
    return value;
}

static void files_stand_where_the_list_says(void **state)
{
    (void)state;
    static const char *const names[] = {"a.txt", "folder/b.bin", "empty"};
    static const char *const texts[] = {"first", "second, longer", ""};
    ts_buffer                out, file;
    ts_zip                   zip;
    ts_buffer_open(&out, NULL);
    ts_buffer_open(&file, NULL);
    ts_zip_begin(&zip, &out);
    for (int i = 0; i < 3; i++) {
        ts_buffer_clear(&file);
        ts_buffer_add(&file, texts[i]);
        ts_zip_add(&zip, names[i], &file);
    }
    ts_zip_finish(&zip);
    assert_false(out.failed);
    const char *end = out.bytes + out.length - 22;
    assert_int_equal(number_at(end, 4), 0x06054B50);
    assert_int_equal(number_at(end + 10, 2), 3);
    const char *row = out.bytes + number_at(end + 16, 4);
    for (int i = 0; i < 3; i++) {
        const uint32_t name = number_at(row + 28, 2), length = number_at(row + 24, 4);
        const char    *at = out.bytes + number_at(row + 42, 4);
        assert_int_equal(number_at(row, 4), 0x02014B50);
        assert_int_equal(number_at(at, 4), 0x04034B50);
        assert_int_equal(name, strlen(names[i]));
        assert_memory_equal(row + 46, names[i], name);
        assert_memory_equal(at + 30, names[i], name);
        assert_int_equal(length, strlen(texts[i]));
        assert_memory_equal(at + 30 + name, texts[i], length);
        assert_int_equal(number_at(row + 16, 4), ts_crc32(texts[i], length));
        row += 46 + name;
    }
    assert_ptr_equal(row, end);
    ts_buffer_close(&file);
    ts_buffer_close(&out);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(the_check_sum_is_the_published_one),
        cmocka_unit_test(files_stand_where_the_list_says),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
