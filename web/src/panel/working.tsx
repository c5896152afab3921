// Where does a number come from?  Down to the lines of the file.
import { useEffect, useState } from "preact/hooks";
import { get } from "../wire/ask";
import type { Note, Why } from "../wire/view";
import { leaf, line, state, working } from "../state/store";
import { Field } from "../show/field";
import { number } from "../show/format";
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

function Step(props: { notes: Map<number, Note>; id: number; open: boolean; above: number[] }) {
  const note = props.notes.get(props.id);
  if (note === undefined || props.above.includes(props.id)) return null;
  const inputs = note.inputs ?? [];
  const head = (
    <>
      <Symbol text={note.typeset ?? note.symbol ?? ""} /> = <b>{shown(note)}</b>
      {note.meaning && <span class="quiet"> {note.meaning}</span>}
    </>
  );
  const more = (
    <>
      {note.formula && <p class="formula">= {note.formula}</p>}
      {note.numbers && <p class="formula">= {note.numbers}</p>}
      {note.line && <p><button type="button" class="link" onClick={() => { line.value = note.line ?? 0; leaf.value = "file"; }}>line {note.line}</button> <code>{note.says}</code></p>}
      {note.kind === "given" && note.stands_at && <Change note={note} at={note.stands_at} />}
      {note.source && <p class="source">{note.source}</p>}
    </>
  );
  if (inputs.length === 0) return <li class="leaf">{head}{more}</li>;
  return (
    <li>
      <details open={props.open}>
        <summary>{head}</summary>
        {more}
        <ul>
          {inputs.map((input, index) => input.origin === null
            ? <li key={index} class="leaf"><Symbol text={input.symbol} /> = {number(input.value, 6)}</li>
            : <Step key={index} notes={props.notes} id={input.origin} open={false} above={[...props.above, props.id]} />)}
        </ul>
      </details>
    </li>
  );
}

export function Working() {
  const at = working.value;
  const computed = state.value?.computed;
  const [why, setWhy] = useState<Why | null>(null);
  const [says, setSays] = useState<string | null>(null);
  useEffect(() => {
    let live = true;
    if (at === null) {
      setWhy(null);
      return;
    }
    void get<Why>("/api/why", { at }).then((got) => {
      if (!live) return;
      setWhy(got.status === 200 ? got.body : null);
      setSays(got.status === 200 ? null : got.says);
    });
    return () => { live = false; };
  }, [at, computed]);
  const notes = new Map((why?.working.notes ?? []).map((note) => [note.id, note]));
  return (
    <section class="working" id="working" aria-labelledby="working-head">
      <h2 id="working-head">Working <small>{at ?? "open any reserve, finding or speed"}</small>
        {at !== null && <button type="button" class="link right" onClick={() => { working.value = null; }}>close</button>}
      </h2>
      <div class="scroll" tabIndex={0} role="region" aria-label="working">
        {says !== null && <p class="bad">{says}</p>}
        {why !== null && <ul class="tree" key={`${at} ${computed}`}><Step notes={notes} id={why.working.root} open={true} above={[]} /></ul>}
      </div>
    </section>
  );
}
