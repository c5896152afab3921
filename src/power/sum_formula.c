/* power/sum_formula.c: how is a sum written whose number of terms the drive decides? */
#include "power/sum_formula.h"

#define BALANCE "derived: equilibrium"

/* "T_a", "T_a + T_b", ... */
#define TORQUES_1  "T_a"
#define TORQUES_2  TORQUES_1 " + T_b"
#define TORQUES_3  TORQUES_2 " + T_c"
#define TORQUES_4  TORQUES_3 " + T_d"
#define TORQUES_5  TORQUES_4 " + T_e"
#define TORQUES_6  TORQUES_5 " + T_f"
#define TORQUES_7  TORQUES_6 " + T_g"
#define TORQUES_8  TORQUES_7 " + T_h"
#define TORQUES_9  TORQUES_8 " + T_i"
#define TORQUES_10 TORQUES_9 " + T_j"
#define TORQUES_11 TORQUES_10 " + T_k"
#define TORQUES_12 TORQUES_11 " + T_l"

/* "P_1", "P_1 + P_2", ... */
#define POWERS_1  "P_1"
#define POWERS_2  POWERS_1 " + P_2"
#define POWERS_3  POWERS_2 " + P_3"
#define POWERS_4  POWERS_3 " + P_4"
#define POWERS_5  POWERS_4 " + P_5"
#define POWERS_6  POWERS_5 " + P_6"
#define POWERS_7  POWERS_6 " + P_7"
#define POWERS_8  POWERS_7 " + P_8"
#define POWERS_9  POWERS_8 " + P_9"
#define POWERS_10 POWERS_9 " + P_10"
#define POWERS_11 POWERS_10 " + P_11"
#define POWERS_12 POWERS_11 " + P_12"
#define POWERS_13 POWERS_12 " + P_13"
#define POWERS_14 POWERS_13 " + P_14"
#define POWERS_15 POWERS_14 " + P_15"
#define POWERS_16 POWERS_15 " + P_16"
#define POWERS_17 POWERS_16 " + P_17"
#define POWERS_18 POWERS_17 " + P_18"
#define POWERS_19 POWERS_18 " + P_19"
#define POWERS_20 POWERS_19 " + P_20"
#define POWERS_21 POWERS_20 " + P_21"
#define POWERS_22 POWERS_21 " + P_22"
#define POWERS_23 POWERS_22 " + P_23"
#define POWERS_24 POWERS_23 " + P_24"
#define POWERS_25 POWERS_24 " + P_25"
#define POWERS_26 POWERS_25 " + P_26"
#define POWERS_27 POWERS_26 " + P_27"
#define POWERS_28 POWERS_27 " + P_28"
#define POWERS_29 POWERS_28 " + P_29"
#define POWERS_30 POWERS_29 " + P_30"
#define POWERS_31 POWERS_30 " + P_31"
#define POWERS_32 POWERS_31 " + P_32"
#define POWERS_33 POWERS_32 " + P_33"
#define POWERS_34 POWERS_33 " + P_34"
#define POWERS_35 POWERS_34 " + P_35"
#define POWERS_36 POWERS_35 " + P_36"
#define POWERS_37 POWERS_36 " + P_37"
#define POWERS_38 POWERS_37 " + P_38"
#define POWERS_39 POWERS_38 " + P_39"
#define POWERS_40 POWERS_39 " + P_40"
#define POWERS_41 POWERS_40 " + P_41"
#define POWERS_42 POWERS_41 " + P_42"
#define POWERS_43 POWERS_42 " + P_43"
#define POWERS_44 POWERS_43 " + P_44"
#define POWERS_45 POWERS_44 " + P_45"
#define POWERS_46 POWERS_45 " + P_46"
#define POWERS_47 POWERS_46 " + P_47"
#define POWERS_48 POWERS_47 " + P_48"

#define EACH_TORQUES(ROW)                                                                          \
    ROW(TORQUES_1), ROW(TORQUES_2), ROW(TORQUES_3), ROW(TORQUES_4), ROW(TORQUES_5),                \
        ROW(TORQUES_6), ROW(TORQUES_7), ROW(TORQUES_8), ROW(TORQUES_9), ROW(TORQUES_10),           \
        ROW(TORQUES_11), ROW(TORQUES_12), ROW("sum(T_i)")

#define EACH_POWERS(ROW)                                                                           \
    ROW(POWERS_1), ROW(POWERS_2), ROW(POWERS_3), ROW(POWERS_4), ROW(POWERS_5), ROW(POWERS_6),      \
        ROW(POWERS_7), ROW(POWERS_8), ROW(POWERS_9), ROW(POWERS_10), ROW(POWERS_11),               \
        ROW(POWERS_12), ROW(POWERS_13), ROW(POWERS_14), ROW(POWERS_15), ROW(POWERS_16),            \
        ROW(POWERS_17), ROW(POWERS_18), ROW(POWERS_19), ROW(POWERS_20), ROW(POWERS_21),            \
        ROW(POWERS_22), ROW(POWERS_23), ROW(POWERS_24), ROW(POWERS_25), ROW(POWERS_26),            \
        ROW(POWERS_27), ROW(POWERS_28), ROW(POWERS_29), ROW(POWERS_30), ROW(POWERS_31),            \
        ROW(POWERS_32), ROW(POWERS_33), ROW(POWERS_34), ROW(POWERS_35), ROW(POWERS_36),            \
        ROW(POWERS_37), ROW(POWERS_38), ROW(POWERS_39), ROW(POWERS_40), ROW(POWERS_41),            \
        ROW(POWERS_42), ROW(POWERS_43), ROW(POWERS_44), ROW(POWERS_45), ROW(POWERS_46),            \
        ROW(POWERS_47), ROW(POWERS_48), ROW("sum(P_i)")

#define TORQUE_ROW(sum)                                                                            \
    {                                                                                              \
        "T", "torque that passes into the shaft from the spool's side", "N.m", sum, BALANCE        \
    }
#define PADS_ROW(sum)                                                                              \
    {                                                                                              \
        "P_pads", "power absorbed at the pads less power driven in there", "W", sum, BALANCE       \
    }
#define LOST_ROW(sum)                                                                              \
    {                                                                                              \
        "P_lost", "power lost in all meshes", "W", sum, BALANCE                                    \
    }
#define DRIVING_ROW(sum)                                                                           \
    {                                                                                              \
        "P_driving", "power that accessories put in", "W", "-(" sum ")", BALANCE                   \
    }

static const ts_formula torque_sums[TS_TORQUES_NAMED + 1] = {EACH_TORQUES(TORQUE_ROW)};
static const ts_formula pad_sums[TS_POWERS_NAMED + 1]     = {EACH_POWERS(PADS_ROW)};
static const ts_formula lost_sums[TS_POWERS_NAMED + 1]    = {EACH_POWERS(LOST_ROW)};
static const ts_formula driving_sums[TS_POWERS_NAMED + 1] = {EACH_POWERS(DRIVING_ROW)};

static const char *const torque_terms[TS_TORQUES_NAMED] = {
    "T_a", "T_b", "T_c", "T_d", "T_e", "T_f", "T_g", "T_h", "T_i", "T_j", "T_k", "T_l",
};

static const char *const power_terms[TS_POWERS_NAMED] = {
    "P_1",  "P_2",  "P_3",  "P_4",  "P_5",  "P_6",  "P_7",  "P_8",  "P_9",  "P_10", "P_11", "P_12",
    "P_13", "P_14", "P_15", "P_16", "P_17", "P_18", "P_19", "P_20", "P_21", "P_22", "P_23", "P_24",
    "P_25", "P_26", "P_27", "P_28", "P_29", "P_30", "P_31", "P_32", "P_33", "P_34", "P_35", "P_36",
    "P_37", "P_38", "P_39", "P_40", "P_41", "P_42", "P_43", "P_44", "P_45", "P_46", "P_47", "P_48",
};

static size_t row_of(size_t count, size_t named)
{
    return count <= named ? count - 1 : named;
}

const char *ts_torque_term(size_t index, size_t count)
{
    return count <= TS_TORQUES_NAMED ? torque_terms[index] : "T_i";
}

const char *ts_power_term(size_t index, size_t count)
{
    return count <= TS_POWERS_NAMED ? power_terms[index] : "P_i";
}

const ts_formula *ts_torque_sum(size_t count)
{
    return &torque_sums[row_of(count, TS_TORQUES_NAMED)];
}

const ts_formula *ts_pad_power_sum(size_t count)
{
    return &pad_sums[row_of(count, TS_POWERS_NAMED)];
}

const ts_formula *ts_lost_power_sum(size_t count)
{
    return &lost_sums[row_of(count, TS_POWERS_NAMED)];
}

const ts_formula *ts_driving_power_sum(size_t count)
{
    return &driving_sums[row_of(count, TS_POWERS_NAMED)];
}
