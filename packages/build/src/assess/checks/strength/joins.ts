import { flankPressure } from '@oddwheel/mechanics/joint/flank-pressure';
import { locatingPlay } from '@oddwheel/mechanics/joint/locating-play';
import { spigotPressure } from '@oddwheel/mechanics/joint/spigot-pressure';
import { weldTorsion } from '@oddwheel/mechanics/joint/weld-torsion';
import { JOINT_LIMITS } from '@oddwheel/tables/joint-limits';
import { rowInSi, sourceOf } from '@oddwheel/tables/table';
import type { Model } from '../../../model/model.ts';
import type { Join } from '../../../model/strength.ts';
import { type SectionForces, sectionAt } from '../../strength/sections.ts';
import type { Missing } from '../../types.ts';
import type { Check, Outcome, Scene, Subject } from '../check.ts';
import { measured } from '../measured.ts';
import { onSolved, type Solved } from './shafts.ts';

const joinsThat =
  (fits: (join: Join) => boolean): Check['subjects'] =>
  ({ shafts }) =>
    shafts.flatMap((shaft) =>
      shaft.joins.filter(fits).map(({ address, name }) => ({ address, element: name, stage: null })),
    );

function joinOf({ shafts }: Model, { address }: Subject): Join | undefined {
  return shafts.flatMap(({ joins }) => joins).find((join) => join.address === address);
}

const plainly = (holds: boolean, says: () => string): Outcome => ({
  kind: 'plain',
  holds,
  says,
  uses: [],
  used: () => [],
});
const unknown = (...missing: readonly Missing[]): Outcome => ({ kind: 'unknown', missing });

/** The greater load on either side of a joint. */
function forcesAt({ structure, solution }: Solved, station: number): SectionForces | null {
  const node = structure.stations.findIndex((one) => Math.abs(one - station) < 1e-6);
  const sides = [sectionAt(solution.sections, 2 * node - 1), sectionAt(solution.sections, 2 * node)].filter(
    (side) => side !== undefined,
  );
  const [first, second = first] = sides;
  if (node < 0 || !first || !second) return null;
  return {
    station,
    bending: Math.max(first.bending, second.bending),
    shear: Math.max(first.shear, second.shear),
    torque: Math.max(Math.abs(first.torque), Math.abs(second.torque)),
    axial: Math.max(Math.abs(first.axial), Math.abs(second.axial)),
  };
}

/** Something turned smooth keeps both parts on one line; a spline, bolts in their holes or a loose spigot do not. */
export const joinCentres: Check = {
  id: 'join.centre',
  title: 'what centres the joint',
  consequence: 'throws parts',
  wanted: {
    reserve: 1,
    from: 'common practice: a spline that fits on its flanks has play, and neither centres nor takes bending',
  },
  atWorst: 'fails',
  perCase: false,
  subjects: joinsThat(({ centredBy }) => centredBy !== 'weld alone'),
  run: (scene, subject) => {
    const join = joinOf(scene.model, subject);
    if (!join) return null;
    switch (join.centredBy) {
      case 'spline':
        return plainly(
          false,
          () =>
            'Only the spline holds the two parts in line. A spline that fits on its flanks has play: it passes torque, but it neither centres nor takes bending. Turn a smooth spigot beside it that fits its bore.',
        );
      case 'bolts':
        return plainly(
          false,
          () =>
            'Only bolts hold the two parts in line, and bolts stand in holes with play. Turn a spigot on one flange and its seat in the other.',
        );
      case 'press fit':
        return plainly(true, () => 'A press fit centres the two parts.');
      case 'weld alone':
        return null;
      case 'spigot':
        return spigotPlay(scene, join);
    }
  },
};

function spigotPlay({ at, show }: Scene, { address, name, spigot }: Join): Outcome {
  if (!spigot) return unknown({ address: `${address}/spigot`, says: `the spigot of ${name}: diameter, length, play` });
  const { play, diameter } = spigot;
  if (!play) return unknown({ address: `${address}/spigot/play`, says: `the play of the spigot of ${name}` });
  const input = { diameter };
  const output = locatingPlay.run(input);
  const own = at(play);
  return measured(
    { name: 'play', value: own, kind: 'length', use: 'runOut' },
    { name: 'still centres', value: output.play, kind: 'length', use: 'runOut' },
    () =>
      `A spigot of ${show('length', diameter)} with ${show('runOut', own)} of play centres the two parts; up to ${show('runOut', output.play)} does, a sliding fit H7/h6.`,
    [play],
    () => [{ method: locatingPlay, input, output, origins: { diameter: `${address}/spigot/diameter` } }],
    { capacity: 'above', demand: play.address },
  );
}

/** A weld draws as it cools: parts that only the weld holds do not come out in line. */
export const joinDraws: Check = {
  id: 'join.draw',
  title: 'in line after welding',
  consequence: 'wears out',
  wanted: { reserve: 1, from: 'common practice: a weld draws as it cools' },
  atWorst: 'thin',
  perCase: false,
  subjects: joinsThat(({ centredBy }) => centredBy === 'weld alone'),
  run: () =>
    plainly(
      false,
      () =>
        'Nothing but the weld holds the two parts in line, and a weld draws as it cools. Turn a spigot or slip a sleeve over before welding, leave stock, and turn the seats true afterwards.',
    ),
};

/** Something holds the joint along the shaft. */
export const joinHolds: Check = {
  id: 'join.axial',
  title: 'joint held along the shaft',
  consequence: 'loses drive',
  wanted: { reserve: 1, from: 'common practice: what can slide will' },
  atWorst: 'fails',
  perCase: false,
  subjects: joinsThat(() => true),
  run: (scene, subject) => {
    const join = joinOf(scene.model, subject);
    if (!join) return null;
    const { axialBy } = join;
    return plainly(axialBy !== 'nothing', () =>
      axialBy === 'nothing'
        ? 'Nothing holds the two parts together along the shaft: they walk apart. Give it a draw bolt, a retaining ring or a weld.'
        : `Held along the shaft by ${axialBy === 'bolts' ? 'its bolts' : `a ${axialBy}`}.`,
    );
  },
};

const WELD = rowInSi(JOINT_LIMITS, 'weld-throat').shear ?? Number.NaN;
const LOADED = 'torque at the joint under this case';
/** N·m and N: a case that leaves the shaft idle says nothing of its joints. */
const NOTHING = 1e-6;

/** Sizes of a joint that a check needs; the first that is missing makes it unknown. */
function sizes<K extends 'diameter' | 'length' | 'height' | 'teeth'>(
  join: Join,
  words: Readonly<Record<K, string>>,
): { readonly ok: true; readonly of: Readonly<Record<K, number>> } | { readonly ok: false; readonly outcome: Outcome } {
  const keys = Object.keys(words) as K[];
  const missing = keys
    .filter((key) => join[key] === null)
    .map((key) => ({ address: `${join.address}/${key}`, says: `${words[key]} of ${join.name}` }));
  if (missing.length > 0) return { ok: false, outcome: unknown(...missing) };
  return { ok: true, of: Object.fromEntries(keys.map((key) => [key, join[key] ?? 0])) as Record<K, number> };
}

function onFlanks(join: Join, torque: number, solved: Solved, scene: Scene): Outcome {
  const spline = join.torqueBy === 'spline';
  const found = sizes(join, {
    diameter: `the ${spline ? 'mean diameter of the spline' : 'shaft diameter at the key'}`,
    length: 'the length in mesh',
    height: 'the height of flank in contact',
  });
  if (!found.ok) return found.outcome;
  if (spline && join.teeth === null)
    return unknown({ address: `${join.address}/teeth`, says: `the number of teeth of ${join.name}` });
  const row = spline ? 'spline' : 'key';
  const input = {
    torque,
    ...found.of,
    teeth: join.teeth ?? 1,
    share: rowInSi(JOINT_LIMITS, row).share ?? Number.NaN,
  };
  const output = flankPressure.run(input);
  const { steel } = solved.structure.shaft;
  const yielding = scene.at(steel.yield);
  const { show } = scene;
  return measured(
    { name: 'pressure on the flanks', value: output.pressure, kind: 'pressure', use: 'pressure' },
    { name: 'yield strength', value: yielding, kind: 'pressure', use: 'pressure' },
    () =>
      `A ${row} passes ${show('torque', torque)}, either way: ${show('pressure', output.pressure)} on its flanks, and the shaft yields at ${show('pressure', yielding)}.`,
    [steel.yield],
    () => [
      {
        method: flankPressure,
        input,
        output,
        origins: {
          torque: LOADED,
          diameter: `${join.address}/diameter`,
          length: `${join.address}/length`,
          height: `${join.address}/height`,
          teeth: join.teeth === null ? 'one key' : `${join.address}/teeth`,
          share: `joint-limits/${row}`,
        },
      },
    ],
    { capacity: steel.yield.address, demand: 'above' },
  );
}

function onWeld(join: Join, torque: number, { show }: Scene): Outcome {
  const found = sizes(join, { diameter: 'the diameter of the weld circle', length: 'the leg of the weld' });
  if (!found.ok) return found.outcome;
  const input = { torque, diameter: found.of.diameter, leg: found.of.length };
  const output = weldTorsion.run(input);
  return measured(
    { name: 'shear in the throat', value: output.shear, kind: 'pressure', use: 'pressure' },
    { name: 'allowed', value: WELD, kind: 'pressure', use: 'pressure' },
    () =>
      `The weld passes ${show('torque', torque)}, either way: ${show('pressure', output.shear)} in its throat; ${show('pressure', WELD)} is allowed with a plain electrode.`,
    [],
    () => [
      {
        method: weldTorsion,
        input,
        output,
        origins: { torque: LOADED, diameter: `${join.address}/diameter`, leg: `${join.address}/length` },
      },
    ],
    { capacity: 'joint-limits/weld-throat', demand: 'above' },
  );
}

/** What passes the torque of the joint, under every peak. How tight a press fit is, and how strong bolts and pins are, the build does not say. */
export const joinPasses: Check = {
  id: 'join.torque',
  title: 'torque through the joint',
  consequence: 'loses drive',
  wanted: { reserve: 1, from: `stated default of this project; ${sourceOf(JOINT_LIMITS, 'weld-throat')}` },
  atWorst: 'fails',
  perCase: true,
  rare: true,
  subjects: joinsThat(({ torqueBy }) => torqueBy === 'spline' || torqueBy === 'key' || torqueBy === 'weld'),
  run: onSolved((solved, scene, subject) => {
    const join = joinOf(scene.model, subject);
    const forces = join && forcesAt(solved, join.station);
    if (!join || !forces || forces.torque < NOTHING) return null;
    return join.torqueBy === 'weld' ? onWeld(join, forces.torque, scene) : onFlanks(join, forces.torque, solved, scene);
  }),
};

/** A spigot takes the bending that a spline or flange must not. */
export const joinBends: Check = {
  id: 'join.bending',
  title: 'bending on the spigot',
  consequence: 'wears out',
  wanted: { reserve: 2, from: 'stated default of this project: the pressure turns round with every turn' },
  atWorst: 'fails',
  perCase: true,
  rare: true,
  subjects: joinsThat(({ centredBy, spigot }) => centredBy === 'spigot' && spigot !== null),
  run: onSolved((solved, scene, subject) => {
    const join = joinOf(scene.model, subject);
    const forces = join && forcesAt(solved, join.station);
    if (!join?.spigot || !forces || forces.bending + forces.shear < NOTHING) return null;
    const { steel } = solved.structure.shaft;
    const { diameter, length } = join.spigot;
    const input = { bending: forces.bending, shear: forces.shear, diameter, length };
    const output = spigotPressure.run(input);
    const yielding = scene.at(steel.yield);
    const { show } = scene;
    return measured(
      { name: 'pressure', value: output.pressure, kind: 'pressure', use: 'pressure' },
      { name: 'yield strength', value: yielding, kind: 'pressure', use: 'pressure' },
      () =>
        `The spigot takes ${show('torque', forces.bending)} of bending and ${show('force', forces.shear)} across: ${show('pressure', output.pressure)} at its mouth, and the shaft yields at ${show('pressure', yielding)}.`,
      [steel.yield],
      () => [
        {
          method: spigotPressure,
          input,
          output,
          origins: {
            bending: 'shaft on its bearings under this case',
            shear: 'shaft on its bearings under this case',
            diameter: `${join.address}/spigot/diameter`,
            length: `${join.address}/spigot/length`,
          },
        },
      ],
      { capacity: steel.yield.address, demand: 'above' },
    );
  }),
};
