// What has changed since then, and what does it look like over what there was?
import { useMemo, useState } from "preact/hooks";
import { decide } from "../state/acts";
import { boxShafts, chosen, state, units, view } from "../state/store";
import { percent } from "../show/format";
import { layOut, toX, toY, type Sheet } from "../picture/place";
import { Boxes, Gears, Hub } from "../picture/face";
import { useSize } from "../picture/size";
import { useOfDrive } from "../wire/keep";
import type { Comparison, Pad, Shaft, View } from "../wire/view";

interface Past { acts: { act: number; says: string; done: boolean }[]; git: { id: string; says: string }[]; files: string[] }

function Choice(props: { from: string; choose: (from: string) => void }) {
  const { got } = useOfDrive<Past>("/api/past");
  return (
    <label>Compare with{" "}
      <select value={props.from} onChange={(event) => props.choose(event.currentTarget.value)}>
        <option value="opened">the file as it was opened</option>
        {got !== null && got.acts.length > 0 && <optgroup label="before an act, the newest first">
          {[...got.acts].reverse().map((one) => <option key={one.act} value={`act:${one.act - 1}`}>{one.act}: before {one.says.length > 70 ? `${one.says.slice(0, 70)}\u2026` : one.says}{one.done ? "" : " (taken back)"}</option>)}
        </optgroup>}
        {got !== null && got.git.length > 0 && <optgroup label="commits of git">
          {got.git.map((one) => <option key={one.id} value={`git:${one.id}`}>{one.id.slice(0, 8)} {one.says}</option>)}
        </optgroup>}
        {got !== null && got.files.length > 0 && <optgroup label="other files of the folder">
          {got.files.map((one) => <option key={one} value={`file:${one}`}>{one}</option>)}
        </optgroup>}
      </select>
    </label>
  );
}

/** Where a shaft stands is told by its accessories, else by its address. */
function carried(of: View, shaft: number): string {
  return of.pads.filter((pad) => pad.shaft === shaft && pad.accessory !== undefined).map((pad) => pad.name).sort().join(" + ");
}

interface Pair { was: Shaft; now: Shaft | null; index: number }

function pairs(before: View, now: View): Pair[] {
  return boxShafts(before).map(({ shaft, index }) => {
    const name = carried(before, index);
    const same = now.shafts.findIndex((one, at) => one.kind === "box" && one.spool === shaft.spool && (name !== "" ? carried(now, at) === name : one.address === shaft.address && carried(now, at) === ""));
    return { was: shaft, now: now.shafts[same] ?? null, index: same };
  });
}

function far(a: Shaft, b: Shaft | null): number {
  return b === null || a.x === null || a.y === null || b.x === null || b.y === null ? Infinity : Math.hypot(a.x - b.x, a.y - b.y);
}

function Ghost(props: { one: Pair; sheet: Sheet }) {
  const { one, sheet } = props;
  if (one.was.x === null || one.was.y === null) return null;
  const x = toX(sheet, one.was.x), y = toY(sheet, one.was.y);
  const moved = far(one.was, one.now) > 1e-4, other = one.now !== null && Math.abs(one.was.r - one.now.r) > 1e-5;
  const x2 = toX(sheet, one.now?.x ?? 0), y2 = toY(sheet, one.now?.y ?? 0);
  return (
    <g class={one.now === null ? "was lost" : moved || other ? "was changed" : "was"}>
      <circle cx={x} cy={y} r={one.was.r * sheet.k} />
      {one.now !== null && moved && <><line x1={x} y1={y} x2={x2} y2={y2} /><circle class="dot" cx={x} cy={y} r={3} /></>}
      {one.now === null && <text class="label" text-anchor="middle" x={x} y={y}>gone: {one.was.name}</text>}
    </g>
  );
}

function otherFaces(before: View, now: View): { pad: Pad; face: string }[] {
  return now.pads.filter((pad) => pad.accessory !== undefined).flatMap((pad) => {
    const was = before.pads.find((one) => one.name === pad.name);
    return was !== undefined && was.face !== pad.face ? [{ pad, face: was.face }] : [];
  });
}

function Overlay(props: { before: View; now: View; width: number }) {
  const { before, now } = props;
  const sheet = useMemo(() => layOut(now, props.width, 340, 1, ""), [now, props.width]);
  const all = pairs(before, now);
  const changed = all.filter((one) => far(one.was, one.now) > 1e-4 || (one.now !== null && Math.abs(one.was.r - one.now.r) > 1e-5));
  const faces = otherFaces(before, now);
  const fresh = boxShafts(now).filter(({ index }) => !all.some((one) => one.index === index));
  const says = [
    ...changed.map((one) => (one.now === null ? `${one.was.name} is gone` : `${one.was.name} ${far(one.was, one.now) > 1e-4 ? "moved" : "changed its size"}`)),
    ...fresh.map(({ shaft }) => `${shaft.name} is new`), ...faces.map((one) => `${one.pad.name} changed from the ${one.face} to the ${one.pad.face}`),
  ];
  return (
    <figure class="overlay">
      <svg width={sheet.width} height={sheet.height} viewBox={`0 0 ${sheet.width} ${sheet.height}`} role="img" aria-label={`The face now, and dashed over it what there was. ${says.length === 0 ? "Nothing moved." : `${says.join("; ")}.`}`}>
        <Boxes now={now} sheet={sheet} />
        <Gears now={now} sheet={sheet} turn={() => undefined} />
        <Hub now={now} sheet={sheet} condition={null} />
        {all.map((one) => <Ghost key={one.was.address} one={one} sheet={sheet} />)}
        {boxShafts(now).map(({ shaft, index }) => shaft.x === null || shaft.y === null ? null : (
          <g key={shaft.address} class="shaft" onPointerDown={() => { chosen.value = index; }}>
            {index === chosen.value && <circle class="ring" cx={toX(sheet, shaft.x)} cy={toY(sheet, shaft.y)} r={(shaft.r + 0.004) * sheet.k} />}
            <circle class="number" cx={toX(sheet, shaft.x)} cy={toY(sheet, shaft.y)} r={10} /><text class="number-text" x={toX(sheet, shaft.x)} y={toY(sheet, shaft.y) + 4} text-anchor="middle">{shaft.number}</text>
          </g>
        ))}
      </svg>
      <figcaption>Solid: now. Dashed: then, a line from where it stood to where it stands. {says.length === 0 ? "Nothing moved." : `${says.join("; ")}.`}</figcaption>
    </figure>
  );
}

function Changes(props: { got: Comparison }) {
  const { got } = props;
  if (got.changes.length === 0) return <p>Nothing has changed.</p>;
  return (
    <>
      <p>Then: {got.before.verdict}. Now: {got.after.verdict}.</p>
      <table class="plain">
        <caption class="away">Changes, the weightiest first</caption>
        <thead><tr><th scope="col">Kind</th><th scope="col">Of what</th><th scope="col">Condition</th><th scope="col">Then</th><th scope="col">Now</th><th scope="col">By</th></tr></thead>
        <tbody>
          {got.changes.map((one, index) => (
            <tr key={index}><td>{one.kind}</td><th scope="row">{one.subject}</th><td>{one.condition ?? "\u00b7"}</td><td>{one.before ?? "\u00b7"}</td><td>{one.after ?? "\u00b7"}</td><td>{one.relative === null ? "\u00b7" : `${percent(one.relative)} %`}</td></tr>
          ))}
        </tbody>
      </table>
    </>
  );
}

function Decision() {
  const [what, setWhat] = useState("");
  const [why, setWhy] = useState("");
  const write = (event: Event): void => {
    event.preventDefault();
    void decide(what, why).then((good) => {
      if (!good) return;
      setWhat("");
      setWhy("");
    });
  };
  return (
    <form class="waive" onSubmit={write}>
      <h3>Keep the decision with its reason</h3>
      <label>What was decided <input required value={what} onInput={(event) => setWhat(event.currentTarget.value)} /></label>
      <label>Why, and by whom <input required value={why} onInput={(event) => setWhy(event.currentTarget.value)} /></label>
      <p><button type="submit" disabled={what.trim() === "" || why.trim() === ""}>Write the decision into the file</button></p>
    </form>
  );
}

/** What goes to others: the changes, and the sheet of a pad. */
function HandOver(props: { from: string }) {
  const now = view.value;
  const names = (now?.pads ?? []).filter((pad) => pad.accessory !== undefined).map((pad) => pad.name);
  const [name, setName] = useState("");
  const of = names.includes(name) ? name : names.find((one) => now?.pads.some((pad) => pad.name === one && pad.shaft === chosen.value)) ?? names[0];
  if (of === undefined) return null;
  return (
    <section aria-label="to hand over">
      <h3>To hand over</h3>
      <p><a href={`/api/compare?from=${encodeURIComponent(props.from)}`} download="changes.json">Save the list of changes</a></p>
      <p>
        <label>Interface sheet of{" "}
          <select value={of} onChange={(event) => setName(event.currentTarget.value)}>{names.map((one) => <option key={one} value={one}>{one}</option>)}</select>
        </label>{" "}
        <a href={`/api/sheet?accessory=${encodeURIComponent(of)}`} download={`${of}.pdf`}>Save the sheet of {of}</a>
      </p>
    </section>
  );
}

export function Compare() {
  const now = view.value;
  const [from, setFrom] = useState("opened");
  const { got, says } = useOfDrive<Comparison>("/api/compare", { from, units: units.value });
  const past = useOfDrive<View>("/api/past/view", { from, units: units.value });
  const { ref, size } = useSize();
  const serial = state.value?.computed ?? 0;
  return (
    <div ref={ref} class="wide scroll" tabIndex={0} role="region" aria-label="compare">
      <h2>What has changed?</h2>
      <p><Choice from={from} choose={setFrom} /></p>
      {says !== null && <p class="bad" role="status">{says}</p>}
      {now !== null && past.got !== null && <Overlay key={`${from} ${serial}`} before={past.got} now={now} width={Math.max(320, Math.min(820, size.width - 30))} />}
      <div class="beside"><HandOver from={from} /><Decision /></div>
      {got !== null && <Changes got={got} />}
    </div>
  );
}
