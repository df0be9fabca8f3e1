import type { Model } from '../../model/model.ts';
import { clearancesOf, clearanceUsed } from '../clearance/clearance.ts';
import type { ClearanceRow } from '../clearance/types.ts';
import type { Check, Outcome, Scene, Subject } from './check.ts';
import { measured } from './measured.ts';

/** What moves: shafts and stages in the order of the path, the driven wheel, and what the arm carries. */
function movingSubjects(model: Model): readonly Subject[] {
  const path = model.shafts.flatMap(({ address, name }, k): Subject[] => {
    const stage = model.stages[k];
    const own = { address, element: name, stage: null };
    return stage ? [own, { address: stage.address, element: stage.name, stage: k }] : [own];
  });
  const { keepOuts, tubes } = model.space;
  const onArm = [...tubes, ...keepOuts.filter(({ kind }) => kind === 'solid')].filter(
    ({ body }) => body === 'swinging arm',
  );
  return [
    ...path,
    { address: model.wheel.address, element: 'Driven wheel', stage: null },
    ...onArm.map(({ address, name }) => ({ address, element: name, stage: null })),
  ];
}

const tightest = (scene: Scene, subject: Subject): ClearanceRow | undefined =>
  clearancesOf(scene, null).rows.find(({ element }) => element === subject.address);

const touches = ({ smallest }: ClearanceRow): boolean => !(smallest > 0);

/** Room between a moving element and the nearest part that is not its own. */
export const room: Check = {
  id: 'clear.parts',
  title: 'clearance to the nearest part',
  consequence: 'throws parts',
  wanted: { reserve: 1, from: 'clearance wanted, as the brief says or assumes' },
  atWorst: 'thin',
  perCase: false,
  subjects: movingSubjects,
  run: (scene, subject) => {
    const row = tightest(scene, subject);
    if (!row) {
      const missing = clearancesOf(scene, null)
        .unknown.filter(({ element }) => element === subject.address)
        .map(({ address, says }) => ({ address, says }));
      return missing.length > 0 ? { kind: 'unknown', missing } : null;
    }
    if (touches(row)) return null;
    const { wanted } = scene.model.space;
    return measured(
      { name: 'wanted', value: row.wanted, kind: 'length', use: 'length' },
      { name: 'smallest', value: row.smallest, kind: 'length', use: 'length' },
      () => `${row.text}; ${scene.show('length', row.wanted)} wanted. It is ${row.place} of the wheel’s centre.`,
      [wanted],
      () => clearanceUsed(scene, row),
      { capacity: 'above', demand: wanted.origin === 'assumed' ? 'brief-defaults/clearance' : wanted.address },
    );
  },
};

/** Whether the driven wheel is one of the two. */
const withWheel = ({ model }: Scene, { first, second }: ClearanceRow): boolean =>
  model.shafts.some(({ seats }) =>
    seats.some(({ kind, address }) => kind === 'wheel' && (address === first.address || address === second.address)),
  );

const contact = (rest: Pick<Check, 'id' | 'title' | 'consequence'>, ofWheel: boolean): Check => ({
  ...rest,
  wanted: { reserve: 1, from: 'parts that move stay clear of each other' },
  atWorst: 'fails',
  perCase: false,
  subjects: movingSubjects,
  run: (scene, subject): Outcome | null => {
    const row = tightest(scene, subject);
    if (!row || !touches(row) || withWheel(scene, row) !== ofWheel) return null;
    return {
      kind: 'plain',
      holds: false,
      says: () => `${row.text}. It is ${row.place} of the wheel’s centre.`,
      uses: [],
      used: () => clearanceUsed(scene, row),
    };
  },
});

/** Parts that come to touch, none of them the driven wheel. */
export const touch = contact({ id: 'clear.touch', title: 'parts that touch', consequence: 'throws parts' }, false);

/** Parts that come to touch the driven wheel. */
export const touchWheel = contact(
  { id: 'clear.wheel', title: 'parts that touch the wheel', consequence: 'locks the wheel' },
  true,
);

/** Room for a spanner or puller has nothing in it but what the tool is for. */
export const access: Check = {
  id: 'clear.access',
  title: 'room for a tool',
  consequence: 'loses drive',
  wanted: { reserve: 1, from: 'common practice: a tool reaches what has to be set or changed' },
  atWorst: 'fails',
  perCase: false,
  subjects: ({ space }) =>
    space.keepOuts
      .filter(({ kind }) => kind === 'access')
      .map(({ address, name }) => ({ address, element: name, stage: null })),
  run: (scene, subject) => {
    const row = clearancesOf(scene, null).access.find(({ address }) => address === subject.address);
    if (!row) return null;
    return {
      kind: 'plain',
      holds: row.blockedBy.length === 0,
      says: () => `${row.text}.`,
      uses: [],
      used: () => [],
    };
  },
};
