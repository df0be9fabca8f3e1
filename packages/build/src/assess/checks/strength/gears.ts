import type { Missing } from '../../types.ts';
import type { Check, Outcome, Scene } from '../check.ts';
import { measured } from '../measured.ts';
import { dutyNotTyped, dutyOr } from './chains.ts';
import { livedThrough } from './gear-donor.ts';
import { type GearPair, gearSubjects, onPair } from './gear-pairs.ts';
import { type GearReserve, overDuty, underPeak } from './gear-reserves.ts';
import { pairBears } from './gear-steels.ts';

const RATING = 'ANSI/AGMA 2003-B97 and 2001-D04 hold the reserve themselves; from memory';

/** What would tell the steel of the gears that are not known. */
function askSteel({ stage }: GearPair, scene: Scene, says: string): readonly Missing[] {
  const known = pairBears(stage, scene);
  return (['driver', 'driven'] as const).flatMap((member, k) =>
    known[member].known
      ? []
      : [
          {
            address: `${stage.address}/made/${member}/hardness`,
            says: `the steel or hardness of the ${member === 'driver' ? 'driver' : 'driven gear'}${k === 0 || known.driver.known ? ` (${says})` : ''}`,
          },
        ],
  );
}

/** How the reserve is said: known steel by its number, unknown steel where even the best fails, else asked for. */
function judged(
  pair: GearPair,
  scene: Scene,
  reserve: GearReserve,
  what: { readonly name: string; readonly usual: boolean; readonly uses: Parameters<typeof measured>[3] },
): Outcome | null {
  const { show } = scene;
  const known = pairBears(pair.stage, scene);
  const range = `it carries ${show('percent', reserve.low)} to ${show('percent', reserve.high)} of what comes`;
  const decides = known.known ? reserve.low : reserve.high;
  if (what.usual && decides < 1) return { kind: 'unknown', missing: [dutyNotTyped(`by a usual spectrum ${range}`)] };
  if (!known.known && reserve.high >= 1) {
    // Enough with the worst steel, or proven in a donor: the finding on its make says so, and no better than thin.
    if (reserve.low >= 1 || livedThrough(pair, scene)) return null;
    return { kind: 'unknown', missing: askSteel(pair, scene, range) };
  }
  const best = known.known ? '' : ' even of the best steel that it may be';
  return measured(
    { name: 'stress number', value: reserve.stress, kind: 'pressure', use: 'pressure' },
    { name: 'at which its load is used up', value: reserve.stress * decides, kind: 'pressure', use: 'pressure' },
    () =>
      `Its ${reserve.gear} gives way first${best}: ${what.name} number ${show('pressure', reserve.stress)} in “${reserve.name}” on ${show('torque', reserve.hardest.torque)}; all loads could grow to ${show('percent', decides)}${beyond(pair)}.`,
    what.uses,
    reserve.used,
    { capacity: 'load over the one that is carried, above', demand: 'above' },
  );
}

const RIGHT = Math.PI / 2;
/** What of the pair stands outside the ground that its factors were tried on. */
function beyond({ stage, geometry }: GearPair): string {
  if (stage.kind !== 'bevel') return '';
  const square = Math.abs((geometry.bevel?.shaftAngle ?? RIGHT) - RIGHT) < 0.01;
  if (stage.spiral) return '. Its factor for spiral teeth is held low, as no published one proves it';
  return square ? '' : '. Its factors were never tried against published ones at this angle';
}

const dutyCheck = (id: 'gear.bending' | 'gear.contact', of: 'bending' | 'contact', title: string): Check => ({
  id,
  title,
  consequence: of === 'bending' ? 'loses drive' : 'wears out',
  wanted: { reserve: 1, from: RATING },
  atWorst: 'fails',
  perCase: false,
  onRoad: true,
  subjects: gearSubjects,
  run: onPair((pair, scene) => {
    const duty = dutyOr(scene.duty());
    if ('kind' in duty) return duty;
    const reserve = overDuty(pair, scene, duty, of);
    if (!reserve) return null;
    return judged(pair, scene, reserve, {
      name: of,
      usual: duty.from === 'usual',
      uses: [...pair.uses, ...duty.uses],
    });
  }),
});

/** Bending of the teeth over the duty. */
export const gearBends = dutyCheck('gear.bending', 'bending', 'teeth in bending over the duty');
/** Pitting of the flanks over the duty. */
export const gearPits = dutyCheck('gear.contact', 'contact', 'flanks over the duty');

/** Bending of the teeth under the peaks of the load cases. */
export const gearPeaks: Check = {
  id: 'gear.peak',
  title: 'teeth under a peak',
  consequence: 'throws parts',
  wanted: { reserve: 1.25, from: 'stated default of this project: a quarter in hand over the greatest peak' },
  atWorst: 'fails',
  perCase: true,
  rare: true,
  subjects: gearSubjects,
  run: onPair((pair, scene, load) => {
    const reserve = load ? underPeak(pair, scene, load) : null;
    if (!reserve) return null;
    return judged(pair, scene, reserve, {
      name: 'bending',
      usual: false,
      uses: [...pair.uses, scene.model.engine.boxEfficiency, scene.model.engine.primary],
    });
  }),
};

/** A pair whose steel nobody knows carries somewhere between two ends, and is never better than thin. */
export const gearMake: Check = {
  id: 'gear.make',
  title: 'gears of unknown make',
  consequence: 'loses drive',
  wanted: { reserve: 1, from: 'stated default of this project: an unknown steel is never better than thin' },
  atWorst: 'thin',
  perCase: false,
  onRoad: true,
  subjects: gearSubjects,
  run: onPair((pair, scene) => {
    const known = pairBears(pair.stage, scene);
    if (known.known) return null;
    const duty = scene.duty();
    const { show } = scene;
    const ends = duty.ok ? (['bending', 'contact'] as const).map((of) => overDuty(pair, scene, duty, of)) : [];
    const found = ends.filter((one) => one !== null);
    const [low, high] = [Math.min(...found.map((one) => one.low)), Math.min(...found.map((one) => one.high))];
    return {
      kind: 'plain',
      holds: false,
      says: () =>
        [
          `Driver: ${known.driver.words}; driven gear: ${known.driven.words}.`,
          found.length > 0
            ? `By that the pair carries ${show('percent', low)} to ${show('percent', high)} of your ${duty.ok && duty.from === 'usual' ? 'usual ' : ''}duty, the depth of a hard skin not known.`
            : '',
          pair.stage.gears.donor
            ? livedThrough(pair, scene)
              ? 'It lived through as much in its donor.'
              : 'Its donor asked less of it.'
            : 'What it lived through in its donor would be the better proof.',
        ]
          .filter((part) => part !== '')
          .join(' '),
      uses: [...pair.uses, ...(duty.ok ? duty.uses : [])],
      used: () => found.flatMap((one) => one.used()).slice(0, 4),
    };
  }),
};
