/* support/spoil.c: is an answer refused when any one number of its question cannot be? */
#include "support/spoil.h"

#include "support/close.h"

#include <math.h>
#include <string.h>

enum { RECORD_MOST = 4096 };

void spoil_each(const void *record, size_t size, spoil_answers *answers, const spoil_at *all,
                size_t count)
{
    static _Alignas(max_align_t) char spoiled[RECORD_MOST];

    assert_true(size <= sizeof spoiled && count > 0);
    assert_true(answers(record));
    for (size_t i = 0; i < count; i++) {
        const double bad[] = {(double)NAN, all[i].bad};
        for (int b = 0; b < 2; b++) {
            memcpy(spoiled, record, size);
            memcpy(spoiled + all[i].offset, &bad[b], sizeof bad[b]);
            if (answers(spoiled))
                fail_msg("%s = %g is answered", all[i].name, bad[b]);
        }
    }
}
