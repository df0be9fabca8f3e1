import { minimumLoad } from '@oddwheel/mechanics/bearing/minimum-load';
import { staticSafety } from '@oddwheel/mechanics/bearing/static-safety';
import { BEARING_LIMITS } from '@oddwheel/tables/bearing-limits';
import { SHAFT_LIMITS } from '@oddwheel/tables/shaft-limits';
import { rowInSi, sourceOf } from '@oddwheel/tables/table';
import type { BearingFacts, BearingSeat } from '../../../model/strength.ts';
import { staticFactors, staticOf } from '../../strength/bearing-loads.ts';
import { dutyBearings } from '../../strength/duty-bearings.ts';
import type { Check } from '../check.ts';
import { measured } from '../measured.ts';
import { bearingDemand, bearingSubjects, loadOn, notSaid, onBearing } from './bearings.ts';
import { shaftUses } from './shafts.ts';

const SOLVED = 'shaft on its bearings under this case';
/** N; less is rounding. */
const NOTHING = 1e-3;
const limitOf = (row: string, column: 'reserve' | 'part'): number => rowInSi(BEARING_LIMITS, row)[column] ?? Number.NaN;

const WANTED = limitOf('peaks not known well', 'reserve');
const SPOILED = limitOf('spoiled by a peak', 'reserve');

/** Static load that spoils a bearing. */
export const spoiledAt = (facts: BearingFacts): number => facts.static / SPOILED;

/** The bearing stands the rare peaks: dents that a hard start leaves are borne, a spoiled bearing is not. */
export const bearingStands: Check = {
  id: 'bearing.static',
  title: 'bearing under its greatest load',
  consequence: 'wears out',
  wanted: {
    reserve: WANTED / SPOILED,
    from: `static rating ${WANTED} times the load: ${sourceOf(BEARING_LIMITS, 'peaks not known well')}`,
  },
  atWorst: 'fails',
  perCase: true,
  rare: true,
  subjects: bearingSubjects,
  demand: bearingDemand((at, { strength }, load) => {
    const answer = strength.answer(at.k, load);
    const on = answer.ok ? loadOn(at, answer.solution) : null;
    return on?.said && on.load.radial + on.load.axial >= NOTHING ? staticOf(at.facts, on.load) : null;
  }),
  run: onBearing((at, scene, load) => {
    const { k, seat, facts, structure, name } = at;
    const answer = load && scene.strength.answer(k, load);
    if (!answer) return null;
    if (!answer.ok) return { kind: 'unknown', missing: answer.missing };
    const on = loadOn(at, answer.solution);
    if (on.load.radial + on.load.axial < NOTHING) return null;
    const input = { ...on.load, staticRating: facts.static, ...staticFactors(facts) };
    const output = staticSafety.run(input);
    const open = on.said || output.reserve >= SPOILED ? [] : notSaid(structure);
    if (open.length > 0) return { kind: 'unknown', missing: open };
    const { show } = scene;
    const spoils = spoiledAt(facts);
    return measured(
      { name: 'load', value: output.load, kind: 'force', use: 'force' },
      { name: 'spoils it', value: spoils, kind: 'force', use: 'force' },
      () =>
        `${name} carries ${show('force', on.load.radial)} across and ${show('force', on.load.axial)} along the shaft: up to ${show('force', facts.static / WANTED)} it keeps its balls and tracks whole, up to ${show('force', spoils)} it runs on with dents.`,
      shaftUses(structure),
      () => [
        {
          method: staticSafety,
          input,
          output,
          origins: {
            radial: SOLVED,
            axial: on.said ? SOLVED : `${SOLVED}; not said which bearing takes it, so all of it`,
            staticRating: `${seat.address}/row: ${facts.source}`,
            x0: 'kind of the bearing',
            y0: 'kind of the bearing',
          },
        },
      ],
      { capacity: 'static rating over bearing-limits/spoiled by a peak', demand: 'above' },
    );
  }),
};

/** The bearing carries enough for its balls to roll. */
export const bearingRolls: Check = {
  id: 'bearing.least',
  title: 'load enough for the bearing to roll',
  consequence: 'wears out',
  wanted: { reserve: 1, from: sourceOf(BEARING_LIMITS, 'least load, balls') },
  atWorst: 'thin',
  perCase: false,
  onRoad: true,
  subjects: bearingSubjects,
  run: onBearing((at, scene) => {
    const { k, b, seat, facts, structure, name } = at;
    const duty = scene.duty();
    if (!duty.ok) return { kind: 'unknown', missing: duty.missing };
    const carried = dutyBearings(scene, duty, k);
    if (!carried.ok) return { kind: 'unknown', missing: carried.missing };
    const mean = carried.bins.reduce(
      (sum, bin, n) =>
        sum + (duty.bins[n]?.ofDistance ?? 0) * Math.hypot(bin.loads[b]?.radial ?? 0, bin.loads[b]?.axial ?? 0),
      0,
    );
    const { oil } = scene.model.loads;
    const speed = (2 * Math.PI * (duty.turns[k] ?? 0)) / duty.time;
    const { kr, bore, outside } = facts;
    const row = facts.kind === 'tapered' ? 'least load, rollers' : 'least load, balls';
    const input =
      kr === null || bore === null || outside === null
        ? null
        : { factor: kr, viscosity: scene.at(oil), speed, bore, outside };
    const output = input && minimumLoad.run(input);
    const least = output ? output.load : limitOf(row, 'part') * facts.dynamic;
    const { show } = scene;
    return measured(
      { name: 'least load', value: least, kind: 'force', use: 'force' },
      { name: 'mean load', value: mean, kind: 'force', use: 'force' },
      () =>
        `${name} carries ${show('force', mean)} in the mean of your duty and needs ${show('force', least)} for its ${facts.kind === 'tapered' ? 'rollers' : 'balls'} to roll and not skid.`,
      [...duty.uses, oil, ...shaftUses(structure)],
      () =>
        input && output
          ? [
              {
                method: minimumLoad,
                input,
                output,
                origins: {
                  factor: `${seat.address}/row: ${facts.source}`,
                  viscosity: oil.address,
                  speed: 'turns of the shaft over the time of the duty',
                  bore: `${seat.address}/row`,
                  outside: `${seat.address}/row`,
                },
              },
            ]
          : [],
      {
        capacity: 'shaft on its bearings, each part of the duty by its distance',
        demand: output ? 'above' : `bearing-limits/${row}, times the dynamic rating`,
      },
    );
  }),
};

const WITH_SEALS = limitOf('speed with rubbing seals', 'part');

/** Speed that a bearing may turn at, by its maker and its seal; null where no table gives it. */
export const turnsUpTo = (facts: BearingFacts, seal: BearingSeat['seal']): number | null =>
  facts.limitingSpeed === null ? null : facts.limitingSpeed * (seal === 'rubbing seals' ? WITH_SEALS : 1);

/** The bearing turns no faster than its maker lets it. */
export const bearingTurns: Check = {
  id: 'bearing.speed',
  title: 'speed of the bearing',
  consequence: 'wears out',
  wanted: { reserve: 1, from: 'limiting speed of the maker' },
  atWorst: 'fails',
  perCase: true,
  rare: true,
  subjects: bearingSubjects,
  demand: bearingDemand(({ k }, _, load) => load.shafts[k]?.speed ?? null),
  run: onBearing(({ k, seat, fitted, facts, name }, scene, load) => {
    const speed = load?.shafts[k]?.speed;
    if (speed === undefined) return null;
    const limit = turnsUpTo(facts, fitted.seal);
    if (limit === null)
      return {
        kind: 'unknown',
        missing: [{ address: `${seat.address}/row`, says: `the number of ${seat.name}, for the speed that it bears` }],
      };
    const sealed = fitted.seal === 'rubbing seals';
    const { show } = scene;
    return measured(
      { name: 'speed', value: speed, kind: 'angularSpeed', use: 'angularSpeed' },
      { name: 'limit', value: limit, kind: 'angularSpeed', use: 'angularSpeed' },
      () =>
        `${name} turns at ${show('angularSpeed', speed)}; it may turn at ${show('angularSpeed', limit)}${sealed ? ' with rubbing seals' : ''}.`,
      [],
      () => [],
      {
        capacity: sealed
          ? `${seat.address}/row, times bearing-limits/speed with rubbing seals`
          : `${seat.address}/row: ${facts.source}`,
        demand: 'speed carried through the path',
      },
    );
  }),
};

const slopeRow = (key: 'deep-groove' | 'angular-contact' | 'tapered') => ({
  angle: rowInSi(SHAFT_LIMITS, key).slopeLow ?? Number.NaN,
  row: `shaft-limits/${key}`,
});
const KEEPS_ITS_LIFE = {
  'deep groove': slopeRow('deep-groove'),
  'angular contact': slopeRow('angular-contact'),
  tapered: slopeRow('tapered'),
} as const;
/** rad. */
const NO_SLOPE = 1e-9;

/** The shaft leans so little in the bearing that its life is the one worked out. */
export const bearingTilts: Check = {
  id: 'bearing.tilt',
  title: 'bearing keeping its whole life though the shaft leans',
  consequence: 'wears out',
  wanted: { reserve: 1, from: sourceOf(SHAFT_LIMITS, 'deep-groove') },
  atWorst: 'thin',
  perCase: true,
  subjects: bearingSubjects,
  demand: bearingDemand(({ k, b, structure }, { strength }, load) => {
    const answer = strength.answer(k, load);
    const slope = answer.ok ? answer.solution.slopeAt(structure.bearings[b]?.node ?? -1) : null;
    return slope != null && slope >= NO_SLOPE ? slope : null;
  }),
  run: onBearing(({ k, b, facts, structure, name }, scene, load) => {
    const answer = load && scene.strength.answer(k, load);
    if (!answer) return null;
    if (!answer.ok) return { kind: 'unknown', missing: answer.missing };
    const slope = answer.solution.slopeAt(structure.bearings[b]?.node ?? -1) ?? 0;
    if (slope < NO_SLOPE) return null;
    const limit = KEEPS_ITS_LIFE[facts.kind];
    const { show } = scene;
    return measured(
      { name: 'slope', value: slope, kind: 'angle', use: 'angle' },
      { name: 'keeps its life up to', value: limit.angle, kind: 'angle', use: 'angle' },
      () =>
        `The shaft leans ${show('angle', slope)} in ${name.charAt(0).toLowerCase()}${name.slice(1)}; up to ${show('angle', limit.angle)} it keeps its whole life. How true its plates stand to each other comes on top.`,
      shaftUses(structure),
      () => [],
      { capacity: limit.row, demand: SOLVED },
    );
  }),
};
