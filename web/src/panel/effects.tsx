// If this fails, what stops?
import { useMemo } from "preact/hooks";
import { boxShafts, chosen, closeTo, failing, shaftAt, view } from "../state/store";
import { chooseClose, layOut, toX, toY, type Sheet } from "../picture/place";
import { useSize } from "../picture/size";
import type { Effects as All, Failure, Goes } from "../wire/answer";
import type { View } from "../wire/view";
import { useOfDrive } from "../wire/keep";

const SIGN: Record<Goes, string> = { on: "\u00b7", stops: "x", doubt: "?" };
const WORD: Record<Goes, string> = { on: "goes on", stops: "stops", doubt: "in doubt" };

interface Part { kind: Failure["kind"]; part: string; at: string; modes: { mode: string; index: number }[] }

function partsOf(all: All): Part[] {
  const out: Part[] = [];
  all.failures.forEach((one, index) => {
    let part = out.find((other) => other.at === one.at && other.part === one.part);
    if (part === undefined) out.push(part = { kind: one.kind, part: one.part, at: one.at, modes: [] });
    part.modes.push({ mode: one.mode, index });
  });
  return out;
}

/** Where a part stands: the axis of its shaft, or the middle between two that mesh. */
function placeOf(now: View, at: string, kind: Failure["kind"]): [number, number] | null {
  const mesh = kind === "mesh" ? now.meshes.find((one) => one.address === at) : undefined;
  const shaft = shaftAt(now, at.replace(/\/(front|rear)$/, ""));
  const point = (index: number): [number, number] | null => {
    const one = now.shafts[index];
    if (one === undefined) return null;
    if (one.kind === "spool") return [0, 0];
    return one.x === null || one.y === null ? null : one.kind === "tower" ? [one.x / 2, one.y / 2] : [one.x, one.y];
  };
  if (mesh !== undefined) {
    const a = point(mesh.driver), b = point(mesh.driven);
    return a === null || b === null ? null : [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2];
  }
  return shaft >= 0 ? point(shaft) : null;
}

function Picture(props: { now: View; failure: Failure; parts: Part[]; width: number; height: number }) {
  const { now, failure } = props;
  const failed = placeOf(now, failure.at, failure.kind);
  const sheet: Sheet = useMemo(() => {
    const near = layOut(now, props.width, props.height, 1, closeTo.value ?? chooseClose(now, props.width, props.height));
    const x = toX(near, failed?.[0] ?? 0), y = toY(near, failed?.[1] ?? 0);
    // What fails is shown, also where only the whole drive shows it.
    return closeTo.value !== null || failed === null || (x > 0 && x < near.width && y > 0 && y < near.height) ? near : layOut(now, props.width, props.height, 1, "");
  }, [now, props.width, props.height, closeTo.value, failed?.[0], failed?.[1]]);
  const goes = (name: string): Goes => failure.pads.find((one) => one.accessory === name)?.goes ?? "on";
  const choose = (at: string, kind: Failure["kind"]): void => {
    const part = props.parts.find((one) => one.at === at && one.kind === kind);
    if (part !== undefined) failing.value = part.modes[0]?.index ?? 0;
  };
  const cuts = [...new Set(failure.pads.map((one) => one.interrupted_at).filter((one) => one !== undefined))];
  return (
    <svg width={sheet.width} height={sheet.height} viewBox={`0 0 ${sheet.width} ${sheet.height}`} class="effects-face" role="img" aria-label={`${failure.part}, ${failure.mode}. ${failure.pads.map((one) => `${one.accessory} ${WORD[one.goes]}`).join("; ")}.`}>
      {now.shafts.map((shaft) => shaft.kind !== "tower" || shaft.x === null || shaft.y === null ? null : (
        <line key={shaft.address} class="part tower" x1={sheet.ox} y1={sheet.oy} x2={toX(sheet, shaft.x)} y2={toY(sheet, shaft.y)} onPointerDown={() => choose(shaft.address, "shaft")} />
      ))}
      <circle class="part" cx={sheet.ox} cy={sheet.oy} r={20} />
      {boxShafts(now).map(({ shaft }) => {
        if (shaft.x === null || shaft.y === null) return null;
        return <circle key={shaft.address} class="part" cx={toX(sheet, shaft.x)} cy={toY(sheet, shaft.y)} r={shaft.r * sheet.k} onPointerDown={() => choose(shaft.address, "shaft")} />;
      })}
      {failed !== null && <circle class="ring" cx={toX(sheet, failed[0])} cy={toY(sheet, failed[1])} r={30} />}
      {boxShafts(now).map(({ shaft }) => shaft.x === null || shaft.y === null ? null : (
        <g key={shaft.address} class="pad" onPointerDown={() => choose(shaft.address, "shaft")}><circle class="number" cx={toX(sheet, shaft.x)} cy={toY(sheet, shaft.y)} r={10} /><text x={toX(sheet, shaft.x)} y={toY(sheet, shaft.y) + 4} text-anchor="middle">{shaft.number}</text></g>
      ))}
      {now.pads.map((pad) => {
        const shaft = now.shafts[pad.shaft];
        if (shaft === undefined || shaft.x === null || shaft.y === null || pad.accessory === undefined) return null;
        const both = now.pads.filter((one) => one.shaft === pad.shaft && one.accessory !== undefined);
        const low = both.indexOf(pad);
        const x = toX(sheet, shaft.x) + (both.length > 1 ? (low === 0 ? -1 : 1) * 12 : 0), y = toY(sheet, shaft.y) + 22;
        return (
          <g key={pad.address} class={`pad ${goes(pad.name)}`} onPointerDown={() => choose(pad.address, "pad")}>
            <title>{`${pad.name} ${WORD[goes(pad.name)]}`}</title>
            <rect x={x - 11} y={y - 11} width={22} height={22} />
            <text x={x} y={y + 5} text-anchor="middle">{SIGN[goes(pad.name)]}</text>
          </g>
        );
      })}
      {cuts.map((at) => {
        const place = placeOf(now, at ?? "", "shaft");
        return place === null ? null : <path key={at} class="cut-here" d={`M${toX(sheet, place[0]) - 9},${toY(sheet, place[1]) - 24}l18,18m0,-18l-18,18`} />;
      })}
    </svg>
  );
}

function breaks(failure: Failure): string {
  return failure.breaks.map((one) => `${one.neck !== undefined ? "the neck" : "teeth or a shaft"} at ${one.neck ?? one.part ?? ""} ${one.meant ? "as meant" : "which is not meant"}, with ${one.at_most === null ? "a torque that is not known" : `${one.at_most.toFixed(0)} N.m at the most`}`).join("; ");
}

function sentence(says: string): string {
  return says.slice(0, 1).toUpperCase() + says.slice(1);
}

function Outcome(props: { now: View; failure: Failure; parts: Part[] }) {
  const { failure } = props;
  const named = (at: string): string => props.parts.find((one) => one.at === at)?.part ?? at;
  const number = (name: string): number | string => {
    const pad = props.now.pads.find((one) => one.name === name);
    return pad === undefined ? "" : props.now.shafts[pad.shaft]?.number ?? "";
  };
  return (
    <div class="outcome">
      <p role="status" aria-live="polite"><b>{failure.part}, {failure.mode}.</b> {failure.effect === "" ? "Nothing that has a name." : `${sentence(failure.effect)}.`} {failure.seen !== "" && `Seen: ${failure.seen}.`}</p>
      {failure.breaks.length > 0 && <p>Breaks for it: {breaks(failure)}.</p>}
      <p>{failure.engine && `${sentence(failure.engine)}. `}{failure.start_possible ? "A start stays possible." : "No start is possible."} {failure.oil_lost ? "Oil is lost. " : ""}{failure.metal_in_oil ? "Metal comes into the oil." : ""}</p>
      <table class="plain">
        <caption class="away">What goes on when {failure.part} is {failure.mode}</caption>
        <thead><tr><th scope="col">Shaft</th><th scope="col">Accessory</th><th scope="col">Goes</th><th scope="col">Cut off at</th></tr></thead>
        <tbody>{failure.pads.map((one) => <tr key={one.accessory}><td>{number(one.accessory)}</td><th scope="row">{one.accessory}</th><td><b>{SIGN[one.goes]}</b> {WORD[one.goes]}</td><td>{one.interrupted_at === undefined ? "\u00b7" : named(one.interrupted_at)}</td></tr>)}</tbody>
      </table>
    </div>
  );
}

function Matrix(props: { all: All; parts: Part[] }) {
  const pads = props.all.failures[0]?.pads.map((one) => one.accessory) ?? [];
  return (
    <table class="plain matrix">
      <caption>Every part in every way in which it may fail: x stops, ? in doubt, {SIGN.on} goes on. A row opens above.</caption>
      <thead><tr><th scope="col">Part</th><th scope="col">Fails by</th>{pads.map((name) => <th key={name} scope="col" class="upright"><span>{name}</span></th>)}<th scope="col">Effect</th></tr></thead>
      <tbody>
        {props.parts.flatMap((part) => part.modes.map(({ mode, index }, first) => {
          const one = props.all.failures[index];
          return one === undefined ? null : (
            <tr key={index} class={failing.value === index ? "chosen" : ""}>
              <th scope="row">{first === 0 ? part.part : <span class="away">{part.part}</span>}</th>
              <td><button type="button" class="link" aria-pressed={failing.value === index} onClick={() => { failing.value = index; document.getElementById("effects-top")?.scrollIntoView(); }}>{mode}</button></td>
              {one.pads.map((pad) => <td key={pad.accessory} class={`goes ${pad.goes}`} title={`${pad.accessory} ${WORD[pad.goes]}`}>{SIGN[pad.goes]}</td>)}
              <td>{one.effect || "none that has a name"}</td>
            </tr>
          );
        }))}
      </tbody>
    </table>
  );
}

function Causes(props: { all: All }) {
  const name = (index: number): string => {
    const one = props.all.failures[index];
    return one === undefined ? "" : `${one.part} ${one.mode}`;
  };
  return (
    <>{props.all.causes.map((one) => {
      const alone = one.sets.filter((set) => set.length === 1), pairs = one.sets.filter((set) => set.length > 1);
      return (
        <details key={one.effect}>
          <summary><b>{one.effect}</b>: {alone.length} {alone.length === 1 ? "failure alone brings" : "failures alone bring"} it, {pairs.length === 0 ? "no pair" : pairs.length === 1 ? "1 pair" : `${pairs.length} pairs`} together</summary>
          <ul class="causes">{[...alone, ...pairs].slice(0, 200).map((set) => <li key={set.join()}>{set.map((index, place) => <>{place > 0 && " together with "}<button key={index} type="button" class="link" onClick={() => { failing.value = index; document.getElementById("effects-top")?.scrollIntoView(); }}>{name(index)}</button></>)}</li>)}</ul>
        </details>
      );
    })}</>
  );
}

/** The failure that is shown belongs to the shaft that was chosen elsewhere, when none was chosen here. */
function first(now: View, parts: Part[]): number {
  const shaft = now.shafts[chosen.value];
  const mine = shaft === undefined ? undefined : parts.find((one) => one.at.startsWith(`${shaft.address}/`) || one.at === shaft.address);
  return (mine ?? parts[0])?.modes[0]?.index ?? 0;
}

export function Effects() {
  const now = view.value;
  const { got, says } = useOfDrive<All>("/api/effects");
  const { ref, size } = useSize();
  if (now === null) return null;
  const parts = got === null ? [] : partsOf(got);
  const index = failing.value !== null && failing.value < (got?.failures.length ?? 0) ? failing.value : first(now, parts);
  const failure = got?.failures[index];
  const part = parts.find((one) => one.modes.some((mode) => mode.index === index));
  const wide = Math.max(320, Math.min(560, size.width * 0.52));
  return (
    <div ref={ref} class="wide scroll" tabIndex={0} role="region" aria-label="effects">
      <h2 id="effects-top">If this fails, what stops?</h2>
      {says !== null && <p class="bad">{says}</p>}
      {failure !== undefined && part !== undefined && got !== null && <>
        <p class="failing">
          <label>Part{" "}
            <select value={String(parts.indexOf(part))} onChange={(event) => { failing.value = parts[Number(event.currentTarget.value)]?.modes[0]?.index ?? 0; }}>
              {parts.map((one, place) => <option key={one.at + one.part} value={String(place)}>{one.part}</option>)}
            </select>
          </label>{" "}
          <span role="group" aria-label="way in which it fails">{part.modes.map((mode) => <button key={mode.index} type="button" aria-pressed={mode.index === index} class={mode.index === index ? "main" : ""} onClick={() => { failing.value = mode.index; }}>{mode.mode}</button>)}</span>
        </p>
        <div class="beside">
          <div>
            <Picture now={now} failure={failure} parts={parts} width={wide} height={340} />
            <p class="quiet">Ring: what fails. Red cross: where drives are cut off. Pads: x stops, ? in doubt, {SIGN.on} goes on.</p>
          </div>
          <Outcome now={now} failure={failure} parts={parts} />
        </div>
        <h3>What may have brought an effect about?</h3>
        <Causes all={got} />
        <Matrix all={got} parts={parts} />
      </>}
    </div>
  );
}
