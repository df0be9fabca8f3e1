import type { Sign } from './sign.ts';

const from = 'common practice';
const EVERY = 'after the first hour of work, then every 25 hours';

/** Failures of what passes torque: keys, splines, flanges, tapers, welds, shafts. */
export const JOINT_SIGNS: readonly Sign[] = [
  {
    id: 'wallowed-keyway',
    name: 'Wallowed keyway',
    early:
      'A tick or a clack each time the drive takes up after coasting. With the shaft held still the part rocks on it by hand. Red-brown dust at the ends of the hub; sides of the key bright or stepped; a crack from a corner of the keyway toward the teeth.',
    goes: 'The key rolls over or shears, most often in a start: engine and wheel part company, and shaft and hub are spoilt together. A brake before it is lost too.',
    checks: ['hub.torque', 'hub.running', 'hub.fit', 'hub.size', 'hub.keyway', 'chain.bore'],
    joints: ['key'],
    service:
      'Hold the shaft, rock the part by hand, and feel for play between the two. Look for red dust at both ends of the hub. Any play: take it off and fit a new key; a keyway that is no longer square is cut anew at another place.',
    every: EVERY,
    from,
  },
  {
    id: 'fretted-spline',
    name: 'Fretted spline',
    early:
      'Red-brown powder or paste at the ends of the spline, and free play that grows between pulling and coasting. Taken apart, the flanks are pocked and have a step where the mate ends.',
    goes: 'The teeth wear to points, then shear off all round at once: the drive is gone without a warning on that day.',
    checks: ['hub.torque', 'hub.running', 'hub.standard', 'join.torque', 'join.centre'],
    joints: ['spline'],
    service:
      'Measure the free play at the rim of the part with the shaft held, and write it down. Once a year slide it off, wipe it, look at the flanks, and put it together with grease or paste for splines.',
    every: 'free play every 25 hours; apart once a year',
    from,
  },
  {
    id: 'working-flange',
    name: 'Flange bolts working',
    early:
      'Rust-red streaks from under bolt heads or out of the joint, bright rings under the washers, a paint mark across head and flange that no longer meets, a creak when the drive takes up.',
    goes: 'The bolts bend to and fro and break one after the other, the last ones together. The sprocket or the wheel comes off.',
    checks: ['hub.torque', 'hub.slip', 'hub.preload', 'hub.thread', 'hub.locked'],
    joints: ['bolted flange'],
    service:
      'Paint a line across each head and the flange. Where a line is broken take the bolts out, look at the threads, and tighten anew to the torque in the build; a bolt that has worked is thrown away.',
    every: 'lines before each day’s work; torque after the first hour and after 10 hours',
    from,
  },
  {
    id: 'loose-taper',
    name: 'Taper or press fit slipping',
    early:
      'A paint mark across hub and shaft that no longer meets, a nut that can be turned further, red-brown dust at the mouth of the bore.',
    goes: 'The hub turns on its shaft, heats and welds itself to it in places; the drive slips, and what is left of a key in it is sheared.',
    checks: ['hub.torque', 'hub.locked'],
    joints: ['taper', 'press fit'],
    service: 'Look at the mark; on a taper try the nut with the torque in the build, and put its lock back.',
    every: EVERY,
    from,
  },
  {
    id: 'slipped-setscrew',
    name: 'Setscrew slipped',
    early: 'A bright ring or a furrow round the shaft beside the hub, and a part that wanders along it.',
    goes: 'The hub turns on the shaft, first in starts, then for good; the furrow keeps a new screw from holding.',
    checks: ['hub.torque', 'hub.alone', 'hub.locked'],
    joints: ['setscrews'],
    service: 'Try the screws with a key, and look for a furrow. A setscrew only keeps a part from sliding: fit a key.',
    every: 'before each day’s work',
    from,
  },
  {
    id: 'cracked-weld',
    name: 'Cracked weld of a hub or a built-up shaft',
    early:
      'A hairline along the foot of the bead, a line of rust that comes back through paint, run-out that has grown since the last reading.',
    goes: 'The crack runs round the bead and the part tears off whole; the shaft ends may come out of line and jam.',
    checks: ['hub.torque', 'join.torque', 'join.draw', 'join.bending'],
    joints: ['weld'],
    service:
      'Brush the bead clean, and look along both feet of it with a lens; dye shows what the eye does not. Compare the run-out with the record. A crack is ground out and welded by one who may, never painted over.',
    every: 'after the first 10 hours, then every 50 hours',
    from,
  },
  {
    id: 'cracked-shaft',
    name: 'Shaft cracking',
    early:
      'A hairline at the end of a keyway, at a shoulder or in a ring groove; a thin rust line there that comes back after wiping; run-out or shake that has grown.',
    goes: 'It breaks clean across within a few turns once the crack is halfway. A sprocket or a wheel goes with the end that comes off, and the wheel may lock.',
    checks: ['shaft.fatigue', 'shaft.life', 'shaft.yield', 'hub.keyway'],
    service:
      'Wipe shoulders, grooves and ends of keyways, and look with a lens. Once a year take sprockets off and use dye. Compare the run-out with the record.',
    every: 'every 50 hours; with dye once a year',
    from,
  },
  {
    id: 'bent-shaft',
    name: 'Shaft or joint bent',
    early:
      'A chain that is tight and slack once in each turn of a shaft, a sprocket that is seen to wobble, a thump that goes with road speed.',
    goes: 'It beats on bearings and chain until one of them goes; at speed it shakes more with each turn.',
    checks: ['shaft.yield', 'join.bending', 'join.draw', 'join.centre', 'shaft.critical'],
    service: 'Put a dial gauge on it, turn it by hand with the drive out of gear, and compare with the record.',
    every: 'after a fall, a jam or a hard knock, else once a year',
    from,
  },
  {
    id: 'twisting-shaft',
    name: 'Shaft twisting up, or shaking at one speed',
    early:
      'The drive surges on and off the throttle, or a shake comes up at one speed and goes above it. Rubber of a cush drive crumbles; free play of the whole drive grows.',
    goes: 'Keys, splines and gear teeth are hammered loose; a long shaft that is run at the speed it shakes at can fling itself out of its bearings.',
    checks: ['shaft.critical', 'shaft.twist', 'torsion.firing', 'torsion.cush'],
    service:
      'In gear, clutch out, rock the wheel and measure its free way at the rim; look at the rubbers. Note at which speed it shakes, and do not dwell there.',
    every: 'every 25 hours',
    from,
  },
  {
    id: 'lost-clip',
    name: 'Lost clip or ring along a shaft',
    early:
      'A part has moved along its shaft; a sprocket no longer lines up; a retaining ring stands proud of its groove, can be turned by hand, or has a bright edge. A lock washer lies flat; wire or a split pin is broken.',
    goes: 'The part walks off its seat: a chain comes off, gears run out of mesh, an axle can leave its arm.',
    checks: ['bearing.location', 'bearing.thrust', 'join.axial', 'hub.locked'],
    service:
      'Push each shaft to and fro by hand; look at each ring, tab, pin and wire. A ring that was taken out is not used again.',
    every: 'before each day’s work',
    from,
  },
];
