import type { Check, Scene } from '../check.ts';
import { measured } from '../measured.ts';
import { flankTorque, type GearPair, gearSubjects, onPair, speedFactor } from './gear-pairs.ts';

/** Angle between shafts within which a pair runs as it was cut. */
const SAME_ANGLE = Math.PI / 360;

interface Compared {
  /** Greatest torque of here on the gear that drove in the donor, scaled to the donor’s speed. */
  readonly asked: number;
  readonly lived: number;
  readonly name: string;
  readonly torque: number;
}

/** By the pair, which belongs to one scene: each case of several checks asks for it. */
const KNOWN = new WeakMap<GearPair, Compared | null>();

/** What is asked here of the gear that drove in the donor, against what it drove there; null without a donor or a load. */
function compared(pair: GearPair, scene: Scene): Compared | null {
  const known = KNOWN.get(pair);
  if (known !== undefined) return known;
  const found = compare(pair, scene);
  KNOWN.set(pair, found);
  return found;
}

function compare(pair: GearPair, scene: Scene): Compared | null {
  const { donor } = pair.stage.gears;
  if (!donor) return null;
  const { driver, driven } = pair.stage.teeth;
  const dynamic = (speed: number): number => speedFactor(pair, speed);
  const drovesSmaller = donor.sameDriver === pair.driverSmaller;
  const speedThere = drovesSmaller ? donor.speed : (donor.speed * Math.max(driver, driven)) / Math.min(driver, driven);
  const there = dynamic(speedThere);
  let most: Compared | null = null;
  for (const load of scene.cases) {
    const torque = flankTorque(pair, load, donor.sameDriver ? 'driver' : 'driven');
    const speed = load.shafts[pair.driverSmaller ? pair.k : pair.k + 1]?.speed ?? 0;
    const asked = (torque * dynamic(speed)) / there;
    if (torque > 0 && asked > (most?.asked ?? 0)) most = { asked, lived: donor.torque, name: load.point.name, torque };
  }
  return most;
}

/** The flank that carries here carried there, and the pair stands at the angle it was cut for. */
function sameUse({ stage, geometry }: GearPair): { readonly flank: boolean; readonly angle: boolean } {
  const { donor } = stage.gears;
  const here = geometry.bevel?.shaftAngle ?? null;
  return {
    flank: donor === null || donor.sameDriver === donor.sameTurning,
    angle: donor?.angle == null || here === null || Math.abs(donor.angle - here) <= SAME_ANGLE,
  };
}

/** Whether the donor proves the pair: as much torque there, on the same flanks, at the same angle. */
export function livedThrough(pair: GearPair, scene: Scene): boolean {
  const found = compared(pair, scene);
  const { flank, angle } = sameUse(pair);
  return found !== null && found.asked <= found.lived && flank && angle;
}

/** Greatest torque of here against what the pair lived through in its donor. */
export const gearDonor: Check = {
  id: 'gear.donor',
  title: 'what the pair lived through',
  consequence: 'loses drive',
  wanted: { reserve: 1, from: 'common practice: what it carried in its donor for long' },
  atWorst: 'thin',
  perCase: false,
  subjects: (model) =>
    gearSubjects(model).filter(({ stage }) => {
      const found = stage === null ? undefined : model.stages[stage];
      return (found?.kind === 'bevel' || found?.kind === 'spur') && found.gears.donor !== null;
    }),
  run: onPair((pair, scene) => {
    const found = compared(pair, scene);
    const { donor } = pair.stage.gears;
    if (!found || !donor) return null;
    const { show } = scene;
    return measured(
      { name: 'asked here', value: found.asked, kind: 'torque', use: 'torque' },
      { name: 'in its donor', value: found.lived, kind: 'torque', use: 'torque' },
      () =>
        `${show('torque', found.torque)} in “${found.name}” counts as ${show('torque', found.asked)} at the donor’s speed; there it drove ${show('torque', found.lived)}.`,
      pair.uses,
      () => [],
      { capacity: `${donor.address}/torque`, demand: 'torque carried through the path, scaled by the factor of speed' },
    );
  }),
};

/** A pair used on its other flanks, or at another angle than it was cut for. */
export const gearFlank: Check = {
  id: 'gear.flank',
  title: 'flanks and angle as in the donor',
  consequence: 'wears out',
  wanted: {
    reserve: 1,
    from: 'common practice: gears of road vehicles are lapped and hardened for their driving flank',
  },
  atWorst: 'thin',
  perCase: false,
  subjects: gearDonor.subjects,
  run: onPair((pair) => {
    const { flank, angle } = sameUse(pair);
    const { donor } = pair.stage.gears;
    if (donor && donor.angle === null && flank && pair.stage.kind === 'bevel')
      return {
        kind: 'unknown',
        missing: [{ address: `${donor.address}/angle`, says: 'the angle between its shafts in the donor' }],
      };
    const says = [
      flank
        ? 'The flanks that drive here drove in the donor.'
        : 'The flanks that drive here only held back in the donor: their pattern was never run in, and a spiral pushes the other way along its shafts.',
      angle ? '' : 'It stands at another angle than in its donor, so the teeth meet at one end.',
    ];
    return {
      kind: 'plain',
      holds: flank && angle,
      says: () => says.filter((part) => part !== '').join(' '),
      uses: [],
      used: () => [],
    };
  }),
};
