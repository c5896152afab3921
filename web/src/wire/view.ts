// What does the server say?  As docs/schema/view.schema.json, why.schema.json and docs/server.md have it.

/** One value for each condition; null where nothing is known. */
export type Over = (number | null)[];
export type Turn = "cw" | "ccw";
export type Side = "front" | "rear";

export interface Spool { name: string; address: string; sense: number; speed: Over; power: Over }

export interface Shaft {
  name: string; kind: "spool" | "tower" | "box"; address: string; line: number; number: number;
  spool: string; driver: number; x: number | null; y: number | null; r: number; r_main: number;
  turns: number; sense: number; speed: Over; outside?: number | null;
}

export interface Gear {
  shaft: number; role: "bevel" | "main" | "step"; address: string; teeth: number; plane: number;
  face: number | null; r: number; r_tip: number; r_root: number | null; phase: number; half_tooth: [number, number][];
}

export interface Mesh {
  kind: "bevel" | "cylindrical"; address: string; driver: number; driven: number;
  fault: string | null; r_1: number | null; power: Over;
}

export interface Pad {
  name: string; address: string; shaft: number; face: Side; turns: Turn | null;
  accessory?: string; wanted?: Turn | null; radius?: number | null; length?: number | null;
  power: Over; torque: Over;
}

export interface KeepOut { name: string; address: string; x: number | null; y: number | null; r: number | null; face: Side | "both" }
export interface Engine { casing: number | null; cowl: [number, number][]; keep_outs: KeepOut[] }

export type CellState = "absent" | "holds" | "reserve" | "unknown" | "short" | "fails";
export interface Cell {
  state: CellState; margin?: number | null; address?: string | null; finding?: number;
  shaft?: number; working?: string | null; symbol?: string | null; limit?: number | null;
}
export interface MarginRow {
  rule: string; title: string; address: string | null; shaft: number; objects: number;
  least: number; cells: Cell[];
}

export type Level = "refuse" | "warn" | "note";
export interface Finding {
  rule: string; title: string; level: Level; state: "open" | "waived" | "not computable";
  address: string | null; line: number; condition: number; shaft: number; working: string | null;
  symbol: string | null; says: string; remedy: string | null; source: string | null;
  margin: number | null; fingerprint: string; waiver: string | null;
}

export interface View {
  version: string; caution: string; file: string; sha256: string; title: string; revision: string | null;
  says: string; dial: 1 | -1; waivers: number; assumptions: number; unplaced: string[]; units: { speed: string; power: string; torque: string; length: string };
  conditions: string[]; most_power: number; engine: Engine; spools: Spool[]; shafts: Shaft[];
  gears: Gear[]; meshes: Mesh[]; pads: Pad[]; margins: MarginRow[]; findings: Finding[];
}

export interface Message { line: number; column: number; says: string; expected?: string | null; nearest?: string | null }
export interface Messages { messages: Message[] }

export interface Progress { found: number | null; bound: number | null; done: number; count: number; ms: number }
export interface Search { state: "none" | "runs" | "ended"; serial: number; can_take: boolean; progress: Progress | null; takes: boolean[]; answer: unknown }

export interface State {
  serial: number; computed: number; outside: number; steps: number; file: string;
  undo: string | null; redo: string | null; wrong: Messages | null; text: string; search: Search;
}

export type Edit = { at: string; to: string } | { at: string; gone: true } | { at: string; place: number };

export interface Place {
  shaft: string; number: number; address: string; face: Side; other: string | null; here: boolean;
  verdict: string; refuse: number; warn: number; note: number; not_computable: number;
  why: string[]; edits: Edit[];
}
export interface Places { accessory: string; tried: number; places: Place[] }

export interface Note {
  id: number; kind: string; symbol?: string; typeset?: string; address?: string | null;
  value?: number | null; unit?: string | null; shown?: { value: number; unit: string } | null;
  meaning?: string | null; text?: string | null; formula?: string | null; numbers?: string | null;
  source?: string | null; line?: number | null; says?: string | null; stands_at?: string | null;
  inputs?: { symbol: string; value: number | null; origin: number | null }[];
}
export interface Why { working: { address: string; root: number; notes: Note[] } }

export interface Change { kind: string; subject: string; condition: string | null; before: string | null; after: string | null; relative: number | null }
export interface Comparison { before: { verdict: string }; after: { verdict: string }; changes: Change[] }

export interface TryAnswer {
  wrong: Messages | null;
  findings: { line: number; column: number; rule: string; level: Level; state: string; says: string; remedy: string | null }[];
}
