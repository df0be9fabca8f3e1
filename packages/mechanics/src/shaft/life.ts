import { add, branch, choose, div, fn, mul, num, pow, sub, sum, when } from '../method/expr.ts';
import { defineMethod, MethodError, type Params } from '../method/method.ts';
import { ABOVE_ZERO, refuseOutside } from '../numerics/refuse.ts';

const id = 'shaft.life';

const list = (symbol: string, meaning: string, kind: 'pressure' | 'number') =>
  ({ form: 'list', kind, symbol, meaning, range: { min: 0 }, atLeast: 1 }) as const;
const strength = (symbol: string, meaning: string) =>
  ({ form: 'value', kind: 'pressure', symbol, meaning, range: ABOVE_ZERO }) as const;

const inputs = {
  swings: list('σ_a,k', 'equivalent stress that swings, in each step of the duty', 'pressure'),
  means: list('σ_m,k', 'equivalent mean stress in each step', 'pressure'),
  turns: list('n_k', 'turns in each step of the whole duty', 'number'),
  endurance: strength('S_e', 'endurance limit of the part'),
  tensile: strength('S_ut', 'tensile strength'),
  yieldStrength: strength('S_y', 'yield strength'),
  criterion: {
    form: 'choice',
    symbol: 'c',
    meaning: 'fatigue criterion',
    choices: ['Goodman', 'Gerber', 'ASME elliptic', 'Soderberg'],
    default: 'Goodman',
  },
} as const satisfies Params;

const MPA = 1e6;
const KNEE = 1e6;
/** Mean stress counts up to this part of the strength; beyond it the section yields, which is checked apart. */
const MOST_MEAN = 0.99;

/** Swing about zero that wears as much as this swing about this mean. */
function reversedOf(
  criterion: 'Goodman' | 'Gerber' | 'ASME elliptic' | 'Soderberg',
  swing: number,
  mean: number,
  tensile: number,
  yielding: number,
): number {
  const part = Math.min(MOST_MEAN, mean / (criterion === 'Goodman' || criterion === 'Gerber' ? tensile : yielding));
  if (criterion === 'Gerber') return swing / (1 - part ** 2);
  if (criterion === 'ASME elliptic') return swing / Math.sqrt(1 - part ** 2);
  return swing / (1 - part);
}

/**
 * How many times over a shaft’s section lasts a duty of steps: turns over the turns that would break it, added up over the steps.
 * Below the endurance limit the line goes on less steep, since greater steps have begun the crack.
 *
 * Errors: lists of different length, no swing or no turns at all.
 */
export const shaftLife = defineMethod({
  id,
  gives: 'How many times over a shaft lasts its duty, by a sum of damage',
  inputs,
  outputs: {
    reserve: { form: 'value', kind: 'number', symbol: 'n', meaning: 'life over the duty' },
    damage: { form: 'value', kind: 'number', symbol: 'D', meaning: 'sum of damage over the duty' },
    reversed: {
      form: 'list',
      kind: 'pressure',
      symbol: 'σ_k',
      meaning: 'stress that swings about zero and wears as much, by the criterion',
    },
    lasting: { form: 'list', kind: 'number', symbol: 'N_k', meaning: 'turns that would break it at each stress' },
    shares: { form: 'list', kind: 'number', symbol: 'n_k/N_k', meaning: 'turns over those that would break it' },
    exponent: {
      form: 'value',
      kind: 'number',
      symbol: 'k_1',
      meaning: 'exponent of the line above the endurance limit',
    },
    beyond: { form: 'value', kind: 'number', symbol: 'k_2', meaning: 'exponent of the line below it' },
    part: {
      form: 'value',
      kind: 'number',
      symbol: 'f',
      meaning: 'part of the tensile strength borne a thousand times',
    },
    megapascal: { form: 'value', kind: 'pressure', symbol: 'u_S', meaning: 'one megapascal, the unit of the fit' },
    ten: { form: 'value', kind: 'number', symbol: 'e', meaning: 'ten, base of the decades' },
  },
  results: ['reserve', 'damage', 'reversed', 'lasting'],
  steps: [
    {
      key: 'part',
      is: choose(
        [branch(when(div('tensile', 'megapascal'), '<=', num(490)), num(0.9))],
        add(
          sub(num(1.06), mul(4.1e-4, div('tensile', 'megapascal'))),
          mul(1.5e-7, pow(div('tensile', 'megapascal'), 2)),
        ),
      ),
      says: 'Stress borne a thousand times, as a part of the tensile strength.',
    },
    {
      key: 'exponent',
      is: div(mul(3, fn('ln', 'ten')), fn('ln', div(mul('part', 'tensile'), 'endurance'))),
      says: 'A straight line in decades from a thousand turns to a million.',
    },
    { key: 'beyond', is: sub(mul(2, 'exponent'), num(1)), says: 'Beyond a million turns the line goes on less steep.' },
    { key: 'damage', is: sum('shares'), says: 'Each step uses up its share of the life.' },
    { key: 'reserve', is: div(1, 'damage'), says: 'The whole life over the duty.' },
  ],
  sources: [
    {
      title: "Shigley's Mechanical Engineering Design (Budynas, Nisbett)",
      edition: '9th',
      at: 'equations 6-14 to 6-16, figure 6-18; damage by Palmgren and Miner, section 6-15',
      how: 'memory',
    },
    { title: 'Haibach, Betriebsfestigkeit', at: 'line beyond the endurance limit with 2k − 1', how: 'memory' },
  ],
  holds: ['Steel below 250 °C, without corrosion. Scatter is wide: a life three times the duty is no luxury.'],
  run: (input) => {
    refuseOutside(id, inputs, input);
    const { swings, means, turns, endurance, tensile, yieldStrength, criterion } = input;
    if (means.length !== swings.length || turns.length !== swings.length)
      throw new MethodError(
        id,
        'turns',
        `${means.length} mean stresses and ${turns.length} entries of turns read for ${swings.length} swings; as many of each are accepted.`,
      );
    const s = tensile / MPA;
    const part = s <= 490 ? 0.9 : 1.06 - 4.1e-4 * s + 1.5e-7 * s ** 2;
    if (!(part * tensile > endurance))
      throw new MethodError(id, 'endurance', 'The endurance limit lies above the stress borne a thousand times.');
    const exponent = (3 * Math.log(10)) / Math.log((part * tensile) / endurance);
    const beyond = 2 * exponent - 1;
    const reversed = swings.map((swing, k) => reversedOf(criterion, swing, means[k] as number, tensile, yieldStrength));
    const lasting = reversed.map((stress) => KNEE * (endurance / stress) ** (stress > endurance ? exponent : beyond));
    const shares = turns.map((n, k) => n / (lasting[k] as number));
    const damage = shares.reduce((all, one) => all + one, 0);
    if (!(damage > 0))
      throw new MethodError(id, 'swings', 'Nothing swings or nothing turns; such a part lasts for ever.');
    return {
      reserve: 1 / damage,
      damage,
      reversed,
      lasting,
      shares,
      exponent,
      beyond,
      part,
      megapascal: MPA,
      ten: 10,
    };
  },
});
