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

function clashes(now: View, sheet: Sheet): string[] {
  const { bodies, outs } = discs(now, sheet);
  const found: string[] = [];
  bodies.forEach((a, index) => {
    for (const b of [...bodies.slice(index + 1), ...outs])
      if (a.face === b.face || b.face === "both") found.push(lens(a, b));
  });
  return found.filter((one) => one !== "");
}

export function Overlaps(props: { now: View; sheet: Sheet }) {
  const { now, sheet } = props;
  const all = useMemo(() => clashes(now, sheet), [now, sheet]);
  return <g aria-hidden="true">{all.map((one) => <path key={one} class="overlap" d={one} />)}</g>;
}
