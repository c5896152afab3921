// What does the server say of starts and seizures?  As start.schema.json and seize.schema.json have it; SI.
import type { Over } from "./view";

export interface StartEvent { t: number | null; what: string; of: string; speed: number | null }
export interface StartPeak { of: string; T: number | null; t: number | null; speed: number | null; bears: number | null; by?: string }
export interface StartNeck { of: string; T: number | null; t: number | null; breaks_from: number | null; breaks_to: number | null }
export interface StartRow { of: string; shaft: number; T: Over }
export interface Start {
  ambient: number | null; oil: number | null; missing?: string; of?: string; outcome?: string; because?: string; t?: number | null;
  spools?: { of: string; cranked: boolean; speed: number | null }[]; events?: StartEvent[]; shafts?: StartPeak[]; pads?: StartPeak[];
  necks?: StartNeck[]; trace?: { t: number[]; spools: { of: string; speed: Over }[]; shafts: StartRow[]; pads: StartRow[] };
}

export interface Mode { frequency: number; shape: Over }
export interface Tree {
  spool: string; state: string; bodies: { name: string; shaft: string; ratio: number | null }[];
  springs: { link: "shaft" | "mesh" | "pad"; from: number; to: number; k: number | null }[]; modes: Mode[]; missing?: string;
}
export interface Twist { trees: Tree[] }

export interface WarmPlay { driver: string; driven: string; missing?: string; least: number | null; least_at: number | null; low?: Over; high?: Over }
export interface WarmDrive {
  of: string; missing?: string; within?: boolean; t?: number[]; oil?: Over; casing?: Over; gears_least?: Over; gears_most?: Over; plays?: WarmPlay[];
}
export interface Warm { soak: number | null; ambient: number | null; missing?: string; legs?: { condition: string; duration: number }[]; drives?: WarmDrive[] }

export interface SeizeEvent { t: number | null; what: string; of?: string; T: number | null }
export interface SeizePeak { of: string; steady: number | null; before: number | null; after: number | null; bears: number | null; by?: string; broken: boolean }
export interface SeizeTrace {
  t: number[]; springs: { of: string; link: "shaft" | "mesh" | "pad"; from: number; to: number; T: Over }[];
  bodies: { of: string; shaft: number; accessory?: string; speed: Over }[];
}
export interface SeizeRun {
  run: string; neck: number | null; until: number | null; because?: string; t?: number | null; events: SeizeEvent[]; peaks: SeizePeak[];
  held: boolean; turns_on: string[]; cut_off: string[]; trace?: SeizeTrace;
}
export interface Seizure { accessory: string; condition: string; speed: number | null; because?: string; of?: string; runs: SeizeRun[] }
