// Where could an accessory stand, and how do you know?
import { useEffect, useMemo, useRef, useState } from "preact/hooks";
import { Boxes, Gears, Hub } from "../picture/face";
import { layOut, toX, toY } from "../picture/place";
import { act, beginSearch, stopSearch, takeAnswer } from "../state/acts";
import { arrangeFor, boxShafts, chosen, course, state, told, units, view, viewName } from "../state/store";
import { amount, inUnit, unitOf } from "../show/amount";
import { number } from "../show/format";
import { Mark } from "../show/mark";
import { get } from "../wire/ask";
import { useOfDrive } from "../wire/keep";
import type { Place, Places, View } from "../wire/view";

function where(one: Place): string {
  return `shaft ${one.number} (${one.shaft}), ${one.face}${one.other !== null ? `, in exchange with ${one.other}` : ""}`;
}

/** What came of it, in a sentence. */
function held(all: Place[]): string {
  const good = all.filter((one) => one.verdict === "holds"), best = all[0];
  if (best === undefined || good.length === 0) return "None of them holds.";
  const count = good.length === 1 ? "One of them holds" : `${good.length} of them hold`;
  return `${count}; the best is ${where(best)}${best.here ? ", where it stands now" : ""}.`;
}

function Candidate(props: { one: Place; accessory: string; rank: number }) {
  const { one } = props;
  const mark = one.refuse > 0 ? "refuse" : one.not_computable > 0 ? "notcomp" : one.warn > 0 ? "warn" : "pass";
  const take = (): void => {
    void act(one.edits, `${props.accessory} to ${where(one)}`).then((good) => {
      if (good) viewName.value = one.face === "front" ? "Front" : "Behind";
    });
  };
  const word = one.here ? "Keep it here" : one.refuse > 0 ? "Take it anyway" : "Take it";
  const keep = (): void => {
    look();
    told.value = { says: `${props.accessory} stays on ${where(one)}.`, bad: false };
  };
  const look = (): void => {
    const now = view.value;
    if (now === null) return;
    chosen.value = now.shafts.findIndex((shaft) => one.address.startsWith(`${shaft.address}/`));
    viewName.value = one.face === "front" ? "Front" : "Behind";
  };
  return (
    <tr class={one.here ? "chosen" : ""}>
      <td>{props.rank}</td>
      <th scope="row">{where(one)}{one.here && <small> here now</small>}</th>
      <td><Mark name={mark} /> {one.verdict}</td>
      <td>{one.refuse}</td><td>{one.warn}</td><td>{one.not_computable}</td>
      <td>{one.why.length === 0 ? "nothing stands against it" : <ul>{one.why.map((says) => <li key={says}>{says}</li>)}{one.refuse + one.not_computable > one.why.length && <li class="quiet">and {one.refuse + one.not_computable - one.why.length} more</li>}</ul>}</td>
      <td class="do">
        <button type="button" onClick={look} aria-label={`Show ${where(one)} in the picture`}>Show</button>{" "}
        <button type="button" class={props.rank === 1 ? "main" : ""} aria-label={`${word}: ${where(one)}`} onClick={one.here ? keep : take}>{word}</button>
      </td>
    </tr>
  );
}

interface Certificate { end?: string; made?: number; bound?: number | null }
interface Arranged { mass: number; verdict: string; refusals: number; warnings: number; first_refusal: string | null; changes?: { mass: number; says: string[] } | null }
interface Found { says?: string; certificate?: Certificate; answers?: Arranged[]; messages?: { says: string }[] }

const WIDE = 520, HIGH = 130, EDGE = 52;

/** The lightest so far comes down in steps, what nothing is lighter than goes up to meet it. */
function Closing(props: { proven: boolean }) {
  const heard = course.value, end = heard[heard.length - 1];
  // The proof comes with the answer, after the last word of how the search went.
  const all = props.proven && end !== undefined ? [...heard, { ...end, bound: end.found, done: end.count }] : heard;
  const last = all[all.length - 1];
  if (last === undefined) return <p role="status">The search has begun; nothing is known yet.</p>;
  const masses = all.flatMap((one) => [one.found, one.bound]).filter((one): one is number => one !== null);
  const most = Math.max(...masses, 1e-3), least = Math.min(...masses, most * 0.98);
  const until = Math.max(last.ms, 1);
  const x = (ms: number): number => EDGE + (ms / until) * (WIDE - EDGE - 8);
  const y = (mass: number): number => 10 + (1 - (mass - least) / Math.max(1e-9, most - least)) * (HIGH - 34);
  const steps = (of: "found" | "bound"): string => {
    let path = "", before: number | null = null;
    for (const one of all) {
      const mass = one[of];
      if (mass === null) continue;
      path += before === null ? `M${x(one.ms).toFixed(1)},${y(mass).toFixed(1)}` : `H${x(one.ms).toFixed(1)}V${y(mass).toFixed(1)}`;
      before = mass;
    }
    return path === "" ? "" : `${path}H${x(until).toFixed(1)}`;
  };
  const gap = props.proven ? "; proven" : last.found !== null && last.bound !== null ? `; ${number((100 * (last.found - last.bound)) / last.found, 2)} % may be left` : "";
  return (
    <div class="closing">
      <p role="status" aria-live="off"><b>{last.found === null ? "nothing found yet" : `${amount(last.found, "kg", 5)} found`}</b>, {last.bound === null ? "no bound yet" : `nothing is lighter than ${amount(last.bound, "kg", 5)}`}{gap}; {last.done} of {last.count} ways closed, {number(last.ms / 1000, 3)} s</p>
      <svg width={WIDE} height={HIGH} aria-hidden="true">
        <line class="p2 rule" x1={EDGE} y1={HIGH - 22} x2={WIDE - 8} y2={HIGH - 22} />
        <text x={EDGE - 6} y={y(most) + 4} text-anchor="end">{number(inUnit(most, "kg"), 4)}</text><text x={EDGE - 6} y={y(least) + 4} text-anchor="end">{number(inUnit(least, "kg"), 4)}</text>
        <text x={EDGE} y={HIGH - 6}>{unitOf("kg")} over {number(until / 1000, 3)} s; solid: found, dashed: bound</text>
        <path class="p4 none" d={steps("found")} /><path class="bound none" d={steps("bound")} />
      </svg>
    </div>
  );
}

function Drawn(props: { index: number }) {
  const { got, says } = useOfDrive<View>("/api/arrange/view", { answer: String(props.index), units: units.value });
  const sheet = useMemo(() => (got === null ? null : layOut(got, 300, 250, 1, "")), [got]);
  if (got === null || sheet === null) return <p>{says ?? "being drawn"}</p>;
  return (
    <>
      <svg width={300} height={250} role="img" aria-label={boxShafts(got).map(({ shaft }) => `${shaft.number} ${shaft.name}`).join(", ")}>
        <Boxes now={got} sheet={sheet} /><Gears now={got} sheet={sheet} turn={() => undefined} /><Hub now={got} sheet={sheet} condition={null} />
        {boxShafts(got).map(({ shaft }) => shaft.x === null || shaft.y === null ? null : <g key={shaft.address}><circle class="number" cx={toX(sheet, shaft.x)} cy={toY(sheet, shaft.y)} r={9} /><text class="number-text" x={toX(sheet, shaft.x)} y={toY(sheet, shaft.y) + 4} text-anchor="middle">{shaft.number}</text></g>)}
      </svg>
      <p class="order">{boxShafts(got).map(({ shaft }) => `${shaft.number} ${shaft.name}`).join(" \u00b7 ")}</p>
    </>
  );
}

function Side(props: { all: Arranged[]; takes: boolean[]; stale: boolean }) {
  return (
    <div class="beside candidates">
      {props.all.map((one, index) => (
        <article key={index} aria-label={`arrangement ${index + 1}`}>
          <h4><Mark name={props.takes[index] ? "pass" : "refuse"} /> {index + 1}: {amount(one.mass, "kg", 5)}, {one.verdict}</h4>
          {!props.stale && <Drawn index={index} />}
          {one.first_refusal !== null && <p>{one.first_refusal}</p>}
          {one.changes != null && <ul>{one.changes.says.slice(0, 5).map((says) => <li key={says}>{says}</li>)}</ul>}
          <button type="button" class={index === 0 ? "main" : ""} disabled={!props.takes[index] || props.stale} onClick={() => void takeAnswer(index)}>Take this one</button>
        </article>
      ))}
    </div>
  );
}

function Ended(props: { answer: Found; takes: boolean[]; stale: boolean }) {
  const { answer } = props;
  const all = answer.answers ?? [];
  if (answer.messages !== undefined) return <p class="bad">{answer.messages.map((one) => one.says).join("; ")}</p>;
  if (all.length === 0) return <p role="status">No arrangement meets every demand ({answer.certificate?.end ?? "ended"}).</p>;
  return (
    <>
      <p role="status">{all.length} arrangements that differ in order, face or box; {answer.certificate?.end === "proven" ? "nothing lighter than the first exists (proven)" : answer.certificate?.end ?? "ended before it was proven"}. {props.stale && "The file has changed since; search again to take one."}</p>
      <Side all={all} takes={props.takes} stale={props.stale} />
    </>
  );
}

function SearchAll(props: { accessory: string }) {
  const search = state.value?.search;
  const [seconds, setSeconds] = useState(30);
  const [free, setFree] = useState<ReadonlySet<string>>(new Set());
  const others = (view.value?.pads ?? []).filter((pad) => pad.accessory !== undefined && pad.name !== props.accessory);
  const stays = others.filter((pad) => !free.has(pad.name)).map((pad) => pad.address);
  const flip = (name: string): void => {
    const next = new Set(free);
    if (!next.delete(name)) next.add(name);
    setFree(next);
  };
  const answer = (search?.answer ?? null) as Found | null;
  const place = useRef<HTMLElement>(null), ran = useRef(false);
  const standing = search?.state ?? "none";
  // Who asked sees how it goes and what came of it: both stand below a long table.
  useEffect(() => {
    if (standing === "runs" || ran.current) place.current?.scrollIntoView({ block: "start" });
    ran.current = standing === "runs";
  }, [standing]);
  return (
    <section ref={place} class="searchall" id="searchall">
      <h3>Or another train altogether</h3>
      <p>Searches every order, idler and tooth number that the file allows, with a proof. What is ticked keeps its box, face, side and speed; untick what may move too.</p>
      <p class="failing" role="group" aria-label="what stays where it is">
        {others.map((pad) => <label key={pad.name}><input type="checkbox" checked={!free.has(pad.name)} onChange={() => flip(pad.name)} /> {pad.name}</label>)}
      </p>
      <p>
        <button type="button" disabled={search?.state === "runs"} onClick={() => void beginSearch(stays, seconds)}>Search</button>{" "}
        <label>for at most <select value={String(seconds)} onChange={(event) => setSeconds(Number(event.currentTarget.value))}>{[10, 30, 120, 600].map((one) => <option key={one} value={String(one)}>{one} s</option>)}</select></label>{" "}
        {search?.state === "runs" && <button type="button" onClick={() => void stopSearch()}>Stop with what it has</button>}
      </p>
      {search !== undefined && search.state !== "none" && course.value.length > 0 && <Closing proven={standing === "ended" && answer?.certificate?.end === "proven"} />}
      {search?.state === "ended" && answer !== null && <Ended answer={answer} takes={search.takes} stale={search.serial !== state.value?.serial} />}
    </section>
  );
}

export function Arrange() {
  const now = view.value;
  const computed = state.value?.computed;
  const name = arrangeFor.value ?? now?.pads.find((pad) => pad.shaft === chosen.value && pad.accessory !== undefined)?.name ?? now?.unplaced[0] ?? now?.pads.find((pad) => pad.accessory !== undefined)?.name ?? "";
  const [got, setGot] = useState<Places | null>(null);
  const [says, setSays] = useState<string | null>(null);
  const wanted = units.value;
  useEffect(() => {
    let live = true;
    if (name === "") return;
    void get<Places>("/api/places", { accessory: name, units: wanted }).then((answer) => {
      if (!live) return;
      setGot(answer.status === 200 ? answer.body : null);
      setSays(answer.status === 200 ? null : answer.says);
    });
    return () => { live = false; };
  }, [name, computed, wanted]);
  if (now === null) return null;
  const names = [...now.unplaced, ...now.pads.filter((pad) => pad.accessory !== undefined).map((pad) => pad.name)];
  return (
    <div class="wide scroll" tabIndex={0} role="region" aria-label="arrange">
      <h2>Where could it stand?</h2>
      <p>
        <label>Accessory{" "}
          <select value={name} onChange={(event) => { arrangeFor.value = event.currentTarget.value; }}>
            {names.map((one) => <option key={one} value={one}>{one}{now.unplaced.includes(one) ? " (on no pad yet)" : ""}</option>)}
          </select>
        </label>
      </p>
      {says !== null && <p class="bad">{says}</p>}
      {says === null && (got === null || got.accessory !== name) && <p role="status">Every pad is being tried.</p>}
      {got !== null && got.accessory === name && <>
        <p>All {got.tried} pads of this train were tried, each by reading the changed file and judging it by every rule. {held(got.places)}</p>
        <p><button type="button" class="link" onClick={() => document.getElementById("searchall")?.scrollIntoView()}>Or search other trains for it</button>, with other orders, idlers and tooth numbers: below the table.</p>
        <table class="plain">
          <caption class="away">Places for {name}, best first</caption>
          <thead><tr><th scope="col">Rank</th><th scope="col">Place</th><th scope="col">Verdict</th><th scope="col">Refusals</th><th scope="col">Warnings</th><th scope="col">Not computable</th><th scope="col">What stands against it</th><th scope="col"><span class="away">Do</span></th></tr></thead>
          <tbody>{got.places.map((one, index) => <Candidate key={one.address} one={one} accessory={name} rank={index + 1} />)}</tbody>
        </table>
      </>}
      <SearchAll accessory={name} />
    </div>
  );
}
