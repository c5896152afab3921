// How does the play between the teeth change as all grows hot?
import { useMemo, useState } from "preact/hooks";
import { courseOfWarming } from "../state/course";
import { view } from "../state/store";
import { amount, degreesShown, unitOf } from "../show/amount";
import { Field } from "../show/field";
import { number } from "../show/format";
import type { Warm } from "../wire/course";
import { useOfDrive } from "../wire/keep";
import { Player } from "./player";

export function Warming() {
  const now = view.value;
  const [soak, setSoak] = useState("");
  const [ambient, setAmbient] = useState("");
  const [through, setThrough] = useState("");
  const [which, setWhich] = useState(0);
  const query: Record<string, string> = {};
  if (soak !== "") query["soak"] = soak;
  if (ambient !== "") query["ambient"] = ambient;
  if (through !== "") query["through"] = through;
  const { got, says } = useOfDrive<Warm>("/api/warm", query);
  const degrees = degreesShown();
  const drives = got?.drives ?? [];
  const one = drives[Math.min(which, drives.length - 1)];
  const course = useMemo(() => (now === null || got === null || one === undefined ? null : courseOfWarming(now, got, one, degrees)), [now, got, one, degrees]);
  if (now === null) return null;
  const told = (kelvin: number | null | undefined): string => (kelvin == null ? "" : `${number(degrees.of(kelvin), 3)} ${degrees.unit}`);
  const least = (one?.plays ?? []).reduce<{ of: string; um: number } | null>((far, play) => (play.least !== null && (far === null || play.least * 1e6 < far.um) ? { of: `${play.driver} with ${play.driven}`, um: play.least * 1e6 } : far), null);
  return (
    <div class="wide scroll" tabIndex={0} role="region" aria-label="warming">
      <h2>What play is left as it grows warm?</h2>
      <p class="failing">
        <Field label="Soaked at" value={soak} empty={told(got?.soak)} unit={degrees.unit} take={setSoak} />
        <Field label="Air" value={ambient} empty={got?.ambient == null ? "takes no heat" : told(got.ambient)} unit={degrees.unit} take={setAmbient} />
        <label class="field">Through <input type="text" size={30} defaultValue={through} placeholder="every condition" title="as: ground idle 5 min, take-off 120 s" onBlur={(event) => setThrough(event.currentTarget.value.trim())} onKeyDown={(event) => { if (event.key === "Enter") setThrough(event.currentTarget.value.trim()); }} /></label>
        {drives.length > 1 && <label>Drive <select value={String(Math.min(which, drives.length - 1))} onChange={(event) => setWhich(Number(event.currentTarget.value))}>{drives.map((drive, index) => <option key={drive.of} value={String(index)}>{drive.of}</option>)}</select></label>}
      </p>
      {says !== null && <p class="bad">{says}</p>}
      {got !== null && course === null && <p>It cannot be computed: {one?.missing ?? got.missing ?? "the file lacks what it needs"}.</p>}
      {course !== null && <>
        <p role="status">{least !== null && <b>{least.um > 0 ? `The least play is ${amount(least.um, "um", 3)}, ${least.of}.` : `No play is left: ${least.of}.`}</b>}{one?.within === false && " Temperatures come that the file leaves out."} Tints are the part of the play at the beginning that is gone.</p>
        <Player now={now} course={course} drawn={false} turned={1} speeds={degrees.unit} loads={`least play, ${unitOf("um")}`} />
      </>}
    </div>
  );
}
