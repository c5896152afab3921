// What carries the gears?  Every shaft line cut along its axis, to one scale.
import { asTable, chosen, leaf, shaftAt, view, working } from "../state/store";
import { amount } from "../show/amount";
import { number } from "../show/format";
import { Chart, type Stop } from "../picture/cursor";
import { useSize } from "../picture/size";
import type { Bearing, Line, Whole } from "../wire/answer";
import type { View } from "../wire/view";
import { useOfDrive } from "../wire/keep";

const LABELS = 190;
const GAP = 26;

function lengthOf(line: Line): number {
  return line.sections.reduce((sum, one) => sum + (one.length ?? 0), 0);
}

/** mm, the largest radius that stands on the line. */
function radiusOf(now: View, line: Line): number {
  const parts = line.sections.map((one) => (one.outside ?? 0) / 2);
  const rings = line.bearings.map((one) => (one.outside ?? 0) / 2);
  return Math.max(4, ...parts, ...rings, ...gearsOf(now, line).map((one) => one.r));
}

/** Gears stand on the line where the answer says; how large they are says the view. */
function gearsOf(now: View, line: Line): { at: number; r: number; width: number; name: string; address: string; bevel: boolean }[] {
  return line.gears.flatMap((one) => {
    const shaft = shaftAt(now, line.of);
    const role = one.address.endsWith("/bevel") ? "bevel" : one.address.endsWith("/step") ? "step" : "main";
    const gear = now.gears.find((other) => other.shaft === shaft && other.role === role);
    return one.at === null || gear === undefined || gear.face === null ? []
      : [{ at: one.at, r: (role === "bevel" ? gear.r : gear.r_tip) * 1e3, width: gear.face * 1e3, name: `${role === "bevel" ? "bevel" : "gear"} of ${gear.teeth} teeth`, address: gear.address, bevel: role === "bevel" }];
  });
}

function bearingName(one: Bearing): string {
  return one.form === undefined ? "a bearing that is not known" : `${one.form} ${one.series ?? ""}, ${number(one.bore, 3)} by ${number(one.outside, 3)} by ${number(one.width, 3)} mm`;
}

/** Half-hidden is nothing: metal is hatched above and below the bore, gears and rings stand on it. */
function Drawn(props: { now: View; line: Line; y: number; k: number; index: number }) {
  const { now, line, y, k } = props;
  const x = (at: number): number => LABELS + at * k;
  let at = 0;
  const parts = line.sections.map((one) => {
    const from = at;
    at += one.length ?? 0;
    return { from, to: at, r: (one.outside ?? 0) / 2, bore: (one.bore ?? 0) / 2 };
  });
  const name = now.shafts[shaftAt(now, line.of)];
  return (
    <g class="row-hit" onPointerDown={() => { chosen.value = shaftAt(now, line.of); }}>
      {name !== undefined && name.number > 0 && <><circle class="number" cx={20} cy={y - 4} r={10} /><text class="number-text" x={20} y={y} text-anchor="middle">{name.number}</text></>}
      <text class="strong" x={38} y={y - 4}>{line.name.length > 24 ? line.name.replace(/^.*?[,+] /, "") : line.name}</text>
      <text class="small" x={38} y={y + 11}>{line.strength === undefined ? line.because ?? "" : `S ${number(line.strength.S_D?.value, 3)} at its ${line.strength.notch}`}</text>
      {gearsOf(now, line).map((one) => {
        const shaft = Math.min(one.r, (parts.find((part) => part.from <= one.at && part.to >= one.at)?.r ?? 0));
        const height = (one.r - shaft) * k;
        return <g key={one.address + one.at}>{[-1, 1].map((side) => <rect key={side} class={one.bevel ? "chain" : "cut-gear"} x={x(one.at - one.width / 2)} y={side < 0 ? y - one.r * k : y + shaft * k} width={one.width * k} height={height} />)}</g>;
      })}
      {parts.map((one, index) => [-1, 1].map((side) => {
        const height = (one.r - one.bore) * k;
        return <rect key={`${index} ${side}`} class="cut-metal" x={x(one.from)} y={side < 0 ? y - one.r * k : y + one.bore * k} width={(one.to - one.from) * k} height={Math.max(0.5, height)} />;
      }))}
      {line.bearings.map((one) => one.at === null || one.at === undefined || !one.outside || !one.bore || !one.width ? null : (
        <g key={one.address}>
          {[-1, 1].map((side) => {
            const inner = (one.bore ?? 0) / 2 * k, outer = (one.outside ?? 0) / 2 * k, top = side < 0 ? y - outer : y + inner;
            const left = x((one.at ?? 0) - (one.width ?? 0) / 2), width = (one.width ?? 0) * k, height = outer - inner;
            return (
              <g key={side}>
                <rect class="ring-cut" x={left} y={top} width={width} height={height} />
                <path class="p1 ink-line none" d={one.form === "cylindrical roller" ? `M${left + width * 0.25},${top + height / 2}H${left + width * 0.75}M${left + width / 2},${top + height * 0.25}V${top + height * 0.75}` : `M${left + width * 0.2},${top + height * 0.2}L${left + width * 0.8},${top + height * 0.8}M${left + width * 0.8},${top + height * 0.2}L${left + width * 0.2},${top + height * 0.8}`} />
              </g>
            );
          })}
        </g>
      ))}
      <line class="chain" x1={x(0) - 10} x2={x(at) + 10} y1={y} y2={y} />
    </g>
  );
}

function Table(props: { lines: Line[] }) {
  return (
    <table class="plain">
      <caption>Shaft lines, from the front to the rear or from the inside out</caption>
      <thead><tr><th scope="col">Line</th><th scope="col">Lengths by outside (bore), mm</th><th scope="col">Against fatigue, against yielding</th><th scope="col">Bearings</th></tr></thead>
      <tbody>
        {props.lines.map((line) => (
          <tr key={line.address}>
            <th scope="row">{line.name}</th>
            <td>{line.sections.length === 0 ? line.because ?? "not known" : line.sections.map((one) => `${number(one.length, 3)} by ${number(one.outside, 3)} (${number(one.bore, 3)})`).join("; ")}</td>
            <td>{line.strength === undefined ? "not known" : <Reserve of={line} />}</td>
            <td>{line.bearings.length === 0 ? "none" : <ul>{line.bearings.map((one) => <li key={one.address}>{one.place}: {bearingName(one)}{one.L_nmh?.address != null && <>, <button type="button" class="link" onClick={() => { working.value = one.L_nmh?.address ?? null; leaf.value = "findings"; }}>life {number((one.L_nmh.value ?? NaN) / 3600, 3)} h</button></>}</li>)}</ul>}</td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}

function Reserve(props: { of: Line }) {
  const at = props.of.strength;
  const one = at?.S_D, other = at?.S_F;
  const open = (address: string | null | undefined): void => { if (address) { working.value = address; leaf.value = "findings"; } };
  return <><button type="button" class="link" onClick={() => open(one?.address)}>{number(one?.value, 3)}</button>, <button type="button" class="link" onClick={() => open(other?.address)}>{number(other?.value, 3)}</button> at its {at?.notch}</>;
}

export function Section() {
  const now = view.value;
  const { got, says } = useOfDrive<Whole>("/api/answer");
  const { ref, size } = useSize();
  if (now === null) return null;
  const spool = now.shafts[chosen.value]?.spool ?? now.spools[0]?.name ?? "";
  const all = got?.lines ?? [];
  const lines = all.filter((one) => now.shafts[shaftAt(now, one.of)]?.spool === spool || one.of.startsWith(`drive/${spool}/`));
  const width = Math.max(640, size.width - 30);
  const k = lines.length === 0 ? 1 : Math.min(1.5, (width - LABELS - 24) / Math.max(...lines.map(lengthOf)));
  let y = 0;
  const places = lines.map((line) => {
    const half = radiusOf(now, line) * k;
    y += half + GAP / 2;
    const middle = y;
    y += half + GAP / 2;
    return middle;
  });
  const stops: Stop[] = lines.flatMap((line, row) => [
    ...line.bearings.flatMap((one) => (one.at === null || one.at === undefined ? [] : [{ row, x: LABELS + one.at * k, y: places[row] ?? 0, says: `${line.name}: ${one.place} bearing, ${bearingName(one)}, life ${amount(one.L_nmh?.value == null ? null : one.L_nmh.value / 3600, "h", 3)}${one.locates ? ", locates" : ""}`, open: () => { if (one.L_nmh?.address) { working.value = one.L_nmh.address; leaf.value = "findings"; } } }])),
    ...gearsOf(now, line).map((one) => ({ row, x: LABELS + one.at * k, y: places[row] ?? 0, says: `${line.name}: ${one.name}, ${amount(one.width, "mm", 3)} wide` })),
    ...(line.strength?.at == null ? [] : [{ row, x: LABELS + line.strength.at * k, y: places[row] ?? 0, says: `${line.name}: its weakest place is a ${line.strength.notch}, S ${number(line.strength.S_D?.value, 3)} against fatigue`, open: () => { if (line.strength?.S_D?.address) { working.value = line.strength.S_D.address; leaf.value = "findings"; } } }]),
  ].sort((a, b) => a.x - b.x));
  return (
    <div ref={ref} class="wide scroll" tabIndex={0} role="region" aria-label="section">
      <h2>What carries the gears of the {spool} spool?</h2>
      <p>Every shaft line cut along its own axis, all to one scale; a bevel is the space round its pitch cone. Where the file gives no sections or bearings, they are the assumed ones. Choose a shaft of another box to see that.</p>
      {says !== null && <p class="bad">{says}</p>}
      {got !== null && (asTable.value ? <Table lines={lines} /> : (
        <Chart label={`${lines.length} shaft lines with their gears and bearings, cut along the axes.`} width={width} height={y + 10} stops={stops}>
          {lines.map((line, index) => <Drawn key={line.address} now={now} line={line} y={places[index] ?? 0} k={k} index={index} />)}
        </Chart>
      ))}
    </div>
  );
}
