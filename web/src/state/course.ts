// What happens in time, ready to be played: where everything has turned to, what bears how much.
import type { Mode, Seizure, SeizeRun, Start, Tree, Warm, WarmDrive } from "../wire/course";
import type { Over, View } from "../wire/view";

export interface Line { name: string; unit: string; values: (number | null)[] }
export interface Moment { t: number; says: string; grave: boolean }
/** One shaft, or the rotor of an accessory, on its way. */
export interface Turner { shaft: number; accessory: string | null; speed: Float64Array; angle: Float64Array }

export interface Course {
  title: string; ended: string; t: Float64Array; until: number;
  turners: Turner[]; speeds: Line[]; loads: Line[]; moments: Moment[];
  /** Of what bears it, by shaft: from the mesh that drives it. */
  share: Map<number, (number | null)[]>;
  /** From this moment on the neck before that accessory, or the mesh that drives that shaft, is broken. */
  necks: Map<string, number>; teeth: Map<number, number>;
}

const RPM = 60 / (2 * Math.PI);

function sum(t: Float64Array, speed: Float64Array): Float64Array {
  const out = new Float64Array(t.length);
  for (let i = 1; i < t.length; i++) out[i] = (out[i - 1] ?? 0) + 0.5 * ((speed[i] ?? 0) + (speed[i - 1] ?? 0)) * ((t[i] ?? 0) - (t[i - 1] ?? 0));
  return out;
}

function numbers(all: (number | null)[], times = 1): Float64Array {
  return Float64Array.from(all, (one) => (one ?? 0) * times);
}

/** Where in the course a time is: the sample before it, and how far to the next. */
export function placeAt(t: Float64Array, time: number): [number, number] {
  let low = 0, high = t.length - 1;
  while (high - low > 1) {
    const middle = (low + high) >> 1;
    if ((t[middle] ?? 0) <= time) low = middle;
    else high = middle;
  }
  const from = t[low] ?? 0, to = t[high] ?? 0;
  return [low, to > from ? Math.min(1, Math.max(0, (time - from) / (to - from))) : 0];
}

/** rad, exact between samples for a speed that changes evenly there. */
export function angleAt(course: Course, of: Turner, time: number): number {
  const [i, part] = placeAt(course.t, time);
  const span = (course.t[i + 1] ?? course.t[i] ?? 0) - (course.t[i] ?? 0);
  const from = of.speed[i] ?? 0, to = of.speed[i + 1] ?? from;
  return (of.angle[i] ?? 0) + span * part * (from + 0.5 * part * (to - from));
}

export function valueAt(course: Course, all: ArrayLike<number | null>, time: number): number | null {
  const [i, part] = placeAt(course.t, time);
  const from = all[i] ?? null, to = all[i + 1] ?? from;
  return from === null || to === null ? null : from + part * (to - from);
}

export function courseOfStart(now: View, start: Start): Course | null {
  const trace = start.trace;
  if (trace === undefined || trace.t.length < 2) return null;
  const t = Float64Array.from(trace.t);
  const spool = new Map(trace.spools.map((one) => [one.of, numbers(one.speed)]));
  const turners = now.shafts.map((shaft, index): Turner => {
    const of = spool.get(shaft.spool) ?? new Float64Array(t.length);
    const speed = of.map((one) => one * Math.abs(shaft.turns));
    return { shaft: index, accessory: null, speed, angle: sum(t, speed) };
  });
  const share = new Map<number, (number | null)[]>();
  trace.shafts.forEach((row, index) => {
    const bears = start.shafts?.[index]?.bears ?? null;
    if (bears !== null && bears > 0) share.set(row.shaft, row.T.map((one) => (one === null ? null : Math.abs(one) / bears)));
  });
  const broken = new Map<string, number>();
  for (const neck of start.necks ?? []) {
    const row = trace.pads.find((one) => one.of === neck.of);
    const at = row?.T.findIndex((one) => one !== null && neck.breaks_from !== null && Math.abs(one) >= neck.breaks_from) ?? -1;
    if (at >= 0) broken.set(neck.of, t[at] ?? 0);
  }
  return {
    title: "the start", ended: start.outcome ?? "not computed", t, until: t[t.length - 1] ?? 0, turners, share, necks: broken, teeth: new Map(),
    speeds: trace.spools.map((one) => ({ name: `${one.of} spool`, unit: "rpm" as const, values: one.speed.map((w) => (w === null ? null : w * RPM)) })),
    loads: trace.shafts.map((row): Line => ({ name: row.of, unit: "%", values: (share.get(row.shaft) ?? []).map((one) => (one === null ? null : one * 100)) })).filter((one) => one.values.length > 0),
    moments: (start.events ?? []).filter((one) => one.t !== null).map((one) => ({ t: one.t ?? 0, says: `${one.of} ${one.what}`, grave: one.what === "hangs" })),
  };
}

const UNSEEN = new Set(["leading flanks meet", "trailing flanks meet", "flanks part"]);

export function courseOfSeizure(now: View, all: Seizure, run: SeizeRun, condition: number): Course | null {
  const trace = run.trace;
  if (trace === undefined || trace.t.length < 2) return null;
  const t = Float64Array.from(trace.t);
  const inTree = new Map<number, Float64Array>();
  for (const body of trace.bodies) if (body.accessory === undefined) inTree.set(body.shaft, numbers(body.speed));
  const turners = now.shafts.map((shaft, index): Turner => {
    const steady = ((shaft.speed[condition] ?? 0) / RPM);
    const speed = inTree.get(index) ?? new Float64Array(t.length).fill(steady);
    return { shaft: index, accessory: null, speed, angle: sum(t, speed) };
  });
  for (const body of trace.bodies) {
    if (body.accessory === undefined) continue;
    const speed = numbers(body.speed);
    turners.push({ shaft: body.shaft, accessory: body.accessory, speed, angle: sum(t, speed) });
  }
  const share = new Map<number, (number | null)[]>();
  const necks = new Map<string, number>(), teeth = new Map<number, number>();
  trace.springs.forEach((spring, index) => {
    const bears = run.peaks[index]?.bears ?? null, body = trace.bodies[spring.to];
    if (spring.link === "mesh" && bears !== null && bears > 0 && body !== undefined)
      share.set(body.shaft, spring.T.map((one) => (one === null ? null : Math.abs(one) / bears)));
    const event = run.events.find((one) => one.what === "breaks" && one.of === spring.of);
    if (event?.t == null || body === undefined) return;
    if (spring.link === "pad") necks.set(body.accessory ?? "", event.t);
    else teeth.set(body.shaft, event.t);
  });
  const flanks = run.events.filter((one) => UNSEEN.has(one.what)).length;
  return {
    title: `${all.accessory} seizes, ${run.run}`,
    ended: `${run.cut_off.length > 0 ? `No longer driven at the end: ${run.cut_off.join(", ")}` : "Everything is still driven at the end"}${flanks > 0 ? `; flanks parted or met again at least ${flanks} times` : ""}`,
    t, until: t[t.length - 1] ?? 0, turners, share, necks, teeth,
    speeds: trace.bodies.map((one) => ({ name: one.of, unit: "rpm", values: one.speed.map((w) => (w === null ? null : w * RPM)) })),
    loads: trace.springs.map((one) => ({ name: one.of, unit: "N.m", values: one.T })),
    moments: run.events.filter((one) => one.t !== null && !UNSEEN.has(one.what)).map((one) => ({ t: one.t ?? 0, says: `${one.of ?? all.accessory} ${one.what}${one.T !== null && one.what === "breaks" ? ` at ${Math.abs(one.T).toFixed(0)} N.m` : ""}`, grave: one.what === "breaks" })),
  };
}

const PERIODS = 4, SAMPLES = 48;
/** rad; the largest swing of a mode as it is drawn. */
const DRAWN = (20 * Math.PI) / 180;

/** One natural mode, its largest swing drawn as 20 degrees; torques are shares of the largest. */
export function courseOfMode(now: View, tree: Tree, mode: Mode): Course | null {
  if (!(mode.frequency > 0)) return null;
  const count = PERIODS * SAMPLES, omega = 2 * Math.PI * mode.frequency;
  const t = Float64Array.from({ length: count + 1 }, (_, i) => i / SAMPLES / mode.frequency);
  const wave = Array.from(t, (one) => Math.cos(omega * one)); // it begins furthest out, so that it is seen at rest
  const swing = (body: number): number => mode.shape[body] ?? 0;
  const most = tree.bodies.reduce((far, _, body) => Math.max(far, Math.abs(swing(body))), 0);
  if (most === 0) return null;
  const turner = (shaft: number, accessory: string | null, body: number): Turner => {
    const size = body < 0 ? 0 : (DRAWN * swing(body)) / most;
    return { shaft, accessory, angle: Float64Array.from(wave, (one) => size * one), speed: Float64Array.from(t, (one) => -size * omega * Math.sin(omega * one)) };
  };
  const shaftOf = (body: number): number => now.shafts.findIndex((one) => one.address === tree.bodies[body]?.shaft);
  const rotors = tree.springs.filter((one) => one.link === "pad").map((one) => one.to);
  const turners = now.shafts.map((_, index) => turner(index, null, tree.bodies.findIndex((_body, body) => !rotors.includes(body) && shaftOf(body) === index)));
  for (const body of rotors) turners.push(turner(shaftOf(body), (tree.bodies[body]?.name ?? "").replace(/, rotor$/, ""), body));
  // Seen from the spool, the wind of a spring is the difference of both angles over their ratios.
  const torque = tree.springs.map((one) => {
    const seen = (body: number): number => swing(body) / (tree.bodies[body]?.ratio ?? NaN);
    return ((one.k ?? NaN) * (seen(one.to) - seen(one.from))) / (tree.bodies[one.to]?.ratio ?? NaN);
  });
  const largest = torque.reduce((far, one) => (Math.abs(one) > far ? Math.abs(one) : far), 0);
  const part = (one: number): (number | null)[] => wave.map((at) => (Number.isFinite(one) && largest > 0 ? (one / largest) * at : null));
  const share = new Map<number, (number | null)[]>();
  tree.springs.forEach((one, index) => {
    if (one.link === "mesh") share.set(shaftOf(one.to), part(torque[index] ?? NaN).map((at) => (at === null ? null : 0.999 * Math.abs(at))));
  });
  const percent = (all: (number | null)[]): (number | null)[] => all.map((one) => (one === null ? null : 100 * one));
  const between = (one: Tree["springs"][number]): string => `${tree.bodies[one.from]?.name ?? ""} to ${tree.bodies[one.to]?.name ?? ""}`;
  return {
    title: `it swings at ${mode.frequency.toFixed(1)} Hz`, ended: "", t, until: t[count] ?? 0, turners, share, necks: new Map(), teeth: new Map(),
    speeds: tree.bodies.map((one, body) => ({ name: one.name, unit: "%", values: percent(wave.map((at) => (swing(body) / most) * at)) })),
    loads: tree.springs.map((one, index) => ({ name: between(one), unit: "%", values: percent(part(torque[index] ?? NaN)) })),
    moments: Array.from({ length: 2 * PERIODS + 1 }, (_, i) => ({ t: i / 2 / mode.frequency, says: i % 2 === 0 ? "furthest one way" : "furthest the other way", grave: false })),
  };
}

/** `degrees`: of a temperature in K, as it is shown. */
export function courseOfWarming(now: View, all: Warm, one: WarmDrive, degrees: { unit: string; of: (kelvin: number) => number }): Course | null {
  if (one.t === undefined || one.t.length < 2) return null;
  const t = Float64Array.from(one.t), still = new Float64Array(t.length), share = new Map<number, (number | null)[]>();
  const shown = (name: string, values: Over | undefined): Line => ({ name, unit: degrees.unit, values: (values ?? []).map((at) => (at === null ? null : degrees.of(at))) });
  const plays = (one.plays ?? []).filter((play) => play.low !== undefined);
  for (const play of plays) {
    const first = play.low?.[0] ?? null, shaft = now.shafts.findIndex((of) => of.name === play.driven);
    if (first !== null && first > 0 && shaft >= 0) share.set(shaft, (play.low ?? []).map((at) => (at === null ? null : Math.max(0, 1 - at / first))));
  }
  const moments: Moment[] = [];
  let begun = 0;
  for (const leg of all.legs ?? []) {
    moments.push({ t: begun, says: `${leg.condition} begins`, grave: false });
    begun += leg.duration;
  }
  for (const play of plays) if (play.least_at !== null && play.least !== null) moments.push({ t: play.least_at, says: `least play of ${play.driver} with ${play.driven}`, grave: play.least <= 0 });
  return {
    title: "it grows warm", ended: "", t, until: t[t.length - 1] ?? 0, share, necks: new Map(), teeth: new Map(),
    turners: now.shafts.map((_, shaft) => ({ shaft, accessory: null, speed: still, angle: still })),
    speeds: [shown("oil", one.oil), shown("casing", one.casing), shown("coldest gear", one.gears_least), shown("hottest gear", one.gears_most)].filter((line) => line.values.length > 0),
    loads: plays.map((play) => ({ name: `${play.driver} with ${play.driven}`, unit: "um", values: (play.low ?? []).map((at) => (at === null ? null : at * 1e6)) })),
    moments: moments.sort((a, b) => a.t - b.t),
  };
}
