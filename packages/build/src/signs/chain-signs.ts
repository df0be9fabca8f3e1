import { CHAIN_LIMITS_TABLE } from '@oddwheel/tables/chain-limits';
import { rowOf, sourceOf } from '@oddwheel/tables/table';
import type { Sign } from './sign.ts';

const from = 'common practice';
const DAY = 'before each day’s work';

const percent = (key: string): number => rowOf(CHAIN_LIMITS_TABLE, key).values.fraction ?? Number.NaN;
const LONG = `${percent('elongation-adjustable')} % with take-up, ${percent('elongation-fixed')} % on fixed centres`;

/** Failures of chains, belts, their guards, and the brake before or behind them. */
export const CHAIN_SIGNS: readonly Sign[] = [
  {
    id: 'thrown-chain',
    name: 'Thrown chain',
    early:
      'Inner plates and flanks of the teeth are polished on one side; a click once in each turn of the chain; the slack run whips when the throttle closes; slack that differs much from place to place as the wheel is turned.',
    goes: 'It climbs off: no drive, and no brake that stands before it. It may bunch up between its sprocket and a case and lock the wheel.',
    checks: [
      'chain.jam',
      'chain.slack',
      'chain.plane',
      'mount.line',
      'mount.slack',
      'chain.parallel',
      'chain.wrap',
      'chain.stroke',
      'arm.slack',
      'idler.overrun',
      'idler.mesh',
      'idler.place',
    ],
    service:
      'Turn the wheel through a whole turn of the chain, and measure the slack where it is tightest and where it hangs most. Sight along the chain from behind. Look at the inner plates, and try the bolts of the adjuster.',
    every: DAY,
    from,
  },
  {
    id: 'broken-chain',
    name: 'Broken chain',
    early:
      'A stiff link that stays kinked behind the sprocket; a roller that is split, gone or does not turn; a hairline at a pin’s hole; rust in the joints.',
    goes: 'The free end whips round the driver and out, into whatever stands there; drive, and any brake before it, are gone.',
    checks: ['chain.pull', 'chain.service', 'chain.rating', 'chain.broken', 'guard.hold'],
    service:
      'Wash it, bend each link by hand, turn each roller, and look at each plate. One bad link means a new chain: a new link in an old chain runs on worn pitch.',
    every: 'every 25 hours',
    from,
  },
  {
    id: 'lost-link-clip',
    name: 'Lost clip of the joining link',
    early:
      'A spring clip that turns in its grooves, has a bright edge where it touched something, or was put on with its open end forward.',
    goes: 'The outer plate walks off the pins and the chain opens at its joining link.',
    checks: ['chain.broken', 'chain.pull', 'chain.links'],
    service:
      'Look at the clip: seated in both grooves, closed end forward as the chain runs. Never use one twice; where the build allows it rivet the link.',
    every: DAY,
    from,
  },
  {
    id: 'worn-chain',
    name: 'Worn chain and hooked teeth',
    early:
      'It can be lifted off the middle of the large sprocket by half a tooth; take-up is used up soon after it was set; teeth are hooked to one side; it grates when dry.',
    goes: 'It rides up the teeth and jumps under pull, then comes off or breaks; it ruins both sprockets on the way.',
    checks: ['chain.wear', 'chain.oil', 'chain.speed', 'adjust.wear'],
    service: `Pull it straight and measure over twenty links: worn out at ${LONG}. Clean and oil it inside, between the plates. New chain, new sprockets.`,
    every: 'oil as the finding says, length every 25 hours',
    from: `length: ${sourceOf(CHAIN_LIMITS_TABLE, 'elongation-adjustable')}; the rest common practice`,
  },
  {
    id: 'stripped-belt',
    name: 'Stripped belt',
    early:
      'Cracks at the roots of its teeth, frayed edges, black dust, a shining stripe on one side; it rattles over the pulley in a start.',
    goes: 'Teeth shear off in a row and the pulley spins in the belt: no drive, and no brake that stands before it.',
    checks: ['belt.teeth'],
    service: 'Bend it back by hand and look at the roots; press on its longest run and compare the give with the last.',
    every: 'every 25 hours; a new one after any tooth is gone',
    from,
  },
  {
    id: 'lost-brake',
    name: 'Brake tab or its way cracked',
    early:
      'The caliper or backplate moves when the brake is set and the vehicle is rocked; a hairline beside its tab; a chain or belt between it and the wheel that hangs slacker than it did.',
    goes: 'The caliper swings round with the disc and tears its line, or the torque finds nothing to act on: that brake is gone at once, and the wheel may lock.',
    checks: ['brake.place', 'brake.noted', 'brake.path'],
    notJudged: 'The bolts and welds of what holds the caliper or backplate are not checked.',
    service: 'Set the brake, rock the vehicle, and watch what holds it. Look at its welds, its bolts and its line.',
    every: DAY,
    from,
  },
  {
    id: 'open-guard',
    name: 'Guard off, cracked or rubbing',
    early:
      'A guard that rattles, a screw gone, a crack at a screw’s hole, a bright stripe inside it where a chain rubs; a guard left in the workshop.',
    goes: 'A finger, a sleeve or a bootlace goes in where the chain meets its sprocket, faster than anyone can stop it; a broken chain comes out.',
    checks: ['guard.reach', 'guard.toe', 'guard.hold'],
    service:
      'Shake each guard, count its screws. The drive does not turn while one is off, not even by hand with a friend at the wheel.',
    every: DAY,
    from,
  },
];
