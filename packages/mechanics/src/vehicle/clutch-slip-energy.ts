import { div, mul, sub } from '../method/expr.ts';
import { defineMethod, MethodError, type Params } from '../method/method.ts';
import { ABOVE_ZERO, refuseOutside } from '../numerics/refuse.ts';

const id = 'vehicle.clutchSlipEnergy';

const inputs = {
  engineSpeed: {
    form: 'value',
    kind: 'angularSpeed',
    symbol: 'ω_c',
    meaning: 'engine speed held until the clutch no longer slips',
    range: ABOVE_ZERO,
  },
  torque: {
    form: 'value',
    kind: 'torque',
    symbol: 'T',
    meaning: 'torque that the clutch passes, at engine speed',
    range: ABOVE_ZERO,
  },
  efficiency: {
    form: 'value',
    kind: 'fraction',
    symbol: 'η',
    meaning: 'efficiency from clutch to wheel',
    range: { min: 0.01, max: 1 },
  },
  ratio: {
    form: 'value',
    kind: 'ratio',
    symbol: 'i',
    meaning: 'engine speed over wheel speed in the starting gear',
    range: ABOVE_ZERO,
  },
  rollingRadius: {
    form: 'value',
    kind: 'length',
    symbol: 'r',
    meaning: 'rolling radius of the driven wheel',
    range: ABOVE_ZERO,
  },
  mass: {
    form: 'value',
    kind: 'mass',
    symbol: 'm',
    meaning: 'mass with the turning wheels, without the engine',
    range: ABOVE_ZERO,
  },
  load: { form: 'value', kind: 'force', symbol: 'R', meaning: 'pull that rolling and slope take', range: { min: 0 } },
  referenceRatio: {
    form: 'value',
    kind: 'ratio',
    symbol: 'i_0',
    meaning: 'the same ratio in the vehicle that the engine and clutch come from',
    range: ABOVE_ZERO,
  },
  referenceRadius: {
    form: 'value',
    kind: 'length',
    symbol: 'r_0',
    meaning: 'rolling radius of the driven wheel there',
    range: ABOVE_ZERO,
  },
  referenceMass: { form: 'value', kind: 'mass', symbol: 'm_0', meaning: 'mass there', range: ABOVE_ZERO },
  referenceLoad: {
    form: 'value',
    kind: 'force',
    symbol: 'R_0',
    meaning: 'pull that rolling and slope take there',
    range: { min: 0 },
  },
} as const satisfies Params;

/**
 * Heat in the clutch in one start from rest, with the engine held at a speed until both sides turn alike; against the vehicle that the
 * clutch was made for.
 *
 * Errors: values not above zero, efficiency outside 0.01..1, a torque that does not overcome the load of either vehicle.
 */
export const clutchSlipEnergy = defineMethod({
  id,
  gives: 'Heat in the clutch in one start from rest, and against the vehicle the clutch was made for',
  inputs,
  outputs: {
    energy: { form: 'value', kind: 'energy', symbol: 'E', meaning: 'heat in the clutch in one start' },
    time: { form: 'value', kind: 'time', symbol: 't', meaning: 'time that the clutch slips' },
    syncSpeed: { form: 'value', kind: 'speed', symbol: 'v', meaning: 'road speed at which it stops slipping' },
    distance: { form: 'value', kind: 'length', symbol: 's', meaning: 'distance until then' },
    referenceEnergy: { form: 'value', kind: 'energy', symbol: 'E_0', meaning: 'heat in one start there' },
    referenceTime: { form: 'value', kind: 'time', symbol: 't_0', meaning: 'time of slip there' },
    energyRatio: { form: 'value', kind: 'ratio', symbol: 'k', meaning: 'heat over the heat there' },
    pull: { form: 'value', kind: 'force', symbol: 'F', meaning: 'pull at the ground' },
    referencePull: { form: 'value', kind: 'force', symbol: 'F_0', meaning: 'pull at the ground there' },
    referenceSpeed: { form: 'value', kind: 'speed', symbol: 'v_0', meaning: 'road speed at the end of slip there' },
    engineWork: { form: 'value', kind: 'energy', symbol: 'E_e', meaning: 'work of the engine in that time' },
  },
  results: ['energy', 'time', 'syncSpeed', 'distance', 'referenceEnergy', 'referenceTime', 'energyRatio', 'engineWork'],
  steps: [
    {
      key: 'pull',
      is: div(mul('torque', 'ratio', 'efficiency'), 'rollingRadius'),
      says: 'What the clutch passes, at the ground.',
    },
    {
      key: 'syncSpeed',
      is: div(mul('engineSpeed', 'rollingRadius'), 'ratio'),
      says: 'Here both sides of the clutch turn alike.',
    },
    {
      key: 'time',
      is: div(mul('mass', 'syncSpeed'), sub('pull', 'load')),
      says: 'Constant pull less load gives constant acceleration.',
    },
    { key: 'distance', is: div(mul('syncSpeed', 'time'), 2), says: 'Half the end speed on the mean.' },
    {
      key: 'engineWork',
      is: mul('torque', 'engineSpeed', 'time'),
      says: 'Torque and speed of the engine are constant.',
    },
    {
      key: 'energy',
      is: div('engineWork', 2),
      says: 'The slip falls evenly from the engine’s speed to nothing, so half the engine’s work becomes heat.',
    },
    {
      key: 'referencePull',
      is: div(mul('torque', 'referenceRatio', 'efficiency'), 'referenceRadius'),
      says: 'The same clutch and torque in the other vehicle.',
    },
    {
      key: 'referenceSpeed',
      is: div(mul('engineSpeed', 'referenceRadius'), 'referenceRatio'),
      says: 'End of slip there.',
    },
    {
      key: 'referenceTime',
      is: div(mul('referenceMass', 'referenceSpeed'), sub('referencePull', 'referenceLoad')),
      says: 'Time of slip there.',
    },
    { key: 'referenceEnergy', is: div(mul('torque', 'engineSpeed', 'referenceTime'), 2), says: 'Heat there.' },
    { key: 'energyRatio', is: div('energy', 'referenceEnergy'), says: 'How much harder the clutch works now.' },
  ],
  sources: [{ title: 'Work of a slipping clutch under constant torque', how: 'derived' }],
  holds: [
    'Start from rest; the engine is held at one speed and the clutch passes one torque throughout. Drag of the air is left out.',
    'The same efficiency in both vehicles.',
  ],
  run: (input) => {
    refuseOutside(id, inputs, input);
    const { engineSpeed, torque, efficiency, ratio, rollingRadius, mass, load } = input;
    const start = (i: number, r: number, m: number, against: number, key: string) => {
      const pull = (torque * i * efficiency) / r;
      if (!(pull > against))
        throw new MethodError(
          id,
          key,
          `Pull that rolling and slope take: ${against} N read; less than the pull of the clutch, ${pull} N, is accepted.`,
        );
      const speed = (engineSpeed * r) / i;
      const time = (m * speed) / (pull - against);
      return { pull, speed, time, energy: (torque * engineSpeed * time) / 2 };
    };
    const own = start(ratio, rollingRadius, mass, load, 'load');
    const { referenceRatio, referenceRadius, referenceMass, referenceLoad } = input;
    const there = start(referenceRatio, referenceRadius, referenceMass, referenceLoad, 'referenceLoad');
    return {
      energy: own.energy,
      time: own.time,
      syncSpeed: own.speed,
      distance: (own.speed * own.time) / 2,
      referenceEnergy: there.energy,
      referenceTime: there.time,
      energyRatio: own.energy / there.energy,
      pull: own.pull,
      referencePull: there.pull,
      referenceSpeed: there.speed,
      engineWork: torque * engineSpeed * own.time,
    };
  },
});
