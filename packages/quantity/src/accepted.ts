import { KINDS, type Kind } from './kinds.ts';

/** Right examples of each kind, as they would be typed; the first is the plainest. */
export const EXAMPLES: Readonly<Record<Kind, readonly [string, ...string[]]>> = {
  number: ['1.5', '3/4'],
  ratio: ['2.909', '64:22'],
  fraction: ['0.97', '97 %'],
  count: ['17'],
  angle: ['23 deg', "23° 30'", '0.4 rad'],
  length: ['6.35 mm', '1 1/4 in', '30 thou'],
  area: ['120 mm2', '0.2 in2'],
  volume: ['500 cc', '1.2 L'],
  areaMoment: ['9.32 cm4', '0.486 in4'],
  time: ['12 s', '1 h 30 min'],
  frequency: ['35 Hz'],
  speed: ['55 mph', '90 km/h'],
  acceleration: ['3.5 m/s2', '0.4 g'],
  angularSpeed: ['9500 rpm', '995 rad/s'],
  mass: ['180 lb', '82 kg'],
  linearDensity: ['1.6 kg/m', '1.1 lb/ft'],
  density: ['7850 kg/m3', '7.85 g/cm3'],
  inertia: ['0.02 kg.m2', '68 lb.in2'],
  force: ['12 500 N', '180 lbf'],
  torque: ['54 N.m', '40 lbf.ft'],
  torqueSlope: ['0.02 N.m.s', '0.002 N.m/rpm'],
  energy: ['900 J', '650 ft.lbf'],
  power: ['12 kW', '16 hp'],
  pressure: ['2.1 bar', '30 psi', '355 MPa'],
  stiffness: ['150 N/mm', '850 lbf/in'],
  turningStiffness: ['900 N.m/rad'],
  viscosity: ['12 mm2/s', '100 cSt'],
  temperature: ['80 degC', '176 degF'],
  temperatureDifference: ['60 K', '60 degC'],
  hardness: ['58 HRC', '70 Shore A', '240 HBW'],
};

/** Starts the name of a kind with "a" or "an". */
export function aKind(kind: Kind): string {
  const { name } = KINDS[kind];
  return `${/^[aeiou]/.test(name) ? 'an' : 'a'} ${name}`;
}

/** What is accepted for a kind, with right examples: 'a length, such as "6.35 mm" or "30 thou"'. */
export function acceptedFor(kind: Kind): string {
  const quoted = EXAMPLES[kind].map((example) => `"${example}"`);
  const last = quoted.at(-1);
  const list = quoted.length > 1 ? `${quoted.slice(0, -1).join(', ')} or ${last}` : last;
  return `${aKind(kind)}, such as ${list}`;
}
