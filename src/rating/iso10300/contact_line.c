/* rating/iso10300/contact_line.c: which lines touch at once, and what does each carry? */
#include "rating/iso10300/contact_line.h"

#include "rating/iso10300/bevel_source.h"

#include <math.h>

static const double pi = 3.14159265358979323846;

#define ANNEX_A ISO_10300_1 "A.2"

BEVEL_FORMULA(f_max, "half the zone of action across the lines of contact", "m",
              "(g_valpha + b_v*tan(beta_vb))*cos(beta_vb)/2", ANNEX_A);
/* From the inner point of single contact (straight teeth) to the centre (overlap 1 and more). */
BEVEL_FORMULA(f_m, "distance of the middle line of contact from the centre", "m",
              "-(1 - eps_valpha/2)*p_vet*max(0, 1 - eps_vbeta)*cos(beta_vb)", ANNEX_A);
BEVEL_FORMULA(f_t, "distance of the line of contact nearer the tip", "m",
              "f_m + p_vet*cos(beta_vb)", ANNEX_A);
BEVEL_FORMULA(f_r, "distance of the line of contact nearer the root", "m",
              "f_m - p_vet*cos(beta_vb)", ANNEX_A);

/* The three lines differ in their index alone. */
enum { TIP, MIDDLE, ROOT, LINES };

#define LENGTH_TEXT(I)                                                                             \
    "max(0, min(b_v/2, (f_" I "/cos(beta_vb) + g_valpha/2)/tan(beta_vb)) - max(-b_v/2, (f_" I      \
    "/cos(beta_vb) - g_valpha/2)/tan(beta_vb)))/cos(beta_vb)"
#define PATTERN_TEXT(I) "l_b0" I "*(1 - sqrt(max(0, 1 - (f_" I "/f_max)^2))*(1 - sqrt(b_veff/b_v)))"
#define PEAK_TEXT(I)    "max(0, 1 - (abs(f_" I ")/f_max)^e)"
#define AREA_TEXT(I)    "pi/4*ps_" I "*l_b" I

typedef struct line_formulas {
    ts_formula  length, whole, pattern, peak, area;
    const char *f, *l_b0, *l_b, *ps;
} line_formulas;

#define LINE(I, which)                                                                               \
    {                                                                                                \
        .length  = {"l_b0" I, "length of the " which " line of contact in the zone of action", "m",  \
                    LENGTH_TEXT(I), "derived: a line cut by a rectangle; as " ANNEX_A},              \
        .whole   = {"l_b0" I, "length of the " which " line of contact, straight teeth", "m", "b_v", \
                    "derived: a line cut by a rectangle; as " ANNEX_A},                              \
        .pattern = {"l_b" I, "length of the " which " line of contact", "m", PATTERN_TEXT(I),        \
                    ANNEX_A BEVEL_RECALLED},                                                         \
        .peak    = {"ps_" I, "peak load of the " which " line of contact", "1", PEAK_TEXT(I),        \
                    ISO_10300_2 "6.4.2" BEVEL_RECALLED},                                             \
        .area    = {"As_" I, "load of the " which " line of contact", "m", AREA_TEXT(I),             \
                    ISO_10300_2 "6.4.2" BEVEL_RECALLED},                                             \
        .f = "f_" I, .l_b0 = "l_b0" I, .l_b = "l_b" I, .ps = "ps_" I,                                \
    }
static const line_formulas of_line[LINES] = {LINE("t", "tip"), LINE("m", "middle"),
                                             LINE("r", "root")};

double ts_contact_line_length(const ts_bevel_virtual *v, double f)
{
    const double beta_vb = v->beta_vb, g_valpha = v->g_valpha, b_v = v->b_v;

    if (!(beta_vb > 0.0))
        return fabs(f) <= g_valpha / 2.0 ? b_v : 0.0;
    const double to   = fmin(b_v / 2.0, (f / cos(beta_vb) + g_valpha / 2.0) / tan(beta_vb));
    const double from = fmax(-b_v / 2.0, (f / cos(beta_vb) - g_valpha / 2.0) / tan(beta_vb));
    return fmax(0.0, to - from) / cos(beta_vb);
}

static double noted_length(const ts_bevel_virtual *v, double f, const line_formulas *line,
                           ts_workings *workings)
{
    const double beta_vb = v->beta_vb, g_valpha = v->g_valpha, b_v = v->b_v;
    const double l_b0 = ts_contact_line_length(v, f);

    if (beta_vb > 0.0) {
        const ts_input inputs[] = {
            {line->f, f}, {"b_v", b_v}, {"beta_vb", beta_vb}, {"g_valpha", g_valpha}};
        return ts_step_list(workings, &line->length, l_b0, inputs, 4);
    }
    if (l_b0 > 0.0)
        return ts_step_list(workings, &line->whole, l_b0, (const ts_input[]){{"b_v", b_v}}, 1);
    ts_workings_row(workings, line->l_b0, 0.0, "m", "this line lies outside the zone of action");
    return 0.0;
}

static ts_contact_line solve_line(const ts_bevel_virtual *v, double f, double f_max, double e,
                                  const line_formulas *line, ts_workings *workings)
{
    const double b_v = v->b_v, b_veff = v->b_veff;
    const double l_b0 = noted_length(v, f, line, workings);
    const double off  = f / f_max;

    const double shorter = sqrt(fmax(0.0, 1.0 - off * off)) * (1.0 - sqrt(b_veff / b_v));
    const double l_b     = ts_step_list(
            workings, &line->pattern, l_b0 * (1.0 - shorter),
            (const ts_input[]){
                {line->l_b0, l_b0}, {line->f, f}, {"f_max", f_max}, {"b_veff", b_veff}, {"b_v", b_v}},
            5);
    const double ps = ts_step_list(workings, &line->peak, fmax(0.0, 1.0 - pow(fabs(f) / f_max, e)),
                                   (const ts_input[]){{line->f, f}, {"f_max", f_max}, {"e", e}}, 3);
    const double As = ts_step_list(workings, &line->area, pi / 4.0 * ps * l_b,
                                   (const ts_input[]){{line->ps, ps}, {line->l_b, l_b}}, 2);
    return (ts_contact_line){f, l_b0, l_b, ps, As};
}

BEVEL_FORMULA(Z_LS, "load sharing factor (contact)", "1", "sqrt(As_m/(As_t + As_m + As_r))",
              ISO_10300_2 "6.4.2");
BEVEL_FORMULA(Y_LS, "load sharing factor (bending)", "1", "Z_LS^2", ISO_10300_3 "6.4.5");

ts_contact_lines ts_contact_lines_of(const ts_bevel_virtual *v, double e, ts_workings *workings)
{
    const double     g_valpha = v->g_valpha, b_v = v->b_v, beta_vb = v->beta_vb, p_vet = v->p_vet;
    const double     eps_valpha = v->eps_valpha, eps_vbeta = v->eps_vbeta, slant = cos(beta_vb);
    ts_contact_lines lines;

    const double f_max =
        TS_STEP(workings, f_max_formula, (g_valpha + b_v * tan(beta_vb)) * slant / 2.0, g_valpha,
                b_v, beta_vb);
    const double f_m =
        TS_STEP(workings, f_m_formula,
                -(1.0 - eps_valpha / 2.0) * p_vet * fmax(0.0, 1.0 - eps_vbeta) * slant, eps_valpha,
                p_vet, eps_vbeta, beta_vb);
    const double f_t = TS_STEP(workings, f_t_formula, f_m + p_vet * slant, f_m, p_vet, beta_vb);
    const double f_r = TS_STEP(workings, f_r_formula, f_m - p_vet * slant, f_m, p_vet, beta_vb);

    lines.f_max  = f_max;
    lines.tip    = solve_line(v, f_t, f_max, e, &of_line[TIP], workings);
    lines.middle = solve_line(v, f_m, f_max, e, &of_line[MIDDLE], workings);
    lines.root   = solve_line(v, f_r, f_max, e, &of_line[ROOT], workings);

    const double As_t = lines.tip.As, As_m = lines.middle.As, As_r = lines.root.As;
    const double Z_LS =
        TS_STEP(workings, Z_LS_formula, sqrt(As_m / (As_t + As_m + As_r)), As_m, As_t, As_r);

    lines.Z_LS = Z_LS;
    lines.Y_LS = TS_STEP(workings, Y_LS_formula, Z_LS * Z_LS, Z_LS);
    return lines;
}
