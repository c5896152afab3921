/* Do people read the formula that the program evaluates? */
#include "base/formula_typeset.h"

#include "base/symbol_typeset.h"
#include "support/close.h"

#include <string.h>

#define COUNT(array) (sizeof(array) / sizeof(array)[0])

typedef struct pair {
    const char *ascii;
    const char *shown;
} pair;

static void symbols_are_set_in_greek_with_prime_and_star(void **state)
{
    static const pair cases[] = {
        {"sigma_H", "\u03C3_H"},    {"eps_alpha", "\u03B5_\u03B1"},
        {"K_Hbeta", "K_H\u03B2"},   {"F_betax", "F_\u03B2x"},
        {"alpha_wt", "\u03B1_wt"},  {"c_gammaalpha", "c_\u03B3\u03B1"},
        {"DeltaT", "\u0394T"},      {"Deltatheta", "\u0394\u03B8"},
        {"Z_eps", "Z_\u03B5"},      {"K_HbetaS", "K_H\u03B2S"},
        {"d_b1p", "d\u2032_b1"},    {"alphap", "\u03B1\u2032"},
        {"Kp", "K\u2032"},          {"xs", "x*"},
        {"h_aPs", "h*_aP"},         {"rho_fPs", "\u03C1*_fP"},
        {"x_alphas", "x*_\u03B1"},  {"pi", "\u03C0"},
        {"F_beta_x", "F_\u03B2_x"}, {"omega", "\u03C9"},
    };
    (void)state;
    ts_buffer out;
    ts_buffer_open(&out, NULL);
    for (size_t i = 0; i < COUNT(cases); i++) {
        ts_buffer_clear(&out);
        ts_symbol_typeset(&out, ts_text_of(cases[i].ascii));
        assert_string_equal(out.bytes, cases[i].shown);
    }
    ts_buffer_close(&out);
}

static void words_stay_words(void **state)
{
    static const char *const words[] = {"pinion", "n_pinion", "spindle", "d_shafts", "h_as",  "T_p",
                                        "p",      "s",        "n_p",     "L_10h",    "a_ISO", "m_n",
                                        "nut",    "d_pitch",  "T_max",   "x_",       "_x"};
    (void)state;
    ts_buffer out;
    ts_buffer_open(&out, NULL);
    for (size_t i = 0; i < COUNT(words); i++) {
        ts_buffer_clear(&out);
        ts_symbol_typeset(&out, ts_text_of(words[i]));
        assert_string_equal(out.bytes, words[i]);
    }
    ts_buffer_close(&out);
}

static void formulas_read_with_signs_roots_and_small_digits(void **state)
{
    static const pair cases[] = {
        {"2*T/d_1", "2\u00B7T/d_1"},
        {"a-b", "a \u2212 b"},
        {"-a^2 + b", "\u2212a\u00B2 + b"},
        {"d^12", "d\u00B9\u00B2"},
        {"r^-1", "r\u207B\u00B9"},
        {"T^p", "T^p"},
        {"T^(1/p)", "T^(1/p)"},
        {"x^0.5", "x^0.5"},
        {"sqrt(F_t/(d_1*b))", "\u221A(F_t/(d_1\u00B7b))"},
        {"sqrt(x)^2", "(\u221A(x))\u00B2"},
        {"pi*d^2/4", "\u03C0\u00B7d\u00B2/4"},
        {"asin(x) + acos(x) - atan(x)", "arcsin(x) + arccos(x) \u2212 arctan(x)"},
        {"atan2(y, x)", "atan2(y, x)"},
        {"abs(z_2-z_1)", "|z_2 \u2212 z_1|"},
        {"sum(n*T)", "\u03A3(n\u00B7T)"},
        {"inv(alpha_t)", "inv(\u03B1_t)"},
        {"2.06e11*eps", "2.06e11\u00B7\u03B5"},
        {"1e3^2", "(1e3)\u00B2"},
    };
    (void)state;
    ts_buffer out;
    ts_buffer_open(&out, NULL);
    for (size_t i = 0; i < COUNT(cases); i++) {
        ts_buffer_clear(&out);
        assert_true(ts_formula_typeset(&out, cases[i].ascii));
        assert_string_equal(out.bytes, cases[i].shown);
    }
    ts_buffer_close(&out);
}

/* The brackets that are shown are those that the tree needs, whatever was written. */
static void brackets_stand_where_the_order_needs_them(void **state)
{
    static const pair cases[] = {
        {"((a)*(b))", "a\u00B7b"},
        {"a-(b-c)", "a \u2212 (b \u2212 c)"},
        {"(a-b)-c", "a \u2212 b \u2212 c"},
        {"a/(b/c)", "a/(b/c)"},
        {"(a/b)/c", "a/b/c"},
        {"a*(b/c)", "a\u00B7(b/c)"},
        {"(a*b)^2", "(a\u00B7b)\u00B2"},
        {"(a^2)^3", "(a\u00B2)\u00B3"},
        {"a^b^c", "a^(b^c)"},
        {"a*(b+c)", "a\u00B7(b + c)"},
        {"a*-b", "a\u00B7(\u2212b)"},
        {"a--b", "a \u2212 (\u2212b)"},
        {"(-a)^2", "(\u2212a)\u00B2"},
        {"-(a+b)", "\u2212(a + b)"},
        {"a + (b)", "a + b"},
        {"sin(x)^2", "sin(x)\u00B2"},
    };
    (void)state;
    ts_buffer out;
    ts_buffer_open(&out, NULL);
    for (size_t i = 0; i < COUNT(cases); i++) {
        ts_buffer_clear(&out);
        assert_true(ts_formula_typeset(&out, cases[i].ascii));
        assert_string_equal(out.bytes, cases[i].shown);
    }
    ts_buffer_close(&out);
}

static void numbers_take_the_places_of_symbols(void **state)
{
    static const ts_input inputs[] = {
        {"T", 34.1}, {"d", 0.061},   {"x", -0.25}, {"E", 2.06e11}, {"P", 1.0},  {"P", -2.0},
        {"q", 1.0},  {"q", 2.0},     {"q", 3.0},   {"q", 4.0},     {"q", 5.0},  {"q", 6.0},
        {"q", 7.25}, {"n", 1.0 / 3}, {"z", -0.0},  {"w", 1e-7},    {"v", 100.0}};
    static const pair cases[] = {
        {"2*T/d", "2\u00B734.1/0.061"},
        {"T + x", "34.1 + (\u22120.25)"},
        {"x + T", "\u22120.25 + 34.1"},
        {"x^2", "(\u22120.25)\u00B2"},
        {"E^2*w", "(2.06e11)\u00B2\u00B71e-7"},
        {"sum(P)", "(1 + (\u22122))"},
        {"T*sum(d*P)", "34.1\u00B7(0.061\u00B71 + 0.061\u00B7(\u22122))"},
        {"sum(q)", "(1 + 2 + 3 + \u2026 + 7.25, 7 terms)"},
        {"n*z", "0.333333\u00B70"},
        {"v*unknown", "100\u00B7unknown"},
    };
    (void)state;
    ts_buffer out;
    ts_buffer_open(&out, NULL);
    for (size_t i = 0; i < COUNT(cases); i++) {
        ts_buffer_clear(&out);
        assert_true(ts_formula_typeset_numbers(&out, cases[i].ascii, inputs, COUNT(inputs), 6));
        assert_string_equal(out.bytes, cases[i].shown);
    }
    ts_buffer_close(&out);
}

static void values_keep_their_digits_and_lose_final_zeros(void **state)
{
    static const struct {
        double      value;
        const char *shown;
    } cases[] = {
        {0.0, "0"},
        {-0.0, "0"},
        {100.0, "100"},
        {2600.0, "2600"},
        {1.5, "1.5"},
        {-1.5, "\u22121.5"},
        {1e9, "1e9"},
        {2.5e-9, "2.5e-9"},
        {1234567.0, "1234570"},
        {1.0 / 3, "0.333333"},
        {(double)INFINITY, "\u221E"},
        {-(double)INFINITY, "\u2212\u221E"},
        {(double)NAN, "not computed"},
    };
    (void)state;
    ts_buffer out;
    ts_buffer_open(&out, NULL);
    for (size_t i = 0; i < COUNT(cases); i++) {
        ts_buffer_clear(&out);
        ts_value_typeset(&out, cases[i].value, 6);
        assert_string_equal(out.bytes, cases[i].shown);
    }
    ts_buffer_close(&out);
}

static void a_text_that_cannot_be_read_is_shown_as_it_is(void **state)
{
    (void)state;
    ts_buffer out;
    ts_buffer_open(&out, NULL);
    assert_false(ts_formula_typeset(&out, "2*alpha+"));
    assert_string_equal(out.bytes, "2*alpha+");
    ts_buffer_close(&out);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(symbols_are_set_in_greek_with_prime_and_star),
        cmocka_unit_test(words_stay_words),
        cmocka_unit_test(formulas_read_with_signs_roots_and_small_digits),
        cmocka_unit_test(brackets_stand_where_the_order_needs_them),
        cmocka_unit_test(numbers_take_the_places_of_symbols),
        cmocka_unit_test(values_keep_their_digits_and_lose_final_zeros),
        cmocka_unit_test(a_text_that_cannot_be_read_is_shown_as_it_is),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
