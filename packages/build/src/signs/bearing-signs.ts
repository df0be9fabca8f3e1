import type { Sign } from './sign.ts';

const from = 'common practice';
const EVERY = 'after the first hour of work, then every 25 hours';

/** Failures of bearings, their seats and plates, gears and couplings. */
export const BEARING_SIGNS: readonly Sign[] = [
  {
    id: 'ring-turning',
    name: 'Ring turning in its seat',
    early:
      'A line painted across ring and plate, or ring and shaft, that no longer meets; black or red-brown dust beside the ring; a seat that is polished, or blue; a shaft that can be lifted in its plate.',
    goes: 'The seat wears out of round and the shaft drops: gears lose their mesh, chains their line. A ring that spins heats up, and the bearing can seize.',
    checks: [
      'seat.made',
      'seat.made-turning',
      'seat.shaft',
      'seat.plate',
      'seat.hot',
      'seat.hot-turning',
      'seat.cold',
      'seat.float',
    ],
    service:
      'Paint a line across ring and plate and across ring and shaft, and look whether it is whole; in aluminium, look while it is hot.',
    every: EVERY,
    from,
  },
  {
    id: 'pitted-bearing',
    name: 'Pitted or dry bearing',
    early:
      'A rumble felt through a rod held to its plate; rough turning by hand with the chain off; grease out of its seals; too hot to keep a hand on after a run; play when the shaft is lifted.',
    goes: 'The cage breaks and the balls bunch up: the shaft drops or seizes, and the wheel may lock.',
    checks: [
      'bearing.life',
      'bearing.static',
      'bearing.least',
      'bearing.speed',
      'bearing.tilt',
      'bearing.thrust',
      'output.side-pull',
    ],
    service:
      'After a run hold a hand near, then on, each plate. With the chain off turn each shaft by hand and lift it: it turns without a sound and does not lift. A bearing that rumbles is changed, not greased.',
    every: EVERY,
    from,
  },
  {
    id: 'cracked-plate',
    name: 'Plate cracked or drawn around a bearing',
    early:
      'A hairline from the bearing’s hole to the nearest edge; paint that cracks in a line; a hole that has become longer one way; a shaft that leans.',
    goes: 'The web tears open and the bearing comes out of the plate under full pull.',
    checks: ['plate.hold'],
    service:
      'Wipe the web beside each bearing, on the side the pull goes to, and look with a lens at its thinnest place.',
    every: 'after the first 10 hours, then every 50 hours',
    from,
  },
  {
    id: 'cracked-tab',
    name: 'Cracked mount tab',
    early:
      'A hairline at the end of the weld that ties a tab to its tube; rust through paint there; a bolt hole gone oval; a bolt that is found loose again and again; a new shake or hum.',
    goes: 'The tab tears off and the subframe swings on those that are left: chain line and mesh are lost, and the next tab follows.',
    checks: ['mount.moves'],
    notJudged: 'The subframe and its tabs are not judged yet: look all the more often.',
    service:
      'Wipe each tab, look with a lens at both ends of each weld, try each mount bolt. Stop a crack by welding, not by a drilled hole alone.',
    every: 'after the first hour and after 10 hours of work, then every 25 hours',
    from,
  },
  {
    id: 'broken-tooth',
    name: 'Pitted or broken gear tooth',
    early:
      'A growl that comes with pull; a knock once in each turn; glitter in oil or grease; pits in a row along the middle of the flanks; a chip at the end of a tooth.',
    goes: 'A tooth breaks at its root, and what comes off goes through the mesh: the next teeth break, or the pair locks and the wheel with it.',
    checks: ['gear.bending', 'gear.contact', 'gear.peak', 'gear.card', 'gear.make', 'gear.donor'],
    service:
      'Drain or wipe out the housing over a magnet, wash the teeth, and look at each flank and root under a lamp; count pits, and write it down.',
    every: 'after the first 2 hours of work, then every 100 hours',
    from,
  },
  {
    id: 'moved-pattern',
    name: 'Gears out of their mesh',
    early:
      'A whine that differs between pulling and coasting; a worn pattern that has moved to one end or to the tips; backlash that has grown or gone.',
    goes: 'All of the pull stands on one end of the teeth, and that end breaks off; without backlash they jam hot.',
    checks: ['bevel.moves', 'shaft.slope', 'gear.pattern', 'gear.flank', 'bevel.hand', 'bodies.mesh'],
    service:
      'Put marking blue on the flanks, pull it round under load, and read the pattern; measure the backlash with a dial gauge.',
    every: 'after the first 2 hours of work, then every 100 hours, and after any shim was moved',
    from,
  },
  {
    id: 'scuffed-gear',
    name: 'Gears run dry',
    early: 'A smell of hot oil, blue flanks, fine scratches from root to tip, grease flung out of the mesh.',
    goes: 'Flanks tear each other and lose their shape within hours; then teeth break.',
    checks: ['gear.oil'],
    service:
      'Look at level and colour of the oil, or put grease back on the flanks; look for water in it after mud and rain.',
    every: 'before each day’s work',
    from,
  },
  {
    id: 'worn-joint',
    name: 'Universal joint or coupling worn',
    early:
      'A click when the drive takes up, red-brown dust at the cups, a shake that goes with shaft speed, play by hand.',
    goes: 'A cup comes out or a cross breaks, and the loose shaft flails about: it needs a hoop round it.',
    checks: ['coupling.angle', 'coupling.even', 'coupling.takes'],
    service: 'Rock the joint by hand both ways, look at its clips, and grease it where it has a nipple.',
    every: 'every 25 hours',
    from,
  },
  {
    id: 'hot-unit',
    name: 'Bought unit overloaded',
    early: 'It is hotter than a hand can bear, oil weeps past its seals, metal glitters on its plug.',
    goes: 'Its gears or bearings give way inside, where nothing can be seen, and it can lock.',
    checks: ['unit.torque', 'unit.speed'],
    service: 'Feel it after a run; look at its level and at its plug.',
    every: 'every 25 hours',
    from,
  },
];
