/* How is the verdict said in one sentence? */
#include "report/verdict_sentence.h"

static void plural(ts_buffer *out, size_t count, const char *one, const char *many)
{
    ts_buffer_print(out, "%zu %s", count, count == 1 ? one : many);
}

void ts_verdict_sentence(const ts_check_outcome *outcome, ts_buffer *out)
{
    static const char *const words[] = {"holds", "does not hold", "is not computable"};
    const bool               doubt   = outcome->verdict == TS_HOLDS && outcome->not_computable > 0;
    ts_buffer_print(out, "The drive %s%s: ", words[outcome->verdict],
                    doubt ? " as far as it can be judged" : "");
    plural(out, outcome->open[TS_REFUSE], "refusal", "refusals");
    ts_buffer_add(out, " open, ");
    plural(out, outcome->open[TS_WARN], "warning", "warnings");
    ts_buffer_add(out, ", ");
    plural(out, outcome->open[TS_NOTE], "note", "notes");
    ts_buffer_print(out, "; %zu waived, %zu not computable.", outcome->waived,
                    outcome->not_computable);
}
