import type { Vec3 } from '@oddwheel/quantity/quantity';
import type { PlacedPoint } from './types.ts';

/** Where a point of the file stands. */
export const pointOf = ({ coordinates: [x, y, z] }: PlacedPoint): Vec3 => [x.si, y.si, z.si];
