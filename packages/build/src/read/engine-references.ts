import { parseQuantity } from '@oddwheel/quantity/parse';
import { parseInput } from '@oddwheel/quantity/range';
import type { Fault } from '../fault.ts';
import { valueAt } from '../schema/describe.ts';

const si = (root: unknown, address: string, kind: 'angularSpeed' | 'torque' | 'power'): number | null => {
  const text = valueAt(root, address);
  if (typeof text !== 'string') return null;
  const parsed = parseQuantity(text, kind);
  return parsed.ok ? parsed.si : null;
};

/** Greatest number in a row of a torque curve, whatever its unit. */
const MOST_OF_CURVE = 1e6;

/** Torque curve, peaks and speeds of one engine that contradict each other. */
export function engineFaults(root: unknown): Fault[] {
  const faults: Fault[] = [];
  const rows = valueAt(root, '/brief/engine/curve/rows');
  if (Array.isArray(rows)) {
    let before = Number.NEGATIVE_INFINITY;
    rows.forEach((row: unknown, index) => {
      if (!Array.isArray(row) || typeof row[0] !== 'number' || typeof row[1] !== 'number') return;
      const address = `/brief/engine/curve/rows/${index}`;
      if (row[0] <= before || row[0] < 0)
        faults.push({
          code: 'geometry.curve-order',
          address,
          problem: 'Speeds of the torque curve must rise from row to row.',
          read: JSON.stringify(row),
          accepted: `A speed above ${Math.max(before, 0)}.`,
        });
      if (row[1] < 0)
        faults.push({
          code: 'geometry.curve-torque',
          address: `${address}/1`,
          problem: 'Torque at full throttle cannot be negative.',
          read: String(row[1]),
          accepted: 'Zero or more.',
        });
      if (row[0] > MOST_OF_CURVE || row[1] > MOST_OF_CURVE)
        faults.push({
          code: 'geometry.curve-size',
          address,
          problem: 'Speed or torque of this row is beyond any engine.',
          read: JSON.stringify(row),
          accepted: `Numbers up to ${MOST_OF_CURVE}, in the units of the curve.`,
        });
      before = row[0];
    });
  }
  const at = '/brief/engine/peaks';
  const torque = si(root, `${at}/torque`, 'torque');
  const torqueAt = si(root, `${at}/torqueAt`, 'angularSpeed');
  const power = si(root, `${at}/power`, 'power');
  const powerAt = si(root, `${at}/powerAt`, 'angularSpeed');
  if (torque !== null && torqueAt !== null && power !== null && powerAt !== null) {
    // A published pair is rounded; a part in a thousand covers that.
    const slack = 1.001;
    if (powerAt < torqueAt)
      faults.push({
        code: 'geometry.peaks',
        address: `${at}/powerAt`,
        problem: 'Peak power cannot come at a lower speed than peak torque.',
        read: String(valueAt(root, `${at}/powerAt`)),
        accepted: `At least ${String(valueAt(root, `${at}/torqueAt`))}.`,
      });
    else if (power / powerAt > torque * slack)
      faults.push({
        code: 'geometry.peaks',
        address: `${at}/power`,
        problem: 'Peak power at its speed asks for more than the peak torque.',
        read: String(valueAt(root, `${at}/power`)),
        accepted: 'Figures of one engine: power = torque × speed, with the torque at most the peak torque.',
      });
    if (torque * torqueAt > power * slack)
      faults.push({
        code: 'geometry.peaks',
        address: `${at}/torque`,
        problem: 'Peak torque at its speed gives more than the peak power.',
        read: String(valueAt(root, `${at}/torque`)),
        accepted: 'Figures of one engine: torque × speed at most the peak power.',
      });
  }
  const idle = valueAt(root, '/brief/engine/idle');
  const redline = valueAt(root, '/brief/engine/redline');
  const first: unknown = Array.isArray(rows) && Array.isArray(rows[0]) ? rows[0][0] : null;
  if (typeof first === 'number' && typeof redline === 'string') {
    const begins = `${first} ${String(valueAt(root, '/brief/engine/curve/units/speed'))}`;
    const low = parseQuantity(begins, 'angularSpeed');
    const high = parseInput(redline, 'angularSpeed');
    if (low.ok && high.ok && high.lo <= low.si)
      faults.push({
        code: 'geometry.curve-redline',
        address: '/brief/engine/redline',
        problem: 'The torque curve begins above the redline: one of them is wrong, or the unit of the curve.',
        read: redline,
        accepted: `More than ${begins}, or a curve that begins below the redline.`,
      });
  }
  if (typeof idle === 'string' && typeof redline === 'string') {
    const low = parseInput(idle, 'angularSpeed');
    const high = parseInput(redline, 'angularSpeed');
    if (low.ok && high.ok && low.hi >= high.lo)
      faults.push({
        code: 'geometry.idle',
        address: '/brief/engine/idle',
        problem: 'Idle must be below the redline.',
        read: idle,
        accepted: `Less than ${redline}.`,
      });
  }
  return faults;
}
