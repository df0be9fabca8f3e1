/**
 * Kinds of quantity, their SI unit and their dimension.
 *
 * Source: BIPM, The International System of Units (SI Brochure), 9th edition, 2019, tables 2 and 4.
 */

/** Exponents of metre, kilogram, second and kelvin. Plane angle counts as a number, as in the SI. */
export type Dimension = readonly [length: number, mass: number, time: number, temperature: number];

interface KindFacts {
  readonly name: string;
  /** Symbol of the SI unit that numbers of this kind are kept in. */
  readonly si: string;
  readonly dimension: Dimension;
}

const NONE: Dimension = [0, 0, 0, 0];

export const KINDS = {
  number: { name: 'plain number', si: '', dimension: NONE },
  ratio: { name: 'ratio', si: '', dimension: NONE },
  fraction: { name: 'part of one', si: '', dimension: NONE },
  count: { name: 'count', si: '', dimension: NONE },
  angle: { name: 'angle', si: 'rad', dimension: NONE },
  length: { name: 'length', si: 'm', dimension: [1, 0, 0, 0] },
  area: { name: 'area', si: 'm²', dimension: [2, 0, 0, 0] },
  volume: { name: 'volume', si: 'm³', dimension: [3, 0, 0, 0] },
  areaMoment: { name: 'second moment of area', si: 'm⁴', dimension: [4, 0, 0, 0] },
  time: { name: 'time', si: 's', dimension: [0, 0, 1, 0] },
  frequency: { name: 'frequency', si: 'Hz', dimension: [0, 0, -1, 0] },
  speed: { name: 'speed', si: 'm/s', dimension: [1, 0, -1, 0] },
  acceleration: { name: 'acceleration', si: 'm/s²', dimension: [1, 0, -2, 0] },
  angularSpeed: { name: 'speed of rotation', si: 'rad/s', dimension: [0, 0, -1, 0] },
  mass: { name: 'mass', si: 'kg', dimension: [0, 1, 0, 0] },
  linearDensity: { name: 'mass per length', si: 'kg/m', dimension: [-1, 1, 0, 0] },
  density: { name: 'density', si: 'kg/m³', dimension: [-3, 1, 0, 0] },
  inertia: { name: 'moment of inertia', si: 'kg·m²', dimension: [2, 1, 0, 0] },
  force: { name: 'force', si: 'N', dimension: [1, 1, -2, 0] },
  torque: { name: 'torque', si: 'N·m', dimension: [2, 1, -2, 0] },
  torqueSlope: { name: 'torque per speed of rotation', si: 'N·m·s', dimension: [2, 1, -1, 0] },
  energy: { name: 'energy', si: 'J', dimension: [2, 1, -2, 0] },
  power: { name: 'power', si: 'W', dimension: [2, 1, -3, 0] },
  pressure: { name: 'pressure or stress', si: 'Pa', dimension: [-1, 1, -2, 0] },
  stiffness: { name: 'stiffness', si: 'N/m', dimension: [0, 1, -2, 0] },
  turningStiffness: { name: 'stiffness against turning', si: 'N·m/rad', dimension: [2, 1, -2, 0] },
  viscosity: { name: 'kinematic viscosity', si: 'm²/s', dimension: [2, 0, -1, 0] },
  temperature: { name: 'temperature', si: 'K', dimension: [0, 0, 0, 1] },
  temperatureDifference: { name: 'temperature difference', si: 'K', dimension: [0, 0, 0, 1] },
  hardness: { name: 'hardness', si: '', dimension: NONE },
} as const satisfies Record<string, KindFacts>;

/** The name of a kind of quantity. */
export type Kind = keyof typeof KINDS;

/** SI symbol of a kind's unit; empty for plain numbers. */
export function siUnit(kind: Kind): string {
  return KINDS[kind].si;
}

/** Dimension of a kind. */
export function dimensionOf(kind: Kind): Dimension {
  return KINDS[kind].dimension;
}
