import { shaftDiagrams } from '@oddwheel/build/session';
import type { Session } from '@oddwheel/build/session-types';
import type { DrawnSeat, ShaftApi } from './shaft-api.ts';

/** @param current gives the session, and throws when no build is open */
export function createShaftModel(current: () => Session): ShaftApi {
  return {
    shaftLines: (caseId) => {
      const session = current();
      const lines = shaftDiagrams(session, caseId ?? undefined);
      const { shafts } = session.evaluation.middle.scene.strength;
      return (
        lines?.map((line) => {
          const shaft = shafts.find((one) => one.shaft.address === line.address)?.shaft;
          const seats = (shaft?.seats ?? []).map(({ address, name, kind, station, width, outside }): DrawnSeat => {
            return { address, name, kind, station, width, outside };
          });
          return { line, seats };
        }) ?? null
      );
    },
  };
}
