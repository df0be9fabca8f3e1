/** What the shop of the brief can do of a change, by the limits that are typed for its machines. */
import { parseQuantity } from '@oddwheel/quantity/parse';
import type { Ground, Needs } from './ladder.ts';

type Machine = { readonly kind: string; readonly name: string } & Readonly<Record<string, string>>;

interface Limit {
  readonly machine: string;
  readonly si: number;
}

/** Machines of one or several kinds in the brief; null where it tells of no machines at all. */
function machinesOf({ session }: Ground, ...kinds: readonly string[]): readonly Machine[] | null {
  const machines = session.build.brief.shop?.machines;
  return machines ? (Object.values(machines) as readonly Machine[]).filter(({ kind }) => kinds.includes(kind)) : null;
}

const lengthOf = (machine: Machine, key: string): number | null => {
  const parsed = parseQuantity(machine[key] ?? '', 'length');
  return parsed.ok ? parsed.si : null;
};

/** The greatest of a limit over the machines that name it; null where one of them does not. */
function most(machines: readonly Machine[] | null, key: string): Limit | null {
  if (!machines || machines.length === 0) return null;
  let best: Limit | null = null;
  for (const machine of machines) {
    const si = lengthOf(machine, key);
    if (si === null) return null;
    if (!best || si > best.si) best = { machine: machine.name, si };
  }
  return best;
}

const CUTTERS = ['laser cutting', 'waterjet cutting'] as const;

/** What the own shop does not do of a step, and what rules it out: a plate is welded where the subframe stands, all else can be ordered. */
export function shopSays(
  ground: Ground,
  needs: Needs | undefined,
): { readonly ruledOut: string | null; readonly boughtIn: readonly string[] } {
  if (!needs) return { ruledOut: null, boughtIn: [] };
  const length = (si: number): string => ground.show('length', si);
  const over = (limit: Limit | null, needed: number | undefined, says: (limit: Limit) => string): string[] =>
    limit && needed !== undefined && needed > limit.si ? [says(limit)] : [];
  const lathes = machinesOf(ground, 'lathe');
  const welders = most(machinesOf(ground, 'welder'), 'thickest');
  const boughtIn = [
    ...over(
      most(lathes, 'swing'),
      needs.swing,
      ({ machine, si }) => `the ${machine} swings ${length(si)}: buy it ready bored, or have it turned`,
    ),
    ...over(
      most(lathes, 'centres'),
      needs.turned,
      ({ machine, si }) => `the ${machine} takes ${length(si)} between centres: have it turned`,
    ),
    ...barFor(ground, needs),
    ...sheetFor(ground, needs),
    ...over(
      most(machinesOf(ground, 'press'), 'daylight'),
      needs.pressed,
      ({ machine, si }) => `the ${machine} has ${length(si)} of daylight: have it pressed on, or warm it`,
    ),
  ];
  const [ruledOut = null] = over(welders, needs.weld, ({ machine, si }) => `the ${machine} welds up to ${length(si)}`);
  return { ruledOut, boughtIn };
}

/** The bar that the shaft is turned from, or another of the stock. */
function barFor(ground: Ground, { bar }: Needs): string[] {
  const stock = Object.values(ground.session.build.brief.shop?.stock ?? {});
  if (!bar || stock.length === 0) return [];
  if (bar.given !== null && bar.given >= bar.diameter) return [];
  const fits = stock.some((one) => {
    const [diameter, length] = [parseQuantity(one.diameter, 'length'), parseQuantity(one.length, 'length')];
    return diameter.ok && length.ok && diameter.si >= bar.diameter && length.si >= bar.length;
  });
  return fits ? [] : [`no bar of the stock gives ${ground.show('length', bar.diameter)}: buy one`];
}

function sheetFor(ground: Ground, { sheet }: Needs): string[] {
  const cutters = machinesOf(ground, ...CUTTERS);
  if (!sheet || !cutters || cutters.length === 0) return [];
  const long = Math.max(sheet.width, sheet.length);
  const short = Math.min(sheet.width, sheet.length);
  const room = cutters.map((machine) => ({
    machine,
    thickest: lengthOf(machine, 'thickest'),
    sides: [lengthOf(machine, 'sheetLength'), lengthOf(machine, 'sheetWidth')],
  }));
  const does = room.some(({ thickest, sides: [a = null, b = null] }) => {
    const thin = thickest === null || sheet.thickness <= thickest;
    return thin && (a === null || b === null || (long <= Math.max(a, b) && short <= Math.min(a, b)));
  });
  const names = cutters.map(({ name }) => name).join(' and ');
  return does ? [] : [`it is beyond the sheet or thickness of ${names}: have it cut`];
}
