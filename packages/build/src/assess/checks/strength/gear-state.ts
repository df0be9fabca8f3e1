import { GEAR_SERVICE } from '@oddwheel/tables/gear-factors';
import { rowInSi } from '@oddwheel/tables/table';
import type { Model } from '../../../model/model.ts';
import type { Check, Outcome, Scene, Subject } from '../check.ts';
import { dutyOr } from './chains.ts';
import { type GearStage, gearSubjects, onPair } from './gear-pairs.ts';

const stageOf = (scene: Scene, subject: Subject): GearStage | null => {
  const stage = subject.stage === null ? undefined : scene.model.stages[subject.stage];
  return stage?.kind === 'bevel' || stage?.kind === 'spur' ? stage : null;
};

const withCard = (model: Model): readonly Subject[] =>
  gearSubjects(model).filter(({ stage }) => {
    const found = stage === null ? undefined : model.stages[stage];
    return (found?.kind === 'bevel' || found?.kind === 'spur') && found.gears.card !== null;
  });

const told = (faults: readonly string[], good: string): Outcome => ({
  kind: 'plain',
  holds: faults.length === 0,
  says: () => (faults.length === 0 ? good : faults.join(' ')),
  uses: [],
  used: () => [],
});

const ask = (stage: GearStage, key: string, says: string): Outcome => ({
  kind: 'unknown',
  missing: [{ address: `${stage.address}/card/${key}`, says }],
});

/** Chipped teeth and many pits: such a pair is not used. */
export const gearCard: Check = {
  id: 'gear.card',
  title: 'teeth looked over',
  consequence: 'locks the wheel',
  wanted: { reserve: 1, from: 'common practice' },
  atWorst: 'fails',
  perCase: false,
  subjects: withCard,
  run: (scene, subject) => {
    const stage = stageOf(scene, subject);
    const card = stage?.gears.card;
    if (!stage || !card) return null;
    if (card.chips === undefined) return ask(stage, 'chips', 'whether any tooth is chipped or cracked');
    if (card.pitting === undefined) return ask(stage, 'pitting', 'whether the flanks are pitted');
    return told(
      [
        ...(card.chips === 'some' ? ['Chipped or cracked teeth break off and jam the pair: do not use it.'] : []),
        ...(card.pitting === 'many' ? ['Many pits: the flanks are used up.'] : []),
      ],
      `No tooth is chipped; pits: ${card.pitting}.`,
    );
  },
};

/** Pattern, match marks and bores, and a few pits. */
export const gearPattern: Check = {
  id: 'gear.pattern',
  title: 'pattern, marks and bores',
  consequence: 'wears out',
  wanted: { reserve: 1, from: 'common practice' },
  atWorst: 'thin',
  perCase: false,
  subjects: withCard,
  run: (scene, subject) => {
    const stage = stageOf(scene, subject);
    const card = stage?.gears.card;
    if (!stage || !card) return null;
    if (card.pattern === undefined) return ask(stage, 'pattern', 'where on the face the teeth carried');
    if (card.marks === undefined)
      return ask(stage, 'marks', 'whether match marks show a pair that was lapped together');
    if (card.bores === undefined) return ask(stage, 'bores', 'whether bores and splines are worn');
    return told(
      [
        ...(card.pitting === 'a few' ? ['A few pits: look again after the first rides.'] : []),
        ...(card.pattern === 'at one end'
          ? ['It carried at one end: shim it until the pattern stands in the middle of the face.']
          : []),
        ...(card.marks === 'none or different'
          ? ['The gears were not lapped together: blue them and run them in with care.']
          : []),
        ...(card.bores === 'worn or wallowed'
          ? ['Worn bores let the gears lean: sleeve or weld and bore them anew.']
          : []),
      ],
      'As far as looked over, it is as a good pair is.',
    );
  },
};

const grease = rowInSi(GEAR_SERVICE, 'oil-grease').speed ?? Number.NaN;
const bath = rowInSi(GEAR_SERVICE, 'oil-bath').speed ?? Number.NaN;

/** Oiling of the teeth by their speed, open or housed. */
export const gearOiled: Check = {
  id: 'gear.oil',
  title: 'oiling of the teeth',
  consequence: 'wears out',
  wanted: { reserve: 1, from: 'Gear makers’ technical data; from memory' },
  atWorst: 'thin',
  perCase: false,
  onRoad: true,
  subjects: gearSubjects,
  run: onPair((pair, scene) => {
    const { lubrication } = pair.stage.gears;
    if (lubrication === null)
      return {
        kind: 'unknown',
        missing: [
          { address: `${pair.stage.address}/lubrication`, says: 'whether the teeth run open or housed, and in what' },
        ],
      };
    const duty = dutyOr(scene.duty());
    if ('kind' in duty) return duty;
    const end = pair.driverSmaller ? pair.k : pair.k + 1;
    const radius = (pair.module * Math.min(pair.stage.teeth.driver, pair.stage.teeth.driven)) / 2;
    const speed = Math.max(...duty.bins.map(({ load }) => (load.shafts[end]?.speed ?? 0) * radius));
    const { show } = scene;
    const limit = lubrication === 'in a housed oil bath' ? bath : lubrication === 'open, dry' ? 0 : grease;
    const open = lubrication.startsWith('open');
    const fast = speed > limit;
    return {
      kind: 'plain',
      holds: !open && !fast,
      says: () =>
        [
          `Teeth run ${lubrication} at up to ${show('speed', speed)}.`,
          lubrication === 'open, dry'
            ? 'Dry teeth scuff.'
            : fast
              ? `${lubrication === 'in a housed oil bath' ? 'An oil bath' : 'Grease'} does up to ${show('speed', limit)}.`
              : '',
          open
            ? 'Tyre and road throw water and grit at open teeth, which grind them away: house them, or guard and grease them often.'
            : '',
        ]
          .filter((part) => part !== '')
          .join(' '),
      uses: duty.uses,
      used: () => [],
    };
  }),
};
