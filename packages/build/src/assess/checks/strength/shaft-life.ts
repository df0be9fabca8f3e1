import { shaftLife } from '@oddwheel/mechanics/shaft/life';
import { type DutyStresses, dutySections, dutyStresses } from '../../strength/shaft-damage.ts';
import { placesOf } from '../../strength/shaft-places.ts';
import type { Check, Scene } from '../check.ts';
import { shaftIndex, shaftSubjects, shaftUses } from './shafts.ts';

/** Lives beyond this many duties are told in words. */
const ENDLESS = 1000;

function lifeAt({ place, swings, means, turns }: DutyStresses, criterion: Scene['model']['loads']['criterion']) {
  const input = {
    swings,
    means,
    turns,
    endurance: place.endurance,
    tensile: place.tensile,
    yieldStrength: place.yielding,
    criterion,
  };
  return { input, output: shaftLife.run(input) };
}

/** The shaft lasts the distance that the brief asks for, driven as the duty says. */
export const shaftLasts: Check = {
  id: 'shaft.life',
  title: 'life of the shaft',
  consequence: 'loses drive',
  wanted: {
    reserve: 3,
    from: 'FKM guideline for machine parts: a sum of damage of 0.3, as lives scatter that much; from memory',
  },
  atWorst: 'fails',
  perCase: false,
  onRoad: true,
  subjects: shaftSubjects,
  run: (scene, subject) => {
    const k = shaftIndex(scene.model, subject);
    const structure = scene.strength.shafts[k];
    if (!structure) return null;
    if (structure.missing.length > 0) return { kind: 'unknown', missing: structure.missing };
    const duty = scene.duty();
    if (!duty.ok) return { kind: 'unknown', missing: duty.missing };
    const sections = dutySections(scene, duty, k);
    if (!sections.ok) return { kind: 'unknown', missing: sections.missing };
    const { loads } = scene.model;
    const uses = [...duty.uses, ...shaftUses(structure)];
    const stressed = dutyStresses(placesOf(structure, scene.at, loads), sections.bins, duty, k);
    let worst: { readonly at: DutyStresses; readonly life: ReturnType<typeof lifeAt> } | null = null;
    for (const at of stressed) {
      const life = lifeAt(at, loads.criterion);
      if (!worst || life.output.reserve < worst.life.output.reserve) worst = { at, life };
    }
    if (!worst)
      return {
        kind: 'plain',
        holds: true,
        says: () => 'Nothing bends it over your duty.',
        uses,
        used: () => [],
      };
    const { place, steps } = worst.at;
    const { input, output } = worst.life;
    const { reserve, shares } = output;
    const { show } = scene;
    const distance = reserve * duty.distance;
    return {
      kind: 'measured',
      demand: { name: 'wanted', value: duty.distance, kind: 'length', use: 'distance' },
      capacity: { name: 'life', value: distance, kind: 'length', use: 'distance' },
      reserve,
      says: () => {
        const most = shares.indexOf(Math.max(...shares));
        const lasts =
          reserve > ENDLESS
            ? `It outlasts your duty of ${show('distance', duty.distance)} a thousand times over`
            : `It lasts ${show('distance', distance)} of your duty; you want ${show('distance', duty.distance)}`;
        return `${lasts}. It tires most at ${place.name}, where ${show('length', place.diameter)} are left, in “${steps[most] ?? ''}”.`;
      },
      uses,
      used: () => [
        ...place.used,
        {
          method: shaftLife,
          input,
          output,
          origins: {
            swings: 'bending in each step of the duty, with the fatigue factor above',
            means: 'torque in each step of the duty, with the fatigue factor above',
            turns: `${duty.origin}, over /brief/duty/distance`,
            endurance: 'above',
            tensile: place.origins.tensile ?? '',
            yieldStrength: place.origins.yieldStrength ?? '',
            criterion: '/brief/loads/criterion',
          },
        },
      ],
    };
  },
};
