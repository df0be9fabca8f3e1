import { chainIsoRating } from '@oddwheel/mechanics/chain/iso-rating';
import { chainJointPressure } from '@oddwheel/mechanics/chain/joint-pressure';
import { chainPowerRating } from '@oddwheel/mechanics/chain/power-rating';
import { chainWearLife } from '@oddwheel/mechanics/chain/wear-life';
import { CHAIN_WEAR } from '@oddwheel/tables/chain-oil';
import { CHAIN_SERVICE } from '@oddwheel/tables/chain-service';
import { rowInSi, sourceOf } from '@oddwheel/tables/table';
import type { Used } from '../../geometry/types.ts';
import type { Check, Outcome, Scene } from '../check.ts';
import { measured } from '../measured.ts';
import { binsOf, type ChainAt, chainSubjects, dutyNotTyped, dutyOr, onChain, pullUses, usedPull } from './chains.ts';

const RATED_TIME = 15000 * 3600;
const service = (key: string) => rowInSi(CHAIN_SERVICE, key);

/** What a size carries for 15 000 h at one speed of its smaller sprocket, with the method that gives it. */
function ratingAt({ stage, row, strands, family }: ChainAt, speed: number): Used {
  const teeth = Math.min(stage.teeth.driver, stage.teeth.driven);
  const { factor: strandFactor = Number.NaN } = service(`strands-${strands}`);
  const shared = { pitch: stage.size.pitch, teeth, speed, strandFactor };
  const origins = {
    pitch: `chain-sizes/${stage.size.key}`,
    teeth: `${stage.address}/teeth`,
    speed: 'speed carried through the path',
    strandFactor: `chain-service/strands-${strands}`,
  };
  if (family === 'ISO B' && row.dynamicStrength !== undefined) {
    const input = { ...shared, dynamicStrength: row.dynamicStrength };
    return {
      method: chainIsoRating,
      input,
      output: chainIsoRating.run(input),
      origins: { ...origins, dynamicStrength: `chain-sizes/${stage.size.key}` },
    };
  }
  const special = { '25': '25', '04C': '25', '35': '35', '06C': '35', '41': '41', '085': '41' }[stage.size.key];
  const from = special === undefined ? 'other-sizes' : `size-${special}`;
  const { plates = Number.NaN, bushes = Number.NaN } = service(from);
  const input = { ...shared, plateConstant: plates, bushConstant: bushes };
  return {
    method: chainPowerRating,
    input,
    output: chainPowerRating.run(input),
    origins: { ...origins, plateConstant: `chain-service/${from}`, bushConstant: `chain-service/${from}` },
  };
}

/** Service factor of the engine by its cylinders. */
const serviceRow = (scene: Scene): string =>
  (scene.model.engine.cylinders ?? 1) >= 6 ? 'engine-of-six' : 'engine-of-fewer';

/** Plates, rollers and bushes against the duty of this build; the industrial rating stands beside. */
export const chainLasts: Check = {
  id: 'chain.rating',
  title: 'plates and rollers over the duty',
  consequence: 'throws parts',
  wanted: { reserve: 1, from: 'the ratings hold the reserve themselves' },
  atWorst: 'thin',
  perCase: false,
  onRoad: true,
  subjects: chainSubjects,
  run: onChain((at, scene) => {
    const { stage, family, row } = at;
    // Motorcycle chains are rated by their strength alone.
    if (family === 'motorcycle' || (family === 'ISO B' && row.dynamicStrength === undefined)) return null;
    const duty = dutyOr(scene.duty());
    if ('kind' in duty) return duty;
    const from = serviceRow(scene);
    const factor = service(from).factor ?? Number.NaN;
    const smaller = stage.teeth.driver <= stage.teeth.driven ? 1 : stage.teeth.driver / stage.teeth.driven;
    const bins = binsOf(at, duty).filter(({ power }) => power > 0);
    if (bins.length === 0) return null;
    const rated = bins.map((bin) => {
      const used = ratingAt(at, bin.driverSpeed * smaller);
      const asked = bin.power * factor;
      return {
        bin,
        used,
        asked,
        plates: Number(used.output.plates) / asked,
        bushes: Number(used.output.bushes) / asked,
      };
    });
    const [first, ...rest] = rated;
    if (!first) return null;
    const weakest = rest.reduce((worst, one) => (one.plates < worst.plates ? one : worst), first);
    const hardest = rest.reduce((worst, one) => (one.bushes < worst.bushes ? one : worst), first);
    // Blows wear rollers out by power to the 2.5 times time.
    const used = rated.reduce(
      (sum, { bin, bushes }) => sum + ((bin.ofTime * duty.time) / RATED_TIME) * bushes ** -2.5,
      0,
    );
    const blows = used ** (-1 / 2.5);
    const byPlates = weakest.plates <= blows;
    const { bin, asked, used: rating } = byPlates ? weakest : hardest;
    const reserve = byPlates ? weakest.plates : blows;
    const { show } = scene;
    if (duty.from === 'usual' && reserve < 1)
      return {
        kind: 'unknown',
        missing: [
          dutyNotTyped(
            `by a usual spectrum its ${byPlates ? 'plates' : 'rollers'} bear ${show('percent', reserve)} of what comes`,
          ),
        ],
      };
    return measured(
      { name: 'carried, with its factor', value: asked, kind: 'power', use: 'power' },
      { name: byPlates ? 'plates bear' : 'rollers bear', value: asked * reserve, kind: 'power', use: 'power' },
      () =>
        `${byPlates ? 'Its plates never tire at' : 'Its rollers last your duty at'} ${show('power', asked * reserve)} where “${bin.name}” asks for ${show('power', asked)}, engine factor ${show('number', factor)} in it; the industrial rating there, for 15 000 h, is ${show('power', Number(rating.output.rating))}.`,
      pullUses(at, duty),
      () => [rating],
      {
        capacity: byPlates ? 'above' : 'above, blows summed over the duty',
        demand: `power through the path, chain-service/${from}`,
      },
    );
  }),
};

/** Elongation at which a chain is worn out. */
const limitOf = ({ stage }: ChainAt): number => Math.min(0.03, 2 / Math.max(stage.teeth.driver, stage.teeth.driven));

const SPREAD = Math.sqrt(5);

/** Wear of the joints until the chain is worn out, against the distance that is wanted. */
export const chainWears: Check = {
  id: 'chain.wear',
  title: 'wear of the chain',
  consequence: 'wears out',
  wanted: { reserve: SPREAD, from: 'wear numbers spread five times: the short end of the range must last too' },
  atWorst: 'thin',
  perCase: false,
  onRoad: true,
  subjects: chainSubjects,
  run: onChain((at, scene) => {
    const { stage, row, strands, chain, k } = at;
    const duty = dutyOr(scene.duty());
    if ('kind' in duty) return duty;
    const { bearingArea, pinDiameter } = row;
    if (bearingArea === undefined || pinDiameter === undefined) return null;
    if (stage.oiled === 'sealed rings')
      return unknownOil(
        stage.address,
        'how far its sealed rings last, which only its maker can say: it wears little until a ring fails, then fast',
      );
    const mean = binsOf(at, duty).reduce((sum, bin) => sum + bin.ofDistance * bin.torque, 0);
    if (!(mean > 0)) return null;
    const pulled = usedPull(at, mean);
    const pressIn = { pull: Number(pulled.output.pull), bearingArea, strands };
    const press = chainJointPressure.run(pressIn);
    const links = stage.links ?? chain.linksNeeded;
    const turns = duty.turns[k] ?? Number.NaN;
    const lasting = (wear: number) => {
      const input = {
        wear,
        pressure: press.pressure,
        pinDiameter,
        pitch: stage.size.pitch,
        teethDriver: stage.teeth.driver,
        teethDriven: stage.teeth.driven,
        links,
        limit: limitOf(at),
      };
      const output = chainWearLife.run(input);
      return { input, output, distance: (output.turns / turns) * duty.distance };
    };
    const best = rowInSi(CHAIN_WEAR, stage.oiled ?? 'oil bath or stream').low ?? Number.NaN;
    const worst = rowInSi(CHAIN_WEAR, stage.oiled ?? 'dirty or seldom').high ?? Number.NaN;
    const { show } = scene;
    const [long, short] = [lasting(best).distance, lasting(worst).distance];
    const range = `${show('distance', short)} to ${show('distance', long)}`;
    if (stage.oiled === null && short < duty.distance && long >= duty.distance)
      return unknownOil(stage.address, `how it is oiled (it lasts ${range}, from dirty to an oil bath)`);
    const middle = lasting(Math.sqrt(best * worst));
    if (duty.from === 'usual' && middle.distance < SPREAD * duty.distance)
      return { kind: 'unknown', missing: [dutyNotTyped(`by a usual spectrum it lasts ${range}`)] };
    const wearRow = stage.oiled ?? 'oil bath or stream';
    return measured(
      { name: 'wanted', value: duty.distance, kind: 'length', use: 'distance' },
      { name: 'lasts, middle of its range', value: middle.distance, kind: 'length', use: 'distance' },
      () =>
        `${stage.oiled === null ? 'However it is oiled it' : `Oiled so (${stage.oiled}) it`} lasts ${range} of your duty; you want ${show('distance', duty.distance)}. Mean pressure in its joints ${show('pressure', press.pressure)}; it is worn out at ${show('percent', limitOf(at))}.`,
      pullUses(at, duty),
      (): readonly Used[] => [
        pulled,
        {
          method: chainJointPressure,
          input: pressIn,
          output: press,
          origins: { pull: 'above', bearingArea: `chain-sizes/${stage.size.key}`, strands: stage.strands.address },
        },
        {
          method: chainWearLife,
          input: middle.input,
          output: middle.output,
          origins: {
            wear: `chain-wear/${wearRow}, middle: ${sourceOf(CHAIN_WEAR, wearRow)}`,
            pressure: 'above',
            pinDiameter: `chain-sizes/${stage.size.key}`,
            pitch: `chain-sizes/${stage.size.key}`,
            teethDriver: `${stage.address}/teeth/driver`,
            teethDriven: `${stage.address}/teeth/driven`,
            links: stage.links === null ? 'links that the centres ask for' : `${stage.address}/links`,
            limit: 'chain-limits/elongation-adjustable',
          },
        },
      ],
      { capacity: 'turns above over the turns in a length of road', demand: '/brief/duty/distance' },
    );
  }),
};

const unknownOil = (stage: string, says: string): Outcome => ({
  kind: 'unknown',
  missing: [{ address: `${stage}/oiled`, says }],
});
