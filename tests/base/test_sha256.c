/* Is the fingerprint the published one?
 *
 * Source: FIPS 180-4 and the NIST examples "SHA256.pdf" (from memory); the million of 'a' is from
 * FIPS 180-2, appendix B.3 (from memory).
 */
#include "base/sha256.h"

#include "support/close.h"

#include <stdlib.h>
#include <string.h>

static void expect_hash(ts_text text, const char *expected)
{
    char out[65];
    ts_sha256(text, out);
    assert_string_equal(out, expected);
}

static void published_messages_have_published_fingerprints(void **state)
{
    (void)state;
    expect_hash(TS_TEXT("abc"), "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad");
    expect_hash(TS_TEXT(""), "e3b0c44298fc1c149afbf4c8996fb92427ae41e4649b934ca495991b7852b855");
    expect_hash(TS_TEXT("abcdbcdecdefdefgefghfghighijhijkijkljklmklmnlmnomnopnopq"),
                "248d6a61d20638b8e5c026930c3e6039a33ce45964ff2167f6ecedd419db06c1");
    /* 896 bits */
    expect_hash(TS_TEXT("abcdefghbcdefghicdefghijdefghijkefghijklfghijklmghijklmnhijklmnoijklmnop"
                        "jklmnopqklmnopqrlmnopqrsmnopqrstnopqrstu"),
                "cf5b16a778af8380036ce59e7b0492370b249b11e8f07a51afac45037afee9d1");
}

static void a_million_letters(void **state)
{
    (void)state;
    char *letters = malloc(1000000);
    assert_non_null(letters);
    memset(letters, 'a', 1000000);
    expect_hash((ts_text){letters, 1000000},
                "cdc76e5c9914fb9281a1c7e284d73e67f1809a48a497200e046d39ccc7112cd0");
    free(letters);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(published_messages_have_published_fingerprints),
        cmocka_unit_test(a_million_letters),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
