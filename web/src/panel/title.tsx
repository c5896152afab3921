// What is open, does it hold, and what can be taken back?
import { redo, undo } from "../state/acts";
import { busy, conditionName, ground, GROUNDS, state, told, units, view, viewName, type Ground, type Units } from "../state/store";
import { Mark, markOf, word, type MarkName } from "../show/mark";

const ORDER: MarkName[] = ["refuse", "notcomp", "warn", "waived", "note"];

function Counts() {
  const now = view.value;
  if (now === null) return null;
  const names = now.findings.map(markOf);
  return (
    <ul class="counts">
      {ORDER.map((name) => (
        <li key={name}><Mark name={name} /> <b>{names.filter((one) => one === name).length}</b> {word(name)}</li>
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
      <div><span class="key">Condition shown</span><span>{conditionName.value}</span></div>
      <div class="verdict"><span class="key" id="verdict">{file !== null && file.computed !== file.serial ? "The text cannot be computed; the last drive that could be is shown." : now?.says ?? ""}</span><Counts /></div>
      <div class="undo">
        <button type="button" disabled={!file?.undo || busy.value > 0} title={file?.undo ? `Ctrl+Z: ${file.undo}` : "nothing to take back"} onClick={() => void undo()}>Undo</button>
        <button type="button" disabled={!file?.redo || busy.value > 0} title={file?.redo ? `Ctrl+Shift+Z: ${file.redo}` : "nothing to do again"} onClick={() => void redo()}>Redo</button>
      </div>
      <label><span class="key">Units</span>
        <select value={units.value} onChange={(event) => { units.value = event.currentTarget.value as Units; }}>
          <option value="metric">metric</option><option value="us">US</option>
        </select>
      </label>
      <label><span class="key">Ground</span>
        <select value={ground.value} onChange={(event) => { ground.value = event.currentTarget.value as Ground; }}>
          {GROUNDS.map((one) => <option key={one} value={one}>{one === "contrast" ? "high contrast" : one}</option>)}
        </select>
      </label>
    </header>
  );
}

/** Also read aloud. */
export function Told() {
  const now = told.value;
  return <p class={now?.bad ? "told bad" : "told"} role="status" aria-live="polite">{now?.says ?? (viewName.value !== "Behind" && viewName.value !== "Front" ? "" : "Choose a shaft: drag it along its branch or to the other face, or turn the wheel over it to change its teeth.")}</p>;
}
