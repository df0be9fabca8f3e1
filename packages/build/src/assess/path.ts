import { reuse } from '../model/cache.ts';
import type { Stage } from '../model/model.ts';
import { ordinal } from './cases.ts';
import type { CornerResult, Evaluation } from './evaluation.ts';
import { stageFacts, wheelFacts } from './facts.ts';
import { severityAt } from './findings.ts';
import { spreadOf } from './spread.ts';
import type { Finding, GearSpan, LoadCase, PathElement, ReserveMark, Severity } from './types.ts';

const ORDER: readonly Severity[] = ['fails', 'unknown', 'thin', 'holds'];

const NOTHING = { angularSpeed: null, torque: null, power: null, lineSpeed: null, force: null } as const;

function teethText(stage: Stage): string | null {
  return 'teeth' in stage ? `${stage.teeth.driver} : ${stage.teeth.driven}` : null;
}

/** The worse of two marks: by severity, then by reserve. */
function worse(a: ReserveMark | null, b: ReserveMark): ReserveMark {
  if (!a) return b;
  const by = ORDER.indexOf(a.severity) - ORDER.indexOf(b.severity);
  if (by !== 0) return by < 0 ? a : b;
  return (a.reserve ?? Number.POSITIVE_INFINITY) <= (b.reserve ?? Number.POSITIVE_INFINITY) ? a : b;
}

/** Lowest marks of one element at the slider and over everything. Targets stand on the ground's column. */
function marks(evaluation: Evaluation, findings: readonly Finding[]) {
  let here: ReserveMark | null = null;
  let worst: ReserveMark | null = null;
  for (const finding of findings) {
    worst = worse(worst, { finding: finding.id, severity: finding.severity, reserve: finding.reserve?.value ?? null });
    const row = evaluation.rows[finding.row];
    if (!row) continue;
    const slider = evaluation.columns - 1;
    const number = evaluation.reserves[finding.row * evaluation.columns + slider] ?? Number.NaN;
    const perCase = row.check.perCase;
    here = worse(here, {
      finding: finding.id,
      severity: perCase ? severityAt(evaluation, finding, row, slider) : finding.severity,
      reserve: finding.reserve === null || Number.isNaN(number) ? null : number,
    });
  }
  return { reserveHere: here, worst };
}

/** Keys of the address of an element of the path: "/path/stages/chain-1" has three, with an empty one before the first stroke. */
const ELEMENT_KEYS = 4;

/** The element that an address stands at or below. */
function elementOf(address: string): string {
  let end = -1;
  for (let k = 0; k < ELEMENT_KEYS; k += 1) {
    end = address.indexOf('/', end + 1);
    if (end < 0) return address;
  }
  return address.slice(0, end);
}

/** Findings by the element that they stand at or below. */
function byElement(findings: readonly Finding[]): (address: string) => readonly Finding[] {
  const groups = new Map<string, Finding[]>();
  for (const finding of findings) {
    const element = elementOf(finding.address);
    const group = groups.get(element);
    if (group) group.push(finding);
    else groups.set(element, [finding]);
  }
  return (address) => groups.get(address) ?? [];
}

/** Columns of the path, from engine to ground. */
export function pathOf(evaluation: Evaluation, findings: readonly Finding[]): PathElement[] {
  const { model } = evaluation;
  const of = (read: (result: CornerResult) => number | null | undefined) => spreadOf(evaluation, read);
  const gear = Number(evaluation.here.gear) - 1;
  const at = byElement(findings);
  const engine: PathElement = {
    address: '/brief/engine',
    kind: 'engine',
    name: 'Engine',
    teeth: null,
    ratio: null,
    here: {
      ...NOTHING,
      angularSpeed: of((r) => r.atSlider?.point.engineSpeed),
      torque: of((r) => r.atSlider?.point.engineTorque),
      power: of((r) => r.atSlider && r.atSlider.point.engineSpeed * r.atSlider.point.engineTorque),
    },
    ...marks(evaluation, []),
    facts: [],
  };
  const output = model.shafts[0];
  const shaft = (k: number) => ({
    ...NOTHING,
    angularSpeed: of((r) => r.atSlider?.shafts[k]?.speed),
    torque: of((r) => r.atSlider?.shafts[k]?.torque),
    power: of((r) => r.atSlider?.shafts[k]?.power),
  });
  const gearbox: PathElement = {
    address: '/brief/engine/output',
    kind: 'gearbox',
    name: 'Gearbox',
    teeth: null,
    ratio: of((r) => r.scene.boxRatios[gear]),
    here: shaft(0),
    ...marks(evaluation, at(output?.address ?? '/brief/engine/output')),
    facts: [],
  };
  const rest = model.stages.flatMap((stage, k): PathElement[] => {
    const to = model.shafts[k + 1];
    const radius = (r: CornerResult) => r.scene.stages[k]?.pitchRadiusDriver ?? null;
    const line = stage.kind === 'chain' || stage.kind === 'belt';
    const middle: PathElement = {
      address: stage.address,
      kind: stage.kind,
      name: stage.name,
      teeth: teethText(stage),
      ratio: reuse(evaluation.cache, `ratio:${k}`, [model, evaluation.ends], () => of((r) => r.scene.stages[k]?.ratio)),
      here: {
        ...NOTHING,
        lineSpeed: line
          ? of((r) => {
              const [R, load] = [radius(r), r.atSlider?.shafts[k]];
              return R === null || !load ? null : load.speed * R;
            })
          : null,
        force: line
          ? of((r) => {
              const [R, load] = [radius(r), r.atSlider?.shafts[k]];
              return R === null || !load ? null : load.torque / R;
            })
          : null,
      },
      ...marks(evaluation, at(stage.address)),
      facts: stageFacts(evaluation, k),
    };
    const end: PathElement[] = to
      ? [
          {
            address: to.address,
            kind: 'shaft',
            name: to.name,
            teeth: null,
            ratio: null,
            here: shaft(k + 1),
            ...marks(evaluation, at(to.address)),
            facts: [],
          },
        ]
      : [];
    return [middle, ...end];
  });
  const last = model.shafts.length - 1;
  const ground: PathElement = {
    address: '/brief/wheel',
    kind: 'ground',
    name: 'Ground',
    teeth: null,
    ratio: null,
    here: {
      ...NOTHING,
      lineSpeed: of((r) => roadSpeed(r, last)),
      force: of((r) => groundPull(r, last)),
      power: of((r) => r.atSlider?.shafts[last]?.power),
    },
    ...marks(
      evaluation,
      findings.filter(({ address }) => address.startsWith('/brief/targets') || address.startsWith('/brief/wheel')),
    ),
    facts: reuse(evaluation.cache, 'wheel-facts', [model, evaluation.ends], () => wheelFacts(evaluation)),
  };
  return [engine, gearbox, ...rest, ground];
}

function roadSpeed(r: CornerResult, last: number): number | null {
  const speed = r.atSlider?.shafts[last]?.speed;
  return speed === undefined || r.scene.rollOut === null ? null : (speed / (2 * Math.PI)) * r.scene.rollOut;
}

function groundPull(r: CornerResult, last: number): number | null {
  const torque = r.atSlider?.shafts[last]?.torque;
  return torque === undefined || r.scene.rollOut === null ? null : (torque * 2 * Math.PI) / r.scene.rollOut;
}

/** Road speed of each gear from idle to redline; empty when the roll-out or the engine's speeds are not known. */
export function gearSpans(evaluation: Evaluation): readonly GearSpan[] {
  return reuse(evaluation.cache, 'gear-spans', [evaluation.model, evaluation.ends], () => spansOf(evaluation));
}

function spansOf(evaluation: Evaluation): GearSpan[] {
  const { model, middle } = evaluation;
  if (!middle.scene.engine || middle.scene.rollOut === null) return [];
  return model.engine.gears.flatMap((_, k): GearSpan[] => {
    const at = (speed: 'idle' | 'redline') =>
      spreadOf(evaluation, ({ scene }) => {
        const ratio = scene.overall[k];
        return scene.engine && scene.rollOut !== null && ratio !== undefined
          ? ((scene.engine[speed] / ratio) * scene.rollOut) / (2 * Math.PI)
          : null;
      });
    const overall = spreadOf(evaluation, ({ scene }) => scene.overall[k]);
    const [low, high] = [at('idle'), at('redline')];
    return overall && low && high
      ? [{ id: String(k + 1), name: ordinal(k + 1), overall, speedAtIdle: low, speedAtRedline: high }]
      : [];
  });
}

/** Cases that the slider does not move. */
function standingCasesOf(evaluation: Evaluation): LoadCase[] {
  const last = evaluation.model.shafts.length - 1;
  return evaluation.middle.scene.cases.flatMap((load, c): LoadCase[] => {
    const read = (pick: (r: CornerResult) => number | null | undefined) =>
      spreadOf(evaluation, pick) ?? { value: Number.NaN, lo: Number.NaN, hi: Number.NaN };
    return [
      {
        id: load.point.id,
        name: load.point.name,
        gear: String(load.point.gear + 1),
        engineSpeed: read((r) => r.scene.cases[c]?.point.engineSpeed),
        engineTorque: read((r) => r.scene.cases[c]?.point.engineTorque),
        roadSpeed: read((r) => {
          const speed = r.scene.cases[c]?.shafts[last]?.speed;
          return speed === undefined || r.scene.rollOut === null ? null : (speed / (2 * Math.PI)) * r.scene.rollOut;
        }),
        kind: load.point.kind,
        capped: load.point.capped,
        torques: load.shafts.map(({ torque }) => torque),
      },
    ];
  });
}

/** The standing cases, then the slider. */
export function loadCases(evaluation: Evaluation): LoadCase[] {
  const { cache, model, ends } = evaluation;
  const standing = reuse(cache, 'standing-cases', [model, ends], () => standingCasesOf(evaluation));
  const none = { value: Number.NaN, lo: Number.NaN, hi: Number.NaN };
  return [
    ...standing,
    {
      id: 'here',
      name: 'at the slider',
      gear: evaluation.here.gear,
      engineSpeed: spreadOf(evaluation, (r) => r.atSlider?.point.engineSpeed) ?? none,
      engineTorque: spreadOf(evaluation, (r) => r.atSlider?.point.engineTorque) ?? none,
      roadSpeed: { value: evaluation.here.roadSpeed, lo: evaluation.here.roadSpeed, hi: evaluation.here.roadSpeed },
      kind: 'steady',
      capped: null,
      torques: evaluation.middle.atSlider?.shafts.map(({ torque }) => torque) ?? [],
    },
  ];
}
