import type { Source } from '@oddwheel/mechanics/method/method';
import type { ProofCase } from './case.ts';
import { khurmi, shigley } from './sources.ts';

type Published = Source & { readonly address?: string };

const turningAndBoring: Published = {
  title: 'Turning and Boring (F. D. Jones)',
  at: 'change gears for metric pitches: 3 mm lead, screw constant 6',
  how: 'read',
  address: 'bitlit.ru/page/en/franklin-day-jones/turning-and-boring, page 93',
};

const machineShop: Published = {
  title: 'Modern Machine-Shop Practice (J. Rose)',
  at: 'compound wheels, second example: 36 ÷ 48 × 66 ÷ 18',
  how: 'read',
  address: 'bitlit.ru/page/en/joshua-rose/modern-machine-shop-practice-volumes-i-and-ii/632',
};

const constructionTools: Published = {
  title: 'Construction Tools: Selection of Simple-Gear Wheels',
  at: 'screws of 4 and of 1½ per inch with a lathe-screw of 2',
  how: 'read',
  address: 'chestofbooks.com/crafts/mechanics/Construction-Tools/Selection-Of-Simple-Gear-Wheels.html',
};

const millingTreatise: Published = {
  title: 'Practical Treatise on Milling and Milling Machines',
  at: 'page 63: gears of 56, 40, 44 and 100 teeth give a lead of 6.160 in, of 10 in with equal gears',
  how: 'read',
  address: 'en.wikisource.org, Page:Practical Treatise on Milling and Milling Machines.djvu/69',
};

const hunting: Published = {
  title: 'Hunting Tooth Frequency, a glossary',
  at: 'examples 1 to 3: 23 and 67, 20 and 60, 18 and 54 teeth',
  how: 'read',
  address: 'vibromera.eu/glossary/hunting-tooth-frequency',
};

const skidPatches: Published = {
  title: 'Skid patches, a note for riders of one gear',
  at: '48×20: 5 places; 43×18: 18; 42×16: 8',
  how: 'read',
  address: 'edifyingnewsworld.com/skid-patch-calculator',
};

const axleThread: Published = {
  title: 'A thread on axle ratios and speeds',
  at: '41/10 and 43/11; 3000 rpm, radius 0.277 m: 76.3 km/h',
  how: 'read',
  address: 'forum.fsoptk.pl, topic 23021',
};

const nearest = (
  id: string,
  given: ProofCase['given'],
  drivers: readonly number[],
  drivens: readonly number[],
  source: Published,
  note?: string,
): ProofCase => ({
  method: 'ratio.nearestTrain',
  id,
  given,
  expect: { drivers: { value: drivers, within: { abs: 0 } }, drivens: { value: drivens, within: { abs: 0 } } },
  source,
  kind: 'published-example',
  ...(note === undefined ? {} : { note }),
});

const wear = (
  id: string,
  teethDriver: number,
  teethDriven: number,
  expect: ProofCase['expect'],
  source: Published,
): ProofCase => ({
  method: 'ratio.pairWear',
  id,
  given: { teethDriver, teethDriven },
  expect,
  source,
  kind: 'published-example',
});

/** Gear trains, change gears, wear cycles and road speeds. */
export const TRAIN_CASES: readonly ProofCase[] = [
  nearest(
    'train-metric-thread-jones',
    { wanted: 127 / 90, leastTeeth: 20, mostTeeth: 127 },
    [90],
    [127],
    turningAndBoring,
    'A gear of 127 teeth is always in the train, since five inches are 127 mm.',
  ),
  nearest('train-transposing-120-127', { wanted: 25.4 / 8 / 3, leastTeeth: 24, mostTeeth: 127 }, [120], [127], {
    title: 'Change gears, notes on metric and inch transposing gears',
    at: 'lead screw of 8 threads per inch to 3 mm: 120 / 127',
    how: 'read',
    address: 'c-n-c.cz/download/file.php?id=58970',
  }),
  nearest('train-transposing-100-127', { wanted: 1.27, leastTeeth: 12, mostTeeth: 127 }, [100], [127], {
    title: 'Metric thread transposing gears, a setup reference',
    at: 'section 1: the most common compound, 100 / 127',
    how: 'read',
    address: 'industrialmonitordirect.com/blogs/knowledgebase',
  }),
  nearest('train-pi-355-113', { wanted: Math.PI, leastTeeth: 100, mostTeeth: 399 }, [113], [355], {
    title: 'Stern-Brocot trees and their applications (M. Neacsu)',
    at: 'introduction: π as 355/113',
    how: 'read',
    address: 'neacsu.net/docs/programming/stern-brocot-trees',
  }),
  nearest('train-1-234', { wanted: 1.234, leastTeeth: 12, mostTeeth: 21 }, [17], [21], {
    title: 'Stern-Brocot Tree and Gearing',
    at: 'first example: 1.234 by 21 and 17 teeth',
    how: 'read',
    address: 'engineeringcommons.org/stern-brocot-tree',
  }),
  nearest('train-brocot-191-23', { wanted: 191 / 23, leastTeeth: 6, mostTeeth: 190 }, [13], [108], {
    title: 'On the Teeth of Wheels (B. Hayes)',
    at: 'Brocot’s own problem, 23 minutes to 191 minutes; the task read, its answer recalled',
    how: 'memory',
    address: 'americanscientist.org, July-August 2000',
  }),
  nearest('train-norton-180', { wanted: 180, pairs: 3, leastTeeth: 14, mostTeeth: 84 }, [14, 14, 14], [70, 84, 84], {
    title: 'Design of Machinery (R. L. Norton)',
    at: 'example 9-2, exact 180 to 1 in three sets',
    how: 'memory',
  }),
  nearest(
    'train-shigley-30',
    { wanted: 30, pairs: 2, leastTeeth: 16, mostTeeth: 96 },
    [16, 16],
    [80, 96],
    shigley('memory', '9th', 'Example 13-4, exact 30 to 1 by 16, 96, 16 and 80 teeth'),
  ),
  nearest('train-lathe-4-per-inch', { wanted: 2, leastTeeth: 20, mostTeeth: 130 }, [20], [40], constructionTools),
  wear('wear-23-67', 23, 67, { commonFactor: { value: 1 }, driverTurns: { value: 67 } }, hunting),
  wear('wear-20-60', 20, 60, { commonFactor: { value: 20 }, driverTurns: { value: 3 } }, hunting),
  wear('wear-18-54', 18, 54, { commonFactor: { value: 18 } }, hunting),
  wear(
    'wear-11-30',
    11,
    30,
    { commonFactor: { value: 1 }, drivenTurns: { value: 11 }, driverTurns: { value: 30 } },
    {
      title: 'Gear Technology Solutions',
      at: 'page 96, figure 4: hunting ratio 11x30, eleven turns of the gear',
      how: 'read',
      address: 'gleason.com/gear-technology-solutions, page 96',
    },
  ),
  wear('wear-48-20', 48, 20, { drivenMet: { value: 5 } }, skidPatches),
  wear('wear-43-18', 43, 18, { drivenMet: { value: 18 } }, skidPatches),
  wear('wear-42-16', 42, 16, { drivenMet: { value: 8 } }, skidPatches),
  wear(
    'wear-48-16',
    48,
    16,
    { commonFactor: { value: 16 }, drivenMet: { value: 1 } },
    {
      title: 'Places of a tyre that wear in a skid, with the common factor of both wheels',
      at: 'example 48/16: common factor 16, one place',
      how: 'read',
      address: 'cal6.calculator.city/skid-patch-calculator',
    },
  ),
  {
    method: 'ratio.overall',
    id: 'ratio-overall-rose',
    given: { ratios: [36 / 48, 66 / 18] },
    expect: { overall: { value: 2.75, within: { rel: 1e-12 } } },
    source: machineShop,
    kind: 'published-example',
    note: 'Times the pitch of the lead screw, 4, this cuts 11 threads.',
  },
  {
    method: 'ratio.overall',
    id: 'ratio-overall-milling',
    given: { ratios: [56 / 40, 44 / 100] },
    expect: { overall: { value: 0.616, within: { rel: 1e-12 } } },
    source: millingTreatise,
    kind: 'published-example',
  },
  {
    method: 'ratio.overall',
    id: 'ratio-overall-khurmi-13-1',
    given: { ratios: [50 / 20, 75 / 25, 65 / 26] },
    expect: { overall: { value: 18.75, within: { rel: 1e-12 } } },
    source: khurmi('Example 13.1, p. 432: 975 rpm to 52 rpm', 'ch13'),
    kind: 'published-example',
  },
  {
    method: 'ratio.stage',
    id: 'ratio-stage-lathe',
    given: { teethDriver: 40, teethDriven: 30 },
    expect: { ratio: { value: 0.75, within: { abs: 0 } } },
    source: constructionTools,
    kind: 'published-example',
  },
  {
    method: 'ratio.stage',
    id: 'ratio-stage-jones',
    given: { teethDriver: 90, teethDriven: 127 },
    expect: { ratio: { value: 25.4 / 3 / 6, within: { rel: 1e-12 } } },
    source: turningAndBoring,
    kind: 'published-example',
  },
  {
    method: 'ratio.stage',
    id: 'ratio-stage-axle',
    given: { teethDriver: 11, teethDriven: 43 },
    expect: { ratio: { value: 3.91, within: { abs: 0.005 } } },
    source: axleThread,
    kind: 'published-example',
  },
  {
    method: 'ratio.forSpeed',
    id: 'ratio-for-speed-axle',
    given: { engineSpeed: '3000 rpm', roadSpeed: '76.3 km/h', rollOut: '1.74044 m' },
    expect: { path: { value: 4.1, within: { rel: 0.005 } } },
    source: axleThread,
    kind: 'published-example',
  },
  {
    method: 'ratio.forSpeed',
    id: 'ratio-for-speed-handout',
    given: { engineSpeed: '2242 rpm', roadSpeed: '65 mph', rollOut: '94.24778 in' },
    expect: { overall: { value: 3.08, within: { rel: 0.001 } } },
    source: {
      title: 'A gear-ratio handout',
      at: 'rpm = mph × ratio × 336 / diameter: 65 mph, 3.08, 30 in',
      how: 'read',
      address: 'docslib.org/doc/13816045',
    },
    kind: 'published-example',
  },
  {
    method: 'ratio.forSpeed',
    id: 'ratio-for-speed-55-mph',
    given: { engineSpeed: '4800 rpm', roadSpeed: '55 mph', rollOut: '62.83185 in' },
    expect: { path: { value: 5.2, within: { rel: 0.005 } } },
    source: {
      title: 'How to calculate engine speed, an article',
      at: 'tyre radius 10 in, 55 mph, ratio 5.2: about 4800 rpm',
      how: 'read',
      address: 'speedyauto.cc/autoknowledge, 201231',
    },
    kind: 'published-example',
  },
  {
    method: 'ratio.forSpeed',
    id: 'ratio-for-speed-wong-3-1',
    given: { engineSpeed: '3500 rpm', roadSpeed: '98.7 km/h', rollOut: '2.0112476 m' },
    expect: { path: { value: 4.28, within: { rel: 0.004 } } },
    source: { title: 'Theory of Ground Vehicles (J. Y. Wong)', at: 'Example 3.1', how: 'memory' },
    kind: 'published-example',
    note: 'Rolling radius 0.33 m, less the 3 % slip of the book.',
  },
];
