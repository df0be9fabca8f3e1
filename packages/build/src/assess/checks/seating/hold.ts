import { plateThrust } from '@oddwheel/mechanics/bearing/plate-thrust';
import { dot, minus, norm, times } from '@oddwheel/mechanics/numerics/vector';
import { plateLug } from '@oddwheel/mechanics/plate/lug';
import { plateStrength } from '@oddwheel/mechanics/plate/strength';
import type { Vec3 } from '@oddwheel/quantity/quantity';
import { PLATE_METALS } from '@oddwheel/tables/plate-metals';
import { rowInSi } from '@oddwheel/tables/table';
import type { Plate } from '../../../model/strength.ts';
import type { Used } from '../../geometry/types.ts';
import type { Check, Outcome, Scene } from '../check.ts';
import { measured } from '../measured.ts';
import { type BearingAt, loadOn } from '../strength/bearings.ts';
import { shaftUses } from '../strength/shafts.ts';
import { onSeated, plainly, seated } from './common.ts';
import { sizesOf } from './ring-fit.ts';
import { holeOf } from './web.ts';

const SOLVED = 'shaft on its bearings under this case';
/** N. */
const NOTHING = 1e-3;

const RUNS: Readonly<Record<NonNullable<Plate['runs']>, Vec3>> = {
  'fore and aft': [1, 0, 0],
  'from side to side': [0, 1, 0],
  'up and down': [0, 0, 1],
};

/** What a plate bears in its plane, lengthwise and crosswise, and square to it, each alone. */
interface Alone {
  readonly lengthwise: number;
  readonly crosswise: number;
  readonly square: number;
  readonly used: readonly Used[];
}

const KEPT = new WeakMap<Plate, Map<string, Alone>>();

/** Strengths of the plate around a bearing; they do not change from case to case. */
function aloneOf(at: BearingAt, plate: Plate, { at: corner }: Scene): Alone | null {
  const hole = holeOf(at);
  if (!hole || hole.size >= Math.min(plate.width, plate.span)) return null;
  const ends = corner(plate.ends);
  const pin = sizesOf(at).outside ?? hole.size;
  const key = `${at.seat.address}:${hole.size}:${pin}:${ends}`;
  const kept = KEPT.get(plate);
  const known = kept?.get(key);
  if (known) return known;
  const { tensile = Number.NaN, yield: yieldStrength = Number.NaN } = rowInSi(PLATE_METALS, plate.material);
  const [beside, ends2] = [(plate.width - hole.size) / 2, (plate.span - hole.size) / 2];
  const metal = `plate-metals/${plate.material}`;
  const from = { thickness: `${plate.address}/thickness`, pin: hole.address, tensile: metal, yieldStrength: metal };
  const [side, end] = [`${plate.address}/width less the hole, half`, `${plate.address}/span less the hole, half`];
  const lug = (ahead: number, next: number, origins: Readonly<Record<string, string>>): Used & { force: number } => {
    const input = { thickness: plate.thickness, pin, ahead, beside: next, tensile, yieldStrength };
    const output = plateLug.run(input);
    return { method: plateLug, input, output, origins: { ...from, ...origins }, force: output.force };
  };
  const { force: lengthwise, ...usedLength } = lug(ends2, beside, { ahead: end, beside: side });
  const { force: crosswise, ...usedCross } = lug(beside, ends2, { ahead: side, beside: end });
  const input = {
    span: plate.span,
    width: plate.width,
    hole: hole.size,
    thickness: plate.thickness,
    yieldStrength,
    ends,
  };
  const output = plateThrust.run(input);
  const usedSquare: Used = {
    method: plateThrust,
    input,
    output,
    origins: {
      span: `${plate.address}/span`,
      width: `${plate.address}/width`,
      hole: hole.address,
      thickness: from.thickness,
      yieldStrength: metal,
      ends: plate.ends.address,
    },
  };
  const found = { lengthwise, crosswise, square: output.force, used: [usedLength, usedCross, usedSquare] };
  if (kept) kept.set(key, found);
  else KEPT.set(plate, new Map([[key, found]]));
  return found;
}

/** Angle of a load across the shaft to the strip; the worst one where the build does not say how the strip runs. */
function angleTo(plate: Plate, force: Vec3, direction: Vec3, { lengthwise, crosswise }: Alone): number {
  if (plate.runs === null) return Math.atan2(lengthwise, crosswise);
  const flat = (v: Vec3): Vec3 => minus(v, times(dot(v, direction), direction));
  const [strip, load] = [flat(RUNS[plate.runs]), flat(force)];
  const sizes = norm(strip) * norm(load);
  // A strip that runs along its own shaft says nothing of its plane.
  if (norm(strip) < 0.1) return Math.atan2(lengthwise, crosswise);
  return sizes > 0 ? Math.acos(Math.min(Math.abs(dot(strip, load)) / sizes, 1)) : 0;
}

/** The plate around the bearing bears what the shaft does to it: in its plane as a lug, and square to it in bending. */
export const plateHolds: Check = {
  id: 'plate.hold',
  title: 'plate around the bearing',
  consequence: 'loses drive',
  wanted: { reserve: 2, from: 'ANSI/AISC 360-16, D5.1: safety factor of 2 for allowable strength' },
  atWorst: 'fails',
  perCase: true,
  rare: true,
  subjects: seated,
  run: onSeated((at, scene, load): Outcome | null => {
    const { plate } = at.fitted;
    const answer = plate && load ? scene.strength.answer(at.k, load) : null;
    if (!plate || !answer) return null;
    if (!answer.ok) return { kind: 'unknown', missing: answer.missing };
    const { show } = scene;
    const alone = aloneOf(at, plate, scene);
    if (!alone)
      return holeOf(at)
        ? plainly(false, () => `Nothing of the plate is left around the bearing. Make it wider and its span longer.`)
        : null;
    const { load: own } = loadOn(at, answer.solution);
    if (own.radial + own.axial < NOTHING) return null;
    const force = answer.solution.reactionAt(at.b)?.force ?? [0, 0, 0];
    const angle = angleTo(plate, force, at.shaft.direction, alone);
    const input = {
      lengthwise: alone.lengthwise,
      crosswise: alone.crosswise,
      square: alone.square,
      angle,
      push: own.axial,
    };
    const output = plateStrength.run(input);
    const bends = own.axial > NOTHING;
    return measured(
      { name: 'load across the shaft', value: Math.max(own.radial, NOTHING), kind: 'force', use: 'force' },
      { name: 'plate bears', value: output.force, kind: 'force', use: 'force' },
      () =>
        `The bearing pushes ${plate.name} with ${show('force', own.radial)} across the shaft${bends ? ` and ${show('force', own.axial)} along it` : ''}. ${plate.runs === null ? 'In the worst direction' : 'That way'} the plate tears at ${show('force', output.inPlane)}${bends ? ` and bends at ${show('force', alone.square)} along the shaft: ${show('force', output.force)} is left` : ''}.`,
      [...shaftUses(at.structure), plate.ends],
      () => [
        ...alone.used,
        {
          method: plateStrength,
          input,
          output,
          origins: {
            lengthwise: 'above',
            crosswise: 'above',
            square: 'above',
            angle:
              plate.runs === null
                ? `worst direction; ${plate.address}/runs is blank`
                : `${plate.address}/runs, ${SOLVED}`,
            push: SOLVED,
          },
        },
      ],
      { capacity: 'above', demand: SOLVED },
    );
  }),
};
