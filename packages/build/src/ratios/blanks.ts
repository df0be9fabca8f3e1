/** What to look at when the sprockets of a train are bought as blanks and bored: hub, bore and teeth. */
import { sprocketDiameters } from '@oddwheel/mechanics/chain/sprocket-diameters';
import { SPROCKET_PRACTICE } from '@oddwheel/tables/sprocket-practice';
import { rowInSi, sourceOf } from '@oddwheel/tables/table';
import type { Scene } from '../assess/checks/check.ts';
import type { Model, Stage } from '../model/model.ts';
import type { Blank } from './types.ts';

const row = (key: string): Readonly<Record<string, number | undefined>> => rowInSi(SPROCKET_PRACTICE, key);

/** Least wall of a hub before what the bore adds, m. */
function baseWall(pitchDiameter: number): number {
  const key = ['wall-small', 'wall-medium', 'wall-large'].find((one) => pitchDiameter <= (row(one).upTo ?? 0));
  const { wall = Number.NaN } = row(key ?? 'wall-largest');
  return wall + (row('wall-grows').ofPitchDiameter ?? Number.NaN) * pitchDiameter;
}

/** Turning speed of each shaft at the redline in the longest gear; null without a torque curve. */
function fastest(scene: Scene): readonly number[] | null {
  const { engine, boxRatios, stages } = scene;
  if (!engine) return null;
  let speed = engine.redline / Math.min(...boxRatios);
  return [
    speed,
    ...stages.map(({ ratio }) => {
      speed /= ratio;
      return speed;
    }),
  ];
}

const WORDS = ['a plate without a hub', 'a hub on one side', 'hubs on both sides'] as const;

function blankOf(
  scene: Scene,
  stage: Extract<Stage, { readonly kind: 'chain' }>,
  index: number,
  end: 'driver' | 'driven',
): Blank {
  const { model, show } = scene;
  const teeth = stage.teeth[end];
  const { pitch, roller, innerWidth } = stage.size;
  const { pitchDiameter, greatestHubDiameter: hub } = sprocketDiameters.run({ pitch, teeth, rollerDiameter: roller });
  const wall = baseWall(pitchDiameter);
  const { ofBore = Number.NaN } = row('wall-grows');
  const largest = Math.max(0, (hub - 2 * wall) / (1 + 2 * ofBore));
  const seat = seatOf(model, index, end);
  const bore = seat?.diameter ?? null;
  const width = seat?.width ?? null;
  const { teeth: fewest = 0, turns = 0 } = row('hardened');
  const speed = fastest(scene)?.[end === 'driver' ? index : index + 1] ?? null;
  const hardened = teeth >= fewest ? false : speed === null ? null : speed > turns;
  const fits = bore === null ? null : bore <= largest;
  const sides = fits === false || (width !== null && width <= innerWidth) ? 0 : 1;
  const says = [
    bore === null
      ? 'The diameter of its seat is not given.'
      : fits
        ? `Bore ${show('length', bore)}, of at most ${show('length', largest)} with a keyed hub.`
        : `Bore ${show('length', bore)} is over ${show('length', largest)}: the hub would be too thin, so a plate on a hub of your own, or more teeth.`,
    fits === true && bore !== null && sides > 0
      ? `Buy ${WORDS[sides]}, ${show('length', bore + 2 * (wall + ofBore * bore))} to ${show('length', hub)} across.`
      : `Buy ${WORDS[0]}.`,
    bore === null ? '' : `Pilot hole of at most ${show('length', bore - (row('pilot').cut ?? 0))}.`,
    hardened === null
      ? 'Whether its teeth should be hardened is not known without a torque curve.'
      : hardened
        ? `Ask for hardened teeth: fewer than ${fewest}, at up to ${show('angularSpeed', speed ?? 0)}.`
        : '',
  ].filter((text) => text !== '');
  return {
    part: `sprocket ${stage.size.key} ${teeth}`,
    stage: stage.id,
    end,
    hub,
    largestBore: largest,
    bore,
    pilot: bore === null ? null : bore - (row('pilot').cut ?? 0),
    sides,
    hardened,
    says: says.join(' '),
  };
}

/** The seat that the sprocket of a stage goes on. */
function seatOf(model: Model, index: number, end: 'driver' | 'driven') {
  const stage = model.stages[index];
  const ref = stage?.[end === 'driver' ? 'from' : 'to'];
  return model.shafts.find(({ id }) => id === ref?.shaft)?.seats.find(({ id }) => id === ref?.seat) ?? null;
}

/** Blanks of a train: one for each sprocket whose part is in the list, in the order of the path. */
export function blanksOf(scene: Scene, parts: readonly string[]): readonly Blank[] {
  return scene.model.stages.flatMap((stage, index) =>
    stage.kind === 'chain'
      ? (['driver', 'driven'] as const)
          .map((end) => blankOf(scene, stage, index, end))
          .filter(({ part }) => parts.includes(part))
      : [],
  );
}

/** Where the facts of blanks come from, each source once. */
export const blankSources = (): readonly string[] => [
  ...new Set(Object.keys(SPROCKET_PRACTICE.rows).map((key) => sourceOf(SPROCKET_PRACTICE, key))),
];
