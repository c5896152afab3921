// What does the page know, and what is chosen in it?
import { computed, signal } from "@preact/signals";
import type { Finding, Gear, Pad, Progress, Shaft, State, View } from "../wire/view";

export const VIEWS = ["Behind", "Front", "Unrolled", "In space", "Section", "Selectivity", "Float", "Effects", "Start", "Seizure", "Modes", "Warming", "Learn", "Arrange", "Compare"] as const;
export type ViewName = (typeof VIEWS)[number];
export const GROUNDS = ["light", "dark", "contrast"] as const;
export type Ground = (typeof GROUNDS)[number];
export type Leaf = "findings" | "file";
export type Units = "metric" | "us";

/** What an act did to the findings that somebody has to answer. */
export interface After { broke: Finding[]; closed: Finding[] }

export const state = signal<State | null>(null);
export const view = signal<View | null>(null);
/** What went wrong last, or was done last, in one sentence; spoken too. */
export const told = signal<{ says: string; bad: boolean; after?: After } | null>(null);
export const busy = signal(0);
/** Fingerprints of what the last act broke. */
export const fresh = signal<ReadonlySet<string>>(new Set());

export const viewName = signal<ViewName>("Behind");
export const condition = signal(0);
/** Index of the chosen shaft; -1: none. */
export const chosen = signal(-1);
/** Address of the shaft that the keyboard holds, to be put elsewhere. */
export const carried = signal<string | null>(null);
export const finding = signal<string | null>(null);
/** Address whose working is open. */
export const working = signal<string | null>(null);
export const leaf = signal<Leaf>("findings");
/** Line that the file shall show. */
export const line = signal(0);
export const ground = signal<Ground>("light");
export const units = signal<Units>("metric");
export const turning = signal(false);
export const asTable = signal(false);
/** The spool whose box fills the picture; "": all of the drive; null: whatever can be read. */
export const closeTo = signal<string | null>(null);
/** Number of the failure whose effect is shown; null: that of the chosen shaft. */
export const failing = signal<number | null>(null);
/** How the search that runs has come along, newest last. */
export const course = signal<Progress[]>([]);
export const arrangeFor = signal<string | null>(null);

/** What the frame of the page asks: it need not be drawn again with every act. */
export const hasView = computed(() => view.value !== null);
/** The newest text could not be computed. */
export const unreadable = computed(() => state.value !== null && state.value.computed !== state.value.serial);
export const caution = computed(() => view.value?.caution ?? "");
export const conditionName = computed(() => view.value?.conditions[condition.value] ?? "");

export function boxShafts(now: View): { shaft: Shaft; index: number }[] {
  return now.shafts
    .map((shaft, index) => ({ shaft, index }))
    .filter((one) => one.shaft.kind === "box")
    .sort((a, b) => a.shaft.number - b.shaft.number);
}

export function padsOf(now: View, shaft: number): Pad[] {
  return now.pads.filter((pad) => pad.shaft === shaft);
}

export function mainGear(now: View, shaft: number): Gear | undefined {
  return now.gears.find((gear) => gear.shaft === shaft && gear.role === "main");
}

/** Does it stand open, and is it more than a note? */
export function counts(one: Finding): boolean {
  return one.state !== "waived" && (one.level !== "note" || one.state === "not computable");
}

/** Open findings first by their order from the server. */
export function findingsOf(now: View, shaft: number): Finding[] {
  return now.findings.filter((one) => one.shaft === shaft);
}

export function shaftAt(now: View, address: string): number {
  return now.shafts.findIndex((one) => one.address === address);
}
