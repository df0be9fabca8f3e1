import type { Field } from '@oddwheel/build/session-types';
import { useEffect, useState } from 'react';
import type { RemoteModel } from '../worker/remote.ts';

type FieldMap = ReadonlyMap<string, readonly Field[]>;

/**
 * Fields of several elements, asked for in one call whenever the build has changed. Elements without a change keep their list, so that
 * what shows them is not drawn again. Null until the first answer.
 */
export function useSheetFields(model: RemoteModel, addresses: readonly string[], hash: string): FieldMap | null {
  const [fields, setFields] = useState<FieldMap | null>(null);
  const wanted = addresses.join('\n');
  // biome-ignore lint/correctness/useExhaustiveDependencies: the hash stands for the build that the model holds
  useEffect(() => {
    let overtaken = false;
    const ask = wanted.split('\n');
    void model.fieldsOf(ask).then((lists) => {
      if (overtaken) return;
      setFields(
        (before) =>
          new Map(
            ask.map((address, index) => {
              const [known, now] = [before?.get(address), lists[index] ?? []];
              return [address, known && JSON.stringify(known) === JSON.stringify(now) ? known : now];
            }),
          ),
      );
    });
    return () => {
      overtaken = true;
    };
  }, [model, wanted, hash]);
  return fields;
}
