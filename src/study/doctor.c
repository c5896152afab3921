/* Is this installation well? */
#include "towershaft/act.h"
#include "towershaft/study.h"

#include "base/json_writer.h"
#include "base/number.h"
#include "base/workings.h"
#include "draw/picture_library.h"
#include "model/yaml_library.h"
#include "study/doctor_cases.h"
#include "study/outlet.h"

#include <math.h>
#include <string.h>

typedef struct examination {
    ts_page   *page;
    ts_buffer *out;
    ts_json    json;
    bool       as_json, well;
    size_t     count, failed, recalled;
} examination;

#define WORD_WIDTH 8 /* of "ok" and "FAILED" with their gap */

static void result_lines(const examination *exam, bool good, const char *says, const char *source,
                         const char *detail)
{
    ts_buffer line;
    ts_buffer_open(&line, NULL);
    ts_buffer_print(&line, "%s%s%s", says, detail[0] != '\0' ? ": " : "", detail);
    ts_page_left(exam->page, ts_text_of(good ? "ok" : "FAILED"), WORD_WIDTH);
    ts_page_wrap_made(exam->page, &line, WORD_WIDTH, WORD_WIDTH);
    if (source == NULL)
        return;
    ts_buffer_fill(exam->out, ' ', WORD_WIDTH + 2);
    ts_page_wrap(exam->page, source, WORD_WIDTH + 2, WORD_WIDTH + 2);
}

static void result(examination *exam, bool good, const char *says, const char *source,
                   const char *detail)
{
    exam->well = exam->well && good;
    exam->count++;
    exam->failed += !good;
    exam->recalled += source != NULL && strstr(source, "from memory") != NULL;
    if (!exam->as_json) {
        result_lines(exam, good, says, source, detail);
        return;
    }
    ts_json_object(&exam->json);
    ts_json_key(&exam->json, "says");
    ts_json_string(&exam->json, says);
    ts_json_key(&exam->json, "well");
    ts_json_bool(&exam->json, good);
    ts_json_key(&exam->json, "detail");
    ts_json_string(&exam->json, detail);
    ts_json_key(&exam->json, "source");
    ts_json_string(&exam->json, source);
    ts_json_end(&exam->json, '}');
}

/* Numbers are written and read with a point, whatever decimal sign this locale has. */
static void locale_free(examination *exam)
{
    char         text[TS_NUMBER_ROOM];
    double       back   = NAN;
    size_t       taken  = 0;
    const size_t length = ts_number_print(text, 0.1);
    const bool   good   = length == 3 && strcmp(text, "0.1") == 0 &&
                      ts_number_parse(TS_TEXT("24600.5"), &back, &taken) == TS_NUMBER_FINE &&
                      back == 24600.5;
    result(exam, good, "numbers do not depend on the locale", NULL, "0.1 written, 24600.5 read");
}

static void formulas(examination *exam)
{
    const ts_input inputs[] = {{"a", 3.0}, {"b", 4.0}};
    double         value    = NAN;
    const char    *fault    = NULL;
    size_t         at       = 0;
    const bool     good =
        ts_formula_evaluate("sqrt(a^2 + b^2)", inputs, 2, &value, &fault, &at) && value == 5.0;
    result(exam, good, "formula texts are evaluated as they read", NULL, "3-4-5 triangle");
}

static void font(examination *exam)
{
    char       family[80];
    const bool right = ts_picture_font(family, sizeof family);
    result(exam, right, "the font of the pictures is installed", "Debian package fonts-b612",
           family);
}

static void published(examination *exam)
{
    for (size_t i = 0; i < ts_doctor_case_count(); i++) {
        const ts_doctor_case *one   = ts_doctor_case_at(i);
        const double          value = one->compute();
        const bool good = fabs(value - one->expected) <= one->tol_rel * fabs(one->expected);
        ts_buffer  detail;
        ts_buffer_open(&detail, NULL);
        ts_buffer_significant(&detail, value, 8);
        ts_buffer_add(&detail, ", printed ");
        ts_buffer_number(&detail, one->expected);
        result(exam, good, one->says, one->source, detail.failed ? "" : detail.bytes);
        ts_buffer_close(&detail);
    }
}

/* The subjects of the published cases, each with their number. */
static void name_subjects(ts_buffer *out)
{
    const char *subject = NULL;
    size_t      count   = 0;
    for (size_t i = 0; i < ts_doctor_case_count(); i++) {
        const ts_doctor_case *one  = ts_doctor_case_at(i);
        const bool            last = i + 1 == ts_doctor_case_count();
        count++;
        if (!last && strcmp(ts_doctor_case_at(i + 1)->proves, one->proves) == 0)
            continue;
        ts_buffer_print(out, "%s%s (%zu)", subject == NULL ? "" : ", ", one->proves, count);
        subject = one->proves;
        count   = 0;
    }
}

static void begin(examination *exam)
{
    if (!exam->as_json) {
        ts_buffer_print(exam->out, "towershaft %s\nlibfyaml %s, cairo %s, pango %s\n\n",
                        ts_version(), ts_yaml_library_version(), ts_cairo_version(),
                        ts_pango_version());
        return;
    }
    ts_json_begin(&exam->json, exam->out, false);
    ts_json_object(&exam->json);
    const char *const fields[][2] = {{"tool", "towershaft"},
                                     {"version", ts_version()},
                                     {"libfyaml", ts_yaml_library_version()},
                                     {"cairo", ts_cairo_version()},
                                     {"pango", ts_pango_version()}};
    for (size_t i = 0; i < sizeof fields / sizeof fields[0]; i++) {
        ts_json_key(&exam->json, fields[i][0]);
        ts_json_string(&exam->json, fields[i][1]);
    }
    ts_json_key(&exam->json, "results");
    ts_json_array(&exam->json);
}

static void finish(examination *exam)
{
    if (!exam->as_json) {
        ts_buffer line;
        ts_buffer_open(&line, NULL);
        ts_buffer_print(&line,
                        "%s: %zu of %zu as they should be; %zu values are recalled from memory.",
                        exam->well ? "Well" : "Not well", exam->count - exam->failed, exam->count,
                        exam->recalled);
        ts_buffer_add(exam->out, "\n");
        ts_page_wrap_made(exam->page, &line, 0, 0);
        ts_buffer_open(&line, NULL);
        ts_buffer_add(&line, exam->well ? "Proved" : "Examined");
        ts_buffer_add(&line, ": that this build, on this machine, reproduces published values of ");
        name_subjects(&line);
        ts_buffer_add(&line, ". Not proved: that a formula fits your drive.");
        ts_page_wrap_made(exam->page, &line, 0, 0);
        ts_page_wrap(exam->page, ts_caution(), 0, 0);
        return;
    }
    ts_json_end(&exam->json, ']');
    ts_json_key(&exam->json, "well");
    ts_json_bool(&exam->json, exam->well);
    ts_json_end(&exam->json, '}');
    ts_buffer_add(exam->out, "\n");
}

ts_status ts_doctor_write(bool json, int columns, bool *well, const ts_sink *sink)
{
    ts_buffer out;
    ts_buffer_open(&out, NULL);
    ts_page     page = ts_outlet_page(&(ts_page_options){.columns = columns}, &out);
    examination exam = {.page = &page, .out = &out, .as_json = json, .well = true};
    begin(&exam);
    locale_free(&exam);
    formulas(&exam);
    font(&exam);
    published(&exam);
    finish(&exam);
    *well                  = exam.well;
    const ts_status status = ts_buffer_send(&out, sink);
    ts_buffer_close(&out);
    return status;
}
