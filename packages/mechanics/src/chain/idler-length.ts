import { add, div, type Expr, fn, mul, PI, pow, sub, type Term } from '../method/expr.ts';
import { defineMethod, MethodError, type Params } from '../method/method.ts';
import { ABOVE_ZERO, refuseOutside } from '../numerics/refuse.ts';
import { pitchRadius, refuseOverlap, tipRadius } from './drive.ts';
import { DRIVE_INPUTS, EXACT_SOURCES, RADIUS_STEPS, radiusTree } from './parts.ts';

const id = 'chain.idlerLength';

const inputs = {
  ...DRIVE_INPUTS,
  centreDistance: { form: 'value', kind: 'length', symbol: 'C', meaning: 'centre distance', range: ABOVE_ZERO },
  teethIdler: { form: 'integer', symbol: 'N_3', meaning: 'teeth of the idler', range: { min: 6 } },
  idlerAlong: {
    form: 'value',
    kind: 'length',
    symbol: 'x',
    meaning: 'centre of the idler along the line of centres, from the driver toward the driven sprocket',
  },
  idlerAcross: {
    form: 'value',
    kind: 'length',
    symbol: 'y',
    meaning: 'centre of the idler square to the line of centres, positive toward the span that it touches',
  },
  idlerSide: {
    form: 'choice',
    symbol: 'w',
    meaning: 'inside pushes the span outward, outside presses it inward',
    choices: ['inside', 'outside'],
  },
} as const satisfies Params;

/** Length of a straight span between two circles whose edges it leaves and meets at these radii, one negative when it crosses over. */
const spanTree = (distance: string, from: Term, to: Term): Expr =>
  fn('sqrt', sub(pow(distance, 2), pow(sub(from, to), 2)));
const idlerRadius = mul('sense', 'pitchRadiusIdler');
const arc = (teeth: string, wrap: string): Expr => div(mul(teeth, wrap), mul(2, PI));

/**
 * Links of a chain round driver, driven sprocket and one idler or tensioner on one of its spans, exactly, with wraps and teeth in mesh.
 *
 * The chain is followed once round; each wrap is the turn of its direction between two straight spans.
 *
 * Errors: an idler that does not touch its span, sprockets whose tips touch each other, an idler that runs into the other span, and what the
 * declarations refuse.
 */
export const chainIdlerLength = defineMethod({
  id,
  gives: 'Links of a chain round two sprockets and one idler or tensioner, with wraps and teeth in mesh on the idler',
  inputs,
  outputs: {
    links: { form: 'value', kind: 'count', symbol: 'L', meaning: 'links needed, not rounded' },
    wrapDriver: { form: 'value', kind: 'angle', symbol: 'θ_1', meaning: 'wrap of the chain on the driver' },
    wrapDriven: { form: 'value', kind: 'angle', symbol: 'θ_2', meaning: 'wrap of the chain on the driven sprocket' },
    wrapIdler: { form: 'value', kind: 'angle', symbol: 'θ_3', meaning: 'wrap of the chain on the idler' },
    teethInMesh: { form: 'value', kind: 'count', symbol: 'N_m', meaning: 'teeth of the idler in mesh, not rounded' },
    spanOther: { form: 'value', kind: 'length', symbol: 's', meaning: 'straight span without the idler' },
    spanDriver: { form: 'value', kind: 'length', symbol: 's_1', meaning: 'straight span between driver and idler' },
    spanDriven: {
      form: 'value',
      kind: 'length',
      symbol: 's_2',
      meaning: 'straight span between driven sprocket and idler',
    },
    pitchRadiusDriver: { form: 'value', kind: 'length', symbol: 'R_1', meaning: 'pitch radius of the driver' },
    pitchRadiusDriven: { form: 'value', kind: 'length', symbol: 'R_2', meaning: 'pitch radius of the driven sprocket' },
    pitchRadiusIdler: { form: 'value', kind: 'length', symbol: 'R_3', meaning: 'pitch radius of the idler' },
    sense: {
      form: 'integer',
      symbol: 'k',
      meaning: '1 when the idler turns as the sprockets do, −1 when it turns against them',
    },
    distanceDriver: {
      form: 'value',
      kind: 'length',
      symbol: 'D_1',
      meaning: 'from the centre of the driver to that of the idler',
    },
    distanceDriven: {
      form: 'value',
      kind: 'length',
      symbol: 'D_2',
      meaning: 'from the centre of the driven sprocket to that of the idler',
    },
    headingOther: {
      form: 'value',
      kind: 'angle',
      symbol: 'φ',
      meaning: 'direction of the chain on the span without the idler',
    },
    headingDriven: {
      form: 'value',
      kind: 'angle',
      symbol: 'φ_2',
      meaning: 'direction from the driven sprocket to the idler',
    },
    headingDriver: { form: 'value', kind: 'angle', symbol: 'φ_1', meaning: 'direction from the idler to the driver' },
  },
  results: ['links', 'wrapDriver', 'wrapDriven', 'wrapIdler', 'teethInMesh', 'spanOther', 'spanDriver', 'spanDriven'],
  steps: [
    ...RADIUS_STEPS,
    { key: 'pitchRadiusIdler', is: radiusTree('teethIdler'), says: 'The pins on the idler lie on this radius.' },
    {
      key: 'distanceDriver',
      is: fn('sqrt', add(pow('idlerAlong', 2), pow('idlerAcross', 2))),
      says: 'Idler from the driver.',
    },
    {
      key: 'distanceDriven',
      is: fn('sqrt', add(pow(sub('centreDistance', 'idlerAlong'), 2), pow('idlerAcross', 2))),
      says: 'Idler from the driven sprocket.',
    },
    {
      key: 'headingOther',
      is: fn('asin', div(sub('pitchRadiusDriver', 'pitchRadiusDriven'), 'centreDistance')),
      says: 'The chain leaves the driver on the span without the idler.',
    },
    {
      key: 'headingDriven',
      is: add(
        sub(PI, fn('atan2', 'idlerAcross', sub('centreDistance', 'idlerAlong'))),
        fn('asin', div(sub('pitchRadiusDriven', idlerRadius), 'distanceDriven')),
      ),
      says: 'Round the driven sprocket it heads for the idler; an idler outside turns against the sprockets.',
    },
    {
      key: 'headingDriver',
      is: add(
        PI,
        fn('atan2', 'idlerAcross', 'idlerAlong'),
        fn('asin', div(sub(idlerRadius, 'pitchRadiusDriver'), 'distanceDriver')),
      ),
      says: 'Round the idler it heads back to the driver.',
    },
    { key: 'wrapDriven', is: sub('headingDriven', 'headingOther'), says: 'Turn of the chain on the driven sprocket.' },
    {
      key: 'wrapIdler',
      is: mul('sense', sub('headingDriver', 'headingDriven')),
      says: 'Turn of the chain on the idler.',
    },
    {
      key: 'wrapDriver',
      is: sub(add(mul(2, PI), 'headingOther'), 'headingDriver'),
      says: 'What is left of the full turn.',
    },
    {
      key: 'spanOther',
      is: spanTree('centreDistance', 'pitchRadiusDriver', 'pitchRadiusDriven'),
      says: 'Straight between the two sprockets.',
    },
    {
      key: 'spanDriver',
      is: spanTree('distanceDriver', idlerRadius, 'pitchRadiusDriver'),
      says: 'Straight between driver and idler.',
    },
    {
      key: 'spanDriven',
      is: spanTree('distanceDriven', idlerRadius, 'pitchRadiusDriven'),
      says: 'Straight between driven sprocket and idler.',
    },
    {
      key: 'teethInMesh',
      is: arc('teethIdler', 'wrapIdler'),
      says: 'The wrap as its share of the teeth; three are the least, as the trade holds.',
    },
    {
      key: 'links',
      is: add(
        div(add('spanOther', 'spanDriver', 'spanDriven'), 'pitch'),
        arc('teethDriver', 'wrapDriver'),
        arc('teethDriven', 'wrapDriven'),
        'teethInMesh',
      ),
      says: 'Three spans in pitches, and each arc as its share of the teeth.',
    },
  ],
  sources: EXACT_SOURCES,
  holds: ['One plane, straight taut spans; the idler turns freely.'],
  run: (input) => {
    refuseOutside(id, inputs, input);
    const { pitch, teethDriver, teethDriven, teethIdler, centreDistance, idlerAlong, idlerAcross } = input;
    refuseOverlap(id, pitch, teethDriver, teethDriven, centreDistance);
    const [r1, r2, r3] = [teethDriver, teethDriven, teethIdler].map((teeth) => pitchRadius(pitch, teeth)) as [
      number,
      number,
      number,
    ];
    const distanceDriver = Math.sqrt(idlerAlong ** 2 + idlerAcross ** 2);
    const distanceDriven = Math.sqrt((centreDistance - idlerAlong) ** 2 + idlerAcross ** 2);
    refuseOverlap(id, pitch, teethDriver, teethIdler, distanceDriver, 'idlerAlong');
    refuseOverlap(id, pitch, teethDriven, teethIdler, distanceDriven, 'idlerAlong');
    const sense = input.idlerSide === 'inside' ? 1 : -1;
    const headingOther = Math.asin((r1 - r2) / centreDistance);
    // Height of the idler over the span without it: the chain runs along that heading, on the far side of the driver.
    const above = idlerAcross * Math.cos(headingOther) - idlerAlong * Math.sin(headingOther) + r1;
    const room = tipRadius(pitch, teethIdler);
    if (!(above > room)) {
      throw new MethodError(
        id,
        'idlerAcross',
        `The idler runs into the other span: its centre is ${above} m from that span, and its tips need more than ${room} m.`,
      );
    }
    const headingDriven =
      Math.PI - Math.atan2(idlerAcross, centreDistance - idlerAlong) + Math.asin((r2 - sense * r3) / distanceDriven);
    const headingDriver = Math.PI + Math.atan2(idlerAcross, idlerAlong) + Math.asin((sense * r3 - r1) / distanceDriver);
    const wrapIdler = sense * (headingDriver - headingDriven);
    if (!(wrapIdler > 0 && wrapIdler < 2 * Math.PI)) {
      throw new MethodError(
        id,
        'idlerAcross',
        `The idler does not touch its span: set ${input.idlerSide}, its centre must lie ${sense === 1 ? 'farther out' : 'farther in'} than ${idlerAcross} m.`,
      );
    }
    const wrapDriven = headingDriven - headingOther;
    const wrapDriver = 2 * Math.PI + headingOther - headingDriver;
    const spanOther = Math.sqrt(centreDistance ** 2 - (r1 - r2) ** 2);
    const spanDriver = Math.sqrt(distanceDriver ** 2 - (sense * r3 - r1) ** 2);
    const spanDriven = Math.sqrt(distanceDriven ** 2 - (sense * r3 - r2) ** 2);
    const arcOf = (teeth: number, wrap: number): number => (teeth * wrap) / (2 * Math.PI);
    const teethInMesh = arcOf(teethIdler, wrapIdler);
    return {
      links:
        (spanOther + spanDriver + spanDriven) / pitch +
        arcOf(teethDriver, wrapDriver) +
        arcOf(teethDriven, wrapDriven) +
        teethInMesh,
      wrapDriver,
      wrapDriven,
      wrapIdler,
      teethInMesh,
      spanOther,
      spanDriver,
      spanDriven,
      pitchRadiusDriver: r1,
      pitchRadiusDriven: r2,
      pitchRadiusIdler: r3,
      sense,
      distanceDriver,
      distanceDriven,
      headingOther,
      headingDriven,
      headingDriver,
    };
  },
});
