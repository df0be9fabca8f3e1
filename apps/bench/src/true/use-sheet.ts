import type { PartSheet, TrueSheet } from '@oddwheel/build/true/sheet-types';
import type { TruePart } from '@oddwheel/build/true/types';
import { formatQuantity } from '@oddwheel/quantity/format';
import { useEffect, useState } from 'react';
import type { RemoteModel } from '../worker/remote.ts';
import type { ShaftDrawn } from '../worker/shaft-api.ts';

/** What the record says, worked out anew with every entry; the one before stays until then. Null at first. */
export function useSheet(
  model: RemoteModel,
  text: string,
): { readonly sheet: TrueSheet | null; readonly why: string | null } {
  const [shown, setShown] = useState<{ sheet: TrueSheet | null; why: string | null }>({ sheet: null, why: null });
  useEffect(() => {
    let late = false;
    model.runOutSheet(text).then(
      (sheet) => {
        if (!late) setShown({ sheet, why: null });
      },
      (error: unknown) => {
        if (!late) setShown((now) => ({ ...now, why: error instanceof Error ? error.message : String(error) }));
      },
    );
    return () => {
      late = true;
    };
  }, [model, text]);
  return shown;
}

/** The shafts of the build that have two bearings, as parts to begin from. */
export function useShafts(model: RemoteModel, hash: string, wanted: boolean): readonly Partial<TruePart>[] {
  const [shafts, setShafts] = useState<readonly Partial<TruePart>[]>([]);
  // biome-ignore lint/correctness/useExhaustiveDependencies: another build has other shafts
  useEffect(() => {
    if (!wanted) return;
    let late = false;
    model.shaftLines(null).then(
      (lines) => {
        if (!late) setShafts((lines ?? []).flatMap(partOf));
      },
      () => undefined,
    );
    return () => {
      late = true;
    };
  }, [model, hash, wanted]);
  return shafts;
}

function partOf({ line, seats }: ShaftDrawn): Partial<TruePart>[] {
  const bearings = seats.filter(({ kind }) => kind === 'bearing').sort((a, b) => a.station - b.station);
  const [a, b] = [bearings[0], bearings.at(-1)];
  if (!a || !b || a === b) return [];
  const outside = (station: number): number => Math.max(a.station - station, station - b.station);
  const carried = seats
    .filter(({ kind }) => kind !== 'bearing')
    .sort((one, two) => outside(two.station) - outside(one.station));
  const text = (station: number): string => formatQuantity(station, 'length', 'mm', { digits: 4 }).replace(/\s/g, ' ');
  const [most] = carried;
  return [
    {
      name: line.name,
      seats: { a: text(a.station), b: text(b.station) },
      ...(most ? { goal: { station: text(most.station), tir: '3 thou' } } : {}),
    },
  ];
}

/** The part in view: the chosen one, else the one that was worked on last. */
export function partInView(sheet: TrueSheet | null, chosen: string | null): PartSheet | null {
  const parts = sheet?.parts ?? [];
  const latest = (part: PartSheet): string => part.entries.at(-1)?.taken ?? '';
  return (
    parts.find(({ id }) => id === chosen) ??
    parts.reduce<PartSheet | null>((best, one) => (best === null || latest(one) > latest(best) ? one : best), null)
  );
}
