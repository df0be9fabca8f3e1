import type { ProofCase } from './case.ts';

const derived = (title: string): ProofCase['source'] => ({ title, how: 'derived' });

/** Pairs of joints, couples, elastic couplings: worked by hand from statics and kinematics; they check the arithmetic. */
export const COUPLING_CONSTRUCTED: readonly ProofCase[] = [
  {
    method: 'coupling.universalPair',
    id: 'coupling-pair-7-5',
    given: { angleFirst: '7 deg', angleSecond: '5 deg', phaseError: 0 },
    expect: {
      residualBySquares: { value: '4.899 deg', within: { abs: '0.001 deg' } },
      unevenness: { value: 0.00732, within: { rel: 0.005 } },
    },
    source: derived('Small-angle rule for two joints in one plane'),
    kind: 'constructed',
  },
  {
    method: 'coupling.universalCouple',
    id: 'coupling-couple-100-15',
    given: { torque: '100 N.m', angle: '15 deg', turn: 0, bearingSpanDriving: '60 mm', bearingSpanDriven: '60 mm' },
    expect: {
      drivingMost: { value: 26.795, within: { rel: 0.001 } },
      drivenMost: { value: 25.882, within: { rel: 0.001 } },
      torqueOutLowest: { value: 96.593, within: { rel: 0.001 } },
      torqueOutHighest: { value: 103.528, within: { rel: 0.001 } },
    },
    source: derived('Equilibrium of the cross'),
    kind: 'constructed',
  },
  {
    method: 'coupling.universalRipple',
    id: 'coupling-ripple-10-3000',
    given: { angle: '10 deg', angularSpeed: '3000 rpm', inertia: '0.004 kg.m2' },
    expect: {
      ripple: { value: '12.091 N.m', within: { rel: 0.002 } },
      turnAtPeak: { value: '44.123 deg', within: { abs: '0.05 deg' } },
    },
    source: derived('Derivative of the joint equation, found again by dense search'),
    kind: 'constructed',
  },
  {
    method: 'coupling.misalignment',
    id: 'coupling-misalignment-sum',
    given: {
      ...{ radial: '0.12 mm', angular: '0.4 deg', axial: '0.5 mm' },
      ...{ radialLimit: '0.28 mm', angularLimit: '1 deg', axialLimit: '1.8 mm' },
    },
    expect: { used: { value: 1.1063, within: { abs: 0.001 } } },
    source: derived('Sum of the used parts'),
    kind: 'constructed',
  },
  {
    method: 'coupling.resonance',
    id: 'coupling-resonance-single',
    given: {
      ...{ stiffness: 1050, inertiaDriver: '0.03 kg.m2', inertiaLoad: '0.012 kg.m2', order: 0.5 },
      ...{ angularSpeed: '9453.3 rpm', damping: 1 },
    },
    expect: {
      naturalFrequency: { value: '55.704 Hz', within: { rel: 0.002 } },
      resonantSpeed: { value: '6684.5 rpm', within: { rel: 0.002 } },
    },
    source: derived('Two masses on a spring'),
    kind: 'constructed',
  },
  {
    method: 'coupling.elasticSelect',
    id: 'coupling-jaw-7p5',
    given: {
      ...{ torque: '47.745 N.m', torqueStart: '95.49 N.m', torqueAlternating: '0 N.m', temperature: '40 degC' },
      ...{ startsPerHour: 100, shock: 'medium', massFactor: 1 },
      ...{ ratedTorque: '190 N.m', ratedMost: '380 N.m', ratedAlternating: '49 N.m' },
    },
    expect: {
      requiredTorque: { value: '57.294 N.m', within: { abs: '0.1 N.m' } },
      requiredMost: { value: '206.258 N.m', within: { abs: '0.3 N.m' } },
    },
    source: derived('Torque times its factors, as DIN 740-2 selects'),
    kind: 'constructed',
  },
];
