/** A wheel that rolls backward, turned round. */
import { senseFixes } from '../../assess/layout/sense-fixes.ts';
import { type Ground, type Ladder, ladder, lengthText, put } from '../ladder.ts';

const AXES = ['x', 'y', 'z'] as const;

/** The engine set end for end, with its first sprocket, pulley or gear left in its place. */
function engineRound(ground: Ground): readonly Ladder[] {
  const [output] = ground.model.shafts;
  const first = output?.seats.find(({ id }) => id === ground.model.stages[0]?.from.seat);
  if (!output || !first) return [];
  const direction = output.direction.map((x) => -x + 0);
  return ladder('re-make', [
    {
      what: `Set the engine end for end about ${first.name}`,
      patches: [
        put(ground, `${output.address}/direction`, direction),
        ...AXES.flatMap((axis, k) => {
          const by = 2 * first.station * (output.direction[k] ?? 0);
          const address = `${output.address}/origin/${axis}`;
          return Math.abs(by) < 1e-7
            ? []
            : [put(ground, address, lengthText(ground, address, (output.origin[k] ?? 0) + by))];
        }),
      ],
      size: 1,
    },
  ]);
}

/** Changes that turn the wheel round; those that only a new drawing makes are named in the finding. */
export function turnedRound(ground: Ground): readonly Ladder[] {
  return senseFixes(ground.scene).flatMap(({ address, text, edits }) => {
    if (address === '/brief/engine/output') return engineRound(ground);
    return edits.length === 0
      ? []
      : ladder('re-cut', [
          {
            what: text.charAt(0).toUpperCase() + text.slice(1),
            patches: edits.map((edit) => {
              const to = ground.model.shafts
                .flatMap(({ seats }) => seats)
                .find((seat) => `${seat.address}/station` === edit.address);
              return put(
                ground,
                edit.address,
                to ? edit.text.replaceAll('\u2009', ' ').replaceAll('\u2212', '-') : edit.text,
              );
            }),
            size: 0.2,
          },
        ]);
  });
}
