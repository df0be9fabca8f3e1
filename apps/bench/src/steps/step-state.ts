import type { Assessment, Severity } from '@oddwheel/build/assess/types';
import { show } from '../numbers/shown.ts';
import { stepOfCheck } from './belongs.ts';
import type { StepId } from './steps.ts';

/** How far a step is, in words; with the shape of the severity that the words stand for. */
export interface StepState {
  /** Null where the words are no verdict. */
  readonly severity: Severity | null;
  readonly words: string;
  /** What else there is to say, after the words. */
  readonly more: string;
}

const WORST_FIRST: readonly Severity[] = ['fails', 'unknown', 'thin', 'holds'];
const NOT_BEGUN: StepState = { severity: null, words: 'not begun', more: '' };

/**
 * How far a step is.
 *
 * @param step step asked for
 * @param assessment what is known of the build
 * @param sets sets of dial readings on the record of run-out
 */
export function stepState(step: StepId, assessment: Assessment, sets = 0): StepState {
  const verdict = verdictOf(step, assessment);
  switch (step) {
    case 'brief': {
      const assumed = assessment.assumed.length;
      return assumed === 0
        ? { severity: 'holds', words: 'complete', more: '' }
        : { severity: null, words: `${assumed} assumed`, more: '' };
    }
    case 'ratios': {
      const inAll = `${reduction(assessment)} in all`;
      if (verdict === null) return { severity: null, words: inAll, more: '' };
      return verdict.severity === 'holds'
        ? { severity: 'holds', words: inAll, more: '' }
        : { severity: verdict.severity, words: verdict.words, more: inAll };
    }
    case 'layout':
    case 'strength':
      return verdict ?? { severity: null, words: 'no checks yet', more: '' };
    case 'true':
      if (verdict === null && sets > 0)
        return { severity: null, words: `${sets} ${sets === 1 ? 'set' : 'sets'} read`, more: '' };
      return verdict ?? NOT_BEGUN;
    default:
      return verdict ?? NOT_BEGUN;
  }
}

/** The worst severity of a step's findings with its count, and how many more do not simply hold; null without findings. */
function verdictOf(step: StepId, assessment: Assessment): StepState | null {
  const own = assessment.findings.filter((finding) => stepOfCheck(finding.check) === step);
  const count = (severity: Severity): number => own.filter((finding) => finding.severity === severity).length;
  const severity = WORST_FIRST.find((one) => count(one) > 0);
  if (severity === undefined) return null;
  if (severity === 'holds') return { severity, words: 'holds', more: '' };
  const others = own.length - count(severity) - count('holds');
  return {
    severity,
    words: `${count(severity)} ${severity}`,
    more: others === 0 ? '' : `and ${others} more`,
  };
}

/** Reduction of all stages together, without the gearbox: the part that is built. */
function reduction(assessment: Assessment): string {
  const ratios = assessment.path.flatMap((element) =>
    element.kind === 'gearbox' || element.ratio === null ? [] : [element.ratio],
  );
  const product = (end: 'value' | 'lo' | 'hi'): number => ratios.reduce((all, ratio) => all * ratio[end], 1);
  const all = { value: product('value'), lo: product('lo'), hi: product('hi') };
  return show({ ...all, lo: Math.min(all.lo, all.hi), hi: Math.max(all.lo, all.hi) }, 'number', {}).number;
}
