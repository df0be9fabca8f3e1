import { add, div, dot, pow, sum, sym } from '../method/expr.ts';
import { defineMethod, MethodError, type Params } from '../method/method.ts';
import { ABOVE_ZERO, refuseOutside } from '../numerics/refuse.ts';
import { MASS_INPUT } from './load.ts';

const id = 'vehicle.massFactor';

const inputs = {
  ...MASS_INPUT,
  wheelInertias: {
    form: 'list',
    kind: 'inertia',
    symbol: 'I_w',
    meaning: 'moment of inertia of each wheel with what is fixed to it',
    range: { min: 0 },
    atLeast: 1,
  },
  wheelRadii: {
    form: 'list',
    kind: 'length',
    symbol: 'r_w',
    meaning: 'rolling radius of each wheel, in the same order',
    range: ABOVE_ZERO,
    atLeast: 1,
  },
  drivenRadius: {
    form: 'value',
    kind: 'length',
    symbol: 'r',
    meaning: 'rolling radius of the driven wheel',
    range: ABOVE_ZERO,
  },
  partInertias: {
    form: 'list',
    kind: 'inertia',
    symbol: 'I',
    meaning: 'moment of inertia of the engine and of each shaft of the drive, with what is fixed to it',
    range: { min: 0 },
  },
  partRatios: {
    form: 'list',
    kind: 'ratio',
    symbol: 'i',
    meaning: 'speed of each of these over speed of the driven wheel',
    range: ABOVE_ZERO,
  },
  partEfficiencies: {
    form: 'list',
    kind: 'fraction',
    symbol: 'η',
    meaning: 'efficiency from each of these to the wheel',
    range: { min: 1e-6, max: 1 },
  },
  driver: {
    form: 'choice',
    choices: ['engine', 'load'],
    symbol: 'q',
    meaning: 'what drives: the engine, or the vehicle on the overrun',
    default: 'engine',
  },
} as const satisfies Params;

function refuseUnlike(name: string, key: string, list: readonly number[], wanted: readonly number[]): void {
  if (list.length === wanted.length) return;
  throw new MethodError(
    id,
    key,
    `${name} must be a list of ${wanted.length} entries, one for each moment of inertia; read ${list.length}.`,
  );
}

/**
 * Mass that the turning parts add, as a vehicle feels it that speeds up or slows down without slip. Where the clutch slips, leave the engine out.
 *
 * Errors: lists of different length, radii or ratios not above zero, efficiencies outside 0.01..1.
 */
export const massFactor = defineMethod({
  id,
  gives: 'Equivalent mass of a vehicle with its turning parts, and the mass factor',
  inputs,
  outputs: {
    massFactor: { form: 'value', kind: 'ratio', symbol: 'γ', meaning: 'equivalent mass over mass' },
    equivalentMass: { form: 'value', kind: 'mass', symbol: 'm_e', meaning: 'equivalent mass' },
    wheelMass: { form: 'value', kind: 'mass', symbol: 'm_w', meaning: 'mass that the wheels add' },
    driveMass: { form: 'value', kind: 'mass', symbol: 'm_d', meaning: 'mass that engine and drive add' },
    wheelParts: { form: 'list', kind: 'mass', symbol: 'm_p', meaning: 'mass that each wheel adds' },
    partFactors: {
      form: 'list',
      kind: 'ratio',
      symbol: 'c',
      meaning: 'ratio squared times efficiency, over it when the load drives, of each part of the drive',
    },
    driveInertia: { form: 'value', kind: 'inertia', symbol: 'I_d', meaning: 'drive as felt at the wheel' },
  },
  results: ['massFactor', 'equivalentMass', 'wheelMass', 'driveMass', 'driveInertia'],
  steps: [
    {
      key: 'wheelParts',
      left: sym('wheelParts', 0),
      right: div(sym('wheelInertias', 0), pow(sym('wheelRadii', 0), 2)),
      says: 'Each wheel adds its moment of inertia over its radius squared; shown for the first.',
    },
    { key: 'wheelMass', is: sum('wheelParts'), says: 'All wheels.' },
    {
      key: 'driveInertia',
      is: dot('partInertias', 'partFactors'),
      says: 'Each part counts with its ratio squared; with its efficiency when the engine drives, over it when the load drives.',
    },
    {
      key: 'driveMass',
      is: div('driveInertia', pow('drivenRadius', 2)),
      says: 'Through the driven wheel to the ground.',
    },
    { key: 'equivalentMass', is: add('mass', 'wheelMass', 'driveMass'), says: 'Mass and turning parts.' },
    { key: 'massFactor', is: div('equivalentMass', 'mass'), says: 'Against the mass alone.' },
  ],
  sources: [
    {
      title: 'Theory of Machines (Khurmi, Gupta)',
      at: 'examples 3.13 and 3.15, efficiency on either side',
      how: 'read',
    },
  ],
  holds: ['No tyre and no clutch slips.'],
  run: (input) => {
    refuseOutside(id, inputs, input);
    const { mass, wheelInertias, wheelRadii, partInertias, partRatios, partEfficiencies, drivenRadius, driver } = input;
    refuseUnlike('Rolling radii', 'wheelRadii', wheelRadii, wheelInertias);
    refuseUnlike('Ratios', 'partRatios', partRatios, partInertias);
    refuseUnlike('Efficiencies', 'partEfficiencies', partEfficiencies, partInertias);
    const wheelParts = wheelInertias.map((inertia, k) => inertia / (wheelRadii[k] as number) ** 2);
    const partFactors = partRatios.map((ratio, k) => {
      const efficiency = partEfficiencies[k] as number;
      return ratio ** 2 * (driver === 'engine' ? efficiency : 1 / efficiency);
    });
    const wheelMass = wheelParts.reduce((total, part) => total + part, 0);
    const driveInertia = partFactors.reduce((total, factor, k) => total + factor * (partInertias[k] as number), 0);
    const driveMass = driveInertia / drivenRadius ** 2;
    const equivalentMass = mass + wheelMass + driveMass;
    return {
      massFactor: equivalentMass / mass,
      equivalentMass,
      wheelMass,
      driveMass,
      wheelParts,
      partFactors,
      driveInertia,
    };
  },
});
