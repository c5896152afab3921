// Where could an accessory stand, and how do you know?
import { useEffect, useState } from "preact/hooks";
import { act, beginSearch, stopSearch, takeFound } from "../state/acts";
import { arrangeFor, chosen, state, view, viewName } from "../state/store";
import { Mark } from "../show/mark";
import { get } from "../wire/ask";
import type { Place, Places } from "../wire/view";

function where(one: Place): string {
  return `shaft ${one.number} (${one.shaft}), ${one.face}${one.other !== null ? `, in exchange with ${one.other}` : ""}`;
}

function Candidate(props: { one: Place; accessory: string; rank: number }) {
  const { one } = props;
  const mark = one.refuse > 0 ? "refuse" : one.not_computable > 0 ? "notcomp" : one.warn > 0 ? "warn" : "pass";
  const take = (): void => {
    void act(one.edits, `${props.accessory} to ${where(one)}`).then((good) => {
      if (good) viewName.value = one.face === "front" ? "Front" : "Behind";
    });
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
      <td>{one.why.length === 0 ? "nothing stands against it" : <ul>{one.why.map((says) => <li key={says}>{says}</li>)}</ul>}</td>
      <td>
        <button type="button" onClick={look} aria-label={`Show ${where(one)} in the picture`}>Show</button>{" "}
        {!one.here && <button type="button" class={props.rank === 1 ? "main" : ""} aria-label={`Take it: ${where(one)}`} onClick={take}>Take it</button>}
      </td>
    </tr>
  );
}

interface Certificate { end?: string; made?: number; bound?: number | null }
interface Found { says?: string; chosen?: unknown; certificate?: Certificate; answers?: unknown[]; messages?: { says: string }[] }

function SearchAll(props: { accessory: string }) {
  const search = state.value?.search;
  const answer = (search?.answer ?? null) as Found | null;
  return (
    <section class="searchall">
      <h3>Or another train altogether</h3>
      <p>Keeps every other accessory in its box, on its face and side and at its speed, and searches every order, idler and tooth number that the file allows, with a proof.</p>
      <p>
        <button type="button" disabled={search?.state === "runs"} onClick={() => void beginSearch(props.accessory, 30)}>Search for 30 s at most</button>{" "}
        {search?.state === "runs" && <><span role="status">searching</span> <button type="button" onClick={() => void stopSearch()}>Stop with what it has</button></>}
        {search?.can_take && <button type="button" class="main" onClick={() => void takeFound()}>Take the best into the file</button>}
      </p>
      {search?.state === "ended" && answer !== null && (
        <p>{answer.messages !== undefined ? answer.messages.map((one) => one.says).join("; ")
          : (answer.answers ?? []).length > 0 ? `${(answer.answers ?? []).length} arrangements were found; ${answer.certificate?.end ?? ""}.`
          : `No arrangement meets every demand (${answer.certificate?.end ?? "ended"}).`}</p>
      )}
    </section>
  );
}

export function Arrange() {
  const now = view.value;
  const computed = state.value?.computed;
  const name = arrangeFor.value ?? now?.pads.find((pad) => pad.shaft === chosen.value && pad.accessory !== undefined)?.name ?? now?.pads.find((pad) => pad.accessory !== undefined)?.name ?? "";
  const [got, setGot] = useState<Places | null>(null);
  const [says, setSays] = useState<string | null>(null);
  useEffect(() => {
    let live = true;
    if (name === "") return;
    void get<Places>("/api/places", { accessory: name }).then((answer) => {
      if (!live) return;
      setGot(answer.status === 200 ? answer.body : null);
      setSays(answer.status === 200 ? null : answer.says);
    });
    return () => { live = false; };
  }, [name, computed]);
  if (now === null) return null;
  const names = now.pads.filter((pad) => pad.accessory !== undefined).map((pad) => pad.name);
  return (
    <div class="wide scroll" tabIndex={0} role="region" aria-label="arrange">
      <h2>Where could it stand?</h2>
      <p>
        <label>Accessory{" "}
          <select value={name} onChange={(event) => { arrangeFor.value = event.currentTarget.value; }}>
            {names.map((one) => <option key={one} value={one}>{one}</option>)}
          </select>
        </label>
      </p>
      {says !== null && <p class="bad">{says}</p>}
      {got !== null && got.accessory === name && <>
        <p>All {got.tried} pads of this train were tried, each by reading the changed file and judging it by every rule. {got.places.filter((one) => one.verdict === "holds").length} of them hold.</p>
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
