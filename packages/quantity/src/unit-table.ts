import { decimal, type Exact, exact, minus, over, PI, plus, times } from './exact.ts';
import type { Kind } from './kinds.ts';

/**
 * The unit table. Factors are products of exact definitions only, never rounded figures:
 * - yard 0.9144 m and pound 0.45359237 kg: international yard and pound agreement, 1959 (Federal Register 24 FR 5348);
 * - standard acceleration of free fall 9.80665 m/s²: 3rd CGPM, 1901; hence pound-force and kilogram-force;
 * - horsepower 550 ft·lbf/s, metric horsepower 75 kgf·m/s, US gallon 231 in³, bar, atmosphere, degree, revolution per minute,
 *   degree Fahrenheit: NIST SP 811 (2008), appendix B.8;
 * - Celsius zero 273.15 K, SI prefixes, hour, minute, litre, tonne: SI Brochure, 9th edition, 2019.
 */

/** Spellings are parted by "|", the keyboard one first; `zero` is the SI value of the unit's zero where that is not zero. */
export type Row = readonly [symbol: string, factor: Exact, spellings: string, zero?: Exact];

const n = (whole: number): Exact => exact(BigInt(whole));
const ONE = n(1);
const HUNDREDTH = exact(1n, 100n);
const THOUSANDTH = exact(1n, 1000n);
const MILLIONTH = exact(1n, 1_000_000n);
const KILO = n(1000);
const MEGA = n(1_000_000);
const MINUTE = n(60);
const HOUR = n(3600);

const YARD = decimal('0.9144');
const FOOT = over(YARD, n(3));
const INCH = over(FOOT, n(12));
const MILE = times(n(1760), YARD);
const POUND = decimal('0.45359237');
const FREE_FALL = decimal('9.80665');
const POUND_FORCE = times(POUND, FREE_FALL);
const FOOT_POUND = times(FOOT, POUND_FORCE);
const PSI = over(POUND_FORCE, times(INCH, INCH));
const TURN = times(n(2), PI);
const DEGREE = over(PI, n(180));
const RPM = over(TURN, MINUTE);
const RANKINE = exact(5n, 9n);
const ICE_POINT = decimal('273.15');
const square = (a: Exact): Exact => times(a, a);
const cube = (a: Exact): Exact => times(a, a, a);
const fourth = (a: Exact): Exact => times(a, a, a, a);

/** SI units and their relatives; spelled exactly as written. */
export const SI_ROWS: Readonly<Record<Kind, readonly Row[]>> = {
  number: [['', ONE, '']],
  ratio: [['', ONE, '']],
  count: [['', ONE, '']],
  fraction: [
    ['', ONE, ''],
    ['%', HUNDREDTH, '%|percent|per cent'],
  ],
  angle: [
    ['rad', ONE, 'rad|radian|radians'],
    ['mrad', THOUSANDTH, 'mrad'],
  ],
  length: [
    ['m', ONE, 'm|metre|metres|meter|meters'],
    ['mm', THOUSANDTH, 'mm|millimetre|millimetres|millimeter|millimeters'],
    ['cm', HUNDREDTH, 'cm'],
    ['km', KILO, 'km'],
    ['µm', MILLIONTH, 'um|micron|microns'],
  ],
  area: [
    ['m²', ONE, 'm2|sq m'],
    ['mm²', MILLIONTH, 'mm2|sq mm'],
    ['cm²', square(HUNDREDTH), 'cm2|sq cm'],
  ],
  volume: [
    ['m³', ONE, 'm3'],
    ['L', THOUSANDTH, 'L|l|litre|litres|liter|liters'],
    ['mL', MILLIONTH, 'mL|ml'],
    ['cm³', MILLIONTH, 'cm3|cc|ccm'],
    ['mm³', cube(THOUSANDTH), 'mm3'],
  ],
  time: [
    ['s', ONE, 's|sec|second|seconds'],
    ['ms', THOUSANDTH, 'ms'],
    ['min', MINUTE, 'min|minute|minutes'],
    ['h', HOUR, 'h|hr|hrs|hour|hours'],
  ],
  frequency: [
    ['Hz', ONE, 'Hz|1/s'],
    ['kHz', KILO, 'kHz'],
    ['1/min', over(ONE, MINUTE), '1/min|min-1|cpm'],
  ],
  speed: [
    ['m/s', ONE, 'm/s'],
    ['km/h', over(KILO, HOUR), 'km/h|kmh|kph|km/hr'],
    ['m/min', over(ONE, MINUTE), 'm/min'],
    ['mm/s', THOUSANDTH, 'mm/s'],
  ],
  acceleration: [
    ['m/s²', ONE, 'm/s2'],
    ['g', FREE_FALL, 'g|gn'],
  ],
  angularSpeed: [['rad/s', ONE, 'rad/s']],
  mass: [
    ['kg', ONE, 'kg|KG|Kg|kilo|kilos|kilogram|kilograms'],
    ['g', THOUSANDTH, 'g|gram|grams'],
    ['t', KILO, 't|tonne|tonnes'],
  ],
  linearDensity: [
    ['kg/m', ONE, 'kg/m'],
    ['g/m', THOUSANDTH, 'g/m'],
  ],
  density: [
    ['kg/m³', ONE, 'kg/m3'],
    ['g/cm³', KILO, 'g/cm3|g/cc|kg/L|kg/l|kg/dm3'],
  ],
  inertia: [
    ['kg·m²', ONE, 'kg.m2|kgm2'],
    ['kg·cm²', square(HUNDREDTH), 'kg.cm2|kgcm2'],
    ['kg·mm²', MILLIONTH, 'kg.mm2|kgmm2'],
  ],
  force: [
    ['N', ONE, 'N|newton|newtons'],
    ['kN', KILO, 'kN'],
    ['kgf', FREE_FALL, 'kgf|kp'],
  ],
  torque: [
    ['N·m', ONE, 'N.m|Nm|NM'],
    ['kN·m', KILO, 'kN.m|kNm'],
    ['N·mm', THOUSANDTH, 'N.mm|Nmm'],
    ['N·cm', HUNDREDTH, 'N.cm|Ncm'],
    ['kgf·m', FREE_FALL, 'kgf.m|kgfm|kg.m|kgm|m.kg|mkg|kp.m|kpm'],
    ['kgf·cm', times(FREE_FALL, HUNDREDTH), 'kgf.cm|kgfcm|kg.cm|kgcm'],
  ],
  torqueSlope: [
    ['N·m·s', ONE, 'N.m.s|Nms|N.m.s/rad|Nms/rad|N.m/(rad/s)'],
    ['N·m/rpm', over(ONE, RPM), 'N.m/rpm|Nm/rpm'],
  ],
  energy: [
    ['J', ONE, 'J|joule|joules'],
    ['kJ', KILO, 'kJ'],
    ['MJ', MEGA, 'MJ'],
    ['kW·h', times(KILO, HOUR), 'kW.h|kWh'],
  ],
  power: [
    ['W', ONE, 'W|watt|watts'],
    ['kW', KILO, 'kW|KW|kw|Kw'],
  ],
  pressure: [
    ['Pa', ONE, 'Pa|N/m2'],
    ['kPa', KILO, 'kPa'],
    ['MPa', MEGA, 'MPa|N/mm2'],
    ['GPa', times(KILO, MEGA), 'GPa|kN/mm2'],
    ['kgf/cm²', over(FREE_FALL, square(HUNDREDTH)), 'kgf/cm2|kg/cm2'],
  ],
  stiffness: [
    ['N/m', ONE, 'N/m'],
    ['kN/m', KILO, 'kN/m'],
    ['N/mm', KILO, 'N/mm'],
    ['kN/mm', MEGA, 'kN/mm'],
    ['kgf/mm', times(FREE_FALL, KILO), 'kgf/mm|kg/mm'],
  ],
  areaMoment: [
    ['m⁴', ONE, 'm4'],
    ['cm⁴', fourth(HUNDREDTH), 'cm4'],
    ['mm⁴', fourth(THOUSANDTH), 'mm4'],
  ],
  turningStiffness: [
    ['N·m/rad', ONE, 'N.m/rad|Nm/rad'],
    ['kN·m/rad', KILO, 'kN.m/rad|kNm/rad'],
  ],
  viscosity: [
    ['m²/s', ONE, 'm2/s'],
    ['mm²/s', MILLIONTH, 'mm2/s|cSt'],
  ],
  temperature: [['K', ONE, 'K|kelvin']],
  temperatureDifference: [['K', ONE, 'K|kelvin']],
  hardness: [],
};

/** Shop units; capitals and small letters are alike. */
export const SHOP_ROWS: Readonly<Partial<Record<Kind, readonly Row[]>>> = {
  angle: [
    ['°', DEGREE, 'deg|°|degree|degrees'],
    ['′', over(DEGREE, MINUTE), "arcmin|'"],
    ['″', over(DEGREE, HOUR), 'arcsec|"'],
    ['rev', TURN, 'rev|turn|turns|revolution|revolutions'],
  ],
  length: [
    ['in', INCH, 'in|"|inch|inches'],
    ['ft', FOOT, "ft|'|foot|feet"],
    ['yd', YARD, 'yd|yard|yards'],
    ['mi', MILE, 'mi|mile|miles'],
    ['thou', times(INCH, THOUSANDTH), 'thou|mil|mils'],
  ],
  area: [
    ['in²', square(INCH), 'in2|sq in'],
    ['ft²', square(FOOT), 'ft2|sq ft'],
  ],
  volume: [
    ['in³', cube(INCH), 'in3|cu in|cid'],
    ['ft³', cube(FOOT), 'ft3|cu ft'],
    ['US gal', times(n(231), cube(INCH)), 'US gal|USgal'],
  ],
  speed: [
    ['mph', over(MILE, HOUR), 'mph|mi/h'],
    ['ft/s', FOOT, 'ft/s|fps'],
    ['ft/min', over(FOOT, MINUTE), 'ft/min|fpm|sfm'],
    ['in/s', INCH, 'in/s|ips'],
  ],
  acceleration: [['ft/s²', FOOT, 'ft/s2']],
  angularSpeed: [
    ['rpm', RPM, 'rpm|r/min|rev/min|1/min|min-1'],
    ['rev/s', TURN, 'rev/s|r/s|rps'],
    ['°/s', DEGREE, 'deg/s|°/s'],
  ],
  mass: [
    ['lb', POUND, 'lb|lbs|lbm|pound|pounds'],
    ['oz', over(POUND, n(16)), 'oz|ounce|ounces'],
  ],
  linearDensity: [
    ['lb/ft', over(POUND, FOOT), 'lb/ft|lbs/ft|lbm/ft'],
    ['lb/in', over(POUND, INCH), 'lb/in|lbm/in'],
  ],
  density: [
    ['lb/in³', over(POUND, cube(INCH)), 'lb/in3|lb/cu in'],
    ['lb/ft³', over(POUND, cube(FOOT)), 'lb/ft3|lb/cu ft'],
  ],
  inertia: [
    ['lb·in²', times(POUND, square(INCH)), 'lb.in2|lbm.in2'],
    ['lb·ft²', times(POUND, square(FOOT)), 'lb.ft2|lbm.ft2'],
  ],
  force: [['lbf', POUND_FORCE, 'lbf|pound-force']],
  torque: [
    ['lbf·ft', FOOT_POUND, 'lbf.ft|ft.lbf|lb.ft|ft.lb|ft.lbs|lbs.ft|lbft|ftlb'],
    ['lbf·in', times(INCH, POUND_FORCE), 'lbf.in|in.lbf|lb.in|in.lb|in.lbs|lbs.in'],
  ],
  energy: [['ft·lbf', FOOT_POUND, 'ft.lbf|ft.lb|lbf.ft']],
  power: [
    ['hp', times(n(550), FOOT_POUND), 'hp|bhp|horsepower'],
    ['PS', times(n(75), FREE_FALL), 'PS|cv|metric hp'],
  ],
  pressure: [
    ['bar', n(100_000), 'bar'],
    ['psi', PSI, 'psi|lbf/in2'],
    ['ksi', times(KILO, PSI), 'ksi'],
    ['atm', n(101_325), 'atm'],
  ],
  stiffness: [
    ['lbf/in', over(POUND_FORCE, INCH), 'lbf/in|lb/in|lbs/in'],
    ['lbf/ft', over(POUND_FORCE, FOOT), 'lbf/ft|lb/ft'],
  ],
  areaMoment: [['in⁴', fourth(INCH), 'in4']],
  temperature: [
    ['°C', ONE, 'degC|°C|C|celsius', ICE_POINT],
    ['°F', RANKINE, 'degF|°F|F|fahrenheit', plus(ICE_POINT, minus(times(n(32), RANKINE)))],
  ],
  temperatureDifference: [
    ['°C', ONE, 'degC|°C|C'],
    ['°F', RANKINE, 'degF|°F|F'],
  ],
  // Scales, not units: none is ever turned into another. HB (once a steel ball) and HBW (a carbide ball) stay apart:
  // ISO 6506-1:2014, clause 4, from memory.
  hardness: [
    ['HRC', ONE, 'HRC|Rc'],
    ['HRB', ONE, 'HRB|Rb'],
    ['HB', ONE, 'HB|BHN'],
    ['HBW', ONE, 'HBW'],
    ['HV', ONE, 'HV'],
    ['Shore A', ONE, 'Shore A|ShoreA|Sh A|ShA'],
    ['Shore D', ONE, 'Shore D|ShoreD|Sh D|ShD'],
  ],
};
