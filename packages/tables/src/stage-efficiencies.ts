import { defineTable } from './table.ts';

/** Efficiency of one stage: published ranges, taken where a build leaves it blank. */
export const STAGE_EFFICIENCIES = defineTable({
  id: 'stage-efficiencies',
  title: 'Efficiency of drive stages',
  range:
    'one stage in good order and well lubricated, at a fifth of its rated torque or more; below that losses weigh heavier',
  how: 'memory',
  source: 'Several handbooks, named at each row',
  columns: {
    low: { kind: 'fraction', unit: '%', meaning: 'efficiency, from' },
    high: { kind: 'fraction', unit: '%', meaning: 'efficiency, to' },
  },
  rows: {
    chain: {
      values: { low: 96, high: 99 },
      how: 'read',
      source:
        'Burgess, Lodge: Optimisation of the chain drive system on sports motorcycles, Sports Engineering 7 (2004), abstract; Machinery’s Handbook: 97 to 99 %, from memory',
    },
    'chain-fast': {
      values: { low: 85, high: 96 },
      how: 'read',
      source:
        'Burgess, Lodge: Optimisation of the chain drive system on sports motorcycles, Sports Engineering 7 (2004), abstract',
      note: 'Motorcycle final chain at high speed, where inertial tension weighs.',
    },
    belt: {
      values: { low: 96, high: 98 },
      how: 'memory',
      source: 'Belt makers’ handbooks: toothed belt, well tensioned',
    },
    bevel: {
      values: { low: 95, high: 99 },
      how: 'memory',
      source: 'Machinery’s Handbook: cut bevel pair with bearings 95 %; Niemann, Winter: mesh alone 97 to 99 %',
    },
    spur: {
      values: { low: 96, high: 99 },
      how: 'memory',
      source: 'Machinery’s Handbook: cut spur pair with bearings 96 %; Naunheimer: mesh alone 99.0 to 99.8 %',
    },
    coupling: {
      values: { low: 98, high: 99 },
      how: 'memory',
      source: 'Taborek, Mechanics of Vehicles, by way of Wong: universal joint and bearings',
    },
    unit: {
      values: { low: 90, high: 97 },
      how: 'memory',
      source:
        'Taborek, Mechanics of Vehicles, by way of Wong: each pair of gears 95 to 97 %; one or two pairs in a closed unit',
      note: 'A worm unit can be far lower: take the maker’s figure.',
    },
    gearbox: {
      values: { low: 90, high: 97 },
      how: 'memory',
      source:
        'Taborek, Mechanics of Vehicles, by way of Wong: each pair of gears 95 to 97 %; primary pair and one gearbox pair',
    },
  },
});
