// What does the server say of necks, float, shaft lines and failures?  As docs/schema/check.schema.json and
// effects.schema.json have it; only what the page shows is named here.

export interface Quantity { value: number | null; unit: string; symbol: string; address: string | null; source: string | null }
export type Range = [number | null, number | null];

interface Limit { T: number | null; part: string | null; of: string | null; condition: string | null }
interface Neck { least: Quantity; most: Quantity; designed: boolean; above_loads: number | null; below_way: number | null }

export interface Selectivity {
  name: string; at: string; unit: string; referred_to: string; referred_by: number | null;
  must_pass: {
    highest: number | null; runs: { T: number | null; condition: string | null };
    overload: { T: number | null; seconds: number | null }; static: number | null;
  };
  neck: Neck | null; bears_once: Limit;
  swapped: { neck_of: string; verdict: string; fits: boolean }[];
}

export interface Scheme {
  scheme: string; chosen: boolean; made_up: boolean; backlash_least: Quantity; backlash_most: Quantity;
  backlash_change: Range; contact_shift: Range; common_face: number | null; contact_ratio: Quantity;
  slide_left: number | null; push: Quantity; across: Quantity; more_mass: Quantity; more_parts: number;
  more_meshes: number; radial_borne: number | null; works: Range; stops_forward: string; stops_rearward: string;
  interrupted: Range;
}
export interface FloatOf { spool: string; at: string; unit: string; missing?: string; axial_travel?: Range; radial_travel?: number | null; schemes?: Scheme[] }

export interface Bearing {
  place: string; address: string; form?: string; rows?: number; series?: string; bore?: number | null; outside?: number | null;
  width?: number | null; at?: number | null; locates?: boolean; L_nmh?: Quantity; S_0?: Quantity;
}
export interface Line {
  name: string; address: string; of: string; kind: string; because?: string;
  strength?: { S_D?: Quantity; S_F?: Quantity; notch: string; at: number | null; condition: string };
  sections: { length: number | null; outside: number | null; bore: number | null }[];
  gears: { address: string; at: number | null }[]; bearings: Bearing[];
}

/** `brief --json`. */
export interface Choice { says: string; right: boolean; slip?: string }
export interface Question { asks: string; choices: Choice[]; because: string; look_at?: string }
export interface BriefOf { steps: { title: string; says: string[] }[]; questions: Question[] }

/** A part of `check --json`. */
export interface Whole { selectivity?: Selectivity[]; float?: FloatOf[]; lines?: Line[] }

export type Goes = "on" | "stops" | "doubt";
export interface Failure {
  kind: "mesh" | "shaft" | "pad"; part: string; at: string; mode: string;
  pads: { accessory: string; goes: Goes; interrupted_at?: string }[];
  breaks: { neck?: string; part?: string; meant: boolean; at_most: number | null; next_at_least: number | null }[];
  start_possible: boolean; oil_lost: boolean; metal_in_oil: boolean; effect: string; engine: string; seen: string;
}
export interface Effects { failures: Failure[]; causes: { effect: string; sets: number[][] }[] }
