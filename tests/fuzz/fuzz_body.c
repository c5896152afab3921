/* Can any body of a request break what reads it?  What it takes must be one JSON object that reads
 * back the same. */
#include "fuzz/fuzz.h"

#include "apps/serve/request_body.h"

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size)
{
    char   *bytes = fuzz_copy(data, size);
    json_t *body  = bytes != NULL ? request_body_read(bytes, size) : NULL;
    if (body != NULL) {
        require(json_is_object(body));
        char *again = json_dumps(body, JSON_COMPACT);
        require(again != NULL);
        json_t *twice = request_body_read(again, strlen(again));
        require(twice != NULL && json_equal(body, twice));
        json_decref(twice);
        free(again);
        json_decref(body);
    }
    free(bytes);
    return 0;
}
