import type { Source } from '../method/method.ts';

/** Where the textbook rule for length and centre distance is printed. */
export const APPROXIMATE_SOURCES: readonly Source[] = [
  {
    title: "Shigley's Mechanical Engineering Design (Budynas, Nisbett)",
    edition: '9th',
    at: 'Eqs. 17-34 to 17-36',
    how: 'read',
  },
  { title: 'Machine Elements in Mechanical Design (R. L. Mott)', edition: '4th', at: 'Eqs. 7-9, 7-10', how: 'read' },
];

export const APPROXIMATE_HOLDS: readonly string[] = [
  'Handbook rule: good to 0.01 pitch for ratios under 4 at more than 30 pitches, and 0.3 pitch short for 11 to 88 teeth at 20 pitches.',
];
