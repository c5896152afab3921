/* model/field_rate_film.h: what does a gear pair of a rate file say of its oil, for scuffing and
 * micropitting?
 *
 * A run of entries for the table of ts_rate_pair, which lends its two abbreviations.
 */
#ifndef TS_MODEL_FIELD_RATE_FILM_H
#define TS_MODEL_FIELD_RATE_FILM_H

#include "model/field_rate_parts.h"

extern const char *const ts_rate_oils[];         /* ts_lubricant */
extern const char *const ts_rate_lubrications[]; /* ts_lubrication */
extern const char *const ts_rate_drivers[];      /* gear 1, gear 2 */
extern const char *const ts_rate_structures[];   /* ts_flank_structure */

#define TS_RATE_FILM(BOTH, MEASURE)                                                                  \
    {.key = "theta_oil",                                                                             \
     MEASURE(TS_KIND_TEMPERATURE),                                                                   \
     TS_AT(ts_rate_pair, theta_oil),                                                                 \
     .range   = TS_FROM(233.15, 573.15, "degC"),                                                     \
     .says    = "Temperature of the oil that reaches the mesh; asks for scuffing and micropitting.", \
     .example = "110 degC"},                                                                         \
        {.key = "nu_100",                                                                            \
         MEASURE(TS_KIND_KINEMATIC_VISCOSITY),                                                       \
         TS_AT(ts_rate_pair, nu_100),                                                                \
         .range   = TS_ABOVE(0.0, 0.01, "cSt"),                                                      \
         .says    = "Viscosity of the oil at 100 degrees Celsius.",                                  \
         .example = "5.1 cSt"},                                                                      \
        {.key = "rho_15",                                                                            \
         MEASURE(TS_KIND_DENSITY),                                                                   \
         TS_AT(ts_rate_pair, rho_15),                                                                \
         .range   = TS_FROM(500.0, 2000.0, "kg/m3"),                                                 \
         .says    = "Density of the oil at 15 degrees Celsius.",                                     \
         .example = "995 kg/m3"},                                                                    \
        {.key  = "oil",                                                                              \
         .form = TS_FORM_PICK,                                                                       \
         TS_AT(ts_rate_pair, oil),                                                                   \
         .choices = ts_rate_oils,                                                                    \
         .preset  = {"polyol ester", "as in aircraft engines; common practice, no source"},          \
         .says    = "Kind of oil.",                                                                  \
         .example = "mineral oil"},                                                                  \
        {.key  = "lubrication",                                                                      \
         .form = TS_FORM_PICK,                                                                       \
         TS_AT(ts_rate_pair, lubrication),                                                           \
         .choices = ts_rate_lubrications,                                                            \
         .preset  = {"jets", "oil jets, as in engine gearboxes; common practice, no source"},        \
         .says    = "How the oil comes to the mesh.",                                                \
         .example = "jets"},                                                                         \
        {.key  = "driver",                                                                           \
         .form = TS_FORM_PICK,                                                                       \
         TS_AT(ts_rate_pair, driver),                                                                \
         .choices = ts_rate_drivers,                                                                 \
         .preset  = {"gear 1", "gear 1 drives; no more than a start"},                               \
         .says    = "Which gear drives.",                                                            \
         .example = "gear 2"},                                                                       \
        {.key   = "mates",                                                                           \
         .form  = TS_FORM_TALLY,                                                                     \
         .known = true,                                                                              \
         TS_AT(ts_rate_pair, mates),                                                                 \
         .range   = TS_FROM(1, 20, "1"),                                                             \
         .preset  = {"1", "a pair by itself"},                                                       \
         .says    = "With how many gears the busier of the two meshes.",                             \
         .example = "2"},                                                                            \
        {.key = "phi_E",                                                                             \
         MEASURE(TS_KIND_NUMBER),                                                                    \
         TS_AT(ts_rate_pair, phi_E),                                                                 \
         .range   = TS_FROM(0.0, 1.0, "1"),                                                          \
         .preset  = {"0", "flanks as they were made, on the safe side"},                             \
         .says    = "How far the flanks are run in, 1: wholly.",                                     \
         .example = "1"},                                                                            \
        {.key = "S_FZG",                                                                             \
         MEASURE(TS_KIND_NUMBER),                                                                    \
         TS_AT(ts_rate_pair, S_FZG),                                                                 \
         .range   = TS_ABOVE(0.0, 15.0, "1"),                                                        \
         .says    = "Load stage at which the oil fails in the test A/8.3/90 of ISO 14635-1.",        \
         .example = "10"},                                                                           \
        {.key = "theta_S",                                                                           \
         MEASURE(TS_KIND_TEMPERATURE),                                                               \
         TS_AT(ts_rate_pair, theta_S),                                                               \
         .range   = TS_FROM(273.15, 1273.15, "degC"),                                                \
         .says    = "Scuffing temperature for the flash method, where it is known.",                 \
         .example = "360 degC"},                                                                     \
        {.key = "theta_intS",                                                                        \
         MEASURE(TS_KIND_TEMPERATURE),                                                               \
         TS_AT(ts_rate_pair, theta_intS),                                                            \
         .range   = TS_FROM(273.15, 1273.15, "degC"),                                                \
         .says    = "Scuffing temperature for the integral method, where it is known.",              \
         .example = "330 degC"},                                                                     \
        BOTH("Ra_", Ra, MEASURE(TS_KIND_LENGTH), .range = TS_ABOVE(0.0, 0.001, "um"),                \
             .says    = "Mean roughness of the flank; a sixth of `R_z` when left out.",              \
             .example = "0.4 um"),                                                                   \
        BOTH("structure ", structure, .form = TS_FORM_PICK, .choices = ts_rate_structures,           \
             .says    = "Surface of the flank, for scuffing; else from how the steel is hardened.",  \
             .example = "phosphated"),                                                               \
        {.key = "lambda_GFP",                                                                        \
         MEASURE(TS_KIND_NUMBER),                                                                    \
         TS_AT(ts_rate_pair, lambda_GFP),                                                            \
         .range   = TS_ABOVE(0.0, 100.0, "1"),                                                       \
         .says    = "Specific film that the flanks need against micropitting, where it is known.",   \
         .example = "0.3"},                                                                          \
        {.key   = "SKS",                                                                             \
         .form  = TS_FORM_TALLY,                                                                     \
         .known = true,                                                                              \
         TS_AT(ts_rate_pair, SKS),                                                                   \
         .range   = TS_FROM(5, 10, "1"),                                                             \
         .says    = "Stage at which the oil fails in the micropitting test of FVA 54/7, where "      \
                    "`lambda_GFP` is not known.",                                                    \
         .example = "10"},                                                                           \
    {                                                                                                \
        .key    = "theta_test", MEASURE(TS_KIND_TEMPERATURE), TS_AT(ts_rate_pair, theta_test),       \
        .range  = TS_FROM(323.15, 373.15, "degC"),                                                   \
        .preset = {"90 degC", "the usual temperature of the test FVA 54/7 (from memory)"},           \
        .says = "Oil temperature of that test.", .example = "60 degC"                                \
    }

#endif
