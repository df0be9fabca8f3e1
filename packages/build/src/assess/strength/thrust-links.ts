import { plateThrust } from '@oddwheel/mechanics/bearing/plate-thrust';
import { ringGroove } from '@oddwheel/mechanics/bearing/ring-groove';
import { MethodError } from '@oddwheel/mechanics/method/method';
import { BEARING_LIMITS } from '@oddwheel/tables/bearing-limits';
import { PLATE_METALS } from '@oddwheel/tables/plate-metals';
import { RING_GROOVES } from '@oddwheel/tables/ring-grooves';
import { rowInSi } from '@oddwheel/tables/table';
import type { Seat, Shaft, Value } from '../../model/model.ts';
import type { Loads, StopInPlate, StopOnShaft } from '../../model/strength.ts';
import type { Scene } from '../checks/check.ts';
import type { At, Used } from '../geometry/types.ts';
import type { Missing } from '../types.ts';
import type { Way } from './bearing-loads.ts';
import { pressHolds, temperaturesOf, tightness } from './press-joint.ts';

/** One part that a push along the shaft passes through. */
export interface Link {
  /** "retaining ring behind gear 33". */
  readonly name: string;
  /** Push that it must pass on, N. */
  readonly demand: number;
  /**
   * `bears`: its capacity is worked out. `solid`: it bears on whole metal, which is not worked out. `gap`: nothing is there.
   * `open`: what it bears hangs on what the build does not say.
   */
  readonly state: 'bears' | 'solid' | 'gap' | 'open';
  readonly capacity: number | null;
  readonly used: readonly Used[];
  /** Where the capacity comes from. */
  readonly origin: string;
  readonly missing: readonly Missing[];
  /** Values of the build that its capacity hangs on, beside those of the shaft. */
  readonly uses: readonly Value[];
}

const link = (name: string, demand: number, state: Link['state'], missing: readonly Missing[] = []): Link => ({
  name,
  demand,
  state,
  capacity: null,
  used: [],
  origin: '',
  missing,
  uses: [],
});

const bears = (name: string, demand: number, capacity: number, origin: string, used: readonly Used[]): Link => ({
  ...link(name, demand, 'bears'),
  capacity,
  origin,
  used,
});

/** In harder steel the ring gives way before its groove; the standard lists its grooves at this yield strength. */
const RING_GIVES = 200e6;

const millimetres = (metres: number): string => String(Math.round(metres * 1e7) / 1e4);

/** A retaining ring in its groove; open where no standard groove fits the diameter. */
function ringLink(
  name: string,
  demand: number,
  on: 'shaft' | 'bore',
  diameter: number | null,
  address: string,
  strength: { readonly value: number; readonly from: string },
): Link {
  if (diameter === null) return link(name, demand, 'open', [{ address, says: `the diameter at the ${name}` }]);
  const key = `${on} ${millimetres(diameter)}`;
  if (!Object.hasOwn(RING_GROOVES.rows, key))
    return link(name, demand, 'open', [
      { address, says: `a diameter that a standard retaining ring fits, at the ${name}` },
    ]);
  const groove = rowInSi(RING_GROOVES, key).groove ?? Number.NaN;
  const input = {
    larger: Math.max(diameter, groove),
    smaller: Math.min(diameter, groove),
    yieldStrength: strength.value,
    factor: 1.2,
  };
  const output = ringGroove.run(input);
  const row = `ring-grooves/${key}`;
  const origins = {
    larger: on === 'shaft' ? address : row,
    smaller: on === 'shaft' ? row : address,
    yieldStrength: strength.from,
    factor: 'wall behind the groove three grooves deep wide',
  };
  return bears(name, demand, output.force, 'above', [{ method: ringGroove, input, output, origins }]);
}

/** What a pressed hub of known sizes holds along its shaft without torque; with torque beside it the joint itself is judged. */
function pressLink(seat: Seat, name: string, demand: number, loads: Loads, at: At): Link | null {
  const { hub, diameter } = seat;
  if (hub?.torqueBy !== 'press fit' || !hub.press || diameter === null) return null;
  if (hub.press.outside <= diameter || hub.press.bore >= diameter) return null;
  const joint = { press: hub.press, hub, diameter, seat: seat.address };
  const least = tightness(joint, 'least', loads, at);
  const { force, used } = pressHolds(joint, least.interference, { value: 0, from: 'none beside the push itself' });
  return { ...bears(name, demand, force, 'above', [...least.used, used]), uses: temperaturesOf(hub, loads) };
}

/**
 * What stops a part on its shaft, one way.
 * @param way which way the part pushes
 */
export function shaftStop(
  shaft: Shaft,
  seat: Seat,
  stop: StopOnShaft | null,
  way: Way,
  demand: number,
  { at, model }: Pick<Scene, 'at' | 'model'>,
): Link {
  const where = `${seat.name} on the shaft, toward its ${way}`;
  const address = `${seat.address}/held`;
  if (stop === null) return link(`stop of ${where}`, demand, 'open', [{ address, says: `what stops ${where}` }]);
  if (stop === 'nothing') return link(where, demand, 'gap');
  const name = `${stop} of ${seat.name} on the shaft`;
  if (stop === 'retaining ring')
    return ringLink(name, demand, 'shaft', seat.diameter, `${seat.address}/diameter`, {
      value: Math.min(RING_GIVES, at(shaft.steel.yield)),
      from: `${shaft.steel.yield.address}, at most 200 MPa: in harder steel the ring itself gives way first`,
    });
  if (demand > 0 && stop === 'press fit') {
    const pressed = pressLink(seat, name, demand, model.loads, at);
    if (pressed) return pressed;
  }
  // What screws hold by friction, or a press fit of which nothing is said, is not known from the build.
  if (demand > 0 && (stop === 'press fit' || stop === 'setscrews'))
    return link(name, demand, 'open', [
      {
        address,
        says: `a stop of known strength in place of the ${stop} at ${where}: a shoulder, a nut, a retaining ring`,
      },
    ]);
  return link(name, demand, 'solid');
}

/** What stops the outer ring of a bearing in its plate, one way. */
export function plateStop(seat: Seat, stop: StopInPlate | null, way: Way, demand: number): Link {
  const where = `the outer ring of ${seat.name}, toward the ${way} of the shaft`;
  const address = `${seat.address}/ring`;
  if (stop === null) return link(`stop of ${where}`, demand, 'open', [{ address, says: `what stops ${where}` }]);
  if (stop === 'nothing') return link(where, demand, 'gap');
  const name = `${stop} of ${seat.name} in its plate`;
  const plate = seat.bearing?.plate ?? null;
  if (stop === 'retaining ring' && demand > 0) {
    if (!plate)
      return link(name, demand, 'open', [
        { address: `${seat.address}/plate`, says: `the plate that ${seat.name} sits in` },
      ]);
    return ringLink(name, demand, 'bore', outsideOf(seat), `${seat.address}/outside`, {
      value: Math.min(RING_GIVES, yieldOf(plate.material)),
      from: `plate-metals/${plate.material}, at most 200 MPa: in harder metal the ring itself gives way first`,
    });
  }
  if (demand > 0 && stop === 'press fit')
    return link(name, demand, 'open', [
      {
        address,
        says: `a stop of known strength in place of the press fit of ${where}: a shoulder, a cover, a retaining ring`,
      },
    ]);
  return link(name, demand, 'solid');
}

const outsideOf = (seat: Seat): number | null => seat.outside ?? seat.bearing?.facts?.outside ?? null;
const yieldOf = (metal: 'steel' | 'aluminium'): number => rowInSi(PLATE_METALS, metal).yield ?? Number.NaN;

/** Push that a deep groove bearing may take along its shaft; another kind is held by its life and its static rating. */
export function bearingLink(seat: Seat, demand: number): Link {
  const { name } = seat;
  const facts = seat.bearing?.facts;
  if (!facts)
    return link(name, demand, demand > 0 ? 'open' : 'solid', [
      { address: `${seat.address}/row`, says: `the number of ${seat.name}, or its ratings` },
    ]);
  if (facts.kind !== 'deep groove') return link(name, demand, 'solid');
  const light = facts.row === null || facts.row.startsWith('60') || (facts.bore ?? 0) <= 0.012;
  const row = light ? 'axial load, light series' : 'axial load';
  const part = rowInSi(BEARING_LIMITS, row).part ?? Number.NaN;
  return bears(name, demand, part * facts.static, `bearing-limits/${row}, times the static rating`, []);
}

/** The plate around a bearing against a push square to it. */
export function plateLink(seat: Seat, demand: number, at: At): Link {
  const plate = seat.bearing?.plate ?? null;
  if (!plate)
    return demand > 0
      ? link(`what carries ${seat.name}`, demand, 'open', [
          { address: `${seat.address}/plate`, says: `the plate that ${seat.name} sits in` },
        ])
      : link(`what carries ${seat.name}`, demand, 'solid');
  const hole = seat.opening ?? outsideOf(seat);
  if (hole === null)
    return link(plate.name, demand, 'open', [
      { address: `${seat.address}/outside`, says: `the outside diameter of ${seat.name}` },
    ]);
  const { span, width, thickness, material } = plate;
  const input = { span, width, hole, thickness, yieldStrength: yieldOf(material), ends: at(plate.ends) };
  try {
    const output = plateThrust.run(input);
    const origins = {
      span: `${plate.address}/span`,
      width: `${plate.address}/width`,
      hole: seat.opening === null ? `${seat.address}/outside` : `${seat.address}/opening`,
      thickness: `${plate.address}/thickness`,
      yieldStrength: `plate-metals/${material}`,
      ends: plate.ends.address,
    };
    return bears(plate.name, demand, output.force, 'above', [{ method: plateThrust, input, output, origins }]);
  } catch (error) {
    if (!(error instanceof MethodError)) throw error;
    return link(`the push: no metal is left beside the hole for ${seat.name} in the ${plate.name}`, demand, 'gap');
  }
}
