// How does the engine start?  From rest to idle, or to where it hangs.
import { useMemo, useState } from "preact/hooks";
import { courseOfStart } from "../state/course";
import { view } from "../state/store";
import { amount, degreesShown } from "../show/amount";
import { number } from "../show/format";
import { Field } from "../show/field";
import type { Start } from "../wire/course";
import { useOfDrive } from "../wire/keep";
import type { View } from "../wire/view";
import { Player } from "./player";

const TURNED = 1 / 2000;

function temperature(kelvin: number | null): string {
  return kelvin === null ? "not known" : `${number(degreesShown().of(kelvin), 3)} ${degreesShown().unit}`;
}

function Necks(props: { start: Start }) {
  const all = props.start.necks ?? [];
  if (all.length === 0) return <p>No neck is told.</p>;
  return (
    <ul>{all.map((one) => <li key={one.of}>The neck of {one.of} passes {amount(one.T === null ? null : Math.abs(one.T), "N.m")} at the most and breaks from {amount(one.breaks_from, "N.m")} to {amount(one.breaks_to, "N.m")}.</li>)}</ul>
  );
}

const RPM = Math.PI / 30, SAME = 1e-4;

/** The conditions in which the cranked spool turns faster than where it idles, and the one that is asked for. */
function onwards(now: View, start: Start | null, to: string): string[] {
  const idles = start?.events?.find((one) => one.what === "idles" && start.spools?.some((spool) => spool.cranked && spool.of === one.of));
  const spool = now.spools.find((one) => one.name === idles?.of);
  const idle = idles?.speed ?? Infinity;
  return now.conditions.filter((name, at) => name === to || (spool?.speed[at] ?? 0) * RPM > idle * (1 + SAME));
}

export function StartView() {
  const now = view.value;
  const [ambient, setAmbient] = useState("");
  const [oil, setOil] = useState("");
  const [to, setTo] = useState("");
  const query: Record<string, string> = {};
  if (ambient !== "") query["ambient"] = ambient;
  if (oil !== "") query["oil"] = oil;
  if (to !== "") query["to"] = to;
  const { got, says } = useOfDrive<Start>("/api/start", query);
  const course = useMemo(() => (now === null || got === null ? null : courseOfStart(now, got)), [now, got]);
  if (now === null) return null;
  return (
    <div class="wide scroll" tabIndex={0} role="region" aria-label="start">
      <h2>How does the engine start?</h2>
      <p class="failing">
        <Field label="Air" value={ambient} empty={got === null ? "" : temperature(got.ambient)} unit={degreesShown().unit} take={setAmbient} />
        <Field label="Oil in the bearings" value={oil} empty={got === null ? "" : temperature(got.oil)} unit={degreesShown().unit} take={setOil} />
        <label>Goes on to <select value={to} onChange={(event) => setTo(event.currentTarget.value)}><option value="">idle, and no further</option>{onwards(now, got, to).map((one) => <option key={one} value={one}>{one}</option>)}</select></label>
      </p>
      {says !== null && <p class="bad">{says}</p>}
      {got?.missing !== undefined && <p>It cannot be computed: {got.of !== undefined ? `${got.of} lacks ` : "the file lacks "}{got.missing}.</p>}
      {got?.outcome !== undefined && <p role="status"><b>It ends: {got.outcome}</b>{got.t != null && ` after ${number(got.t, 3)} s`}{got.because !== undefined && `, ${got.because}`}.</p>}
      {course !== null && got !== null && <><Player now={now} course={course} drawn={false} turned={TURNED} loads="% of what bears it" tint="Beside each shaft: its torque, as a part of what bears it." /><h3>Necks</h3><Necks start={got} /></>}
    </div>
  );
}
