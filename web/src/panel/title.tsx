// What is open, does it hold, and what can be taken back?
import { inTurn, redo, undo } from "../state/acts";
import { conditionName, finding, ground, GROUNDS, leaf, state, told, units, unreadable, view, viewName, type Ground, type Units } from "../state/store";
import { Mark, markOf, type MarkName } from "../show/mark";
import type { Finding } from "../wire/view";

const ORDER: MarkName[] = ["refuse", "notcomp", "warn", "waived", "note"];

const COUNTED: Record<MarkName, [string, string]> = {
  refuse: ["refusal", "refusals"], warn: ["warning", "warnings"], note: ["note", "notes"],
  waived: ["waived", "waived"], notcomp: ["not computable", "not computable"], pass: ["", ""],
};

function Count(props: { name: MarkName; many: number }) {
  return <li class={props.many === 0 ? "quiet" : ""}><Mark name={props.name} /> <b>{props.many}</b> {COUNTED[props.name][props.many === 1 ? 0 : 1]}</li>;
}

/** Before its colon the sentence says all; what is counted stands below it. */
function Verdict() {
  const now = view.value, stale = unreadable.value;
  const says = stale ? (now === null ? "The file cannot be computed yet." : "The text cannot be computed; the last drive that could be is shown.") : now?.says ?? "";
  const names = now?.findings.map(markOf) ?? [];
  const mark = stale || names.includes("notcomp") ? "notcomp" : "pass";
  return <b id="verdict" class={stale ? "stale" : ""} title={says}>{says !== "" && <Mark name={!stale && names.includes("refuse") ? "refuse" : mark} />} {says.split(":")[0]}</b>;
}

function Counts() {
  const now = view.value;
  if (now === null) return null;
  const names = now.findings.map(markOf);
  return (
    <ul class="counts">
      {ORDER.map((name) => (
        <Count key={name} name={name} many={names.filter((one) => one === name).length} />
      ))}
    </ul>
  );
}

export function Title() {
  const now = view.value;
  const file = state.value;
  return (
    <header class="title">
      <div><span class="key">Drive</span><h1>{now?.title ?? "towershaft"}</h1></div>
      <div><span class="key">File, revision</span><span>{file?.file ?? ""}{now?.revision ? `, ${now.revision}` : ""}</span></div>
      {now !== null && <div class="shown"><span class="key">Condition shown</span><span>{conditionName.value}</span></div>}
      <div class="verdict"><Verdict /><Counts /></div>
      <div class="undo">
        <button type="button" disabled={!file?.undo} title={file?.undo ? `Ctrl+Z: ${file.undo}` : "nothing to take back"} onClick={() => inTurn(undo)}>Undo</button>
        <button type="button" disabled={!file?.redo} title={file?.redo ? `Ctrl+Shift+Z: ${file.redo}` : "nothing to do again"} onClick={() => inTurn(redo)}>Redo</button>
      </div>
      <label><span class="key">Units</span>
        <select value={units.value} onChange={(event) => { units.value = event.currentTarget.value as Units; }}>
          <option value="metric">metric</option><option value="us">US</option>
        </select>
      </label>
      <label><span class="key">Colours</span>
        <select value={ground.value} onChange={(event) => { ground.value = event.currentTarget.value as Ground; }}>
          {GROUNDS.map((one) => <option key={one} value={one}>{one === "contrast" ? "high contrast" : one}</option>)}
        </select>
      </label>
    </header>
  );
}

/** Two lines hold them. */
const BROKE_MOST = 3, CLOSED_MOST = 2;

function Names(props: { all: Finding[]; most: number; link: boolean }) {
  const { all, most } = props;
  const show = (one: Finding): void => {
    finding.value = one.fingerprint;
    leaf.value = "findings";
  };
  return (
    <>
      {all.slice(0, most).map((one) => (
        <span key={one.fingerprint}>{" "}<Mark name={markOf(one)} size={13} />{" "}
          {props.link ? <button type="button" class="link" onClick={() => show(one)}>{one.title}</button> : one.title}
        </span>
      ))}
      {all.length > most && ` and ${all.length - most} more`}
    </>
  );
}

const HINT = "Choose a shaft. Drag it to another place or to the other face; roll the mouse wheel over it to change its teeth. Undo takes any of it back; ? shows the keys.";

/** Also read aloud: what was done, and what it broke. */
export function Told() {
  const now = told.value;
  const face = view.value !== null && (viewName.value === "Behind" || viewName.value === "Front");
  const broke = now?.after?.broke ?? [], closed = now?.after?.closed ?? [];
  return (
    <p class={now?.bad ? "told bad" : "told"} role="status" aria-live="polite">
      {now?.says ?? (face ? HINT : "")}
      {broke.length > 0 && <span class="broke"> It broke:<Names all={broke} most={closed.length > 0 ? CLOSED_MOST : BROKE_MOST} link={true} />.</span>}
      {closed.length > 0 && <span class="broke"> It closed:<Names all={closed} most={broke.length > 0 ? 1 : CLOSED_MOST} link={false} />.</span>}
    </p>
  );
}
