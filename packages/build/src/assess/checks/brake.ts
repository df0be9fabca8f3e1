import { pull } from './chain.ts';
import { type Check, oneSubject, outcomeOf, type Scene, type Subject } from './check.ts';
import { shaftYields } from './strength/shaft-strength.ts';

const subjects = oneSubject('/brief/loads/brake', 'Brake');
const asked = { address: '/brief/loads/brake', says: 'the brake that stops the driven wheel: its seat and torque' };
const plain = (holds: boolean, says: () => string) =>
  ({ kind: 'plain', holds, says, uses: [], used: () => [] }) as const;
const FROM =
  'common practice: a brake acts on the wheel that it stops, since a thrown chain or a torn belt takes every brake before it away';

interface Acting {
  readonly shaft: number;
  readonly place: string;
  /** Chains and belts between the brake and the driven wheel. */
  readonly bands: readonly string[];
}

/** Where the brake acts; null without a brake, or where its seat is not on a shaft of the path. */
function acting({ model }: Scene): Acting | null {
  const [shaftId = '', seatId = ''] = (model.loads.brake?.at ?? '').split('/');
  const shaft = model.shafts.findIndex(({ id }) => id === shaftId);
  const found = model.shafts[shaft];
  const seat = found?.seats.find(({ id }) => id === seatId);
  if (!found || !seat) return null;
  const after = model.stages.slice(shaft).filter(({ kind }) => kind === 'chain' || kind === 'belt');
  return { shaft, place: `${seat.name} of ${found.name}`, bands: after.map(({ name }) => name) };
}

/** A chain or belt is not the only thing between the brake and the wheel. */
export const brakePlace: Check = {
  id: 'brake.place',
  title: 'brake behind every chain and belt',
  consequence: 'loses braking',
  wanted: { reserve: 1, from: FROM },
  atWorst: 'fails',
  perCase: false,
  subjects,
  run: (scene) => {
    const { brake } = scene.model.loads;
    const found = acting(scene);
    if (!brake || !found) return { kind: 'unknown', missing: [asked] };
    const { bands, place } = found;
    if (bands.length === 0)
      return plain(true, () => `The brake acts at ${place}; no chain or belt lies between it and the wheel.`);
    if (brake.others)
      return plain(true, () => `${bands[0]} lies after the brake at ${place}; another brake works alone on the wheel.`);
    if (brake.note !== null) return null;
    if (brake.others === null)
      return {
        kind: 'unknown',
        missing: [
          {
            address: `${brake.address}/others`,
            says: `whether another brake works alone on the wheel, since ${bands.join(' and ')} lies after the one at ${place}`,
          },
        ],
      };
    return plain(
      false,
      () =>
        `The only brake acts at ${place}, before ${bands.join(' and ')}: when that comes off or breaks, nothing brakes the wheel. Put a brake on the wheel’s own shaft, or write down at this brake why it may stand there.`,
    );
  },
};

/** A brake before a chain or belt that the builder answers for. */
export const brakeNoted: Check = {
  id: 'brake.noted',
  title: 'only brake before a chain or belt, by the builder’s note',
  consequence: 'loses braking',
  wanted: { reserve: 1, from: FROM },
  atWorst: 'thin',
  perCase: false,
  subjects,
  run: (scene) => {
    const { brake } = scene.model.loads;
    const found = acting(scene);
    if (!brake || brake.note === null || brake.others || !found || found.bands.length === 0) return null;
    return plain(
      false,
      () =>
        `The only brake acts at ${found.place}, before ${found.bands.join(' and ')}: when that comes off or breaks, nothing brakes the wheel. The builder’s ground: “${brake.note}”. An inspector may not take it.`,
    );
  },
};

/** Parts from the brake to the wheel, each with its reserve in the brake case where there is one. */
function partsOf(scene: Scene, from: number): string[] {
  const { model } = scene;
  const load = scene.cases.find(({ point }) => point.id === 'brake') ?? null;
  const reserve = (check: Check, subject: Subject): string => {
    const outcome = load && outcomeOf(check, scene, subject, load);
    return outcome?.kind === 'measured' ? ` (${check.title}: reserve ${outcome.reserve.toFixed(1)})` : '';
  };
  return model.shafts.slice(from).flatMap((shaft, k) => {
    const stage = model.stages[from + k];
    const own = `${shaft.name}${reserve(shaftYields, { address: shaft.address, element: shaft.name, stage: null })}`;
    if (!stage) return [own];
    const subject = { address: stage.address, element: stage.name, stage: from + k };
    return [own, `${stage.name}${stage.kind === 'chain' ? reserve(pull, subject) : ''}`];
  });
}

/** Brake torque has a way to the wheel, and its reaction a way into the body that carries the shaft. */
export const brakePath: Check = {
  id: 'brake.path',
  title: 'way of the brake’s torque',
  consequence: 'loses braking',
  wanted: {
    reserve: 1,
    from: 'equilibrium: the torque that holds the wheel turns the caliper or backplate the other way',
  },
  atWorst: 'fails',
  perCase: false,
  subjects,
  run: (scene) => {
    const { model, show } = scene;
    const { brake } = model.loads;
    const found = acting(scene);
    // Without a brake the check of its place asks for it.
    if (!brake || !found) return null;
    const bodies = [...new Set(model.shafts[found.shaft]?.seats.flatMap(({ body }) => body ?? []) ?? [])];
    const [carrier] = bodies;
    const missing = [
      ...(brake.heldBy === null
        ? [{ address: `${brake.address}/heldBy`, says: 'the part that holds the caliper or backplate: none is named' }]
        : []),
      ...(brake.body === null
        ? [{ address: `${brake.address}/body`, says: 'the body that this part belongs to' }]
        : []),
      ...(carrier === undefined
        ? [{ address: `${model.shafts[found.shaft]?.address}/seats`, says: 'the bearings of the braked shaft' }]
        : []),
    ];
    if (missing.length > 0) return { kind: 'unknown', missing };
    const together = bodies.every((body) => body === brake.body);
    return plain(together, () => {
      const way = `${show('torque', brake.torque)} at ${found.place} pass through ${partsOf(scene, found.shaft).join(', ')} to the wheel.`;
      return together
        ? `${way} The same torque turns what holds it, “${brake.heldBy}” on the ${brake.body}, the other way: its bolts and welds are not checked here.`
        : `${way} What holds it, “${brake.heldBy}”, belongs to the ${brake.body}, but the ${bodies.join(' and ')} carries the shaft, and they move against each other. Hold the caliper on the ${carrier}, or by a link that lets them move.`;
    });
  },
};
