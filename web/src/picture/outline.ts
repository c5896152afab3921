// What does a gear look like, made of the half tooth that the server gives?
import type { Gear } from "../wire/view";

const KEPT_MOST = 200;
const kept = new Map<string, string>();

/** As below; a gear that only turned on keeps its outline. */
export function outline(gear: Gear, k: number): string {
  const key = `${gear.teeth} ${k} ${gear.half_tooth.join(" ")}`;
  const old = kept.get(key);
  if (old !== undefined) return old;
  const made = trace(gear, k);
  if (kept.size >= KEPT_MOST) kept.clear();
  kept.set(key, made);
  return made;
}

/** The whole outline about its own axis, the middle of tooth 0 straight up; px. */
function trace(gear: Gear, k: number): string {
  const half = gear.half_tooth;
  if (half.length === 0) return "";
  const tooth = [...half, ...half.slice(0, -1).reverse().map(([x, y]): [number, number] => [-x, y])];
  const words: string[] = [];
  for (let i = 0; i < gear.teeth; i++) {
    const turn = (2 * Math.PI * i) / gear.teeth;
    const c = Math.cos(turn);
    const s = Math.sin(turn);
    for (const [x, y] of tooth)
      words.push(`${((x * c - y * s) * k).toFixed(1)},${(-(x * s + y * c) * k).toFixed(1)}`);
  }
  return `M${words.join("L")}Z`;
}
