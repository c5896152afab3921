/* What should the maker and the inspector of a gear read? */
#include "report/tooth_sheet.h"

#include "catalog/gear_material.h"

#include <math.h>

typedef struct sheet {
    ts_chapter     *chapter;
    const ts_train *train;
} sheet;

/* ---- rows: what, symbol, value ----------------------------------------------------------------
 */

static void begin_row(const sheet *s, const char *what, const char *symbol)
{
    ts_chapter_word(s->chapter, what);
    ts_chapter_word(s->chapter, symbol);
}

static void word(const sheet *s, const char *what, const char *symbol, const char *value)
{
    begin_row(s, what, symbol);
    ts_chapter_word(s->chapter, value);
}

/* A value with its unit into chapter->cell. */
static void put(const sheet *s, double si, ts_kind kind, int digits)
{
    ts_buffer *cell = &s->chapter->cell;
    if (!isfinite(si)) {
        ts_buffer_add(cell, "?");
        return;
    }
    ts_page_value_text(&s->chapter->page, cell, si, kind, digits);
    if (kind != TS_KIND_NUMBER)
        ts_buffer_print(cell, " %s", ts_kind_shown(kind, s->chapter->page.units)->name);
}

static void number(const sheet *s, const char *what, const char *symbol, double si, ts_kind kind,
                   int digits)
{
    begin_row(s, what, symbol);
    put(s, si, kind, digits);
    ts_chapter_cell(s->chapter);
}

static void put_fine(const sheet *s, double si)
{
    ts_chapter_fine(s->chapter, si);
}

static const char *fine_unit(const sheet *s)
{
    return s->chapter->page.units == TS_UNITS_US ? " in" : " mm";
}

/* "33.412 .. 33.486 mm": the lower first. */
static void band(const sheet *s, const char *what, const char *symbol, double low, double high)
{
    begin_row(s, what, symbol);
    put_fine(s, low);
    ts_buffer_add(&s->chapter->cell, " .. ");
    put_fine(s, high);
    ts_buffer_add(&s->chapter->cell, fine_unit(s));
    ts_chapter_cell(s->chapter);
}

static void fine(const sheet *s, const char *what, const char *symbol, double si)
{
    begin_row(s, what, symbol);
    put_fine(s, si);
    ts_buffer_add(&s->chapter->cell, fine_unit(s));
    ts_chapter_cell(s->chapter);
}

/* Tolerances are told in micrometres, or in thousandths of an inch. */
static void tolerance(const sheet *s, const char *what, const char *symbol, double si)
{
    const bool us = s->chapter->page.units == TS_UNITS_US;
    begin_row(s, what, symbol);
    if (isfinite(si)) {
        ts_buffer_fixed(&s->chapter->cell, si * (us ? 1e3 / 0.0254 : 1e6), us ? 3 : 1);
        ts_buffer_add(&s->chapter->cell, us ? " 0.001 in" : " um");
    } else {
        ts_buffer_add(&s->chapter->cell, "?");
    }
    ts_chapter_cell(s->chapter);
}

static void begin_table(const sheet *s, const char *caption)
{
    static const ts_column columns[] = {{"of", false}, {"symbol", false}, {"value", false}};
    ts_manuscript_table(s->chapter->manuscript, caption, columns, 3);
}

/* ---- what every gear has ----------------------------------------------------------------------
 */

static double known(ts_measure measure)
{
    return ts_measure_known(measure) ? measure.value : (double)NAN;
}

static void name_into_cell(const sheet *s, uint32_t g)
{
    static const char *const roles[] = {" bevel", "", " step"};
    const ts_gear           *gear    = &s->train->gears[g];
    ts_buffer_print(&s->chapter->cell, "%s%s", s->train->shafts[gear->shaft].name,
                    roles[gear->role]);
}

static void material(const sheet *s, const ts_gear *gear)
{
    word(s, "material", "",
         ts_pick_known(gear->material) ? ts_gear_material_keys[gear->material.value] : "not told");
}

/* A radial shaft has a bevel at either end: what it mates with tells them apart. */
static void chapter_of(const sheet *s, uint32_t g, uint32_t mate)
{
    name_into_cell(s, g);
    if (mate != TS_NOWHERE)
        ts_buffer_print(&s->chapter->cell, " to %s",
                        s->train->shafts[s->train->gears[mate].shaft].name);
    if (!s->chapter->cell.failed) {
        ts_manuscript_new_page(s->chapter->manuscript);
        ts_manuscript_heading(s->chapter->manuscript, 1, s->chapter->cell.bytes);
    }
    ts_buffer_clear(&s->chapter->cell);
    ts_chapter_place(s->chapter, s->train->gears[g].node, NULL, -1);
    const uint32_t number_shown = s->train->shafts[s->train->gears[g].shaft].number;
    if (number_shown > 0)
        ts_buffer_print(&s->chapter->cell, "; shaft %u of the drawings", number_shown);
    if (!s->chapter->cell.failed)
        ts_manuscript_text(s->chapter->manuscript, TS_BLOCK_FAINT, s->chapter->cell.bytes);
    ts_buffer_clear(&s->chapter->cell);
}

/* ---- cylindrical gears ------------------------------------------------------------------------
 */

static void teeth(const sheet *s, const ts_tooth_datum *one)
{
    const ts_gear         *gear = &s->train->gears[one->gear];
    const ts_tooth_system *tool = gear->system;
    begin_table(s, "Teeth (ISO 21771, basic rack as ISO 53)");
    begin_row(s, "teeth", "z");
    ts_buffer_integer(&s->chapter->cell, gear->teeth.value);
    ts_chapter_cell(s->chapter);
    number(s, "normal module", "m_n", one->frame.m_n, TS_KIND_LENGTH, 4);
    number(s, "normal pressure angle", "alpha_n", one->frame.alpha_n, TS_KIND_ANGLE, 6);
    number(s, "helix angle", "beta", one->frame.beta, TS_KIND_ANGLE, 6);
    word(s, "hand", "", gear->hand > 0 ? "right" : gear->hand < 0 ? "left" : "straight");
    number(s, "profile shift coefficient", "x", one->nominal.in.x, TS_KIND_NUMBER, 6);
    number(s, "addendum of the rack over m_n", "h_aP", known(tool->addendum), TS_KIND_NUMBER, 4);
    number(s, "dedendum of the rack over m_n", "h_fP", known(tool->dedendum), TS_KIND_NUMBER, 4);
    number(s, "root radius of the rack over m_n", "rho_fP", known(tool->root_radius),
           TS_KIND_NUMBER, 4);
    fine(s, "face width", "b", known(gear->face));
    fine(s, "reference diameter", "d", one->nominal.d);
    fine(s, "base diameter", "d_b", one->nominal.d_b);
    fine(s, "tip diameter", "d_a", one->nominal.d_a);
    fine(s, "root diameter", "d_f", one->nominal.d_f);
    fine(s, "root form diameter", "d_Ff", one->nominal.d_Ff);
    tolerance(s, "tip relief", "C_a", known(tool->tip_relief));
    material(s, gear);
    tolerance(s, "roughness of the flanks", "R_z", known(tool->flank_roughness));
    tolerance(s, "roughness of the roots", "R_z", known(tool->root_roughness));
}

static void measures(const sheet *s, const ts_tooth_datum *one)
{
    begin_table(s, "Tooth thickness, as it is measured on the finished gear");
    fine(s, "normal thickness, nominal", "s_n", one->s_n);
    band(s, "allowances of it", "E_sni .. E_sns", one->E_sn[TS_ALLOWED_LOWER],
         one->E_sn[TS_ALLOWED_UPPER]);
    if (one->k > 0) {
        ts_buffer_print(&s->chapter->cell, "span over %d teeth%s", one->k,
                        one->span_fits ? "" : " (the face is too narrow for it)");
        ts_chapter_cell(s->chapter);
        ts_chapter_word(s->chapter, "W_k");
        put_fine(s, one->W_k[TS_ALLOWED_LOWER]);
        ts_buffer_add(&s->chapter->cell, " .. ");
        put_fine(s, one->W_k[TS_ALLOWED_UPPER]);
        ts_buffer_add(&s->chapter->cell, fine_unit(s));
        ts_chapter_cell(s->chapter);
    }
    fine(s, "pin (1.728 m_n; common practice, no source)", "D_M", one->D_M);
    band(s, "over two pins", "M_dR", one->M_dR[TS_ALLOWED_LOWER], one->M_dR[TS_ALLOWED_UPPER]);
    band(s, "chordal thickness", "s_c", one->s_c[TS_ALLOWED_LOWER], one->s_c[TS_ALLOWED_UPPER]);
    fine(s, "its height below the tip", "h_c", one->h_c);
}

static void tolerances(const sheet *s, const ts_tooth_datum *one)
{
    const ts_tooth_tolerance *T = &one->tolerance;
    if (one->class == 0) {
        ts_manuscript_box(s->chapter->manuscript, TS_BLOCK_PLAIN,
                          "The file tells no class of accuracy, so there are no tolerances.");
        return;
    }
    ts_buffer_print(&s->chapter->cell, "Tolerances of class %d, ISO 1328-1:2013%s", one->class,
                    T->remarks != 0 ? "; outside of a range of the standard" : "");
    if (!s->chapter->cell.failed)
        begin_table(s, s->chapter->cell.bytes);
    ts_buffer_clear(&s->chapter->cell);
    tolerance(s, "single pitch", "f_pT", T->f_p);
    tolerance(s, "total cumulative pitch", "F_pT", T->F_p);
    tolerance(s, "profile slope", "f_HalphaT", T->f_Halpha);
    tolerance(s, "profile form", "f_falphaT", T->f_falpha);
    tolerance(s, "total profile", "F_alphaT", T->F_alpha);
    tolerance(s, "helix slope", "f_HbetaT", T->f_Hbeta);
    tolerance(s, "helix form", "f_fbetaT", T->f_fbeta);
    tolerance(s, "total helix", "F_betaT", T->F_beta);
    tolerance(s, "runout (annex)", "F_rT", T->F_r);
}

/* "0.142 .. 0.231 mm" */
static void play(const sheet *s, const double *j)
{
    if (isnan(j[0]) && isnan(j[1])) {
        ts_chapter_word(s->chapter, "not told");
        return;
    }
    put_fine(s, j[0]);
    ts_buffer_add(&s->chapter->cell, " .. ");
    put_fine(s, j[1]);
    ts_chapter_cell(s->chapter);
}

static void mates(const sheet *s, uint32_t g)
{
    static const ts_column metric[] = {{"mates with", false},   {"z", true},
                                       {"a_w mm", true},        {"its allowance mm", true},
                                       {"j_bn built mm", true}, {"j_bn at any warmth mm", true}};
    static const ts_column us[]     = {{"mates with", false},   {"z", true},
                                       {"a_w in", true},        {"its allowance in", true},
                                       {"j_bn built in", true}, {"j_bn at any warmth in", true}};
    const ts_motion       *motion   = s->chapter->answer->motion;
    ts_manuscript_table(s->chapter->manuscript, "Mates and backlash, least to greatest",
                        s->chapter->page.units == TS_UNITS_US ? us : metric, 6);
    for (uint32_t m = 0; m < s->train->mesh_count; m++) {
        const ts_mesh        *mesh = &s->train->meshes[m];
        const ts_mesh_motion *turn = &motion->meshes[m];
        if ((mesh->driver != g && mesh->driven != g) || mesh->kind != TS_MESH_CYLINDRICAL)
            continue;
        const uint32_t mate   = mesh->driver == g ? mesh->driven : mesh->driver;
        const ts_span *centre = &s->train->gears[mesh->driver].system->centre;
        name_into_cell(s, mate);
        ts_chapter_cell(s->chapter);
        ts_buffer_integer(&s->chapter->cell, s->train->gears[mate].teeth.value);
        ts_chapter_cell(s->chapter);
        put_fine(s, turn->a_w);
        ts_chapter_cell(s->chapter);
        play(s, (double[]){centre->low, centre->high});
        play(s, &turn->backlash.j_bn[TS_BACKLASH_MIN]);
        play(s, &turn->backlash.j_bn[TS_BACKLASH_LOW]);
    }
}

static void cylindrical(const sheet *s, const ts_tooth_datum *one)
{
    chapter_of(s, one->gear, TS_NOWHERE);
    teeth(s, one);
    measures(s, one);
    tolerances(s, one);
    mates(s, one->gear);
}

/* ---- bevels -----------------------------------------------------------------------------------
 */

static uint32_t bevel_mesh_of(const sheet *s, uint32_t g)
{
    for (uint32_t m = 0; m < s->train->mesh_count; m++)
        if (s->train->meshes[m].kind == TS_MESH_BEVEL &&
            (s->train->meshes[m].driver == g || s->train->meshes[m].driven == g))
            return m;
    return TS_NOWHERE;
}

static void bevel(const sheet *s, uint32_t g)
{
    const uint32_t m    = bevel_mesh_of(s, g);
    const ts_gear *gear = &s->train->gears[g];
    if (m == TS_NOWHERE || !s->chapter->answer->motion->meshes[m].solved)
        return;
    const ts_mesh_motion *turn        = &s->chapter->answer->motion->meshes[m];
    const ts_bevel_pair  *pair        = &turn->bevel;
    const ts_bevel_teeth *shape       = &turn->teeth;
    const ts_bevel_gears *told        = s->train->meshes[m].bevels;
    const int             i           = s->train->meshes[m].driver == g ? 0 : 1;
    const bool            known_teeth = turn->teeth_fault == NULL;
    const double          none        = (double)NAN;
    chapter_of(s, g, i == 0 ? s->train->meshes[m].driven : s->train->meshes[m].driver);
    begin_table(s, "Bevel teeth (ISO 23509)");
    begin_row(s, "teeth", "z");
    ts_buffer_integer(&s->chapter->cell, gear->teeth.value);
    ts_chapter_cell(s->chapter);
    number(s, "outer transverse module", "m_et", pair->in.m_et, TS_KIND_LENGTH, 4);
    number(s, "mean normal module", "m_mn", pair->m_mn, TS_KIND_LENGTH, 5);
    number(s, "normal pressure angle", "alpha_n", pair->in.alpha_n, TS_KIND_ANGLE, 6);
    number(s, "mean spiral angle", "beta_m", pair->in.beta_m, TS_KIND_ANGLE, 6);
    word(s, "hand", "", gear->hand > 0 ? "right" : gear->hand < 0 ? "left" : "straight");
    number(s, "shaft angle", "Sigma", pair->in.Sigma, TS_KIND_ANGLE, 6);
    number(s, "pitch angle", "delta", i == 0 ? pair->delta_1 : pair->delta_2, TS_KIND_ANGLE, 6);
    number(s, "face angle", "delta_a", known_teeth ? shape->delta_a[i] : none, TS_KIND_ANGLE, 6);
    number(s, "root angle", "delta_f", known_teeth ? shape->delta_f[i] : none, TS_KIND_ANGLE, 6);
    fine(s, "outer pitch diameter", "d_e", i == 0 ? pair->d_e1 : pair->d_e2);
    fine(s, "mean pitch diameter", "d_m", i == 0 ? pair->d_m1 : pair->d_m2);
    fine(s, "outer cone distance", "R_e", pair->R_e);
    fine(s, "face width", "b", pair->in.b);
    fine(s, "outer addendum", "h_ae", known_teeth ? shape->h_ae[i] : none);
    fine(s, "outer dedendum", "h_fe", known_teeth ? shape->h_fe[i] : none);
    number(s, "profile shift coefficient", "x_hm", known_teeth ? shape->x_hm[i] : none,
           TS_KIND_NUMBER, 5);
    fine(s, "mean normal chordal thickness", "s_mnc", known_teeth ? shape->s_mnc[i] : none);
    fine(s, "addendum above its chord", "h_amc", known_teeth ? shape->h_amc[i] : none);
    begin_row(s, "grade of accuracy, ISO 17485", "B");
    if (told->accuracy.standing == TS_GIVEN || told->accuracy.standing == TS_ASSUMED)
        ts_buffer_integer(&s->chapter->cell, told->accuracy.value);
    else
        ts_buffer_add(&s->chapter->cell, "not told");
    ts_chapter_cell(s->chapter);
    material(s, gear);
    tolerance(s, "roughness of the flanks", "R_z", known(told->flank_roughness));
    begin_row(s, "mates with", "");
    name_into_cell(s, i == 0 ? s->train->meshes[m].driven : s->train->meshes[m].driver);
    ts_chapter_cell(s->chapter);
}

/* ---- together ---------------------------------------------------------------------------------
 */

static const ts_tooth_datum *datum_of(const ts_tooth_data *data, uint32_t g)
{
    for (uint32_t i = 0; i < data->count; i++)
        if (data->items[i].gear == g)
            return &data->items[i];
    return NULL;
}

void ts_tooth_sheets(ts_chapter *chapter, const ts_tooth_data *data)
{
    const sheet s = {chapter, chapter->answer->train};
    for (uint32_t g = 0; g < s.train->gear_count; g++) {
        const ts_tooth_datum *one = datum_of(data, g);
        if (one != NULL)
            cylindrical(&s, one);
        else if (s.train->gears[g].role == TS_GEAR_BEVEL)
            bevel(&s, g);
    }
}

void ts_tooth_data_cells(ts_chapter *chapter, const ts_tooth_data *data)
{
    static const ts_column columns[] = {
        {"gear", false},   {"class", true},       {"d_a", true},       {"d_f", true},
        {"k", true},       {"W_k", true},         {"D_M", true},       {"M_dR", true},
        {"F_pT um", true}, {"F_alphaT um", true}, {"F_betaT um", true}};
    const sheet s = {chapter, chapter->answer->train};
    ts_manuscript_heading(chapter->manuscript, 2, "Measures and tolerances");
    ts_manuscript_table(chapter->manuscript,
                        chapter->page.units == TS_UNITS_US
                            ? "in; span over k teeth and over pins D_M from the lower to the upper "
                              "allowance; classes of ISO 1328-1:2013"
                            : "mm; span over k teeth and over pins D_M from the lower to the upper "
                              "allowance; classes of ISO 1328-1:2013",
                        columns, sizeof columns / sizeof columns[0]);
    for (uint32_t i = 0; i < data->count; i++) {
        const ts_tooth_datum *one = &data->items[i];
        const double T[3] = {one->tolerance.F_p, one->tolerance.F_alpha, one->tolerance.F_beta};
        name_into_cell(&s, one->gear);
        ts_chapter_cell(chapter);
        ts_buffer_print(&chapter->cell, "%d", one->class);
        ts_chapter_cell(chapter);
        put_fine(&s, one->nominal.d_a);
        ts_chapter_cell(chapter);
        put_fine(&s, one->nominal.d_f);
        ts_chapter_cell(chapter);
        ts_buffer_print(&chapter->cell, "%d", one->k);
        ts_chapter_cell(chapter);
        play(&s, (double[]){one->W_k[TS_ALLOWED_LOWER], one->W_k[TS_ALLOWED_UPPER]});
        put_fine(&s, one->D_M);
        ts_chapter_cell(chapter);
        play(&s, (double[]){one->M_dR[TS_ALLOWED_LOWER], one->M_dR[TS_ALLOWED_UPPER]});
        for (int t = 0; t < 3; t++) {
            if (isfinite(T[t]))
                ts_buffer_fixed(&chapter->cell, 1e6 * T[t], 1);
            else
                ts_buffer_add(&chapter->cell, "?");
            ts_chapter_cell(chapter);
        }
    }
}
