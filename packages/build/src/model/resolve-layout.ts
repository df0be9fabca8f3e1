import type { Vec3 } from '@oddwheel/quantity/quantity';
import type { BuildFile } from '../schema/build-file.ts';
import { pointerKey } from '../schema/describe.ts';
import type { Adjuster, KeepOut, KnownPoint, Mount, Picture, Space, Suspension, Tube, Vehicle } from './model.ts';
import { type Reader, typedNumber, value, valueOrNull } from './value.ts';

type Point = { readonly x: string; readonly y: string; readonly z: string };

export const lengthOrNull = (text: string | undefined): number | null =>
  text === undefined ? null : typedNumber('length', text);

export const point = (p: Point): Vec3 => [
  typedNumber('length', p.x),
  typedNumber('length', p.y),
  typedNumber('length', p.z),
];

export function unitVector(d: readonly [number, number, number]): Vec3 {
  const length = Math.hypot(d[0], d[1], d[2]);
  return [d[0] / length, d[1] / length, d[2] / length];
}

export function resolveVehicle(reader: Reader, file: BuildFile['brief']['vehicle']): Vehicle {
  const read = (key: string) => value(reader, `/brief/vehicle/${key}`, file, key, 'Vehicle');
  const maybe = (key: string) => valueOrNull(reader, `/brief/vehicle/${key}`, file, key, 'Vehicle');
  return {
    mass: read('mass'),
    payload: read('payload'),
    contact: file.contact ?? null,
    wheelbase: maybe('wheelbase'),
    drivenLoad: maybe('drivenLoad'),
    centreHeight: maybe('centreHeight'),
    dragArea: read('dragArea'),
    rolling: read('rolling'),
    friction: read('friction'),
    wheelInertia: read('wheelInertia'),
    engineInertia: read('engineInertia'),
    otherInertia: read('otherInertia'),
    track: maybe('track'),
  };
}

export function resolveSuspension(file: BuildFile['brief']['suspension']): Suspension | null {
  if (!file) return null;
  return {
    address: '/brief/suspension',
    pivot: point(file.pivot),
    bump: typedNumber('angle', file.bump),
    rebound: typedNumber('angle', file.rebound),
    stand: file.stand === undefined ? null : typedNumber('angle', file.stand),
    armHeight: lengthOrNull(file.armHeight),
  };
}

export function resolveMounts(reader: Reader, file: BuildFile['brief']['mounts']): readonly Mount[] {
  return Object.entries(file ?? {}).map(([id, mount]): Mount => {
    const address = `/brief/mounts/${pointerKey(id)}`;
    return {
      address,
      name: mount.name,
      body: mount.body,
      at: point(mount.at),
      stiffness: valueOrNull(reader, `${address}/stiffness`, mount, 'stiffness', mount.name),
    };
  });
}

export function resolveSpace(reader: Reader, file: BuildFile['brief']['space']): Space {
  const keepOuts = Object.entries(file?.keepOuts ?? {}).map(([id, box]): KeepOut => {
    const [a, b] = [point(box.least), point(box.most)];
    return {
      address: `/brief/space/keepOuts/${pointerKey(id)}`,
      name: box.name,
      kind: box.kind,
      least: [Math.min(a[0], b[0]), Math.min(a[1], b[1]), Math.min(a[2], b[2])],
      most: [Math.max(a[0], b[0]), Math.max(a[1], b[1]), Math.max(a[2], b[2])],
      body: box.body,
    };
  });
  const tubes = Object.entries(file?.tubes ?? {}).map(
    ([id, tube]): Tube => ({
      address: `/brief/space/tubes/${pointerKey(id)}`,
      name: tube.name,
      from: point(tube.from),
      to: point(tube.to),
      size: typedNumber('length', tube.size),
      body: tube.body,
    }),
  );
  return { keepOuts, tubes, wanted: value(reader, '/brief/space/wanted', file ?? {}, 'wanted', 'Space') };
}

export function resolvePictures(file: BuildFile['pictures']): readonly Picture[] {
  return Object.entries(file ?? {}).map(([id, picture]): Picture => {
    const { under } = picture;
    const known = (p: NonNullable<typeof under>['first']): KnownPoint => ({ ...p, at: point(p.at) });
    return {
      id,
      address: `/pictures/${pointerKey(id)}`,
      name: picture.name,
      file: picture.file,
      of: picture.of ?? null,
      under: under ? { view: under.view, first: known(under.first), second: known(under.second) } : null,
    };
  });
}

export function resolveAdjusters(file: BuildFile['path']['adjusters']): readonly Adjuster[] {
  return Object.entries(file ?? {}).map(
    ([id, adjuster]): Adjuster => ({
      id,
      address: `/path/adjusters/${pointerKey(id)}`,
      name: adjuster.name,
      sets: adjuster.sets,
      of: adjuster.of,
      moves: adjuster.moves,
      along: unitVector(adjuster.along),
      travel: typedNumber('length', adjuster.travel),
    }),
  );
}
