import type { Scene } from '../checks/check.ts';
import { seatOf } from '../geometry/place.ts';
import { lineOf, linesOf, nameOf } from './lines.ts';
import { movementBetween } from './movement.ts';
import { senseFixes } from './sense-fixes.ts';
import type { Crossing, Layout } from './types.ts';

/** Which bodies carry what, what passes between them, and what turns a backward wheel round. */
export function layoutOf(scene: Scene): Layout {
  const lines = linesOf(scene.model);
  return {
    lines: lines.map((line) => ({
      shafts: line.shafts.map(({ address }) => address),
      name: nameOf(line),
      bearings: line.bearings.flatMap(({ address, name, body }) => (body === null ? [] : [{ address, name, body }])),
      bodies: line.bodies,
    })),
    crossings: scene.stages.flatMap((geometry, k): Crossing[] => {
      const [before, after] = [lineOf(lines, k), lineOf(lines, k + 1)];
      const [from, to] = [before?.bodies[0], after?.bodies[0]];
      if (!before || !after || before === after || from === undefined || to === undefined || from === to) return [];
      const { stage } = geometry;
      const movement = movementBetween(scene.model, from, to, seatOf(geometry.to, stage.to).at, geometry.to.direction);
      const { show } = scene;
      return [
        {
          address: stage.address,
          name: stage.name,
          from,
          to,
          movement: movement && { offset: movement.offset, angle: movement.angle, axial: movement.axial },
          text: movement
            ? `${stage.name} leads from the ${from} to the ${to}, which move against each other by up to ${show('length', movement.offset)} across the shaft, ${show('length', movement.axial)} along it and ${show('angle', movement.angle)}.`
            : `${stage.name} leads from the ${from} to the ${to}; how far they move against each other is not known.`,
        },
      ];
    }),
    senseFixes: senseFixes(scene),
  };
}
