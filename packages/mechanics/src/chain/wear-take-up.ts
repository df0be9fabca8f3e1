import { div, fn, mul, num, sub } from '../method/expr.ts';
import { defineMethod, MethodError, type Params } from '../method/method.ts';
import { refuseOutside } from '../numerics/refuse.ts';
import { chainCentreDistance } from './centre-distance.ts';
import { DRIVE_HOLDS, DRIVE_INPUTS, EXACT_SOURCES } from './parts.ts';

const id = 'chain.wearTakeUp';

const inputs = {
  ...DRIVE_INPUTS,
  linksFitted: { form: 'integer', symbol: 'L', meaning: 'links of the chain as fitted', range: { min: 10 } },
  centres: {
    form: 'choice',
    symbol: 'w',
    meaning: 'whether the centre distance can be adjusted',
    choices: ['adjustable', 'fixed'],
    default: 'adjustable',
  },
  travel: {
    form: 'value',
    kind: 'length',
    symbol: 'x',
    meaning: 'travel of the adjuster outward from where the new chain lies taut',
    range: { min: 0 },
  },
} as const satisfies Params;

/** Elongation limits: general, of fixed centres, and the product with the teeth of the larger sprocket. */
const GENERAL = 0.03;
const FIXED = 0.015;
const TIMES_TEETH = 2;

/**
 * How far a chain may wear, what take-up that asks for, and whether the adjuster has it.
 *
 * An adjuster need not swallow all the wear: with travel for two pitches a pair of links comes out and it begins anew.
 *
 * Errors: links that no centre distance answers, and what the declarations refuse.
 */
export const chainWearTakeUp = defineMethod({
  id,
  gives: 'Elongation at which a chain is worn out, the take-up that needs, and what is spare of the adjuster’s travel',
  inputs,
  outputs: {
    elongationLimit: {
      form: 'value',
      kind: 'fraction',
      symbol: 'ε',
      meaning: 'elongation at which the chain is worn out',
    },
    addedLength: { form: 'value', kind: 'length', symbol: 'ΔL', meaning: 'how much longer the chain has grown then' },
    wearTravel: { form: 'value', kind: 'length', symbol: 'x_w', meaning: 'travel that takes up all that wear' },
    twoPitchTravel: {
      form: 'value',
      kind: 'length',
      symbol: 'x_2',
      meaning: 'travel after which two pitches can come out of the chain',
    },
    travelNeeded: { form: 'value', kind: 'length', symbol: 'x_n', meaning: 'the lesser of the two' },
    spare: {
      form: 'value',
      kind: 'length',
      symbol: 'x_s',
      meaning: 'travel beyond what is needed; negative when it is short',
    },
    centreNew: { form: 'value', kind: 'length', symbol: 'C', meaning: 'centre distance with the new chain taut' },
    centreWorn: { form: 'value', kind: 'length', symbol: 'C_w', meaning: 'centre distance with the worn chain taut' },
    centreShort: {
      form: 'value',
      kind: 'length',
      symbol: 'C_2',
      meaning: 'centre distance with the new chain less two pitches taut',
    },
    general: { form: 'value', kind: 'fraction', symbol: 'ε_0', meaning: 'elongation limit whatever the teeth' },
  },
  results: [
    'elongationLimit',
    'addedLength',
    'wearTravel',
    'twoPitchTravel',
    'travelNeeded',
    'spare',
    'centreNew',
    'centreWorn',
    'centreShort',
  ],
  steps: [
    {
      key: 'elongationLimit',
      is: fn('min', 'general', div(num(TIMES_TEETH), fn('max', 'teethDriver', 'teethDriven'))),
      says: 'A worn chain rides up the teeth, the sooner the more there are; fixed centres leave its slack in the span.',
    },
    { key: 'addedLength', is: mul('elongationLimit', 'linksFitted', 'pitch'), says: 'Every link has grown.' },
    { key: 'wearTravel', is: sub('centreWorn', 'centreNew'), says: 'Exact lengths of the drive, before and after.' },
    {
      key: 'twoPitchTravel',
      is: sub('centreNew', 'centreShort'),
      says: 'So far out, two pitches come out and it goes back.',
    },
    { key: 'travelNeeded', is: fn('min', 'wearTravel', 'twoPitchTravel'), says: 'Either is enough.' },
    { key: 'spare', is: sub('travel', 'travelNeeded'), says: 'Of the adjuster.' },
  ],
  sources: [
    {
      title: 'A chain maker’s answers to frequent questions',
      at: 'wear: 3 %, or 200 over the teeth of the large sprocket in per cent, or 1.5 % on fixed centres; adjustment for two pitches',
      how: 'read',
    },
    ...EXACT_SOURCES,
  ],
  holds: DRIVE_HOLDS,
  run: (input) => {
    refuseOutside(id, inputs, input);
    const { pitch, teethDriver, teethDriven, linksFitted } = input;
    const general = input.centres === 'fixed' ? FIXED : GENERAL;
    const elongationLimit = Math.min(general, TIMES_TEETH / Math.max(teethDriver, teethDriven));
    const centreOf = (links: number): number => {
      try {
        return chainCentreDistance.run({ pitch, teethDriver, teethDriven, links }).centreDistance;
      } catch (error) {
        if (error instanceof MethodError) throw new MethodError(id, 'linksFitted', error.message);
        throw error;
      }
    };
    const [centreNew, centreWorn] = [centreOf(linksFitted), centreOf(linksFitted * (1 + elongationLimit))];
    const centreShort = centreOf(linksFitted - 2);
    const [wearTravel, twoPitchTravel] = [centreWorn - centreNew, centreNew - centreShort];
    const travelNeeded = Math.min(wearTravel, twoPitchTravel);
    return {
      elongationLimit,
      addedLength: elongationLimit * linksFitted * pitch,
      wearTravel,
      twoPitchTravel,
      travelNeeded,
      spare: input.travel - travelNeeded,
      centreNew,
      centreWorn,
      centreShort,
      general,
    };
  },
});
