import type { Kind } from '@oddwheel/quantity/kinds';
import { div } from '../method/expr.ts';
import { defineMethod, type Method, MethodError, type Param } from '../method/method.ts';

const KINDS_COMPARED = [
  'number',
  'length',
  'angle',
  'speed',
  'angularSpeed',
  'time',
  'energy',
  'force',
  'torque',
  'power',
  'pressure',
] as const satisfies readonly Kind[];
type ComparedKind = (typeof KINDS_COMPARED)[number];

type Inputs = { readonly capacity: ReserveParam; readonly demand: ReserveParam };
type ReserveParam = Extract<Param, { readonly form: 'value' }>;
type Outputs = { readonly reserve: ReserveParam };

function reserveOf(kind: ComparedKind): Method<Inputs, Outputs> {
  const id = `reserve.${kind}`;
  return defineMethod<Inputs, Outputs>({
    id,
    gives: 'What a part can take over what is asked of it; 1 is the limit',
    inputs: {
      capacity: { form: 'value', kind, symbol: 'c', meaning: 'capacity', range: { min: 0 } },
      demand: { form: 'value', kind, symbol: 'd', meaning: 'demand', range: { min: 0, open: true } },
    },
    outputs: { reserve: { form: 'value', kind: 'number', symbol: 'n', meaning: 'reserve' } },
    results: ['reserve'],
    steps: [{ key: 'reserve', is: div('capacity', 'demand'), says: 'Capacity over demand.' }],
    sources: [{ title: 'Definition of the reserve (factor of safety) in this project', how: 'derived' }],
    run: ({ capacity, demand }) => {
      if (!(demand > 0)) throw new MethodError(id, 'demand', `The demand must be more than zero, not ${demand}.`);
      return { reserve: capacity / demand };
    },
  });
}

/** Reserve = capacity / demand, one method for each kind of quantity compared. */
export const RESERVES: Readonly<Record<ComparedKind, Method<Inputs, Outputs>>> = {
  number: reserveOf('number'),
  length: reserveOf('length'),
  angle: reserveOf('angle'),
  speed: reserveOf('speed'),
  angularSpeed: reserveOf('angularSpeed'),
  time: reserveOf('time'),
  energy: reserveOf('energy'),
  force: reserveOf('force'),
  torque: reserveOf('torque'),
  power: reserveOf('power'),
  pressure: reserveOf('pressure'),
};
