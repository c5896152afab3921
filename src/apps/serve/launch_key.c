/* How is a secret made, and how compared? */
#include "apps/serve/launch_key.h"

#include <errno.h>
#include <sys/random.h>
#include <sys/types.h>

bool launch_key_make(launch_key *key)
{
    static const char digits[] = "0123456789abcdef";
    unsigned char     bytes[LAUNCH_KEY_DIGITS / 2];
    ssize_t           got;
    do
        got = getrandom(bytes, sizeof bytes, 0);
    while (got < 0 && errno == EINTR);
    if (got != (ssize_t)sizeof bytes)
        return false;
    for (size_t i = 0; i < sizeof bytes; i++) {
        key->text[2 * i]     = digits[bytes[i] >> 4];
        key->text[2 * i + 1] = digits[bytes[i] & 15];
    }
    key->text[LAUNCH_KEY_DIGITS] = '\0';
    return true;
}

bool launch_key_equal(const char *a, const char *b, size_t length)
{
    unsigned char apart = 0;
    for (size_t i = 0; i < length; i++)
        apart |= (unsigned char)((unsigned char)a[i] ^ (unsigned char)b[i]);
    return apart == 0;
}
