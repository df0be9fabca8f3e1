import type { Assessment } from '@oddwheel/build/assess/types';
import { formatQuantity } from '@oddwheel/quantity/format';
import { table, WIDTH } from '../table.ts';
import { plainLine, wrap } from '../text-width.ts';

const numbered = (texts: readonly string[]): string[] =>
  texts.flatMap((text, k) => {
    const head = `${k + 1}. `.padStart(4);
    return wrap(plainLine(text), WIDTH - head.length).map(
      (line, n) => (n === 0 ? head : ' '.repeat(head.length)) + line,
    );
  });

/** Setting order, and which adjuster disturbs what; nothing for a build that names no adjusters. */
export function adjusterLines({ adjustment }: Assessment): string[] {
  const { order, disturbances } = adjustment;
  if (order.length === 0) return [];
  const upset =
    disturbances.length === 0
      ? ['No adjuster disturbs what another sets.']
      : disturbances.flatMap(({ text }) => wrap(plainLine(text), WIDTH));
  return ['', 'Setting order', '', ...numbered(order.map(({ text }) => text)), '', 'What disturbs what', '', ...upset];
}

/** What else must move when one shaft is shifted; nothing where no shift upsets anything. */
export function moveLines({ adjustment, units }: Assessment): string[] {
  const moves = adjustment.moves.filter(({ upsets }) => upsets.length > 0);
  const by = moves[0]?.by;
  if (by === undefined) return [];
  return [
    '',
    plainLine(`What else must move when one shaft is shifted by ${formatQuantity(by, 'length', units.length ?? 'mm')}`),
    '',
    ...table(
      [{ title: 'Shaft' }, { title: 'Along' }, { title: 'What it upsets', wraps: true }],
      moves.map(({ name, axis, upsets }) => [name, axis, upsets.map(({ text }) => sentence(text)).join(' ')]),
    ),
  ];
}

const sentence = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

/** How each shaft goes together, and what comes off to change a part; nothing where no sizes of seats are given. */
export function assemblyLines({ assembly }: Assessment): string[] {
  const shafts = assembly.shafts.filter(({ steps }) => steps.length > 0);
  const services = assembly.services.filter(({ steps }) => steps.length > 0);
  if (shafts.length === 0) return [];
  const part = ({ name, steps }: { readonly name: string; readonly steps: readonly string[] }) => [
    name,
    steps.join(' '),
  ];
  return [
    '',
    ...table([{ title: 'Put together' }, { title: 'In this order', wraps: true }], shafts.map(part)),
    '',
    ...table([{ title: 'To change' }, { title: 'What comes off first', wraps: true }], services.map(part)),
  ];
}
