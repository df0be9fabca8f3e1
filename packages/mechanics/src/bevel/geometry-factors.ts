import { branch, choose, mul, num, when } from '../method/expr.ts';
import { defineMethod, MethodError, type Params } from '../method/method.ts';
import { ABOVE_ZERO, refuseOutside } from '../numerics/refuse.ts';
import { pitchAngle } from './cone.ts';
import { contactEllipse, type EllipsePair } from './contact-ellipse.ts';
import { bendingFactor, contactFactor, leastOf } from './tooth-shape.ts';

const id = 'bevel.geometryFactors';

/** Parts of the computed bending factor that are taken: spiral teeth were not proven against a published figure. */
const STRAIGHT = 0.98;
const SPIRAL = 0.8;

const inputs = {
  teethPinion: { form: 'integer', symbol: 'z_1', meaning: 'teeth of the smaller gear', range: { min: 10, max: 150 } },
  teethGear: { form: 'integer', symbol: 'z_2', meaning: 'teeth of the larger gear', range: { min: 10, max: 200 } },
  shaftAngle: {
    form: 'value',
    kind: 'angle',
    symbol: 'Σ',
    meaning: 'angle between the shafts',
    range: { min: 0, max: Math.PI, open: true },
    default: Math.PI / 2,
  },
  faceWidth: { form: 'value', kind: 'length', symbol: 'b', meaning: 'face width', range: ABOVE_ZERO },
  module: { form: 'value', kind: 'length', symbol: 'm', meaning: 'module at the large end', range: ABOVE_ZERO },
  spiralAngle: {
    form: 'value',
    kind: 'angle',
    symbol: 'ψ',
    meaning: 'mean spiral angle; 0 for straight teeth',
    range: { min: 0, max: 0.8 },
    default: 0,
  },
  pressureAngle: {
    form: 'value',
    kind: 'angle',
    symbol: 'α',
    meaning: 'pressure angle, square to the teeth',
    range: { min: 0.2, max: 0.5 },
    default: Math.PI / 9,
  },
} as const satisfies Params;

/**
 * Geometry factors of a bevel pair for bending and contact, from the ellipse of contact: what the standard prints as charts only.
 *
 * Errors: fewer than 10 teeth, more teeth on the pinion than on the gear, a face as wide as the cone, teeth too few for the proportions.
 */
export const bevelGeometryFactors = defineMethod({
  id,
  gives: 'Geometry factors of a bevel pair for bending and for contact',
  inputs,
  outputs: {
    contact: { form: 'value', kind: 'number', symbol: 'I', meaning: 'factor for contact' },
    bendingPinion: { form: 'value', kind: 'number', symbol: 'J_1', meaning: 'factor for bending, smaller gear' },
    bendingGear: { form: 'value', kind: 'number', symbol: 'J_2', meaning: 'factor for bending, larger gear' },
    contactRatio: { form: 'value', kind: 'number', symbol: 'm_o', meaning: 'contact ratio' },
    computedPinion: { form: 'value', kind: 'number', symbol: 'J_c1', meaning: 'computed factor of the smaller gear' },
    computedGear: { form: 'value', kind: 'number', symbol: 'J_c2', meaning: 'computed factor of the larger gear' },
    taken: { form: 'value', kind: 'number', symbol: 's', meaning: 'part of the computed factor that is taken' },
  },
  results: ['contact', 'bendingPinion', 'bendingGear', 'contactRatio'],
  steps: [
    {
      key: 'taken',
      is: choose([branch(when('spiralAngle', '=', 0), num(STRAIGHT))], num(SPIRAL)),
      says: 'No published figure proves the factor of spiral teeth.',
    },
    {
      key: 'bendingPinion',
      is: mul('taken', 'computedPinion'),
      says: 'On the safe side of the charts that are known.',
    },
    { key: 'bendingGear', is: mul('taken', 'computedGear'), says: 'The same for its mate.' },
  ],
  sources: [
    {
      title: 'ANSI/AGMA 2003-B97',
      at: 'annexes on the geometry factors I and J; the steps recalled, derived anew and tried against charts',
      how: 'memory',
    },
  ],
  holds: [
    'Usual tooth proportions of the cutters’ makers, tool edges of 0.12 modules.',
    'Factors of straight teeth at 90° lie within 6 % of the charts that are known; other angles and spirals were not tried against any.',
  ],
  run: (input) => {
    refuseOutside(id, inputs, input);
    const { teethPinion, teethGear, shaftAngle, faceWidth, module, spiralAngle, pressureAngle } = input;
    if (teethPinion > teethGear)
      throw new MethodError(
        id,
        'teethPinion',
        `Teeth of the smaller gear: ${teethPinion} is more than the ${teethGear} of the larger; it must not be.`,
      );
    const pair: EllipsePair = {
      teeth: [teethPinion, teethGear],
      pitchAngles: [
        pitchAngle(id, 'driver', teethPinion, teethGear, shaftAngle),
        pitchAngle(id, 'driven gear', teethGear, teethPinion, shaftAngle),
      ],
      face: faceWidth / module,
      spiral: spiralAngle,
      pressureAngle,
      edge: 0.12,
    };
    const ellipse = contactEllipse(pair);
    if (!(ellipse.meanCone > pair.face / 2))
      throw new MethodError(
        id,
        'faceWidth',
        `Face width must be less than the outer cone distance, ${ellipse.outerCone * module} m; read ${faceWidth} m.`,
      );
    const end = ellipse.eta / 2;
    const contact = leastOf((f) => contactFactor(pair, ellipse, f), -end * 0.9999, end * 0.9999);
    const computed = (k: 0 | 1): number => {
      const f = (k === 0 ? 1 : -1) * (ellipse.pn - end);
      return spiralAngle === 0
        ? bendingFactor(pair, ellipse, k, f)
        : leastOf((x) => bendingFactor(pair, ellipse, k, x), -end * 0.98, end * 0.98);
    };
    const [computedPinion, computedGear] = [computed(0), computed(1)];
    if (!(contact > 0 && computedPinion > 0 && computedGear > 0 && Number.isFinite(computedPinion + computedGear)))
      throw new MethodError(
        id,
        'teethPinion',
        `Teeth of the smaller gear: ${teethPinion} with ${teethGear} are outside what these proportions can cut.`,
      );
    const taken = spiralAngle === 0 ? STRAIGHT : SPIRAL;
    return {
      contact,
      bendingPinion: taken * computedPinion,
      bendingGear: taken * computedGear,
      contactRatio: ellipse.contactRatio,
      computedPinion,
      computedGear,
      taken,
    };
  },
});
