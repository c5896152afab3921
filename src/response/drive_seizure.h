/* response/drive_seizure.h: what happens in a drive when an accessory seizes, or is jolted?
 *
 * Model     Bodies and springs of its torsion (response/drive_torsion.h), turning and loaded as in
 *           a condition: every spring carries what the torque paths say, every body takes or
 *           gives the rest.  What takes torque takes it in proportion to its speed; what drives
 *           keeps it.
 * Jolts     A torque on the rotor of an accessory that swings and decays (a short) or stays (a
 * step); one on the spool that would give the whole tree, were it rigid, an acceleration (a slam);
 * a rotor that is faster than its pad when its clutch takes hold. Play      Of teeth, midway
 * between what the makers may leave; else `play` of the record seizure. Damping   A share of
 * critical of the two bodies that a spring joins by themselves. Sources   docs/method/seize.md
 */
#ifndef TS_RESPONSE_DRIVE_SEIZURE_H
#define TS_RESPONSE_DRIVE_SEIZURE_H

#include "response/drive_torsion.h"
#include "response/elastic_train.h"

#define TS_SEIZE_PERIODS 2.5 /* how long it is followed: turns of the slowest mode              */
#define TS_SEIZE_DECAYS  2.0 /* ... and at least so many decays of a pulse                      */

typedef struct ts_seizure_question {
    const ts_drive       *drive;
    const ts_power       *power;
    const ts_drive_twist *twist; /* computed, in the state of the condition */
    uint32_t              condition;
    int32_t               accessory; /* that seizes or is jolted; it has a rotor in the twist; -1:
                                        the spool is                                            */
    bool   stops;
    double ramp;             /* s; 0: it stops at once, or the jolt comes at once; the pulse has
                                the same as its `rise`                                        */
    ts_torque_pulse pulse;   /* on what is jolted, whatever its body; A 0: none               */
    double          alpha;   /* rad/s2 of the spool, were all rigid; in the place of pulse.A  */
    double          slip;    /* rad/s by which the rotor is faster at first                   */
    const double   *breaks;  /* [joint] N.m at its outer body                                 */
    size_t          samples; /* of the trace */
} ts_seizure_question;

typedef struct ts_seizure {
    ts_train_run     run;
    uint32_t         body;      /* that stops or is jolted                                    */
    int32_t          first;     /* of run.events: the first break; -1: nothing breaks         */
    double           pad_angle; /* rad that its shaft turns until then; NaN: nothing breaks   */
    double           twist;     /* rad that it has wound up further                            */
    bool            *turns;     /* [body] is it still joined to the spool?                    */
    bool             held;      /* is what stands joined to the spool at the end?             */
    double           until;     /* s */
    size_t           plays_assumed;
    ts_torque_pulse  pulse; /* that it was given; A 0: none */
    ts_elastic_train train; /* that was followed */
} ts_seizure;

/* The body of the accessory's rotor; TS_NO_BODY: it has none. */
uint32_t ts_seizure_body(const ts_drive_twist *twist, int32_t accessory);

/* TS_NO_MEMORY, or TS_OK with whatever fault in out->run. */
ts_status ts_drive_seize(const ts_seizure_question *question, ts_arena *arena, ts_seizure *out);

#endif
