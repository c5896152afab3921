// What is wrong, where does it stand in the file and in the picture, and who accepts it?
import { useEffect, useMemo, useRef, useState } from "preact/hooks";
import { unwaive, waive } from "../state/acts";
import { arrangeFor, chosen, condition, finding, fresh, leaf, line, view, viewName, working } from "../state/store";
import { isFace } from "../picture/face";
import { percent } from "../show/format";
import { Mark, markOf, word } from "../show/mark";
import type { Finding } from "../wire/view";

function Waive(props: { one: Finding; close: () => void }) {
  const [why, setWhy] = useState("");
  const [by, setBy] = useState("");
  return (
    <form class="waive" onSubmit={(event) => { event.preventDefault(); void waive(props.one, why, by).then((good) => { if (good) props.close(); }); }}>
      <label>Why it is accepted <input required value={why} onInput={(event) => setWhy(event.currentTarget.value)} /></label>
      <label>By whom <input required value={by} onInput={(event) => setBy(event.currentTarget.value)} /></label>
      <button type="submit" disabled={why.trim() === "" || by.trim() === ""}>Write the waiver into the file</button>
      <button type="button" onClick={props.close}>Not now</button>
    </form>
  );
}

/** What stands between backticks is said to the command or the file. */
function Told(props: { says: string }) {
  return <>{props.says.split("`").map((part, index) => (index % 2 === 1 ? <code key={index}>{part}</code> : part))}</>;
}

function One(props: { one: Finding; number: number }) {
  const { one } = props;
  const [asking, setAsking] = useState(false);
  const mark = markOf(one);
  const place = useRef<HTMLLIElement>(null);
  const unplaced = view.value?.unplaced.find((name) => one.address === `accessories/${name}`);
  const asked = finding.value === one.fingerprint, new_here = fresh.value.has(one.fingerprint);
  const picked = asked || (chosen.value >= 0 && one.shaft === chosen.value);
  useEffect(() => { if (asked) place.current?.scrollIntoView({ block: "nearest" }); }, [asked]);
  const show = (): void => {
    finding.value = one.fingerprint;
    chosen.value = one.shaft;
    if (one.condition >= 0) condition.value = one.condition;
    if (!isFace()) viewName.value = "Behind";
  };
  return useMemo(() => (
    <li ref={place} class={picked ? "finding chosen" : "finding"}>
      <Mark name={mark} size={15} />
      <div>
        <h3>{one.title}{new_here && <small class="fresh">new</small>}{one.margin !== null && <span class="margin">{percent(one.margin)} %</span>}</h3>
        <p><Told says={one.says} />.</p>
        {one.remedy && <p class="remedy">What would close it: <Told says={one.remedy} />.</p>}
        <p class="foot">
          <b>{word(mark)}</b> F{props.number} <span class="quiet">{one.rule}</span>{" "}
          {one.line > 0 && <button type="button" class="link line" onClick={() => { line.value = one.line; leaf.value = "file"; }}>line {one.line}</button>}{" "}
          {one.shaft >= 0 && <button type="button" class="link" onClick={show}>in the picture</button>}{" "}
          {one.working && <button type="button" class="link" onClick={() => { working.value = one.working; show(); }}>working</button>}{" "}
          {unplaced !== undefined && <button type="button" class="link" onClick={() => { arrangeFor.value = unplaced; viewName.value = "Arrange"; }}>find a place for it</button>}{" "}
          {one.state === "open" && <button type="button" class="link" aria-expanded={asking} onClick={() => setAsking(!asking)}>waive</button>}
          {one.waiver !== null && <button type="button" class="link" onClick={() => void unwaive(one)}>remove the waiver</button>}
        </p>
        {asking && <Waive one={one} close={() => setAsking(false)} />}
      </div>
    </li>
  ), [one, props.number, unplaced, picked, new_here, asking]);
}

export function Findings() {
  const now = view.value;
  const list = useRef<HTMLDivElement>(null);
  // What an act broke stands first: nobody should have to look for it.
  useEffect(() => { if (fresh.value.size > 0) list.current?.scrollTo({ top: 0 }); }, [fresh.value]);
  if (now === null) return null;
  return (
    <section class="findings" id="findings" aria-labelledby="findings-head">
      <h2 id="findings-head">Findings <small>worst first; nothing is hidden</small></h2>
      <div ref={list} class="scroll" tabIndex={0} role="region" aria-label="findings">
        {now.findings.length === 0 ? <p>Nothing was found.</p> : (
          <ul>{now.findings.map((one, index) => <One key={one.fingerprint} one={one} number={index + 1} />)}</ul>
        )}
      </div>
    </section>
  );
}
