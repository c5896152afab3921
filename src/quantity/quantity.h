/* quantity/quantity.h: numbers with units, and the kinds that must not mix.
 *
 * Inside the house every value is in SI (m, kg, s, N, Pa, W, J, rad, rad/s, K; see data/unit.tsv);
 * customary units exist only in files and in what people see.  Factors are exact where the unit is
 * defined exactly; each names its source in data/unit.tsv.
 */
#ifndef TS_QUANTITY_QUANTITY_H
#define TS_QUANTITY_QUANTITY_H

#include "base/buffer.h"
#include "base/text.h"

#include <stdbool.h>
#include <stddef.h>

/* Two kinds never convert into each other even where their dimensions agree: torque and energy,
 * rotational speed and frequency, temperature and temperature difference, absolute and gauge
 * pressure, angle and number. */
typedef enum ts_kind {
    TS_KIND_NUMBER,                  /* 1, %        */
    TS_KIND_LENGTH,                  /* m           */
    TS_KIND_AREA,                    /* m2          */
    TS_KIND_ANGLE,                   /* rad         */
    TS_KIND_TIME,                    /* s           */
    TS_KIND_MASS,                    /* kg          */
    TS_KIND_DENSITY,                 /* kg/m3       */
    TS_KIND_INERTIA,                 /* kg.m2       */
    TS_KIND_VELOCITY,                /* m/s         */
    TS_KIND_ROTATIONAL_SPEED,        /* rad/s       */
    TS_KIND_ROTATIONAL_ACCELERATION, /* rad/s2     */
    TS_KIND_FREQUENCY,               /* Hz          */
    TS_KIND_FORCE,                   /* N           */
    TS_KIND_TORQUE,                  /* N.m         */
    TS_KIND_ENERGY,                  /* J           */
    TS_KIND_POWER,                   /* W           */
    TS_KIND_STRESS,                  /* Pa          */
    TS_KIND_PRESSURE_ABSOLUTE,       /* Pa          */
    TS_KIND_PRESSURE_GAUGE,          /* Pa          */
    TS_KIND_TEMPERATURE,             /* K           */
    TS_KIND_TEMPERATURE_DIFFERENCE,  /* K           */
    TS_KIND_VOLUME_FLOW,             /* m3/s        */
    TS_KIND_MASS_FLOW,               /* kg/s        */
    TS_KIND_KINEMATIC_VISCOSITY,     /* m2/s        */
    TS_KIND_STIFFNESS,               /* N/m         */
    TS_KIND_TORSIONAL_STIFFNESS,     /* N.m/rad     */
    TS_KIND_THERMAL_EXPANSION,       /* 1/K         */
    TS_KIND_MASS_PER_ANGLE,          /* kg/rad      */
    TS_KIND_COUNT
} ts_kind;

/* One row of data/unit.tsv: value in SI = value * factor + offset. */
typedef struct ts_unit {
    const char *name; /* "lbf.in"                                                    */
    ts_kind     kind;
    double      factor;
    double      offset;      /* 0 except for degC and degF                                  */
    const char *source;      /* "exact by definition"; "NIST SP 811 (2008), B.8"            */
    const char *exact;       /* the factor as defined: "0.45359237*9.80665*0.0254", "pi/30" */
    double      factor_rest; /* what the double nearest to the exact factor leaves over */
    double      offset_rest;
} ts_unit;

size_t         ts_unit_count(void);
const ts_unit *ts_unit_at(size_t index);
const ts_unit *ts_unit_named(ts_text name, ts_kind kind); /* NULL: no such unit of that kind */
const ts_unit *ts_unit_named_any(ts_text name);           /* first of any kind, or NULL      */
const char    *ts_kind_name(ts_kind kind);                /* "rotational speed"              */
const ts_unit *ts_kind_si(ts_kind kind);

typedef enum ts_units { TS_UNITS_METRIC, TS_UNITS_US } ts_units;
/* The unit in which people are shown this kind: rpm, kW, N.m, mm ... or hp, lbf.in, in ... */
const ts_unit *ts_kind_shown(ts_kind kind, ts_units units);

/* Both carry about 100 bits and round once, so that 25.4 mm and 1 in give the same double and the
 * result is the nearest double but for about one value in 2^40.  Infinities stay what they are. */
double ts_to_si(double value, const ts_unit *unit);
double ts_from_si(double value, const ts_unit *unit);

typedef struct ts_quantity_fault {
    const char *code; /* "missing-unit", "unknown-unit", "wrong-kind", "decimal-comma", ... */
    char        says[160];
    char        expected[160]; /* "a torque such as 34 N.m"                                      */
    const char *nearest; /* nearest unit of that kind, or NULL                                  */
    size_t      at;      /* byte in the text where it is wrong                                  */
    size_t      length;
} ts_quantity_fault;

/* Reads "34 N.m" as kind; blanks between number and unit are optional.  Returns true and the SI
 * value, or false and the fault.  A plain number is accepted for TS_KIND_NUMBER only.  The written
 * decimal, not the double nearest to it, is converted: "0.1 mm" is the double nearest to 0.0001 m.
 * Magnitudes outside 1e-180..1e180 are refused.  `unit` and `fault` may be NULL. */
bool ts_quantity_parse(ts_text text, ts_kind kind, double *si, const ts_unit **unit,
                       ts_quantity_fault *fault);

/* Reads "6600..7300 rpm", "..26000 rpm", "900.. rpm": an open end becomes -INFINITY or INFINITY.
 * Both ends may carry the unit when it is the same; low <= high; one end must be closed. */
bool ts_quantity_parse_range(ts_text text, ts_kind kind, double *low, double *high,
                             const ts_unit **unit, ts_quantity_fault *fault);

/* "34 N.m" in the given unit, the shortest digits that read back to the same SI double, so that
 * print and parse are inverses.  Within 17 K of absolute zero degC and degF are written as K. */
void ts_quantity_print(ts_buffer *out, double si, const ts_unit *unit);

/* "6600..7300 rpm", so that print and parse are inverses here too. */
void ts_quantity_print_range(ts_buffer *out, double low, double high, const ts_unit *unit);

/* For people: `digits` significant digits and the unit, "12 309 rpm" with thin groups off. */
void ts_quantity_show(ts_buffer *out, double si, const ts_unit *unit, int digits);

#endif
