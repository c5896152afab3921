/* Can any first bytes of a connection break the guard, or turn its mind?
 *
 * What it refuses or lets pass it must judge alike when more bytes follow; and what it lets pass
 * names its host, comes in whole, and says how long its body is.
 */
#include "fuzz/fuzz.h"

#include "apps/serve/head_guard.h"

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size)
{
    static const guard_house house = {
        "127.0.0.1:40123", "http://127.0.0.1:40123",
        "towershaft-40123=00112233445566778899aabbccddeeff00112233445566778899aabbccddeeff"};
    char *bytes = fuzz_copy(data, size);
    if (bytes == NULL)
        return 0;
    const guard_answer whole = head_guard_judge(&house, bytes, size);
    if (whole.verdict == GUARD_PASS) {
        require(whole.route != NULL && whole.head <= size && whole.head <= HEAD_MOST);
        require(whole.body <= whole.route->body_most);
        require(memchr(bytes, '\0', whole.head) == NULL);
        require(memmem(bytes, whole.head, house.host, strlen(house.host)) != NULL);
        const guard_answer head = head_guard_judge(&house, bytes, whole.head);
        require(head.verdict == GUARD_PASS && head.route == whole.route);
        require(head_guard_judge(&house, bytes, whole.head - 1).verdict != GUARD_PASS);
    } else if (whole.verdict == GUARD_REFUSE) {
        require(whole.status >= 400 && whole.status < 600 && whole.says[0] != '\0');
    }
    free(bytes);
    return 0;
}
