/* How is a quantity refused that cannot be understood? */
#include "study/say_quantity.h"

void ts_study_say_quantity(ts_study *study, const char *says, const char *expected,
                           const char *text, ts_kind kind, const char *unit)
{
    const ts_unit *found;
    double         value;
    ts_buffer      with;

    ts_buffer_open(&with, study->allocator);
    ts_buffer_print(&with, "%s %s", text, unit);
    const bool near =
        !with.failed && ts_quantity_parse(ts_text_of(with.bytes), kind, &value, &found, NULL);
    ts_study_say(study, "unknown-choice", says, expected, near ? with.bytes : NULL);
    ts_buffer_close(&with);
}
