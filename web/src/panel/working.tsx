// Where does a number come from?  Down to the lines of the file.
import { useEffect, useState } from "preact/hooks";
import { get } from "../wire/ask";
import type { Note, Why } from "../wire/view";
import { leaf, line, state, units, view, working } from "../state/store";
import { nameOfRow } from "./conditions";
import { Field } from "../show/field";
import { number, percent } from "../show/format";
import { act } from "../state/acts";

function shown(note: Note): string {
  const value = note.shown ?? (note.value === undefined ? null : { value: note.value, unit: note.unit ?? "" });
  if (value === null || value.value === null) return "not computed";
  return `${number(value.value, 6)}${value.unit === "1" || value.unit === "" ? "" : ` ${value.unit}`}`;
}

function Symbol(props: { text: string }) {
  const [base = "", low] = props.text.split("_", 2);
  return <i class="symbol">{base}{low !== undefined && <sub>{low}</sub>}</i>;
}

/** A given number may be changed where its working ends. */
function Change(props: { note: Note; at: string }) {
  const { note, at } = props;
  const value = note.shown ?? (note.value === undefined ? null : { value: note.value, unit: note.unit ?? "1" });
  if (value === null || value.value === null) return null;
  const unit = value.unit === "1" ? "" : value.unit;
  const text = `${value.value}${unit === "" ? "" : ` ${unit}`}`;
  return <p><Field label="Change to" value="" empty={text} unit={unit} take={(next) => { if (next !== "") void act([{ at, to: next }], `${at}: ${text} to ${next}`); }} /></p>;
}

/** Many numbers share their inputs, so the whole tree is far larger than its notes: a branch is made when it is opened. */
function Step(props: { notes: Map<number, Note>; id: number; open: boolean; above: number[] }) {
  const [open, setOpen] = useState(props.open);
  const note = props.notes.get(props.id);
  if (note === undefined || props.above.includes(props.id)) return null;
  const inputs = note.inputs ?? [];
  // The numbers put in are SI; beside values told in other units that must be said.
  const scaled = [note, ...inputs.map((one) => props.notes.get(one.origin ?? -1))].some((one) => one?.shown != null && one.unit !== undefined && one.shown.unit !== one.unit);
  const head = (
    <>
      <Symbol text={note.typeset ?? note.symbol ?? ""} /> = <b>{shown(note)}</b>
      {note.meaning && <span class="quiet"> {note.meaning}</span>}
    </>
  );
  const more = (
    <>
      {note.formula && <p class="formula">= {note.formula}</p>}
      {note.numbers && <p class="formula">= {note.numbers}{scaled && <small> in SI units</small>}</p>}
      {note.line && <p><button type="button" class="link" onClick={() => { line.value = note.line ?? 0; leaf.value = "file"; }}>line {note.line}</button> <code>{note.says}</code></p>}
      {note.kind === "given" && note.stands_at && <Change note={note} at={note.stands_at} />}
      {note.source && <p class="source">{note.source}</p>}
    </>
  );
  if (inputs.length === 0) return <li class="leaf">{head}{more}</li>;
  return (
    <li>
      <details open={open} onToggle={(event) => setOpen(event.currentTarget.open)}>
        <summary>{head}</summary>
        {open && more}
        {open && <ul>
          {inputs.map((input, index) => input.origin === null
            ? <li key={index} class="leaf"><Symbol text={input.symbol} /> = {number(input.value, 6)}</li>
            : <Step key={index} notes={props.notes} id={input.origin} open={false} above={[...props.above, props.id]} />)}
        </ul>}
      </details>
    </li>
  );
}

const SCALE = { least: -0.2, most: 0.6, width: 180 };

/** A demand is a round number: without the zeros behind it. */
function plain(value: number): string {
  return number(value, 6).replace(/(\.\d*?)0+$/, "$1").replace(/\.$/, "");
}

/** The demand in the unit of the value: both are SI, and the value is told in the unit shown too. */
function demand(note: Note, limit: number): string | null {
  const value = note.value, shown = note.shown;
  if (value === null || value === undefined) return null;
  if (shown === null || shown === undefined || shown.unit === note.unit) return `${plain(limit)}${note.unit === "1" || !note.unit ? "" : ` ${note.unit}`}`;
  if (shown.unit === "degC") return `${plain(limit - 273.15)} degC`;
  return shown.unit === "degF" || value === 0 ? null : `${plain((limit * shown.value) / value)} ${shown.unit}`;
}

/** What was chosen: the value with its demand, and how far they are apart. */
function Head(props: { at: string; root: Note }) {
  const row = view.value?.margins.find((one) => one.cells.some((cell) => cell.working === props.at));
  const c = row?.cells.findIndex((cell) => cell.working === props.at) ?? -1;
  const cell = row?.cells[c];
  const where = (x: number): number => ((Math.min(SCALE.most, Math.max(SCALE.least, x)) - SCALE.least) / (SCALE.most - SCALE.least)) * SCALE.width;
  const of = row === undefined || view.value === null ? "" : nameOfRow(view.value, row);
  const limit = cell?.limit === null || cell?.limit === undefined ? null : demand(props.root, cell.limit);
  return (
    <div class="result">
      <p class="figure"><Symbol text={props.root.typeset ?? props.root.symbol ?? ""} /> = {shown(props.root)}</p>
      {row !== undefined && cell !== undefined && cell.margin !== null && cell.margin !== undefined && <>
        <p>{row.title}{of !== "" && ` of ${of}`} at {view.value?.conditions[c]}: {limit === null ? "" : `${limit} is demanded, so the margin is `}<b>{percent(cell.margin)} %</b></p>
        <svg width={SCALE.width + 120} height={16} aria-hidden="true">
          <rect class={cell.margin < 0 ? "less" : "more"} x={Math.min(where(0), where(cell.margin))} y={4} width={Math.max(1, Math.abs(where(cell.margin) - where(0)))} height={8} />
          <line class="p4" x1={where(0)} y1={0} x2={where(0)} y2={16} /><line class="p1" x1={0} y1={8} x2={SCALE.width} y2={8} />
          <text x={SCALE.width + 8} y={12}>scale {"\u2212"}20 to +60 %</text>
        </svg>
      </>}
    </div>
  );
}

export function Working() {
  const at = working.value;
  const computed = state.value?.computed, shownUnits = units.value;
  const [why, setWhy] = useState<Why | null>(null);
  const [says, setSays] = useState<string | null>(null);
  useEffect(() => {
    let live = true;
    if (at === null) {
      setWhy(null);
      return;
    }
    void get<Why>("/api/why", { at, units: shownUnits }).then((got) => {
      if (!live) return;
      setWhy(got.status === 200 ? got.body : null);
      setSays(got.status === 200 ? null : got.says);
    });
    return () => { live = false; };
  }, [at, computed, shownUnits]);
  const notes = new Map((why?.working.notes ?? []).map((note) => [note.id, note]));
  return (
    <section class={why === null && says === null ? "working closed" : "working"} id="working" aria-labelledby="working-head">
      <h2 id="working-head">Working <small>{at ?? "choose a margin (under the picture), or the working of a finding"}</small>
        {at !== null && <button type="button" class="link right" onClick={() => { working.value = null; }}>close</button>}
      </h2>
      <div class="scroll" tabIndex={0} role="region" aria-label="working">
        {says !== null && <p class="bad">{says}</p>}
        {why !== null && at !== null && notes.get(why.working.root) !== undefined && <Head at={at} root={notes.get(why.working.root) as Note} />}
        {why !== null && <ul class="tree" key={`${at} ${computed} ${shownUnits}`}><Step notes={notes} id={why.working.root} open={true} above={[]} /></ul>}
      </div>
    </section>
  );
}
