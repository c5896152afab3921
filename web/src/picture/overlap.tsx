// Where do two bodies want the same room?  Hatched, for hatching means forbidden.
import { useMemo } from "preact/hooks";
import type { View } from "../wire/view";
import { toX, toY, type Sheet } from "./place";

interface Disc { x: number; y: number; r: number; face: string }

/** What two circles share: two arcs, or the smaller circle. */
export function lens(a: Disc, b: Disc): string {
  const far = Math.hypot(b.x - a.x, b.y - a.y);
  if (far >= a.r + b.r) return "";
  const small = a.r < b.r ? a : b;
  if (far <= Math.abs(a.r - b.r)) return `M${small.x - small.r},${small.y}a${small.r},${small.r} 0 1 0 ${2 * small.r},0a${small.r},${small.r} 0 1 0 ${-2 * small.r},0`;
  const along = Math.atan2(b.y - a.y, b.x - a.x), foot = (far * far + a.r * a.r - b.r * b.r) / (2 * far);
  const lean = Math.acos(Math.max(-1, Math.min(1, foot / a.r)));
  const at = (turn: number): string => `${(a.x + a.r * Math.cos(turn)).toFixed(1)},${(a.y + a.r * Math.sin(turn)).toFixed(1)}`;
  const large = foot > far ? 1 : 0;  // the centre of b stands inside of the cap
  return `M${at(along - lean)}A${a.r.toFixed(1)},${a.r.toFixed(1)} 0 ${foot < 0 ? 1 : 0} 1 ${at(along + lean)}A${b.r.toFixed(1)},${b.r.toFixed(1)} 0 ${large} 1 ${at(along - lean)}Z`;
}

function discs(now: View, sheet: Sheet): { bodies: Disc[]; outs: Disc[] } {
  const bodies = now.pads.flatMap((pad): Disc[] => {
    const shaft = now.shafts[pad.shaft];
    return !shaft || shaft.x === null || shaft.y === null || !pad.radius ? []
      : [{ x: toX(sheet, shaft.x), y: toY(sheet, shaft.y), r: pad.radius * sheet.k, face: pad.face }];
  });
  const outs = now.engine.keep_outs.flatMap((one): Disc[] => one.x === null || one.y === null || one.r === null ? []
    : [{ x: toX(sheet, one.x), y: toY(sheet, one.y), r: one.r * sheet.k, face: one.face }]);
  return { bodies, outs };
}

function clashing(now: View, sheet: Sheet): [Disc, Disc][] {
  const { bodies, outs } = discs(now, sheet);
  const found: [Disc, Disc][] = [];
  bodies.forEach((a, index) => {
    for (const b of [...bodies.slice(index + 1), ...outs])
      if ((a.face === b.face || b.face === "both") && Math.hypot(b.x - a.x, b.y - a.y) < a.r + b.r) found.push([a, b]);
  });
  return found;
}

function clashes(now: View, sheet: Sheet): string[] {
  return clashing(now, sheet).map(([a, b]) => lens(a, b)).filter((one) => one !== "");
}

/** Squares about the places that two bodies share: what is written should not hide them. */
export function clashBoxes(now: View, sheet: Sheet): { x: number; y: number; width: number; height: number }[] {
  return clashing(now, sheet).map(([a, b]) => {
    const far = Math.max(1e-6, Math.hypot(b.x - a.x, b.y - a.y)), foot = Math.max(-a.r, Math.min(a.r, (far * far + a.r * a.r - b.r * b.r) / (2 * far)));
    const half = Math.max(4, Math.sqrt(a.r * a.r - foot * foot)), x = a.x + ((b.x - a.x) * foot) / far, y = a.y + ((b.y - a.y) * foot) / far;
    return { x: x - half, y: y - half, width: 2 * half, height: 2 * half };
  });
}

export function Overlaps(props: { now: View; sheet: Sheet }) {
  const { now, sheet } = props;
  const all = useMemo(() => clashes(now, sheet), [now, sheet]);
  return <g aria-hidden="true">{all.map((one) => <path key={one} class="overlap" d={one} />)}</g>;
}
