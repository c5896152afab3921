// How may the spool move along without pulling the teeth apart, and which scheme does best?
import { asTable, conditionName, leaf, units, working } from "../state/store";
import { Drawn } from "../show/drawn";
import { amount } from "../show/amount";
import { number } from "../show/format";
import { Chart, type Stop } from "../picture/cursor";
import { useSize } from "../picture/size";
import type { FloatOf, Quantity, Range, Scheme, Whole } from "../wire/answer";
import { useOfDrive } from "../wire/keep";

const LABELS = 150;
const ROW = 46;
const HEAD = 30;

function range(one: Range, unit: string): string {
  return `${one[0] === null ? "no end" : amount(one[0], unit, 3)} to ${one[1] === null ? "no end" : amount(one[1], unit, 3)}`;
}

function open(of: Quantity): void {
  if (of.address === null) return;
  working.value = of.address;
  leaf.value = "findings";
}

function Number(props: { of: Quantity }) {
  const { of } = props;
  const text = of.value === null ? "\u00b7" : amount(of.value, of.unit);
  return of.address === null || of.value === null ? <>{text}</> : <button type="button" class="link" onClick={() => open(of)}>{text}</button>;
}

const ROWS: [string, (one: Scheme, unit: string) => preact.ComponentChildren][] = [
  ["Least backlash", (one) => <Number of={one.backlash_least} />],
  ["Most backlash", (one) => <Number of={one.backlash_most} />],
  ["Backlash changes by", (one, unit) => range(one.backlash_change, unit)],
  ["Contact wanders along the teeth by", (one, unit) => range(one.contact_shift, unit)],
  ["Face that still meets", (one, unit) => amount(one.common_face, unit)],
  ["Least contact ratio", (one) => <Number of={one.contact_ratio} />],
  ["Slide left over", (one, unit) => (one.slide_left === null ? "\u00b7" : amount(one.slide_left, unit))],
  ["Push along the spool", (one) => <Number of={one.push} />],
  ["Force across", (one) => <Number of={one.across} />],
  ["Radial movement that it bears", (one, unit) => amount(one.radial_borne, unit)],
  ["More mass than the fixed bevel", (one) => <Number of={one.more_mass} />],
  ["More parts, more meshes", (one) => `${one.more_parts}, ${one.more_meshes}`],
  ["Works from, to", (one, unit) => range(one.works, unit)],
  ["Stops forward because", (one) => one.stops_forward],
  ["Stops rearward because", (one) => one.stops_rearward],
  ["Drive interrupted beyond", (one, unit) => range(one.interrupted, unit)],
];

function works(one: FloatOf, scheme: Scheme): boolean {
  const [from, to] = one.axial_travel ?? [null, null];
  return from !== null && to !== null && (scheme.works[0] ?? -Infinity) <= from && (scheme.works[1] ?? Infinity) >= to;
}

function Strip(props: { of: FloatOf; width: number }) {
  const { of } = props;
  const schemes = of.schemes ?? [];
  const [from, to] = [of.axial_travel?.[0] ?? 0, of.axial_travel?.[1] ?? 0];
  const ends = schemes.flatMap((one) => [one.works[0] ?? from, one.works[1] ?? to]);
  const least = Math.min(from, 0, ...ends), most = Math.max(to, 0, ...ends);
  const pad = 0.08 * Math.max(1e-6, most - least);
  const x = (value: number): number => LABELS + ((value - least + pad) / (most - least + 2 * pad)) * (props.width - LABELS - 12);
  const left = LABELS, right = props.width - 12;
  const height = HEAD + ROW * schemes.length + 8;
  const stops: Stop[] = schemes.flatMap((one, row) => {
    const y = HEAD + ROW * row + ROW / 2;
    return [
      { row, x: x(one.works[0] ?? least), y, says: `${one.scheme}: works from ${amount(one.works[0], of.unit, 3)}; beyond, ${one.stops_forward}` },
      { row, x: x(from), y, says: `the spool moves from ${amount(from, of.unit, 3)}` },
      { row, x: x(to), y, says: `the spool moves to ${amount(to, of.unit, 3)}` },
      { row, x: x(one.works[1] ?? most), y, says: `${one.scheme}: works to ${amount(one.works[1], of.unit, 3)}; beyond, ${one.stops_rearward}` },
    ].sort((a, b) => a.x - b.x);
  });
  return (
    <Chart label={`Movement of the ${of.spool} spool, ${range([from, to], of.unit)}, against what three schemes bear.`} width={props.width} height={height} stops={stops}>
      <rect class="loads" x={x(from)} y={HEAD - 10} width={Math.max(1, x(to) - x(from))} height={height - HEAD + 2} />
      {[from, 0, to].map((one, index) => <g key={index}><line class={one === 0 ? "p2 ink-line" : "loads-end"} x1={x(one)} x2={x(one)} y1={HEAD - 10} y2={height - 8} />{(one !== 0 || index === 1) && <text class="small" text-anchor="middle" x={x(one)} y={HEAD - 16}>{number(one, 2)}</text>}</g>)}
      {schemes.map((one, row) => {
        const y = HEAD + ROW * row + ROW / 2, a = x(one.works[0] ?? least), b = x(one.works[1] ?? most);
        return (
          <g key={one.scheme}>
            <text class="strong" x={8} y={y - 2}>{one.scheme}</text>
            <text class="small" x={8} y={y + 13}>{one.chosen ? "of this drive" : works(of, one) ? "would do" : "would not do"}</text>
            <rect class="no-go" x={left} y={y - 11} width={Math.max(0, a - left)} height={22} />
            <rect class="no-go" x={b} y={y - 11} width={Math.max(0, right - b)} height={22} />
            <rect class={one.chosen ? "neck-box strong-box" : "neck-box clear"} x={a} y={y - 11} width={Math.max(2, b - a)} height={22} />
          </g>
        );
      })}
    </Chart>
  );
}

function Of(props: { of: FloatOf; width: number }) {
  const { of } = props;
  const schemes = of.schemes ?? [];
  if (of.missing !== undefined) return <section><h3>{of.spool} spool</h3><p>Not computable: {of.missing}.</p></section>;
  const chosen = schemes.find((one) => one.chosen);
  return (
    <section class="float">
      <h3>{of.spool} spool moves along by {range(of.axial_travel ?? [null, null], of.unit)}{chosen !== undefined && `; ${chosen.scheme}, which ${works(of, chosen) ? "bears it" : "does not bear it"}`}</h3>
      {!asTable.value && <Strip of={of} width={props.width} />}
      <table class="plain">
        <caption class="away">Three schemes for the take-off of the {of.spool} spool</caption>
        <thead><tr><th scope="col">Rearwards counts as more</th>{schemes.map((one) => <th key={one.scheme} scope="col" class={one.chosen ? "chosen" : ""}>{one.scheme}<small>{one.chosen ? " of this drive" : ""}{one.made_up ? ", with sizes of our own" : ""}</small></th>)}</tr></thead>
        <tbody>{ROWS.map(([name, cell]) => <tr key={name}><th scope="row">{name}</th>{schemes.map((one) => <td key={one.scheme} class={one.chosen ? "chosen" : ""}>{cell(one, of.unit)}</td>)}</tr>)}</tbody>
      </table>
    </section>
  );
}

export function Float() {
  const { got, says } = useOfDrive<Whole>("/api/answer");
  const { ref, size } = useSize();
  return (
    <div ref={ref} class="wide scroll" tabIndex={0} role="region" aria-label="float">
      <h2>How may the spool move without pulling the teeth apart?</h2>
      <p>The tint is how far the spool moves; a box is how far a scheme works. Hatching is where it does not.</p>
      {says !== null && <p class="bad">{says}</p>}
      {(got?.float ?? []).map((one) => <Of key={one.at} of={one} width={Math.max(640, size.width - 30)} />)}
      {!asTable.value && (got?.float ?? []).length > 0 && <Drawn path="/api/picture" query={{ figure: "float", condition: conditionName.value, units: units.value }} name="sheet" alt="Every take-off in section, with the travel of its spool to scale. The numbers stand in the tables above." />}
      {got !== null && (got.float ?? []).length === 0 && <p>No spool of this drive has a take-off.</p>}
    </div>
  );
}
