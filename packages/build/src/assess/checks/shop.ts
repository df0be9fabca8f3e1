import type { Model, Shaft, Value } from '../../model/model.ts';
import { type Check, type Scene, type Subject, stagesOfKind } from './check.ts';
import { measured } from './measured.ts';

const own = { reserve: 1, from: 'a machine or bar reaches or not' } as const;

const largest = (values: readonly Value[]): Value | null =>
  values.reduce<Value | null>((best, v) => (best === null || v.si > best.si ? v : best), null);

/** Widest turned part of a chain stage, m; null where its geometry is in trouble. */
function widest(scene: Scene, subject: Subject): number | null {
  const chain = subject.stage === null ? null : (scene.stages[subject.stage]?.chain ?? null);
  return chain ? 2 * Math.max(chain.outsideDriver, chain.outsideDriven) : null;
}

/** The larger sprocket swings over the bed of a lathe in the shop. */
export const swing: Check = {
  id: 'shop.swing',
  title: 'larger sprocket in the lathe',
  consequence: 'misses a target',
  wanted: own,
  atWorst: 'thin',
  perCase: false,
  subjects: stagesOfKind('chain'),
  run: (scene, subject) => {
    const { lathes } = scene.model.shop;
    const diameter = widest(scene, subject);
    if (lathes === null || diameter === null) return null;
    if (lathes.length === 0)
      return {
        kind: 'unknown',
        missing: [{ address: '/brief/shop/machines', says: 'a lathe, to true the sprocket in' }],
      };
    const known = lathes.flatMap((lathe) => lathe.swing ?? []);
    const best = largest(known);
    if (!best)
      return {
        kind: 'unknown',
        missing: lathes.map((lathe) => ({ address: `${lathe.address}/swing`, says: `the swing of the ${lathe.name}` })),
      };
    const room = scene.at(best);
    return measured(
      { name: 'over the teeth', value: diameter, kind: 'length', use: 'length' },
      { name: 'swing', value: room, kind: 'length', use: 'length' },
      () =>
        `The larger sprocket measures ${scene.show('length', diameter)} over its teeth, and the lathe swings ${scene.show('length', room)}${diameter > room ? ': true it on its own shaft' : ''}.`,
      [best],
      () => [],
      { capacity: best.address, demand: 'ASME B29.1 outside diameter' },
    );
  },
};

/** Length from the first seat to the last, with a little at each end to face off. */
const FACING = 0.01;

const barred = (model: Model): readonly Subject[] =>
  model.shafts.slice(1).map((shaft) => ({ address: shaft.address, element: shaft.name, stage: null }));

/** The bar on the shelf and the lathe's centres take the shaft. */
export const bar: Check = {
  id: 'shop.bar',
  title: 'bar and lathe against the shaft’s length',
  consequence: 'misses a target',
  wanted: own,
  atWorst: 'thin',
  perCase: false,
  subjects: barred,
  run: (scene, subject) => {
    const { shop, shafts } = scene.model;
    const shaft = shafts.find((s) => s.address === subject.address);
    if (!shaft || shaft.seats.length === 0) return null;
    const stations = shaft.seats.map((seat) => seat.station);
    const length = Math.max(...stations) - Math.min(...stations) + 2 * FACING;
    const centres = (shop.lathes ?? []).flatMap((lathe) => lathe.centres ?? []);
    const longest = largest(centres);
    const limits = [
      ...(shaft.stock
        ? [
            {
              value: shaft.stock.length,
              says: `the ${shaft.stock.name} is ${scene.show('length', shaft.stock.length)} long`,
              address: shaft.stock.address,
            },
          ]
        : []),
      ...(longest
        ? [
            {
              value: scene.at(longest),
              says: `the lathe takes ${scene.show('length', scene.at(longest))} between centres`,
              address: longest.address,
            },
          ]
        : []),
    ];
    if (!shaft.stock)
      return {
        kind: 'unknown',
        missing: [{ address: `${shaft.address}/stock`, says: `the bar that ${shaft.name} is turned from` }],
      };
    const least = limits.reduce((a, b) => (b.value < a.value ? b : a));
    return measured(
      { name: 'asked', value: length, kind: 'length', use: 'length' },
      { name: 'there is', value: least.value, kind: 'length', use: 'length' },
      () => `${shaft.name} asks for ${scene.show('length', length)} with 10 mm at each end to face; ${least.says}.`,
      longest ? [longest] : [],
      () => [],
      { capacity: least.address, demand: 'stations of its seats' },
    );
  },
};

/** The thickest place of a shaft that is typed or given by a bearing; null where none is. SI. */
export function thickestOf(
  shaft: Shaft,
): { readonly diameter: number; readonly piece: boolean; readonly at: string } | null {
  const places = [
    ...shaft.seats.flatMap(({ diameter, name: at }) => (diameter === null ? [] : [{ diameter, piece: false, at }])),
    ...(shaft.pieces ?? []).map(({ diameter, address: at }) => ({ diameter, piece: true, at })),
  ];
  return places.reduce<(typeof places)[number] | null>(
    (most, one) => (most && most.diameter >= one.diameter ? most : one),
    null,
  );
}

/** A bar is turned down, never up: it is as thick as the thickest place of its shaft. */
export const barSize: Check = {
  id: 'shop.bar-size',
  title: 'bar against the shaft’s thickest place',
  consequence: 'misses a target',
  wanted: own,
  atWorst: 'thin',
  perCase: false,
  subjects: (model) => barred(model).filter((_, k) => model.shafts[k + 1]?.stock),
  run: ({ model, show }, subject) => {
    const shaft = model.shafts.find((s) => s.address === subject.address);
    const most = shaft && thickestOf(shaft);
    if (!shaft?.stock || !most) return null;
    const { name, diameter, address } = shaft.stock;
    const piece = most.piece ? shaft.pieces?.find((one) => one.address === most.at) : undefined;
    const place = piece
      ? `the stretch from station ${show('length', piece.from)} to ${show('length', piece.to)}`
      : `the seat at ${most.at}`;
    const needs = show('length', most.diameter);
    return measured(
      { name: 'asked', value: most.diameter, kind: 'length', use: 'length' },
      { name: 'there is', value: diameter, kind: 'length', use: 'length' },
      () =>
        diameter < most.diameter
          ? `The bar of ${shaft.name} (${name}) is ${show('length', diameter)}, ${place} needs ${needs}: turn it from a bar of ${needs} or more.`
          : `The bar of ${shaft.name} (${name}) is ${show('length', diameter)}, and ${place}, the thickest, needs ${needs}.`,
      [],
      () => [],
      { capacity: `${address}/diameter`, demand: 'diameters of its seats and stretches' },
    );
  },
};
