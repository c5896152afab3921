// At what scale, and where on the screen, does everything of the face view stand?
import type { View } from "../wire/view";

export interface Sheet {
  width: number; height: number;
  /** px a metre */
  k: number;
  /** +1 as from behind, -1 mirrored as from the front */
  side: 1 | -1;
  ox: number; oy: number;
}

const WALL = 0.008;

interface Bounds { left: number; right: number; low: number; high: number }

function hold(all: Bounds, x: number, y: number, r: number): void {
  all.left = Math.min(all.left, x - r);
  all.right = Math.max(all.right, x + r);
  all.low = Math.min(all.low, y - r);
  all.high = Math.max(all.high, y + r);
}

export function bodyRadius(now: View, shaft: number): number {
  return Math.max(0, ...now.pads.filter((pad) => pad.shaft === shaft).map((pad) => pad.radius ?? 0));
}

function boundsOfBox(now: View, side: number, spool: string): Bounds {
  const all: Bounds = { left: Infinity, right: -Infinity, low: Infinity, high: -Infinity };
  now.shafts.forEach((shaft, index) => {
    if (shaft.kind === "box" && shaft.spool === spool && shaft.x !== null && shaft.y !== null)
      hold(all, side * shaft.x, shaft.y, Math.max(shaft.r + WALL, bodyRadius(now, index)) * 1.08);
  });
  return all;
}

function boundsOf(now: View, side: number): Bounds {
  const all: Bounds = { left: 0, right: 0, low: 0, high: 0 };
  hold(all, 0, 0, 0.06);
  now.shafts.forEach((shaft, index) => {
    if (shaft.kind === "box" && shaft.x !== null && shaft.y !== null)
      hold(all, side * shaft.x, shaft.y, Math.max(shaft.r + WALL, bodyRadius(now, index)));
  });
  for (const one of now.engine.keep_outs)
    if (one.x !== null && one.y !== null) hold(all, side * one.x, one.y, one.r ?? 0);
  return all;
}

/** Spools that have a box of their own, in the order of the file. */
export function spoolsWithBox(now: View): string[] {
  return now.spools.map((one) => one.name).filter((name) => now.shafts.some((shaft) => shaft.kind === "box" && shaft.spool === name && shaft.x !== null));
}

/** Where the teeth of the whole would be too small to be seen, the box with most shafts is shown. */
export function chooseClose(now: View, width: number, height: number): string {
  const whole = layOut(now, width, height, 1, "");
  const radii = now.shafts.filter((one) => one.kind === "box").map((one) => one.r * whole.k);
  if (radii.length === 0 || radii.reduce((sum, r) => sum + r, 0) / radii.length >= 18) return "";
  const count = (name: string): number => now.shafts.filter((one) => one.kind === "box" && one.spool === name).length;
  return spoolsWithBox(now).sort((a, b) => count(b) - count(a))[0] ?? "";
}

const ROOM = 26, LEAST_ROOM = 8, LEAST_FILLED = 0.9;

function boundsIn(now: View, side: 1 | -1, close: string): Bounds {
  const box = close === "" ? null : boundsOfBox(now, side, close);
  return box !== null && Number.isFinite(box.left) ? box : boundsOf(now, side);
}

/** `close`: the spool whose box fills the sheet; "": all of it. */
export function layOut(now: View, width: number, height: number, side: 1 | -1, close: string): Sheet {
  const all = boundsIn(now, side, close);
  const k = Math.max(1, Math.min((width - 2 * ROOM) / (all.right - all.left), (height - 2 * ROOM) / (all.high - all.low)));
  return {
    width, height, k, side,
    ox: width / 2 - (k * (all.left + all.right)) / 2,
    oy: height / 2 + (k * (all.low + all.high)) / 2,
  };
}

/** The sheet that was there before, while the drive still fits it well: what an act does not move stands still. */
export function keepSheet(had: Sheet | null, next: Sheet, now: View, close: string): Sheet {
  if (had === null || had.width !== next.width || had.height !== next.height || had.side !== next.side || had.k < LEAST_FILLED * next.k) return next;
  const all = boundsIn(now, had.side, close);
  const inside = had.ox + all.left * had.k >= LEAST_ROOM && had.ox + all.right * had.k <= had.width - LEAST_ROOM
    && had.oy - all.high * had.k >= LEAST_ROOM && had.oy - all.low * had.k <= had.height - LEAST_ROOM;
  return inside ? had : next;
}

export function toX(sheet: Sheet, x: number): number {
  return sheet.ox + sheet.side * x * sheet.k;
}

export function toY(sheet: Sheet, y: number): number {
  return sheet.oy - y * sheet.k;
}
