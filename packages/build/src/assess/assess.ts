import { type Cache, reuse } from '../model/cache.ts';
import type { Model, Value } from '../model/model.ts';
import { recipeAt } from '../schema/describe.ts';
import { adjustmentOf } from './adjusters/adjustment.ts';
import { assemblyOf } from './assembly/assembly.ts';
import { placeSlider } from './cases.ts';
import { clearancesOf } from './clearance/clearance.ts';
import { type Ends, type Evaluation, evaluate } from './evaluation.ts';
import { findingsOf } from './findings.ts';
import { layoutOf } from './layout/layout.ts';
import { partsNeeded } from './parts.ts';
import { gearSpans, loadCases, pathOf } from './path.ts';
import { referenceRows } from './reference.ts';
import { roadOf } from './road/road.ts';
import { buildScene } from './scene.ts';
import { shaftBalance } from './strength/balance.ts';
import { turningPlay } from './strength/turning-play.ts';
import { standAssumed, strokeOf } from './stroke/stroke.ts';
import type { Assessment, Assumed, Finding, FindOut, Here, ShaftPlace } from './types.ts';
import { MIDDLE, moverOf } from './uncertainty.ts';

/** Where the slider is wanted; blank parts take a middle gear and the middle of its range. */
export interface WantedHere {
  readonly gear?: string | undefined;
  readonly roadSpeed?: number | undefined;
}

/**
 * Places the slider and assesses the model. Pure; with a cache it gives the same answer faster.
 * @param ends 'not yet' leaves the ends of uncertain inputs for later: the answer stands on their middle alone, and says so
 */
export function assess(
  model: Model,
  wanted: WantedHere,
  cache: Cache | null,
  ends: Ends = 'tried',
): { readonly assessment: Assessment; readonly evaluation: Evaluation } {
  const scene = buildScene(model, MIDDLE, cache);
  // Before the checks, which read what is kept here.
  clearancesOf(scene, cache);
  const { engine, rollOut, overall, show } = scene;
  const spans =
    engine && rollOut !== null
      ? overall.map((ratio, k) => {
          const speed = (crank: number) => ((crank / ratio) * rollOut) / (2 * Math.PI);
          return { id: String(k + 1), name: gearName(k), low: speed(engine.idle), high: speed(engine.redline) };
        })
      : [];
  const slider = placeSlider(wanted, spans, (speed) => show('speed', speed));
  const evaluation = evaluate(model, slider.here, cache, ends);
  const findings = findingsOf(evaluation);
  return { evaluation, assessment: write(evaluation, findings, slider.here, slider.note) };
}

const gearName = (k: number): string => ['1st', '2nd', '3rd'][k] ?? `${k + 1}th`;

function write(evaluation: Evaluation, findings: readonly Finding[], here: Here, hereNote: string | null): Assessment {
  const { model, middle } = evaluation;
  const loads = middle.scene.cases;
  const { show } = middle.scene;
  const stroke = reuse(evaluation.cache, 'stroke', [middle.scene], () => strokeOf(middle.scene));
  return {
    name: model.name,
    about: model.about,
    path: pathOf(evaluation, findings),
    gears: gearSpans(evaluation),
    cases: loadCases(evaluation),
    findings,
    ends: evaluation.ends,
    reserves: measuredReserves(evaluation, findings),
    assumed: reuse(evaluation.cache, 'assumed', [model, stroke], () => [
      ...assumedOf(model.values),
      ...standAssumed(stroke, show),
    ]),
    findOut: reuse(evaluation.cache, 'find-out', [model, findings], () => findOut(evaluation, findings)),
    closure:
      loads.length > 0
        ? {
            torque: Math.max(...loads.map((load) => load.torqueResidual)),
            power: Math.max(...loads.map((load) => load.powerResidual)),
            shafts: reuse(evaluation.cache, 'balance', [middle.scene], () => shaftBalance(middle.scene)),
          }
        : null,
    parts: reuse(evaluation.cache, 'parts', [model], () => partsNeeded(model)),
    reference: reuse(evaluation.cache, 'reference', [model, evaluation.ends], () => referenceRows(evaluation)),
    shafts: model.shafts.map(
      (shaft, k): ShaftPlace => ({
        address: shaft.address,
        name: shaft.name,
        origin: shaft.origin,
        direction: shaft.direction,
        sense: middle.scene.senses[k] ?? null,
        seats: shaft.seats.map(({ address, name, kind, at }) => ({ address, name, kind, at })),
      }),
    ),
    adjustment: adjustmentOf(model),
    assembly: assemblyOf(model),
    layout: layoutOf(middle.scene),
    clearance: clearancesOf(middle.scene, null),
    road: roadOf(evaluation),
    stroke,
    turning: reuse(evaluation.cache, 'turning', [middle.scene], () => turningPlay(middle.scene)),
    here,
    hereNote,
    units: model.units,
    notes: model.notes,
    pictures: model.pictures,
  };
}

/** Reserves of all rows in all cases; a finding without a number has none. */
function measuredReserves({ reserves, columns }: Evaluation, findings: readonly Finding[]): Float64Array {
  const out = reserves.slice();
  for (const { reserve, row } of findings)
    if (reserve === null) out.fill(Number.NaN, row * columns, (row + 1) * columns);
  return out;
}

/** Assumed values in the order of the path; blanks that stand on one unknown are told once, at the first of them. */
function assumedOf(values: readonly Value[]): Assumed[] {
  const found = new Map<string, { readonly first: Value; more: number }>();
  for (const value of values) {
    if (value.origin !== 'assumed') continue;
    const known = found.get(moverOf(value));
    if (known) known.more += 1;
    else found.set(moverOf(value), { first: value, more: 0 });
  }
  return [...found.values()].map(({ first: { address, name, text, source }, more }) => ({
    address,
    name,
    text,
    source: more > 0 ? `${source ?? ''}; taken alike for ${more} more` : (source ?? ''),
  }));
}

/** Uncertain inputs by how many findings hang on them; those that open findings first. */
function findOut(evaluation: Evaluation, findings: readonly Finding[]): FindOut[] {
  const missing = new Map<string, { readonly says: string; readonly findings: string[] }>();
  for (const finding of findings)
    for (const m of finding.missing) {
      const entry = missing.get(m.address) ?? { says: m.says, findings: [] };
      entry.findings.push(finding.id);
      missing.set(m.address, entry);
    }
  const blank = [...missing].map(
    ([address, m]): FindOut => ({
      address,
      name: m.says,
      text: 'blank',
      findings: m.findings,
      recipe: recipeAt(address),
    }),
  );
  const uncertain = evaluation.uncertain.flatMap((v): FindOut[] => {
    const settles = findings.filter((f) => f.dependsOn.includes(v.address)).map((f) => f.id);
    return settles.length > 0
      ? [{ address: v.address, name: v.name, text: v.text, findings: settles, recipe: v.recipe ?? '' }]
      : [];
  });
  return [...blank, ...uncertain].sort(
    (a, b) => b.findings.length - a.findings.length || (a.address < b.address ? -1 : 1),
  );
}
