// The face while something happens: everything turned to where it is, torques as tints, what has broken.
import { useEffect, useMemo, useRef } from "preact/hooks";
import type { Signal } from "@preact/signals";
import { angleAt, valueAt, type Course } from "../state/course";
import { boxShafts, chosen, closeTo } from "../state/store";
import type { View } from "../wire/view";
import { Boxes, Gears, Hub } from "./face";
import { shared, type Box } from "./names";
import { bodyRadius, chooseClose, layOut, toX, toY, type Sheet } from "./place";

const TINTS = 8;

const SHARE_WIDE = 40, SHARE_HIGH = 14;
/** Base lines of a share, as seen from the axis of its shaft. */
const STANDS: [number, number][] = [[0, 26], [0, -15], [0, 40], [0, -29], [0, 54], [0, -43]];

/** The share of each shaft where it covers no other share and no number. */
function shareStands(now: View, sheet: Sheet): Map<number, [number, number]> {
  const all = boxShafts(now).filter(({ shaft }) => shaft.x !== null && shaft.y !== null);
  const taken: Box[] = all.map(({ shaft }) => ({ x: toX(sheet, shaft.x ?? 0) - 11, y: toY(sheet, shaft.y ?? 0) - 11, width: 22, height: 22 }));
  const out = new Map<number, [number, number]>();
  for (const { shaft, index } of all) {
    const x = toX(sheet, shaft.x ?? 0), y = toY(sheet, shaft.y ?? 0);
    const boxOf = ([dx, dy]: [number, number]): Box => ({ x: x + dx - SHARE_WIDE / 2, y: y + dy - SHARE_HIGH + 3, width: SHARE_WIDE, height: SHARE_HIGH });
    const bad = STANDS.map((one, rank) => taken.reduce((sum, other) => sum + shared(boxOf(one), other), 0) + rank);
    const best = STANDS[bad.indexOf(Math.min(...bad))] ?? [0, 26];
    taken.push(boxOf(best));
    out.set(index, best);
  }
  return out;
}

interface Held { gears: Map<SVGGElement, number>; rotors: Map<string, SVGGElement>; loads: Map<number, SVGGElement>; necks: Map<string, SVGGElement>; teeth: Map<number, SVGGElement> }

function set(one: Element, name: string, value: string): void {
  if (one.getAttribute(name) !== value) one.setAttribute(name, value);
}

function show(course: Course, sheet: Sheet, held: Held, now: View, time: number, turned: number): void {
  for (const [one, shaft] of held.gears) {
    const of = course.turners[shaft];
    if (!one.isConnected || of === undefined) continue;
    const angle = (angleAt(course, of, time) * turned * (now.shafts[shaft]?.sense ?? 0) * 180) / Math.PI;
    one.setAttribute("transform", `rotate(${(Number(one.dataset["phase"]) - sheet.side * angle).toFixed(3)})`);
  }
  for (const of of course.turners) {
    const rotor = of.accessory === null ? undefined : held.rotors.get(of.accessory);
    if (rotor === undefined) continue;
    const angle = (angleAt(course, of, time) * turned * (now.shafts[of.shaft]?.sense ?? 0) * 180) / Math.PI;
    rotor.setAttribute("transform", `rotate(${(-sheet.side * angle).toFixed(3)})`);
  }
  for (const [shaft, one] of held.loads) {
    const share = valueAt(course, course.share.get(shaft) ?? [], time);
    const text = one.lastElementChild, tint = one.firstElementChild;
    if (tint === null || text === null) continue;
    set(tint, "class", share === null ? "load" : share >= 1 ? "load over" : `load t${Math.min(TINTS, Math.ceil(share * TINTS))}`);
    const says = share === null ? "" : `${(share * 100).toFixed(share < 0.1 && share > 0 ? 1 : 0)} %`;
    if (text.textContent !== says) text.textContent = says;
  }
  for (const [name, one] of held.necks) set(one, "class", time >= (course.necks.get(name) ?? Infinity) ? "snap broken" : "snap");
  for (const [shaft, one] of held.teeth) set(one, "class", time >= (course.teeth.get(shaft) ?? Infinity) ? "snap broken" : "snap");
}

function keep<K>(map: Map<K, SVGGElement>, key: K, one: SVGGElement | null): void {
  if (one !== null) map.set(key, one);
}

/** Two halves that come apart, and what it is in words. */
function Snap(props: { says: string; x: number; y: number; width: number; hold: (one: SVGGElement | null) => void }) {
  return (
    <g class="snap" ref={props.hold} transform={`translate(${props.x.toFixed(1)},${props.y.toFixed(1)})`}>
      <path class="half" d="M-4,-12h8v9l-3,3 1,3-6,-2z" /><path class="half low" d="M-4,14h8v-9l-3,-2 -2,3-3,-1z" />
      <text class="label strong" x={props.x > 0.55 * props.width ? -12 : 12} y={5} text-anchor={props.x > 0.55 * props.width ? "end" : "start"}>{props.says}</text>
    </g>
  );
}

function Rotors(props: { now: View; sheet: Sheet; course: Course; held: Held }) {
  const { now, sheet, course, held } = props;
  return (
    <g aria-hidden="true">
      {course.turners.map((of) => {
        const shaft = now.shafts[of.shaft];
        if (of.accessory === null || shaft === undefined || shaft.x === null || shaft.y === null) return null;
        const pad = now.pads.find((one) => one.name === of.accessory);
        const r = Math.max(14, 0.55 * (pad?.radius ?? bodyRadius(now, of.shaft)) * sheet.k);
        return (
          <g key={of.accessory} transform={`translate(${toX(sheet, shaft.x).toFixed(1)},${toY(sheet, shaft.y).toFixed(1)})`}>
            <g ref={(one) => keep(held.rotors, of.accessory ?? "", one)}>
              <circle class="rotor" r={r} /><line class="p5 ink-line" x1={0} y1={-r} x2={0} y2={-r + 9} />
            </g>
          </g>
        );
      })}
    </g>
  );
}

export function MovingFace(props: { now: View; course: Course; time: Signal<number>; turned: number; size: { width: number; height: number } }) {
  const { now, course, size } = props;
  const close = closeTo.value ?? chooseClose(now, size.width, size.height);
  const sheet = useMemo(() => layOut(now, size.width, size.height, 1, close), [now, size.width, size.height, close]);
  const stands = useMemo(() => shareStands(now, sheet), [now, sheet]);
  const held = useRef<Held>({ gears: new Map(), rotors: new Map(), loads: new Map(), necks: new Map(), teeth: new Map() });
  useEffect(() => props.time.subscribe((time) => show(course, sheet, held.current, now, time, props.turned)), [course, sheet, now, props.turned, props.time]);
  const place = (shaft: number): [number, number] => {
    const of = now.shafts[shaft];
    return [toX(sheet, of?.x ?? 0), toY(sheet, of?.y ?? 0)];
  };
  return (
    <svg class="moving-face" width={sheet.width} height={sheet.height} viewBox={`0 0 ${sheet.width} ${sheet.height}`} role="img" aria-label={`The drive seen from behind while ${course.title}; speeds and loads stand in the charts and the table.`}>
      <Boxes now={now} sheet={sheet} />
      <Gears now={now} sheet={sheet} turn={(shaft, one) => { if (one !== null) held.current.gears.set(one, shaft); }} />
      <Hub now={now} sheet={sheet} condition={null} />
      <Rotors now={now} sheet={sheet} course={course} held={held.current} />
      {boxShafts(now).map(({ shaft, index }) => {
        if (shaft.x === null || shaft.y === null) return null;
        const [x, y] = place(index);
        return (
          <g key={shaft.address} class="shaft" onPointerDown={() => { chosen.value = index; }}>
            <g ref={(one) => keep(held.current.loads, index, one)}><circle class="load" cx={x} cy={y} r={shaft.r_main * sheet.k} /><text class="label strong" text-anchor="middle" x={x} y={y + (stands.get(index)?.[1] ?? 26)} /></g>
            {index === chosen.value && <><circle class="halo-ring" cx={x} cy={y} r={(shaft.r + 0.004) * sheet.k} /><circle class="ring" cx={x} cy={y} r={(shaft.r + 0.004) * sheet.k} /></>}
            <circle class="number" cx={x} cy={y} r={10} /><text class="number-text" x={x} y={y + 4} text-anchor="middle">{shaft.number}</text>
          </g>
        );
      })}
      {[...course.necks.keys()].map((name) => {
        const pad = now.pads.find((one) => one.name === name);
        const [x, y] = place(pad?.shaft ?? -1);
        return <Snap key={name} width={sheet.width} says={`neck of ${name} broken`} x={x + 16} y={y - 16} hold={(one) => keep(held.current.necks, name, one)} />;
      })}
      {[...course.teeth.keys()].map((shaft) => {
        const [x, y] = place(shaft), from = now.shafts[now.shafts[shaft]?.driver ?? -1];
        return <Snap key={shaft} width={sheet.width} says="teeth broken" x={(x + toX(sheet, from?.x ?? 0)) / 2} y={(y + toY(sheet, from?.y ?? 0)) / 2} hold={(one) => keep(held.current.teeth, shaft, one)} />;
      })}
    </svg>
  );
}
