import type { Seat, Shaft, Wheel } from '@oddwheel/build/model/model';
import { readTyre } from '@oddwheel/build/model/tyre';
import { plus, times } from '@oddwheel/mechanics/numerics/vector';
import { squareTo, turnAbout } from './gear-solids.ts';
import { inMm, MM, ring } from './shaft-solids.ts';
import type { Solid, Turned } from './solids.ts';

/** Wheel parts that no build gives, for drawing only. */
const SPOKES = 28;
const RIM_DEPTH = 22;
const HUB_OVER_SEAT = 3;
const HUB_WIDTH = 70;
const STAND_IN_WIDTH = 60;

interface WheelSize {
  readonly radius: number;
  readonly width: number;
  /** Radius of the rim's seat; null for a solid wheel. */
  readonly rim: number | null;
  readonly sized: boolean;
}

/** Size of the driven wheel in mm: from its tyre, or a solid wheel as its roll-out says. Null when neither is known. */
export function wheelSize(wheel: Wheel, seat: Seat | undefined, rollOut: number | null): WheelSize | null {
  const given = seat?.width == null ? null : seat.width * MM;
  if (wheel.diameter !== null && wheel.width !== null) {
    const tyre = wheel.tyre === null ? null : readTyre(wheel.tyre);
    const rim = tyre?.ok ? (tyre.rimDiameter * MM) / 2 : null;
    return { radius: (wheel.diameter * MM) / 2, width: wheel.width * MM, rim, sized: true };
  }
  if (rollOut === null) return null;
  return { radius: (rollOut * MM) / (2 * Math.PI), width: given ?? STAND_IN_WIDTH, rim: null, sized: given !== null };
}

/** A tyre's outline: flat tread with round shoulders, so many points a shoulder. */
function tyreOutline(station: number, width: number, radius: number, bead: number): Turned['outline'] {
  const round = Math.min(width / 2, radius - bead) * 0.6;
  const shoulder = Array.from({ length: 7 }, (_, k) => (k * Math.PI) / 12);
  const side = shoulder.map((a): readonly [number, number] => [
    -width / 2 + round * (1 - Math.sin(a)),
    radius - round * (1 - Math.cos(a)),
  ]);
  const left = [[-width / 2, bead] as const, ...[...side].reverse()];
  const right = [...left].reverse().map(([x, r]): readonly [number, number] => [-x, r]);
  return [...left, ...right].map(([x, r]): readonly [number, number] => [station + x, r]);
}

/** The driven wheel: tyre, rim, spokes and hub, or one solid disc where it has no tyre. */
export function wheelSolids(shaft: Shaft, seat: Seat, size: WheelSize, address: string): readonly Solid[] {
  const station = seat.station * MM;
  const about = { of: address, moves: shaft.address, sized: size.sized } as const;
  const axis = { shape: 'turned', at: inMm(shaft.origin), along: shaft.direction, teeth: null } as const;
  const hubRadius = seat.diameter === null ? 40 : (HUB_OVER_SEAT * seat.diameter * MM) / 2;
  if (size.rim === null)
    return [{ ...about, name: 'driven wheel', role: 'rim', shape: ring(shaft, station, size.width, size.radius, 0) }];
  const inner = size.rim - RIM_DEPTH;
  const hub = Math.min(hubRadius, inner / 3);
  return [
    {
      ...about,
      name: 'tyre',
      role: 'tyre',
      shape: { ...axis, outline: tyreOutline(station, size.width, size.radius, size.rim), bore: size.rim },
    },
    {
      ...about,
      name: 'rim',
      role: 'rim',
      shape: ring(shaft, station, size.width * 0.6, size.rim, inner),
    },
    { ...about, name: 'spokes', role: 'spokes', shape: { shape: 'wires', lines: spokes(shaft, station, hub, inner) } },
    { ...about, name: 'hub', role: 'rim', shape: ring(shaft, station, Math.min(HUB_WIDTH, size.width), hub, 0) },
  ];
}

/** Crossed spokes from the hub's two flanges. */
function spokes(
  shaft: Shaft,
  station: number,
  hub: number,
  rim: number,
): [readonly [number, number, number], readonly [number, number, number]][] {
  const first = squareTo(shaft.direction);
  const centre = plus(inMm(shaft.origin), times(station, shaft.direction));
  return Array.from({ length: SPOKES }, (_, k) => {
    const angle = (2 * Math.PI * k) / SPOKES;
    const flange = (k % 2 === 0 ? 1 : -1) * (HUB_WIDTH / 2 - 6);
    const lead = (Math.floor(k / 2) % 2 === 0 ? 1 : -1) * 0.7;
    const out = (a: number, radius: number, along: number) =>
      plus(centre, plus(times(radius, turnAbout(shaft.direction, first, a)), times(along, shaft.direction)));
    return [out(angle + lead, hub * 0.9, flange), out(angle, rim, 0)];
  });
}

/** The tyre at the size it grows to. */
export function grownTyre(shaft: Shaft, seat: Seat, width: number, radius: number, address: string): Solid {
  return {
    of: address,
    name: 'tyre, grown at speed',
    role: 'grown tyre',
    moves: shaft.address,
    sized: true,
    shape: ring(shaft, seat.station * MM, width, radius, 0),
  };
}
