// What does the machine look like from behind or from the front, and how is it taken hold of?
import { useEffect, useMemo, useRef } from "preact/hooks";
import { useSignal, type Signal } from "@preact/signals";
import { changeTeeth, dropOn, otherFace, padInHand } from "../state/acts";
import { boxShafts, carried, chosen, closeTo, condition, findingsOf, mainGear, told, turning, view, viewName } from "../state/store";
import { Mark, markOf } from "../show/mark";
import { speed } from "../show/format";
import type { Gear, Shaft, Side, View } from "../wire/view";
import { Names, shared, STRIP, type Box } from "./names";
import { outline } from "./outline";
import { clashBoxes, Overlaps } from "./overlap";
import { bodyRadius, chooseClose, keepSheet, layOut, toX, toY, type Sheet } from "./place";
import { Ribbons, RibbonScale } from "./ribbons";
import { useSize } from "./size";

const WALL = 0.008;
const SLOWED = 2000;

interface Drag { shaft: number; x: number; y: number; moved: boolean; over: number | "other" | null }

function clockPoint(sheet: Sheet, clock: number, r: number): [number, number] {
  return [toX(sheet, r * Math.sin(clock)), toY(sheet, r * Math.cos(clock))];
}

const SPEEDS_HALF = 92;

/** How far over the axis the lowest of the spools' speeds stands, in px. */
function hubTop(now: View, sheet: Sheet): number {
  const bevels = now.gears.filter((gear) => gear.role === "bevel" && now.shafts[gear.shaft]?.kind === "spool").map((gear) => gear.r);
  return (bevels.length === 0 ? 0.04 : Math.max(...bevels)) * sheet.k + 8;
}

function Dial(props: { now: View; sheet: Sheet }) {
  const { now, sheet } = props;
  return useMemo(() => drawDial(now, sheet), [now.engine, now.dial, now.gears, now.spools.length, sheet]);
}

function drawDial(now: View, sheet: Sheet) {
  const r = now.engine.casing;
  if (r === null || r * sheet.k < 60) return null;
  const ticks = [];
  for (let i = 0; i < 360; i += 2) {
    const length = (i % 30 === 0 ? 15 : i % 10 === 0 ? 9 : 4.5) / sheet.k;
    const inner = r - 7 / sheet.k;
    const [x1, y1] = clockPoint(sheet, (i * Math.PI) / 180, inner);
    const [x2, y2] = clockPoint(sheet, (i * Math.PI) / 180, inner - length);
    ticks.push(<line key={i} class={i % 30 === 0 ? "p3" : "p1"} x1={x1} y1={y1} x2={x2} y2={y2} />);
  }
  const hours = [];
  for (let hour = 1; hour <= 12; hour++) {
    const [x, y] = clockPoint(sheet, (now.dial * hour * Math.PI) / 6, r - 36 / sheet.k);
    // The speeds of the spools stand over the hub; on a small dial an hour would stand among them.
    const among = sheet.oy - hubTop(now, sheet) - y;
    if (Math.abs(x - sheet.ox) < SPEEDS_HALF && among > -14 && among < 16 * now.spools.length + 8) continue;
    hours.push(<text key={hour} x={x} y={y + 5} text-anchor="middle" class="hour">{hour}</text>);
  }
  return (
    <g aria-hidden="true">
      <circle class="p4 none" cx={sheet.ox} cy={sheet.oy} r={r * sheet.k} />
      <circle class="p1 none" cx={sheet.ox} cy={sheet.oy} r={r * sheet.k - 7} />
      {ticks}{hours}
    </g>
  );
}

function Around(props: { now: View; sheet: Sheet }) {
  const { now, sheet } = props;
  return useMemo(() => drawAround(now, sheet), [now.engine, sheet]);
}

function drawAround(now: View, sheet: Sheet) {
  const line = now.engine.cowl.map(([x, y]) => `${toX(sheet, x).toFixed(1)},${toY(sheet, y).toFixed(1)}`).join(" ");
  return (
    <g aria-hidden="true">
      {line !== "" && <polyline class="wall" points={line} />}
      {line !== "" && <polyline class="wall-ticks" points={line} />}
      {now.engine.keep_outs.map((one) => one.x === null || one.y === null || one.r === null ? null : (
        <g key={one.address}>
          <circle class="forbidden" cx={toX(sheet, one.x)} cy={toY(sheet, one.y)} r={one.r * sheet.k} />
          <text class="small" text-anchor="middle" x={toX(sheet, one.x)} y={toY(sheet, one.y) + one.r * sheet.k + 14}>{one.name}</text>
        </g>
      ))}
    </g>
  );
}

function bridge(sheet: Sheet, a: Shaft, b: Shaft, grow: number): string {
  const r1 = (a.r + WALL) * sheet.k + grow;
  const r2 = (b.r + WALL) * sheet.k + grow;
  const x1 = toX(sheet, a.x ?? 0), y1 = toY(sheet, a.y ?? 0), x2 = toX(sheet, b.x ?? 0), y2 = toY(sheet, b.y ?? 0);
  const far = Math.hypot(x2 - x1, y2 - y1);
  if (far <= Math.abs(r1 - r2)) return "";
  const along = Math.atan2(y2 - y1, x2 - x1);
  const lean = Math.acos((r1 - r2) / far);
  const at = (x: number, y: number, r: number, turn: number): string => `${(x + r * Math.cos(turn)).toFixed(1)},${(y + r * Math.sin(turn)).toFixed(1)}`;
  return [at(x1, y1, r1, along + lean), at(x2, y2, r2, along + lean), at(x2, y2, r2, along - lean), at(x1, y1, r1, along - lean)].join(" ");
}

export function Boxes(props: { now: View; sheet: Sheet }) {
  const { now, sheet } = props;
  return useMemo(() => drawBoxes(now, sheet), [now.shafts, sheet]);
}

function drawBoxes(now: View, sheet: Sheet) {
  const paint = (grow: number, name: string) => (
    <g class={name} aria-hidden="true">
      {boxShafts(now).map(({ shaft }) => {
        if (shaft.x === null || shaft.y === null) return null;
        const driver = now.shafts[shaft.driver];
        return (
          <g key={shaft.address}>
            <circle cx={toX(sheet, shaft.x)} cy={toY(sheet, shaft.y)} r={(shaft.r + WALL) * sheet.k + grow} />
            {driver?.kind === "box" && driver.x !== null && <polygon points={bridge(sheet, driver, shaft, grow)} />}
          </g>
        );
      })}
    </g>
  );
  return <>{paint(0.75, "box-line")}{paint(-0.75, "box-fill")}</>;
}

function tint(shaft: Shaft | undefined, sheet: Sheet): string {
  const seen = (shaft?.sense ?? 0) * sheet.side;
  return seen < 0 ? "cw" : seen > 0 ? "ccw" : "plain";
}

/** Drawn again only when it has moved or changed: an act changes few of many gears. */
function OneGear(props: { gear: Gear; shaft: Shaft; sheet: Sheet; turn: (shaft: number, gear: SVGGElement | null) => void }) {
  const { gear, shaft, sheet } = props;
  return useMemo(() => {
    const path = outline(gear, sheet.k);
    const phase = (-sheet.side * gear.phase * 180) / Math.PI;
    const rim = gear.r_root === null ? 0 : gear.r_root - 1.2 * (gear.r_tip - gear.r_root);
    return (
      <g transform={`translate(${toX(sheet, shaft.x ?? 0).toFixed(1)},${toY(sheet, shaft.y ?? 0).toFixed(1)})`}>
        <g ref={(one) => props.turn(gear.shaft, one)} data-phase={phase} transform={`rotate(${phase.toFixed(3)})`}>
          {path !== "" ? <path class={`gear ${tint(shaft, sheet)}`} d={path} transform={sheet.side < 0 ? "scale(-1,1)" : ""} />
            : <circle class={`gear ${tint(shaft, sheet)}`} r={gear.r_tip * sheet.k} />}
          {rim > 0 && <circle class="p1 rule none" r={rim * sheet.k} />}
          <line class="p1 rule" x1={0} y1={-Math.max(0, rim) * sheet.k} x2={0} y2={-0.55 * gear.r * sheet.k} />
        </g>
        {(gear.role === "step" || path === "") && <circle class="chain none" r={gear.r * sheet.k} />}
      </g>
    );
  }, [gear, shaft, sheet]);
}

export function Gears(props: { now: View; sheet: Sheet; turn: (shaft: number, gear: SVGGElement | null) => void }) {
  const { now, sheet } = props;
  const drawn = useMemo(
    () => now.gears
      .map((gear, index) => ({ gear, index, shaft: now.shafts[gear.shaft] }))
      .filter((one) => one.gear.role !== "bevel" && one.shaft?.x != null)
      .sort((a, b) => (a.gear.plane - b.gear.plane) * sheet.side),
    [now.gears, now.shafts, sheet.side],
  );
  return (
    <g aria-hidden="true">
      {drawn.map(({ gear, index, shaft }) => shaft !== undefined && <OneGear key={`${gear.address}#${index}`} gear={gear} shaft={shaft} sheet={sheet} turn={props.turn} />)}
    </g>
  );
}

/** `condition` null: without speeds. */
export function Hub(props: { now: View; sheet: Sheet; condition: number | null }) {
  const { now, sheet } = props;
  const bevels = now.gears.filter((gear) => gear.role === "bevel" && now.shafts[gear.shaft]?.kind === "spool").sort((a, b) => b.r - a.r);
  return (
    <g aria-hidden="true">
      {now.shafts.map((shaft) => {
        if (shaft.kind !== "tower" || shaft.x === null || shaft.y === null) return null;
        const x = toX(sheet, shaft.x), y = toY(sheet, shaft.y);
        const width = Math.max(6, (shaft.outside ?? 0.012) * sheet.k);
        return (
          <g key={shaft.address}>
            <line class="tube-line" x1={sheet.ox} y1={sheet.oy} x2={x} y2={y} stroke-width={width + 3} />
            <line class="tube-fill" x1={sheet.ox} y1={sheet.oy} x2={x} y2={y} stroke-width={width} />
            <line class="chain" x1={sheet.ox} y1={sheet.oy} x2={x} y2={y} />
          </g>
        );
      })}
      {bevels.map((gear) => (
        <g key={gear.address}>
          <circle class={`gear p3 ${tint(now.shafts[gear.shaft], sheet)}`} cx={sheet.ox} cy={sheet.oy} r={gear.r * sheet.k} />
          <circle class="hub" cx={sheet.ox} cy={sheet.oy} r={gear.r * sheet.k * 0.78} />
        </g>
      ))}
      {props.condition !== null && now.spools.map((spool, index) => (
        <text key={spool.name} class="label" text-anchor="middle" x={sheet.ox} y={sheet.oy - hubTop(now, sheet) - 16 * index}>
          {`${spool.name} spool `}<tspan class="strong">{speed(spool.speed[props.condition ?? 0])}</tspan>{` ${now.units.speed}`}
        </text>
      ))}
    </g>
  );
}

function Bodies(props: { now: View; sheet: Sheet }) {
  const { now, sheet } = props;
  const near = sheet.side > 0 ? "rear" : "front";
  const sorted = [...now.pads].sort((a, b) => Number(a.face === near) - Number(b.face === near));
  return (
    <g aria-hidden="true">
      {sorted.map((pad) => {
        const shaft = now.shafts[pad.shaft];
        if (!shaft || shaft.x === null || shaft.y === null || !pad.radius) return null;
        return <circle key={pad.address} class={pad.face === near ? "body near" : "body far"} cx={toX(sheet, shaft.x)} cy={toY(sheet, shaft.y)} r={pad.radius * sheet.k} />;
      })}
    </g>
  );
}

/** Arc with a head, inside the rim, on the engine's side. */
function Sense(props: { shaft: Shaft; sheet: Sheet }) {
  const { shaft, sheet } = props;
  const seen = shaft.sense * sheet.side;
  if (seen === 0 || shaft.x === null || shaft.y === null) return null;
  const x = toX(sheet, shaft.x), y = toY(sheet, shaft.y);
  const r = Math.max(16, 0.66 * shaft.r_main * sheet.k);
  const way = seen < 0 ? 1 : -1;
  const span = Math.min(1.9, 34 / r + 0.35);
  const middle = Math.atan2(sheet.oy - y, sheet.ox - x);
  const from = middle - (way * span) / 2, to = middle + (way * span) / 2;
  const at = (turn: number, radius = r): string => `${(x + radius * Math.cos(turn)).toFixed(1)},${(y + radius * Math.sin(turn)).toFixed(1)}`;
  const back = to - (way * 7) / r;
  return (
    <g class="sense">
      <path class="p3 none" d={`M${at(from)}A${r},${r} 0 0 ${way > 0 ? 1 : 0} ${at(back)}`} />
      <polygon class="ink" points={`${at(to)} ${at(back, r + 3.6)} ${at(back, r - 3.6)}`} />
    </g>
  );
}

/** Of a mark with its number, as seen from the axis of its shaft: over it, below, beside. */
const STANDS: [number, number][] = [[-12, -26], [-12, 26], [24, 0], [-48, 0], [24, -26], [-60, -26]];
const TAG = { x: -10, y: -10, width: 44, height: 19 };

/** Where the marks of a shaft hide none of the places where bodies clash, nor the number of another shaft. */
function standOf(x: number, y: number, keepOff: Box[]): [number, number] {
  let best: [number, number] = STANDS[0] ?? [0, 0], least = Infinity;
  STANDS.forEach((one, rank) => {
    const tag = { x: x + one[0] + TAG.x, y: y + one[1] + TAG.y, width: TAG.width, height: TAG.height };
    const bad = keepOff.reduce((sum, other) => sum + shared(tag, other), 0) + rank;
    if (bad < least) {
      least = bad;
      best = one;
    }
  });
  return best;
}

function Marks(props: { now: View; index: number; x: number; y: number; keepOff: Box[] }) {
  const open = findingsOf(props.now, props.index).filter((one) => one.level !== "note" || one.state === "not computable");
  if (open.length === 0) return null;
  const [dx, dy] = standOf(props.x, props.y, props.keepOff), away = dy > 0 ? 20 : -20;
  return (
    <g class="tags">
      {open.slice(0, 3).map((one, place) => (
        <g key={one.fingerprint} transform={`translate(${props.x + dx},${props.y + dy + away * place})`}>
          <rect class="tag" {...TAG} />
          <Mark name={markOf(one)} size={13} x={0} y={0} />
          <text class="small" x={10} y={4}>{`F${props.now.findings.indexOf(one) + 1}`}</text>
        </g>
      ))}
    </g>
  );
}

export function summary(now: View, c: number, front: boolean): string {
  const words = boxShafts(now).map(({ shaft }) => `${shaft.number} ${shaft.name} ${speed(shaft.speed[c])} ${now.units.speed}`);
  return `The face of the drive seen from ${front ? "the front" : "behind"}, at ${now.conditions[c] ?? ""}. ${now.says} Shafts: ${words.join(", ")}.`;
}

/** Turns the gears at true ratios, slowed; the steps of reduced motion turn by a quarter tooth. */
function useTurning(now: View, sheet: Sheet) {
  const groups = useRef(new Map<SVGGElement, number>());
  const angle = useRef(0);
  const keep = (shaft: number, one: SVGGElement | null): void => {
    if (one !== null) groups.current.set(one, shaft);
  };
  const show = (): void => {
    for (const [one, shaft] of groups.current) {
      if (!one.isConnected) {
        groups.current.delete(one);
        continue;
      }
      const of = now.shafts[shaft];
      const turned = angle.current * (of?.speed[condition.value] ?? 0) * (of?.sense ?? 0) * 6;
      one.setAttribute("transform", `rotate(${(Number(one.dataset["phase"]) - sheet.side * turned).toFixed(3)})`);
    }
  };
  useEffect(() => {
    if (!turning.value) return;
    if (window.matchMedia("(prefers-reduced-motion: reduce)").matches) {
      const input = boxShafts(now).find((one) => one.shaft.address.endsWith("/input"));
      const teeth = input === undefined ? 40 : mainGear(now, input.index)?.teeth ?? 40;
      const rpm = input?.shaft.speed[condition.value] ?? 1;
      angle.current += rpm > 0 ? 360 / teeth / 4 / (rpm * 6) : 0;
      show();
      turning.value = false;
      return;
    }
    let last = performance.now(), frame = 0;
    const step = (time: number): void => {
      angle.current += (time - last) / 1000 / SLOWED;
      last = time;
      show();
      frame = requestAnimationFrame(step);
    };
    frame = requestAnimationFrame(step);
    return () => cancelAnimationFrame(frame);
  }, [turning.value, now, sheet, condition.value]);
  return keep;
}

function shaftUnder(now: View, sheet: Sheet, x: number, y: number): number {
  let best = -1, near = Infinity;
  for (const { shaft, index } of boxShafts(now)) {
    if (shaft.x === null || shaft.y === null) continue;
    const far = Math.hypot(toX(sheet, shaft.x) - x, toY(sheet, shaft.y) - y);
    if (far < Math.max(shaft.r, bodyRadius(now, index) * 0.8) * sheet.k && far < near) {
      best = index;
      near = far;
    }
  }
  return best;
}

function drop(now: View, drag: Drag, near: Side): void {
  if (drag.over === "other") {
    const pad = padInHand(now, drag.shaft, near);
    if (pad !== undefined) void otherFace(pad);
    else told.value = { says: "This shaft carries no accessory that could change its face.", bad: true };
  } else if (typeof drag.over === "number" && drag.over !== drag.shaft) {
    void dropOn(drag.shaft, drag.over, near);
  }
}

export function FacePicture(props: { front: boolean }) {
  const now = view.value;
  const { ref, size } = useSize();
  const held = useSignal<Drag | null>(null);
  // What is said of a shaft taken hold of may need room: nothing moves under the hand until it lets go.
  const kept = useRef(size);
  if (held.value === null) kept.current = size;
  return (
    <div ref={ref} class="picture">
      {now !== null && <Face now={now} front={props.front} holder={ref} size={kept.current} held={held} />}
    </div>
  );
}

function Face(props: {
  now: View; front: boolean; holder: { current: HTMLDivElement | null }; size: { width: number; height: number };
  held: Signal<Drag | null>;
}) {
  const { now, front, size, held } = props;
  const drag = held.value;
  const c = condition.value;
  const near = front ? "front" : "rear";
  const other = front ? "rear" : "front";
  const close = closeTo.value ?? chooseClose(now, size.width, size.height);
  const kept = useRef<{ sheet: Sheet; close: string } | null>(null);
  const sheet = useMemo(() => {
    const next = layOut(now, size.width, size.height, front ? -1 : 1, close);
    return keepSheet(kept.current?.close === close ? kept.current.sheet : null, next, now, close);
  }, [now, size, front, close]);
  kept.current = { sheet, close };
  const keep = useTurning(now, sheet);
  const keepOff = useMemo(() => [...clashBoxes(now, sheet),
    ...boxShafts(now).flatMap(({ shaft }) => (shaft.x === null || shaft.y === null ? [] : [{ x: toX(sheet, shaft.x) - 10, y: toY(sheet, shaft.y) - 10, width: 20, height: 20 }]))], [now, sheet]);
  const zone = { x: sheet.width - 178, y: sheet.height - 104, width: 170, height: 66 };
  const point = (event: PointerEvent | WheelEvent): [number, number] => {
    const box = props.holder.current?.getBoundingClientRect();
    return [event.clientX - (box?.left ?? 0), event.clientY - (box?.top ?? 0)];
  };
  const down = (event: PointerEvent): void => {
    const [x, y] = point(event);
    const shaft = shaftUnder(now, sheet, x, y);
    chosen.value = shaft;
    if (shaft >= 0 && event.button === 0) {
      (event.currentTarget as Element).setPointerCapture(event.pointerId);
      held.value = { shaft, x, y, moved: false, over: null };
    }
  };
  // A quick hand moves and lets go before the page is drawn again: read what is held, not what is drawn.
  const move = (event: PointerEvent): void => {
    const drag = held.value;
    if (drag === null) return;
    const [x, y] = point(event);
    const from = now.shafts[drag.shaft];
    const moved = drag.moved || Math.hypot(x - toX(sheet, from?.x ?? 0), y - toY(sheet, from?.y ?? 0)) > Math.max(14, 0.5 * (from?.r ?? 0) * sheet.k);
    const inZone = x > zone.x && x < zone.x + zone.width && y > zone.y && y < zone.y + zone.height;
    const over = shaftUnder(now, sheet, x, y);
    held.value = { ...drag, x, y, moved, over: inZone ? "other" : over >= 0 && over !== drag.shaft ? over : null };
  };
  const up = (): void => {
    const drag = held.value;
    held.value = null;
    if (drag !== null && drag.moved) drop(now, drag, near);
  };
  const wheel = (event: WheelEvent): void => {
    const [x, y] = point(event);
    const shaft = shaftUnder(now, sheet, x, y);
    if (shaft < 0) return;
    event.preventDefault();
    chosen.value = shaft;
    changeTeeth(shaft, event.deltaY < 0 ? 1 : -1, true);
  };
  const from = drag === null ? undefined : now.shafts[drag.shaft];
  return (
    <svg width={sheet.width} height={sheet.height} viewBox={`0 0 ${sheet.width} ${sheet.height}`} role="img" aria-label={summary(now, c, front)}
      onPointerDown={down} onPointerMove={move} onPointerUp={up} onPointerCancel={() => { held.value = null; }} onWheel={wheel}>
      <Dial now={now} sheet={sheet} />
      <Around now={now} sheet={sheet} />
      <Boxes now={now} sheet={sheet} />
      <Gears now={now} sheet={sheet} turn={keep} />
      <Hub now={now} sheet={sheet} condition={c} />
      <Bodies now={now} sheet={sheet} />
      <Ribbons now={now} sheet={sheet} condition={c} />
      {boxShafts(now).map(({ shaft, index }) => {
        if (shaft.x === null || shaft.y === null) return null;
        const x = toX(sheet, shaft.x), y = toY(sheet, shaft.y);
        return (
          <g key={shaft.address} class="shaft">
            <circle class="hold" cx={x} cy={y} r={Math.max(shaft.r, bodyRadius(now, index) * 0.8) * sheet.k}><title>{`${shaft.number} ${shaft.name}: drag it, or roll the mouse wheel to change its teeth`}</title></circle>
            <Sense shaft={shaft} sheet={sheet} />
            {(index === chosen.value || index === drag?.over || shaft.address === carried.value) && <>
              <circle class="halo-ring" cx={x} cy={y} r={(shaft.r + 0.004) * sheet.k} />
              <circle class={index === chosen.value && shaft.address !== carried.value ? "ring" : "ring target"} cx={x} cy={y} r={(shaft.r + 0.004) * sheet.k} />
            </>}
            <circle class="number" cx={x} cy={y} r={10} />
            <text class="number-text" x={x} y={y + 4} text-anchor="middle">{shaft.number}</text>
            <Marks now={now} index={index} x={x} y={y} keepOff={keepOff} />
          </g>
        );
      })}
      <Overlaps now={now} sheet={sheet} />
      <Names now={now} sheet={sheet} />
      <text class="label strong" x={14} y={sheet.height - 44 - STRIP}>{front ? "Seen from the front" : "Seen from behind"}</text>
      <text class="small" x={14} y={sheet.height - 28 - STRIP}>{front ? "looking rearward; rear bodies dashed" : "looking forward; front bodies dashed"}</text>
      <RibbonScale now={now} sheet={sheet} x={14} y={sheet.height - 12 - STRIP} />
      {drag?.moved && from !== undefined && (
        <g class="dragging">
          <line class="p2" x1={toX(sheet, from.x ?? 0)} y1={toY(sheet, from.y ?? 0)} x2={drag.x} y2={drag.y} />
          <circle class="ghost" cx={drag.x} cy={drag.y} r={from.r * sheet.k} />
          <rect class={drag.over === "other" ? "zone over" : "zone"} {...zone} />
          <text class="label" text-anchor="middle" x={zone.x + zone.width / 2} y={zone.y + 30}>{`drop here: to the ${other}`}</text>
          <text class="small" text-anchor="middle" x={zone.x + zone.width / 2} y={zone.y + 48}>or on a shaft</text>
        </g>
      )}
    </svg>
  );
}

export function isFace(): boolean {
  return viewName.value === "Behind" || viewName.value === "Front";
}

