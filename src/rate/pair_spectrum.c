/* rate/pair_spectrum.c: do the loads of a spectrum add up to the failure of a pair? */
#include "rate/pair_spectrum.h"

#include "rate/inverse_words.h"

#define ISO_6336_6 "ISO 6336-6:2019, clause 6 (from memory)"
#define DERIVED    "derived: common mechanics"

static const double pi = 3.14159265358979323846;

static const char *const asked[] = {"S_H1", "S_H2", "S_F1", "S_F2", "U_H1",
                                    "U_H2", "U_F1", "U_F2", "L_h",  NULL};

static const ts_rated_section section = {
    .title     = "Load spectrum",
    .standard  = "ISO 6336-6, damage after Palmgren and Miner",
    .condition = TS_RATED_SPECTRUM,
    .asked     = asked,
};

static const char *const asked_worst[] = {"T_1",  "omega_1", "N_L1", "N_L2", "K_v",
                                          "S_H1", "S_H2",    "S_F1", "S_F2", NULL};

static const ts_rated_section worst_section = {
    .title     = "The bin that does most of the damage",
    .standard  = "ISO 6336-1, -2, -3, method B",
    .condition = TS_RATED_WORST_BIN,
    .asked     = asked_worst,
};

/* ---- bins --------------------------------------------------------------------------------------
 */

static bool is_stated(const ts_measure *of)
{
    return of->standing == TS_GIVEN;
}

static double K_A_of(const ts_rated_spectrum *spectrum, const ts_rate_bin *bin)
{
    return is_stated(&bin->K_A) ? bin->K_A.value : spectrum->teeth.load.K_A;
}

static const char f_sh_most_says[] =
    "f_sh of the pair is its deflection under the greatest T_1*K_A of the spectrum; in the other "
    "bins it goes with T_1*K_A";

/* Shafts bend with what they carry: ISO 6336-1:2019, 7.5 (from memory), f_sh goes with F_m. */
static void take_greatest(ts_rated_spectrum *spectrum)
{
    const ts_rated_pair *rated = spectrum->rated;
    bool                 goes  = false;

    spectrum->T_Amost = 0.0;
    for (size_t i = 0; i < spectrum->count; i++) {
        const ts_rate_bin *bin = &rated->given->spectrum[i];

        spectrum->T_Amost = fmax(spectrum->T_Amost, bin->T_1.value * K_A_of(spectrum, bin));
        goes              = goes ||
               !(is_stated(&bin->f_sh) || is_stated(&bin->K_Hbeta) || is_stated(&bin->F_betax));
    }
    spectrum->f_sh_goes = goes && spectrum->count > 1 && spectrum->T_Amost > 0.0 &&
                          spectrum->teeth.load.face == TS_FACE_LOAD_PARTS &&
                          spectrum->teeth.load.f_sh > 0.0;
    if (spectrum->f_sh_goes)
        ts_rate_assume(spectrum->desk, "T_Amost", spectrum->T_Amost, TS_KIND_TORQUE,
                       f_sh_most_says);
}

/* What the bin says of its own goes before what the pair says of all. */
static void take_face_of_bin(const ts_rated_spectrum *spectrum, const ts_rate_bin *bin,
                             ts_iso6336_load *load)
{
    if (is_stated(&bin->K_Hbeta)) {
        load->face    = TS_FACE_LOAD_GIVEN;
        load->K_Hbeta = bin->K_Hbeta.value;
    } else if (is_stated(&bin->F_betax)) {
        load->face    = TS_FACE_LOAD_MISALIGNED;
        load->F_betax = bin->F_betax.value;
    } else if (is_stated(&bin->f_sh)) {
        if (isnan(load->f_ma))
            ts_rate_lack(spectrum->desk, "f_ma");
        load->face = TS_FACE_LOAD_PARTS;
        load->f_sh = bin->f_sh.value;
    } else if (spectrum->f_sh_goes) {
        load->f_sh *= load->T_1 * load->K_A / spectrum->T_Amost;
    }
}

static void take_bins(ts_rated_spectrum *spectrum)
{
    const ts_rated_pair *rated = spectrum->rated;
    const ts_rate_bin   *bins  = rated->given->spectrum;

    spectrum->count        = rated->given->spectrum_count;
    spectrum->cases        = TS_TAKE(spectrum->desk->arena, ts_iso6336_case, spectrum->count);
    spectrum->desk->failed = spectrum->desk->failed || spectrum->cases == NULL;
    take_greatest(spectrum);
    for (size_t i = 0; spectrum->cases != NULL && i < spectrum->count; i++) {
        ts_iso6336_case *one   = &spectrum->cases[i];
        const double     turns = bins[i].L_h.value * bins[i].n_1.value / (2.0 * pi);

        *one              = (ts_iso6336_case){.load = spectrum->teeth.load};
        one->flank        = bins[i].flank.value == 1 ? 1 : 0;
        one->load.T_1     = bins[i].T_1.value;
        one->load.omega_1 = bins[i].n_1.value;
        one->load.N_L[0]  = turns * rated->load.q[0];
        one->load.N_L[1]  = turns / fabs(rated->pair.u) * rated->load.q[1];
        one->load.S_Hmin  = rated->load.S_Hmin;
        one->load.S_Fmin  = rated->load.S_Fmin;
        one->load.K_A     = K_A_of(spectrum, &bins[i]);
        take_face_of_bin(spectrum, &bins[i], &one->load);
        spectrum->L_h += bins[i].L_h.value;
    }
}

/* ---- safeties ----------------------------------------------------------------------------------
 */

#define SAFETY(symbol, what, text)                                                                 \
    {                                                                                              \
        symbol, "safety of the spectrum " what, "1", text, ISO_6336_6                              \
    }
static const ts_formula safety_equations[4] = {
    SAFETY("S_H1", "against pitting of gear 1", "U_SH1 - 1"),
    SAFETY("S_H2", "against pitting of gear 2", "U_SH2 - 1"),
    SAFETY("S_F1", "against breakage of gear 1", "U_SF1 - 1"),
    SAFETY("S_F2", "against breakage of gear 2", "U_SF2 - 1"),
};
static const char *const damage_names[4]  = {"U_H1", "U_H2", "U_F1", "U_F2"};
static const char *const used_up_names[4] = {"U_SH1", "U_SH2", "U_SF1", "U_SF2"};

/* Of a gear and a stress the flank that is worn more. */
static ts_iso6336_life life_of(const ts_rated_spectrum *spectrum, int gear, ts_rated_stress stress,
                               int *flank)
{
    ts_iso6336_life least = {.U = 0.0, .S = INFINITY};

    *flank = 0;
    for (int f = 0; f < 2; f++) {
        const ts_iso6336_place place = {.flank = f, .gear = gear, .stress = stress};
        const ts_iso6336_life  life =
            ts_iso6336_life_of(spectrum->cases, spectrum->count, place, NULL);

        if (f == 0 || !(life.S >= least.S)) {
            least  = life;
            *flank = f;
        }
    }
    return least;
}

static void note_safety(const ts_rated_spectrum *spectrum, int i, const ts_iso6336_life *life,
                        int flank)
{
    ts_workings *workings = spectrum->desk->workings;

    ts_workings_row(workings, damage_names[i], life->U, "1",
                    "sum of n/N over the bins, " ISO_6336_6);
    if (!isfinite(life->S))
        return;
    const ts_iso6336_place place = {
        .flank = flank, .gear = i % 2, .stress = i < 2 ? TS_RATED_CONTACT : TS_RATED_BENDING};
    /* At S itself static strength may be passed. */
    const double used_up =
        ts_iso6336_damage(spectrum->cases, spectrum->count, place, life->S * (1.0 - 1e-15));
    const ts_input inputs[] = {{used_up_names[i], used_up}};

    ts_workings_row(workings, used_up_names[i], used_up, "1",
                    "sum of n/N over the bins with all stresses times S; below 1 where static "
                    "strength ends it");
    ts_search_note(workings, &safety_equations[i], life->S, used_up - 1.0, inputs, 1);
}

/* The place with the least safety over its own minimum, and its bin. */
static size_t note_safeties(ts_rated_spectrum *spectrum, int *decides)
{
    const ts_rated_load *load  = &spectrum->rated->load;
    double               least = INFINITY;
    size_t               worst = 0;

    *decides = -1;
    for (int i = 0; i < 4; i++) {
        const int             gear   = i % 2;
        const ts_rated_stress stress = i < 2 ? TS_RATED_CONTACT : TS_RATED_BENDING;
        const double          S_min  = i < 2 ? load->S_Hmin : load->S_Fmin;
        int                   flank  = 0;
        const ts_iso6336_life life   = life_of(spectrum, gear, stress, &flank);

        note_safety(spectrum, i, &life, flank);
        if (i < 2)
            ts_rate_contact_safety(spectrum->desk, gear, life.S, S_min, TS_REFUSE);
        else
            ts_rate_bending_safety(spectrum->desk, gear, life.S, S_min, TS_REFUSE);
        if (life.S / S_min < least) {
            least    = life.S / S_min;
            worst    = life.worst;
            *decides = i;
        }
    }
    return worst;
}

static void say_what_decides(ts_rated_spectrum *spectrum, int decides, size_t worst)
{
    ts_rate_desk *desk = spectrum->desk;
    ts_buffer     text;

    if (decides < 0)
        return;
    const ts_iso6336_place place = {.gear   = decides % 2,
                                    .stress = decides < 2 ? TS_RATED_CONTACT : TS_RATED_BENDING};
    ts_buffer_open(&text, ts_arena_allocator(desk->arena));
    ts_buffer_print(&text, "%s decides; bin %zu of %zu does most of the damage",
                    ts_inverse_place_says(place), worst + 1, spectrum->count);
    const char *kept = text.failed ? NULL : ts_arena_copy(desk->arena, text.bytes, text.length);
    ts_buffer_close(&text);
    desk->failed = desk->failed || kept == NULL;
    if (kept != NULL)
        ts_rate_fact(desk, "spectrum", kept);
}

/* ---- the worst bin, with all of its factors ----------------------------------------------------
 */

static const ts_formula omega_1_formula = {"omega_1", "angular speed of gear 1", "rad/s", "n_1",
                                           "the speed of gear 1 in SI units"};
#define TURNS "ANSI/AGMA 2101-D04, clause 17 (from memory): one a turn and mate"
static const ts_formula N_L1_formula = {"N_L1", "load cycles of a tooth of gear 1", "1",
                                        "L_h*omega_1/(2*pi)*q_1", TURNS};
static const ts_formula N_L2_formula = {"N_L2", "load cycles of a tooth of gear 2", "1",
                                        "L_h*omega_1/(2*pi)/abs(u)*q_2",
                                        TURNS "; gear 2 turns u times as slowly"};
static const ts_formula f_sh_formula = {
    "f_sh", "deflection of the shafts under this load", "m", "f_shmost*T_1*K_A/T_Amost",
    "ISO 6336-1:2019, 7.5 (from memory): it goes with the load"};

static void given(const ts_rated_spectrum *spectrum, const char *symbol, const ts_measure *of,
                  const char *unit)
{
    if (is_stated(of))
        ts_workings_given(spectrum->desk->workings, symbol, of->value, unit, of->node);
}

/* By what its face load differs from that of the pair. */
static void note_face(const ts_rated_spectrum *spectrum, const ts_rate_bin *bin,
                      const ts_iso6336_load *load)
{
    const double T_1 = load->T_1, K_A = load->K_A, T_Amost = spectrum->T_Amost;
    const double f_shmost = spectrum->teeth.load.f_sh;

    given(spectrum, "K_Hbeta", &bin->K_Hbeta, "1");
    given(spectrum, "F_betax", &bin->F_betax, "m");
    given(spectrum, "f_sh", &bin->f_sh, "m");
    if (!spectrum->f_sh_goes || load->face != TS_FACE_LOAD_PARTS || is_stated(&bin->f_sh))
        return;
    ts_rate_borrow(spectrum->desk, "f_shmost", f_shmost, "f_sh");
    (void)TS_STEP(spectrum->desk->workings, f_sh_formula, load->f_sh, f_shmost, T_1, K_A, T_Amost);
}

static void rate_worst(ts_rated_spectrum *spectrum, size_t worst)
{
    ts_rate_desk         *desk     = spectrum->desk;
    ts_workings          *workings = desk->workings;
    const ts_rate_bin    *bin      = &spectrum->rated->given->spectrum[worst];
    const ts_iso6336_case one      = spectrum->cases[worst];
    const double          n_1 = bin->n_1.value, L_h = bin->L_h.value, u = spectrum->rated->pair.u;
    ts_iso6336_rating     rating;

    ts_rate_open_section(desk, &worst_section);
    if (!desk->failed) {
        given(spectrum, "T_1", &bin->T_1, "N.m");
        given(spectrum, "n_1", &bin->n_1, "rad/s");
        given(spectrum, "L_h", &bin->L_h, "s");
        given(spectrum, "K_A", &bin->K_A, "1");
        const double omega_1 = TS_STEP(workings, omega_1_formula, n_1, n_1);
        const double q_1 = spectrum->rated->load.q[0], q_2 = spectrum->rated->load.q[1];
        (void)TS_STEP(workings, N_L1_formula, one.load.N_L[0], L_h, omega_1, q_1);
        (void)TS_STEP(workings, N_L2_formula, one.load.N_L[1], L_h, omega_1, u, q_2);
        note_face(spectrum, bin, &one.load);
        ts_rate_pair_prepare(desk, &spectrum->rated->pair, &spectrum->teeth);
        (void)ts_iso6336_rate(&spectrum->teeth.prepared, &one.load, &rating, workings);
    }
    (void)ts_rate_close_section(desk);
}

static const ts_formula L_h_formula = {"L_h", "time of all bins together", "s", "sum(L_h)",
                                       DERIVED};

static void note_time(const ts_rated_spectrum *spectrum)
{
    ts_rate_desk      *desk   = spectrum->desk;
    const ts_rate_bin *bins   = spectrum->rated->given->spectrum;
    ts_input          *inputs = TS_TAKE(desk->arena, ts_input, spectrum->count);

    desk->failed = desk->failed || inputs == NULL;
    for (size_t i = 0; inputs != NULL && i < spectrum->count; i++) {
        inputs[i] = (ts_input){"L_h", bins[i].L_h.value};
        given(spectrum, "L_h", &bins[i].L_h, "s");
    }
    if (inputs != NULL)
        (void)ts_step_list(desk->workings, &L_h_formula, spectrum->L_h, inputs, spectrum->count);
}

static ts_remarks remarks_of(const ts_rated_spectrum *spectrum)
{
    ts_remarks all = spectrum->teeth.prepared.remarks;

    for (size_t i = 0; i < spectrum->count; i++)
        all |= spectrum->cases[i].rating.remarks;
    return all;
}

/* True when all bins could be rated. */
static bool rate_bins(ts_rated_spectrum *spectrum)
{
    ts_rated_teeth *teeth = &spectrum->teeth;

    if (ts_iso6336_prepare(&spectrum->rated->pair, &teeth->mesh, &teeth->prepared, NULL) &&
        ts_iso6336_rate_cases(&teeth->prepared, spectrum->cases, spectrum->count))
        return true;
    const char *why = teeth->prepared.missing;
    for (size_t i = 0; i < spectrum->count && why == NULL; i++)
        why = spectrum->cases[i].rating.missing;
    ts_rate_cannot(spectrum->desk, "ISO 6336", why);
    return false;
}

void ts_rate_pair_spectrum(ts_rate_desk *desk, ts_rated_pair *rated)
{
    ts_rated_spectrum spectrum = {.desk = desk, .rated = rated};
    int               decides  = -1;
    size_t            worst    = 0;
    bool              done     = false;

    ts_rate_open_section(desk, &section);
    rated->load = (ts_rated_load){.K_A    = ts_rate_take(desk, "K_A"),
                                  .S_Hmin = ts_rate_take(desk, "S_Hmin"),
                                  .S_Fmin = ts_rate_take(desk, "S_Fmin"),
                                  .q      = {ts_rate_take(desk, "q_1"), ts_rate_take(desk, "q_2")}};
    ts_rate_pair_take_teeth(desk, rated, &spectrum.teeth);
    take_bins(&spectrum);
    if (!ts_rate_lacks(desk)) {
        ts_rate_pair_blanks(desk, rated, &spectrum.teeth.mesh);
        note_time(&spectrum);
        done = rate_bins(&spectrum);
        if (done) {
            worst = note_safeties(&spectrum, &decides);
            ts_rate_pair_remarks(desk, rated, remarks_of(&spectrum));
            say_what_decides(&spectrum, decides, worst);
        }
    }
    (void)ts_rate_close_section(desk);
    if (done && decides >= 0)
        rate_worst(&spectrum, worst);
    if (done && rated->given->inverse.node != 0)
        ts_rate_spectrum_inverse(&spectrum);
}
