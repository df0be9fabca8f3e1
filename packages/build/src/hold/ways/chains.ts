/** Chains: their size, links, tensioner, and the place of their sprockets. */
import { dot, minus, norm, times } from '@oddwheel/mechanics/numerics/vector';
import { CHAIN_SIZES } from '@oddwheel/tables/chain-sizes';
import { rowInSi } from '@oddwheel/tables/table';
import type { Seat, Shaft } from '../../model/model.ts';
import { change, type Ground, type Ladder, ladder, lengthText, put, range, type Step, single } from '../ladder.ts';
import { takenUp } from './adjusters.ts';
import { alike, BETWEEN, half, isDonors, type Meshed, meshed, shaftOf, stagesOn } from './parts.ts';
import { chainOf, teethPatches } from './train.ts';

/** m: a place is not moved by less. */
const NOISE = 1e-7;

const sizes = Object.keys(CHAIN_SIZES.rows).map((key) => {
  const si = rowInSi(CHAIN_SIZES, key as keyof typeof CHAIN_SIZES.rows);
  return { key, pitch: si.pitch ?? Number.NaN, strength: si.minTensile ?? Number.NaN };
});

/** Stronger chains of the same pitch, more strands, and the next pitches with the sprockets kept as large as they are. */
export function strongerChain(ground: Ground): readonly Ladder[] {
  const found = chainOf(ground);
  if (!found) return [];
  const { address, name, size, teeth, strands } = found.stage;
  const stronger = sizes.filter(({ strength }) => strength > size.minTensile).sort((a, b) => a.strength - b.strength);
  const chainAt = `${address}/chain`;
  const same = stronger.filter(({ pitch }) => Math.abs(pitch - size.pitch) < 1e-6);
  const coarser = stronger.filter(({ pitch }) => pitch > size.pitch + 1e-6);
  return [
    ...ladder(
      'buy',
      same.map(
        ({ key, strength }): Step => ({
          what: `Run ${name} on ${key} chain instead of ${size.key}, with sprockets to suit`,
          patches: [put(ground, chainAt, key)],
          size: change(size.minTensile, strength),
        }),
      ),
    ),
    ...ladder(
      'buy',
      range(strands.si + 1, 3, 1).map(
        (count): Step => ({
          what: `Run ${name} on ${count} strands of ${size.key}, with sprockets to suit`,
          patches: [put(ground, `${address}/strands`, count)],
          size: count - strands.si,
        }),
      ),
    ),
    ...ladder(
      're-make',
      coarser.flatMap(({ key, pitch, strength }): Step[] => {
        const [driver, driven] = [teeth.driver, teeth.driven].map((count) => Math.round((count * size.pitch) / pitch));
        if (driver === undefined || driven === undefined || driver < 11) return [];
        const patches = teethPatches(ground, found, driver, driven, pitch);
        return patches
          ? [
              {
                what: `Run ${name} on ${key} chain over ${driver} : ${driven} teeth instead of ${size.key} over ${teeth.driver} : ${teeth.driven}`,
                patches: [put(ground, chainAt, key), ...patches],
                size: change(size.minTensile, strength),
              },
            ]
          : [];
      }),
    ),
  ];
}

/** A tensioner on the slack side. */
export function tensioned(ground: Ground): readonly Ladder[] {
  const found = chainOf(ground);
  if (!found || found.stage.tensioner === true) return [];
  const { address, name } = found.stage;
  return ladder('buy', [
    {
      what: `Give the slack side of ${name} a tensioner`,
      patches: [put(ground, `${address}/tensioner`, 'slack side')],
      size: 0.1,
    },
  ]);
}

/** A chain by links longer or shorter; an even count first. */
export function otherLinks(ground: Ground): readonly Ladder[] {
  const found = chainOf(ground);
  const links = found?.stage.links ?? null;
  if (!found || links === null) return [];
  const { address, name } = found.stage;
  return [1, -1].flatMap((sign) =>
    ladder(
      'adjust',
      [links % 2 === 0 ? 2 : 1, links % 2 === 0 ? 4 : 3].map((by): Step => {
        const to = links + sign * by;
        const set = takenUp(ground, found.stage, sign * by);
        return {
          what: `Close ${name} with ${to} links instead of ${links}${set ? ', and set its slack anew' : ''}`,
          patches: [put(ground, `${address}/links`, to), ...(set ?? [])],
          size: change(links, to),
        };
      }),
    ),
  );
}

/** The second shaft of a chain set parallel to the first. */
export function setParallel(ground: Ground): readonly Ladder[] {
  const found = chainOf(ground);
  if (!found) return [];
  const { from, to, stage } = found;
  const same =
    from.direction[0] * to.direction[0] + from.direction[1] * to.direction[1] + from.direction[2] * to.direction[2];
  const direction = from.direction.map((x) => Number((Math.sign(same) * x).toFixed(6)) + 0);
  return ladder('re-cut', [
    {
      what: `Set ${to.name} parallel to ${from.name}, for ${stage.name}`,
      patches: [put(ground, `${to.address}/direction`, direction)],
      size: 0.1,
    },
  ]);
}

const STEP = 1e-3;
const MOST = 0.03;

/** A part moved along its shaft by steps, one way. */
function shiftedSeat(ground: Ground, shaft: Shaft, seat: Seat, sign: 1 | -1, most = MOST): readonly Ladder[] {
  const address = `${seat.address}/station`;
  return ladder(
    're-cut',
    range(STEP, most, STEP).map((by): Step => {
      const text = lengthText(ground, address, seat.station + sign * by);
      return {
        what: `Move ${seat.name} of ${shaft.name} ${ground.show('length', by)} along its shaft, to station ${text}`,
        patches: [put(ground, address, text)],
        size: by / 0.1,
      };
    }),
  );
}

/** Either sprocket moved along its shaft, to bring both in one plane. */
export function intoPlane(ground: Ground): readonly Ladder[] {
  const { model, finding } = ground;
  const found = meshed(
    model,
    model.stages.findIndex(({ address }) => address === finding.address),
  );
  if (found?.stage.kind !== 'chain' && found?.stage.kind !== 'belt') return [];
  const { driver, driven, from, to } = found;
  return ([1, -1] as const).flatMap((sign) => [
    ...shiftedSeat(ground, from, driver, sign),
    ...shiftedSeat(ground, to, driven, sign),
  ]);
}

/** The idler moved along the driver's shaft until it stands where the chain runs. */
export function idlerIntoPlane(ground: Ground): readonly Ladder[] {
  const found = chainOf(ground);
  const idler = found?.stage.idler;
  if (!found || !idler) return [];
  const { stage, driver, driven, from } = found;
  const off = dot(minus(idler.at, driver.at), from.direction);
  const moved = minus(idler.at, times(off, from.direction));
  const patches = (['x', 'y', 'z'] as const).flatMap((axis, k) => {
    const at = `${idler.address}/at/${axis}`;
    const [now = 0, next = 0] = [idler.at[k], moved[k]];
    return Math.abs(next - now) < NOISE ? [] : [put(ground, at, lengthText(ground, at, next))];
  });
  if (patches.length === 0) return [];
  return single('adjust', {
    what: `Move the idler of ${stage.name} ${ground.show('length', Math.abs(off))} along ${from.name}, to where the chain runs`,
    patches,
    size: Math.abs(off) / norm(minus(driven.at, driver.at)),
  });
}

/** Both parts of a chain or belt moved along their shafts by the same way, so that they stay in one plane; station grows on the first for +1. */
export function shiftedMesh(
  ground: Ground,
  { stage, driver, driven, from, to }: Meshed,
  sign: 1 | -1,
  most = MOST,
): readonly Ladder[] {
  const way = alike(from, to);
  if (way === null) return [];
  return ladder(
    're-cut',
    range(STEP, most, STEP).map(
      (by): Step => ({
        what: `Move both ${driver.name} and ${driven.name} of ${stage.name} ${ground.show('length', by)} along their shafts`,
        patches: [
          put(
            ground,
            `${driver.address}/station`,
            lengthText(ground, `${driver.address}/station`, driver.station + sign * by),
          ),
          put(
            ground,
            `${driven.address}/station`,
            lengthText(ground, `${driven.address}/station`, driven.station + sign * way * by),
          ),
        ],
        size: by / 0.1,
      }),
    ),
  );
}

/** What pulls on the shaft of a finding brought nearer to its bearing, with the part that it runs with. */
export function nearerLoads(ground: Ground): readonly Ladder[] {
  const shaft = shaftOf(ground);
  if (!shaft) return [];
  return stagesOn(ground, shaft).flatMap((one) => {
    if (!['chain', 'belt', 'spur'].includes(one.stage.kind)) return [];
    const own = one.from === shaft ? one.driver : one.driven;
    const nearest = shaft.seats
      .filter(({ kind }) => kind === 'bearing')
      .sort((a, b) => Math.abs(a.station - own.station) - Math.abs(b.station - own.station))[0];
    if (!nearest) return [];
    const gap = Math.abs(nearest.station - own.station) - half(nearest) - half(own) - BETWEEN;
    const sign = Math.sign(nearest.station - own.station) * (own === one.driver ? 1 : (alike(one.from, one.to) ?? 1));
    return shiftedMesh(ground, one, sign >= 0 ? 1 : -1, Math.min(MOST, gap));
  });
}

/** Parts of a shaft that a clearance names, moved along it either way. */
export const shiftedPart = (ground: Ground, shaft: Shaft, seat: Seat): readonly Ladder[] =>
  isDonors(ground, shaft) && seat.kind === 'bearing'
    ? []
    : ([1, -1] as const).flatMap((sign) => shiftedSeat(ground, shaft, seat, sign));
