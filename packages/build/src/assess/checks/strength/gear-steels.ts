import { gearHardnessLimits } from '@oddwheel/mechanics/gear/hardness-limits';
import { GEAR_SERVICE } from '@oddwheel/tables/gear-factors';
import { GEAR_STEELS } from '@oddwheel/tables/gear-steels';
import { rowInSi } from '@oddwheel/tables/table';
import type { GearSteel } from '../../../model/gears.ts';
import type { Used } from '../../geometry/types.ts';
import type { Scene } from '../check.ts';
import type { GearStage } from './gear-pairs.ts';

type Ends = readonly [low: number, high: number];

/** Stress numbers that one gear bears, from the worst to the best steel it may be; alike where its steel is known. */
export interface Bears {
  readonly known: boolean;
  readonly bending: Ends;
  readonly contact: Ends;
  readonly from: string;
  /** What is known of it, for a sentence. */
  readonly words: string;
  readonly used: readonly Used[];
}

const FILES = {
  bites: 'file bites',
  'hardly bites': 'file hardly bites',
  skates: 'file skates',
} as const;

function rowOfSteel(key: string, kind: GearStage['kind'], words: string): Bears {
  const row = rowInSi(GEAR_STEELS, key);
  const get = (column: keyof typeof row): number => row[column] ?? Number.NaN;
  const [bending, contact]: readonly [Ends, Ends] =
    kind === 'bevel'
      ? [
          [get('bevelBendingLow'), get('bevelBendingHigh')],
          [get('bevelContactLow'), get('bevelContactHigh')],
        ]
      : [
          [get('spurBendingLow'), get('spurBendingHigh')],
          [get('spurContactLow'), get('spurContactHigh')],
        ];
  return { known: key === 'case hardened', bending, contact, from: `gear-steels/${key}`, words, used: [] };
}

/** What one gear of a pair bears, by its maker’s word, its hardness, a file, or nothing. */
function bears(gear: GearSteel, kind: GearStage['kind']): Bears {
  if (gear.steel === 'case hardened') return rowOfSteel('case hardened', kind, 'case hardened');
  if (gear.hardness !== null) {
    const input = { hardness: gear.hardness, pair: kind };
    const output = gearHardnessLimits.run(input);
    return {
      known: true,
      bending: [output.bending, output.bending],
      contact: [output.contact, output.contact],
      from: `${gear.address}/hardness`,
      words: `${gear.hardness} HB`,
      used: [
        {
          method: gearHardnessLimits,
          input,
          output,
          origins: { hardness: `${gear.address}/hardness`, pair: 'kind of the stage' },
        },
      ],
    };
  }
  if (gear.file !== null) return rowOfSteel(FILES[gear.file], kind, `a file ${gear.file}`);
  return rowOfSteel('not tested', kind, 'no file was tried');
}

/** What both gears bear at the reliability asked for. */
export interface PairBears {
  readonly driver: Bears;
  readonly driven: Bears;
  /** Steel of both is known. */
  readonly known: boolean;
  /** Divides bending numbers, and its root contact numbers. */
  readonly reliability: number;
  readonly reliabilityFrom: string;
}

const KNOWN = new WeakMap<GearStage, PairBears>();

export function pairBears(stage: GearStage, scene: Scene): PairBears {
  const asked = scene.model.loads.reliability;
  // Tables of gears begin at 90 of a hundred.
  const row = `reliability-${asked === '50' ? '90' : asked}`;
  const found = KNOWN.get(stage);
  if (found?.reliabilityFrom === `gear-service/${row}`) return found;
  const [driver, driven] = [bears(stage.gears.driver, stage.kind), bears(stage.gears.driven, stage.kind)];
  const made = {
    driver,
    driven,
    known: driver.known && driven.known,
    reliability: rowInSi(GEAR_SERVICE, row).factor ?? Number.NaN,
    reliabilityFrom: `gear-service/${row}`,
  };
  KNOWN.set(stage, made);
  return made;
}
