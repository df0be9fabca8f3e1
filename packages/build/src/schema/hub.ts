import { z } from 'zod';
import { choiceField, integerField, keyField, quantityField } from './field.ts';

export const LOCKINGS = [
  'thread locker',
  'tab washer',
  'lock wire',
  'split pin',
  'clamping nut',
  'wedge washers',
  'staked',
  'nothing',
] as const;

const SURFACES = ['dry and black', 'as delivered', 'oiled', 'with paste'] as const;
const FACES = ['oiled', 'clean or painted', 'blasted'] as const;

const PRESSED = [
  'pressed, oiled, steel on steel',
  'pressed, dry, steel on steel',
  'shrunk, oil film',
  'shrunk, degreased',
] as const;

const tightened = {
  tightening: quantityField('torque', { name: 'Tightening torque', example: '25 N.m', above: 0 }).optional(),
  surface: choiceField('Thread and head are', SURFACES).optional(),
  faces: choiceField('Clamped faces are', FACES).optional(),
};

const key = z
  .strictObject({
    length: quantityField('length', { name: 'Length of the key in the hub', example: '28 mm', above: 0 }),
    ends: choiceField('Its ends are', ['both round', 'one round', 'square']).optional(),
    keys: integerField({ name: 'Keys', example: '1', min: 1, max: 2 }).optional(),
    fit: choiceField('How it sits in its slots', ['slides', 'light press', 'tight'], {
      recipe:
        'A key that a finger can push slides; one that a soft hammer drives is a light press; one that a press drives is tight.',
    }).optional(),
    sizes: choiceField('Its size is by', ['metric standard', 'inch standard']).optional(),
    width: quantityField('length', {
      name: 'Width, where it is no standard key',
      example: '8 mm',
      above: 0,
    }).optional(),
    height: quantityField('length', {
      name: 'Height, where it is no standard key',
      example: '7 mm',
      above: 0,
    }).optional(),
    depth: quantityField('length', {
      name: 'Depth of the slot in the shaft, where it is no standard key',
      example: '4 mm',
      above: 0,
    }).optional(),
  })
  .meta({ 'x-field': { name: 'Key' } });

const spline = z
  .strictObject({
    form: choiceField('Form', ['straight', 'involute', 'of unknown standard']),
    teeth: integerField({ name: 'Teeth of the spline', example: '19', min: 4, max: 100 }),
    length: quantityField('length', { name: 'Length in mesh', example: '22 mm', above: 0 }),
    outside: quantityField('length', {
      name: 'Outside diameter of the shaft',
      example: '28.5 mm',
      above: 0,
      recipe: 'Measure over two teeth that lie opposite; with an odd count over three, in a ring.',
    }).optional(),
    inside: quantityField('length', {
      name: 'Inside diameter of the hub',
      example: '26 mm',
      above: 0,
      recipe: 'Measure the bore over two teeth that lie opposite.',
    }).optional(),
    module: quantityField('length', { name: 'Module of an involute spline', example: '1.25 mm', above: 0 }).optional(),
    pin: quantityField('length', {
      name: 'Diameter of the two pins laid into opposite gaps',
      example: '2.5 mm',
      above: 0,
    }).optional(),
    over: quantityField('length', {
      name: 'Size over the two pins',
      example: '31.4 mm',
      above: 0,
      recipe: 'Lay two equal pins, such as drill shanks, into opposite gaps of the shaft and measure over them.',
    }).optional(),
    sits: choiceField('How it sits', ['clamped along the shaft', 'loose', 'slides under load']).optional(),
  })
  .meta({ 'x-field': { name: 'Spline' } });

const taper = z
  .strictObject({
    ratio: quantityField('ratio', { name: 'Length over change of diameter', example: '10', above: 2, max: 50 }),
    length: quantityField('length', { name: 'Length in contact', example: '30 mm', above: 0 }),
    thread: keyField({ name: 'Thread of its nut', table: 'thread-sizes', example: 'M16x1.5' }).optional(),
    ...tightened,
  })
  .meta({ 'x-field': { name: 'Taper' } });

const screws = z
  .strictObject({
    size: keyField({ name: 'Size of the setscrews', table: 'setscrews', example: 'M8' }),
    count: integerField({ name: 'Setscrews', example: '2', min: 1, max: 2 }),
  })
  .meta({ 'x-field': { name: 'Setscrews' } });

const bolts = z
  .strictObject({
    thread: keyField({ name: 'Thread of the bolts', table: 'thread-sizes', example: 'M8' }),
    count: integerField({ name: 'Bolts', example: '6', min: 2, max: 24 }),
    circle: quantityField('length', { name: 'Bolt circle', example: '80 mm', above: 0 }),
    grade: keyField({ name: 'Strength of the bolts', table: 'bolt-classes', example: 'class-8.8' }).optional(),
    ...tightened,
    thickness: quantityField('length', { name: 'Thickness of the thinner part', example: '8 mm', above: 0 }).optional(),
    edge: quantityField('length', { name: 'Hole’s centre to the nearest edge', example: '14 mm', above: 0 }).optional(),
    into: choiceField('Screwed into', ['nuts', 'a thread in the part']).optional(),
    engagement: quantityField('length', {
      name: 'Length of thread in the part',
      example: '16 mm',
      above: 0,
    }).optional(),
    part: keyField({
      name: 'Metal of the part with the thread',
      table: 'hub-metals',
      example: 'mild steel',
    }).optional(),
  })
  .meta({ 'x-field': { name: 'Bolts of the flange' } });

const press = z
  .strictObject({
    interference: quantityField('length', {
      name: 'Interference: shaft less hole, on the diameter',
      example: '0.04..0.06 mm',
      range: true,
      above: 0,
      recipe: 'Measure shaft and hole with a micrometer before you join them, at the same temperature.',
    }),
    length: quantityField('length', { name: 'Length of the press fit', example: '40 mm', above: 0 }),
    outside: quantityField('length', { name: 'Outside diameter of the hub', example: '60 mm', above: 0 }),
    bore: quantityField('length', { name: 'Bore through the shaft', example: '10 mm', above: 0 }).optional(),
    roughness: quantityField('length', {
      name: 'Roughness Rz of both seats',
      example: '0.006 mm',
      above: 0,
      max: 1e-3,
    }).optional(),
    joined: choiceField('Joined', PRESSED, {
      recipe: 'Blank stands on the least friction, pressed with oil.',
    }).optional(),
  })
  .meta({ 'x-field': { name: 'Press fit' } });

const weld = z
  .strictObject({
    leg: quantityField('length', { name: 'Leg of the fillet', example: '5 mm', above: 0 }),
    count: integerField({
      name: 'Welds all round: 2 when both faces are welded',
      example: '1',
      min: 1,
      max: 2,
    }).optional(),
  })
  .meta({ 'x-field': { name: 'Weld of the hub' } });

/** What passes the torque between a shaft and the part that sits on it. */
export const hub = z
  .strictObject({
    torqueBy: choiceField('Torque passes by', [
      'key',
      'spline',
      'taper',
      'press fit',
      'setscrews',
      'bolted flange',
      'weld',
      'one piece with the shaft',
    ]),
    metal: keyField({ name: 'Metal of the hub', table: 'hub-metals', example: 'medium carbon steel' }).optional(),
    key: key.optional(),
    spline: spline.optional(),
    taper: taper.optional(),
    screws: screws.optional(),
    bolts: bolts.optional(),
    weld: weld.optional(),
    press: press.optional(),
    locking: choiceField('Its nut, bolts or screws are locked by', LOCKINGS).optional(),
  })
  .meta({ 'x-field': { name: 'Torque joint' } });

export type HubFile = z.infer<typeof hub>;
