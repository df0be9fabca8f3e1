import { boltPreload } from '@oddwheel/mechanics/joint/bolt-preload';
import { threadArea } from '@oddwheel/mechanics/joint/thread-area';
import { HUB_LIMITS } from '@oddwheel/tables/hub-limits';
import { rowInSi } from '@oddwheel/tables/table';
import { THREAD_SIZES } from '@oddwheel/tables/thread-sizes';
import type { Tightened } from '../../../model/hub.ts';
import type { Used } from '../../geometry/types.ts';

const SURFACE = {
  'dry and black': 'bolts-dry',
  'as delivered': 'bolts-delivered',
  oiled: 'bolts-oiled',
  'with paste': 'bolts-paste',
} as const;
const FACES = { oiled: 'friction-oiled', 'clean or painted': 'friction-dry', blasted: 'friction-blasted' } as const;
const SCATTER = 0.3;

const AREAS = new Map<string, ReturnType<typeof areaAnew>>();

/** Stress area and root of a thread by its key; the table has few. */
export function areaOf(thread: string) {
  const known = AREAS.get(thread) ?? areaAnew(thread);
  AREAS.set(thread, known);
  return known;
}

function areaAnew(thread: string) {
  const { diameter = Number.NaN, pitch = Number.NaN } = rowInSi(THREAD_SIZES, thread);
  const input = { diameter, pitch };
  const output = threadArea.run(input);
  const used: Used = {
    method: threadArea,
    input,
    output,
    origins: { diameter: `thread-sizes/${thread}`, pitch: `thread-sizes/${thread}` },
  };
  return { diameter, ...output, used };
}

/** Preload of one fastener, least and most, from how it is tightened. */
export function preloadOf(thread: string, by: Tightened, tightening: number, address: string) {
  const { diameter = Number.NaN } = rowInSi(THREAD_SIZES, thread);
  const row = SURFACE[by.surface];
  const input = {
    torque: tightening,
    diameter,
    factor: rowInSi(HUB_LIMITS, row).factor ?? Number.NaN,
    scatter: SCATTER,
  };
  const output = boltPreload.run(input);
  const used: Used = {
    method: boltPreload,
    input,
    output,
    origins: {
      torque: `${address}/tightening`,
      diameter: `thread-sizes/${thread}`,
      factor: `hub-limits/${row}`,
      scatter: 'a torque wrench: three tenths each way (common practice)',
    },
  };
  return { ...output, used };
}

/** Friction of the clamped faces, and the row that it stands in. */
export function frictionOf({ faces }: Tightened): { readonly value: number; readonly from: string } {
  const row = FACES[faces];
  return { value: rowInSi(HUB_LIMITS, row).friction ?? Number.NaN, from: `hub-limits/${row}` };
}
