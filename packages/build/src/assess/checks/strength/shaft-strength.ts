import { shaftFatigue } from '@oddwheel/mechanics/shaft/fatigue';
import { shaftYield } from '@oddwheel/mechanics/shaft/yield';
import { type AtPlace, fatigueUse, greatestAt, type Place, yieldUse } from '../../strength/shaft-places.ts';
import type { Check, Scene } from '../check.ts';
import { onSolved, shaftSubjects } from './shafts.ts';

/** Loads below this part of what a section bears are rounding. */
const NOTHING = 1e-6;
const LOADED = 'shaft on its bearings under this case';

/** ", softened by the weld at rib" */
const softened = ({ softenedBy, name }: Place): string =>
  softenedBy === null ? '' : `, softened by ${softenedBy === name ? 'its heat' : softenedBy}`;

/** "373 N·m of torque and 60 N·m of bending at keyway of sprocket 30, 30 mm thick". */
function loadedAt({ place, forces }: AtPlace, { show }: Scene): string {
  return `${show('torque', Math.abs(forces.torque))} of torque and ${show('torque', forces.bending)} of bending at ${place.name}, where ${show('length', place.diameter)} are left${softened(place)}`;
}

/** The shaft keeps its shape under every peak, rare ones among them. */
export const shaftYields: Check = {
  id: 'shaft.yield',
  title: 'shaft bending for good',
  consequence: 'loses drive',
  wanted: {
    reserve: 1.25,
    from: 'Vidosic, in Machine Elements in Mechanical Design (Mott): 1.25 to 2 for ductile steel by how well loads are known; the peaks hold their shock; from memory',
  },
  atWorst: 'fails',
  perCase: true,
  rare: true,
  subjects: shaftSubjects,
  run: onSolved(({ solution, places, uses }, scene) => {
    const worst = greatestAt(places, solution, yieldUse);
    if (!worst || yieldUse(worst.place, worst.forces) < NOTHING) return null;
    const { place, forces } = worst;
    const input = {
      diameter: place.diameter,
      bore: place.bore,
      bending: forces.bending,
      torque: Math.abs(forces.torque),
      axial: Math.abs(forces.axial),
      notchBending: 1,
      notchTorsion: 1,
      yieldStrength: place.yielding,
    };
    const output = shaftYield.run(input);
    const { show } = scene;
    return {
      kind: 'measured',
      demand: { name: 'stress', value: output.stress, kind: 'pressure', use: 'pressure' },
      capacity: { name: 'yield strength', value: place.yielding, kind: 'pressure', use: 'pressure' },
      reserve: output.reserve,
      says: () =>
        `${loadedAt(worst, scene)}: ${show('pressure', output.stress)} of stress, and its steel yields at ${show('pressure', place.yielding)}.`,
      uses,
      used: () => [
        {
          method: shaftYield,
          input,
          output,
          origins: {
            diameter: place.address,
            bending: LOADED,
            torque: LOADED,
            axial: LOADED,
            notchBending: 'ductile steel: a notch evens out at the first load',
            notchTorsion: 'ductile steel: a notch evens out at the first load',
            yieldStrength: place.origins.yieldStrength ?? '',
          },
        },
      ],
    };
  }),
};

/** The shaft lasts for ever at full throttle in every gear. One that does not may still outlast its duty. */
export const shaftEndures: Check = {
  id: 'shaft.fatigue',
  title: 'shaft lasting for ever',
  consequence: 'loses drive',
  wanted: { reserve: 1.3, from: 'stated default of this project; the reliability asked for is in the endurance limit' },
  atWorst: 'thin',
  perCase: true,
  subjects: shaftSubjects,
  run: onSolved(({ solution, places, uses }, scene) => {
    const { criterion } = scene.model.loads;
    const use = fatigueUse(criterion);
    const worst = greatestAt(places, solution, use);
    if (!worst || use(worst.place, worst.forces) < NOTHING) return null;
    const { place, forces } = worst;
    const input = {
      diameter: place.diameter,
      bore: place.bore,
      bendingSwing: forces.bending,
      bendingMean: 0,
      torqueSwing: 0,
      torqueMean: Math.abs(forces.torque),
      notchBending: place.bending,
      notchTorsion: place.torsion,
      endurance: place.endurance,
      tensile: place.tensile,
      yieldStrength: place.yielding,
      criterion,
    };
    const output = shaftFatigue.run(input);
    const { show } = scene;
    return {
      kind: 'measured',
      demand: { name: 'stress that swings', value: output.swing, kind: 'pressure', use: 'pressure' },
      capacity: { name: 'endurance limit there', value: place.endurance, kind: 'pressure', use: 'pressure' },
      reserve: output.reserve,
      says: () =>
        `${loadedAt(worst, scene)}: ${show('pressure', output.swing)} swing with every turn on ${show('pressure', output.mean)} of steady stress; ${show('pressure', place.endurance)} alone would be borne for ever.${output.reserve < 1 ? ' It may break in time: see how long it lasts under the duty.' : ''}`,
      uses,
      used: () => [
        ...place.used,
        {
          method: shaftFatigue,
          input,
          output,
          origins: {
            ...place.origins,
            bendingSwing: LOADED,
            bendingMean: 'a turning shaft sees its bending swing',
            torqueSwing: 'full throttle held',
            torqueMean: LOADED,
            criterion: '/brief/loads/criterion',
          },
        },
      ],
    };
  }),
};
