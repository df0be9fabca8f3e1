import type { ChainOverStroke } from '@oddwheel/build/assess/stroke/types';
import type { Assessment } from '@oddwheel/build/assess/types';
import { formatQuantity } from '@oddwheel/quantity/format';
import type { Kind } from '@oddwheel/quantity/kinds';
import { table, WIDTH } from '../table.ts';
import { plainLine, wrap } from '../text-width.ts';

type Print = (use: 'length' | 'angle', value: number) => string;

const right = { align: 'right' } as const;

function placeTable({ places }: ChainOverStroke, print: Print): string[] {
  return table(
    [
      { title: 'Arm' },
      { title: 'From as drawn', ...right },
      { title: 'Centres', ...right },
      { title: 'Links needed', ...right },
      { title: 'By hand', ...right },
      { title: 'Of the span', ...right },
      { title: 'Least wrap', ...right },
    ],
    places.map(({ name, angle, centreDistance, linksNeeded, movement, movementOverSpan, wrapSmall }) => [
      name ?? '',
      print('angle', angle),
      print('length', centreDistance),
      linksNeeded.toFixed(3),
      movement === null ? '' : print('length', movement),
      movementOverSpan === null ? '' : `${(movementOverSpan * 100).toFixed(1)} %`,
      print('angle', wrapSmall),
    ]),
  );
}

function roomTable({ room }: ChainOverStroke, print: Print): string[] {
  if (room.length === 0) return [];
  return [
    '',
    ...table(
      [
        { title: 'Room to the arm' },
        { title: 'Span' },
        { title: 'Pulled straight', ...right },
        { title: 'Hanging', ...right },
      ],
      room.map(({ place, span, pulling, slack }) => [
        place,
        span,
        print('length', pulling),
        slack === null ? '' : print('length', slack),
      ]),
    ),
  ];
}

/** What chains to the swinging arm do over its stroke; nothing for a rigid wheel, or where it cannot be worked out. */
export function armLines({ stroke, units }: Assessment): string[] {
  if (!stroke) return [];
  const kinds: Readonly<Record<'length' | 'angle', readonly [Kind, string]>> = {
    length: ['length', units.length ?? 'mm'],
    angle: ['angle', units.angle ?? '°'],
  };
  const print: Print = (use, value) => formatQuantity(value, ...kinds[use]);
  return stroke.chains.flatMap((chain) => {
    if (chain.places.length === 0) return [];
    const texts = [chain.tightest, chain.slack, chain.slot, chain.rise].flatMap((part) => (part ? [part.text] : []));
    return [
      '',
      plainLine(`${chain.name} over the stroke of the swinging arm`),
      '',
      ...placeTable(chain, print),
      ...roomTable(chain, print),
      '',
      ...texts.flatMap((text) => wrap(plainLine(text), WIDTH)),
    ];
  });
}
