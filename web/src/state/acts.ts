// What can be done from the page?  Every act is one step that can be taken back.
import { batch } from "@preact/signals";
import { get, post, type Answer } from "../wire/ask";
import type { Edit, Finding, Pad, Shaft, Side, State, View } from "../wire/view";
import { boxShafts, busy, carried, chosen, condition, counts, course, fresh, mainGear, padsOf, shaftAt, state, told, units, view, type After } from "./store";

let asked = 0;
let kept: { units: string; view: View } | null = null;

interface Delta { seen: string; whole: Partial<View>; parts: Record<string, Record<string, unknown>> }

/** Findings come and go, so that their list comes whole: those that are as they were stay the same objects. */
function sameFindings(had: Finding[], next: Finding[]): Finding[] {
  const old = new Map(had.map((one) => [one.fingerprint, one]));
  return next.map((one) => {
    const before = old.get(one.fingerprint);
    return before !== undefined && JSON.stringify(before) === JSON.stringify(one) ? before : one;
  });
}

/** The view that was seen, with what has changed since; what has not is the same object as before. */
function changed(had: View, delta: Delta): View {
  const next = { ...had, ...delta.whole } as unknown as Record<string, unknown>;
  for (const [name, items] of Object.entries(delta.parts)) {
    const list = [...(next[name] as unknown[])];
    for (const [index, item] of Object.entries(items)) list[Number(index)] = item;
    next[name] = list;
  }
  if (delta.whole.findings !== undefined) next["findings"] = sameFindings(had.findings, delta.whole.findings);
  return next as unknown as View;
}

/** What is asked with, so that only what has changed is told. */
function known(): { units: string; seen?: string } {
  return kept !== null && kept.units === units.value ? { units: units.value, seen: kept.view.sha256 } : { units: units.value };
}

/** False: it is a change of a view that is not here. */
function takeView(got: View | Delta, wanted: string): boolean {
  const had = kept !== null && kept.units === wanted ? kept.view : null;
  const next = !("seen" in got) ? got : had !== null && got.seen === had.sha256 ? changed(had, got) : null;
  if (next === null) {
    kept = null;
    return false;
  }
  kept = { units: wanted, view: next };
  keepChoice(next);
  return true;
}

/** The picture of the newest text; an older answer that comes late is dropped. */
export async function loadView(): Promise<void> {
  const mine = ++asked, wanted = units.value;
  const got = await get<View | Delta>("/api/view", known());
  if (mine !== asked) return;
  if (got.body === null || got.status !== 200) {
    if (got.status !== 409) told.value = { says: got.says ?? "the drive cannot be shown", bad: true };
    return;
  }
  if (!takeView(got.body, wanted)) return loadView();
}

/** The chosen shaft stays chosen by its name, for an act may have moved it. */
function keepChoice(next: View): void {
  const before = view.value;
  if (before === null) condition.value = next.most_power;
  if (before !== null && chosen.value >= 0) {
    const shaft = before.shafts[chosen.value];
    const same = next.shafts.findIndex((one) => one.kind === shaft?.kind && one.name === shaft?.name);
    const there = next.shafts.findIndex((one) => one.address === shaft?.address);
    chosen.value = same >= 0 ? same : there;
  }
  if (condition.value >= next.conditions.length) condition.value = next.most_power;
  view.value = next;
}

export async function loadState(): Promise<void> {
  const got = await get<State>("/api/state");
  if (got.status === 200 && got.body !== null) await take(got.body, units.value);
  else told.value = { says: got.says ?? "the server does not answer", bad: true };
}

/** True: the view of this state is here too.  The page is drawn once for all that `with_it` changes as well. */
function takeAtOnce(next: State & { view?: View | Delta }, wanted: string, with_it?: () => void): boolean {
  return batch(() => {
    const before = state.value;
    state.value = next;
    if (before?.search.state === "runs" && next.search.state === "ended") told.value = { says: "The search has ended; what it found stands in Arrange.", bad: false };
    let here = before !== null && before.computed === next.computed && view.value !== null;
    if (next.view !== undefined && wanted === units.value) {
      asked++;
      here = takeView(next.view, wanted) || here;
    }
    if (here) with_it?.();
    return here;
  });
}

async function take(next: State & { view?: View | Delta }, wanted: string, with_it?: () => void): Promise<void> {
  if (takeAtOnce(next, wanted, with_it)) return;
  await loadView();
  if (with_it !== undefined) batch(with_it);
}

function compared(before: View | null): After {
  const now = view.value;
  if (before === null || now === null) return { broke: [], closed: [] };
  const had = new Set(before.findings.filter(counts).map((one) => one.fingerprint));
  const has = new Set(now.findings.filter(counts).map((one) => one.fingerprint));
  return {
    broke: now.findings.filter((one) => counts(one) && !had.has(one.fingerprint)),
    closed: before.findings.filter((one) => counts(one) && !has.has(one.fingerprint)),
  };
}

async function change(path: string, body: object, done: (next: State) => string): Promise<boolean> {
  const base = state.value?.serial ?? 0, wanted = units.value;
  busy.value++;
  const before = view.value;
  const got: Answer<State> = await post<State>(path, { base, ...known(), ...body });
  const next = got.body;
  if (got.status === 200 && next !== null) {
    await take(next, wanted, () => {
      const after = compared(before);
      fresh.value = new Set(after.broke.map((one) => one.fingerprint));
      told.value = { says: done(next), bad: next.computed !== next.serial, after };
    });
  } else if (got.status === 409 && next !== null && "serial" in next) {
    await take(next, wanted, () => {
      told.value = { says: "The file was changed by another hand meanwhile, so nothing was done. Look at it and try again; undo takes that change back.", bad: true };
    });
  } else {
    told.value = { says: `Nothing was changed: ${got.says ?? "no answer"}`, bad: true };
  }
  busy.value--;
  return got.status === 200;
}

let turn: Promise<unknown> = Promise.resolve();

/** What is asked for while an act is on its way waits, and is then made of the drive as the act left it. */
export function inTurn(work: () => Promise<unknown> | void): void {
  turn = busy.value === 0 ? Promise.resolve(work()) : turn.then(settled).then(work);
}

function settled(): Promise<void> {
  return new Promise((done) => {
    const look = (): void => { if (busy.value === 0) done(); else window.setTimeout(look, BUSY_MS); };
    look();
  });
}

export function act(edits: Edit[], says: string): Promise<boolean> {
  return change("/api/act", { edits, says }, () => `Done: ${says}.`);
}

export function undo(): Promise<boolean> {
  const what = state.value?.undo;
  if (!what) return Promise.resolve(false);
  return change("/api/undo", {}, () => `Taken back: ${what}.`);
}

export function redo(): Promise<boolean> {
  const what = state.value?.redo;
  if (!what) return Promise.resolve(false);
  return change("/api/redo", {}, () => `Done again: ${what}.`);
}

export function putText(text: string): Promise<boolean> {
  return change("/api/text", { text }, (next) => `The text was put into the file${next.computed === next.serial ? "." : "; it cannot be computed, and the drive is shown as it was before."}`);
}

// ---- acts on the machine ----------------------------------------------------------------------

let pending: { address: string; teeth: number; timer: number } | null = null;
const REST_MS = 180, BUSY_MS = 4;

/** Teeth are counted up while the wheel turns; when it rests, that is one act.  A key is an act at once, or as soon as the last is done. */
export function changeTeeth(shaft: number, by: number, rests: boolean): void {
  const now = view.value;
  const gear = now === null ? undefined : mainGear(now, shaft);
  if (gear === undefined || now === null) return;
  const address = `${now.shafts[shaft]?.address}/teeth`;
  const from = pending?.address === address ? pending.teeth : gear.teeth;
  if (pending !== null) window.clearTimeout(pending.timer);
  const teeth = Math.max(3, from + by);
  if (rests) told.value = { says: `${now.shafts[shaft]?.name}: ${teeth} teeth`, bad: false };
  const put = (): void => {
    if (busy.value > 0 && pending !== null) {
      pending.timer = window.setTimeout(put, BUSY_MS);
      return;
    }
    pending = null;
    const was = view.value === null ? gear.teeth : mainGear(view.value, shaft)?.teeth ?? gear.teeth;
    if (teeth !== was) void act([{ at: address, to: String(teeth) }], `${now.shafts[shaft]?.name}: ${was} to ${teeth} teeth`);
  };
  pending = { address, teeth, timer: 0 };
  if (rests) pending.timer = window.setTimeout(put, REST_MS);
  else put();
}

export function otherFace(pad: Pad): Promise<boolean> {
  const now = view.value;
  if (now === null) return Promise.resolve(false);
  const to = pad.face === "front" ? "rear" : "front";
  const at = pad.address.replace(/\/(front|rear)$/, `/${to}`);
  const there = now.pads.find((one) => one.shaft === pad.shaft && one.face === to);
  const edits: Edit[] = [{ at: pad.address, gone: true }];
  if (there !== undefined) edits.push({ at: there.address, gone: true });
  edits.push({ at, to: pad.name });
  if (there?.accessory !== undefined) edits.push({ at: pad.address, to: there.name });
  return act(edits, `${pad.name} to the ${to}${there?.accessory !== undefined ? `, ${there.name} to the ${pad.face}` : ""}`);
}

/** A shaft of a branch stands at ".../clockwise/2". */
export function branchOf(address: string): { branch: string; place: number } | null {
  const found = /^(.*\/(?:clockwise|anticlockwise))\/(\d+)$/.exec(address);
  return found === null ? null : { branch: found[1] ?? "", place: Number(found[2]) };
}

export function branchLength(now: View, branch: string): number {
  return boxShafts(now).filter((one) => branchOf(one.shaft.address)?.branch === branch).length;
}

export function moveShaft(shaft: number, place: number): Promise<boolean> {
  const now = view.value;
  const one = now?.shafts[shaft];
  if (one === undefined) return Promise.resolve(false);
  return act([{ at: one.address, place }], `${one.name} to place ${place} of its branch`);
}

/** The words of a shaft in the file, where they stand on one line. */
function wordsOf(one: Shaft): string | null {
  const line = state.value?.text.split("\n")[one.line - 1] ?? "";
  const found = /^\s*-\s*(\{.*\})\s*(?:#.*)?$/.exec(line)?.[1] ?? null;
  const open = found?.split("{").length ?? 0, shut = found?.split("}").length ?? 0;
  return open === shut ? found : null;
}

/** A shaft to the place that another has now, in another branch or in another box. */
export function moveToBranch(shaft: number, target: number): Promise<boolean> {
  const now = view.value;
  const from = now?.shafts[shaft], to = branchOf(now?.shafts[target]?.address ?? "");
  if (now === null || from === undefined || to === null) return Promise.resolve(false);
  const words = wordsOf(from);
  if (words === null) {
    told.value = { says: `${from.name} is told on several lines of the file; move it there.`, bad: true };
    return Promise.resolve(false);
  }
  const last = branchLength(now, to.branch) + 1;
  return act([{ at: `${to.branch}/${last}`, to: words }, { at: `${to.branch}/${last}`, place: to.place }, { at: from.address, gone: true }], `${from.name} to place ${to.place} of ${to.branch}`);
}

/** An accessory to a free pad of another shaft, or in exchange. */
export function movePad(pad: Pad, shaft: number): Promise<boolean> {
  const now = view.value;
  const target = now?.shafts[shaft];
  if (now === null || target === undefined) return Promise.resolve(false);
  const at = `${target.address}/${pad.face}`;
  const there = now.pads.find((one) => one.shaft === shaft && one.face === pad.face);
  const edits: Edit[] = [{ at: pad.address, gone: true }];
  if (there !== undefined) edits.push({ at: there.address, gone: true });
  edits.push({ at, to: pad.name });
  if (there?.accessory !== undefined) edits.push({ at: pad.address, to: there.name });
  return act(edits, `${pad.name} to shaft ${target.number}`);
}

/** The accessory that goes along when a shaft is taken hold of on this face. */
export function padInHand(now: View, shaft: number, near: Side): Pad | undefined {
  const pads = padsOf(now, shaft).filter((pad) => pad.accessory !== undefined);
  return pads.find((one) => one.face === near) ?? pads[0];
}

/** A shaft is put on another: within its branch it takes the place, else its accessory goes there, else the shaft itself. */
export function dropOn(shaft: number, target: number, near: Side): Promise<boolean> {
  const now = view.value;
  const from = now?.shafts[shaft], to = now?.shafts[target];
  if (now === null || from === undefined || to === undefined) return Promise.resolve(false);
  const own = branchOf(from.address), there = branchOf(to.address), pad = padInHand(now, shaft, near);
  if (own !== null && there !== null && own.branch === there.branch) return moveShaft(shaft, there.place);
  if (pad !== undefined) return movePad(pad, target);
  if (own !== null && there !== null) return moveToBranch(shaft, target);
  told.value = { says: "An idler is dropped on a shaft of a branch, and takes its place.", bad: true };
  return Promise.resolve(false);
}

/** The hand of the keyboard: takes hold of the chosen shaft, or puts what it holds on the chosen one. */
export function carry(near: Side): Promise<unknown> | void {
  const now = view.value, at = now?.shafts[chosen.value];
  if (now === null || at === undefined || at.kind !== "box") {
    told.value = { says: "Choose a shaft first.", bad: true };
    return;
  }
  const held = carried.value === null ? -1 : shaftAt(now, carried.value);
  if (held < 0) {
    carried.value = at.address;
    told.value = { says: `${at.name} is held. Choose the shaft on which it shall go with the arrow keys or the mouse, and press M again; Escape lets it go.`, bad: false };
    return;
  }
  if (held === chosen.value) return letGo();
  carried.value = null;
  return dropOn(held, chosen.value, near);
}

export function letGo(): void {
  carried.value = null;
  told.value = { says: "It is let go; nothing was changed.", bad: false };
}

export function waive(one: Finding, why: string, by: string): Promise<boolean> {
  const now = view.value;
  if (now === null) return Promise.resolve(false);
  const text = `{rule: ${JSON.stringify(one.rule)}, at: ${JSON.stringify(one.address ?? "")}, why: ${JSON.stringify(why)}, by: ${JSON.stringify(by)}}`;
  const edit: Edit = now.waivers > 0 ? { at: `waived/${now.waivers + 1}`, to: text } : { at: "waived", to: `[${text}]` };
  return act([edit], `waived ${one.rule} at ${one.address ?? ""}`);
}

export function unwaive(one: Finding): Promise<boolean> {
  if (one.waiver === null || view.value === null) return Promise.resolve(false);
  const at = view.value.waivers === 1 ? "waived" : one.waiver;
  return act([{ at, gone: true }], `the waiver of ${one.rule} removed`);
}

/** What was decided and why stands in the register of the file. */
export function decide(what: string, why: string): Promise<boolean> {
  const now = view.value;
  if (now === null) return Promise.resolve(false);
  const text = `{says: ${JSON.stringify(what)}, at: accessories, source: ${JSON.stringify(why)}}`;
  const edit: Edit = now.assumptions > 0 ? { at: `assumptions/${now.assumptions + 1}`, to: text } : { at: "assumptions", to: `[${text}]` };
  return act([edit], `decided: ${what}`);
}

/** `stays`: addresses of the pads whose accessories stay where they are. */
export function beginSearch(stays: string[], seconds: number): Promise<boolean> {
  course.value = [];
  const keep = stays;
  return change("/api/arrange", { keep, seconds }, () => "The search has begun.");
}

export function stopSearch(): Promise<boolean> {
  return change("/api/arrange/stop", {}, () => "The search ends with what it has.");
}

export function takeAnswer(answer: number): Promise<boolean> {
  return change("/api/arrange/take", { answer }, () => `Arrangement ${answer + 1} was put into the file; undo brings the old one back.`);
}
