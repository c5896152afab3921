// What happens when an accessory seizes?  Until its neck breaks, and on.
import { useMemo, useState } from "preact/hooks";
import { courseOfSeizure } from "../state/course";
import { chosen, condition, conditionName, padsOf, view } from "../state/store";
import { amount, unitOf } from "../show/amount";
import type { Seizure } from "../wire/course";
import { useOfDrive } from "../wire/keep";
import { Player } from "./player";

const RAMPS: [string, string][] = [["", "at once"], ["1 ms", "in 1 ms"], ["5 ms", "in 5 ms"], ["20 ms", "in 20 ms"], ["100 ms", "in 100 ms"]];

export function SeizureView() {
  const now = view.value;
  const [wish, setWish] = useState<string | null>(null);
  const [ramp, setRamp] = useState("");
  const [lent, setLent] = useState("");
  const [which, setWhich] = useState(0);
  const names = (now?.pads ?? []).filter((pad) => pad.accessory !== undefined).map((pad) => pad.name);
  const here = now === null ? undefined : padsOf(now, chosen.value).find((pad) => pad.accessory !== undefined)?.name;
  const name = wish !== null && names.includes(wish) ? wish : here ?? names.find((one) => one.includes("pump")) ?? names[0] ?? "";
  const query: Record<string, string> = { accessory: name, condition: conditionName.value };
  if (ramp !== "") query["ramp"] = ramp;
  if (lent !== "" && names.includes(lent)) query["neck_of"] = lent;
  const { got, says } = useOfDrive<Seizure>("/api/seize", query);
  const run = got?.runs[Math.min(which, got.runs.length - 1)];
  const course = useMemo(() => (now === null || got === null || run === undefined ? null : courseOfSeizure(now, got, run, condition.value)), [now, got, run]);
  if (now === null) return null;
  return (
    <div class="wide scroll" tabIndex={0} role="region" aria-label="seizure">
      <h2>What happens when it seizes?</h2>
      <p class="failing">
        <label>Accessory <select value={name} onChange={(event) => setWish(event.currentTarget.value)}>{names.map((one) => <option key={one} value={one}>{one}</option>)}</select></label>
        <label>Stops <select value={ramp} onChange={(event) => setRamp(event.currentTarget.value)}>{RAMPS.map(([value, word]) => <option key={value} value={value}>{word}</option>)}</select></label>
        <label>Neck <select value={lent} onChange={(event) => setLent(event.currentTarget.value)}><option value="">its own</option>{names.filter((one) => one !== name).map((one) => <option key={one} value={one}>that of {one}</option>)}</select></label>
        {got !== null && got.runs.length > 1 && <span role="group" aria-label="strength of the neck">{got.runs.map((one, index) => <button key={one.run} type="button" aria-pressed={one === run} class={one === run ? "main" : ""} onClick={() => setWhich(index)}>{one.run}{one.neck !== null && ` (${amount(one.neck, "N.m", 3)})`}</button>)}</span>}
      </p>
      {says !== null && <p class="bad">{says}</p>}
      {got?.because !== undefined && <p>It cannot be computed: {got.because}{got.of !== undefined && ` (${got.of})`}. Choose another accessory, or another condition below.</p>}
      {run?.because !== undefined && <p class="bad">{run.because}</p>}
      {course !== null && <><p role="status"><b>{course.ended}.</b> At {got?.condition}, with all other loads of that condition.</p><Player now={now} course={course} drawn={true} turned={1} loads={`torque, ${unitOf("N.m")}`} tint="Beside each shaft: its torque, as a part of what bears it. Dashed circles are the rotors of accessories." /></>}
    </div>
  );
}
