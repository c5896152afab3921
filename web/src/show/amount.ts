// How is an SI number shown in the units that the reader chose?
import { units } from "../state/store";
import { number } from "./format";

/** Exact by definition: 1 in = 25.4 mm, 1 lb = 0.45359237 kg, g_n = 9.80665 m/s2. */
const US: Record<string, [number, string]> = {
  "mm": [1 / 25.4, "in"],
  "um": [1 / 25400, "in"],
  "N.m": [1 / (0.0254 * 0.45359237 * 9.80665), "lbf.in"],
  "N": [1 / (0.45359237 * 9.80665), "lbf"],
  "kg": [1 / 0.45359237, "lb"],
};

export function unitOf(unit: string): string {
  return units.value === "us" ? US[unit]?.[1] ?? unit : unit;
}

export function inUnit(value: number, unit: string): number {
  return units.value === "us" ? value * (US[unit]?.[0] ?? 1) : value;
}

const CELSIUS = { unit: "degC", of: (kelvin: number): number => kelvin - 273.15 };
const FAHRENHEIT = { unit: "degF", of: (kelvin: number): number => (kelvin - 273.15) * 1.8 + 32 };

/** How temperatures are shown now; always the same object for the same units. */
export function degreesShown(): { unit: string; of: (kelvin: number) => number } {
  return units.value === "us" ? FAHRENHEIT : CELSIUS;
}

/** The number with its unit. */
export function amount(value: number | null | undefined, unit: string, figures = 4): string {
  if (value === null || value === undefined) return "not known";
  const shown = unitOf(unit);
  return `${number(inUnit(value, unit), figures)}${shown === "1" ? "" : ` ${shown}`}`;
}
