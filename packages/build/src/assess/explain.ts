import { workingOf } from '@oddwheel/mechanics/method/working';
import type { Explanation } from '../session-types.ts';
import { signsOf } from '../signs/signs.ts';
import type { Evaluation } from './evaluation.ts';
import { caseId, outcomeAt } from './findings.ts';
import type { Assessment } from './types.ts';

/**
 * The working of one finding for one case: the check is run again on the same scene, so its reserve is the very number that the assessment holds.
 * @param wantedCase case id; without it the governing case
 * @returns null when the finding, or that case, does not exist
 */
export function explain(
  evaluation: Evaluation,
  assessment: Assessment,
  findingId: string,
  wantedCase?: string,
): Explanation | null {
  const finding = assessment.findings.find((f) => f.id === findingId);
  const row = finding && evaluation.rows[finding.row];
  if (!finding || !row) return null;
  const seat = evaluation.model.shafts.flatMap(({ seats }) => seats).find(({ address }) => address === finding.address);
  const signs = signsOf(finding.check, seat?.hub?.torqueBy ?? null);
  const last = evaluation.columns - 1;
  const asked = row.check.perCase ? (wantedCase ?? finding.governing ?? 'here') : null;
  const column =
    asked === null || asked === 'here'
      ? last
      : evaluation.middle.scene.cases.findIndex((load) => load.point.id === asked);
  if (column < 0) return null;
  const outcome = outcomeAt(evaluation, evaluation.middle, row, column);
  if (!outcome || outcome.kind === 'unknown')
    return {
      finding,
      signs,
      caseId: asked,
      caseName: caseName(evaluation, asked, column),
      workings: [],
      demand: null,
      capacity: null,
      reserve: null,
    };
  const { show } = evaluation.middle.scene;
  const measured = outcome.kind === 'measured' ? outcome : null;
  return {
    finding,
    signs,
    caseId: asked,
    caseName: caseName(evaluation, asked, column),
    workings: outcome.used().map(({ method, input, output, origins }) => workingOf(method, input, output, origins)),
    demand: measured && {
      name: measured.demand.name,
      value: measured.demand.value,
      kind: measured.demand.kind,
      text: show(measured.demand.use, measured.demand.value),
    },
    capacity: measured && {
      name: measured.capacity.name,
      value: measured.capacity.value,
      kind: measured.capacity.kind,
      text: show(measured.capacity.use, measured.capacity.value),
    },
    reserve: measured ? measured.reserve : null,
  };
}

function caseName(evaluation: Evaluation, id: string | null, column: number): string | null {
  if (id === null) return null;
  return caseId(evaluation, column) === 'here'
    ? 'at the slider'
    : (evaluation.middle.scene.cases[column]?.point.name ?? null);
}
