import { splineCandidates } from '@oddwheel/mechanics/joint/spline-candidates';
import type { Check } from '../check.ts';
import { perModel } from '../per-model.ts';
import { needed, seatsWith, torqueSeatOf } from './seats.ts';

/** A spline that is off by more than this part of its module from every standard is of none of them. */
const NEAR = 0.08;
const TEETH = { least: 6, most: 100 };

/** Standards that a spline of unknown make may follow. */
export const hubStandard: Check = {
  id: 'hub.standard',
  title: 'standard of the spline',
  consequence: 'loses drive',
  wanted: { reserve: 1, from: 'ISO 4156, ANSI B92.1, DIN 5480 (from memory)' },
  atWorst: 'thin',
  perCase: false,
  subjects: seatsWith(({ torqueBy, spline }) => torqueBy === 'spline' && spline?.form === 'of unknown standard'),
  run: perModel(({ model, show }, subject) => {
    const found = torqueSeatOf(model, subject);
    const spline = found?.hub.spline;
    if (!found || !spline || spline.teeth < TEETH.least || spline.teeth > TEETH.most) return null;
    const at = `${found.hub.address}/spline`;
    const { outside, pin, over } = spline;
    const { name } = found.seat;
    const sizes = needed({ outside, pin, over }, at, {
      outside: `the outside diameter of the spline of ${name}`,
      pin: `the diameter of two pins that lie in the gaps of the spline of ${name}`,
      over: `the size over two pins in the spline of ${name}`,
    });
    if (!sizes.ok) return sizes.outcome;
    const input = { teeth: spline.teeth, ...sizes.of };
    const output = splineCandidates.run(input);
    const module = output.modules[0];
    const near = module !== undefined && output.misfit <= NEAR * module;
    const origins = { teeth: `${at}/teeth`, outside: `${at}/outside`, pin: `${at}/pin`, over: `${at}/over` };
    return {
      kind: 'plain',
      holds: near,
      says: () =>
        near
          ? `Nearest is ${output.nearest}, off by ${show('runOut', output.misfit)}; then ${output.others}. Try a part on before you rely on it.`
          : `It fits no standard that is known here${module === undefined ? '' : `; nearest is ${output.nearest}, off by ${show('runOut', output.misfit)}`}. Take hub and shaft from the same donor.`,
      uses: [],
      used: () => [{ method: splineCandidates, input, output, origins }],
    };
  }),
};
