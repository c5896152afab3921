// What does the server say of the parts in space?  As docs/schema/solids.schema.json has it; metres.
export type Triple = [number, number, number];
export interface Piece { a: [number, number]; b: [number, number]; centre?: [number, number]; radius?: number; start?: number; turn?: number }
export interface Teeth { count: number; from: number; to: number; twist: number; phase: number; root: number; tip: number; fault: string | null; half: [number, number][] }
export interface Part {
  kind: "gear" | "bevel" | "shaft" | "radial shaft" | "casing" | "body"; name: string | null; at: string; shaft: number; gear: number; sense: number;
  origin: Triple; axis: Triple; right: Triple; volume: number; mass: number | null; density: number | null;
  section?: [number, number][]; teeth?: Teeth; casing?: { from: number; to: number; floor: number; outside: Piece[][]; inside: Piece[][] };
}
export interface Solids { parts: Part[]; missing: { kind: string; name: string | null; missing: string }[] }
