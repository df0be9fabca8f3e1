import { ordinal } from './cases.ts';
import type { Evaluation } from './evaluation.ts';
import { spreadOf } from './spread.ts';
import type { ReferenceRow } from './types.ts';

/** Engine speed at one road speed, gear by gear, here and in the reference vehicle. */
export function referenceRows(evaluation: Evaluation): ReferenceRow[] {
  const { reference } = evaluation.model;
  const { show } = evaluation.middle.scene;
  if (!reference) return [];
  const gears = Math.min(reference.overall.length, evaluation.middle.scene.overall.length);
  return Array.from({ length: gears }, (_, k) => k).flatMap((k): ReferenceRow[] => {
    const here = spreadOf(evaluation, ({ scene }) => {
      const ratio = scene.overall[k];
      return scene.rollOut === null || ratio === undefined
        ? null
        : (scene.at(reference.at) / scene.rollOut) * 2 * Math.PI * ratio;
    });
    const there = spreadOf(evaluation, ({ scene }) => {
      const ratio = reference.overall[k];
      return ratio === undefined
        ? null
        : (scene.at(reference.at) / scene.at(reference.rollOut)) * 2 * Math.PI * scene.at(ratio);
    });
    if (!here || !there) return [];
    const redline = evaluation.middle.scene.engine?.redline ?? Number.POSITIVE_INFINITY;
    const past = here.value > redline ? ', past the redline' : '';
    return [
      {
        gear: ordinal(k + 1),
        here,
        reference: there,
        text: `${ordinal(k + 1)} gear at ${show('speed', evaluation.middle.scene.at(reference.at))}: ${show('angularSpeed', here.value)} here${past}, ${show('angularSpeed', there.value)} in ${reference.name}.`,
      },
    ];
  });
}
