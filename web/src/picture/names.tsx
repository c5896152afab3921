// What stands on which shaft?  Each name where it covers least of the rest.
import { useMemo } from "preact/hooks";
import { boxShafts, chosen, padsOf } from "../state/store";
import type { View } from "../wire/view";
import { bodyRadius, toX, toY, type Sheet } from "./place";

export interface Box { x: number; y: number; width: number; height: number }
interface Label { index: number; box: Box; lines: string[]; led: [number, number, number, number] | null }

/** A point of a line, and how much heavier than a line it weighs. */
type Struck = [number, number, number];

const LINE = 15, LETTER = 7.2, GAP = 8;
const WAYS = [0, 0.4, -0.4, 0.8, -0.8, 1.2, -1.2, 1.6, -1.6, 2.2, -2.2, Math.PI];

export function shared(a: Box, b: Box): number {
  const width = Math.min(a.x + a.width, b.x + b.width) - Math.max(a.x, b.x);
  const height = Math.min(a.y + a.height, b.y + b.height) - Math.max(a.y, b.y);
  return width > 0 && height > 0 ? width * height : 0;
}

function around(x: number, y: number, r: number): Box {
  return { x: x - r, y: y - r, width: 2 * r, height: 2 * r };
}

/** The box whose nearest edge stands off the point by the gap, in the direction of `turn`. */
function boxAt(x: number, y: number, turn: number, width: number, height: number): Box {
  const c = Math.cos(turn), s = Math.sin(turn);
  return { x: x + GAP * c + (c - 1) * width / 2, y: y + GAP * s + (s - 1) * height / 2, width, height };
}

/** What can be done with a shaft may need a second line, which covers this much of the picture. */
export const STRIP = 26;

const APART = 4;

/** A radial shaft is that much heavier than a line. */
const TOWER = 20;

/** Points every few px along the cowl, the casing and the radial shafts: a name should not stand across a heavy line. */
function heavyLines(now: View, sheet: Sheet): Struck[] {
  const out: Struck[] = [];
  const keep = (x: number, y: number, weight = 1): void => { if (x > 0 && y > 0 && x < sheet.width && y < sheet.height) out.push([x, y, weight]); };
  now.engine.cowl.forEach(([x, y], index) => {
    const next = now.engine.cowl[index + 1];
    if (next === undefined) return;
    const x1 = toX(sheet, x), y1 = toY(sheet, y), x2 = toX(sheet, next[0]), y2 = toY(sheet, next[1]);
    const pieces = Math.max(1, Math.min(400, Math.round(Math.hypot(x2 - x1, y2 - y1) / APART)));
    for (let i = 0; i < pieces; i++) keep(x1 + ((x2 - x1) * i) / pieces, y1 + ((y2 - y1) * i) / pieces);
  });
  for (const shaft of now.shafts) {
    if (shaft.kind !== "tower" || shaft.x === null || shaft.y === null) continue;
    const x = toX(sheet, shaft.x) - sheet.ox, y = toY(sheet, shaft.y) - sheet.oy, pieces = Math.max(1, Math.min(1000, Math.round(Math.hypot(x, y) / APART)));
    for (let i = 0; i < pieces; i++) keep(sheet.ox + (x * i) / pieces, sheet.oy + (y * i) / pieces, TOWER);
  }
  const r = (now.engine.casing ?? 0) * sheet.k, around = Math.min(4000, Math.ceil((2 * Math.PI * r) / APART));
  for (let i = 0; i < around; i++) keep(sheet.ox + r * Math.cos((2 * Math.PI * i) / around), sheet.oy + r * Math.sin((2 * Math.PI * i) / around));
  return out;
}

/** A third of a line of letters, for every px that a heavy line runs through it. */
function struck(box: Box, lines: Struck[]): number {
  let sum = 0;
  for (const [x, y, weight] of lines) if (x > box.x && x < box.x + box.width && y > box.y && y < box.y + box.height) sum += weight;
  return sum * APART * 5;
}

/** What of the box is not on the sheet weighs most, another name next, a part of the machine least. */
function cost(box: Box, sheet: Sheet, names: Label[], parts: Box[], lines: Struck[]): number {
  const inside = shared(box, { x: 4, y: 4, width: sheet.width - 8, height: sheet.height - 4 - STRIP });
  const taken: Box[] = [{ x: 0, y: sheet.height - 76 - STRIP, width: 220, height: 76 + STRIP }, around(sheet.ox, sheet.oy - 30, 70)];
  return 20 * (box.width * box.height - inside) + 8 * [...names.map((one) => one.box), ...taken].reduce((sum, one) => sum + shared(box, one), 0)
    + parts.reduce((sum, one) => sum + shared(box, one), 0) + struck(box, lines);
}

/** A name well aside of the direction away from the engine is led to its gear. */
const LED_FROM = 0.8;

function leader(box: Box, x: number, y: number, r: number): [number, number, number, number] {
  const from = [Math.max(box.x, Math.min(box.x + box.width, x)), Math.max(box.y, Math.min(box.y + box.height, y))] as const;
  const far = Math.max(1, Math.hypot(from[0] - x, from[1] - y)), to = Math.min(0.7 * r, far);
  return [from[0], from[1], x + ((from[0] - x) * to) / far, y + ((from[1] - y) * to) / far];
}

function labels(now: View, sheet: Sheet): Label[] {
  const all = boxShafts(now).filter(({ shaft }) => shaft.x !== null && shaft.y !== null);
  const half = Math.SQRT1_2;  // of a circle the square inside counts
  const parts = all.map(({ shaft, index }) => around(toX(sheet, shaft.x ?? 0), toY(sheet, shaft.y ?? 0), Math.max(shaft.r, bodyRadius(now, index)) * sheet.k * half));
  const lines = heavyLines(now, sheet);
  const out: Label[] = [];
  for (const { shaft, index } of all) {
    const words = padsOf(now, index).filter((pad) => pad.accessory !== undefined).map((pad) => `${pad.name}, ${pad.face}`);
    if (words.length === 0) continue;
    const x = toX(sheet, shaft.x ?? 0), y = toY(sheet, shaft.y ?? 0), r = Math.max(shaft.r, bodyRadius(now, index)) * sheet.k;
    const width = LETTER * Math.max(...words.map((one) => one.length)), height = LINE * words.length;
    const outwards = Math.atan2(y - sheet.oy, x - sheet.ox);
    let best: Label | null = null, least = Infinity;
    WAYS.forEach((way, rank) => {
      const turn = outwards + way, near: [number, number] = [x + r * Math.cos(turn), y + r * Math.sin(turn)];
      const box = boxAt(near[0], near[1], turn, width, height);
      const bad = cost(box, sheet, out, parts, lines) + 60 * rank;
      if (bad < least) {
        least = bad;
        best = { index, box, lines: words, led: Math.abs(way) < LED_FROM ? null : leader(box, x, y, shaft.r_main * sheet.k) };
      }
    });
    if (best !== null) out.push(best);
  }
  return out;
}

/** Names of accessories beside their shafts; the table of shafts has them too. */
export function Names(props: { now: View; sheet: Sheet }) {
  const { now, sheet } = props;
  const all = useMemo(() => labels(now, sheet), [now, sheet]);
  return (
    <g aria-hidden="true" class="names">
      {all.map(({ index, led }) => led !== null && <g key={`to ${index}`} class="led"><line x1={led[0]} y1={led[1]} x2={led[2]} y2={led[3]} /><circle cx={led[2]} cy={led[3]} r={2} /></g>)}
      {all.map(({ index, box, lines }) => lines.map((one, row) => (
        <text key={`${index} ${row}`} class={index === chosen.value ? "label strong" : "label"} text-anchor="middle" x={box.x + box.width / 2} y={box.y + LINE * row + 12}>{one}</text>
      )))}
    </g>
  );
}
