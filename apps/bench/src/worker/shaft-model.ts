import { type ThrustPath, thrustPaths } from '@oddwheel/build/assess/strength/thrust-path';
import { shaftDiagrams } from '@oddwheel/build/session';
import type { Session } from '@oddwheel/build/session-types';
import type { DrawnPush, DrawnSeat, ShaftApi } from './shaft-api.ts';

/** @param current gives the session, and throws when no build is open */
export function createShaftModel(current: () => Session): ShaftApi {
  return {
    shaftLines: (caseId) => {
      const session = current();
      const lines = shaftDiagrams(session, caseId ?? undefined);
      const { scene } = session.evaluation.middle;
      return (
        lines?.map((line) => {
          const k = scene.strength.shafts.findIndex(({ shaft }) => shaft.address === line.address);
          const seats = (scene.strength.shafts[k]?.shaft.seats ?? []).map(
            ({ address, name, kind, station, width, outside }): DrawnSeat => {
              return { address, name, kind, station, width, outside };
            },
          );
          const paths = thrustPaths(scene, k);
          return { line, seats, pushes: 'missing' in paths ? paths : paths.map(drawnPush) };
        }) ?? null
      );
    },
  };
}

// The working of a link is not sent: it holds methods, which cannot leave the worker.
const drawnPush = ({ way, push, links }: ThrustPath): DrawnPush => ({
  way,
  push,
  links: links.map(({ name, demand, state, capacity, missing }) => ({ name, demand, state, capacity, missing })),
});
