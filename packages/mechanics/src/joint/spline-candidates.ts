import { add, div, fn, num, pow, sub } from '../method/expr.ts';
import { defineMethod, type Params } from '../method/method.ts';
import { ABOVE_ZERO, refuseOutside } from '../numerics/refuse.ts';
import { splineOverPins } from './spline-over-pins.ts';

const id = 'joint.splineCandidates';

const inputs = {
  teeth: { form: 'integer', symbol: 'z', meaning: 'teeth', range: { min: 6, max: 100 } },
  outside: {
    form: 'value',
    kind: 'length',
    symbol: 'd_a',
    meaning: 'outside diameter of the shaft',
    range: ABOVE_ZERO,
  },
  pin: { form: 'value', kind: 'length', symbol: 'd_p', meaning: 'diameter of the two pins', range: ABOVE_ZERO },
  over: { form: 'value', kind: 'length', symbol: 'M', meaning: 'size over the two pins', range: ABOVE_ZERO },
} as const satisfies Params;

const MM = 1e-3;
const INCH = 0.0254;
const METRIC = [0.25, 0.5, 0.75, 1, 1.25, 1.5, 1.75, 2, 2.5, 3, 4, 5, 6, 8, 10];
const PITCHES = [2.5, 3, 4, 5, 6, 8, 10, 12, 16, 20, 24, 32, 40, 48];
const REFERENCE_MODULES = [0.5, 0.6, 0.75, 0.8, 1, 1.25, 1.5, 1.75, 2, 2.5, 3, 4, 5, 6, 8, 10];
/** Outside diameter over module, less the teeth, by pressure angle in degrees: flat or fillet root, side fit. */
const ADDED = [
  [30, 1],
  [37.5, 0.9],
  [45, 0.8],
] as const;
/** Profile shift of splines made to a round reference diameter, in modules. */
const SHIFTS = { least: -0.05, most: 0.45 };
/** An outside diameter farther off than this part of a module is no candidate. */
const NEAR = 0.35;
const MOST = 5;

interface Candidate {
  readonly name: string;
  readonly module: number;
  readonly angle: number;
  readonly outside: number;
  readonly over: number;
  readonly misfit: number;
}

interface Standard {
  readonly name: string;
  readonly module: number;
  readonly degrees: number;
  readonly outside: number;
  readonly shift: number;
}

function standards(teeth: number, outside: number): Standard[] {
  const plain = (name: (degrees: number) => string, module: number): Standard[] =>
    ADDED.map(([degrees, added]) => ({
      name: name(degrees),
      module,
      degrees,
      outside: module * (teeth + added),
      shift: 0,
    }));
  return [
    ...METRIC.flatMap((m) => plain((degrees) => `ISO 4156, ${degrees} degrees, module ${m} mm`, m * MM)),
    ...PITCHES.flatMap((p) => plain((degrees) => `ANSI B92.1, ${degrees} degrees, ${p}/${2 * p} pitch`, INCH / p)),
    ...REFERENCE_MODULES.flatMap((m): Standard[] => {
      const reference = Math.round(outside / MM + 0.2 * m);
      const shift = (reference / m - teeth - 1.1) / 2;
      if (shift < SHIFTS.least || shift > SHIFTS.most) return [];
      const name = `DIN 5480, ${reference} x ${m} x ${teeth}`;
      return [{ name, module: m * MM, degrees: 30, outside: (reference - 0.2 * m) * MM, shift }];
    }),
  ];
}

/** Size over pins of a spline by its standard; null where the pins do not touch its flanks. */
function overOf(teeth: number, pin: number, { module, degrees, shift }: Standard): number | null {
  const angle = (degrees * Math.PI) / 180;
  const thickness = (Math.PI * module) / 2 + 2 * shift * module * Math.tan(angle);
  const d = module * teeth;
  const seat = thickness / d + Math.tan(angle) - angle + pin / (d * Math.cos(angle)) - Math.PI / teeth;
  return seat > 0 ? splineOverPins.run({ teeth, module, angle, pin, thickness }).over : null;
}

/**
 * Standards that a spline of unknown make may follow, the nearest first: outside diameter and size over pins of each standard beside those measured.
 *
 * Errors: a size not above zero, fewer than 6 or more than 100 teeth. Nothing near gives an empty list and says so.
 */
export const splineCandidates = defineMethod({
  id,
  gives: 'Standards that a spline of unknown make may follow, nearest first',
  inputs,
  outputs: {
    nearest: {
      form: 'text',
      symbol: 'S',
      meaning: 'nearest standard',
      example: 'ISO 4156, 30 degrees, module 1.25 mm',
    },
    others: { form: 'text', symbol: 'S_2', meaning: 'the next ones', example: 'DIN 5480, 30 x 1.25 x 22' },
    misfit: { form: 'value', kind: 'length', symbol: 'e', meaning: 'how far the nearest is off, mean of both sizes' },
    modules: { form: 'list', kind: 'length', symbol: 'm_k', meaning: 'their modules' },
    angles: { form: 'list', kind: 'angle', symbol: 'α_k', meaning: 'their pressure angles' },
    misfits: { form: 'list', kind: 'length', symbol: 'e_k', meaning: 'how far each is off' },
    nearestOutside: { form: 'value', kind: 'length', symbol: 'd_a1', meaning: 'outside diameter of the nearest' },
    nearestOver: { form: 'value', kind: 'length', symbol: 'M_1', meaning: 'size over pins of the nearest' },
  },
  results: ['nearest', 'others', 'misfit', 'modules', 'angles', 'misfits'],
  steps: [
    {
      key: 'misfit',
      is: fn('sqrt', div(add(pow(sub('outside', 'nearestOutside'), 2), pow(sub('over', 'nearestOver'), 2)), num(2))),
      says: 'Both sizes beside those of the standard.',
    },
  ],
  sources: [
    { title: 'ISO 4156-1', at: 'outside diameters of side-fit splines, 30, 37.5 and 45 degrees', how: 'memory' },
    { title: 'ANSI B92.1', at: 'outside diameters of side-fit splines', how: 'memory' },
    { title: 'DIN 5480-1', at: 'reference diameter, profile shift, outside diameter', how: 'memory' },
  ],
  holds: [
    'Basic sizes without tolerances: a good spline is some hundredths of a millimetre small. Straight, serrated and maker’s own splines are not among them.',
  ],
  run: (input) => {
    refuseOutside(id, inputs, input);
    const { teeth, outside, pin, over } = input;
    const found = standards(teeth, outside)
      .flatMap((one): Candidate[] => {
        if (Math.abs(one.outside - outside) > NEAR * one.module) return [];
        const size = overOf(teeth, pin, one);
        if (size === null) return [];
        const misfit = Math.sqrt(((outside - one.outside) ** 2 + (over - size) ** 2) / 2);
        return [
          {
            name: one.name,
            module: one.module,
            angle: (one.degrees * Math.PI) / 180,
            outside: one.outside,
            over: size,
            misfit,
          },
        ];
      })
      .sort((a, b) => a.misfit - b.misfit)
      .slice(0, MOST);
    const [first] = found;
    const nearestOutside = first?.outside ?? 0;
    const nearestOver = first?.over ?? 0;
    return {
      nearest: first?.name ?? 'none that is near',
      others:
        found
          .slice(1)
          .map(({ name }) => name)
          .join('; ') || 'none',
      misfit: Math.sqrt(((outside - nearestOutside) ** 2 + (over - nearestOver) ** 2) / 2),
      modules: found.map(({ module }) => module),
      angles: found.map(({ angle }) => angle),
      misfits: found.map(({ misfit }) => misfit),
      nearestOutside,
      nearestOver,
    };
  },
});
