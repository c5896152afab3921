/* Is what is written read back as what was meant, by a reader that is not ours? */
#include "base/json_writer.h"

#include "support/close.h"
#include "support/sequence.h"

#include <jansson.h>
#include <signal.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/wait.h>
#include <unistd.h>

static void write_sample(ts_json *json)
{
    ts_json_object(json);
    ts_json_key(json, "tool");
    ts_json_string(json, "towershaft");
    ts_json_key_text(json, (ts_text){"nothing more", 7});
    ts_json_string(json, NULL);
    ts_json_key(json, "list");
    ts_json_array(json);
    ts_json_number(json, 0.1);
    ts_json_integer(json, INT64_MIN);
    ts_json_bool(json, true);
    ts_json_bool(json, false);
    ts_json_array(json);
    ts_json_end(json, ']');
    ts_json_object(json);
    ts_json_end(json, '}');
    ts_json_end(json, ']');
    ts_json_end(json, '}');
}

static void the_layout_is_two_blanks_a_level(void **state)
{
    (void)state;
    ts_buffer out;
    ts_json   json;
    ts_buffer_open(&out, NULL);
    ts_json_begin(&json, &out, false);
    write_sample(&json);
    assert_string_equal(out.bytes, "{\n"
                                   "  \"tool\": \"towershaft\",\n"
                                   "  \"nothing\": null,\n"
                                   "  \"list\": [\n"
                                   "    0.1,\n"
                                   "    -9223372036854775808,\n"
                                   "    true,\n"
                                   "    false,\n"
                                   "    [],\n"
                                   "    {}\n"
                                   "  ]\n"
                                   "}");
    ts_buffer_clear(&out);
    ts_json_begin(&json, &out, true);
    write_sample(&json);
    assert_string_equal(out.bytes, "{\"tool\":\"towershaft\",\"nothing\":null,\"list\":[0.1,"
                                   "-9223372036854775808,true,false,[],{}]}");
    ts_buffer_close(&out);
}

/* Writes the text as a JSON string and reads it back with jansson. */
static void round_trip(ts_buffer *out, ts_text text, ts_text expected)
{
    ts_json json;
    ts_buffer_clear(out);
    ts_json_begin(&json, out, true);
    ts_json_text(&json, text);
    json_error_t error;
    json_t *read = json_loadb(out->bytes, out->length, JSON_DECODE_ANY | JSON_ALLOW_NUL, &error);
    if (read == NULL)
        fail_msg("%s: %s", out->bytes, error.text);
    assert_int_equal(json_string_length(read), expected.length);
    assert_memory_equal(json_string_value(read), expected.at, expected.length);
    json_decref(read);
}

static void every_character_is_read_back(void **state)
{
    (void)state;
    ts_buffer out;
    ts_buffer_open(&out, NULL);
    for (uint32_t code = 0; code < 0x80; code++) {
        const char byte = (char)code;
        round_trip(&out, (ts_text){&byte, 1}, (ts_text){&byte, 1});
    }
    const ts_text mixed = TS_TEXT("\xce\xb1_wt \"q\" \\ \xe2\x80\xa8\xe2\x80\xa9 \xf0\x9f\x94\xa7");
    round_trip(&out, mixed, mixed);
    round_trip(&out,
               TS_TEXT("a\xff\xe2\x82"
                       "b"),
               TS_TEXT("a\xef\xbf\xbd\xef\xbf\xbd\xef\xbf\xbd"
                       "b"));
    ts_buffer_close(&out);
}

static void nothing_in_a_string_ends_a_script_block(void **state)
{
    (void)state;
    ts_buffer out;
    ts_json   json;
    ts_buffer_open(&out, NULL);
    ts_json_begin(&json, &out, true);
    ts_json_object(&json);
    ts_json_key(&json, "<!--&\xe2\x80\xa8");
    ts_json_string(&json, "</script>\xe2\x80\xa9\x7f\n");
    ts_json_end(&json, '}');
    assert_string_equal(out.bytes, "{\"\\u003c!--\\u0026\\u2028\":"
                                   "\"\\u003c/script\\u003e\\u2029\\u007f\\n\"}");
    ts_buffer_close(&out);
}

static void numbers_are_read_back_to_the_bit(void **state)
{
    (void)state;
    ts_buffer out;
    ts_json   json;
    sequence  random = {77};
    double    values[5000];
    ts_buffer_open(&out, NULL);
    ts_json_begin(&json, &out, false);
    ts_json_array(&json);
    for (size_t i = 0; i < 5000; i++) {
        values[i] = i % 2 == 0 ? sequence_double(&random)
                               : (double)sequence_below(&random, 1000000) / 1000.0;
        ts_json_number(&json, values[i]);
    }
    ts_json_end(&json, ']');
    json_error_t error;
    json_t      *read = json_loadb(out.bytes, out.length, JSON_DECODE_INT_AS_REAL, &error);
    assert_non_null(read);
    assert_int_equal(json_array_size(read), 5000);
    for (size_t i = 0; i < 5000; i++)
        assert_same_double(json_real_value(json_array_get(read, i)), values[i]);
    json_decref(read);
    ts_buffer_close(&out);
}

static void sixty_four_levels_fit(void **state)
{
    (void)state;
    ts_buffer out;
    ts_json   json;
    ts_buffer_open(&out, NULL);
    ts_json_begin(&json, &out, true);
    for (int i = 0; i < 64; i++)
        ts_json_array(&json);
    for (int i = 0; i < 64; i++)
        ts_json_end(&json, ']');
    assert_int_equal(out.length, 128);
    ts_buffer_close(&out);
}

/* What a mistake of the program does to it in a checked build, tried in a process of its own. */
static bool is_caught(void (*mistake)(ts_json *json))
{
    const pid_t child = fork();
    if (child == 0) {
        ts_buffer out;
        ts_json   json;
        (void)signal(SIGABRT, SIG_DFL);
        (void)fclose(stderr);
        ts_buffer_open(&out, NULL);
        ts_json_begin(&json, &out, true);
        mistake(&json);
        _exit(0);
    }
    int how = 0;
    assert_int_equal(waitpid(child, &how, 0), child);
    return WIFSIGNALED(how) && WTERMSIG(how) == SIGABRT;
}

static void end_nothing(ts_json *json)
{
    ts_json_end(json, '}');
}

static void end_wrongly(ts_json *json)
{
    ts_json_array(json);
    ts_json_end(json, '}');
}

static void key_in_array(ts_json *json)
{
    ts_json_array(json);
    ts_json_key(json, "a");
}

static void value_without_key(ts_json *json)
{
    ts_json_object(json);
    ts_json_bool(json, true);
}

static void key_without_value(ts_json *json)
{
    ts_json_object(json);
    ts_json_key(json, "a");
    ts_json_end(json, '}');
}

static void not_a_number(ts_json *json)
{
    ts_json_number(json, (double)NAN);
}

static void too_deep(ts_json *json)
{
    for (int i = 0; i < 65; i++)
        ts_json_array(json);
}

static void no_mistake(ts_json *json)
{
    write_sample(json);
}

static void mistakes_are_caught(void **state)
{
    (void)state;
    assert_false(is_caught(no_mistake));
    assert_true(is_caught(end_nothing));
    assert_true(is_caught(end_wrongly));
    assert_true(is_caught(key_in_array));
    assert_true(is_caught(value_without_key));
    assert_true(is_caught(key_without_value));
    assert_true(is_caught(not_a_number));
    assert_true(is_caught(too_deep));
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(the_layout_is_two_blanks_a_level),
        cmocka_unit_test(every_character_is_read_back),
        cmocka_unit_test(nothing_in_a_string_ends_a_script_block),
        cmocka_unit_test(numbers_are_read_back_to_the_bit),
        cmocka_unit_test(sixty_four_levels_fit),
        cmocka_unit_test(mistakes_are_caught),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
