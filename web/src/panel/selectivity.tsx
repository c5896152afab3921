// Does the right neck break first?
import { useState } from "preact/hooks";
import { asTable, chosen, findingsOf, leaf, view, working } from "../state/store";
import { amount, inUnit, unitOf } from "../show/amount";
import { number } from "../show/format";
import { Mark, markOf } from "../show/mark";
import { Chart, type Stop } from "../picture/cursor";
import { useSize } from "../picture/size";
import type { Selectivity as Row, Whole } from "../wire/answer";
import { useOfDrive } from "../wire/keep";

const LABELS = 190;
const ROW = 46;
const HEAD = 34;
const EDGE = 14;

interface Scale { least: number; most: number; width: number }

function toX(scale: Scale, value: number): number {
  const share = (Math.log(value) - Math.log(scale.least)) / (Math.log(scale.most) - Math.log(scale.least));
  return LABELS + Math.max(0, Math.min(1, share)) * (scale.width - LABELS - EDGE);
}

function refer(row: Row, referred: boolean): number {
  return inUnit(1, row.unit) * (referred ? row.referred_by ?? NaN : 1);
}

function scaleOf(rows: Row[], referred: boolean, width: number): Scale {
  const all = rows.flatMap((row) => [row.must_pass.runs.T, row.must_pass.highest, row.must_pass.static, row.neck?.least.value, row.neck?.most.value, row.bears_once.T]
    .map((one) => (one ?? NaN) * refer(row, referred))).filter((one) => Number.isFinite(one) && one > 0);
  return { least: Math.min(1, ...all) * 0.9, most: Math.max(10, ...all) * 2, width };
}

function ticksOf(scale: Scale): { at: number; large: boolean }[] {
  const out = [];
  for (let ten = Math.floor(Math.log10(scale.least)); ten <= Math.log10(scale.most); ten++)
    for (const one of [1, 2, 4, 6, 8]) {
      const at = one * 10 ** ten;
      if (at >= scale.least && at <= scale.most) out.push({ at, large: one === 1 });
    }
  return out;
}

function factor(value: number | null | undefined): string {
  return value === null || value === undefined ? "not known" : `\u00d7${number(value, 3)}`;
}

/** In words, what the two windows of a neck are. */
function windows(row: Row): string {
  if (row.neck === null) return "no neck";
  const shut = (row.neck.above_loads ?? 1) < 1 || (row.neck.below_way ?? 1) < 1;
  return `${shut ? "shut" : "open"}: ${factor(row.neck.above_loads)} and ${factor(row.neck.below_way)}`;
}

function wall(row: Row): string {
  return row.bears_once.T === null ? "what bears it is not known" : `${row.bears_once.part ?? ""}, ${row.bears_once.of ?? ""}`;
}

function show(row: Row, address: string | null): void {
  const now = view.value;
  const pad = now?.pads.find((one) => one.address === row.at);
  if (pad !== undefined) chosen.value = pad.shaft;
  if (address !== null) {
    working.value = address;
    leaf.value = "findings";
  }
}

function stopsOf(rows: Row[], scale: Scale, referred: boolean): Stop[] {
  return rows.flatMap((row, index) => {
    const k = refer(row, referred), y = HEAD + ROW * index + ROW / 2 - 3;
    const stop = (value: number | null | undefined, says: string, address: string | null): Stop[] =>
      value === null || value === undefined || !(value * k > 0) ? [] : [{ row: index, x: toX(scale, value * k), y, says: `${row.name}: ${says}`, open: () => show(row, address) }];
    return [
      ...stop(row.must_pass.runs.T, `runs with ${amount(row.must_pass.runs.T, row.unit)} at ${row.must_pass.runs.condition ?? ""}`, null),
      ...stop(row.must_pass.highest, `must pass ${amount(row.must_pass.highest, row.unit)}, the highest load that is legitimate`, null),
      ...stop(row.neck?.least.value, `its neck breaks at ${amount(row.neck?.least.value, row.unit)} at the least, ${factor(row.neck?.above_loads)} above what it must pass`, row.neck?.least.address ?? null),
      ...stop(row.neck?.most.value, `its neck breaks at ${amount(row.neck?.most.value, row.unit)} at the most; ${factor(row.neck?.below_way)} lie between that and what bears it`, row.neck?.most.address ?? null),
      ...stop(row.bears_once.T, `the way behind it bears ${amount(row.bears_once.T, row.unit)} once; weakest is ${wall(row)}`, null),
    ];
  });
}

function RowView(props: { row: Row; index: number; scale: Scale; referred: boolean }) {
  const { row, scale } = props;
  const now = view.value;
  const k = refer(row, props.referred);
  const top = HEAD + ROW * props.index, y = top + ROW / 2;
  const x = (value: number | null | undefined): number | null => (value === null || value === undefined || !(value * k > 0) ? null : toX(scale, value * k));
  const runs = x(row.must_pass.runs.T), highest = x(row.must_pass.highest), least = x(row.neck?.least.value), most = x(row.neck?.most.value), bears = x(row.bears_once.T);
  const pad = now?.pads.find((one) => one.address === row.at);
  const shaft = now !== null && pad !== undefined ? now.shafts[pad.shaft] : undefined;
  const found = now === null || pad === undefined ? undefined
    : findingsOf(now, pad.shaft).find((one) => one.rule.startsWith("G") && one.says.includes(row.name) && one.level !== "note");
  const right = scale.width - EDGE;
  const shut = most !== null && bears !== null && most > bears;
  return (
    <g onPointerDown={() => show(row, row.neck?.least.address ?? null)} class="row-hit">
      <line class="hair-line" x1={0} x2={scale.width} y1={top + ROW} y2={top + ROW} />
      {pad !== undefined && pad.shaft === chosen.value && <rect class="row-chosen" x={0} y={top + 1} width={4} height={ROW - 2} />}
      <circle class="number" cx={20} cy={y - 4} r={10} /><text class="number-text" x={20} y={y} text-anchor="middle">{shaft?.number ?? ""}</text>
      <text class="strong" x={38} y={y - 4}>{row.name}</text>
      <text class="small" x={38} y={y + 11}>{windows(row)}</text>
      {found !== undefined && <Mark name={markOf(found)} size={14} x={LABELS - 14} y={y} />}
      {highest !== null && <rect class="loads" x={Math.min(runs ?? LABELS, highest)} y={y - 9} width={Math.max(1, highest - (runs ?? LABELS))} height={12} />}
      {highest !== null && <line class="loads-end" x1={highest} x2={highest} y1={y - 11} y2={y + 5} />}
      {highest !== null && least !== null && least > highest && <><line class="p1 rule" x1={highest} x2={least} y1={y - 3} y2={y - 3} />{least - highest > 44 && <text class="small" text-anchor="middle" x={(highest + least) / 2} y={y - 7}>{factor(row.neck?.above_loads)}</text>}</>}
      {most !== null && bears !== null && bears > most && <><line class="p1 rule" x1={most} x2={bears} y1={y - 3} y2={y - 3} />{bears - most > 44 && <text class="small" text-anchor="middle" x={(most + bears) / 2} y={y - 7}>{factor(row.neck?.below_way)}</text>}</>}
      {bears !== null && <><rect class="no-go" x={bears} y={y - 13} width={Math.max(0, right - bears)} height={20} /><line class="p5 ink-line" x1={bears} x2={bears} y1={y - 14} y2={y + 8} /></>}
      {least !== null && most !== null && <><rect class="neck-box" x={least} y={y - 12} width={Math.max(2, most - least)} height={18} /><line class="neck-nominal" x1={(least + most) / 2} x2={(least + most) / 2} y1={y - 12} y2={y + 6} /></>}
      {shut && bears !== null && most !== null && <rect class="overlap" x={bears} y={y - 12} width={most - bears} height={18} />}
      {bears !== null && <text class="small" x={right} y={y + 19} text-anchor="end">{`${wall(row)} ${amount((row.bears_once.T ?? 0) * (props.referred ? row.referred_by ?? 1 : 1), row.unit, 3)}`}</text>}
    </g>
  );
}

function Key(props: { y: number }) {
  const y = props.y;
  return (
    <g>
      <rect class="loads" x={LABELS} y={y} width={26} height={12} /><line class="loads-end" x1={LABELS + 26} x2={LABELS + 26} y1={y - 2} y2={y + 14} /><text class="small" x={LABELS + 34} y={y + 10}>loads it must pass</text>
      <rect class="neck-box" x={LABELS + 160} y={y - 2} width={26} height={16} /><line class="neck-nominal" x1={LABELS + 173} x2={LABELS + 173} y1={y - 2} y2={y + 14} /><text class="small" x={LABELS + 194} y={y + 10}>its neck breaks in here</text>
      <rect class="no-go" x={LABELS + 340} y={y - 2} width={26} height={16} /><line class="p5 ink-line" x1={LABELS + 340} x2={LABELS + 340} y1={y - 3} y2={y + 15} /><text class="small" x={LABELS + 374} y={y + 10}>teeth, shafts or bearings give way</text>
    </g>
  );
}

function Table(props: { rows: Row[]; referred: boolean }) {
  const torque = (row: Row, value: number | null | undefined): string =>
    amount(value === null || value === undefined ? null : value * (props.referred ? row.referred_by ?? NaN : 1), row.unit);
  return (
    <table class="plain">
      <caption>{props.referred ? "Torques as they would be at the input of the box" : "Torques at each pad"}</caption>
      <thead><tr><th scope="col">Accessory</th><th scope="col">Runs with</th><th scope="col">Must pass</th><th scope="col">Neck breaks from</th><th scope="col">to</th><th scope="col">Above the loads</th><th scope="col">Way behind bears once</th><th scope="col">Weakest there</th><th scope="col">Below that</th><th scope="col">A neck of another in its place</th></tr></thead>
      <tbody>
        {props.rows.map((row) => (
          <tr key={row.at}>
            <th scope="row">{row.name}</th><td>{torque(row, row.must_pass.runs.T)}</td><td>{torque(row, row.must_pass.highest)}</td>
            <td>{row.neck === null ? "no neck" : row.neck.least.address !== null ? <button type="button" class="link" onClick={() => show(row, row.neck?.least.address ?? null)}>{torque(row, row.neck.least.value)}</button> : torque(row, row.neck.least.value)}</td>
            <td>{row.neck === null ? "\u00b7" : torque(row, row.neck.most.value)}</td><td>{row.neck === null ? "\u00b7" : factor(row.neck.above_loads)}</td>
            <td>{torque(row, row.bears_once.T)}</td><td>{wall(row)}</td><td>{row.neck === null ? "\u00b7" : factor(row.neck.below_way)}</td>
            <td>{row.swapped.length === 0 ? "\u00b7" : <ul>{row.swapped.map((one) => <li key={one.neck_of}>{one.neck_of}: {one.fits ? one.verdict : "its spline does not fit"}</li>)}</ul>}</td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}

export function Selectivity() {
  const { got, says } = useOfDrive<Whole>("/api/answer");
  const { ref, size } = useSize();
  const [referred, setReferred] = useState(true);
  const rows = got?.selectivity ?? [];
  const scale = scaleOf(rows, referred, Math.max(720, size.width - 30));
  const unit = unitOf(rows[0]?.unit ?? "N.m");
  const shut = rows.filter((row) => row.neck !== null && ((row.neck.above_loads ?? 1) < 1 || (row.neck.below_way ?? 1) < 1));
  const verdict = shut.length === 0 ? "Every neck lies between the loads that it must pass and what the way behind it bears." : `The band of ${shut.map((row) => row.name).join(", ")} overlaps.`;
  const height = HEAD + ROW * rows.length + 40;
  return (
    <div ref={ref} class="wide scroll" tabIndex={0} role="region" aria-label="selectivity">
      <h2>Does the right neck break first?</h2>
      <p>A neck belongs between the loads that it must pass (left) and what the train behind it bears (right). Hatching is where it must not be. {verdict}</p>
      <p><label>Torques{" "}
        <select value={referred ? "input" : "pad"} onChange={(event) => setReferred(event.currentTarget.value === "input")}>
          <option value="input">at the input of the box</option><option value="pad">at each pad</option>
        </select></label> <small>{unit}; each heavy line ten times the one before</small></p>
      {says !== null && <p class="bad">{says}</p>}
      {got !== null && (asTable.value ? <Table rows={rows} referred={referred} /> : (
        <Chart label={`Necks of ${rows.length} accessories. ${verdict}`} width={scale.width} height={height} stops={stopsOf(rows, scale, referred)}>
          {ticksOf(scale).map((tick) => (
            <g key={tick.at}>
              <line class={tick.large ? "grid large" : "grid"} x1={toX(scale, tick.at)} x2={toX(scale, tick.at)} y1={HEAD - 8} y2={HEAD + ROW * rows.length} />
              {(tick.large || tick.at.toString().startsWith("2") || tick.at.toString().startsWith("4")) && <text class={tick.large ? "strong" : "small"} text-anchor="middle" x={toX(scale, tick.at)} y={HEAD - 14}>{number(tick.at, 1)}</text>}
            </g>
          ))}
          <line class="p3 ink-line" x1={LABELS} x2={scale.width - EDGE} y1={HEAD - 8} y2={HEAD - 8} />
          {rows.map((row, index) => <RowView key={row.at} row={row} index={index} scale={scale} referred={referred} />)}
          <Key y={HEAD + ROW * rows.length + 16} />
        </Chart>
      ))}
    </div>
  );
}
