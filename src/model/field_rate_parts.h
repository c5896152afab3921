/* model/field_rate_parts.h: fields that gear pairs and bevel pairs of a rate file have in common.
 *
 * Each macro is a run of entries for the table of a struct with the members `gear[2]`
 * (ts_rate_gear) and `load` (ts_rate_load).
 */
#ifndef TS_MODEL_FIELD_RATE_PARTS_H
#define TS_MODEL_FIELD_RATE_PARTS_H

#include "model/field.h"
#include "model/rate_file.h"

#include <stddef.h>

extern const char *const ts_rate_answers[];   /* ts_answer_yes */
extern const char *const ts_rate_hardening[]; /* ts_gear_class */

/* The same key for both gears: "x_" as x_1 and x_2. */
#define TS_RATE_OF_BOTH(type, name, member, ...)                                                   \
    {.key = name "1", TS_AT(type, gear[0].member), __VA_ARGS__},                                   \
    {                                                                                              \
        .key = name "2", TS_AT(type, gear[1].member), __VA_ARGS__                                  \
    }
#define TS_RATE_MEASURE(of) .form = TS_FORM_MEASURE, .kind = (of), .known = true
#define TS_RATE_ONE(type, name, member, ...)                                                       \
    {                                                                                              \
        .key = name, TS_AT(type, member), __VA_ARGS__                                              \
    }

/* ---- steel and make ----------------------------------------------------------------------------
 */

#define TS_RATE_STEEL_FIELDS(type)                                                                 \
    TS_RATE_OF_BOTH(                                                                               \
        type, "material ", material, .form = TS_FORM_WORD,                                         \
        .says    = "Steel, by its row of the catalogue; strengths, modulus and density follow.",   \
        .example = "carburised 9310"),                                                             \
        TS_RATE_OF_BOTH(type, "class ", class, .form = TS_FORM_PICK, .choices = ts_rate_hardening, \
                        .says    = "How the steel is hardened, where `material` is left out.",     \
                        .example = "case-hardened"),                                               \
        TS_RATE_OF_BOTH(type, "hardness ", hardness, TS_RATE_MEASURE(TS_KIND_NUMBER),              \
                        .range   = TS_ABOVE(0.0, 2000.0, "1"),                                     \
                        .says    = "Hardness of the flank in Vickers (normalised: Brinell); else " \
                                   "that of the row.",                                             \
                        .example = "700"),                                                         \
        TS_RATE_OF_BOTH(type, "sigma_Hlim", sigma_Hlim, TS_RATE_MEASURE(TS_KIND_STRESS),           \
                        .range   = TS_ABOVE(0.0, 1e10, "MPa"),                                     \
                        .says    = "Allowable stress number for contact; else from the material.", \
                        .example = "1500 MPa"),                                                    \
        TS_RATE_OF_BOTH(type, "sigma_Flim", sigma_Flim, TS_RATE_MEASURE(TS_KIND_STRESS),           \
                        .range   = TS_ABOVE(0.0, 1e10, "MPa"),                                     \
                        .says    = "Allowable stress number for bending; else from the material.", \
                        .example = "480 MPa"),                                                     \
        TS_RATE_OF_BOTH(type, "sigma_y", sigma_y, TS_RATE_MEASURE(TS_KIND_STRESS),                 \
                        .range   = TS_ABOVE(0.0, 1e10, "MPa"),                                     \
                        .says    = "Yield stress, asked of through-hardened and normalised "       \
                                   "steel; else from the material.",                               \
                        .example = "800 MPa"),                                                     \
        TS_RATE_OF_BOTH(type, "HB_", HB, TS_RATE_MEASURE(TS_KIND_NUMBER),                          \
                        .range   = TS_ABOVE(0.0, 1000.0, "1"),                                     \
                        .says    = "Brinell hardness, asked of a soft gear; else converted from "  \
                                   "its hardness.",                                                \
                        .example = "300"),                                                         \
        TS_RATE_OF_BOTH(                                                                           \
            type, "E_", E, TS_RATE_MEASURE(TS_KIND_STRESS), .range = TS_ABOVE(0.0, 1e12, "MPa"),   \
            .says = "Modulus of elasticity; else from the material.", .example = "206000 MPa"),    \
        TS_RATE_OF_BOTH(type, "nu_", nu, TS_RATE_MEASURE(TS_KIND_NUMBER),                          \
                        .range = TS_FROM(0.0, 0.5, "1"),                                           \
                        .says = "Poisson's ratio; else from the material.", .example = "0.3"),     \
        TS_RATE_OF_BOTH(type, "rho_", rho, TS_RATE_MEASURE(TS_KIND_DENSITY),                       \
                        .range = TS_ABOVE(0.0, 30000.0, "kg/m3"),                                  \
                        .says = "Density; else from the material.", .example = "7830 kg/m3"),      \
        TS_RATE_OF_BOTH(type, "pitting ", pitting, .form = TS_FORM_PICK,                           \
                        .choices = ts_rate_answers,                                                \
                        .preset  = {"no", "no pit is permitted; common practice, no source"},      \
                        .says = "Is some pitting permitted?", .example = "no"),                    \
        TS_RATE_OF_BOTH(type, "Z_NTlong", Z_NTlong, TS_RATE_MEASURE(TS_KIND_NUMBER),               \
                        .range  = TS_ABOVE(0.0, 1.0, "1"),                                         \
                        .preset = {"0.85", "in general; 1 for the best material and care "         \
                                           "(ISO 6336-2:2019, clause 11, from memory)"},           \
                        .says = "Life factor for contact at 1e10 cycles.", .example = "1"),        \
        TS_RATE_OF_BOTH(type, "Y_NTlong", Y_NTlong, TS_RATE_MEASURE(TS_KIND_NUMBER),               \
                        .range  = TS_ABOVE(0.0, 1.0, "1"),                                         \
                        .preset = {"0.85", "in general; 1 for the best material and care "         \
                                           "(ISO 6336-3:2019, clause 12, from memory)"},           \
                        .says = "Life factor for bending at 1e10 cycles.", .example = "1"),        \
        TS_RATE_OF_BOTH(type, "R_z", R_z, TS_RATE_MEASURE(TS_KIND_LENGTH),                         \
                        .range = TS_ABOVE(0.0, 0.001, "um"), .says = "Roughness of the flank.",    \
                        .example = "3 um"),                                                        \
        TS_RATE_OF_BOTH(type, "R_zF", R_zF, TS_RATE_MEASURE(TS_KIND_LENGTH),                       \
                        .range = TS_ABOVE(0.0, 0.001, "um"), .says = "Roughness of the fillet.",   \
                        .example = "10 um")

/* ---- load --------------------------------------------------------------------------------------
 */

#define TS_RATE_LOAD_FIELDS(type, force)                                                           \
    TS_RATE_ONE(type, "T_1", load.T_1, TS_RATE_MEASURE(TS_KIND_TORQUE),                            \
                .range = TS_FROM(0.0, 1e8, "N.m"),                                                 \
                .says  = "Torque of gear 1.  One of `T_1`, `" force                                \
                        "` and `P` asks for the load capacity.",                                   \
                .example = "120 N.m"),                                                             \
        TS_RATE_ONE(type, force, load.F, TS_RATE_MEASURE(TS_KIND_FORCE),                           \
                    .range   = TS_FROM(0.0, 1e9, "N"),                                             \
                    .says    = "Tangential force at the reference circle (of bevel gears: in the " \
                               "middle of the face).",                                             \
                    .example = "4800 N"),                                                          \
        TS_RATE_ONE(type, "P", load.P, TS_RATE_MEASURE(TS_KIND_POWER),                             \
                    .range = TS_FROM(0.0, 1e9, "kW"), .says = "Power through the mesh.",           \
                    .example = "60 kW"),                                                           \
        TS_RATE_ONE(type, "n_1", load.n_1, TS_RATE_MEASURE(TS_KIND_ROTATIONAL_SPEED),              \
                    .range = TS_FROM(0.0, 20943.951023931954923, "rpm"), /* 200 000 rpm */         \
                    .says = "Speed of gear 1.", .example = "9000 rpm"),                            \
        TS_RATE_ONE(type, "L_h", load.L_h, TS_RATE_MEASURE(TS_KIND_TIME),                          \
                    .range   = TS_ABOVE(0.0, 3.6e9, "h"),                                          \
                    .says    = "Time under this load, from which the load cycles follow.",         \
                    .example = "4000 h"),                                                          \
        TS_RATE_OF_BOTH(type, "N_L", N_L, TS_RATE_MEASURE(TS_KIND_NUMBER),                         \
                        .range   = TS_ABOVE(0.0, 1e15, "1"),                                       \
                        .says    = "Load cycles of a tooth, where `L_h` does not give them.",      \
                        .example = "2.1e9"),                                                       \
        TS_RATE_OF_BOTH(type, "q_", q, .form = TS_FORM_TALLY, .known = true,                       \
                        .range   = TS_FROM(1, 100, "1"),                                           \
                        .preset  = {"1", "each gear meshes with the other alone"},                 \
                        .says    = "How many mates load the same flank of a tooth in a turn, by "  \
                                   "which `L_h` becomes load cycles.",                             \
                        .example = "3"),                                                           \
        TS_RATE_ONE(type, "K_A", load.K_A, TS_RATE_MEASURE(TS_KIND_NUMBER),                        \
                    .range  = TS_ABOVE(0.0, 10.0, "1"),                                            \
                    .preset = {"1", "the load is taken for the greatest that the teeth feel "      \
                                    "from outside; common practice, no source"},                   \
                    .says = "Application factor.", .example = "1.25"),                             \
        TS_RATE_ONE(type, "S_Hmin", load.S_Hmin, TS_RATE_MEASURE(TS_KIND_NUMBER),                  \
                    .range  = TS_ABOVE(0.0, 10.0, "1"),                                            \
                    .preset = {"1", "pitting tells itself by debris before a tooth is lost; "      \
                                    "common practice, no source"},                                 \
                    .says = "Least safety against pitting.", .example = "1.1"),                    \
        TS_RATE_ONE(                                                                               \
            type, "S_Fmin", load.S_Fmin, TS_RATE_MEASURE(TS_KIND_NUMBER),                          \
            .range  = TS_ABOVE(0.0, 10.0, "1"),                                                    \
            .preset = {"1.25", "a tooth breaks without warning; common practice, no source"},      \
            .says = "Least safety against breaking teeth.", .example = "1.4"),                     \
        TS_RATE_ONE(type, "nu_40", load.nu_40, TS_RATE_MEASURE(TS_KIND_KINEMATIC_VISCOSITY),       \
                    .range = TS_ABOVE(0.0, 0.01, "cSt"),                                           \
                    .says = "Viscosity of the oil at 40 degrees Celsius.", .example = "27 cSt")

#endif
