import { z } from 'zod';
import { choiceField, integerField, quantityField } from './field.ts';

const member = (name: string) =>
  z
    .strictObject({
      steel: choiceField('Steel', ['hardened through', 'case hardened'], {
        recipe: 'Only what its maker or its drawing says; else leave it blank and try a file.',
      }).optional(),
      hardness: quantityField('number', {
        name: 'Brinell hardness measured',
        example: '240',
        min: 120,
        max: 400,
        recipe:
          'Let a machine shop press it on the face of the hub; a hard skin shows on the teeth alone. Until then draw a new file over the tip of a tooth, and enter what it does.',
      }).optional(),
      file: choiceField('A new file on the tip of a tooth', ['bites', 'hardly bites', 'skates'], {
        recipe: 'Draw a sharp new file over the end of a tooth, off the flank that carries.',
      }).optional(),
    })
    .meta({ 'x-field': { name } })
    .optional();

/** What is known of a bought or found pair of gears. */
export const gearFacts = {
  made: z
    .strictObject({ driver: member('Driver'), driven: member('Driven gear') })
    .meta({ 'x-field': { name: 'What the gears are made of' } })
    .optional(),
  quality: integerField({
    name: 'Quality number of the teeth, 5 cast or worn to 11 ground',
    min: 5,
    max: 11,
  }).optional(),
  lubrication: choiceField('Teeth run', [
    'in a housed oil bath',
    'in a housing with grease',
    'open, greased',
    'open, dry',
  ]).optional(),
  card: z
    .strictObject({
      pitting: choiceField('Pits on the flanks', ['none', 'a few', 'many']).optional(),
      chips: choiceField('Chipped or cracked teeth', ['none', 'some']).optional(),
      pattern: choiceField('Worn pattern', ['middle of the face', 'at one end'], {
        recipe: 'Rub marking blue on the flanks and turn the pair under a light brake.',
      }).optional(),
      marks: choiceField('Match marks', ['a matched pair', 'none or different'], {
        recipe: 'Makers write the same number on both gears of a pair.',
      }).optional(),
      bores: choiceField('Bores and splines', ['as made', 'worn or wallowed']).optional(),
    })
    .meta({ 'x-field': { name: 'Looked over' } })
    .optional(),
  donor: z
    .strictObject({
      torque: quantityField('torque', { name: 'Torque on its driver there', example: '180 N.m', above: 0 }),
      speed: quantityField('angularSpeed', { name: 'Speed of its driver there', example: '1500 rpm', above: 0 }),
      drove: choiceField('There drove', ['the driver of here', 'the driven gear of here']),
      turned: choiceField('There the pair turned', ['as here', 'the other way'], {
        recipe: 'Look at the driver of here from its back, in the donor driving forward and here.',
      }),
      angle: quantityField('angle', {
        name: 'Angle between its shafts there',
        example: '90 deg',
        above: 0,
        max: 3.14,
      }).optional(),
    })
    .meta({ 'x-field': { name: 'What it lived through in its donor' } })
    .optional(),
};

/** How the two gears of a bevel pair are carried. */
export const bevelMounting = {
  mounting: choiceField('Gears sit', ['both between bearings', 'one between bearings', 'both overhung']).optional(),
};
