import type { ProofCase } from './case.ts';
import { constructed } from './sources.ts';

/** Three rotors on one shaft of 70 mm, 1.5 m and 1 m apart, modulus 84 GPa: k = G π d⁴ / (32 l). */
const K1 = (84e9 * Math.PI * 0.07 ** 4) / 32 / 1.5;
const K2 = (84e9 * Math.PI * 0.07 ** 4) / 32 / 1;

export const TORSION_CASES: readonly ProofCase[] = [
  {
    method: 'torsion.naturalFrequency',
    id: 'torsion-three-rotors',
    given: {
      inertias: ['0.15 kg.m2', '0.3 kg.m2', '0.09 kg.m2'],
      stiffnesses: [`${K1} N.m/rad`, `${K2} N.m/rad`],
    },
    expect: { frequency: { value: '171 Hz', within: { rel: 0.003 } } },
    source: {
      title: 'Machine dynamics, multiple-choice question on torsionally equivalent shafts: three rotors, one node',
      at: 'answer (a), 171 Hz',
      how: 'read',
      address: 'qna.carrieradda.com/26013',
    },
    kind: 'published-example',
    note: 'The second answer of the same example, 277 Hz, is checked beside the modes themselves.',
  },
  {
    method: 'torsion.firingFrequency',
    id: 'torsion-firing-single',
    given: { speed: '1300 rpm', cylinders: 1, turns: 2 },
    expect: { frequency: { value: '10.833333 Hz', within: { rel: 1e-6 } } },
    source: constructed('half an order for a four-stroke single: 1300 / 60 / 2'),
    kind: 'constructed',
  },
  {
    method: 'torsion.isolation',
    id: 'torsion-isolation-single',
    given: { forced: '78.7775 Hz', natural: '55.704 Hz' },
    expect: { reserve: { value: 1, within: { rel: 2e-5 } } },
    source: constructed(
      'two masses of 0.03 and 0.012 kg·m² on 1050 N·m/rad: idle of a single at 9453 rpm is just √2 above',
    ),
    kind: 'constructed',
  },
];
