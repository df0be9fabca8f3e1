import type { Fault } from '@oddwheel/build/fault';
import { movePatches, wayWords } from '@oddwheel/build/placing/move';
import { snapMove } from '@oddwheel/build/placing/snap';
import type { LinkCircle, MoveAids, Placed, Placing } from '@oddwheel/build/placing/types';
import { plus } from '@oddwheel/mechanics/numerics/vector';
import type { Vec3 } from '@oddwheel/quantity/quantity';
import type { View } from '@oddwheel/sheets/drawing';
import { type RefObject, useCallback, useEffect, useLayoutEffect, useMemo, useRef, useState } from 'react';
import type { Actions } from '../state/actions.ts';
import { latestWins } from '../worker/latest.ts';
import type { Moved } from '../worker/layout-api.ts';
import type { RemoteModel } from '../worker/remote.ts';
import { lengthShown } from './length-shown.ts';

/** Directions of what something is moved in. */
export type MoveView = Pick<View, 'right' | 'up'>;

/** What shows a move at once, without drawing anything anew. */
export interface Shifts {
  /** @param by m in vehicle axes */
  readonly show: (by: Vec3) => void;
  readonly clear: () => void;
}

/** What is being moved, and how far. */
export interface Move {
  readonly placed: Placed;
  readonly view: MoveView;
  readonly by: Vec3;
  /** What it was brought to. */
  readonly to: readonly string[];
  readonly circle: LinkCircle | null;
}

/** How a move is wished: its change, and what it may be brought to. */
export interface Wished {
  readonly by: Vec3;
  /** How near a place must come to be taken, m; 0 takes none. */
  readonly reach: number;
  readonly whole: boolean;
}

export interface Mover {
  readonly move: Move | null;
  /** What the model says of the last move that it has looked at. */
  readonly moved: Moved | null;
  readonly fault: Fault | null;
  readonly aids: MoveAids | null;
  /** Address of the chain whose centres are kept. */
  readonly held: string | null;
  readonly hold: (stage: string | null) => void;
  readonly begin: (placed: Placed, view: MoveView) => void;
  /** Moves to a wish at the next frame; gives nothing back, a newer wish replaces an older one. */
  readonly wish: (wished: Wished) => void;
  /** Moves on by so much, from wherever it is: a key. */
  readonly step: (by: Vec3) => void;
  /** Makes the move an edit. */
  readonly finish: () => void;
  /** Puts everything back. */
  readonly cancel: () => void;
}

interface Given {
  readonly model: RemoteModel;
  readonly actions: Actions;
  readonly units: Readonly<Record<string, string>>;
  readonly placing: Placing | null;
  readonly placed: Placed | null;
  /** Hash of the build that is drawn. */
  readonly hash: string;
  readonly shifts: RefObject<Shifts | null>;
  /** Chains and belts are wanted in space too. */
  readonly inSpace: boolean;
}

const NOWHERE: Vec3 = [0, 0, 0];

/**
 * Moves what is chosen: its drawing at once, the numbers as the model answers, and one edit at the end. Only the newest place is asked for.
 */
export function useMove({ model, actions, units, placing, placed, hash, shifts, inSpace }: Given): Mover {
  const [move, setMove] = useState<Move | null>(null);
  const [moved, setMoved] = useState<Moved | null>(null);
  const [fault, setFault] = useState<Fault | null>(null);
  const [aids, setAids] = useState<MoveAids | null>(null);
  const [held, setHeld] = useState<string | null>(null);
  const now = useRef<Move | null>(null);
  const wished = useRef<Wished | null>(null);
  const frame = useRef(0);
  const committing = useRef(false);
  const address = placed?.address ?? null;

  // The aids hang on the build: its hash stands for it.
  // biome-ignore lint/correctness/useExhaustiveDependencies: the hash stands for the build that the worker holds
  useEffect(() => {
    let wanted = true;
    setAids(null);
    if (address !== null)
      model.moveAids(address).then(
        (found) => {
          if (wanted) setAids(found);
        },
        () => undefined,
      );
    return () => {
      wanted = false;
    };
  }, [model, address, hash]);
  // biome-ignore lint/correctness/useExhaustiveDependencies: what was held belongs to what was chosen
  useEffect(() => {
    setHeld(null);
    setFault(null);
  }, [address]);

  const ask = useMemo(
    () =>
      latestWins<Move>(
        async (one) => {
          const patches = movePatches(one.placed, one.by);
          const answer = await model.preview(
            [...(patches.length > 0 ? (placing?.raise ?? []) : []), ...patches],
            inSpace,
          );
          if (now.current?.placed === one.placed) setMoved(answer);
        },
        (why) =>
          setFault({
            code: 'page.preview',
            address: '',
            problem: `The numbers of this place could not be had: ${why instanceof Error ? why.message : String(why)}`,
            read: '',
            accepted: 'Put it back, and load this page again if it happens again.',
          }),
      ),
    [model, placing, inSpace],
  );

  const end = useCallback((): void => {
    cancelAnimationFrame(frame.current);
    frame.current = 0;
    wished.current = null;
    now.current = null;
    committing.current = false;
    shifts.current?.clear();
    setMove(null);
    setMoved(null);
  }, [shifts]);

  // A new drawing stands where the move has led to.
  // biome-ignore lint/correctness/useExhaustiveDependencies: another build or another choice: what was moved is done with
  useLayoutEffect(() => {
    end();
  }, [hash, address]);

  const draw = useCallback((): void => {
    frame.current = 0;
    const [wish, current] = [wished.current, now.current];
    if (!wish || !current || !shifts.current) return;
    const { placed: what, view } = current;
    const usable: MoveAids = aids ?? {
      address: what.address,
      circles: [],
      held: [],
      shafts: [],
      walls: [],
      boxes: [],
      wanted: 0,
    };
    const circle = usable.held.find(({ stage }) => stage === held) ?? null;
    const snapped = snapMove({
      placed: what,
      aids: usable,
      ...wish,
      right: view.right,
      up: view.up,
      held: circle,
    });
    const next: Move = { placed: what, view, ...snapped };
    now.current = next;
    shifts.current.show(next.by);
    setMove(next);
    ask(next);
  }, [aids, held, ask, shifts]);

  const wish = (next: Wished): void => {
    if (committing.current || now.current === null) return;
    wished.current = next;
    if (frame.current === 0) frame.current = requestAnimationFrame(draw);
  };

  const finish = (): void => {
    if (wished.current && frame.current !== 0) {
      cancelAnimationFrame(frame.current);
      draw();
    }
    const done = now.current;
    if (!done || committing.current) return;
    const patches = movePatches(done.placed, done.by);
    if (patches.length === 0) {
      end();
      return;
    }
    committing.current = true;
    const name = `${done.placed.name} moved ${wayWords(done.by, (si) => lengthShown(units, si))}`;
    void actions.applyEdit(name, [...(placing?.raise ?? []), ...patches]).then((wrong) => {
      setFault(wrong);
      if (wrong) end();
    });
  };

  return {
    move,
    moved,
    fault,
    aids,
    held,
    hold: setHeld,
    begin: (what, view) => {
      const start: Move = { placed: what, view, by: NOWHERE, to: [], circle: null };
      committing.current = false;
      now.current = start;
      setFault(null);
      setMove(start);
    },
    wish,
    step: (by) => {
      const from = frame.current !== 0 ? wished.current : now.current;
      wish({ by: plus(from?.by ?? NOWHERE, by), reach: 0, whole: false });
    },
    finish,
    cancel: end,
  };
}
