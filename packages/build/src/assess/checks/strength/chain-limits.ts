import { chainGallingSpeed } from '@oddwheel/mechanics/chain/galling-speed';
import { chainServicePull } from '@oddwheel/mechanics/chain/service-pull';
import { sprocketHub } from '@oddwheel/mechanics/chain/sprocket-hub';
import { CHAIN_LIMITS_TABLE } from '@oddwheel/tables/chain-limits';
import { CHAIN_OILING } from '@oddwheel/tables/chain-oil';
import { rowInSi, sourceOf } from '@oddwheel/tables/table';
import { seatOf } from '../../geometry/place.ts';
import type { Check, Outcome } from '../check.ts';
import { measured } from '../measured.ts';
import { binsOf, chainSubjects, dutyNotTyped, dutyOr, onChain, pullUses, redlineSpeed, usedPull } from './chains.ts';

/** Strength over the pull in service; a joining link slips on its pins. */
const PARTS = { 'joining link': 9, 'riveted link': 6, endless: 6 } as const;

/** The hardest pull of the duty, centrifugal part with it, against the part of the strength that service may use. */
export const chainServes: Check = {
  id: 'chain.service',
  title: 'pull in service',
  consequence: 'throws parts',
  wanted: {
    reserve: 1,
    from: 'a chain maker’s guide: a sixth of the strength in service, a ninth with a slip-fit joining link',
  },
  atWorst: 'thin',
  perCase: false,
  onRoad: true,
  subjects: chainSubjects,
  run: onChain((at, scene) => {
    const { stage, row, strands } = at;
    const duty = dutyOr(scene.duty());
    if ('kind' in duty) return duty;
    const [first, ...rest] = binsOf(at, duty);
    if (!first) return null;
    const hardest = rest.reduce((worst, bin) => (bin.pull > worst.pull ? bin : worst), first);
    if (!(hardest.torque > 0)) return null;
    const pulled = usedPull(at, hardest.torque);
    const input = {
      pull: Number(pulled.output.pull),
      mass: (row.mass ?? 0) * strands,
      speed: hardest.lineSpeed,
      minTensile: stage.size.minTensile * strands,
      part: PARTS[stage.joint ?? 'riveted link'],
    };
    const output = chainServicePull.run(input);
    const { show } = scene;
    if (duty.from === 'usual' && output.total > output.limit)
      return {
        kind: 'unknown',
        missing: [
          dutyNotTyped(
            `by a usual spectrum it pulls ${show('force', output.total)}, and ${show('force', output.limit)} is for service`,
          ),
        ],
      };
    return measured(
      { name: 'pull in service', value: output.total, kind: 'force', use: 'force' },
      { name: 'for service', value: output.limit, kind: 'force', use: 'force' },
      () =>
        `${show('force', output.total)} in “${hardest.name}”, ${show('force', output.centrifugal)} of it from its own turning; service may use ${show('force', output.limit)}, 1/${input.part} of the strength of ${stage.size.key}.`,
      pullUses(at, duty),
      () => [
        pulled,
        {
          method: chainServicePull,
          input,
          output,
          origins: {
            pull: 'above',
            mass: `chain-sizes/${stage.size.key}`,
            speed: 'speed carried through the path',
            minTensile: stage.size.strengthFrom,
            part: stage.joint === null ? 'no slip-fit joining link said' : `${stage.address}/joint`,
          },
        },
      ],
      { capacity: 'above', demand: 'above' },
    );
  }),
};

const ORDINARY = rowInSi(CHAIN_LIMITS_TABLE, 'speed-ordinary').speedHigh ?? Number.NaN;

/** Speed of a chain at the redline in top gear, against the usual limit and the seizing of its pins. */
export const chainRuns: Check = {
  id: 'chain.speed',
  title: 'speed of the chain',
  consequence: 'wears out',
  wanted: { reserve: 1, from: sourceOf(CHAIN_LIMITS_TABLE, 'speed-ordinary') },
  atWorst: 'thin',
  perCase: false,
  subjects: chainSubjects,
  run: onChain((at, scene) => {
    const { stage, chain, family, k } = at;
    // Motorcycle chains run at twice the speed that the tables of industry end at.
    if (family === 'motorcycle') return null;
    const driver = redlineSpeed(scene, k);
    if (driver === null) return null;
    const { driver: z1, driven: z2 } = stage.teeth;
    // The larger sprocket gives the lower speed; prints differ on which is meant.
    const input = { pitch: stage.size.pitch, teeth: Math.max(z1, z2), pull: 0 };
    const output = chainGallingSpeed.run(input);
    const small = Math.min(chain.pitchRadiusDriver, chain.pitchRadiusDriven);
    const seizes = output.speed * small;
    const limit = Math.min(ORDINARY, seizes);
    const speed = driver * chain.pitchRadiusDriver;
    const { show } = scene;
    return measured(
      { name: 'at redline in top gear', value: speed, kind: 'speed', use: 'speed' },
      { name: 'limit', value: limit, kind: 'speed', use: 'speed' },
      () =>
        `It runs ${show('speed', speed)} at the redline in top gear; ${seizes < ORDINARY ? `its pins seize from ${show('speed', seizes)}` : `${show('speed', ORDINARY)} is the usual limit with good oil`}.`,
      [],
      () => [
        {
          method: chainGallingSpeed,
          input,
          output,
          origins: { pitch: `chain-sizes/${stage.size.key}`, teeth: `${stage.address}/teeth`, pull: 'running light' },
        },
      ],
      { capacity: 'chain-limits/speed-ordinary, or above', demand: 'redline over the ratios before it' },
    );
  }),
};

const OILING = Object.keys(CHAIN_OILING.rows).map((key) => ({ key, ...rowInSi(CHAIN_OILING, key) }));

/** Way of oiling against the one that the speed asks for. */
export const chainOiled: Check = {
  id: 'chain.oil',
  title: 'oiling for its speed',
  consequence: 'wears out',
  wanted: { reserve: 1, from: CHAIN_OILING.source },
  atWorst: 'thin',
  perCase: false,
  onRoad: true,
  subjects: chainSubjects,
  run: onChain((at, scene) => {
    const { stage } = at;
    // Where nobody says how it is oiled the wear asks; sealed rings bring their own grease.
    if (stage.oiled === null || stage.oiled === 'sealed rings') return null;
    const duty = dutyOr(scene.duty());
    if ('kind' in duty) return duty;
    const speed = Math.max(...binsOf(at, duty).map(({ lineSpeed }) => lineSpeed));
    const row = OILING.findLast(({ pitch = 0 }) => pitch <= stage.size.pitch * 1.001) ?? OILING[0];
    if (!row || !(speed > 0)) return null;
    const { show } = scene;
    const { hand = 0, bath = 0 } = row;
    const asks = speed <= hand ? 'drip or brush' : speed <= bath ? 'an oil bath' : 'a pumped stream of oil';
    if (stage.oiled === 'dirty or seldom' || stage.oiled === 'dry')
      return {
        kind: 'plain',
        holds: false,
        says: () =>
          `It runs ${stage.oiled === 'dry' ? 'dry' : 'in dirt, or is seldom oiled'}; at ${show('speed', speed)} practice asks for ${asks}.`,
        uses: duty.uses,
        used: () => [],
      };
    const limit = stage.oiled === 'drip or brush' ? hand : Number.POSITIVE_INFINITY;
    return {
      kind: 'plain',
      holds: speed <= limit,
      says: () =>
        speed <= limit
          ? `At ${show('speed', speed)} practice asks for ${asks}.`
          : `Up to ${show('speed', hand)} drip or brush does; at ${show('speed', speed)} practice asks for ${asks}. An open chain is then oiled often, and wears sooner.`,
      uses: duty.uses,
      used: () => [],
    };
  }),
};

/** Bore of each sprocket against the largest that leaves its hub a wall. */
export const chainBores: Check = {
  id: 'chain.bore',
  title: 'bore of the sprockets',
  consequence: 'loses drive',
  wanted: { reserve: 1, from: 'Machinery’s Handbook, hub wall of sprockets with a keyway; from memory' },
  atWorst: 'thin',
  perCase: false,
  subjects: chainSubjects,
  run: onChain(({ stage, k }, scene): Outcome | null => {
    const geometry = scene.stages[k];
    if (!geometry) return null;
    const ends = (
      [
        [seatOf(geometry.from, stage.from), stage.teeth.driver, 'driver'],
        [seatOf(geometry.to, stage.to), stage.teeth.driven, 'driven'],
      ] as const
    ).flatMap(([seat, teeth, end]) => {
      if (seat.diameter === null) return [];
      const input = { pitch: stage.size.pitch, teeth };
      const output = sprocketHub.run(input);
      return [{ seat, bore: seat.diameter, teeth, end, input, output, reserve: output.bore / seat.diameter }];
    });
    const [first, ...rest] = ends;
    if (!first) return null;
    const worst = rest.reduce((a, b) => (b.reserve < a.reserve ? b : a), first);
    const { show } = scene;
    return measured(
      { name: 'bore', value: worst.bore, kind: 'length', use: 'length' },
      { name: 'largest', value: worst.output.bore, kind: 'length', use: 'length' },
      () =>
        `${worst.seat.name} sits on ${show('length', worst.bore)}; ${worst.teeth} teeth of ${stage.size.key} take a bore of at most ${show('length', worst.output.bore)} with a keyway, on a hub of at most ${show('length', worst.output.hub)}.`,
      [],
      () => [
        {
          method: sprocketHub,
          input: worst.input,
          output: worst.output,
          origins: { pitch: `chain-sizes/${stage.size.key}`, teeth: `${stage.address}/teeth/${worst.end}` },
        },
      ],
      { capacity: 'above', demand: `${worst.seat.address}/diameter` },
    );
  }),
};
