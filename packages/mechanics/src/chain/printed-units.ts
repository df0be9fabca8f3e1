/** Units that the old rating formulas were printed in, SI. */
export const RPM = Math.PI / 30;
export const INCH = 0.0254;
export const MM = 1e-3;
export const HORSEPOWER = 745.6998715822702;
export const POUND = 4.4482216152605;

const unit = (kind: 'length' | 'angularSpeed' | 'power' | 'force', symbol: string, name: string) =>
  ({ form: 'value', kind, symbol, meaning: `${name}, a unit of the formula` }) as const;

export const RPM_OUTPUT = unit('angularSpeed', 'u_n', 'one turn a minute');
export const INCH_OUTPUT = unit('length', 'u_i', 'one inch');
export const MM_OUTPUT = unit('length', 'u_l', 'one millimetre');
export const HORSEPOWER_OUTPUT = unit('power', 'u_P', 'one horsepower');
export const KILOWATT_OUTPUT = unit('power', 'u_P', 'one kilowatt');
export const POUND_OUTPUT = unit('force', 'u_F', 'one pound-force');
