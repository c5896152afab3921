/* bank/bind_tolerance.c: published cases about the tolerances of flanks. */
#include "bank/bank_case.h"
#include "base/number.h"
#include "element/tooth_tolerance.h"

#include <stdio.h>

/* The bank recalls 0.55 m_n + 1 for f_falpha, a quarter to a half of what 1995 allowed for modules
 * up to 6 mm; no other tolerance of usual gears changed by more than a third, nor does it with
 * 0.55 m_n + 5. */
static void dissent_on_form(ts_case *c, const char *label)
{
    static const char why[] = "f_falpha is held to be (0.55 m_n + 5) um: 1 in place of 5 would "
                              "allow less than half of what "
                              "1995 did, see docs/method/iso1328.md";
    char              name[2][80];

    snprintf(name[0], sizeof name[0], "f_fa_class%s", label);
    snprintf(name[1], sizeof name[1], "F_a_class%s", label);
    ts_case_dissents(c, name[0], why);
    ts_case_dissents(c, name[1], why);
}

/* The classes of the case name its results: f_pT_class5. */
static void iso1328_2013(ts_case *c)
{
    ts_tolerance_input in = {
        .m_n  = ts_case_given(c, "m_n", TS_KIND_LENGTH),
        .d    = ts_case_given(c, "d", TS_KIND_LENGTH),
        .b    = ts_case_given(c, "b", TS_KIND_LENGTH),
        .beta = ts_case_given_or(c, "beta", TS_KIND_ANGLE, 0.0),
    };

    for (size_t i = 0; i < ts_case_length(c, "classes"); i++) {
        const char *label = ts_case_printed_at(c, "classes", i);

        in.class                   = ts_case_whole_at(c, "classes", i);
        const ts_tooth_tolerance t = ts_tooth_tolerance_2013(&in, NULL);
        ts_case_computed_as(c, t.f_p, TS_KIND_LENGTH, "f_pT_class%s", label);
        ts_case_computed_as(c, t.F_p, TS_KIND_LENGTH, "F_pT_class%s", label);
        ts_case_computed_as(c, t.f_falpha, TS_KIND_LENGTH, "f_fa_class%s", label);
        ts_case_computed_as(c, t.f_Halpha, TS_KIND_LENGTH, "f_Ha_class%s", label);
        ts_case_computed_as(c, t.F_alpha, TS_KIND_LENGTH, "F_a_class%s", label);
        ts_case_computed_as(c, t.f_fbeta, TS_KIND_LENGTH, "f_fb_class%s", label);
        ts_case_computed_as(c, t.f_Hbeta, TS_KIND_LENGTH, "f_Hb_class%s", label);
        ts_case_computed_as(c, t.F_beta, TS_KIND_LENGTH, "F_b_class%s", label);
        ts_case_computed_as(c, t.F_r, TS_KIND_LENGTH, "F_r_class%s", label);
        dissent_on_form(c, label);
    }
}

/* Names are composed of the numbers of their row: f_pt_m1_d30_b0_c5. */
static void give_row(ts_case *c, const ts_tooth_tolerance *t, const char *row)
{
    ts_case_computed_as(c, t->f_p, TS_KIND_LENGTH, "f_pt_%s", row);
    ts_case_computed_as(c, t->F_p, TS_KIND_LENGTH, "F_p_%s", row);
    ts_case_computed_as(c, t->F_alpha, TS_KIND_LENGTH, "F_a_%s", row);
    ts_case_computed_as(c, t->f_falpha, TS_KIND_LENGTH, "f_fa_%s", row);
    ts_case_computed_as(c, t->f_Halpha, TS_KIND_LENGTH, "f_Ha_%s", row);
    ts_case_computed_as(c, t->F_beta, TS_KIND_LENGTH, "F_b_%s", row);
    ts_case_computed_as(c, t->f_fbeta, TS_KIND_LENGTH, "f_fb_%s", row);
    ts_case_computed_as(c, t->f_Hbeta, TS_KIND_LENGTH, "f_Hb_%s", row);
    ts_case_computed_as(c, t->F_r, TS_KIND_LENGTH, "F_r_%s", row);
}

/* Rows of a quantity, module, diameter and width in mm, and the class. */
static void iso1328_1995(ts_case *c)
{
    const ts_unit *mm = ts_unit_named(TS_TEXT("mm"), TS_KIND_LENGTH);

    for (size_t row = 0; row < ts_case_length(c, "items"); row++) {
        double cells[4];
        char   text[4][TS_NUMBER_ROOM], name[160];

        for (size_t i = 0; i < 4; i++) {
            cells[i] = ts_case_cell(c, "items", row, i + 1);
            ts_number_print(text[i], cells[i]);
        }
        if (!(cells[3] >= 0.0 && cells[3] <= 100.0))
            ts_case_spoil(c, "is out of range", "the class");
        const ts_tolerance_input in = {.m_n   = ts_to_si(cells[0], mm),
                                       .d     = ts_to_si(cells[1], mm),
                                       .b     = ts_to_si(cells[2], mm),
                                       .class = (int)cells[3]};
        const ts_tooth_tolerance t  = ts_tooth_tolerance_1995(&in, NULL);
        snprintf(name, sizeof name, "m%s_d%s_b%s_c%s", text[0], text[1], text[2], text[3]);
        give_row(c, &t, name);
    }
}

static const ts_binding bindings[] = {
    {"iso1328_2013", iso1328_2013},
    {"iso1328_1995", iso1328_1995},
};
TS_BINDINGS(bindings);
