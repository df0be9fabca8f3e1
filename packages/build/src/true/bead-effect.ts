import { looksAt, type Scene } from '../assess/checks/check.ts';
import { shaftEndures } from '../assess/checks/strength/shaft-strength.ts';
import { buildScene } from '../assess/scene.ts';
import { beadsUnplaced, withBeads } from '../assess/strength/beads.ts';
import { MIDDLE } from '../assess/uncertainty.ts';
import type { Session } from '../session-types.ts';
import { beadStation, laidBeads } from './laid-beads.ts';
import type { TrueRecord } from './record.ts';
import { lengthOf } from './section.ts';
import type { TruePart } from './types.ts';

/** What one more bead does to the reserve of a shaft against fatigue, or why that is not judged. */
export type BeadEffect =
  | { readonly judged: false; readonly why: string }
  | {
      readonly judged: true;
      /** Lowest reserve over all load cases at the middle of every range, without and with the bead. */
      readonly before: number;
      readonly after: number;
      readonly wanted: number;
    };

/** Reserve against fatigue after the bead of a part's next round, beside the one without it. */
export function beadEffect(session: Session | null, part: TruePart): BeadEffect {
  const no = (why: string): BeadEffect => ({ judged: false, why });
  if (!session) return no('no build is open');
  if (part.shaft === undefined) return no('the part does not say which shaft of the build it is');
  const station = beadStation(part, undefined);
  if (station === undefined) return no('the station of the weld is not known');
  const { model, middle } = session.evaluation;
  const bead = { shaft: part.shaft, station, seats: [lengthOf(part.seats.a), lengthOf(part.seats.b)] as const };
  const unplaced = beadsUnplaced(model, bead);
  if (unplaced !== null) return no(unplaced);
  const before = leastReserve(middle.scene, part.shaft);
  const more = withBeads(model, [{ ...bead, rounds: [], owed: part.weld?.mode === 'weld-up' }], null);
  const after = leastReserve(buildScene(more, MIDDLE, null), part.shaft);
  if (before === null || after === null) return no('the build does not say enough of the shaft: see Strength');
  const address = model.shafts.find(({ id }) => id === part.shaft)?.address;
  const finding = session.assessment.findings.find((one) => one.check === shaftEndures.id && one.address === address);
  return { judged: true, before, after, wanted: finding?.wanted ?? shaftEndures.wanted.reserve };
}

/** Why beads that are booked on a part do not count in the strength of the build, in words; null where all do, or there are none. */
export function uncountedBeads(session: Session | null, record: TrueRecord, part: TruePart): string | null {
  const welded = record.rounds.some(({ body }) => body.part === part.part && body.way === 'bead');
  if (!welded) return null;
  const says = (why: string): string => `The beads on it do not count in the strength of the build: ${why}.`;
  if (part.shaft === undefined) return says('the part does not say which shaft of the build it is');
  if (!session) return says('no build is open');
  const own = laidBeads({ ...record, parts: new Map([...record.parts].filter(([id]) => id === part.part)) });
  if (own.length === 0) return says('their station is not known');
  for (const bead of own) {
    const why = beadsUnplaced(session.evaluation.model, bead);
    if (why !== null) return says(why);
  }
  return null;
}

function leastReserve(scene: Scene, shaft: string): number | null {
  const address = scene.model.shafts.find(({ id }) => id === shaft)?.address;
  const subject = shaftEndures.subjects(scene.model).find((one) => one.address === address);
  if (!subject) return null;
  const reserves = scene.cases.flatMap((load) => {
    const outcome = looksAt(shaftEndures, load) ? shaftEndures.run(scene, subject, load) : null;
    return outcome?.kind === 'measured' ? [outcome.reserve] : [];
  });
  return reserves.length === 0 ? null : Math.min(...reserves);
}
