import { beltCentreDistance } from '@oddwheel/mechanics/belt/centre-distance';
import { chainCentreDistance } from '@oddwheel/mechanics/chain/centre-distance';
import { MethodError } from '@oddwheel/mechanics/method/method';
import type { Vec3 } from '@oddwheel/quantity/quantity';
import { allParts } from '../assess/clearance/all-parts.ts';
import { placed as boxed } from '../assess/clearance/nearest.ts';
import type { Part } from '../assess/clearance/part.ts';
import { seatOf } from '../assess/geometry/place.ts';
import { parallelPlace } from '../assess/geometry/tangent.ts';
import type { StageGeometry } from '../assess/geometry/types.ts';
import type { Session } from '../session-types.ts';
import type { LinkCircle, MoveAids, Wall } from './types.ts';

/** So many even links, or belt teeth, either way of where it stands. */
const COUNTS = 6;

const shaftAt = (address: string): string => address.replace(/\/seats\/.*$/, '');

function centresFor({ stage }: StageGeometry, count: number): number | null {
  const teeth = stage.kind === 'chain' || stage.kind === 'belt' ? stage.teeth : null;
  if (!teeth) return null;
  const input = { teethDriver: teeth.driver, teethDriven: teeth.driven };
  try {
    return stage.kind === 'chain'
      ? chainCentreDistance.run({ ...input, pitch: stage.size.pitch, links: count }).centreDistance
      : stage.kind === 'belt'
        ? beltCentreDistance.run({ ...input, pitch: stage.pitch, beltTeeth: count }).centreDistance
        : null;
  } catch (error) {
    if (error instanceof MethodError) return null;
    throw error;
  }
}

/** Circles of one chain or belt about the end that stays, for a move of the shaft at an address. */
function circlesOf(geometry: StageGeometry, shaft: string): { all: readonly LinkCircle[]; held: LinkCircle } | null {
  const { stage, from, to } = geometry;
  if (geometry.relation === null || (stage.kind !== 'chain' && stage.kind !== 'belt')) return null;
  const movesDriver = from.address === shaft;
  if (!movesDriver && to.address !== shaft) return null;
  const [driver, driven] = [seatOf(from, stage.from), seatOf(to, stage.to)];
  const { centreDistance } = parallelPlace(driver.at, driven.at, from.direction);
  const base = {
    stage: stage.address,
    name: stage.name,
    own: movesDriver ? driver.at : driven.at,
    centre: movesDriver ? driven.at : driver.at,
    along: from.direction,
  };
  const held: LinkCircle = { ...base, count: '', radius: centreDistance };
  // An idler takes up links of its own: then the centres of whole links are not these.
  if (stage.kind === 'chain' && stage.idler) return { all: [], held };
  const isChain = stage.kind === 'chain';
  const now = isChain ? (geometry.chain?.linksNeeded ?? stage.links) : (stage.beltTeeth ?? null);
  if (now === null) return { all: [], held };
  const middle = isChain ? 2 * Math.round(now / 2) : now;
  const all = Array.from({ length: 2 * COUNTS + 1 }, (_, k) => middle + (k - COUNTS) * (isChain ? 2 : 1)).flatMap(
    (count): LinkCircle[] => {
      const radius = count > 0 ? centresFor(geometry, count) : null;
      return radius === null ? [] : [{ ...base, count: `${count} ${isChain ? 'links' : 'teeth'}`, radius }];
    },
  );
  return { all, held };
}

const boxOf = (part: Part): { readonly low: Vec3; readonly high: Vec3 } | null => {
  const { low, high } = boxed(part, [0]).all;
  return [...low, ...high].every(Number.isFinite) ? { low, high } : null;
};

/** What a move of the thing at an address can be held to; a seat is held to what its own part is near. */
export function aidsFor(session: Session, address: string): MoveAids {
  const { scene } = session.evaluation.middle;
  const { model, stages } = scene;
  const isSeat = address.includes('/seats/');
  const circles = isSeat ? [] : stages.flatMap((geometry) => circlesOf(geometry, address) ?? []);
  const parts = allParts(model, stages, null).parts.filter(({ role }) => role !== 'chain' && role !== 'belt');
  const movesWith = (part: Part): boolean => {
    if (part.address === address || part.address.startsWith(`${address}/`)) return true;
    if (isSeat || part.role === 'tube' || part.role === 'solid' || part.role === 'access') return false;
    const shaft = model.shafts.find((one) => one.address === address);
    return shaft !== undefined && (shaftAt(part.address) === address || part.element === address);
  };
  return {
    address,
    circles: circles.flatMap(({ all }) => all),
    held: circles.map(({ held }) => held),
    shafts: model.shafts
      .filter((shaft) => shaft.address !== shaftAt(address))
      .map(({ name, origin, direction }) => ({ name, at: origin, along: direction })),
    walls: parts
      .filter((part) => (part.role === 'solid' || part.role === 'tube') && !movesWith(part))
      .flatMap((part): Wall[] => {
        const box = boxOf(part);
        return box ? [{ name: part.name, ...box }] : [];
      }),
    boxes: parts.filter(movesWith).flatMap((part) => boxOf(part) ?? []),
    wanted: scene.at(model.space.wanted),
  };
}
