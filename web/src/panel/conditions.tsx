// Which condition governs?  One column each, from crank to red line, with every reserve in it.
import { useMemo, useState } from "preact/hooks";
import { chosen, condition, leaf, view, working } from "../state/store";
import { percent, speed } from "../show/format";
import { useStill } from "../show/still";
import { Mark, markOf, type MarkName } from "../show/mark";
import type { Cell, MarginRow, View } from "../wire/view";

const LEAST = -0.2;
const MOST = 0.6;
const WORST = ["absent", "holds", "reserve", "unknown", "short", "fails"];

function worse(a: Cell, b: Cell): boolean {
  const x = WORST.indexOf(a.state), y = WORST.indexOf(b.state);
  if (x !== y) return x > y;
  return (a.margin ?? Infinity) < (b.margin ?? Infinity);
}

interface Group { rule: string; title: string; rows: MarginRow[]; worst: Cell[]; of: (MarginRow | null)[] }

/** Rows of one rule share a line: in each condition the one with the least reserve. */
function groups(now: View): Group[] {
  const out: Group[] = [];
  for (const row of now.margins) {
    let group = out.find((one) => one.rule === row.rule);
    if (group === undefined) {
      group = { rule: row.rule, title: row.title, rows: [], worst: now.conditions.map(() => ({ state: "absent" })), of: now.conditions.map(() => null) };
      out.push(group);
    }
    group.rows.push(row);
    for (let c = 0; c < now.conditions.length; c++) {
      const cell = row.cells[c], worst = group.worst[c];
      if (cell !== undefined && worst !== undefined && worse(cell, worst)) {
        group.worst[c] = cell;
        group.of[c] = row;
      }
    }
  }
  return out;
}

function markOfCell(now: View, cell: Cell): MarkName | null {
  const found = cell.finding !== undefined && cell.finding >= 0 ? now.findings[cell.finding] : undefined;
  return found === undefined ? null : markOf(found);
}

/** What a row is of: two gears that mesh, a shaft, or nothing in particular. */
export function nameOfRow(now: View, row: MarginRow): string {
  const mesh = now.meshes.find((one) => one.address === row.address);
  const driver = now.shafts[mesh?.driver ?? -1], driven = now.shafts[mesh?.driven ?? -1];
  return driver !== undefined && driven !== undefined ? `${driver.name} with ${driven.name}` : now.shafts[row.shaft]?.name ?? "";
}

function Bar(props: { margin: number }) {
  const at = (value: number): number => ((Math.min(MOST, Math.max(LEAST, value)) - LEAST) / (MOST - LEAST)) * 60;
  const zero = at(0), end = at(props.margin);
  return (
    <svg class="bar" width="60" height="12" aria-hidden="true">
      <rect class={props.margin < 0 ? "less" : "more"} x={Math.min(zero, end)} y={3} width={Math.max(0.5, Math.abs(end - zero))} height={6} />
      <line class="p2" x1={zero} y1={0} x2={zero} y2={12} />
    </svg>
  );
}

function says(cell: Cell): string {
  switch (cell.state) {
    case "absent": return "does not apply";
    case "holds": return "holds";
    case "unknown": return "not computable";
    case "fails": return "fails";
    default: return `${percent(cell.margin)} %`;
  }
}

function openCell(cell: Cell, c: number): void {
  condition.value = c;
  if (cell.shaft !== undefined && cell.shaft >= 0) chosen.value = cell.shaft;
  if (cell.working) {
    working.value = cell.working;
    leaf.value = "findings";
  }
}

function CellView(props: { cell: Cell; mark: MarkName | null; c: number; label: string }) {
  const { cell, mark, c } = props;
  const inside = (
    <>
      {mark !== null && mark !== "note" && <Mark name={mark} size={12} />}
      {cell.margin !== null && cell.margin !== undefined && <Bar margin={cell.margin} />}
      <span>{cell.state === "absent" ? "\u00b7" : cell.margin !== null && cell.margin !== undefined ? percent(cell.margin) : says(cell)}</span>
    </>
  );
  const label = `${props.label}: ${says(cell)}`, here = c === condition.value;
  return (
    <td class={here ? "here" : ""}>
      {cell.state === "absent" || !cell.working ? <span class="cellbox" title={label}>{inside}</span>
        : <button type="button" class="cellbox" tabIndex={here ? 0 : -1} aria-label={`${label}; open its working`} title={label} onClick={() => openCell(cell, c)}>{inside}</button>}
    </td>
  );
}

/** Drawn again only when something in it has changed: there are hundreds of cells, and an act changes few. */
function Row(props: { now: View; title: string; small: string; cells: Cell[]; of: (MarginRow | null)[]; open?: boolean; onOpen?: () => void }) {
  const { now, title, small, open } = props;
  const cells = useStill(props.cells);
  const marks = useStill(cells.map((cell) => markOfCell(now, cell)));
  const labels = useStill(cells.map((_, c) => {
    const row = props.of[c];
    const shaft = row === null || row === undefined ? undefined : now.shafts[row.shaft];
    return `${title}${shaft === undefined ? "" : ` of ${shaft.name}`}, ${now.conditions[c]}`;
  }));
  const shown = condition.value;
  return useMemo(() => (
    <tr class={props.onOpen === undefined ? "inner" : ""}>
      <th scope="row">
        {props.onOpen !== undefined
          ? <button type="button" class="row" aria-expanded={open ?? false} onClick={props.onOpen}>{title} <small>{small}</small></button>
          : <span>{title} <small>{small}</small></span>}
      </th>
      {cells.map((cell, c) => <CellView key={c} cell={cell} mark={marks[c] ?? null} c={c} label={labels[c] ?? ""} />)}
    </tr>
  ), [title, small, open, cells, marks, labels, shown]);
}

export function Conditions() {
  const now = view.value;
  const [open, setOpen] = useState<string | null>(null);
  const rows = useMemo(() => (now === null ? [] : groups(now)), [now?.margins, now?.conditions]);
  if (now === null) return null;
  const spool = now.spools[0];
  return (
    <section class="conditions" id="conditions" aria-label="conditions and reserves">
      <div class="scrub">
        <label for="scrubber">Condition</label>
        <input id="scrubber" type="range" min={0} max={now.conditions.length - 1} step={1} value={condition.value}
          aria-valuetext={`${now.conditions[condition.value]}, ${spool?.name} spool ${speed(spool?.speed[condition.value])} ${now.units.speed}`}
          onInput={(event) => { condition.value = Number(event.currentTarget.value); }} />
      </div>
      <div class="scroll" tabIndex={0} role="region" aria-label="reserves in every condition">
        <table>
          <caption class="away">Reserve of every rule in every condition, in percent of what is demanded</caption>
          <thead>
            <tr>
              <th scope="col">Margin <small>% of the demand</small></th>
              {now.conditions.map((name, c) => (
                <th key={name} scope="col" class={c === condition.value ? "here" : ""}>
                  <button type="button" aria-pressed={c === condition.value} onClick={() => { condition.value = c; }}>
                    {name}<small>{spool?.name} {speed(spool?.speed[c])}</small>
                  </button>
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            {rows.map((group) => (
              <>
                <Row key={group.rule} now={now} title={group.title} small={group.rows.length > 1 ? `of ${group.rows.length}` : ""} cells={group.worst} of={group.of}
                  open={open === group.rule} onOpen={() => setOpen(open === group.rule ? null : group.rule)} />
                {open === group.rule && group.rows.map((row) => {
                  const name = nameOfRow(now, row);
                  return <Row key={`${row.rule} ${row.address}`} now={now} title={name === "" ? row.address ?? "all" : name} small={name === "" ? "" : row.address ?? ""} cells={row.cells} of={row.cells.map(() => row)} />;
                })}
              </>
            ))}
          </tbody>
        </table>
      </div>
    </section>
  );
}
