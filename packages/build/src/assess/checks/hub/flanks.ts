import { flankPressure } from '@oddwheel/mechanics/joint/flank-pressure';
import { involuteSpline } from '@oddwheel/mechanics/joint/involute-spline';
import { keyPressure } from '@oddwheel/mechanics/joint/key-pressure';
import { HUB_LIMITS } from '@oddwheel/tables/hub-limits';
import { JOINT_LIMITS } from '@oddwheel/tables/joint-limits';
import { rowInSi } from '@oddwheel/tables/table';
import type { Hub, HubSpline } from '../../../model/hub.ts';
import type { Seat } from '../../../model/model.ts';
import type { Used } from '../../geometry/types.ts';
import type { Outcome } from '../check.ts';
import { type KeySize, keySize } from './key-size.ts';
import { needed, unknown } from './seats.ts';

/** Pressures and shears of a key or spline under a torque, and how they were worked out. */
export interface Flanks {
  /** On the softer of what press on each other. */
  readonly onHub: number;
  readonly onShaft: number;
  /** Through the key, or through the teeth. */
  readonly shear: number | null;
  /** In the shaft under the teeth of an involute spline. */
  readonly rootShear: number | null;
  readonly used: () => readonly Used[];
}

type Answer = { readonly ok: true; readonly of: Flanks } | { readonly ok: false; readonly outcome: Outcome };

export const THROUGH = 'torque through the seat under this case';
const SHARE = rowInSi(JOINT_LIMITS, 'spline').share ?? Number.NaN;
export const KEY_METAL = rowInSi(HUB_LIMITS, 'key-metal').strength ?? Number.NaN;

function keyOrigins(hub: Hub, size: KeySize) {
  const at = `${hub.address}/key`;
  const of = (key: 'width' | 'height' | 'depth') =>
    hub.key?.[key] === null && size.row ? `key-sizes/${size.row}` : `${at}/${key}`;
  return {
    width: of('width'),
    height: of('height'),
    depth: of('depth'),
    length: `${at}/length`,
    roundEnds: `${at}/ends`,
    keys: `${at}/keys`,
  };
}

function keyFlanks(hub: Hub, seat: Seat, torque: number): Answer {
  const { key } = hub;
  if (!key)
    return {
      ok: false,
      outcome: unknown({ address: `${hub.address}/key`, says: `the key of ${seat.name}: its length, and how it sits` }),
    };
  if (seat.diameter === null)
    return {
      ok: false,
      outcome: unknown({ address: `${seat.address}/diameter`, says: `the diameter of the shaft in ${seat.name}` }),
    };
  const size = keySize(key, seat);
  if (!size)
    return {
      ok: false,
      outcome: unknown({
        address: `${hub.address}/key/width`,
        says: `the width, height and depth of the key of ${seat.name}; the standard has none for this shaft`,
      }),
    };
  const input = {
    torque,
    diameter: seat.diameter,
    width: size.width,
    height: size.height,
    depth: size.depth,
    length: key.length,
    roundEnds: key.roundEnds,
    keys: key.keys,
  };
  const output = keyPressure.run(input);
  const origins = () => ({ torque: THROUGH, diameter: `${seat.address}/diameter`, ...keyOrigins(hub, size) });
  return {
    ok: true,
    of: {
      onHub: output.hub,
      onShaft: output.shaft,
      shear: output.shear,
      rootShear: null,
      used: () => [{ method: keyPressure, input, output, origins: origins() }],
    },
  };
}

/** Height of flank of a side-fit involute spline where it is not measured, in modules (Machinery’s Handbook, from memory). */
const HEIGHT = 0.9;
/** Teeth less root diameter of a flat root, in modules (the same). */
const ROOT = 1.35;

function involuteFlanks(hub: Hub, spline: HubSpline, module: number, torque: number): Answer {
  const at = `${hub.address}/spline`;
  const { teeth, length, outside, inside } = spline;
  const measured = outside !== null && inside !== null;
  const input = {
    torque,
    teeth,
    module,
    length,
    root: module * (teeth - ROOT),
    bore: 0,
    height: measured ? (outside - inside) / 2 : HEIGHT * module,
    uneven: 1 / SHARE,
  };
  const output = involuteSpline.run(input);
  const used = (): Used => ({
    method: involuteSpline,
    input,
    output,
    origins: {
      torque: THROUGH,
      teeth: `${at}/teeth`,
      module: `${at}/module`,
      length: `${at}/length`,
      root: 'flat root: module times the teeth less 1.35',
      bore: 'solid shaft',
      height: measured ? `half of ${at}/outside less ${at}/inside` : 'nine tenths of the module',
      uneven: 'three quarters of the teeth carry (joint-limits/spline)',
    },
  });
  return {
    ok: true,
    of: {
      onHub: output.pressure,
      onShaft: output.pressure,
      shear: output.toothShear,
      rootShear: output.rootShear,
      used: () => [used()],
    },
  };
}

function splineFlanks(hub: Hub, seat: Seat, torque: number): Answer {
  const { spline } = hub;
  const at = `${hub.address}/spline`;
  if (!spline)
    return {
      ok: false,
      outcome: unknown({ address: at, says: `the spline of ${seat.name}: form, teeth, length and diameters` }),
    };
  const { form, teeth, length, module, outside, inside } = spline;
  if (form === 'involute' && module !== null) return involuteFlanks(hub, spline, module, torque);
  const found = needed({ outside, inside }, at, {
    outside: `the outside diameter of the shaft in ${seat.name}`,
    inside: `the inside diameter of the hub of ${seat.name}`,
  });
  if (!found.ok) return found;
  const input = {
    torque,
    diameter: (found.of.outside + found.of.inside) / 2,
    teeth,
    height: (found.of.outside - found.of.inside) / 2,
    length,
    share: SHARE,
  };
  const output = flankPressure.run(input);
  const origins = () => ({
    torque: THROUGH,
    diameter: `mean of ${at}/outside and ${at}/inside`,
    teeth: `${at}/teeth`,
    height: `half of ${at}/outside less ${at}/inside`,
    length: `${at}/length`,
    share: 'joint-limits/spline',
  });
  const { pressure } = output;
  return {
    ok: true,
    of: {
      onHub: pressure,
      onShaft: pressure,
      shear: null,
      rootShear: null,
      used: () => [{ method: flankPressure, input, output, origins: origins() }],
    },
  };
}

/** Pressures and shears of the key or spline of a seat; what is missing for them. The sizes must not contradict each other. */
export function flanksOf(hub: Hub, seat: Seat, torque: number): Answer {
  return hub.torqueBy === 'key' ? keyFlanks(hub, seat, torque) : splineFlanks(hub, seat, torque);
}
