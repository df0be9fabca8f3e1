import { z } from 'zod';
import { brief } from './brief.ts';
import { choiceField, namedMap, quantityField, textField } from './field.ts';
import { namedPoint, path } from './path.ts';

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

const place = z.strictObject({
  right: z
    .number()
    .min(0)
    .max(1)
    .meta({ 'x-field': { name: 'On the picture, from its left edge, as a part of its width' } }),
  down: z
    .number()
    .min(0)
    .max(1)
    .meta({ 'x-field': { name: 'On the picture, from its upper edge, as a part of its height' } }),
  at: namedPoint('Where it is on the vehicle'),
});

const picture = z.strictObject({
  name: textField('Picture', 'engine from the left'),
  /** SHA-256 of the bytes kept under pictures/. */
  file: z
    .string()
    .regex(/^[0-9a-f]{64}$/)
    .meta({
      'x-field': {
        name: 'Its file, by hash',
        example: 'e3b0c44298fc1c149afbf4c8996fb92427ae41e4649b934ca495991b7852b855',
      },
    }),
  of: textField('Shows', '/path/shafts/shaft-a').optional(),
  under: z
    .strictObject({
      view: choiceField('Lies under the view', ['from above', 'from the left', 'from behind']),
      first: place.meta({ 'x-field': { name: 'First known point' } }),
      second: place.meta({ 'x-field': { name: 'Second known point' } }),
    })
    .meta({ 'x-field': { name: 'Laid under a view' } })
    .optional(),
});

/** The build file, format 4. */
export const buildFile = z
  .strictObject({
    format: z.literal(4),
    name: textField('Build', 'marsh-hauler'),
    about: textField('About', 'three-wheeled load carrier'),
    brief,
    path,
    units: units.optional(),
    notes: z
      .record(z.string(), z.string())
      .meta({ 'x-field': { name: 'Notes' } })
      .optional(),
    pictures: namedMap('Pictures', picture).optional(),
    overrides: z
      .record(z.string(), override)
      .meta({ 'x-field': { name: 'Overridden design reserves' } })
      .optional(),
  })
  .meta({ title: 'Oddwheel build, format 4' });

export type BuildFile = z.infer<typeof buildFile>;

/** The newest format that this version reads and writes. */
export const FORMAT = 4;
