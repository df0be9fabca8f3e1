import { sprocketDiameters } from '@oddwheel/mechanics/chain/sprocket-diameters';
import type { Vec3 } from '@oddwheel/quantity/quantity';
import type { Model, Seat, Shaft, Stage } from '../../model/model.ts';
import { type Within, within } from '../../model/within.ts';
import { lineAngle } from '../geometry/place.ts';
import type { Size } from './verdict.ts';

/** End of a shaft: the one where stations are lowest, or the other. */
export type End = 'low' | 'high';

export const otherEnd = (end: End): End => (end === 'low' ? 'high' : 'low');

const WORDS = [
  ['rear', 'front'],
  ['right', 'left'],
  ['bottom', 'top'],
] as const;

/** "left": where an end of a shaft lies on the vehicle. */
export function endName(shaft: Shaft, end: End): string {
  const towards: Vec3 =
    end === 'high' ? shaft.direction : [-shaft.direction[0], -shaft.direction[1], -shaft.direction[2]];
  const sizes = towards.map(Math.abs);
  const axis = sizes.indexOf(Math.max(...sizes));
  return WORDS[axis]?.[(towards[axis] ?? 0) > 0 ? 1 : 0] ?? '';
}

/** A part of one shaft, with the sizes that decide where it goes through. */
export interface Part {
  readonly seat: Seat;
  readonly station: number;
  /** Seat on the shaft, and so the bore of the part. */
  readonly bore: Size;
  readonly width: Size;
  /** Largest outside size. */
  readonly outer: Size;
  /** A bearing in a plate, welded in the subframe or said to have a hole: the hole in it, bearing out. */
  readonly opening: Size | null;
}

const PARTS: Within<readonly Part[]> = new WeakMap();
/** Stands where there is no neighbour. */
const NONE = {};

/** Parts of a shaft by rising station. Uncertain modules count at their larger end. The same while shaft, neighbours and wheel stay. */
export function partsOf(model: Model, index: number): readonly Part[] {
  const { shafts, stages, wheel } = model;
  const shaft = shafts[index];
  if (!shaft) return [];
  const beside = [shafts[index - 1], shafts[index + 1], stages[index - 1], stages[index]].map((one) => one ?? NONE);
  return within(PARTS, [shaft, wheel, ...beside], () => partsAnew(model, index, shaft));
}

function partsAnew(model: Model, index: number, shaft: Shaft): readonly Part[] {
  return shaft.seats
    .map((seat): Part => {
      const size = (key: string, value: number | null, says: string): Size => ({
        value,
        missing: { address: `${seat.address}/${key}`, says: `${says} ${seat.name} on ${shaft.name}` },
      });
      return {
        seat,
        station: seat.station,
        bore: size('diameter', seat.diameter, 'the seat diameter of'),
        width: size('width', seat.width, 'the width of'),
        outer: outerSize(model, index, seat, size),
        opening:
          seat.body === 'subframe' || seat.opening !== null
            ? size('opening', seat.opening, 'the hole in the plate of')
            : null,
      };
    })
    .sort((a, b) => a.station - b.station);
}

/** Largest outside diameter of what sits on a seat. */
function outerSize(
  model: Model,
  index: number,
  seat: Seat,
  size: (key: string, value: number | null, says: string) => Size,
): Size {
  if (seat.kind === 'bearing') return size('outside', seat.outside, 'the outside diameter of');
  if (seat.kind === 'wheel')
    return {
      value: model.wheel.diameter,
      missing: { address: `${model.wheel.address}/tyre`, says: 'the size of the driven wheel’s tyre' },
    };
  const shaft = model.shafts[index];
  const found = [model.stages[index], model.stages[index - 1]].find((stage) =>
    [stage?.from, stage?.to].some((ref) => ref?.shaft === shaft?.id && ref?.seat === seat.id),
  );
  if (!found || !shaft) return size('kind', null, 'a stage that tells the outside size of');
  const isDriver = found.from.shaft === shaft.id;
  return ofStage(model, index, found, isDriver, size);
}

function ofStage(
  model: Model,
  index: number,
  stage: Stage,
  isDriver: boolean,
  size: (key: string, value: number | null, says: string) => Size,
): Size {
  switch (stage.kind) {
    case 'chain': {
      const teeth = isDriver ? stage.teeth.driver : stage.teeth.driven;
      const { pitch, roller } = stage.size;
      const { outsideDiameter } = sprocketDiameters.run({ pitch, rollerDiameter: roller, teeth });
      return size('kind', outsideDiameter, '');
    }
    case 'belt':
      // The pitch line lies outside the teeth of the pulley, so this is never too small; flanges are not in the build.
      return size('kind', (stage.pitch * (isDriver ? stage.teeth.driver : stage.teeth.driven)) / Math.PI, '');
    case 'bevel':
    case 'spur': {
      const missing = { address: `${stage.address}/module`, says: `the module of ${stage.name}` };
      if (!stage.module) return { value: null, missing };
      const module = stage.module.hi;
      const [own, mate] = isDriver
        ? [stage.teeth.driver, stage.teeth.driven]
        : [stage.teeth.driven, stage.teeth.driver];
      const [a, b] = [model.shafts[isDriver ? index : index - 1], model.shafts[isDriver ? index + 1 : index]];
      const angle = stage.kind === 'bevel' && a && b ? lineAngle(a.direction, b.direction) : 0;
      // Half the angle of the pitch cone; teeth of one module addendum (ISO 53, from memory) stand out square to it.
      const tilt = Math.atan2(Math.sin(angle), mate / own + Math.cos(angle));
      return { value: module * (own + 2 * Math.cos(tilt)), missing };
    }
    case 'coupling':
    case 'unit':
      // The build has no outside size for a joint, so it is never passed through a plate.
      return size('kind', Number.POSITIVE_INFINITY, '');
  }
}
