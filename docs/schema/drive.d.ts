// The drive file of towershaft, loaded as YAML.
// Printed by the program from the tables that its reader runs from; not edited by hand.

/** What is not known is said to be so. */
export type Unknown = "unknown";

/** Any value may say where it comes from. */
export type Sourced<T> =
  | T
  | { value: T; source?: string; date?: CalendarDate; confidence?: "low" | "medium" | "high" };

/** 34 N.m */
export type Quantity<U extends string> = `${number}${"" | " "}${U}`;

/** 6600..7300 rpm, ..7600 rpm, 900.. rpm */
export type Span<U extends string> = `${number | ""}..${number | ""}${"" | " "}${U}`;

/** 34 N.m for 5 s */
export type Overload = `${string} for ${string}`;

/** 2026-06-30 */
export type CalendarDate = `${number}-${number}-${number}`;

/** 6:30, or an angle clockwise from 12:00 */
export type Clock = `${number}:${number}` | Angle;

/** A whole number. */
export type Tally = number | `${number}`;
/** 31..47, both ends counted, or one number. */
export type TallySpan = Tally | `${number}..${number}`;

export type PlainNumberUnit = "%";
export type PlainNumber = number | `${number}` | Quantity<PlainNumberUnit>;

export type LengthUnit = "m" | "cm" | "mm" | "um" | "in" | "ft";
export type Length = Quantity<LengthUnit>;

export type AngleUnit = "rad" | "mrad" | "deg" | "arcmin" | "arcsec";
export type Angle = Quantity<AngleUnit>;

export type TimeUnit = "s" | "ms" | "min" | "h";
export type Time = Quantity<TimeUnit>;

export type MassUnit = "kg" | "g" | "lb";
export type Mass = Quantity<MassUnit>;

export type DensityUnit = "kg/m3" | "g/cm3" | "lb/in3";
export type Density = Quantity<DensityUnit>;

export type InertiaUnit = "kg.m2" | "kg.mm2" | "kg.cm2" | "lb.in2" | "lb.ft2" | "lbf.in.s2";
export type Inertia = Quantity<InertiaUnit>;

export type VelocityUnit = "m/s" | "mm/s" | "in/s" | "ft/s" | "ft/min";
export type Velocity = Quantity<VelocityUnit>;

export type RotationalSpeedUnit = "rad/s" | "rpm";
export type RotationalSpeed = Quantity<RotationalSpeedUnit>;

export type RotationalAccelerationUnit = "rad/s2" | "rpm/s";
export type RotationalAcceleration = Quantity<RotationalAccelerationUnit>;

export type FrequencyUnit = "Hz" | "kHz";
export type Frequency = Quantity<FrequencyUnit>;

export type ForceUnit = "N" | "kN" | "lbf";
export type Force = Quantity<ForceUnit>;

export type TorqueUnit = "N.m" | "N.mm" | "kN.m" | "lbf.in" | "lbf.ft";
export type Torque = Quantity<TorqueUnit>;

export type PowerUnit = "W" | "kW" | "MW" | "hp";
export type Power = Quantity<PowerUnit>;

export type StressUnit = "Pa" | "kPa" | "MPa" | "GPa" | "N/mm2" | "bar" | "psi" | "ksi";
export type Stress = Quantity<StressUnit>;

export type AbsolutePressureUnit = "Pa(a)" | "kPa(a)" | "MPa(a)" | "bar(a)" | "psi(a)";
export type AbsolutePressure = Quantity<AbsolutePressureUnit>;

export type TemperatureUnit = "K" | "degC" | "degF" | "degR";
export type Temperature = Quantity<TemperatureUnit>;

export type TemperatureDifferenceUnit = "K" | "degR";
export type TemperatureDifference = Quantity<TemperatureDifferenceUnit>;

export type VolumeFlowUnit = "m3/s" | "L/s" | "L/min" | "L/h" | "gpm";
export type VolumeFlow = Quantity<VolumeFlowUnit>;

export type KinematicViscosityUnit = "m2/s" | "mm2/s" | "cSt";
export type KinematicViscosity = Quantity<KinematicViscosityUnit>;

export type StiffnessUnit = "N/m" | "N/mm" | "N/um" | "lbf/in";
export type Stiffness = Quantity<StiffnessUnit>;

export type TorsionalStiffnessUnit = "N.m/rad" | "kN.m/rad" | "N.m/deg" | "lbf.in/rad" | "lbf.in/deg";
export type TorsionalStiffness = Quantity<TorsionalStiffnessUnit>;

export type ThermalExpansionUnit = "1/K" | "ppm/K";
export type ThermalExpansion = Quantity<ThermalExpansionUnit>;

export type MassPerAngleUnit = "kg/rad" | "kg/deg" | "lb/deg";
export type MassPerAngle = Quantity<MassPerAngleUnit>;

/** One document that describes one accessory drive. */
export interface Drive {
  /** The version of this notation. */
  towershaft: Sourced<Tally>;
  /** What the drive is called on every page. */
  title: Sourced<string>;
  /** The revision of the drive, as your drawing office counts it. */
  revision?: Sourced<string | Unknown>;
  /** From where every clock angle, and every `cw` and `ccw` of a spool or of a box shaft, is seen.  Default: from behind. */
  sight?: Sourced<"from behind" | "from front">;
  /** The operating conditions, in the order in which the engine meets them. */
  conditions: { [name: string]: Condition };
  /** The spools of the engine, also those that drive nothing. */
  spools: { [name: string]: Spool };
  /** What bolts to the pads, and what each demands. */
  accessories: { [name: string]: Accessory };
  /** The room that there is around the engine. */
  engine?: Engine;
  /** For each spool that is tapped: take-off, radial shaft and gearbox. */
  drive: { [name: string]: SpoolDrive };
  /** The oil of the boxes. */
  oil?: Oil;
  /** By which standards the drive is rated. */
  method?: Method;
  /** What the masses and the loads of the mounts rest on. */
  mass?: Weighing;
  /** What the checks hold the drive to. */
  limits?: Limits;
  /** What `towershaft arrange` may choose. */
  arrange?: Arrange;
  /** What `towershaft start` goes by. */
  start?: Start;
  /** What `towershaft seize` goes by. */
  seizure?: Seizure;
  /** What `towershaft jolt` goes by. */
  jolt?: Jolt;
  /** What `towershaft whirl` goes by. */
  whirl?: Whirl;
  /** Your own register of what is assumed; it is shown with the program's. */
  assumptions?: AssumptionLine[];
  /** Findings that somebody accepts, each with a reason. */
  waived?: Waiver[];
}

/** One operating condition: the speed of each spool, and how much of its life the drive spends there. */
export type Condition = {
  /** How often the condition is met in the life of the drive. */
  events?: Sourced<Tally | Unknown>;
  /** How long the drive stays in it, in its whole life. */
  hours?: Sourced<Time | Unknown>;
  /** How long each of the events lasts.  Default: 30 s. */
  lasts?: Sourced<Time | Unknown>;
} & {
  /** How fast that spool turns in this condition.  Every spool that is tapped needs one. */
  [spool: string]: Sourced<RotationalSpeed | Unknown>;
};

/** One spool of the engine. */
export interface Spool {
  /** Which way it turns, in the file's `sight`. */
  turns: Sourced<"cw" | "ccw">;
  /** Does the starter turn this spool?  Default: yes or no. */
  cranked?: Sourced<"yes" | "no">;
  /** Its moment of inertia about the engine axis. */
  inertia?: Sourced<Inertia | Unknown>;
  /** How far it moves along the engine axis against the casing, rearward counted positive and the cold build as 0. */
  "axial travel"?: Sourced<Span<LengthUnit> | Unknown>;
  /** How far it moves across the engine axis.  Default: 0..0 mm. */
  "radial travel"?: Sourced<Span<LengthUnit> | Unknown>;
  /** Of the cranked spool: the torque that brakes it while no fuel burns, against its speed, 0 or more, without what its gearbox takes. */
  "unlit drag"?: TorquePoint[];
  /** Of the cranked spool: what the gases put on it while fuel burns as it does during a start, its own losses taken off. */
  "lit torque"?: TorquePoint[];
  /** Of a spool that is not cranked: what the air of the cranked one puts on it at standstill, when that one idles; without the key it stays at rest in a start. */
  "air torque"?: Sourced<Torque | Unknown>;
  /** What the oil in its own bearings takes at idle and 100 degC beyond the curves; it grows as the oil gets cold. */
  "oil drag"?: Sourced<Torque | Unknown>;
}

/** One accessory and its demands on the pad. */
export interface Accessory {
  /** Whom it serves: the engine, which cannot run without it; the aircraft; or the start. */
  for: Sourced<"engine" | "aircraft" | "start">;
  /** Which way its pad must turn, seen by somebody who faces the pad. */
  turns: Sourced<"cw" | "ccw" | "either" | Unknown>;
  /** The pad speed that it needs, in each condition; `always` stands for every condition that is not named. */
  speed?: { [condition: string]: Sourced<Span<RotationalSpeedUnit> | Unknown> };
  /** The power that it absorbs in each condition.  In a condition that is not named it keeps the torque of the named one nearest in spool speed, which is an assumption. */
  power?: { [condition: string]: Sourced<Power | Unknown> };
  /** The torque that it puts into its pad in each condition. */
  drives?: { [condition: string]: Sourced<Torque | Unknown> };
  /** What torques its drive must bear beyond the power above. */
  torque?: TorqueLimits;
  /** The cylinder about the pad axis that its body fills. */
  body?: Body;
  /** Its mass with its fluids. */
  mass?: Sourced<Mass | Unknown>;
  /** From the pad face to its centre of mass. */
  overhang?: Sourced<Length | Unknown>;
  /** The moment of inertia that its pad feels. */
  inertia?: Sourced<Inertia | Unknown>;
  /** By how much its torque swings about its mean, as a share of it; without the key `twist` takes 5 %, which it says (common practice, no source). */
  ripple?: Sourced<PlainNumber | Unknown>;
  /** How many times a turn of its pad its torque swings, as the pistons of a pump; without the key once. */
  "ripple order"?: Sourced<Tally | Unknown>;
  /** How it is coupled to its pad.  Default: none. */
  clutch?: Sourced<"none" | "overrunning">;
  /** Of a starter: the torque that it puts into its pad, against the speed of the pad; without it the points of `drives` are joined by lines. */
  curve?: TorquePoint[];
  /** The shear neck of its drive shaft; without the key it has none. */
  neck?: Neck;
  /** The public standard number of its pad and spline. */
  spline?: Sourced<string | Unknown>;
  /** Length of that spline that is engaged; without it 0.93 of its pitch diameter is taken. */
  "spline length"?: Sourced<Length>;
  /** Outside diameter of the sleeve about that spline; without it 1.35 of its major diameter is taken. */
  sleeve?: Sourced<Length>;
  /** How it loads that spline: evenly as a generator, lightly as a pump, by fits and starts as a pump that actuates, or heavily. */
  shock?: Sourced<"uniform" | "light" | "intermittent" | "heavy" | Unknown>;
  /** What it serves, in your words. */
  serves?: Sourced<string | Unknown>;
  /** Of an oil pump pack: its elements, and where they draw from. */
  pumps?: Pumps;
  /** Of a breather: its rotor. */
  separator?: Separator;
}

/** Torques beyond the continuous one. */
export interface TorqueLimits {
  /** A torque and for how long it may last. */
  overload?: Sourced<Overload | Unknown>;
  /** The torque that its drive must hold without yielding. */
  static?: Sourced<Torque | Unknown>;
}

/** The room that an accessory takes. */
export interface Body {
  /** Of the smallest cylinder about the pad axis that holds the body. */
  radius: Sourced<Length | Unknown>;
  /** From the pad face to the far end of the body. */
  length: Sourced<Length | Unknown>;
}

/** A place that is meant to break before anything dearer does.  State its break band, or design it: then the band follows from metal, diameter, tolerance and temperature. */
export interface Neck {
  /** The band in which it breaks, from the least torque to the greatest; a neck needs it or `diameter`.  With both, the computed band must lie inside of this one. */
  breaks?: Sourced<Span<TorqueUnit> | Unknown>;
  /** Its diameter at the root; the band then follows from metal, size and temperature. */
  diameter?: Sourced<Length>;
  /** The diameter lies within plus or minus this.  Default: 0.02 mm. */
  tolerance?: Sourced<Length>;
  /** The diameter of its bore.  Default: 0 mm. */
  bore?: Sourced<Length>;
  /** The outside diameter of the shaft beside it; with `notch radius` it gives the notch factor. */
  shank?: Sourced<Length>;
  /** The radius of the groove. */
  "notch radius"?: Sourced<Length>;
  /** How thick its blank was when it was heat-treated: a thicker one than the 16 mm of the test hardens less at its heart (DIN 743-2, K_1).  Without the key as thick as the shank, or as the neck; a `strength` that is told is that of the neck itself. */
  blank?: Sourced<Length>;
  /** What it is made of; the table says what its strength rests on.  Default: low-alloy 160 ksi. */
  metal?: Sourced<"9310 core" | "ze41a-t5" | "we43-t6" | "ez33a-t5" | "a357-t61" | "m50" | "52100" | "low-alloy 125 ksi" | "low-alloy 140 ksi" | "low-alloy 150 ksi" | "low-alloy 160 ksi" | "low-alloy 180 ksi" | "low-alloy 200 ksi" | "4330v 220 ksi">;
  /** Its tensile strength from the least to the greatest, as tested; without the key it follows from `metal` and `scatter`. */
  strength?: Sourced<Span<StressUnit> | Unknown>;
  /** Coefficient of variation of the tensile strength: a design minimum lies 2.33 of it below the mean, the greatest strength 3 of it above.  Default: 3 %. */
  scatter?: Sourced<PlainNumber>;
  /** Shear strength over tensile strength.  Default: 0.58..0.62. */
  "shear ratio"?: Sourced<Span<PlainNumberUnit> | Unknown>;
  /** How much of the section yields before it breaks: 0 the outside alone, 1 all of it.  Default: 0..1. */
  yielding?: Sourced<Span<PlainNumberUnit> | Unknown>;
  /** Between which temperatures it works.  Default: -40..120 degC. */
  temperature?: Sourced<Span<TemperatureUnit> | Unknown>;
  /** Whether it yields before it breaks; a brittle neck feels its notch.  Default: tough. */
  breaking?: Sourced<"tough" | "brittle">;
  /** Amplitude of its torque over the steady torque, for its fatigue; as often a turn as the ripple of its accessory, else once.  Default: 5 %. */
  ripple?: Sourced<PlainNumber>;
  /** How many overloads or surges a start brings, for its fatigue.  Default: 1. */
  overloads?: Sourced<PlainNumber>;
  /** From the tip of the splined shaft to the neck. */
  "from tip"?: Sourced<Length>;
  /** Whether both ends stay where they are when it has broken.  Default: retained. */
  fragments?: Sourced<"retained" | "loose">;
  /** The reason for a neck where the rules allow none. */
  why?: Sourced<string | Unknown>;
}

/** One pressure element and 1 to 7 scavenge elements on the shaft of this pad.  Where the accessory tells no `power`, the torque of the pack is its load. */
export interface Pumps {
  /** Oil behind the pressure element, from the slowest condition with `hours` on. */
  flow: Sourced<VolumeFlow | Unknown>;
  /** What of it goes to the bearings of the spools and not to the boxes.  Default: 0 L/min. */
  elsewhere?: Sourced<VolumeFlow | Unknown>;
  /** By how much the pressure element raises the oil while its relief valve is open.  Default: 5 bar. */
  pressure?: Sourced<Stress | Unknown>;
  /** By how much every scavenge element raises what it takes.  Default: 1 bar. */
  "scavenge pressure"?: Sourced<Stress | Unknown>;
  /** Share of air in what the pressure element takes in.  Default: 5 %. */
  air?: Sourced<PlainNumber | Unknown>;
  /** How full the spaces of the pressure element become; with what slips back it makes the volumetric efficiency.  Default: 92 %. */
  filling?: Sourced<PlainNumber | Unknown>;
  /** The same of the scavenge elements.  Default: 85 %. */
  "scavenge filling"?: Sourced<PlainNumber | Unknown>;
  /** Wilson's coefficient of slip C_s: what runs back is C_s dp/(eta n) of the displacement.  Default: 4.8e-8. */
  slip?: Sourced<PlainNumber | Unknown>;
  /** Wilson's coefficient of viscous drag C_d: a torque of C_d eta n for a displacement of 1 a radian.  Default: 1.025e5. */
  "viscous drag"?: Sourced<PlainNumber | Unknown>;
  /** Wilson's coefficient of friction C_f: a share of the torque by pressure.  Default: 0.0179. */
  friction?: Sourced<PlainNumber | Unknown>;
  /** Of each gear of each element: two equal external gears.  Default: 12. */
  teeth?: Sourced<Tally | Unknown>;
  /** Their module.  Default: 3 mm. */
  module?: Sourced<Length | Unknown>;
  /** Their pressure angle.  Default: 20 deg. */
  "pressure angle"?: Sourced<Angle | Unknown>;
  /** Face width of the pressure element; without the key it is sized. */
  width?: Sourced<Length>;
  /** Between two elements, and at both ends.  Default: 8 mm. */
  plate?: Sourced<Length | Unknown>;
  /** How fast the tips of the gears may be.  Default: 20 m/s. */
  "tip speed"?: Sourced<Velocity | Unknown>;
  /** How deep a pick-up must lie below the oil to count as covered.  Default: 5 mm. */
  cover?: Sourced<Length | Unknown>;
  /** Speed of its spool while air alone turns it; without the key nothing is told of that. */
  windmill?: Sourced<RotationalSpeed>;
  /** Where the oil gathers, and the scavenge elements that draw it from there. */
  sumps: { [name: string]: Sump };
  /** Attitudes in which it must draw oil; level is always looked at. */
  attitudes?: { [name: string]: Attitude };
}

/** A place where oil gathers, taken as a box in the axes of the engine. */
export interface Sump {
  /** Of all oil that the pressure element gives, what comes back to this sump; all sumps together 100 %. */
  share: Sourced<PlainNumber>;
  /** How much its elements together must take, over the oil that comes to it.  Default: 2.5. */
  ratio?: Sourced<PlainNumber | Unknown>;
  /** Inside of the sump along the engine. */
  length: Sourced<Length>;
  /** ... across it. */
  width: Sourced<Length>;
  /** ... and upward. */
  height: Sourced<Length>;
  /** How deep the oil that runs lies in it while it is level. */
  depth: Sourced<Length>;
  /** The scavenge elements that draw from it, by the name of each. */
  scavenge: { [name: string]: Scavenge };
}

/** One scavenge element of the pack and its pick-up. */
export interface Scavenge {
  /** Where the pick-up of the element lies in its sump, from the front wall. */
  rearward: Sourced<Length | Unknown>;
  /** ... from the middle to the right, as seen from behind; to the left it counts negative.  Default: 0 mm. */
  rightward?: Sourced<Length | Unknown>;
  /** ... above the floor.  Default: 3 mm. */
  above?: Sourced<Length | Unknown>;
  /** Face width of its gears; without the key it is sized. */
  width?: Sourced<Length>;
  /** Does a magnetic plug stand in its line?  Without the key that is not told. */
  "chip plug"?: Sourced<"yes" | "no" | Unknown>;
}

/** An attitude in which oil must be fed. */
export interface Attitude {
  /** Nose up, of what the oil feels: speeding up counts as nose up.  Default: 0 deg. */
  pitch?: Sourced<Angle | Unknown>;
  /** Right side down, of what the oil feels; 180 deg is on its back.  Default: 0 deg. */
  roll?: Sourced<Angle | Unknown>;
}

/** The rotor of a breather: air enters at its rim and leaves through its shaft, drops are thrown back.  Where the accessory tells no `power`, its torque is its load. */
export interface Separator {
  /** Air that leaves through it, at the pressure of its chamber. */
  air: Sourced<VolumeFlow | Unknown>;
  /** The same in single conditions, where it is not `air`. */
  "air at"?: { [condition: string]: Sourced<VolumeFlow | Unknown> };
  /** Of the rotor, where the air enters it. */
  radius: Sourced<Length>;
  /** Diameter of the hollow shaft through which the air leaves. */
  bore: Sourced<Length>;
  /** Of the rotor, over which the air enters. */
  length: Sourced<Length>;
  /** Pressure before it.  Default: 1.1 bar(a). */
  chamber?: Sourced<AbsolutePressure | Unknown>;
  /** Drops of this diameter and larger must be thrown out in every condition with `hours`.  Default: 3 um. */
  droplet?: Sourced<Length | Unknown>;
  /** How much pressure may drop over it.  Default: 0.15 bar. */
  drop?: Sourced<Stress | Unknown>;
}

/** The room that the drive has. */
export interface Engine {
  /** The radius of the engine casing under the box. */
  casing?: Sourced<Length | Unknown>;
  /** The inside of the cowl, point by point round the clock; between two points its radius changes evenly with the angle. */
  cowl?: CowlPoint[];
  /** Round regions that nothing may enter. */
  "keep out"?: KeepOut[];
}

/** One point of the cowl's inside. */
export interface CowlPoint {
  /** Where round the engine. */
  clock: Sourced<Clock>;
  /** How far from the engine axis. */
  radius: Sourced<Length>;
}

/** A round region that nothing may enter. */
export interface KeepOut {
  /** What is there. */
  name?: Sourced<string | Unknown>;
  /** Where round the engine its centre is. */
  clock: Sourced<Clock>;
  /** How far from the engine axis its centre is. */
  radius: Sourced<Length>;
  /** Its own radius. */
  size: Sourced<Length>;
  /** On which face of the box.  Default: both. */
  face?: Sourced<"front" | "rear" | "both">;
}

/** Everything that one spool drives. */
export interface SpoolDrive {
  /** The bevels on the spool, and how they bear its movement. */
  "take-off": TakeOff;
  /** The radial shaft from the spool out to the box. */
  "tower shaft": TowerShaft;
  /** The gearbox with its shafts and pads. */
  box: Box;
}

/** Where power leaves the spool. */
export interface TakeOff {
  /** How the bevels bear the axial movement of the spool: the bevel held by the rotor's location bearing; on a splined stub shaft with bearings of its own; or driven through a wide-faced spur idler. */
  float?: Sourced<"fixed bevel" | "splined stub" | "wide spur" | Unknown>;
  /** From the spool to the radial shaft. */
  bevels: BevelGears;
  /** Normal backlash of these bevels as built, cold. */
  backlash?: Sourced<Length | Unknown>;
  /** By how much that backlash may be more or less as built.  Default: 0.03 mm. */
  "backlash tolerance"?: Sourced<Length | Unknown>;
  /** Length of the spline of a splined stub that is engaged at the cold build; without it 0.6 of its pitch diameter is taken. */
  engaged?: Sourced<Length>;
  /** How far the spline of a splined stub may slide. */
  slide?: Sourced<Span<LengthUnit> | Unknown>;
  /** Face width of a wide spur beyond what its load needs. */
  overlap?: Sourced<Length | Unknown>;
  /** Of the shaft that carries the bevel gear of a splined stub or a wide spur; what is not said is chosen. */
  bearings?: TakeOffBearings;
  /** How oil comes to these bevels: by jets, or by dipping into it.  Default: jets. */
  lubrication?: Sourced<"jets" | "dip">;
  /** Does a chip plug stand where the oil of these bevels collects?  Without the key it is not told, and its chips count as unseen. */
  "chip plug"?: Sourced<"yes" | "no" | Unknown>;
  /** The sump of the oil pump pack into which the oil of these bevels runs; their chips then meet the plugs in the scavenge lines of that sump. */
  "drains to"?: Sourced<string | Unknown>;
}

/** Two bevel gears; the first is the one nearer to the spool. */
export interface BevelGears {
  /** Tooth numbers, the gear nearer to the spool first. */
  teeth: [Sourced<Tally>, Sourced<Tally>];
  /** Outer transverse module m_et. */
  module: Sourced<Length>;
  /** Normal pressure angle alpha_n.  Default: 20 deg. */
  "pressure angle"?: Sourced<Angle | Unknown>;
  /** Mean spiral angle beta_m; 0 deg for straight bevels. */
  spiral: Sourced<Angle>;
  /** Hand of spiral of the first gear; the second has the other.  Default: left. */
  hand?: Sourced<"left" | "right">;
  /** Face width of both gears. */
  face: Sourced<Length>;
  /** Angle between the two axes.  Default: 90 deg. */
  "shaft angle"?: Sourced<Angle | Unknown>;
  /** On which side of the radial shaft's axis the gear on the engine-parallel shaft lies; front is towards the inlet.  Default: rear. */
  side?: Sourced<"front" | "rear">;
  /** Share of the transmitted power that is lost in this mesh.  Default: 1 %. */
  loss?: Sourced<PlainNumber>;
  /** How the depth of the teeth changes along the face, ISO 23509.  Default: standard. */
  "depth taper"?: Sourced<"standard" | "uniform" | "slot width" | "tilted root line">;
  /** Addendum of the basic crown gear over the mean normal module, k_hap.  Default: 1. */
  addendum?: Sourced<PlainNumber | Unknown>;
  /** Dedendum of the basic crown gear over the mean normal module, k_hfp.  Default: 1.25. */
  dedendum?: Sourced<PlainNumber | Unknown>;
  /** Profile shift x_hm1 of the first gear, the second has its negative; without the key what ISO 23509, annex C, gives to the ratio. */
  "profile shift"?: Sourced<PlainNumber | Unknown>;
  /** Thickness modification x_smn of the first gear, the second has its negative.  Default: 0. */
  "thickness shift"?: Sourced<PlainNumber | Unknown>;
  /** Mean radius r_c0 of the face mill that cuts curved teeth; without the key straight teeth when `spiral` is 0 deg, and else no credit for their curve, which is on the safe side. */
  "cutter radius"?: Sourced<Length | Unknown>;
  /** Edge radius of the cutter over the mean normal module, rho_a0 / m_mn.  Default: 0.25. */
  "edge radius"?: Sourced<PlainNumber | Unknown>;
  /** Do bearings stand on both sides of the gears?  Default: one overhung. */
  mounting?: Sourced<"straddled" | "one overhung" | "both overhung">;
  /** How the contact pattern of each pair was looked after.  Default: under light load. */
  "pattern checked"?: Sourced<"under full load" | "under light load" | "on a sample">;
  /** Length of the contact pattern under load over the face width, b_veff / b_v.  Default: 0.85. */
  "pattern length"?: Sourced<PlainNumber | Unknown>;
  /** How much the profiles are crowned: the peak of the load along the path of contact has the exponent 3 with little and 1.5 with much of it.  Default: little. */
  "profile crowning"?: Sourced<"little" | "much">;
  /** What both gears are made of: a grade of ISO 6336-5, or a steel that is taken to meet one.  Default: case-carburised MQ. */
  material?: Sourced<"case-carburised ML" | "case-carburised MQ" | "case-carburised ME" | "case-carburised MQ, core 30 HRC" | "case-carburised MQ, shallow" | "nitrided ML" | "nitrided MQ" | "nitrided ME" | "through-hardened, nitrided ML" | "through-hardened, nitrided MQ" | "through-hardened, nitrided ME" | "nitrocarburised ML" | "nitrocarburised MQ" | "nitrocarburised ME" | "through-hardened alloy ML" | "through-hardened alloy MQ" | "through-hardened alloy ME" | "through-hardened carbon ML" | "through-hardened carbon MQ" | "through-hardened carbon ME" | "normalised ML" | "normalised MQ" | "normalised ME" | "induction-hardened ML" | "induction-hardened MQ" | "induction-hardened ME" | "carburised 9310" | "carburised 9310 ME" | "carburised AMS 6308" | "carburised AMS 6278" | "carburised 18CrNiMo7-6" | "carburised 16NiCrMo13" | "carburised 16MnCr5" | "nitrided 32CrMoV13" | "nitrided 31CrMoV9" | "nitrided AMS 6470" | "nitrided 42CrMo4" | "through-hardened 4340" | "through-hardened 42CrMo4">;
  /** Tolerance grade of the teeth, ISO 17485:2006.  Default: 5. */
  accuracy?: Sourced<Tally | Unknown>;
  /** Mean peak-to-valley roughness R_z of the flanks.  Default: 3 um. */
  "flank roughness"?: Sourced<Length | Unknown>;
  /** Mean peak-to-valley roughness R_z of the root fillets.  Default: 10 um. */
  "root roughness"?: Sourced<Length | Unknown>;
  /** How far the flanks are run in, 0 % as made: the integral temperature asks.  Default: 100 %. */
  "run in"?: Sourced<PlainNumber | Unknown>;
  /** Life factors Z_NT and Y_NT at 1e10 load cycles.  Default: 0.85. */
  "long life factor"?: Sourced<PlainNumber | Unknown>;
  /** Application factor K_A of ISO 10300-1: peaks of load over the loads of the file.  Default: 1. */
  "application factor"?: Sourced<PlainNumber | Unknown>;
  /** Geometry factor Z_I of the flanks, from the charts of ANSI/AGMA 2003; asks for the opinion of that standard. */
  "I factor"?: Sourced<PlainNumber | Unknown>;
  /** Geometry factor Y_J of the roots of the first gear, from the same charts. */
  "J factor 1"?: Sourced<PlainNumber | Unknown>;
  /** The same of the second gear. */
  "J factor 2"?: Sourced<PlainNumber | Unknown>;
}

/** The fast thin shaft from the spool out to the box. */
export interface TowerShaft {
  /** Where round the engine it stands. */
  clock: Sourced<Clock>;
  /** From bevel apex to bevel apex. */
  length: Sourced<Length | Unknown>;
  /** Its outside diameter. */
  outside: Sourced<Length | Unknown>;
  /** The diameter of its bore; 0 mm when it is solid.  Default: 0 mm. */
  bore?: Sourced<Length | Unknown>;
  /** How far from the spool end a third bearing stands; without the key there is none. */
  "mid bearing"?: Sourced<Length | Unknown>;
  /** Where along the engine its axis lies, rearward of the engine's datum.  Default: 0 mm. */
  station?: Sourced<Length | Unknown>;
  /** Which way you believe that it turns, seen from outside looking to the engine axis; the program holds it against the train. */
  turns?: Sourced<"cw" | "ccw" | Unknown>;
  /** A shear neck in the radial shaft. */
  neck?: Neck;
  /** Two of the gearshaft at either end, and the one of `mid bearing`; what is not said is chosen. */
  bearings?: TowerShaftBearings;
}

/** A gearbox on the engine: one input, and a train of shafts either way of it. */
export interface Box {
  /** The circle about the engine axis on which the shafts stand. */
  arc: Arc;
  /** From the radial shaft to the box input. */
  bevels: BevelGears;
  /** What the gears of this box have in common. */
  gears?: ToothSystem;
  /** How oil comes to its teeth: by jets, or by dipping into it.  Default: jets. */
  lubrication?: Sourced<"jets" | "dip">;
  /** Does a chip plug stand where the oil of this box collects?  Without the key it is not told, and its chips count as unseen. */
  "chip plug"?: Sourced<"yes" | "no" | Unknown>;
  /** The sump of the oil pump pack into which the oil of this box runs; its chips then meet the plugs in the scavenge lines of that sump. */
  "drains to"?: Sourced<string | Unknown>;
  /** Between the front and the rear pad faces. */
  depth?: Sourced<Length | Unknown>;
  /** Its three mounts: the first holds it in all directions, the second across the line to the first, the third across the plane of all three.  Without the key they are assumed at the two ends of the front face and behind the input. */
  mounts?: Mount[];
  /** The shaft that the radial shaft drives. */
  input: BoxInput;
  /** The shafts clockwise of the input, in the file's `sight`, in order outwards; each is driven by the one before it. */
  clockwise?: BoxShaft[];
  /** The shafts the other way. */
  anticlockwise?: BoxShaft[];
}

/** The circle on which the axes of a box stand. */
export interface Arc {
  /** From the engine axis to the shafts' axes. */
  radius: Sourced<Length>;
  /** Where on it the box input stands. */
  clock: Sourced<Clock>;
}

/** What the cylindrical gears of a box have in common. */
export interface ToothSystem {
  /** Normal module m_n of every gear that gives none of its own. */
  module?: Sourced<Length | Unknown>;
  /** Normal pressure angle alpha_n.  Default: 20 deg. */
  "pressure angle"?: Sourced<Angle | Unknown>;
  /** Helix angle beta; 0 deg for spur gears.  Default: 0 deg. */
  "helix angle"?: Sourced<Angle | Unknown>;
  /** Hand of helix of the box input's gear; gears in mesh alternate.  Default: left. */
  hand?: Sourced<"left" | "right">;
  /** Addendum of the basic rack over the module, h_aP / m_n.  Default: 1. */
  addendum?: Sourced<PlainNumber | Unknown>;
  /** Dedendum of the basic rack over the module, h_fP / m_n.  Default: 1.25. */
  dedendum?: Sourced<PlainNumber | Unknown>;
  /** Root fillet radius of the basic rack over the module, rho_fP / m_n.  Default: 0.25. */
  "root radius"?: Sourced<PlainNumber | Unknown>;
  /** How much thicker the teeth of each gear are than without backlash, normal at the reference circle: lower to upper allowance, E_sni..E_sns (ISO/TR 10064-2).  Below 0 they are thinner.  Default: -0.1..-0.06 mm. */
  "tooth thickness allowance"?: Sourced<Span<LengthUnit> | Unknown>;
  /** By how much the axes are farther apart than without backlash, A_ai..A_ae: bores, bearings and shafts together.  Default: -0.02..0.02 mm. */
  "centre distance allowance"?: Sourced<Span<LengthUnit> | Unknown>;
  /** How warm the gears and their casing become; without the key backlash is judged as built, at 20 degC. */
  temperatures?: Temperatures;
  /** Share of the transmitted power that is lost in each mesh.  Default: 0.5 %. */
  loss?: Sourced<PlainNumber>;
  /** What the gears are made of: a grade of ISO 6336-5, or a steel that is taken to meet one.  Default: case-carburised MQ. */
  material?: Sourced<"case-carburised ML" | "case-carburised MQ" | "case-carburised ME" | "case-carburised MQ, core 30 HRC" | "case-carburised MQ, shallow" | "nitrided ML" | "nitrided MQ" | "nitrided ME" | "through-hardened, nitrided ML" | "through-hardened, nitrided MQ" | "through-hardened, nitrided ME" | "nitrocarburised ML" | "nitrocarburised MQ" | "nitrocarburised ME" | "through-hardened alloy ML" | "through-hardened alloy MQ" | "through-hardened alloy ME" | "through-hardened carbon ML" | "through-hardened carbon MQ" | "through-hardened carbon ME" | "normalised ML" | "normalised MQ" | "normalised ME" | "induction-hardened ML" | "induction-hardened MQ" | "induction-hardened ME" | "carburised 9310" | "carburised 9310 ME" | "carburised AMS 6308" | "carburised AMS 6278" | "carburised 18CrNiMo7-6" | "carburised 16NiCrMo13" | "carburised 16MnCr5" | "nitrided 32CrMoV13" | "nitrided 31CrMoV9" | "nitrided AMS 6470" | "nitrided 42CrMo4" | "through-hardened 4340" | "through-hardened 42CrMo4">;
  /** Tolerance class of the flanks, ISO 1328-1:2013.  Default: 5. */
  accuracy?: Sourced<Tally | Unknown>;
  /** Mean peak-to-valley roughness R_z of the flanks.  Default: 3 um. */
  "flank roughness"?: Sourced<Length | Unknown>;
  /** Mean peak-to-valley roughness R_z of the root fillets.  Default: 10 um. */
  "root roughness"?: Sourced<Length | Unknown>;
  /** How far the flanks are run in, 0 % as made: the integral temperature asks.  Default: 100 %. */
  "run in"?: Sourced<PlainNumber | Unknown>;
  /** Tip relief C_a of both gears of a mesh; read up to class 5.  Default: 0 um. */
  "tip relief"?: Sourced<Length | Unknown>;
  /** Life factors Z_NT and Y_NT at 1e10 load cycles.  Default: 0.85. */
  "long life factor"?: Sourced<PlainNumber | Unknown>;
  /** Application factor K_A of ISO 6336-1: peaks of load over the loads of the file.  Default: 1. */
  "application factor"?: Sourced<PlainNumber | Unknown>;
  /** Face load factor K_Hbeta of ISO 6336-1, where it is known from elsewhere; without the key it follows from `misalignment`. */
  "face load factor"?: Sourced<PlainNumber | Unknown>;
  /** Misalignment F_betax of the teeth over the face width before running in, of shafts, bearings, bores and teeth together; without the key what `accuracy` allows the teeth of both gears, and how far the shafts give way. */
  misalignment?: Sourced<Length | Unknown>;
  /** How the lead is made to suit: which share of deflection and of making it leaves as misalignment (ISO 6336-1, 7.5), where that follows from both.  Default: straight. */
  lead?: Sourced<"straight" | "crowned" | "crowned well" | "corrected" | "corrected, crowned" | "end relief">;
}

/** How warm the gears of a box and its casing become: what backlash is left then. */
export interface Temperatures {
  /** From the coldest to the warmest that the gears ever are while they turn. */
  gears: Sourced<Span<TemperatureUnit> | Unknown>;
  /** By how much the casing is warmer than its gears, least and most; below 0 where it is cooler. */
  "casing above gears": Sourced<Span<TemperatureDifferenceUnit> | Unknown>;
  /** Linear expansion of the gears, the mean over that range. */
  "expansion of gears": Sourced<ThermalExpansion | Unknown>;
  /** Linear expansion of the casing that holds their axes. */
  "expansion of casing": Sourced<ThermalExpansion | Unknown>;
}

/** The shaft of a box that the radial shaft drives. */
export interface BoxInput {
  /** What the shaft is called; without one, after its accessories. */
  name?: Sourced<string | Unknown>;
  /** Tooth number of its main gear. */
  teeth: Sourced<Tally>;
  /** Normal module m_n of its main gear; without the key that of the box's gears. */
  module?: Sourced<Length | Unknown>;
  /** Face width of its main gear. */
  face: Sourced<Length | Unknown>;
  /** Profile shift coefficient x of its main gear.  Default: 0. */
  shift?: Sourced<PlainNumber | Unknown>;
  /** What its main gear is made of; without the key as the gears of the box. */
  material?: Sourced<"case-carburised ML" | "case-carburised MQ" | "case-carburised ME" | "case-carburised MQ, core 30 HRC" | "case-carburised MQ, shallow" | "nitrided ML" | "nitrided MQ" | "nitrided ME" | "through-hardened, nitrided ML" | "through-hardened, nitrided MQ" | "through-hardened, nitrided ME" | "nitrocarburised ML" | "nitrocarburised MQ" | "nitrocarburised ME" | "through-hardened alloy ML" | "through-hardened alloy MQ" | "through-hardened alloy ME" | "through-hardened carbon ML" | "through-hardened carbon MQ" | "through-hardened carbon ME" | "normalised ML" | "normalised MQ" | "normalised ME" | "induction-hardened ML" | "induction-hardened MQ" | "induction-hardened ME" | "carburised 9310" | "carburised 9310 ME" | "carburised AMS 6308" | "carburised AMS 6278" | "carburised 18CrNiMo7-6" | "carburised 16NiCrMo13" | "carburised 16MnCr5" | "nitrided 32CrMoV13" | "nitrided 31CrMoV9" | "nitrided AMS 6470" | "nitrided 42CrMo4" | "through-hardened 4340" | "through-hardened 42CrMo4" | Unknown>;
  /** Thickness of its rim below the roots of the teeth; without the key it is solid. */
  rim?: Sourced<Length | Unknown>;
  /** Thickness of the web that holds the rim; read beside `rim` only. */
  web?: Sourced<Length | Unknown>;
  /** What stands on its front pad: the name of an accessory, `cover` for a sealed cover, `hand turning`, or `open`.  Without the key there is no pad. */
  front?: Sourced<string | Unknown>;
  /** The same for its rear pad. */
  rear?: Sourced<string | Unknown>;
  /** Further gears on the same shaft; the next shaft is driven by the last of them unless it says otherwise with `from`. */
  step?: StepGear | StepGear[];
  /** A side chain of shafts that this one drives as well, in order outwards. */
  branch?: BoxShaft[];
  /** Which way you believe that it turns, in the file's `sight`; the program holds it against the train. */
  turns?: Sourced<"cw" | "ccw" | Unknown>;
  /** Do its bearings stand on both sides of its gears, or on one?  Default: straddled. */
  support?: Sourced<"straddled" | "overhung">;
  /** Diameter between its bearings, beside the gears; without the key by the load. */
  outside?: Sourced<Length>;
  /** Diameter of its bore; without the key half of its journals; 0 mm: solid. */
  bore?: Sourced<Length>;
  /** Its two bearings; what is not said is chosen. */
  bearings?: BoxBearings;
  /** Its outline from the front end to the rear, in place of the one that follows from its gears and bearings. */
  sections?: ShaftSection[];
}

/** A shaft of a box that another shaft of the box drives, with its gears and pads. */
export interface BoxShaft {
  /** What the shaft is called; without one, after its accessories. */
  name?: Sourced<string | Unknown>;
  /** Tooth number of its main gear. */
  teeth: Sourced<Tally>;
  /** Normal module m_n of its main gear; without the key that of the box's gears. */
  module?: Sourced<Length | Unknown>;
  /** Face width of its main gear. */
  face: Sourced<Length | Unknown>;
  /** Profile shift coefficient x of its main gear.  Default: 0. */
  shift?: Sourced<PlainNumber | Unknown>;
  /** What its main gear is made of; without the key as the gears of the box. */
  material?: Sourced<"case-carburised ML" | "case-carburised MQ" | "case-carburised ME" | "case-carburised MQ, core 30 HRC" | "case-carburised MQ, shallow" | "nitrided ML" | "nitrided MQ" | "nitrided ME" | "through-hardened, nitrided ML" | "through-hardened, nitrided MQ" | "through-hardened, nitrided ME" | "nitrocarburised ML" | "nitrocarburised MQ" | "nitrocarburised ME" | "through-hardened alloy ML" | "through-hardened alloy MQ" | "through-hardened alloy ME" | "through-hardened carbon ML" | "through-hardened carbon MQ" | "through-hardened carbon ME" | "normalised ML" | "normalised MQ" | "normalised ME" | "induction-hardened ML" | "induction-hardened MQ" | "induction-hardened ME" | "carburised 9310" | "carburised 9310 ME" | "carburised AMS 6308" | "carburised AMS 6278" | "carburised 18CrNiMo7-6" | "carburised 16NiCrMo13" | "carburised 16MnCr5" | "nitrided 32CrMoV13" | "nitrided 31CrMoV9" | "nitrided AMS 6470" | "nitrided 42CrMo4" | "through-hardened 4340" | "through-hardened 42CrMo4" | Unknown>;
  /** Thickness of its rim below the roots of the teeth; without the key it is solid. */
  rim?: Sourced<Length | Unknown>;
  /** Thickness of the web that holds the rim; read beside `rim` only. */
  web?: Sourced<Length | Unknown>;
  /** What stands on its front pad: the name of an accessory, `cover` for a sealed cover, `hand turning`, or `open`.  Without the key there is no pad. */
  front?: Sourced<string | Unknown>;
  /** The same for its rear pad. */
  rear?: Sourced<string | Unknown>;
  /** Further gears on the same shaft; the next shaft is driven by the last of them unless it says otherwise with `from`. */
  step?: StepGear | StepGear[];
  /** A side chain of shafts that this one drives as well, in order outwards. */
  branch?: BoxShaft[];
  /** Which way you believe that it turns, in the file's `sight`; the program holds it against the train. */
  turns?: Sourced<"cw" | "ccw" | Unknown>;
  /** Do its bearings stand on both sides of its gears, or on one?  Default: straddled. */
  support?: Sourced<"straddled" | "overhung">;
  /** Diameter between its bearings, beside the gears; without the key by the load. */
  outside?: Sourced<Length>;
  /** Diameter of its bore; without the key half of its journals; 0 mm: solid. */
  bore?: Sourced<Length>;
  /** Its two bearings; what is not said is chosen. */
  bearings?: BoxBearings;
  /** Its outline from the front end to the rear, in place of the one that follows from its gears and bearings. */
  sections?: ShaftSection[];
  /** In which clock direction from its driver it stands; without the key it stands on the arc, further along. */
  toward?: Sourced<Clock>;
  /** Which gear of its driver drives it; without the key its last step, or its main gear when it has no step. */
  from?: Sourced<"gear" | "step" | "step 2" | "step 3">;
}

/** A further gear on a shaft. */
export interface StepGear {
  /** Tooth number of this gear. */
  teeth: Sourced<Tally>;
  /** Normal module m_n of this gear; without the key that of the box's gears. */
  module?: Sourced<Length | Unknown>;
  /** Face width of this gear. */
  face: Sourced<Length | Unknown>;
  /** Profile shift coefficient x of this gear.  Default: 0. */
  shift?: Sourced<PlainNumber | Unknown>;
  /** What this gear is made of; without the key as the gears of the box. */
  material?: Sourced<"case-carburised ML" | "case-carburised MQ" | "case-carburised ME" | "case-carburised MQ, core 30 HRC" | "case-carburised MQ, shallow" | "nitrided ML" | "nitrided MQ" | "nitrided ME" | "through-hardened, nitrided ML" | "through-hardened, nitrided MQ" | "through-hardened, nitrided ME" | "nitrocarburised ML" | "nitrocarburised MQ" | "nitrocarburised ME" | "through-hardened alloy ML" | "through-hardened alloy MQ" | "through-hardened alloy ME" | "through-hardened carbon ML" | "through-hardened carbon MQ" | "through-hardened carbon ME" | "normalised ML" | "normalised MQ" | "normalised ME" | "induction-hardened ML" | "induction-hardened MQ" | "induction-hardened ME" | "carburised 9310" | "carburised 9310 ME" | "carburised AMS 6308" | "carburised AMS 6278" | "carburised 18CrNiMo7-6" | "carburised 16NiCrMo13" | "carburised 16MnCr5" | "nitrided 32CrMoV13" | "nitrided 31CrMoV9" | "nitrided AMS 6470" | "nitrided 42CrMo4" | "through-hardened 4340" | "through-hardened 42CrMo4" | Unknown>;
  /** Thickness of its rim below the roots of the teeth; without the key it is solid. */
  rim?: Sourced<Length | Unknown>;
  /** Thickness of the web that holds the rim; read beside `rim` only. */
  web?: Sourced<Length | Unknown>;
}

/** Front and rear; of an overhung shaft the front one stands next to the gears. */
export interface BoxBearings {
  /** The one nearer to the inlet of the engine. */
  front?: BearingSeat;
  /** The other one. */
  rear?: BearingSeat;
}

/** Those of the shaft that carries the bevel gear of a splined stub or a wide spur. */
export interface TakeOffBearings {
  /** The one next to the bevel gear. */
  gear?: BearingSeat;
  /** The one away from it. */
  away?: BearingSeat;
}

/** A gearshaft on two bearings at either end, and perhaps one between them. */
export interface TowerShaftBearings {
  /** Next to the bevel gear at the spool. */
  "inner gear"?: BearingSeat;
  /** The other one of that gear. */
  "inner away"?: BearingSeat;
  /** That of `mid bearing`. */
  mid?: BearingSeat;
  /** Next to the bevel gear at the box. */
  "outer gear"?: BearingSeat;
  /** The other one of that gear. */
  "outer away"?: BearingSeat;
}

/** One bearing, or a pair that is rated as one. */
export interface BearingSeat {
  /** What rolls in it, and how; `none`: there is no bearing.  Without the key by what it must bear. */
  form?: Sourced<"deep groove" | "angular contact" | "cylindrical roller" | "none">;
  /** Dimension series of ISO 15; outside, width and a generic inside follow.  Without it the lightest that holds. */
  series?: Sourced<"19" | "10" | "02" | "03">;
  /** Bore diameter, which is that of the journal. */
  bore?: Sourced<Length>;
  /** 2: a pair back to back or face to face, rated as one. */
  rows?: Sourced<Tally>;
  /** Contact angle of an angular contact bearing: 15 or from 20 to 45 degrees. */
  angle?: Sourced<Angle>;
  /** Does it hold the shaft along its axis?  One of the two does. */
  locates?: Sourced<"yes" | "no">;
  /** Its middle, from the front end of the shaft; of a radial shaft's gearshaft from the end that is nearer to the engine axis. */
  at?: Sourced<Length>;
  /** Outside diameter; else by the `series`. */
  outside?: Sourced<Length>;
  /** Width of one row; else by the `series`. */
  width?: Sourced<Length>;
  /** Balls or rollers in a row; else by the `series`. */
  elements?: Sourced<Tally>;
  /** Diameter of a ball or roller; else by the `series`. */
  ball?: Sourced<Length>;
  /** Effective length of a roller; else by the `series`. */
  "roller length"?: Sourced<Length>;
  /** Dynamic capacity of all rows, where a maker states one; else from the inside. */
  capacity?: Sourced<Force>;
  /** Static capacity of all rows, where a maker states one; else from the inside. */
  "static capacity"?: Sourced<Force>;
  /** Radial stiffness with its housing; else from the inside, in a stiff housing. */
  stiffness?: Sourced<Stiffness>;
}

/** A piece of a shaft of one diameter; they follow each other from the front end. */
export interface ShaftSection {
  /** Along the shaft. */
  length: Sourced<Length>;
  /** Outside diameter. */
  outside: Sourced<Length>;
  /** Diameter of its bore; without the key that of the shaft. */
  bore?: Sourced<Length>;
  /** Undercut of DIN 509 at the foot of every step up from it, a row of data/shaft_undercut.tsv: form, radius x depth in mm; without the key a fillet. */
  undercut?: Sourced<"E 0.2x0.1" | "E 0.4x0.2" | "E 0.6x0.2" | "E 0.6x0.3" | "E 0.8x0.3" | "E 1.0x0.2" | "E 1.0x0.4" | "E 1.2x0.2" | "E 1.2x0.4" | "E 1.6x0.3" | "E 2.5x0.4" | "E 4.0x0.5" | "F 0.2x0.1" | "F 0.4x0.2" | "F 0.6x0.2" | "F 0.6x0.3" | "F 0.8x0.3" | "F 1.0x0.2" | "F 1.0x0.4" | "F 1.2x0.2" | "F 1.2x0.4" | "F 1.6x0.3" | "F 2.5x0.4" | "F 4.0x0.5">;
}

/** The oil that runs through the boxes. */
export interface Oil {
  /** The public specification of the oil, from which its other values follow where the file does not give them.  Default: MIL-PRF-23699. */
  specification?: Sourced<"MIL-PRF-23699" | "MIL-PRF-23699 HTS" | "SAE AS5780 SPC" | "SAE AS5780 HPC" | "MIL-PRF-7808 grade 3" | "MIL-PRF-7808 grade 4" | "DOD-PRF-85734" | "mineral ISO VG 32" | "mineral ISO VG 46" | "mineral ISO VG 68" | "mineral ISO VG 100">;
  /** Kinematic viscosity at 40 degC.  Default: 27 cSt. */
  "viscosity at 40"?: Sourced<KinematicViscosity | Unknown>;
  /** Kinematic viscosity at 100 degC.  Default: 5.1 cSt. */
  "viscosity at 100"?: Sourced<KinematicViscosity | Unknown>;
  /** Density at 15 degC.  Default: 1000 kg/m3. */
  density?: Sourced<Density | Unknown>;
  /** Load stage at which the oil fails in the test A/8.3/90 of ISO 14635-1; without the key the one that leads to its `scuffing temperature`. */
  "scuffing stage"?: Sourced<PlainNumber | Unknown>;
  /** Contact temperature at which case-hardened flanks scuff in this oil.  Default: 220 degC. */
  "scuffing temperature"?: Sourced<Temperature | Unknown>;
  /** Stage at which the oil fails in the micropitting test of FVA 54/7; without the key films are told but not judged. */
  "micropitting stage"?: Sourced<Tally | Unknown>;
  /** Oil temperature of that test.  Default: 90 degC. */
  "micropitting test"?: Sourced<Temperature | Unknown>;
  /** Temperature of the oil that comes to the teeth.  Default: 90 degC. */
  feed?: Sourced<Temperature | Unknown>;
  /** The same in single conditions, where it is not `feed`. */
  "feed at"?: { [condition: string]: Sourced<Temperature | Unknown> };
  /** By how much warmer than its feed the oil in a bearing is.  Default: 30 K. */
  "bearing rise"?: Sourced<TemperatureDifference | Unknown>;
  /** How clean it is in the bearings: filter and code of ISO 4406.  Default: on line 15/12. */
  cleanness?: Sourced<"on line 13/10" | "on line 15/12" | "on line 17/14" | "on line 19/16" | "off line 13/10" | "off line 15/12" | "off line 17/14" | "off line 19/16" | "off line 21/18">;
  /** By how much the oil may warm in the boxes, in every condition that lasts.  Default: 35 K. */
  rise?: Sourced<TemperatureDifference | Unknown>;
  /** How warm the oil may leave the boxes, in any condition.  Default: 165 degC. */
  hottest?: Sourced<Temperature | Unknown>;
  /** What drops over the holes of the jets at full flow.  Default: 3 bar. */
  "jet pressure"?: Sourced<Stress | Unknown>;
  /** The smallest hole of a jet; a place that needs less oil is given more.  Default: 0.8 mm. */
  "least jet"?: Sourced<Length | Unknown>;
  /** The gap that every jet has to cross, from its hole to what it wets.  Default: 15 mm. */
  "jet gap"?: Sourced<Length | Unknown>;
  /** Full flow to the jets of all boxes; without the key what keeps every place within its `rise`. */
  flow?: Sourced<VolumeFlow | Unknown>;
}

/** By which standards the drive is rated. */
export interface Method {
  /** Which edition rates the cylindrical gears, by method B.  Default: ISO 6336:2019. */
  teeth?: Sourced<"ISO 6336:2019" | "ISO 6336:2006">;
}

/** What the checks hold the drive to. */
export interface Limits {
  /** The least transverse contact ratio of a cylindrical mesh.  Default: 1.2. */
  "contact ratio"?: Sourced<PlainNumber | Unknown>;
  /** The greatest face width over reference diameter of the smaller gear, straddled.  Default: 1. */
  "face to diameter"?: Sourced<PlainNumber | Unknown>;
  /** The same, overhung.  Default: 0.5. */
  "face to diameter overhung"?: Sourced<PlainNumber | Unknown>;
  /** The least face width over module that `towershaft size` chooses.  Default: 3. */
  "face to module"?: Sourced<PlainNumber | Unknown>;
  /** The least gap between bodies, and between a body and anything else.  Default: 5 mm. */
  "body gap"?: Sourced<Length | Unknown>;
  /** The least gap between tip circles of gears that do not mesh.  Default: 2 mm. */
  "gear gap"?: Sourced<Length | Unknown>;
  /** The greatest angle that a box may reach round the engine, axis to axis.  Default: 130 deg. */
  wrap?: Sourced<Angle | Unknown>;
  /** How many cylindrical meshes there may be between starter and box input.  Default: 4. */
  "start path meshes"?: Sourced<PlainNumber | Unknown>;
  /** The pitch line velocity beyond which jets and baffles are asked for.  Default: 80 m/s. */
  "pitch line velocity"?: Sourced<Velocity | Unknown>;
  /** The greatest surface speed of a radial shaft.  Default: 60 m/s. */
  "radial shaft speed"?: Sourced<Velocity | Unknown>;
  /** The least break torque of a neck over the highest torque that it must pass, and what stands behind it over its greatest break torque.  Default: 1.25. */
  "neck factor"?: Sourced<PlainNumber | Unknown>;
  /** The greatest chance that a designed neck breaks too early in its life, or too late.  Default: 0.1 %. */
  "neck chance"?: Sourced<PlainNumber | Unknown>;
  /** The reserve that is wanted inside every speed band.  Default: 0 %. */
  "speed margin"?: Sourced<PlainNumber | Unknown>;
  /** The least safety S_H of flanks against pitting.  Default: 1. */
  "contact safety"?: Sourced<PlainNumber | Unknown>;
  /** The least safety S_F of roots against breakage.  Default: 1.25. */
  "bending safety"?: Sourced<PlainNumber | Unknown>;
  /** The greatest share of its time that a mesh may spend at the main resonance of its teeth.  Default: 20 %. */
  "time at resonance"?: Sourced<PlainNumber | Unknown>;
  /** The greatest share of its time that a drive may spend where a natural frequency of its torsion parts flanks.  Default: 20 %. */
  "time with parting flanks"?: Sourced<PlainNumber | Unknown>;
  /** How far above its highest speed a shaft is to whirl first, as a multiple of it.  Default: 1.25. */
  "whirl margin"?: Sourced<PlainNumber | Unknown>;
  /** How far the teeth of a mesh are to stay from the travelling waves of its webs.  Default: 10 %. */
  "web clearance"?: Sourced<PlainNumber | Unknown>;
  /** How far the safety of a mesh by AGMA 2101 may be from that by ISO 6336.  Default: 15 %. */
  "standards apart"?: Sourced<PlainNumber | Unknown>;
  /** The least thickness of a rim over the height of its teeth.  Default: 1.2. */
  "rim to tooth height"?: Sourced<PlainNumber | Unknown>;
  /** The least normal backlash of cylindrical gears, whatever their allowances and temperatures.  Default: 0.02 mm. */
  backlash?: Sourced<Length | Unknown>;
  /** The greatest mass of the whole drive without its accessories; without the key none is wanted. */
  mass?: Sourced<Mass | Unknown>;
  /** How far the centre of mass of a box with its accessories may lie before or behind the middle of its depth; without the key it is not judged. */
  "mass overhang"?: Sourced<Length | Unknown>;
  /** The least modified life of a bearing over the life of the drive.  Default: 1. */
  "bearing life"?: Sourced<PlainNumber | Unknown>;
  /** The least static safety S_0 of a bearing.  Default: 1.5. */
  "bearing static safety"?: Sourced<PlainNumber | Unknown>;
  /** The greatest mean diameter (mm) times speed (rpm) of a bearing.  Default: 2000000. */
  "bearing speed number"?: Sourced<PlainNumber | Unknown>;
  /** The least ratio of the load of a bearing to what keeps its elements rolling.  Default: 1. */
  "bearing slip"?: Sourced<PlainNumber | Unknown>;
  /** The least safety of a shaft against fatigue by DIN 743.  Default: 1.5. */
  "shaft fatigue safety"?: Sourced<PlainNumber | Unknown>;
  /** The least safety of a shaft against yield by DIN 743.  Default: 1.5. */
  "shaft static safety"?: Sourced<PlainNumber | Unknown>;
  /** The greatest slope of a shaft at a cylindrical gear.  Default: 0.0005 rad. */
  "slope at mesh"?: Sourced<Angle | Unknown>;
  /** The greatest deflection of a shaft at a cylindrical gear, in modules.  Default: 0.03. */
  "deflection at mesh"?: Sourced<PlainNumber | Unknown>;
  /** The least safety S_B of flanks against scuffing, by the flash temperature.  Default: 1.5. */
  "flash safety"?: Sourced<PlainNumber | Unknown>;
  /** The least safety S_intS of flanks against scuffing, by the integral temperature.  Default: 1.2. */
  "integral safety"?: Sourced<PlainNumber | Unknown>;
  /** The least safety S_lambda of the oil film against micropitting, an indication.  Default: 1. */
  "film safety"?: Sourced<PlainNumber | Unknown>;
  /** The least speed of an oil jet over that of the teeth.  Default: 0.2. */
  "jet speed"?: Sourced<PlainNumber | Unknown>;
  /** How far the wind of teeth or cage may carry an oil jet aside, over the gap that it crosses.  Default: 10 %. */
  "jet drift"?: Sourced<PlainNumber | Unknown>;
  /** How much more power a mesh may pass, with all losses that are computed, than the ratings count with by `loss`.  Default: 25 %. */
  "power above rated"?: Sourced<PlainNumber | Unknown>;
}

/** One line of your own register of assumptions. */
export interface AssumptionLine {
  /** What is assumed. */
  says: Sourced<string>;
  /** The address of what it is about. */
  at?: Sourced<string | Unknown>;
  /** Who says so. */
  source?: Sourced<string | Unknown>;
  /** Since when. */
  date?: Sourced<CalendarDate | Unknown>;
}

/** One finding that is accepted.  A waiver that covers no finding is itself a finding. */
export interface Waiver {
  /** The rule whose finding is accepted. */
  rule: Sourced<string>;
  /** The address of the finding. */
  at: Sourced<string>;
  /** The reason; a waiver without one is refused. */
  why: Sourced<string>;
  /** Who accepts it. */
  by?: Sourced<string | Unknown>;
  /** The last day on which it holds. */
  until?: Sourced<CalendarDate | Unknown>;
}

/** What `towershaft arrange` may choose.  No other command reads it. */
export interface Arrange {
  /** What may be chosen in the box of each tapped spool. */
  boxes?: { [name: string]: ArrangeBox };
  /** Where accessories may stand that may not stand everywhere. */
  accessories?: { [name: string]: ArrangeAccessory };
  /** Tooth numbers of gears that carry pads.  Default: 19..97. */
  teeth?: Sourced<TallySpan>;
  /** Tooth numbers that idlers may have.  Default: 24..60. */
  "idler teeth"?: Sourced<TallySpan> | Sourced<TallySpan>[];
  /** The most idlers in a row.  Default: 2. */
  idlers?: Sourced<Tally>;
  /** The most step shafts in a branch.  One without a pad counts as an idler too.  Default: 1. */
  steps?: Sourced<Tally>;
  /** Must every mesh have tooth numbers without a common factor?  Default: yes. */
  hunting?: Sourced<"yes" | "no">;
  /** Face widths are whole multiples of it.  Default: 0.5 mm. */
  "face step"?: Sourced<Length>;
  /** No face is narrower.  Default: 8 mm. */
  "least face"?: Sourced<Length>;
  /** What parts weigh. */
  mass?: ArrangeMass;
  /** What counts beside mass. */
  weights?: ArrangeWeights;
}

/** What may be chosen in the box of one spool. */
export interface ArrangeBox {
  /** Normal modules that the gears of this box may have, one for the whole box.  Without it, the module that the box has. */
  modules?: Sourced<Length> | Sourced<Length>[];
  /** Tooth numbers that the gear on the box input may have.  Without it, the number that it has. */
  "input teeth"?: Sourced<TallySpan> | Sourced<TallySpan>[];
  /** The widest angle between the outermost axes of the box.  Without it, `wrap` of `limits`, else 180 deg. */
  wrap?: Sourced<Angle>;
  /** The widest angle from the box input to the outermost axis on either side.  Without it, the wrap. */
  side?: Sourced<Angle>;
  /** Which ends of the input shaft may carry an accessory.  Default: either. */
  "input faces"?: Sourced<"front" | "rear" | "either">;
  /** Tooth numbers that the first gear of a step shaft may have, which meshes towards the input.  Without it, with `step teeth`, those of idlers. */
  "stepped teeth"?: Sourced<TallySpan> | Sourced<TallySpan>[];
  /** Tooth numbers that the second gear of a step shaft may have, which drives all beyond it.  Every one of them with every one of the first gear is a plane to search, so few are quick.  Without it, the step shafts that the box has. */
  "step teeth"?: Sourced<TallySpan> | Sourced<TallySpan>[];
  /** Normal modules that the second gear of a step shaft, and all beyond it, may have.  Without it, with `step teeth`, that of the box. */
  "step modules"?: Sourced<Length> | Sourced<Length>[];
  /** Pairs that the `bevels` of the `take-off` may be, and so how fast the radial shaft turns.  Without it, the pair that stands there. */
  "spool bevels"?: ArrangeBevels[];
  /** Pairs that the `bevels` of the box may be.  Every one of them with every one of `spool bevels` and of `radial shafts` is tried, at most 64.  Without it, the pair that stands there. */
  "box bevels"?: ArrangeBevels[];
  /** What the `tower shaft` may be.  Without it, the one that stands there. */
  "radial shafts"?: ArrangeTower[];
}

/** Where one accessory may stand, when it may not stand everywhere. */
export interface ArrangeAccessory {
  /** The only spool on whose box it may stand.  Without it, any tapped spool that the rules allow: what the engine needs to run, and the starter, stay on the spool that is cranked. */
  "box of"?: Sourced<string>;
  /** On which face of the box it may stand.  Default: either. */
  face?: Sourced<"front" | "rear" | "either">;
  /** On which side of the box input it may stand, in the file's `sight`; on the input itself it stands on neither.  Default: either. */
  side?: Sourced<"clockwise" | "anticlockwise" | "either">;
}

/** A pair that may stand where one stands now; all that it does not say stays. */
export interface ArrangeBevels {
  /** Tooth numbers, the gear nearer to the spool first. */
  teeth: [Sourced<Tally>, Sourced<Tally>];
  /** Outer transverse module m_et.  Without it, that of the pair that stands there. */
  module?: Sourced<Length>;
  /** Face width of both gears.  Without it, that of the pair that stands there. */
  face?: Sourced<Length>;
}

/** A radial shaft that may stand where one stands now; all that it does not say stays. */
export interface ArrangeTower {
  /** Its outside diameter. */
  outside: Sourced<Length>;
  /** Its bore; 0 mm for a solid shaft.  Without it, that of the one that stands there. */
  bore?: Sourced<Length>;
}

/** What `arrange` weighs.  The casing weighs its developed wall, as long as the arc between the outermost axes. */
export interface ArrangeMass {
  /** Density of the gears.  Default: 7850 kg/m3. */
  "gear density"?: Sourced<Density>;
  /** Share of the pitch cylinder of a gear that is metal.  Default: 0.55. */
  "gear fill"?: Sourced<PlainNumber>;
  /** Of a shaft that carries a pad, or of the input shaft, with its bearings.  Default: 0.45 kg. */
  shaft?: Sourced<Mass>;
  /** Of an idler's shaft with its bearings.  Default: 0.3 kg. */
  idler?: Sourced<Mass>;
  /** What a second gear adds to its shaft beside its own metal.  Default: 0.15 kg. */
  step?: Sourced<Mass>;
  /** Of a pad.  Default: 0.35 kg. */
  pad?: Sourced<Mass>;
  /** Of what comes with a box at once: bevels, radial shaft, mounts.  Default: 4 kg. */
  box?: Sourced<Mass>;
  /** Mean thickness of the casing's wall.  Default: 4 mm. */
  "casing wall"?: Sourced<Length>;
  /** Mean height of the casing's section, across the arc.  Default: 110 mm. */
  "casing height"?: Sourced<Length>;
  /** Density of the casing.  Default: 1820 kg/m3. */
  "casing density"?: Sourced<Density>;
}

/** What `arrange` counts beside mass.  The proof is then about the sum, and so is every mass that `arrange` tells; it says how much of each is no mass. */
export interface ArrangeWeights {
  /** What a degree between the outermost axes of a box counts as, beside the mass of its casing.  Default: 0 kg/deg. */
  wrap?: Sourced<MassPerAngle>;
  /** What each kilogram counts as that must be lowered before an accessory can be, summed over all accessories.  In the way of one is whatever stands on the same face of the same branch nearer to the input, or on the input: the input is taken to hang lowest.  Default: 0. */
  servicing?: Sourced<PlainNumber>;
}

/** What is not drawn and yet weighs: metals, walls, and how hard the engine shakes. */
export interface Weighing {
  /** Of the shafts, a row of data/metal.tsv.  Default: 9310 core. */
  "shaft metal"?: Sourced<"9310 core" | "low-alloy 125 ksi" | "low-alloy 140 ksi" | "low-alloy 150 ksi" | "low-alloy 160 ksi" | "low-alloy 180 ksi" | "low-alloy 200 ksi" | "4330v 220 ksi">;
  /** Nominal torsion under the highest torque, by which a box shaft gets a thickness where nothing else says one.  Default: 100 MPa. */
  "shaft stress"?: Sourced<Stress | Unknown>;
  /** Of the casings, a row of data/metal.tsv.  Default: ze41a-t5. */
  "casing metal"?: Sourced<"ze41a-t5" | "we43-t6" | "ez33a-t5" | "a357-t61">;
  /** Mean thickness of the casings' walls.  Default: 4 mm. */
  "casing wall"?: Sourced<Length | Unknown>;
  /** Between the tips of the gears and the inside of the casing.  Default: 6 mm. */
  "casing gap"?: Sourced<Length | Unknown>;
  /** What ribs, bosses and flanges add to the developed wall.  Default: 30 %. */
  "casing extra"?: Sourced<PlainNumber | Unknown>;
  /** Load factor down, of accelerations of the engine in units of g.  Default: 6. */
  down?: Sourced<PlainNumber | Unknown>;
  /** Load factor up, of accelerations of the engine in units of g.  Default: 3. */
  up?: Sourced<PlainNumber | Unknown>;
  /** Load factor forward, of accelerations of the engine in units of g.  Default: 9. */
  forward?: Sourced<PlainNumber | Unknown>;
  /** Load factor rearward, of accelerations of the engine in units of g.  Default: 1.5. */
  rearward?: Sourced<PlainNumber | Unknown>;
  /** Load factor sideward, of accelerations of the engine in units of g.  Default: 3. */
  sideward?: Sourced<PlainNumber | Unknown>;
}

/** A point on which a box stands. */
export interface Mount {
  /** Where round the engine. */
  clock: Sourced<Clock>;
  /** How far from the engine axis. */
  radius: Sourced<Length>;
  /** How far rearward of the radial shaft's axis. */
  aft: Sourced<Length>;
}

/** One point of a torque curve; between two points the torque changes evenly with the speed, and beyond the last it goes on as before it. */
export interface TorquePoint {
  /** At which speed. */
  speed: Sourced<RotationalSpeed>;
  /** Which torque. */
  torque: Sourced<Torque>;
}

/** How the engine is started: from rest over light-off and the starter's cut-out to idle. */
export interface Start {
  /** Speed of the cranked spool at which the fuel burns; without the key the highest at which a starter drives in a condition. */
  "light-off"?: Sourced<RotationalSpeed | Unknown>;
  /** Speed of the cranked spool at which the starter is shut off; without the key half of the highest that it has in any condition. */
  "cut-out"?: Sourced<RotationalSpeed | Unknown>;
  /** Speed of the cranked spool at which the start is done; without the key the lowest at which no starter drives in a condition. */
  idle?: Sourced<RotationalSpeed | Unknown>;
  /** Temperature of the air.  Default: 15 degC. */
  ambient?: Sourced<Temperature | Unknown>;
  /** Temperature of the oil in the bearings, from rest to idle.  Default: 15 degC. */
  oil?: Sourced<Temperature | Unknown>;
  /** Temperature of the air at which the curves of the spool hold.  Default: 15 degC. */
  "curves at"?: Sourced<Temperature | Unknown>;
  /** Ambient pressure over that at which the curves of the spool hold.  Default: 1. */
  pressure?: Sourced<PlainNumber | Unknown>;
  /** Temperatures of the air that --grid goes through.  Default: -40..50 degC. */
  ambients?: Sourced<Span<TemperatureUnit> | Unknown>;
  /** Temperatures of the oil that --grid goes through.  Default: -40..50 degC. */
  oils?: Sourced<Span<TemperatureUnit> | Unknown>;
  /** How many temperatures of each.  Default: 7. */
  grid?: Sourced<Tally | Unknown>;
  /** Acceleration of the cranked spool at which the start is taken to hang.  Default: 20 rpm/s. */
  "hung below"?: Sourced<RotationalAcceleration | Unknown>;
  /** How long a start may take.  Default: 120 s. */
  "gives up after"?: Sourced<Time | Unknown>;
  /** How long the cranked spool takes from idle to the condition that --to names; its control accelerates it evenly.  Default: 5 s. */
  "from idle in"?: Sourced<Time | Unknown>;
  /** f_0 of Palmgren for a row of the bearings of the boxes: what oil takes in them.  Default: 2. */
  "bearing factor"?: Sourced<PlainNumber | Unknown>;
}

/** What is taken where an accessory that seizes is followed in time. */
export interface Seizure {
  /** Damping of a mesh, of critical.  Default: 7 %. */
  "mesh damping"?: Sourced<PlainNumber | Unknown>;
  /** Damping of a shaft, of critical.  Default: 1 %. */
  "shaft damping"?: Sourced<PlainNumber | Unknown>;
  /** Normal play of a mesh in modules where the file does not lead to it.  Default: 0.04. */
  play?: Sourced<PlainNumber | Unknown>;
}

/** What is taken where a short, a step of load, a slam of the throttle or a clutch that takes hold is followed in time. */
export interface Jolt {
  /** Crest of the torque of a shorted generator over what it takes continuously.  Default: 6. */
  "short torque"?: Sourced<PlainNumber | Unknown>;
  /** Frequency of the current, and so of the torque of a shorted generator.  Default: 400 Hz. */
  "short frequency"?: Sourced<Frequency | Unknown>;
  /** Time in which the torque of a shorted generator falls to 1/e.  Default: 20 ms. */
  "short decay"?: Sourced<Time | Unknown>;
  /** Torque after a step over the continuous one, for an accessory without `overload`.  Default: 1.5. */
  "step torque"?: Sourced<PlainNumber | Unknown>;
  /** Acceleration of the input of the box when the throttle is slammed open.  Default: 3600 rpm/s. */
  slam?: Sourced<RotationalAcceleration | Unknown>;
  /** Deceleration of the input of the box when the throttle is chopped.  Default: 5000 rpm/s. */
  chop?: Sourced<RotationalAcceleration | Unknown>;
  /** By how much the rotor of a starter is faster than its pad when its clutch takes hold.  Default: 100 rpm. */
  "engage slip"?: Sourced<RotationalSpeed | Unknown>;
}

/** What is taken where critical speeds and unbalance of the shafts are computed. */
export interface Whirl {
  /** Stiffness against tilting of either spline of a radial shaft.  Default: 0 N.m/rad. */
  "spline stiffness"?: Sourced<TorsionalStiffness | Unknown>;
  /** Loss factor of the bearings: damping of their stiffness.  Default: 4 %. */
  "bearing loss"?: Sourced<PlainNumber | Unknown>;
  /** Balance quality grade G of ISO 21940-11 to which each shaft is balanced, in mm/s.  Default: 2.5. */
  "balance grade"?: Sourced<PlainNumber | Unknown>;
}
