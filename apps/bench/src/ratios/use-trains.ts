import type { OrderKey, RatioAnswer, RatioChoices, RatioRequest } from '@oddwheel/build/ratios/types';
import { USUAL_REQUEST } from '@oddwheel/build/ratios/usual';
import { proxy } from 'comlink';
import { useCallback, useEffect, useRef, useState } from 'react';
import type { FrontAnswer, RatioOutcome, RatioProgress } from '../worker/ratios-api.ts';
import type { RemoteModel } from '../worker/remote.ts';
import type { TrainForm } from './train-form.ts';

/** What a search found, with the build and the request that it stands for. */
export interface Found<T> {
  readonly hash: string;
  readonly request: RatioRequest;
  readonly answer: T;
}

export interface Front {
  readonly first: OrderKey;
  readonly second: OrderKey;
  readonly answer: FrontAnswer;
}

export interface Trains {
  readonly choices: RatioChoices | null;
  readonly form: TrainForm;
  readonly setForm: (form: TrainForm) => void;
  readonly found: Found<RatioAnswer & { readonly roadSpeed: number }> | null;
  readonly front: Found<Front> | null;
  /** What is looked for now. */
  readonly busy: 'trains' | 'front' | null;
  readonly progress: RatioProgress | null;
  /** Why the last search gave nothing. */
  readonly says: string | null;
  readonly find: (request: RatioRequest) => void;
  readonly findFront: (request: RatioRequest, first: OrderKey, second: OrderKey) => void;
  readonly stop: () => void;
}

const START: TrainForm = {
  targets: null,
  stages: {},
  order: USUAL_REQUEST.order,
  shelfOnly: false,
  best: USUAL_REQUEST.best,
};

/** The search for trains as the page holds it: what is asked, how far it is, and what it found last. */
export function useTrains(model: RemoteModel, hash: string): Trains {
  const [choices, setChoices] = useState<RatioChoices | null>(null);
  const [form, setForm] = useState(START);
  const [found, setFound] = useState<Trains['found']>(null);
  const [front, setFront] = useState<Trains['front']>(null);
  const [busy, setBusy] = useState<Trains['busy']>(null);
  const [progress, setProgress] = useState<RatioProgress | null>(null);
  const [says, setSays] = useState<string | null>(null);
  const turn = useRef(0);

  // biome-ignore lint/correctness/useExhaustiveDependencies: the hash stands for the build that the worker holds
  useEffect(() => {
    let wanted = true;
    model.ratioChoices().then(
      (next) => {
        if (wanted) setChoices(next);
      },
      () => undefined,
    );
    return () => {
      wanted = false;
    };
  }, [model, hash]);

  const search = useCallback(
    async <T>(
      what: 'trains' | 'front',
      ask: (tell: (progress: RatioProgress) => void) => Promise<RatioOutcome<T>>,
      take: (answer: T) => void,
    ): Promise<void> => {
      turn.current += 1;
      const mine = turn.current;
      const still = (): boolean => turn.current === mine;
      setBusy(what);
      setProgress(null);
      setSays(null);
      const tell = proxy((next: RatioProgress): void => {
        if (still()) setProgress(next);
      });
      try {
        const outcome = await ask(tell);
        if (!still()) return;
        if (outcome === null) setSays('Stopped.');
        else if (outcome.ok) take(outcome.answer);
        else setSays(outcome.says);
      } catch (why) {
        if (still()) setSays(why instanceof Error ? why.message : String(why));
      }
      if (still()) setBusy(null);
    },
    [],
  );

  return {
    choices,
    form,
    setForm,
    found,
    front,
    busy,
    progress,
    says,
    find: (request) =>
      void search(
        'trains',
        (tell) => model.findTrains(request, tell),
        (answer) => {
          setFound({ hash, request, answer });
          setFront(null);
        },
      ),
    findFront: (request, first, second) =>
      void search(
        'front',
        (tell) => model.findFront(request, first, second, tell),
        (answer) => setFront({ hash, request, answer: { first, second, answer } }),
      ),
    stop: () => void model.stopTrains(),
  };
}
