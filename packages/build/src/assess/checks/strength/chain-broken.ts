import type { Check, Outcome } from '../check.ts';
import { chainSubjects } from './chains.ts';

type Hit = 'brake line' | 'fuel line or tank' | 'rider or passenger';
const HURTS: Readonly<Record<Hit, string>> = {
  'brake line': 'A broken end would cut the brake line: move the line to the other side, or guard it with steel.',
  'fuel line or tank': 'A broken end would cut into the fuel: move it, or put a steel guard between.',
  'rider or passenger': 'A broken end would hit a person: close the chain in a guard that holds a broken end.',
};
const hurts = (hit: string): hit is Hit => Object.hasOwn(HURTS, hit);

const plain = (holds: boolean, says: string): Outcome => ({
  kind: 'plain',
  holds,
  says: () => says,
  uses: [],
  used: () => [],
});

/** What a broken chain would hit: asked, and told. */
export const chainBreaks: Check = {
  id: 'chain.broken',
  title: 'what a broken chain hits',
  consequence: 'loses braking',
  wanted: { reserve: 1, from: 'common practice' },
  atWorst: 'fails',
  perCase: false,
  subjects: chainSubjects,
  run: (scene, subject) => {
    const stage = subject.stage === null ? undefined : scene.model.stages[subject.stage];
    if (stage?.kind !== 'chain') return null;
    const hit = stage.breaks;
    if (hit === null)
      return {
        kind: 'unknown',
        missing: [{ address: `${stage.address}/breaks`, says: 'what a broken end would hit as it flies off' }],
      };
    if (hurts(hit)) return plain(false, HURTS[hit]);
    return plain(
      true,
      hit === 'its guard'
        ? 'A broken end stays in its guard.'
        : `No brake line, fuel or person is in reach of a broken end.`,
    );
  },
};

/** A chain that bunches up between its sprocket and a case locks the wheel. */
export const chainJams: Check = {
  id: 'chain.jam',
  title: 'a broken chain bunching up',
  consequence: 'locks the wheel',
  wanted: { reserve: 1, from: 'common practice' },
  atWorst: 'thin',
  perCase: false,
  subjects: chainSubjects,
  run: (scene, subject) => {
    const stage = subject.stage === null ? undefined : scene.model.stages[subject.stage];
    if (stage?.kind !== 'chain' || stage.breaks !== 'frame or engine case') return null;
    return plain(
      false,
      'A broken end would bunch up between its sprocket and the case and may lock the wheel: leave it room, or fit a steel strip that turns it away.',
    );
  },
};
