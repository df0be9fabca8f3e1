import { z } from 'zod';
import { brief } from './brief.ts';
import { choiceField, quantityField, textField } from './field.ts';
import { path } from './path.ts';

const units = z
  .strictObject({
    length: choiceField('Lengths', ['mm', 'in', 'in 1/64']).optional(),
    runOut: choiceField('Run-out', ['thou', 'µm']).optional(),
    speed: choiceField('Road speed', ['km/h', 'mph']).optional(),
    torque: choiceField('Torque', ['N·m', 'lbf·ft']).optional(),
    force: choiceField('Force', ['N', 'kN', 'lbf']).optional(),
    power: choiceField('Power', ['kW', 'hp']).optional(),
    mass: choiceField('Mass', ['kg', 'lb']).optional(),
  })
  .meta({ 'x-field': { name: 'Units shown' } });

const override = z.strictObject({
  reserve: quantityField('number', { name: 'Design reserve', example: '1.3', above: 0 }),
  why: textField('Why', 'static test to twice the pull on the stand'),
  who: textField('Who', 'the builder'),
  when: textField('When', '2026-03-14'),
});

/** The build file, format 2. */
export const buildFile = z
  .strictObject({
    format: z.literal(2),
    name: textField('Build', 'marsh-hauler'),
    about: textField('About', 'three-wheeled load carrier'),
    brief,
    path,
    units: units.optional(),
    notes: z
      .record(z.string(), z.string())
      .meta({ 'x-field': { name: 'Notes' } })
      .optional(),
    overrides: z
      .record(z.string(), override)
      .meta({ 'x-field': { name: 'Overridden design reserves' } })
      .optional(),
  })
  .meta({ title: 'Oddwheel build, format 2' });

export type BuildFile = z.infer<typeof buildFile>;

/** The newest format that this version reads and writes. */
export const FORMAT = 2;
