/** Drawings of the demos and of a build with every family of stages: true chains, and lettering that can be read. */
import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { openSession } from '@oddwheel/build/session';
import type { Drawing, Element } from '@oddwheel/sheets/drawing';
import { overlap } from '@oddwheel/sheets/plane';
import { dimensionTextBox, textBoxes } from '@oddwheel/sheets/view';
import { layoutViews } from '@oddwheel/sheets/views';
import { describe, expect, test } from 'vitest';

const BUILDS = [
  'examples/marsh-hauler/build.json',
  'examples/hill-trike/build.json',
  'examples/rail-cart/build.json',
  'proof/builds/every-family.json',
];

function open(file: string) {
  const opened = openSession(readFileSync(fileURLToPath(new URL(`../../${file}`, import.meta.url)), 'utf8'));
  if (!opened.ok) throw new Error(JSON.stringify(opened.faults));
  return opened.session;
}

function draw(file: string, textHeight: number, armAngle = 0): Drawing {
  const { evaluation, assessment } = open(file);
  const found = { findings: assessment.findings, clearance: null };
  return layoutViews(evaluation.middle.scene, found, { textHeight, armAngle, projection: 'third angle' });
}

const elements = (drawing: Drawing): readonly Element[] =>
  drawing.views.flatMap((view) => [...view.parts, ...view.notes].flatMap((part) => part.elements));

describe.each(BUILDS)('%s', (file) => {
  test.each([14, 22, 32])('no text of a dimension stands on other lettering, %i mm high', (height) => {
    for (const view of draw(file, height).views) {
      const dimensions = view.notes.flatMap((note) =>
        note.elements.flatMap((element) => (element.kind === 'dimension' ? [dimensionTextBox(element, height)] : [])),
      );
      const all = textBoxes(view.notes, height);
      for (const box of dimensions)
        expect(
          all.filter((other) => overlap(box, other)),
          `${view.title}: ${JSON.stringify(box)}`,
        ).toHaveLength(1);
    }
  });

  test('nothing is drawn at a place that is no number', () => {
    expect(JSON.stringify(draw(file, 22))).not.toMatch(/null,null|NaN/);
    for (const { bounds } of draw(file, 22).views) expect(Object.values(bounds).every(Number.isFinite)).toBe(true);
  });

  test('a chain that reaches round is drawn as long as its links, to 2 in a thousand', () => {
    const { evaluation } = open(file);
    const drawing = draw(file, 22);
    for (const { stage, chain } of evaluation.middle.scene.stages) {
      if (stage.kind !== 'chain' || stage.links === null || !chain || chain.linksNeeded > stage.links) continue;
      const view = drawing.views.find(({ id }) => id === `along ${stage.address}`);
      const loop = view?.parts.flatMap((part) => part.elements).find((element) => element.kind === 'loop');
      if (loop?.kind !== 'loop') throw new Error(`${stage.address} is not drawn.`);
      expect(loop.pins).toHaveLength(stage.links);
      const length = loop.pins.reduce((sum, [x, y], k) => {
        const [nx, ny] = loop.pins[(k + 1) % loop.pins.length] ?? [x, y];
        return sum + Math.hypot(nx - x, ny - y);
      }, 0);
      expect(Math.abs(length / (stage.links * stage.size.pitch * 1000) - 1)).toBeLessThan(2e-3);
    }
  });

  test('every shaft, seat of a stage and stage of the path is drawn and can be chosen', () => {
    const { evaluation } = open(file);
    const { model } = evaluation.middle.scene;
    const drawn = new Set(draw(file, 22).views.flatMap((view) => view.parts.map(({ of }) => of)));
    for (const shaft of model.shafts) expect(drawn).toContain(shaft.address);
    for (const stage of model.stages)
      for (const [k, ref] of [stage.from, stage.to].entries()) {
        const seat = model.shafts[model.stages.indexOf(stage) + k]?.seats.find(({ id }) => id === ref.seat);
        expect(drawn).toContain(seat?.address);
      }
  });

  test('says each length once', () => {
    const texts = elements(draw(file, 22)).flatMap((element) =>
      element.kind === 'dimension' ? [JSON.stringify([element.text, element.measured])] : [],
    );
    expect(new Set(texts).size).toBe(texts.length);
  });
});

test('the arm carries its wheel up in the drawing', () => {
  const centre = (angle: number) =>
    draw('examples/marsh-hauler/build.json', 22, angle)
      .views.find(({ id }) => id === 'from the left')
      ?.parts.find(({ name }) => name === 'tyre')
      ?.elements.flatMap((element) => (element.kind === 'circle' ? [element.centre] : []))[0];
  // 653 mm of arm, drawn 47.6° down: up by 653 (sin 47.6° − sin 39.6°) = 66 mm at 8°.
  expect((centre((8 * Math.PI) / 180)?.[1] ?? 0) - (centre(0)?.[1] ?? 0)).toBeCloseTo(66, 0);
});
